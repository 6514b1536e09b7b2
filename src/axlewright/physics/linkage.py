"""A beam axle on its rods: exact poses in space, and what both wheels do.

Wheel-centre heights are given; the axle finds its place ahead, across, in pitch and in yaw. Four
rods (three arms and a track bar, a triangulated four) fix it exactly; more than four fight each
other, and the pose is the one of least strain energy in their bushings. Tie rod and drag link then
turn each wheel about its own kingpin. Rods are straight with ball ends; a radius arm is two rods
from one eye to its two axle bushings.

Axes are ISO 8855 (x forward, y left, z up) from the axle's centre at ride; the axle's own points
are given where they are at ride. Rotations are yaw, then pitch, then roll about the turned axes.
"""

from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from axlewright.physics._linkage import (
    NO_STEERING,
    NOT_FINITE,
    NOT_STEERED,
    ON_LEFT,
    ON_RIGHT,
    ON_TIE_ROD,
    OUT_OF_REACH,
    POSED,
    ROD,
    TAIL,
    poses,
)

__all__ = [
    "NOT_FINITE",
    "NOT_STEERED",
    "NO_STEERING",
    "ON_LEFT",
    "ON_RIGHT",
    "ON_TIE_ROD",
    "OUT_OF_REACH",
    "POSED",
    "Linkage",
    "Poses",
    "Steering",
    "axle_linkage",
    "axle_poses",
    "rod_lengths",
    "self_stress",
    "spindle_direction",
]

Array: TypeAlias = NDArray[np.float64]


class Steering(NamedTuple):
    """Kingpins and rods; every array may have a leading axis of rigs. Sides are left, right.

    ``pivot``, ``axis``, ``spindle`` and ``tie_end`` are (..., 2, 3): a point on each kingpin and
    the other three at ride, straight ahead, ``axis`` upwards and ``spindle`` outwards.
    ``drag_end`` (..., 3) is the drag link's end at the wheels; where it sits on the tie rod, its
    first number is the share of the way from left to right. ``pitman`` (..., 3) is its other end
    straight ahead. Lengths left out are those at ride.
    """

    pivot: ArrayLike
    axis: ArrayLike
    spindle: ArrayLike
    tie_end: ArrayLike
    drag_on: int
    drag_end: ArrayLike
    pitman: ArrayLike
    tie_length: ArrayLike | None = None
    drag_length: ArrayLike | None = None


class Linkage(NamedTuple):
    """A linkage ready to be posed: ``numbers`` has one row for each rig."""

    numbers: Array
    rods: int
    pitman: Array


class Poses(NamedTuple):
    """Where axle and wheels are.

    ``pose`` (N, 6): ahead, left and up in m, roll, pitch and yaw in rad. ``gap`` (N, rods): how
    much longer than its own length each rod would have to be, m; times its stiffness it is its
    pull. ``wheels`` (N, 2, 5), rad: turn about the kingpin, heading (left positive), camber (top
    outboard positive, to the frame's upright), caster, inclination. ``status`` (N,): POSED;
    OUT_OF_REACH, where ``gap`` tells which rods miss by how much; NOT_STEERED, where only the
    steering cannot reach; or NOT_FINITE.
    """

    pose: Array
    gap: Array
    wheels: Array
    status: NDArray[np.int64]


def rod_lengths(near: ArrayLike, far: ArrayLike) -> Array:
    """Distance between ends, (..., 3) to (...), m."""
    apart = np.asarray(far, dtype=np.float64) - np.asarray(near, dtype=np.float64)
    return np.asarray(np.sqrt(np.sum(apart * apart, axis=-1)))


def spindle_direction(toe_in: ArrayLike, camber: ArrayLike, side: ArrayLike) -> Array:
    """Outward unit vector of a spindle, (..., 3); ``side`` is 1 on the left, -1 on the right.

    Angles in rad, fronts inboard and top outboard positive.

    References
    ----------
    geometry: axes as in iso8855
    """
    toe, tilt, hand = np.broadcast_arrays(
        *(np.asarray(one, dtype=np.float64) for one in (toe_in, camber, side))
    )
    return np.stack(
        [np.cos(tilt) * np.sin(toe), hand * np.cos(tilt) * np.cos(toe), -np.sin(tilt)], axis=-1
    )


def axle_linkage(
    frame_end: ArrayLike,
    axle_end: ArrayLike,
    half_track: ArrayLike,
    *,
    length: ArrayLike | None = None,
    stiffness: ArrayLike = 1.0,
    steering: Steering | None = None,
) -> Linkage:
    """Make a linkage ready for ``axle_poses``.

    Parameters
    ----------
    frame_end, axle_end
        (..., rods, 3), m: ends at ride. At least four rods.
    half_track
        (...), m: wheel centre from the axle's middle.
    length
        (..., rods), m; left out, the distance between the ends.
    stiffness
        (..., rods), N/m, both bushings in series; of no effect on the pose of four rods.

    Raises
    ------
    ValueError
        Fewer than four rods, or ends that do not pair up.
    """
    near = np.asarray(frame_end, dtype=np.float64)
    far = np.asarray(axle_end, dtype=np.float64)
    rods = near.shape[-2]
    if rods < 4 or far.shape[-2] != rods:
        raise ValueError("a linkage needs four rods or more, with two ends each")
    own = rod_lengths(near, far) if length is None else np.asarray(length, dtype=np.float64)
    stiff = np.asarray(stiffness, dtype=np.float64)
    half = np.asarray(half_track, dtype=np.float64)
    tail = _tail(steering)
    rigs = np.broadcast_shapes(
        near.shape[:-2], far.shape[:-2], own.shape[:-1], half.shape, tail.shape[:-1],
        stiff.shape[:-1],
    )  # fmt: skip
    numbers = np.empty((*rigs, 1 + ROD * rods + TAIL))
    numbers[..., 0] = half
    each = numbers[..., 1 : 1 + ROD * rods].reshape(*rigs, rods, ROD)
    each[..., 0:3], each[..., 3:6], each[..., 6], each[..., 7] = near, far, own, stiff
    numbers[..., 1 + ROD * rods :] = tail
    numbers[..., 1 : 1 + ROD * rods] = each.reshape(*rigs, rods * ROD)
    pitman = np.zeros(3) if steering is None else np.asarray(steering.pitman, dtype=np.float64)
    return Linkage(
        numbers=np.ascontiguousarray(numbers.reshape(-1, numbers.shape[-1])),
        rods=rods,
        pitman=np.ascontiguousarray(pitman.reshape(-1, 3)),
    )


def axle_poses(linkage: Linkage, heights: ArrayLike, pitman: ArrayLike | None = None) -> Poses:
    """Poses at wheel-centre heights above ride.

    Parameters
    ----------
    heights
        (N, 2), m: left, right. One pose serves every rig and one rig every pose; otherwise they
        go in pairs.
    pitman
        (N, 3), m: where the pitman arm's end is; straight ahead if left out.

    References
    ----------
    geometry: rods of fixed length between two bodies; energy: least strain where too many
    """
    asked = np.ascontiguousarray(np.asarray(heights, dtype=np.float64).reshape(-1, 2))
    arm = (
        linkage.pitman
        if pitman is None
        else np.ascontiguousarray(np.asarray(pitman, dtype=np.float64).reshape(-1, 3))
    )
    lanes = max(linkage.numbers.shape[0], asked.shape[0], arm.shape[0])
    pose, gap = np.empty((lanes, 6)), np.empty((lanes, linkage.rods))
    wheels, status = np.full((lanes, 2, 5), np.nan), np.empty(lanes, dtype=np.int64)
    poses(linkage.numbers, linkage.rods, asked, arm, pose, gap, wheels, status)
    return Poses(pose, gap, wheels, status)


def self_stress(direction: ArrayLike, point: ArrayLike, stiffness: ArrayLike) -> Array:
    """Pull in each rod for one metre too much length in each other, (rods, rods), N/m.

    Column j is what rod j pulls when it alone is long: small displacements, wheels held in height.

    Parameters
    ----------
    direction
        (rods, 3): unit vectors from frame end to axle end.
    point
        (rods, 3), m: ends on the axle, from its centre.

    References
    ----------
    statics: force method for an over-braced body on springs
    """
    along = np.asarray(direction, dtype=np.float64)
    arm = np.asarray(point, dtype=np.float64)
    turning = np.cross(arm, along)
    moves = np.column_stack([along[:, 0], along[:, 1], turning[:, 1], turning[:, 2]])
    stiff = np.diag(np.asarray(stiffness, dtype=np.float64))
    held = moves.T @ stiff @ moves
    return np.asarray(stiff @ moves @ np.linalg.solve(held, moves.T @ stiff) - stiff)


def _tail(steering: Steering | None) -> Array:
    if steering is None:
        tail = np.zeros(TAIL)
        tail[25] = NO_STEERING
        return tail
    pivot, axis, spindle, tie = (
        np.asarray(part, dtype=np.float64)
        for part in (steering.pivot, steering.axis, steering.spindle, steering.tie_end)
    )
    drag = np.asarray(steering.drag_end, dtype=np.float64)
    pitman = np.asarray(steering.pitman, dtype=np.float64)
    if steering.drag_on == ON_TIE_ROD:
        share = drag[..., :1]
        at = (1.0 - share) * tie[..., 0, :] + share * tie[..., 1, :]
    else:
        at = drag
    tied = (
        rod_lengths(tie[..., 0, :], tie[..., 1, :])
        if steering.tie_length is None
        else np.asarray(steering.tie_length, dtype=np.float64)
    )
    dragged = (
        rod_lengths(pitman, at)
        if steering.drag_length is None
        else np.asarray(steering.drag_length, dtype=np.float64)
    )
    rigs = np.broadcast_shapes(
        *(part.shape[:-2] for part in (pivot, axis, spindle, tie)),
        drag.shape[:-1], pitman.shape[:-1], tied.shape, dragged.shape,
    )  # fmt: skip
    tail = np.empty((*rigs, TAIL))
    for side in (0, 1):
        for place, part in enumerate((pivot, axis, spindle, tie)):
            first = 12 * side + 3 * place
            tail[..., first : first + 3] = part[..., side, :]
    tail[..., 24], tail[..., 25], tail[..., 26:29], tail[..., 29] = (
        tied, float(steering.drag_on), drag, dragged,
    )  # fmt: skip
    return tail
