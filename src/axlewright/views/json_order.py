"""An order sheet as JSON: SI whatever the reader's units, and its schema."""

from importlib.metadata import version
from typing import Any, Final

from axlewright.swap import Filled, Order, differs
from axlewright.tables import fingerprint, order_fields
from axlewright.views.order import ORDER_GROUPS, misfit_words

ORDER_JSON: Final = 1
UNITS: Final = {"length": "m", "offset": "m", "angle": "rad", "plain": "1", "count": "1"}


def order_json(order: Order) -> dict[str, Any]:
    """Everything about an order: each field, what contradicts what, whether it can be sent."""
    return {
        "axlewright_order_answer": ORDER_JSON,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "caution": "decision support, not a certificate",
        "rig": order.name,
        "axle": order.axle,
        "ready": order.ready,
        "blocked": order.blocked,
        "missing": [each.key for each in order.missing],
        "contradictions": [
            {
                "rule": each.rule,
                "fields": [*each.fields],
                "weight": each.wrong.weight,
                "words": misfit_words(each),
            }
            for each in order.misfits
        ],
        "fields": [
            {
                "key": row.field.key,
                "group": ORDER_GROUPS[row.field.group],
                "station": row.field.station,
                "label": row.field.label,
                "needed": row.field.needed,
                "value": _value(row.filled),
                "whence": row.filled.whence if row.filled is not None else None,
                "tolerance": None
                if row.field.tolerance is None
                else {"value": row.field.tolerance, "unit": UNITS[row.field.kind]},
                "rig_has": _value(row.beside) if differs(row) else None,
                "why": row.field.why,
                "source": row.field.origin.source.title,
            }
            for row in order.rows
        ],
    }


def _value(filled: Filled | None) -> dict[str, Any] | str | None:
    if filled is None:
        return None
    if isinstance(filled.value, str):
        return filled.value
    kind = order_fields()[filled.key].kind
    told: dict[str, Any] = {"value": filled.value, "unit": UNITS[kind]}
    if filled.band is not None:
        told["band"] = {"low": filled.band[0], "high": filled.band[1], "confidence": 0.9}
    return told


def order_answer_schema() -> dict[str, Any]:
    """Schema of `order_json`."""
    text, yes = {"type": "string"}, {"type": "boolean"}
    number = {"type": "number"}
    band = _object({"low": number, "high": number, "confidence": {"const": 0.9}})
    quantity = {**_object({"value": number, "unit": text}), "title": "SI"}
    quantity["properties"] = {**quantity["properties"], "band": band}
    field = {
        "key": text,
        "group": text,
        "station": {"type": "integer"},
        "label": text,
        "needed": yes,
        "value": {"oneOf": [quantity, text, {"type": "null"}]},
        "whence": {"type": ["string", "null"]},
        "tolerance": {"oneOf": [quantity, {"type": "null"}]},
        "rig_has": {"oneOf": [quantity, text, {"type": "null"}]},
        "why": text,
        "source": text,
    }
    clash = {
        "rule": text,
        "fields": {"type": "array", "items": text},
        "weight": {"enum": ["blocks", "settle", "ask"]},
        "words": text,
    }
    whole = {
        "axlewright_order_answer": {"const": ORDER_JSON},
        **dict.fromkeys(("package", "tables", "caution", "rig", "axle"), text),
        "ready": yes,
        "blocked": yes,
        "missing": {"type": "array", "items": text},
        "contradictions": {"type": "array", "items": _object(clash)},
        "fields": {"type": "array", "items": _object(field)},
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "An order sheet as axlewright has checked it",
        "description": "SI throughout. Ignore keys that are not told here.",
        **_object(whole),
    }


def _object(properties: dict[str, Any]) -> dict[str, Any]:
    return {"type": "object", "properties": properties, "required": [*properties]}
