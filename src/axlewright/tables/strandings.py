"""What it costs when something gives far out: does it still go, and how long until help comes."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Stranding:
    """One thing that happens then.

    `weight` is how many ordinary hours one hour of it counts for; `pace` (m/s) is how it still
    goes, None where it stands; `wait` (s) is the time until help sets out and `help_pace` (m/s)
    how help comes, there and back.
    """

    key: str
    weight: float
    pace: float | None
    wait: float
    help_pace: float
    words: str
    origin: Origin


@cache
def strandings() -> Mapping[str, Stranding]:
    """Read the whole table."""
    return {
        row["key"]: Stranding(
            key=row["key"],
            weight=float(row["weight"]),
            pace=number_or_none(row, "pace_m_s"),
            wait=3600.0 * number(row, "wait_h"),
            help_pace=number(row, "help_m_s"),
            words=row["words"],
            origin=origin(row),
        )
        for row in rows("strandings")
    }


def stranding(key: str) -> Stranding:
    """Find one by what happens then."""
    return look_up(strandings(), key, what="way of being stranded")
