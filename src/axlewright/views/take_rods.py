"""Does what is seen explain what is felt: a bowed rod against a steering wheel off centre."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import radians
from typing import Final

import numpy as np

from axlewright import units
from axlewright.physics import rod_bow, steering
from axlewright.rig import Doubt, doubts, has_track_bar
from axlewright.strength import Assessment
from axlewright.tables import looks_beyond
from axlewright.views.phrases import quantity

# Steering wheel over road wheels, boxes of beam-axle vehicles: from memory, no source.
RATIO: Final = (14.0, 20.0)
READING: Final = radians(3.0)  # a steering wheel read by eye: common practice, no source
COARSE: Final = 10.0  # from here on without decimals
TABLE: Final[Mapping[str, tuple[float, ...]]] = {
    "mm": (5.0, 10.0, 20.0, 30.0, 40.0, 60.0),
    "in": (0.25, 0.5, 0.75, 1.0, 1.5, 2.5),
}
LEVERS: Final[Mapping[str, str]] = {
    "steering_arm": "the steering arm",
    "arm_apart": "from arm to arm across the axle",
    "spring_spacing": "from spring to spring",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Rod:
    """One rod that can be bowed, and what turns when it is shorter; SI.

    ``share`` of the turn reaches the steering wheel. ``straight`` is true where what is measured
    is already the shift and no bow (one side further back than the other).
    """

    key: str
    name: str
    measure: str
    effect: str
    straight: bool
    length: float
    length_said: str
    lever_low: float
    lever_high: float
    lever_said: str
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """What a bow explains, low and high: rod shorter (m), road wheels and steering wheel (rad).

    ``turn`` is the whole turn: total toe for a tie rod, both wheels alike for the others.
    """

    short: tuple[float, float]
    turn: tuple[float, float]
    wheel: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class RodRow:
    """One row of the table for a phone that does no arithmetic."""

    bow: str
    short: str
    toe: str
    wheel: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RodTable:
    """A rod with its table."""

    rod: Rod
    rows: tuple[RodRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Arithmetic:
    """The whole sheet: rods, the assumed ratio, and what else to look at.

    ``scale`` is metres in one of the reader's ``unit``.
    """

    unit: str
    scale: float
    ratio_low: float
    ratio_high: float
    reading: float
    diameter: float
    lock_words: str
    rods: tuple[RodTable, ...]
    beyond: tuple[tuple[str, str], ...]


def explained(
    rod: Rod, seen: float, length: float, ratio: tuple[float, float] = RATIO
) -> Explained:
    """What a bow (or a shift) of so many metres explains, from the mildest to the most.

    The least: one sharp kink, the longest lever, the lowest ratio; the most: an even bow, the
    shortest lever, the highest ratio.
    """
    if rod.straight:
        short = (seen, seen)
    else:
        short = (
            float(rod_bow.kink_shortening(seen, length)),
            float(rod_bow.even_bow_shortening(seen, length)),
        )
    turn = (
        float(rod_bow.arm_turn(short[0], rod.lever_high)),
        float(rod_bow.arm_turn(short[1], rod.lever_low)),
    )
    wheel = (rod.share * turn[0] * ratio[0], rod.share * turn[1] * ratio[1])
    return Explained(short=short, turn=turn, wheel=wheel)


def arithmetic(assessment: Assessment, system: str = "metric") -> Arithmetic:
    """The sheet for one rig."""
    unit = units.SYSTEMS[system]["length"]
    scale = units.known("length")[unit]
    diameter = assessment.rig.tyre.outer_diameter
    lock = assessment.columns.get("lock_angle")
    lock_words = ""
    if lock is not None:
        per_turn = np.pi / float(lock[0])
        lock_words = (
            f"or count: whole turns from lock to lock, times {per_turn:.1f} (this axle's lock of "
            f"{quantity(float(lock[0]), 'angle', system, 2)} each way)"
        )
    axle = assessment.rig.axle
    beyond = sorted(looks_beyond().values(), key=lambda look: look.rank)
    return Arithmetic(
        unit=unit,
        scale=scale,
        ratio_low=RATIO[0],
        ratio_high=RATIO[1],
        reading=READING,
        diameter=diameter,
        lock_words=lock_words,
        rods=tuple(
            RodTable(rod=rod, rows=_rows(rod, unit, scale, diameter, system))
            for rod in rods(assessment, system)
        ),
        beyond=tuple((item.cause, item.look) for item in beyond if item.axle in {axle, "both"}),
    )


def rods(assessment: Assessment, system: str = "metric") -> tuple[Rod, ...]:
    """Rods of this axle whose bow can turn the steering wheel."""
    rig = assessment.rig
    found = {doubt.quantity: doubt for doubt in doubts(rig)}
    columns = assessment.columns

    def made(key: str, length: str, lever: str, share: float = 1.0) -> Rod:
        name, measure, effect = _TOLD[key]
        if key == "tie_rod":
            ahead = rig.words.get("steering.tie_rod_ahead") == "yes"
            effect = effect.format("in" if ahead else "out", "ahead of" if ahead else "behind")
        middle = float(columns[lever][0])
        doubt = found.get(lever)
        low, high = (doubt.low, doubt.high) if doubt is not None else (middle, middle)
        long = float(columns[length][0]) if length else 0.0
        return Rod(
            key=key,
            name=name,
            measure=measure,
            effect=effect,
            straight=not length,
            length=long,
            length_said=_said(found.get(length), long, system) if length else "",
            lever_low=low,
            lever_high=high,
            lever_said=f"{LEVERS[lever]}: {_said(doubt, middle, system)}",
            share=share,
        )

    braced = "track_bar_span" in columns and has_track_bar(rig.words)
    if rig.axle == "front":
        out = [
            made("tie_rod", "kingpin_spacing", "steering_arm", 0.5),
            made("drag_link", "drag_link_length", "steering_arm"),
        ]
        return (*out, made("track_bar", "track_bar_span", "steering_arm")) if braced else tuple(out)
    if rig.words["held_by.arms"] == "leaves":
        return (made("set_back", "", "spring_spacing"),)
    return (
        made("lower_arm", "arm_length", "arm_apart"),
        made("set_back", "", "arm_apart"),
    )


_BOW: Final = "straightedge or string from eye to eye; the widest gap to the rod's own line"
_TOLD: Final = {
    "tie_rod": (
        "tie rod",
        _BOW,
        "toe goes {} (the rod is {} the axle); going straight, each wheel takes half",
    ),
    "drag_link": ("drag link", _BOW, "both wheels turn, toe stays"),
    "track_bar": (
        "track bar",
        _BOW,
        "the axle moves sideways by as much, and the drag link then turns both wheels",
    ),
    "lower_arm": ("lower arm", _BOW, "the axle stands askew and steers the tail"),
    "set_back": (
        "one wheel further back",
        "hub to the same frame mark, left and right; the difference that was not there before",
        "the axle stands askew and steers the tail",
    ),
}


def _said(doubt: Doubt | None, middle: float, system: str) -> str:
    value = quantity(middle, "length", system, 3)
    if doubt is None:
        return value
    if doubt.given:
        return f"{value}, {doubt.source}"
    low, high = (quantity(end, "length", system, 2) for end in (doubt.low, doubt.high))
    return f"assumed {value} ({low} to {high})"


def _rows(rod: Rod, unit: str, scale: float, diameter: float, system: str) -> tuple[RodRow, ...]:
    out = []
    for number in TABLE[unit]:
        told = explained(rod, number * scale, rod.length)
        if not np.isfinite([*told.turn, *told.wheel]).all():
            continue
        toe = (
            float(steering.toe_length(told.turn[0], diameter)),
            float(steering.toe_length(told.turn[1], diameter)),
        )
        out.append(
            RodRow(
                bow=f"{number:g} {unit}",
                short=rod_span(told.short, "length", system),
                toe=rod_span(toe, "length", system) if rod.key == "tie_rod" else "",
                wheel=rod_span(told.wheel, "angle", system),
            )
        )
    return tuple(out)


def rod_span(ends: tuple[float, float], kind: str, system: str) -> str:
    """Both ends, no finer than a person measures."""
    unit = units.SYSTEMS[system][kind]
    size = units.known(kind)[unit]
    fine = 2 if unit == "in" else 1
    low, high = (
        f"{end / size:.{fine if round(end / size, fine) < COARSE else 0}f}" for end in ends
    )
    if not float(high):
        return f"less than {10.0**-fine:g} {unit}"
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"
