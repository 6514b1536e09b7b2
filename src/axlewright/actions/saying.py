"""Whether what was said about a rig can be taken: read, held against the rest, read once more."""

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import Final

from axlewright.actions.bay_words import Contradiction, refusal
from axlewright.actions.draft import BY_PATH, Draft, read_draft
from axlewright.actions.listening import LONGEST_NAME, LONGEST_NOTE, fault_line, full_stop
from axlewright.actions.standing import answered
from axlewright.errors import AxlewrightError, BadFile, Fault, UnknownEntry
from axlewright.rig import FOUND, MAY_BE_UNKNOWN, WHERE, Condition, Field, findings, stops
from axlewright.views import chosen, drive_lines, field_name, not_chosen_line, options

MOST_CONDITIONS: Final = 200
CONDITION: Final = "condition"


def known(path: str) -> Field:
    """Field of a path; raises where the catalogue holds none of that name."""
    if path not in BY_PATH:
        raise UnknownEntry(f"There is no field {path[:80]!r}.", remedy="See the rig file's page.")
    return BY_PATH[path]


def worded(asked: Field, said: str) -> str:
    """Text to keep for an answer: the word that was meant by a number or by its beginning."""
    words = options(asked)
    return (chosen(said, words) or said) if words else said


def refused(draft: Draft, texts: Mapping[str, str]) -> dict[str, Fault]:
    """What is wrong with each answer by itself."""
    wrong = {}
    tried = draft
    for path, text in texts.items():
        asked = known(path)
        now = _one(tried, asked, text)
        if isinstance(now, Fault):
            wrong[path] = now
        else:
            tried = now
    return wrong


def _one(draft: Draft, asked: Field, text: str) -> Draft | Fault:
    if not draft.belongs(asked):
        return refusal(asked, f"this is asked of a {asked.axle} axle")
    if not text:
        return refusal(asked, "this one needs an answer")
    tried = answered(draft, asked.path, text)
    if isinstance(tried, Fault):
        return tried
    if tried.answers[asked.path].dont_know and asked.required and asked.path not in MAY_BE_UNKNOWN:
        return refusal(asked, "the answer hangs on this one, so it cannot be left open")
    return tried


def fault_words(asked: Field, fault: Fault, text: str) -> str:
    """What is wrong with an answer in a sentence or two, with what is accepted."""
    words = options(asked)
    if words and text and fault.problem.endswith("one of the words for this"):
        return not_chosen_line(text, words)
    return fault_line(fault, asked)


def with_all(draft: Draft, texts: Mapping[str, str]) -> Draft:
    """Give the draft with answers that were found good one by one."""
    for path, text in texts.items():
        tried = answered(draft, path, text)
        if isinstance(tried, Fault):
            raise AxlewrightError(f"{path}: {tried.problem}.", remedy=tried.accepted)
        draft = tried
    return draft


def contradicted(draft: Draft, tried: Draft, paths: Sequence[str]) -> tuple[Contradiction, ...]:
    """Contradictions that what was said brings in, each with the answers it hangs on."""
    without = draft
    for path in paths:
        without = without.with_answer(path, None)
    before = {clash.problem for clash in without.clashes(tried.system())}
    return tuple(
        Contradiction(
            path=clash.path,
            problem=full_stop(clash.problem),
            remedy=full_stop(clash.remedy),
            others=tuple(path for path in tried.behind(clash, "") if path not in paths),
        )
        for clash in tried.clashes()
        if clash.problem not in before
    )


def unreadable(draft: Draft) -> str:
    """Why the rig's file would not be read again as it would stand now; empty where it would."""
    try:
        read_draft(draft.text())
        if not draft.missing():
            draft.rig()
    except BadFile as trouble:
        first = trouble.faults[0]
        name = field_name(BY_PATH[first.field]) if first.field in BY_PATH else first.field
        return f"{name}: {full_stop(first.problem)} {full_stop(first.accepted)}".strip()
    return ""


def condition_of(said: Mapping[str, str], today: dt.date) -> Condition | str:
    """Give the condition that was described, or what is wrong with the description."""
    part, note = said.get("part", ""), said.get("note", "")
    what = chosen(said.get("what", ""), FOUND)
    where = chosen(said.get("where", ""), WHERE) if said.get("where") else ""
    when = _date(said.get("date", ""), today)
    if not part or len(part) > LONGEST_NAME:
        return f"Which part? Its name in your words, up to {LONGEST_NAME} signs."
    if what is None:
        return f"What was found? One of: {', '.join(FOUND)}."
    if where is None:
        return f"Where? The vehicle's own side, one of: {', '.join(WHERE)}; or nothing."
    if isinstance(when, str):
        return when
    if len(note) > LONGEST_NOTE:
        return f"The note is longer than {LONGEST_NOTE} signs."
    return Condition(part=part, what=what, where=where, date=when, note=note)


def _date(said: str, today: dt.date) -> dt.date | str | None:
    if not said:
        return None
    try:
        when = dt.date.fromisoformat(said)
    except ValueError:
        return f"When? Year-month-day, for example {today.isoformat()}; or nothing."
    return when if when <= today else f"{when.isoformat()} lies ahead. When was it seen or done?"


def stop_lines(draft: Draft) -> tuple[str, ...]:
    """Lines that say: do not drive; none where nothing was found that says so."""
    found = stops(findings(draft.condition_rig()))
    return tuple(drive_lines(found)) if found else ()


def whole_or_raise(draft: Draft, file: str) -> None:
    """Refuse a file whose answers do not fit together, with every fault."""
    faults = [clash.as_fault(file) for clash in draft.clashes()]
    faults += [
        Fault(
            file=file,
            line=answer.line,
            field=path,
            given=answer.text,
            problem="this one cannot be left open: the answer hangs on it",
            accepted=answer.field.how,
            example=answer.field.example,
        )
        for path, answer in draft.answers.items()
        if answer.dont_know and answer.field.required and path not in MAY_BE_UNKNOWN
    ]
    if len(draft.conditions) > MOST_CONDITIONS:
        problem = f"more than {MOST_CONDITIONS} conditions are listed"
        faults.append(Fault(file=file, field=CONDITION, problem=problem))
    if faults:
        raise BadFile(file, faults)
    if not draft.missing():
        draft.rig()
