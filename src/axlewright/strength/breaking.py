"""How often each part gives in hard use, and how long it lasts: what a choice of spares asks."""

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import harder_moments, live_cases
from axlewright.rig import Column
from axlewright.strength.appraisal import Appraised, Drawn, governing_case, in_reach
from axlewright.strength.assessment import Assessment


def breaking_rates(assessment: Assessment) -> dict[str, Column]:
    """How often each part that breaks gives in one metre of hard trail, by its key, (draws,).

    In its governing case alone, and zero where no moment in reach breaks it.
    """
    point, drawn = assessment.point, assessment.drawn
    cases = live_cases()
    hardness, governing = _in_governing_case(point, drawn)
    worst: dict[tuple[str, int], Column] = {}
    for row, entry in enumerate(point.solved.rows):
        if entry.breaks:
            key = (entry.part, int(governing[row]))
            worst[key] = np.minimum(worst.get(key, np.asarray(np.inf)), hardness[row])
    rates: dict[str, Column] = {}
    for (part, case), reached in worst.items():
        rates[part] = rates.get(part, np.zeros(1)) + harder_moments(cases[case].key, reached)
    return rates


def wear_lives(assessment: Assessment) -> dict[str, Column]:
    """Shortest life of each part that is used up, by its key, m of this owner's use, (draws,)."""
    lives: dict[str, Column] = {}
    for number, wear in enumerate(assessment.point.wear):
        drawn = assessment.drawn
        life = 1e3 * (wear.life_km if drawn is None else drawn.life[number])
        lives[wear.part] = np.minimum(lives.get(wear.part, np.asarray(np.inf)), life)
    return lives


def _in_governing_case(point: Appraised, drawn: Drawn | None) -> tuple[Column, NDArray[np.int64]]:
    """Hardness of every row in its governing case, (rows, draws), inf out of reach."""
    governing = governing_case(point.solved, point.reach)
    if drawn is None:
        index = governing[:, None, None]
        return np.take_along_axis(point.reach, index, -1)[..., 0], governing
    cases = len(live_cases())
    spread = np.full((*drawn.hardness.shape, cases), np.inf)
    np.put_along_axis(spread, governing[:, None, None], drawn.hardness[..., None], -1)
    return np.min(in_reach(spread), axis=-1), governing
