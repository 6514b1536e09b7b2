"""A beam axle on three arms and a track bar, posed with both wheels' steer.

Beside it: SciPy's ``root`` (Levenberg-Marquardt) on the lengths of the rods, one pose at a time,
and Gauss-Newton in NumPy on the same residuals, all at once: rods first, then tie rod and drag
link about the kingpins, as ours does. SciPy's solves the axle alone. Then the same on rods that
fight (radius arms, four arms) and on angled arms.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from statistics import median

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares, root

from axlewright.geometry import Hardpoints, hardpoints, motion, travel_grid
from axlewright.geometry.moving import turns_of
from axlewright.geometry.points import linkage_of
from axlewright.physics import linkage
from axlewright.rig import Rig, drawn_geometry_columns, geometry_columns, load_rig

RIG = "examples/rigs/heron.toml"
POSES, RIGS, TURNS = 2000, 100_000, 5
Array = NDArray[np.float64]


@dataclass(frozen=True)
class Row:
    """One line of the table: medians of processor time in seconds."""

    name: str
    ours_s: float
    peer_s: float | None
    note: str

    @property
    def ratio(self) -> float | None:
        """The peer's time over ours."""
        return None if self.peer_s is None else self.peer_s / self.ours_s


def measure() -> list[Row]:
    """Median times of poses, singly and at once, of a grid with every output, of many rigs."""
    rig = load_rig(RIG)
    points = hardpoints(geometry_columns(rig), rig.words)
    held = linkage_of(points)
    rng = np.random.default_rng(1)
    heights = rng.uniform(-0.1, 0.1, (POSES, 2))
    near = np.stack([rod.frame[0] for rod in points.rods])
    far = np.stack([rod.axle[0] for rod in points.rods])
    half, own = float(points.half_track[0]), linkage.rod_lengths(near, far)
    together = gauss_newton(near, far, half, own, heights)
    ours = linkage.axle_poses(held, heights).pose
    if not np.allclose(ours[:, [0, 1, 4, 5]], together, atol=1e-9):
        raise RuntimeError("the peers do not agree")
    bare = linkage_of(points, steers=False)
    turned = _steered(points, together, heights)
    if not np.allclose(linkage.axle_poses(held, heights).wheels[:, :, 0], turned, atol=1e-8):
        raise RuntimeError("the peers do not steer alike")

    def both() -> None:
        _steered(points, gauss_newton(near, far, half, own, heights), heights)

    turns = [
        (
            _median(lambda: linkage.axle_poses(held, heights), 5) / POSES,
            _median(lambda: linkage.axle_poses(bare, heights), 5) / POSES,
            _median(lambda: [_rooted(near, far, half, own, each) for each in heights[:20]], 2) / 20,
            _median(lambda: gauss_newton(near, far, half, own, heights), 3) / POSES,
            _median(both, 3) / POSES,
        )
        for _ in range(TURNS)
    ]
    pose, axle, rooted, batched, wheeled = (median(each) for each in zip(*turns, strict=True))
    bump, roll, steer = (np.linspace(-0.1, 0.1, 20), np.linspace(-0.1, 0.1, 10),
                         np.linspace(-0.3, 0.3, 10))  # fmt: skip
    grid = _median(lambda: travel_grid(points, bump, roll, steer), 7)
    drawn = hardpoints(drawn_geometry_columns(rig, 0, RIGS), rig.words)
    ride = np.zeros((1, 2))
    alone = linkage_of(drawn)
    many = _median(lambda: linkage.axle_poses(alone, ride), 3)
    whole = _median(lambda: motion(drawn, ride), 3)
    return [
        Row(
            "pose with both wheels", pose, rooted, "peer: root(method='lm'); asked: 5 µs, 100 times"
        ),
        Row("pose with both wheels", pose, wheeled, "peer: Gauss-Newton in NumPy; asked: 4 times"),
        Row("pose of the axle alone", axle, batched, "peer: the same, no wheels"),
        Row(f"grid of {POSES}, every output", grid, None, "asked: 20 ms"),
        Row(f"{RIGS:,} sampled rigs at ride", many, None, "asked: 0.6 s"),
        Row(f"{RIGS:,} rigs, made ready, every point moved", whole, None, "beside it"),
        *(row for name, one in _others(rig) for row in _layout(name, one, heights)),
    ]


def _others(heron: Rig) -> list[tuple[str, Hardpoints]]:
    """Axles on radius arms, on four arms and on angled arms."""
    wagtail = load_rig("examples/rigs/wagtail.toml")
    out = [("radius arms", hardpoints(geometry_columns(wagtail), wagtail.words))]
    bare = {
        name: datum
        for name, datum in heron.given.items()
        if not name.startswith(("point_", "longer_", "track_bar_"))
    }
    for arms in ("four arms", "angled arms"):
        rig = replace(heron, given=bare).with_word("held_by.arms", arms)
        out.append((arms, hardpoints(geometry_columns(rig), rig.words)))
    return out


def _layout(name: str, points: Hardpoints, heights: Array) -> list[Row]:
    """Pose and grid of one more layout; the peers solve for least strain energy."""
    near = np.stack([rod.frame[0] for rod in points.rods])
    far = np.stack([rod.axle[0] for rod in points.rods])
    own = np.array([float(rod.length[0]) for rod in points.rods])
    stiff = np.array([float(rod.stiffness[0]) for rod in points.rods])
    half, held = float(points.half_track[0]), linkage_of(points)
    together = least_strain(near, far, half, own, stiff, heights)
    found = linkage.axle_poses(held, heights).pose
    if not np.allclose(found[:, [0, 1, 4, 5]], together, atol=1e-7):
        raise RuntimeError("the peers do not agree")
    root_stiff = np.sqrt(stiff / stiff.max())

    def alone(height: Array) -> Array:
        def strained(at: Array) -> Array:
            gaps = _gaps(at[None], near, far, half, own, height[None])[0]
            return np.asarray(root_stiff * gaps)

        return np.asarray(least_squares(strained, np.zeros(4), method="lm", xtol=1e-12).x)

    def both() -> None:
        _steered(points, least_strain(near, far, half, own, stiff, heights), heights)

    bump, roll, steer = (np.linspace(-0.1, 0.1, 20), np.linspace(-0.1, 0.1, 10),
                         np.linspace(-0.3, 0.3, 10))  # fmt: skip
    pose = _median(lambda: linkage.axle_poses(held, heights), 5) / POSES
    single = _median(lambda: [alone(each) for each in heights[:20]], 2) / 20
    batched = _median(both, 3) / POSES
    grid = _median(lambda: travel_grid(points, bump, roll, steer), 5)
    return [
        Row(f"{name}: pose with both wheels", pose, single, "peer: least_squares(method='lm')"),
        Row(f"{name}: pose with both wheels", pose, batched, "peer: Gauss-Newton in NumPy"),
        Row(f"{name}: grid of {POSES}, every output", grid, None, "asked: 20 ms"),
    ]


def least_strain(
    near: Array, far: Array, half: float, own: Array, stiff: Array, heights: Array
) -> Array:
    """All poses of least strain energy at once, slopes by small differences."""
    at, step = np.zeros((len(heights), 4)), 1e-7
    slope = np.empty((len(heights), len(own), 4))
    for _ in range(12):
        miss = _gaps(at, near, far, half, own, heights)
        for column in range(4):
            moved = at.copy()
            moved[:, column] += step
            slope[:, :, column] = (_gaps(moved, near, far, half, own, heights) - miss) / step
        weighted = slope.transpose(0, 2, 1) * (stiff / stiff.max())
        push = np.linalg.solve(weighted @ slope, (weighted @ miss[..., None]))[..., 0]
        at -= push
        if np.max(np.abs(push)) < 1e-10:
            break
    return at


def _median(call: Callable[[], object], times: int) -> float:
    """Median processor time of one call: what others do on the machine does not count."""
    call()
    taken = []
    for _ in range(times):
        start = time.process_time()
        call()
        taken.append(time.process_time() - start)
    return median(taken)


def _rooted(near: Array, far: Array, half: float, own: Array, height: Array) -> Array:
    """Pose by SciPy's root finder, from the ride pose."""

    def short(at: Array) -> Array:
        return np.asarray(_gaps(at[None], near, far, half, own, height[None])[0])

    return np.asarray(root(short, np.zeros(4), method="lm", tol=1e-12).x)


def _gaps(at: Array, near: Array, far: Array, half: float, own: Array, heights: Array) -> Array:
    """How much too long every rod would be, (n, rods), at trial x, y, pitch and yaw, (n, 4)."""
    x, y, pitch, yaw = at.T
    lean = 0.5 * (heights[:, 0] - heights[:, 1]) / half
    cp, sp, cy, sy = np.cos(pitch), np.sin(pitch), np.cos(yaw), np.sin(yaw)
    sr = lean / cp
    cr = np.sqrt(1.0 - sr * sr)
    px, py, pz = far.T
    wx = (cy * cp)[:, None] * px + (cy * sp * sr - sy * cr)[:, None] * py
    wx += (cy * sp * cr + sy * sr)[:, None] * pz
    wy = (sy * cp)[:, None] * px + (sy * sp * sr + cy * cr)[:, None] * py
    wy += (sy * sp * cr - cy * sr)[:, None] * pz
    wz = -sp[:, None] * px + (cp * sr)[:, None] * py + (cp * cr)[:, None] * pz
    dx, dy = x[:, None] + wx - near[:, 0], y[:, None] + wy - near[:, 1]
    dz = heights.mean(axis=1)[:, None] + wz - near[:, 2]
    return np.asarray(np.sqrt(dx * dx + dy * dy + dz * dz) - own)


def _steered(points: Hardpoints, at: Array, heights: Array) -> Array:
    """Turn of both wheels about their kingpins, (n, 2), by Newton steps, all poses at once."""
    ready = linkage_of(points).numbers[0, -30:]
    pivot, axis, tie = (
        np.stack([ready[first : first + 3], ready[12 + first : 15 + first]]) for first in (0, 3, 9)
    )
    drag, pitman = ready[26:29], points.at["drag_link_pitman"][0]
    held = int(ready[25])
    x, y, pitch, yaw = at.T
    roll = np.arcsin(
        0.5 * (heights[:, 0] - heights[:, 1]) / float(points.half_track[0]) / np.cos(pitch)
    )
    whole = np.stack([x, y, heights.mean(axis=1), roll, pitch, yaw], axis=-1)
    matrix, shift = turns_of(whole), whole[:, None, :3]
    pivots = pivot @ matrix.transpose(0, 2, 1) + shift
    axes = axis @ matrix.transpose(0, 2, 1)
    ties = (tie - pivot) @ matrix.transpose(0, 2, 1)
    arm = (drag - pivot[held]) @ matrix.transpose(0, 2, 1)

    def swung(angle: Array, about: Array, lever: Array) -> Array:
        along = np.sum(about * lever, axis=-1, keepdims=True) * about
        side = np.cross(about, lever)
        return np.asarray(
            along + np.cos(angle)[..., None] * (lever - along) + np.sin(angle)[..., None] * side
        )

    def short(turn: Array) -> Array:
        ends = pivots + swung(turn, axes, ties)
        wheel = pivots[:, held] + swung(turn[:, held], axes[:, held], arm)
        return np.stack(
            [
                np.linalg.norm(ends[:, 1] - ends[:, 0], axis=-1) - ready[24],
                np.linalg.norm(wheel - pitman, axis=-1) - ready[29],
            ],
            axis=-1,
        )

    turn, step = np.zeros((len(at), 2)), 1e-7
    slope = np.empty((len(at), 2, 2))
    for _ in range(10):
        miss = short(turn)
        if np.max(np.abs(miss)) < 1e-11:
            break
        for column in (0, 1):
            moved = turn.copy()
            moved[:, column] += step
            slope[:, :, column] = (short(moved) - miss) / step
        turn -= np.linalg.solve(slope, miss[..., None])[..., 0]
    return turn


def gauss_newton(near: Array, far: Array, half: float, own: Array, heights: Array) -> Array:
    """All poses at once: Newton steps on four rods with slopes by small differences."""
    at = np.zeros((len(heights), 4))
    step = 1e-7
    slope = np.empty((len(heights), 4, len(own)))
    for _ in range(8):
        miss = _gaps(at, near, far, half, own, heights)
        if np.max(np.abs(miss)) < 1e-11:
            break
        for column in range(4):
            moved = at.copy()
            moved[:, column] += step
            slope[:, column] = (_gaps(moved, near, far, half, own, heights) - miss) / step
        at -= np.linalg.solve(slope.transpose(0, 2, 1), miss[..., None])[..., 0]
    return at
