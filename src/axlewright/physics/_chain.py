"""The compiled part of ``frame``: factorise, solve, recover, refine."""

import numpy as np
from numpy.typing import NDArray

from axlewright.physics._blocks import (
    ACTION,
    LEFT,
    MOVED,
    PART,
    ROW,
    WIDE,
    Array,
    Flags,
    factorise,
    substitute,
)
from axlewright.physics.compiled import kernel, ordered_kernel

LARGEST_CORRECTION = 1e-3  # of the displacement: more means that the digits are lost


@kernel
def chain_kernel(
    lanes: int,
    width: int,
    nodes: Array,
    axial: Array,
    bending_up: Array,
    bending_fore: Array,
    torsion: Array,
    shear_up: Array,
    shear_fore: Array,
    support_node: NDArray[np.int64],
    support: Array,
    fixed: Flags,
    loads: Array,
) -> tuple[Array, Array, NDArray[np.int64]]:
    """Solve every lane; an axis of length one is shared by all lanes."""
    count = nodes.shape[1]
    cases = loads.shape[1]
    displacement = np.empty((lanes, cases, count, 6))
    face = np.empty((lanes, cases, count - 1, 2, 6))
    status = np.empty(lanes, np.int64)
    end = np.empty((count - 1, 6, 6))
    span = np.empty((count - 1, 3))
    lower = np.empty((count, 6, 6))
    pivot = np.empty((count, 6))
    whole = np.empty((count, 6))
    link = np.empty((count, 6, 6))
    work = np.empty((count + 2) * ROW)
    work[:ROW] = 0.0
    work[(count + 1) * ROW :] = 0.0
    for lane in range(lanes):
        springs = support[lane % support.shape[0]]
        acting = loads[lane % loads.shape[0]]
        assemble(
            nodes[lane % nodes.shape[0]],
            axial[lane % axial.shape[0]],
            bending_up[lane % bending_up.shape[0]],
            bending_fore[lane % bending_fore.shape[0]],
            torsion[lane % torsion.shape[0]],
            shear_up[lane % shear_up.shape[0]],
            shear_fore[lane % shear_fore.shape[0]],
            end,
            span,
            lower,
            link,
        )
        for order in range(support_node.shape[0]):
            node = support_node[order]
            for i in range(6):
                for j in range(6):
                    lower[node, i, j] += springs[order, i, j]
        status[lane] = factorise(lower, pivot, whole, link, fixed)
        for first in range(0, cases, WIDE):
            if status[lane] != 0:
                break
            taken = min(WIDE, cases - first)
            last = first + taken
            spread(acting[first:last], fixed, work)
            substitute(lower, pivot, link, work, MOVED, width)
            deform(end, span, work, MOVED, width)
            # The out-of-balance of the first answer is solved for as a second, small load.
            balance(span, support_node, springs, fixed, work, width)
            substitute(lower, pivot, link, work, LEFT, width)
            deform(end, span, work, LEFT, width)
            status[lane] = judge(work)
            gather(work, displacement[lane, first:last])
            gather_faces(span, work, face[lane, first:last])
        if status[lane] != 0:
            displacement[lane] = np.nan
            face[lane] = np.nan
    return displacement, face, status


@kernel
def spread(acting: Array, fixed: Flags, work: Array) -> None:
    """Set the loads of some cases side by side, none along what is fixed, and no actions."""
    count = fixed.shape[0]
    first = 0 if acting.shape[0] < WIDE else ACTION  # columns of missing cases hold zeros
    last = ROW if acting.shape[0] < WIDE else LEFT
    for k in range(count):
        for at in range(ROW * (k + 1) + first, ROW * (k + 1) + last):
            work[at] = 0.0
    for c in range(acting.shape[0]):
        load = acting[c]
        for k in range(count):
            at = ROW * (k + 1) + c
            for i in range(6):
                value = 0.0 if fixed[k, i] else load[k, i]
                work[at + MOVED + WIDE * i] = value
                work[at + LEFT + WIDE * i] = value


@kernel
def gather(work: Array, displacement: Array) -> None:
    """Sum the two answers and part the cases again."""
    for c in range(displacement.shape[0]):
        out = displacement[c]
        for k in range(out.shape[0]):
            at = ROW * (k + 1) + c
            for i in range(6):
                out[k, i] = work[at + MOVED + WIDE * i] + work[at + LEFT + WIDE * i]


@kernel
def gather_faces(span: Array, work: Array, face: Array) -> None:
    """Part the cases and carry the actions to the first end of each beam too."""
    for c in range(face.shape[0]):
        out = face[c]
        for k in range(span.shape[0]):
            at = ROW * (k + 1) + ACTION + c
            dx, dy, dz = span[k, 0], span[k, 1], span[k, 2]
            fx, fy, fz = work[at], work[at + WIDE], work[at + 2 * WIDE]
            mx, my, mz = work[at + 3 * WIDE], work[at + 4 * WIDE], work[at + 5 * WIDE]
            for near in range(2):
                out[k, near, 0] = fx
                out[k, near, 1] = fy
                out[k, near, 2] = fz
            out[k, 1, 3] = mx
            out[k, 1, 4] = my
            out[k, 1, 5] = mz
            out[k, 0, 3] = mx + (dy * fz - dz * fy)
            out[k, 0, 4] = my + (dz * fx - dx * fz)
            out[k, 0, 5] = mz + (dx * fy - dy * fx)


@kernel
def assemble(
    nodes: Array,
    axial: Array,
    bending_up: Array,
    bending_fore: Array,
    torsion: Array,
    shear_up: Array,
    shear_fore: Array,
    end: Array,
    span: Array,
    diagonal: Array,
    beside: Array,
) -> None:
    """Fill the stiffness of each beam at its second end, and the blocks of the whole chain.

    With the first end clamped: force = a u + b turn, moment = b' u + c turn. By symmetry the
    first end has a, -b, c, and the block between second and first end is -a, b; -b', e.
    """
    count = nodes.shape[0]
    diagonal[:] = 0.0
    e = np.empty((3, 3))
    for k in range(count - 1):
        dx = nodes[k + 1, 0] - nodes[k, 0]
        dy = nodes[k + 1, 1] - nodes[k, 1]
        dz = nodes[k + 1, 2] - nodes[k, 2]
        span[k, 0], span[k, 1], span[k, 2] = dx, dy, dz
        flat = dx * dx + dy * dy
        length = np.sqrt(flat + dz * dz)
        per = 1.0 / length
        e[0, 0], e[0, 1], e[0, 2] = dx * per, dy * per, dz * per
        level = np.sqrt(flat) * per
        if level > 1e-6:
            # "Up" is global z made square to the beam; across is up x along, so level.
            e[1, 0], e[1, 1], e[1, 2] = -e[0, 1] / level, e[0, 0] / level, 0.0
            e[2, 0] = -e[0, 0] * e[0, 2] / level
            e[2, 1] = -e[0, 1] * e[0, 2] / level
            e[2, 2] = level
        else:
            toward = -1.0 if dz > 0 else 1.0
            e[1, 0], e[1, 1], e[1, 2] = 0.0, toward, 0.0
            e[2, 0], e[2, 1], e[2, 2] = 1.0, 0.0, 0.0
        soft_up = shear_up[k] if shear_up.shape[0] > 1 else shear_up[0]
        soft_fore = shear_fore[k] if shear_fore.shape[0] > 1 else shear_fore[0]
        phi_up = 12.0 * bending_up[k] * soft_up * per * per
        phi_fore = 12.0 * bending_fore[k] * soft_fore * per * per
        up = bending_up[k] * per / (1.0 + phi_up)
        fore = bending_fore[k] * per / (1.0 + phi_fore)
        a0, a1, a2 = axial[k] * per, 12.0 * fore * per * per, 12.0 * up * per * per
        b1, b2 = 6.0 * fore * per, 6.0 * up * per
        c0, c1, c2 = torsion[k] * per, (4.0 + phi_up) * up, (4.0 + phi_fore) * fore
        d1, d2 = (2.0 - phi_up) * up, (2.0 - phi_fore) * fore
        for i in range(3):
            for j in range(3):
                along = e[0, i] * e[0, j]
                a = a0 * along + a1 * e[1, i] * e[1, j] + a2 * e[2, i] * e[2, j]
                b = b2 * e[2, i] * e[1, j] - b1 * e[1, i] * e[2, j]
                c = c0 * along + c1 * e[1, i] * e[1, j] + c2 * e[2, i] * e[2, j]
                d = d1 * e[1, i] * e[1, j] + d2 * e[2, i] * e[2, j] - c0 * along
                end[k, i, j] = a
                end[k, i, j + 3] = b
                end[k, j + 3, i] = b
                end[k, i + 3, j + 3] = c
                diagonal[k, i, j] += a
                diagonal[k, i, j + 3] -= b
                diagonal[k, j + 3, i] -= b
                diagonal[k, i + 3, j + 3] += c
                diagonal[k + 1, i, j] = a
                diagonal[k + 1, i, j + 3] = b
                diagonal[k + 1, j + 3, i] = b
                diagonal[k + 1, i + 3, j + 3] = c
                # Rows belong to the first end, columns to the second.
                beside[k, i, j] = -a
                beside[k, i, j + 3] = -b
                beside[k, j + 3, i] = b
                beside[k, i + 3, j + 3] = d


@ordered_kernel
def deform(end: Array, span: Array, work: Array, column: int, width: int) -> None:
    """Add the actions at the second end of each beam that a column of displacements makes."""
    for k in range(end.shape[0]):
        dx, dy, dz = span[k, 0], span[k, 1], span[k, 2]
        e = end[k]
        rows = work[ROW * (k + 1) + column : ROW * (k + 2) + column + PART]
        out = work[ROW * (k + 1) + ACTION : ROW * (k + 1) + ACTION + PART]
        e00, e01, e02, e03, e04, e05 = e[0, 0], e[0, 1], e[0, 2], e[0, 3], e[0, 4], e[0, 5]
        e11, e12, e13, e14, e15 = e[1, 1], e[1, 2], e[1, 3], e[1, 4], e[1, 5]
        e22, e23, e24, e25 = e[2, 2], e[2, 3], e[2, 4], e[2, 5]
        e33, e34, e35 = e[3, 3], e[3, 4], e[3, 5]
        e44, e45 = e[4, 4], e[4, 5]
        e55 = e[5, 5]
        for c in range(width):
            rx, ry, rz = rows[24 + c], rows[32 + c], rows[40 + c]
            # First the difference of near numbers, which is exact, then the small rotation.
            u = rows[144 + c] - rows[c] - (ry * dz - rz * dy)
            v = rows[152 + c] - rows[8 + c] - (rz * dx - rx * dz)
            w = rows[160 + c] - rows[16 + c] - (rx * dy - ry * dx)
            rx, ry, rz = rows[168 + c] - rx, rows[176 + c] - ry, rows[184 + c] - rz
            out[c] += e00 * u + e01 * v + e02 * w + e03 * rx + e04 * ry + e05 * rz
            out[8 + c] += e01 * u + e11 * v + e12 * w + e13 * rx + e14 * ry + e15 * rz
            out[16 + c] += e02 * u + e12 * v + e22 * w + e23 * rx + e24 * ry + e25 * rz
            out[24 + c] += e03 * u + e13 * v + e23 * w + e33 * rx + e34 * ry + e35 * rz
            out[32 + c] += e04 * u + e14 * v + e24 * w + e34 * rx + e44 * ry + e45 * rz
            out[40 + c] += e05 * u + e15 * v + e25 * w + e35 * rx + e45 * ry + e55 * rz


@ordered_kernel
def balance(
    span: Array,
    support_node: NDArray[np.int64],
    springs: Array,
    fixed: Flags,
    work: Array,
    width: int,
) -> None:
    """Leave in LEFT what loads, springs and beams do not balance at each node."""
    for k in range(span.shape[0]):
        dx, dy, dz = span[k, 0], span[k, 1], span[k, 2]
        rows = work[ROW * (k + 1) + ACTION : ROW * (k + 2) + LEFT + PART]
        for c in range(width):
            fx, fy, fz = rows[c], rows[8 + c], rows[16 + c]
            mx, my, mz = rows[24 + c], rows[32 + c], rows[40 + c]
            rows[48 + c] += fx
            rows[56 + c] += fy
            rows[64 + c] += fz
            rows[72 + c] += mx + (dy * fz - dz * fy)
            rows[80 + c] += my + (dz * fx - dx * fz)
            rows[88 + c] += mz + (dx * fy - dy * fx)
            rows[192 + c] -= fx
            rows[200 + c] -= fy
            rows[208 + c] -= fz
            rows[216 + c] -= mx
            rows[224 + c] -= my
            rows[232 + c] -= mz
    for order in range(support_node.shape[0]):
        at = ROW * (support_node[order] + 1)
        for i in range(6):
            for j in range(6):
                stiffness = springs[order, i, j]
                for c in range(width):
                    work[at + LEFT + WIDE * i + c] -= stiffness * work[at + MOVED + WIDE * j + c]
    for k in range(fixed.shape[0]):
        for i in range(6):
            if fixed[k, i]:
                for c in range(width):
                    work[ROW * (k + 1) + LEFT + WIDE * i + c] = 0.0


@kernel
def judge(work: Array) -> int:
    """Say whether the correction is small, as it is wherever the matrix could be trusted."""
    size = 0.0
    change = 0.0
    for row in range(ROW, work.shape[0] - ROW, ROW):
        for at in range(row, row + PART):
            size += work[at + MOVED] * work[at + MOVED]
            change += work[at + LEFT] * work[at + LEFT]
    # Not isfinite: numba spells it x - x, which the freedom to reorder sums may turn into zero.
    if not size + change < np.inf:
        return 2
    if change > LARGEST_CORRECTION * LARGEST_CORRECTION * size:
        return 1
    return 0
