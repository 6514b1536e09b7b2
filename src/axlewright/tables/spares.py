"""Spares: the least set of each duty, which nothing takes away, and what goes with a weak part."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Spare:
    """One thing to carry.

    `duties` are those (keys of duties) whose least set it belongs to; `serves` are kinds of
    parts for which it is carried besides. `only_if` is a field of the rig and the word it must
    hold ("hub.kind=sealed unit"), or empty.
    """

    key: str
    axle: str
    duties: tuple[str, ...]
    only_if: str
    serves: tuple[str, ...]
    label: str
    note: str
    origin: Origin

    def fits(self, axle: str, words: Mapping[str, str]) -> bool:
        """Whether it belongs to such an axle at all."""
        field, _, word = self.only_if.partition("=")
        return self.axle in {axle, "both"} and (not field or words.get(field) == word)


@cache
def spares() -> Mapping[str, Spare]:
    """Read the whole table."""
    return {
        row["key"]: Spare(
            key=row["key"],
            axle=row["axle"],
            duties=tuple(row["duties"].split()),
            only_if=row["only_if"],
            serves=tuple(row["serves"].split()),
            label=row["label"],
            note=row["note"],
            origin=origin(row),
        )
        for row in rows("spares")
    }
