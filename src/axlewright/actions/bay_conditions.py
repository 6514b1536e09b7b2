"""What was mended or hurts, entered one by one and taken off the list again."""

import datetime as dt
from collections.abc import Mapping

from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import Listed, Said, cleaned
from axlewright.actions.draft import Draft, read_draft
from axlewright.actions.listening import condition_line
from axlewright.actions.saying import (
    CONDITION,
    MOST_CONDITIONS,
    condition_of,
    stop_lines,
    unreadable,
    with_all,
)
from axlewright.actions.standing import Standing, condition_text, copied, remove_condition
from axlewright.errors import UnknownEntry

ASKED, LISTED = "rig.condition", "as listed"


def add_condition(desk: Desk, slug: str, said: Mapping[str, str], device: str, key: str) -> Said:
    """Enter one thing that was found, and that the condition is as listed."""
    from axlewright.records import New

    clean = {name: cleaned(text) for name, text in said.items()}
    found = condition_of(clean, dt.datetime.now(dt.UTC).astimezone().date())
    part = clean.get("part", "")
    if isinstance(found, str):
        return desk.said(desk.standing(slug), CONDITION, part, fault=found)
    news = [
        New(kind="condition", path=CONDITION, text=condition_text(found)),
        New(kind="answer", path=ASKED, text=LISTED),
    ]

    def trial(standing: Standing) -> Draft | Said:
        if len(standing.draft.conditions) >= MOST_CONDITIONS:
            return desk.said(standing, CONDITION, part, fault="The list is full.")
        longer = copied(standing.draft)
        longer.conditions.append(found)
        tried = with_all(longer, {ASKED: LISTED})
        why = unreadable(tried)
        return desk.said(standing, CONDITION, part, fault=why) if why else tried

    kept = desk.enter(slug, news, trial, device, key)
    if isinstance(kept, Said):
        return kept
    echo = f"Understood: {condition_line(found)}"
    return desk.said(kept, CONDITION, part, stored=True, echo=echo)


def condition_before(desk: Desk, slug: str) -> str:
    """What was said of the rig's condition before anything was listed; empty where nothing was."""
    said = ""
    for entry in desk.store.entries_after(slug, 0):
        if entry.kind == "file":
            answer = read_draft(desk.store.text(entry.text)).answers.get(ASKED)
            said = answer.text if answer is not None else ""
        elif entry.kind == "answer" and entry.path == ASKED and entry.text != LISTED:
            said = entry.text
    return "" if said == LISTED else said


def settle_condition(
    desk: Desk, slug: str, listed: str, device: str, key: str, then: str = ""
) -> Said:
    """Enter that one thing is off the list; with the last one the question is open again.

    ``then`` is what answers it from there on, where the list was another's entry and not an answer.
    """
    from axlewright.records import New

    keys = desk.standing(slug).keys
    if listed not in keys:
        raise UnknownEntry("That is not on the list, or no longer.")
    last = len(keys) == 1
    news = [New(kind="settled", path=CONDITION, text=listed)]
    if last and then:
        news.append(New(kind="answer", path=ASKED, text=then))
    elif last:
        news.append(New(kind="clear", path=ASKED))

    def trial(standing: Standing) -> Draft | Said:
        if listed not in standing.keys or (len(standing.keys) == 1) != last:
            return desk.said(standing, CONDITION, "", fault="The list has changed: look again.")
        tried = copied(standing.draft)
        remove_condition(tried, standing.keys.index(listed))
        if last and then:
            return with_all(tried, {ASKED: then})
        return tried.with_answer(ASKED, None) if last else tried

    kept = desk.enter(slug, news, trial, device, key)
    return kept if isinstance(kept, Said) else desk.said(kept, CONDITION, "", stored=True)


def listed_conditions(standing: Standing) -> list[Listed]:
    """Everything on the list, with the key of each and whether it says: do not drive."""
    listed = []
    for key, one in zip(standing.keys, standing.draft.conditions, strict=True):
        alone = Draft(name="one", axle=standing.draft.axle, conditions=[one])
        stop = bool(stop_lines(alone))
        listed.append(Listed(key=key, condition=one, line=condition_line(one), stop=stop))
    return listed
