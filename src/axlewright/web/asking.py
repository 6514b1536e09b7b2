"""The questions of one axle as a page shows them: what is known, what it tells, what clashes."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.actions import Draft, Said, number_of
from axlewright.rig import FIELDS, MAY_BE_UNKNOWN, Answer, Field
from axlewright.views import echo_line, field_name, options, told_lines

THIRTEEN: Final = 13

TITLES: Final[dict[int, str]] = {
    1: "What holds it, and what carries the weight",
    2: "The tyre",
    3: "How high the hubs stand",
    4: "From tyre to tyre",
    5: "From spring to spring",
    6: "Round the tubes",
    7: "How much tube is bare",
    8: "Offset and spacer",
    9: "The weight on it",
    10: "The joint",
    11: "Differential and hubs",
    12: "What was mended, or hurts",
    13: "The hardest use, and how far from help",
}
# Words of the trade in a question, whose meaning a tap should open.
TERMS: Final[dict[int, str]] = {
    3: "loaded radius",
    6: "girth",
    7: "bare tube",
    8: "ET",
    10: "cap to cap",
    12: "STOP",
}
# Where the catalogue speaks of the file, what to say to someone who is being asked.
HOWS: Final[dict[str, str]] = {
    "rig.condition": "List each thing below, one by one. That nobody has looked is an answer too.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Other:
    """Another answer that a contradiction hangs on."""

    path: str
    ident: str
    name: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """An answer that was not kept: why, what may have been meant, and what it does not fit."""

    path: str
    text: str
    fault: str = ""
    near: tuple[str, ...] = ()
    clashes: tuple[str, ...] = ()
    others: tuple[Other, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One field on a page."""

    path: str
    ident: str
    name: str
    asks: str
    how: str
    caution: str
    example: str
    choices: tuple[str, ...]
    text: str
    kept: str
    picked: str
    known: bool
    echo: str
    told: tuple[str, ...]
    refused: Refused | None
    open_ok: bool
    rough_ok: bool
    required: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One of the thirteen, or one of the rest: its fields, and what stands in its heading."""

    number: int | None
    ident: str
    title: str
    fields: tuple[Asked, ...]
    summary: str
    done: bool
    odd: bool
    term: str = ""
    sides: bool = False


def questions(
    draft: Draft, refused: Refused | None = None, system: str = "metric"
) -> list[Question]:
    """The thirteen questions for this axle, in their order."""
    by_number: dict[int, list[Field]] = {}
    for each in FIELDS:
        if each.question is not None and draft.belongs(each):
            by_number.setdefault(each.question, []).append(each)
    desk = _Desk(draft, refused, system)
    return [desk.question(fields, number) for number, fields in sorted(by_number.items())]


def further(
    draft: Draft, paths: Sequence[str], refused: Refused | None = None, system: str = "metric"
) -> list[Question]:
    """The rest, each a question of its own, in the order given."""
    desk = _Desk(draft, refused, system)
    fields = {each.path: each for each in FIELDS}
    return [desk.question([fields[path]]) for path in paths if path in fields]


def answered(asked: Sequence[Question]) -> int:
    """How many of the thirteen have all of their answers."""
    return sum(each.done for each in asked if each.number is not None)


def progress_line(done: int) -> str:
    """How far it is to a first answer."""
    if done == THIRTEEN:
        return "All thirteen are answered. Each of the rest narrows the answer."
    return f"{done} of {THIRTEEN} answered."


def refusal(draft: Draft, said: Said) -> Refused | None:
    """What a page shows of an answer that was not kept; None where it was."""
    if said.stored:
        return None
    hangs_on = dict.fromkeys(path for one in said.contradictions for path in one.others)
    fields = {each.path: each for each in FIELDS}
    others = tuple(
        Other(
            path=path,
            ident=ident_of(path),
            name=field_name(fields[path]),
            text=_text(draft.answers[path]),
        )
        for path in hangs_on
        if path in draft.answers and not options(fields[path])
    )
    return Refused(
        path=said.path,
        text=said.text,
        fault=said.fault,
        near=said.near,
        clashes=tuple(f"{one.problem} {one.remedy}" for one in said.contradictions),
        others=others,
    )


def ident_of(path: str) -> str:
    """A field's path as the id of an element."""
    return path.replace(".", "-").replace("_", "-")


class _Desk:
    """One draft, with what all of its questions need worked out once."""

    def __init__(self, draft: Draft, refused: Refused | None, system: str) -> None:
        self._draft, self._refused = draft, refused
        tyre = draft.tyre()
        self._across = tyre.outer_diameter if tyre else 0.0
        self._values: Mapping[str, float] = {
            name: datum.value for name, datum in draft.given().items()
        }
        self._words = draft.words()
        self._system = draft.system() if system == "metric" else system

    def question(self, fields: Sequence[Field], number: int | None = None) -> Question:
        """One question out of its fields."""
        asked = tuple(self._asked(each) for each in fields)
        shown = [f"{_short(each)}{each.kept}" for each in asked if each.known]
        first = fields[0]
        title = TITLES[number] if number is not None else _title(field_name(first))
        return Question(
            number=number,
            ident=f"q-{number}" if number is not None else f"q-{ident_of(first.path)}",
            title=title,
            fields=asked,
            summary=", ".join(shown),
            done=all(each.known for each in asked),
            odd=any(each.refused for each in asked),
            term=TERMS.get(number or 0, ""),
            sides=any(each.path.endswith(".left") for each in fields),
        )

    def _asked(self, field: Field) -> Asked:
        path = field.path
        answer = self._draft.answers.get(path)
        refused = self._refused if self._refused and self._refused.path == path else None
        known = answer is not None
        text = _text(answer) if answer else ""
        return Asked(
            path=path,
            ident=ident_of(path),
            name=field_name(field),
            asks=field.asks,
            how=HOWS.get(path, field.how),
            caution=field.caution,
            example=field.example,
            choices=options(field),
            text=refused.text if refused else text,
            kept=text,
            picked=str(answer.value) if answer and not answer.dont_know else "",
            known=known,
            echo=echo_line(field, number_of(answer), answer.text) if answer else "",
            told=self._told(path) if answer and not answer.dont_know else (),
            refused=refused,
            open_ok=not field.required or path in MAY_BE_UNKNOWN,
            rough_ok=field.kind not in {"word", "yes", "text", "tyre"},
            required=field.required,
        )

    def _told(self, path: str) -> tuple[str, ...]:
        return tuple(told_lines(path, self._values, self._words, self._across, self._system))


def _text(answer: Answer) -> str:
    if answer.dont_know:
        return "don't know"
    worded = answer.field.kind in {"word", "yes"}
    return str(answer.value) if worded else answer.text


def _short(asked: Asked) -> str:
    side = asked.path.rpartition(".")[2]
    return f"{side} " if side in {"left", "right"} else ""


def _title(name: str) -> str:
    return name[:1].upper() + name[1:]
