"""What touches, tops out, binds or comes loose first, in bump, in droop and in articulation."""

from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.geometry.joints import damper_lengths, spring_lengths, stop_gaps, swings
from axlewright.geometry.moving import Motion, motion
from axlewright.geometry.points import Hardpoints, rod_in_words
from axlewright.physics import linkage
from axlewright.rig import Column

Way: TypeAlias = Literal["bump", "droop", "articulation"]
WAYS: Final[tuple[Way, ...]] = ("bump", "droop", "articulation")
FARTHEST, STEPS = 0.30, 61
MOVES: Final[dict[Way, tuple[float, float]]] = {
    "bump": (1.0, 1.0),
    "droop": (-1.0, -1.0),
    "articulation": (1.0, -1.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One thing that ends the travel, or would: how far from ride, m, and what it is.

    ``hard`` ends the travel; otherwise something only comes loose. ``at`` is infinite where it is
    never reached. In articulation it is how far each wheel goes, one up and one down.
    """

    way: Way
    what: str
    at: float
    hard: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is left at one pose until one thing happens: m, or rad for a joint; ``hard`` ends it."""

    what: str
    room: float
    angle: bool
    hard: bool


def rooms_left(points: Hardpoints, made: Motion, row: int) -> tuple[Left, ...]:
    """What is left at one row of a motion, everything that can touch, bind or come loose."""
    return tuple(
        Left(what=what, room=float(room[row]), angle="binds" in what, hard=hard)
        for what, room, hard in _rooms(points, made, "articulation")
    )


def limits(points: Hardpoints, way: Way) -> tuple[Limit, ...]:
    """Everything that ends one way of travel, first to last; points already at ride."""
    reach = np.linspace(0.0, FARTHEST, STEPS)
    low = -float(points.columns["travel_lift"][0])
    heights = low + reach[:, None] * np.array(MOVES[way])
    made = motion(points, heights)
    found = [
        Limit(way=way, what=what, at=_crossing(reach, room), hard=hard)
        for what, room, hard in _rooms(points, made, way)
    ]
    stuck = np.flatnonzero(made.status != linkage.POSED)
    if stuck.size:
        found.append(Limit(way=way, what="the linkage locks", at=float(reach[stuck[0]]), hard=True))
    return tuple(sorted(found, key=lambda each: each.at))


def first_hard(found: tuple[Limit, ...]) -> Limit:
    """The first thing that ends the travel."""
    return next((each for each in found if each.hard), found[-1])


def _rooms(points: Hardpoints, made: Motion, way: Way) -> list[tuple[str, Column, bool]]:
    c = {
        name: float(points.columns[name][0])
        for name in points.columns
        if name.startswith("travel_")
    }
    dampers, springs = damper_lengths(points, made), spring_lengths(points, made)
    rooms: list[tuple[str, Column, bool]] = []
    if way != "droop":
        rooms.append(("the bump stop touches", np.min(stop_gaps(points, made), axis=1), False))
        rooms.append(
            ("the damper is pushed in", np.min(dampers, axis=1) - c["travel_damper_shortest"], True)
        )
    if way != "bump":
        rooms.append(
            ("the damper is pulled out", c["travel_damper_longest"] - np.max(dampers, axis=1), True)
        )
        if "travel_spring_free" in c:
            rooms.append(
                ("the spring comes loose", c["travel_spring_free"] - np.max(springs, axis=1), False)
            )
    for name, swing in swings(points, made).items():
        rod = name in {"tie_rod", "drag_link"}
        most = c["travel_rod_swing" if rod else "travel_arm_swing"]
        part = "joint" if rod else "bushing"
        told = f"the {rod_in_words(name)}'s {part} binds"
        rooms.append((told, most - swing, True))
    return rooms


def _crossing(reach: Column, room: Column) -> float:
    """Where a room first becomes nought."""
    gone = np.flatnonzero(room < 0.0)
    if not gone.size:
        return float("inf")
    after = int(gone[0])
    if after == 0:
        return 0.0
    one, two = room[after - 1], room[after]
    return float(reach[after - 1] + (reach[after] - reach[after - 1]) * one / (one - two))
