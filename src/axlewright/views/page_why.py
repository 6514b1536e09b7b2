"""Why one row stands where it stands: from its sentence down to formula, numbers and source."""

from dataclasses import dataclass

import numpy as np

from axlewright.duty import live_cases
from axlewright.strength import Assessment, Place
from axlewright.tables import consequence
from axlewright.views.answer import doubt_name
from axlewright.views.bent_words import bent_lines
from axlewright.views.drawing_ink import CLOSENESS
from axlewright.views.opened import alone, opened, size_lines, stress_line, wears
from axlewright.views.phrases import (
    closeness,
    gives,
    gives_at,
    parked_line,
    part_name,
    quantity,
    span,
    then,
)

LEAST_SHARE = 0.005  # of the doubt; less is not told


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckRow:
    """One check of the part: what is asked of it, what it holds, by which formula and sizes."""

    mode: str
    case: str
    demand: str
    holds: str
    used: str
    basis: str
    sizes: tuple[str, ...]
    caveat: str
    parked: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MoverRow:
    """One assumption or answer that moves the row: its share of the doubt, band and source.

    ``alone`` is what it does to the moment by itself, low end to high end.
    """

    share: str
    name: str
    band: str
    alone: str
    source: str
    given: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyPage:
    """Words of the page "Why" of one row in one bad moment."""

    rank: int
    of: int
    part: str
    title: str
    gives_at: str
    state: str
    then: str
    look: str
    checks: tuple[CheckRow, ...]
    wears: tuple[tuple[str, str], ...]
    bent: tuple[str, ...]
    movers: tuple[MoverRow, ...]


def why_page(assessment: Assessment, rank: int, system: str = "metric") -> WhyPage:
    """Why the part of this rank gives when it does; ranks count from 1."""
    place = assessment.order[rank - 1]
    name = part_name(place.part, place.side)
    return WhyPage(
        rank=rank,
        of=len(assessment.order),
        part=place.part,
        title=f"Why {name} {gives(place.part)} there",
        gives_at=gives_at(place, assessment.columns, system),
        state=CLOSENESS[closeness(place)],
        then=then(place.part),
        look=consequence(place.part).look,
        checks=_checks(assessment, place, system),
        wears=tuple(wears(assessment, place, system)),
        bent=tuple(line.strip() for line in bent_lines(assessment, place, system)),
        movers=_movers(assessment, place, system),
    )


def _checks(assessment: Assessment, place: Place, system: str) -> tuple[CheckRow, ...]:
    solved, drawn = assessment.point.solved, assessment.drawn
    out = []
    shown = opened(assessment)
    for number, row in enumerate(solved.rows):
        if row.part != place.part:
            continue
        case = shown.cases[number]
        used, holds = float(solved.utilisation[number, 0, case]), float(solved.capacity[number, 0])
        band = ""
        if drawn is not None:
            low, high = np.quantile(drawn.utilisation[number], [0.05, 0.95])
            band = f" ({low:.2f} to {high:.2f})"
        out.append(
            CheckRow(
                mode=row.mode,
                case=live_cases()[case].label,
                demand=quantity(used * holds, row.kind, system),
                holds=quantity(holds, row.kind, system),
                used=f"{used:.2f}{band}",
                basis=row.basis,
                sizes=tuple(
                    filter(
                        None,
                        (
                            *size_lines(shown, number, system),
                            stress_line(assessment, number, system),
                        ),
                    )
                ),
                caveat=row.caveat,
                parked=parked_line(assessment, number, system),
            )
        )
    return tuple(out)


def _movers(assessment: Assessment, place: Place, system: str) -> tuple[MoverRow, ...]:
    return tuple(
        MoverRow(
            share=f"{100.0 * mover.share:.0f} %",
            name=doubt_name(mover.doubt),
            band=span(mover.doubt.low, mover.doubt.high, mover.doubt.kind, system),
            alone=alone(mover).removeprefix("alone "),
            source=mover.doubt.source,
            given=mover.doubt.given,
        )
        for mover in assessment.movers(place.kind)
        if mover.share >= LEAST_SHARE
    )
