"""What a change moves in an axle's geometry: the few numbers that a person feels or measures."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.errors import AxlewrightError
from axlewright.geometry.clearance import clearance
from axlewright.geometry.driveline_study import line_through
from axlewright.geometry.fixes import LEAST
from axlewright.geometry.measuring import measures
from axlewright.geometry.moving import motion
from axlewright.geometry.points import hardpoints
from axlewright.geometry.study import as_taped
from axlewright.rig import Rig, geometry_columns

HALF_DEGREE: Final = float(np.radians(0.5))
SMALLEST: Final = {  # smaller moves are not told: they cannot be felt or measured at home
    **LEAST,
    "toe": float(np.radians(0.05)),
    "hangs": 0.005,
    "lowest": 0.003,
    "approach": HALF_DEGREE,
    "crest": HALF_DEGREE,
    "joint_case": HALF_DEGREE,
    "joint_pinion": HALF_DEGREE,
}
MORE_IS_BETTER: Final = frozenset({"lowest", "approach", "crest", "hangs"})
NEITHER: Final = frozenset({"pinion", "stop_room"})  # better or worse only with what hangs on them


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """One number that a change moves: its name, before and after, SI; better, worse or neither."""

    measure: str
    before: float
    after: float
    better: bool | None


@dataclass(frozen=True, slots=True, kw_only=True)
class GeometryMoved:
    """Everything that a change moves, and why it cannot be told where a rod does not reach."""

    moved: tuple[Moved, ...]
    refused: str = ""


def geometry_moved(before: Rig, after: Rig) -> GeometryMoved:
    """Compare two rigs at ride height, middle values; what moved too little is left out."""
    try:
        one, two = _numbers(before), _numbers(after)
    except AxlewrightError as trouble:
        return GeometryMoved(moved=(), refused=trouble.problem)
    out = []
    for name, least in SMALLEST.items():
        was, now = one.get(name, np.nan), two.get(name, np.nan)
        if not (np.isfinite(was) and np.isfinite(now)) or abs(now - was) < least:
            continue
        out.append(Moved(measure=name, before=was, after=now, better=_better(name, was, now)))
    return GeometryMoved(moved=tuple(out))


def _better(name: str, was: float, now: float) -> bool | None:
    if name in NEITHER or (name == "caster" and now > was):
        return None
    if name in MORE_IS_BETTER:
        return now > was
    return name not in {"caster", "toe"} and abs(now) < abs(was)


def _numbers(rig: Rig) -> dict[str, float]:
    columns = geometry_columns(rig)
    built = columns if rig.built is None else geometry_columns(rig.built)
    points, now = measures(hardpoints(columns, rig.words, as_taped(built)))
    low = -float(columns["travel_lift"][0])
    level = motion(points, np.array([[low, low]]))
    joints = np.abs(line_through(points, level).joints[0])
    room = clearance(points, rig.tyre)
    told = {
        "pinion": now.pinion,
        "bump_steer": abs(now.bump_steer),
        "shift": now.shift,
        "stop_room": now.stop_room,
        "parked": abs(now.parked),
        "hangs": now.droop.at,
        "lowest": room.lowest.height,
        "approach": room.approach,
        "crest": room.breakover,
        "joint_case": float(joints[0]),
        "joint_pinion": float(joints[1]),
    }
    if points.steers:
        told["caster"] = now.caster
        told["toe"] = float(level.heading[0, 1] - level.heading[0, 0])
    return told
