"""The compiled part of ``linkage``: one pose and both wheels' steer, lane by lane."""

from math import asin, atan2, cos, sin, sqrt
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.compiled import ordered_kernel

Array: TypeAlias = NDArray[np.float64]
Places: TypeAlias = NDArray[np.int64]

ROD = 8  # frame end 3, axle end 3, length, stiffness
WHEEL = 12  # pivot 3, axis 3, spindle 3, tie-rod end 3
TAIL = 2 * WHEEL + 6  # both wheels; tie-rod length, what the drag link holds, its end 3, its length
POSED, OUT_OF_REACH, NOT_FINITE, NOT_STEERED = 0, 1, 2, 3
NO_STEERING, ON_LEFT, ON_RIGHT, ON_TIE_ROD = -1, 0, 1, 2
ROUNDS = 60
CLOSE = 1e-11  # m: a rod this near its length has it
STILL = 1e-13  # m or rad: a step this small changes nothing
STEEPEST = 0.999
STRIDE, MOST_STRIDES = 0.15, 32.0  # m: one stride of more than four rods towards a far height
NEAR = 1e-3  # m or rad: near enough to go on to the next stride


@ordered_kernel
def poses(
    numbers: Array,
    rods: int,
    heights: Array,
    pitman: Array,
    pose: Array,
    gap: Array,
    wheels: Array,
    status: Places,
) -> None:
    """Solve every lane into the last four; an axis of length one is shared by all lanes."""
    normal, push = np.empty((4, 4)), np.empty(4)
    turned, slope = np.empty((rods, 4)), np.empty(4)
    matrix, trial = np.empty((3, 3)), np.empty(4)
    for lane in range(status.shape[0]):
        rig = numbers[lane % numbers.shape[0]]
        height = heights[lane % heights.shape[0]]
        state = _placed(
            rig, rods, height, pose[lane], gap[lane], normal, push, turned, slope, matrix, trial
        )
        if state == POSED and rig[1 + ROD * rods + 2 * WHEEL + 1] != NO_STEERING:
            state = _steered(
                rig[1 + ROD * rods :], matrix, pose[lane], pitman[lane % pitman.shape[0]],
                wheels[lane],
            )  # fmt: skip
        status[lane] = state
        if state in (OUT_OF_REACH, NOT_FINITE):
            pose[lane] = np.nan
        if state != POSED:
            wheels[lane] = np.nan


@ordered_kernel
def _lengths(
    rig: Array,
    rods: int,
    height: Array,
    at: Array,
    gap: Array,
    turned: Array,
    matrix: Array,
) -> float:
    """Gaps of all rods at a trial (x, y, pitch, yaw), their slopes, and the strain energy."""
    half = rig[0]
    middle, lean = 0.5 * (height[0] + height[1]), 0.5 * (height[0] - height[1]) / half
    cp, sp, cy, sy = cos(at[2]), sin(at[2]), cos(at[3]), sin(at[3])
    sr = lean / cp
    if not abs(sr) < STEEPEST:
        return np.inf
    cr = sqrt(1.0 - sr * sr)
    rolls = lean * sp / (cp * cp * cr)
    matrix[0, 0], matrix[0, 1], matrix[0, 2] = (
        cy * cp,
        cy * sp * sr - sy * cr,
        cy * sp * cr + sy * sr,
    )
    matrix[1, 0], matrix[1, 1], matrix[1, 2] = (
        sy * cp,
        sy * sp * sr + cy * cr,
        sy * sp * cr - cy * sr,
    )
    matrix[2, 0], matrix[2, 1], matrix[2, 2] = -sp, cp * sr, cp * cr
    energy = 0.0
    for rod in range(rods):
        first = 1 + ROD * rod
        px, py, pz = rig[first + 3], rig[first + 4], rig[first + 5]
        wx = matrix[0, 0] * px + matrix[0, 1] * py + matrix[0, 2] * pz
        wy = matrix[1, 0] * px + matrix[1, 1] * py + matrix[1, 2] * pz
        wz = matrix[2, 0] * px + matrix[2, 1] * py + matrix[2, 2] * pz
        dx = at[0] + wx - rig[first]
        dy = at[1] + wy - rig[first + 1]
        dz = middle + wz - rig[first + 2]
        long = sqrt(dx * dx + dy * dy + dz * dz)
        gap[rod] = long - rig[first + 6]
        energy += rig[first + 7] * gap[rod] * gap[rod]
        ux, uy, uz = dx / long, dy / long, dz / long
        # Pitch turns about the yawed y axis; roll, which follows pitch, about the axle's own x.
        pitch_x, pitch_y, pitch_z = cy * wz, sy * wz, -(cy * wx + sy * wy)
        ax, ay, az = matrix[0, 0], matrix[1, 0], matrix[2, 0]
        roll_x, roll_y, roll_z = ay * wz - az * wy, az * wx - ax * wz, ax * wy - ay * wx
        turned[rod, 0], turned[rod, 1] = ux, uy
        turned[rod, 2] = (
            ux * (pitch_x + rolls * roll_x)
            + uy * (pitch_y + rolls * roll_y)
            + uz * (pitch_z + rolls * roll_z)
        )
        turned[rod, 3] = -ux * wy + uy * wx
    return energy


@ordered_kernel
def _placed(
    rig: Array,
    rods: int,
    height: Array,
    pose: Array,
    gap: Array,
    normal: Array,
    push: Array,
    turned: Array,
    slope: Array,
    matrix: Array,
    trial: Array,
) -> int:
    """Least strain energy over x, y, pitch and yaw: damped Gauss-Newton from the ride pose.

    More than four rods are walked to a far height in strides: the two bolts of a radius arm fit
    their eye from either side, and a leap lands on the wrong one.
    """
    at = push  # room; the right-hand side is made in ``slope``
    at[:] = 0.0
    trial[:] = 0.0
    if np.isnan(height[0]) or np.isnan(height[1]):
        return NOT_FINITE
    strides = 1
    if rods > 4:
        far = max(abs(height[0]), abs(height[1]))
        strides = int(min(max(np.ceil(far / STRIDE), 1.0), MOST_STRIDES))
    damping = 0.0
    scale = 0.0
    for rod in range(rods):
        scale = max(scale, rig[ROD * rod + 8])
    done = False
    stop = np.empty(2)
    for stride in range(1, strides + 1):
        stop[0], stop[1] = height[0] * stride / strides, height[1] * stride / strides
        energy = _lengths(rig, rods, stop, at, gap, turned, matrix)
        if not energy < np.inf:
            return NOT_FINITE if np.isnan(energy) else OUT_OF_REACH
        still = STILL if stride == strides else NEAR
        for _ in range(ROUNDS):
            for i in range(4):
                slope[i] = 0.0
                for j in range(4):
                    normal[i, j] = 0.0
            for rod in range(rods):
                stiff = rig[ROD * rod + 8] / scale
                for i in range(4):
                    slope[i] -= stiff * turned[rod, i] * gap[rod]
                    for j in range(i + 1):
                        normal[i, j] += stiff * turned[rod, i] * turned[rod, j]
            for i in range(4):
                normal[i, i] *= 1.0 + damping
            if not _solved(normal, slope):
                return OUT_OF_REACH
            step = 0.0
            for i in range(4):
                trial[i] = at[i] + slope[i]
                step = max(step, abs(slope[i]))
            after = _lengths(rig, rods, stop, trial, gap, turned, matrix)
            if np.isnan(after):
                return NOT_FINITE
            if after <= energy or step < 1e-9:
                at[:] = trial
                energy = after
                damping = 0.0 if damping < 1e-6 else 0.1 * damping
                if step < still or (rods == 4 and energy < scale * CLOSE * CLOSE):
                    done = stride == strides
                    break
            else:
                damping = max(10.0 * damping, 1e-4)
                if damping > 1e8:
                    break
                _lengths(rig, rods, stop, at, gap, turned, matrix)
    short = 0.0
    for rod in range(rods):
        short = max(short, abs(gap[rod]))
    pose[0], pose[1], pose[2] = at[0], at[1], 0.5 * (height[0] + height[1])
    upright = cos(at[2])
    pose[3] = atan2(matrix[2, 1] / upright, matrix[2, 2] / upright)
    pose[4], pose[5] = at[2], at[3]
    if not done or (rods == 4 and short > 1e-9):
        return OUT_OF_REACH
    return POSED


@ordered_kernel
def _solved(normal: Array, right: Array) -> bool:
    """Solve the symmetric 4 x 4 in place by Cholesky; false where it cannot be."""
    for i in range(4):
        for j in range(i + 1):
            total = normal[i, j]
            for k in range(j):
                total -= normal[i, k] * normal[j, k]
            if i == j:
                if not total > 1e-14:
                    return False
                normal[i, i] = sqrt(total)
            else:
                normal[i, j] = total / normal[j, j]
    for i in range(4):
        for k in range(i):
            right[i] -= normal[i, k] * right[k]
        right[i] /= normal[i, i]
    for i in range(3, -1, -1):
        for k in range(i + 1, 4):
            right[i] -= normal[k, i] * right[k]
        right[i] /= normal[i, i]
    return True


@ordered_kernel
def _carried(matrix: Array, vector: Array, moved: Array, shift: Array) -> None:
    """Turn a vector of the axle into the frame's axes and move it."""
    for i in range(3):
        moved[i] = (
            shift[i]
            + matrix[i, 0] * vector[0]
            + matrix[i, 1] * vector[1]
            + matrix[i, 2] * vector[2]
        )


@ordered_kernel
def _swung(axis: Array, arm: Array, angle: float, moved: Array, rate: Array) -> None:
    """Turn an arm about a unit axis, with its rate of change by the angle."""
    c, s = cos(angle), sin(angle)
    along = (axis[0] * arm[0] + axis[1] * arm[1] + axis[2] * arm[2]) * (1.0 - c)
    moved[0] = c * arm[0] + s * (axis[1] * arm[2] - axis[2] * arm[1]) + along * axis[0]
    moved[1] = c * arm[1] + s * (axis[2] * arm[0] - axis[0] * arm[2]) + along * axis[1]
    moved[2] = c * arm[2] + s * (axis[0] * arm[1] - axis[1] * arm[0]) + along * axis[2]
    rate[0] = axis[1] * moved[2] - axis[2] * moved[1]
    rate[1] = axis[2] * moved[0] - axis[0] * moved[2]
    rate[2] = axis[0] * moved[1] - axis[1] * moved[0]


@ordered_kernel
def _steered(tail: Array, matrix: Array, pose: Array, pitman: Array, wheels: Array) -> int:
    """Turn both wheels about their kingpins until tie rod and drag link have their lengths.

    Each wheel gets its turn about the kingpin, heading, camber, caster and inclination.
    """
    none = np.zeros(3)
    shift = np.array([pose[0], pose[1], pose[2]])
    axes, spindles, pivots = np.empty((2, 3)), np.empty((2, 3)), np.empty((2, 3))
    ties, drag = np.empty((2, 3)), np.zeros(3)
    tie_at, tie_by = np.empty((2, 3)), np.empty((2, 3))
    drag_at, drag_by = np.empty(3), np.empty(3)
    for side in range(2):
        own = tail[WHEEL * side : WHEEL * side + WHEEL]
        _carried(matrix, own[0:3], pivots[side], shift)
        _carried(matrix, own[3:6], axes[side], none)
        _carried(matrix, own[6:9], spindles[side], none)
        _carried(matrix, own[9:12] - own[0:3], ties[side], none)
    tie_length, held, drag_length = tail[24], int(tail[25]), tail[29]
    if held != ON_TIE_ROD:
        own = tail[WHEEL * held : WHEEL * held + 3]
        _carried(matrix, tail[26:29] - own, drag, none)
    share = tail[26]
    turn = np.zeros(2)
    for _ in range(ROUNDS):
        for side in range(2):
            _swung(axes[side], ties[side], turn[side], tie_at[side], tie_by[side])
            for i in range(3):
                tie_at[side, i] += pivots[side, i]
        long, d_left, d_right = 0.0, 0.0, 0.0
        for i in range(3):
            apart = tie_at[1, i] - tie_at[0, i]
            long += apart * apart
            d_left -= apart * tie_by[0, i]
            d_right += apart * tie_by[1, i]
        long = sqrt(long)
        d_left, d_right, short = d_left / long, d_right / long, long - tie_length
        e_left, e_right, reach = 0.0, 0.0, 0.0
        if held != ON_TIE_ROD:
            _swung(axes[held], drag, turn[held], drag_at, drag_by)
            both = 0.0
            for i in range(3):
                apart = pivots[held, i] + drag_at[i] - pitman[i]
                reach += apart * apart
                both += apart * drag_by[i]
            reach = sqrt(reach)
            if held == ON_LEFT:
                e_left = both / reach
            else:
                e_right = both / reach
        else:
            for i in range(3):
                apart = (1.0 - share) * tie_at[0, i] + share * tie_at[1, i] - pitman[i]
                reach += apart * apart
                e_left += apart * (1.0 - share) * tie_by[0, i]
                e_right += apart * share * tie_by[1, i]
            reach = sqrt(reach)
            e_left, e_right = e_left / reach, e_right / reach
        miss = reach - drag_length
        base = d_left * e_right - d_right * e_left
        if not abs(base) > 1e-9:
            return NOT_STEERED
        step_left = (d_right * miss - e_right * short) / base
        step_right = (e_left * short - d_left * miss) / base
        most = max(abs(step_left), abs(step_right))
        if not most < np.inf:
            return NOT_STEERED
        held_back = min(1.0, 0.5 / most) if most > 0.0 else 1.0
        turn[0] += held_back * step_left
        turn[1] += held_back * step_right
        if most < 1e-12:
            break
    else:
        return NOT_STEERED
    for side in range(2):
        out = wheels[side]
        _swung(axes[side], spindles[side], turn[side], drag_at, drag_by)
        outward = 1.0 if side == 0 else -1.0
        out[0] = turn[side]
        out[1] = atan2(-outward * drag_at[0], outward * drag_at[1])
        out[2] = -asin(drag_at[2])
        out[3] = atan2(-axes[side, 0], axes[side, 2])
        out[4] = atan2(-outward * axes[side, 1], axes[side, 2])
    return POSED
