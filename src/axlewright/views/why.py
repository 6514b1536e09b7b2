"""One row of the order opened: from the sentence down to formula and source."""

import numpy as np

from axlewright.duty import live_cases
from axlewright.strength import Assessment, part_influences
from axlewright.tables import consequence
from axlewright.views.answer import doubt_name
from axlewright.views.bent_words import bent_lines
from axlewright.views.phrases import gives_at, parked_line, part_name, quantity, span


def why_lines(assessment: Assessment, rank: int, system: str = "metric") -> list[str]:
    """Why the part of this rank gives when it does; ranks count from 1."""
    place = assessment.order[rank - 1]
    point, drawn = assessment.point, assessment.drawn
    lines = [
        f"{rank}. {part_name(place.part, place.side)}: {place.mode}",
        f"   gives at {gives_at(place, assessment.columns, system)}",
        f"   the look that tells: {consequence(place.part).look}",
        "",
        "   checks of this part (middle values; utilisation = 1 / factor on every load)",
    ]
    for number, row in enumerate(point.solved.rows):
        if row.part != place.part:
            continue
        case = (
            int(drawn.governing[number])
            if drawn is not None
            else int(np.argmax(point.solved.utilisation[number, 0]))
        )
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
        parked = parked_line(assessment, number, system)
        if parked:
            lines.append(f"     {parked}")
        if row.caveat:
            lines.append(f"     caveat: {row.caveat}")
    kept = bent_lines(assessment, place, system)
    if kept:
        lines += ["", *kept]
    if drawn is not None:
        lines += ["", "   what moves it most, with share of its doubt"]
        for doubt, share in part_influences(assessment.rig, point, drawn, place.kind):
            if share < 0.005:
                continue
            ends = span(doubt.low, doubt.high, doubt.kind, system)
            lines.append(f"   - {100.0 * share:.0f} %: {doubt_name(doubt)}, {ends}; {doubt.source}")
    return lines
