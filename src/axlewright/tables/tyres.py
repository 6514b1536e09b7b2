"""Tyre markings: load index and speed symbol."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadIndex:
    """One load index and the mass it stands for, in kilogram."""

    key: str
    mass: float
    origin: Origin


@cache
def load_indices() -> Mapping[str, LoadIndex]:
    """Read the whole table."""
    return {
        row["key"]: LoadIndex(
            key=row["key"],
            mass=number(row, "mass_kg"),
            origin=origin(row),
        )
        for row in rows("load_index")
    }


def load_index(key: str) -> LoadIndex:
    """Find one load index by its number, written as text.

    Examples
    --------
    >>> load_index("121").mass
    1450.0
    """
    return look_up(load_indices(), key, what="load index")


@dataclass(frozen=True, slots=True, kw_only=True)
class SpeedSymbol:
    """One speed symbol and its speed in m/s."""

    key: str
    speed: float
    origin: Origin


@cache
def speed_symbols() -> Mapping[str, SpeedSymbol]:
    """Read the whole table."""
    return {
        row["key"]: SpeedSymbol(
            key=row["key"],
            speed=number(row, "speed_km_h") / 3.6,
            origin=origin(row),
        )
        for row in rows("speed_symbols")
    }


def speed_symbol(key: str) -> SpeedSymbol:
    """Find one speed symbol by its letter."""
    return look_up(speed_symbols(), key, what="speed symbol")
