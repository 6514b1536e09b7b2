"""Joint crosses by cap diameter and length across caps, never by a trade series."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossJoint:
    """One cross, in metre. `arm` runs from the joint's centre to the middle of the needles."""

    key: str
    cap: float
    length: float
    trunnion: float
    hole: float
    needles: int
    needle: float
    needle_length: float
    arm: float
    origin: Origin


@cache
def cross_joints() -> Mapping[str, CrossJoint]:
    """Read the whole table."""
    return {
        row["key"]: CrossJoint(
            key=row["key"],
            cap=number(row, "cap_mm"),
            length=number(row, "length_mm"),
            trunnion=number(row, "trunnion_mm"),
            hole=number(row, "hole_mm"),
            needles=int(row["needles"]),
            needle=number(row, "needle_mm"),
            needle_length=number(row, "needle_length_mm"),
            arm=number(row, "arm_mm"),
            origin=origin(row),
        )
        for row in rows("cross_joints")
    }


def cross_joint(key: str) -> CrossJoint:
    """Find one cross by key, such as 27.0x81.8."""
    return look_up(cross_joints(), key, what="joint cross")


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossJointRatio:
    """One proportion of a cross, with its 90 % band."""

    key: str
    words: str
    low: float
    value: float
    high: float
    origin: Origin


@cache
def cross_joint_ratios() -> Mapping[str, CrossJointRatio]:
    """Read the whole table."""
    return {
        row["key"]: CrossJointRatio(
            key=row["key"],
            words=row["words"],
            low=number(row, "low"),
            value=number(row, "value"),
            high=number(row, "high"),
            origin=origin(row),
        )
        for row in rows("cross_joint_ratios")
    }


def cross_joint_ratio(key: str) -> CrossJointRatio:
    """Find one proportion by key."""
    return look_up(cross_joint_ratios(), key, what="proportion of a joint cross")


def cross_joint_at(cap: float, length: float, within: float = 0.001) -> CrossJoint | None:
    """Find the cross whose cap and length (metre) both agree within a tolerance, or None.

    Where there is none, the proportions of `cross_joint_ratios` stand in.

    Examples
    --------
    >>> cross_joint_at(0.0270, 0.0817).key
    '27.0x81.8'
    """
    close = [
        joint
        for joint in cross_joints().values()
        if abs(joint.cap - cap) <= within and abs(joint.length - length) <= within
    ]
    return min(
        close, key=lambda joint: abs(joint.cap - cap) + abs(joint.length - length), default=None
    )
