"""A rig file that is only half answered: read, written again, and held against itself."""

import datetime as dt
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from axlewright.errors import AxlewrightError, BadFile, Fault
from axlewright.rig import (
    FIELDS,
    MAY_BE_UNKNOWN,
    Answer,
    Clash,
    Condition,
    Field,
    Given,
    Rig,
    TyreCode,
    contradictions,
    given_of,
    parse_tyre,
    read_answer,
    read_rig_text,
    rig_from_text,
    spoken_system,
)
from axlewright.units import Parsed
from axlewright.views import told_lines

BY_PATH: Final[Mapping[str, Field]] = {each.path: each for each in FIELDS}
HEAD: Final = "# A rig, answer by answer. Anything may be changed here by hand as well."
DONT_KNOW: Final = "don't know"
# What stands in, for a first answer, for words that have not been asked yet.
STAND_INS: Final[Mapping[str, str]] = {
    "drive.lock": "open",
    "drive.unlocking_hubs": "no",
    "rig.condition": "never looked at",
    "use.hardest": "forest roads",
    **dict.fromkeys(MAY_BE_UNKNOWN, DONT_KNOW),
}
_ANY_TYRE: Final = parse_tyre(BY_PATH["tyre.sidewall"].example)
_LINE: Final = re.compile(
    r"""\s*(?P<key>[\w."'-]+)\s*=\s*(?:"(?:[^"\\]|\\.)*"|'[^']*'|[^#"']*)\s*(?P<note>\#.*)?$"""
)


@dataclass(slots=True, kw_only=True)
class Draft:
    """Everything said so far about one rig; an answer is kept as it was written.

    ``above`` and ``beside`` hold the comments that somebody wrote into the file by hand.
    """

    name: str
    axle: str = ""
    answers: dict[str, Answer] = field(default_factory=dict)
    conditions: list[Condition] = field(default_factory=list)
    above: dict[str, list[str]] = field(default_factory=dict)
    beside: dict[str, str] = field(default_factory=dict)

    def belongs(self, asked: Field) -> bool:
        """Whether a field is asked of this axle."""
        return asked.axle in {"both", self.axle}

    def required(self) -> tuple[str, ...]:
        """Paths that this axle cannot do without, in the order in which they are asked."""
        return tuple(each.path for each in FIELDS if each.required and self.belongs(each))

    def missing(self) -> tuple[str, ...]:
        """Required paths that nobody has answered yet."""
        return tuple(path for path in self.required() if path not in self.answers)

    def needed(self) -> tuple[str, ...]:
        """Required paths without which there is not even a first answer, not yet answered."""
        return tuple(path for path in self.missing() if path not in STAND_INS)

    def words(self) -> dict[str, str]:
        """Words said so far, by path."""
        said = {
            path: answer.value
            for path, answer in self.answers.items()
            if not answer.dont_know and isinstance(answer.value, str)
        }
        return {**said, "rig.axle": self.axle}

    def given(self) -> dict[str, Given]:
        """Numbers given so far, by quantity."""
        return {
            answer.field.quantity: given_of(answer)
            for answer in self.answers.values()
            if answer.field.quantity and not answer.dont_know
        }

    def tyre(self) -> TyreCode | None:
        """Size of the tyre, None while it has not been given."""
        answer = self.answers.get("tyre.sidewall")
        return parse_tyre(answer.text) if answer else None

    def read(self, asked: Field, text: str) -> Answer | Fault:
        """Read one answer beside those already there."""
        rim = self.answers.get("wheel.width")
        width = float(rim.value) if rim and not rim.dont_know else None
        return read_answer(asked, text, rim_width=width)

    def with_answer(self, path: str, answer: Answer | None) -> "Draft":
        """Give the same draft with one answer set, or taken out where it is None."""
        kept = {each: given for each, given in self.answers.items() if each != path}
        return replace(self, answers={**kept, path: answer} if answer else kept)

    def system(self) -> str:
        """System in which most numbers were given so far: metric or us."""
        return spoken_system(self.given().values())

    def clashes(self, system: str = "") -> list[Clash]:
        """Every contradiction among the answers so far, told in a system or in their own."""
        tyre, given = self.tyre(), self.given()
        if tyre is None:
            given = {name: one for name, one in given.items() if "hub_height" not in name}
        return contradictions(
            self.words(), given, tyre or _ANY_TYRE, tuple(self.conditions), system or self.system()
        )

    def behind(self, clash: Clash, path: str) -> list[str]:
        """Other answers that a contradiction hangs on: without them it is gone."""
        found, system = [], self.system()
        for other in self.answers:
            if other == path:
                continue
            rest = self.with_answer(other, None).clashes(system)
            if all(each.path != clash.path or each.problem != clash.problem for each in rest):
                found.append(other)
        return found

    def rig(self, words: Mapping[str, str] | None = None) -> Rig:
        """Checked rig, with stand-ins for what is not answered where ``words`` is given."""
        stood_in = {} if words is None else {**STAND_INS, **words}
        return rig_from_text(self.text(stood_in))

    def provisional(self, words: Mapping[str, str]) -> Rig | None:
        """Rig for a first answer, None where the answers do not allow one."""
        if self.needed():
            return None
        try:
            return self.rig(words)
        except AxlewrightError:
            return None

    def condition_rig(self) -> Rig:
        """Rig that holds its condition alone, for what it says about driving."""
        said = {"rig.condition": self.words().get("rig.condition", ""), "rig.axle": self.axle}
        found = tuple(self.conditions)
        return Rig(
            name=self.name, words=said, given={}, tyre=_ANY_TYRE, conditions=found, answers=0
        )

    def text(self, stood_in: Mapping[str, str] | None = None) -> str:
        """Text of the rig file as far as it is answered."""
        texts = {path: _written(answer) for path, answer in self.answers.items()}
        missing = self.missing()
        texts |= {path: word for path, word in (stood_in or {}).items() if path in missing}
        rows = [*self.above.get("axlewright", [HEAD]), self._row("axlewright", "axlewright", "1")]
        rows += ["", "[rig]"]
        rows.append(self._row("rig.name", "name", _quoted(self.name)))
        rows.append(self._row("rig.axle", "axle", _quoted(self.axle)))
        heading = "rig"
        paths = [each.path for each in FIELDS if each.path in texts]
        headings = list(dict.fromkeys(["rig", *(path.split(".")[0] for path in paths)]))
        for path in sorted(paths, key=lambda each: headings.index(each.split(".")[0])):
            table, _, key = path.partition(".")
            if table != heading:
                rows += ["", f"[{table}]"]
                heading = table
            rows.append(self._row(path, key, _quoted(texts[path])))
        for number, condition in enumerate(self.conditions):
            rows += ["", *self.above.get(f"condition.{number}", ()), "[[condition]]"]
            rows += _condition_rows(condition)
        rows += self.above.get("end", [])
        return "\n".join(rows) + "\n"

    def _row(self, path: str, key: str, value: str) -> str:
        note = self.beside.get(path, "")
        above = self.above.get(path, []) if path != "axlewright" else []
        return "\n".join([*above, f"{key} = {value}" + (f"  {note}" if note else "")])


def read_draft(text: str | bytes, file: str = "rig.toml") -> Draft:
    """Read the text of a rig file that may be half answered; raises `BadFile`."""
    raw = read_rig_text(text, file=file, complete=False)
    draft = Draft(
        name=raw.name,
        axle=raw.axle,
        answers=dict(raw.answers),
        conditions=list(raw.conditions),
    )
    plain = text.decode("utf-8-sig") if isinstance(text, bytes) else text
    _keep_comments(draft, plain.splitlines())
    return draft


def number_of(answer: Answer) -> Parsed | None:
    """Give the number of an answer as its reader understood it, None for a word."""
    if answer.dont_know:
        return Parsed(value=float("nan"), kind="plain", unit="", text=answer.text)
    if not isinstance(answer.value, float):
        return None
    return Parsed(
        value=answer.value,
        kind="angle" if answer.field.kind == "toe" else answer.field.kind,
        unit=answer.unit,
        text=answer.text,
        uncertainty=answer.uncertainty,
        band=answer.band,
        about=answer.about,
        note=answer.note,
    )


def told_of(draft: Draft, path: str) -> list[str]:
    """What an answer already tells, beside the others; nothing where it is not known."""
    answer, tyre = draft.answers.get(path), draft.tyre()
    if answer is None or answer.dont_know:
        return []
    values = {name: datum.value for name, datum in draft.given().items()}
    across = tyre.outer_diameter if tyre else 0.0
    return told_lines(path, values, draft.words(), across, draft.system())


def complete_rig(draft: Draft) -> Rig | BadFile:
    """Give the rig of a draft that has every required answer, or what still is wrong with it."""
    try:
        return draft.rig()
    except BadFile as trouble:
        return trouble


def _keep_comments(draft: Draft, rows: list[str]) -> None:
    """Note every comment at the answer that it stands above or beside."""
    places = {answer.line: path for path, answer in draft.answers.items()}
    places |= {one.line: f"condition.{number}" for number, one in enumerate(draft.conditions)}
    waiting: list[str] = []
    in_rig = False
    for number, row in enumerate(rows, 1):
        bare = row.strip()
        if bare.startswith("#"):
            waiting.append(bare)
            continue
        if bare.startswith("["):
            in_rig = bare.startswith("[rig]")
        found = _LINE.match(row)
        key = found["key"] if found else ""
        path = places.get(number, "")
        if not path and (key == "axlewright" or (in_rig and key in {"name", "axle"})):
            path = key if key == "axlewright" else f"rig.{key}"
        note = (found["note"] or "").strip() if found else ""
        if path:
            if waiting:
                draft.above[path] = waiting
                waiting = []
            if note and not path.startswith("condition"):
                draft.beside[path] = note
                note = ""
        if note:
            waiting.append(note)
    if waiting:
        draft.above["end"] = waiting


def _condition_rows(condition: Condition) -> list[str]:
    rows = [f"part = {_quoted(condition.part)}"]
    if condition.where:
        rows.append(f"where = {_quoted(condition.where)}")
    rows.append(f"what = {_quoted(condition.what)}")
    if isinstance(condition.date, dt.date):
        rows.append(f"date = {condition.date.isoformat()}")
    if condition.note:
        rows.append(f"note = {_quoted(condition.note)}")
    return rows


def _written(answer: Answer) -> str:
    if answer.dont_know:
        return DONT_KNOW
    worded = answer.field.kind in {"word", "yes"} and isinstance(answer.value, str)
    return str(answer.value) if worded else answer.text


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
