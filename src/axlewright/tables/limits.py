"""Published limits for play, angles and settings, each with the scope it holds for."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One limit, in SI; `low` or `high` is None where there is none.

    `kind` is range or max. `as_printed` keeps the source's own words, `scope` says what it holds
    for, `status` whether it was read and whether it is an opinion. A maker's manual comes first.
    """

    key: str
    quantity: str
    kind: str
    low: float | None
    high: float | None
    unit: str
    as_printed: str
    load_state: str
    scope: str
    status: str
    origin: Origin


@cache
def limits() -> Mapping[str, Limit]:
    """Read the whole table."""
    return {
        row["key"]: Limit(
            key=row["key"],
            quantity=row["quantity"],
            kind=row["kind"],
            low=number_or_none(row, "low"),
            high=number_or_none(row, "high"),
            unit=row["unit"],
            as_printed=row["as_printed"],
            load_state=row["load_state"],
            scope=row["scope"],
            status=row["status"],
            origin=origin(row),
        )
        for row in rows("limits")
    }


def limit(key: str) -> Limit:
    """Find one limit by key."""
    return look_up(limits(), key, what="limit")
