"""Nut factors and coefficients of friction."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Friction:
    """One factor with its 90 % band.

    `kind` is one of: nut factor, friction class (thread and head), faying face, tyre.
    """

    key: str
    words: str
    kind: str
    low: float
    value: float
    high: float
    origin: Origin


@cache
def frictions() -> Mapping[str, Friction]:
    """Read the whole table."""
    return {
        row["key"]: Friction(
            key=row["key"],
            words=row["words"],
            kind=row["kind"],
            low=number(row, "low"),
            value=number(row, "value"),
            high=number(row, "high"),
            origin=origin(row),
        )
        for row in rows("friction")
    }


def friction(key: str) -> Friction:
    """Find one row by key."""
    return look_up(frictions(), key, what="friction")
