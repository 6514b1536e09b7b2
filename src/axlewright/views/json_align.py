"""An alignment as JSON: SI whatever the reader's units, every quantity with its 90 % band."""

from importlib.metadata import version
from math import isfinite
from typing import Any

from axlewright.geometry import Alignment, Judged, Measured, RodTurn
from axlewright.tables import fingerprint
from axlewright.views.align_phrases import STEPS, name_of, said_by
from axlewright.views.align_words import BEFORE_DRIVING, NOT_OK, align_sentence, rests_lines
from axlewright.views.answer import CAUTION, drive_lines
from axlewright.views.json_driveline import wedge_json

VERSION = 1
UNITS = {"length": "m", "angle": "rad"}


def align_json(alignment: Alignment) -> dict[str, Any]:
    """Everything about an alignment."""
    readings = alignment.readings
    return {
        "axlewright_alignment_answer": VERSION,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "rig": {
            "name": alignment.rig.name,
            "axle": alignment.axle,
            "digest": alignment.rig.digest,
        },
        "readings": {
            "digest": readings.digest,
            "date": None if readings.date is None else readings.date.isoformat(),
            "said": {
                path: [each.text for each in answers] for path, answers in readings.answers.items()
            },
        },
        "answer": align_sentence(alignment),
        "stops": drive_lines(alignment.stops) if alignment.stops else [],
        "play": alignment.play,
        "first_in_the_way": alignment.first_in_the_way or None,
        "steps": [{"step": step, "state": alignment.state(step)} for step in STEPS],
        "quantities": [_judged(each) for each in alignment.judged],
        "toe": None if alignment.toe is None else _toe(alignment),
        "turn": _turn(alignment.turn),
        "recentring": _recentring(alignment),
        "track_bar_growth": _plain(alignment.track_bar, "m"),
        "setback": _quantity(alignment.setback),
        "wedges": [wedge_json(each) for each in alignment.wedges],
        "sweeps": [
            {
                "side": sweep.side,
                "turned": {"value": sweep.turn, "unit": "rad", "band": None},
                "readings": 3 if sweep.three else 2,
                "caster": _quantity(sweep.caster),
                "rule_of_one_and_a_half": _plain(sweep.rule, "rad"),
                "rule_off": _plain(sweep.rule_off, "1"),
                "inclination": _quantity(sweep.inclination),
                "included": _quantity(sweep.included),
            }
            for sweep in alignment.sweeps
        ],
        "casters_by_a_finder": {
            side: _quantity(caster) for side, caster in alignment.flats.items()
        },
        "caster_at_a_level_frame": {
            side: _quantity(caster) for side, caster in alignment.level_frame.items()
        },
        "rests_on": rests_lines(alignment),
        "before_driving": [NOT_OK, *BEFORE_DRIVING],
        "caution": CAUTION,
    }


def _judged(judged: Judged) -> dict[str, Any]:
    measured = judged.measured
    unit = UNITS[measured.kind]
    return {
        "key": judged.key,
        "side": judged.side or None,
        "name": name_of(judged),
        **(_quantity(measured) or {}),
        "standard_uncertainty": {"value": measured.standard, "unit": unit, "band": None},
        "readings": measured.count,
        "instrument": measured.instrument,
        "wanted": {"value": judged.aim, "unit": unit, "band": [judged.low, judged.high]},
        "said_by": said_by(judged),
        "verdict": judged.verdict,
        "readings_that_would_settle_it": (
            int(judged.repeats) if isfinite(judged.repeats) else None
        ),
        "instrument_that_would_settle_it": judged.better or None,
    }


def _toe(alignment: Alignment) -> dict[str, Any]:
    return {
        "angle": _quantity(alignment.toe),
        "length": _quantity(alignment.toe_length),
        "diameter": {"value": alignment.diameter, "unit": "m", "band": None},
        "diameter_given": alignment.diameter_given,
    }


def _turn(turn: RodTurn | None) -> dict[str, Any] | None:
    if turn is None:
        return None
    half = 1.645 * turn.doubt
    return {
        "rod": turn.rod,
        "growth": {
            "value": turn.growth,
            "unit": "m",
            "band": [turn.growth - half, turn.growth + half],
        },
        "growth_by_the_simple_sum": _plain(turn.simple, "m"),
        "arm": _plain(turn.arm, "m"),
        "arm_given": turn.arm_given,
        "ahead": turn.ahead,
        "ahead_given": turn.ahead_given,
        "turns_in_place": turn.in_place,
        "growth_per_turn": _plain(turn.per_turn, "m"),
        "turns": _plain(turn.turns, "1"),
        "one_flat": _plain(turn.one_flat, "rad"),
        "top_goes": turn.top_goes or None,
        "solved_in_space": turn.exact,
        "places_taped": turn.taped,
    }


def _recentring(alignment: Alignment) -> dict[str, Any] | None:
    centre = alignment.recentring
    if centre is None:
        return None
    return {
        "drag_link": _turn(centre.rod),
        "only_this_wheel_moves": centre.moves or None,
        "steering_wheel_left": _plain(centre.wheel_off, "rad"),
        "ratio": _plain(centre.ratio, "1"),
        "ratio_given": centre.ratio_given,
    }


def _quantity(measured: Measured | None) -> dict[str, Any] | None:
    if measured is None:
        return None
    return {
        "value": measured.value,
        "unit": UNITS[measured.kind],
        "band": list(measured.band),
    }


def _plain(value: float | None, unit: str) -> dict[str, Any] | None:
    if value is None:
        return None
    if not isfinite(value):
        return {"value": None, "unit": unit, "band": None, "reason": "no number came of it"}
    return {"value": value, "unit": unit, "band": None}
