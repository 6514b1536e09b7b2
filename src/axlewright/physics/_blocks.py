"""A chain's block-tridiagonal matrix: factorise once, solve for many cases side by side.

Everything lies flat, in rows of eight. ``band`` gives each node twelve rows: six of its own block
and six of the block to the next node, the last two places of each row idle. Cases stand side
by side: six rows (freedoms) of WIDE cases for each node. Written out by hand so that all of it
stays in the machine's vector registers: a third of the time of loops.
"""

import numpy as np

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
    times,
)
from axlewright.physics.compiled import ordered_kernel

NODE = 96  # numbers of a node in ``band``
PART = 48  # numbers of a node, or of a beam's end, where cases stand side by side
BEAM = 48  # numbers of a beam's stiffness
TALE = 40  # numbers of a beam's geometry; see ``_beams``
SPAN = 37  # place of the beam's own extent among them
SMALLEST_PIVOT = 1e-13  # of its own diagonal before elimination: less is a free movement


@ordered_kernel
def factorise(band: Array, inverse: Array) -> int:
    """Turn the blocks into L' and V, with 1/D beside, in place; say 0, 1 singular, 2 not finite.

    Node by node: block = L D L', V = (L D)^-1 beside, next block -= V' D V.
    """
    u0 = u1 = u2 = u3 = u4 = u5 = full(0.0)
    for k in range(inverse.shape[0] // 8):
        at = NODE * k
        r0, r1, r2 = row(band, at), row(band, at + 8), row(band, at + 16)
        r3, r4, r5 = row(band, at + 24), row(band, at + 32), row(band, at + 40)
        g0, g1, g2 = element(r0, 0), element(r1, 1), element(r2, 2)
        g3, g4, g5 = element(r3, 3), element(r4, 4), element(r5, 5)
        if k > 0:
            v = at - PART
            for u in (u0, u1, u2, u3, u4, u5):  # D V of the node before
                r0, r1 = less(r0, each(band, v), u), less(r1, each(band, v + 1), u)
                r2, r3 = less(r2, each(band, v + 2), u), less(r3, each(band, v + 3), u)
                r4, r5 = less(r4, each(band, v + 4), u), less(r5, each(band, v + 5), u)
                v += 8
        u0, u1, u2 = row(band, at + 48), row(band, at + 56), row(band, at + 64)
        u3, u4, u5 = row(band, at + 72), row(band, at + 80), row(band, at + 88)
        # Only what lies above the diagonal is right, and used.
        f0 = element(r0, 0)
        inverse[8 * k + 0] = 1.0 / f0
        per = full(1.0 / f0)
        s, t = times(per, r0), times(per, u0)
        put(band, at, s)
        put(band, at + 48, t)
        e = full(element(r0, 1))
        r1, u1 = less(r1, e, s), less(u1, e, t)
        e = full(element(r0, 2))
        r2, u2 = less(r2, e, s), less(u2, e, t)
        e = full(element(r0, 3))
        r3, u3 = less(r3, e, s), less(u3, e, t)
        e = full(element(r0, 4))
        r4, u4 = less(r4, e, s), less(u4, e, t)
        e = full(element(r0, 5))
        r5, u5 = less(r5, e, s), less(u5, e, t)
        f1 = element(r1, 1)
        inverse[8 * k + 1] = 1.0 / f1
        per = full(1.0 / f1)
        s, t = times(per, r1), times(per, u1)
        put(band, at + 8, s)
        put(band, at + 56, t)
        e = full(element(r1, 2))
        r2, u2 = less(r2, e, s), less(u2, e, t)
        e = full(element(r1, 3))
        r3, u3 = less(r3, e, s), less(u3, e, t)
        e = full(element(r1, 4))
        r4, u4 = less(r4, e, s), less(u4, e, t)
        e = full(element(r1, 5))
        r5, u5 = less(r5, e, s), less(u5, e, t)
        f2 = element(r2, 2)
        inverse[8 * k + 2] = 1.0 / f2
        per = full(1.0 / f2)
        s, t = times(per, r2), times(per, u2)
        put(band, at + 16, s)
        put(band, at + 64, t)
        e = full(element(r2, 3))
        r3, u3 = less(r3, e, s), less(u3, e, t)
        e = full(element(r2, 4))
        r4, u4 = less(r4, e, s), less(u4, e, t)
        e = full(element(r2, 5))
        r5, u5 = less(r5, e, s), less(u5, e, t)
        f3 = element(r3, 3)
        inverse[8 * k + 3] = 1.0 / f3
        per = full(1.0 / f3)
        s, t = times(per, r3), times(per, u3)
        put(band, at + 24, s)
        put(band, at + 72, t)
        e = full(element(r3, 4))
        r4, u4 = less(r4, e, s), less(u4, e, t)
        e = full(element(r3, 5))
        r5, u5 = less(r5, e, s), less(u5, e, t)
        f4 = element(r4, 4)
        inverse[8 * k + 4] = 1.0 / f4
        per = full(1.0 / f4)
        s, t = times(per, r4), times(per, u4)
        put(band, at + 32, s)
        put(band, at + 80, t)
        e = full(element(r4, 5))
        r5, u5 = less(r5, e, s), less(u5, e, t)
        f5 = element(r5, 5)
        inverse[8 * k + 5] = 1.0 / f5
        per = full(1.0 / f5)
        s, t = times(per, r5), times(per, u5)
        put(band, at + 40, s)
        put(band, at + 88, t)
        for left, own in ((f0, g0), (f1, g1), (f2, g2), (f3, g3), (f4, g4), (f5, g5)):
            if not abs(left) < np.inf:
                return 2
            if left <= SMALLEST_PIVOT * own:
                return 1
    return 0


@ordered_kernel
def onward(band: Array, load: Array, left: Array) -> None:
    """Write into ``left`` what the loads come to when eliminated from first node to last."""
    b0 = b1 = b2 = b3 = b4 = b5 = full(0.0)
    for k in range(left.shape[0] // PART):
        at, w = NODE * k, PART * k
        a0, a1, a2 = row(load, w), row(load, w + 8), row(load, w + 16)
        a3, a4, a5 = row(load, w + 24), row(load, w + 32), row(load, w + 40)
        if k > 0:
            v = at - PART
            for b in (b0, b1, b2, b3, b4, b5):
                a0, a1 = less(a0, each(band, v), b), less(a1, each(band, v + 1), b)
                a2, a3 = less(a2, each(band, v + 2), b), less(a3, each(band, v + 3), b)
                a4, a5 = less(a4, each(band, v + 4), b), less(a5, each(band, v + 5), b)
                v += 8
        a1 = less(a1, each(band, at + 1), a0)
        a2, a3 = less(a2, each(band, at + 2), a0), less(a3, each(band, at + 3), a0)
        a4, a5 = less(a4, each(band, at + 4), a0), less(a5, each(band, at + 5), a0)
        a2, a3 = less(a2, each(band, at + 10), a1), less(a3, each(band, at + 11), a1)
        a4, a5 = less(a4, each(band, at + 12), a1), less(a5, each(band, at + 13), a1)
        a3, a4 = less(a3, each(band, at + 19), a2), less(a4, each(band, at + 20), a2)
        a5 = less(a5, each(band, at + 21), a2)
        a4, a5 = less(a4, each(band, at + 28), a3), less(a5, each(band, at + 29), a3)
        a5 = less(a5, each(band, at + 37), a4)
        b0, b1, b2, b3, b4, b5 = a0, a1, a2, a3, a4, a5
        for a in (a0, a1, a2, a3, a4, a5):
            put(left, w, a)
            w += 8


@ordered_kernel
def back(
    band: Array,
    inverse: Array,
    stiff: Array,
    tale: Array,
    load: Array,
    left: Array,
    moved: Array,
    action: Array,
    again: bool,
) -> tuple[float, float]:
    """Solve for displacements from last node to first, and for what the beams then carry.

    The first time ``left`` becomes what loads and beams leave at each node. ``again`` adds the
    answer to the one before. Gives the sums of squares of displacements and of this answer.
    """
    b0 = b1 = b2 = b3 = b4 = b5 = full(0.0)
    c0 = c1 = c2 = c3 = c4 = c5 = full(0.0)  # first end of the beam beyond
    size = change = full(0.0)
    last = inverse.shape[0] // 8 - 1
    for k in range(last, -1, -1):
        at, w, d = NODE * k, PART * k, 8 * k
        a0, a1 = (
            times(each(inverse, d), row(left, w)),
            times(each(inverse, d + 1), row(left, w + 8)),
        )
        a2 = times(each(inverse, d + 2), row(left, w + 16))
        a3 = times(each(inverse, d + 3), row(left, w + 24))
        a4 = times(each(inverse, d + 4), row(left, w + 32))
        a5 = times(each(inverse, d + 5), row(left, w + 40))
        v = at + PART
        for b in (b0, b1, b2, b3, b4, b5):
            a0, a1 = less(a0, each(band, v), b), less(a1, each(band, v + 8), b)
            a2, a3 = less(a2, each(band, v + 16), b), less(a3, each(band, v + 24), b)
            a4, a5 = less(a4, each(band, v + 32), b), less(a5, each(band, v + 40), b)
            v += 1
        a4, a3 = less(a4, each(band, at + 37), a5), less(a3, each(band, at + 29), a5)
        a2, a1 = less(a2, each(band, at + 21), a5), less(a1, each(band, at + 13), a5)
        a0, a3 = less(a0, each(band, at + 5), a5), less(a3, each(band, at + 28), a4)
        a2, a1 = less(a2, each(band, at + 20), a4), less(a1, each(band, at + 12), a4)
        a0, a2 = less(a0, each(band, at + 4), a4), less(a2, each(band, at + 19), a3)
        a1, a0 = less(a1, each(band, at + 11), a3), less(a0, each(band, at + 3), a3)
        a1, a0 = less(a1, each(band, at + 10), a2), less(a0, each(band, at + 2), a2)
        a0 = less(a0, each(band, at + 1), a1)
        for a in (a0, a1, a2, a3, a4, a5):
            whole = plus(row(moved, w), a) if again else a
            size, change = more(size, whole, whole), more(change, a, a)
            put(moved, w, whole)
            w += 8
        if k < last:
            p, e, w = TALE * k + SPAN, BEAM * k, PART * (2 * k + 1)
            dx, dy, dz = each(tale, p), each(tale, p + 1), each(tale, p + 2)
            # First the difference of near numbers, which is exact, then the small rotation.
            u0 = more(less(minus(b0, a0), a4, dz), a5, dy)
            u1 = more(less(minus(b1, a1), a5, dx), a3, dz)
            u2 = more(less(minus(b2, a2), a3, dy), a4, dx)
            u3, u4, u5 = minus(b3, a3), minus(b4, a4), minus(b5, a5)
            f0 = f1 = f2 = f3 = f4 = f5 = full(0.0)
            if again:
                f0, f1, f2 = row(action, w), row(action, w + 8), row(action, w + 16)
                f3, f4, f5 = row(action, w + 24), row(action, w + 32), row(action, w + 40)
            for u in (u0, u1, u2, u3, u4, u5):
                f0, f1 = more(f0, each(stiff, e), u), more(f1, each(stiff, e + 1), u)
                f2, f3 = more(f2, each(stiff, e + 2), u), more(f3, each(stiff, e + 3), u)
                f4, f5 = more(f4, each(stiff, e + 4), u), more(f5, each(stiff, e + 5), u)
                e += 8
            n3 = less(more(f3, dy, f2), dz, f1)
            n4 = less(more(f4, dz, f0), dx, f2)
            n5 = less(more(f5, dx, f1), dy, f0)
            w -= PART
            for f in (f0, f1, f2, n3, n4, n5, f0, f1, f2, f3, f4, f5):
                put(action, w, f)
                w += 8
            if not again:
                w = PART * (k + 1)
                put(left, w, minus(plus(row(load, w), c0), f0))
                put(left, w + 8, minus(plus(row(load, w + 8), c1), f1))
                put(left, w + 16, minus(plus(row(load, w + 16), c2), f2))
                put(left, w + 24, minus(plus(row(load, w + 24), c3), f3))
                put(left, w + 32, minus(plus(row(load, w + 32), c4), f4))
                put(left, w + 40, minus(plus(row(load, w + 40), c5), f5))
                c0, c1, c2, c3, c4, c5 = f0, f1, f2, n3, n4, n5
        b0, b1, b2, b3, b4, b5 = a0, a1, a2, a3, a4, a5
    if not again:
        w = 0
        for c in (c0, c1, c2, c3, c4, c5):
            put(left, w, plus(row(load, w), c))
            w += 8
    return total(size), total(change)


@ordered_kernel
def total(values: Wide) -> float:
    """Sum of the eight."""
    near = element(values, 0) + element(values, 1) + element(values, 2) + element(values, 3)
    far = element(values, 4) + element(values, 5) + element(values, 6) + element(values, 7)
    return near + far
