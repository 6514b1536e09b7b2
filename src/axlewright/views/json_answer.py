"""The answer as JSON: SI whatever the reader's units, every quantity with its band.

Non-finite numbers are null with a reason. Readers ignore keys that they do not know; the integer
version grows when the meaning of a key changes.
"""

from importlib.metadata import version
from math import isfinite
from typing import Any

import numpy as np

from axlewright.duty import live_cases
from axlewright.rig import SEED, Finding
from axlewright.strength import (
    TARGET_KM,
    Assessment,
    Comparison,
    Place,
    Size,
    Stressed,
    WearPlace,
    stressed,
)
from axlewright.tables import consequence, fingerprint
from axlewright.views.answer import (
    broken_lines,
    drive_lines,
    measure_next,
    not_judged_line,
    rests_line,
    sentence,
    wear_sentence,
)
from axlewright.views.bent_words import bent_json, standing_json
from axlewright.views.compared import change_json
from axlewright.views.gearing import gearing_json
from axlewright.views.geometry_change import geometry_json
from axlewright.views.opened import opened, size_name
from axlewright.views.phrases import closeness, part_name

VERSION = 1
UNIT = {
    "length": "m",
    "speed": "m/s",
    "plain": "1",
    "torque": "N m",
    "force": "N",
    "weight": "N",
    "mass": "kg",
    "stress": "Pa",
    "stiffness": "N/m",
    "angle": "rad",
    "volume": "m3",
    "count": "1",
    "offset": "m",
    "distance": "m",
}


def as_json(answer: Assessment | Comparison) -> dict[str, Any]:
    """Everything about an assessment, or about a rig before and after changes."""
    if isinstance(answer, Comparison):
        return {
            **_heading(answer.before),
            "before": _assessment(answer.before),
            "after": _assessment(answer.after),
            "changes": [
                {"name": change.name, "digest": change.digest} for change in answer.changes
            ],
            "dropped_readings": list(answer.dropped),
            "compared": _compared(answer),
            "change": change_json(answer),
            "geometry": geometry_json(answer),
        }
    return {**_heading(answer), **_assessment(answer)}


def _heading(assessment: Assessment) -> dict[str, Any]:
    return {
        "axlewright_answer": VERSION,
        "package": version("axlewright"),
        "seed": assessment.drawn.seed if assessment.drawn is not None else SEED,
        "draws": assessment.drawn.draws if assessment.drawn is not None else 0,
        "tables": fingerprint(),
        "caution": "decision support, not a certificate",
    }


def _assessment(assessment: Assessment) -> dict[str, Any]:
    rig, point = assessment.rig, assessment.point
    return {
        "rig": {"name": rig.name, "axle": rig.axle, "digest": rig.digest, "file": rig.file},
        "may_i_drive": {
            "stop": bool(assessment.stops),
            "findings": [_finding(item) for item in assessment.findings],
            "words": drive_lines(assessment.findings),
        },
        "sentence": sentence(assessment),
        "wear_sentence": wear_sentence(assessment),
        "one_bad_moment": [_place(place) for place in assessment.order],
        "wearing_out": [_wear_place(place) for place in assessment.wearing],
        "checks": [*_checks(assessment), *_wear_checks(assessment)],
        "not_judged": list(assessment.not_judged),
        "not_judged_words": not_judged_line(assessment),
        "rests_on": rests_line(assessment),
        "measure_next": measure_next(assessment),
        "assumptions": [
            {
                "id": item.doubt.quantity,
                "label": item.doubt.label,
                "given": item.doubt.given,
                "quantity": _quantity(
                    item.doubt.middle, item.doubt.kind, item.doubt.low, item.doubt.high
                ),
                "source": item.doubt.source,
                "from_memory": item.doubt.remembered,
                "swing": item.swing,
                "share_of_doubt": item.share,
                "could_swap_first": item.swaps,
            }
            for item in assessment.influences
        ],
        "from_memory": [
            {
                "kind": item.kind,
                "share_of_doubt": item.share,
                "most": [
                    {"id": doubt.quantity, "label": doubt.label, "share_of_doubt": share}
                    for doubt, share in item.most
                ],
            }
            for item in assessment.remembered
        ],
        "severity_moves": [
            {
                "case": move.case,
                "leads": move.leads,
                "leads_mild": move.leads_mild,
                "leads_hard": move.leads_hard,
            }
            for move in assessment.severities
        ],
        "after_mend": [
            {"mended": each.part, "next": each.following, "harder_on_average": each.harder}
            for each in assessment.after_mend
        ],
        "stations": [_station(each) for each in stressed(assessment.columns, point.housing)],
        "already_broken": broken_lines(assessment),
        "gearing": gearing_json(assessment),
        "stays_bent": bent_json(assessment),
        "standing_camber": standing_json(assessment),
    }


def _checks(assessment: Assessment) -> list[dict[str, Any]]:
    point, drawn = assessment.point, assessment.drawn
    shown = opened(assessment)
    out = []
    for number, row in enumerate(point.solved.rows):
        case = shown.cases[number]
        used = float(point.solved.utilisation[number, 0, case])
        holds = float(point.solved.capacity[number, 0])
        low, high = used, used
        if drawn is not None:
            low, high = (float(end) for end in np.quantile(drawn.utilisation[number], [0.05, 0.95]))
        entry = consequence(row.part)
        out.append(
            {
                "part": row.part,
                "mode": row.mode,
                "load_case": live_cases()[case].key,
                "demand": _quantity(used * holds, row.kind),
                "capacity": _quantity(holds, row.kind),
                "capacity_from": [_size(size) for size in shown.holds[number]],
                "utilisation": used,
                "parked": _quantity(float(point.solved.held[number, 0]) * holds, row.kind),
                "band": {"low": low, "high": high, "confidence": 0.9},
                "gives_at_hardness": _number(float(point.solved.hardness[number, 0, case])),
                "fails": used > 1.0,
                "breaks": row.breaks,
                "basis": row.basis,
                "caveats": [row.caveat] if row.caveat else [],
                "consequence": entry.what_then,
                "mendable": entry.mendable,
                "order": "one bad moment",
            }
        )
    return out


def _wear_checks(assessment: Assessment) -> list[dict[str, Any]]:
    drawn = assessment.drawn
    out = []
    for number, wear in enumerate(assessment.point.wear):
        middle = float(wear.life_km[0])
        low, high = middle, middle
        if drawn is not None:
            low, high = (float(end) for end in np.quantile(drawn.life[number], [0.05, 0.95]))
        used = [(TARGET_KM / max(end, 1e-9)) ** (1.0 / wear.slope) for end in (high, middle, low)]
        entry = consequence(wear.part)
        out.append(
            {
                "part": wear.part,
                "mode": wear.mode,
                "load_case": "this use, coarse spectra of all cases",
                "demand": _quantity(TARGET_KM * 1e3, "distance"),
                "capacity": _quantity(middle * 1e3, "distance", low * 1e3, high * 1e3),
                "utilisation": used[1],
                "band": {"low": used[0], "high": used[2], "confidence": 0.9},
                "fails": used[1] > 1.0,
                "breaks": True,
                "basis": wear.basis,
                "caveats": ["coarse: from the load cases, not from trips"],
                "consequence": entry.what_then,
                "mendable": entry.mendable,
                "order": "wearing out",
            }
        )
    return out


def _place(place: Place) -> dict[str, Any]:
    return {
        "part": place.part,
        "kind": place.kind,
        "side": place.side,
        "name": part_name(place.part, place.side),
        "mode": place.mode,
        "load_case": live_cases()[place.case].key,
        "first_in_share_of_draws": place.first,
        "margin": {
            "value": _number(place.margin),
            "unit": "1",
            "band": {
                "low": _number(place.margin_low),
                "high": _number(place.margin_high),
                "confidence": 0.9,
            },
            **_reason(place.margin),
        },
        "takes": _quantity(place.takes, place.takes_kind, place.takes_low, place.takes_high),
        "closeness": closeness(place),
        "then": consequence(place.part).what_then,
    }


def _wear_place(place: WearPlace) -> dict[str, Any]:
    return {
        "part": place.part,
        "kind": place.kind,
        "side": place.side,
        "name": part_name(place.part, place.side),
        "mode": place.mode,
        "first_in_share_of_draws": place.first,
        "life": _quantity(
            place.life * 1e3, "distance", place.life_low * 1e3, place.life_high * 1e3
        ),
        "then": consequence(place.part).what_then,
    }


def _compared(comparison: Comparison) -> list[dict[str, Any]]:
    before = {place.kind: place for place in comparison.before.order}
    return [
        {
            "kind": place.kind,
            "margin_before": _number(before[place.kind].margin) if place.kind in before else None,
            "margin_after": _number(place.margin),
        }
        for place in comparison.after.order
    ]


def _station(at: Stressed) -> dict[str, Any]:
    pull, fore, up, twist, bend_up, bend_fore = (float(each) for each in at.actions[0])
    return {
        "station": f"{at.station}_{at.side}",
        "across": _quantity(float(at.across[0]), "length"),
        "load_case": live_cases()[at.case].key,
        "pull": _quantity(pull, "force"),
        "shear": {"fore": _quantity(fore, "force"), "up": _quantity(up, "force")},
        "twist": _quantity(twist, "torque"),
        "moment": {"up": _quantity(bend_up, "torque"), "fore": _quantity(bend_fore, "torque")},
        "worst_fibre": _quantity(float(at.fibre[0]), "stress"),
        "von_mises": _quantity(float(at.mises[0]), "stress"),
    }


def _size(size: Size) -> dict[str, Any]:
    label, kind = size_name(size.quantity)
    quantity = _quantity(size.value, kind)
    return {"id": size.quantity, "label": label, "quantity": quantity, "power": size.power}


def _finding(item: Finding) -> dict[str, Any]:
    return {
        "state": item.state,
        "part": item.part,
        "what": item.what,
        "where": item.where,
        "when": item.when,
        "why": item.why,
        "do": item.do,
    }


def _quantity(
    value: float, kind: str, low: float | None = None, high: float | None = None
) -> dict[str, Any]:
    out: dict[str, Any] = {"value": _number(value), "unit": UNIT.get(kind, "1"), "band": None}
    if low is not None and high is not None:
        out["band"] = {"low": _number(low), "high": _number(high), "confidence": 0.9}
    return {**out, **_reason(value)}


def _number(value: float) -> float | None:
    return float(value) if isfinite(value) else None


def _reason(value: float) -> dict[str, str]:
    return {} if isfinite(value) else {"reason": "not in reach: tyres slip or the engine stalls"}
