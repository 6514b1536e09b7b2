"""The choice: every change on the same draws, which one to make, and how sure that is."""

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from typing import Final, TypeAlias

import numpy as np

from axlewright.decide.doubt import drawn
from axlewright.decide.flips import Flip, flips, tyre_flips
from axlewright.decide.hands import Hands
from axlewright.decide.looks import WorthLook, worth_looking
from axlewright.decide.mends import Faster
from axlewright.decide.money import Cost, World, cost_of, summed, use_of, world_of
from axlewright.decide.offers import Offer, offers
from axlewright.decide.past import joined, likely, picked, places_of, told_apart
from axlewright.decide.regret import (
    Sorrow,
    fewer_draws,
    sorrow,
    standard_error,
    worth_of_knowing_all,
)
from axlewright.decide.terms import Price, Terms
from axlewright.decide.tried import Tried, tried
from axlewright.decide.yearly import Yearly
from axlewright.rig import SEED, Column, Finding, Rig, findings, mended_parts, stops

Told: TypeAlias = Callable[[str, int, int], None]
DRAWS: Final = 1000
ENOUGH, MORE = 0.3, 4  # share of the draws that is to fit the past, else so many times as many
GRAVER, GRAVER_BY = 1.1, 0.02  # more often than this and steering or a wheel goes: not advised
LEAVE: Final = "leave"
TOP: Final = 4  # changes that are held against each other on other tyres
CLEAR: Final = 2.0  # standard errors by which a change must beat leaving it


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One change over all draws: what it costs, and what it does to the axle."""

    offer: Offer
    price: Price
    found: Tried
    cost: Cost
    graver: bool

    @property
    def key(self) -> str:
        """Key of the change."""
        return self.offer.option.key


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """Everything about a choice.

    ``choices`` stand by average cost, the least first; ``refused`` are the changes that do not go
    on this rig. ``advised`` is the key of the change to make, ``runner_up`` the next. ``fit`` is
    how many draws those that fit the past are worth. ``paired`` says how many times as many
    unpaired draws would tell the advised change from leaving it as sharply (or, where leaving
    is advised, from the next); that other is ``beside``, ``sorry_beside`` how often and by how
    much it alone would have come out cheaper, ``glad_beside`` how often and by how much dearer.
    ``yearly`` is the record's distance a year, where it counts.
    """

    rig: Rig
    terms: Terms
    draws: int
    seed: int
    choices: tuple[Choice, ...]
    refused: tuple[Offer, ...]
    advised: str
    runner_up: str
    unclear: bool
    sorrow: Sorrow
    sorry_for: str
    beside: str
    sorry_beside: Sorrow
    glad_beside: Sorrow
    knowing_all: float
    looks: tuple[WorthLook, ...]
    flips: tuple[Flip, ...]
    paired: float
    fit: float
    faster: tuple[Faster, ...]
    findings: tuple[Finding, ...]
    world: World
    yearly: Yearly | None = None

    @property
    def stops(self) -> tuple[Finding, ...]:
        """Findings that say: do not drive."""
        return stops(self.findings)

    def choice(self, key: str) -> Choice:
        """One change by key."""
        return next(each for each in self.choices if each.key == key)


def decide(
    rig: Rig,
    terms: Terms | None = None,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    gave: Collection[str] = (),
    at_once: Collection[str] = (),
    faster: Sequence[Faster] = (),
    thorough: bool = True,
    only: Collection[str] = (),
    progress: Told | None = None,
    workers: int = 1,
) -> Decision:
    """Lay changes side by side on the same draws and say which to make.

    ``gave`` are kinds of part that have given so far and ``at_once`` those of them in one bad
    moment; ``faster`` are mends that come round faster. Without ``thorough`` what looks are
    worth and when the choice flips is left out; ``only`` keeps to some changes. With ``workers``
    the draws are shared among so many processes, which changes no number; a program that asks
    for them keeps its own start behind ``if __name__ == "__main__"``.
    """
    terms = terms or Terms()
    with Hands(workers) as hands:
        world, base, fit = _likely_world(rig, terms, draws, seed, gave, at_once, progress, hands)
        made, refused = _laid_out(rig, world, base, only, progress, hands)
    return _decided(rig, terms, world, made, refused, fit, faster, thorough=thorough)


def _laid_out(
    rig: Rig,
    world: World,
    base: Tried,
    only: Collection[str],
    progress: Told | None,
    hands: Hands,
) -> tuple[list[Choice], list[Offer]]:
    """Every change over the draws of the world, and those that do not go on this rig."""
    found: dict[str, Tried] = {f"{rig.digest} {mended_parts(rig)} ": base}
    made: list[Choice] = []
    refused: list[Offer] = []
    offered = [each for each in offers(rig) if not only or each.option.key in {LEAVE, *only}]
    for number, offer in enumerate(offered):
        if offer.refused:
            refused.append(offer)
            continue
        told = _telling(progress, offer, number, len(offered))
        name = f"{offer.rig.digest} {mended_parts(offer.rig)} {offer.option.detail}"
        if name not in found:
            found[name] = tried(
                offer.rig,
                world.draws,
                world.seed,
                detail=offer.option.detail,
                places=world.places,
                progress=told,
                hands=hands,
            )
        cost = cost_of(offer, found[name], world)
        made.append(
            Choice(
                offer=offer,
                price=world.terms.price(offer.option.key),
                found=found[name],
                cost=cost,
                graver=False,
            )
        )
    return made, refused


def _telling(
    progress: Told | None, offer: Offer, number: int, of_offers: int
) -> Callable[[int, int], None] | None:
    """Progress of one change as progress of all."""
    if progress is None:
        return None

    def told(done: int, of: int) -> None:
        progress(offer.option.label, number * of + done, of_offers * of)

    return told


def _likely_world(
    rig: Rig,
    terms: Terms,
    draws: int,
    seed: int,
    gave: Collection[str],
    at_once: Collection[str],
    progress: Told | None,
    hands: Hands,
) -> tuple[World, Tried, float]:
    """The shared world over draws that the rig's past makes likely, and the rig as it is."""

    def told(done: int, of: int) -> None:
        if progress is not None:
            progress("the rig as it is, against its past", done, of)

    base, many = tried(rig, draws, seed, progress=told, hands=hands), draws
    if rig.words.get("rig.condition") == "never looked at":
        return world_of(rig, terms, draws, seed), base, float(draws)
    weights = _weights(rig, terms, base, many, seed, gave, at_once)
    if told_apart(weights) < ENOUGH * draws:
        many = MORE * draws
        rest = np.arange(draws, many)
        more = tried(rig, many, seed, places=rest, progress=told, hands=hands)
        base = joined(base, more)
        weights = _weights(rig, terms, base, many, seed, gave, at_once)
    fit = told_apart(weights)
    places = places_of(weights, draws)
    return (
        world_of(rig, terms, draws, seed, places=places),
        picked(base, places),
        min(fit, float(draws)),
    )


def _weights(
    rig: Rig,
    terms: Terms,
    base: Tried,
    many: int,
    seed: int,
    gave: Collection[str],
    at_once: Collection[str],
) -> Column:
    """How likely each draw makes the rig's past, (many,)."""
    distance, hard = use_of(rig, terms, np.arange(many), seed)
    past = drawn("past_years", terms.band("past_years"), many, seed)
    back = past / terms.band("years").middle
    return likely(base, hard * back, distance * back, gave, at_once)


def _decided(
    rig: Rig,
    terms: Terms,
    world: World,
    made: Sequence[Choice],
    refused: Sequence[Offer],
    fit: float,
    faster: Sequence[Faster],
    *,
    thorough: bool,
) -> Decision:
    costs = summed({each.key: each.cost for each in made})
    keys = [each.key for each in made]
    grave = {each.key: float(np.mean(each.cost.grave > 0.0)) for each in made}
    graver = {key for key in keys if grave[key] > GRAVER * grave[LEAVE] + GRAVER_BY}
    open_to = [key for key in keys if key not in graver and not (key == LEAVE and faster)]
    rows = [keys.index(key) for key in open_to]
    order = sorted(rows, key=lambda row: float(np.mean(costs[row])))
    advised = order[0]
    unclear = False
    if keys[advised] != LEAVE and not faster:
        leave = keys.index(LEAVE)
        error = standard_error(costs[advised], costs[leave]) * (world.draws / max(fit, 1.0)) ** 0.5
        gain = float(np.mean(costs[leave] - costs[advised]))
        unclear = gain < CLEAR * error
        advised = leave if unclear else advised
    rest = [row for row in order if row != advised]
    other = rest[0] if rest else advised
    against = keys.index(LEAVE) if keys[advised] != LEAVE else other
    least = terms.band("not_worth_a_thought").middle
    regretted = sorrow(costs, advised, least)
    pair = costs[[advised, against]]
    return Decision(
        rig=rig,
        terms=terms,
        draws=world.draws,
        seed=world.seed,
        choices=_ranked(made, graver),
        refused=tuple(refused),
        advised=keys[advised],
        runner_up=keys[other],
        unclear=unclear,
        sorrow=regretted,
        sorry_for=keys[regretted.other] if regretted.other >= 0 else "",
        beside=keys[against],
        sorry_beside=sorrow(pair, 0, least),
        glad_beside=sorrow(pair, 1, least),
        knowing_all=worth_of_knowing_all(costs),
        looks=worth_looking(rig, costs, world) if thorough else (),
        flips=_flips(rig, made, world, open_to, [keys[row] for row in order[:TOP]])
        if thorough
        else (),
        paired=fewer_draws(costs[advised], costs[against]),
        fit=fit,
        faster=tuple(faster),
        findings=findings(rig),
        world=world,
    )


def _flips(
    rig: Rig, made: Sequence[Choice], world: World, open_to: Collection[str], top: Sequence[str]
) -> tuple[Flip, ...]:
    pairs = [(each.offer, each.found) for each in made]
    return (*flips(pairs, world, open_to), *tyre_flips(rig, pairs, world, {LEAVE, *top}))


def _ranked(made: Sequence[Choice], graver: Collection[str]) -> tuple[Choice, ...]:
    marked = [replace(each, graver=each.key in graver) for each in made]
    return tuple(sorted(marked, key=lambda each: float(np.mean(each.cost.total))))
