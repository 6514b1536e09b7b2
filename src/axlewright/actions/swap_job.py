"""A swap under way on a rig in the store: begun, ticked step by step, left and resumed, closed.

Whatever page or command asks, the gates stand here: what may not be ticked is refused with every
reason, and nothing is entered.
"""

import datetime as dt
import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_cache import Latest
from axlewright.actions.bay_desk import Desk
from axlewright.actions.draft import Draft
from axlewright.actions.log import LONGEST_NOTE, Log
from axlewright.actions.standing import Standing, SwapEntry
from axlewright.actions.swap_entries import (
    LONGEST_TEXT,
    RECORD,
    folded_entries,
    latest,
    line_news,
    new_entry,
    refused,
    running,
    short_text,
    torques_set,
)
from axlewright.actions.swap_plan import PlanAnswer, steps_of
from axlewright.actions.swap_taken import TAKEN, going, taking_on
from axlewright.errors import AxlewrightError
from axlewright.rig import Happening, Job, LookState, LookTaken, change_from_text, rig_from_text
from axlewright.swap import Plan, Progress, leave_refusals, planned, refusals

if TYPE_CHECKING:
    from axlewright.records import New, Store

BEFORE_DRIVING, APART = "before_driving", "apart_looks"
APART_OCCASION: Final = "apart"


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """A swap as it stands: the plan, how far it has come, since when, and looks not yet taken.

    ``change`` is the text of the change that it makes, empty where there is none; ``taken`` tells
    whether the rig has taken on its numbers, ``going`` is what will then go with the old part.
    """

    answer: PlanAnswer
    number: int
    since: dt.datetime
    photos: tuple[str, ...]
    unseen: tuple[str, ...]
    closed: bool
    change: str = ""
    taken: bool = False
    going: tuple[str, ...] = ()

    @property
    def plan(self) -> Plan:
        """Its plan."""
        return self.answer.plan

    @property
    def progress(self) -> Progress:
        """How far it has come."""
        return self.answer.progress


class SwapDesk:
    """Swaps over one store; every method may be called from any thread."""

    def __init__(self, store: "Store", desk: Desk) -> None:
        self._desk = desk
        self._log = Log(store, desk=desk)
        self._store = store
        self._plans: Latest[tuple[str, int], Plan] = Latest(32)

    # -- beginning -----------------------------------------------------------------------------

    def preview(
        self,
        slug: str,
        change: str,
        *,
        people: int = 2,
        skill: str = "practised",
        said: Mapping[str, str] | None = None,
        kind: str = "",
    ) -> Plan:
        """Plan of a change (the text of its file) on a rig as it stands, without beginning it."""
        return self._planned(self._rig_text(slug), change, people, skill, dict(said or {}), kind)

    def begin(
        self,
        slug: str,
        change: str,
        *,
        people: int = 2,
        skill: str = "practised",
        said: Mapping[str, str] | None = None,
        kind: str = "",
        device: str = "",
        key: str = "",
    ) -> None:
        """Begin a swap; one at a time. Rig and change are kept as they are told now."""
        from axlewright.records import New

        rig = self._rig_text(slug)
        told = dict(said or {})
        self._planned(rig, change, people, skill, told, kind)
        text = json.dumps({"people": people, "skill": skill, "kind": kind, "said": told})
        news = [
            New(kind="swap", path="rig", content=rig),
            New(kind="swap", path="change", content=change or "-"),
            New(kind="swap", path="begin", text=text),
        ]

        def trial(standing: Standing) -> Draft | AxlewrightError:
            if running(standing.swap):
                return AxlewrightError(
                    "A swap is under way on this axle.", remedy="Go on with it, or put it aside."
                )
            return standing.draft

        self._enter(slug, news, trial, device, key)

    def put_aside(self, slug: str, reason: str, device: str = "", key: str = "") -> None:
        """End a swap that is not gone on with; what was entered stays."""
        self._say(slug, "aside", {"reason": short_text(reason)}, device, key)

    def now(self, slug: str) -> Swap | None:
        """The swap under way, or the last that was closed; None where there is none."""
        standing = self._desk.standing(slug)
        return self._swap(slug, standing)

    def _swap(self, slug: str, standing: Standing) -> Swap | None:
        from axlewright.views import stop_lines

        entries = latest(standing.swap)
        if not entries:
            return None
        begun = next(each for each in entries if each.path == "begin")
        plan = self._plans.get((slug, begun.number), lambda: self._from(entries))
        progress, photos = folded_entries(plan, entries)
        text = next(each.text for each in entries if each.path == "change")
        change = "" if text == "-" else text
        closed, taken = RECORD in progress.done, any(each.path == TAKEN for each in entries)
        waits = closed and not taken and bool(change)
        return Swap(
            answer=PlanAnswer(
                plan=plan, progress=progress, stops=stop_lines(self._log.drive(slug))
            ),
            number=begun.number,
            since=begun.at,
            photos=photos,
            unseen=self._unseen(slug, plan, begun.at),
            closed=closed,
            change=change,
            taken=taken,
            going=going(standing.draft, change) if waits else (),
        )

    def _from(self, entries: Sequence[SwapEntry]) -> Plan:
        texts = {each.path: each.text for each in entries if each.path in {"rig", "change"}}
        said = json.loads(next(each.text for each in entries if each.path == "begin"))
        return self._planned(
            texts["rig"], texts["change"], said["people"], said["skill"], said["said"], said["kind"]
        )

    def _planned(
        self, rig: str, change: str, people: int, skill: str, said: dict[str, str], kind: str
    ) -> Plan:
        before = rig_from_text(rig)
        changes = [] if change in {"", "-"} else [change_from_text(change)]
        steps = steps_of(before, changes)
        return planned(before, steps, people=people, skill=skill, said=said, kind=kind)

    def _unseen(self, slug: str, plan: Plan, since: dt.datetime) -> tuple[str, ...]:
        if not plan.looks:
            return ()
        seen = {
            kept.body.look
            for kept in self._log.history(slug, ["look"])
            if isinstance(kept.body, LookTaken) and kept.at >= since
        }
        return tuple(each.key for each in plan.looks if each.key not in seen)

    def _rig_text(self, slug: str) -> str:
        standing = self._desk.standing(slug)
        if standing.draft.missing():
            raise AxlewrightError(
                "A swap is planned for a whole axle, and answers are still missing.",
                remedy="Answer the rest of the thirteen questions first.",
            )
        return standing.draft.text()

    # -- going on ------------------------------------------------------------------------------

    def refusals(self, slug: str, step: str, *, photo: bool = False) -> tuple[str, ...]:
        """Why a step may not be ticked now; nothing where it may."""
        swap = self._must(slug, self._desk.standing(slug))
        return self._against(slug, swap, step, photo=photo)

    def _against(self, slug: str, swap: Swap, step: str, *, photo: bool) -> tuple[str, ...]:
        stopped = self._log.drive(slug).state == "stop"
        why = refusals(swap.plan, swap.progress, step, photo=photo, stopped=stopped)
        if step == APART and swap.unseen:
            titles = {each.key: each.title for each in swap.plan.looks}
            open_ones = "; ".join(titles[key] for key in swap.unseen)
            why += (f"Not looked at yet: {open_ones}.",)
        return why

    def tick(
        self,
        slug: str,
        step: str,
        *,
        photo: bytes | None = None,
        photo_name: str = "",
        note: str = "",
        yes: Sequence[str] = (),
        device: str = "",
        key: str = "",
    ) -> None:
        """Tick a step; raises with every reason where it may not be ticked yet."""
        swap = self._must(slug, self._desk.standing(slug))
        if photo is not None:
            from axlewright.records import photo_type

            photo_type(photo)  # refuses what is none
        answered = frozenset(yes) & {each.key for each in swap.plan.questions}

        def with_yes(now: Swap) -> Swap:
            if step != BEFORE_DRIVING:
                return now
            progress = replace(now.progress, yes=answered)
            return replace(now, answer=replace(now.answer, progress=progress))

        why = self._against(slug, with_yes(swap), step, photo=photo is not None)
        if why:
            raise refused(why)
        digest = "" if photo is None else self._store.keep_upload(photo, photo_name)
        said = {"photo": digest, "note": short_text(note), "yes": sorted(answered)}

        def trial(standing: Standing) -> Draft | AxlewrightError:
            now = with_yes(self._must(slug, standing))
            again = self._against(slug, now, step, photo=photo is not None)
            return refused(again) if again else standing.draft

        if step == BEFORE_DRIVING:
            self._begins(slug, swap, device)
        elif step == RECORD:
            self._close(slug, swap, note, device)
        self._enter(slug, [new_entry(f"tick/{step}", said)], trial, device, key)

    def leave_out(self, slug: str, step: str, reason: str, device: str = "", key: str = "") -> None:
        """Leave out a step that this rig does not need, with the reason."""

        def trial(standing: Standing) -> Draft | AxlewrightError:
            now = self._must(slug, standing)
            why = leave_refusals(now.plan, now.progress, step, reason)
            return refused(why) if why else standing.draft

        said = {"reason": short_text(reason)}
        self._enter(slug, [new_entry(f"leave/{step}", said)], trial, device, key)

    def undo(self, slug: str, step: str, device: str = "", key: str = "") -> None:
        """Take a tick back, and with it whatever was done after that step."""
        swap = self._must(slug, self._desk.standing(slug))
        if not swap.progress.behind(step):
            raise AxlewrightError("That step is not ticked.", remedy="See the page again.")
        if swap.closed:
            raise AxlewrightError("This swap is closed.", remedy="Begin another one.")
        self._say(slug, f"undo/{step}", {}, device, key)

    def value(
        self, slug: str, line: str, text: str, printed: str = "", device: str = "", bolt: str = ""
    ) -> None:
        """Fill in a torque line, or say which bolt stands there."""
        swap = self._must(slug, self._desk.standing(slug))
        news = line_news(swap.plan, swap.progress, line, text, printed, bolt)
        self._say_all(slug, news, device)

    def measured(
        self, slug: str, when: str, texts: Mapping[str, str], device: str = "", key: str = ""
    ) -> None:
        """Write down what was measured before or after, as texts by measure."""
        swap = self._must(slug, self._desk.standing(slug))
        known = {each.key for each in swap.plan.measures}
        if when not in {"before", "after"}:
            raise AxlewrightError("Measured before, or after?", remedy="One of the two.")
        told = {name: short_text(text) for name, text in texts.items() if name in known}
        self._say(slug, f"measure/{when}", told, device, key)

    def look(
        self, slug: str, look: str, state: LookState, note: str = "", device: str = ""
    ) -> None:
        """Enter how a look at a part ended while it was apart."""
        swap = self._must(slug, self._desk.standing(slug))
        if look not in {each.key for each in swap.plan.looks}:
            raise AxlewrightError("There is no such look in this plan.", remedy="See the list.")
        body = LookTaken(occasion=APART_OCCASION, look=look, state=state)
        self._log.look(slug, body, note=short_text(note), device=device)

    def take_on(self, slug: str, device: str = "", key: str = "") -> None:
        """Give the rig the new numbers of the change that was made, once.

        The rig as it was stays in the record. Raises `BadFile` where the change does not go on
        the rig as it stands by now.
        """
        standing = self._desk.standing(slug)
        swap = self._swap(slug, standing)
        if swap is None or not swap.closed or swap.taken or not swap.change:
            raise AxlewrightError(
                "There is no closed swap whose numbers this axle could take on.",
                remedy="Close the swap first; it is taken on once.",
            )
        draft, news = taking_on(standing, swap.change)

        def trial(now: Standing) -> Draft | AxlewrightError:
            if now.number == standing.number:
                return draft
            return AxlewrightError("Something was entered meanwhile.", remedy="Say it once more.")

        self._enter(slug, news, trial, device, key)

    # -- the record ----------------------------------------------------------------------------

    def _begins(self, slug: str, swap: Swap, device: str) -> None:
        """Enter the work that retorque and looks come due after, before anything is driven."""
        done = [task for task in swap.plan.work.tasks if task.key in swap.progress.done]
        for begins in dict.fromkeys(task.begins for task in done if task.begins):
            keys = {task.key for task in done if task.begins == begins}
            body = Job(
                task=f"swap, {swap.plan.facts.word('kind')}: {begins.replace('_', ' ')}",
                interval=begins,
                torque=torques_set(swap.plan, swap.progress, keys)[:LONGEST_TEXT],
            )
            self._log.work(slug, body, device=device, key=f"swap-{swap.number}-{begins}")

    def _close(self, slug: str, swap: Swap, note: str, device: str) -> None:
        plan, progress = swap.plan, swap.progress
        left = "; ".join(
            f"{plan.work.by_key[key].title} ({why})" for key, why in progress.left_out.items()
        )
        measured = "; ".join(f"{name} {text}" for name, text in progress.measured.items() if text)
        told = [
            f"{plan.people} people, {plan.skill}, begun {swap.since.date()}.",
            f"Left out: {left}." if left else "",
            f"Measured: {measured}." if measured else "",
            short_text(note),
        ]
        body = Job(
            task=f"swap, {plan.facts.word('kind')}: {', '.join(plan.changes) or 'as it is'}",
            part="housing" if "housing" in plan.facts.word("kind") else "",
            torque=torques_set(plan, progress, set(plan.work.by_key)),
        )
        happening = Happening(
            body=body,
            on=self._log.today,
            note=" ".join(each for each in told if each)[:LONGEST_NOTE],
            photos=swap.photos,
        )
        key = f"swap-{swap.number}-record"
        self._log.book.enter(slug, happening, device=device, key=key)

    # -- entering ------------------------------------------------------------------------------

    def _must(self, slug: str, standing: Standing) -> Swap:
        swap = self._swap(slug, standing) if running(standing.swap) else None
        if swap is None:
            raise AxlewrightError(
                "No swap is under way on this axle.", remedy="Begin one on the page of the swap."
            )
        return swap

    def _say(self, slug: str, path: str, said: Mapping[str, str], device: str, key: str) -> None:
        self._say_all(slug, [new_entry(path, said)], device, key)

    def _say_all(self, slug: str, news: "Sequence[New]", device: str, key: str = "") -> None:
        def trial(standing: Standing) -> Draft:
            self._must(slug, standing)
            return standing.draft

        self._enter(slug, news, trial, device, key)

    def _enter(
        self,
        slug: str,
        news: "Sequence[New]",
        trial: Callable[[Standing], Draft | AxlewrightError],
        device: str,
        key: str,
    ) -> None:
        entered = self._desk.enter(slug, news, trial, device, key)
        if isinstance(entered, AxlewrightError):
            raise entered
