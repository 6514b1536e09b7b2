"""Changes tried on a rig in the store, kept beside it, and laid side by side."""

import json
from collections.abc import Mapping
from typing import Final

from axlewright.actions.bay_cache import Answers
from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import KeptChange, cleaned
from axlewright.actions.draft import Draft
from axlewright.actions.listening import LONGEST_NAME
from axlewright.actions.standing import Standing
from axlewright.errors import AxlewrightError, BadQuantity, UnknownEntry
from axlewright.rig import Rig, change_from_text, changed_rig, parse_tyre
from axlewright.strength import DRAWS, Comparison

MOST_CHANGES: Final = 100
TYRE, HUBS = "tyre.sidewall", ("hub_height.left", "hub_height.right")
ALIKE: Final = 0.02  # tyres this close in height leave the hubs where they were measured
UNNAMED: Final = "a change"


def change_text(name: str, values: Mapping[str, str]) -> str:
    """Text of a change file that sets fields, by path, to new values.

    Examples
    --------
    >>> print(change_text("taller", {"tyre.sidewall": "37x12.50R17LT 124Q"}))
    axlewright_change = 1
    name = "taller"
    <BLANKLINE>
    [[step]]
    set = "tyre.sidewall"
    to = "37x12.50R17LT 124Q"
    <BLANKLINE>
    """
    rows = ["axlewright_change = 1", f"name = {_quoted(cleaned(name) or UNNAMED)}"]
    return "\n".join([*rows, *_steps(values)]) + "\n"


def change_onto(text: str, name: str, values: Mapping[str, str]) -> str:
    """Text of a change that does all that another one's does, and then sets more fields."""
    before = change_from_text(text).name
    told = _renamed(text, f"{before}; {name}")
    return "\n".join([told.rstrip("\n"), *_steps(values)]) + "\n"


def _steps(values: Mapping[str, str]) -> list[str]:
    rows = []
    for path, text in values.items():
        rows += ["", "[[step]]", f"set = {_quoted(path)}", f"to = {_quoted(text)}"]
    return rows


def whole_rig(desk: Desk, slug: str) -> Rig:
    """Rig of a draft that has every required answer; raises where one is missing."""
    rig = desk.rig(slug)
    if rig is None:
        raise AxlewrightError(
            "A change is tried on a whole axle, and answers are still missing.",
            remedy="Answer the rest first.",
        )
    return rig


def compared(desk: Desk, answers: Answers, slug: str, text: str, draws: int = DRAWS) -> Comparison:
    """A rig before and after a change; raises `BadFile` with every fault of the change."""
    rig = whole_rig(desk, slug)
    return answers.comparison(rig, change_from_text(text), draws)


def with_hubs(desk: Desk, slug: str, values: Mapping[str, str]) -> dict[str, str]:
    """Add to a tyre of another height the hubs' heights, about in proportion to it."""
    more = dict(values)
    tyre, old = values.get(TYRE), desk.standing(slug).draft
    if tyre is None or (before := old.tyre()) is None:
        return more
    try:
        ratio = parse_tyre(cleaned(tyre)).outer_diameter / before.outer_diameter
    except BadQuantity:
        return more  # it is told where the change is read
    if abs(ratio - 1.0) < ALIKE:
        return more
    for path in HUBS:
        answer = old.answers.get(path)
        if path not in more and answer is not None and isinstance(answer.value, float):
            more[path] = f"about {1e3 * ratio * answer.value:.0f} mm"
    return more


def keep_change(desk: Desk, slug: str, name: str, text: str, device: str, key: str) -> KeptChange:
    """Enter a change that can be made on the rig as it stands."""
    from axlewright.records import New

    title = cleaned(name)[:LONGEST_NAME].strip()
    change = change_from_text(text)
    changed_rig(whole_rig(desk, slug), change)
    if title and title != change.name:
        text = _renamed(text, title)
        change = change_from_text(text)

    def trial(standing: Standing) -> Draft | AxlewrightError:
        if len(standing.changes) < MOST_CHANGES:
            return standing.draft
        problem = f"{MOST_CHANGES} changes are kept beside this axle already."
        return AxlewrightError(problem, remedy="Let one go first.")

    entered = desk.enter(
        slug, [New(kind="change", path=change.name, content=text)], trial, device, key
    )
    if isinstance(entered, AxlewrightError):
        raise entered
    return next(each for each in reversed(entered.changes) if each.name == change.name)


def let_go(desk: Desk, slug: str, number: int, device: str, key: str) -> None:
    """Enter that a change is no longer wanted; that it was kept stays entered."""
    from axlewright.records import New

    if all(each.number != number for each in desk.standing(slug).changes):
        raise UnknownEntry("That change is not kept here, or no longer.")
    desk.enter(slug, [New(kind="dropped", text=str(number))], lambda now: now.draft, device, key)


def _renamed(text: str, title: str) -> str:
    """The same change file under another name; its first `name` line is written anew."""
    rows = text.splitlines()
    place = next(at for at, row in enumerate(rows) if row.split("=")[0].strip() == "name")
    rows[place] = f"name = {_quoted(title)}"
    return "\n".join(rows) + "\n"


def _quoted(text: str) -> str:
    return json.dumps(cleaned(text), ensure_ascii=False)
