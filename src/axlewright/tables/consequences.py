"""What happens when a part gives, how it looks, and what can be done beside the track."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Consequence:
    """One part.

    `what_then` is one of: stuck, crooked, steering lost, wheel lost, limps, leaks. `mendable` is
    one of: yes, no, partly (to get out of danger, not home). `duration` in seconds and
    `spare_mass` in kilogram are those of the mend; None where there is none.
    """

    key: str
    label: str
    what_then: str
    dangerous: bool
    mendable: str
    duration: float | None
    spare_mass: float | None
    look: str
    origin: Origin


@cache
def consequences() -> Mapping[str, Consequence]:
    """Read the whole table."""
    return {
        row["key"]: Consequence(
            key=row["key"],
            label=row["label"],
            what_then=row["what_then"],
            dangerous=row["dangerous"] == "yes",
            mendable=row["mendable"],
            duration=_seconds(row),
            spare_mass=number_or_none(row, "spare_kg"),
            look=row["look"],
            origin=origin(row),
        )
        for row in rows("consequences")
    }


def consequence(key: str) -> Consequence:
    """Find one part by key."""
    return look_up(consequences(), key, what="part")


def _seconds(row: Mapping[str, str]) -> float | None:
    minutes = number_or_none(row, "minutes")
    return None if minutes is None else 60.0 * minutes
