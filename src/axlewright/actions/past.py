"""The past as somebody tells it: chapters, grounds, and what was noticed of a shake."""

import datetime as dt
from collections.abc import Sequence
from typing import Final

from axlewright import units
from axlewright.errors import AxlewrightError
from axlewright.rig import Chapter, Noticed
from axlewright.tables import duties, shimmy_questions

WIDE: Final = 2.0  # a distance that somebody remembers, either way: common practice, no source


def grounds_of(texts: Sequence[str]) -> tuple[tuple[str, float], ...]:
    """Grounds with the distance on each, m, out of texts such as forest_roads=120km."""
    told = []
    for text in texts:
        name, _, far = text.partition("=")
        if name not in duties():
            raise AxlewrightError(
                f"There is no ground {name[:40]!r}.", remedy=f"One of: {', '.join(duties())}."
            )
        told.append((name, units.parse(far, "distance").value))
    return tuple(told)


def chapter_of(
    title: str,
    distance: str,
    tyre: str,
    load: str,
    grounds: Sequence[str],
    broke: Sequence[str],
) -> Chapter:
    """Give a stretch of the past; a single figure becomes a wide band, for nobody knows it well."""
    read = units.parse(distance, "distance")
    if read.dont_know or read.value < 0:
        raise AxlewrightError(
            "How far, about?", remedy="A wide band will do, as in 20000 to 120000 km."
        )
    low, high = read.band or (read.value / WIDE, read.value * WIDE)
    return Chapter(
        title=title,
        shortest=low,
        longest=high,
        tyre=tyre,
        load_state=load,
        grounds=grounds_of(grounds),
        broke=tuple(broke),
    )


def noticed_of(answers: Sequence[str]) -> Noticed:
    """Give what a driver noticed of a shake; each answer one of its question's words."""
    told = {}
    for text in answers:
        name, _, word = text.partition("=")
        asked = shimmy_questions().get(name)
        if asked is None or word not in asked.answers:
            words = " | ".join(asked.answers) if asked else ", ".join(shimmy_questions())
            raise AxlewrightError(f"{text[:60]!r} is no answer.", remedy=f"One of: {words}.")
        told[name] = word
    told.setdefault("still", "yes")  # unless it was said otherwise, it may still be there
    return Noticed(about="shimmy", answers=tuple(told.items()))


def day_of(text: str) -> dt.date | None:
    """Give the day that a text names, year-month-day; None where it is empty."""
    try:
        return dt.date.fromisoformat(text) if text else None
    except ValueError as trouble:
        raise AxlewrightError(
            f"{text[:40]!r} is no day.", remedy="Year-month-day, as in 2026-05-03."
        ) from trouble
