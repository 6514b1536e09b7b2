"""The travel of one rig: from its columns to everything a person asks about it."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from axlewright.geometry.bind import Pull, WindUp, wind_up, worst_parked
from axlewright.geometry.clearance import Clearance, clearance
from axlewright.geometry.fixes import Fix, fixes
from axlewright.geometry.joints import pinion_rise, shaft_lengths, spring_lengths, stop_gaps, swings
from axlewright.geometry.limits import WAYS, Limit, Way, limits
from axlewright.geometry.measuring import BUMP, Measures, measures
from axlewright.geometry.moving import Motion, grid, motion, slopes, straightened
from axlewright.geometry.outline import touch_chance
from axlewright.geometry.points import Hardpoints, hardpoints
from axlewright.rig import (
    SEED,
    Column,
    Columns,
    Rig,
    drawn_geometry_columns,
    geometry_columns,
)

FRESH = ("travel_lift", "travel_forgings_turned", "longer_")
DRAWS = 256


@dataclass(frozen=True, slots=True, kw_only=True)
class Stance:
    """One height of the axle: against ride, m, and what caster, pinion and wheels do there, SI."""

    name: str
    height: float
    caster: float
    pinion: float
    steers: float
    shift: float
    spring: float
    shaft: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Travel:
    """Everything about the travel of one rig; ``bands`` are 90 % of the draws, by measure."""

    rig: Rig
    points: Hardpoints
    now: Measures
    taped: Measures
    stances: tuple[Stance, ...]
    limits: Mapping[Way, tuple[Limit, ...]]
    road: Clearance
    trail: Clearance
    parked: Pull
    wind_up: WindUp
    fixes: tuple[Fix, ...]
    bands: Mapping[str, tuple[float, float]]
    places: int
    taped_places: int


def travel(rig: Rig, *, draws: int = DRAWS, seed: int = SEED, cures: bool = True) -> Travel:
    """Study the travel of a rig; raises `AxlewrightError` where a rod cannot reach."""
    columns = geometry_columns(rig)
    before = as_taped(geometry_columns(rig.built) if rig.built is not None else columns)
    points, now = measures(hardpoints(columns, rig.words, before))
    words = rig.built.words if rig.built is not None else rig.words
    _, taped = measures(hardpoints(before, words, before))
    found = {way: limits(points, way) for way in WAYS}
    road = clearance(points, rig.tyre)
    names = {
        name.removesuffix("_ahead")
        for name in columns
        if name.startswith("point_") and name.endswith("_ahead")
    }
    return Travel(
        rig=rig,
        points=points,
        now=now,
        taped=taped,
        stances=_stances(points, now),
        limits=found,
        road=road,
        trail=clearance(points, rig.tyre, pressure=float(columns["travel_trail_pressure"][0])),
        parked=worst_parked(points),
        wind_up=wind_up(points),
        fixes=fixes(points, now, taped, rig) if cures else (),
        bands=_bands(rig, road, draws, seed) if draws else {},
        places=len(names),
        taped_places=sum(f"{name}_ahead" in rig.given for name in names),
    )


def as_taped(columns: Columns) -> dict[str, Column]:
    """Columns of the axle as it stood when its places were taped."""
    return {
        name: 0.0 * value if name.startswith(FRESH) else value for name, value in columns.items()
    }


def _stances(points: Hardpoints, now: Measures) -> tuple[Stance, ...]:
    heights = [
        -min(now.droop.at, 0.3),
        0.0,
        min(now.stop_room, now.bump.at, 0.3),
    ]
    low = -float(points.columns["travel_lift"][0])
    made = motion(points, low + np.array(heights)[:, None] * np.ones(2))
    springs, pinion = spring_lengths(points, made), pinion_rise(points, made)
    shafts = shaft_lengths(points, made)
    ride = made.heading[1].mean() if points.steers else made.pose[1, 5]
    return tuple(
        Stance(
            name=name,
            height=heights[row],
            caster=float(made.caster[row].mean()),
            pinion=float(pinion[row]),
            steers=float((made.heading[row].mean() if points.steers else made.pose[row, 5]) - ride),
            shift=float(made.shift[row]),
            spring=float(springs[row].mean()),
            shaft=float(shafts[row]),
        )
        for row, name in enumerate(("hanging", "at ride", "in bump"))
    )


def _bands(rig: Rig, road: Clearance, draws: int, seed: int) -> dict[str, tuple[float, float]]:
    """Where nine draws in ten of what matters lie."""
    columns = drawn_geometry_columns(rig, 0, draws, seed)
    built = drawn_geometry_columns(rig.built, 0, draws, seed) if rig.built is not None else columns
    points = hardpoints(columns, rig.words, as_taped(built))
    found = draw_measures(points)
    out = {}
    found["touch"] = touch_chance(road.outline.across, road.outline.low, columns["travel_step"])
    for name, values in found.items():
        good = values[np.isfinite(values)]
        if good.size:
            low, high = np.quantile(good, (0.05, 0.95))
            out[name] = (float(low), float(high))
    return out


def draw_measures(points: Hardpoints) -> dict[str, Column]:
    """Caster, pinion, shift, bump steer, roll centre, anti-dive of every draw; NaN out of reach."""
    low = -points.columns["travel_lift"]
    level = np.stack([low, low], axis=-1)
    ready = points
    if points.steers:
        ready = straightened(points, level)
    stands = motion(ready, level)
    turned = slopes(ready, level)
    told = {
        "caster": np.mean(stands.caster, axis=-1),
        "pinion": pinion_rise(ready, stands),
        "shift": stands.shift,
        "roll_centre": turned.roll_centre,
        "anti": turned.anti,
    }
    if points.steers:
        away = [
            np.mean(motion(ready, level + rise).heading, axis=-1) - np.mean(stands.heading, axis=-1)
            for rise in (-BUMP, BUMP)
        ]
        told["bump_steer"] = np.where(np.abs(away[0]) > np.abs(away[1]), away[0], away[1])
    return told


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A bump x roll x steer grid, flat, with every output; see `axlewright.geometry.moving`."""

    made: Motion
    swings: Mapping[str, Column]
    springs: Column
    gaps: Column
    pinion: Column
    shafts: Column
    roll_centre: Column
    instant: Column
    anti: Column


def travel_grid(points: Hardpoints, bump: Column, roll: Column, steer: Column) -> Grid:
    """Pose an axle over a grid; centres are worked out once for each bump and roll."""
    heights, pitman = grid(points, bump, roll, steer)
    made = motion(points, heights, pitman)
    turns = len(steer)
    turned = slopes(points, heights[::turns])
    return Grid(
        made=made,
        swings=swings(points, made),
        springs=spring_lengths(points, made),
        gaps=stop_gaps(points, made),
        pinion=pinion_rise(points, made),
        shafts=shaft_lengths(points, made),
        roll_centre=np.repeat(turned.roll_centre, turns),
        instant=np.repeat(turned.instant, turns, axis=0),
        anti=np.repeat(turned.anti, turns),
    )
