"""One node of a chain's block-tridiagonal matrix: its steps, on six rows of eight.

Written out by hand so that all of it stays in the machine's vector registers: a third of the
time of loops.
"""

from typing import TypeAlias

from axlewright.physics._wide import (
    Array,
    Wide,
    each,
    element,
    full,
    less,
    put,
    row,
    times,
)
from axlewright.physics.compiled import inner_kernel

Six: TypeAlias = tuple[Wide, Wide, Wide, Wide, Wide, Wide]
Numbers: TypeAlias = tuple[float, float, float, float, float, float]

NODE = 96  # numbers of a node in ``band``
PART = 48  # numbers of a node, or of a beam's end, where cases stand side by side


@inner_kernel
def six(values: Array, at: int, step: int) -> Six:
    """Six rows, a step apart."""
    a0, a1, a2 = row(values, at), row(values, at + step), row(values, at + 2 * step)
    at += 3 * step
    return a0, a1, a2, row(values, at), row(values, at + step), row(values, at + 2 * step)


@inner_kernel
def put_six(values: Array, at: int, step: int, rows: Six) -> None:
    for each_row in rows:
        put(values, at, each_row)
        at += step


@inner_kernel
def less_rows(band: Array, v: int, rows: Six, beyond: Six) -> Six:
    """Rows less the transposed block at v times the rows of the node beyond."""
    a0, a1, a2, a3, a4, a5 = rows
    for b in beyond:
        a0, a1 = less(a0, each(band, v), b), less(a1, each(band, v + 1), b)
        a2, a3 = less(a2, each(band, v + 2), b), less(a3, each(band, v + 3), b)
        a4, a5 = less(a4, each(band, v + 4), b), less(a5, each(band, v + 5), b)
        v += 8
    return a0, a1, a2, a3, a4, a5


@inner_kernel
def less_columns(band: Array, v: int, rows: Six, beyond: Six) -> Six:
    """Rows less the block at v times the rows of the node beyond."""
    a0, a1, a2, a3, a4, a5 = rows
    for b in beyond:
        a0, a1 = less(a0, each(band, v), b), less(a1, each(band, v + 8), b)
        a2, a3 = less(a2, each(band, v + 16), b), less(a3, each(band, v + 24), b)
        a4, a5 = less(a4, each(band, v + 32), b), less(a5, each(band, v + 40), b)
        v += 1
    return a0, a1, a2, a3, a4, a5


@inner_kernel
def eliminate(band: Array, inverse: Array, at: int, d: int, rows: Six) -> tuple[Six, Numbers]:
    """Write L' and V of a node over its blocks, 1/D beside; give D V and the pivots.

    Only what lies above the diagonal is right, and used.
    """
    r0, r1, r2, r3, r4, r5 = rows
    u0, u1, u2, u3, u4, u5 = six(band, at + PART, 8)
    f0 = element(r0, 0)
    inverse[d] = 1.0 / f0
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
    inverse[d + 1] = 1.0 / f1
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
    inverse[d + 2] = 1.0 / f2
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
    inverse[d + 3] = 1.0 / f3
    per = full(1.0 / f3)
    s, t = times(per, r3), times(per, u3)
    put(band, at + 24, s)
    put(band, at + 72, t)
    e = full(element(r3, 4))
    r4, u4 = less(r4, e, s), less(u4, e, t)
    e = full(element(r3, 5))
    r5, u5 = less(r5, e, s), less(u5, e, t)
    f4 = element(r4, 4)
    inverse[d + 4] = 1.0 / f4
    per = full(1.0 / f4)
    s, t = times(per, r4), times(per, u4)
    put(band, at + 32, s)
    put(band, at + 80, t)
    e = full(element(r4, 5))
    r5, u5 = less(r5, e, s), less(u5, e, t)
    f5 = element(r5, 5)
    inverse[d + 5] = 1.0 / f5
    per = full(1.0 / f5)
    s, t = times(per, r5), times(per, u5)
    put(band, at + 40, s)
    put(band, at + 88, t)
    return (u0, u1, u2, u3, u4, u5), (f0, f1, f2, f3, f4, f5)


@inner_kernel
def descend(band: Array, at: int, rows: Six) -> Six:
    """Solve with L, first row to last."""
    a0, a1, a2, a3, a4, a5 = rows
    a1 = less(a1, each(band, at + 1), a0)
    a2, a3 = less(a2, each(band, at + 2), a0), less(a3, each(band, at + 3), a0)
    a4, a5 = less(a4, each(band, at + 4), a0), less(a5, each(band, at + 5), a0)
    a2, a3 = less(a2, each(band, at + 10), a1), less(a3, each(band, at + 11), a1)
    a4, a5 = less(a4, each(band, at + 12), a1), less(a5, each(band, at + 13), a1)
    a3, a4 = less(a3, each(band, at + 19), a2), less(a4, each(band, at + 20), a2)
    a5 = less(a5, each(band, at + 21), a2)
    a4, a5 = less(a4, each(band, at + 28), a3), less(a5, each(band, at + 29), a3)
    a5 = less(a5, each(band, at + 37), a4)
    return a0, a1, a2, a3, a4, a5


@inner_kernel
def ascend(band: Array, at: int, rows: Six) -> Six:
    """Solve with L', last row to first."""
    a0, a1, a2, a3, a4, a5 = rows
    a4, a3 = less(a4, each(band, at + 37), a5), less(a3, each(band, at + 29), a5)
    a2, a1 = less(a2, each(band, at + 21), a5), less(a1, each(band, at + 13), a5)
    a0, a3 = less(a0, each(band, at + 5), a5), less(a3, each(band, at + 28), a4)
    a2, a1 = less(a2, each(band, at + 20), a4), less(a1, each(band, at + 12), a4)
    a0, a2 = less(a0, each(band, at + 4), a4), less(a2, each(band, at + 19), a3)
    a1, a0 = less(a1, each(band, at + 11), a3), less(a0, each(band, at + 3), a3)
    a1, a0 = less(a1, each(band, at + 10), a2), less(a0, each(band, at + 2), a2)
    a0 = less(a0, each(band, at + 1), a1)
    return a0, a1, a2, a3, a4, a5


@inner_kernel
def scaled(inverse: Array, d: int, rows: Six) -> Six:
    a0, a1, a2, a3, a4, a5 = rows
    return (
        times(each(inverse, d), a0),
        times(each(inverse, d + 1), a1),
        times(each(inverse, d + 2), a2),
        times(each(inverse, d + 3), a3),
        times(each(inverse, d + 4), a4),
        times(each(inverse, d + 5), a5),
    )
