"""What to carry as JSON, in SI, and its schema."""

from importlib.metadata import version
from typing import Any, TypeAlias

from axlewright.tables import fingerprint
from axlewright.upkeep import Carrying, PartRisk, Spared, Ticked
from axlewright.views.carry import ROUGH, carry_cards, carry_data

Schema: TypeAlias = dict[str, Any]
VERSION = 1
_TEXT: Schema = {"type": "string"}
_TEXTS: Schema = {"type": "array", "items": _TEXT}
_BOOL: Schema = {"type": "boolean"}


def carry_json(carrying: Carrying) -> dict[str, Any]:
    """Everything about what to carry on one trip."""
    load, data = carrying.load, carry_data(carrying)
    out = load.outing
    return {
        "axlewright_carry": VERSION,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "draws": carrying.draws,
        "caution": "decision support, not a certificate",
        "rig": {"name": carrying.name, "slug": carrying.slug, "axle": carrying.axle},
        "may_i_drive": {"stop": bool(carrying.stops), "words": list(carrying.stops)},
        "judged": carrying.judged,
        "trip": {
            "days": out.days,
            "people": out.people,
            "ground": out.ground,
            "mass": _quantity(out.mass, "kg"),
            "far": _quantity(out.far, "m"),
            "distance": _quantity(
                out.distance, "m", (out.distance / out.spread, out.distance * out.spread)
            ),
        },
        "sentence": data.sentence,
        "least": [_item(carrying, each) for each in load.of("least")],
        "rest": [_item(carrying, each) for each in load.of("rest")],
        "not_judged": [_item(carrying, each) for each in load.of("not judged")],
        "left": [_item(carrying, each) for each in load.of("left")],
        "parts_not_judged": list(load.unjudged),
        "mass": _quantity(load.mass, "kg", (load.lightest, load.heaviest)),
        "least_mass": _quantity(load.least_mass, "kg"),
        "over": load.over,
        "at_risk": _quantity(load.at_risk, "s"),
        "saved": _quantity(load.saved, "s"),
        "risks": [_part(each) for each in load.risks],
        "broke": list(carrying.broke),
        "not_recognised": list(carrying.unplaced),
        "cards": [
            {
                "key": card.key,
                "title": card.title,
                "for": card.leads,
                "mendable": card.can,
                "effort": card.effort,
                "tools": card.tools,
                "materials": card.materials,
                "steps": [{"do": each.do, "caution": each.caution} for each in card.steps],
                "after": card.after,
                "limits": card.limits,
                "next_look": card.next_look,
                "never": card.never,
                "record": card.record,
            }
            for card in carry_cards(carrying)
        ],
        "rough": list(ROUGH),
    }


def carry_schema() -> Schema:
    """Schema of `carry_json`."""
    ref = {name: {"$ref": f"#/$defs/{name}"} for name in ("quantity", "item", "part", "card")}
    item: Schema = {"type": "array", "items": ref["item"]}
    told = {
        "axlewright_carry": {"const": VERSION},
        "package": _TEXT,
        "tables": {**_TEXT, "description": "hash of all data tables"},
        "draws": {"type": "integer", "minimum": 0},
        "caution": _TEXT,
        "rig": _object({"name": _TEXT, "slug": _TEXT, "axle": {"enum": ["front", "rear"]}}),
        "may_i_drive": _object({"stop": _BOOL, "words": _TEXTS}),
        "judged": {**_BOOL, "description": "false: questions are open, so nothing is ranked"},
        "trip": _object(
            {
                "days": {"type": "integer", "minimum": 1},
                "people": {"type": "integer", "minimum": 1},
                "ground": _TEXT,
                **dict.fromkeys(("mass", "far", "distance"), ref["quantity"]),
            }
        ),
        "sentence": _TEXT,
        **dict.fromkeys(("least", "rest", "not_judged", "left"), item),
        "parts_not_judged": _TEXTS,
        "mass": ref["quantity"],
        "least_mass": ref["quantity"],
        "over": {**_BOOL, "description": "the least set alone weighs more than allowed; it stands"},
        "at_risk": {**ref["quantity"], "description": "weighted time at risk"},
        "saved": {**ref["quantity"], "description": "of it, what the packed spares save"},
        "risks": {"type": "array", "items": ref["part"]},
        "broke": _TEXTS,
        "not_recognised": _TEXTS,
        "cards": {"type": "array", "items": ref["card"]},
        "rough": _TEXTS,
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "What to carry, by axlewright",
        "description": "SI throughout. Ignore keys that are not told here.",
        **_object(told),
        "$defs": {"quantity": _quantity_schema(), **_parts_of(ref)},
    }


def _parts_of(ref: dict[str, Schema]) -> Schema:
    state = {"enum": ["packed", "missing", "not said"]}
    step = _object({"do": _TEXT, "caution": _TEXT})
    words = ("key", "title", "for", "mendable", "effort", "tools", "materials")
    after = ("after", "limits", "next_look", "never", "record")
    return {
        "item": _object(
            {
                **dict.fromkeys(("key", "label", "note", "place"), _TEXT),
                "mass": ref["quantity"],
                "chance": ref["quantity"],
                "saves": ref["quantity"],
                "serves": _TEXTS,
                "broke_before": _BOOL,
                "card_asks_for_more_people": _BOOL,
                "ticked": _object({"state": state, "lies": _TEXT, "on": _TEXT}),
            }
        ),
        "part": _object(
            {
                **dict.fromkeys(("part", "label", "then"), _TEXT),
                "chance": ref["quantity"],
                "lost": ref["quantity"],
                "weight": {"type": "number"},
                "broke_before": {"type": "number"},
            }
        ),
        "card": _object(
            {
                **dict.fromkeys(words, _TEXT),
                "steps": {"type": "array", "items": step},
                **dict.fromkeys(after, _TEXT),
            }
        ),
    }


def _object(told: Schema) -> Schema:
    return {"type": "object", "properties": told, "required": list(told)}


def _quantity_schema() -> Schema:
    number: Schema = {"type": "number"}
    band = _object({"low": number, "high": number, "confidence": {"const": 0.9}})
    return _object(
        {
            "value": number,
            "unit": {"enum": ["1", "kg", "m", "s"]},
            "band": {"anyOf": [band, {"type": "null"}]},
        }
    )


def _quantity(value: float, unit: str, band: tuple[float, float] | None = None) -> Schema:
    told = None if band is None else {"low": band[0], "high": band[1], "confidence": 0.9}
    return {"value": value, "unit": unit, "band": told}


def _item(carrying: Carrying, item: Spared) -> Schema:
    spare, spread = item.spare, item.spare.origin.spread
    tick = carrying.ticks.get(spare.key, Ticked())
    return {
        "key": spare.key,
        "label": spare.label,
        "note": spare.note,
        "place": spare.place,
        "mass": _quantity(spare.mass, "kg", (spare.mass / spread, spare.mass * spread)),
        "chance": _quantity(item.chance, "1"),
        "saves": _quantity(item.saves, "s", (item.low, item.high)),
        "serves": [each.weakness.label for each in item.covers],
        "broke_before": item.broke,
        "card_asks_for_more_people": item.short_handed,
        "ticked": {"state": tick.state, "lies": tick.lies, "on": tick.on},
    }


def _part(risk: PartRisk) -> Schema:
    return {
        "part": risk.weakness.part,
        "label": risk.weakness.label,
        "then": risk.weakness.what_then,
        "chance": _quantity(risk.chance, "1", (risk.low, risk.high)),
        "lost": _quantity(risk.lost, "s"),
        "weight": risk.weight,
        "broke_before": risk.weakness.broke,
    }
