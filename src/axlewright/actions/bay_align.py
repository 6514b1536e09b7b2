"""Readings of an alignment in the store: kept as they are read, left and taken up again."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import cleaned
from axlewright.actions.draft import Draft
from axlewright.actions.standing import Session, Standing
from axlewright.errors import AxlewrightError, BadFile, UnknownEntry
from axlewright.geometry import Alignment, align
from axlewright.rig import ALIGNMENT_FIELDS, REPEATED, Readings, readings_said, readings_text

if TYPE_CHECKING:
    from axlewright.rig import Rig

PATHS: Final = frozenset(each.path for each in ALIGNMENT_FIELDS)
BETWEEN: Final = re.compile(r"[;\n]+")
LONGEST: Final = 600


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsSaid:
    """What became of readings said together: kept, or what is wrong with which of them.

    ``texts`` are all that the form then shows: what was refused as well.
    """

    stored: bool
    faults: Mapping[str, str] = field(default_factory=dict)
    texts: Mapping[str, str] = field(default_factory=dict)


def texts_of(path: str, text: str) -> list[str]:
    """Repeats of one reading, as typed with a semicolon or a new line between them."""
    if path not in REPEATED:
        return [text]
    return [each.strip() for each in BETWEEN.split(text) if each.strip()]


def readings_of(session: Session, axle: str) -> Readings:
    """Read what a session holds; raises `BadFile` with every fault."""
    said = {path: texts_of(path, text) for path, text in session.said.items() if path in PATHS}
    return readings_said(said, axle)


def take_readings(
    desk: Desk, slug: str, texts: Mapping[str, str], device: str, key: str
) -> ReadingsSaid:
    """Enter readings that read and fit the others: all of them, or none. Empty takes one out."""
    from axlewright.records import New

    strangers = [path for path in texts if path not in PATHS]
    if strangers:
        raise UnknownEntry(f"Nothing of the name {strangers[0][:80]!r} is read here.")
    clean = {path: cleaned(BETWEEN.sub("; ", text))[:LONGEST] for path, text in texts.items()}
    clean = {path: text.strip("; ") for path, text in clean.items()}
    before = desk.standing(slug).reading.said
    moved = {path: text for path, text in clean.items() if text != before.get(path, "")}
    if not moved:
        return ReadingsSaid(stored=True, texts=before)

    def trial(standing: Standing) -> Draft | ReadingsSaid:
        said = {**standing.reading.said, **moved}
        said = {path: text for path, text in said.items() if text}
        faults = _faults(desk.rig(slug), Session(said=said), standing.draft.axle)
        if faults:
            return ReadingsSaid(stored=False, faults=faults, texts=said)
        return standing.draft

    news = [New(kind="read", path=path, text=text) for path, text in moved.items()]
    kept = desk.enter(slug, news, trial, device, key)
    if isinstance(kept, ReadingsSaid):
        return kept
    return ReadingsSaid(stored=True, texts=kept.reading.said)


def _faults(rig: "Rig | None", session: Session, axle: str) -> dict[str, str]:
    try:
        readings = readings_of(session, axle)
        if rig is not None:
            align(rig, readings)
    except BadFile as trouble:
        return {
            each.field: f"{each.problem[:1].upper()}{each.problem[1:].rstrip('.')}. "
            f"It takes {each.accepted}."
            for each in trouble.faults
        }
    return {}


def alignment_of(desk: Desk, slug: str, session: Session | None = None) -> Alignment | None:
    """Judge the readings of an axle; None until it is answered."""
    rig = desk.rig(slug)
    if rig is None:
        return None
    shown = desk.standing(slug).reading if session is None else session
    return align(rig, readings_of(shown, rig.axle))


def readings_file(desk: Desk, slug: str) -> str:
    """Text of a readings file that says what is being read."""
    standing = desk.standing(slug)
    session = standing.reading
    said = {path: texts_of(path, text) for path, text in session.said.items()}
    return readings_text(
        said,
        session.began.date() if session.began else None,
        f"Readings of {standing.draft.name}, {standing.draft.axle} axle.",
    )


def close_session(desk: Desk, slug: str, device: str, key: str) -> None:
    """Enter that the readings are done with: they stay on record, and the next begin anew."""
    from axlewright.records import New

    if not desk.standing(slug).reading.said:
        raise AxlewrightError(
            "Nothing has been read yet, so there is nothing to close.", remedy="Read first."
        )
    desk.enter(slug, [New(kind="anew")], lambda now: now.draft, device, key)
