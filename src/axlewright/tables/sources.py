"""Where a number comes from: the sources named in the rows, and what a row says about itself."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from axlewright.errors import UnknownEntry

DATA = Path(__file__).parent / "data"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One thing that can be opened and read, or the plain word that there is none.

    `kind` is one of: standard, textbook, paper, manual, regulation, software, web, practice,
    memory.
    """

    key: str
    title: str
    kind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Origin:
    """What a row rests on.

    `spread` is the factor by which the value may be off either way (90 % band, multiplied and
    divided). What it is a factor *on* stands in the catalogue, table by table. It is 1 where the
    row's own low and high already carry the doubt. `checked_by` names the test that holds the row
    against its source, or against the rule it follows; it is empty where none does.
    """

    source: Source
    locator: str
    checked_by: str
    spread: float

    @property
    def remembered(self) -> bool:
        """Whether no source was read for this row."""
        return self.source.kind in {"memory", "practice"}


@cache
def sources() -> Mapping[str, Source]:
    """Every source that a table may name."""
    with (DATA / "sources.toml").open("rb") as file:
        entries = tomllib.load(file)
    return {key: Source(key=key, title=e["title"], kind=e["kind"]) for key, e in entries.items()}


def origin(row: Mapping[str, str]) -> Origin:
    """Read what a row says about itself."""
    known = sources()
    if row["source"] not in known:
        problem = f"no source is called {row['source']!r}."
        raise UnknownEntry(problem, remedy="Add it to sources.toml.")
    return Origin(
        source=known[row["source"]],
        locator=row["locator"],
        checked_by=row["checked_by"],
        spread=float(row["spread"]),
    )
