"""How much shorter a bowed rod is, and how far the arm that it holds then turns."""

import numpy as np

from axlewright.physics.quantities import Metre, Radian


def even_bow_shortening(bow: Metre, length: Metre) -> Metre:
    """How much nearer the ends of a rod come when it is bowed evenly, as a parabola.

    Parameters
    ----------
    bow
        Middle of the rod off the line between its ends.
    length
        Of the rod, eye to eye, before.

    Notes
    -----
    First term of the arc length: 0.3 % low at a bow of a tenth of the length. A half sine has
    pi^2 / 4 where this has 8 / 3.

    References
    ----------
    geometry: arc length of a flat parabola

    Examples
    --------
    >>> 1e3 * float(even_bow_shortening(0.030, 1.200))  # in mm
    2.000
    """
    return np.asarray(8.0 * np.square(bow) / (3.0 * np.asarray(length)))


def kink_shortening(bow: Metre, length: Metre) -> Metre:
    """How much nearer the ends of a rod come when it is kinked sharply in the middle.

    Parameters
    ----------
    bow
        Kink off the line between the ends.
    length
        Of the rod, eye to eye, before.

    References
    ----------
    geometry: two straight halves
    """
    whole = np.asarray(length)
    with np.errstate(invalid="ignore"):
        return np.asarray(whole - np.sqrt(np.square(whole) - 4.0 * np.square(bow)))


def arm_turn(travel: Metre, arm: Metre) -> Radian:
    """How far an arm turns when its end moves so far square to it; NaN beyond its length.

    Parameters
    ----------
    travel
        Of the arm's end, square to the arm.
    arm
        From the axis to its end.

    References
    ----------
    geometry
    """
    with np.errstate(invalid="ignore"):
        return np.asarray(np.arcsin(np.asarray(travel) / np.asarray(arm)))
