"""The swap of one rig: its tasks, their order for these people, times, torques, oil and masses."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.errors import AxlewrightError
from axlewright.rig import Change, Column, Rig, drawn_geometry_columns, point_columns
from axlewright.swap.bolts import TorqueLine, torque_lines
from axlewright.swap.chosen import Work, chosen
from axlewright.swap.doubt import DRAWS, Band, band_of, drawn, ends_drawn, middle_of
from axlewright.swap.facts import QUESTIONS, SKILLS, Facts, facts_of
from axlewright.swap.oil import OilLevel, oil_level
from axlewright.swap.schedule import Schedule, scheduled
from axlewright.tables import (
    AlignmentTarget,
    GateQuestion,
    SwapMeasure,
    alignment_target,
    gate_questions,
    swap_measures,
)
from axlewright.upkeep import WantedLook, wanted_looks

GRAVITY: Final = 9.80665
AGREE: Final = 0.01  # front and rear may differ by this in rolling speed: common practice
BY_HAND: Final[Mapping[str, tuple[float, float, float]]] = {  # kg, low, middle, high; memory
    "coil": (6.0, 9.0, 14.0),
    "coil-over": (7.0, 10.0, 15.0),
    "hub": (6.0, 9.0, 14.0),
    "shaft": (5.0, 8.0, 13.0),
    "knuckle": (8.0, 13.0, 20.0),
}
FIRST_OF_SWAP: Final = frozenset({"support", "strip", "out", "bench", "in", "build"})
LAST_OF_SWAP: Final = "bush_torque"


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """One plan.

    Times are bands in seconds: ``hands`` of all people together, ``whole`` from the first step to
    the last with the hands that there are, ``swap`` from the first jack to the last bolt with the
    weight on the wheels (None where nothing is lifted); ``bad_day`` is the end that one day in
    twenty is beyond. ``lifts`` are masses in kg, low, middle and high; ``asked`` are the questions
    whose other answer would change this plan.
    """

    rig: str
    axle: str
    digest: str
    changes: tuple[str, ...]
    facts: Facts
    people: int
    skill: str
    work: Work
    schedule: Schedule
    minutes: Mapping[str, tuple[float, float]]
    hands: Band
    whole: Band
    swap: Band | None
    lines: tuple[TorqueLine, ...]
    oil: OilLevel | None
    toe: AlignmentTarget | None
    tyre_across: float
    lifts: Mapping[str, tuple[float, float, float]]
    questions: tuple[GateQuestion, ...]
    measures: tuple[SwapMeasure, ...]
    blocks: tuple[str, ...]
    asked: tuple[str, ...]
    looks: tuple[WantedLook, ...]

    @property
    def order(self) -> tuple[str, ...]:
        """Keys of the tasks by start."""
        return self.schedule.order

    @property
    def bad_day(self) -> float:
        """Seconds that one day in twenty is longer than."""
        return self.whole.high


def planned(
    before: Rig,
    changes: Sequence[tuple[Change, Rig]] = (),
    *,
    people: int = 2,
    skill: str = "practised",
    said: Mapping[str, str] | None = None,
    kind: str = "",
    exact: bool | None = None,
) -> Plan:
    """Plan the way from a rig to what it is after some changes, each given with the rig after it.

    Raises `AxlewrightError` where the people are too few, or a word is not known.
    """
    if skill not in SKILLS:
        raise AxlewrightError(
            f"There is no skill {skill[:40]!r}.", remedy=f"One of: {', '.join(SKILLS)}."
        )
    after = changes[-1][1] if changes else before
    facts = facts_of(before, after, [change for change, _ in changes], said, kind)
    work = chosen(facts)
    ends = {task.key: task.practised if skill == "practised" else task.first for task in work.tasks}
    schedule = scheduled(
        work, people, {key: middle_of(each) for key, each in ends.items()}, exact=exact
    )
    times = drawn(work, ends)
    done = ends_drawn(work, schedule, times)
    last = np.maximum.reduce(list(done.values()))
    hands = sum((task.people * times[task.key] for task in work.tasks), np.zeros(DRAWS))
    fills = facts.hold("kind=bare_housing/part_built_housing/geared_axle/shafts/gears")
    studs = before.given.get("stud_count")
    return Plan(
        rig=before.name,
        axle=before.axle,
        digest=after.digest,
        changes=tuple(change.name for change, _ in changes),
        facts=facts,
        people=people,
        skill=skill,
        work=work,
        schedule=schedule,
        minutes=ends,
        hands=band_of(np.asarray(hands)),
        whole=band_of(np.asarray(last)),
        swap=_swap(work, times, done),
        lines=torque_lines(work, facts, 0 if studs is None else round(studs.value)),
        oil=oil_level(after, high_pinion=facts.word("pinion") == "above") if fills else None,
        toe=_toe(after) if "toe_home" in work.by_key else None,
        tyre_across=after.tyre.outer_diameter,
        lifts=_lifts(before, after),
        questions=tuple(each for each in gate_questions().values() if facts.hold(each.only_if)),
        measures=tuple(each for each in swap_measures().values() if facts.hold(each.only_if)),
        blocks=_blocks(after, work),
        asked=_asked(facts, fills=fills),
        looks=_looks(after, work),
    )


def _asked(facts: Facts, *, fills: bool) -> tuple[str, ...]:
    """Questions whose other answer would change this plan."""

    def outcome(told: Facts) -> tuple[object, ...]:
        work = chosen(told)
        return tuple(work.by_key), tuple(line.key for line in torque_lines(work, told))

    now = outcome(facts)
    found = []
    for name, (_, words) in QUESTIONS.items():
        others = [word for word in words if word != facts.word(name)]
        if (name == "pinion" and fills) or any(
            outcome(facts.saying(name, word)) != now for word in others
        ):
            found.append(name)
    return tuple(found)


def _looks(rig: Rig, work: Work) -> tuple[WantedLook, ...]:
    if "apart_looks" not in work.by_key:
        return ()
    return wanted_looks("apart", rig.axle, rig.words)


def _swap(work: Work, times: Mapping[str, Column], done: Mapping[str, Column]) -> Band | None:
    if LAST_OF_SWAP not in work.by_key:
        return None
    lifted = [
        done[task.key] - times[task.key] for task in work.tasks if task.stage in FIRST_OF_SWAP
    ]
    return band_of(np.asarray(done[LAST_OF_SWAP] - np.minimum.reduce(lifted)))


def _toe(rig: Rig) -> AlignmentTarget:
    return alignment_target("toe", rig.axle, rig.tyre.outer_diameter)


def _lifts(before: Rig, after: Rig) -> Mapping[str, tuple[float, float, float]]:
    found = dict(BY_HAND)
    for name, rig in (("axle", before), ("new axle", after)):
        c = drawn_geometry_columns(rig, 0, DRAWS)
        wheel = c["line_tyre_mass"] + c["line_wheel_mass"]
        found[name] = _three(np.maximum(c["axle_mass"] - 2.0 * wheel, 0.3 * c["axle_mass"]))
        found["wheel"] = _three(wheel)
        found["front"] = _three(c["axle_weight"] / GRAVITY)
    return found


def _three(values: Column) -> tuple[float, float, float]:
    low, middle, high = np.quantile(values, [0.05, 0.5, 0.95])
    return float(low), float(middle), float(high)


def _blocks(rig: Rig, work: Work) -> tuple[str, ...]:
    if "ratio_check" not in work.by_key or not {"axle_ratio", "other_ratio"} <= rig.given.keys():
        return ()
    c = point_columns(rig)
    here = float(c["axle_ratio"][0] / c["radius"][0])
    there = float(c["other_ratio"][0] / c["other_hub_height"][0])
    if abs(here / there - 1.0) <= AGREE:
        return ()
    gap = f"{100.0 * abs(here / there - 1.0):.1f} %"
    told = f"Front and rear do not agree: with their tyres the two axles turn {gap} apart."
    return (f"{told} Nothing is fitted until that is explained.",)
