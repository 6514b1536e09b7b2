"""Looks as a page shows them: may I drive, each look with its ends, what is open, what is due."""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.rig import Hit, Job, Kept, LookState, LookTaken
from axlewright.upkeep import (
    Drive,
    Due,
    Reason,
    WantedLook,
    looks_since,
    open_looks,
    settles,
    where_of,
)
from axlewright.views.log import due_lines
from axlewright.views.units_in_text import in_units

LISTS: Final[Mapping[str, str]] = {
    "before_trip": "Before a trip",
    "after_trip": "After a trip",
    "after_hit": "After a hit",
    "apart": "While it is apart",
    "buying": "Buying a used axle",
}
LEADS: Final[Mapping[str, str]] = {
    "before_trip": "The looks that say whether it may be driven. Good until the next trip or hit, "
    "and for three days.",
    "after_trip": "At the end of the track, then at home, washed. What is found is open before the "
    "next trip.",
    "after_hit": "Five looks where it stands, engine off, both ends chocked.",
    "apart": "What can only be seen while it is apart, degreased, by light.",
    "buying": "Before any money. Bring a lamp, a wire brush and a tape.",
}
HEADS: Final[Mapping[str, str]] = {
    "stop": "Do not drive.",
    "fix before trip": "Put right or measured first, then looked at again.",
    "not looked at": "And so not known to be sound.",
    "watch": "It may go, and these are looked at again as they say.",
    "go": "By the looks of these days. A look is of its own day.",
}
BESIDE: Final[Mapping[str, str]] = {
    "stop": "It does not move, whatever a figure says.",
    "fix before trip": "Don’t. What stands below is mended or measured first; a repair card takes "
    "it out of danger, not home.",
    "not looked at": "Not yet. What nobody has looked at is not sound: take the five looks.",
    "watch": "Slowly on, and look again where it says so.",
    "go": "Slowly on: the five looks found nothing, now and here. Look once more after 5 km.",
}
ENDS: Final[tuple[tuple[LookState, str, str], ...]] = (
    ("stop", "stop", "Stop"),
    ("fix before trip", "fix", "Fix before trip"),
    ("watch", "watch", "Watch"),
    ("go", "go", "Go"),
)
CANNOT_TELL: Final = "Cannot tell"


@dataclass(frozen=True, slots=True, kw_only=True)
class DriveWords:
    """The answer: its state, one sentence, what stops, and the other reasons with their remedy.

    Looks that are not there are counted, for their list names them.
    """

    state: str
    head: str
    stops: tuple[str, ...]
    reasons: tuple[Reason, ...]
    missing: tuple[str, ...]
    looked: int
    wanted: int


@dataclass(frozen=True, slots=True, kw_only=True)
class EndWords:
    """One way for a look to end: the word that is sent, the word that is shown, what it means."""

    state: str
    sent: str
    said: str
    means: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenWords:
    """The last look of its kind: when, by whom, how it ended; ``stale`` says why no longer."""

    number: int
    state: str
    told: str
    stale: str
    photos: tuple[str, ...]
    grave: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LookCard:
    """One look of a list, in the reader's units."""

    key: str
    title: str
    how: str
    ends: tuple[EndWords, ...]
    taken: TakenWords | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenWords:
    """One look that ended in stop or fix and is still open, and what is missing to close it."""

    number: int
    state: str
    what: str
    told: str
    close: str
    mended: str
    part: str
    side: str
    back: str
    photos: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DueWords:
    """One thing that comes due."""

    key: str
    title: str
    kind: str
    state: str
    told: str
    note: str


def drive_words(drive: Drive, system: str = "metric", *, slowly: bool = False) -> DriveWords:
    """May I drive; ``slowly`` asks after a hit whether it may go on from here."""
    others = tuple(each for each in drive.reasons if each.state not in {"stop", "not looked at"})
    return DriveWords(
        state=drive.state,
        head=in_units((BESIDE if slowly else HEADS)[drive.state], system),
        stops=stop_words(drive),
        reasons=others,
        missing=tuple(each.what for each in drive.reasons if each.state == "not looked at"),
        looked=drive.looked,
        wanted=drive.wanted,
    )


def stop_words(drive: Drive) -> tuple[str, ...]:
    """Lines of the black band: everything that says do not drive."""
    return tuple(
        f"{each.what}: {each.why.rstrip('.')}. {each.do}"
        for each in drive.reasons
        if each.state == "stop"
    )


def stop_lines(drive: Drive) -> tuple[str, ...]:
    """The same as lines that stand by themselves on paper or before a program's answer."""
    return tuple(f"STOP: {each}" for each in stop_words(drive))


def look_cards(
    wanted: Sequence[WantedLook], history: Sequence[Kept], today: dt.date, system: str = "metric"
) -> tuple[LookCard, ...]:
    """A list of looks, each with how it was last taken."""
    return tuple(
        LookCard(
            key=each.key,
            title=in_units(each.title, system),
            how=in_units(each.how, system),
            ends=tuple(
                EndWords(state=state, sent=sent, said=said, means=in_units(means, system))
                for state, sent, said in ENDS
                for means in [each.ends[state]]
            ),
            taken=_taken(each, history, today),
        )
        for each in wanted
    )


def _taken(wanted: WantedLook, history: Sequence[Kept], today: dt.date) -> TakenWords | None:
    mine = [
        each
        for each in history
        if isinstance(each.body, LookTaken) and each.body.look == wanted.key and each.on <= today
    ]
    if not mine:
        return None
    last = mine[-1]
    look = last.body
    assert isinstance(look, LookTaken)  # noqa: S101  (chosen so above)
    return TakenWords(
        number=last.number,
        state=look.state,
        told=_told(last, look),
        stale=looks_since(wanted, history, today),
        photos=last.photos,
        grave=look.state in {"stop", "fix before trip"},
    )


def _told(kept: Kept, look: LookTaken) -> str:
    parts = [str(kept.on)]
    parts += [f"by {kept.who}"] if kept.who else []
    parts += [f"{look.side} side"] if look.side in {"left", "right"} else []
    parts += [look.found] if look.found else []
    return ", ".join(parts) + (f": {kept.note}" if kept.note else "")


def open_words(history: Sequence[Kept]) -> tuple[OpenWords, ...]:
    """What stands open, the gravest first, and what would close it."""
    told = []
    for kept, look in open_looks(history):
        work = [each for each in history if each.order > kept.order and settles(each, kept, look)]
        stop = look.state == "stop"
        if stop and not work:
            close = "Closed by work that is entered for it, and then by a look that finds it good."
        elif stop:
            close = "The work is entered. It is closed by a look that finds it good."
        else:
            close = "Closed by a later look that ends better: put it right or measure it first."
        told.append(
            OpenWords(
                number=kept.number,
                state=look.state,
                what=where_of(look),
                told=_told(kept, look),
                close=close,
                mended="; ".join(each.body.task for each in work if isinstance(each.body, Job)),
                part=look.part,
                side=look.side,
                back=f"{look.occasion}#look-{look.look}" if look.occasion in LISTS else "",
                photos=kept.photos,
            )
        )
    return tuple(sorted(told, key=lambda each: each.state != "stop"))


def due_words(dues: Sequence[Due], system: str = "metric") -> tuple[DueWords, ...]:
    """What is due, the most pressing first."""
    told = []
    for each in dues:
        line = due_lines([each], system)[0]
        told.append(
            DueWords(
                key=each.key,
                title=each.title,
                kind=each.kind,
                state=each.state,
                told=line.partition(" (")[2].rpartition(")")[0],
                note=in_units(each.note, system),
            )
        )
    return tuple(told)


def last_hit(history: Sequence[Kept]) -> Kept | None:
    """The last thing that was hit, None where there is none."""
    return next((each for each in reversed(history) if isinstance(each.body, Hit)), None)
