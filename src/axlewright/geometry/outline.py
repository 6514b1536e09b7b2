"""The axle as an obstacle meets it: its outline from the front, its edges, the chance of a touch.

Everything hangs from the hubs, so a softer tyre lowers all of it alike.
"""

from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np

from axlewright.geometry.points import SIDES, Hardpoints
from axlewright.physics.quantities import Num
from axlewright.rig import Column, TyreCode

EYE: Final = 0.032  # m: below a bolt's centre its bracket goes on so far; memory
CAST: Final = 0.030  # m: the centre casting's wall and room round the ring gear; memory
PAD: Final = 0.13  # m: leaf pad, tube and ends of the U-bolts below the leaf's bolt; memory
WIDE: Final = 0.15  # m: how wide a rock or a step is that passes between the wheels; memory
HIDDEN: Final = 0.005  # m: an edge that stands no lower than this under what is met first is safe
BESIDE: Final = 0.02  # m: further from the axle line than this, a thing is met apart from the tube
FLAT, SLOPE = 0.025, 0.020  # m: half a bracket's foot, and how far its cheeks slope; memory
STEPS: Final = 721  # places across at which the outline is read
LIFTS: Final = ("going forward", "going back")


class Edge(NamedTuple):
    """One edge under the axle: what, where (m: across, ahead, height) and how it is met.

    ``under`` is how far it stands below the tube, m; ``catches`` are the ways of travel in which
    nothing leads an obstacle under it: no arm as a ramp, and nothing lower in front of it.
    """

    what: str
    across: float
    ahead: float
    height: float
    under: float
    catches: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """Outline of what stands between the tyres, seen from the front, m.

    ``corners`` is a closed polygon of (across, height over the ground), left positive; ``across``
    and ``low`` its lower edge, read evenly; ``area`` what it covers, m2.
    """

    corners: tuple[tuple[float, float], ...]
    across: Column
    low: Column
    area: float


def edges(points: Hardpoints, radius: float) -> tuple[Edge, ...]:
    """Every edge under the axle, the lowest first; ``radius`` is the hubs' height, m."""
    c = {name: float(value[0]) for name, value in points.columns.items()}
    tube = radius - 0.25 * (c["tube_outer_left"] + c["tube_outer_right"])
    ball = 0.5 * c["ring_diameter"] + CAST
    found = [
        Edge("the centre", float(points.at["pinion_joint"][0, 1]), 0.0, radius - ball, 0.0, ()),
        Edge("the tubes", 0.0, 0.0, tube, 0.0, ()),
    ]
    ramp = LIFTS[1] if points.steers else LIFTS[0]  # the arms lead an obstacle under their bolts
    hung = (
        ("arm_axle", "lower arm's bracket", EYE, ramp),
        ("damper_axle", "damper's bracket", EYE, ""),
        ("leaf_pad", "leaf spring's bolts", PAD, ""),
    )
    for name, what, below, led in hung:
        for side in SIDES:
            if f"{name}_{side}" not in points.at:
                continue
            ahead, across, up = (float(each) for each in points.at[f"{name}_{side}"][0])
            height = radius + up - below
            told = f"the {side} {what}"
            found.append(_edge(told, across, ahead, height, tube, led))
    if points.steers:
        ends = [points.at[f"tie_rod_end_{side}"][0] for side in SIDES]
        low = radius + min(float(end[2]) for end in ends) - 0.5 * c["tie_rod_outer"]
        found.append(_edge("the tie rod", 0.0, float(ends[0][0]), low, tube, ""))
    return tuple(sorted(found, key=lambda each: each.height))


def _edge(what: str, across: float, ahead: float, height: float, tube: float, ramp: str) -> Edge:
    under = tube - height
    caught = []
    for way, sign in zip(LIFTS, (1.0, -1.0), strict=True):
        first = sign * ahead > BESIDE
        if way != ramp and (first or under > HIDDEN):
            caught.append(way)
    return Edge(what, across, ahead, height, under, tuple(caught))


def outline(points: Hardpoints, tyre: TyreCode, radius: float) -> Outline:
    """Outline between the tyres' inner walls with the hubs at a height, m."""
    c = {name: float(value[0]) for name, value in points.columns.items()}
    half = 0.25 * (c["tube_outer_left"] + c["tube_outer_right"])
    ball, middle = 0.5 * c["ring_diameter"] + CAST, float(points.at["pinion_joint"][0, 1])
    end = float(points.half_track[0]) - 0.5 * tyre.section_width
    across = np.linspace(-end, end, STEPS)
    low, high = np.full(STEPS, radius - half), np.full(STEPS, radius + half)
    reach = ball**2 - (across - middle) ** 2
    bow = np.sqrt(np.maximum(reach, 0.0))
    inside = reach > 0.0
    low[inside] = np.minimum(low, radius - bow)[inside]
    high[inside] = np.maximum(high, radius + bow)[inside]
    for edge in edges(points, radius):
        if "bracket" in edge.what or "bolts" in edge.what:
            away = np.abs(across - edge.across)
            hung = edge.height + np.maximum(away - FLAT, 0.0) * max(edge.under, 0.0) / SLOPE
            low = np.where(away <= FLAT + SLOPE, np.minimum(low, hung), low)
    if points.steers:
        right, left = (points.at[f"tie_rod_end_{side}"][0] for side in reversed(SIDES))
        under = [radius + float(end[2]) - 0.5 * c["tie_rod_outer"] for end in (right, left)]
        rod = np.interp(across, [right[1], left[1]], under, left=np.inf, right=np.inf)
        low = np.minimum(low, rod)
    run = [*zip(across, low, strict=True), *zip(across[::-1], high[::-1], strict=True)]
    return Outline(
        corners=_plain(run),
        across=across,
        low=low,
        area=float(np.trapezoid(high - low, across)),
    )


def _plain(run: list[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Corners of a run without those that lie on a straight line between their neighbours."""
    kept: list[tuple[float, float]] = []
    for number, (x, y) in enumerate(run):
        (x0, y0), (x1, y1) = run[number - 1], run[(number + 1) % len(run)]
        if abs((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) > 1e-9:
            kept.append((float(x), float(y)))
    return tuple(kept)


def touch_chance(across: Column, low: Column, step: Num, wide: float = WIDE) -> Column:
    """Chance that one obstacle between the wheels touches the axle.

    It passes anywhere between the tyres alike, is so wide, and its height follows an exponential
    law about the mean ``step``, m (n,): what is lower than the outline passes under it.

    Parameters
    ----------
    across, low
        (steps,), m: places across, evenly, and the outline's height over the ground there.

    References
    ----------
    derived: mean over the places of exp(-lowest within the width / step)
    """
    spread = max(round(0.5 * wide / float(across[1] - across[0])), 0)
    padded = np.pad(low, spread, mode="edge")
    lowest = np.min(np.lib.stride_tricks.sliding_window_view(padded, 2 * spread + 1), axis=-1)
    mean = np.maximum(np.atleast_1d(np.asarray(step, dtype=np.float64)), 1e-6)
    return np.asarray(np.mean(np.exp(-lowest / mean[:, None]), axis=-1))
