"""An order sheet as JSON: SI whatever the reader's units, and its schema."""

from collections.abc import Sequence
from importlib.metadata import version
from typing import Any, Final

from axlewright.swap import Filled, Order, differs
from axlewright.tables import fingerprint, order_fields
from axlewright.views.json_schema import CONFIDENCE, TEXT, TEXTS, YES_NO, Schema, listed, shape
from axlewright.views.order import CAUTION, ORDER_GROUPS, misfit_words

ORDER_JSON: Final = 1
UNITS: Final = {"length": "m", "offset": "m", "angle": "rad", "plain": "1", "count": "1"}


def order_json(order: Order, stop_lines: Sequence[str] = ()) -> dict[str, Any]:
    """Everything about an order: each field, what contradicts what, whether it can be sent.

    ``stop_lines`` are what was found on the rig that says STOP.
    """
    return {
        "axlewright_order_answer": ORDER_JSON,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "caution": CAUTION,
        "stop": bool(stop_lines),
        "stop_lines": [*stop_lines],
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


def order_answer_schema() -> Schema:
    """Schema of `order_json`."""
    number: Schema = {"type": "number"}
    band = shape({"low": number, "high": number, "confidence": CONFIDENCE})
    quantity = {**shape({"value": number, "unit": TEXT}, {"band": band}), "title": "SI"}
    field = {
        "key": TEXT,
        "group": TEXT,
        "station": {"type": "integer"},
        "label": TEXT,
        "needed": YES_NO,
        "value": {"oneOf": [quantity, TEXT, {"type": "null"}]},
        "whence": {"type": ["string", "null"]},
        "tolerance": {"oneOf": [quantity, {"type": "null"}]},
        "rig_has": {"oneOf": [quantity, TEXT, {"type": "null"}]},
        "why": TEXT,
        "source": TEXT,
    }
    clash = {
        "rule": TEXT,
        "fields": TEXTS,
        "weight": {"enum": ["blocks", "settle", "ask"]},
        "words": TEXT,
    }
    whole = {
        "axlewright_order_answer": {"const": ORDER_JSON},
        **dict.fromkeys(("package", "tables", "caution", "rig", "axle"), TEXT),
        "stop": YES_NO,
        "stop_lines": TEXTS,
        "ready": YES_NO,
        "blocked": YES_NO,
        "missing": TEXTS,
        "contradictions": listed(shape(clash)),
        "fields": listed(shape(field)),
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "An order sheet as axlewright has checked it",
        "description": "SI throughout. Ignore keys that are not told here.",
        **shape(whole),
    }
