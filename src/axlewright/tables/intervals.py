"""What comes due again: retorque, looks, service, readings."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval:
    """One thing that comes due: after a first distance, then every distance or so many days.

    Distances in m. `begins` names the work that starts it, empty where it always runs. `kind` is
    retorque, look, service or reading. The rig's manual comes first wherever it is shorter.
    """

    key: str
    title: str
    axle: str
    kind: str
    first: float | None
    every: float | None
    days: float | None
    begins: str
    note: str
    origin: Origin


@cache
def intervals() -> Mapping[str, Interval]:
    """Read the whole table."""
    return {
        row["key"]: Interval(
            key=row["key"],
            title=row["title"],
            axle=row["axle"],
            kind=row["kind"],
            first=number_or_none(row, "first_km"),
            every=number_or_none(row, "every_km"),
            days=number_or_none(row, "every_days"),
            begins=row["begins"],
            note=row["note"],
            origin=origin(row),
        )
        for row in rows("intervals")
    }
