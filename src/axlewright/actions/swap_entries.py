"""Entries of a swap in the store: how they are written, and what they come to once more."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_words import cleaned
from axlewright.actions.standing import SwapEntry
from axlewright.actions.swap_plan import line_of, value_of
from axlewright.errors import AxlewrightError
from axlewright.swap import Plan, Progress, own_bolt, undone
from axlewright.units import show

if TYPE_CHECKING:
    from axlewright.records import New

LONGEST_TEXT: Final = 400
RECORD: Final = "record"


def new_entry(path: str, said: Mapping[str, object]) -> "New":
    """One entry of a swap."""
    from axlewright.records import New

    return New(kind="swap", path=path, text=json.dumps(said, ensure_ascii=False))


def refused(why: Sequence[str]) -> AxlewrightError:
    """Why a step is not taken."""
    return AxlewrightError(" ".join(why), remedy="The step stays open.")


def short_text(text: str) -> str:
    """A text as it is kept."""
    return cleaned(text)[:LONGEST_TEXT].strip()


def latest(entries: Sequence[SwapEntry]) -> Sequence[SwapEntry]:
    """Entries of the last swap, from its rig on."""
    starts = [place for place, each in enumerate(entries) if each.path == "rig"]
    return entries[starts[-1] :] if starts else ()


def running(entries: Sequence[SwapEntry]) -> bool:
    """Whether a swap is under way."""
    last = latest(entries)
    return bool(last) and not any(each.path in {"aside", f"tick/{RECORD}"} for each in last)


def line_news(
    plan: Plan, progress: Progress, line: str, text: str, printed: str, bolt: str
) -> list["New"]:
    """Entries that fill a torque line: the bolt that was read, the torque, or both."""
    news = []
    line = line_of(plan, line).key
    if bolt.strip():
        progress = replace(progress, bolts={**progress.bolts, line: own_bolt(cleaned(bolt))})
        news.append(new_entry(f"bolt/{line}", {"text": short_text(bolt)}))
    if text.strip() or not news:
        read = value_of(plan, line, cleaned(text), progress, cleaned(printed))
        news.append(new_entry(f"value/{line}", {"text": read.text, "printed": read.printed}))
    return news


def torques_set(plan: Plan, progress: Progress, keys: set[str]) -> str:
    """Torques of some tasks as they were set, with where each was printed."""
    return "; ".join(
        f"{line.what} {show(value.torque, 'torque', 'metric', 3)}"
        + (f" ({value.printed})" if value.printed else "")
        for line in plan.lines
        if line.task in keys and (value := progress.values.get(line.key)) is not None
    )


def folded_entries(plan: Plan, entries: Sequence[SwapEntry]) -> tuple[Progress, tuple[str, ...]]:
    """Progress after all entries of a swap, and its photos."""
    progress = Progress()
    photos: dict[str, None] = {}
    for each in entries:
        what, _, name = each.path.partition("/")
        said = json.loads(each.text) if what not in {"rig", "change"} else {}
        if what == "tick":
            done = {**progress.done, name: said["photo"]}
            progress = replace(progress, done=done, yes=progress.yes | frozenset(said["yes"]))
            if said["photo"]:
                photos[said["photo"]] = None
        elif what == "leave":
            left = {**progress.left_out, name: said["reason"]}
            progress = replace(progress, left_out=left)
        elif what == "undo":
            progress = undone(plan, progress, name)
        elif what == "value":
            read = value_of(plan, name, said["text"], progress, said["printed"])
            progress = replace(progress, values={**progress.values, name: read})
        elif what == "bolt":
            bolts = {**progress.bolts, name: own_bolt(said["text"])}
            progress = replace(progress, bolts=bolts)
        elif what == "measure":
            told = {f"{name}/{key}": text for key, text in said.items()}
            progress = replace(progress, measured={**progress.measured, **told})
    return progress, tuple(photos)
