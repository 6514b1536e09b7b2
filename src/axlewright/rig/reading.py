"""From the text of a rig or change file to plain checked data, or every fault at once."""

import datetime as dt
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path
from typing import Final

from axlewright.errors import BadFile, Fault
from axlewright.rig.answer import Answer, read_answer
from axlewright.rig.field import Field
from axlewright.rig.fields import FIELDS
from axlewright.rig.replaced import HOUSING, housing_answers
from axlewright.rig.toml_text import decoded, file_bytes, tables_of
from axlewright.rig.tree import MOST, RIM_WIDTH, Place, missing, rim_width, walked
from axlewright.rig.words import SIDE_RULE, near, sides_meant, squashed

VERSION = 1  # of both kinds of file
AXLES: Final = ("front", "rear")
FOUND: Final = (
    "mended",
    "cracked",
    "bowed",
    "wet",
    "rusty line",
    "loose",
    "shaking",
    "bent",
    "broke",
    "never looked at",
    "not fit to drive",
)
WHERE: Final = ("left", "right", "both", "centre")
ACTIONS: Final = ("set", "add", "remove")
LONGEST_NAME, LONGEST_NOTE = 80, 1000
_CONDITION: Final = ("part", "where", "what", "note", "date")
_STEP: Final = (*ACTIONS, "to")


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """One thing that was mended or hurts: part, what was found, where, when and a note."""

    part: str
    what: str
    where: str = ""
    date: dt.date | None = None
    note: str = ""
    line: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RawRig:
    """A rig as its file says it, each answer checked by itself."""

    version: int
    name: str
    axle: str
    answers: Mapping[str, Answer]
    conditions: tuple[Condition, ...]
    sha256: str
    file: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of a change: set, add or remove, the field's path, and the new answer.

    Where a housing is set, ``brought`` are the answers that come with it.
    """

    action: str
    path: str
    answer: Answer | None
    line: int | None = None
    brought: tuple[Answer, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every name that the step changes."""
        return (self.path, *(answer.field.path for answer in self.brought))


@dataclass(frozen=True, slots=True, kw_only=True)
class RawChange:
    """A change as its file says it."""

    version: int
    name: str
    steps: tuple[Step, ...]
    sha256: str
    file: str = ""


def read_rig_file(
    path: str | Path,
    catalogue: Sequence[Field] = FIELDS,
    *,
    more: Callable[[RawRig], Iterable[Fault]] | None = None,
) -> RawRig:
    """Read a rig file; raises `BadFile` with every fault."""
    return read_rig_text(file_bytes(path), str(path), catalogue, more=more)


def read_change_file(path: str | Path, catalogue: Sequence[Field] = FIELDS) -> RawChange:
    """Read a change file; raises `BadFile` with every fault."""
    return read_change_text(file_bytes(path), str(path), catalogue)


def read_rig_text(
    text: str | bytes,
    file: str = "rig.toml",
    catalogue: Sequence[Field] = FIELDS,
    *,
    complete: bool = True,
    more: Callable[[RawRig], Iterable[Fault]] | None = None,
) -> RawRig:
    """Read the text of a rig file; raises `BadFile` with every fault.

    With ``complete=False`` a rig that is only half answered will do. ``more`` finds what is wrong
    with answers that can be read each by itself; it is told together with the rest.
    """
    plain = decoded(text, file)
    place = Place(file, *tables_of(plain, file))
    version = _version(place, "axlewright", "axlewright_change")
    name = _text(place, "rig.name", LONGEST_NAME, required=True)
    axle = _one_of(place, "rig.axle", AXLES, required=True)
    conditions = _conditions(place)
    known = ("axlewright", *_misspelt(place, "axlewright"), "rig.name", "rig.axle", "condition")
    answers = walked(place, catalogue, axle, known)
    if complete:
        missing(place, catalogue, axle, answers)
    raw = RawRig(
        version=version,
        name=name,
        axle=axle,
        answers=answers,
        conditions=conditions,
        sha256=sha256(plain.encode()).hexdigest(),
        file=file,
    )
    if more is not None and len(place.faults) < MOST:
        place.faults.extend(more(raw))
    _raise(place)
    return raw


def read_change_text(
    text: str | bytes, file: str = "change.toml", catalogue: Sequence[Field] = FIELDS
) -> RawChange:
    """Read the text of a change file; raises `BadFile` with every fault."""
    plain = decoded(text, file)
    place = Place(file, *tables_of(plain, file))
    version = _version(place, "axlewright_change", "axlewright")
    name = _text(place, "name", LONGEST_NAME, required=True)
    key = "axlewright_change"
    place.unknown(place.tables, "", (key, *_misspelt(place, key), "name", "step"))
    fields = {field.path: field for field in catalogue}
    entries = _entries(place, "step")
    if not entries and "step" not in place.tables:
        place.add("step", "a change needs at least one step", "[[step]]", 'set = "tyre.sidewall"')
    steps = [_step(place, at, entry, fields) for at, entry in entries]
    done = [step for step in steps if step is not None]
    before: dict[str, int | None] = {}
    for path, line in ((path, step.line) for step in done for path in step.names):
        if path in before:
            problem = f"{path} is changed twice; the first stands on line {before[path]}"
            fault = Fault(
                file=file,
                line=line,
                field=path,
                problem=problem,
                accepted="one step for each name; take one of the two out",
            )
            place.faults.append(fault)
        before.setdefault(path, line)
    _raise(place)
    digest = sha256(plain.encode()).hexdigest()
    return RawChange(version=version, name=name, steps=tuple(done), sha256=digest, file=file)


def _version(place: Place, key: str, other: str) -> int:
    """Version of the file; another version ends the reading, for the rest would be noise."""
    given, line = place.tables.get(key), place.line(key)
    example = f"{key} = {VERSION}"
    if key not in place.tables:
        problem = "the file does not say which version it is"
        likely = _misspelt(place, key)
        if other in place.tables:
            kinds = ("change", "rig") if other.endswith("change") else ("rig", "change")
            problem = f"this is a {kinds[0]} file, and a {kinds[1]} file is wanted"
            place.add(key, problem, "", example)
            _raise(place)
        place.add(key, problem, f"a first line with the version, {VERSION}", example, near=likely)
        return VERSION
    if isinstance(given, bool) or not isinstance(given, int):
        place.add(key, "the version is not a whole number", f"{VERSION}, no quotes", example)
    elif given > VERSION:
        problem = f"this file is of version {_brief(given)}, newer than this program can read"
        place.add(key, problem, f"up to {VERSION}; a newer axlewright reads it", example)
    elif given < VERSION:
        problem = f"this file is of version {_brief(given)}, and there never was such a version"
        place.add(key, problem, f"{VERSION}", example)
    else:
        return given
    raise BadFile(place.file, place.faults[-1:] if line else place.faults)


def _misspelt(place: Place, key: str) -> tuple[str, ...]:
    """Name in the file that was meant for a key, if there is one."""
    return () if key in place.tables else near(key, place.tables, 1, alike=0.75)


def _conditions(place: Place) -> tuple[Condition, ...]:
    found = []
    for at, entry in _entries(place, "condition"):
        place.unknown(entry, at, _CONDITION)
        when = _date(place, f"{at}.date", entry.get("date"))
        found.append(
            Condition(
                part=_text(place, f"{at}.part", LONGEST_NAME, required=True),
                what=_one_of(place, f"{at}.what", FOUND, required=True),
                where=_one_of(place, f"{at}.where", WHERE),
                date=when,
                note=_text(place, f"{at}.note", LONGEST_NOTE),
                line=place.line(at),
            )
        )
    return tuple(found)


def _entries(place: Place, name: str) -> list[tuple[str, dict[str, object]]]:
    """Entries of an array of tables, each with its numbered path."""
    given = place.tables.get(name, [])
    whole = isinstance(given, list) and all(isinstance(entry, dict) for entry in given)
    if not isinstance(given, list) or not whole:
        place.add(name, "each entry needs a heading of its own", f"[[{name}]]", f"[[{name}]]")
        return []
    return [(f"{name}.{number}", entry) for number, entry in enumerate(given)]


def _step(  # noqa: PLR0911  (one way out for each thing that can be wrong)
    place: Place, at: str, entry: dict[str, object], fields: Mapping[str, Field]
) -> Step | None:
    place.unknown(entry, at, _STEP)
    actions = [action for action in ACTIONS if action in entry]
    takes, example = "one of set, add, remove in each step", 'set = "tyre.sidewall"'
    if len(actions) != 1:
        problem = "a step does one thing" if actions else "this step does nothing"
        place.add(at, problem, takes, example)
        return None
    action, path = actions[0], entry[actions[0]]
    if path == HOUSING and action != "set":
        problem = "a housing is replaced whole, never added or removed"
        place.add(at, problem, "set, with a table [step.to]", f'set = "{HOUSING}"')
        return None
    if path == HOUSING:
        brought = housing_answers(place, f"{at}.to", entry.get("to"), tuple(fields.values()))
        return Step(action=action, path=HOUSING, answer=None, line=place.line(at), brought=brought)
    if not isinstance(path, str) or path not in fields:
        place.unknown_field(f"{at}.{action}", path, fields)
        return None
    if action == "remove":
        if "to" in entry:
            place.add(f"{at}.to", "what is removed takes no value", "remove alone", example)
        return Step(action=action, path=path, answer=None, line=place.line(at))
    field = fields[path]
    if "to" not in entry:
        place.add(at, f"{path} needs a value", "to = and the new value", f'to = "{field.example}"')
        return None
    line = place.line(f"{at}.to")
    width = _rim_width(place) if field.kind == "offset" else None
    answer = read_answer(field, entry["to"], file=place.file, line=line, rim_width=width)
    if isinstance(answer, Fault):
        place.faults.append(answer)
        return None
    if answer.dont_know:
        place.add(f"{at}.to", "a change needs a known value", field.how, f'to = "{field.example}"')
        return None
    return Step(action=action, path=path, answer=answer, line=place.line(at))


def _rim_width(place: Place) -> float | None:
    """Rim width that the same change sets, if it does."""
    steps = (entry for _, entry in _entries(place, "step"))
    return next((rim_width(each.get("to")) for each in steps if RIM_WIDTH in each.values()), None)


def _text(place: Place, path: str, longest: int, *, required: bool = False) -> str:
    given = place.get(path)
    example = f'{path.rpartition(".")[2]} = "Heron"'
    if given is None:
        if required:
            place.add(path, "this is missing", "a text in quotes", example)
        return ""
    if not isinstance(given, str):
        place.add(path, "this is not a text", "a text in quotes", example)
    elif required and not given.strip():
        place.add(path, "this is empty", "a text in quotes", example)
    elif len(given) > longest:
        place.add(path, f"this is longer than {longest} signs", "a short text", example)
    elif not all(sign.isprintable() or sign in "\n\t" for sign in given):
        place.add(path, "there is a sign here that cannot be printed", "plain text", example)
    else:
        return given.strip()
    return ""


def _one_of(place: Place, path: str, words: tuple[str, ...], *, required: bool = False) -> str:
    before = len(place.faults)
    given = _text(place, path, LONGEST_NAME, required=required)
    example = f'{path.rpartition(".")[2]} = "{words[0]}"'
    takes = " | ".join(words)
    if not given:
        told = [replace(each, accepted=takes, example=example) for each in place.faults[before:]]
        place.faults[before:] = told
        return ""
    for word in words:
        if squashed(word) == squashed(given):
            return word
    if "left" in words and sides_meant(given):
        problem, likely = f"{given!r} is no side: {SIDE_RULE}", sides_meant(given)
    else:
        problem, likely = f"{given!r} is not one of the words for this", near(given, words)
    place.add(path, problem, takes, example, near=likely)
    return ""


def _date(place: Place, path: str, given: object) -> dt.date | None:
    if given is None:
        return None
    if isinstance(given, dt.datetime):
        return given.date()
    if isinstance(given, dt.date):
        return given
    if isinstance(given, str):
        try:
            return dt.date.fromisoformat(given.strip())
        except ValueError:
            pass
    place.add(path, "this is not a date", "year-month-day", "date = 2026-05-03")
    return None


def _brief(number: int) -> str:
    return str(number) if abs(number) < 10**9 else "a very large number"


def _raise(place: Place) -> None:
    if place.faults:
        raise BadFile(place.file, sorted(place.faults, key=lambda each: each.line or 10**9))
