"""How far lives of like parts differ."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """Standard deviation of log10 of cycles, with its own 90 % band."""

    key: str
    words: str
    low: float
    value: float
    high: float
    origin: Origin


@cache
def scatters() -> Mapping[str, Scatter]:
    """Read the whole table."""
    return {
        row["key"]: Scatter(
            key=row["key"],
            words=row["words"],
            low=number(row, "low"),
            value=number(row, "value"),
            high=number(row, "high"),
            origin=origin(row),
        )
        for row in rows("scatter")
    }


def scatter(key: str) -> Scatter:
    """Find one row by key."""
    return look_up(scatters(), key, what="scatter")
