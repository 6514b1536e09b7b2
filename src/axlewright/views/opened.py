"""What an opened row shows besides its checks: the numbers in the formulas, wear, what moves it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from math import isinf, isnan
from typing import Final

import numpy as np

from axlewright.duty import live_cases
from axlewright.rig import ASSUMPTIONS, FIELDS
from axlewright.strength import (
    Assessment,
    Mover,
    Place,
    Size,
    WearPlace,
    hub_lives,
    kind_of,
    sizes_of,
    stressed,
)
from axlewright.views.phrases import life, quantity
from axlewright.views.questions import field_name

MOST_HELD, MOST_ASKED = 9, 6
DIGITS: Final = 4  # of a size, so that the sum can be done again
BEARS: Final = 0.1  # a size with a smaller power is not told among what is asked
FAR: Final = 1e9  # m; nobody drives further
AT: Final = {  # where a tube gives, by what happens
    "bends at the spring": "seat",
    "bends at the arm bracket": "arm",
    "bends at the track-bar bracket": "track_bar",
    "bends beside the end forging": "end",
    "bends beside the centre": "joint",
    "works loose or tears at the centre": "joint",
}
SETTLED: Final = {  # sizes that follow from what was given
    "radius": ("hub centres above the ground", "length"),
    "tube_outer_left": ("left tube across", "length"),
    "tube_outer_right": ("right tube across", "length"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """The case that each row of checks is told for, and the sizes that it is made of.

    ``holds`` and ``asks`` are (rows,): sizes of what the row holds, and of what its case asks.
    """

    cases: tuple[int, ...]
    holds: Sequence[Sequence[Size]]
    asks: Sequence[Sequence[Size]]


def opened(assessment: Assessment) -> Opened:
    """Sizes behind every check of an assessment, each in the case that governs it."""
    point, drawn = assessment.point, assessment.drawn
    governing = (
        drawn.governing if drawn is not None else np.argmax(point.solved.utilisation[:, 0], axis=-1)
    )
    cases = tuple(int(case) for case in governing)
    holds, asks = sizes_of(assessment.columns, assessment.rig.words, point, cases)
    return Opened(cases=cases, holds=holds, asks=asks)


def size_lines(shown: Opened, number: int, system: str = "metric") -> list[str]:
    """With which numbers a row's formula was worked out, and what made its demand."""
    case = live_cases()[shown.cases[number]].label
    held = _listed(shown.holds[number][:MOST_HELD], system)
    bearing = [size for size in shown.asks[number] if abs(size.power) >= BEARS]
    asked = _listed(bearing[:MOST_ASKED], system)
    lines = [f"holds by {held}"] if held else []
    return [*lines, f"{case} asks by {asked}"] if asked else lines


def stress_line(assessment: Assessment, number: int, system: str = "metric") -> str:
    """Elastic stress where a row of a tube gives, at its hardest case; empty for other parts."""
    row = assessment.point.solved.rows[number]
    station = AT.get(row.mode, "") if row.part.startswith("tube") else ""
    side = row.part.rpartition("_")[2]
    for at in stressed(assessment.columns, assessment.point.housing):
        if (at.station, at.side) == (station, side):
            fibre, mises = (
                quantity(float(each[0]), "stress", system) for each in (at.fibre, at.mises)
            )
            kept = assessment.columns["tube_yield"] * assessment.columns["softening"]
            return (
                f"worst fibre there, elastic: {fibre}, von Mises {mises}, in "
                f"{live_cases()[at.case].label}; it first yields at "
                f"{quantity(float(kept[0]), 'stress', system)}"
            )
    return ""


def size_name(key: str) -> tuple[str, str]:
    """What a size is called, and its kind of quantity."""
    return SETTLED.get(key) or _named().get(key) or (key.replace("_", " "), "plain")


def wears(assessment: Assessment, place: Place, system: str = "metric") -> list[tuple[str, str]]:
    """How the part of a row wears out, each way with its life and formula; empty: none known."""
    part = place.part
    point, drawn = assessment.point, assessment.drawn
    out = []
    for number, wear in enumerate(point.wear):
        if wear.part != part:
            continue
        lives = wear.life_km if drawn is None else drawn.life[number]
        low, middle, high = np.quantile(lives, [0.05, 0.5, 0.95], method="nearest")
        worn = WearPlace(
            part=part,
            kind=kind_of(part),
            side="",
            mode=wear.mode,
            number=number,
            first=0.0,
            life=float(middle),
            life_low=float(low),
            life_high=float(high),
        )
        told = life(worn, system)
        of = "" if told.startswith("no end") else " of this use"
        out.append((f"{wear.mode}: {told}{of}", wear.basis))
        if part.startswith("hub_bearing"):
            out.append(
                (_by_corners(assessment, system), "the same, by how it is driven; middle values")
            )
    return out


def _by_corners(assessment: Assessment, system: str) -> str:
    lives = hub_lives(assessment.columns, assessment.rig.words)
    told = []
    for how, life_km in lives.items():
        metres = 1e3 * float(life_km[0])
        beyond = "more than " if metres > FAR else ""
        told.append(f"{how} {beyond}{quantity(min(metres, FAR), 'distance', system, 2)}")
    return "in the middle: " + ", ".join(told)


def alone(mover: Mover) -> str:
    """What one doubt alone does to the moment that a part takes, low end to high end."""
    if isnan(mover.low) and isnan(mover.high):
        return ""
    ends = [_end(each) for each in (mover.low, mover.high)]
    return f"alone {ends[0]} to {ends[1]}"


def _end(ratio: float) -> str:
    if isnan(ratio) or isinf(ratio):
        return "out of reach"
    share = 100.0 * (ratio - 1.0)
    if abs(share) < 0.5:
        return "no change"
    return f"{abs(share):.0f} % {'harder' if share > 0.0 else 'milder'}"


def _listed(sizes: Sequence[Size], system: str) -> str:
    return "; ".join(_told(size, system) for size in sizes)


def _told(size: Size, system: str) -> str:
    name, kind = size_name(size.quantity)
    number, _, unit = quantity(size.value, kind, system, DIGITS).partition(" ")
    if "." in number:
        number = number.rstrip("0").rstrip(".")
    return f"{name} {number} {unit}".rstrip()


@cache
def _named() -> Mapping[str, tuple[str, str]]:
    names = {item.quantity: (item.label, item.kind) for item in ASSUMPTIONS}
    given = {
        field.quantity: (field_name(field), field.kind)
        for field in FIELDS
        if field.quantity and field.quantity not in names
    }
    return {**names, **given}
