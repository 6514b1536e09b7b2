"""Steel by hardness: the strengths that go with it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardness:
    """One hardness (Rockwell C, Brinell) and its strengths in pascal."""

    key: str
    rockwell_c: float
    brinell: float
    ultimate: float
    yield_strength: float
    shear_yield: float
    origin: Origin


@cache
def hardnesses() -> Mapping[str, Hardness]:
    """Read the whole table."""
    return {
        row["key"]: Hardness(
            key=row["key"],
            rockwell_c=number(row, "hrc"),
            brinell=number(row, "hb"),
            ultimate=number(row, "ultimate_MPa"),
            yield_strength=number(row, "yield_MPa"),
            shear_yield=number(row, "shear_yield_MPa"),
            origin=origin(row),
        )
        for row in rows("hardness")
    }
