"""Repair cards: what can be done beside the track, step by step, to get out of danger."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One card.

    `serves` are kinds of parts (keys of troubles, or of consequences without their side); a card
    that serves none belongs to every rig of its axle. `mendable` is yes, partly or no. `speed`
    (m/s) and `distance` (m) are the most that may be driven after it, None where it is not
    driven; `limits` says what it no longer does; `duration` is in seconds, off by the row's
    spread either way. `record` says what is written down.
    """

    key: str
    axle: str
    serves: tuple[str, ...]
    title: str
    mendable: str
    people: int
    duration: float | None
    tools: str
    materials: str
    speed: float | None
    distance: float | None
    limits: str
    next_look: str
    never: str
    record: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class CardStep:
    """One step of a card, with the caution that belongs to it."""

    key: str
    card: str
    step: int
    do: str
    caution: str
    origin: Origin


@cache
def cards() -> Mapping[str, Card]:
    """Read every card."""
    return {
        row["key"]: Card(
            key=row["key"],
            axle=row["axle"],
            serves=tuple(row["serves"].split()),
            title=row["title"],
            mendable=row["mendable"],
            people=int(row["people"]),
            duration=None if (time := number_or_none(row, "minutes")) is None else 60.0 * time,
            tools=row["tools"],
            materials=row["materials"],
            speed=number_or_none(row, "speed_m_s"),
            distance=number_or_none(row, "distance_km"),
            limits=row["limits"],
            next_look=row["next_look"],
            never=row["never"],
            record=row["record"],
            origin=origin(row),
        )
        for row in rows("cards")
    }


@cache
def card_steps() -> Mapping[str, CardStep]:
    """Read the steps of every card, in order."""
    return {
        row["key"]: CardStep(
            key=row["key"],
            card=row["card"],
            step=int(row["step"]),
            do=row["do"],
            caution=row["caution"],
            origin=origin(row),
        )
        for row in rows("cards_steps")
    }


def card_of(kind: str, axle: str) -> Card | None:
    """Find the card of a kind of part on a front or rear axle; None where there is none."""
    for card in cards().values():
        if kind in card.serves and card.axle in {axle, "both"}:
            return card
    return None
