"""Named duties: how hard a distance is, and how often each case comes in it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """A named duty; distances in metre.

    `equivalent_distance` is as hard as 1,000 km of hard trail, `day_distance` a day's drive.
    """

    key: str
    words: str
    equivalent_distance: float
    day_distance: float
    origin: Origin


@cache
def duties() -> Mapping[str, Duty]:
    """Read the whole table."""
    return {
        row["key"]: Duty(
            key=row["key"],
            words=row["words"],
            equivalent_distance=number(row, "equivalent_km"),
            day_distance=number(row, "day_km"),
            origin=origin(row),
        )
        for row in rows("duties")
    }


def duty(key: str) -> Duty:
    """Find one duty by key."""
    return look_up(duties(), key, what="duty")


@dataclass(frozen=True, slots=True, kw_only=True)
class DutyCount:
    """Load cycles of one case in 1,000 km of one duty.

    It is the count at which an exponential exceedance spectrum starts. The key is duty.case.
    """

    key: str
    duty: str
    case: str
    cycles_per_1000_km: float
    origin: Origin


@cache
def duty_counts() -> Mapping[str, DutyCount]:
    """Read the whole table."""
    return {
        row["key"]: DutyCount(
            key=row["key"],
            duty=row["duty"],
            case=row["case"],
            cycles_per_1000_km=float(row["cycles_per_1000_km"]),
            origin=origin(row),
        )
        for row in rows("duty_counts")
    }


def duty_count(key: str) -> DutyCount:
    """Find one count by key, duty and case joined by a dot."""
    return look_up(duty_counts(), key, what="count of a duty")
