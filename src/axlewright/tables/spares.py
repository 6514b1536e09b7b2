"""Spares: the least set of each duty, which nothing takes away, and what goes with a weak part."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Spare:
    """One thing to carry.

    `duties` are those (keys of duties) whose least set it belongs to; `serves` are kinds of
    parts for which it is carried besides, of the axle's longer or shorter `side` alone where that
    is said; `share` is the part of the lost hours that it saves once such a part has given.
    `only_if` is a field of the rig and the word it must hold ("hub.kind=sealed unit"), or empty.
    `mass` is in kilogram; `place` says where it lies best.
    """

    key: str
    axle: str
    duties: tuple[str, ...]
    only_if: str
    side: str
    serves: tuple[str, ...]
    share: float
    mass: float
    label: str
    note: str
    place: str
    origin: Origin

    def fits(self, axle: str, words: Mapping[str, str]) -> bool:
        """Whether it belongs to such an axle at all; what was not said yet may be so."""
        return belongs(self.axle, self.only_if, axle, words)


def belongs(own: str, only_if: str, axle: str, words: Mapping[str, str]) -> bool:
    """Whether a row for an axle (front, rear or both) and on one condition belongs to an axle."""
    field, _, word = only_if.partition("=")
    return own in {axle, "both"} and (not field or words.get(field, word) == word)


@cache
def spares() -> Mapping[str, Spare]:
    """Read the whole table."""
    return {
        row["key"]: Spare(
            key=row["key"],
            axle=row["axle"],
            duties=tuple(row["duties"].split()),
            only_if=row["only_if"],
            side=row["side"],
            serves=tuple(row["serves"].split()),
            share=float(row["share"]),
            mass=number(row, "mass_kg"),
            label=row["label"],
            note=row["note"],
            place=row["place"],
            origin=origin(row),
        )
        for row in rows("spares")
    }
