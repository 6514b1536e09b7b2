"""Eight numbers at once inside a kernel: one machine vector and a handful of operations.

A compiler left to itself unrolls a loop of eight into scalars; these say "one vector" outright.
On a processor with shorter vectors each becomes two or four. All eight are treated alike, so a
number never depends on its neighbours. Places in an array are counted flat and are not checked.
"""

from collections.abc import Callable
from inspect import Parameter, Signature
from typing import Any, NewType, TypeAlias

import numpy as np
from numba import types
from numba.core import cgutils
from numba.extending import intrinsic, models, register_model
from numpy.typing import NDArray

Array: TypeAlias = NDArray[np.float64]
Loose: TypeAlias = Any  # what numba hands over; it ships no types of its own
Wide = NewType("Wide", object)  # lives only inside compiled code

WIDE = 8
CACHE_LINE = 64  # bytes; a vector across two lines takes twice as long to fetch

_ir: Loose = cgutils.ir  # type: ignore[attr-defined] # numba's half of a pair of libraries
_VECTOR = _ir.VectorType(_ir.DoubleType(), WIDE)
_PLACE = _ir.IntType(32)
_Build = Callable[[Loose, Loose, Loose, Loose], Loose]


class _WideType(types.Type):
    def __init__(self) -> None:
        super().__init__(name="EightFloats")


@register_model(_WideType)
class _WideModel(models.PrimitiveModel):
    def __init__(self, manager: Loose, kind: Loose) -> None:
        super().__init__(manager, kind, _VECTOR)  # type: ignore[no-untyped-call]


_WIDE = _WideType()
_ARRAY = None  # an argument whose type is taken as it comes


def _operation(build: _Build, result: Loose, *takes: Loose) -> Loose:
    """Make an operation for kernels out of what writes its instructions."""

    def definition(_: Loose, *given: Loose) -> Loose:
        kinds = (here if kind is None else kind for here, kind in zip(given, takes, strict=True))
        return result(*kinds), build

    # Numba reads the number of arguments off the signature.
    names = ("typing", *(f"given_{place}" for place in range(len(takes))))
    kind = Parameter.POSITIONAL_OR_KEYWORD
    made: Loose = definition
    made.__signature__ = Signature([Parameter(name, kind) for name in names])
    return intrinsic(made)


def _pointer(context: Loose, builder: Loose, kind: Loose, array: Loose, at: Loose) -> Loose:
    data = context.make_array(kind)(context, builder, array).data
    return builder.gep(data, [at], inbounds=True)


def _fetch(builder: Loose, pointer: Loose) -> Loose:
    return builder.load(builder.bitcast(pointer, _VECTOR.as_pointer()), align=8)


def _write(builder: Loose, pointer: Loose, value: Loose) -> None:
    builder.store(value, builder.bitcast(pointer, _VECTOR.as_pointer()), align=8)


def _pattern(order: list[int]) -> Loose:
    return _ir.Constant(_ir.VectorType(_PLACE, WIDE), [_PLACE(place) for place in order])


def _repeat(builder: Loose, number: Loose) -> Loose:
    empty = _ir.Constant(_VECTOR, _ir.Undefined)
    first = builder.insert_element(empty, number, _PLACE(0))
    return builder.shuffle_vector(first, empty, _pattern([0] * WIDE))


def _build_row(context: Loose, builder: Loose, kinds: Loose, given: Loose) -> Loose:
    return _fetch(builder, _pointer(context, builder, kinds.args[0], *given))


def _build_put(context: Loose, builder: Loose, kinds: Loose, given: Loose) -> Loose:
    array, at, value = given
    _write(builder, _pointer(context, builder, kinds.args[0], array, at), value)
    return context.get_dummy_value()


def _build_each(context: Loose, builder: Loose, kinds: Loose, given: Loose) -> Loose:
    return _repeat(builder, builder.load(_pointer(context, builder, kinds.args[0], *given)))


def _build_transpose(context: Loose, builder: Loose, kinds: Loose, given: Loose) -> Loose:
    source, at, step, into, place, stride = given
    rows = []
    for _ in range(WIDE):
        rows.append(_fetch(builder, _pointer(context, builder, kinds.args[0], source, at)))
        at = builder.add(at, step)
    for half in (4, 2, 1):
        # Of each pair of rows, the parts off the diagonal change places.
        low = [k + (WIDE - half if k & half else 0) for k in range(WIDE)]
        high = [k + (WIDE if k & half else half) for k in range(WIDE)]
        for k in range(WIDE):
            if not k & half:
                pair = rows[k], rows[k + half]
                rows[k] = builder.shuffle_vector(*pair, _pattern(low))
                rows[k + half] = builder.shuffle_vector(*pair, _pattern(high))
    for row_ in rows:
        _write(builder, _pointer(context, builder, kinds.args[3], into, place), row_)
        place = builder.add(place, stride)
    return context.get_dummy_value()


_AT = types.intp
# Eight neighbours in an array, from a place on.
row: Callable[[Array, int], Wide] = _operation(_build_row, _WIDE, _ARRAY, _AT)
# Write eight neighbours.
put: Callable[[Array, int, Wide], None] = _operation(_build_put, types.void, _ARRAY, _AT, _WIDE)
# One number of an array, eight times.
each: Callable[[Array, int], Wide] = _operation(_build_each, _WIDE, _ARRAY, _AT)
# One number, eight times.
full: Callable[[float], Wide] = _operation(
    lambda _, builder, __, given: _repeat(builder, given[0]), _WIDE, types.float64
)
# One of the eight.
element: Callable[[Wide, int], float] = _operation(
    lambda _, builder, __, given: builder.extract_element(*given), types.float64, _WIDE, _AT
)
plus: Callable[[Wide, Wide], Wide] = _operation(
    lambda _, builder, __, given: builder.fadd(*given), _WIDE, _WIDE, _WIDE
)
minus: Callable[[Wide, Wide], Wide] = _operation(
    lambda _, builder, __, given: builder.fsub(*given), _WIDE, _WIDE, _WIDE
)
times: Callable[[Wide, Wide], Wide] = _operation(
    lambda _, builder, __, given: builder.fmul(*given), _WIDE, _WIDE, _WIDE
)
# First plus, and first minus, the product of the other two; rounded once where that is one
# instruction.
more: Callable[[Wide, Wide, Wide], Wide] = _operation(
    lambda _, builder, __, given: builder.fadd(given[0], builder.fmul(given[1], given[2])),
    *[_WIDE] * 4,
)
less: Callable[[Wide, Wide, Wide], Wide] = _operation(
    lambda _, builder, __, given: builder.fsub(given[0], builder.fmul(given[1], given[2])),
    *[_WIDE] * 4,
)
# Copy eight rows of eight, a step apart, as eight columns written a stride apart:
# (source, at, step, into, place, stride).
transpose: Callable[[Array, int, int, Array, int, int], None] = _operation(
    _build_transpose, types.void, _ARRAY, _AT, _AT, _ARRAY, _AT, _AT
)
