"""From a readings file, or what was typed, to checked readings of an alignment."""

import datetime as dt
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import Final

from axlewright.errors import BadFile, BadQuantity, Fault
from axlewright.rig.alignment_fields import ALIGNMENT_FIELDS, MANY, REPEATED
from axlewright.rig.answer import Answer, accepted, read_answer
from axlewright.rig.field import Field
from axlewright.rig.flat_file import check_version, no_such_name
from axlewright.rig.screw import screw_pitch
from axlewright.rig.toml_text import decoded, file_bytes, tables_of
from axlewright.rig.tree import MOST, Place

VERSION: Final = 1
KEY: Final = "axlewright_alignment"
_FIELDS: Final[Mapping[str, Field]] = {field.path: field for field in ALIGNMENT_FIELDS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """What was read: every field's answers, in the order they were written, unknown ones out."""

    answers: Mapping[str, tuple[Answer, ...]]
    date: dt.date | None = None
    file: str = ""
    digest: str = ""

    def values(self, path: str) -> tuple[float, ...]:
        """Numbers read for a field, in SI; none where nothing was read."""
        return tuple(
            float(each.value)
            for each in self.answers.get(path, ())
            if not isinstance(each.value, str)
        )

    def value(self, path: str) -> float | None:
        """The one number of a field, None where nothing was read."""
        found = self.values(path)
        return found[0] if found else None

    def word(self, path: str, otherwise: str = "") -> str:
        """The word of a field."""
        found = self.answers.get(path, ())
        return str(found[0].value) if found else otherwise


def load_readings(path: str, axle: str = "front") -> Readings:
    """Read a readings file for such an axle; raises `BadFile` with every fault."""
    return readings_from_text(file_bytes(path), path, axle)


def readings_from_text(
    text: str | bytes, file: str = "readings.toml", axle: str = "front"
) -> Readings:
    """Read the text of a readings file; raises `BadFile` with every fault."""
    plain = decoded(text, file)
    place = Place(file, *tables_of(plain, file))
    check_version(place, KEY, VERSION, "readings are wanted")
    answers: dict[str, tuple[Answer, ...]] = {}
    waiting = [(key, each) for key, each in place.tables.items() if key not in {KEY, "date"}]
    while waiting and len(place.faults) < MOST:
        path, given = waiting.pop(0)
        if path in _FIELDS:
            answers[path] = _read(place, path, given, axle)
        elif isinstance(given, dict) and any(known.startswith(f"{path}.") for known in _FIELDS):
            waiting += [(f"{path}.{key}", each) for key, each in given.items()]
        else:
            no_such_name(place, path, _FIELDS)
    when = _date(place)
    if place.faults:
        raise BadFile(file, sorted(place.faults, key=lambda each: each.line or 10**9))
    return Readings(
        answers={path: answers[path] for path in _FIELDS if answers.get(path)},
        date=when,
        file=file,
        digest=sha256(plain.encode()).hexdigest(),
    )


def readings_said(
    said: Mapping[str, Sequence[str]], axle: str = "front", before: Readings | None = None
) -> Readings:
    """Read what was typed, by field, over what a file said before; raises `BadFile`."""
    place = Place("what was typed", {}, tables_of("", "")[1])
    answers = dict(before.answers) if before is not None else {}
    for path, texts in said.items():
        if path not in _FIELDS:
            no_such_name(place, path, _FIELDS)
            continue
        given = list(texts) if path in REPEATED else texts[-1] if texts else ""
        found = _read(place, path, given, axle)
        answers.pop(path, None)
        if found:
            answers[path] = found
    if place.faults:
        raise BadFile(place.file, place.faults)
    return Readings(
        answers={path: answers[path] for path in _FIELDS if path in answers},
        date=before.date if before is not None else None,
        file=before.file if before is not None else "",
        digest=before.digest if before is not None else "",
    )


def readings_text(
    said: Mapping[str, Sequence[str]], date: dt.date | None = None, note: str = ""
) -> str:
    """Text of a readings file that says this, by field; it reads as `readings_from_text` reads."""
    rows = [f"# {line}" for line in note.splitlines()]
    rows.append(f"{KEY} = {VERSION}")
    if date is not None:
        rows.append(f"date = {date.isoformat()}")
    for room in dict.fromkeys(path.partition(".")[0] for path in _FIELDS):
        told = {
            path: said[path] for path in _FIELDS if path.startswith(f"{room}.") and path in said
        }
        if told:
            rows += ["", f"[{room}]"]
        for path, texts in told.items():
            written = [json.dumps(text, ensure_ascii=False) for text in texts]
            value = f"[{', '.join(written)}]" if len(written) > 1 else written[0]
            rows.append(f"{path.partition('.')[2]} = {value}")
    return "\n".join(rows) + "\n"


def _read(place: Place, path: str, given: object, axle: str) -> tuple[Answer, ...]:
    field = _FIELDS[path]
    example = f'{path.rpartition(".")[2]} = "{field.example}"'
    if axle not in {field.axle, "both"} and field.axle != "both":
        told = f"this belongs to a {field.axle} axle, and this rig's is a {axle} axle"
        place.add(path, told, "nothing here: take it out", "")
        return ()
    each = given if isinstance(given, list) else [given]
    if isinstance(given, list) and path not in REPEATED:
        place.add(path, "one answer is wanted here, not a list", accepted(field), example)
        return ()
    if not each or len(each) > MANY:
        place.add(path, "a list holds from 1 to 30 readings", accepted(field), example)
        return ()
    out = []
    for one in each:
        found = read_answer(field, one, file=place.file, line=place.line(path))
        if isinstance(found, Answer) and path.endswith(".thread") and not found.dont_know:
            found = _threaded(found, place)
        if isinstance(found, Fault):
            place.faults.append(found)
        elif not found.dont_know:
            out.append(found)
    return tuple(out)


def _threaded(found: Answer, place: Place) -> Answer | Fault:
    try:
        screw_pitch(found.text)
    except BadQuantity as refused:
        return Fault(
            file=place.file,
            line=found.line,
            field=found.field.path,
            problem=refused.problem.rstrip("."),
            given=found.text,
            accepted=refused.remedy.rstrip("."),
            example=f'thread = "{found.field.example}"',
        )
    return found


def _date(place: Place) -> dt.date | None:
    given = place.tables.get("date")
    if isinstance(given, dt.datetime):
        return given.date()
    if given is None or isinstance(given, dt.date):
        return given
    try:
        if isinstance(given, str):
            return dt.date.fromisoformat(given.strip())
    except ValueError:
        pass
    place.add("date", "this is not a date", "year-month-day", "date = 2026-05-03")
    return None
