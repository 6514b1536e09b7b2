"""The answer as lines for a terminal: plain text, the answer first."""

from textwrap import wrap

from axlewright.rig import Rig
from axlewright.strength import Assessment, Comparison
from axlewright.views.answer import (
    CAUTION,
    OrderRow,
    after_mend_lines,
    broken_lines,
    change_lines,
    drive_lines,
    measure_next,
    not_judged_line,
    order_rows,
    rests_line,
    sentence,
    severity_lines,
    wear_rows,
    wear_sentence,
)
from axlewright.views.gearing import gearing_lines, mismatch_lines
from axlewright.views.phrases import giving

BAND = 78  # signs of a stop's band, or the terminal's width


def answer_lines(
    answer: Assessment | Comparison, system: str = "metric", width: int = 100
) -> list[str]:
    """All lines of an assessment, or of a rig with changes beside it."""
    if not isinstance(answer, Comparison):
        return [*_whole(answer, system, width), CAUTION]
    after = answer.after
    return [
        *_whole(answer.before, system, width),
        "",
        *change_lines(answer, system),
        *gearing_lines(answer, system),
        *_table(width, "one bad moment, after the change", order_rows(after, system)),
        *_table(width, "wearing out, after the change", wear_rows(after, system, 3)),
        "",
        *after_mend_lines(after)[:2],
        CAUTION,
    ]


def _whole(answer: Assessment, system: str, width: int) -> list[str]:
    lines = [_heading(answer.rig), ""]
    stopped = bool(answer.stops)
    if stopped:
        band = "#" * min(BAND, width)
        lines += [
            band,
            "STOP. Do not drive. Whatever the figures below say.",
            *(f"  {line}" for line in drive_lines(answer.stops)),
            band,
            "",
            "Behind the stop:",
        ]
    lines += [sentence(answer), wear_sentence(answer, system)]
    rest = tuple(each for each in answer.findings if each not in answer.stops)
    if rest or not stopped:
        lines += drive_lines(rest)
    gears = gearing_lines(answer, system)
    apart = mismatch_lines(gears)
    lines += apart
    lines += _table(width, "one bad moment", order_rows(answer, system))
    lines += _table(width, "wearing out (coarse)", wear_rows(answer, system, 3))
    lines += ["", not_judged_line(answer), rests_line(answer, system)]
    worth = measure_next(answer, system)
    if worth:
        lines += ["Worth ten minutes:", *(f"  {line}" for line in worth)]
    lines += [line for line in gears if line not in apart]
    lines += after_mend_lines(answer)[:2] + broken_lines(answer) + severity_lines(answer)
    if answer.drawn is not None:
        lines.append(
            f"({answer.drawn.draws:,} draws, seed {answer.drawn.seed}; --why N opens row N of one "
            "bad moment, and how that part wears)"
        )
    return lines


def _heading(rig: Rig) -> str:
    changed = f", with {' and '.join(rig.changes)}" if rig.changes else ""
    return f"{rig.name}: {rig.axle} axle{changed}"


def _table(width: int, title: str, rows: list[OrderRow]) -> list[str]:
    cells = [("", title, "gives at", "then", "beside the track", "first in")]
    cells += [
        (str(row.rank), row.part, row.gives_at, row.then, row.beside, row.share) for row in rows
    ]
    if max(sum(len(cell) + 2 for cell in line) for line in cells) > width:
        return _stacked(title, rows, width)
    widths = [max(len(line[place]) for line in cells) for place in range(6)]
    told = [
        ("  " + "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)))
        for line in cells
    ]
    return ["", *(line.rstrip() for line in told)]


def _stacked(title: str, rows: list[OrderRow], width: int) -> list[str]:
    """Give the same rows under one another, for a narrow terminal."""
    out = ["", f"  {title}"]
    for row in rows:
        share = f" ({row.share} of draws)" if row.share else ""
        out.append(f"  {row.rank} {row.part}{share}")
        gives = giving(row.gives_at) if row.closeness else row.gives_at
        told = f"{gives}. Then: {row.then}. Beside the track: {row.beside}."
        out += wrap(told, width, initial_indent="      ", subsequent_indent="      ")
    return out


def folded(lines: list[str], width: int) -> list[str]:
    """Lines folded to a width, tables and bands left as they are."""
    out: list[str] = []
    for line in lines:
        if len(line) <= width or line.startswith("#"):
            out.append(line)
        else:
            indent = " " * (len(line) - len(line.lstrip()) + 2)
            out += wrap(line, width, subsequent_indent=indent)
    return out
