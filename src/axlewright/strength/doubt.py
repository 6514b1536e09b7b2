"""Which doubt matters: what to measure next, and how far the order moves with severity."""

from dataclasses import dataclass

import numpy as np

from axlewright.duty import live_cases
from axlewright.rig import Column, Doubt, Rig, doubts, scores
from axlewright.strength.appraisal import Appraised, Drawn, kind_of, parts_of
from axlewright.strength.order import first_shares

THIRD = 1.0 / 3.0


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
