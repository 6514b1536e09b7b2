"""How each reading is taken in a garage, step by step, with what people get wrong."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Procedure:
    """How one quantity is read; `group` says for what: set, bent, play, drive, round or gears.

    `low` and `high` (SI) hold what can be: beyond them something was misread. `sign`
    says what plus means, `pooled` is the scatter of one reading from practice, `holds` whether it
    judges what steers, stops or holds a wheel, `asks_bearing` whether it matters that a bearing's
    play was taken up. `sketch` is the picture in words.
    """

    key: str
    title: str
    group: str
    axle: str
    kind: str
    sides: tuple[str, ...]
    instruments: tuple[str, ...]
    limits: tuple[str, ...]
    low: float
    high: float
    sign: str
    pooled: float
    holds: bool
    asks_bearing: bool
    load_state: str
    before: str
    correction: str
    wrong: str
    sketch: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureStep:
    """One step of a procedure, with the caution that belongs to it."""

    key: str
    procedure: str
    step: int
    do: str
    caution: str
    origin: Origin


@cache
def procedures() -> Mapping[str, Procedure]:
    """Read every procedure."""
    return {
        row["key"]: Procedure(
            key=row["key"],
            title=row["title"],
            group=row["group"],
            axle=row["axle"],
            kind=row["kind"],
            sides=tuple("" if side == "none" else side for side in row["sides"].split()),
            instruments=tuple(row["instruments"].split()),
            limits=tuple(row["limits"].split()),
            low=number(row, "low"),
            high=number(row, "high"),
            sign=row["sign"],
            pooled=number(row, "pooled"),
            holds=row["holds"] == "yes",
            asks_bearing=row["bearing"] == "asked",
            load_state=row["load_state"],
            before=row["before"],
            correction=row["correction"],
            wrong=row["wrong"],
            sketch=row["sketch"],
            origin=origin(row),
        )
        for row in rows("procedures")
    }


@cache
def procedure_steps() -> Mapping[str, ProcedureStep]:
    """Read the steps of every procedure, in order."""
    return {
        row["key"]: ProcedureStep(
            key=row["key"],
            procedure=row["procedure"],
            step=int(row["step"]),
            do=row["do"],
            caution=row["caution"],
            origin=origin(row),
        )
        for row in rows("procedures_steps")
    }


def procedure(key: str) -> Procedure:
    """Find one procedure by key."""
    return look_up(procedures(), key, what="reading")


@cache
def reading_parts() -> Mapping[str, tuple[str, ...]]:
    """Parts that a reading is of, as the stem of their keys; once one is replaced it is of none."""
    return {row["key"]: tuple(row["parts"].split()) for row in rows("readings_parts")}
