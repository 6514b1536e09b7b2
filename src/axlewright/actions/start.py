"""Ask for a rig, one question at a time: a conversation that takes text in and gives text out."""

import datetime as dt
from collections.abc import Callable, Generator
from typing import Final, TypeAlias

from axlewright.actions.draft import BY_PATH, Draft, number_of, told_of
from axlewright.actions.first_answer import FirstAnswer
from axlewright.actions.listening import (
    LONGEST_NAME,
    Back,
    Leaving,
    Listener,
    condition_line,
    fault_line,
    full_stop,
)
from axlewright.errors import BadFile, Fault
from axlewright.rig import FIRST_FIELDS, MAY_BE_UNKNOWN, Answer, Field, Finding, findings, stops
from axlewright.views import (
    COMMANDS,
    choice_lines,
    chosen,
    drive_lines,
    echo_line,
    example_of,
    explanation_lines,
    field_name,
    missing_line,
    not_chosen_line,
    options,
    question_lines,
)

Talk: TypeAlias = Generator[None, str, None]

AXLE: Final = Field(
    path="rig.axle",
    kind="word",
    asks="Which axle is it?",
    how="One file describes one axle of one vehicle.",
    example="front",
    choices=("front", "rear"),
    required=True,
)
END: Final = "the end"
LAST: Final = max(each.question or 0 for each in FIRST_FIELDS)
NAME: Final = Field(
    path="rig.name",
    kind="text",
    asks="What do you call this rig?",
    how="Any name will do; it stands at the head of the answer.",
    example="Heron",
)


class Conversation:
    """One talk about one rig; ``save`` is given the text of the file after every answer."""

    def __init__(
        self,
        draft: Draft,
        save: Callable[[str], None],
        *,
        today: dt.date,
        everything: bool = False,
        first_answer: FirstAnswer | None = None,
    ) -> None:
        self.draft, self.done = draft, False
        self._save, self._everything = save, everything
        self._listener = Listener(self._say, today)
        self._answer = first_answer or FirstAnswer()
        self._out: list[str] = []
        self._queue: list[str] = []
        self._aside: set[str] = set()
        self._passed: set[str] = set()
        self._twice = self._ended = False
        self._named = bool(draft.axle)
        self._more: list[str] = []  # optional paths in the order in which they were asked
        self._talk = self._whole()

    @property
    def stopped(self) -> bool:
        """Whether what was found says: do not drive."""
        return bool(stops(findings(self.draft.condition_rig())))

    @property
    def answered(self) -> int:
        """How many of the required answers are there."""
        return len(self.draft.required()) - len(self.draft.missing()) if self.draft.axle else 0

    def begin(self) -> str:
        """Open the talk: what to say first, the first question included."""
        return self._go(None)

    def hear(self, line: str) -> str:
        """Take one line; gives what to say next."""
        if self.done:
            return ""
        clean = "".join(sign if sign.isprintable() else " " for sign in line)
        return self._go(" ".join(clean.split()))

    def leave(self) -> str:
        """End the talk here; everything answered so far has been kept."""
        if not self.done:
            self.done = True
            self._talk.close()
            self._say(self._state_line())
        return self._told()

    def _go(self, said: str | None) -> str:
        try:
            if said is None:
                next(self._talk)
            else:
                self._talk.send(said)
        except StopIteration:
            self.done = True
        except Leaving:
            self.done = True
            self._say(self._state_line())
        return self._told()

    def _told(self) -> str:
        out, self._out = self._out, []
        return "\n".join(out)

    def _say(self, *lines: str) -> None:
        self._out += lines

    def _state_line(self) -> str:
        if not self.draft.axle:
            return "Nothing has been answered yet."
        count = len(self.draft.required())
        open_ones = [field_name(BY_PATH[path]) for path in self.draft.missing()]
        rest = f" Next: {open_ones[0]}." if open_ones else ""
        return f"Kept: {self.answered} of {count} answers.{rest}"

    def _whole(self) -> Talk:
        self._open()
        while (key := self._next()) is not None:
            try:
                yield from self._question(key)
            except Back:
                self._step_back(key)
        if self.draft.missing():
            self._say(missing_line(self.draft.missing()), self._state_line())

    def _open(self) -> None:
        if not self.draft.axle:
            self._say(COMMANDS, "")
            return
        self._say(f"{self.draft.name}, {self.draft.axle} axle. {self._state_line()}", COMMANDS, "")
        whole = not self.draft.missing() and not self.draft.clashes()
        if self.stopped and not whole:
            self._say(*self._stop_lines(), "")
        for clash in self.draft.clashes():
            self._say(f"Two answers do not fit: {clash.problem}. {full_stop(clash.remedy)}", "")
            if clash.path in BY_PATH:
                self._queue = [clash.path]
                break
        if whole:
            self._finish()

    def _next(self) -> str | None:
        if self._queue:
            return self._queue.pop(0)
        if not self.draft.axle:
            return AXLE.path
        if not self._named:
            return NAME.path
        return self._next_field()

    def _next_field(self) -> str | None:
        waiting = self.draft.missing()
        ready = [path for path in waiting if path not in self._aside]
        if ready:
            return ready[0]
        if waiting and not self._twice:
            self._twice, self._aside = True, set()
            self._say("What was set aside comes again.", "")
            return waiting[0]
        if waiting or self._ended:
            return None
        return (self._next_more() if self._everything else None) or END

    def _next_more(self) -> str | None:
        for path in self._answer.moving(self.draft):
            if path not in self.draft.answers and path not in self._passed | self._aside:
                if path not in self._more:
                    self._more.append(path)
                return path
        self._say("There is nothing more to ask.")
        return None

    def _step_back(self, key: str) -> None:
        before = [AXLE.path, NAME.path, *self.draft.required(), *self._more]
        place = before.index(key) if key in before else len(before)
        known = [AXLE.path, NAME.path, *self.draft.answers, *self._passed]
        earlier = [path for path in before[:place] if path in known]
        if not earlier:
            self._say("This is the first question.", "")
        self._queue = [earlier[-1] if earlier else key]

    def _question(self, key: str) -> Talk:
        if key == AXLE.path:
            yield from self._ask_axle()
        elif key == NAME.path:
            yield from self._ask_name()
        elif key == END:
            yield from self._ask_end()
        else:
            yield from self._ask(BY_PATH[key])

    def _ask_end(self) -> Talk:
        self._say(f"Anything to change? A number from 1 to {LAST}; an empty line ends.")
        said = yield from self._listener.line(["The number of a question asks it again."])
        asked = [BY_PATH[path] for path in self.draft.required()]
        self._queue = [each.path for each in asked if str(each.question) == said]
        if not said:
            self._ended = True
        elif not self._queue:
            self._say(f"{said[:40]!r} is not the number of a question.")

    def _ask_axle(self) -> Talk:
        self._say(*question_lines(AXLE, self.draft.axle))
        axle = yield from self._listener.choice(AXLE.choices, [AXLE.how], self.draft.axle or None)
        self._say(f"Understood: the {axle} axle.", "")
        self.draft.axle = axle
        lost = [path for path in self.draft.answers if not self.draft.belongs(BY_PATH[path])]
        for path in lost:
            del self.draft.answers[path]
            self._say(f"Taken out, for a {axle} axle has none: {field_name(BY_PATH[path])}.")
        self._keep()

    def _ask_name(self) -> Talk:
        self._say(*question_lines(NAME, self.draft.name))
        said = yield from self._listener.line([NAME.how])
        self.draft.name = said[:LONGEST_NAME].strip() or self.draft.name
        self._named = True
        self._say(f"Understood: {self.draft.name}.", "")
        self._keep()

    def _ask(self, asked: Field) -> Talk:
        path, optional = asked.path, not asked.required
        open_ok = optional or path in MAY_BE_UNKNOWN
        said: str | None = None
        while True:
            old = self.draft.answers.get(path)
            if said is None:
                known = ("don't know" if old.dont_know else old.text) if old else ""
                system = self.draft.system()
                self._say(*question_lines(asked, known, optional=optional, system=system))
            said = yield from self._listener.line(explanation_lines(asked, open_ok=open_ok))
            if not said and (old or optional):
                if old is None:
                    self._passed.add(path)
                self._say("")
                return
            answer = self._read(asked, said, open_ok=open_ok)
            if answer is None:
                continue
            if path == "rig.condition":
                kept = yield from self._kept_condition(answer)
            else:
                kept = yield from self._kept(asked, answer)
            if kept:
                return
            said = None

    def _read(self, asked: Field, said: str, *, open_ok: bool) -> Answer | None:
        """Read one line; says what is wrong with it and gives None where it cannot be used."""
        if not said:
            example = example_of(asked, self.draft.system())
            self._say(f"This one needs an answer. For example: {example}")
            return None
        words = options(asked)
        read = self.draft.read(asked, chosen(said, words) or said)
        if isinstance(read, Fault):
            refused = fault_line(read, asked, self.draft.system())
            self._say(not_chosen_line(said, words) if words else refused)
            return None
        if read.dont_know and not open_ok:
            self._say(
                "The answer hangs on this one, so it cannot be left open.", f"How: {asked.how}"
            )
            if asked.path == "rig.condition":
                self._say("If nobody has looked, that is an answer too: never looked at.")
            elif words:
                self._say('Take what comes nearest; "later" leaves for now.')
            else:
                self._say('Rough will do ("about ..."), and "later" leaves for now.')
            return None
        return read

    def _kept(self, asked: Field, answer: Answer) -> Generator[None, str, bool]:
        """Keep an answer, unless it contradicts those already there; False asks again."""
        path = asked.path
        while True:
            tried = self.draft.with_answer(path, answer)
            system = tried.system()
            before = {each.problem for each in self.draft.with_answer(path, None).clashes(system)}
            new = [clash for clash in tried.clashes(system) if clash.problem not in before]
            if not new:
                self._store(answer)
                return True
            clash = new[0]
            others = tried.behind(clash, path)
            old = self.draft.answers.get(path)
            menu = [
                "measure or say this one again",
                *(f"go back to {field_name(BY_PATH[o])}: {tried.answers[o].text}" for o in others),
                f"keep the old answer: {old.text}" if old else "set this one aside for now",
            ]
            self._say(f"That does not fit: {clash.problem}.", full_stop(clash.remedy))
            self._say(*choice_lines(menu))
            said = yield from self._listener.line(["Give a number, or the answer again."])
            picked = chosen(said, menu) if said else None
            if picked is None:
                again = self._read(asked, said, open_ok=False) if said else None
                answer = again or answer
            elif picked == menu[0]:
                return False
            elif picked == menu[-1]:
                self._say("The old answer stands." if old else "Set aside; it comes again.", "")
                self._aside |= set() if old else {path}
                return True
            else:
                self._queue = [others[menu.index(picked) - 1], path]
                return True

    def _store(self, answer: Answer) -> None:
        path = answer.field.path
        self.draft.answers[path] = answer
        self._aside.discard(path)
        self._keep()
        self._say(echo_line(answer.field, number_of(answer), answer.text))
        self._say(*(f"   {line}" for line in told_of(self.draft, path)))
        behind = "Behind the STOP: " if self.stopped else ""
        self._say(*(f"   {behind}{line}" for line in self._answer.so_far(self.draft, path)), "")
        if not self.draft.missing() and answer.field.required:
            self._finish()

    def _keep(self) -> None:
        self._save(self.draft.text())

    def _kept_condition(self, answer: Answer) -> Generator[None, str, bool]:
        if answer.value != "as listed":
            kept = yield from self._kept(answer.field, answer)
            if kept and "rig.condition" in self.draft.answers:
                self._say(*drive_lines(findings(self.draft.condition_rig())), "")
            return kept
        self._say("List each thing that was mended or hurts; an empty line at the part ends.")
        self._say(*(f"   Listed: {condition_line(one)}" for one in self.draft.conditions))
        try:
            while (
                found := (yield from self._listener.condition(len(self.draft.conditions)))
            ) is not None:
                self.draft.conditions.append(found)
                self.draft.answers["rig.condition"] = answer
                self._keep()
                self._say(f"Understood: {condition_line(found)}")
                alone = Draft(name=self.draft.name, axle=self.draft.axle, conditions=[found])
                judged = findings(alone.condition_rig())
                self._say(*(_stop_band(judged) if stops(judged) else drive_lines(judged)), "")
        except Back:
            self._say("")
            return False
        if not self.draft.conditions:
            self._say("Nothing is listed yet.", "")
            return False
        self._store(answer)
        return True

    def _stop_lines(self) -> list[str]:
        return _stop_band(stops(findings(self.draft.condition_rig())))

    def _finish(self) -> None:
        """Every required answer is there: the first answer, behind what the looks say."""
        made = self._answer.whole(self.draft)
        if isinstance(made, BadFile):
            self._say(str(made))
            return
        if self.stopped:
            self._say(*self._stop_lines(), "", "Behind that, for when it has been put right:")
        self._say(*made, "")


def _stop_band(found: tuple[Finding, ...]) -> list[str]:
    band = "#" * 78
    return [band, *drive_lines(found), "No figure lifts this.", band]
