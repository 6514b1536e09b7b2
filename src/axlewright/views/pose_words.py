"""One pose of an axle in words: how it stands, what its wheels do, what is left on each way."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite, sin
from typing import Final

from axlewright.geometry import Left, Pose, Reach
from axlewright.views.travel import angle, length

NEAR: Final = 0.012  # m: less than a finger's breadth is told as close
NEAR_TURN: Final = 0.05  # rad: under 3 deg a joint is told as close
STILL: Final = 5e-4


@dataclass(frozen=True, slots=True, kw_only=True)
class PoseTold:
    """One pose told: in a sentence, line by line, and by a few letters on each view."""

    words: str
    lines: tuple[str, ...]
    labels: Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Still:
    """A pose worth seeing without a slider: its key, its name, bump, roll and drop arm, SI."""

    key: str
    said: str
    bump: float = 0.0
    roll: float = 0.0
    arm: float = 0.0


def still_poses(reach: Reach, *, steers: bool) -> tuple[Still, ...]:
    """Hanging, at ride, in bump, crossed and, where it steers, at full lock."""
    poses = (
        Still(key="droop", said="hanging", bump=reach.down),
        Still(key="ride", said="at ride"),
        Still(key="bump", said="in bump", bump=reach.up),
        Still(key="crossed", said="crossed", roll=reach.roll),
    )
    if not steers:
        return poses
    return (*poses, Still(key="lock", said="full lock", arm=reach.left))


def pose_told(pose: Pose, system: str = "metric") -> PoseTold:
    """How the axle stands and what is left."""
    stands = _stands(pose, system)
    if not pose.reached:
        told = f"{stands}: its rods do not let the axle get there."
        return PoseTold(words=told, lines=(told,), labels={})
    lines = [f"{stands}."]
    if pose.points.steers:
        lines += [_caster(pose), _turned(pose)]
    else:
        lines.append(f"The pinion looks {_updown(pose.pinion)}.")
        lines.append(f"The axle steers {steered(pose.steers)}.")
    if abs(pose.shift) > STILL:
        lines.append(f"The axle has moved {aside(pose.shift, system)}.")
    lines.append(_left_line(pose.left, system))
    return PoseTold(words=" ".join(lines), lines=tuple(lines), labels=_labels(pose, system))


def _stands(pose: Pose, system: str) -> str:
    half = float(pose.points.half_track[0]) * sin(pose.roll)
    left, right = (_height(pose.bump + side, system) for side in (half, -half))
    told = f"Both wheels {left}" if left == right else f"Left wheel {left}, right wheel {right}"
    if pose.points.steers and abs(pose.arm) > STILL:
        told += f", steered {'left' if pose.arm > 0.0 else 'right'}"
    return told


def _height(value: float, system: str) -> str:
    if abs(value) < STILL:
        return "at ride height"
    return f"{length(abs(value), system)} {'up' if value > 0.0 else 'down'}"


def _caster(pose: Pose) -> str:
    left, right = pose.caster
    told = (
        angle(left) if angle(left) == angle(right) else f"{angle(left)} left, {angle(right)} right"
    )
    return f"Caster {told}; the pinion looks {_updown(pose.pinion)}."


def _turned(pose: Pose) -> str:
    if abs(pose.arm) < STILL:
        return f"The wheels steer themselves {steered(pose.steers)}."
    left, right = pose.heading
    return f"The left wheel is turned {angle(abs(left))}, the right one {angle(abs(right))}."


def _updown(value: float) -> str:
    if abs(value) < 9e-4:
        return "as it does at ride"
    return f"{angle(abs(value))} {'higher' if value > 0.0 else 'lower'} than at ride"


def steered(value: float) -> str:
    """How far something steers, rad, left positive."""
    if abs(value) < 9e-4:
        return "not at all"
    return f"{angle(abs(value))} to the {'left' if value > 0.0 else 'right'}"


def aside(value: float, system: str) -> str:
    """How far something stands off sideways, m, left positive."""
    if abs(value) < STILL:
        return "not at all"
    return f"{length(abs(value), system)} to the {'left' if value > 0.0 else 'right'}"


def _left_line(left: tuple[Left, ...], system: str) -> str:
    known = [each for each in left if isfinite(each.room)]
    gone = [each for each in known if each.room <= 1e-4]
    if gone:
        return f"Here {' and '.join(each.what for each in gone)}."
    near = [each for each in known if each.room < (NEAR_TURN if each.angle else NEAR)]
    if near:
        told = "; ".join(f"{each.what} in {_room(each, system)}" for each in near)
        return f"Close: {told}."
    lengths = [each for each in known if not each.angle]
    first = min(lengths, key=lambda each: each.room) if lengths else None
    if first is None:
        return "Nothing touches or binds."
    return f"Nothing touches or binds; {first.what} next, in {_room(first, system)}."


def _room(each: Left, system: str) -> str:
    return angle(each.room) if each.angle else length(each.room, system)


def _labels(pose: Pose, system: str) -> dict[str, str]:
    side = f"caster {angle(pose.caster[0])}" if pose.points.steers else ""
    if abs(pose.pinion) > 9e-4:
        up = "up" if pose.pinion > 0.0 else "down"
        side += f"{', ' if side else ''}pinion {angle(abs(pose.pinion))} {up}"
    behind = aside(pose.shift, system) if abs(pose.shift) > STILL else "in the middle"
    return {"side": side or "as at ride", "behind": behind, "above": ""}
