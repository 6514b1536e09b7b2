"""How far a rig has gone, and what has broken held against the order that the figures give."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from axlewright.rig import Chapter, Condition, Kept, Trip


@dataclass(frozen=True, slots=True, kw_only=True)
class Driven:
    """Distance as far as anybody knows, m: the chapters as a band, the trips as entered."""

    shortest: float
    longest: float
    trips: float
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Past:
    """How far a rig has gone, what broke, and where each order has it; no order, no ranks.

    ``ranks`` are places in one bad moment, ``wears`` in wearing out: two orders, never mixed.
    """

    driven: Driven
    broke: tuple[str, ...]
    ranks: "tuple[BrokeAgainstOrder, ...]"
    wears: "tuple[BrokeAgainstOrder, ...]"
    judged: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BrokeAgainstOrder:
    """One thing that broke, and where an order has it; 0 where it has not."""

    broke: str
    rank: int
    part: str
    of: int


def driven(history: Sequence[Kept]) -> Driven:
    """How far a rig has gone, by chapters and trips."""
    chapters = [each.body for each in history if isinstance(each.body, Chapter)]
    trips = [each.body for each in history if isinstance(each.body, Trip)]
    total = sum(each.distance for each in trips)
    return Driven(
        shortest=total + sum(each.shortest for each in chapters),
        longest=total + sum(each.longest for each in chapters),
        trips=total,
        count=len(trips),
    )


def broken(history: Sequence[Kept], conditions: Sequence[Condition]) -> tuple[str, ...]:
    """Everything that broke, by chapter and condition, each once."""
    told = [part for each in history if isinstance(each.body, Chapter) for part in each.body.broke]
    told += [
        f"{each.part} {each.where}".strip()
        for each in conditions
        if each.what in {"broke", "cracked"}
    ]
    return tuple(dict.fromkeys(told))


def against_order(broke: Sequence[str], order: Sequence[str]) -> tuple[BrokeAgainstOrder, ...]:
    """Hold what broke against the order: the only reason to believe a ranking, or not to."""
    return tuple(
        BrokeAgainstOrder(
            broke=each,
            rank=rank,
            part=order[rank - 1] if rank else "",
            of=len(order),
        )
        for each in broke
        for rank in [_rank(each, order)]
    )


def _rank(broke: str, order: Sequence[str]) -> int:
    """Place of the first part whose name holds every word of what broke, 0 for none."""
    said = set(re.findall("[a-z]+", broke.casefold())) - {"the", "a"}
    for rank, part in enumerate(order, 1):
        if said <= set(part.split("_")):
            return rank
    sides = said - {"left", "right"}
    for rank, part in enumerate(order, 1):
        if sides and sides <= set(part.split("_")):
            return rank
    return 0
