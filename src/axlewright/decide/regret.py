"""The arithmetic of choosing: what a choice costs on average, sorrow, and the worth of a look.

Costs are (changes, n): one row a change, one column a draw, the same world in a column for every
change. Less is better.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.rig import Column

IDLE: Final = 12  # scores that mean nothing, to tell what chance alone would seem worth


@dataclass(frozen=True, slots=True, kw_only=True)
class Sorrow:
    """How a choice looks afterwards.

    ``share`` of the draws in which another would have been cheaper by more than the least that
    anybody minds, ``about`` by how much in the middle of those, ``mean`` over all draws, and
    ``other``, the change that would most often have been the better one (-1: none).
    """

    share: float
    about: float
    mean: float
    other: int


def cheapest(costs: Column) -> int:
    """Row with the least cost on average."""
    return int(np.argmin(np.mean(costs, axis=1)))


def sorrow(costs: Column, chosen: int, least: float = 0.0) -> Sorrow:
    """What is lost by a choice once everything has turned out.

    References
    ----------
    raiffa-schlaifer (opportunity loss), from memory.
    """
    lost = costs[chosen] - np.min(costs, axis=0)
    sorry = lost > least
    other = -1
    if sorry.any():
        best = np.argmin(costs[:, sorry], axis=0)
        other = int(np.argmax(np.bincount(best, minlength=costs.shape[0])))
    return Sorrow(
        share=float(np.mean(sorry)),
        about=float(np.median(lost[sorry])) if sorry.any() else 0.0,
        mean=float(np.mean(lost)),
        other=other,
    )


def worth_of_knowing_all(costs: Column) -> float:
    """What knowing everything beforehand would save on average; equals the least mean sorrow."""
    return float(np.min(np.mean(costs, axis=1)) - np.mean(np.min(costs, axis=0)))


def worth_of_a_look(
    costs: Column, so: NDArray[np.bool_], seen: float = 1.0, told: float = 0.0
) -> float:
    """What a look at something that is so or is not would save on average.

    ``so`` is (n,); the look says yes with chance ``seen`` where it is so, and ``told`` where it
    is not. The choice after each of its two answers is the cheapest given that answer.
    """
    share = np.where(so, seen, told)
    after = 0.0
    for weight in (share, 1.0 - share):
        after += float(np.min(costs @ weight)) / so.size
    return max(float(np.min(np.mean(costs, axis=1))) - after, 0.0)


def worth_of_a_reading(costs: Column, score: Column, sharpness: float = 1.0) -> float:
    """What measuring one quantity would save on average.

    ``score`` is its standard normal score, (n,); ``sharpness`` is the correlation of the reading
    with it (1: exact). Each change's cost, against the choice without a reading, is fitted by
    Hermite polynomials of the score up to the third; a reading of correlation r keeps r to the
    k of the k-th. Scores that mean nothing (the same ones, moved along the draws) seem to be worth
    something too: their mean is taken off, and what is worth no more than any of them is nothing.
    """
    base = costs - costs[cheapest(costs)]
    worth = _fitted_worth(base, score, sharpness)
    moved = [score.size * place // (IDLE + 1) for place in range(1, IDLE + 1)]
    idle = [_fitted_worth(base, np.roll(score, by), sharpness) for by in moved]
    return worth - sum(idle) / IDLE if worth > max(idle) else 0.0


def _fitted_worth(base: Column, score: Column, sharpness: float) -> float:
    terms = np.stack([np.ones_like(score), score, score**2 - 1.0, score**3 - 3.0 * score])
    fit = np.linalg.solve(terms @ terms.T, terms @ base.T)
    kept = sharpness ** np.arange(4.0)
    after = (fit * kept[:, None]).T @ terms
    return float(min(np.mean(after, axis=1)) - np.mean(np.min(after, axis=0)))


def fewer_draws(one: Column, other: Column) -> float:
    """How many times as many unpaired draws would tell two costs apart as sharply as these."""
    paired = float(np.var(one - other))
    apart = float(np.var(one) + np.var(other))
    return apart / paired if paired > 0.0 else float("inf")


def standard_error(one: Column, other: Column) -> float:
    """Standard error of the mean difference of two paired costs."""
    return float(np.std(one - other, ddof=1) / np.sqrt(one.size))
