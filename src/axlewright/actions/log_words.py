"""What people say about a look, as the log takes it: how it ended, what was found, a photo."""

import datetime as dt
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, Final, TypeAlias

from axlewright import units
from axlewright.actions.bay_words import cleaned
from axlewright.actions.past import day_of
from axlewright.errors import AxlewrightError
from axlewright.rig import FOUND, SIDES, LookState

Photo: TypeAlias = Path | tuple[bytes, str]
LONGEST_WORDS: Final = 200
LONGEST_NUMBER: Final = 18
MOST_TRIPS: Final = 50  # that a watch may last


def state_of(word: str) -> LookState:
    """Give the state that a word of a person means; "cannot tell" is fix before trip."""
    words: dict[str, LookState] = {
        "go": "go",
        "ok": "go",
        "watch": "watch",
        "fix": "fix before trip",
        "fix before trip": "fix before trip",
        "cannot tell": "fix before trip",
        "can't tell": "fix before trip",
        "stop": "stop",
    }
    told = cleaned(word).casefold()
    if told not in words:
        raise AxlewrightError(
            f"A look does not end in {word[:40]!r}.",
            remedy="One of: go, watch, fix, stop; or cannot tell, which counts as fix.",
        )
    return words[told]


def found_of(word: str) -> str:
    """Give one of the words for what was found; empty stays empty."""
    told = cleaned(word).casefold()
    if told and told not in FOUND:
        raise AxlewrightError(
            f"{word[:40]!r} is not one of the words for what was found.",
            remedy=f"One of: {', '.join(FOUND)}.",
        )
    return told


def side_of(word: str) -> str:
    """Give one of the words for a side; empty stays empty."""
    told = cleaned(word).casefold()
    if told and told not in SIDES:
        raise AxlewrightError(f"{word[:40]!r} is no side.", remedy=f"One of: {', '.join(SIDES)}.")
    return told


def watch_of(
    until: str, within: str, trips: str
) -> tuple[dt.date | None, float | None, int | None]:
    """How long something is watched: until a day, within a distance (m), for so many trips."""
    day = day_of(until.strip())
    count = None
    if trips.strip():
        if not (trips.strip().isascii() and trips.strip().isdigit()):
            raise AxlewrightError(f"{trips[:40]!r} is no number of trips.", remedy="As in 2.")
        count = int(trips.strip()[:6])
        if not 1 <= count <= MOST_TRIPS:
            raise AxlewrightError(
                f"Nothing is watched for {count} trips.", remedy=f"From 1 to {MOST_TRIPS}."
            )
    far = units.parse(within, "distance") if within.strip() else None
    metres = None if far is None or far.dont_know else far.value
    return day, metres, count


def words_of(said: Mapping[str, str], name: str) -> str:
    """One field of a form in one line of words."""
    return cleaned(said.get(name, ""))[:LONGEST_WORDS].strip()


def entry_number(text: str) -> int | None:
    """Number of an entry as a form or an address says it; None where it is none."""
    return int(text) if text.isascii() and text.isdigit() and len(text) < LONGEST_NUMBER else None


def goes_with(
    today: dt.date, said: Mapping[str, str], photo: Photo | None, more: Mapping[str, object]
) -> dict[str, Any]:
    """What goes with every entry: its day, the odometer, who says so, a note, a photo.

    ``more`` is what the device knows; its odometer is today's and of no other day.
    """
    day = day_of(said.get("on", "").strip())
    now = day is None or day == today
    return {
        **more,
        "on": day or more.get("on"),
        "odometer": cleaned(said.get("odometer", "")) or (more.get("odometer", "") if now else ""),
        "who": cleaned(said.get("who", "")) or more.get("who", ""),
        "note": said.get("note", ""),
        "photos": [] if photo is None else [photo],
    }


def read_photos(photos: Iterable[Photo]) -> list[tuple[bytes, str]]:
    """Read photos from the disk or as handed in; whatever is none is refused before any is kept."""
    from axlewright.records import photo_type

    handed = [_read(each) if isinstance(each, Path) else each for each in photos]
    for data, _ in handed:
        photo_type(data)
    return handed


def _read(path: Path) -> tuple[bytes, str]:
    try:
        return path.read_bytes(), path.name
    except OSError as trouble:
        raise AxlewrightError(
            f"{path} cannot be read: {trouble.strerror}.", remedy="Give another file."
        ) from trouble
