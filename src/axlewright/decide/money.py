"""What a change costs over the years looked ahead: its price, breakdowns, and what comes back."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.decide.doubt import chance, drawn
from axlewright.decide.offers import Offer, said_bent
from axlewright.decide.terms import Terms, scaled
from axlewright.decide.tried import NEW_WELD, Tried, arrivals, breakdowns, expected
from axlewright.duty import hard_trail_share
from axlewright.rig import Column, Rig, columns_at
from axlewright.tables import Band, Consequence, consequences, option_mends, options

GRAVE: Final = ("steering lost", "wheel lost")
SPEND: Final = "heavier_ready"  # what is bought in the end, where a housing has given
MOST_WORN: Final = 3  # times that one part is used up and replaced in the years looked ahead
BENT: Final = "bent_already"


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """Everything that changes share, drawn once, (n,): use, luck, what things cost this owner.

    ``distance`` is that of this use over the years, m, and ``hard`` the same in thousands of km
    of hard trail; ``luck`` is (cases, moments, n); ``is_bent`` tells where the housing is bent
    beyond use already.
    """

    draws: int
    seed: int
    terms: Terms
    distance: Column
    hard: Column
    places: NDArray[np.int64]
    help_away: Column
    luck: Column
    is_bent: NDArray[np.bool_]
    hour: Column
    day: Column

    made: dict[str, Column] = field(default_factory=dict, repr=False, compare=False)

    def band(self, key: str) -> Column:
        """Draws of one doubt of the table, in the owner's currency where it is money."""
        return self.draw(key, self.terms.band(key))

    def draw(self, name: str, band: Band) -> Column:
        """Draws of a band under a name, made once."""
        if name not in self.made:
            self.made[name] = drawn(name, band, self.draws, self.seed)
        return self.made[name]

    def thinned(self, step: int) -> "World":
        """The same world over every so many of its draws."""
        return replace(
            self,
            draws=self.places[::step].size,
            distance=self.distance[::step],
            hard=self.hard[::step],
            places=self.places[::step],
            help_away=self.help_away[::step],
            luck=self.luck[..., ::step],
            is_bent=self.is_bent[::step],
            hour=self.hour[::step],
            day=self.day[::step],
            made={},
        )

    def moved(self, *, further: float = 1.0, away: float = 1.0) -> "World":
        """The same world with another distance a year, and to help."""
        return replace(
            self,
            distance=self.distance * further,
            hard=self.hard * further,
            help_away=self.help_away * away,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """One change over the years, all in the owner's currency, (n,) each.

    ``price``, ``work`` (hours at their worth) and ``waiting`` (days off the road) come at once;
    ``breaking`` are breakdowns away from home, ``wearing`` what is used up, ``again`` another
    housing that has to be bought all the same; ``back`` is what comes back, now and at the end.
    ``strandings`` counts breakdowns away from home, ``grave`` the moments in which steering or a
    wheel goes, ``housing_gone`` tells where the housing is done. ``worth_now`` is what the old
    axle would bring today, so that leaving an axle that nothing befalls costs nothing.
    """

    price: Column
    work: Column
    waiting: Column
    breaking: Column
    wearing: Column
    again: Column
    back: Column
    hours: Column
    days: Column
    strandings: Column
    grave: Column
    housing_gone: NDArray[np.bool_]
    sold_now: Column
    sold_later: Column
    worth_now: Column

    @property
    def total(self) -> Column:
        """What it costs over the years, all in, (n,)."""
        out = self.price + self.work + self.waiting + self.breaking + self.wearing + self.again
        return np.asarray(out + self.worth_now - self.back)


def world_of(
    rig: Rig,
    terms: Terms,
    draws: int,
    seed: int,
    *,
    places: NDArray[np.int64] | None = None,
) -> World:
    """Draw what changes share, over the draws that the rig's past makes likely (``places``)."""
    places = np.arange(draws) if places is None else places
    distance, hard = use_of(rig, terms, places, seed)
    if "help_km" in terms.bands or "from_help" not in rig.given:
        help_away = 1e3 * drawn("help_km", terms.band("help_km"), draws, seed)
    else:
        help_away = np.full(draws, rig.given["from_help"].value)
    hour = drawn("own_hour", terms.band("own_hour"), draws, seed)
    if terms.skill == "shop":
        hour = drawn("shop_hour", terms.band("shop_hour"), draws, seed)
    return World(
        draws=draws,
        seed=seed,
        terms=terms,
        distance=distance,
        hard=hard,
        places=places,
        help_away=help_away,
        luck=arrivals(draws, seed),
        is_bent=_bent(rig, terms, draws, seed),
        hour=hour,
        day=drawn("day_off", terms.band("day_off"), draws, seed),
    )


def use_of(rig: Rig, terms: Terms, places: NDArray[np.int64], seed: int) -> tuple[Column, Column]:
    """Distance over the years looked ahead, m, and the same in thousands of km of hard trail."""
    hardest = rig.words["use.hardest"]
    key = "km_a_year" if "km_a_year" in terms.bands else f"km_a_year.{hardest.replace(' ', '_')}"
    many, years = int(places.max()) + 1, terms.band("years").middle
    distance = 1e3 * years * drawn(key, terms.band(key), many, seed)[places]
    often = columns_at(rig, places, seed)["duty_share"]
    return distance, np.asarray(distance / 1e6 * often / hard_trail_share(hardest))


def cost_of(offer: Offer, found: Tried, world: World) -> Cost:
    """Cost of one change in every draw."""
    option, terms = offer.option, world.terms
    own = terms.price(option.key)
    price = world.draw(f"price.{option.key}", own.band)
    price = price + _straightening(offer, world)
    hours = world.draw(f"hours.{option.key}", option.hours) * effort(world)
    days = world.draw(f"days.{option.key}", option.days)
    events = _Events(found, world)
    new = option.housing_is_new
    done = events.housing_gone if new else events.housing_gone | world.is_bent
    again, again_hours, again_days = _again(world)
    kept = world.draw(f"kept.{option.key}", option.kept)
    bent_share = world.band("bent_share")
    old = _old_axle(offer, world)
    whole = np.where(world.is_bent, bent_share, 1.0) * old
    spoilt = np.where(done, bent_share, 1.0)
    papers = world.band("papers") if terms.papers else np.ones(world.draws)
    sold_now = option.sells * whole
    stays = np.where(done & (not new), bent_share, 1.0) * old
    stays = stays if option.sells == 0.0 else (1.0 - option.sells) * old
    # What a reinforcement adds goes with the housing that it is welded to.
    sold_later = papers * (kept * price * spoilt + stays)
    return Cost(
        price=price,
        work=hours * world.hour,
        waiting=days * world.day,
        breaking=events.breaking,
        wearing=events.wearing,
        again=np.where(done, again + again_hours * world.hour + again_days * world.day, 0.0),
        back=papers * sold_now + sold_later,
        hours=hours,
        days=days,
        strandings=events.strandings,
        grave=events.grave,
        housing_gone=np.asarray(done),
        sold_now=papers * sold_now,
        sold_later=sold_later,
        worth_now=papers * whole,
    )


def effort(world: World) -> Column:
    """Hours of this owner for one of a practised hand on a hoist, (n,)."""
    skill = world.band(f"skill.{world.terms.skill}")
    on_stands = not world.terms.hoist and world.terms.skill != "shop"
    return np.asarray(skill * world.band("no_hoist")) if on_stands else skill


class _Events:
    """What gives and what is used up in the years, and what that costs."""

    def __init__(self, found: Tried, world: World) -> None:
        self._world = world
        self._mends = _Mends(world)
        draws = world.draws
        self.breaking, self.wearing = np.zeros(draws), np.zeros(draws)
        self.strandings, self.grave = np.zeros(draws), np.zeros(draws)
        self.housing_gone = np.zeros(draws, dtype=np.bool_)
        self._moments(found)
        self._worn(found)

    def _moments(self, found: Tried) -> None:
        often = breakdowns(expected(found.reach, self._world.hard), self._world.luck)
        entries = option_mends()
        for number, kind in enumerate(found.parts):
            times = np.sum(np.where(found.gives == number, often, 0), axis=0).astype(np.float64)
            if not times.any():
                continue
            if is_grave(kind):
                self.grave += times
            stranded = times * self._mends.stranding(kind)
            if entries[kind].housing:
                self.housing_gone |= times > 0
                stranded = np.minimum(times, 1.0) * self._mends.stranding(kind)
            else:
                self.breaking += times * self._mends.mending(kind)
            self.strandings += stranded
            self.breaking += stranded * self._mends.fetched

    def _worn(self, found: Tried) -> None:
        entries, missed = option_mends(), 1.0 - np.minimum(self._world.band("found_first"), 1.0)
        for kind, life in zip(found.wears, found.life, strict=True):
            times = np.minimum(np.floor(self._world.distance / np.maximum(life, 1.0)), MOST_WORN)
            if not times.any():
                continue
            part = "tube" if kind == NEW_WELD else kind
            if entries[part].housing:
                self.housing_gone |= times > 0
                times = np.minimum(times, 1.0)
            else:
                self.wearing += times * self._mends.mending(part)
            stranded = times * missed * self._mends.stranding(part)
            if is_grave(part):
                self.grave += times * missed
            self.strandings += stranded
            self.wearing += stranded * self._mends.fetched


class _Mends:
    """What a mend and being fetched cost this owner."""

    def __init__(self, world: World) -> None:
        self._world = world
        self._made: dict[str, Column] = {}
        hundred = world.help_away / 1e5
        lost = world.band("lost_days") + world.band("lost_days_100km") * hundred
        fetch = world.band("call_out") + world.band("fetch_km") * world.help_away / 1e3
        self.fetched = np.asarray(fetch + lost * world.day)

    def stranding(self, kind: str) -> Column:
        """Chance of being stranded when a part of this kind gives, (n,)."""
        return np.minimum(self._world.band(f"strands.{_beside(kind)}"), 1.0)

    def mending(self, kind: str) -> Column:
        """Money, hours and days of one mend, (n,)."""
        if kind not in self._made:
            world, entry = self._world, option_mends()[kind]
            usd = world.terms.one_usd
            bands = {"price": scaled(entry.money, usd), "hours": entry.hours, "days": entry.days}
            price, hours, days = (
                world.draw(f"mend.{name}.{kind}", band) for name, band in bands.items()
            )
            self._made[kind] = price + hours * effort(world) * world.hour + days * world.day
        return self._made[kind]


def _bent(rig: Rig, terms: Terms, draws: int, seed: int) -> NDArray[np.bool_]:
    """Where the housing is bent beyond use already: as found, else by chance."""
    if said_bent(rig):
        return np.ones(draws, dtype=np.bool_)
    sound = rig.words.get("rig.condition") == "nothing mended, nothing hurts"
    key = f"{BENT}.{'sound' if sound else 'listed'}"
    share = drawn(key, terms.band(key), draws, seed)
    return np.asarray(chance(BENT, draws, seed) < share)


def _straightening(offer: Offer, world: World) -> Column:
    """Price of pulling straight what the heat of the welds bent, (n,)."""
    heat = offer.option.heat
    if heat.high == 0.0:
        return np.zeros(world.draws)
    pulled = world.draw(f"heat.{offer.option.key}", heat)
    over = pulled > world.band("straight_limit")
    return np.where(over, world.band("straightening"), 0.0)


def _again(world: World) -> tuple[Column, Column, Column]:
    """Money, hours and days of another housing, bought in a hurry, (n,)."""
    entry = options()[SPEND]
    price = world.draw(f"price.{SPEND}", world.terms.price(SPEND).band)
    hours = world.draw(f"hours.{SPEND}", entry.hours)
    days = world.draw(f"days.{SPEND}", entry.days)
    return price * world.band("hurry"), hours * effort(world), days


def _old_axle(offer: Offer, world: World) -> Column:
    """What the old axle would bring sound, mended brackets counted, (n,)."""
    worth = world.band("old_axle")
    mended = any(each.what == "mended" for each in _first(offer.rig).conditions)
    return worth * world.band("mended_share") if mended else worth


def _first(rig: Rig) -> Rig:
    return rig.built or rig


def is_grave(kind: str) -> bool:
    """Whether a kind of part takes the steering or a wheel with it."""
    return _entry(kind).what_then in GRAVE


def _beside(kind: str) -> str:
    return _entry(kind).mendable


def _entry(kind: str) -> Consequence:
    known = consequences()
    return known[kind] if kind in known else known[f"{kind}_left"]


def summed(costs: Mapping[str, Cost]) -> Column:
    """Totals of several changes, (changes, n)."""
    return np.stack([each.total for each in costs.values()])
