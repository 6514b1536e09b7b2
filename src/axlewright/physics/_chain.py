"""The compiled part of ``frame``: assemble, factorise, solve, recover, refine."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics._blocks import BEAM, TALE, back, factorise, onward
from axlewright.physics._node import NODE, PART
from axlewright.physics._wide import (
    CACHE_LINE,
    WIDE,
    Array,
    each,
    full,
    less,
    minus,
    more,
    plus,
    put,
    row,
    times,
    transpose,
)
from axlewright.physics.compiled import ordered_kernel

LARGEST_CORRECTION = 1e-3  # of the displacement: more means that the digits are lost
Places: TypeAlias = NDArray[np.int64]
Flags: TypeAlias = NDArray[np.bool_]


@ordered_kernel
def chain_kernel(
    nodes: Array,
    axial: Array,
    bending_up: Array,
    bending_fore: Array,
    torsion: Array,
    shear_up: Array,
    shear_fore: Array,
    support_node: Places,
    support: Array,
    fixed: Flags,
    loads: Array,
    displacement: Array,
    face: Array,
    status: Places,
) -> None:
    """Solve every lane into the last three; an axis of length one is shared by all lanes.

    There cases lie innermost, in whole eights: displacement (B, N, 6, C), face (B, N-1, 2, 6, C).
    """
    count, cases = nodes.shape[1], loads.shape[1]
    band, inverse = _room(NODE * count), _room(8 * count)
    stiff, tale = _room(BEAM * count), _room(TALE * count)
    load, left, moved = _room(PART * count), _room(PART * count), _room(PART * count)
    action = _room(2 * PART * count)
    tale[:] = 0.0
    matrix, before = (band, inverse, stiff, tale), (moved, action, 0, 0, WIDE)
    held = _held(fixed)
    step = displacement.shape[3]
    for lane in range(status.shape[0]):
        springs = support[lane % support.shape[0]]
        _beams(
            nodes[lane % nodes.shape[0]],
            axial[lane % axial.shape[0]],
            bending_up[lane % bending_up.shape[0]],
            bending_fore[lane % bending_fore.shape[0]],
            torsion[lane % torsion.shape[0]],
            shear_up[lane % shear_up.shape[0]],
            shear_fore[lane % shear_fore.shape[0]],
            tale,
        )
        _assemble(tale, stiff, band)
        for order in range(support_node.shape[0]):
            at = NODE * support_node[order]
            for i in range(6):
                for j in range(6):
                    band[at + 8 * i + j] += springs[order, i, j]
        _hold(held, band)
        status[lane] = factorise(band, inverse)
        for freedom in held:
            inverse[8 * (freedom // 6) + freedom % 6] = 0.0
        begin = lane % loads.shape[0] * cases
        for first in range(0, cases, WIDE):
            if status[lane] != 0:
                break
            _spread(loads, 6 * count * (begin + first), 6 * count, min(WIDE, cases - first), load)
            place, start = 6 * count * step * lane + first, 12 * (count - 1) * step * lane + first
            answer = (displacement.ravel(), face.ravel(), place, start, step)
            onward(band, load, action, left, False)
            back(matrix, left, before, before, False)
            # The out-of-balance of the first answer is solved for as a second, small load.
            for order in range(support_node.shape[0]):
                _resist(springs[order], PART * support_node[order], moved, load)
            onward(band, load, action, left, True)
            size, change = back(matrix, left, before, answer, True)
            status[lane] = _judged(size, change)
        if status[lane] != 0:
            displacement[lane] = np.nan
            face[lane] = np.nan


@ordered_kernel
def _room(size: int) -> Array:
    """Room for numbers, from a cache line on."""
    raw = np.empty(size + CACHE_LINE // 8)
    skipped = -(raw.ctypes.data // 8) % (CACHE_LINE // 8)
    return raw[skipped : skipped + size]


@ordered_kernel
def _held(fixed: Flags) -> Places:
    """Places of the fixed freedoms, counted node by node."""
    held = np.empty(fixed.size, np.int64)
    found = 0
    for k in range(fixed.shape[0]):
        for i in range(6):
            held[found] = 6 * k + i
            found += fixed[k, i]
    return held[:found]


@ordered_kernel
def _beams(
    nodes: Array,
    axial: Array,
    bending_up: Array,
    bending_fore: Array,
    torsion: Array,
    shear_up: Array,
    shear_fore: Array,
    tale: Array,
) -> None:
    """Write the axes of each beam (three numbers between zeros), ten stiffnesses, its extent."""
    for k in range(nodes.shape[0] - 1):
        t = tale[TALE * k : TALE * (k + 1)]
        dx = nodes[k + 1, 0] - nodes[k, 0]
        dy = nodes[k + 1, 1] - nodes[k, 1]
        dz = nodes[k + 1, 2] - nodes[k, 2]
        t[37], t[38], t[39] = dx, dy, dz
        flat = dx * dx + dy * dy
        length = np.sqrt(flat + dz * dz)
        per = 1.0 / length
        x0, x1, x2 = dx * per, dy * per, dz * per
        t[3], t[4], t[5] = x0, x1, x2
        level = np.sqrt(flat) * per
        if level > 1e-6:
            # "Up" is global z made square to the beam; across is up x along, so level.
            aside = 1.0 / level
            t[11], t[12], t[13] = -x1 * aside, x0 * aside, 0.0
            t[19], t[20], t[21] = -x0 * x2 * aside, -x1 * x2 * aside, level
        else:
            t[11], t[12], t[13] = 0.0, (-1.0 if dz > 0 else 1.0), 0.0
            t[19], t[20], t[21] = 1.0, 0.0, 0.0
        soft_up = shear_up[k] if shear_up.shape[0] > 1 else shear_up[0]
        soft_fore = shear_fore[k] if shear_fore.shape[0] > 1 else shear_fore[0]
        phi_up = 12.0 * bending_up[k] * soft_up * per * per
        phi_fore = 12.0 * bending_fore[k] * soft_fore * per * per
        up = bending_up[k] * per / (1.0 + phi_up)
        fore = bending_fore[k] * per / (1.0 + phi_fore)
        t[27], t[28], t[29] = axial[k] * per, 12.0 * fore * per * per, 12.0 * up * per * per
        t[30], t[31] = 6.0 * fore * per, 6.0 * up * per
        t[32], t[33], t[34] = torsion[k] * per, (4.0 + phi_up) * up, (4.0 + phi_fore) * fore
        t[35], t[36] = (2.0 - phi_up) * up, (2.0 - phi_fore) * fore


@ordered_kernel
def _assemble(tale: Array, stiff: Array, band: Array) -> None:
    """Fill the stiffness of each beam at its second end, and the blocks of the whole chain.

    With the first end clamped: force = a u + b turn, moment = b' u + c turn. By symmetry the
    first end has a, -b, c, and the block between first and second end is -a, -b; b', d. Each
    node keeps the block to its neighbour on the side of the middle.
    """
    band[:PART] = 0.0
    band[band.shape[0] - PART :] = 0.0
    nothing = full(0.0)
    middle = tale.shape[0] // TALE // 2
    for k in range(tale.shape[0] // TALE - 1):
        t, at, e = TALE * k, NODE * k, BEAM * k
        # Columns of turn lie three places on.
        turn_x, turn_y, turn_z = row(tale, t), row(tale, t + 8), row(tale, t + 16)
        push_y, push_z = row(tale, t + 11), row(tale, t + 19)
        a_x = times(each(tale, t + 27), row(tale, t + 3))
        a_y, a_z = times(each(tale, t + 28), push_y), times(each(tale, t + 29), push_z)
        bt_z, bt_y = times(each(tale, t + 30), turn_z), times(each(tale, t + 31), turn_y)
        bp_y, bp_z = times(each(tale, t + 30), push_y), times(each(tale, t + 31), push_z)
        c_x, c_y = times(each(tale, t + 32), turn_x), times(each(tale, t + 33), turn_y)
        c_z = times(each(tale, t + 34), turn_z)
        d_y, d_z = times(each(tale, t + 35), turn_y), times(each(tale, t + 36), turn_z)
        for _ in range(3):
            x, y, z = each(tale, t + 3), each(tale, t + 11), each(tale, t + 19)
            a = more(more(times(x, a_x), y, a_y), z, a_z)
            b = less(times(z, bt_y), y, bt_z)
            turned = less(times(y, bp_z), z, bp_y)
            c = more(more(times(x, c_x), y, c_y), z, c_z)
            d = less(more(times(y, d_y), z, d_z), x, c_x)
            second, moment = plus(a, b), plus(turned, c)
            put(stiff, e, second)
            put(stiff, e + 24, moment)
            put(band, at, plus(row(band, at), minus(a, b)))
            put(band, at + 24, plus(row(band, at + 24), minus(c, turned)))
            if k < middle:
                put(band, at + PART, minus(nothing, second))
                put(band, at + PART + 24, plus(turned, d))
            else:
                put(band, at + NODE + PART, minus(b, a))
                put(band, at + NODE + PART + 24, minus(d, turned))
            put(band, at + NODE, second)
            put(band, at + NODE + 24, moment)
            t, at, e = t + 1, at + 8, e + 8


@ordered_kernel
def _hold(held: Places, band: Array) -> None:
    """Cut fixed freedoms out of the matrix."""
    count = band.shape[0] // NODE
    middle = count // 2
    for freedom in held:
        k, i = freedom // 6, freedom % 6
        at = NODE * k
        for j in range(6):
            band[at + 8 * i + j] = 0.0
            band[at + 8 * j + i] = 0.0
            band[at + PART + 8 * i + j] = 0.0
            if 0 < k <= middle:
                band[at - PART + 8 * j + i] = 0.0
            if middle <= k < count - 1:
                band[at + NODE + PART + 8 * j + i] = 0.0
        band[at + 8 * i + i] = 1.0


@ordered_kernel
def _resist(spring: Array, at: int, moved: Array, load: Array) -> None:
    """Take what a spring carries off the loads."""
    for i in range(6):
        rest = row(load, at + WIDE * i)
        for j in range(6):
            rest = less(rest, each(spring, 6 * i + j), row(moved, at + WIDE * j))
        put(load, at + WIDE * i, rest)


@ordered_kernel
def _spread(loads: Array, begin: int, length: int, taken: int, load: Array) -> None:
    """Set some cases side by side; columns of missing cases hold zeros."""
    if taken == WIDE and length >= WIDE:
        for begun in range(0, length, WIDE):
            at = min(begun, length - WIDE)  # the last square overlaps the one before
            transpose(loads, begin + at, length, load, WIDE * at, WIDE)
        return
    load[:] = 0.0
    flat = loads.reshape(-1)
    for c in range(taken):
        for at in range(length):
            load[WIDE * at + c] = flat[begin + length * c + at]


@ordered_kernel
def _judged(size: float, change: float) -> int:
    """Say whether the correction is small, as it is wherever the matrix could be trusted."""
    if not size + change < np.inf:
        return 2
    if change > LARGEST_CORRECTION * LARGEST_CORRECTION * size:
        return 1
    return 0
