"""What to carry, in words: the answer, the list to tick, and what it rests on."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from axlewright import units
from axlewright.tables import card_of, duty
from axlewright.upkeep import Carrying, PartRisk, Spared, Ticked
from axlewright.views.phrases import quantity
from axlewright.views.take_lists import CardWords, card_words, cards_of

HOUR: Final = 3600.0
FEW: Final = 3  # parts told beside a spare
ROUGH: Final = (
    (
        "The chances are rough: they rest on how often hard moments come, from memory, and on "
        "strengths that are mostly assumed; nine in ten lie in the span beside each. They put "
        "spares in an order and no more. A low chance does not say that a part is sound: only a "
        "look does."
    ),
    (
        "The least set stands whatever the order says: no chance, no mass and no record takes "
        "anything from it."
    ),
    (
        "Hours are those that are lost until the rig moves again, with help or at a crawl; an hour "
        "that takes steering, brakes or a wheel counts for three. Hours, weights and the share "
        "that a spare saves are from memory, off by a factor of two either way."
    ),
    (
        "Masses are from memory, off by half either way: weigh yours. A spare saves hours only "
        "with its tools, its torque value and people who have read its card."
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CarryLine:
    """One thing to carry and why; ``state`` and ``lies`` as ticked, ``place`` where it lies best.

    ``chance`` and ``saves`` are empty where the least set needs no reason.
    """

    key: str
    label: str
    note: str
    place: str
    mass: str
    serves: str
    chance: str
    saves: str
    why: str
    card: str
    state: str
    lies: str
    on: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskLine:
    """One part that may give on the trip: how likely, what then, what it costs, which card."""

    part: str
    chance: str
    then: str
    lost: str
    card: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CarryData:
    """Everything that page, paper and terminal say of one trip, in the reader's units."""

    title: str
    stops: tuple[str, ...]
    sentence: str
    trip: str
    mass: str
    warnings: tuple[str, ...]
    least: tuple[CarryLine, ...]
    rest: tuple[CarryLine, ...]
    unjudged: tuple[CarryLine, ...]
    left: tuple[CarryLine, ...]
    risks: tuple[RiskLine, ...]
    not_judged: str
    record: tuple[str, ...]
    rough: tuple[str, ...]
    cards: tuple[CardWords, ...]
    ticked: str


def carry_data(carrying: Carrying, system: str = "metric") -> CarryData:
    """Words of what to carry."""
    load = carrying.load
    return CarryData(
        title=f"{carrying.name}, {carrying.axle} axle: what to carry",
        stops=tuple(f"STOP: {each}" for each in carrying.stops),
        sentence=_sentence(carrying, system),
        trip=_trip(carrying, system),
        mass=_mass(carrying, system),
        warnings=_warnings(carrying),
        least=_lines(carrying, load.of("least"), system),
        rest=_lines(carrying, load.of("rest"), system),
        unjudged=_lines(carrying, load.of("not judged"), system),
        left=_lines(carrying, load.of("left"), system),
        risks=tuple(_risk(each, carrying.axle) for each in load.risks[:8]),
        not_judged=_not_judged(carrying),
        record=_record(carrying),
        rough=ROUGH,
        cards=carry_cards(carrying, system),
        ticked=_ticked(carrying),
    )


def carry_cards(carrying: Carrying, system: str = "metric") -> tuple[CardWords, ...]:
    """Every repair card of the axle, those of the parts most at risk first."""
    leads: dict[str, list[str]] = {}
    for risk in carrying.load.risks[:8]:
        card = card_of(risk.weakness.kind, carrying.axle)
        if card is not None:
            leads.setdefault(card.key, []).append(risk.weakness.label)
    for key in cards_of(carrying.axle, carrying.words):
        leads.setdefault(key, [])
    return tuple(card_words(key, names, system) for key, names in leads.items())


def carry_lines(data: CarryData) -> list[str]:
    """The same for a terminal, the answer first."""
    lines = [*data.stops, data.sentence, data.trip, data.mass, *data.warnings]
    groups = (
        ("The least set, which stands:", data.least),
        ("The rest, by hours saved for its mass:", data.rest),
        ("No figure judges these; yours to decide:", data.unjudged),
        ("Left at home:", data.left),
    )
    for head, items in groups:
        if not items:
            continue
        lines.append(head)
        for each in items:
            mark = {"packed": "[x]", "missing": "[!]"}.get(each.state, "[ ]")
            lies = f"; lies: {each.lies}" if each.lies else ""
            lines.append(f"  {mark} {each.label}, {each.mass}{lies}  [{each.key}]")
            if each.why:
                lines.append(f"      {each.why}")
    if data.risks:
        lines.append("Most at risk on this trip:")
        lines += [
            f"  {each.part}: {each.chance}; then: {each.then}, {each.lost}" for each in data.risks
        ]
    return [*lines, data.not_judged, *data.record, data.ticked, *data.rough]


def card_lines(cards: Sequence[CardWords]) -> list[str]:
    """Repair cards for a terminal."""
    lines = []
    for card in cards:
        lines += ["", f"{card.title.upper()}. {card.can} {card.effort}".rstrip()]
        if card.tools:
            lines.append(f"  Tools: {card.tools}. Materials: {card.materials}.")
        for number, step in enumerate(card.steps, 1):
            lines += [f"  {number}. {step.do}", f"     ! {step.caution}"]
        lines += [f"  {told}" for told in (card.after, card.limits) if told]
        lines += [f"  Next look: {card.next_look}.", f"  NEVER: {card.never}"]
        lines.append(f"  Write down: {card.record}.")
    return lines


def chance_words(chance: float) -> str:
    """A chance as people say it, no finer than it is known.

    Examples
    --------
    >>> chance_words(0.21)
    'about 1 in 5'
    """
    for least, word in ((0.9, "nearly sure"), (0.6, "likely"), (0.4, "about even")):
        if chance >= least:
            return word
    if chance < 1e-3:
        return "less than 1 in 1,000"
    times = 1.0 / chance
    rounded = round(times) if times < 10.0 else float(f"{times:.1g}")
    return f"about 1 in {rounded:,.0f}"


def weighed(mass: float, system: str) -> str:
    """A mass without its unit, two digits at most.

    Examples
    --------
    >>> weighed(0.8, "metric"), weighed(67.5, "metric")
    ('0.8', '68')
    """
    told = mass / units.known("mass")[units.SYSTEMS[system]["mass"]]
    return f"{float(f'{told:.2g}'):g}"


def hours(seconds: float) -> str:
    """Hours, one digit or two."""
    told = seconds / HOUR
    if told < 0.05:
        return "next to nothing"
    return f"{told:.1f} h" if told < 9.95 else f"{told:.0f} h"


def _sentence(carrying: Carrying, system: str) -> str:
    load = carrying.load
    rest = load.of("rest")
    begin = (
        f"{len(load.of('least'))} things go along whatever follows, "
        f"about {quantity(load.least_mass, 'mass', system, 2)}"
    )
    if not carrying.judged:
        return f"{begin}; the rest is not judged while the first questions of this axle are open."
    if load.over:
        return f"{begin}: more than the mass you gave, and it stands. Leave other load at home."
    if not rest:
        return f"{begin}; nothing else saves as much as a minute on this trip within the mass."
    more = load.mass - load.least_mass
    weight = f", about {quantity(more, 'mass', system, 2)} more" if more else ""
    return (
        f"{begin}; of the rest, {_listed([each.spare.label for each in rest])} "
        f"{'save' if len(rest) > 1 else 'saves'} most{weight}."
    )


def _listed(names: Sequence[str]) -> str:
    short = [name.partition(",")[0].partition(":")[0] for name in names]
    if len(short) > FEW:
        return f"{'; '.join(short[:FEW])} and {len(short) - FEW} more"
    return " and ".join(short) if len(short) == 2 else "; ".join(short)


def _trip(carrying: Carrying, system: str) -> str:
    out = carrying.load.outing
    far = quantity(out.far, "distance", system, 2)
    way = quantity(out.distance, "distance", system, 2)
    rough = (
        f", about {way} in all (a usual day's way, from memory)"
        if out.spread > 1.0
        else f", {way} in all"
    )
    days = "1 day" if out.days == 1 else f"{out.days} days"
    people = "1 person" if out.people == 1 else f"{out.people} people"
    return (
        f"The trip: {days} with {people}, {duty(out.ground).words[:1].lower()}"
        f"{duty(out.ground).words[1:]}{rough}, {far} from help at its farthest."
    )


def _mass(carrying: Carrying, system: str) -> str:
    load = carrying.load
    low, middle, high = (
        quantity(each, "mass", system, 2) for each in (load.lightest, load.mass, load.heaviest)
    )
    allowed = quantity(load.outing.mass, "mass", system, 2)
    return f"All of it weighs about {middle} ({low} to {high}) of the {allowed} that you allow."


def _warnings(carrying: Carrying) -> tuple[str, ...]:
    load = carrying.load
    told = []
    if load.over:
        told.append(
            "The least set alone is heavier than that. It is not made smaller: make room, or go "
            "nearer to help, on milder ground."
        )
    elif load.heaviest > load.outing.mass:
        told.append("At the heavy end of the masses it is more than you allow: weigh it.")
    if carrying.load.outing.people == 1:
        told.append(
            "One person alone: cards that ask for two wait until somebody comes, and what is "
            "carried for them counts for a quarter."
        )
    missing = [
        item.spare.label
        for item in load.of("least")
        if carrying.ticks.get(item.spare.key, Ticked()).state == "missing"
    ]
    if missing:
        told.append(f"Missing from the least set: {_listed(missing)}. Not ready to leave.")
    return tuple(told)


def _lines(carrying: Carrying, items: Sequence[Spared], system: str) -> tuple[CarryLine, ...]:
    return tuple(_line(carrying, each, system) for each in items)


def _line(carrying: Carrying, item: Spared, system: str) -> CarryLine:
    spare, spread = item.spare, item.spare.origin.spread
    tick = carrying.ticks.get(spare.key, Ticked())
    mass = "no mass"
    if spare.mass:
        low, middle, high = (
            weighed(spare.mass * each, system) for each in (1.0 / spread, 1.0, spread)
        )
        mass = f"about {middle} {units.SYSTEMS[system]['mass']} ({low} to {high})"
    serves = _listed(list(dict.fromkeys(_plain(each) for each in item.covers)))
    card = ""
    kinds = [each.weakness.kind for each in item.covers] or list(spare.serves)
    for kind in kinds:
        found = card_of(kind, carrying.axle)
        if found is not None:
            card = found.key
            break
    return CarryLine(
        key=spare.key,
        label=spare.label,
        note=spare.note,
        place=spare.place,
        mass=mass,
        serves=serves,
        chance=chance_words(item.chance) if item.covers else "",
        saves=hours(item.saves) if item.covers else "",
        why=_why(item, serves),
        card=card,
        state=tick.state,
        lies=tick.lies,
        on=tick.on,
    )


def _why(item: Spared, serves: str) -> str:
    if item.place == "not judged":
        return "No figure tells how often that gives. It counts once the record says that it broke."
    if not item.covers:
        return ""
    told = [f"For {serves}: {chance_words(item.chance)} that it is wanted"]
    if item.place != "least":
        low, high = hours(item.low), hours(item.high)
        span = "" if low == high else f" ({low} to {high})"
        told.append(f"saves {hours(item.saves)}{span}")
    if item.broke:
        told.append("it broke before")
    if item.short_handed:
        told.append("its card asks for two people")
    return "; ".join(told) + "."


def _plain(risk: PartRisk) -> str:
    return risk.weakness.label.removeprefix("left ").removeprefix("right ")


def _risk(risk: PartRisk, axle: str) -> RiskLine:
    card = card_of(risk.weakness.kind, axle)
    low, high = chance_words(risk.low), chance_words(risk.high)
    span = "" if low == high else f" ({low} to {high})"
    return RiskLine(
        part=risk.weakness.label,
        chance=f"{chance_words(risk.chance)}{span}",
        then=risk.weakness.what_then,
        lost=f"{hours(risk.lost)} lost",
        card="" if card is None else card.key,
    )


def _not_judged(carrying: Carrying) -> str:
    names = [*carrying.load.unjudged, "what is loose, cracked or worn and nobody has looked at"]
    return f"Not judged, and that is not good news: {'; '.join(names)}."


def _record(carrying: Carrying) -> tuple[str, ...]:
    worn, lines = carrying.load.worn, []
    if carrying.broke:
        lines.append(f"Broke before, by the record, and counted: {'; '.join(carrying.broke)}.")
    else:
        lines.append(
            "Nothing is on record as broken. What broke before counts: enter it under the past."
        )
    if carrying.unplaced:
        lines.append(f"Not recognised, so not counted: {'; '.join(carrying.unplaced)}.")
    if not worn.longest:
        lines.append("No distance is on record: age is taken as unknown.")
    return tuple(lines)


def _ticked(carrying: Carrying) -> str:
    wanted = carrying.load.of("least", "rest")
    states = [carrying.ticks.get(each.spare.key, Ticked()).state for each in wanted]
    packed, missing = states.count("packed"), states.count("missing")
    open_ones = len(wanted) - packed - missing
    return f"{packed} of {len(wanted)} packed, {missing} missing, {open_ones} not looked at yet."
