"""Fatigue categories of welds, tubes and bolts, and the curves they belong to."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class WeldDetail:
    """One row: the stress range a detail survives for two million cycles, in pascal.

    `slope` is that of the first branch. `place` says where the crack starts: parent, toe, root,
    throat or thread.
    """

    key: str
    category: float
    slope: float
    place: str
    edition: str
    words: str
    origin: Origin


@cache
def weld_details() -> Mapping[str, WeldDetail]:
    """Read the whole table."""
    return {
        row["key"]: WeldDetail(
            key=row["key"],
            category=number(row, "category_MPa"),
            slope=number(row, "slope"),
            place=row["place"],
            edition=row["edition"],
            words=row["words"],
            origin=origin(row),
        )
        for row in rows("weld_details")
    }


def weld_detail(key: str) -> WeldDetail:
    """Find one detail by key.

    Examples
    --------
    >>> weld_detail("plate_along_tube_to_50mm").category
    80000000.0
    """
    return look_up(weld_details(), key, what="weld detail")


@dataclass(frozen=True, slots=True, kw_only=True)
class EnduranceCurve:
    """Slopes and corners of one S-N curve: first slope to the knee, second to the cut-off.

    It holds for categories from `category_from` up to but not including `category_below`, pascal.
    """

    key: str
    edition: str
    words: str
    category_from: float
    category_below: float
    slope_first: float
    slope_second: float
    knee_cycles: float
    cut_off_cycles: float
    origin: Origin


@cache
def endurance_curves() -> Mapping[str, EnduranceCurve]:
    """Read the whole table."""
    return {
        row["key"]: EnduranceCurve(
            key=row["key"],
            edition=row["edition"],
            words=row["words"],
            category_from=number(row, "category_from_MPa"),
            category_below=number(row, "category_below_MPa"),
            slope_first=number(row, "slope_first"),
            slope_second=number(row, "slope_second"),
            knee_cycles=number(row, "knee_cycles"),
            cut_off_cycles=number(row, "cut_off_cycles"),
            origin=origin(row),
        )
        for row in rows("endurance_curves")
    }


def endurance_curve(key: str) -> EnduranceCurve:
    """Find one curve by key."""
    return look_up(endurance_curves(), key, what="endurance curve")
