"""The steering of one rig as points, and what both wheels do when its rods change; exact."""

from dataclasses import dataclass
from math import nan
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.geometry.points import Hardpoints, drag_on, hardpoints, kingpin_axes
from axlewright.physics import linkage
from axlewright.rig import Readings, Rig, geometry_columns

SIDES: Final = ("left", "right")
STEPS: Final = 8  # of Newton's rule; three are enough
NUDGE: Final = 1e-4  # m
Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The steering of one rig as points, m from the axle's middle.

    ``square_arm`` and ``drag_square`` are the arms square to the rods and the kingpin axis;
    ``hand`` is +1 where the drag link's end stands left of its pitman; ``taped`` tells whether
    the rods' places were given.
    """

    pivot: Array
    axis: Array
    tie: Array
    drag_on: int
    drag: Array
    pitman: Array
    arm: float
    square_arm: float
    drag_arm: float
    drag_square: float
    ahead: bool
    drag_ahead: bool
    hand: float
    taped: bool


def layout_of(rig: Rig, readings: Readings) -> Layout:
    """Lay the steering out from the rig's places, taped or assumed, and what the readings say."""
    points = hardpoints(geometry_columns(rig), rig.words)
    at = {name: np.asarray(place[0]) for name, place in points.at.items()}
    axis = kingpin_axes(points)[0]
    pivot = np.stack([0.5 * (at[f"kingpin_upper_{s}"] + at[f"kingpin_lower_{s}"]) for s in SIDES])
    tie = np.stack([at[f"tie_rod_end_{side}"] for side in SIDES])
    feet = np.stack([_on_axis(pivot[k], axis[k], tie[k, 2]) for k in (0, 1)])
    ahead = readings.word("tie_rod.ahead")
    if ahead and (ahead == "yes") != (float(tie[0, 0] - feet[0, 0]) > 0.0):
        tie[:, 0] = 2.0 * feet[:, 0] - tie[:, 0]
    told = readings.value("tie_rod.arm")
    if told is not None:
        tie[:, :2] = feet[:, :2] + _scaled(tie[:, :2] - feet[:, :2], told)
    held, end, pitman = _drag(points, readings, at)
    knuckle = 0 if held == linkage.ON_LEFT else 1
    foot = _on_axis(pivot[knuckle], axis[knuckle], end[2])
    drag_ahead = readings.word("drag_link.ahead")
    if held == linkage.ON_TIE_ROD:
        span = tie[0, 1] - tie[1, 1]
        share = np.clip((tie[0, 1] - end[1]) / span, 0.0, 1.0)
        pitman = np.array([tie[0, 0], pitman[1], pitman[2]])
        drag, drag_arm, drag_x = np.array([share, 0.0, 0.0]), 0.0, tie[0, 0] - feet[0, 0]
    else:
        if drag_ahead and (drag_ahead == "yes") != bool(end[0] - foot[0] > 0.0):
            gap = pitman[0] - end[0]
            end = np.array([2.0 * foot[0] - end[0], end[1], end[2]])
            pitman = np.array([end[0] + gap, pitman[1], pitman[2]])
        wanted = readings.value("drag_link.arm")
        if wanted is not None:
            end = np.array([*(foot[:2] + _scaled(end[:2] - foot[:2], wanted)), end[2]])
        drag, drag_arm = end, float(np.hypot(*(end[:2] - foot[:2])))
        drag_x = end[0] - foot[0]
    arm = float(np.hypot(*(tie[0, :2] - feet[0, :2])))
    rods = ("drag_link_wheel", "drag_link_pitman")
    ties = [f"point_tie_rod_end_{side}_ahead" in rig.given for side in SIDES]
    return Layout(
        pivot=pivot,
        axis=axis,
        tie=tie,
        drag_on=held,
        drag=drag,
        pitman=pitman,
        arm=arm,
        square_arm=lever(pivot[0], axis[0], tie[0], tie[1]),
        drag_arm=drag_arm or arm,
        drag_square=lever(pivot[knuckle], axis[knuckle], end, pitman),
        ahead=bool(tie[0, 0] > feet[0, 0]),
        drag_ahead=bool(drag_x > 0.0),
        hand=1.0 if float(end[1]) > float(pitman[1]) else -1.0,
        taped=any(ties) and all(f"point_{name}_ahead" in rig.given for name in rods),
    )


def _drag(points: Hardpoints, readings: Readings, at: dict[str, Array]) -> tuple[int, Array, Array]:
    """Where the drag link ends and what it holds; mirrored where the readings say the other."""
    end, pitman = at["drag_link_wheel"].copy(), at["drag_link_pitman"].copy()
    held = drag_on(points)
    said = readings.word("drag_link.on")
    if not said:
        return held, end, pitman
    if said == "tie rod":
        return linkage.ON_TIE_ROD, end, pitman
    left = said == "left knuckle"
    if left != bool(end[1] > 0.0):
        end[1], pitman[1] = -end[1], -pitman[1]
    return (linkage.ON_LEFT if left else linkage.ON_RIGHT), end, pitman


def _on_axis(pivot: Array, axis: Array, height: float) -> Array:
    """Point of a kingpin's axis at a height."""
    return np.asarray(pivot + axis * (height - pivot[2]) / axis[2])


def _scaled(offset: Array, length: float) -> Array:
    """Offsets in plan with another length."""
    size = np.linalg.norm(offset, axis=-1, keepdims=True)
    return np.asarray(offset * length / np.maximum(size, 1e-6))


def wheels(layout: Layout, toe: float, mean: float, tie: Array, drag: Array) -> Array:
    """Headings left and right, (lanes, 2), rad, for rods that much longer than they are, (lanes,).

    ``toe`` and ``mean`` are whole toe-in and mean heading as the rods are now.
    """
    sides = np.array([1.0, -1.0])
    spindle = linkage.spindle_direction(0.5 * toe - sides * mean, 0.0, sides)
    tied = linkage.rod_lengths(layout.tie[0], layout.tie[1])
    share = layout.drag[0]
    at = (
        (1.0 - share) * layout.tie[0] + share * layout.tie[1]
        if layout.drag_on == linkage.ON_TIE_ROD
        else layout.drag
    )
    dragged = linkage.rod_lengths(layout.pitman, at)
    steering = linkage.Steering(
        pivot=layout.pivot,
        axis=layout.axis,
        spindle=spindle,
        tie_end=layout.tie,
        drag_on=layout.drag_on,
        drag_end=layout.drag,
        pitman=layout.pitman,
        tie_length=tied + np.asarray(tie),
        drag_length=dragged + np.asarray(drag),
    )
    # The axle stays where it rides, whatever holds it there: any four rods that fix it will do.
    frame = np.array([[-0.9, 0.4, 0.0], [-0.9, -0.4, 0.0], [-0.8, 0.0, 0.2], [0.1, 0.4, 0.1]])
    axle = np.array([[0.0, 0.45, -0.1], [0.0, -0.45, -0.1], [0.0, 0.0, 0.2], [0.1, -0.4, 0.1]])
    posed = linkage.axle_poses(
        linkage.axle_linkage(frame, axle, abs(layout.pivot[0, 1]) + 0.08, steering=steering),
        np.zeros((1, 2)),
    )
    sound = (posed.status == linkage.POSED)[:, None]
    return np.where(sound, posed.wheels[:, :, 1], nan)


def rods_for(layout: Layout, toe: float, mean: float, wanted: float) -> tuple[float, float] | None:
    """Growth of tie rod and drag link, m, that gives a toe and both wheels straight; exact.

    None where the rods cannot reach.

    References
    ----------
    geometry: two rods of fixed length, solved by Newton's rule
    """
    grown = np.zeros(2)
    for _ in range(STEPS):
        tried = grown + NUDGE * np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]])
        turned = wheels(layout, toe, mean, tried[:, 0], tried[:, 1])
        off = np.stack([turned[:, 1] - turned[:, 0] - wanted, turned.sum(axis=-1)], axis=-1)
        if not np.all(np.isfinite(off)):
            return None
        slope = ((off[1:] - off[0]) / NUDGE).T
        if abs(np.linalg.det(slope)) < 1e-6:
            return None
        move = np.linalg.solve(slope, off[0])
        grown = grown - move
        if float(np.max(np.abs(move))) < 1e-9:
            break
    return float(grown[0]), float(grown[1])


def lever(pivot: Array, axis: Array, end: Array, other: Array) -> float:
    """Arm about a kingpin's axis of a rod from an end to the other, square to both, m.

    References
    ----------
    statics: moment of a unit pull about an axis
    """
    along = (other - end) / np.linalg.norm(other - end)
    return abs(float(np.dot(np.cross(end - pivot, along), axis)))


def heading_gain(layout: Layout, growth: float) -> tuple[float, float]:
    """By how much left and right wheel turn left when the tie rod alone grows; exact, rad."""
    turned = wheels(layout, 0.0, 0.0, np.array([growth]), np.zeros(1))[0]
    return float(turned[0]), float(turned[1])
