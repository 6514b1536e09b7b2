"""One answer: what a person wrote for one field, read and checked against the catalogue."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, time
from math import ceil, floor, log10, nan
from typing import Final

from axlewright.errors import BadQuantity, Fault
from axlewright.rig.field import Field
from axlewright.rig.place_text import LIKE, parse_place
from axlewright.rig.tyre_code import parse_tyre
from axlewright.rig.words import (
    SIDE_RULE,
    SIDES,
    near,
    parse_offset,
    parse_toe,
    parse_unknown,
    sides_meant,
    squashed,
    yes_or_no,
)
from axlewright.units import SYSTEMS, Parsed, known, parse, show

WORDS: Final = frozenset({"word", "text", "tyre", "yes", "place"})
NUMBERS: Final = frozenset({"plain", "ratio", "count"})
NONE: Final = frozenset({"none", "no", "nil", "nothing", "zero"})  # of what may be absent
LONGEST_TEXT = 400
_EDGE = 1e-9  # relative room at the ends of a range, for rounding


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One answer: a value in SI or a word, the doubt as written, the text and its line."""

    field: Field
    value: float | str
    text: str
    line: int | None = None
    uncertainty: float | None = None
    band: tuple[float, float] | None = None
    about: bool = False
    dont_know: bool = False
    unit: str = ""
    note: str = ""


def read_answer(  # noqa: PLR0911  (one way out for each thing that can be wrong)
    field: Field,
    given: object,
    *,
    file: str = "",
    line: int | None = None,
    rim_width: float | None = None,
) -> Answer | Fault:
    """Read one answer, as typed or as TOML holds it; a `Fault` where it cannot be used.

    An offset given as backspacing needs the rim's width, in its text or here, in m.
    """
    desk = _Desk(field, given, file, line)
    if isinstance(given, bool):
        if field.kind != "yes":
            return desk.fault("this is a yes or no, not what is asked for")
        given = "yes" if given else "no"
    if isinstance(given, (int, float)):
        if field.kind in WORDS:
            return desk.fault("this is a number; a text in quotes is wanted")
        try:
            given = str(given)
        except ValueError:  # a whole number of thousands of digits
            return desk.fault("this number is too large")
    if not isinstance(given, str):
        return desk.fault(f"this is {_type(given)}; one text in quotes is wanted")
    if len(given) > LONGEST_TEXT:
        return desk.fault(f"this text is longer than {LONGEST_TEXT} signs")
    if parse_unknown(given) and field.kind != "text":
        return Answer(field=field, value=nan, text=given.strip(), line=line, dont_know=True)
    return desk.word(given) if field.kind in WORDS else desk.quantity(given, rim_width)


def accepted(field: Field, unit: str = "metric") -> str:
    """What a field takes, in words."""
    if field.choices:
        return " | ".join(field.choices)
    if field.kind == "yes":
        return "yes | no"
    if field.kind == "place":
        return LIKE
    if field.kind in WORDS:
        return field.how
    kind = "angle" if field.kind == "toe" else field.kind
    units = ", ".join(filter(None, known(kind)))
    if field.kind == "offset":
        units = f"{units}, with ET before it, or a backspacing"
    what = "a number" if kind in NUMBERS else f"a {kind} in one of {units}"
    what = "an" + what[1:] if what[2] in "aeiou" else what
    low, high = bounds(field, unit)
    if low and high:
        return f"{what}, from {low} to {high}"
    return f"{what}, {low} or more" if low else f"{what}, {high} or less" if high else what


def bounds(field: Field, unit: str = "metric") -> tuple[str, str]:
    """Ends of a field's range in a unit or system, rounded inward; empty where there is none."""
    kind = "angle" if field.kind == "toe" else field.kind
    name = SYSTEMS[unit][kind] if unit in SYSTEMS else unit
    size = known(kind)[name]

    def told(end: float | None, inward: Callable[[float], int], slack: float) -> str:
        if end is None:
            return ""
        number = end / size
        step = 10.0 ** (floor(log10(abs(number))) - 2) if number else 1.0
        return f"{inward(number / step + slack) * step:.6g} {name}".rstrip()

    return told(field.low, ceil, -1e-6), told(field.high, floor, 1e-6)


class _Desk:
    """One field at one place of one file."""

    def __init__(self, field: Field, given: object, file: str, line: int | None) -> None:
        self.field, self.given, self.file, self.line = field, given, file, line

    def fault(self, problem: str, *, likely: tuple[str, ...] = (), takes: str = "") -> Fault:
        return Fault(
            file=self.file,
            line=self.line,
            field=self.field.path,
            problem=problem,
            given=shortened(self.given),
            accepted=takes or accepted(self.field),
            example=f'{self.field.path} = "{self.field.example}"',
            near=likely,
        )

    def word(self, given: str) -> Answer | Fault:  # noqa: PLR0911  (as above)
        said = given.strip()
        if not said:
            return self.fault("this is empty")
        if any(not sign.isprintable() for sign in said):
            return self.fault("there is a sign here that cannot be printed")
        if self.field.kind == "tyre":
            try:
                note = parse_tyre(said).note
            except BadQuantity as refused:
                return self.fault(refused.problem.rstrip("."), takes=refused.remedy)
            return self._answer(said, said, note=note)
        if self.field.kind == "place":
            try:
                _, about = parse_place(said)
            except BadQuantity as refused:
                return self.fault(refused.problem.rstrip("."), takes=refused.remedy)
            return replace(self._answer(said, said), about=about)
        if self.field.kind == "yes":
            meant = yes_or_no(said)
            return self._answer(meant, said) if meant else self.fault(f"{said!r} is no yes or no")
        if not self.field.choices:
            return self._answer(said, said)
        for choice in self.field.choices:
            if squashed(choice) == squashed(said):
                return self._answer(choice, said)
        if set(SIDES) <= set(self.field.choices) and sides_meant(said):
            return self.fault(f"{said!r} is no side: {SIDE_RULE}", likely=sides_meant(said))
        likely = near(said, self.field.choices)
        return self.fault(f"{said!r} is not one of the words for this", likely=likely)

    def quantity(self, given: str, rim_width: float | None) -> Answer | Fault:
        try:
            parsed = _parsed(self._nought(given) or given, self.field.kind, rim_width)
        except BadQuantity as refused:
            return self.fault(refused.problem.rstrip("."), takes=refused.remedy.rstrip("."))
        for end in (parsed.value, *(parsed.band or ())):
            if not self._fits(end):
                return self._outside(parsed, end)
        return Answer(
            field=self.field,
            value=parsed.value,
            text=parsed.text,
            line=self.line,
            uncertainty=parsed.uncertainty,
            band=parsed.band,
            about=parsed.about,
            dont_know=parsed.dont_know,
            unit=parsed.unit,
            note=parsed.note,
        )

    def _nought(self, given: str) -> str:
        """Nought with a unit where somebody wrote a bare 0, or none of what may be absent."""
        kind, said = self.field.kind, squashed(given)
        if kind in {*NUMBERS, "offset", "toe"} or not self._fits(0.0):
            return ""
        none = said in NONE and self.field.low == 0.0
        return f"0 {SYSTEMS['metric'][kind]}" if none or said in {"0", "00"} else ""

    def _answer(self, value: str, text: str, note: str = "") -> Answer:
        return Answer(field=self.field, value=value, text=text, line=self.line, note=note)

    def _fits(self, value: float) -> bool:
        low, high = self.field.low, self.field.high
        above = low is None or value >= low - _EDGE * abs(low)
        return above and (high is None or value <= high + _EDGE * abs(high))

    def _outside(self, parsed: Parsed, value: float) -> Fault:
        kind, unit = parsed.kind, parsed.unit
        small = self.field.low is not None and value < self.field.low
        sizes = known(kind)
        number = value / sizes[unit]
        likely = tuple(
            f"{number:.6g} {other}" for other, size in sizes.items() if self._fits(number * size)
        )
        return self.fault(
            f"{show(value, kind, unit, 9)} is too {'small' if small else 'large'}",
            takes=accepted(self.field, unit),
            likely=likely[:2] if unit else (),
        )


def _parsed(given: str, kind: str, rim_width: float | None) -> Parsed:
    if kind == "offset":
        return parse_offset(given, rim_width)
    return parse_toe(given) if kind == "toe" else parse(given, kind)


def shortened(given: object) -> str:
    """A value as given, on one line and at most sixty signs long."""
    try:
        text = str(given)
    except ValueError:
        return "a very long number"
    clean = "".join(sign if sign.isprintable() else " " for sign in text)
    return clean if len(clean) <= 60 else f"{clean[:57]}..."


def _type(given: object) -> str:
    if isinstance(given, dict):
        return "a table"
    if isinstance(given, list):
        return "a list"
    return "a date or time" if isinstance(given, (date, time)) else "no text"
