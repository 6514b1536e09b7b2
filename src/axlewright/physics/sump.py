"""Oil in an axle's centre: how high it must stand, and how much lies below that height."""

import numpy as np

from axlewright.physics.quantities import Metre, Metre2, Metre3, Radian


def turned_height(along: Metre, up: Metre, angle: Radian) -> Metre:
    """Height over the axle's line of a point of the housing that was turned about that line.

    Parameters
    ----------
    along, up
        Where the point was before, towards the pinion and upwards.
    angle
        Plus raises the pinion.

    References
    ----------
    geometry
    """
    return np.asarray(np.asarray(along) * np.sin(angle) + np.asarray(up) * np.cos(angle))


def lower_edge(centre: Metre, across: Metre, slope: Radian) -> Metre:
    """Height of the lowest point of a ring that stands square to a shaft on a slope.

    References
    ----------
    geometry
    """
    return np.asarray(centre) - np.asarray(across) / 2 * np.cos(slope)


def segment_area(radius: Metre, level: Metre) -> Metre2:
    """Area of a circle below a level that is reckoned from its centre; all or none beyond it.

    References
    ----------
    geometry

    Examples
    --------
    >>> f"{segment_area(1.0, 0.0):.4f}"
    '1.5708'
    """
    radius = np.asarray(radius)
    share = np.clip(np.asarray(level) / radius, -1.0, 1.0)
    return np.asarray(radius**2 * (np.pi / 2 + np.arcsin(share) + share * np.sqrt(1.0 - share**2)))


def sump_volume(radius: Metre, wide: Metre, level: Metre) -> Metre3:
    """Oil below a level in a lying drum, reckoned from its middle.

    References
    ----------
    geometry
    """
    return np.asarray(segment_area(radius, level)) * wide
