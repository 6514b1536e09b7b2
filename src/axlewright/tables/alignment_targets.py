"""What alignment to aim at, by axle and tyre, each with its scope; a maker's value comes first."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import inf

from axlewright.errors import UnknownEntry
from axlewright.tables.reading import number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignmentTarget:
    """One target, in SI; toe in m is rear less front at the tread.

    `quantity` is what it is about, `tyre_low` to `tyre_high` the outer diameters that it holds
    for, m. `as_printed` keeps the words it is known by.
    """

    key: str
    quantity: str
    axle: str
    tyre_low: float
    tyre_high: float
    low: float
    aim: float
    high: float
    unit: str
    as_printed: str
    scope: str
    origin: Origin


@cache
def alignment_targets() -> Mapping[str, AlignmentTarget]:
    """Read the whole table."""
    return {row["key"]: _target(row) for row in rows("alignment_targets")}


def alignment_target(quantity: str, axle: str, diameter: float) -> AlignmentTarget:
    """Find the target of a quantity for an axle on tyres of an outer diameter, m."""
    for entry in alignment_targets().values():
        fits = entry.tyre_low <= diameter < entry.tyre_high
        if entry.quantity == quantity and entry.axle in {"both", axle} and fits:
            return entry
    problem = f"no target for {quantity} of a {axle} axle on such tyres is known."
    raise UnknownEntry(problem, remedy="Give the maker's value.")


def _target(row: Mapping[str, str]) -> AlignmentTarget:
    low, high = (number_or_none(row, f"tyre_{end}_mm") for end in ("low", "high"))
    return AlignmentTarget(
        key=row["key"],
        quantity=row["quantity"],
        axle=row["axle"],
        tyre_low=0.0 if low is None else low,
        tyre_high=inf if high is None else high,
        low=number(row, "low"),
        aim=number(row, "aim"),
        high=number(row, "high"),
        unit=row["unit"],
        as_printed=row["as_printed"],
        scope=row["scope"],
        origin=origin(row),
    )
