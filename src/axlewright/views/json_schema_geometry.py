"""The JSON Schemas of the answers about travel (its driveline in it) and about an alignment."""

from collections.abc import Sequence
from typing import Final

from axlewright.views import json_align, json_travel
from axlewright.views.align_phrases import STATES, STEPS
from axlewright.views.json_schema import NUMBER, TEXT, TEXTS, YES_NO, Schema, listed, ref, shape

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
SAID: Final = "SI throughout. Ignore keys that are not told here."
TEXT_OR_NONE: Final[Schema] = {"type": ["string", "null"]}
WHOLE: Final[Schema] = {"type": "integer", "minimum": 0}
UNITS: Final = ("1", "N", "Pa", "kg", "m", "m2", "m/s", "rad", "rad/s", "rad/s2")
AXLE: Final[Schema] = {"enum": ["front", "rear"]}


def travel_schema() -> Schema:
    """Schema of `travel_json`: one rig, or a rig before and after changes, with its driveline."""
    heading = {
        "axlewright_travel": {"const": json_travel.VERSION},
        "package": TEXT,
        "tables": {**TEXT, "description": "hash of all data tables"},
        "caution": TEXT,
    }
    root = shape(heading, {"driveline": ref("driveline")})
    return {
        "$schema": DIALECT,
        "title": "What axlewright says of an axle's travel",
        "description": SAID,
        **root,
        "oneOf": [ref("study"), shape({"before": ref("study"), "after": ref("study")})],
        "$defs": {
            "quantity": _quantity(),
            "study": _study(),
            "measures": shape(dict.fromkeys(json_travel.UNITS, ref("quantity"))),
            "limit": shape({"what": TEXT, "at": ref("quantity"), "ends_the_travel": YES_NO}),
            "room": _room(),
            "driveline": _driveline(),
            "check": _check(),
            "turned": _turned(),
        },
    }


def alignment_schema() -> Schema:
    """Schema of `align_json`."""
    properties = {
        "axlewright_alignment_answer": {"const": json_align.VERSION},
        "package": TEXT,
        "tables": {**TEXT, "description": "hash of all data tables"},
        "rig": shape({"name": TEXT, "axle": AXLE, "digest": TEXT}),
        "readings": shape(
            {
                "digest": TEXT,
                "date": TEXT_OR_NONE,
                "said": {"type": "object", "additionalProperties": TEXTS},
            }
        ),
        "answer": TEXT,
        "stops": TEXTS,
        "play": {"enum": ["none", "some", "not looked at"]},
        "first_in_the_way": TEXT_OR_NONE,
        "steps": listed(shape({"step": {"enum": [*STEPS]}, "state": {"enum": [*STATES]}})),
        "quantities": listed(ref("judged")),
        "toe": _or_none(ref("toe")),
        "turn": _or_none(ref("turn")),
        "recentring": _or_none(ref("recentring")),
        "track_bar_growth": _or_none(ref("quantity")),
        "wedges": listed(_wedge()),
        "setback": _or_none(ref("quantity")),
        "sweeps": listed(ref("sweep")),
        "casters_by_a_finder": _sides(),
        "caster_at_a_level_frame": _sides(),
        "rests_on": TEXTS,
        "before_driving": TEXTS,
        "caution": TEXT,
    }
    return {
        "$schema": DIALECT,
        "title": "What axlewright says of an alignment",
        "description": SAID,
        **shape(properties),
        "$defs": {
            "quantity": _quantity(),
            "judged": _judged(),
            "toe": shape(
                {
                    "angle": ref("quantity"),
                    "length": _or_none(ref("quantity")),
                    "diameter": ref("quantity"),
                    "diameter_given": YES_NO,
                }
            ),
            "turn": _turn(),
            "recentring": shape(
                {
                    "drag_link": ref("turn"),
                    "only_this_wheel_moves": TEXT_OR_NONE,
                    "steering_wheel_left": ref("quantity"),
                    "ratio": ref("quantity"),
                    "ratio_given": YES_NO,
                }
            ),
            "sweep": _sweep(),
        },
    }


def _or_none(told: Schema) -> Schema:
    return {"anyOf": [told, {"type": "null"}]}


def _quantity() -> Schema:
    pair = {"type": "array", "items": {"type": "number"}, "minItems": 2, "maxItems": 2}
    band = {**_or_none(pair), "description": "low and high: nine cases in ten"}
    return shape(
        {"value": NUMBER, "unit": {"enum": [*UNITS]}, "band": band},
        {"reason": {**TEXT, "description": "why the value is null"}},
    )


def _quantities(names: Sequence[str]) -> dict[str, Schema]:
    return dict.fromkeys(names, ref("quantity"))


def _sides() -> Schema:
    return {
        "type": "object",
        "properties": {"left": ref("quantity"), "right": ref("quantity")},
    }


def _study() -> Schema:
    stance = {
        "name": TEXT,
        **_quantities(("height", "caster", "pinion", "steers", "shift", "spring", "shaft")),
    }
    moved = {
        "measure": TEXT,
        "before": ref("quantity"),
        "after": ref("quantity"),
        "better": YES_NO,
    }
    cure = {
        "key": TEXT,
        "amount": ref("quantity"),
        "refused": {**TEXT, "description": "why it does not go; empty where it does"},
        "change": {
            "type": "object",
            "additionalProperties": TEXT,
            "description": "steps of the cure as a change, by field; empty where it is none",
        },
        "moves": listed(shape(moved)),
    }
    return shape(
        {
            "rig": shape({"name": TEXT, "axle": AXLE, "digest": TEXT, "changes": TEXTS}),
            "stop": YES_NO,
            "places": shape({"taped": WHOLE, "of": WHOLE}),
            "measures": ref("measures"),
            "as_taped": ref("measures"),
            "stances": listed(shape(stance)),
            "limits": shape(dict.fromkeys(("bump", "droop", "articulation"), listed(ref("limit")))),
            "wind_up": shape({"twist": listed(ref("quantity")), **_quantities(("force", "rise"))}),
            "parked": shape({"rod": TEXT, "force": ref("quantity")}),
            "room": shape({"road": ref("room"), "trail": ref("room")}),
            "cures": listed(shape(cure)),
        }
    )


def _room() -> Schema:
    edge = {"what": TEXT, **_quantities(("across", "ahead", "height")), "catches": TEXTS}
    pair = {"type": "array", "items": {"type": "number"}, "minItems": 2, "maxItems": 2}
    return shape(
        {
            **_quantities(("pressure", "hub_height", "approach", "breakover")),
            "lowest": shape({"what": TEXT, "height": ref("quantity")}),
            "edges": listed(shape(edge)),
            "outline": shape({"unit": {"const": "m"}, "corners": listed(pair)}),
            "area": ref("quantity"),
            "touch": {**ref("quantity"), "description": "chance that something touches, 0 to 1"},
        }
    )


def _driveline() -> Schema:
    stance = {
        "name": TEXT,
        "joints": listed(ref("quantity")),
        **_quantities(("height", "as_one_joint", "length", "plunge")),
    }
    gear = {"name": TEXT, **_quantities(("speed", "road"))}
    built = {
        **_quantities(
            (
                *("caster", "pinion", "present", "caster_wanted", "pinion_wanted", "wanted"),
                *("pinion_for_double", "forgings"),
            )
        ),
        "for_pinion": ref("turned"),
        "for_caster": ref("turned"),
        "steps": listed(ref("turned")),
    }
    return shape(
        {
            "turns_on_road": {**YES_NO, "description": "false: hubs that can be unlocked"},
            "double_joint": YES_NO,
            **_quantities(
                (
                    *("judged_at", "shaft_speed", "as_one_joint", "swing", "torsional"),
                    *("inertial_drive", "inertial_coast"),
                )
            ),
            "joints": shape(_quantities(("transfer_case", "pinion"))),
            "checks": listed(ref("check")),
            "if_locked": listed(ref("check")),
            "stances": listed(shape(stance)),
            "whirling": shape({**_quantities(("speed", "road")), "gears": listed(shape(gear))}),
            "built_in": _or_none(shape(built)),
            "wedges": listed(_wedge()),
            "measured": TEXTS,
        }
    )


def _wedge() -> Schema:
    return shape(
        {
            "for": {"enum": ["pinion", "caster"]},
            **_quantities(("turn", "pad", "thicker", "per_degree")),
            "thick_end": {"enum": ["front", "rear"]},
            "too_steep": YES_NO,
        }
    )


def _turned() -> Schema:
    names = ("by", "caster", "trail", "pinion", "whole", "torsional", "coast")
    return shape({**_quantities(names), "joints": listed(ref("quantity"))})


def _check() -> Schema:
    limit = {
        **dict.fromkeys(("key", "kind", "scope", "as_printed", "source"), TEXT),
        "value": {"type": "number"},
        "unit": {"enum": [*UNITS]},
    }
    quantity = _quantity()
    return shape(
        {
            "what": TEXT,
            **quantity["properties"],
            "limit": shape(limit),
            "standing": {"enum": ["within", "beyond", "cannot tell"]},
        },
        {"reason": TEXT},
    ) | {"required": ["what", "value", "unit", "band", "limit", "standing"]}


def _judged() -> Schema:
    quantity = _quantity()["properties"]
    return shape(
        {
            "key": TEXT,
            "side": TEXT_OR_NONE,
            "name": TEXT,
            "value": quantity["value"],
            "unit": quantity["unit"],
            "band": quantity["band"],
            "standard_uncertainty": ref("quantity"),
            "readings": WHOLE,
            "instrument": TEXT,
            "wanted": ref("quantity"),
            "said_by": TEXT,
            "verdict": {"enum": ["within", "out", "cannot tell"]},
            "readings_that_would_settle_it": {"type": ["integer", "null"]},
            "instrument_that_would_settle_it": TEXT_OR_NONE,
        }
    )


def _turn() -> Schema:
    return shape(
        {
            "rod": TEXT,
            "growth": ref("quantity"),
            "growth_by_the_simple_sum": _or_none(ref("quantity")),
            "arm": _or_none(ref("quantity")),
            **dict.fromkeys(("arm_given", "ahead", "ahead_given", "turns_in_place"), YES_NO),
            "growth_per_turn": _or_none(ref("quantity")),
            "turns": _or_none(ref("quantity")),
            "one_flat": _or_none(ref("quantity")),
            "top_goes": TEXT_OR_NONE,
            "solved_in_space": YES_NO,
            "places_taped": YES_NO,
        }
    )


def _sweep() -> Schema:
    return shape(
        {
            "side": {"enum": ["left", "right"]},
            "turned": ref("quantity"),
            "readings": {"enum": [2, 3]},
            "caster": ref("quantity"),
            **{
                name: _or_none(ref("quantity"))
                for name in ("rule_of_one_and_a_half", "rule_off", "inclination", "included")
            },
        }
    )
