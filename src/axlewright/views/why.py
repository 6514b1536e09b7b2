"""One row of the order opened: from the sentence down to formula and source."""

from math import isfinite

import numpy as np

from axlewright.duty import live_cases
from axlewright.strength import Assessment, Place, bent_after, part_influences
from axlewright.tables import consequence
from axlewright.views.phrases import gives_at, part_name, quantity

TRACE = 1e-5  # rad; nobody measures less
SHARES = (1.0, 1.15, 1.3)  # of the moment at which the part gives


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
        if row.caveat:
            lines.append(f"     caveat: {row.caveat}")
    if place.kind in {"tube", "tube_joint"}:
        lines += ["", *_bent_lines(assessment, place, system)]
    if drawn is not None:
        lines += ["", "   what moves it most, with share of its doubt"]
        for doubt, share in part_influences(assessment.rig, point, drawn, place.kind):
            if share < 0.005:
                continue
            low, high = (quantity(end, doubt.kind, system, 3) for end in (doubt.low, doubt.high))
            lines.append(
                f"   - {100.0 * share:3.0f} %  {doubt.label}: {low} to {high}; {doubt.source}"
            )
    return lines


def _bent_lines(assessment: Assessment, place: Place, system: str) -> list[str]:
    """What stays bent after moments short of folding the tube, at the middle of everything."""
    point = assessment.point
    gives = float(point.solved.hardness[place.row, 0, place.case])
    lines = [f"   what stays bent after: {live_cases()[place.case].label}"]
    for share in SHARES:
        bent = bent_after(assessment.columns, point.housing, place.case, share * gives)
        told = ", ".join(
            f"{name} {_turn(float(value[0]), system)}"
            for name, value in (
                ("camber left", bent.camber_left),
                ("right", bent.camber_right),
                ("toe left", bent.toe_left),
                ("right", bent.toe_right),
            )
        )
        if not isfinite(float(bent.camber_left[0])):
            told = "the tube folds"
        lines.append(f"   - at {share:.0%} of that moment: {told}")
    return lines


def _turn(angle: float, system: str) -> str:
    return "none" if abs(angle) < TRACE else quantity(angle, "angle", system, 2)
