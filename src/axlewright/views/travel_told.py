"""The travel of an axle as lines for a terminal."""

from axlewright.geometry import Driveline, Travel
from axlewright.rig import findings, stops
from axlewright.views.answer import drive_lines
from axlewright.views.driveline import built_in_lines, driveline_sentence
from axlewright.views.room import changed_lines, room_lines
from axlewright.views.travel import (
    CAUTION,
    TravelRow,
    bind_lines,
    fix_lines,
    rests_line,
    travel_rows,
    travel_sentence,
)
from axlewright.views.wedge_words import wedge_lines, wedge_mind

TRIED = "Tried one at a time (--keep-cure N FILE writes one as a change):"
OPENS = "(--why N opens a row)"
HEADS = ("", "hanging", "at ride", "in bump")


def travel_lines(
    before: Travel,
    after: Travel | None = None,
    system: str = "metric",
    width: int = 100,
    line: Driveline | None = None,
) -> list[str]:
    """All lines of a study, or of a rig with changes beside it."""
    shown = after or before
    rig = before.rig
    lines = [f"{rig.name}: travel of its {rig.axle} axle", ""]
    if halts := stops(findings(rig)):
        lines += ["#" * min(78, width), "STOP. Do not drive. Whatever the figures below say."]
        lines += [*(f"  {line}" for line in drive_lines(halts)), "#" * min(78, width), ""]
        lines.append("Behind the stop:")
    lines.append(travel_sentence(before, system))
    lines += _table(travel_rows(before, system), width)
    if after is not None:
        lines += [
            "",
            *changed_lines(before, after, system),
            *_table(travel_rows(after, system), width),
        ]
    bind = bind_lines(shown, system)
    cures = fix_lines(shown, system)
    lines += ["", *bind]
    if cures:
        told = [f"  {place}. {cure}" for place, cure in enumerate(cures, 1)]
        lines += [TRIED, *told]
    if line is not None:
        lines += [driveline_sentence(line, system), *built_in_lines(line, system)[:1]]
        lines += [*wedge_lines(line.wedges, system), *wedge_mind(line.wedges)]
    return [*lines, *room_lines(shown, system), rests_line(shown), OPENS, CAUTION]


def _table(rows: list[TravelRow], width: int) -> list[str]:
    cells = [HEADS, *((row.what, row.hanging, row.ride, row.bump) for row in rows)]
    numbered = [("" if not place else str(place), *line) for place, line in enumerate(cells)]
    widths = [max(len(line[column]) for line in numbered[:-1]) for column in range(5)]
    if sum(widths) + 12 > width:
        return ["", *(f"  {line[0]} {line[1]}: {' | '.join(line[2:])}" for line in numbered[1:])]
    told = [
        "  " + "  ".join(cell.ljust(wide) for cell, wide in zip(line, widths, strict=True)).rstrip()
        for line in numbered[:-1]
    ]
    number, what, *ends = numbered[-1]
    return ["", *told, f"  {number}  {what}: {'; '.join(ends)}"]
