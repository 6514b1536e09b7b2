"""Parts times cases: every check of one rig, at its middle and over draws of its doubt."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import Loads, live_cases, wheel_loads
from axlewright.rig import SEED, Column, Columns, Rig, Words, drawn_columns, point_columns
from axlewright.strength.housing import Housing, Order, solve_housing
from axlewright.strength.ledger import Ledger, Solved, solve
from axlewright.strength.parts_drive import drive_rows
from axlewright.strength.parts_ends import end_rows
from axlewright.strength.parts_held import held_rows
from axlewright.strength.parts_housing import housing_rows
from axlewright.strength.wear import Wear, wear_of
from axlewright.strength.wheel_end import WheelEnd, wheel_ends

BLOCK = 256
CEILING = 1.5  # shock may take a grip-limited case this far beyond its reference; memory
NEVER = 1e3  # a hardness beyond this is "never"
Progress: TypeAlias = Callable[[int, int], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Appraised:
    """One set of columns, appraised; arrays have the draws of the columns."""

    solved: Solved
    reach: Column
    wear: tuple[Wear, ...]
    loads: Loads
    ends: WheelEnd
    housing: Housing


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """What is kept of the draws; parts, rows and wear are in the order of the point.

    ``margin`` is (parts, n): how hard a moment each part takes, over its reference, inf where
    nothing in reach breaks it; ``hardness`` and ``utilisation`` are (rows, n) in each row's
    governing case; ``life`` is (wear rows, n) in km.
    """

    seed: int
    draws: int
    margin: Column
    hardness: Column
    utilisation: Column
    life: Column
    governing: NDArray[np.int64]


def appraise(columns: Columns, words: Words, order: Order | None = None) -> Appraised:
    """Every check of one rig's columns; no doubt is added here.

    ``order`` is the order of the brackets along the tubes (`inner_order`), by the first draw
    where it is left out.
    """
    loads = wheel_loads(columns, words)
    ends = wheel_ends(columns, words, loads)
    housing = solve_housing(columns, words, loads, ends, order)
    ledger = Ledger(columns["track"].shape[0])
    housing_rows(ledger, columns, words, loads, housing)
    end_rows(ledger, columns, words, ends)
    held_rows(ledger, columns, words, housing)
    drive_rows(ledger, columns, words, loads)
    solved = solve(ledger)
    return Appraised(
        solved=solved,
        reach=in_reach(solved.hardness),
        wear=wear_of(columns, words, housing),
        loads=loads,
        ends=ends,
        housing=housing,
    )


def in_reach(hardness: Column) -> Column:
    """Hardness with inf where no moment gets there: tyres slip or the engine stalls first."""
    limited = np.array([case.ceiling for case in live_cases()])
    return np.asarray(
        np.where((limited & (hardness > CEILING)) | (hardness > NEVER), np.inf, hardness)
    )


def kind_of(part: str) -> str:
    """Part without its side: twins on both sides are one kind."""
    return part.removesuffix("_left").removesuffix("_right")


def parts_of(solved: Solved) -> tuple[str, ...]:
    """Kinds of part in the order in which they first appear, those that can break."""
    return tuple(dict.fromkeys(kind_of(row.part) for row in solved.rows if row.breaks))


def margins(solved: Solved, reach: Column) -> Column:
    """How hard a moment each kind of part takes, (parts, n): least over rows, sides, cases."""
    parts = parts_of(solved)
    worst = np.min(reach, axis=-1)
    place = {part: number for number, part in enumerate(parts)}
    out = np.full((len(parts), worst.shape[1]), np.inf)
    for number, row in enumerate(solved.rows):
        if row.breaks:
            here = place[kind_of(row.part)]
            out[here] = np.minimum(out[here], worst[number])
    return out


def governing_case(solved: Solved, reach: Column) -> NDArray[np.int64]:
    """Case that each row gives in first, (rows,), from one draw; the loudest where none does."""
    first = np.argmin(reach[:, 0], axis=-1)
    loud = np.argmax(solved.utilisation[:, 0], axis=-1)
    return np.asarray(np.where(np.isfinite(np.min(reach[:, 0], axis=-1)), first, loud))


def appraise_point(rig: Rig) -> Appraised:
    """Appraise a rig at the middle of everything."""
    return appraise(point_columns(rig), rig.words)


def appraise_draws(
    rig: Rig,
    point: Appraised,
    draws: int,
    *,
    seed: int = SEED,
    block: int = BLOCK,
    progress: Progress | None = None,
) -> Drawn:
    """Appraise a rig over draws of its doubt, block by block; the block changes nothing."""
    governing = governing_case(point.solved, point.reach)
    parts = parts_of(point.solved)
    rows, lives = len(point.solved.rows), len(point.wear)
    margin = np.empty((len(parts), draws))
    hardness, utilisation = np.empty((rows, draws)), np.empty((rows, draws))
    life = np.empty((lives, draws))
    for start, stop in _blocks(draws, block):
        here = appraise(drawn_columns(rig, start, stop, seed), rig.words, point.housing.order)
        span = slice(start, stop)
        margin[:, span] = margins(here.solved, here.reach)
        index = governing[:, None, None]
        hardness[:, span] = np.take_along_axis(here.solved.hardness, index, -1)[..., 0]
        utilisation[:, span] = np.take_along_axis(here.solved.utilisation, index, -1)[..., 0]
        for number, wear in enumerate(here.wear):
            life[number, span] = wear.life_km
        if progress is not None:
            progress(stop, draws)
    return Drawn(
        seed=seed,
        draws=draws,
        margin=margin,
        hardness=hardness,
        utilisation=utilisation,
        life=life,
        governing=governing,
    )


def _blocks(draws: int, block: int) -> Iterator[tuple[int, int]]:
    for start in range(0, draws, block):
        yield start, min(start + block, draws)
