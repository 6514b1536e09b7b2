"""What a tape, a straightedge, an angle finder or turn plates can tell, and where the marks are."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Instrument:
    """One instrument, m or rad.

    `measures` is length, angle or turn (how far a wheel is steered); gap, tilt, wheel (the
    steering wheel) or torque where it serves guided readings alone. `resolution` is its least
    step, `scatter` the usual standard deviation of one reading by one careful person, `own_error`
    half the width of what more readings do not lessen.
    """

    key: str
    measures: str
    label: str
    resolution: float
    scatter: float
    own_error: float
    note: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class ToeMark:
    """What the tape is held to on the tyres; `doubt` is standard, in m, on the difference."""

    key: str
    label: str
    doubt: float
    note: str
    origin: Origin


@cache
def instruments() -> Mapping[str, Instrument]:
    """Read the whole table."""
    return {
        row["key"]: Instrument(
            key=row["key"],
            measures=row["measures"],
            label=row["label"],
            resolution=number(row, "resolution"),
            scatter=number(row, "scatter"),
            own_error=number(row, "own_error"),
            note=row["note"],
            origin=origin(row),
        )
        for row in rows("instruments")
    }


def instrument(key: str) -> Instrument:
    """Find one instrument by key."""
    return look_up(instruments(), key, what="instrument")


@cache
def alignment_marks() -> Mapping[str, ToeMark]:
    """Read the whole table."""
    return {
        row["key"]: ToeMark(
            key=row["key"],
            label=row["label"],
            doubt=number(row, "doubt"),
            note=row["note"],
            origin=origin(row),
        )
        for row in rows("alignment_marks")
    }


def alignment_mark(key: str) -> ToeMark:
    """Find one kind of mark by key."""
    return look_up(alignment_marks(), key, what="mark")
