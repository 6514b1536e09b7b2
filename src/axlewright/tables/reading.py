"""Rows out of CSV files, numbers out of rows, and entries out of tables."""

import csv
from collections.abc import Mapping
from typing import TypeVar

from axlewright.errors import UnknownEntry
from axlewright.tables.sources import DATA

Entry = TypeVar("Entry")

# A column says its unit at the end of its name. All are SI but for a power of ten.
_POWER_OF_TEN = {
    "MPa": 6,
    "GPa": 9,
    "kN": 3,
    "mm": -3,
    "mm2": -6,
    "km": 3,
}


_SHOWN = 8  # names told when none comes near


def rows(name: str) -> list[dict[str, str]]:
    """Every row of one table, as text."""
    with (DATA / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def number(row: Mapping[str, str], column: str) -> float:
    """A number in SI. The unit at the end of the column's name tells the power of ten.

    Examples
    --------
    >>> number({"yield_low_MPa": "345"}, "yield_low_MPa")
    345000000.0
    >>> number({"cap_mm": "27.0"}, "cap_mm")
    0.027
    """
    text = row[column].strip().lower()
    power = _POWER_OF_TEN.get(column.rsplit("_", 1)[-1], 0)
    if power == 0:
        return float(text)
    mantissa, _, exponent = text.partition("e")
    return float(f"{mantissa}e{int(exponent or 0) + power}")  # rounded once, not twice


def number_or_none(row: Mapping[str, str], column: str) -> float | None:
    """A number in SI, or None where the cell is empty."""
    return number(row, column) if row[column].strip() else None


def look_up(table: Mapping[str, Entry], key: str, *, what: str) -> Entry:
    """Find one entry by name; where there is none, say which names come near."""
    try:
        return table[key]
    except KeyError:
        problem = f"no {what} is called {key!r}."
        raise UnknownEntry(problem, remedy=near(table, key)) from None


def near(table: Mapping[str, object], key: str) -> str:
    """Name the entries that look like a misspelt one, or some of them where none does."""
    from difflib import get_close_matches  # only wanted when something is wrong

    folded = {name.casefold(): name for name in table}
    close = get_close_matches(key.casefold(), folded, n=3, cutoff=0.5)
    if close:
        return f"Did you mean {' or '.join(folded[name] for name in close)}?"
    shown = list(table)[:_SHOWN]
    return f"Known are {', '.join(shown)}{' and more' if len(table) > _SHOWN else ''}."
