"""What every joint, spring, damper and stop does while an axle moves."""

import numpy as np

from axlewright.geometry.moving import Motion, carried_by, turned_by, unit_vector
from axlewright.geometry.points import (
    SIDES,
    Hardpoints,
    drag_end,
    drag_on,
    kingpin_axes,
    tie_rod_share,
)
from axlewright.physics import linkage
from axlewright.rig import Column


def swings(points: Hardpoints, made: Motion) -> dict[str, Column]:
    """How far each rod has swung at the worse of its ends since it was taped, (n,) rad.

    Turning about a ball joint's own stud is free and not counted.
    """
    out: dict[str, Column] = {}
    for rod in points.rods:
        if rod.name.startswith("leaf"):
            continue
        line = unit_vector(carried_by(made, rod.axle) - rod.frame)
        first = unit_vector(rod.axle - rod.frame)
        back = np.einsum("nji,nj->ni", made.turn, line)
        out[rod.name] = np.maximum(_between(line, first), _between(back, first))
    if points.steers:
        out |= _steering_swings(points, made)
    return out


def spring_lengths(points: Hardpoints, made: Motion) -> Column:
    """Length of both springs, (n, 2) m."""
    return _lengths(points, made, "spring_top", "spring_seat")


def damper_lengths(points: Hardpoints, made: Motion) -> Column:
    """Length of both dampers, (n, 2) m."""
    return _lengths(points, made, "damper_frame", "damper_axle")


def stop_gaps(points: Hardpoints, made: Motion) -> Column:
    """Gap at both bump stops, over the springs' seats, (n, 2) m."""
    name = "leaf_pad" if points.arms == "leaves" else "spring_seat"
    rise = [made.at[f"{name}_{side}"][:, 2] - points.at[f"{name}_{side}"][:, 2] for side in SIDES]
    return np.asarray(points.columns["travel_bump_gap"][..., None] - np.stack(rise, axis=-1))


def pinion_rise(points: Hardpoints, made: Motion) -> Column:
    """How far the pinion points up against how it was taped, rad."""
    return np.asarray(made.pose[:, 4] if points.steers else -made.pose[:, 4])


def shaft_lengths(points: Hardpoints, made: Motion) -> Column:
    """Distance between the propeller shaft's joints, m."""
    return linkage.rod_lengths(made.at["pinion_joint"], points.at["transfer_joint"])


def _lengths(points: Hardpoints, made: Motion, top: str, foot: str) -> Column:
    if f"{top}_left" not in points.at:
        return np.full((len(made.status), 2), np.nan)
    return np.stack(
        [
            linkage.rod_lengths(made.at[f"{foot}_{side}"], points.at[f"{top}_{side}"])
            for side in SIDES
        ],
        axis=-1,
    )


def rod_ends(points: Hardpoints, made: Motion) -> dict[str, Column]:
    """Where tie rod and drag link end at the wheels in every pose, by name, (n, 3) m."""
    held = drag_on(points)
    ends = [
        _swung(points, made, points.at[f"tie_rod_end_{name}"], side)
        for side, name in enumerate(SIDES)
    ]
    if held == linkage.ON_TIE_ROD:
        share = tie_rod_share(points.at)[..., None]
        wheel = (1.0 - share) * ends[0] + share * ends[1]
    else:
        wheel = _swung(points, made, points.at["drag_link_wheel"], held)
    return {"tie_rod_left": ends[0], "tie_rod_right": ends[1], "drag_link": wheel}


def _steering_swings(points: Hardpoints, made: Motion) -> dict[str, Column]:
    held = drag_on(points)
    axes, ends = kingpin_axes(points), rod_ends(points, made)
    studs = [turned_by(made, axes[:, side]) for side in (0, 1)]
    tie = unit_vector(ends["tie_rod_left"] - ends["tie_rod_right"])
    first = unit_vector(points.at["tie_rod_end_left"] - points.at["tie_rod_end_right"])
    out = {
        "tie_rod": np.maximum(*(_tilt(tie, studs[side], first, axes[:, side]) for side in (0, 1)))
    }
    pitman = points.at["drag_link_pitman"]
    on = 1 if held == linkage.ON_TIE_ROD else held
    stud, axis = studs[on], axes[:, on]
    line = unit_vector(ends["drag_link"] - pitman)
    start = unit_vector(drag_end(points.at, points.words) - pitman)
    upright = np.array([0.0, 0.0, 1.0])
    out["drag_link"] = np.maximum(
        _tilt(line, stud, start, axis), _tilt(line, upright, start, upright)
    )
    return out


def _swung(points: Hardpoints, made: Motion, end: Column, side: int) -> Column:
    """Point of a knuckle after the wheel has turned about its kingpin."""
    name, axis = SIDES[side], kingpin_axes(points)[:, side]
    pivot = 0.5 * (points.at[f"kingpin_upper_{name}"] + points.at[f"kingpin_lower_{name}"])
    arm, angle = end - pivot, made.wheels[:, side, 0][:, None]
    along = np.sum(axis * arm, axis=-1, keepdims=True) * axis
    turned = along + np.cos(angle) * (arm - along) + np.sin(angle) * np.cross(axis, arm)
    return carried_by(made, pivot + turned)


def _tilt(line: Column, stud: Column, first: Column, axis: Column) -> Column:
    """Change of the angle between a rod and the stud it turns on."""
    now = np.arcsin(np.clip(np.sum(line * stud, axis=-1), -1.0, 1.0))
    then = np.arcsin(np.clip(np.sum(first * axis, axis=-1), -1.0, 1.0))
    return np.asarray(np.abs(now - then))


def _between(one: Column, other: Column) -> Column:
    return np.asarray(2.0 * np.arcsin(np.clip(0.5 * np.linalg.norm(one - other, axis=-1), 0, 1)))
