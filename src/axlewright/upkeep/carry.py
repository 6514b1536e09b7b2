"""What to carry for a trip: the least set that stands, and the rest by risk, hours and mass."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.duty import hard_trail_share
from axlewright.rig import Column
from axlewright.tables import Spare, card_of, cards, duty, spares, stranding
from axlewright.upkeep.packing import best_choice, gain_of

Place: TypeAlias = Literal["least", "rest", "left", "not judged"]
USUAL_PACE: Final = 11.0  # m/s on the way out; memory
ALONE: Final = 0.25  # of what a spare saves where its card asks for more people; memory
PRIOR: Final = 1.0  # the figures count for as much as one break seen; judgement
THIN: Final = 1e6  # m of hard trail: a shorter record counts as this much; judgement
SLOPE: Final = 1.5  # Weibull slope of wear about its middle life; usual for bearings, memory
WORTH: Final = 60.0  # s: what saves less on a trip stays at home
UNKNOWN_USE: Final = 2.0  # either way, how often the ground's reference moments come; memory
FEW: Final = 99  # draws of the doubt where there is but the middle
GOLDEN: Final = 0.6180339887498949


@dataclass(frozen=True, slots=True, kw_only=True)
class Outing:
    """A trip that is planned.

    ``far`` is the distance to help at its farthest, ``distance`` the way in all, both in m;
    ``spread`` is the factor by which ``distance`` may be off either way (1: as given); ``mass`` is
    what all spares and tools may weigh, kg.
    """

    days: int
    people: int
    mass: float
    far: float
    ground: str
    distance: float
    spread: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Weakness:
    """One part that may give: its key with its side, and what happens then.

    ``rate`` is how often it gives in one metre of hard trail, ``life`` its middle life in m of this
    owner's use, both over draws; None where no figure judges it. ``long`` is true on the longer
    side of the axle, false on the shorter, None in the middle. ``broke`` counts what the record
    tells of it.
    """

    part: str
    kind: str
    label: str
    what_then: str
    rate: Column | None = None
    life: Column | None = None
    long: bool | None = None
    broke: float = 0.0

    @property
    def judged(self) -> bool:
        """Whether anything is known about how often it gives."""
        return self.rate is not None or self.life is not None or self.broke > 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Worn:
    """What lies behind a rig: its way so far as a band, m, and the same in hard trail."""

    shortest: float = 0.0
    longest: float = 0.0
    hard: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRisk:
    """One part on one trip: chance that it gives with its band, and what that costs in seconds."""

    weakness: Weakness
    chance: float
    low: float
    high: float
    lost: float
    weight: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Spared:
    """One spare and why it is where it is.

    ``saves`` is the weighted time in s that it saves on the middle trip beside everything else
    that is packed (beside the least set, where it is left behind), with its band.
    """

    spare: Spare
    place: Place
    saves: float
    low: float
    high: float
    chance: float
    covers: tuple[PartRisk, ...]
    broke: bool
    short_handed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """What to carry: every spare in its place, the parts at risk, the mass of it all.

    ``mass`` is the middle, with its band in ``lightest`` and ``heaviest``; ``at_risk`` and
    ``saved`` are weighted seconds. ``over`` says that the least set alone weighs more than allowed.
    """

    outing: Outing
    worn: Worn
    items: tuple[Spared, ...]
    risks: tuple[PartRisk, ...]
    unjudged: tuple[str, ...]
    least_mass: float
    mass: float
    lightest: float
    heaviest: float
    at_risk: float
    saved: float
    over: bool

    def of(self, *places: Place) -> tuple[Spared, ...]:
        """Spares in some places, in order."""
        return tuple(each for each in self.items if each.place in places)


def outing_of(
    days: int, people: int, mass: float, far: float, ground: str, distance: float | None = None
) -> Outing:
    """Give a trip; where its distance is not said, it is days times a usual day on that ground."""
    told = duty(ground)
    if distance is not None:
        return Outing(
            days=days, people=people, mass=mass, far=far, ground=ground, distance=distance
        )
    return Outing(
        days=days,
        people=people,
        mass=mass,
        far=far,
        ground=ground,
        distance=days * told.day_distance,
        spread=told.origin.spread,
    )


def least_set(
    axle: str, words: Mapping[str, str], ground: str, table: Mapping[str, Spare] | None = None
) -> tuple[Spare, ...]:
    """The fixed least set of a duty, which no ranking, mass or record takes away."""
    table = spares() if table is None else table
    return tuple(
        each for each in table.values() if ground in each.duties and each.fits(axle, words)
    )


def lost_time(what_then: str, far: float) -> float:
    """Time that is lost when nothing is carried for it, s, so far (m) from help."""
    told = stranding(what_then)
    helped = told.wait + 2.0 * far / told.help_pace
    if told.pace is None:
        return helped
    return min(far / told.pace - far / USUAL_PACE, helped)


def chance_of(weakness: Weakness, outing: Outing, own: str, worn: Worn) -> Column:
    """Chance that a part gives on a trip, over the draws of its doubt.

    Hard moments come by chance, as often as the figures say, corrected by what the record tells
    (a gamma prior that counts for one break); wear goes on from the distance behind it, and from
    an age that nobody knows where none is on record. ``own`` is the ground of this owner's use.
    """
    known = [each.size for each in (weakness.rate, weakness.life) if each is not None]
    count = max(known, default=1)
    count = count if count > 1 else FEW
    index = np.arange(count)
    deep = np.hypot(np.log(outing.spread), np.log(UNKNOWN_USE)) / 1.6449
    share = (0.5 + index * GOLDEN) % 1.0
    doubt = np.exp(deep * np.array([NormalDist().inv_cdf(max(each, 1e-6)) for each in share]))
    hard = outing.distance / hard_trail_share(outing.ground) * doubt
    rate = np.zeros(count) if weakness.rate is None else np.broadcast_to(weakness.rate, count)
    with np.errstate(divide="ignore"):
        rate = (PRIOR + weakness.broke) / (PRIOR / rate + worn.hard)
    if weakness.broke:
        rate = np.maximum(rate, weakness.broke / max(worn.hard, THIN))
    load = rate * hard
    if weakness.life is not None:
        life = np.maximum(np.broadcast_to(weakness.life, count), 1.0)
        middle = life / np.log(2.0) ** (1.0 / SLOPE)
        part = (0.25 + index * GOLDEN**2) % 1.0
        behind = worn.shortest + part * (worn.longest - worn.shortest)
        behind = np.where(worn.longest > 0.0, behind, part * life)
        ahead = hard * hard_trail_share(own)
        load = load + ((behind + ahead) / middle) ** SLOPE - (behind / middle) ** SLOPE
    return np.asarray(-np.expm1(-load))


def what_to_carry(
    weak: Sequence[Weakness],
    outing: Outing,
    axle: str,
    words: Mapping[str, str],
    worn: Worn,
    table: Mapping[str, Spare] | None = None,
) -> Load:
    """Choose what to carry: the least set as it stands, the rest by what it saves for its mass."""
    table = spares() if table is None else table
    own = words.get("use.hardest", outing.ground.replace("_", " ")).replace(" ", "_")
    judged = [each for each in weak if each.judged]
    drawn = [chance_of(each, outing, own, worn) for each in judged]
    risks = tuple(_risk(each, chance, outing) for each, chance in zip(judged, drawn, strict=True))
    size = max((each.size for each in drawn), default=1)
    cost = np.array([each.lost * each.weight for each in risks])
    spread = np.stack([np.resize(each, size) for each in drawn]) if drawn else np.zeros((0, size))
    kinds = {each.kind for each in weak}
    least = {each.key for each in least_set(axle, words, outing.ground, table)}
    mine = [
        each
        for each in table.values()
        if each.key in least or (each.fits(axle, words) and kinds & set(each.serves))
    ]
    shares = np.array([[_share(each, risk, outing, axle) for risk in risks] for each in mine])
    shares = shares.reshape(len(mine), len(risks))
    gains = shares * np.array([each.chance for each in risks]) * cost
    fixed = np.array([each.key in least for each in mine], dtype=bool)
    masses = np.array([each.mass for each in mine])
    held = np.max(np.where(fixed[:, None], gains, 0.0), axis=0, initial=0.0)
    alone = np.sum(np.maximum(gains - held, 0.0), axis=1)
    free = np.flatnonzero(~fixed & (alone >= WORTH))
    room = outing.mass - float(np.sum(masses[fixed]))
    packed = fixed.copy()
    packed[free] = best_choice(gains[free], held, masses[free], max(room, 0.0))
    unjudged = {each.kind: each.label for each in weak if not each.judged}
    items = []
    for number, spare in enumerate(mine):
        others = packed.copy()
        others[number] = False
        base = np.max(np.where(others[:, None], shares, 0.0), axis=0, initial=0.0)
        more = np.maximum(shares[number] - base, 0.0) * cost
        saved = more @ spread
        covers = tuple(
            sorted(
                (risk for risk, share in zip(risks, shares[number], strict=True) if share > 0.0),
                key=lambda risk: -risk.chance * risk.lost * risk.weight,
            )
        )
        unknown = not covers and bool(set(spare.serves) & set(unjudged))
        items.append(
            Spared(
                spare=spare,
                place="least"
                if fixed[number]
                else "rest"
                if packed[number]
                else "not judged"
                if unknown
                else "left",
                saves=float(np.mean(saved)),
                low=float(np.quantile(saved, 0.05)),
                high=float(np.quantile(saved, 0.95)),
                chance=1.0 - float(np.prod([1.0 - each.chance for each in covers])),
                covers=covers,
                broke=any(each.weakness.broke for each in covers),
                short_handed=spare.mass > 0.0
                and any(_short(each, outing, axle) for each in covers),
            )
        )
    rank = {"least": 0, "rest": 1, "not judged": 2, "left": 3}
    mass = float(np.sum(masses[packed]))
    doubts = np.array([each.origin.spread for each in mine])
    return Load(
        outing=outing,
        worn=worn,
        items=tuple(sorted(items, key=lambda each: (rank[each.place], _per_kilogram(each)))),
        risks=tuple(sorted(risks, key=lambda each: -each.chance * each.lost * each.weight)),
        unjudged=tuple(dict.fromkeys(unjudged.values())),
        least_mass=float(np.sum(masses[fixed])),
        mass=mass,
        lightest=float(np.sum((masses / doubts)[packed])),
        heaviest=float(np.sum((masses * doubts)[packed])),
        at_risk=float(np.sum([each.chance for each in risks] * cost)) if risks else 0.0,
        saved=gain_of(packed, gains, np.zeros(len(risks))),
        over=room < 0.0,
    )


def _risk(weakness: Weakness, chance: Column, outing: Outing) -> PartRisk:
    low, high = (float(each) for each in np.quantile(chance, [0.05, 0.95]))
    return PartRisk(
        weakness=weakness,
        chance=float(np.mean(chance)),
        low=low,
        high=high,
        lost=lost_time(weakness.what_then, outing.far),
        weight=stranding(weakness.what_then).weight,
    )


def _share(spare: Spare, risk: PartRisk, outing: Outing, axle: str) -> float:
    """Share of the lost time that a spare saves once a part has given."""
    weakness = risk.weakness
    if weakness.kind not in spare.serves:
        return 0.0
    if spare.side and weakness.long is not None and weakness.long != (spare.side == "long"):
        return 0.0
    return spare.share * (ALONE if spare.mass and _short(risk, outing, axle) else 1.0)


def _short(risk: PartRisk, outing: Outing, axle: str) -> bool:
    """Whether the part's card asks for more people than go along."""
    card = card_of(risk.weakness.kind, axle)
    return card is not None and cards()[card.key].people > outing.people


def _per_kilogram(item: Spared) -> tuple[float, str]:
    if item.place == "least":
        return 0.0, ""
    return -item.saves / max(item.spare.mass, 1e-3), item.spare.key
