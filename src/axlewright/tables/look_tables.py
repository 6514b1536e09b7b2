"""Looks at the real thing: the lists by occasion, what stops, and what else can explain a hit."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One look after a hit, with what it may show and what that means.

    `axle` is front, rear or both; looks are taken in the order of `rank`, the gravest
    consequence first. "Cannot tell" stands under `fix`.
    """

    key: str
    axle: str
    rank: int
    title: str
    how: str
    go: str
    watch: str
    fix: str
    stop: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedLook:
    """One look of a list, taken on an occasion, with what it may show and what that means.

    `occasion` is before_trip, after_trip, apart or buying; the looks after a hit stand in a table
    of their own. `part` is where a finding of this look belongs, `only_if` as with the spares.
    `duties` are those (keys of duties, or water) that ask for it; without any it is always asked.
    "Cannot tell" stands under `fix`.
    """

    key: str
    occasion: str
    axle: str
    rank: int
    title: str
    how: str
    go: str
    watch: str
    fix: str
    stop: str
    part: str
    only_if: str
    duties: tuple[str, ...]
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LookStop:
    """One thing that stops whatever a figure says."""

    key: str
    axle: str
    words: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LookBeyond:
    """One cause that a bowed rod may hide, and the look that rules it out."""

    key: str
    axle: str
    rank: int
    cause: str
    look: str
    origin: Origin


@cache
def looks() -> Mapping[str, Look]:
    """Read the looks after a hit."""
    return {
        row["key"]: Look(
            key=row["key"],
            axle=row["axle"],
            rank=int(row["rank"]),
            title=row["title"],
            how=row["how"],
            go=row["go"],
            watch=row["watch"],
            fix=row["fix"],
            stop=row["stop"],
            origin=origin(row),
        )
        for row in rows("looks")
    }


@cache
def looks_lists() -> Mapping[str, ListedLook]:
    """Read the lists of looks but for those after a hit."""
    return {
        row["key"]: ListedLook(
            key=row["key"],
            occasion=row["occasion"],
            axle=row["axle"],
            rank=int(row["rank"]),
            title=row["title"],
            how=row["how"],
            go=row["go"],
            watch=row["watch"],
            fix=row["fix"],
            stop=row["stop"],
            part=row["part"],
            only_if=row["only_if"],
            duties=tuple(row["duties"].split()),
            origin=origin(row),
        )
        for row in rows("looks_lists")
    }


@cache
def look_stops() -> Mapping[str, LookStop]:
    """Read what stops."""
    return {
        row["key"]: LookStop(
            key=row["key"], axle=row["axle"], words=row["words"], origin=origin(row)
        )
        for row in rows("looks_stops")
    }


@cache
def looks_beyond() -> Mapping[str, LookBeyond]:
    """Read what else can turn a steering wheel off centre."""
    return {
        row["key"]: LookBeyond(
            key=row["key"],
            axle=row["axle"],
            rank=int(row["rank"]),
            cause=row["cause"],
            look=row["look"],
            origin=origin(row),
        )
        for row in rows("looks_beyond")
    }
