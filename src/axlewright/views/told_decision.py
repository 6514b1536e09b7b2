"""A choice as lines for a terminal: the sentence, its reasons, the rows, what it rests on."""

from collections.abc import Sequence

from axlewright.decide import Carried, Decision
from axlewright.views.decision import DecisionWords, decision_words
from axlewright.views.decision_tyres import TYRE_GRID_NOTE, still_line, tyre_rows

BAND = 78


def decision_lines(
    decision: Decision,
    grid: Sequence[Carried] = (),
    still: tuple[float, str, str] | None = None,
    system: str = "metric",
    *,
    all_facts: bool = False,
    width: int = 160,
) -> list[str]:
    """All lines of a choice; ``all_facts`` opens every change."""
    words = decision_words(decision, system)
    lines = [words.title, ""]
    if words.stops:
        band = "#" * BAND
        lines += [band, "STOP. Do not drive. Whatever the figures below say.", *words.stops, band]
    lines += [words.sentence, *words.mends]
    if words.stops:
        lines += ["", "Behind the stop:"]
    lines += [f"  {line}" for line in words.reasons]
    lines += [words.against, words.sorry, "", *_table(words, decision, width)]
    if all_facts:
        for row in words.rows:
            lines += ["", f"{row.label}"]
            lines += [f"  {name}: {text}" for name, text in row.facts]
    lines += ["", *words.looks, *words.flips, *words.resale]
    if grid:
        lines += [still_line(still, system), "", *_grid(grid), TYRE_GRID_NOTE]
    if words.refused:
        lines += ["", "Not for this axle:", *(f"  {line}" for line in words.refused)]
    return [*lines, "", *words.rests, words.caution]


def _table(words: DecisionWords, decision: Decision, width: int) -> list[str]:
    over = f"over {decision.terms.band('years').middle:g} years, all in"
    rows = [("", "change", over, "price", "gives first", "")]
    rows += [
        (str(number), row.label, row.total, row.price, row.first, row.mark)
        for number, row in enumerate(words.rows, 1)
    ]
    widths = [max(len(line[place]) for line in rows) for place in range(6)]
    if sum(widths) + 10 > width:
        return _stacked(rows, over)
    return [
        "  ".join(cell.ljust(wide) for cell, wide in zip(line, widths, strict=True)).rstrip()
        for line in rows
    ]


def _stacked(rows: Sequence[tuple[str, ...]], over: str) -> list[str]:
    """Give the same rows under one another, for a narrow terminal."""
    out = [f"Changes by what they cost {over}, the least first:"]
    for number, label, total, price, first, mark in rows[1:]:
        out.append(f"  {number:>2} {label}{f' ({mark})' if mark else ''}")
        out.append(f"       {total}; price {price}; then {first} gives first")
    return out


def _grid(grid: Sequence[Carried]) -> list[str]:
    heading, *rows = tyre_rows(grid)
    out = ["Which tyre can it carry, at which duty?"]
    for row in rows:
        out.append(f"  {row[0]}")
        said: dict[str, list[str]] = {}
        for duty, verdict in zip(heading[1:], row[1:], strict=True):
            said.setdefault(verdict, []).append(duty)
        out += [f"    {verdict}: on {', '.join(duties)}" for verdict, duties in said.items()]
    return out
