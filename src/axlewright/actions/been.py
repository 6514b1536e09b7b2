"""Trips, the past, parts and notes as a page says them: words of a form in, an entry out."""

import datetime as dt
import re
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from axlewright import units
from axlewright.actions.bay_words import cleaned
from axlewright.actions.log_words import Photo
from axlewright.actions.past import chapter_of, grounds_of
from axlewright.errors import AxlewrightError
from axlewright.rig import Remark, Trip

if TYPE_CHECKING:
    from axlewright.actions.log import Log

LONGEST_WORDS = 200


def trip_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter a trip out of name, distance, ground, water and load."""
    far, ground = said.get("distance", ""), said.get("ground", "")
    read = units.parse(far, "distance")
    if read.dont_know or read.value <= 0.0:
        raise AxlewrightError("How far was it?", remedy="With its unit, as in 180 km.")
    water = said.get("water", "").strip()
    body = Trip(
        name=_words(said, "name") or "a trip",
        distance=read.value,
        grounds=grounds_of([f"{ground}={far}"]) if ground else (),
        load_state=_words(said, "load"),
        water=units.parse(water, "length").value if water else None,
    )
    return log.enter(slug, body, **_entry(said, photo, more))


def chapter_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter a stretch of the past out of title, distance, ground, tyre, load and what broke."""
    title = _words(said, "title")
    if not title:
        raise AxlewrightError("What was it?", remedy="As in: before us, as a farm wagon.")
    broke = [each.strip() for each in re.split(r"[,;\n]", cleaned(said.get("broke", "")))]
    body = chapter_of(
        title,
        said.get("distance", ""),
        _words(said, "tyre"),
        _words(said, "load"),
        (),
        [each[:LONGEST_WORDS] for each in broke if each][:20],
    )
    if ground := said.get("ground", ""):
        middle = (body.shortest * body.longest) ** 0.5
        body = replace(body, grounds=grounds_of([f"{ground}={middle:.0f} m"]))
    return log.enter(slug, body, **_entry(said, photo, more))


def part_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Give a part an identity out of kind, name and mark, and fit it where a place is said."""
    name, mark, kind = _words(said, "name"), _words(said, "mark"), said.get("kind", "")
    if not name:
        raise AxlewrightError("What is the part called?", remedy="As in: left hub.")
    known = [
        each
        for each in log.book.components()
        if (each.kind, each.name, each.mark) == (kind, name, mark)
        and all(was.rig == slug or was.ended for was in log.book.fitments(component=each.key))
    ]
    if known:
        raise AxlewrightError(
            f"{known[0].key} is a part of that name and mark already.",
            remedy="Fit that one, or say by which mark this one is known.",
        )
    place = _words(said, "place")
    taken = [each for each in log.book.fitments(rig=slug) if each.place == place and not each.ended]
    if place and taken:
        raise AxlewrightError(
            f"{taken[0].component} is at {place} since {taken[0].since}.",
            remedy="Take it off first: a place holds one part.",
        )
    part = log.book.new_component(kind, name, mark)
    if not place:
        return 0
    return log.fit(slug, part.key, place, **_entry(said, photo, more))


def fit_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter that a known part was put in a place."""
    place = _words(said, "place")
    if not place:
        raise AxlewrightError("Where was it put?", remedy="As in: left hub.")
    part = log.book.component(said.get("component", "")[:64])
    return log.fit(slug, part.key, place, **_entry(said, photo, more))


def off_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter that a part was taken off, and why."""
    part = log.book.component(said.get("component", "")[:64])
    return log.take_off(slug, part.key, _words(said, "reason"), **_entry(said, photo, more))


def note_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter a note, a photo, or both."""
    if not cleaned(said.get("note", "")) and photo is None:
        raise AxlewrightError("There is nothing to keep.", remedy="Write a note, or pick a photo.")
    return log.enter(slug, Remark(about=_words(said, "about")), **_entry(said, photo, more))


def withdrawn_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter that an entry does not hold, and why."""
    del photo
    number = said.get("number", "")
    if not (number.isascii() and number.isdigit() and len(number) < 10):
        raise AxlewrightError("Which entry?", remedy="Pick one of the list.")
    return log.withdraw(slug, int(number), _words(said, "reason"), who=more.get("who", ""))


def _words(said: Mapping[str, str], name: str) -> str:
    return cleaned(said.get(name, ""))[:LONGEST_WORDS].strip()


def _entry(said: Mapping[str, str], photo: Photo | None, more: Mapping[str, str]) -> dict[str, Any]:
    """What goes with every entry: the day, the odometer of that day, who, a note, a photo."""
    day = said.get("on", "").strip()
    try:
        on = dt.date.fromisoformat(day) if day else None
    except ValueError as trouble:
        raise AxlewrightError(
            f"{day[:40]!r} is no day.", remedy="Year-month-day, as in 2026-05-03."
        ) from trouble
    right = said.get("right", "")
    now = on is None or on == dt.datetime.now().astimezone().date()
    return {
        **more,
        "who": cleaned(said.get("who", "")) or more.get("who", ""),
        "on": on,
        "odometer": cleaned(said.get("odometer", "")) or (more.get("odometer", "") if now else ""),
        "note": said.get("note", ""),
        "photos": [] if photo is None else [photo],
        "replaces": int(right) if right.isascii() and right.isdigit() and len(right) < 10 else 0,
    }
