"""Strength bands of the steels and irons that axles are made of."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """One material, in pascal. Low and high are the ends of a 90 % band.

    `softened_low` and `softened_high` are the share of the yield that is left beside a weld; None
    where the material is not welded. `shear_yield_low` and `shear_yield_high` are given only where
    the surface is hardened and the torsional yield does not follow from the yield of the core.
    `family` is one of: tube, shaft, iron, cast steel, forging, plate.
    """

    key: str
    name: str
    family: str
    yield_low: float
    yield_high: float
    ultimate_low: float
    ultimate_high: float
    elongation: float
    elastic_modulus: float
    softened_low: float | None
    softened_high: float | None
    shear_yield_low: float | None
    shear_yield_high: float | None
    note: str
    origin: Origin


@cache
def materials() -> Mapping[str, Material]:
    """Read the whole table."""
    return {
        row["key"]: Material(
            key=row["key"],
            name=row["name"],
            family=row["family"],
            yield_low=number(row, "yield_low_MPa"),
            yield_high=number(row, "yield_high_MPa"),
            ultimate_low=number(row, "ultimate_low_MPa"),
            ultimate_high=number(row, "ultimate_high_MPa"),
            elongation=number(row, "elongation"),
            elastic_modulus=number(row, "E_GPa"),
            softened_low=number_or_none(row, "softened_low"),
            softened_high=number_or_none(row, "softened_high"),
            shear_yield_low=number_or_none(row, "shear_yield_low_MPa"),
            shear_yield_high=number_or_none(row, "shear_yield_high_MPa"),
            note=row["note"],
            origin=origin(row),
        )
        for row in rows("materials")
    }


def material(key: str) -> Material:
    """Find one material by key.

    Examples
    --------
    >>> material("dom_1020").yield_low
    379000000.0
    """
    return look_up(materials(), key, what="material")
