"""One row of the order opened: from the sentence down to formula and source."""

import numpy as np

from axlewright.duty import live_cases
from axlewright.strength import Assessment
from axlewright.tables import consequence
from axlewright.views.answer import doubt_name
from axlewright.views.bent_words import bent_lines
from axlewright.views.opened import alone, opened, size_lines, stress_line, wears
from axlewright.views.phrases import gives_at, giving, parked_line, part_name, quantity, span

LEAST_SHARE = 0.005  # of the doubt; less is not told
MOVES = "what moves it most: share of its doubt, and what that alone does from low end to high"


def why_lines(assessment: Assessment, rank: int, system: str = "metric") -> list[str]:
    """Why the part of this rank gives when it does; ranks count from 1."""
    place = assessment.order[rank - 1]
    point, drawn = assessment.point, assessment.drawn
    lines = [
        f"{rank}. {part_name(place.part, place.side)}: {place.mode}",
        f"   {giving(gives_at(place, assessment.columns, system))}",
        f"   the look that tells: {consequence(place.part).look}",
        "",
        "   checks of this part (middle values; utilisation = 1 / factor on every load)",
    ]
    shown = opened(assessment)
    for number, row in enumerate(point.solved.rows):
        if row.part != place.part:
            continue
        case = shown.cases[number]
        used = float(point.solved.utilisation[number, 0, case])
        holds = float(point.solved.capacity[number, 0])
        band = ""
        if drawn is not None:
            low, high = np.quantile(drawn.utilisation[number], [0.05, 0.95])
            band = f" ({low:.2f} to {high:.2f})"
        lines += [
            f"   - {row.mode}: {live_cases()[case].label}",
            (
                f"     demand {quantity(used * holds, row.kind, system)} against "
                f"{quantity(holds, row.kind, system)}; utilisation {used:.2f}{band}"
            ),
            f"     {row.basis}",
        ]
        lines += [f"     {line}" for line in size_lines(shown, number, system)]
        more = (stress_line(assessment, number, system), parked_line(assessment, number, system))
        lines += [f"     {line}" for line in more if line]
        if row.caveat:
            lines.append(f"     caveat: {row.caveat}")
    worn = wears(assessment, place, system)
    if worn:
        lines += ["", "   how this part wears out (coarse)"]
        for told, basis in worn:
            lines += [f"   - {told}", f"     {basis}"]
    kept = bent_lines(assessment, place, system)
    if kept:
        lines += ["", *kept]
    if drawn is not None:
        lines += ["", f"   {MOVES}"]
        for mover in assessment.movers(place.kind):
            if mover.share < LEAST_SHARE:
                continue
            doubt = mover.doubt
            ends = span(doubt.low, doubt.high, doubt.kind, system)
            told = "; ".join(filter(None, [ends, alone(mover), doubt.source]))
            lines.append(f"   - {100.0 * mover.share:.0f} %: {doubt_name(doubt)}, {told}")
    return lines
