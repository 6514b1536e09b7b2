"""One change as a row, and everything that is known about it, in words."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright import units
from axlewright.decide import LEAVE, Choice, Decision
from axlewright.rig import Column
from axlewright.views.decision_money import about, band_of, mean, money, money_span, share_of_ten
from axlewright.views.phrases import kind_name, quantity, span
from axlewright.views.units_in_text import in_units

WELDING: Final = (
    "At the weld: no chlorinated cleaner near an arc, oil and paint away, battery and sensors off, "
    "fire watch."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceRow:
    """One change as a row: what it costs all in, now, and what it does to the axle."""

    key: str
    label: str
    mark: str
    total: str
    price: str
    first: str
    gone: str
    hours: str
    days: str
    facts: tuple[tuple[str, str], ...]


def choice_row(decision: Decision, choice: Choice, system: str) -> ChoiceRow:
    """One change as a row."""
    option, cost, currency = choice.offer.option, choice.cost, decision.terms.currency
    leave = decision.choice(LEAVE)
    mark = ""
    if choice.key == decision.advised and not decision.stops:
        mark = "advised"
    elif choice.graver:
        mark = "not advised: steering or a wheel goes more often"
    price = money_span(choice.price.band.low, choice.price.band.high, currency)
    leader = kind_name(choice.found.leader) if choice.found.leader else "nothing in reach"
    return ChoiceRow(
        key=choice.key,
        label=option.label,
        mark=mark,
        total=money_span(*band_of(cost.total), currency),
        price=price if choice.price.band.high else "nothing",
        first=leader,
        gone=share_of_ten(mean(cost.housing_gone)),
        hours=_span(cost.hours, "h"),
        days=_span(cost.days, "days"),
        facts=tuple(_facts(decision, choice, leave, system)),
    )


def _facts(decision: Decision, choice: Choice, leave: Choice, system: str) -> list[tuple[str, str]]:
    option, found, cost = choice.offer.option, choice.found, choice.cost
    currency = decision.terms.currency
    margin = float(np.median(found.margin))
    facts = [
        ("All in, on average", f"{money(mean(cost.total), currency)} over {years_of(decision)}"),
        ("Price", f"{_row_price(choice, currency)} ({choice.price.told_by}, {choice.price.dated})"),
        (
            "Gives first",
            (f"{_leader(found.leader)}, in a moment {times(margin)} the hardest usual one"),
        ),
        ("Wears first", _worn(choice, system)),
        ("Does not help", option.helps_not),
        ("Mass", _mass(choice, leave, system)),
        ("Clearance", _clearance(choice, leave, system)),
        ("Geometry", option.geometry),
        ("Brakes", option.brakes),
        ("In place", option.in_place),
        ("Undone", option.undo),
        ("Gears", option.gears),
        ("Warranty", option.warranty),
        (
            "Hours",
            (
                f"{_span(cost.hours, 'h')}, as a {decision.terms.skill} hand, "
                f"{'on a hoist' if decision.terms.hoist else 'on stands'}"
            ),
        ),
        ("Off the road", _span(cost.days, "days")),
        ("Goes on being used", option.reuse),
        (
            "Breakdowns",
            (
                f"{mean(cost.strandings):.2g} away from home over {years_of(decision)}, about "
                f"{money(mean(cost.breaking + cost.wearing), currency)} with mends; steering or a "
                "wheel "
                f"goes in {100.0 * mean(cost.grave > 0.0):.0f} of 100 draws"
            ),
        ),
        (
            "Pays twice",
            (
                f"in {share_of_ten(mean(cost.again > 0.0))} draws another housing is bought "
                "all the same"
            ),
        ),
        (
            "Comes back",
            (
                f"{_some(mean(cost.sold_now), currency)} for the old axle now, "
                f"{_some(mean(cost.sold_later), currency)} at the end"
            ),
        ),
    ]
    if option.weld_class:
        heat = f"{1e3 * option.heat.low:.1f} to {1e3 * option.heat.high:.1f} mm"
        if units.SYSTEMS[system]["length"] == "in":
            heat = span(option.heat.low, option.heat.high, "length", system, 1)
        check = in_units(f"{option.check[:1].upper()}{option.check[1:]}", system)
        pulled = f"Heat may pull a tube's end by {heat}"
        facts.append(("Weld", f"{option.weld_class}. {pulled}. {check}. {WELDING}"))
    return [(name, text) for name, text in facts if text]


def _row_price(choice: Choice, currency: str) -> str:
    band = choice.price.band
    return money_span(band.low, band.high, currency) if band.high else "nothing"


def _worn(choice: Choice, system: str) -> str:
    lives = np.median(choice.found.life, axis=1)
    place = int(np.argmin(lives))
    kind = choice.found.wears[place]
    name = "the change's own weld on the tube" if kind == "new_weld" else f"the {kind_name(kind)}"
    return (
        f"{name}, about {quantity(float(lives[place]), 'distance', system, 2)} of this use (coarse)"
    )


def _mass(choice: Choice, leave: Choice, system: str) -> str:
    option = choice.offer.option
    tubes = choice.found.mass - leave.found.mass
    low, high = tubes + option.mass.low, tubes + option.mass.high
    if abs(low) < 0.05 and abs(high) < 0.05:
        return "as before"
    ends = [quantity(value, "mass", system, 2) for value in (low, high)]
    told = ends[1] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"
    return f"{told} more than now, all of it below the springs"


def _clearance(choice: Choice, leave: Choice, system: str) -> str:
    rise = choice.found.lowest - leave.found.lowest
    if abs(rise) < 5e-4:
        return "the centre hangs as before"
    sense = "higher" if rise > 0.0 else "lower"
    return f"the centre hangs {quantity(abs(rise), 'length', system, 2)} {sense}"


def years_of(decision: Decision) -> str:
    """How far is looked ahead."""
    years = decision.terms.band("years").middle
    return f"{years:g} year{'' if years == 1.0 else 's'}"


def times(value: float) -> str:
    """How hard a moment is against another, which follows."""
    if not np.isfinite(value):
        return "out of reach, far harder than"
    return "about as hard as" if 0.95 <= value <= 1.05 else f"about {value:.2g} times as hard as"


def _some(value: float, currency: str) -> str:
    return f"about {money(value, currency)}" if value >= 5.0 else "nothing"


def _leader(kind: str) -> str:
    return f"the {kind_name(kind)}" if kind else "nothing in reach"


def _span(values: Column, unit: str) -> str:
    low, high = band_of(values)
    if high < 0.05:
        return "none"
    return f"{about(low)} to {about(high)} {unit}"
