"""From contact patch to housing: what hub, knuckle, joints and steering rods carry.

The steering is statically determinate: the tie rod holds the far knuckle from turning about its
kingpin, the drag link holds both. Drive torque passes through the wheel joint, so a driven
wheel's force acts on the knuckle at wheel-centre height; a braked wheel's acts at the ground.
"""

from dataclasses import dataclass

import numpy as np

from axlewright.duty import Loads
from axlewright.rig import Column, Columns, Words

LEFT, RIGHT = 0, 1
SIGNS = np.array([1.0, -1.0])


@dataclass(frozen=True, slots=True, kw_only=True)
class WheelEnd:
    """Loads at both wheel ends, (n, rows, side, …), SI.

    ``force`` and ``moment_at_wheel`` reach the hub at the wheel centre; ``at_bearing`` and
    ``at_kingpin`` are the moments about the bearing's centre and the kingpin at hub height;
    ``steer`` is the moment about the steering axis (n, rows, side); ``tie_rod`` is its tension
    and ``drag_link`` its force (n, rows); ``rods_force`` and ``rods_moment`` act on the knuckles.
    """

    force: Column
    moment_at_wheel: Column
    at_bearing: Column
    at_kingpin: Column
    steer: Column
    tie_rod: Column
    drag_link: Column
    rods_force: Column
    rods_moment: Column


def wheel_ends(columns: Columns, words: Words, loads: Loads) -> WheelEnd:
    """Carry the loads of every case row from the ground into both wheel ends."""
    radius = np.stack([columns["hub_height_left"], columns["hub_height_right"]], -1)
    force = loads.ground + loads.hub
    moment = np.zeros_like(force)
    moment[..., 0] = radius[:, None] * loads.ground[..., 1]
    moment[..., 1] = -radius[:, None] * loads.ground[..., 0] + loads.drive
    half = 0.5 * columns["track"]
    arm = columns["bearing_setback"] + columns["wheel_spacer"] - columns["wheel_offset"]
    at_bearing = _moved(moment, force, arm)
    if words["rig.axle"] == "rear":
        none = np.zeros(force.shape[:2])
        return WheelEnd(
            force=force,
            moment_at_wheel=moment,
            at_bearing=at_bearing,
            at_kingpin=at_bearing,
            steer=np.zeros(force.shape[:3]),
            tie_rod=none,
            drag_link=none,
            rods_force=np.zeros_like(force),
            rods_moment=np.zeros_like(force),
        )
    pivot = 0.5 * columns["kingpin_spacing"] - 0.5 * columns["kingpin_height"] * np.tan(
        columns["inclination"]
    )
    at_kingpin = _moved(moment, force, np.maximum(half - pivot, 0.0))
    axis = _steering_axis(columns)
    steer = np.einsum("nrsi,nsi->nrs", at_kingpin, axis)
    return _with_rods(columns, words, force, moment, at_bearing, at_kingpin, axis, steer)


def _moved(moment: Column, force: Column, arm: Column) -> Column:
    """Moments about a point ``arm`` inboard of each wheel centre."""
    lever = SIGNS * arm[:, None, None]
    out = moment.copy()
    out[..., 0] += lever * force[..., 2]
    out[..., 2] -= lever * force[..., 0]
    return out


def _steering_axis(columns: Columns) -> Column:
    lean_back = np.tan(columns["caster"])
    lean_in = np.tan(columns["inclination"])
    axis = np.empty((lean_in.shape[0], 2, 3))
    axis[..., 0] = -lean_back[:, None]
    axis[..., 1] = -SIGNS * lean_in[:, None]
    axis[..., 2] = 1.0
    return np.asarray(axis / np.linalg.norm(axis, axis=-1, keepdims=True))


def _with_rods(
    columns: Columns,
    words: Words,
    force: Column,
    moment: Column,
    at_bearing: Column,
    at_kingpin: Column,
    axis: Column,
    steer: Column,
) -> WheelEnd:
    ahead = 1.0 if words["steering.tie_rod_ahead"] == "yes" else -1.0
    near = RIGHT if words["steering.drive_side"] == "left" else LEFT  # the drag link's knuckle
    far = LEFT if near == RIGHT else RIGHT
    lever = ahead * columns["steering_arm"]
    turn = lever[:, None] * axis[:, far, 2][:, None]
    push = -steer[..., far] / turn  # force of the tie rod on the far knuckle, along y
    near_turn = axis[:, near, 2][:, None]
    drag = -(steer[..., near] - push * lever[:, None] * near_turn) / (-lever[:, None] * near_turn)
    rods_force = np.zeros_like(force)
    rods_moment = np.zeros_like(force)
    rods_force[..., far, 1] = push
    rods_moment[..., far, 2] = push * lever[:, None]
    rods_force[..., near, 1] = drag - push
    rods_moment[..., near, 2] = -push * lever[:, None] - drag * lever[:, None]
    return WheelEnd(
        force=force,
        moment_at_wheel=moment,
        at_bearing=at_bearing,
        at_kingpin=at_kingpin,
        steer=steer,
        tie_rod=-SIGNS[far] * push,
        drag_link=drag,
        rods_force=rods_force,
        rods_moment=rods_moment,
    )
