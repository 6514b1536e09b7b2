"""When the choice flips: with more or fewer kilometres a year, nearer to help or further away."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.decide.money import World, cost_of
from axlewright.decide.offers import Offer
from axlewright.decide.tried import Tried

FACTORS: Final = (0.1, 0.2, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0, 3.0, 5.0, 10.0)
FURTHER, AWAY = "distance a year", "distance to help"


@dataclass(frozen=True, slots=True, kw_only=True)
class Flip:
    """One thing that moves the choice.

    ``by`` is `FURTHER` or `AWAY`; ``at`` is its value (m, a year or to help) at which ``chosen``
    costs least on average, the nearest one tried that way; ``now`` its middle today; ``before``
    is the change that costs least today.
    """

    by: str
    now: float
    at: float
    before: str
    chosen: str


def flips(
    pairs: Sequence[tuple[Offer, Tried]], world: World, open_to: Collection[str]
) -> tuple[Flip, ...]:
    """The nearest flips either way; none where the choice holds over a tenth to ten times."""
    may = [pair for pair in pairs if pair[0].option.key in open_to]
    years = world.terms.band("years").middle
    middles = {
        FURTHER: float(np.median(world.distance)) / years,
        AWAY: float(np.median(world.help_away)),
    }
    found: list[Flip] = []
    for by, now in middles.items():
        if now <= 0.0:
            continue
        best = [_best(may, world, by, factor) for factor in FACTORS]
        today = FACTORS.index(1.0)
        for way in (range(today - 1, -1, -1), range(today + 1, len(FACTORS))):
            for place in way:
                if best[place] != best[today]:
                    found.append(
                        Flip(
                            by=by,
                            now=now,
                            at=FACTORS[place] * now,
                            before=best[today],
                            chosen=best[place],
                        )
                    )
                    break
    return tuple(found)


def _best(pairs: Sequence[tuple[Offer, Tried]], world: World, by: str, factor: float) -> str:
    moved = world.moved(further=factor) if by == FURTHER else world.moved(away=factor)
    means = {
        offer.option.key: float(np.mean(cost_of(offer, found, moved).total))
        for offer, found in pairs
    }
    return min(means, key=means.__getitem__)
