"""The swap as tasks: what to do, after what, with how many, in what time, and what can hurt."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One task of the swap.

    `after` are keys of tasks that come before it. `only_if` is read by the room that plans:
    words parted by blanks all hold, those parted by a stroke are any of them. `practised` and
    `first` are the least and most of its time in seconds, 90 % band. `moves` is no, vehicle or
    axle; while anything moves nobody is under it. `gate` is a task that is never left out.
    """

    key: str
    title: str
    stage: str
    rank: int
    after: tuple[str, ...]
    only_if: str
    people: int
    skill: str
    practised: tuple[float, float]
    first: tuple[float, float]
    where: str
    moves: str
    under: bool
    gate: bool
    photo: str
    photo_must: bool
    lifts: str
    tools: str
    consumables: str
    fragile: str
    do: str
    caution: str
    begins: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskBolt:
    """Bolts that a task tightens.

    `by` is maker where no target is ever computed, range where one is. `thread` and `grade` are
    usual ones, to be replaced by those of the rig; empty where there is no usual one. `count` is
    0 where the rig tells it.
    """

    key: str
    task: str
    only_if: str
    what: str
    count: int
    thread: str
    grade: str
    by: str
    note: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class GateQuestion:
    """One question that is answered with yes before driving."""

    key: str
    only_if: str
    question: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapMeasure:
    """One thing measured before and again after; `procedure` is the guided reading, if any."""

    key: str
    only_if: str
    title: str
    note: str
    procedure: str
    origin: Origin


@cache
def tasks() -> Mapping[str, Task]:
    """Read every task, in the order of the book."""
    return {
        row["key"]: Task(
            key=row["key"],
            title=row["title"],
            stage=row["stage"],
            rank=int(row["rank"]),
            after=tuple(row["after"].split()),
            only_if=row["only_if"],
            people=int(row["people"]),
            skill=row["skill"],
            practised=_seconds(row, "minutes"),
            first=_seconds(row, "first"),
            where=row["where"],
            moves=row["moves"],
            under=row["under"] == "yes",
            gate=row["gate"] == "yes",
            photo=row["photo"],
            photo_must=row["photo_must"] == "yes",
            lifts=row["lifts"],
            tools=row["tools"],
            consumables=row["consumables"],
            fragile=row["fragile"],
            do=row["do"],
            caution=row["caution"],
            begins=row["begins"],
            origin=origin(row),
        )
        for row in rows("tasks")
    }


@cache
def task_bolts() -> Mapping[str, TaskBolt]:
    """Read the bolts of the tasks."""
    return {
        row["key"]: TaskBolt(
            key=row["key"],
            task=row["task"],
            only_if=row["only_if"],
            what=row["what"],
            count=int(row["count"]),
            thread=row["thread"],
            grade=row["grade"],
            by=row["by"],
            note=row["note"],
            origin=origin(row),
        )
        for row in rows("tasks_bolts")
    }


@cache
def gate_questions() -> Mapping[str, GateQuestion]:
    """Read what is asked before driving."""
    return {
        row["key"]: GateQuestion(
            key=row["key"],
            only_if=row["only_if"],
            question=row["question"],
            origin=origin(row),
        )
        for row in rows("tasks_gate")
    }


@cache
def swap_measures() -> Mapping[str, SwapMeasure]:
    """Read what is measured before and after."""
    return {
        row["key"]: SwapMeasure(
            key=row["key"],
            only_if=row["only_if"],
            title=row["title"],
            note=row["note"],
            procedure=row["procedure"],
            origin=origin(row),
        )
        for row in rows("tasks_measures")
    }


def _seconds(row: Mapping[str, str], kind: str) -> tuple[float, float]:
    return 60.0 * float(row[f"{kind}_low"]), 60.0 * float(row[f"{kind}_high"])
