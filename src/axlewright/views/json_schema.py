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
    change = _object({"name": TEXT, "digest": TEXT})
    moved = _object({"kind": TEXT, "margin_before": NUMBER, "margin_after": NUMBER})
    comparison = {
        "before": _ref("assessment"),
        "after": _ref("assessment"),
        "changes": _list(change),
        "dropped_readings": TEXTS,
        "compared": _list(moved),
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "An answer of axlewright",
        "description": "SI throughout. Ignore keys that are not told here.",
        "type": "object",
        "properties": heading,
        "required": list(heading),
        "oneOf": [_ref("assessment"), _object(comparison)],
        "$defs": {
            "quantity": _quantity(),
            "band": _object({"low": NUMBER, "high": NUMBER, "confidence": CONFIDENCE}),
            "assessment": _assessment(),
            "check": _check(),
            "finding": _object(
                {
                    "state": {**TEXT, "description": "as in may I drive: STOP, watch and so on"},
                    **dict.fromkeys(("part", "what", "where", "when", "why", "do"), TEXT),
                }
            ),
            "place": _place(),
            "wear_place": _wear_place(),
        },
    }


def _object(
    properties: Mapping[str, Schema], optional: Mapping[str, Schema] | None = None
) -> Schema:
    return {
        "type": "object",
        "properties": {**properties, **(optional or {})},
        "required": list(properties),
    }


def _ref(name: str) -> Schema:
    return {"$ref": f"#/$defs/{name}"}


def _list(items: Schema) -> Schema:
    return {"type": "array", "items": items}


def _reason() -> dict[str, Schema]:
    return {"reason": {**TEXT, "description": "why the value is null"}}


def _quantity() -> Schema:
    return _object(
        {
            "value": NUMBER,
            "unit": {"enum": sorted(set(UNIT.values()))},
            "band": {"anyOf": [_ref("band"), {"type": "null"}]},
        },
        _reason(),
    )


def _assessment() -> Schema:
    drive = {"stop": YES_NO, "findings": _list(_ref("finding")), "words": TEXTS}
    assumption = {
        "id": TEXT,
        "label": TEXT,
        "given": {**YES_NO, "description": "an answer of the file, with the doubt of a reading"},
        "quantity": _ref("quantity"),
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
        "most": _list(_object({"id": TEXT, "label": TEXT, "share_of_doubt": share})),
    }
    return _object(
        {
            "rig": _object(
                {"name": TEXT, "axle": {"enum": ["front", "rear"]}, "digest": TEXT, "file": TEXT}
            ),
            "may_i_drive": _object(drive),
            "sentence": TEXT,
            "wear_sentence": TEXT,
            "one_bad_moment": _list(_ref("place")),
            "wearing_out": _list(_ref("wear_place")),
            "checks": _list(_ref("check")),
            "not_judged": TEXTS,
            "not_judged_words": TEXT,
            "rests_on": TEXT,
            "measure_next": TEXTS,
            "assumptions": _list(_object(assumption)),
            "from_memory": _list(_object(recalled)),
            "severity_moves": _list(
                _object({"case": TEXT, "leads_mild": TEXT, "leads_hard": TEXT})
            ),
            "after_mend": _list(_object({"mended": TEXT, "next": TEXT})),
            "stays_bent": _list(_bent()),
            "standing_camber": _sides(),
        }
    )


def _sides() -> Schema:
    return _object({"unit": {"const": "rad"}, "left": NUMBER, "right": NUMBER})


def _bent() -> Schema:
    angle = _object({"value": NUMBER, "unit": {"const": "rad"}})
    off = _object({"value": NUMBER, "unit": {"const": "m"}})
    run = _object(
        {"spline_angle": angle, "end_angle": angle, "off_inner_seal": off, "off_outer_seal": off}
    )
    return _object(
        {
            "part": TEXT,
            "load_case": TEXT,
            "share_of_its_moment": {"type": "number"},
            "folds": {**YES_NO, "description": "a tube folds: nothing is left to measure"},
            "camber": _sides(),
            "toe": _sides(),
            "shafts": _object({"left": run, "right": run}),
        }
    )


def _check() -> Schema:
    used = "1 over the factor on every load of the case at which the check just fails"
    return _object(
        {
            "part": TEXT,
            "mode": TEXT,
            "load_case": TEXT,
            "demand": _ref("quantity"),
            "capacity": _ref("quantity"),
            "utilisation": {**NUMBER, "description": used},
            "band": _ref("band"),
            "fails": YES_NO,
            "breaks": {**YES_NO, "description": "false: it bends, slips or warns, no more"},
            "basis": {**TEXT, "description": "formula and source"},
            "caveats": TEXTS,
            "consequence": TEXT,
            "mendable": TEXT,
            "order": {"enum": ["one bad moment", "wearing out"]},
        },
        {"gives_at_hardness": NUMBER},
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


def _place() -> Schema:
    margin = _object({"value": NUMBER, "unit": {"const": "1"}, "band": _ref("band")}, _reason())
    return _object(
        {
            **_named(),
            "load_case": TEXT,
            "margin": margin,
            "takes": _ref("quantity"),
            "closeness": TEXT,
        }
    )


def _wear_place() -> Schema:
    return _object({**_named(), "life": _ref("quantity")})
