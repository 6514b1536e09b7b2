"""What acts on what: which doubts can move which part, and from which sizes a check is made.

Draws alone cannot tell a small share of a doubt from chance. Here each doubt is pushed to its ends
with all else at its middle, and each size a little: what then does not move has no part in it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.measurement import NINETY
from axlewright.rig import Column, Columns, Rig, Words, doubts, pushed_columns
from axlewright.strength.appraisal import Appraised, appraise, kind_of, margins, parts_of

ENDS: Final = (-NINETY, NINETY)  # of nine in ten, as normal scores
LEAST: Final = 0.01  # a doubt that moves a part by less, end to end, does not act on it
NEAR: Final = 2.0  # cases in which a part takes more than this times its least do not count
STEP: Final = 1e-4  # share by which a size is pushed


@dataclass(frozen=True, slots=True, kw_only=True)
class Acting:
    """Which doubts act on which kinds of part; arrays are (doubts, kinds).

    ``low`` and ``high`` are the margin of the part with that doubt alone at its low and high
    end, over the margin at the middle of everything; NaN where either is out of reach.
    """

    acts: NDArray[np.bool_]
    low: Column
    high: Column


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """One size that a check is made of: its name, its value in SI, and how much it bears.

    ``power`` is the share by which the check moves for one per cent of the size, over one per
    cent: 3 where it goes with the cube.
    """

    quantity: str
    value: float
    power: float


def acting_doubts(rig: Rig, point: Appraised) -> Acting:
    """Push every doubt of the rig to both ends, one at a time."""
    names = [doubt.quantity for doubt in doubts(rig)]
    columns = pushed_columns(rig, names, ENDS)
    pushed = appraise(columns, rig.words, point.housing.order)
    was = margins(point.solved, point.reach)
    with np.errstate(divide="ignore", invalid="ignore"):
        moved = margins(pushed.solved, pushed.reach) / was
    moved = np.where(np.isfinite(moved), moved, np.nan).reshape(len(was), len(ENDS), len(names))
    return Acting(
        acts=_acts(point, pushed, len(names)), low=moved[:, 0].T.copy(), high=moved[:, 1].T.copy()
    )


def _acts(point: Appraised, pushed: Appraised, count: int) -> NDArray[np.bool_]:
    parts = parts_of(point.solved)
    was, now = point.solved.hardness, pushed.solved.hardness
    with np.errstate(divide="ignore", invalid="ignore"):
        moved = np.abs(now / was - 1.0)
    moved = np.where(np.isinf(was) & np.isinf(now), 0.0, np.nan_to_num(moved, nan=0.0))
    least = np.full(len(parts), np.inf)
    place = {part: number for number, part in enumerate(parts)}
    rows = [row for row, entry in enumerate(point.solved.rows) if entry.breaks]
    of = {row: place[kind_of(point.solved.rows[row].part)] for row in rows}
    for row in rows:
        least[of[row]] = min(least[of[row]], float(was[row, 0].min()))
    out = np.zeros((count, len(parts)), dtype=np.bool_)
    for row in rows:
        near = was[row, 0] <= NEAR * least[of[row]]
        most = np.max(moved[row][:, near], axis=-1, initial=0.0).reshape(len(ENDS), count)
        out[:, of[row]] |= np.max(most, axis=0) > LEAST
    return out


def sizes_of(
    columns: Columns, words: Words, point: Appraised, cases: Sequence[int]
) -> tuple[list[list[Size]], list[list[Size]]]:
    """From which sizes each row's capacity is made, and its demand in one case; largest first.

    ``cases`` gives each row's case, as the live cases count. Sizes that are nought are left out.
    """
    names = [name for name, values in columns.items() if abs(float(values[0])) > 0.0]
    lanes = {name: np.full(len(names), float(values[0])) for name, values in columns.items()}
    for number, name in enumerate(names):
        lanes[name][number] *= 1.0 + STEP
    pushed = appraise(lanes, words, point.housing.order).solved
    at = np.array(cases)[:, None, None]
    used, was = (
        np.take_along_axis(each.utilisation, at, -1)[..., 0] * each.capacity
        for each in (pushed, point.solved)
    )
    held = [
        _sizes(columns, names, *pair)
        for pair in zip(pushed.capacity, point.solved.capacity, strict=True)
    ]
    asked = [_sizes(columns, names, *pair) for pair in zip(used, was, strict=True)]
    return held, asked


def _sizes(columns: Columns, names: Sequence[str], now: Column, was: Column) -> list[Size]:
    power = (now / was - 1.0) / STEP if was[0] else np.zeros_like(now)
    found = [
        Size(quantity=name, value=float(columns[name][0]), power=float(power[number]))
        for number, name in enumerate(names)
        if abs(power[number]) > LEAST
    ]
    return sorted(found, key=lambda size: -abs(size.power))
