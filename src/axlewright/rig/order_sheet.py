"""From an order sheet as a file, or as typed, to checked answers of its fields."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from typing import Final

from axlewright.errors import BadFile, Fault
from axlewright.rig.answer import Answer, read_answer
from axlewright.rig.field import Field
from axlewright.rig.flat_file import check_version, no_such_name
from axlewright.rig.toml_text import decoded, file_bytes, tables_of
from axlewright.rig.tree import MOST, Place
from axlewright.tables import order_fields

ORDER_VERSION: Final = 1
ORDER_KEY: Final = "axlewright_order"


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderSheet:
    """What was written on an order sheet: its answers by field, unknown ones out."""

    answers: Mapping[str, Answer]
    axle: str = "front"
    file: str = ""
    digest: str = ""


@cache
def sheet_fields(axle: str) -> Mapping[str, Field]:
    """Fields of a sheet for such an axle, as the reader of files knows them."""
    return {
        row.key: Field(
            path=row.key,
            kind=row.kind,
            asks=row.label,
            how=row.how,
            example=row.example,
            low=row.low,
            high=row.high,
            choices=row.choices,
            axle=row.axle,
        )
        for row in order_fields().values()
        if row.axle in {axle, "both"}
    }


def load_order_sheet(path: str, axle: str = "front") -> OrderSheet:
    """Read an order sheet for such an axle; raises `BadFile` with every fault."""
    return order_sheet_from_text(file_bytes(path), path, axle)


def order_sheet_from_text(
    text: str | bytes, file: str = "order.toml", axle: str = "front"
) -> OrderSheet:
    """Read the text of an order sheet; raises `BadFile` with every fault."""
    plain = decoded(text, file)
    place = Place(file, *tables_of(plain, file))
    check_version(place, ORDER_KEY, ORDER_VERSION, "an order sheet is wanted")
    fields = sheet_fields(axle)
    said: dict[str, object] = {}
    waiting = [(key, each) for key, each in place.tables.items() if key != ORDER_KEY]
    while waiting and len(place.faults) < MOST:
        path, given = waiting.pop(0)
        if isinstance(given, dict) and any(known.startswith(f"{path}.") for known in fields):
            waiting += [(f"{path}.{key}", each) for key, each in given.items()]
        elif path in fields:
            said[path] = given
        elif path in order_fields():
            told = f"this belongs to a {order_fields()[path].axle} axle, and this one is {axle}"
            place.add(path, told, "nothing here: take it out", "")
        else:
            no_such_name(place, path, fields)
    answers = _answers(place, said, fields)
    if place.faults:
        raise BadFile(file, sorted(place.faults, key=lambda each: each.line or 10**9))
    digest = sha256(plain.encode()).hexdigest()
    return OrderSheet(answers=answers, axle=axle, file=file, digest=digest)


def order_sheet_said(said: Mapping[str, str], axle: str = "front") -> OrderSheet:
    """Read what was typed, by field; empty ones are left out. Raises `BadFile`."""
    place = Place("what was typed", {}, tables_of("", "")[1])
    fields = sheet_fields(axle)
    for path in said:
        if path not in fields:
            no_such_name(place, path, fields)
    typed = {path: text for path, text in said.items() if text.strip() and path in fields}
    answers = _answers(place, typed, fields)
    if place.faults:
        raise BadFile(place.file, place.faults)
    return OrderSheet(answers=answers, axle=axle)


def order_sheet_text(sheet: OrderSheet) -> str:
    """Write a sheet as a file that reads back the same."""
    out, table = [f"{ORDER_KEY} = {ORDER_VERSION}"], ""
    for path in sheet_fields(sheet.axle):
        if path not in sheet.answers:
            continue
        group, _, last = path.partition(".")
        if group != table:
            out += ["", f"[{group}]"]
            table = group
        text = sheet.answers[path].text.replace("\\", "\\\\").replace('"', '\\"')
        out.append(f'{last} = "{text}"')
    return "\n".join(out) + "\n"


def _answers(
    place: Place, said: Mapping[str, object], fields: Mapping[str, Field]
) -> dict[str, Answer]:
    out = {}
    for path in [each for each in fields if each in said]:
        found = read_answer(fields[path], said[path], file=place.file, line=place.line(path))
        if isinstance(found, Fault):
            place.faults.append(found)
        elif not found.dont_know:
            out[path] = found
    return out
