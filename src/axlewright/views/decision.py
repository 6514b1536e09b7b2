"""A choice in words: one sentence, its reasons, the strongest argument against it, and the rest."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.decide import BENT_LOOK, LEAVE, TYRE, Decision
from axlewright.views.decision_facts import ChoiceRow, choice_row, times, years_of
from axlewright.views.decision_money import band_of, mean, money, money_span, share_of_ten, spoken
from axlewright.views.decision_yearly import yearly_line
from axlewright.views.phrases import kind_name, plain, quantity, then

CAUTION: Final = (
    "Decision support, not a certificate: the makers' manuals, local law and licensed practice "
    "come first. Harm to people is not in the money. Front and rear ratio are compared before "
    "anything is ordered. Welding on forgings and load-bearing brackets: by a qualified welder, "
    "with this brief."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionWords:
    """Everything that any face says about a choice, in the reader's units."""

    title: str
    stops: tuple[str, ...]
    sentence: str
    reasons: tuple[str, ...]
    against: str
    sorry: str
    looks: tuple[str, ...]
    flips: tuple[str, ...]
    mends: tuple[str, ...]
    resale: tuple[str, ...]
    rows: tuple[ChoiceRow, ...]
    refused: tuple[str, ...]
    rests: tuple[str, ...]
    caution: str


def decision_words(decision: Decision, system: str = "metric") -> DecisionWords:
    """Put a choice into words."""
    return DecisionWords(
        title=f"{decision.rig.name}: mend or replace its {decision.rig.axle} axle?",
        stops=_stops(decision),
        sentence=decision_sentence(decision),
        reasons=tuple(_reasons(decision)),
        against=_against(decision),
        sorry=_sorry(decision),
        looks=tuple(_looks(decision)),
        flips=tuple(_flips(decision, system)),
        mends=tuple(_mends(decision, system)),
        resale=tuple(_resale(decision)),
        rows=tuple(choice_row(decision, each, system) for each in decision.choices),
        refused=tuple(f"{each.option.label}: {each.refused}." for each in decision.refused),
        rests=(yearly_line(decision, system), *_rests(decision)),
        caution=CAUTION,
    )


def decision_sentence(decision: Decision) -> str:
    """One sentence: what to do, and by how much it is better on average; a STOP replaces it."""
    if decision.stops:
        return (
            "First the STOP: no change is chosen while something that was found says do not drive."
        )
    years = years_of(decision)
    choice = decision.choice(decision.advised)
    currency = decision.terms.currency
    gap = mean(decision.choice(decision.runner_up).cost.total - choice.cost.total)
    other = decision.choice(decision.runner_up).offer.option.label
    if choice.key == LEAVE and decision.unclear:
        return (
            f"Leave it for now: over {years} “{other}” would save about "
            f"{money(-gap, currency)}, but that is within what these draws can tell."
        )
    if choice.key == LEAVE:
        return (
            f"Leave it as it is: over {years} nothing else pays for itself; the next best, "
            f"“{other}”, costs about {money(gap, currency)} more, all in."
        )
    saved = mean(decision.choice(LEAVE).cost.total - choice.cost.total)
    stop = "Stop mending. " if decision.faster else ""
    sense = "less" if saved >= 0.0 else "more"
    return (
        f"{stop}Choose “{choice.offer.option.label}”: over {years} it costs about "
        f"{money(abs(saved), currency)} {sense}, all in, than leaving the axle as it is."
    )


def _stops(decision: Decision) -> tuple[str, ...]:
    from axlewright.views.answer import drive_lines

    return tuple(drive_lines(decision.stops)) if decision.stops else ()


def _reasons(decision: Decision) -> list[str]:
    choice, leave = decision.choice(decision.advised), decision.choice(LEAVE)
    years = years_of(decision)
    lines = []
    now, after = leave.found, choice.found
    lead = kind_name(now.leader) if now.leader else "nothing in reach"
    if choice.key == LEAVE:
        hard = float(np.median(now.margin))
        lines.append(
            f"What gives first, the {lead}, takes a moment {times(hard)} the "
            "hardest usual one, by the middle of the draws that fit its past."
        )
        lines.append(
            f"Its housing bends or cracks for good within {years} in "
            f"{share_of_ten(mean(leave.cost.housing_gone))} draws."
        )
    else:
        next_ = kind_name(after.leader) if after.leader else "nothing in reach"
        moves = f"stays the {lead}" if next_ == lead else f"moves from the {lead} to the {next_}"
        harder = _harder(float(np.median(now.margin)), float(np.median(after.margin)))
        then_ = f": {then(spoken(after.leader))}" if after.leader else ""
        lines.append(f"What gives first {moves}, in a moment {harder}{then_}.")
        lines.append(
            f"The housing bends or cracks for good within {years} in "
            f"{share_of_ten(mean(leave.cost.housing_gone))} "
            f"draws as it is, and in {share_of_ten(mean(choice.cost.housing_gone))} with it."
        )
        lines.append(
            f"Breakdowns away from home over {years}: {mean(leave.cost.strandings):.2g} as it is, "
            f"{mean(choice.cost.strandings):.2g} with it."
        )
    grave = [mean(each.cost.grave > 0.0) for each in (leave, choice)]
    if choice.key != LEAVE:
        lines.append(
            f"Steering or a wheel goes in {100.0 * grave[0]:.0f} of 100 draws as it is, in "
            f"{100.0 * grave[1]:.0f} with it."
        )
    cheaper = [
        each
        for each in decision.choices
        if each.graver and mean(each.cost.total) < mean(choice.cost.total)
    ]
    if cheaper:
        named = " and ".join(f"“{each.offer.option.label}”" for each in cheaper[:2])
        lines.append(
            f"{named} would cost less on average and {'are' if len(cheaper) > 1 else 'is'} not "
            "advised: "
            "steering or a wheel would go more often than now."
        )
    lines.append(
        "By the average over the draws; where it cannot be told, what holds a wheel or steers "
        "decides."
    )
    return lines


def _harder(now: float, after: float) -> str:
    """How much harder a moment is with a change than without; either may be out of reach."""
    if not np.isfinite(after):
        return "out of reach"
    if not np.isfinite(now):
        return "that is in reach, as none is now"
    share = 100.0 * (after / now - 1.0)
    return f"{abs(share):.0f} % {'harder' if share >= 0.0 else 'milder'}"


def _against(decision: Decision) -> str:
    choice, currency = decision.choice(decision.advised), decision.terms.currency
    lost, paid = decision.sorrow.mean, mean(choice.cost.price + choice.cost.waiting)
    if choice.key == LEAVE:
        gone = mean(choice.cost.housing_gone)
        band = (
            money_span(*band_of(choice.cost.again[choice.cost.housing_gone]), currency)
            if gone
            else ""
        )
        told = (
            f"in {share_of_ten(gone)} draws it is bent or cracked within {years_of(decision)}; "
            "then another "
            f"is bought in a hurry for {band}, and the old one brings little."
        )
        return (
            f"Strongest against it: {told}" if gone else "Strongest against it: nothing was found."
        )
    if lost > paid and decision.sorry_for:
        other = decision.choice(decision.sorry_for).offer.option.label
        return f"Strongest against it: as things turn out, “{other}” would often have been enough."
    return (
        f"Strongest against it: about {money(paid, currency)} and the wait are spent now, for "
        "certain, "
        f"against what may never happen; and it does not help {choice.offer.option.helps_not}."
    )


def _sorry(decision: Decision) -> str:
    lost, currency = decision.sorrow, decision.terms.currency
    if not decision.sorry_for or lost.share < 0.005:
        return "You would hardly ever be sorry: no other change would have come out cheaper."
    told = f"{_beside(decision)} "
    other = decision.choice(decision.sorry_for).offer.option.label
    return (
        f"{told}Had you known beforehand how everything turns out, something else of this list "
        f"would have come out cheaper in {share_of_ten(lost.share)} cases, by about "
        f"{money(lost.about, currency)}, most often “{other}”. Luck is in that: hard moments that "
        "come or do not."
    )


def _beside(decision: Decision) -> str:
    """How often the one change beside the advised one would have been the better or the worse."""
    lost, won, currency = decision.sorry_beside, decision.glad_beside, decision.terms.currency
    other = decision.choice(decision.beside).offer.option.label
    if decision.advised == decision.beside:
        return "Nothing else goes on this rig."
    sorry = f"{share_of_ten(lost.share)} cases"
    if lost.share:
        sorry += f", by about {money(lost.about, currency)}"
    glad = f"{share_of_ten(won.share)}"
    if won.share:
        glad += f", by about {money(won.about, currency)}"
    return f"Beside “{other}” you would be sorry in {sorry}, and glad in {glad}."


def _looks(decision: Decision) -> list[str]:
    lines = []
    for look in decision.looks:
        worth = money(look.worth, decision.terms.currency)
        name = look.about if look.path == BENT_LOOK else f"the {look.about}"
        lines.append(
            f"Look first at {name}: worth about {worth}, because it would change your mind in some "
            f"cases. {look.asks} {look.how}"
        )
    return lines or [
        "No look or reading that we know of would change the choice by enough to matter."
    ]


def _flips(decision: Decision, system: str) -> list[str]:
    lines = []
    labels = {each.key: each.offer.option.label for each in decision.choices}
    for flip in decision.flips:
        if flip.by == TYRE:
            lines.append(f"On {flip.tyre} the cheapest is “{labels[flip.chosen]}”.")
            continue
        at, now = (quantity(value, "distance", system, 2) for value in (flip.at, flip.now))
        way = "more" if flip.at > flip.now else "less"
        of = (
            f"{at} a year or {way} on this ground"
            if flip.by.endswith("year")
            else f"{at} to help or {way}"
        )
        lines.append(f"At {of} (now about {now}) the cheapest is “{labels[flip.chosen]}”.")
    return lines or [
        (
            "It holds from a tenth to ten times the distance a year and to help, and on the next "
            "tyres down and up."
        )
    ]


def _mends(decision: Decision, system: str) -> list[str]:
    lines = []
    for each in decision.faster:
        gaps = [
            quantity(gap, "distance", system, 2)
            if each.by_distance
            else f"{gap / 86400.0:.0f} days"
            for gap in each.gaps
        ]
        lines.append(
            f"Stop mending the {each.part}: its mends come round faster, after "
            f"{', then '.join(gaps)}."
        )
    return lines


def _resale(decision: Decision) -> list[str]:
    world, currency = decision.world, decision.terms.currency
    sound = world.band("old_axle")
    bent = sound * world.band("bent_share")
    papers = world.band("papers")
    return [
        (
            f"The old axle brings about {money_span(*band_of(sound), currency)} sound, and "
            f"{money_span(*band_of(bent), currency)} once it is bent: selling before it is bent "
            "keeps that."
        ),
        (
            f"Papers (readings, photos, who welded what) make it {float(np.median(papers)):.2g} "
            "times as "
            "much; open findings, hits, welds and bends go with it."
        ),
    ]


def _rests(decision: Decision) -> list[str]:
    terms = decision.terms
    own = sum(each.price.own for each in decision.choices)
    fit = (
        f"about {decision.fit:.0f} of them"
        if decision.fit < 0.9 * decision.draws
        else "all of them"
    )
    paired = decision.paired
    pairs = "without end" if not np.isfinite(paired) else f"{plain(paired, 2)} times"
    return [
        (
            f"{decision.draws} draws, {fit} telling apart what fits the rig's own past: what is "
            "listed gave, "
            "and nothing else, in the last one to four years of this use (memory)."
        ),
        (
            "Every change meets the same draws and the same luck: unpaired it would take "
            f"{pairs} as many."
        ),
        (
            f"{own or 'None'} of the {len(decision.choices)} prices {'is' if own < 2 else 'are'} "
            "yours; the rest are rough figures from "
            "memory, "
            f"in {terms.currency}. Your own take their place one by one."
        ),
        (
            "Breaking comes as an exponential spectrum of moments; one that bends or cracks the "
            "housing "
            "ends it, and another, heavier and ready, is bought in a hurry."
        ),
    ]
