"""One pose of an axle between hanging, bump, roll and full lock: where all is, and what is left."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from axlewright.geometry.joints import pinion_rise, rod_ends, shaft_lengths, spring_lengths
from axlewright.geometry.limits import Left, rooms_left
from axlewright.geometry.moving import Motion, drop_arm, grid, motion
from axlewright.geometry.points import Hardpoints
from axlewright.geometry.study import Travel
from axlewright.physics import alignment, linkage
from axlewright.rig import Column

MOST_ARM = np.radians(60.0)  # of the drop arm; none turns further
ARM_STEPS = 121
MOST_ROLL = np.radians(12.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """How far one axle can be shown to move: down and up, m; in roll, and the drop arm, rad.

    ``right`` and ``left`` are turns of the drop arm to full lock, left positive.
    """

    down: float
    up: float
    roll: float
    right: float
    left: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """One pose beside that at ride: ``made`` has the two, ride first.

    ``bump`` is how far the middle stands above ride, m; ``roll`` left wheel up and ``arm`` the
    drop arm's turn to the left, rad. ``left`` is what is left until each thing touches or binds;
    ``ends`` are those of tie rod, drag link and drop arm by name, (2, 3) m.
    """

    points: Hardpoints
    made: Motion
    bump: float
    roll: float
    arm: float
    caster: tuple[float, float]
    camber: tuple[float, float]
    heading: tuple[float, float]
    pinion: float
    shift: float
    steers: float
    springs: tuple[float, float]
    shaft: float
    left: tuple[Left, ...]
    ends: Mapping[str, Column]
    reached: bool


def reach_of(found: Travel) -> Reach:
    """How far the axle of a study moves until something hard ends it, or the locks are met."""
    now = found.now
    down, up = min(now.droop.at, 0.3), min(now.bump.at, 0.3)
    roll = min(now.stop_room, up, down + 0.02) / max(float(found.points.half_track[0]), 0.1)
    right, left = _locks(found.points) if found.points.steers else (0.0, 0.0)
    return Reach(
        down=-down, up=up, roll=float(min(max(roll, 0.02), MOST_ROLL)), right=right, left=left
    )


def pose_of(found: Travel, bump: float = 0.0, roll: float = 0.0, arm: float = 0.0) -> Pose:
    """Pose the axle of a study; ``reached`` is false where its rods do not let it get there."""
    points = found.points
    heights, ends = grid(points, *(np.array([each]) for each in (bump, roll, arm)))
    low = -float(points.columns["travel_lift"][0])
    both = np.vstack([[[low, low]], heights])
    pitman = None
    if ends is not None:
        pitman = np.vstack([drop_arm(points, np.zeros(1)), ends])
    made = motion(points, both, pitman)
    heading = made.heading if points.steers else np.repeat(made.pose[:, 5:6], 2, axis=1)
    caster = made.caster if points.steers else np.zeros((2, 2))
    springs = spring_lengths(points, made)
    steering = {} if pitman is None else {**rod_ends(points, made), "drop_arm": pitman}
    return Pose(
        points=points,
        made=made,
        bump=bump,
        roll=roll,
        arm=arm,
        caster=_two(caster[1]),
        camber=_two(made.wheels[1, :, 2] if points.steers else np.zeros(2)),
        heading=_two(heading[1]),
        pinion=float(pinion_rise(points, made)[1] - pinion_rise(points, made)[0]),
        shift=float(made.shift[1] - made.shift[0]),
        steers=float(np.mean(heading[1]) - np.mean(heading[0])),
        springs=_two(springs[1]),
        shaft=float(shaft_lengths(points, made)[1]),
        left=rooms_left(points, made, 1),
        ends=steering,
        reached=bool(made.status[1] == linkage.POSED),
    )


def _locks(points: Hardpoints) -> tuple[float, float]:
    """Turns of the drop arm, right and left, at which the inner wheel stands at full lock."""
    low = -float(points.columns["travel_lift"][0])
    arms = np.linspace(-MOST_ARM, MOST_ARM, ARM_STEPS)
    made = motion(points, np.array([[low, low]]), drop_arm(points, arms))
    turned = np.max(np.abs(made.heading), axis=1)
    most = float(points.columns["lock_angle"][0])
    good = (made.status == linkage.POSED) & (turned <= most + 1e-9)
    middle = ARM_STEPS // 2
    ends = []
    for way in (-1, 1):
        place = middle
        while 0 <= place + way < ARM_STEPS and good[place + way]:
            place += way
        ends.append(float(arms[place]))
    return ends[0], ends[1]


def _two(pair: Column) -> tuple[float, float]:
    return float(pair[0]), float(pair[1])


@dataclass(frozen=True, slots=True, kw_only=True)
class SteeringShape:
    """What the steering does at ride: turns at full lock to the left and right, rad, and trail, m.

    Each lock is inner wheel, outer wheel, and what the outer one would turn if both rolled about
    one centre. ``trail`` is that of the caster at the loaded radius.
    """

    left: tuple[float, float, float]
    right: tuple[float, float, float]
    trail: float


def steering_shape(found: Travel) -> SteeringShape | None:
    """Give the steering's shape; nothing for an axle that does not steer.

    References
    ----------
    gillespie1992, ch. 8
    """
    points = found.points
    if not points.steers:
        return None
    reach, columns = reach_of(found), points.columns
    made = []
    for arm, inner, outer in ((reach.left, 0, 1), (reach.right, 1, 0)):
        turned = [abs(each) for each in pose_of(found, arm=arm).heading]
        ideal = alignment.ackermann_angle(
            turned[inner], float(columns["wheelbase"][0]), float(columns["kingpin_spacing"][0])
        )
        made.append((turned[inner], turned[outer], float(ideal)))
    trail = alignment.mechanical_trail(float(columns["radius"][0]), found.now.caster)
    return SteeringShape(left=made[0], right=made[1], trail=float(trail))
