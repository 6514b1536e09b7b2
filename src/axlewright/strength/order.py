"""The two orders: what gives first in one bad moment, and what is used up first."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import in_ground_terms, live_cases
from axlewright.rig import Column, Columns
from axlewright.strength.appraisal import (
    Appraised,
    Drawn,
    governing_case,
    kind_of,
    margins,
    parts_of,
)

NOUGHT, BEYOND = 1e-6, 1e3  # margins of what gives at nothing, and of what is out of reach
TENFOLD = 10.0  # the most that a mend counts for in one draw
ALIKE = 0.02  # twins whose middle margins are this close are told as one


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One kind of part's place in the order of one bad moment.

    ``part`` is the key with its side, ``side`` is left, right, either (twins so alike that the
    doubt decides) or empty.
    ``first`` is the share of draws in which it gives first at equal severity; ``margin`` is how
    hard a moment it takes over its reference (middle, low, high of 90 %); ``takes`` is the same
    in the ground's own terms (SI, with its kind), for the case it gives in most often.
    """

    part: str
    kind: str
    side: str
    mode: str
    row: int
    case: int
    first: float
    margin: float
    margin_low: float
    margin_high: float
    takes: float
    takes_low: float
    takes_high: float
    takes_kind: str
    utilisation: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """What one part made strong enough changes.

    ``following`` is the part that then goes first most often, empty where nothing else is in
    reach; ``harder`` is by how much harder a moment the axle then takes, on the average of the
    draws (of the logs, a draw in which nothing else gives counting ten times).
    """

    part: str
    following: str
    harder: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WearPlace:
    """One part's place in the order of wearing out; lives in km of this use."""

    part: str
    kind: str
    side: str
    mode: str
    number: int
    first: float
    life: float
    life_low: float
    life_high: float


def bad_moment_order(
    point: Appraised, columns: Columns, drawn: Drawn | None = None
) -> tuple[Place, ...]:
    """Parts in the order in which they give, first first.

    By the share of draws in which a part goes first, then by its middle margin; without draws,
    by the margin at the point.
    """
    parts = parts_of(point.solved)
    margin = drawn.margin if drawn is not None else margins(point.solved, point.reach)
    first = first_shares(margin)
    governing = governing_case(point.solved, point.reach)
    least = np.min(point.reach[:, 0], axis=-1)
    loud = np.max(point.solved.utilisation[:, 0], axis=-1)
    places = []
    breaking: dict[str, list[int]] = {}
    for index, entry in enumerate(point.solved.rows):
        if entry.breaks:
            breaking.setdefault(kind_of(entry.part), []).append(index)
    for number, kind in enumerate(parts):
        rows = breaking[kind]
        side = _side(point, rows, drawn)
        named = [row for row in rows if point.solved.rows[row].part.endswith(f"_{side}")] or rows
        row = min(named, key=lambda index: (_alike(least[index]), -_alike(loud[index])))
        case = int(governing[row])
        low, middle, high = _middle(margin[number])
        hardness = drawn.hardness[row] if drawn is not None else point.solved.hardness[row, :, case]
        ends = np.array(_middle(hardness))
        takes, takes_kind = in_ground_terms(live_cases()[case], ends, columns)
        places.append(
            Place(
                part=point.solved.rows[row].part,
                kind=kind,
                side=side,
                mode=point.solved.rows[row].mode,
                row=row,
                case=case,
                first=float(first[number]),
                margin=middle,
                margin_low=low,
                margin_high=high,
                takes_low=float(takes[0]),
                takes=float(takes[1]),
                takes_high=float(takes[2]),
                takes_kind=takes_kind,
                utilisation=float(point.solved.utilisation[row, 0, case]),
            )
        )
    return tuple(sorted(places, key=lambda place: (-round(place.first, 3), place.margin)))


def wear_order(point: Appraised, drawn: Drawn | None = None) -> tuple[WearPlace, ...]:
    """What is used up first, first first; one row a part, its shortest life."""
    life = drawn.life if drawn is not None else np.stack([wear.life_km for wear in point.wear])
    kinds: dict[str, list[int]] = {}
    for number, wear in enumerate(point.wear):
        kinds.setdefault(kind_of(wear.part), []).append(number)
    first = first_shares(np.stack([np.min(life[numbers], axis=0) for numbers in kinds.values()]))
    places = []
    for share, (kind, numbers) in zip(first, kinds.items(), strict=True):
        number = min(numbers, key=lambda each: _alike(np.median(life[each])))
        low, middle, high = _middle(life[number])
        wear = point.wear[number]
        places.append(
            WearPlace(
                part=wear.part,
                kind=kind,
                side=_sooner([point.wear[each].part for each in numbers], life[numbers]),
                mode=wear.mode,
                number=number,
                first=float(share),
                life=middle,
                life_low=low,
                life_high=high,
            )
        )
    return tuple(sorted(places, key=lambda place: (-round(place.first, 3), place.life)))


def after_mend(
    point: Appraised, drawn: Drawn | None, order: Sequence[Place], most: int = 3
) -> tuple[Mended, ...]:
    """What gives next once each of the leading parts has been made strong enough."""
    kinds = parts_of(point.solved)
    margin = drawn.margin if drawn is not None else margins(point.solved, point.reach)
    now = np.clip(np.min(margin, axis=0), NOUGHT, BEYOND)
    part_of = {place.kind: place.part for place in order}
    out = []
    for place in order[:most]:
        rest = margin.copy()
        rest[kinds.index(place.kind)] = np.inf
        least = np.clip(np.min(rest, axis=0), NOUGHT, BEYOND)
        gain = np.minimum(least / now, TENFOLD)
        shares = first_shares(rest)
        first = int(np.argmax(shares))
        out.append(
            Mended(
                part=place.part,
                following=part_of[kinds[first]] if shares[first] > 0.0 else "",
                harder=float(np.exp(np.mean(np.log(gain))) - 1.0),
            )
        )
    return tuple(out)


def _side(point: Appraised, rows: list[int], drawn: Drawn | None) -> str:
    hardness = drawn.hardness[rows] if drawn is not None else np.min(point.reach[rows], axis=-1)
    return _sooner([point.solved.rows[row].part for row in rows], hardness)


def _sooner(parts: list[str], life: Column) -> str:
    """Side that goes first in two draws of three, "either" where neither does."""
    left = [number for number, part in enumerate(parts) if part.endswith("_left")]
    right = [number for number, part in enumerate(parts) if part.endswith("_right")]
    if not left or not right:
        return "left" if left else "right" if right else ""
    here, there = np.min(life[left], axis=0), np.min(life[right], axis=0)
    sooner = float(np.mean(here < there) + 0.5 * np.mean(here == there))
    both = np.isfinite(here) & np.isfinite(there)
    if not both.any():
        return "either"
    apart = here[both] / np.maximum(there[both], 1e-12)
    middle = apart[0] if apart.size == 1 else np.median(apart)  # one at every move of a slider
    if abs(float(middle) - 1.0) < ALIKE:
        return "either"
    return "left" if sooner > 0.66 else "right" if sooner < 0.34 else "either"


def first_shares(margin: Column) -> Column:
    """Share of draws in which each part is least, (parts,); draws in which none is count none."""
    return shares_of(first_parts(margin), margin.shape[0])


def first_parts(margin: Column) -> NDArray[np.int64]:
    """Part that is least in each draw, (draws,); -1 where none gives at all."""
    return np.where(np.isfinite(np.min(margin, axis=0)), np.argmin(margin, axis=0), -1)


def shares_of(first: NDArray[np.int64], parts: int) -> Column:
    """Share of draws in which each of so many parts is first, (parts,)."""
    return np.asarray(np.bincount(first + 1, minlength=parts + 1)[1:] / first.size)


def _alike(value: float | np.floating) -> float:
    """Round away what two sides that are the same differ by, so that the first stands."""
    return float(f"{value:.9g}")


def _middle(values: Column) -> tuple[float, float, float]:
    if values.size == 1:
        return (float(values[0]),) * 3
    low, middle, high = np.quantile(values, [0.05, 0.5, 0.95], method="nearest")
    return float(low), float(middle), float(high)
