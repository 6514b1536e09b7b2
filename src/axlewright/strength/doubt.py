"""Which doubt matters: what to measure next, and how far the order moves with severity."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from axlewright.duty import live_cases
from axlewright.rig import Column, Doubt, Rig, doubts, scores
from axlewright.strength.appraisal import Appraised, Drawn, kind_of, parts_of
from axlewright.strength.order import first_shares

THIRD = 1.0 / 3.0
CHANCE = 4.0  # squared correlations below this many times chance's mean count as none


@dataclass(frozen=True, slots=True, kw_only=True)
class Influence:
    """How much one doubt matters.

    ``swing`` is by how much the leading part's share of draws changes between the low and the
    high third of this doubt; ``share`` is its share of the doubt about the leading part's margin
    (squared correlation); ``leads_low`` and ``leads_high`` name the part that goes first most
    often at either end; ``swaps`` is true where they differ.
    """

    doubt: Doubt
    swing: float
    share: float
    leads_low: str
    leads_high: str

    @property
    def swaps(self) -> bool:
        """Whether the leading part is another at the other end of this doubt."""
        return self.leads_low != self.leads_high


def influences(rig: Rig, point: Appraised, drawn: Drawn) -> tuple[Influence, ...]:
    """Every doubt of the rig, the one that moves the order most first."""
    parts = parts_of(point.solved)
    shares = first_shares(drawn.margin)
    leader = int(np.argmax(shares))
    leading = np.log(np.clip(drawn.margin[leader], 1e-3, 1e3))
    out = []
    for doubt in doubts(rig):
        score = scores(drawn.seed, doubt.quantity, 0, drawn.draws)
        order = np.argsort(score, kind="stable")
        third = max(int(drawn.draws * THIRD), 1)
        low = first_shares(drawn.margin[:, order[:third]])
        high = first_shares(drawn.margin[:, order[-third:]])
        out.append(
            Influence(
                doubt=doubt,
                swing=float(np.max(np.abs(high - low))),
                share=_shared(score, leading),
                leads_low=parts[int(np.argmax(low))],
                leads_high=parts[int(np.argmax(high))],
            )
        )
    return tuple(sorted(out, key=lambda item: -(item.swing + 0.2 * item.share)))


def part_influences(
    rig: Rig, point: Appraised, drawn: Drawn, kind: str, most: int = 8
) -> tuple[tuple[Doubt, float], ...]:
    """Doubts that move one kind of part's margin most, with their shares of its doubt."""
    index = parts_of(point.solved).index(kind)
    margin = np.log(np.clip(drawn.margin[index], 1e-3, 1e3))
    shared = [
        (doubt, _shared(scores(drawn.seed, doubt.quantity, 0, drawn.draws), margin))
        for doubt in doubts(rig)
    ]
    return tuple(sorted(shared, key=lambda pair: -pair[1])[:most])


@dataclass(frozen=True, slots=True, kw_only=True)
class Remembered:
    """How much of one kind of part's doubt stands on memory.

    ``share`` is the share of the variance of the log of its margin that comes from assumptions
    for which no source was read; ``most`` are the largest of them, each with its own share.
    """

    kind: str
    share: float
    most: tuple[tuple[Doubt, float], ...]


def remembered_shares(
    rig: Rig, point: Appraised, drawn: Drawn, kinds: Sequence[str], most: int = 3
) -> tuple[Remembered, ...]:
    """Share of memory in the doubt of each kind of part, by the doubts' main effects.

    Doubts are drawn apart from one another, so each one's share is its squared correlation with
    the log of the margin, less what chance alone would give, over the sum of all.
    """
    every = doubts(rig)
    scored = np.stack([scores(drawn.seed, doubt.quantity, 0, drawn.draws) for doubt in every])
    scored -= scored.mean(axis=-1, keepdims=True)
    scored /= np.linalg.norm(scored, axis=-1, keepdims=True)
    parts = parts_of(point.solved)
    recalled = np.array([doubt.remembered for doubt in every])
    out = []
    for kind in kinds:
        margin = np.log(np.clip(drawn.margin[parts.index(kind)], 1e-3, 1e3))
        margin = margin - margin.mean()
        square = (scored @ margin) ** 2 / max(float(margin @ margin), 1e-12)
        square = np.maximum(square - (1.0 - square) / max(drawn.draws - 2, 1) * CHANCE, 0.0)
        part = square / max(float(square.sum()), 1e-12)
        ranked = sorted(np.flatnonzero(recalled), key=lambda number: -part[number])
        leading = tuple((every[number], float(part[number])) for number in ranked[:most])
        out.append(Remembered(kind=kind, share=float(part[recalled].sum()), most=leading))
    return tuple(out)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeverityMove:
    """Which part leads when one case is as mild or as hard as its band allows."""

    case: str
    leads_mild: str
    leads_hard: str


def severity_moves(point: Appraised, factor: float = 1.6) -> tuple[SeverityMove, ...]:
    """How far the order moves when each case's severity goes to the ends of its band."""
    rows = [index for index, row in enumerate(point.solved.rows) if row.breaks]
    names = [kind_of(point.solved.rows[index].part) for index in rows]
    reach = point.reach[rows, 0]
    out = []
    for number, case in enumerate(live_cases()):
        if not case.severity:
            continue
        leads = []
        for scale in (factor, 1.0 / factor):
            moved = reach.copy()
            moved[:, number] *= scale
            leads.append(names[int(np.argmin(np.min(moved, axis=-1)))])
        out.append(SeverityMove(case=case.key, leads_mild=leads[0], leads_hard=leads[1]))
    return tuple(out)


def _shared(score: Column, leading: Column) -> float:
    if np.std(leading) < 1e-12:
        return 0.0
    return float(np.corrcoef(score, leading)[0, 1] ** 2)
