"""A swap under way: what is done, what was filled in, and what may not be ticked yet, and why."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from axlewright.swap.bolts import OwnBolt, TorqueLine, with_own
from axlewright.swap.plan import Plan
from axlewright.tables import Task

LAST_GATE: Final = "before_driving"
VALUES: Final = "values_found"


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """A torque as somebody wrote it: N m, the words, and where the maker printed it."""

    torque: float
    text: str
    printed: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a swap has come.

    ``done`` leads from task to photo (its digest, or nothing), ``left_out`` from task to reason,
    ``yes`` holds the questions before driving that were answered so, ``measured`` leads from
    "before/" or "after/" and a measure to what was written; ``bolts`` are those that somebody read.
    """

    done: Mapping[str, str] = field(default_factory=dict)
    left_out: Mapping[str, str] = field(default_factory=dict)
    values: Mapping[str, Set] = field(default_factory=dict)
    yes: frozenset[str] = frozenset()
    measured: Mapping[str, str] = field(default_factory=dict)
    bolts: Mapping[str, OwnBolt] = field(default_factory=dict)

    def behind(self, key: str) -> bool:
        """Whether a task is done or was left out with a reason."""
        return key in self.done or key in self.left_out


def lines_of(plan: Plan, progress: Progress) -> tuple[TorqueLine, ...]:
    """Every torque line of a plan, told for the bolts that somebody read."""
    return tuple(with_own(line, progress.bolts.get(line.key)) for line in plan.lines)


def missing_values(plan: Plan, progress: Progress) -> tuple[str, ...]:
    """Lines that only the maker fills, and that are empty."""
    return tuple(
        line.what
        for line in plan.lines
        if line.by == "maker" and not _printed(progress.values.get(line.key))
    )


def ready(plan: Plan, progress: Progress) -> bool:
    """Whether work may begin: no maker's line empty, and nothing that blocks."""
    return not plan.blocks and not missing_values(plan, progress)


def next_up(plan: Plan, progress: Progress) -> tuple[Task, ...]:
    """Tasks that nothing but their own ticking holds up, in the planned order."""
    return tuple(
        plan.work.by_key[key]
        for key in plan.order
        if not progress.behind(key) and all(progress.behind(k) for k in plan.work.after[key])
    )


def refusals(
    plan: Plan, progress: Progress, key: str, *, photo: bool = False, stopped: bool = False
) -> tuple[str, ...]:
    """Why a task may not be ticked; nothing where it may.

    ``photo`` says that one comes with it, ``stopped`` that something found on the rig says STOP.
    """
    task = plan.work.by_key.get(key)
    if task is None:
        return (f"There is no step {key[:40]!r} in this plan.",)
    why = [
        f"First: {plan.work.by_key[each].title}."
        for each in plan.work.after[key]
        if not progress.behind(each)
    ]
    why += list(plan.blocks)
    empty = missing_values(plan, progress)
    if empty and (task.stage != "prepare" or key == VALUES):
        why.append(f"The plan is not ready: the maker's value is missing for {', '.join(empty)}.")
    if task.people > plan.people:
        why.append(f"It needs {task.people} people.")
    if task.photo_must and not photo:
        why.append(f"It needs its photo: {task.photo}.")
    why += [
        f"Its torque line is empty: {line.what}."
        for line in plan.lines
        if line.task == key and line.key not in progress.values
    ]
    if key == LAST_GATE:
        why += _before_driving(plan, progress)
    if stopped and (key == LAST_GATE or task.where == "road"):
        why.append("Something found on this axle says STOP. Nothing is driven until it is settled.")
    return tuple(dict.fromkeys(why))


def leave_refusals(plan: Plan, progress: Progress, key: str, reason: str) -> tuple[str, ...]:
    """Why a task may not be left out; nothing where it may."""
    task = plan.work.by_key.get(key)
    if task is None:
        return (f"There is no step {key[:40]!r} in this plan.",)
    why = []
    if task.gate or task.photo_must or task.moves != "no" or key == LAST_GATE:
        why.append("This step is never left out.")
    if any(line.task == key for line in plan.lines):
        why.append("It tightens something; a step with a torque line is never left out.")
    if not reason.strip():
        why.append("Why does this rig not need it?")
    if not progress.behind(key):
        why += [
            f"First: {plan.work.by_key[each].title}."
            for each in plan.work.after[key]
            if not progress.behind(each)
        ]
    return tuple(why)


def undone(plan: Plan, progress: Progress, key: str) -> Progress:
    """Progress without a task, and without everything that was done after it."""
    gone = {key} | {each for each in plan.work.by_key if key in plan.work.ancestors[each]}
    return replace(
        progress,
        done={each: photo for each, photo in progress.done.items() if each not in gone},
        left_out={each: why for each, why in progress.left_out.items() if each not in gone},
        yes=frozenset() if LAST_GATE in gone else progress.yes,
    )


def _before_driving(plan: Plan, progress: Progress) -> list[str]:
    why = [
        f"Not answered with yes: {each.question}"
        for each in plan.questions
        if each.key not in progress.yes
    ]
    return why + [
        f"Its torque line is empty: {line.what}."
        for line in plan.lines
        if line.key not in progress.values
    ]


def _printed(value: Set | None) -> bool:
    return value is not None and bool(value.printed)
