"""What an order of a replacement axle says, field by field, from wheel to wheel."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderField:
    """One field of the order sheet.

    `station` is its number on the drawing. `low` and `high` bound what is accepted and
    `tolerance` is how far the delivered part may differ, SI. `needed` fields keep the order from
    being ready while they are empty. `axle` is front, rear or both.
    """

    key: str
    group: str
    station: int
    kind: str
    choices: tuple[str, ...]
    label: str
    example: str
    low: float | None
    high: float | None
    axle: str
    needed: bool
    how: str
    tolerance: float | None
    why: str
    origin: Origin


@cache
def order_fields() -> Mapping[str, OrderField]:
    """Read the whole sheet, in its order."""
    return {
        row["key"]: OrderField(
            key=row["key"],
            group=row["group"],
            station=int(row["station"]),
            kind=row["kind"],
            choices=tuple(filter(None, row["choices"].split("|"))),
            label=row["label"],
            example=row["example"],
            low=number_or_none(row, "low"),
            high=number_or_none(row, "high"),
            axle=row["axle"],
            needed=row["needed"] == "yes",
            how=row["how"],
            tolerance=number_or_none(row, "tolerance"),
            why=row["why"],
            origin=origin(row),
        )
        for row in rows("order_fields")
    }
