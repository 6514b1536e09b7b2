"""After a shake: what the driver is asked from memory, and what is checked in which order."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class ShimmyCheck:
    """One check of the sheet, in the order of `rank`; nothing here is tried at speed.

    `stage` is first, play, tyres or damper. `finding` says what follows where it is not right.
    """

    key: str
    stage: str
    rank: int
    title: str
    how: str
    finding: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class ShimmyQuestion:
    """One thing that a driver is asked from memory, with the words that answer it."""

    key: str
    rank: int
    question: str
    answers: tuple[str, ...]
    why: str
    origin: Origin


@cache
def shimmy_checks() -> Mapping[str, ShimmyCheck]:
    """Read the checks in order."""
    return {
        row["key"]: ShimmyCheck(
            key=row["key"],
            stage=row["stage"],
            rank=int(row["rank"]),
            title=row["title"],
            how=row["how"],
            finding=row["loose_is"],
            origin=origin(row),
        )
        for row in rows("shimmy_checks")
    }


@cache
def shimmy_questions() -> Mapping[str, ShimmyQuestion]:
    """Read the questions in order."""
    return {
        row["key"]: ShimmyQuestion(
            key=row["key"],
            rank=int(row["rank"]),
            question=row["question"],
            answers=tuple(row["answers"].split("|")),
            why=row["why"],
            origin=origin(row),
        )
        for row in rows("shimmy_noticed")
    }
