"""A propeller shaft in space: joint angles, and what a whole line of cross joints does in a turn.

Every axis is a unit vector the way that torque goes under drive: out of the transfer case, along
the shaft, into the axle. A line is its axes on the last axis but one, (..., joints + 1, 3); its
``phases`` (..., joints - 1) are how far the driving yoke at a shaft's far end is turned, about
the shaft, from the driven yoke at its near end: nought for yokes in line.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from axlewright.physics.quantities import Metre, Radian, Ratio

__all__ = [
    "angle_of_swing",
    "axis_direction",
    "double_joint_line",
    "elevation",
    "joint_angles",
    "line_angle",
    "line_speed_ratio",
    "line_swing",
    "parallel_pinion_rise",
    "pinion_rise_along_shaft",
    "plunge",
    "unit_vectors",
]

_STEPS = 40  # of a contraction by less than the nose's length over the shaft's
_TURNS = 180  # places of the first yoke looked at in half a turn; twice a turn it repeats


def unit_vectors(vector: ArrayLike) -> NDArray[np.float64]:
    """Vectors of length one along (..., 3)."""
    given = np.asarray(vector, dtype=np.float64)
    with np.errstate(invalid="ignore", divide="ignore"):
        return np.asarray(given / np.sqrt(np.sum(given * given, axis=-1, keepdims=True)))


def axis_direction(rise: Radian, aside: Radian = 0.0, way: Ratio = 1.0) -> NDArray[np.float64]:
    """Unit vector (..., 3) of an axis that runs ahead (``way`` 1) or back (-1).

    Parameters
    ----------
    rise
        How far the way it runs points up.
    aside
        How far it points left, about the upright.

    References
    ----------
    geometry: axes as in iso8855
    """
    up, left, hand = np.broadcast_arrays(
        *(np.asarray(one, dtype=np.float64) for one in (rise, aside, way))
    )
    return np.stack(
        [hand * np.cos(up) * np.cos(left), np.cos(up) * np.sin(left), np.sin(up)], axis=-1
    )


def elevation(vector: ArrayLike) -> Radian:
    """How far vectors (..., 3) point up."""
    given = np.asarray(vector, dtype=np.float64)
    return np.asarray(np.arctan2(given[..., 2], np.hypot(given[..., 0], given[..., 1])))


def joint_angles(axes: ArrayLike) -> Radian:
    """Angle between each two neighbouring axes of a line, (..., joints).

    References
    ----------
    geometry: sine and cosine of two vectors, exact at small angles too
    """
    given = np.asarray(axes, dtype=np.float64)
    one, other = given[..., :-1, :], given[..., 1:, :]
    return np.asarray(
        np.arctan2(
            np.sqrt(np.sum(np.cross(one, other) ** 2, axis=-1)), np.sum(one * other, axis=-1)
        )
    )


def double_joint_line(axes: ArrayLike) -> NDArray[np.float64]:
    """Axes of a line whose first joint is double: its middle piece halves the angle.

    Give ``line_speed_ratio`` one more phase of nought for the middle piece.

    References
    ----------
    sae-ae7 (memory): a centred double joint
    """
    given = np.asarray(axes, dtype=np.float64)
    middle = unit_vectors(given[..., :1, :] + given[..., 1:2, :])
    return np.concatenate([given[..., :1, :], middle, given[..., 1:, :]], axis=-2)


def line_speed_ratio(axes: ArrayLike, turn: ArrayLike, phases: ArrayLike = 0.0) -> Ratio:
    """Speed of the last axis over that of the first, (..., turns), exact in space.

    Parameters
    ----------
    turn
        (turns,): of the first yoke, from the plane of the first two axes.

    Notes
    -----
    At each joint the driven yoke's arms are square to the driving yoke's and to their own shaft;
    the joint's ratio is cos(bend) over one less the square of the driving arms' share along the
    driven shaft.

    References
    ----------
    geometry: tan of the driven turn is tan of the driving one over cos of the bend; khurmi-machines
    """
    given = np.asarray(axes, dtype=np.float64)
    angle = np.asarray(turn, dtype=np.float64)
    apart = np.broadcast_to(
        np.asarray(phases, dtype=np.float64),
        (*given.shape[:-2], max(given.shape[-2] - 2, 0)),
    )
    arm = _first_arm(given, angle)
    ratio = np.ones((*given.shape[:-2], angle.shape[-1]))
    for joint in range(given.shape[-2] - 1):
        here, there = given[..., joint, None, :], given[..., joint + 1, None, :]
        straight = np.sum(here * there, axis=-1)
        along = np.sum(arm * there, axis=-1)
        ratio = ratio * straight / (1.0 - along**2)
        driven = unit_vectors(np.cross(there, arm))
        if joint < given.shape[-2] - 2:
            by = apart[..., joint, None, None]
            arm = np.cos(by) * driven + np.sin(by) * np.cross(there, driven)
    return np.asarray(ratio)


def line_swing(axes: ArrayLike, phases: ArrayLike = 0.0) -> Ratio:
    """Fastest less slowest speed of the last axis in a turn, over the first's; exact in space.

    References
    ----------
    geometry: as ``line_speed_ratio``
    """
    given = np.asarray(axes, dtype=np.float64)
    turn = np.linspace(0.0, np.pi, _TURNS, endpoint=False)
    ratio = np.asarray(line_speed_ratio(given, turn, phases))
    return np.asarray(_peak(ratio) + _peak(-ratio))


def line_angle(axes: ArrayLike, phases: ArrayLike = 0.0) -> Radian:
    """One joint's angle that would shake as a whole line does, planes and phases counted.

    Each joint counts with the square of its angle, turned by twice the place of its driving yoke
    against the plane of its two shafts.

    References
    ----------
    sae-ae7 (memory): small-angle rule; derived for planes that are not one
    """
    given = np.asarray(axes, dtype=np.float64)
    apart = np.broadcast_to(
        np.asarray(phases, dtype=np.float64),
        (*given.shape[:-2], max(given.shape[-2] - 2, 0)),
    )
    bends = np.asarray(joint_angles(given))
    arm = _first_arm(given, np.zeros(1))[..., 0, :]
    total = np.zeros(given.shape[:-2], dtype=np.complex128)
    for joint in range(given.shape[-2] - 1):
        here, there = given[..., joint, :], given[..., joint + 1, :]
        level = np.sum(arm * there, axis=-1)
        across = np.sum(np.cross(here, arm) * there, axis=-1)
        size = level**2 + across**2
        with np.errstate(invalid="ignore", divide="ignore"):
            place = np.where(size > 0.0, (level - 1j * across) ** 2 / size, 0.0)
        total = total + bends[..., joint] ** 2 * place
        driven = unit_vectors(np.cross(there, arm))
        if joint < given.shape[-2] - 2:
            by = apart[..., joint, None]
            arm = np.cos(by) * driven + np.sin(by) * np.cross(there, driven)
    return np.asarray(np.sqrt(np.abs(total)))


def angle_of_swing(swing: Ratio) -> Radian:
    """Angle of one joint that swings so much: sin(bend)*tan(bend) turned round.

    References
    ----------
    khurmi-machines, Hooke's joint

    Examples
    --------
    >>> f"{np.degrees(angle_of_swing(0.0027)):.3f}"
    '2.977'
    """
    given = np.asarray(swing, dtype=np.float64)
    # the square of the sine, so that small angles keep their digits
    half = 0.5 * given
    cosine = np.sqrt(1.0 + half**2) - half
    return np.asarray(np.arctan2(np.sqrt(given * cosine), cosine))


def plunge(lengths: Metre, ride: Metre) -> Metre:
    """How far a propeller shaft has drawn out from its length at ride; pushed in is negative.

    References
    ----------
    geometry
    """
    return np.asarray(np.subtract(lengths, ride))


def parallel_pinion_rise(output_rise: Radian) -> Radian:
    """How far the pinion's nose must point up so that its axis is parallel to the transfer case's.

    Parameters
    ----------
    output_rise
        How far the transfer case's flange points up.

    References
    ----------
    geometry: two equal angles cancel
    """
    return np.asarray(-np.asarray(output_rise))


def pinion_rise_along_shaft(
    nose: ArrayLike, case: ArrayLike, rise: Radian, aim_below: Radian
) -> Radian:
    """How far the pinion must point up to look at the transfer case, less a small angle.

    Turning the housing carries the joint at its nose along, so the shaft's own slope moves too.

    Parameters
    ----------
    nose, case
        (..., 2), m: how far the joints at pinion and transfer case are from the axle's middle,
        along the way from axle to case, and up.
    rise
        How far the pinion points up now.
    aim_below
        How far it is to stay below the shaft's line.

    References
    ----------
    geometry: a fixed point, closing in by nose over shaft at each step
    """
    here, there = np.asarray(nose, dtype=np.float64), np.asarray(case, dtype=np.float64)
    now, short = np.asarray(rise, dtype=np.float64), np.asarray(aim_below, dtype=np.float64)
    wanted = now
    for _ in range(_STEPS):
        cos, sin = np.cos(wanted - now), np.sin(wanted - now)
        along = cos * here[..., 0] - sin * here[..., 1]
        up = sin * here[..., 0] + cos * here[..., 1]
        wanted = np.arctan2(there[..., 1] - up, there[..., 0] - along) - short
    return np.asarray(wanted)


def _first_arm(axes: NDArray[np.float64], turn: NDArray[np.float64]) -> NDArray[np.float64]:
    """Arms of the first yoke at each turn, (..., turns, 3), nought in the first joint's plane."""
    first, second = axes[..., 0, :], axes[..., 1, :]
    level = second - np.sum(first * second, axis=-1, keepdims=True) * first
    upright = np.zeros(3)
    upright[2] = 1.0
    spare = np.cross(np.cross(first, upright), first)
    bent = np.sum(level * level, axis=-1, keepdims=True) > 1e-24
    level = unit_vectors(np.where(bent, level, spare))
    square = np.cross(first, level)
    cos, sin = np.cos(turn)[:, None], np.sin(turn)[:, None]
    return np.asarray(cos * level[..., None, :] + sin * square[..., None, :])


def _peak(ratio: NDArray[np.float64]) -> NDArray[np.float64]:
    """Greatest of a wave sampled over its period, by the parabola through its three best points."""
    best = np.argmax(ratio, axis=-1)[..., None]
    count = ratio.shape[-1]
    top = np.take_along_axis(ratio, best, axis=-1)[..., 0]
    left = np.take_along_axis(ratio, (best - 1) % count, axis=-1)[..., 0]
    right = np.take_along_axis(ratio, (best + 1) % count, axis=-1)[..., 0]
    bend = left - 2.0 * top + right
    with np.errstate(invalid="ignore", divide="ignore"):
        more = np.where(bend < 0.0, -((right - left) ** 2) / (8.0 * bend), 0.0)
    return np.asarray(top + more)
