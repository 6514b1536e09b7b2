"""One rig tried over draws: what gives in each case, how hard a moment it takes, and lives."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.decide.hands import Hands
from axlewright.duty import hard_trail_cycles, live_cases
from axlewright.rig import (
    Column,
    Rig,
    columns_at,
    mended_parts,
    normal_share,
    point_columns,
    scores,
)
from axlewright.strength import (
    Appraised,
    appraise,
    housing_mass,
    kind_of,
    lowest_point,
    parts_of,
)
from axlewright.tables import weld_detail

Progress: TypeAlias = Callable[[int, int], None]
Kinds: TypeAlias = NDArray[np.int64]
Block: TypeAlias = tuple[Column, Kinds, Column, Column]
BLOCK: Final = 256
HANDFUL: Final = 4 * BLOCK  # draws that are given away at once
MOMENTS: Final = 6  # hardest moments of each case that are told apart in one look ahead
SEAT: Final = "cracks at the spring seat's weld"
SEAT_DETAIL: Final = "pad_on_tube_to_100mm"
NEW_WELD: Final = "new_weld"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """One rig over draws.

    ``parts`` are kinds of part; ``reach`` is (cases, n): how hard a moment of each case it takes
    until something gives, and ``gives`` (cases, n) what that is. ``margin`` and ``first`` are the
    least of all cases and its part, (n,); ``margins`` (parts, n) is that of each part. ``life`` is
    (wears, n) in m of this use, for the kinds ``wears``. ``mass`` and ``lowest`` are those of
    the middle, kg and m.
    """

    parts: tuple[str, ...]
    reach: Column
    gives: Kinds
    margins: Column
    wears: tuple[str, ...]
    life: Column
    mass: float
    lowest: float

    @property
    def margin(self) -> Column:
        """How hard a moment it takes until the first part gives, (n,)."""
        return np.asarray(np.min(self.margins, axis=0))

    @property
    def first(self) -> Kinds:
        """Part that gives first, (n,); -1 where nothing in reach does."""
        return np.where(np.isfinite(self.margin), np.argmin(self.margins, axis=0), -1)

    @property
    def leader(self) -> str:
        """Kind of part that goes first in most draws; empty where nothing does."""
        first = self.first[self.first >= 0]
        return self.parts[int(np.argmax(np.bincount(first)))] if first.size else ""


def tried(
    rig: Rig,
    draws: int,
    seed: int,
    *,
    detail: str = "",
    places: Kinds | None = None,
    progress: Progress | None = None,
    hands: Hands | None = None,
) -> Tried:
    """Try one rig over draws; ``detail`` is a weld detail that a change has added to the tubes.

    With ``places`` only those of the draws are tried, each as often as it is named. How many
    ``hands`` share the work changes nothing.
    """
    hands = hands or Hands()
    rig = rig.with_word("mended", mended_parts(rig))
    columns = point_columns(rig)
    point = appraise(columns, rig.words)
    wanted, back = np.arange(draws), np.arange(draws)
    if places is not None:
        wanted, back = np.unique(places, return_inverse=True)
    step = HANDFUL if hands.many else BLOCK
    pieces = [
        _Piece(
            rig=rig,
            order=point.housing.order,
            parts=parts_of(point.solved),
            places=wanted[start : start + step],
            seed=seed,
        )
        for start in range(0, wanted.size, step)
    ]
    blocks = []
    for number, made in enumerate(hands.each(_done, pieces), 1):
        blocks.append(made)
        if progress is not None:
            progress(min(number * step, wanted.size), wanted.size)
    reach, gives, margin, life = (
        np.concatenate(each, axis=-1)[..., back] for each in zip(*blocks, strict=True)
    )
    wears, life = _wears(point, life, detail)
    return Tried(
        parts=parts_of(point.solved),
        reach=reach,
        gives=gives,
        margins=margin,
        wears=wears,
        life=1e3 * life,
        mass=float(housing_mass(columns)[0]),
        lowest=float(lowest_point(columns)[0]),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """Some draws of one rig, to be tried anywhere."""

    rig: Rig
    order: Mapping[str, tuple[str, ...]]
    parts: tuple[str, ...]
    places: Kinds
    seed: int


def _done(piece: _Piece) -> Block:
    blocks = []
    for start in range(0, piece.places.size, BLOCK):
        some = columns_at(piece.rig, piece.places[start : start + BLOCK], piece.seed)
        blocks.append(_block(appraise(some, piece.rig.words, piece.order), piece.parts))
    reach, gives, margin, life = (
        np.concatenate(each, axis=-1) for each in zip(*blocks, strict=True)
    )
    return reach, gives, margin, life


def _block(found: Appraised, parts: tuple[str, ...]) -> Block:
    place = {kind: number for number, kind in enumerate(parts)}
    rows = found.solved.rows
    breaking = [index for index, row in enumerate(rows) if row.breaks]
    shape = (len(parts), *found.reach.shape[1:])
    by_part = np.full(shape, np.inf)  # (parts, n, cases)
    for index in breaking:
        here = place[kind_of(rows[index].part)]
        np.minimum(by_part[here], found.reach[index], out=by_part[here])
    gives = np.argmin(by_part, axis=0).T
    reach = np.min(by_part, axis=0).T
    life = np.stack([np.broadcast_to(wear.life_km, reach.shape[1:]) for wear in found.wear])
    return reach, gives, np.min(by_part, axis=-1), life


def _wears(point: Appraised, life: Column, detail: str) -> tuple[tuple[str, ...], Column]:
    """Lives by kind of part, the shortest of each; a new weld on the tube is one of its own."""
    kinds: dict[str, list[int]] = {}
    for number, wear in enumerate(point.wear):
        kinds.setdefault(kind_of(wear.part), []).append(number)
    rows = {kind: np.min(life[numbers], axis=0) for kind, numbers in kinds.items()}
    if detail:
        seats = [number for number, wear in enumerate(point.wear) if wear.mode == SEAT]
        ratio = weld_detail(detail).category / weld_detail(SEAT_DETAIL).category
        rows[NEW_WELD] = np.min(life[seats], axis=0) * ratio**3
    return tuple(rows), np.stack(list(rows.values()))


@cache
def counts() -> Column:
    """Load cycles of each case in 1,000 km of hard trail, (cases,): where its spectrum begins."""
    return np.array([hard_trail_cycles(case.key) for case in live_cases()])


def expected(reach: Column, distance: Column) -> Column:
    """How many moments as hard as ``reach`` come in a distance, (cases, n).

    ``distance`` is in thousands of km of hard trail, (n,). Each case comes as an exponential
    spectrum: hardness 1 once in 1,000 km of hard trail, nought at every load cycle.
    """
    with np.errstate(over="ignore", invalid="ignore"):
        rate = counts()[:, None] ** (1.0 - np.minimum(reach, 1e3))
    return np.asarray(np.where(np.isfinite(reach), distance * rate, 0.0))


def arrivals(draws: int, seed: int) -> Column:
    """Running sums of unit exponential waits, (cases, moments, draws): luck that changes share.

    The k-th hardest moment of a case is as hard as anything gets of which ``arrivals[k]`` or
    more are expected.
    """
    out = np.empty((len(live_cases()), MOMENTS, draws))
    for number, case in enumerate(live_cases()):
        for place in range(MOMENTS):
            luck = normal_share(scores(seed, f"moment.{case.key}.{place}", 0, draws))
            out[number, place] = -np.log(np.clip(luck, 1e-12, 1.0))
    return np.asarray(np.cumsum(out, axis=1))


def breakdowns(expects: Column, luck: Column) -> NDArray[np.int64]:
    """How often something gives in each case, (cases, n), at most `MOMENTS` times."""
    return np.asarray(np.sum(luck < expects[:, None, :], axis=1))
