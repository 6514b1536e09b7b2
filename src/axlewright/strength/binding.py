"""What holds the axle pulls on it with no load there: arms that do not fit, bushings wound up.

The pull that is there when parked stands in every case; what crossing the wheels adds is part of
the cases in which one wheel hangs, and of wear by its range. Rows are the cases, then `HELD`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import CASES, ROW
from axlewright.physics import metals, rod_bind, section
from axlewright.rig import Column, Columns, Words

HELD: Final = len(CASES)  # the row of what is there with nothing on the axle
SIDES: Final = ("left", "right")
SIGN: Final = {"left": 1.0, "right": -1.0}
FIGHTING: Final = (  # rods of four arms and a track bar, in the names of taped places
    ("lower_arm_left", "arm", "_left"),
    ("lower_arm_right", "arm", "_right"),
    ("upper_arm_left", "upper_arm", "_left"),
    ("upper_arm_right", "upper_arm", "_right"),
    ("track_bar", "track_bar", ""),
)
LOOSE: Final = 0.02  # m for each rad or m: rods that hold an axle no better do not hold it; memory
CROSSED: Final = {"hung_left": 1.0, "hung_right": -1.0}  # left wheel up, left wheel down


@dataclass(frozen=True, slots=True, kw_only=True)
class Binding:
    """Pulls (n, rows) in N of rods that fight, tension positive, with their ends and lines.

    ``end`` (n, 3) m from the axle's middle and ``line`` (n, 3) towards the frame, by rod.
    ``torque`` (n, rows), N m, is that of one wound-up bushing and ``push`` (n, rows), N, what the
    arm then pushes the axle down, by arm; torques are positive as after clamping it hanging.
    ``loose`` where the rods' places leave the axle free to move: then no pull is told. ``torn``
    where rods as told could only be there with a bushing torn: none is told either.
    """

    pull: Mapping[str, Column]
    end: Mapping[str, Column]
    line: Mapping[str, Column]
    torque: Mapping[str, Column]
    push: Mapping[str, Column]
    loose: bool = False
    torn: bool = False


def binding(columns: Columns, words: Words, arms: Mapping[str, tuple[Column, Column]]) -> Binding:
    """What is there with nothing on the axle; ``arms`` are length and rise of each arm, m."""
    pull: dict[str, Column] = {}
    end: dict[str, Column] = {}
    line: dict[str, Column] = {}
    loose, torn = False, False
    if words["held_by.arms"] == "four arms":
        near, far, own, stiff = _rods(columns)
        firm = rod_bind.least_hold(near, far) > LOOSE
        loose = float(np.mean(firm)) < 0.5
        found, give = _pulls(columns, near, far, own, stiff, firm)
        torn = float(np.mean(np.max(give, axis=-1) > rod_bind.MOST_GIVE)) > 0.5
        towards = (near - far) / np.linalg.norm(near - far, axis=-1, keepdims=True)
        for place, (name, _, _) in enumerate(FIGHTING):
            pull[name], end[name], line[name] = found[place], far[:, place], towards[:, place]
    torque: dict[str, Column] = {}
    push: dict[str, Column] = {}
    one = words["held_by.arms"] == "radius arms"  # bolted twice to the axle, it turns with it
    for name, (length, rise) in arms.items():
        torque[name] = _wound(columns, name, length, rise)
        level = np.sqrt(np.maximum(length**2 - rise**2, 1e-4))
        push[name] = (1.0 if one else 2.0) * torque[name] / level[:, None]
    return Binding(pull=pull, end=end, line=line, torque=torque, push=push, loose=loose, torn=torn)


def bound_action(
    bound: Binding, words: Words, name: str, node: Column, offset: Column
) -> Column | None:
    """Force and moment about its node, (n, rows, 6), of one support by what binds; None: none.

    ``node`` and ``offset`` (n, 3) m: where the node is, and the arm's bolt from it.
    """
    if name not in bound.pull and name not in bound.torque:
        return None
    rows = next(iter({**bound.torque, **bound.pull}.values())).shape
    out = np.zeros((*rows, 6))
    if name in bound.pull:
        push = bound.pull[name][..., None] * bound.line[name][:, None]
        out[..., :3] += push
        out[..., 3:] += np.cross((bound.end[name] - node)[:, None], push)
    if name in bound.torque:
        way = 1.0 if words["rig.axle"] == "front" else -1.0  # turns that steepen the arm
        if words["held_by.arms"] == "radius arms":  # its eye at the frame turns arm and axle
            out[..., 4] += way * bound.torque[name]
        else:
            down = np.zeros((*rows, 3))
            down[..., 2] = -bound.push[name]
            out[..., :3] += down
            out[..., 3:] += np.cross(offset[:, None], down)
            out[..., 4] -= way * bound.torque[name]
    return out


def bolt_force(bound: Binding, name: str, tension: Column, height: Column) -> Column:
    """Force at a bracket's bolt that bends its foot as pull and twist together, (n, rows), N.

    ``height`` (n,) of the bolt over the foot, m; a lower arm's bolt hangs under it.

    References
    ----------
    statics: moment of the pull at the foot, less or more the bushing's own
    """
    if name not in bound.torque:
        return tension
    way = 1.0 if name.startswith("upper") else -1.0
    return np.asarray(tension + way * bound.torque[name] / np.maximum(height, 0.01)[:, None])


def _wound(columns: Columns, name: str, length: Column, rise: Column) -> Column:
    """Torque of one bushing of an arm in every row."""
    side = name.rpartition("_")[2]
    stiff, rise = columns["travel_bush_twist"], rise + columns["travel_lift"]
    out = np.zeros((len(length), HELD + 1))
    out[:, HELD] = stiff * rod_bind.arm_twist(length, rise, columns["travel_clamped_at"])
    for case, way in CROSSED.items():
        up = way * SIGN.get(side, 0.0) * columns["travel_crossing"]
        out[:, ROW[case]] = stiff * rod_bind.arm_twist(length, rise - up, -up)
    return out


def _pulls(
    columns: Columns,
    near: Column,
    far: Column,
    own: Column,
    stiff: Column,
    firm: NDArray[np.bool_],
) -> tuple[list[Column], Column]:
    """Pull of each rod in every row, and what its two bushings give parked, (n, rods) m.

    Nought where the rods do not hold the axle, and where one could only be there with its bushings
    torn: such a draw is no axle.
    """
    half, low = 0.5 * columns["track"][firm], -columns["travel_lift"][firm]
    out = np.zeros((near.shape[1], len(firm), HELD + 1))

    def pulls(left: Column, right: Column) -> Column:
        heights = np.stack([left, right], axis=-1)
        return rod_bind.rod_pulls(near[firm], far[firm], own[firm], stiff[firm], half, heights)

    parked = pulls(low, low)
    give = np.zeros((len(firm), near.shape[1]))
    give[firm] = np.abs(parked) * 2.0 / columns["bushing_stiffness"][firm, None]
    whole = np.max(give[firm], axis=-1, initial=0.0) <= rod_bind.MOST_GIVE
    out[:, firm, HELD] = np.where(whole, parked.T, 0.0)
    for case, way in CROSSED.items():
        up = way * columns["travel_crossing"][firm]
        out[:, firm, ROW[case]] = np.where(whole, (pulls(low + up, low - up) - parked).T, 0.0)
    return list(out), give


def _rods(columns: Columns) -> tuple[Column, Column, Column, Column]:
    """Ends (n, rods, 3), own lengths and stiffness (n, rods) of arms and track bar."""
    near, far, own, stiff = [], [], [], []
    for _, stem, side in FIGHTING:
        ends = [_place(columns, f"{stem}_{at}{side}") for at in ("frame", "axle")]
        then = [_place(columns, f"{stem}_{at}{side}", "taped_") for at in ("frame", "axle")]
        long = np.linalg.norm(then[0] - then[1], axis=-1) + columns[f"longer_{stem}{side}"]
        kind = "track_bar" if stem == "track_bar" else "arm"
        outer = columns[f"{kind}_outer"]
        inner = np.maximum(outer - 2.0 * columns[f"{kind}_wall"], 0.0)
        bar = metals.STEEL * section.area(outer, inner) / long
        near.append(ends[0])
        far.append(ends[1])
        own.append(long)
        stiff.append(1.0 / (1.0 / bar + 2.0 / columns["bushing_stiffness"]))
    return (
        np.stack(near, axis=1), np.stack(far, axis=1), np.stack(own, axis=1),
        np.stack(stiff, axis=1),
    )  # fmt: skip


def _place(columns: Columns, name: str, kept: str = "") -> Column:
    """One end from the axle's middle, (n, 3) m; ``kept`` as the rods were fitted to it."""

    def read(quantity: str) -> Column:
        return columns.get(f"{kept}{quantity}", columns[quantity])

    axes = [read(f"point_{name}_{axis}") for axis in ("ahead", "left", "up")]
    axes[2] = axes[2] - columns.get("taped_radius", columns["radius"])
    return np.stack(axes, axis=-1)
