"""JSON Schemas of the rig, change and readings files, for editors, made from the catalogue."""

from collections.abc import Sequence
from typing import Any, TypeAlias

from axlewright.rig.alignment_fields import ALIGNMENT_FIELDS, MANY, REPEATED
from axlewright.rig.alignment_readings import VERSION as READINGS_VERSION
from axlewright.rig.answer import NUMBERS, accepted
from axlewright.rig.field import Field
from axlewright.rig.fields import FIELDS
from axlewright.rig.reading import ACTIONS, AXLES, FOUND, LONGEST_NAME, LONGEST_NOTE, VERSION, WHERE
from axlewright.rig.replaced import HOUSING, housing_fields

Schema: TypeAlias = dict[str, Any]

_DIALECT = "https://json-schema.org/draft/2020-12/schema"
_DONT_KNOW = "don't know"
_TO: Schema = {"type": ["string", "number", "boolean"]}


def rig_schema(catalogue: Sequence[Field] = FIELDS) -> Schema:
    """Schema of a rig file. The reader is more patient about case and blanks than this is."""
    tables = _object({"name": _name(), "axle": {"enum": list(AXLES)}}, ["name", "axle"])
    root = _object(
        {
            "axlewright": {"const": VERSION, "description": "Version of the file."},
            "rig": tables,
            "condition": {"type": "array", "items": _condition()},
        },
        ["axlewright", "rig"],
    )
    for field in catalogue:
        always = field.required and field.axle == "both"
        _put(root, field.path.split("."), _answer(field), required=always)
    rules = [_only_on(axle, catalogue) for axle in AXLES]
    said = {"$schema": _DIALECT, "title": "A rig, for axlewright"}
    return {**said, **root, "allOf": [rule for rule in rules if rule]}


def change_schema(catalogue: Sequence[Field] = FIELDS) -> Schema:
    """Schema of a change file."""
    paths = {"enum": [field.path for field in catalogue]}
    settable = {"enum": [HOUSING, *paths["enum"]]}
    step = _object(dict.fromkeys(ACTIONS, paths) | {"set": settable, "to": {}}, [])
    housing = _object({}, [])
    for field in housing_fields(catalogue):
        _put(housing, field.path.split("."), _answer(field), required=field.required)
    step["if"] = {"properties": {"set": {"const": HOUSING}}, "required": ["set"]}
    step["then"] = {"properties": {"to": housing}}
    step["else"] = {"properties": {"to": _TO}}
    step["oneOf"] = [
        {"required": ["set", "to"]},
        {"required": ["add", "to"]},
        {"required": ["remove"], "not": {"required": ["to"]}},
    ]
    root = _object(
        {
            "axlewright_change": {"const": VERSION, "description": "Version of the file."},
            "name": _name(),
            "step": {"type": "array", "minItems": 1, "items": step},
        },
        ["axlewright_change", "name", "step"],
    )
    return {"$schema": _DIALECT, "title": "A change to a rig, for axlewright", **root}


def readings_schema(catalogue: Sequence[Field] = ALIGNMENT_FIELDS) -> Schema:
    """Schema of a readings file."""
    date = {"type": "string", "format": "date"}
    root = _object(
        {"axlewright_alignment": {"const": READINGS_VERSION}, "date": date},
        ["axlewright_alignment"],
    )
    for field in catalogue:
        one = _answer(field)
        if field.path in REPEATED:
            told: Schema = {key: one.pop(key) for key in ("description", "examples")}
            many = {"type": "array", "items": dict(one), "minItems": 1, "maxItems": MANY}
            one = {**told, "anyOf": [one, many]}
        _put(root, field.path.split("."), one, required=False)
    return {"$schema": _DIALECT, "title": "Readings of an alignment, for axlewright", **root}


def _answer(field: Field) -> Schema:
    told: Schema = {"description": f"{field.asks} {field.how}", "examples": [field.example]}
    if field.choices:
        return {**told, "enum": [*field.choices, _DONT_KNOW]}
    if field.kind == "yes":
        return {**told, "enum": ["yes", "no", True, False, _DONT_KNOW]}
    if field.kind in NUMBERS:
        return {**told, "type": ["string", "number"], "minLength": 1}
    told["description"] = f"{told['description']} Takes {accepted(field)}."
    return {**told, "type": "string", "minLength": 1}


def _condition() -> Schema:
    return _object(
        {
            "part": _name(),
            "what": {"enum": list(FOUND)},
            "where": {"enum": list(WHERE)},
            "date": {"type": "string", "format": "date"},
            "note": {"type": "string", "maxLength": LONGEST_NOTE},
        },
        ["part", "what"],
    )


def _object(properties: Schema, required: list[str]) -> Schema:
    return {
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": False,
    }


def _put(table: Schema, keys: list[str], answer: Schema, *, required: bool) -> None:
    """Put an answer at its place; the tables above a required one are required too."""
    properties, names = table["properties"], table["required"]
    if required and keys[0] not in names:
        names.append(keys[0])
    if len(keys) == 1:
        properties[keys[0]] = answer
    else:
        inner = properties.setdefault(keys[0], _object({}, []))
        _put(inner, keys[1:], answer, required=required)


def _only_on(axle: str, catalogue: Sequence[Field]) -> Schema:
    """What holds where the file says that it is this axle."""
    needs: Schema = {}
    for field in catalogue:
        if field.axle not in {"both", axle}:
            _rule(needs, field.path.split("."), required=False)
        elif field.axle == axle and field.required:
            _rule(needs, field.path.split("."), required=True)
    said = {"properties": {"rig": {"properties": {"axle": {"const": axle}}, "required": ["axle"]}}}
    return {"if": {**said, "required": ["rig"]}, "then": needs} if needs else {}


def _rule(table: Schema, keys: list[str], *, required: bool) -> None:
    key, *deeper = keys
    if required:
        names = table.setdefault("required", [])
        if key not in names:
            names.append(key)
    properties = table.setdefault("properties", {})
    if deeper:
        _rule(properties.setdefault(key, {}), deeper, required=required)
    elif not required:
        properties[key] = False


def _name() -> Schema:
    return {"type": "string", "minLength": 1, "maxLength": LONGEST_NAME}
