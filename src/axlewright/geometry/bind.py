"""What rods do to each other with no load on the axle, and what loads do to rods.

Four rods fix an axle: a wrong length moves it and binds nothing. More than four fight: a rod that
is too long pulls on its mates, parked. Rubber bushings clamped away from ride height are springs.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from axlewright.geometry.points import SIDES, Hardpoints, linkage_of
from axlewright.physics import linkage, rod_bind
from axlewright.physics.quantities import Num
from axlewright.rig import Column, Columns, Words


class Pull(NamedTuple):
    """One rod's pull (tension positive), N, and how much too long it was told to be, m."""

    rod: str
    force: float
    longer: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WindUp:
    """Bushings clamped away from ride: twist of each, rad, and what all arms push on the axle.

    ``force`` is downward on the axle, N: the vehicle stands that much higher over its springs.
    """

    twist: Column
    torque: Column
    force: Column
    rise: Column


def pulls(points: Hardpoints, heights: Column) -> Column:
    """Pull of every rod with nothing on the axle, tension positive, (n, rods) N."""
    made = linkage.axle_poses(linkage_of(points, steers=False), heights)
    stiff = np.stack([rod.stiffness for rod in points.rods], axis=-1)
    return np.asarray(made.gap * stiff)


def parked_pulls(columns: Columns, words: Words, points: Hardpoints) -> dict[str, Column]:
    """Pull of each rod at ride height with nothing on the axle, by rod, (n,) N.

    All nought where four rods or fewer hold the axle.
    """
    del words
    low = -columns["travel_lift"]
    found = pulls(points, np.stack([low, low], axis=-1))
    if len(points.rods) <= 4:
        found = np.zeros_like(found)
    told = {rod.name: found[:, place] for place, rod in enumerate(points.rods)}
    for side in SIDES:  # a radius arm's two rods are one arm: what is left is what it pulls
        if f"arm_far_{side}" in told:
            told[f"arm_{side}"] = told[f"arm_{side}"] + told.pop(f"arm_far_{side}")
    return told


def worst_parked(points: Hardpoints) -> Pull:
    """The rod that pulls or pushes most, parked."""
    found = parked_pulls(points.columns, points.words, points)
    name = max(found, key=lambda each: abs(float(found[each][0])))
    own = f"longer_{name}"
    longer = float(points.columns[own][0]) if own in points.columns else 0.0
    return Pull(rod=name, force=float(found[name][0]), longer=longer)


def wind_up(points: Hardpoints) -> WindUp:
    """What rubber bushings do that were clamped at another height than the one it stands at.

    Each arm swings about its frame end by the difference of its slopes; two bushings each resist,
    of a radius arm the one at the frame, for it turns with the axle.

    References
    ----------
    statics: torque over the arm's level length
    """
    c = points.columns
    arms = [rod for rod in points.rods if "arm" in rod.name and "far" not in rod.name]
    none = np.zeros(points.lanes)
    if not arms:
        return WindUp(twist=none, torque=none, force=none, rise=none)
    twists, force = [], none
    bushings = 1.0 if points.arms == "radius arms" else 2.0
    for rod in arms:
        rise = rod.frame[:, 2] - rod.axle[:, 2] + c["travel_lift"]
        twist = rod_bind.arm_twist(rod.length, rise, c["travel_clamped_at"])
        torque = bushings * c["travel_bush_twist"] * twist
        level = np.hypot(*(rod.frame - rod.axle).T[:2])
        twists.append(twist)
        force = force + torque / level
    twist = np.stack(twists, axis=-1)
    return WindUp(
        twist=twist,
        torque=bushings * c["travel_bush_twist"] * np.max(np.abs(twist), axis=-1),
        force=force,
        rise=np.asarray(force / (2.0 * c["spring_rate"])),
    )


def roll_bind(points: Hardpoints, roll: float = 0.1) -> float:
    """How stiffly the arms' bushings hold the axle against roll, N m for each rad.

    Twice the strain energy over the roll squared; nought where four rods hold the axle.
    """
    if len(points.rods) <= 4:
        return 0.0
    side = float(points.half_track[0]) * np.sin(roll)
    low = -float(points.columns["travel_lift"][0])
    made = linkage.axle_poses(
        linkage_of(points, steers=False), np.array([[low + side, low - side], [low, low]])
    )
    stiff = np.array([float(rod.stiffness[0]) for rod in points.rods])
    energy = 0.5 * np.sum(stiff * made.gap**2, axis=-1)
    return float(2.0 * (energy[0] - energy[1]) / roll**2)


def radius_arm_roll_stiffness(bushing: Num, half_apart: Num, across: Num, length: Num) -> Column:
    """Roll stiffness of two radius arms, N m for each rad: each twists by roll x across / length.

    ``bushing`` N/m upright of each of an arm's two bolts at the axle, ``half_apart`` from their
    middle; ``across`` is how far the arm stands from the axle's middle, m.

    References
    ----------
    derived: strain energy of four bushings
    """
    return np.asarray(4.0 * bushing * half_apart**2 * (across / length) ** 2)


def carried(points: Hardpoints, forces: Column, at: Column, springs: Column) -> Column:
    """Pulls of four rods and pushes of two springs that hold loads on the axle at ride, N.

    Parameters
    ----------
    forces, at
        (loads, 3): each load and its place on the axle, N and m.
    springs
        (2, 3): where the springs push straight up, m.

    References
    ----------
    statics: six equations of a free body
    """
    near = np.stack([rod.frame[0] for rod in points.rods])
    far = np.stack([rod.axle[0] for rod in points.rods])
    line = (near - far) / np.linalg.norm(near - far, axis=1)[:, None]
    up = np.array([[0.0, 0.0, -1.0]] * len(SIDES))
    ways, spots = np.vstack([line, up]), np.vstack([far, springs])
    matrix = np.vstack([ways.T, np.cross(spots, ways).T])
    load = np.concatenate([forces.sum(axis=0), np.cross(at, forces).sum(axis=0)])
    return np.asarray(np.linalg.solve(matrix, -load))
