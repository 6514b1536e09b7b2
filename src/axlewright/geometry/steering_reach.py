"""What keeps drag link and tie rod from reaching: which of them, and by how much."""

from typing import Final

import numpy as np

from axlewright.geometry.points import Hardpoints, drag_on, kingpin_axes, tie_rod_share
from axlewright.physics import linkage
from axlewright.rig import Column

MOST_TURN: Final = np.radians(75.0)  # of a knuckle; no joint lets it turn further
TURNS: Final = 601


def steering_miss(
    points: Hardpoints, pose: Column, turn: Column, arm: Column | None, lane: int
) -> str:
    """Say which rod of the steering cannot reach at a pose (6,) with its matrix (3, 3).

    ``arm`` (n, 3) is the drop arm's end; straight ahead if there is none. Both knuckles are turned
    through all they can: the drag link first, then the tie rod at the turns that it allows.
    """
    ends = [_swept(points, pose, turn, lane, side) for side in (0, 1)]
    tie_own = _own(points, "tie_rod_end_left", "tie_rod_end_right", lane)
    apart = np.linalg.norm(ends[0][0][:, None] - ends[1][0][None], axis=-1)
    held = drag_on(points)
    pitman = _row(points.at["drag_link_pitman"] if arm is None else arm, lane)
    drag = points.drag_length
    drag_own = float(drag[lane % len(drag)]) if drag is not None else 0.0
    if held == linkage.ON_TIE_ROD:
        told = _told("tie rod", apart, tie_own)
        if told:
            return told
        one = np.argmin(np.abs(apart - tie_own), axis=1)  # both knuckles held by the tie rod
        fits = np.abs(apart[np.arange(TURNS), one] - tie_own) < 0.005
        share = float(tie_rod_share({key: at[lane % len(at)] for key, at in points.at.items()}))
        hung = (1.0 - share) * ends[0][0] + share * ends[1][0][one]
        reach = np.linalg.norm(hung - pitman, axis=-1)[fits]
        return _told("drag link", reach, drag_own) or _both(drag_own, tie_own)
    reach = np.linalg.norm(ends[held][1] - pitman, axis=-1)
    told = _told("drag link", reach, drag_own)
    if told:
        return told
    near = np.argmin(np.abs(reach - drag_own))
    one = apart[near] if held == linkage.ON_LEFT else apart[:, near]
    turned = abs(np.degrees(np.linspace(-MOST_TURN, MOST_TURN, TURNS)[near]))
    told = _both(drag_own, tie_own)
    return _told("tie rod", one, tie_own) or f"{told}, the wheel turned by {turned:.0f}°,"


def _both(drag: float, tie: float) -> str:
    return (
        f"The drag link of {drag * 1e3:.0f} mm and the tie rod of {tie * 1e3:.0f} mm cannot both "
        "reach"
    )


def _told(name: str, lengths: Column, own: float) -> str:
    """Say by how much a rod misses the nearest of the lengths that it may be asked for."""
    low, high = float(np.min(lengths)), float(np.max(lengths))
    if low - 5e-4 <= own <= high + 5e-4:
        return ""
    miss = low - own if own < low else own - high
    way = "longer" if own < low else "shorter"
    return f"The {name} would have to be {miss * 1e3:.0f} mm {way} to reach"


def _swept(
    points: Hardpoints, pose: Column, turn: Column, lane: int, side: int
) -> tuple[Column, Column]:
    """Ends of tie rod and drag link on one knuckle through all its turns, (turns, 3) each."""
    name = ("left", "right")[side]
    at = points.at
    pivot = 0.5 * (
        _row(at[f"kingpin_upper_{name}"], lane) + _row(at[f"kingpin_lower_{name}"], lane)
    )
    axis = _row(kingpin_axes(points), lane)[side]
    angle = np.linspace(-MOST_TURN, MOST_TURN, TURNS)[:, None]
    found = []
    for end in (at[f"tie_rod_end_{name}"], at["drag_link_wheel"]):
        arm = _row(end, lane) - pivot
        swung = (
            np.cos(angle) * arm
            + np.sin(angle) * np.cross(axis, arm)
            + (1.0 - np.cos(angle)) * (axis @ arm) * axis
        )
        found.append(pose[:3] + (pivot + swung) @ turn.T)
    return found[0], found[1]


def _own(points: Hardpoints, one: str, other: str, lane: int) -> float:
    return float(np.linalg.norm(_row(points.at[one], lane) - _row(points.at[other], lane)))


def _row(place: Column, lane: int) -> Column:
    return np.asarray(place[lane % len(place)])
