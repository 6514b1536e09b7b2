"""What rods and bushings do to each other with no load on the axle.

Four rods fix a beam axle; more fight each other through their bushings. Rubber bushings that were
clamped away from ride are springs. Arrays alone, so that an answer need not compile for it.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from axlewright.physics.quantities import Metre, Radian

__all__ = ["arm_twist", "axle_turn", "least_hold", "rod_pulls"]

MOST_GIVE = 0.025  # m that a rod's two bushings give before their rubber is gone; memory
STEEPEST = 1.0 - 5e-7  # sine of the roll at which a search is held back


def axle_turn(roll: Radian, pitch: Radian, yaw: Radian) -> NDArray[np.float64]:
    """Matrices that carry an axle's axes into the body's, (n, 3, 3).

    Parameters
    ----------
    roll, pitch, yaw
        (n,): turned about the axle's own x first, then y, then the body's z.

    References
    ----------
    geometry: Euler angles z-y-x
    """
    cr, sr, cp, sp, cy, sy = (f(each) for each in (roll, pitch, yaw) for f in (np.cos, np.sin))
    turn = np.empty((len(cy), 3, 3))
    turn[:, 0, 0], turn[:, 0, 1], turn[:, 0, 2] = (
        cy * cp,
        cy * sp * sr - sy * cr,
        cy * sp * cr + sy * sr,
    )
    turn[:, 1, 0], turn[:, 1, 1], turn[:, 1, 2] = (
        sy * cp,
        sy * sp * sr + cy * cr,
        sy * sp * cr - cy * sr,
    )
    turn[:, 2, 0], turn[:, 2, 1], turn[:, 2, 2] = -sp, cp * sr, cp * cr
    return turn


def arm_twist(length: Metre, rise: Metre, clamped_at: Metre) -> Radian:
    """Twist of an arm's bushings at ride, clamped with the axle at a height against it.

    Parameters
    ----------
    length
        Eye to eye.
    rise
        How much higher the frame's end is at ride.
    clamped_at
        Height of the axle when the bolts were tightened; negative hanging down.

    Returns
    -------
    Radian
        Positive where the bushings push the axle down.

    References
    ----------
    geometry: slopes of one arm at two heights
    """
    long = np.asarray(length)
    now = np.arcsin(np.clip(np.asarray(rise) / long, -1.0, 1.0))
    then = np.arcsin(np.clip((np.asarray(rise) - clamped_at) / long, -1.0, 1.0))
    return np.asarray(then - now)


def least_hold(frame_end: ArrayLike, axle_end: ArrayLike) -> NDArray[np.float64]:
    """How firmly rods hold an axle at ride in the way that they hold it least, (n,).

    Parameters
    ----------
    frame_end, axle_end
        (n, rods, 3), m: ends at ride, the axle's from its middle.

    Returns
    -------
    ndarray
        How much the rods would lengthen together, m, as it is moved by 1 m or turned by 1 rad
        that way; nought where a way is free.

    References
    ----------
    geometry: least singular value of how the rods lengthen
    """
    near, far = (np.asarray(one, dtype=np.float64) for one in (frame_end, axle_end))
    still = np.zeros(len(near))
    _, slope = _gaps(near, far, np.zeros(near.shape[:2]), still, still, np.zeros((len(near), 4)))
    least = np.linalg.eigvalsh(np.swapaxes(slope, -1, -2) @ slope)[:, 0]
    return np.asarray(np.sqrt(np.maximum(least, 0.0)))


def rod_pulls(
    frame_end: ArrayLike,
    axle_end: ArrayLike,
    length: ArrayLike,
    stiffness: ArrayLike,
    half_track: ArrayLike,
    heights: ArrayLike,
    rounds: int = 4,
) -> NDArray[np.float64]:
    """Pull of every rod at wheel heights with nothing else on the axle, (n, rods), N.

    Parameters
    ----------
    frame_end, axle_end
        (n, rods, 3), m: ends at ride, the axle's from its middle.
    length, stiffness
        (n, rods): own lengths, m; both bushings and the bar in series, N/m.
    half_track
        (n,), m: wheel centre from the axle's middle.
    heights
        (n, 2), m: wheel centres above ride, left and right.
    rounds
        Newton steps; four bring a nanometre within ordinary travel.

    Returns
    -------
    ndarray
        Tension positive; least strain energy over place ahead, place across, pitch and yaw.

    Raises
    ------
    numpy.linalg.LinAlgError
        Where `least_hold` is nought: the rods leave a way free.

    References
    ----------
    energy: least strain in the bushings
    """
    near, far, own, stiff, half, up = (
        np.asarray(one, dtype=np.float64)
        for one in (frame_end, axle_end, length, stiffness, half_track, heights)
    )
    lean = 0.5 * (up[:, 0] - up[:, 1]) / half
    middle = 0.5 * (up[:, 0] + up[:, 1])
    at = np.zeros((len(lean), 4))
    gap, slope = _gaps(near, far, own, lean, middle, at)
    for _ in range(rounds):
        weighted = stiff[..., None] * slope
        normal = np.swapaxes(slope, -1, -2) @ weighted
        push = np.swapaxes(weighted, -1, -2) @ gap[..., None]
        at = at - np.linalg.solve(normal, push)[..., 0]
        gap, slope = _gaps(near, far, own, lean, middle, at)
    return np.asarray(stiff * gap)


def _gaps(
    near: NDArray[np.float64],
    far: NDArray[np.float64],
    own: NDArray[np.float64],
    lean: NDArray[np.float64],
    middle: NDArray[np.float64],
    at: NDArray[np.float64],
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """How much too long every rod would be, and by how much each move lengthens it."""
    pitch, yaw = at[:, 2], at[:, 3]
    roll = np.arcsin(np.clip(lean / np.cos(pitch), -STEEPEST, STEEPEST))
    rolls = lean * np.sin(pitch) / (np.cos(pitch) ** 2 * np.cos(roll))
    turn = axle_turn(roll, pitch, yaw)
    moved = far @ np.swapaxes(turn, -1, -2)
    shift = np.stack([at[:, 0], at[:, 1], middle], axis=-1)[:, None]
    line = moved + shift - near
    long = np.sqrt(np.sum(line * line, axis=-1))
    line = line / long[..., None]
    # pitch turns about the yawed y axis; roll, which follows pitch, about the axle's own x
    about = (
        np.stack([-np.sin(yaw), np.cos(yaw), 0.0 * yaw], axis=-1) + rolls[:, None] * turn[:, :, 0]
    )
    arm = np.cross(moved, line)
    slope = np.stack(
        [line[..., 0], line[..., 1], np.sum(arm * about[:, None], axis=-1), arm[..., 2]], axis=-1
    )
    return long - own, slope
