"""Troubles that no figure judges: what each part is, what happens then, whether it is mended."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import rows
from axlewright.tables.sources import Origin, origin
from axlewright.tables.spares import belongs


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """One kind of part for which there are no figures.

    `what_then` is one of the keys of strandings; `mendable` is yes, no or partly. `only_if` is a
    field of the rig and the word it must hold, or empty.
    """

    key: str
    axle: str
    only_if: str
    label: str
    what_then: str
    dangerous: bool
    mendable: str
    origin: Origin

    def fits(self, axle: str, words: Mapping[str, str]) -> bool:
        """Whether such an axle has this part; what was not said yet may be so."""
        return belongs(self.axle, self.only_if, axle, words)


@cache
def troubles() -> Mapping[str, Trouble]:
    """Read the whole table."""
    return {
        row["key"]: Trouble(
            key=row["key"],
            axle=row["axle"],
            only_if=row["only_if"],
            label=row["label"],
            what_then=row["what_then"],
            dangerous=row["dangerous"] == "yes",
            mendable=row["mendable"],
            origin=origin(row),
        )
        for row in rows("troubles")
    }
