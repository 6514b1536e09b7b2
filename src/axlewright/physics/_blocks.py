"""A chain's block-tridiagonal matrix: factorise once, solve for many cases side by side.

The cases at work lie in one flat array: a row for each node, with a row of zeros before the
first and after the last; in a row three columns (MOVED, ACTION, LEFT) of six freedoms; for each
freedom WIDE cases. The width arrives as an argument so that the compiler does not know it: it
would unroll a loop of eight into scalars instead of one vector.
"""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.compiled import kernel, ordered_kernel

Array: TypeAlias = NDArray[np.float64]
Flags: TypeAlias = NDArray[np.bool_]

WIDE = 8  # load cases that are carried side by side
PART = 6 * WIDE
ROW = 3 * PART
MOVED, ACTION, LEFT = 0, PART, 2 * PART
SMALLEST_PIVOT = 1e-13  # of its own diagonal before elimination: less is a free movement


@kernel
def factorise(block: Array, pivot: Array, whole: Array, beside: Array, fixed: Flags) -> int:
    """Turn the blocks into L, D and 1/D of each node and V to the next, in place.

    Node by node: block = L D L', V = (L D)^-1 beside, next block -= V' D V.
    """
    count = block.shape[0]
    for k in range(count):
        for i in range(6):
            if fixed[k, i]:
                for j in range(6):
                    block[k, i, j] = 0.0
                    block[k, j, i] = 0.0
                    beside[k, i, j] = 0.0
                    if k > 0:
                        beside[k - 1, j, i] = 0.0
                block[k, i, i] = 1.0
    beside[count - 1] = 0.0
    for k in range(count):
        here, over = block[k], beside[k]
        for i in range(6):
            pivot[k, i] = here[i, i]
        if k > 0:
            before = beside[k - 1]
            for m in range(6):
                weight = whole[k - 1, m]
                for i in range(6):
                    scaled = before[m, i] * weight
                    for j in range(i, 6):
                        here[i, j] -= scaled * before[m, j]
        for i in range(6):
            left = here[i, i]
            if not abs(left) < np.inf:
                return 2
            if left <= SMALLEST_PIVOT * pivot[k, i]:
                return 1
            inverse = 1.0 / left
            for j in range(i + 1, 6):
                ratio = here[i, j] * inverse
                for m in range(j, 6):
                    here[j, m] -= ratio * here[i, m]
                for m in range(6):
                    over[j, m] -= ratio * over[i, m]
                here[j, i] = ratio
            whole[k, i] = left
            pivot[k, i] = inverse
        for i in range(6):
            for m in range(6):
                over[i, m] *= pivot[k, i]
    return 0


@ordered_kernel
def substitute(
    block: Array, pivot: Array, beside: Array, work: Array, column: int, width: int
) -> None:
    """Solve for WIDE cases side by side, in place in one column of the work rows.

    Written out, in this order and over one array, so that the cases become one machine vector
    and each unknown waits only for the one before it: half the time of loops.
    """
    count = block.shape[0]
    for k in range(count):
        low, v = block[k], beside[k - 1]  # the last of beside is zero, and so is the first row
        rows = work[ROW * k + column : ROW * (k + 1) + column + PART]
        l10 = low[1, 0]
        l20, l21 = low[2, 0], low[2, 1]
        l30, l31, l32 = low[3, 0], low[3, 1], low[3, 2]
        l40, l41, l42, l43 = low[4, 0], low[4, 1], low[4, 2], low[4, 3]
        l50, l51, l52, l53, l54 = low[5, 0], low[5, 1], low[5, 2], low[5, 3], low[5, 4]
        v00, v01, v02, v03, v04, v05 = v[0, 0], v[1, 0], v[2, 0], v[3, 0], v[4, 0], v[5, 0]
        v10, v11, v12, v13, v14, v15 = v[0, 1], v[1, 1], v[2, 1], v[3, 1], v[4, 1], v[5, 1]
        v20, v21, v22, v23, v24, v25 = v[0, 2], v[1, 2], v[2, 2], v[3, 2], v[4, 2], v[5, 2]
        v30, v31, v32, v33, v34, v35 = v[0, 3], v[1, 3], v[2, 3], v[3, 3], v[4, 3], v[5, 3]
        v40, v41, v42, v43, v44, v45 = v[0, 4], v[1, 4], v[2, 4], v[3, 4], v[4, 4], v[5, 4]
        v50, v51, v52, v53, v54, v55 = v[0, 5], v[1, 5], v[2, 5], v[3, 5], v[4, 5], v[5, 5]
        for c in range(width):
            b0, b1, b2 = rows[c], rows[8 + c], rows[16 + c]
            b3, b4, b5 = rows[24 + c], rows[32 + c], rows[40 + c]
            a0 = rows[144 + c] - v00 * b0 - v01 * b1 - v02 * b2 - v03 * b3 - v04 * b4 - v05 * b5
            a1 = (
                rows[152 + c]
                - v10 * b0
                - v11 * b1
                - v12 * b2
                - v13 * b3
                - v14 * b4
                - v15 * b5
                - l10 * a0
            )
            a2 = (
                rows[160 + c]
                - v20 * b0
                - v21 * b1
                - v22 * b2
                - v23 * b3
                - v24 * b4
                - v25 * b5
                - l20 * a0
                - l21 * a1
            )
            a3 = (
                rows[168 + c]
                - v30 * b0
                - v31 * b1
                - v32 * b2
                - v33 * b3
                - v34 * b4
                - v35 * b5
                - l30 * a0
                - l31 * a1
                - l32 * a2
            )
            a4 = (
                rows[176 + c]
                - v40 * b0
                - v41 * b1
                - v42 * b2
                - v43 * b3
                - v44 * b4
                - v45 * b5
                - l40 * a0
                - l41 * a1
                - l42 * a2
                - l43 * a3
            )
            a5 = (
                rows[184 + c]
                - v50 * b0
                - v51 * b1
                - v52 * b2
                - v53 * b3
                - v54 * b4
                - v55 * b5
                - l50 * a0
                - l51 * a1
                - l52 * a2
                - l53 * a3
                - l54 * a4
            )
            rows[144 + c] = a0
            rows[152 + c] = a1
            rows[160 + c] = a2
            rows[168 + c] = a3
            rows[176 + c] = a4
            rows[184 + c] = a5
    for k in range(count - 1, -1, -1):
        low, v, d = block[k], beside[k], pivot[k]
        rows = work[ROW * (k + 1) + column : ROW * (k + 2) + column + PART]
        l10 = low[1, 0]
        l20, l21 = low[2, 0], low[2, 1]
        l30, l31, l32 = low[3, 0], low[3, 1], low[3, 2]
        l40, l41, l42, l43 = low[4, 0], low[4, 1], low[4, 2], low[4, 3]
        l50, l51, l52, l53, l54 = low[5, 0], low[5, 1], low[5, 2], low[5, 3], low[5, 4]
        v00, v01, v02, v03, v04, v05 = v[0, 0], v[0, 1], v[0, 2], v[0, 3], v[0, 4], v[0, 5]
        v10, v11, v12, v13, v14, v15 = v[1, 0], v[1, 1], v[1, 2], v[1, 3], v[1, 4], v[1, 5]
        v20, v21, v22, v23, v24, v25 = v[2, 0], v[2, 1], v[2, 2], v[2, 3], v[2, 4], v[2, 5]
        v30, v31, v32, v33, v34, v35 = v[3, 0], v[3, 1], v[3, 2], v[3, 3], v[3, 4], v[3, 5]
        v40, v41, v42, v43, v44, v45 = v[4, 0], v[4, 1], v[4, 2], v[4, 3], v[4, 4], v[4, 5]
        v50, v51, v52, v53, v54, v55 = v[5, 0], v[5, 1], v[5, 2], v[5, 3], v[5, 4], v[5, 5]
        d0, d1, d2, d3, d4, d5 = d[0], d[1], d[2], d[3], d[4], d[5]
        for c in range(width):
            b0, b1, b2 = rows[144 + c], rows[152 + c], rows[160 + c]
            b3, b4, b5 = rows[168 + c], rows[176 + c], rows[184 + c]
            a5 = d5 * rows[40 + c] - v50 * b0 - v51 * b1 - v52 * b2 - v53 * b3 - v54 * b4 - v55 * b5
            a4 = (
                d4 * rows[32 + c]
                - v40 * b0
                - v41 * b1
                - v42 * b2
                - v43 * b3
                - v44 * b4
                - v45 * b5
                - l54 * a5
            )
            a3 = (
                d3 * rows[24 + c]
                - v30 * b0
                - v31 * b1
                - v32 * b2
                - v33 * b3
                - v34 * b4
                - v35 * b5
                - l53 * a5
                - l43 * a4
            )
            a2 = (
                d2 * rows[16 + c]
                - v20 * b0
                - v21 * b1
                - v22 * b2
                - v23 * b3
                - v24 * b4
                - v25 * b5
                - l52 * a5
                - l42 * a4
                - l32 * a3
            )
            a1 = (
                d1 * rows[8 + c]
                - v10 * b0
                - v11 * b1
                - v12 * b2
                - v13 * b3
                - v14 * b4
                - v15 * b5
                - l51 * a5
                - l41 * a4
                - l31 * a3
                - l21 * a2
            )
            a0 = (
                d0 * rows[c]
                - v00 * b0
                - v01 * b1
                - v02 * b2
                - v03 * b3
                - v04 * b4
                - v05 * b5
                - l50 * a5
                - l40 * a4
                - l30 * a3
                - l20 * a2
                - l10 * a1
            )
            rows[c] = a0
            rows[8 + c] = a1
            rows[16 + c] = a2
            rows[24 + c] = a3
            rows[32 + c] = a4
            rows[40 + c] = a5
