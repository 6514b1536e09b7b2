"""Trips, the past, parts and notes as a page says them: words of a form in, an entry out."""

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from axlewright import units
from axlewright.actions.bay_words import cleaned
from axlewright.actions.log_words import (
    LONGEST_WORDS,
    Photo,
    entry_number,
    goes_with,
    words_of,
)
from axlewright.actions.past import chapter_of, grounds_of
from axlewright.errors import AxlewrightError
from axlewright.rig import Remark, Trip

if TYPE_CHECKING:
    from axlewright.actions.log import Log


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
        name=words_of(said, "name") or "a trip",
        distance=read.value,
        grounds=grounds_of([f"{ground}={far}"]) if ground else (),
        load_state=words_of(said, "load"),
        water=units.parse(water, "length").value if water else None,
    )
    return log.enter(slug, body, **_entry(log, said, photo, more))


def chapter_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter a stretch of the past out of title, distance, ground, tyre, load and what broke."""
    title = words_of(said, "title")
    if not title:
        raise AxlewrightError("What was it?", remedy="As in: before us, as a farm wagon.")
    broke = [each.strip() for each in re.split(r"[,;\n]", cleaned(said.get("broke", "")))]
    body = chapter_of(
        title,
        said.get("distance", ""),
        words_of(said, "tyre"),
        words_of(said, "load"),
        (),
        [each[:LONGEST_WORDS] for each in broke if each][:20],
    )
    if ground := said.get("ground", ""):
        middle = (body.shortest * body.longest) ** 0.5
        body = replace(body, grounds=grounds_of([f"{ground}={middle:.0f} m"]))
    return log.enter(slug, body, **_entry(log, said, photo, more))


def part_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Give a part an identity out of kind, name and mark, and fit it where a place is said."""
    name, mark, kind = words_of(said, "name"), words_of(said, "mark"), said.get("kind", "")
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
    place = words_of(said, "place")
    taken = [each for each in log.book.fitments(rig=slug) if each.place == place and not each.ended]
    if place and taken:
        raise AxlewrightError(
            f"{taken[0].component} is at {place} since {taken[0].since}.",
            remedy="Take it off first: a place holds one part.",
        )
    part = log.book.new_component(kind, name, mark)
    if not place:
        return 0
    return log.fit(slug, part.key, place, **_entry(log, said, photo, more))


def fit_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter that a known part was put in a place."""
    place = words_of(said, "place")
    if not place:
        raise AxlewrightError("Where was it put?", remedy="As in: left hub.")
    part = log.book.component(said.get("component", "")[:64])
    return log.fit(slug, part.key, place, **_entry(log, said, photo, more))


def off_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter that a part was taken off, and why."""
    part = log.book.component(said.get("component", "")[:64])
    return log.take_off(slug, part.key, words_of(said, "reason"), **_entry(log, said, photo, more))


def note_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter a note, a photo, or both."""
    if not cleaned(said.get("note", "")) and photo is None:
        raise AxlewrightError("There is nothing to keep.", remedy="Write a note, or pick a photo.")
    return log.enter(slug, Remark(about=words_of(said, "about")), **_entry(log, said, photo, more))


def withdrawn_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: str
) -> int:
    """Enter that an entry does not hold, and why."""
    del photo
    number = entry_number(said.get("number", ""))
    if number is None:
        raise AxlewrightError("Which entry?", remedy="Pick one of the list.")
    return log.withdraw(slug, number, words_of(said, "reason"), who=more.get("who", ""))


def _entry(
    log: "Log", said: Mapping[str, str], photo: Photo | None, more: Mapping[str, str]
) -> dict[str, Any]:
    """What goes with an entry, and which earlier one it puts right."""
    told = goes_with(log.today, said, photo, more)
    return {**told, "replaces": entry_number(said.get("right", "")) or 0}
