"""Listening to a person line by line: the words that mean the same at every question."""

import datetime as dt
from collections.abc import Callable, Generator, Sequence
from typing import Final, TypeAlias

from axlewright import units
from axlewright.errors import Fault
from axlewright.rig import FOUND, WHERE, Condition, Field, near, part_meant, read_answer
from axlewright.views import choice_lines, chosen, example_of, not_chosen_line

Listening: TypeAlias = Generator[None, str, str]

LEAVES: Final = frozenset({"later", "quit", "exit", "q", "leave"})
LONGEST_NAME, LONGEST_NOTE = 80, 1000
PARTS: Final = (
    "track-bar bracket",
    "track bar",
    "arm bracket",
    "spring seat",
    "tube",
    "end forging",
    "knuckle",
    "steering arm",
    "tie rod",
    "ball joint",
    "hub",
    "shaft joint",
    "brake hose",
)


class Leaving(Exception):  # noqa: N818
    """The person wants to go on another time."""


class Back(Exception):  # noqa: N818
    """The person wants the question before."""


class Listener:
    """Hears one line at a time; says through ``say`` what has to be said meanwhile."""

    def __init__(self, say: Callable[..., None], today: dt.date) -> None:
        self._say, self._today = say, today

    def line(self, explained: Sequence[str]) -> Listening:
        """One line that answers; a question mark is met with ``explained``."""
        while True:
            said = yield
            word = said.casefold().strip(" .!")
            if word in LEAVES:
                raise Leaving
            if word == "back":
                raise Back
            if word == "help" or (said and not said.strip("? ")):
                self._say(*explained)
                continue
            return said

    def choice(
        self, words: Sequence[str], explained: Sequence[str], empty: str | None = None
    ) -> Listening:
        """One of the words; an empty line gives ``empty`` where that is not None."""
        while True:
            said = yield from self.line(explained)
            if not said and empty is not None:
                return empty
            if (word := chosen(said, words)) is not None:
                return word
            self._say(not_chosen_line(said, words) if said else "This one needs an answer.")

    def condition(self, listed: int) -> Generator[None, str, Condition | None]:
        """Part, what, where, date and note; None where an empty line ends the list."""
        self._say(
            "Which part? A number, or its name in your words." if not listed else "Another part?"
        )
        self._say(*(choice_lines(PARTS) if not listed else ("   An empty line ends the list.",)))
        said: dict[str, str] = {}
        steps = ("part", "what", "where", "date", "note")
        place = 0
        while place < len(steps):
            try:
                got = yield from self._step(steps[place])
            except Back:
                if place == 0:
                    raise
                place -= 1
                self._say(f"Back to: {steps[place]}.")
                continue
            if place == 0 and not got:
                return None
            said[steps[place]] = got
            place += 1
        return Condition(
            part=said["part"],
            what=said["what"],
            where=said["where"],
            date=dt.date.fromisoformat(said["date"]),
            note=said["note"],
        )

    def _step(self, step: str) -> Listening:
        if step == "part":
            return (yield from self._part())
        if step == "what":
            self._say("What was found?", *choice_lines(FOUND))
            return (yield from self.choice(FOUND, ["What was seen, felt or done there."]))
        if step == "where":
            self._say("Where? The vehicle's own left and right.", *choice_lines(WHERE))
            return (yield from self.choice(WHERE, ["Empty where it does not apply."], ""))
        if step == "date":
            return (yield from self._date())
        self._say("A note? What was done, by whom, how it shows. Empty for none.")
        return (yield from self.line(["One line in your own words."]))[:LONGEST_NOTE]

    def _part(self) -> Listening:
        """Name of a part; one that comes near a name of the list, or is unknown, is asked twice."""
        asked = ""
        while True:
            said = yield from self.line(["The part; an empty line ends.", *choice_lines(PARTS)])
            named = (chosen(said, PARTS) or said)[:LONGEST_NAME].strip()
            meant = part_meant(named)
            if (
                not named
                or named in PARTS
                or named == asked
                or (meant.known and not meant.taken_as)
            ):
                return named
            asked = named
            likely = near(named, PARTS, 1, 0.7)
            known = f"Did you mean {likely[0]}?" if likely else "No such part is known here."
            self._say(f"{known} The same words again keep yours; a number takes one of the list.")

    def _date(self) -> Listening:
        example = f"For example: {self._today.isoformat()}"
        self._say(f"When? Year-month-day; empty for today, {self._today.isoformat()}.")
        while True:
            said = yield from self.line([example])
            try:
                when = dt.date.fromisoformat(said) if said else self._today
            except ValueError:
                self._say(f"{said[:40]!r} is no date. {example}")
                continue
            if when <= self._today:
                return when.isoformat()
            self._say(f"{when.isoformat()} lies ahead. When was it seen or done?")


def condition_line(condition: Condition) -> str:
    """One condition in a line: where, what, what was found, when and the note."""
    where = f"{condition.where} " if condition.where else ""
    note = f" ({condition.note})" if condition.note else ""
    when = condition.date.isoformat() if condition.date else "no date"
    return f"{where}{condition.part}, {condition.what}, {when}{note}"


def fault_line(fault: Fault, asked: Field, system: str = "metric") -> str:
    """Say what is wrong with an answer, what is accepted, and an example."""
    takes = full_stop(fault.accepted.partition(", such as")[0])
    if meant := _meant(fault, asked):
        return f"{full_stop(fault.problem)} Did you mean {' or '.join(meant)}? {takes}"
    near = f" Did you mean {' or '.join(fault.near)}?" if fault.near else ""
    return f"{full_stop(fault.problem)}{near} {takes} For example: {example_of(asked, system)}"


def _meant(fault: Fault, asked: Field) -> list[str]:
    """A bare number in the units that people use here, where it then makes sense for the field."""
    if not fault.problem.endswith(("has no unit", "whether it is an ET or a backspacing")):
        return []
    if asked.kind == "offset":
        bare = fault.given[-1:].isdigit()
        forms = [f"ET {fault.given}" + " mm" * bare]
        forms.append(f"backspacing {fault.given}{' in' * bare} on an 8 in rim")
    else:
        usual = [units.SYSTEMS[system][asked.kind] for system in ("metric", "us")]
        short = ["cm"] if asked.kind == "length" else []
        forms = [f"{fault.given} {unit}" for unit in [*usual[:1], *short, *usual[1:]]]
    return [form for form in forms if not isinstance(read_answer(asked, form), Fault)]


def full_stop(text: str) -> str:
    """Text as a sentence of its own."""
    plain = text.strip().rstrip(".")
    return f"{plain[:1].upper()}{plain[1:]}." if plain else ""
