"""Changes beside an axle as it is, part by part: what got worse as plainly as what got better."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from axlewright.strength import Assessment, Comparison, Place
from axlewright.views.answer import drive_lines, sentence
from axlewright.views.compared import (
    LESS,
    MORE,
    bulk_lines,
    offset_lines,
    replaced_lines,
    weld_lines,
    worse_and_better,
)
from axlewright.views.drawing_links import ident
from axlewright.views.geometry_change import geometry_lines
from axlewright.views.phrases import gives_at, short_name, then

MOST_ROWS = 6
SAME_ENDS = re.compile(r"(?<![\w.,])([\d.,]+) to \1(?![\w.,])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One part under one change: what it takes, how that moved, and which way."""

    takes: str
    moved: str
    way: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """One part: as it is, then under each change."""

    part: str
    ident: str
    then: str
    now: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeWords:
    """One change in words: what gives first with it, what got worse, what got better."""

    name: str
    sentence: str
    brief: str
    worse: tuple[str, ...]
    better: tuple[str, ...]
    more: tuple[str, ...]
    stops: tuple[str, ...]


def change_words(comparison: Comparison, system: str = "metric") -> ChangeWords:
    """What one change does, in words."""
    worse, better = worse_and_better(comparison, system)
    after = comparison.after
    return ChangeWords(
        name=" and ".join(change.name for change in comparison.changes),
        sentence=sentence(after),
        brief=_brief(after, worse, better),
        worse=_gathered(worse),
        better=_gathered(better),
        more=(
            *bulk_lines(comparison, system),
            *offset_lines(comparison),
            *weld_lines(comparison),
            *geometry_lines(comparison, system),
            *replaced_lines(comparison),
        ),
        stops=tuple(drive_lines(after.stops)) if after.stops else (),
    )


def side_by_side(
    before: Assessment,
    comparisons: Sequence[Comparison],
    system: str = "metric",
    most: int = MOST_ROWS,
) -> tuple[PartRow, ...]:
    """One row a part that leads now or under a change, the first to give first."""
    afters = [comparison.after for comparison in comparisons]
    leading: list[str] = []
    for assessment in (before, *afters):
        ranked = sorted(assessment.order, key=lambda place: place.margin)
        leading += [place.kind for place in ranked[:most]]
    now = {place.kind: place for place in before.order}
    rows = []
    for kind in dict.fromkeys(leading):
        was = now.get(kind)
        place = was or next(one for each in afters for one in each.order if one.kind == kind)
        found = [next((one for one in each.order if one.kind == kind), None) for each in afters]
        rows.append(
            PartRow(
                part=short_name(place.part, place.side),
                ident=f"part-{ident(kind)}",
                then=then(place.part),
                now=_takes(was, before, system),
                cells=tuple(
                    _cell(was, one, after, system) for one, after in zip(found, afters, strict=True)
                ),
            )
        )
    order = {kind: now[kind].margin if kind in now else float("inf") for kind in leading}
    kinds = list(dict.fromkeys(leading))
    return tuple(
        row for _, row in sorted(zip(kinds, rows, strict=True), key=lambda pair: order[pair[0]])
    )


def _brief(after: Assessment, worse: Sequence[str], better: Sequence[str]) -> str:
    first = after.order[0]
    name = short_name(first.part, first.side)
    return f"First: {name}. {len(worse)} worse, {len(better)} better."


def _gathered(lines: Sequence[str]) -> tuple[str, ...]:
    """Lines of the form "part: what moved" with parts that moved alike in one line."""
    alike: dict[str, list[str]] = {}
    for line in lines:
        name, found, moved = line.partition(": ")
        alike.setdefault(moved if found else line, []).append(name if found else "")
    return tuple(
        f"{', '.join(names)}: {moved}" if names[0] else moved for moved, names in alike.items()
    )


def _cell(was: Place | None, now: Place | None, after: Assessment, system: str) -> Cell:
    if now is None:
        return Cell(takes="not on this axle", moved="", way="same")
    takes = _takes(now, after, system)
    if was is None or not (isfinite(was.margin) or isfinite(now.margin)):
        return Cell(takes=takes, moved="as before" if was else "new", way="same")
    if not isfinite(now.margin):
        return Cell(takes=takes, moved="no longer in reach", way="better")
    if not isfinite(was.margin):
        return Cell(takes=takes, moved="now in reach", way="worse")
    ratio = now.margin / max(was.margin, 1e-6)
    if LESS <= ratio <= MORE:
        return Cell(takes=takes, moved="as before", way="same")
    way = "better" if ratio > 1.0 else "worse"
    share = 100.0 * abs(ratio - 1.0)
    return Cell(takes=takes, moved=f"{share:.0f} % {'more' if ratio > 1.0 else 'less'}", way=way)


def _takes(place: Place | None, assessment: Assessment, system: str) -> str:
    if place is None:
        return "not on this axle"
    return SAME_ENDS.sub(r"about \1", gives_at(place, assessment.columns, system))
