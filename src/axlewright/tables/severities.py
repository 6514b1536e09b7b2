"""Each load case at one common severity: once per 1,000 km of hard trail."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Severity:
    """One case. `value` is in `unit` (1, m or m/s); `speed` in m/s belongs to a strike.

    The true value lies between `low_factor` and `high_factor` times `value` (90 % band). `kind` is
    one of: grip-limited, energy-limited, factor.
    """

    key: str
    quantity: str
    value: float
    unit: str
    speed: float | None
    low_factor: float
    high_factor: float
    kind: str
    words: str
    origin: Origin


@cache
def severities() -> Mapping[str, Severity]:
    """Read the whole table."""
    return {
        row["key"]: Severity(
            key=row["key"],
            quantity=row["quantity"],
            value=number(row, "value"),
            unit=row["unit"],
            speed=number_or_none(row, "speed_m_s"),
            low_factor=number(row, "low_factor"),
            high_factor=number(row, "high_factor"),
            kind=row["kind"],
            words=row["words"],
            origin=origin(row),
        )
        for row in rows("severities")
    }


def severity(key: str) -> Severity:
    """Find one case by key."""
    return look_up(severities(), key, what="load case")
