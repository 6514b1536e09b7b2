"""The ways round one axle: what a visitor wants, and the pages that serve it."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Door:
    """One page of an axle: what stands behind its address, and what it is called."""

    tail: str
    said: str
    under: tuple[str, ...] = ()  # pages that belong to it and have no door of their own


@dataclass(frozen=True, slots=True)
class Way:
    """What a visitor wants, in words, and the doors to it, the first of them first."""

    said: str
    doors: tuple[Door, ...]


WAYS: Final = (
    Way(
        "This axle",
        (
            Door("", "Your axle"),
            Door("/answer", "The answer", ("/why",)),
            Door("/try", "Try a change"),
            Door("/paper", "Paper"),
        ),
    ),
    Way(
        "May I drive?",
        (
            Door("/looks", "Look it over"),
            Door("/hit", "I just hit something"),
            Door("/measure", "Measure"),
            Door("/bent", "Where is it bent?"),
            Door("/shook", "It shook"),
            Door("/been", "Where it has been"),
            Door("/carry", "What to carry", ("/cards",)),
        ),
    ),
    Way(
        "Set it right",
        (
            Door("/moves", "How it moves"),
            Door("/align", "Align it"),
            Door("/ends", "Where the rods end"),
        ),
    ),
    Way(
        "What next?",
        (
            Door("/decide", "Mend or replace?"),
            Door("/order", "What to order"),
            Door("/swap", "The swap"),
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Step:
    """A link of the way round: where to, what it says, and whether the visitor stands there."""

    place: str
    said: str
    here: bool


def steps(slug: str, here: str) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """Links to every way, and to the pages of the way that the visitor is on."""
    root = f"/axle/{slug}"
    tail = here.removeprefix(root) if here.startswith(root) else ""
    open_ways = [way for way in WAYS if way.doors]
    at = next((way for way in open_ways if any(_leads(door, tail) for door in way.doors)), None)
    ways = tuple(Step(root + way.doors[0].tail, way.said, way is at) for way in open_ways)
    doors = at.doors if at else open_ways[0].doors
    pages = tuple(Step(root + door.tail, door.said, _leads(door, tail)) for door in doors)
    return (ways if len(ways) > 1 else ()), pages


def _leads(door: Door, tail: str) -> bool:
    places = (door.tail, *door.under)
    return tail in places or any(place and tail.startswith(f"{place}/") for place in places)
