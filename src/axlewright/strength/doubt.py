"""Which doubt matters: what to measure next, and how far the order moves with severity."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from axlewright.duty import live_cases
from axlewright.rig import Column, Doubt, Rig, doubts, scores
from axlewright.strength.acting import Acting
from axlewright.strength.appraisal import Appraised, Drawn, kind_of, parts_of
from axlewright.strength.order import first_parts, shares_of

THIRD = 1.0 / 3.0
SELDOM = 0.01  # a part that goes first in fewer draws does not count as leading
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Mover:
    """One doubt that moves one kind of part.

    ``share`` is its share of the doubt about the part's margin; ``low`` and ``high`` are the
    part's margin with that doubt alone at either end, over the one at the middle; NaN where the
    part is then out of reach.
    """

    doubt: Doubt
    share: float
    low: float
    high: float


def influences(rig: Rig, point: Appraised, drawn: Drawn, acting: Acting) -> tuple[Influence, ...]:
    """Every doubt of the rig, the one that moves the order most first.

    A doubt that acts on no part which goes first now and then moves nothing but by chance.
    """
    parts = parts_of(point.solved)
    first = first_parts(drawn.margin)
    leading = shares_of(first, len(parts))
    leader = int(np.argmax(leading))
    every = doubts(rig)
    scored = _scored(every, drawn)
    shared = _shared(scored, drawn.margin[leader]) * acting.acts[:, leader]
    matters = np.any(acting.acts[:, leading >= SELDOM], axis=-1)
    third = max(int(drawn.draws * THIRD), 1)
    out = []
    for doubt, score, share, counts in zip(every, scored, shared, matters, strict=True):
        if not counts:
            out.append(_idle(doubt, parts[leader]))
            continue
        order = np.argsort(score, kind="stable")
        low = shares_of(first[order[:third]], len(parts))
        high = shares_of(first[order[-third:]], len(parts))
        out.append(
            Influence(
                doubt=doubt,
                swing=float(np.max(np.abs(high - low))),
                share=float(share),
                leads_low=parts[int(np.argmax(low))],
                leads_high=parts[int(np.argmax(high))],
            )
        )
    return tuple(sorted(out, key=lambda item: -(item.swing + 0.2 * item.share)))


def _idle(doubt: Doubt, leader: str) -> Influence:
    return Influence(doubt=doubt, swing=0.0, share=0.0, leads_low=leader, leads_high=leader)


def part_influences(
    rig: Rig, point: Appraised, drawn: Drawn, acting: Acting, kind: str, most: int = 8
) -> tuple[Mover, ...]:
    """Doubts that act on one kind of part, the one that moves its margin most first."""
    every = doubts(rig)
    number = parts_of(point.solved).index(kind)
    shared = _shared(_scored(every, drawn), drawn.margin[number])
    movers = [
        Mover(
            doubt=doubt,
            share=float(shared[at]),
            low=float(acting.low[at, number]),
            high=float(acting.high[at, number]),
        )
        for at, doubt in enumerate(every)
        if acting.acts[at, number]
    ]
    return tuple(sorted(movers, key=lambda mover: -mover.share)[:most])


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
    rig: Rig,
    point: Appraised,
    drawn: Drawn,
    acting: Acting,
    kinds: Sequence[str],
    most: int = 3,
) -> tuple[Remembered, ...]:
    """Share of memory in the doubt of each kind of part, by the doubts' main effects.

    Doubts are drawn apart from one another, so each one's share is its squared correlation with
    the log of the margin, less what chance alone would give, over the sum of all that act.
    """
    every = doubts(rig)
    scored = _scored(every, drawn)
    parts = parts_of(point.solved)
    recalled = np.array([doubt.remembered for doubt in every])
    out = []
    for kind in kinds:
        square = _shared(scored, drawn.margin[parts.index(kind)])
        square = np.maximum(square - (1.0 - square) / max(drawn.draws - 2, 1) * CHANCE, 0.0)
        square = square * acting.acts[:, parts.index(kind)]
        part = square / max(float(square.sum()), 1e-12)
        ranked = sorted(np.flatnonzero(recalled), key=lambda number: -part[number])
        leading = tuple((every[number], float(part[number])) for number in ranked[:most])
        out.append(Remembered(kind=kind, share=float(part[recalled].sum()), most=leading))
    return tuple(out)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeverityMove:
    """Which part leads when one case is as mild or as hard as its band allows.

    ``leads`` is the one that leads as it is taken, at the middle of everything else as they are.
    """

    case: str
    leads: str
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
        for scale in (1.0, factor, 1.0 / factor):
            moved = reach.copy()
            moved[:, number] *= scale
            leads.append(names[int(np.argmin(np.min(moved, axis=-1)))])
        now, mild, hard = leads
        out.append(SeverityMove(case=case.key, leads=now, leads_mild=mild, leads_hard=hard))
    return tuple(out)


def _scored(every: Sequence[Doubt], drawn: Drawn) -> Column:
    """Scores of each doubt, (doubts, draws), about their mean and of unit length."""
    scored = np.stack([scores(drawn.seed, doubt.quantity, 0, drawn.draws) for doubt in every])
    scored -= scored.mean(axis=-1, keepdims=True)
    return np.asarray(scored / np.linalg.norm(scored, axis=-1, keepdims=True))


def _shared(scored: Column, margin: Column) -> Column:
    """Squared correlation of each doubt with the log of a margin, (doubts,)."""
    leading = np.log(np.clip(margin, 1e-3, 1e3))
    leading = leading - leading.mean()
    return np.asarray((scored @ leading) ** 2 / max(float(leading @ leading), 1e-12))
