"""Published limits for propeller shafts, by kind of joint and by how they are used."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class DrivelineLimit:
    """One limit, in SI; `low` or `high` is None where there is none.

    `kind` is max, min or avoid; `joint` is single, double, line (all joints together), shaft or
    any; `turning` is road, slow or any. `as_printed` keeps the source's own words, `scope` says
    what it holds for. A maker's manual comes first.
    """

    key: str
    quantity: str
    kind: str
    low: float | None
    high: float | None
    unit: str
    joint: str
    turning: str
    as_printed: str
    scope: str
    status: str
    origin: Origin


@cache
def driveline_limits() -> Mapping[str, DrivelineLimit]:
    """Read the whole table."""
    return {
        row["key"]: DrivelineLimit(
            key=row["key"],
            quantity=row["quantity"],
            kind=row["kind"],
            low=number_or_none(row, "low"),
            high=number_or_none(row, "high"),
            unit=row["unit"],
            joint=row["joint"],
            turning=row["turning"],
            as_printed=row["as_printed"],
            scope=row["scope"],
            status=row["status"],
            origin=origin(row),
        )
        for row in rows("driveline_limits")
    }


def driveline_limit(key: str) -> DrivelineLimit:
    """Find one limit by key."""
    return look_up(driveline_limits(), key, what="driveline limit")
