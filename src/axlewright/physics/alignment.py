"""Alignment from a tape and an angle finder: toe, caster from a sweep, what turning a rod does.

Angles in rad. Heading is positive to the left; camber with the top outboard, caster with the top of
the axis back, inclination with its top inboard; ``side`` is +1 on the left and -1 on the right.
"""

from typing import NamedTuple

import numpy as np

from axlewright.physics.quantities import Metre, Radian, Ratio


class KingpinAngles(NamedTuple):
    """Caster and inclination of a steering axis, rad."""

    caster: Radian
    inclination: Radian


def steered_camber(
    heading: Radian, caster: Radian, inclination: Radian, camber: Radian, side: Ratio
) -> Radian:
    """Camber of a wheel steered to a heading, from its camber straight ahead.

    Notes
    -----
    The spindle keeps its angle to the steering axis, so its product with the axis is constant.

    References
    ----------
    geometry: a line that turns about an axis

    Examples
    --------
    >>> angles = np.radians([6.0, 8.5])
    >>> f"{np.degrees(steered_camber(np.radians(20.0), *angles, 0.0, 1.0)):.4f}"
    '2.5830'
    """
    hand = np.asarray(side)
    back, lean = np.tan(caster), np.tan(inclination)
    kept = -lean * np.cos(camber) - np.sin(camber)
    level = hand * back * np.sin(heading) - lean * np.cos(heading)
    # level cos(camber) - sin(camber) = kept
    reach = np.sqrt(level**2 + 1.0)
    return np.asarray(np.arctan2(level, 1.0) - np.arcsin(np.clip(kept / reach, -1.0, 1.0)))


def caster_from_two(outward: Radian, inward: Radian, sweep: Radian) -> Radian:
    """Caster from camber read with the wheel turned out and in by the same angle.

    References
    ----------
    geometry: the spindle's constant product with the axis, straight-ahead camber left out
    """
    return np.asarray(np.arctan((np.sin(outward) - np.sin(inward)) / (2.0 * np.sin(sweep))))


def caster_by_rule(outward: Radian, inward: Radian) -> Radian:
    """Caster as one and a half times the change of camber between 20 degrees out and in.

    Notes
    -----
    The small-angle factor is 1/(2 sin 20 deg) = 1.462, so the rule reads high by 2.6 % and more.

    References
    ----------
    geometry: common practice, no source
    """
    return np.asarray(1.5 * (np.asarray(outward) - np.asarray(inward)))


def kingpin_from_three(
    straight: Radian, outward: Radian, inward: Radian, sweep: Radian
) -> KingpinAngles:
    """Caster and inclination from camber straight ahead and turned out and in.

    Notes
    -----
    Exact for any angles; but the inclination magnifies an error of camber by 1/(1 - cos sweep),
    sixteen times at 20 degrees.

    References
    ----------
    geometry: the spindle's constant product with the axis, three times
    """
    first, second, third = (
        _spindle(angle, camber)
        for angle, camber in ((0.0, straight), (sweep, outward), (-np.asarray(sweep), inward))
    )
    one = [b - a for a, b in zip(first, second, strict=True)]
    two = [b - a for a, b in zip(first, third, strict=True)]
    base = one[0] * two[1] - one[1] * two[0]
    back = (one[2] * two[1] - one[1] * two[2]) / base
    lean = (one[0] * two[2] - one[2] * two[0]) / base
    return KingpinAngles(np.arctan(back), np.arctan(lean))


def included_angle(camber: Radian, inclination: Radian) -> Radian:
    """Angle between steering axis and wheel: it belongs to the knuckle, not to the tube.

    References
    ----------
    definition
    """
    return np.asarray(np.asarray(camber) + inclination)


def toe_change(longer: Metre, arm: Metre, ahead: Ratio) -> Radian:
    """Toe-in gained by both wheels together when the tie rod grows.

    Parameters
    ----------
    arm
        Of the tie rod's end about the kingpin, square to the rod.
    ahead
        1 where the rod lies ahead of the axle, -1 behind it.

    References
    ----------
    geometry: small angles
    """
    return np.asarray(-np.asarray(ahead) * np.asarray(longer) / np.asarray(arm))


def rod_change(toe_in: Radian, arm: Metre, ahead: Ratio) -> Metre:
    """Growth of the tie rod that gives both wheels together so much more toe-in.

    References
    ----------
    geometry: small angles
    """
    return np.asarray(-np.asarray(ahead) * np.asarray(toe_in) * np.asarray(arm))


def rod_per_turn(pitch_left: Metre, pitch_right: Metre = 0.0) -> Metre:
    """Growth of a rod for one turn of its sleeve, or of one end where one pitch is nought.

    References
    ----------
    definition
    """
    return np.asarray(np.asarray(pitch_left) + pitch_right)


def mechanical_trail(height: Metre, caster: Radian, hub_ahead: Metre = 0.0) -> Metre:
    """Contact point behind where the steering axis meets the ground.

    Parameters
    ----------
    height
        Of the wheel's centre.
    hub_ahead
        Wheel centre ahead of the axis at hub height.

    References
    ----------
    geometry
    """
    return np.asarray(np.asarray(height) * np.tan(caster) - hub_ahead)


def wedge_thickness(turn: Radian, pad: Metre) -> Metre:
    """How much thicker one end of a wedge is than the other, to turn an axle under its spring.

    References
    ----------
    geometry: a right triangle over the pad's length

    Examples
    --------
    >>> f"{1e3 * wedge_thickness(np.radians(2.0), 0.127):.6f}"
    '4.434938'
    """
    return np.asarray(np.asarray(pad) * np.tan(turn))


def level_corrected(reading: Radian, floor: Radian) -> Radian:
    """Angle to the floor, from an angle finder's reading to plumb and the floor's own slope.

    References
    ----------
    definition
    """
    return np.asarray(np.asarray(reading) - floor)


def turned_average(reading: Radian, turned_round: Radian) -> Radian:
    """Angle free of the finder's own error: half the difference of both ways round.

    References
    ----------
    definition
    """
    return np.asarray(0.5 * (np.asarray(reading) - turned_round))


def axle_setback(wheelbase_left: Metre, wheelbase_right: Metre, track: Metre) -> Radian:
    """Turn of the axle in plan from wheelbase left and right, positive with the left side ahead.

    References
    ----------
    geometry
    """
    return np.asarray(np.arctan((np.asarray(wheelbase_left) - wheelbase_right) / np.asarray(track)))


def off_square(diagonal_left: Metre, diagonal_right: Metre, width: Metre) -> Metre:
    """How far one axle stands to the side of the other, from the two diagonals.

    Parameters
    ----------
    diagonal_left, diagonal_right
        From front left to rear right, and from front right to rear left, at equal marks.
    width
        Mean distance of the marks left to right.

    Notes
    -----
    Positive where the front axle stands to the left.

    References
    ----------
    geometry: a parallelogram's diagonals, d1^2 - d2^2 = 4 w s, with equal wheelbases
    """
    left, right = np.asarray(diagonal_left), np.asarray(diagonal_right)
    return np.asarray((left**2 - right**2) / (4.0 * np.asarray(width)))


def ackermann_angle(inner_turn: Radian, wheelbase: Metre, kingpin_spacing: Metre) -> Radian:
    """Angle of the outer wheel that rolls about the same centre as the inner one.

    References
    ----------
    gillespie1992, ch. 8
    """
    spread = np.asarray(kingpin_spacing) / wheelbase
    return np.asarray(np.arctan(1.0 / (1.0 / np.tan(inner_turn) + spread)))


def _spindle(heading: Radian, camber: Radian) -> tuple[Ratio, Ratio, Ratio]:
    """A left wheel's spindle against tan caster, tan inclination and the upright."""
    return (
        np.asarray(np.cos(camber) * np.sin(heading)),
        np.asarray(-np.cos(camber) * np.cos(heading)),
        np.asarray(np.sin(camber)),
    )
