"""Common cures tried one at a time: what each makes better, what worse, and by how much."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from axlewright.errors import AxlewrightError
from axlewright.geometry.cures_kept import cure_steps
from axlewright.geometry.measuring import Measures, measures
from axlewright.geometry.points import SIDES, Hardpoints, forgings_turned
from axlewright.rig import Rig

STEP = 0.05  # m: a usual drop arm or raised bracket; memory
LEAST: Final = {  # smaller changes are not told: they cannot be felt or measured at home
    "caster": np.radians(0.3),
    "pinion": np.radians(0.3),
    "bump_steer": np.radians(0.1),
    "shift": 0.003,
    "stop_room": 0.005,
    "parked": 300.0,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """One number that a cure moves: its name, before and after, SI; better or worse."""

    measure: str
    before: float
    after: float
    better: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Fix:
    """One cure: its key, how much of it was tried (m or rad), and what it moves.

    ``steps`` are the fields of the rig file that make it a change, by path; none where it cannot
    be written as one.
    """

    key: str
    amount: float
    shifts: tuple[Shift, ...]
    refused: str = ""
    steps: Mapping[str, str] = field(default_factory=dict)

    @property
    def better(self) -> tuple[Shift, ...]:
        """What it makes better."""
        return tuple(each for each in self.shifts if each.better)

    @property
    def worse(self) -> tuple[Shift, ...]:
        """What it makes worse."""
        return tuple(each for each in self.shifts if not each.better)


def fixes(
    points: Hardpoints, now: Measures, wanted: Measures, rig: Rig | None = None
) -> tuple[Fix, ...]:
    """Try the common cures on an axle; ``wanted`` is how it was when its places were taped.

    With the ``rig`` each cure also tells the steps that make it a change.
    """
    tried = []
    for key, amount, made in _cures(points, now, wanted):
        try:
            _, after = measures(made)
        except AxlewrightError as trouble:
            tried.append(Fix(key=key, amount=amount, shifts=(), refused=trouble.problem))
            continue
        turn = amount if key == "turned_forgings" else 0.0
        steps = {} if rig is None else cure_steps(rig, points, made, turn)
        tried.append(Fix(key=key, amount=amount, shifts=shifts(now, after, wanted), steps=steps))
    return tuple(tried)


def shifts(before: Measures, after: Measures, wanted: Measures) -> tuple[Shift, ...]:
    """What moved enough to matter, and whether it came nearer to what is wanted."""
    out = []
    for name, least in LEAST.items():
        one, two = getattr(before, name), getattr(after, name)
        aim = getattr(wanted, name) if name in {"caster", "pinion", "stop_room"} else 0.0
        if not np.isfinite(one) or not np.isfinite(two):
            continue
        moved = abs(one - aim) - abs(two - aim)
        if abs(two - one) >= least and abs(moved) >= 0.5 * least:
            out.append(Shift(measure=name, before=one, after=two, better=bool(moved > 0.0)))
    return tuple(out)


def _cures(
    points: Hardpoints, now: Measures, wanted: Measures
) -> list[tuple[str, float, Hardpoints]]:
    lost = wanted.caster - now.caster
    lift = float(points.columns["travel_lift"][0])
    out: list[tuple[str, float, Hardpoints]] = []
    if points.steers:
        drop = STEP if now.slope_apart >= 0.0 or lift > 0.0 else -STEP
        out.append(("drop_arm", drop, points.moved("drag_link_pitman", (0.0, 0.0, -drop))))
    if points.barred:
        raised = points.moved("track_bar_axle", (0.0, 0.0, STEP))
        out.append(("raised_track_bar", STEP, _centred(raised)))
        out.append(("track_bar_length", 0.0, _centred(points)))
    if points.arms != "leaves":
        if points.steers and abs(lost) > LEAST["caster"]:
            key, longer, made = _arms_for(points, wanted)
            out.append((key, longer, made))
        if lift > 0.01 and abs(lost) > LEAST["caster"]:
            out.append(("drop_brackets", lift, _dropped(points, lift)))
    if points.steers and abs(lost) > LEAST["caster"]:
        out.append(("turned_forgings", lost, turned(points, lost)))
    gap = points.columns["travel_bump_gap"]
    if lift > 0.005:
        columns = {**points.columns, "travel_bump_gap": gap - lift}
        out.append(("longer_stops", lift, replace(points, columns=columns)))
    return out


def turned(points: Hardpoints, more: float) -> Hardpoints:
    """Turn the end forgings on their tubes by an angle, top rearward."""
    return points.with_places(forgings_turned(points.at, np.full(points.lanes, more)))


def _centred(points: Hardpoints) -> Hardpoints:
    """Set the track bar's length so that the axle stands in the middle."""
    made = points
    for _ in range(4):
        _, now = measures(made)
        bar = made.rod("track_bar")
        way = np.sign(bar.frame[0, 1] - bar.axle[0, 1])
        made = made.longer("track_bar", way * now.shift)
    return made


def _arms_for(points: Hardpoints, wanted: Measures) -> tuple[str, float, Hardpoints]:
    """Other arm lengths that bring the caster back: the upper arms shorter, or the lower longer."""
    names = [rod.name for rod in points.rods if rod.name.startswith(("third", "upper"))]
    key = "adjustable_upper_arms"
    if not names:
        return "turned_arms", 0.0, _bushed(points, wanted)
    longer = _solved(lambda by: _with(points, names, by), lambda m: m.caster - wanted.caster)
    return key, longer, _with(points, names, longer)


def _bushed(points: Hardpoints, wanted: Measures) -> Hardpoints:
    """Radius arms with their bolts at the axle turned in the arm, as offset bushings do."""

    def made(angle: float) -> Hardpoints:
        at = dict(points.at)
        for side in SIDES:
            middle = 0.5 * (at[f"arm_axle_{side}"] + at[f"arm_axle_far_{side}"])
            for name in ("arm_axle", "arm_axle_far"):
                arm = at[f"{name}_{side}"] - middle
                cos, sin = np.cos(angle), np.sin(angle)
                at[f"{name}_{side}"] = middle + np.stack(
                    [
                        cos * arm[:, 0] + sin * arm[:, 2],
                        arm[:, 1],
                        -sin * arm[:, 0] + cos * arm[:, 2],
                    ],
                    axis=-1,
                )
        return points.with_places(at)

    return made(_solved(made, lambda m: m.caster - wanted.caster, step=0.02))


def _with(points: Hardpoints, names: list[str], by: float) -> Hardpoints:
    made = points
    for name in names:
        made = made.longer(name, by)
    return made


def _solved(
    made: Callable[[float], Hardpoints], miss: Callable[[Measures], float], step: float = 0.005
) -> float:
    """Secant steps to where a measure is met."""
    one, two = 0.0, step
    at_one, at_two = miss(measures(made(one))[1]), miss(measures(made(two))[1])
    for _ in range(6):
        if abs(at_two - at_one) < 1e-12 or abs(at_two) < 1e-5:
            break
        one, two, at_one = two, two - at_two * (two - one) / (at_two - at_one), at_two
        two = float(np.clip(two, -0.15, 0.15))
        at_two = miss(measures(made(two))[1])
    return two


def _dropped(points: Hardpoints, by: float) -> Hardpoints:
    """Lower the arms' ends at the frame."""
    at = dict(points.at)
    for name, place in points.at.items():
        if name.startswith(("arm_frame", "upper_arm_frame", "third_arm_frame")):
            at[name] = place + np.array([0.0, 0.0, -by])
    return points.with_places(at)
