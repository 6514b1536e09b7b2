"""What a look or a reading is worth, because it would change the choice."""

from dataclasses import dataclass
from typing import Final

from axlewright.decide.money import World
from axlewright.decide.regret import worth_of_a_look, worth_of_a_reading
from axlewright.physics.measurement import NINETY
from axlewright.rig import FIELDS, Column, Doubt, Rig, doubts, scores
from axlewright.tables import option_doubts

MOST: Final = 5
BENT_LOOK: Final = "bent"


@dataclass(frozen=True, slots=True, kw_only=True)
class WorthLook:
    """One look: the field's path, or `BENT_LOOK`; what it is about; its worth in money."""

    path: str
    about: str
    asks: str
    how: str
    worth: float


def worth_looking(rig: Rig, costs: Column, world: World) -> tuple[WorthLook, ...]:
    """Looks and readings by what they save on average, the dearest first; idle ones left out."""
    found = [_bent(costs, world)]
    by_quantity = {each.quantity: each for each in FIELDS if each.quantity}
    for doubt in doubts(rig):
        field = by_quantity.get(doubt.quantity)
        if field is None or field.path.startswith("severity.") or doubt.given:
            continue
        score = scores(world.seed, doubt.quantity, 0, int(world.places.max()) + 1)[world.places]
        worth = worth_of_a_reading(
            costs, score, _sharpness(doubt, field.doubt, field.relative_doubt)
        )
        found.append(
            WorthLook(
                path=field.path, about=doubt.label, asks=field.asks, how=field.how, worth=worth
            )
        )
    least = 0.5 * world.terms.band("not_worth_a_thought").middle
    worthy = [each for each in found if each.worth > least]
    return tuple(sorted(worthy, key=lambda each: -each.worth)[:MOST])


def _bent(costs: Column, world: World) -> WorthLook:
    doubt = option_doubts()
    worth = worth_of_a_look(
        costs,
        world.is_bent,
        doubt["look.bent.seen"].band.middle,
        doubt["look.bent.told"].band.middle,
    )
    return WorthLook(
        path=BENT_LOOK,
        about="whether the housing is bent already",
        asks="Are both tubes straight?",
        how="String over two equal stand-offs, or an angle finder on both tubes at one place.",
        worth=worth,
    )


def _sharpness(doubt: Doubt, error: float, relative: float) -> float:
    """Correlation of a careful reading with the truth, as far as the assumption's doubt goes."""
    known = (doubt.high - doubt.low) / (2.0 * NINETY)
    read = max(error, relative * abs(doubt.middle))
    return float(known / (known**2 + read**2) ** 0.5) if known > 0.0 else 0.0
