"""What has given so far, and what has not: the draws that the rig's own past makes likely."""

from collections.abc import Collection
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.decide.tried import Tried, expected
from axlewright.rig import Column
from axlewright.tables import option_mends

FAINT: Final = 1e-12


def likely(
    found: Tried,
    hard: Column,
    distance: Column,
    gave: Collection[str],
    at_once: Collection[str] = (),
) -> Column:
    """Likelihood of a rig's past in each draw, (n,), the likeliest 1.

    ``hard`` is the past distance in thousands of km of hard trail and ``distance`` the same in m.
    ``gave`` are the kinds of part that have given, ``at_once`` those of them that did so in one
    bad moment. Every other part has not: moments that would have broken it did not come.
    """
    often = expected(found.reach, hard)
    kept = {number for number, kind in enumerate(found.parts) if kind not in gave}
    score = -np.sum(np.where(np.isin(found.gives, list(kept)), often, 0.0), axis=0)
    for kind in at_once:
        if kind in found.parts:
            here = found.gives == found.parts.index(kind)
            rate = np.sum(np.where(here, often, 0.0), axis=0)
            score = score + np.log(np.maximum(-np.expm1(-rate), FAINT))
    for kind, life in zip(found.wears, found.life, strict=True):
        if kind in option_mends() and option_mends()[kind].housing and kind not in gave:
            score = np.where(life < distance, score + np.log(FAINT), score)
    return np.asarray(np.exp(score - np.max(score)))


def places_of(weights: Column, count: int) -> NDArray[np.int64]:
    """So many draws to go on with: each as often as its weight says, in order, without luck."""
    share = np.cumsum(weights) / np.sum(weights)
    at = (np.arange(count) + 0.5) / count
    return np.asarray(np.minimum(np.searchsorted(share, at), weights.size - 1))


def told_apart(weights: Column) -> float:
    """How many draws the weighted ones are worth: (sum w)^2 / sum w^2."""
    return float(np.sum(weights) ** 2 / np.sum(weights**2))


def picked(found: Tried, places: NDArray[np.int64]) -> Tried:
    """The same rig over the draws picked."""
    return replace(
        found,
        reach=found.reach[:, places],
        gives=found.gives[:, places],
        margins=found.margins[:, places],
        life=found.life[:, places],
    )


def joined(one: Tried, other: Tried) -> Tried:
    """The same rig over the draws of both."""
    return replace(
        one,
        reach=np.concatenate([one.reach, other.reach], axis=-1),
        gives=np.concatenate([one.gives, other.gives], axis=-1),
        margins=np.concatenate([one.margins, other.margins], axis=-1),
        life=np.concatenate([one.life, other.life], axis=-1),
    )
