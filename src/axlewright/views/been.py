"""Where it has been, in a reader's words: what happened, newest first; parts; how far it went."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from axlewright import units
from axlewright.rig import (
    Chapter,
    Component,
    Condition,
    Fitment,
    Fitted,
    Hit,
    Job,
    Kept,
    LookTaken,
    Noticed,
    Reading,
    Remark,
    TakenOff,
    Trip,
    Withdrawn,
)
from axlewright.strength import Assessment
from axlewright.tables import duties, looks, looks_lists, procedures
from axlewright.upkeep import OFF_CENTRE, Carried, Driven, Outlived
from axlewright.views.answer import broken_parts
from axlewright.views.log import happened, reading_shown

AGAIN: Final = (Trip, Chapter, Remark)  # what the page itself can put right
MOVES: Final = (Fitted, TakenOff)
BENDS: Final = frozenset({"bent", "bowed"})
WORDS: Final[Mapping[str, tuple[str, ...]]] = {
    "weld": ("weld", "mended", "cracked"),
    "bend": ("bent", "bend", "bow", "straight"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class HistoryRow:
    """One entry: when, who, what it says, what became of it.

    ``gone`` says that it was put right or withdrawn, ``holds`` that it may still be, ``again`` that
    a form of the page puts it right.
    """

    number: int
    kind: str
    when: str
    odometer: str
    who: str
    says: str
    note: str
    marks: tuple[str, ...]
    photos: tuple[str, ...]
    gone: bool
    holds: bool
    again: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownPart:
    """One part: where it is, where it was, and what followed it."""

    key: str
    name: str
    kind: str
    mark: str
    here: str
    elsewhere: str
    followed: str
    was: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChapterRow:
    """One stretch of the past: its title, and each thing that is known of it."""

    number: int
    title: str
    facts: tuple[tuple[str, str], ...]


def history_rows(
    history: Sequence[Kept], outlived: Sequence[Outlived] = (), system: str = "metric"
) -> tuple[HistoryRow, ...]:
    """Every entry, the newest first, corrections and withdrawals named beside what they mend."""
    by = {kept.number: kept for kept in history}
    over = {each.reading.number: each for each in outlived}
    return tuple(
        HistoryRow(
            number=kept.number,
            kind=_kind(kept),
            when=kept.on.isoformat(),
            odometer=_far(kept.odometer, system),
            who=kept.who,
            says=says(kept, system),
            note=kept.note,
            marks=_marks(kept, by, over),
            photos=kept.photos,
            gone=bool(kept.replaced),
            holds=not kept.replaced and not isinstance(kept.body, Withdrawn),
            again=not kept.replaced and isinstance(kept.body, AGAIN),
        )
        for kept in reversed(history)
    )


def says(kept: Kept, system: str) -> str:  # noqa: PLR0911  (one way out for each kind)
    """One entry in a few words of a person."""
    match kept.body:
        case LookTaken() as look:
            found = f", {look.found}" if look.found else ""
            at = f", {look.side} {look.part}".rstrip() if look.part or look.side else ""
            return f"{_look(look.look)}: {look.state}{at}{found}"
        case Reading() as reading:
            asked = procedures().get(reading.quantity)
            title = asked.title if asked is not None else reading.quantity
            value, doubt = reading_shown(reading, system)
            side = f"{reading.side}, " if reading.side else ""
            return f"{side}{title}: {value}, give or take {doubt}"
        case Chapter() as chapter:
            broke = f"; broke: {', '.join(chapter.broke)}" if chapter.broke else ""
            far = _band(chapter.shortest, chapter.longest, system)
            return f"{chapter.title}: {far}{broke}"
        case Trip() as trip:
            ground = "".join(f", {_ground(name)}" for name, _ in trip.grounds[:3])
            wet = f", water {units.show(trip.water, 'length', system)}" if trip.water else ""
            far = units.show(trip.distance, "distance", system)
            return f"{trip.name}: {far}{ground}{wet}"
        case Withdrawn() as withdrawn:
            return f"entry {kept.replaces} does not hold: {withdrawn.reason}"
        case Remark() as remark:
            return remark.about or "a note"
        case _:
            told = happened(kept, system)
            return told.removeprefix("hit ").removeprefix("work: ").removeprefix("limit ")


def _kind(kept: Kept) -> str:
    match kept.body:
        case Job():
            return "work"
        case Remark():
            return "note"
        case Chapter():
            return "the past"
        case body:
            return {
                "LookTaken": "look",
                "OwnLimit": "limit",
                "TakenOff": "taken off",
            }.get(type(body).__name__, type(body).__name__.casefold())


def _look(key: str) -> str:
    known = looks_lists().get(key) or looks().get(key)
    return known.title if known is not None else key.replace("_", " ")


def _ground(name: str) -> str:
    known = duties().get(name)
    return known.words.casefold() if known is not None else name


def _far(metres: float | None, system: str) -> str:
    return "" if metres is None else units.show(metres, "distance", system)


def _band(low: float, high: float, system: str) -> str:
    ends = [units.show(each, "distance", system) for each in (low, high)]
    return ends[0] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"


def _marks(kept: Kept, by: Mapping[int, Kept], over: Mapping[int, Outlived]) -> tuple[str, ...]:
    marks = []
    if kept.replaced:
        later = by.get(kept.replaced)
        if later is not None and isinstance(later.body, Withdrawn):
            marks.append(f"withdrawn on {later.on} (entry {later.number}): {later.body.reason}")
        else:
            marks.append(f"put right by entry {kept.replaced}")
    if kept.replaces and not isinstance(kept.body, Withdrawn):
        marks.append(f"in place of entry {kept.replaces}")
    if kept.number in over:
        marks.append(f"no longer counts: {over[kept.number].why}")
    return tuple(marks)


def driven_sentence(driven: Driven, system: str = "metric") -> str:
    """How far it has gone as far as anybody knows, in one sentence."""
    if not driven.longest:
        return "Nothing is known yet of how far it has gone."
    told = f"It has gone {_band(driven.shortest, driven.longest, system)}, as far as is known"
    if not driven.count:
        return f"{told}; no trip is on record yet."
    trips = "one trip" if driven.count == 1 else f"{driven.count} trips"
    are = "is" if driven.count == 1 else "are"
    return f"{told}; {trips} of it, {_far(driven.trips, system)}, {are} on record."


def chapter_rows(history: Sequence[Kept], system: str = "metric") -> tuple[ChapterRow, ...]:
    """The past in chapters, the earliest told first."""
    rows = []
    for kept in history:
        if isinstance(kept.body, Chapter) and not kept.replaced:
            told = kept.body
            grounds = ", ".join(_ground(name) for name, _ in told.grounds)
            facts = (
                ("Distance", _band(told.shortest, told.longest, system)),
                ("Ground", grounds),
                ("Tyres", told.tyre),
                ("Load", told.load_state),
                ("What broke", ", ".join(told.broke)),
                ("Note", kept.note),
            )
            known = tuple((name, fact) for name, fact in facts if fact)
            rows.append(ChapterRow(number=kept.number, title=told.title, facts=known))
    return tuple(rows)


def part_rows(
    parts: Sequence[tuple[Component, Sequence[Fitment], Carried]], rig: str, system: str = "metric"
) -> tuple[KnownPart, ...]:
    """Parts as seen from one rig: what is in, what is free, what went elsewhere."""
    rows = []
    for part, where, went in parts:
        now = next((each for each in where if not each.ended), None)
        far = units.show(went.distance, "distance", system)
        counts = [f"{len(went.trips)} trips", f"{len(went.hits)} hits"]
        counts = [each.removesuffix("s") if each.startswith("1 ") else each for each in counts]
        rows.append(
            KnownPart(
                key=part.key,
                name=part.name,
                kind=part.kind,
                mark=part.mark,
                here=now.place if now is not None and now.rig == rig else "",
                elsewhere=now.rig if now is not None and now.rig != rig else "",
                followed=f"{far}, {counts[0]}, {counts[1]}",
                was=tuple(
                    f"{each.place} of {each.rig}, from {each.since} "
                    f"{f'to {each.until}' if each.until else 'and still there'}"
                    for each in where
                ),
            )
        )
    return tuple(sorted(rows, key=lambda row: (not row.here, bool(row.elsewhere))))


def broke_line(assessment: Assessment | None, broke: Sequence[str]) -> str:
    """What broke already and where it stood in each order, in one line."""
    if assessment is None:
        told = ", ".join(broke)
        return f"Broke already: {told}; there is no order yet to hold it against." if told else ""
    places = broken_parts(assessment, broke)
    if not places:
        return "Nothing on record has broken yet, so nothing has tested these orders."
    return f"Broke or was mended already: {'; '.join(places)}."


def graves(
    history: Sequence[Kept], conditions: Sequence[Condition], system: str = "metric"
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Hits, welds and bends, every one: also those that were put right or withdrawn, which says so.

    Whoever reads a paper of this axle has to be able to find them (no choice of entries hides one).
    """
    by = {kept.number: kept for kept in history}
    found: dict[str, list[str]] = {"Hits": [], "Welds, mends and cracks": [], "Bends": []}

    def told(kept: Kept) -> str:
        marks = "".join(f" ({mark})" for mark in _marks(kept, by, {}))
        note = f" – {kept.note}" if kept.note else ""
        at = f", {_far(kept.odometer, system)}" if kept.odometer is not None else ""
        return f"{kept.on}{at}: {says(kept, system)}{note}{marks}"

    for kept in history:
        if isinstance(kept.body, Withdrawn):
            continue
        text = f"{_plain(kept.body)} {kept.note}".casefold()
        if isinstance(kept.body, Hit):
            found["Hits"].append(told(kept))
        if any(word in text for word in WORDS["weld"]):
            found["Welds, mends and cracks"].append(told(kept))
        if any(word in text for word in WORDS["bend"]):
            found["Bends"].append(told(kept))
    for each in conditions:
        where = f"{each.where} {each.part}".strip()
        on = f"{each.date}: " if each.date else ""
        line = f"{on}{where}, {each.what}{f' – {each.note}' if each.note else ''} (in the rig file)"
        text = f"{each.what} {each.note}".casefold()
        if any(word in text for word in WORDS["weld"]):
            found["Welds, mends and cracks"].append(line)
        if each.what in BENDS or any(word in text for word in WORDS["bend"]):
            found["Bends"].append(line)
    return tuple((name, tuple(lines)) for name, lines in found.items())


def _plain(body: object) -> str:  # noqa: PLR0911  (one way out for each kind)
    """Words in which a weld or a bend is looked for."""
    match body:
        case LookTaken() as look:
            return f"{look.found}"
        case Job() as job:
            return f"{job.task} {job.part}"
        case Chapter() as chapter:
            return " ".join(chapter.broke)
        case Hit() as hit:
            return hit.what
        case TakenOff() as off:
            return off.reason
        case Remark() as remark:
            return remark.about
        case Noticed(about=about) as seen if about == OFF_CENTRE:
            return "bowed" if dict(seen.answers).get("bowed") == "yes" else ""
        case _:
            return ""
