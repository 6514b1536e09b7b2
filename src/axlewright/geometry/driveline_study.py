"""The driveline of one rig over its travel: angles, shaking, slip, whirling, against limits."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from axlewright.geometry.built_in import BuiltIn, built_in, pinion_wanted
from axlewright.geometry.driveline import (
    Line,
    Shaking,
    Whirl,
    driveline_of,
    shaking,
    turned_about_wheels,
    whirl,
)
from axlewright.geometry.driveline_verdicts import Check, checks, speed_judged, values_judged
from axlewright.geometry.moving import Motion, motion, straightened, turned_by
from axlewright.geometry.points import Hardpoints, hardpoints
from axlewright.geometry.study import DRAWS, Travel, as_taped
from axlewright.geometry.wedges import For, Wedge, wedges
from axlewright.physics import driveline
from axlewright.rig import SEED, Column, Rig, drawn_geometry_columns
from axlewright.tables import driveline_limit

DOUBLE = "double at the transfer case"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShaftStance:
    """The shaft at one height of the axle: joints and whole line, rad; length and plunge, m."""

    name: str
    height: float
    joints: tuple[float, float]
    whole: float
    length: float
    plunge: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Driveline:
    """Everything about one rig's driveline.

    ``turns_on_road`` is false where the hubs can be unlocked; then the checks are for slow use.
    ``if_locked`` are the checks that would hold with the hubs left locked on the road.
    """

    line: Line
    turns_on_road: bool
    in_line: bool
    speed: float
    road: float
    shaking: Shaking
    whirl: Whirl
    stances: tuple[ShaftStance, ...]
    checks: tuple[Check, ...]
    if_locked: tuple[Check, ...]
    built_in: BuiltIn | None
    wedges: tuple[Wedge, ...]
    measured: tuple[str, ...]

    @property
    def plunge(self) -> tuple[float, float]:
        """Most that the shaft goes in and draws out over the travel, m."""
        told = [stance.plunge for stance in self.stances]
        return -min(told), max(told)


def line_through(
    points: Hardpoints, made: Motion, *, turned: Column | float = 0.0, double: bool | None = None
) -> Line:
    """Work out the shaft's joints at every pose of an axle, its housing turned pinion up."""
    words, columns = points.words, points.columns
    ahead = 1.0 if points.steers else -1.0  # the way from transfer case to axle
    noses = -driveline.axis_direction(columns["line_pinion_up"], 0.0, -ahead)
    centre = made.pose[:, :3]
    joint = centre + turned_about_wheels(made.at["pinion_joint"] - centre, turned, -ahead)
    return driveline_of(
        joint,
        points.at["transfer_joint"],
        turned_about_wheels(turned_by(made, noses), turned, -ahead),
        driveline.axis_direction(columns["line_output_up"], 0.0, ahead),
        double=words.get("driveline.joints") == DOUBLE if double is None else double,
        phase=0.0 if words.get("driveline.yokes", "in line") == "in line" else np.pi / 2.0,
    )


def driveline_in_travel(found: Travel, *, draws: int = DRAWS, seed: int = SEED) -> Driveline:
    """Study the driveline of a rig whose travel was studied."""
    heights = [(stance.name, stance.height) for stance in found.stances]
    return driveline_over(found.rig, found.points, heights, draws=draws, seed=seed)


def driveline_over(
    rig: Rig,
    points: Hardpoints,
    heights: Sequence[tuple[str, float]],
    *,
    draws: int = DRAWS,
    seed: int = SEED,
) -> Driveline:
    """Study a driveline at named heights against ride, m; the hubs decide what it is judged for."""
    columns, words = points.columns, rig.words
    on_road = not (points.steers and words["drive.unlocking_hubs"] == "yes")
    low = -float(columns["travel_lift"][0])
    level = motion(points, np.array([[low, low]]))
    line = line_through(points, level)
    stances = _stances(points, line, heights)
    reach = _added(stances, line)
    values = values_judged(line, columns, reach)
    drawn = _drawn(rig, reach, draws, seed) if draws else {}
    road = float(speed_judged(columns, on_road=on_road)[0])
    speed = road * float(columns["axle_ratio"][0] / columns["radius"][0])
    avoid = driveline_limit("half_whirl")
    built = _built_in(points, level, speed, drawn) if points.steers else None
    return Driveline(
        line=line,
        turns_on_road=on_road,
        in_line=words.get("driveline.yokes", "in line") == "in line",
        speed=speed,
        road=road,
        shaking=shaking(line, np.array([speed])),
        whirl=whirl(
            line.length,
            columns,
            speed_judged(columns, on_road=on_road),
            (avoid.low or 0.0, avoid.high or 0.0),
        ),
        stances=stances,
        checks=checks(values, drawn, double=line.double, on_road=on_road),
        if_locked=() if on_road else checks(values, drawn, double=line.double, on_road=True),
        built_in=built,
        wedges=_wedges(points, level, line, built, drawn),
        measured=tuple(sorted(name for name in rig.given if name.startswith("line_"))),
    )


def _stances(
    points: Hardpoints, ride: Line, heights: Sequence[tuple[str, float]]
) -> tuple[ShaftStance, ...]:
    low = -float(points.columns["travel_lift"][0])
    made = motion(points, low + np.array([[up, up] for _, up in heights]))
    line = line_through(points, made)
    out = driveline.plunge(line.length, ride.length)
    return tuple(
        ShaftStance(
            name=name,
            height=height,
            joints=(float(line.joints[row, 0]), float(line.joints[row, 1])),
            whole=float(line.whole[row]),
            length=float(line.length[row]),
            plunge=float(np.asarray(out)[row]),
        )
        for row, (name, height) in enumerate(heights)
        if np.isfinite(line.length[row])
    )


def _added(stances: Sequence[ShaftStance], ride: Line) -> dict[str, float]:
    """What travel adds to ride at its worst: to both joints, rad, and slip out and in, m."""
    return {
        "case": max(0.0, *(stance.joints[0] - float(ride.joints[0, 0]) for stance in stances)),
        "pinion": max(0.0, *(stance.joints[1] - float(ride.joints[0, 1]) for stance in stances)),
        "out": max(0.0, *(stance.plunge for stance in stances)),
        "in": max(0.0, *(-stance.plunge for stance in stances)),
    }


def _drawn(rig: Rig, reach: dict[str, float], draws: int, seed: int) -> dict[str, Column]:
    """The values judged for every draw; what travel adds is the same for all."""
    columns = drawn_geometry_columns(rig, 0, draws, seed)
    built = drawn_geometry_columns(rig.built, 0, draws, seed) if rig.built is not None else columns
    points = hardpoints(columns, rig.words, as_taped(built))
    low = -columns["travel_lift"]
    level = np.stack([low, low], axis=-1)
    made = motion(straightened(points, level) if points.steers else points, level)
    found = values_judged(line_through(points, made), columns, reach)
    if points.steers:
        caster = np.mean(made.caster, axis=-1)
        line = line_through(points, made)
        wanted = _wanted(points, made, line, double=line.double)
        found["forgings"] = columns["line_caster_wanted"] + wanted - caster - line.pinion_rise
    if points.arms == "leaves":
        line = line_through(points, made)
        wanted = _wanted(points, made, line, double=line.double)
        found |= {"turn": wanted - line.pinion_rise, "pad": columns["travel_spring_pad"]}
    return found


def _wanted(points: Hardpoints, made: Motion, line: Line, *, double: bool) -> Column:
    centre = made.pose[:, :3]
    return pinion_wanted(
        made.at["pinion_joint"] - centre,
        points.at["transfer_joint"] - centre,
        line.pinion_rise,
        points.columns["line_output_up"],
        double=double,
    )


def _wedges(
    points: Hardpoints,
    level: Motion,
    line: Line,
    built: BuiltIn | None,
    drawn: dict[str, Column],
) -> tuple[Wedge, ...]:
    """Wedges under leaf springs: for the pinion, and of a front axle for its caster."""
    if points.arms != "leaves":
        return ()
    wanted = float(_wanted(points, level, line, double=line.double)[0])
    turns: dict[For, float] = {"pinion": wanted - float(line.pinion_rise[0])}
    if built is not None:
        turns["caster"] = built.for_caster.by
    spread = (drawn["turn"], drawn["pad"]) if "turn" in drawn else None
    return wedges(points, turns, spread)


def _built_in(points: Hardpoints, level: Motion, speed: float, drawn: dict[str, Column]) -> BuiltIn:
    line = line_through(points, level)
    spread = drawn.get("forgings", np.array([np.nan]))
    good = spread[np.isfinite(spread)]
    low, high = np.quantile(good, (0.05, 0.95)) if good.size else (np.nan, np.nan)
    return built_in(
        lambda by: line_through(points, level, turned=by),
        float(np.mean(level.caster[0])),
        float(points.columns["line_caster_wanted"][0]),
        (
            float(_wanted(points, level, line, double=line.double)[0]),
            float(_wanted(points, level, line, double=True)[0]),
        ),
        speed,
        float(points.columns["radius"][0]),
        (float(low), float(high)),
    )
