"""Everything that the bay does for a visitor: rigs in the store joined with the studies."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_cache import Answers, Latest
from axlewright.actions.bay_changes import change_text, compared, keep_change, let_go, with_hubs
from axlewright.actions.bay_conditions import add_condition, listed_conditions, settle_condition
from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import AxleCard, KeptChange, Listed, Said, cleaned, slug_of
from axlewright.actions.draft import BY_PATH, Draft, read_draft
from axlewright.actions.example_rigs import example_text
from axlewright.actions.first_answer import FirstAnswer, first_line
from axlewright.actions.listening import LONGEST_NAME
from axlewright.actions.report import questions_paper, report_paper
from axlewright.actions.saying import stop_lines, whole_or_raise
from axlewright.actions.standing import copied, questions
from axlewright.actions.take_answers import take_answers, take_back
from axlewright.errors import AxlewrightError, BadFile, UnknownEntry
from axlewright.rig import FIELDS, change_from_text
from axlewright.strength import DRAWS, Assessment, Comparison

if TYPE_CHECKING:
    from axlewright.actions.bay_align import ReadingsSaid
    from axlewright.actions.bay_geometry import Moves, Studies
    from axlewright.actions.bay_order import OrderDesk
    from axlewright.actions.choosing import Choosing
    from axlewright.actions.log import Log
    from axlewright.actions.standing import Session
    from axlewright.actions.swap_job import SwapDesk
    from axlewright.geometry import Alignment
    from axlewright.records import Entry, Store
    from axlewright.rig import Rig

AXLES: Final = ("front", "rear")
PAPERS: Final = ("report", "sheet", "take.html", "take.pdf")


class Bay:
    """One bay over one store; every method may be called from any thread."""

    def __init__(self, store: "Store") -> None:
        self._store = store
        self._desk = Desk(store)
        self._lines: Latest[tuple[str, int, str], str] = Latest(64)
        self._orders: Latest[tuple[str, int], list[str]] = Latest(64)
        self._talks: Latest[str, FirstAnswer] = Latest(64)
        self._answers = Answers()
        self._swaps: Latest[str, SwapDesk] = Latest(1)
        self._studies: Latest[str, Studies] = Latest(1)
        self._choosing: Latest[str, Choosing] = Latest(1)

    @classmethod
    def open(cls, folder: Path) -> "Bay":
        """Open the bay over the store of a folder; a new one is made where there is none."""
        from axlewright.records import Store

        return cls(Store.open(folder / "axlewright.sqlite"))

    def close(self) -> None:
        """Let go of the store."""
        self._store.close()

    def log(self) -> "Log":
        """The log over the same store: looks, readings, trips, work and parts."""
        from axlewright.actions.log import Log

        return Log(self._store, desk=self._desk)

    def swap(self) -> "SwapDesk":
        """The swaps over the same store: begun, ticked step by step, closed."""
        from axlewright.actions.swap_job import SwapDesk

        return self._swaps.get("", lambda: SwapDesk(self._store, self._desk))

    # -- axles ---------------------------------------------------------------------------------

    def axles(self) -> list[AxleCard]:
        """Every axle, the last touched first."""
        cards = []
        for row in self._store.rigs():
            standing = self._desk.standing(row.slug)
            count, of = questions(FIELDS, standing.draft)
            cards.append(
                AxleCard(
                    slug=row.slug,
                    title=standing.draft.name,
                    axle=standing.draft.axle,
                    answered=count,
                    questions=of,
                    touched=standing.touched,
                    stop=self._stopped(row.slug, standing.draft),
                    number=standing.number,
                )
            )
        return cards

    def _stopped(self, slug: str, draft: Draft) -> bool:
        """Whether anything says: do not drive; a look, a reading, a shake or a condition."""
        if stop_lines(draft):
            return True
        return any(each.state == "stop" for each in self.log().drive(slug).reasons)

    def begin(self, name: str, axle: str, device: str = "") -> str:
        """Begin an axle; gives its slug."""
        title = cleaned(name)[:LONGEST_NAME].strip()
        if not title or axle not in AXLES:
            raise AxlewrightError(
                "An axle needs a name, and to be front or rear.", remedy="Give both."
            )
        return self._store.begin(slug_of(title, axle), title, axle, device=cleaned(device))

    def take_file(self, text: bytes, filename: str, device: str = "") -> str:
        """Take in a rig file, half answered or whole; raises `BadFile` with every fault."""
        draft = read_draft(text, cleaned(filename)[:LONGEST_NAME] or "rig.toml")
        whole_or_raise(draft, cleaned(filename)[:LONGEST_NAME] or "rig.toml")
        self._store.keep_upload(text, filename)
        return self._begun_from(draft, text.decode("utf-8-sig"), device)

    def _begun_from(self, draft: Draft, text: str, device: str) -> str:
        from axlewright.records import New

        slug = slug_of(draft.name, draft.axle)
        file = New(kind="file", content=text)
        return self._store.begin(slug, draft.name, draft.axle, [file], device=cleaned(device))

    def copy_example(self, name: str, device: str = "") -> str:
        """Begin an axle as a copy of one of the invented examples; gives its slug."""
        text = example_text(name)
        return self._begun_from(read_draft(text), text, device)

    def rename(self, slug: str, name: str, device: str = "") -> int:
        """Call a rig by another name; its address stays."""
        from axlewright.records import New

        title = cleaned(name)[:LONGEST_NAME].strip()
        if not title:
            raise AxlewrightError("An axle needs a name.", remedy="Give one.")
        return self._store.add(slug, [New(kind="name", text=title)], device=cleaned(device))

    # -- answers -------------------------------------------------------------------------------

    def draft(self, slug: str) -> Draft:
        """Everything said so far about a rig, the caller's own copy."""
        return copied(self._desk.standing(slug).draft)

    def rig(self, slug: str) -> "Rig | None":
        """Checked rig as it stands, None until every required answer is there."""
        return self._desk.rig(slug)

    def text(self, slug: str) -> str:
        """Text of the rig's file as far as it is answered."""
        return self._desk.standing(slug).draft.text()

    def unread(self, slug: str) -> dict[str, str]:
        """Answers that an earlier version took and this one does not read, as written."""
        return dict(self._desk.standing(slug).unread)

    def answer(
        self, slug: str, path: str, text: str, device: str = "", *, key: str = "", tell: bool = True
    ) -> Said:
        """Take one answer; it is kept only if it reads and fits the others.

        ``key`` is the device's own name for this entry: sent twice, it is entered once.
        Without ``tell`` what gives first is left out, for it takes a while.
        """
        return self.answers(slug, {path: text}, device, key=key, tell=tell)[path]

    def answers(
        self,
        slug: str,
        texts: Mapping[str, str],
        device: str = "",
        *,
        key: str = "",
        tell: bool = True,
    ) -> dict[str, Said]:
        """Take some answers together, all or none: what only fits together is said together."""
        said = take_answers(self._desk, slug, texts, device, key)
        if not tell:
            return said
        return {
            path: replace(one, so_far=self.so_far(slug, path)) if one.stored else one
            for path, one in said.items()
        }

    def clear(self, slug: str, path: str, device: str = "", *, key: str = "") -> Said:
        """Take one answer back; that it was once given stays entered."""
        return take_back(self._desk, slug, path, device, key)

    def add_condition(
        self, slug: str, said: Mapping[str, str], device: str = "", *, key: str = ""
    ) -> Said:
        """List one thing that was mended or hurts: part, what, where, date and note as texts."""
        taken = add_condition(self._desk, slug, said, device, key)
        if not (taken.stored and taken.complete):
            return taken
        return replace(taken, so_far=self.so_far(slug, "rig.condition"))

    def settle_condition(self, slug: str, listed: str, device: str = "", *, key: str = "") -> Said:
        """Take one thing off the list by its key; with the last one the question is open again."""
        return settle_condition(self._desk, slug, listed, device, key)

    def conditions(self, slug: str) -> list[Listed]:
        """Things listed as mended or hurting, each with the key that takes it off the list."""
        return listed_conditions(self._desk.standing(slug))

    def entries_after(self, slug: str, number: int) -> "list[Entry]":
        """Entries about a rig later than a number, for a second device."""
        return self._store.entries_after(slug, number)

    def last_entry(self, slug: str) -> int:
        """Number of the last entry about a rig; 0 where there is none such."""
        return self._store.last(slug)

    # -- the answer ----------------------------------------------------------------------------

    def assessment(self, slug: str, draws: int = DRAWS) -> Assessment | None:
        """Assessment of a rig, None until every required answer is there.

        Raises `BadFile` where a rig kept by an earlier version no longer makes sense.
        """
        rig = self._desk.rig(slug)
        return None if rig is None else self._answers.assessment(rig, draws)

    def so_far(self, slug: str, path: str) -> tuple[str, ...]:
        """What gives first as far as is known, after the answer to one field."""
        if path not in BY_PATH:
            return ()
        draft = self._desk.standing(slug).draft
        talk = self._talks.get(slug, lambda: FirstAnswer(self._answers.assessment))
        told: Sequence[str] | BadFile = talk.so_far(draft, path)
        if not told and not draft.missing():
            told = talk.whole(draft)
        return () if isinstance(told, BadFile) else tuple(told)

    def so_far_line(self, slug: str, system: str = "metric") -> str:
        """What gives first as far as is known, whatever was said last; empty at the beginning."""
        standing = self._desk.standing(slug)
        return self._lines.get(
            (slug, standing.number, system),
            lambda: first_line(standing.draft, self._answers.assessment, system),
        )

    def next_fields(self, slug: str) -> list[str]:
        """Paths in the order to ask: the thirteen questions', then by how much each matters.

        The second part is there once the first is answered.
        """
        standing = self._desk.standing(slug)
        asker = FirstAnswer(self._answers.assessment)
        more = self._orders.get(
            (slug, standing.number),
            lambda: [] if standing.draft.missing() else asker.moving(standing.draft),
        )
        return [*standing.draft.required(), *more]

    # -- changes -------------------------------------------------------------------------------

    def comparison(self, slug: str, change: str, draws: int = DRAWS) -> Comparison:
        """A rig before and after the change of a file's text; raises `BadFile` with its faults."""
        return compared(self._desk, self._answers, slug, change, draws)

    def quick(self, slug: str, values: Mapping[str, str]) -> Comparison:
        """The middle alone of a rig before and after values by path, for a slider that moves.

        A tyre of another height brings the hubs' heights along, as in `whole_values`.
        """
        text = change_text("the change", self.whole_values(slug, values))
        return compared(self._desk, self._answers, slug, text, 0)

    def whole_values(self, slug: str, values: Mapping[str, str]) -> dict[str, str]:
        """Values of a change with what they bring along: a tyre's height moves the hubs."""
        return with_hubs(self._desk, slug, values)

    def keep_change(
        self, slug: str, name: str, change: str, device: str = "", *, key: str = ""
    ) -> KeptChange:
        """Keep a change beside a rig, under a name; raises `BadFile` where it cannot be made."""
        return keep_change(self._desk, slug, name, change, device, key)

    def let_go(self, slug: str, number: int, device: str = "", *, key: str = "") -> None:
        """Keep a change no longer."""
        let_go(self._desk, slug, number, device, key)

    def changes(self, slug: str) -> list[KeptChange]:
        """Changes kept beside a rig, the earliest first."""
        return list(self._desk.standing(slug).changes)

    # -- geometry ------------------------------------------------------------------------------

    def moves(self, slug: str, change: str = "") -> "Moves | None":
        """How an axle moves, after the text of a change where one is given; None until answered.

        Raises `AxlewrightError` where a rod cannot reach, with its name and by how much.
        """
        from axlewright.actions.bay_geometry import Studies

        rig = self._desk.rig(slug)
        if rig is None:
            return None
        studies = self._studies.get("travel", Studies)
        return studies.moves(rig, change_from_text(change) if change else None)

    # -- the order sheet -----------------------------------------------------------------------

    def ordering(self) -> "OrderDesk":
        """The order sheets of this bay's axles."""
        from axlewright.actions.bay_order import OrderDesk

        return OrderDesk(self._desk)

    # -- choices -------------------------------------------------------------------------------

    def choosing(self) -> "Choosing":
        """Choices of this bay's axles: they go on while the visitor is away."""
        from axlewright.actions.choosing import Choosing

        return self._choosing.get("choices", Choosing)

    # -- an alignment --------------------------------------------------------------------------

    def reading(self, slug: str) -> "Session":
        """The alignment being read, left and taken up again."""
        return self._desk.standing(slug).reading

    def readings_before(self, slug: str) -> "tuple[Session, ...]":
        """Alignments that were read and closed, the earliest first."""
        return self._desk.standing(slug).sessions

    def read(
        self, slug: str, texts: Mapping[str, str], device: str = "", *, key: str = ""
    ) -> "ReadingsSaid":
        """Take some readings of an alignment together, all or none."""
        from axlewright.actions.bay_align import take_readings

        return take_readings(self._desk, slug, texts, device, key)

    def alignment(self, slug: str, session: "Session | None" = None) -> "Alignment | None":
        """Judge the readings of an axle, or those of an earlier time; None until answered."""
        from axlewright.actions.bay_align import alignment_of

        return alignment_of(self._desk, slug, session)

    def readings_file(self, slug: str) -> str:
        """The readings as the text of a file that `axlewright align` reads."""
        from axlewright.actions.bay_align import readings_file

        return readings_file(self._desk, slug)

    def close_reading(self, slug: str, device: str = "", *, key: str = "") -> None:
        """Close an alignment: it stays on record, with what it said, and the next begins anew."""
        from axlewright.actions.bay_align import close_session
        from axlewright.rig import Remark
        from axlewright.views import align_sentence

        found = self.alignment(slug)
        close_session(self._desk, slug, device, key)
        if found is not None:
            note = f"alignment read: {align_sentence(found)}"
            self.log().enter(slug, Remark(about="alignment"), note=note, key=f"{key}-told"[:70])

    # -- paper ---------------------------------------------------------------------------------

    def paper(self, slug: str, kind: str, system: str = "metric", change: str = "") -> bytes:
        """Give a rig on paper or to take along: report, sheet, take.html or take.pdf.

        A ``change`` (the text of its file) stands beside the rig in a report; what is taken
        along is then the rig after it.
        """
        if kind not in PAPERS:
            raise UnknownEntry(f"There is no paper {kind[:40]!r}.", remedy=", ".join(PAPERS))
        if kind == "sheet":
            return questions_paper(self._desk.standing(slug).draft.axle)
        answer = self.comparison(slug, change) if change else self.assessment(slug)
        if answer is None:
            raise AxlewrightError(
                "There is no answer to print yet: questions are still open.",
                remedy="Answer the rest first, or print the sheet of questions.",
            )
        if kind == "report":
            return report_paper(answer, system)
        from axlewright.actions.take import take_html, take_pdf

        shown = answer.after if isinstance(answer, Comparison) else answer
        made = take_html if kind == "take.html" else take_pdf
        return made(shown, system, met=self.log().met(slug))
