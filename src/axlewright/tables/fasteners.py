"""Bolt classes and grades."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.errors import UnknownEntry
from axlewright.tables.reading import look_up, near, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerGrade:
    """One class or grade over one range of diameters: metre and pascal.

    It holds for a diameter over `over` (the first range includes its start), up to and including
    `to`. `system` is metric or inch.
    """

    key: str
    grade: str
    system: str
    over: float
    to: float
    proof: float
    yield_strength: float
    ultimate: float
    origin: Origin


@cache
def fastener_grades() -> Mapping[str, FastenerGrade]:
    """Read the whole table."""
    return {
        row["key"]: FastenerGrade(
            key=row["key"],
            grade=row["grade"],
            system=row["system"],
            over=number(row, "over_mm"),
            to=number(row, "to_mm"),
            proof=number(row, "proof_MPa"),
            yield_strength=number(row, "yield_MPa"),
            ultimate=number(row, "ultimate_MPa"),
            origin=origin(row),
        )
        for row in rows("fasteners")
    }


def fastener_grade(key: str) -> FastenerGrade:
    """Find one row by key."""
    return look_up(fastener_grades(), key, what="bolt grade")


def fastener_grade_at(grade: str, diameter: float) -> FastenerGrade:
    """Find the row of a class or grade ("8.8", "5") that holds for a diameter in metre.

    Examples
    --------
    >>> fastener_grade_at("8.8", 0.012).proof
    580000000.0
    """
    ranges = [row for row in fastener_grades().values() if row.grade == grade]
    if not ranges:
        grades = dict.fromkeys(row.grade for row in fastener_grades().values())
        problem = f"no bolt grade is called {grade!r}."
        raise UnknownEntry(problem, remedy=near(grades, grade))
    for row in ranges:
        if diameter <= row.to and diameter >= ranges[0].over:
            return row
    low, high = 1000 * ranges[0].over, 1000 * ranges[-1].to
    problem = f"grade {grade} has no values for a diameter of {1000 * diameter:.4g} mm."
    raise UnknownEntry(problem, remedy=f"It runs from {low:.4g} to {high:.4g} mm.")
