"""The JSON Schema of the answer, for those who read it with a program."""

from collections.abc import Mapping
from typing import Any, TypeAlias

from axlewright.views.json_answer import UNIT, VERSION

Schema: TypeAlias = dict[str, Any]

TEXT: Schema = {"type": "string"}
TEXTS: Schema = {"type": "array", "items": TEXT}
YES_NO: Schema = {"type": "boolean"}
SHARE: Schema = {"type": "number", "minimum": 0, "maximum": 1}
NUMBER: Schema = {"type": ["number", "null"]}
CONFIDENCE: Schema = {"const": 0.9}


def answer_schema() -> Schema:
    """Schema of `as_json`: one rig, or a rig before and after changes."""
    heading = {
        "axlewright_answer": {"const": VERSION},
        "package": TEXT,
        "seed": {"type": "integer"},
        "draws": {"type": "integer", "minimum": 0},
        "tables": {**TEXT, "description": "hash of all data tables"},
        "caution": TEXT,
    }
    change = shape({"name": TEXT, "digest": TEXT})
    moved = shape({"kind": TEXT, "margin_before": NUMBER, "margin_after": NUMBER})
    comparison = {
        "before": ref("assessment"),
        "after": ref("assessment"),
        "changes": listed(change),
        "dropped_readings": TEXTS,
        "compared": listed(moved),
        "change": _change(),
        "geometry": listed(_geometry()),
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "An answer of axlewright",
        "description": "SI throughout. Ignore keys that are not told here.",
        "type": "object",
        "properties": heading,
        "required": list(heading),
        "oneOf": [ref("assessment"), shape(comparison)],
        "$defs": {
            "quantity": _quantity(),
            "band": shape({"low": NUMBER, "high": NUMBER, "confidence": CONFIDENCE}),
            "assessment": _assessment(),
            "check": _check(),
            "finding": shape(
                {
                    "state": {**TEXT, "description": "as in may I drive: STOP, watch and so on"},
                    **dict.fromkeys(("part", "what", "where", "when", "why", "do"), TEXT),
                }
            ),
            "place": _place(),
            "wear_place": _wear_place(),
        },
    }


def shape(properties: Mapping[str, Schema], optional: Mapping[str, Schema] | None = None) -> Schema:
    """Schema of an object with these keys, all there but the optional ones."""
    return {
        "type": "object",
        "properties": {**properties, **(optional or {})},
        "required": list(properties),
    }


def ref(name: str) -> Schema:
    """A reference to one of the schema's own definitions."""
    return {"$ref": f"#/$defs/{name}"}


def listed(items: Schema) -> Schema:
    """Schema of a list."""
    return {"type": "array", "items": items}


def _reason() -> dict[str, Schema]:
    return {"reason": {**TEXT, "description": "why the value is null"}}


def _quantity() -> Schema:
    return shape(
        {
            "value": NUMBER,
            "unit": {"enum": sorted(set(UNIT.values()))},
            "band": {"anyOf": [ref("band"), {"type": "null"}]},
        },
        _reason(),
    )


def _assessment() -> Schema:
    drive = {"stop": YES_NO, "findings": listed(ref("finding")), "words": TEXTS}
    assumption = {
        "id": TEXT,
        "label": TEXT,
        "given": {**YES_NO, "description": "an answer of the file, with the doubt of a reading"},
        "quantity": ref("quantity"),
        "source": TEXT,
        "from_memory": {**YES_NO, "description": "assumed, and no source was read for it"},
        "swing": {"type": "number"},
        "share_of_doubt": {"type": "number"},
        "could_swap_first": YES_NO,
    }
    share = {"type": "number"}
    recalled = {
        "kind": TEXT,
        "share_of_doubt": share,
        "most": listed(shape({"id": TEXT, "label": TEXT, "share_of_doubt": share})),
    }
    return shape(
        {
            "rig": shape(
                {"name": TEXT, "axle": {"enum": ["front", "rear"]}, "digest": TEXT, "file": TEXT}
            ),
            "may_i_drive": shape(drive),
            "sentence": TEXT,
            "wear_sentence": TEXT,
            "one_bad_moment": listed(ref("place")),
            "wearing_out": listed(ref("wear_place")),
            "checks": listed(ref("check")),
            "not_judged": TEXTS,
            "not_judged_words": TEXT,
            "rests_on": TEXT,
            "measure_next": TEXTS,
            "assumptions": listed(shape(assumption)),
            "from_memory": listed(shape(recalled)),
            "severity_moves": listed(
                shape(dict.fromkeys(("case", "leads", "leads_mild", "leads_hard"), TEXT))
            ),
            "after_mend": listed(
                shape({"mended": TEXT, "next": TEXT, "harder_on_average": {"type": "number"}})
            ),
            "stations": listed(_station()),
            "already_broken": TEXTS,
            "gearing": _gearing(),
            "stays_bent": listed(_bent()),
            "standing_camber": _sides(),
        }
    )


def _change() -> Schema:
    def before_after(unit: str) -> Schema:
        return shape(
            {"unit": {"const": unit}, "before": {"type": "number"}, "after": {"type": "number"}}
        )

    return shape(
        {
            "worse": TEXTS,
            "better": TEXTS,
            "mass": {**before_after("kg"), "description": "tubes, sleeves and truss by geometry"},
            "mass_on_the_scale": {
                **listed(NUMBER),
                "description": "kg, before and after; null where no scale was read",
            },
            "lowest_point": before_after("m"),
            "above_tubes": {**before_after("m"), "description": "a truss over the tubes' top"},
            "cautions": TEXTS,
            "hub_by_offset_alone": TEXTS,
            "handed_on": {**TEXTS, "description": "what another housing takes from the old axle"},
        }
    )


def _station() -> Schema:
    both = shape({"fore": ref("quantity"), "up": ref("quantity")})
    elastic = "elastic, so beyond yield a measure and no stress"
    return shape(
        {
            "station": TEXT,
            "across": {**ref("quantity"), "description": "left of the vehicle's middle"},
            "load_case": {**TEXT, "description": "that presses it hardest at its reference"},
            "pull": ref("quantity"),
            "shear": {**both, "description": "forward and up"},
            "twist": ref("quantity"),
            "moment": {**both, "description": "that bends it fore and aft, and up"},
            "worst_fibre": {**ref("quantity"), "description": elastic},
            "von_mises": {**ref("quantity"), "description": elastic},
        }
    )


def _gearing() -> Schema:
    cruise = shape({"value": {"type": "number"}, "unit": {"const": "m/s"}})
    turns = {"value": {"type": "number"}, "unit": {"const": "rad/s"}, "at": cruise}
    return shape(
        {
            "axle_ratio": {"type": "number"},
            "ratio_given": YES_NO,
            "crawl": {"type": "number"},
            "gearbox_given": YES_NO,
            "shaft_speed_at_cruise": shape(turns),
            "front_and_rear_apart": {
                **NUMBER,
                "description": "share by which this axle turns faster; null where not both given",
            },
            "words": TEXTS,
        }
    )


def _sides() -> Schema:
    return shape({"unit": {"const": "rad"}, "left": NUMBER, "right": NUMBER})


def _bent() -> Schema:
    angle = shape({"value": NUMBER, "unit": {"const": "rad"}})
    off = shape({"value": NUMBER, "unit": {"const": "m"}})
    run = shape(
        {"spline_angle": angle, "end_angle": angle, "off_inner_seal": off, "off_outer_seal": off}
    )
    return shape(
        {
            "part": TEXT,
            "load_case": TEXT,
            "share_of_its_moment": {"type": "number"},
            "folds": {**YES_NO, "description": "a tube folds: nothing is left to measure"},
            "camber": _sides(),
            "toe": _sides(),
            "shafts": shape({"left": run, "right": run}),
        }
    )


def _check() -> Schema:
    used = "1 over the factor on every load of the case at which the check just fails"
    return shape(
        {
            "part": TEXT,
            "mode": TEXT,
            "load_case": TEXT,
            "demand": ref("quantity"),
            "capacity": ref("quantity"),
            "utilisation": {**NUMBER, "description": used},
            "band": ref("band"),
            "fails": YES_NO,
            "breaks": {**YES_NO, "description": "false: it bends, slips or warns, no more"},
            "basis": {**TEXT, "description": "formula and source"},
            "caveats": TEXTS,
            "consequence": TEXT,
            "mendable": TEXT,
            "order": {"enum": ["one bad moment", "wearing out"]},
        },
        {
            "gives_at_hardness": NUMBER,
            "capacity_from": {
                **listed(
                    shape(
                        {
                            "id": TEXT,
                            "label": TEXT,
                            "quantity": ref("quantity"),
                            "power": {"type": "number"},
                        }
                    )
                ),
                "description": "sizes in the formula of the capacity; power 3: with the cube",
            },
            "parked": {
                **ref("quantity"),
                "description": "what of the demand is there with nothing on the axle: arms that "
                "do not fit, bushings clamped away from ride",
            },
        },
    )


def _named() -> dict[str, Schema]:
    return {
        "part": TEXT,
        "kind": TEXT,
        "side": TEXT,
        "name": TEXT,
        "mode": TEXT,
        "first_in_share_of_draws": SHARE,
        "then": TEXT,
    }


def _geometry() -> Schema:
    plain = shape({"value": NUMBER, "unit": {"enum": ["N", "m", "rad"]}, "band": {"type": "null"}})
    return shape(
        {"measure": TEXT, "before": plain, "after": plain, "better": {"type": ["boolean", "null"]}}
    )


def _place() -> Schema:
    margin = shape({"value": NUMBER, "unit": {"const": "1"}, "band": ref("band")}, _reason())
    return shape(
        {
            **_named(),
            "load_case": TEXT,
            "margin": margin,
            "takes": ref("quantity"),
            "closeness": TEXT,
        }
    )


def _wear_place() -> Schema:
    return shape({**_named(), "life": ref("quantity")})
