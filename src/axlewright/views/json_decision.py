"""A choice as JSON: SI and money in its currency, every quantity with its band."""

from collections.abc import Sequence
from importlib.metadata import version
from math import isfinite
from typing import Any

import numpy as np

from axlewright.decide import Carried, Choice, Decision, Sorrow
from axlewright.rig import Column
from axlewright.tables import fingerprint
from axlewright.views.decision import decision_words
from axlewright.views.decision_yearly import yearly_from

VERSION = 1
MONEY = "money"


def decision_json(
    decision: Decision,
    grid: Sequence[Carried] = (),
    still: tuple[float, str, str] | None = None,
) -> dict[str, Any]:
    """Everything about a choice; ``money`` is in ``currency``."""
    words = decision_words(decision)
    lost = decision.sorrow
    return {
        "axlewright_decide": VERSION,
        "package": version("axlewright"),
        "seed": decision.seed,
        "draws": decision.draws,
        "draws_that_fit_the_past": decision.fit,
        "tables": fingerprint(),
        "caution": words.caution,
        "rig": {
            "name": decision.rig.name,
            "axle": decision.rig.axle,
            "digest": decision.rig.digest,
        },
        "currency": decision.terms.currency,
        "years": decision.terms.band("years").middle,
        "distance_a_year": _yearly(decision),
        "stop": bool(decision.stops),
        "stop_words": list(words.stops),
        "advised": None if decision.stops else decision.advised,
        "behind_the_stop": decision.advised if decision.stops else None,
        "clear": not decision.unclear,
        "sentence": words.sentence,
        "reasons": list(words.reasons),
        "against": words.against,
        "sorry": {
            "share": lost.share,
            "about": _plain(lost.about, MONEY),
            "then_better": decision.sorry_for or None,
        },
        "beside": {
            "key": decision.beside,
            "sorry": _share_about(decision.sorry_beside),
            "glad": _share_about(decision.glad_beside),
        },
        "worth_of_knowing_all": _plain(decision.knowing_all, MONEY),
        "looks": [
            {"path": look.path, "about": look.about, "worth": _plain(look.worth, MONEY)}
            for look in decision.looks
        ],
        "flips": [
            {
                "by": flip.by,
                "now": _plain(flip.now, "m"),
                "at": _plain(flip.at, "m"),
                "tyre": flip.tyre or None,
                "before": flip.before,
                "chosen": flip.chosen,
            }
            for flip in decision.flips
        ],
        "mends_come_faster": [each.part for each in decision.faster],
        "as_many_unpaired_draws": _plain(decision.paired, "1"),
        "choices": [_choice(decision, each) for each in decision.choices],
        "refused": [{"key": each.option.key, "why": each.refused} for each in decision.refused],
        "tyres": [_carried(each) for each in grid],
        "still_carries": None
        if still is None
        else {"weight": _plain(still[0], "N"), "tyre": still[1], "duty": still[2]},
        "rests_on": list(words.rests),
    }


def _yearly(decision: Decision) -> dict[str, Any]:
    far = decision.world.distance / decision.terms.band("years").middle
    return {**_drawn(far, "m"), "from": yearly_from(decision)}


def _share_about(sorrow: Sorrow) -> dict[str, Any]:
    return {"share": sorrow.share, "about": _plain(sorrow.about, MONEY)}


def _choice(decision: Decision, choice: Choice) -> dict[str, Any]:
    option, cost, found = choice.offer.option, choice.cost, choice.found
    leave = decision.choice("leave").found
    tubes = found.mass - leave.mass
    lives = np.median(found.life, axis=1)
    place = int(np.argmin(lives))
    return {
        "key": choice.key,
        "name": option.label,
        "group": option.group,
        "sets": [{"path": path, "to": to} for path, to in choice.offer.sets],
        "not_advised": choice.graver,
        "total": _drawn(cost.total, MONEY),
        "price": {
            "value": choice.price.band.middle,
            "unit": MONEY,
            "band": _ends(choice.price.band.low, choice.price.band.high),
            "dated": choice.price.dated,
            "told_by": choice.price.told_by,
            "own": choice.price.own,
        },
        "hours": _drawn(3600.0 * cost.hours, "s"),
        "off_the_road": _drawn(86400.0 * cost.days, "s"),
        "breakdowns": _drawn(cost.strandings, "1"),
        "breaking_and_wearing": _drawn(cost.breaking + cost.wearing, MONEY),
        "bought_again": _drawn(cost.again, MONEY),
        "housing_done": float(np.mean(cost.housing_gone)),
        "steering_or_wheel_lost": float(np.mean(cost.grave > 0.0)),
        "sold_now": _drawn(cost.sold_now, MONEY),
        "sold_later": _drawn(cost.sold_later, MONEY),
        "gives_first": found.leader or None,
        "hardness": _drawn(found.margin, "1"),
        "wears_first": found.wears[place],
        "life": _drawn(found.life[place], "m"),
        "mass": {
            "value": tubes + option.mass.middle,
            "unit": "kg",
            "band": _ends(tubes + option.mass.low, tubes + option.mass.high),
        },
        "centre_higher": _plain(found.lowest - leave.lowest, "m"),
        "in_place": option.in_place,
        "undone": option.undo,
        "gears": option.gears,
        "warranty": option.warranty,
        "helps_not": option.helps_not,
        "geometry": option.geometry,
        "brakes": option.brakes,
        "reuse": option.reuse,
        "weld": option.weld_class,
        "heat": {
            "value": option.heat.middle,
            "unit": "m",
            "band": _ends(option.heat.low, option.heat.high),
        },
        "check": option.check,
    }


def _carried(each: Carried) -> dict[str, Any]:
    middle, low, high = each.margin
    return {
        "tyre": each.tyre,
        "duty": each.duty,
        "verdict": each.verdict,
        "part": each.part or None,
        "hardness": {"value": _number(middle), "unit": "1", "band": _ends(low, high)},
    }


def _drawn(values: Column, unit: str) -> dict[str, Any]:
    with np.errstate(invalid="ignore"):
        low, high = np.quantile(values, [0.05, 0.95], method="nearest")
        value = float(np.mean(values)) if np.all(np.isfinite(values)) else float(np.median(values))
    return {**_plain(value, unit), "band": _ends(float(low), float(high))}


def _plain(value: float, unit: str) -> dict[str, Any]:
    told: dict[str, Any] = {"value": _number(value), "unit": unit, "band": None}
    return told if isfinite(value) else {**told, "reason": "out of reach, or without end"}


def _ends(low: float, high: float) -> dict[str, Any]:
    return {"low": _number(low), "high": _number(high), "confidence": 0.9}


def _number(value: float) -> float | None:
    return float(value) if isfinite(value) else None
