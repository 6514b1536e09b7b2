"""A rig takes on the numbers of the change that was made on it; the old one stays in the record."""

from dataclasses import replace
from math import pi
from typing import TYPE_CHECKING, Final

from axlewright.actions.draft import BY_PATH, Draft
from axlewright.actions.standing import Standing, copied
from axlewright.actions.swap_entries import new_entry
from axlewright.errors import AxlewrightError, BadFile
from axlewright.rig import Answer, Change, change_from_text, changed_rig

if TYPE_CHECKING:
    from axlewright.records import New

TAKEN: Final = "taken"
CONDITION: Final = "rig.condition"
LISTED: Final = "as listed"
GIRTHS: Final = ("tube.girth.left", "tube.girth.right")


def taken_on(draft: Draft, change: Change) -> tuple[Draft, tuple[str, ...]]:
    """Everything said of a rig once a change was made on it, and what went with the old part.

    Raises `BadFile` with every fault where the change does not go on the rig as it stands.
    """
    after, gone = changed_rig(draft.rig(), change)
    answers = {path: each for path, each in draft.answers.items() if path not in gone}
    for step in change.steps:
        if step.action == "remove":
            answers.pop(step.path, None)
            continue
        for answer in (step.answer, *step.brought):
            if answer is not None:
                answers[answer.field.path] = answer
    new = replace(
        draft,
        answers=answers,
        conditions=list(after.conditions),
        above={path: rows for path, rows in draft.above.items() if "condition." not in path},
    )
    said = after.words.get(CONDITION, "")
    if said != draft.words().get(CONDITION, ""):
        listed = new.read(BY_PATH[CONDITION], said or LISTED)
        if isinstance(listed, Answer):
            new = new.with_answer(CONDITION, listed)
    new = _girths(new)
    missing = new.missing()
    if missing:
        raise AxlewrightError(
            f"With this change the axle would not be told whole: {', '.join(missing)}.",
            remedy="Give the change those numbers, or answer them one by one.",
        )
    return new, gone


def _girths(draft: Draft) -> Draft:
    """The same draft with girths out of the diameter that came with the tubes, until taped."""
    outer = draft.given().get("tube_outer")
    for path in GIRTHS:
        if outer is not None and path not in draft.answers:
            read = draft.read(BY_PATH[path], f"about {1e3 * pi * outer.value:.1f} mm")
            if isinstance(read, Answer):
                draft = draft.with_answer(path, read)
    return draft


def taking_on(standing: Standing, text: str) -> "tuple[Draft, list[New]]":
    """The draft after the text of a change, and what is entered for it.

    The change is let go: kept beside the rig it would be made twice.
    """
    from axlewright.records import New

    draft, gone = taken_on(copied(standing.draft), change_from_text(text))
    spent = [each for each in standing.changes if each.text == text]
    return draft, [
        New(kind="file", content=draft.text()),
        *(New(kind="dropped", text=str(each.number)) for each in spent),
        new_entry(TAKEN, {"gone": list(gone)}),
    ]


def going(draft: Draft, text: str) -> tuple[str, ...]:
    """Answers and findings that go with the old part; nothing where the change cannot be made."""
    try:
        return taken_on(draft, change_from_text(text))[1]
    except (AxlewrightError, BadFile):
        return ()
