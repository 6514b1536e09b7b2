"""When the choice flips: kilometres a year, how far help is, another tyre."""

from collections.abc import Collection, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.decide.money import Cost, World, cost_of
from axlewright.decide.offers import ALIKE, Offer, offers, on_tyre
from axlewright.decide.past import picked
from axlewright.decide.tried import Tried, tried
from axlewright.errors import BadFile
from axlewright.rig import Rig, parse_tyre, point_columns
from axlewright.tables import option_tyres

FACTORS: Final = (0.1, 0.2, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0, 3.0, 5.0, 10.0)
FURTHER, AWAY, TYRE = "distance a year", "distance to help", "tyre"
MOST: Final = 1000  # draws that a choice elsewhere is made with
SOME: Final = 256  # draws that a choice on another tyre is made with


@dataclass(frozen=True, slots=True, kw_only=True)
class Flip:
    """One thing that moves the choice.

    ``by`` is `FURTHER` or `AWAY`; ``at`` is its value (m, a year or to help) at which ``chosen``
    costs least on average, the nearest one tried that way; ``now`` its middle today; ``before``
    is the change that costs least today. By `TYRE`, ``at`` and ``now`` are outer diameters, m,
    and ``tyre`` is the sidewall.
    """

    by: str
    now: float
    at: float
    before: str
    chosen: str
    tyre: str = ""


def flips(
    pairs: Sequence[tuple[Offer, Tried]], world: World, open_to: Collection[str]
) -> tuple[Flip, ...]:
    """The nearest flips either way; none where the choice holds over a tenth to ten times."""
    step = max(world.draws // MOST, 1)
    kept = np.arange(0, world.draws, step)
    may = [(offer, picked(found, kept)) for offer, found in pairs if offer.option.key in open_to]
    world = world.thinned(step)
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


def tyre_flips(
    rig: Rig, pairs: Sequence[tuple[Offer, Tried]], world: World, keys: Collection[str]
) -> tuple[Flip, ...]:
    """Whether the choice among some changes is another on the next tyres down and up."""
    step = max(world.draws // SOME, 1)
    kept = np.arange(0, world.draws, step)
    some = world.thinned(step)
    before = _least(
        {
            offer.option.key: cost_of(offer, picked(found, kept), some)
            for offer, found in pairs
            if offer.option.key in keys
        }
    )
    own = rig.tyre.outer_diameter
    found: list[Flip] = []
    for sidewall, after in _next_tyres(rig):
        costs = {}
        for offer in offers(after):
            if offer.option.key in keys and not offer.refused:
                there = tried(
                    offer.rig,
                    some.draws,
                    world.seed,
                    detail=offer.option.detail,
                    places=some.places,
                )
                costs[offer.option.key] = cost_of(offer, there, some)
        chosen = _least(costs)
        if chosen != before:
            at = after.tyre.outer_diameter
            found.append(Flip(by=TYRE, now=own, at=at, before=before, chosen=chosen, tyre=sidewall))
    return tuple(found)


def _least(costs: Mapping[str, Cost]) -> str:
    return min(costs, key=lambda key: float(np.mean(costs[key].total)))


def _next_tyres(rig: Rig) -> list[tuple[str, Rig]]:
    """The next usual tyres below and above the rig's own, and the rig on each."""
    own, columns = rig.tyre.outer_diameter, point_columns(rig)
    sizes = sorted(
        (parse_tyre(each.sidewall).outer_diameter, each.sidewall)
        for each in option_tyres().values()
    )
    lower = [size for size in sizes if size[0] < own * (1.0 - ALIKE)][-1:]
    upper = [size for size in sizes if size[0] > own * (1.0 + ALIKE)][:1]
    made = []
    for _, sidewall in lower + upper:
        with suppress(BadFile):  # a tyre that this rig cannot stand on flips nothing
            made.append((sidewall, on_tyre(rig, columns, sidewall)))
    return made
