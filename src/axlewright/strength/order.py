"""The two orders: what gives first in one bad moment, and what is used up first."""

from dataclasses import dataclass

import numpy as np

from axlewright.duty import in_ground_terms, live_cases
from axlewright.rig import Column, Columns
from axlewright.strength.appraisal import Appraised, Drawn, governing_case, margins, parts_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One part's place in the order of one bad moment.

    ``first`` is the share of draws in which it gives first at equal severity; ``margin`` is how
    hard a moment it takes over its reference (middle, low, high of 90 %); ``takes`` is the same
    in the ground's own terms (SI, with its kind), for the case it gives in most often.
    """

    part: str
    mode: str
    row: int
    case: int
    first: float
    margin: float
    margin_low: float
    margin_high: float
    takes: float
    takes_low: float
    takes_high: float
    takes_kind: str
    utilisation: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WearPlace:
    """One part's place in the order of wearing out; lives in km of this use."""

    part: str
    mode: str
    number: int
    first: float
    life: float
    life_low: float
    life_high: float


def bad_moment_order(
    point: Appraised, columns: Columns, drawn: Drawn | None = None
) -> tuple[Place, ...]:
    """Parts in the order in which they give, first first.

    By the share of draws in which a part goes first, then by its middle margin; without draws,
    by the margin at the point.
    """
    parts = parts_of(point.solved)
    margin = drawn.margin if drawn is not None else margins(point.solved, point.reach)
    first = first_shares(margin)
    governing = governing_case(point.solved, point.reach)
    least = np.min(point.reach[:, 0], axis=-1)
    loud = np.max(point.solved.utilisation[:, 0], axis=-1)
    places = []
    for number, part in enumerate(parts):
        rows = [
            index
            for index, row in enumerate(point.solved.rows)
            if row.part == part and row.breaks
        ]
        row = min(rows, key=lambda index: (least[index], -loud[index]))
        case = int(governing[row])
        low, middle, high = _middle(margin[number])
        hardness = drawn.hardness[row] if drawn is not None else point.solved.hardness[row, :, case]
        ends = np.array(_middle(hardness))
        takes, kind = in_ground_terms(live_cases()[case], ends, columns)
        places.append(
            Place(
                part=part,
                mode=point.solved.rows[row].mode,
                row=row,
                case=case,
                first=float(first[number]),
                margin=middle,
                margin_low=low,
                margin_high=high,
                takes_low=float(takes[0]),
                takes=float(takes[1]),
                takes_high=float(takes[2]),
                takes_kind=kind,
                utilisation=float(point.solved.utilisation[row, 0, case]),
            )
        )
    return tuple(sorted(places, key=lambda place: (-round(place.first, 3), place.margin)))


def wear_order(point: Appraised, drawn: Drawn | None = None) -> tuple[WearPlace, ...]:
    """What is used up first, first first; one row a part, its shortest life."""
    life = (
        drawn.life if drawn is not None else np.stack([wear.life_km for wear in point.wear])
    )
    best: dict[str, int] = {}
    for number, wear in enumerate(point.wear):
        known = best.get(wear.part)
        if known is None or np.median(life[number]) < np.median(life[known]):
            best[wear.part] = number
    numbers = list(best.values())
    first = first_shares(1.0 * life[numbers])
    places = []
    for share, number in zip(first, numbers, strict=True):
        low, middle, high = _middle(life[number])
        wear = point.wear[number]
        places.append(
            WearPlace(
                part=wear.part,
                mode=wear.mode,
                number=number,
                first=float(share),
                life=middle,
                life_low=low,
                life_high=high,
            )
        )
    return tuple(sorted(places, key=lambda place: (-round(place.first, 3), place.life)))


def first_shares(margin: Column) -> Column:
    """Share of draws in which each part is least, (parts,); draws in which none is count none."""
    least = np.argmin(margin, axis=0)
    within = np.isfinite(np.min(margin, axis=0))
    counts = np.bincount(least[within], minlength=margin.shape[0])
    return np.asarray(counts / margin.shape[1])


def _middle(values: Column) -> tuple[float, float, float]:
    low, middle, high = np.quantile(values, [0.05, 0.5, 0.95], method="nearest")
    return float(low), float(middle), float(high)
