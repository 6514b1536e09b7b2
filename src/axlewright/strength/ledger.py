"""Demands over capacities of every part and case, solved for how hard a moment each takes.

A check is a vector of ratios (demand over capacity) that has length 1 when the part gives; each
ratio is linear in the loads, so its standing part and its live part add. The hardness at which
the vector reaches length 1 is then the root of a quadratic, in every draw at once.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import CASES
from axlewright.physics.quantities import Num
from axlewright.rig import Column

CASE_ROWS = len(CASES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One way in which one part gives.

    ``part`` is the key of the consequences table; ``mode`` says what happens; ``basis`` names the
    formula and its source; ``kind`` is that of demand and capacity: torque (moments
    too) or force. ``pushes_only`` is true where only a positive ratio counts; ``breaks`` is false
    where the part only lets go a little (slips), which starts looseness.
    """

    part: str
    mode: str
    basis: str
    kind: str = "torque"
    pushes_only: bool = False
    breaks: bool = True
    caveat: str = ""


def each(values: Num) -> Column:
    """Values of each draw, (n, 1), ready to go against (n, case rows)."""
    return np.asarray(values, dtype=np.float64)[:, None]


class Ledger:
    """Collects rows with their ratios, (draws, case rows) and perhaps one of what binds."""

    def __init__(self, draws: int) -> None:
        self.rows: list[Row] = []
        self._draws = draws
        self._ratios: list[Sequence[Column]] = []
        self._holds: list[Column] = []

    def add(self, row: Row, *ratios: Column, holds: Num) -> None:
        """Write one row; ratios are (draws, case rows or one more), ``holds`` is (draws,)."""
        self.rows.append(row)
        self._ratios.append(ratios)
        self._holds.append(np.asarray(holds, dtype=np.float64))

    def capacities(self) -> Column:
        """Capacities as (rows, draws), N m or N."""
        out = np.empty((len(self._holds), self._draws))
        for place, holds in enumerate(self._holds):
            out[place] = holds
        return out

    def alike(self) -> Iterator[tuple[list[int], Column, Column | None]]:
        """Rows with as many ratios: places, ratios (rows, slots, draws, cases), and what binds.

        The last is (rows, slots, draws, 1), or None where nothing does.
        """
        grouped: dict[tuple[int, bool], list[int]] = {}
        for at, ratios in enumerate(self._ratios):
            bound = any(ratio.shape[-1] > CASE_ROWS and ratio[:, -1].any() for ratio in ratios)
            grouped.setdefault((len(ratios), bound), []).append(at)
        for (slots, bound), places in grouped.items():
            out = np.empty((len(places), slots, self._draws, CASE_ROWS))
            held = np.zeros((*out.shape[:-1], 1)) if bound else None
            for row, place in enumerate(places):
                for slot, ratio in enumerate(self._ratios[place]):
                    out[row, slot] = ratio[:, :CASE_ROWS]
                    if held is not None and ratio.shape[-1] > CASE_ROWS:
                        held[row, slot, :, 0] = ratio[:, -1]
            yield places, out, held


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """Answers of a ledger: arrays are (rows, draws, live cases).

    ``hardness`` is the factor on the live part at which the row gives (inf: never);
    ``utilisation`` is one over the factor on all loads of the case at which it gives;
    ``capacity`` is (rows, draws); ``held`` (rows, draws) is the share of it that is taken up
    with nothing on the axle, by what binds.
    """

    rows: tuple[Row, ...]
    hardness: Column
    utilisation: Column
    capacity: Column
    held: Column


STANDS = np.array([1.0 if case.standing else 0.0 for case in CASES[1:]])


def solve(ledger: Ledger) -> Solved:
    """Hardness and utilisation of every row in every case."""
    capacity = ledger.capacities()
    shape = (*capacity.shape, len(CASES) - 1)
    hardness, utilisation = np.empty(shape), np.empty(shape)
    taken = np.zeros_like(capacity)
    for places, ratios, held in ledger.alike():
        pushes = np.array([ledger.rows[place].pushes_only for place in places])
        hardness[places], utilisation[places] = _solved(ratios, held, pushes)
        if held is not None:
            taken[places] = np.sqrt(np.sum(held[..., 0] ** 2, axis=1))
    return Solved(
        rows=tuple(ledger.rows),
        hardness=hardness,
        utilisation=utilisation,
        capacity=capacity,
        held=taken,
    )


def _solved(
    ratios: Column, held: Column | None, pushes: NDArray[np.bool_]
) -> tuple[Column, Column]:
    """Hardness and utilisation of rows with as many ratios, (rows, draws, live cases)."""
    stands, live = ratios[..., :1], ratios[..., 1:]
    total = stands * STANDS
    total += live
    square = _summed(live, live)
    mixed = _summed(live, stands) * STANDS
    constant = _summed(stands, stands) * STANDS - 1.0
    if held is not None:  # what binds is there in every case
        total += held
        mixed += _summed(live, held)
        constant += 2.0 * _summed(stands, held) * STANDS + _summed(held, held)
    utilisation = np.sqrt(_summed(total, total))
    with np.errstate(divide="ignore", invalid="ignore"):
        root = mixed * mixed
        root -= square * constant
        np.maximum(root, 0.0, out=root)
        np.sqrt(root, out=root)
        root -= mixed
        hardness = np.where(square > 1e-18, root / square, np.inf)
    hardness[constant >= 0.0] = 0.0
    if pushes.any():
        one_base, one_live = stands[pushes, 0] * STANDS, live[pushes, 0]
        if held is not None:
            one_base = one_base + held[pushes, 0]
        with np.errstate(divide="ignore", invalid="ignore"):
            forward = np.where(one_live > 1e-9, (1.0 - one_base) / one_live, np.inf)
        hardness[pushes] = np.where(one_base >= 1.0, 0.0, forward)
        utilisation[pushes] = np.maximum(total[pushes, 0], 0.0)
    return hardness, utilisation


def _summed(one: Column, other: Column) -> Column:
    """Products summed over the slots."""
    made = one[:, 0] * other[:, 0]
    for slot in range(1, one.shape[1]):
        made += one[:, slot] * other[:, slot]
    return np.asarray(made)
