"""A chain's block-tridiagonal matrix: factorise once, solve for many cases side by side.

Everything lies flat, in rows of eight. ``band`` gives each node twelve rows: six of its own block
and six of the block to the neighbour nearer the middle, the last two places of each row idle.
Cases stand side by side: six rows (freedoms) of WIDE cases for each node. Work goes from both
ends to the middle node and back out: two rows of steps that do not wait for each other.
"""

from typing import TypeAlias

import numpy as np

from axlewright.physics._node import (
    NODE,
    PART,
    Numbers,
    Six,
    ascend,
    descend,
    eliminate,
    less_columns,
    less_rows,
    put_six,
    scaled,
    six,
)
from axlewright.physics._wide import (
    Array,
    Wide,
    each,
    element,
    full,
    less,
    minus,
    more,
    plus,
    put,
    row,
)
from axlewright.physics.compiled import inner_kernel, ordered_kernel

# Blocks, one over pivots, stiffness of the beams, their geometry.
Matrix: TypeAlias = tuple[Array, Array, Array, Array]
# Displacements and actions, the place of the first row in each, and the step between rows.
Answer: TypeAlias = tuple[Array, Array, int, int, int]

BEAM = 48  # numbers of a beam's stiffness
TALE = 40  # numbers of a beam's geometry; see ``_beams``
SPAN = 37  # place of the beam's own extent among them
SMALLEST_PIVOT = 1e-13  # of its own diagonal before elimination: less is a free movement


@ordered_kernel
def factorise(band: Array, inverse: Array) -> int:
    """Turn the blocks into L' and V, with 1/D beside, in place; say 0, 1 singular, 2 not finite.

    From both ends to the middle node, each: block = L D L', V = (L D)^-1 beside, inner block
    -= V' D V.
    """
    count = inverse.shape[0] // 8
    middle = count // 2
    none = full(0.0)
    near = far = (none, none, none, none, none, none)
    state = 0
    for i in range(middle):
        at = NODE * i
        rows = six(band, at, 8)
        own = _diagonal(rows)
        if i > 0:
            rows = less_rows(band, at - PART, rows, near)  # D V of the node before
        near, pivots = eliminate(band, inverse, at, 8 * i, rows)
        state = max(state, _trusted(pivots, own))
        k = count - 1 - i
        if k > middle:
            at = NODE * k
            rows = six(band, at, 8)
            own = _diagonal(rows)
            if i > 0:
                rows = less_rows(band, at + NODE + PART, rows, far)
            far, pivots = eliminate(band, inverse, at, 8 * k, rows)
            state = max(state, _trusted(pivots, own))
    at = NODE * middle
    rows = six(band, at, 8)
    own = _diagonal(rows)
    if middle > 0:
        rows = less_rows(band, at - PART, rows, near)
    if middle < count - 1:
        rows = less_rows(band, at + NODE + PART, rows, far)
    _, pivots = eliminate(band, inverse, at, 8 * middle, rows)
    return max(state, _trusted(pivots, own))


@ordered_kernel
def onward(band: Array, load: Array, action: Array, left: Array, again: bool) -> None:
    """Write into ``left`` what the loads come to when eliminated from both ends inwards.

    ``again`` takes what the beams carry off the loads first.
    """
    count = left.shape[0] // PART
    middle = count // 2
    none = full(0.0)
    near = far = (none, none, none, none, none, none)
    for i in range(middle):
        rows = _acting(load, action, i, count, again)
        if i > 0:
            rows = less_rows(band, NODE * i - PART, rows, near)
        near = descend(band, NODE * i, rows)
        put_six(left, PART * i, 8, near)
        k = count - 1 - i
        if k > middle:
            rows = _acting(load, action, k, count, again)
            if i > 0:
                rows = less_rows(band, NODE * (k + 1) + PART, rows, far)
            far = descend(band, NODE * k, rows)
            put_six(left, PART * k, 8, far)
    rows = _acting(load, action, middle, count, again)
    if middle > 0:
        rows = less_rows(band, NODE * middle - PART, rows, near)
    if middle < count - 1:
        rows = less_rows(band, NODE * (middle + 1) + PART, rows, far)
    put_six(left, PART * middle, 8, descend(band, NODE * middle, rows))


@ordered_kernel
def back(
    matrix: Matrix, left: Array, before: Answer, answer: Answer, again: bool
) -> tuple[float, float]:
    """Solve for displacements from the middle node outwards, and for what the beams then carry.

    ``again`` adds what stands in ``before``, which may be elsewhere. Gives the sums of squares
    of all displacements and of those just solved for.
    """
    band, inverse, stiff, tale = matrix
    count = inverse.shape[0] // 8
    middle = count // 2
    rows = scaled(inverse, 8 * middle, six(left, PART * middle, 8))
    near = far = ascend(band, NODE * middle, rows)
    none = full(0.0)
    size, change = _move(middle, near, before, answer, again, none, none)
    for i in range(middle):
        k = middle - 1 - i
        rows = scaled(inverse, 8 * k, six(left, PART * k, 8))
        rows = less_columns(band, NODE * k + PART, rows, near)
        rows = ascend(band, NODE * k, rows)
        size, change = _move(k, rows, before, answer, again, size, change)
        _carry(stiff, tale, k, rows, near, before, answer, again)
        near = rows
        k = middle + 1 + i
        if k < count:
            rows = scaled(inverse, 8 * k, six(left, PART * k, 8))
            rows = less_columns(band, NODE * k + PART, rows, far)
            rows = ascend(band, NODE * k, rows)
            size, change = _move(k, rows, before, answer, again, size, change)
            _carry(stiff, tale, k - 1, far, rows, before, answer, again)
            far = rows
    return total(size), total(change)


@inner_kernel
def _acting(load: Array, action: Array, k: int, count: int, again: bool) -> Six:
    """Loads on a node, or what loads and beams leave there."""
    a0, a1, a2, a3, a4, a5 = six(load, PART * k, 8)
    if again and k < count - 1:
        f0, f1, f2, f3, f4, f5 = six(action, 2 * PART * k, 8)
        a0, a1, a2 = plus(a0, f0), plus(a1, f1), plus(a2, f2)
        a3, a4, a5 = plus(a3, f3), plus(a4, f4), plus(a5, f5)
    if again and k > 0:
        f0, f1, f2, f3, f4, f5 = six(action, 2 * PART * k - PART, 8)
        a0, a1, a2 = minus(a0, f0), minus(a1, f1), minus(a2, f2)
        a3, a4, a5 = minus(a3, f3), minus(a4, f4), minus(a5, f5)
    return a0, a1, a2, a3, a4, a5


@inner_kernel
def _diagonal(rows: Six) -> Numbers:
    r0, r1, r2, r3, r4, r5 = rows
    return (
        element(r0, 0),
        element(r1, 1),
        element(r2, 2),
        element(r3, 3),
        element(r4, 4),
        element(r5, 5),
    )


@inner_kernel
def _trusted(pivots: Numbers, own: Numbers) -> int:
    """Say 0, or 1 where a pivot is next to nothing of its own diagonal, 2 where not finite."""
    state = 0
    for k in range(6):
        if not abs(pivots[k]) < np.inf:
            return 2
        if pivots[k] <= SMALLEST_PIVOT * own[k]:
            state = 1
    return state


@inner_kernel
def _move(
    k: int, rows: Six, before: Answer, answer: Answer, again: bool, size: Wide, change: Wide
) -> tuple[Wide, Wide]:
    """Write a node's displacements, or their sum with those before; sum up the squares."""
    past, _, from_, _, stride = before
    moved, _, at, _, step = answer
    from_, at = from_ + 6 * stride * k, at + 6 * step * k
    for a in rows:
        whole = plus(row(past, from_), a) if again else a
        put(moved, at, whole)
        size, change = more(size, whole, whole), more(change, a, a)
        from_, at = from_ + stride, at + step
    return size, change


@inner_kernel
def _carry(
    stiff: Array,
    tale: Array,
    k: int,
    first: Six,
    second: Six,
    before: Answer,
    answer: Answer,
    again: bool,
) -> None:
    """Write what beam k carries at its ends, whose movements are given, or the sum with before."""
    p, e = TALE * k + SPAN, BEAM * k
    a0, a1, a2, a3, a4, a5 = first
    b0, b1, b2, b3, b4, b5 = second
    dx, dy, dz = each(tale, p), each(tale, p + 1), each(tale, p + 2)
    # First the difference of near numbers, which is exact, then the small rotation.
    u0 = more(less(minus(b0, a0), a4, dz), a5, dy)
    u1 = more(less(minus(b1, a1), a5, dx), a3, dz)
    u2 = more(less(minus(b2, a2), a3, dy), a4, dx)
    u3, u4, u5 = minus(b3, a3), minus(b4, a4), minus(b5, a5)
    f0 = f1 = f2 = f3 = f4 = f5 = full(0.0)
    if again:
        _, action, _, at, step = before
        f0, f1, f2, f3, f4, f5 = six(action, at + (12 * k + 6) * step, step)
    for u in (u0, u1, u2, u3, u4, u5):
        f0, f1 = more(f0, each(stiff, e), u), more(f1, each(stiff, e + 1), u)
        f2, f3 = more(f2, each(stiff, e + 2), u), more(f3, each(stiff, e + 3), u)
        f4, f5 = more(f4, each(stiff, e + 4), u), more(f5, each(stiff, e + 5), u)
        e += 8
    n3 = less(more(f3, dy, f2), dz, f1)
    n4 = less(more(f4, dz, f0), dx, f2)
    n5 = less(more(f5, dx, f1), dy, f0)
    _, action, _, at, step = answer
    at += 12 * k * step
    put_six(action, at, step, (f0, f1, f2, n3, n4, n5))
    put_six(action, at + 6 * step, step, (f0, f1, f2, f3, f4, f5))


@ordered_kernel
def total(values: Wide) -> float:
    """Sum of the eight."""
    near = element(values, 0) + element(values, 1) + element(values, 2) + element(values, 3)
    far = element(values, 4) + element(values, 5) + element(values, 6) + element(values, 7)
    return near + far
