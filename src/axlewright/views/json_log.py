"""What `axlewright log` says as JSON: SI, every quantity {value, unit, band}; and its schema.

Both come from the same frozen words, so that neither can say what the other does not know.
``UNITS`` gives the unit of each number; a number that is not in it has none.
"""

import datetime as dt
import types
import typing
from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass
from importlib.metadata import version
from math import isfinite
from typing import Any, Final

from axlewright.physics import measurement
from axlewright.rig import Component, Fitment, Kept, Reading
from axlewright.tables import Procedure, ProcedureStep, fingerprint
from axlewright.upkeep import Bent, Carried, Drive, Due, Past, ReadingTaken, Sheet, WantedLook
from axlewright.views.json_answer import UNIT

VERSION: Final = 1
CAUTION: Final = "decision support, not a certificate"
NINETY, NINETY_FIVE = 0.9, 0.95
BY_KIND: Final = "by kind"  # the unit is that of the kind of quantity
BY_ECHO: Final = "by its own unit"
UNITS: Final[Mapping[tuple[str, str], str]] = {
    ("Kept", "odometer"): "m",
    ("LookTaken", "until_distance"): "m",
    ("Trip", "distance"): "m",
    ("Trip", "duration"): "s",
    ("Trip", "grounds"): "m",
    ("Trip", "pressure"): "Pa",
    ("Trip", "water"): "m",
    ("Trip", "temperature"): "K",
    ("Hit", "speed"): "m/s",
    ("Chapter", "shortest"): "m",
    ("Chapter", "longest"): "m",
    ("Chapter", "grounds"): "m",
    ("Driven", "shortest"): "m",
    ("Driven", "longest"): "m",
    ("Carried", "distance"): "m",
    ("Due", "driven"): "m",
    ("Due", "at_distance"): "m",
    ("Fitment", "since_odometer"): "m",
    ("Fitment", "until_odometer"): "m",
    ("Reading", "value"): BY_KIND,
    ("Reading", "standard"): BY_KIND,
    ("Reading", "repeats"): BY_KIND,
    ("Reading", "corrected"): BY_KIND,
    ("OwnLimit", "low"): BY_KIND,
    ("OwnLimit", "high"): BY_KIND,
    ("Procedure", "low"): BY_KIND,
    ("Procedure", "high"): BY_KIND,
    ("Procedure", "pooled"): BY_KIND,
    ("Worth", "mean"): BY_KIND,
    ("Worth", "standard"): BY_KIND,
    ("LimitShown", "low"): BY_KIND,
    ("LimitShown", "high"): BY_KIND,
    ("Verdict", "within"): "1",
    ("Located", "nothing"): "1",
    ("Located", "remainder"): "rad",
    ("Suspect", "share"): "1",
    ("Explains", "bow"): "m",
    ("Explains", "low"): "rad",
    ("Explains", "high"): "rad",
    ("Echo", "value"): BY_ECHO,
    ("Echo", "standard"): BY_ECHO,
    ("ShareBand", "low"): "1",
    ("ShareBand", "high"): "1",
}
LEFT_OUT: Final = frozenset({"origin", ("Worth", "band")})  # told as the band of its mean


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryTold:
    """One entry as it was kept, what it says of driving, and the sum after a hit where asked."""

    rig: str
    entry: Kept
    drive: Drive
    off_centre: Mapping[str, object] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureTold:
    """One guided reading with its steps."""

    procedure: Procedure
    steps: tuple[ProcedureStep, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WithdrawnTold:
    """Which entry does not hold any more, and by which it was withdrawn."""

    withdrawn: int
    by: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PartTold:
    """One part, where it was, and what it went through."""

    part: Component
    places: tuple[Fitment, ...]
    carried: Carried


ANSWERS: Final[Mapping[str, Any]] = {
    "bent": Bent,
    "counts": dict[str, int],
    "drive": Drive,
    "due": tuple[Due, ...],
    "entered": EntryTold,
    "history": tuple[Kept, ...],
    "looks": tuple[WantedLook, ...],
    "part": Component,
    "parts": tuple[PartTold, ...],
    "past": Past,
    "procedure": ProcedureTold,
    "procedures": tuple[Procedure, ...],
    "reading": ReadingTaken,
    "shimmy": Sheet,
    "withdrawn": WithdrawnTold,
}


def log_json(answer: str, thing: object) -> dict[str, Any]:
    """One answer of the log under its name, with what it rests on."""
    return {
        "axlewright_log": VERSION,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "caution": CAUTION,
        "answer": answer,
        answer: _plain(thing, _kind_of(thing, "")),
    }


def _kind_of(thing: object, outer: str) -> str:
    """Kind of quantity that numbers of a thing are of, as far as it says so."""
    if isinstance(thing, ReadingTaken | ProcedureTold):
        return thing.procedure.kind
    own = getattr(thing, "kind", "")
    return own if own in UNIT and not isinstance(thing, Component) else outer


def _plain(thing: object, kind: str) -> Any:  # noqa: ANN401  (whatever JSON holds)
    if is_dataclass(thing) and not isinstance(thing, type):
        return _words(thing, _kind_of(thing, kind))
    if isinstance(thing, Mapping):
        return {str(name): _plain(each, kind) for name, each in thing.items()}
    if isinstance(thing, list | tuple):
        return [_plain(each, kind) for each in thing]
    if isinstance(thing, dt.date):
        return thing.isoformat()
    if isinstance(thing, float) and not isfinite(thing):
        return None
    return thing


def _words(thing: Any, kind: str) -> dict[str, Any]:  # noqa: ANN401  (any of our frozen words)
    name = type(thing).__name__
    told: dict[str, Any] = {"is": name}
    for field in fields(thing):
        if field.name in LEFT_OUT or (name, field.name) in LEFT_OUT:
            continue
        value = getattr(thing, field.name)
        unit = UNITS.get((name, field.name))
        if unit is None:
            told[field.name] = _plain(value, kind)
        else:
            told[field.name] = _measured(thing, field.name, value, _unit(unit, thing, kind))
    return told


def _unit(unit: str, thing: Any, kind: str) -> str:  # noqa: ANN401
    if unit == BY_ECHO:
        return thing.unit or "1"
    return UNIT[kind] if unit == BY_KIND else unit


def _measured(thing: Any, name: str, value: Any, unit: str) -> Any:  # noqa: ANN401
    if value is None and (type(thing).__name__, name) == ("Located", "remainder"):
        return None
    if isinstance(value, tuple):
        return [_measured(thing, name, each, unit) for each in value]
    if isinstance(value, str):  # the ground of a distance
        return value
    return _quantity(value, unit, _band(thing, name))


def _band(thing: Any, name: str) -> tuple[float, float, float] | None:  # noqa: ANN401
    if (type(thing).__name__, name) == ("Worth", "mean"):
        return (*thing.band, NINETY_FIVE)
    if isinstance(thing, Reading) and name == "value":
        reach = measurement.NINETY * thing.standard
        return thing.value - reach, thing.value + reach, NINETY
    return None


def _quantity(
    value: float | None, unit: str, band: tuple[float, float, float] | None
) -> dict[str, Any]:
    told: dict[str, Any] = {"value": value, "unit": unit, "band": None}
    if value is None or not isfinite(value):
        told |= {"value": None, "reason": "not given" if value is None else "no end"}
    if band is not None:
        low, high, confidence = band
        told["band"] = {"low": low, "high": high, "confidence": confidence}
    return told


def log_schema() -> dict[str, Any]:
    """Schema of `log_json`, out of the same words and units."""
    found: dict[str, dict[str, Any]] = {"quantity": _quantity_schema()}
    heading: dict[str, Any] = {
        "axlewright_log": {"const": VERSION},
        "package": {"type": "string"},
        "tables": {"type": "string", "description": "hash of all data tables"},
        "caution": {"type": "string"},
        "answer": {"enum": sorted(ANSWERS)},
    }
    answers = {name: _schema(hint, found) for name, hint in ANSWERS.items()}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "What axlewright log says",
        "description": "SI throughout; the answer stands under its name. Ignore what is not told.",
        "type": "object",
        "properties": {**heading, **answers},
        "required": list(heading),
        "oneOf": [
            {
                "type": "object",
                "properties": {"answer": {"const": name}},
                "required": ["answer", name],
            }
            for name in ANSWERS
        ],
        "$defs": dict(sorted(found.items())),
    }


def _quantity_schema() -> dict[str, Any]:
    number = {"type": ["number", "null"]}
    band = {
        "type": "object",
        "properties": {"low": number, "high": number, "confidence": {"type": "number"}},
        "required": ["low", "high", "confidence"],
    }
    units = sorted({*UNIT.values(), *UNITS.values()} - {BY_KIND, BY_ECHO})
    return {
        "type": "object",
        "properties": {
            "value": number,
            "unit": {"enum": units},
            "band": {"anyOf": [band, {"type": "null"}]},
            "reason": {"type": "string", "description": "why the value is null"},
        },
        "required": ["value", "unit", "band"],
    }


_PLAIN: Final[Mapping[object, dict[str, Any]]] = {
    str: {"type": "string"},
    bool: {"type": "boolean"},
    int: {"type": "integer"},
    float: {"type": ["number", "null"]},
    dt.date: {"type": "string", "format": "date"},
    dt.datetime: {"type": "string", "format": "date-time"},
    type(None): {"type": "null"},
    object: {},
}


def _schema(  # noqa: PLR0911  (one way out for each kind of word)
    hint: Any,  # noqa: ANN401
    found: dict[str, dict[str, Any]],
    unit: str = "",
) -> dict[str, Any]:
    origin, inner = typing.get_origin(hint), typing.get_args(hint)
    if hint in _PLAIN:
        return {"$ref": "#/$defs/quantity"} if unit and hint is float else dict(_PLAIN[hint])
    if origin is typing.Literal:
        return {"enum": list(inner)}
    if origin in {typing.Union, types.UnionType}:
        if unit and float in inner:
            return {"$ref": "#/$defs/quantity"}
        return {"anyOf": [_schema(each, found, unit) for each in inner]}
    if origin in {tuple, list}:
        of = [each for each in inner if each is not Ellipsis]
        kinds = [_schema(each, found, unit) for each in dict.fromkeys(of)]
        return {"type": "array", "items": kinds[0] if len(kinds) == 1 else {"anyOf": kinds}}
    if origin is not None:  # a mapping
        return {"type": "object", "additionalProperties": _schema(inner[1], found, unit)}
    name = hint.__name__
    if name not in found:
        found[name] = {}
        hints = typing.get_type_hints(hint)
        told: dict[str, Any] = {"is": {"const": name}}
        for field in fields(hint):
            if field.name not in LEFT_OUT and (name, field.name) not in LEFT_OUT:
                of_unit = UNITS.get((name, field.name), "")
                told[field.name] = _schema(hints[field.name], found, of_unit)
        found[name] = {"type": "object", "properties": told, "required": list(told)}
    return {"$ref": f"#/$defs/{name}"}
