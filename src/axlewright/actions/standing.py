"""How a rig stands after everything that was entered about it: the entries, told once more."""

import datetime as dt
import json
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_words import KeptChange
from axlewright.actions.draft import BY_PATH, Draft, read_draft
from axlewright.errors import Fault
from axlewright.rig import Condition, Field

if TYPE_CHECKING:
    from axlewright.records import Entry

BACKSPACED: Final = ("wheel.width", "wheel.offset")  # the second is read beside the first


EARLIEST: Final = dt.datetime(1, 1, 1, tzinfo=dt.UTC)


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """Readings of one alignment by field, as written, and when the first and last were taken."""

    said: dict[str, str] = field(default_factory=dict)
    began: dt.datetime | None = None
    last: dt.datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapEntry:
    """One entry of a swap: its number and time, what it says of what, and its text."""

    number: int
    at: dt.datetime
    path: str
    text: str


@dataclass(slots=True, kw_only=True)
class Standing:
    """A rig's draft, the keys of its conditions, the changes kept, and the last entry's number.

    ``unread`` holds answers of an earlier version that this one no longer reads, as written;
    ``order`` what was written on the order sheet, by field; ``reading`` is the alignment being
    read, ``sessions`` those that were closed; ``swap`` what was said of swaps.
    """

    draft: Draft
    keys: list[str] = field(default_factory=list)
    changes: list[KeptChange] = field(default_factory=list)
    unread: dict[str, str] = field(default_factory=dict)
    order: dict[str, str] = field(default_factory=dict)
    reading: Session = field(default_factory=Session)
    sessions: tuple[Session, ...] = ()
    swap: list[SwapEntry] = field(default_factory=list)
    number: int = 0
    touched: dt.datetime = EARLIEST

    def copy(self) -> "Standing":
        """Give the same standing, to be gone on with by itself."""
        return replace(
            self,
            draft=copied(self.draft),
            keys=list(self.keys),
            changes=list(self.changes),
            unread=dict(self.unread),
            order=dict(self.order),
            swap=list(self.swap),
        )


def copied(draft: Draft) -> Draft:
    """Give the same draft, to be gone on with by itself."""
    return replace(
        draft,
        answers=dict(draft.answers),
        conditions=list(draft.conditions),
        above={path: list(lines) for path, lines in draft.above.items()},
        beside=dict(draft.beside),
    )


def gone_on(
    before: Standing, entries: "Iterable[Entry]", text_of: Callable[[str], str]
) -> Standing:
    """Give the standing after some more entries."""
    now = before.copy()
    for entry in entries:
        _TAKE[entry.kind](now, entry, text_of)
        now.number, now.touched = entry.number, entry.at
    return now


def answered(draft: Draft, path: str, text: str) -> Draft | Fault:
    """Give the draft with one answer read into it, or what is wrong with the answer."""
    read = draft.read(BY_PATH[path], text)
    if isinstance(read, Fault):
        return read
    tried = draft.with_answer(path, read)
    width, offset = BACKSPACED
    if path == width and offset in tried.answers:
        again = tried.read(BY_PATH[offset], tried.answers[offset].text)
        if isinstance(again, Fault):
            return again
        tried.answers[offset] = again
    return tried


def questions(fields: Sequence[Field], draft: Draft) -> tuple[int, int]:
    """How many of the numbered questions are answered whole, and how many there are."""
    asked = [each for each in fields if each.required and draft.belongs(each)]
    numbers = {each.question for each in asked}
    open_ones = {each.question for each in asked if each.path not in draft.answers}
    return len(numbers - open_ones), len(numbers)


def condition_text(condition: Condition) -> str:
    """One condition as it is entered."""
    when = condition.date.isoformat() if condition.date else ""
    said = {
        "part": condition.part,
        "what": condition.what,
        "where": condition.where,
        "date": when,
        "note": condition.note,
    }
    return json.dumps(said, ensure_ascii=False)


def _condition(text: str) -> Condition:
    said = json.loads(text)
    when = dt.date.fromisoformat(said["date"]) if said["date"] else None
    return Condition(
        part=said["part"], what=said["what"], where=said["where"], date=when, note=said["note"]
    )


def _began(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    now.draft.name, now.draft.axle = entry.text, entry.path


def _file(now: Standing, entry: "Entry", text_of: Callable[[str], str]) -> None:
    now.draft = read_draft(text_of(entry.text))
    now.keys = [f"{entry.number}.{place}" for place in range(len(now.draft.conditions))]


def _name(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    now.draft.name = entry.text


def _answer(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    tried = answered(now.draft, entry.path, entry.text) if entry.path in BY_PATH else None
    if not isinstance(tried, Draft):
        now.unread[entry.path] = entry.text
        return
    now.draft = tried
    now.unread.pop(entry.path, None)


def _clear(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    now.draft = now.draft.with_answer(entry.path, None)
    now.unread.pop(entry.path, None)


def _found(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    now.draft.conditions.append(_condition(entry.text))
    now.keys.append(str(entry.number))


def _settled(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    if entry.text in now.keys:
        remove_condition(now.draft, now.keys.index(entry.text))
        now.keys.remove(entry.text)


def remove_condition(draft: Draft, place: int) -> None:
    """Take one condition out of a draft, the comments above it as well."""
    del draft.conditions[place]
    above = {}
    for path, lines in draft.above.items():
        table, _, number = path.partition(".")
        if table != "condition":
            above[path] = lines
        elif int(number) != place:
            above[f"condition.{int(number) - (int(number) > place)}"] = lines
    draft.above = above


def _change(now: Standing, entry: "Entry", text_of: Callable[[str], str]) -> None:
    now.changes.append(
        KeptChange(
            number=entry.number,
            name=entry.path,
            text=text_of(entry.text),
            digest=entry.text,
            at=entry.at,
        )
    )


def _dropped(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    now.changes = [each for each in now.changes if str(each.number) != entry.text]


def _ordered(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    if entry.text:
        now.order[entry.path] = entry.text
    else:
        now.order.pop(entry.path, None)


def _read(now: Standing, entry: "Entry", _: Callable[[str], str]) -> None:
    before = now.reading
    said = {path: text for path, text in before.said.items() if path != entry.path}
    if entry.text:
        said[entry.path] = entry.text
    now.reading = Session(said=said, began=before.began or entry.at, last=entry.at)


def _anew(now: Standing, _: "Entry", __: Callable[[str], str]) -> None:
    if now.reading.said:
        now.sessions = (*now.sessions, now.reading)
    now.reading = Session()


def _swap(now: Standing, entry: "Entry", text_of: Callable[[str], str]) -> None:
    whole = entry.path in {"rig", "change"}  # these two stand as whole texts
    text = text_of(entry.text) if whole else entry.text
    now.swap.append(SwapEntry(number=entry.number, at=entry.at, path=entry.path, text=text))


_TAKE: Final[dict[str, Callable[[Standing, "Entry", Callable[[str], str]], None]]] = {
    "began": _began,
    "file": _file,
    "name": _name,
    "answer": _answer,
    "clear": _clear,
    "condition": _found,
    "settled": _settled,
    "change": _change,
    "dropped": _dropped,
    "ordered": _ordered,
    "read": _read,
    "anew": _anew,
    "swap": _swap,
}
