"""An axle through bump, roll and steer: where everything goes, and what each joint does.

Bump is how far both wheels rise above ride, roll the angle of the axle against the body (left
wheel up positive), steer the turn of the drop arm (left positive). Everything is from the ride
height that the vehicle has now: a lift lowers the wheels against the body.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from axlewright.errors import AxlewrightError
from axlewright.geometry.points import (
    Hardpoints,
    drag_end,
    linkage_of,
    rod_in_words,
)
from axlewright.geometry.rods import Rod
from axlewright.geometry.steering_reach import steering_miss
from axlewright.physics import linkage, rod_bind
from axlewright.rig import Column

ELSEWHERE = 0.3  # m: an axle that far from where it was measured has flipped over, not moved
TURNED = 0.2  # cosine: a rod or an axle turned further than this has flipped over
TAPE_AGAIN = "Are left and right, or frame and axle, swapped? Tape both ends again."
SMALL = 5e-4  # m: wheel movement for slopes


@dataclass(frozen=True, slots=True, kw_only=True)
class Motion:
    """Poses of one axle, one row each.

    ``heights`` (n, 2) are wheels above the taped ride, m; ``pose`` and ``wheels`` as those of
    `axle_poses`; ``turn`` (n, 3, 3) carries the axle's axes into the body's; ``at`` has the moved
    points of the axle by name, (n, 3) m; ``pitman`` the drop arm's end where it was turned.
    """

    heights: Column
    pose: Column
    wheels: Column
    gap: Column
    status: NDArray[np.int64]
    turn: Column
    at: dict[str, Column]
    pitman: Column | None = None

    @property
    def shift(self) -> Column:
        """How far left of the body's middle the axle stands, m."""
        return np.asarray(self.pose[:, 1])

    @property
    def caster(self) -> Column:
        """Caster of both wheels, (n, 2) rad."""
        return np.asarray(self.wheels[:, :, 3])

    @property
    def heading(self) -> Column:
        """Heading of both wheels, left positive, (n, 2) rad."""
        return np.asarray(self.wheels[:, :, 1])


def motion(points: Hardpoints, heights: ArrayLike, pitman: Column | None = None) -> Motion:
    """Pose the axle; one rig with many heights, many rigs with one, or in pairs."""
    asked = np.asarray(heights, dtype=np.float64).reshape(-1, 2)
    made = linkage.axle_poses(linkage_of(points), asked, pitman)
    pose, status = made.pose, made.status.copy()
    turn = turns_of(pose)
    posed = (status == linkage.POSED) | (status == linkage.NOT_STEERED)
    flipped = (_flipped(points, pose, turn) | _torn(points, made.gap)) & posed
    status[flipped] = linkage.OUT_OF_REACH
    if flipped.any():
        pose[flipped], made.wheels[flipped] = np.nan, np.nan
    lanes = len(status)
    return Motion(
        heights=np.broadcast_to(asked, (lanes, 2)),
        pose=pose,
        wheels=made.wheels,
        gap=made.gap,
        status=status,
        turn=turn,
        at=_carried(points, pose, turn),
        pitman=pitman,
    )


def at_ride(points: Hardpoints) -> tuple[Hardpoints, Motion]:
    """Let the vehicle stand: the axle at ride height, the drag link set so that it runs straight.

    Raises `AxlewrightError` with the rod that cannot reach, and by how much.
    """
    low = -points.columns["travel_lift"]
    heights = np.stack([low, low], axis=-1)
    ready = straightened(points, heights) if points.steers else points
    made = motion(ready, heights)
    refuse_unreachable(ready, made, "at ride height")
    return ready, made


def straightened(points: Hardpoints, heights: Column) -> Hardpoints:
    """Set the drag link's length so that the wheels run straight on the axle at these heights."""
    pose = linkage.axle_poses(linkage_of(points, steers=False), heights).pose
    found = _carried(points, pose, turns_of(pose))
    ends = drag_end(found, points.words)
    return replace(points, drag_length=linkage.rod_lengths(ends, points.at["drag_link_pitman"]))


def off_centre(points: Hardpoints) -> Column:
    """How far the wheels stand off straight ahead before the drag link is set anew, rad."""
    low = -points.columns["travel_lift"]
    made = motion(points, np.stack([low, low], axis=-1))
    return np.asarray(np.mean(made.heading, axis=-1))


def refuse_unreachable(points: Hardpoints, made: Motion, where: str) -> None:
    """Raise the error of the first pose that cannot be: which rod, and by how much."""
    wrong = np.flatnonzero(made.status != linkage.POSED)
    if not wrong.size:
        return
    lane = int(wrong[0])
    if made.status[lane] == linkage.NOT_STEERED:
        told = steering_miss(points, made.pose[lane], made.turn[lane], made.pitman, lane)
        raise AxlewrightError(
            f"{told} {where}.",
            remedy="Tape the drop arm's end, the drag link's and the tie rod's ends again.",
        )
    if made.status[lane] == linkage.NOT_FINITE:
        raise AxlewrightError(
            f"A place is not a number {where}.", remedy="Tape the rods' ends again."
        )
    gap = made.gap[lane]
    worst = int(np.nanargmax(np.abs(gap))) if np.isfinite(gap).any() else 0
    name, miss = rod_in_words(points.rods[worst].name), float(gap[worst])
    if abs(miss) < max(5e-4, abs(_misfit(points, lane)[1])):
        raise AxlewrightError(
            _elsewhere(points, lane, made.heights[lane : lane + 1], where), remedy=TAPE_AGAIN
        )
    way = "longer" if miss > 0.0 else "shorter"
    raise AxlewrightError(
        f"The {name} cannot reach {where}: it would have to be {abs(miss) * 1e3:.0f} mm {way}.",
        remedy=TAPE_AGAIN,
    )


def _misfit(points: Hardpoints, lane: int) -> tuple[str, float]:
    """Rod that fits worst between its ends where they were taped, and how much too long it is."""
    found = {
        rod.name: float(
            rod.length[lane % len(rod.length)]
            - linkage.rod_lengths(rod.frame, rod.axle)[lane % len(rod.frame)]
        )
        for rod in points.rods
    }
    name = max(found, key=lambda each: abs(found[each]))
    return name, found[name]


def _elsewhere(points: Hardpoints, lane: int, heights: Column, where: str) -> str:
    """What is wrong where one rod does not fit, or all do but only with the axle thrown over."""
    name, off = _misfit(points, lane)
    if abs(off) < 5e-4:
        return _thrown_over(points, lane, heights, where)
    way = "longer" if off > 0.0 else "shorter"
    return (
        f"The {rod_in_words(name)} is {abs(off) * 1e3:.0f} mm {way} than its ends are apart: "
        f"{where} the axle would stand somewhere else altogether."
    )


def _thrown_over(points: Hardpoints, lane: int, heights: Column, where: str) -> str:
    """Say which rod swings furthest where every rod keeps its length, and how far the axle goes."""
    pose = linkage.axle_poses(linkage_of(points, steers=False), heights).pose
    turn = turns_of(pose)
    worst = min(points.rods, key=lambda rod: _along(rod, pose, turn)[lane])
    swing = np.degrees(np.arccos(np.clip(_along(worst, pose, turn)[lane], -1.0, 1.0)))
    off = 1e3 * np.max(np.abs(pose[lane, :2]))
    told = f"The axle would turn over {where}: it cannot get there with these ends."
    if not np.isfinite(swing):
        return told
    return (
        f"{told} The {rod_in_words(worst.name)} would swing by {swing:.0f}° and the axle move "
        f"{off:.0f} mm."
    )


def grid(
    points: Hardpoints, bump: Column, roll: Column, steer: Column
) -> tuple[Column, Column | None]:
    """Wheel heights and drop-arm ends of every bump x roll x steer, flat: (n, 2) and (n, 3)."""
    low = -float(points.columns["travel_lift"][0])
    half = float(points.half_track[0])
    up, lean, turn = (each.ravel() for each in np.meshgrid(bump, roll, steer, indexing="ij"))
    side = half * np.sin(lean)
    heights = np.stack([low + up + side, low + up - side], axis=-1)
    return heights, drop_arm(points, turn) if points.steers else None


def drop_arm(points: Hardpoints, turn: Column) -> Column:
    """End of the drop arm, (n, 3) m, after a turn in rad that steers the wheels left.

    The arm turns about its shaft's upright; a drag link behind the axle then goes right.
    """
    shaft, end = points.at["pitman_shaft"][0], points.at["drag_link_pitman"][0]
    arm = end - shaft
    way = np.copysign(1.0, arm[0]) * np.copysign(1.0, points.at["drag_link_wheel"][0, 0])
    cos, sin = np.cos(turn), way * np.sin(turn)
    return np.stack(
        [
            shaft[0] + cos * arm[0] - sin * arm[1],
            shaft[1] + sin * arm[0] + cos * arm[1],
            end[2] + 0.0 * turn,
        ],
        axis=-1,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Slopes:
    """What the axle turns about at one pose.

    ``roll_centre`` above the ground, m; ``roll_steer``, rad of heading for each rad of roll;
    ``instant`` (n, 2), where the axle pitches about: ahead of the axle and above it, m;
    ``anti`` of braking: how much of the dive (front) or lift (rear) the arms take, of one.
    """

    roll_centre: Column
    roll_steer: Column
    instant: Column
    anti: Column


def slopes(points: Hardpoints, heights: Column, front_share: float = 0.7) -> Slopes:
    """Roll centre, instant centre and anti-dive by small moves about heights (n, 2).

    ``front_share`` is the front axle's part of the braking (0.7: memory).

    References
    ----------
    derived: a point stands still where its sideways movement in roll is nought; the line from
    contact patch to instant centre against height of mass over wheelbase
    """
    base = np.asarray(heights, dtype=np.float64).reshape(-1, 2)
    moves = SMALL * np.array([[1.0, -1.0], [-1.0, 1.0], [1.0, 1.0], [-1.0, -1.0]])
    held = linkage_of(points, steers=False)
    one, other, up, down = (linkage.axle_poses(held, base + move).pose for move in moves)
    turn = one[:, 3] - other[:, 3]
    pitch = (up[:, 4] - down[:, 4]) / (2.0 * SMALL)
    ahead = (up[:, 0] - down[:, 0]) / (2.0 * SMALL)
    with np.errstate(divide="ignore", invalid="ignore"):
        instant = np.stack([1.0 / pitch, -ahead / pitch], axis=-1)
        # the line from the patch to the instant centre, also where that is at infinity
        c = points.columns
        slope = -(ahead - pitch * c["radius"])
    front = points.steers
    share = front_share if front else 1.0 - front_share
    anti = share * (-slope if front else slope) * c["wheelbase"] / c["mass_height"]
    return Slopes(
        roll_centre=np.asarray((one[:, 1] - other[:, 1]) / turn + base.mean(-1) + c["radius"]),
        roll_steer=np.asarray((one[:, 5] - other[:, 5]) / turn),
        instant=instant,
        anti=np.asarray(anti),
    )


def turned_by(made: Motion, vector: Column) -> Column:
    """Vector of the axle in the body's axes, (n, 3)."""
    return np.asarray((made.turn @ vector[..., None])[..., 0])


def carried_by(made: Motion, point: Column) -> Column:
    """Where a point of the axle has gone, (n, 3) m."""
    return made.pose[:, :3] + turned_by(made, point)


def turns_of(pose: Column) -> Column:
    """Matrices that carry the axle's axes into the body's, (n, 3, 3)."""
    return rod_bind.axle_turn(pose[:, 3], pose[:, 4], pose[:, 5])


ON_AXLE = (
    "arm_axle", "arm_axle_far", "upper_arm_axle", "leaf_pad", "kingpin_upper", "kingpin_lower",
    "tie_rod_end", "spring_seat", "damper_axle", "third_arm_axle", "track_bar_axle",
    "drag_link_wheel", "pinion_joint",
)  # fmt: skip


def _carried(points: Hardpoints, pose: Column, turn: Column) -> dict[str, Column]:
    names = [
        name for name in points.at if name.removesuffix("_left").removesuffix("_right") in ON_AXLE
    ]
    local = np.stack([points.at[name] for name in names], axis=1)
    if local.shape[0] == 1:
        moved = local[0] @ turn.transpose(0, 2, 1)
    else:
        moved = local @ turn.transpose(0, 2, 1)
    moved += pose[:, None, :3]
    return {name: moved[:, place] for place, name in enumerate(names)}


def _flipped(points: Hardpoints, pose: Column, turn: Column) -> NDArray[np.bool_]:
    """Poses that satisfy every length on the wrong side of a dead centre."""
    away = np.max(np.abs(pose[:, :2]), axis=1) > ELSEWHERE
    away |= np.cos(pose[:, 4]) < TURNED
    for rod in points.rods:
        away |= _along(rod, pose, turn) * linkage.rod_lengths(rod.frame, _end(rod, pose, turn)) < (
            TURNED * rod.length
        )
    return np.asarray(away)


def _end(rod: Rod, pose: Column, turn: Column) -> Column:
    return np.asarray(pose[:, :3] + (turn @ rod.axle[..., None])[..., 0])


def _along(rod: Rod, pose: Column, turn: Column) -> Column:
    """Cosine of a rod's turn from where it was taped, (n,)."""
    line = unit_vector(_end(rod, pose, turn) - rod.frame)
    return np.asarray(np.sum(line * unit_vector(rod.axle - rod.frame), axis=-1))


def _torn(points: Hardpoints, gap: Column) -> NDArray[np.bool_]:
    """Poses that bushings cannot give: the rods of five or more pulled further than rubber goes."""
    if len(points.rods) <= 4:
        return np.zeros(len(gap), dtype=np.bool_)
    worst = np.stack([rod.give(points.columns["bushing_stiffness"]) for rod in points.rods], -1)
    return np.asarray(np.max(np.abs(gap) - rod_bind.MOST_GIVE * worst, axis=-1) > 0.0)


def unit_vector(vector: Column) -> Column:
    """Vectors of length one along (..., 3)."""
    return np.asarray(vector / np.sqrt(np.sum(vector * vector, axis=-1, keepdims=True)))
