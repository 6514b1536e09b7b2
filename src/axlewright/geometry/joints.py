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


def _steering_swings(points: Hardpoints, made: Motion) -> dict[str, Column]:
    held = drag_on(points)
    axes = kingpin_axes(points)
    ends, studs = [], []
    for side in (0, 1):
        pivot = 0.5 * (
            points.at[f"kingpin_upper_{SIDES[side]}"] + points.at[f"kingpin_lower_{SIDES[side]}"]
        )
        end = points.at[f"tie_rod_end_{SIDES[side]}"]
        ends.append(_swung(points, made, pivot, axes[:, side], end, side))
        studs.append(turned_by(made, axes[:, side]))
    tie = unit_vector(ends[0] - ends[1])
    first = unit_vector(points.at["tie_rod_end_left"] - points.at["tie_rod_end_right"])
    out = {
        "tie_rod": np.maximum(*(_tilt(tie, studs[side], first, axes[:, side]) for side in (0, 1)))
    }
    pitman = points.at["drag_link_pitman"]
    if held == linkage.ON_TIE_ROD:
        share = tie_rod_share(points.at)[..., None]
        wheel, stud, axis = (1.0 - share) * ends[0] + share * ends[1], studs[1], axes[:, 1]
    else:
        pivot = 0.5 * (
            points.at[f"kingpin_upper_{SIDES[held]}"] + points.at[f"kingpin_lower_{SIDES[held]}"]
        )
        wheel = _swung(points, made, pivot, axes[:, held], points.at["drag_link_wheel"], held)
        stud, axis = studs[held], axes[:, held]
    line = unit_vector(wheel - pitman)
    start = unit_vector(drag_end(points.at, points.words) - pitman)
    upright = np.array([0.0, 0.0, 1.0])
    out["drag_link"] = np.maximum(
        _tilt(line, stud, start, axis), _tilt(line, upright, start, upright)
    )
    return out


def _swung(
    points: Hardpoints, made: Motion, pivot: Column, axis: Column, end: Column, side: int
) -> Column:
    """Point of a knuckle after the wheel has turned about its kingpin."""
    del points
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
