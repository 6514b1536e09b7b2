"""The compiled part of ``frame``: factorise, solve, recover, refine."""

import numpy as np
from numpy.typing import NDArray

from axlewright.physics._blocks import WIDE, Array, Flags, factorise, substitute
from axlewright.physics.compiled import kernel, ordered_kernel

LARGEST_CORRECTION = 1e-3  # of the displacement: more means that the digits are lost


@kernel
def chain_kernel(
    lanes: int,
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
    right = np.empty((count, 6, WIDE))
    moved = np.empty((count, 6, WIDE))
    action = np.empty((count - 1, 6, WIDE))
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
            spread(acting[first : first + taken], fixed, right, moved)
            substitute(lower, pivot, link, moved)
            recover(end, span, moved, action)
            # The out-of-balance of the first answer is solved for as a second, small load.
            balance(span, action, support_node, springs, fixed, moved, right)
            substitute(lower, pivot, link, right)
            status[lane] = judge(moved, right)
            correct(end, span, right, action)
            last = first + taken
            gather(moved, right, displacement[lane, first:last])
            gather_faces(span, action, face[lane, first:last])
        if status[lane] != 0:
            displacement[lane] = np.nan
            face[lane] = np.nan
    return displacement, face, status


@kernel
def spread(acting: Array, fixed: Flags, right: Array, copy: Array) -> None:
    """Set the loads of some cases side by side, none along what is fixed."""
    for k in range(right.shape[0]):
        for i in range(6):
            for c in range(WIDE):
                right[k, i, c] = 0.0
            if not fixed[k, i]:
                for c in range(acting.shape[0]):
                    right[k, i, c] = acting[c, k, i]
            for c in range(WIDE):
                copy[k, i, c] = right[k, i, c]


@kernel
def gather(moved: Array, correction: Array, displacement: Array) -> None:
    """Sum two answers and part the cases again."""
    for c in range(displacement.shape[0]):
        out = displacement[c]
        for k in range(moved.shape[0]):
            for i in range(6):
                out[k, i] = moved[k, i, c] + correction[k, i, c]


@kernel
def gather_faces(span: Array, action: Array, face: Array) -> None:
    """Part the cases and carry the actions to the first end of each beam too."""
    for c in range(face.shape[0]):
        out = face[c]
        for k in range(span.shape[0]):
            dx, dy, dz = span[k, 0], span[k, 1], span[k, 2]
            fx, fy, fz = action[k, 0, c], action[k, 1, c], action[k, 2, c]
            mx, my, mz = action[k, 3, c], action[k, 4, c], action[k, 5, c]
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
def recover(end: Array, span: Array, moved: Array, action: Array) -> None:
    """Actions at the second end of each beam, from what it has deformed."""
    action[:] = 0.0
    correct(end, span, moved, action)


@ordered_kernel
def correct(end: Array, span: Array, moved: Array, action: Array) -> None:
    """Add the actions of a further displacement."""
    for k in range(end.shape[0]):
        dx, dy, dz = span[k, 0], span[k, 1], span[k, 2]
        for c in range(WIDE):
            rx, ry, rz = moved[k, 3, c], moved[k, 4, c], moved[k, 5, c]
            # First the difference of near numbers, which is exact, then the small rotation.
            u = moved[k + 1, 0, c] - moved[k, 0, c]
            v = moved[k + 1, 1, c] - moved[k, 1, c]
            w = moved[k + 1, 2, c] - moved[k, 2, c]
            u -= ry * dz - rz * dy
            v -= rz * dx - rx * dz
            w -= rx * dy - ry * dx
            rx = moved[k + 1, 3, c] - rx
            ry = moved[k + 1, 4, c] - ry
            rz = moved[k + 1, 5, c] - rz
            for i in range(6):
                action[k, i, c] += (
                    end[k, i, 0] * u
                    + end[k, i, 1] * v
                    + end[k, i, 2] * w
                    + end[k, i, 3] * rx
                    + end[k, i, 4] * ry
                    + end[k, i, 5] * rz
                )


@kernel
def balance(
    span: Array,
    action: Array,
    support_node: NDArray[np.int64],
    springs: Array,
    fixed: Flags,
    moved: Array,
    right: Array,
) -> None:
    """Leave in ``right`` what loads, springs and beams do not balance at each node."""
    for k in range(span.shape[0]):
        dx, dy, dz = span[k, 0], span[k, 1], span[k, 2]
        for c in range(WIDE):
            fx, fy, fz = action[k, 0, c], action[k, 1, c], action[k, 2, c]
            mx, my, mz = action[k, 3, c], action[k, 4, c], action[k, 5, c]
            right[k + 1, 0, c] -= fx
            right[k + 1, 1, c] -= fy
            right[k + 1, 2, c] -= fz
            right[k + 1, 3, c] -= mx
            right[k + 1, 4, c] -= my
            right[k + 1, 5, c] -= mz
            right[k, 0, c] += fx
            right[k, 1, c] += fy
            right[k, 2, c] += fz
            right[k, 3, c] += mx + (dy * fz - dz * fy)
            right[k, 4, c] += my + (dz * fx - dx * fz)
            right[k, 5, c] += mz + (dx * fy - dy * fx)
    for order in range(support_node.shape[0]):
        node = support_node[order]
        for i in range(6):
            for j in range(6):
                v = springs[order, i, j]
                for c in range(WIDE):
                    right[node, i, c] -= v * moved[node, j, c]
    for k in range(fixed.shape[0]):
        for i in range(6):
            if fixed[k, i]:
                for c in range(WIDE):
                    right[k, i, c] = 0.0


@kernel
def judge(moved: Array, correction: Array) -> int:
    """Say whether the correction is small, as it is wherever the matrix could be trusted."""
    size = 0.0
    change = 0.0
    for k in range(moved.shape[0]):
        for i in range(6):
            for c in range(WIDE):
                size += moved[k, i, c] * moved[k, i, c]
                change += correction[k, i, c] * correction[k, i, c]
    # Not isfinite: numba spells it x - x, which the freedom to reorder sums may turn into zero.
    if not size + change < np.inf:
        return 2
    if change > LARGEST_CORRECTION * LARGEST_CORRECTION * size:
        return 1
    return 0
