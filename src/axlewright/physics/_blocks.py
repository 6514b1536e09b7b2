"""A chain's block-tridiagonal matrix: factorise once, solve for many cases side by side."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.compiled import kernel

Array: TypeAlias = NDArray[np.float64]
Flags: TypeAlias = NDArray[np.bool_]

WIDE = 8  # load cases that are carried side by side
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


@kernel
def substitute(block: Array, pivot: Array, beside: Array, right: Array) -> None:
    """Solve for WIDE cases side by side, in place. Written out: loops here cost half the time."""
    count = block.shape[0]
    for k in range(count):
        low, v = block[k], beside[k - 1]  # the last of beside is zero
        here, near = right[k], right[k - 1]
        (l10,) = (low[1, 0],)
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
        for c in range(WIDE):
            b0, b1, b2 = near[0, c], near[1, c], near[2, c]
            b3, b4, b5 = near[3, c], near[4, c], near[5, c]
            a0 = here[0, c] - v00 * b0 - v01 * b1 - v02 * b2 - v03 * b3 - v04 * b4 - v05 * b5
            a1 = (
                here[1, c]
                - l10 * a0
                - v10 * b0
                - v11 * b1
                - v12 * b2
                - v13 * b3
                - v14 * b4
                - v15 * b5
            )
            a2 = (
                here[2, c]
                - l20 * a0
                - l21 * a1
                - v20 * b0
                - v21 * b1
                - v22 * b2
                - v23 * b3
                - v24 * b4
                - v25 * b5
            )
            a3 = (
                here[3, c]
                - l30 * a0
                - l31 * a1
                - l32 * a2
                - v30 * b0
                - v31 * b1
                - v32 * b2
                - v33 * b3
                - v34 * b4
                - v35 * b5
            )
            a4 = (
                here[4, c]
                - l40 * a0
                - l41 * a1
                - l42 * a2
                - l43 * a3
                - v40 * b0
                - v41 * b1
                - v42 * b2
                - v43 * b3
                - v44 * b4
                - v45 * b5
            )
            a5 = (
                here[5, c]
                - l50 * a0
                - l51 * a1
                - l52 * a2
                - l53 * a3
                - l54 * a4
                - v50 * b0
                - v51 * b1
                - v52 * b2
                - v53 * b3
                - v54 * b4
                - v55 * b5
            )
            here[0, c] = a0
            here[1, c] = a1
            here[2, c] = a2
            here[3, c] = a3
            here[4, c] = a4
            here[5, c] = a5
    for k in range(count - 1, -1, -1):
        low, v, d = block[k], beside[k], pivot[k]
        here, near = right[k], right[k + 1 if k + 1 < count else k]
        (l10,) = (low[1, 0],)
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
        for c in range(WIDE):
            b0, b1, b2 = near[0, c], near[1, c], near[2, c]
            b3, b4, b5 = near[3, c], near[4, c], near[5, c]
            a5 = d5 * here[5, c] - v50 * b0 - v51 * b1 - v52 * b2 - v53 * b3 - v54 * b4 - v55 * b5
            a4 = (
                d4 * here[4, c]
                - l54 * a5
                - v40 * b0
                - v41 * b1
                - v42 * b2
                - v43 * b3
                - v44 * b4
                - v45 * b5
            )
            a3 = (
                d3 * here[3, c]
                - l43 * a4
                - l53 * a5
                - v30 * b0
                - v31 * b1
                - v32 * b2
                - v33 * b3
                - v34 * b4
                - v35 * b5
            )
            a2 = (
                d2 * here[2, c]
                - l32 * a3
                - l42 * a4
                - l52 * a5
                - v20 * b0
                - v21 * b1
                - v22 * b2
                - v23 * b3
                - v24 * b4
                - v25 * b5
            )
            a1 = (
                d1 * here[1, c]
                - l21 * a2
                - l31 * a3
                - l41 * a4
                - l51 * a5
                - v10 * b0
                - v11 * b1
                - v12 * b2
                - v13 * b3
                - v14 * b4
                - v15 * b5
            )
            a0 = (
                d0 * here[0, c]
                - l10 * a1
                - l20 * a2
                - l30 * a3
                - l40 * a4
                - l50 * a5
                - v00 * b0
                - v01 * b1
                - v02 * b2
                - v03 * b3
                - v04 * b4
                - v05 * b5
            )
            here[0, c] = a0
            here[1, c] = a1
            here[2, c] = a2
            here[3, c] = a3
            here[4, c] = a4
            here[5, c] = a5
