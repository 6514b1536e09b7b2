"""Looks and work as a page says them: words of a form in, an entry of the book out."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_words import cleaned
from axlewright.actions.log_words import (
    LONGEST_WORDS,
    Photo,
    entry_number,
    found_of,
    goes_with,
    side_of,
    state_of,
    watch_of,
    words_of,
)
from axlewright.errors import AxlewrightError
from axlewright.rig import Job, LookTaken
from axlewright.tables import intervals

if TYPE_CHECKING:
    from axlewright.actions.log import Log

SLIP: Final = "a slip of the thumb"


def look_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: object
) -> int:
    """Enter a look out of look, ends, side, part, found, note and, for a watch, how long."""
    state = state_of(said.get("ends", ""))
    kept = ("until", "within", "trips")
    until, within, trips = watch_of(*(said.get(each, "") for each in kept))
    watched = state == "watch"
    taken = LookTaken(
        occasion="",
        look=cleaned(said.get("look", "")),
        state=state,
        side=side_of(said.get("side", "")),
        part=words_of(said, "part"),
        found=found_of(said.get("found", "")),
        until=until if watched else None,
        until_distance=within if watched else None,
        until_trips=trips if watched else None,
    )
    return log.look(slug, taken, **goes_with(log.today, said, photo, more))


def work_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: object
) -> int:
    """Enter work out of task, part, side, settles, interval and torque.

    What is set to a torque says which, for no figure here stands in for the maker's.
    """
    interval = log.interval(cleaned(said.get("interval", "")))
    standing = intervals().get(interval)
    task = words_of(said, "task")
    torque = words_of(said, "torque")
    if standing is not None:
        task = task or standing.title
        if standing.kind == "retorque" and not torque:
            raise AxlewrightError(
                "Which torque was set, and where is it printed?",
                remedy="As in: 130 Nm, the manual, wheels.",
            )
    if not task:
        raise AxlewrightError("What was done?", remedy="As in: tie-rod end renewed.")
    settles = said.get("settles", "").strip()
    settled = entry_number(settles or "0")
    if settled is None:
        raise AxlewrightError(f"{settles[:40]!r} is no entry.", remedy="Give a look's number.")
    job = Job(
        task=task,
        part=words_of(said, "part"),
        side=side_of(said.get("side", "")),
        interval=interval,
        torque=torque,
        settles=settled,
    )
    return log.work(slug, job, **goes_with(log.today, said, photo, more))


def take_back_look(log: "Log", slug: str, number: int, reason: str, who: str = "") -> int:
    """Enter that a look was a slip. One that forbids driving asks for a reason in words."""
    kept = log.book.one(slug, number)
    if not isinstance(kept.body, LookTaken):
        raise AxlewrightError(f"Entry {number} is no look.", remedy="Take back a look.")
    told = cleaned(reason)
    if kept.body.state in {"stop", "fix before trip"} and not told:
        raise AxlewrightError(
            "Why does it not hold?",
            remedy="Say why in words: a look that says stop or fix is not taken back by a tap.",
        )
    return log.withdraw(slug, number, told[:LONGEST_WORDS] or SLIP, who=who)
