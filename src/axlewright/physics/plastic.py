"""A round tube bent past yield: its moment, the bend it keeps, and what that does to the wheels.

The material is elastic, then perfectly plastic (no hardening), plane sections stay plane, and
the tube neither ovals nor buckles. Unloading is elastic, which holds up to twice the moment at
first yield, so always. ``outer`` and ``inner`` are diameters; arguments broadcast. At the plastic
moment the bend has no bound: ``inf``.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from axlewright.physics import section
from axlewright.physics.quantities import Metre, NewtonMetre, Pascal, PerMetre

HALVINGS = 60  # of an interval between 0 and 1: to the last digit
POINTS, WEIGHTS = np.polynomial.legendre.leggauss(24)

KEPT, BEYOND_PLASTIC, NOT_FINITE = 0, 1, 2


def yield_moment(outer: Metre, inner: Metre, yield_stress: Pascal) -> NewtonMetre:
    """Moment at which the outermost fibre first yields."""
    return np.asarray(section.elastic_modulus(outer, inner) * np.asarray(yield_stress))


def plastic_moment(outer: Metre, inner: Metre, yield_stress: Pascal) -> NewtonMetre:
    """Moment at which the whole section has yielded; the tube carries no more."""
    return np.asarray(section.plastic_modulus(outer, inner) * np.asarray(yield_stress))


def yield_curvature(outer: Metre, yield_stress: Pascal, modulus: Pascal) -> PerMetre:
    """Curvature at which the outermost fibre first yields."""
    return np.asarray(2.0 * np.asarray(yield_stress) / (np.asarray(modulus) * np.asarray(outer)))


def moment_at_curvature(
    curvature: PerMetre, outer: Metre, inner: Metre, yield_stress: Pascal, modulus: Pascal
) -> NewtonMetre:
    """Moment that holds a tube at a curvature, with the sign of the curvature.

    Notes
    -----
    The tube is a solid bar less the bar of its bore. With the elastic core reaching to
    c = yield strain / curvature and sin a = c / R, a bar carries
    yield R^3 ((a/2 - sin 4a / 8) / sin a + 4/3 cos^3 a).

    References
    ----------
    beer-mechanics, ch. 4 (elastoplastic bending); integral done here
    """
    bend = np.asarray(curvature, dtype=np.float64)
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        core = np.asarray(yield_stress) / (np.asarray(modulus) * np.abs(bend))
        bars = _bar(core, 0.5 * np.asarray(outer)) - _bar(core, 0.5 * np.asarray(inner))
    return np.asarray(np.sign(bend) * bars * yield_stress)


def curvature_at_moment(
    moment: NewtonMetre, outer: Metre, inner: Metre, yield_stress: Pascal, modulus: Pascal
) -> PerMetre:
    """Curvature of a tube under a moment that has not been larger before.

    ``inf``, with the sign of the moment, from the plastic moment on.
    """
    first = yield_curvature(outer, yield_stress, modulus)
    share = np.abs(np.asarray(moment)) / yield_moment(outer, inner, yield_stress)

    def too_straight(core: NDArray[np.float64]) -> NDArray[np.bool_]:
        return np.asarray(_relative_moment(core, outer, inner) < share)

    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        core = _halved(too_straight, np.broadcast_shapes(np.shape(share), np.shape(first)))
        beyond = share >= section.shape_factor(outer, inner)
        relative = np.where(share <= 1.0, share, np.where(beyond, np.inf, 1.0 / core))
        relative = np.where(np.isfinite(share), relative, np.abs(share))
        return np.asarray(np.sign(moment) * relative * first)


def residual_curvature(
    moment: NewtonMetre, outer: Metre, inner: Metre, yield_stress: Pascal, modulus: Pascal
) -> PerMetre:
    """Curvature that a tube keeps once a moment has been taken off it.

    References
    ----------
    beer-mechanics, ch. 4 (residual stresses by elastic unloading)
    """
    loaded = curvature_at_moment(moment, outer, inner, yield_stress, modulus)
    sprung = np.asarray(moment) / (np.asarray(modulus) * section.second_moment(outer, inner))
    elastic = np.abs(np.asarray(moment)) <= yield_moment(outer, inner, yield_stress)
    return np.asarray(np.where(elastic, 0.0, loaded - sprung))


def moment_for_residual(
    residual: PerMetre, outer: Metre, inner: Metre, yield_stress: Pascal, modulus: Pascal
) -> NewtonMetre:
    """Moment that a tube must have seen to keep a curvature, with its sign.

    A curvature of zero gives the moment at first yield: the largest that leaves no trace.
    """
    first = yield_curvature(outer, yield_stress, modulus)
    share = np.abs(np.asarray(residual)) / first

    def too_straight(core: NDArray[np.float64]) -> NDArray[np.bool_]:
        return np.asarray(1.0 / core - _relative_moment(core, outer, inner) < share)

    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        shape = np.broadcast_shapes(np.shape(share), np.shape(inner))
        core = _halved(too_straight, shape)
        relative = _relative_moment(core, outer, inner)
        relative = np.where(np.isnan(share), np.nan, relative)
    sign = np.where(np.signbit(residual), -1.0, 1.0)
    return np.asarray(sign * relative * yield_moment(outer, inner, yield_stress))


@dataclass(frozen=True, slots=True)
class PermanentSet:
    """What an axle keeps of a bend, against the straight line through its two ends.

    ``rotation`` (..., S, 2), rad: turn about x and about z at each station. ``offset``
    (..., S, 2), m: forward and up. ``camber`` and ``toe`` (..., 2), rad: at the first (right) and
    the last (left) station, tops outboard and fronts inboard positive. ``status`` (...): KEPT,
    BEYOND_PLASTIC (the answer is infinite or NaN) or NOT_FINITE.
    """

    rotation: NDArray[np.float64]
    offset: NDArray[np.float64]
    camber: NDArray[np.float64]
    toe: NDArray[np.float64]
    status: NDArray[np.int64]


def permanent_set(
    stations: ArrayLike,
    moments: ArrayLike,
    outer: ArrayLike,
    inner: ArrayLike,
    yield_stress: ArrayLike,
    modulus: ArrayLike,
) -> PermanentSet:
    """Rotation and offset that a stepped tube keeps along its length after bending.

    Parameters
    ----------
    stations
        (..., S), m: places from right to left, rising.
    moments
        (..., S, 2), N m: global Mx and Mz on the face that looks left (the chain's ``face``),
        straight between stations; or (..., S-1, 2, 2) with both ends of each length apart,
        where moments jump at stations.
    outer, inner, yield_stress, modulus
        (..., S-1), one for each length between stations.

    Notes
    -----
    A round tube bends about the axis of the resultant moment. Each length is split where it
    starts to yield, and the yielded parts are integrated by Gauss points. Moments of one case act
    together once; direct force and torsion do not help to yield the tube here.

    References
    ----------
    residual curvature as ``residual_curvature``; integration by beam theory
    """
    place = np.asarray(stations, dtype=np.float64)
    given = np.asarray(moments, dtype=np.float64)
    if given.shape[-2:] == (2, 2) and given.shape[-3] == place.shape[-1] - 1:
        begin, finish = given[..., 0, :], given[..., 1, :]
    else:
        begin, finish = given[..., :-1, :], given[..., 1:, :]
    length = np.diff(place, axis=-1)
    tube = tuple(np.asarray(each, dtype=np.float64) for each in (outer, inner, yield_stress))
    stiff = np.asarray(modulus, dtype=np.float64)
    share, weight = _yielded_points(begin, finish, yield_moment(*tube))
    acting = begin[..., None, :] + share[..., None] * (finish - begin)[..., None, :]
    size = np.sqrt(np.sum(acting**2, axis=-1))
    bend = residual_curvature(size, *(each[..., None] for each in (*tube, stiff)))
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        kept = np.where(size > 0.0, bend / size, 0.0)[..., None] * acting
        turn = np.sum(weight[..., None] * kept, axis=-2) * length[..., None]
        lever = (weight * (1.0 - share))[..., None] * kept
        shift = np.sum(lever, axis=-2) * length[..., None] ** 2
        rotation = _running_sum(turn)
        rise = rotation[..., :-1, :] * length[..., None] + shift
        moved = _running_sum(rise)
        span = (place[..., -1] - place[..., 0])[..., None]
        slope = moved[..., -1, :] / span
        along = (place - place[..., :1])[..., None]
        rotation = rotation - slope[..., None, :]
        moved = moved - slope[..., None, :] * along
    # A turn about x lifts what lies to the left; a turn about z takes it backward.
    offset = np.stack([-moved[..., 1], moved[..., 0]], axis=-1)
    outward = np.array([1.0, -1.0])
    most = np.max(size / np.asarray(plastic_moment(*tube))[..., None], axis=(-1, -2))
    status = np.where(most >= 1.0, BEYOND_PLASTIC, KEPT)
    status = np.where(np.isfinite(most), status, NOT_FINITE)
    return PermanentSet(
        rotation=rotation,
        offset=offset,
        camber=rotation[..., [0, -1], 0] * outward,
        toe=rotation[..., [0, -1], 1] * outward,
        status=status,
    )


def _yielded_points(
    begin: NDArray[np.float64], finish: NDArray[np.float64], limit: NewtonMetre
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Gauss points, as shares of each length, and weights, in its two yielded parts.

    The square of a resultant that changes linearly is a parabola, open upward: what has not
    yielded lies between its two crossings of the limit, about its lowest point.
    """
    change = finish - begin
    square = np.sum(change**2, axis=-1)
    half = np.sum(begin * change, axis=-1)
    rest = np.sum(begin**2, axis=-1) - np.asarray(limit) ** 2
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        lowest = np.where(square > 0.0, -half / square, 0.5)
        reach = np.sqrt(np.maximum(half**2 - square * rest, 0.0)) / square
        reach = np.where(square > 0.0, reach, 0.0)
    first = np.clip(lowest - reach, 0.0, 1.0)[..., None]
    second = np.clip(lowest + reach, 0.0, 1.0)[..., None]
    unit, part = 0.5 * (1.0 + POINTS), 0.5 * WEIGHTS
    share = np.concatenate([first * unit, second + (1.0 - second) * unit], axis=-1)
    weight = np.concatenate([first * part, (1.0 - second) * part], axis=-1)
    return share, weight


def _running_sum(steps: NDArray[np.float64]) -> NDArray[np.float64]:
    """Sum along stations, from zero at the first."""
    return np.concatenate([np.zeros_like(steps[..., :1, :]), np.cumsum(steps, axis=-2)], axis=-2)


def _bar(core: ArrayLike, radius: Metre) -> NDArray[np.float64]:
    """Moment over yield stress of a solid bar whose elastic core reaches to ``core``, m3."""
    deep = np.asarray(core) / radius
    angle = np.arcsin(np.minimum(deep, 1.0))
    rise = np.sin(angle)
    inside = np.where(rise > 0.0, (0.5 * angle - np.sin(4.0 * angle) / 8.0) / rise, 0.0)
    bent = inside + 4.0 / 3.0 * np.cos(angle) ** 3
    size = np.asarray(radius) ** 3 * np.where(deep >= 1.0, 0.25 * np.pi / deep, bent)
    return np.asarray(np.where(np.asarray(radius) > 0.0, size, 0.0))


def _relative_moment(core: NDArray[np.float64], outer: Metre, inner: Metre) -> NDArray[np.float64]:
    """Moment over that at first yield, where the elastic core is a share of the radius."""
    radius = 0.5 * np.asarray(outer)
    bars = _bar(core * radius, radius) - _bar(core * radius, 0.5 * np.asarray(inner))
    return np.asarray(bars / section.elastic_modulus(outer, inner))


def _halved(
    too_straight: Callable[[NDArray[np.float64]], NDArray[np.bool_]], shape: tuple[int, ...]
) -> NDArray[np.float64]:
    """Share of the radius that is still elastic, by halving between nothing and all."""
    low, high = np.zeros(shape), np.ones(shape)
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        smaller = too_straight(middle)
        low, high = np.where(smaller, low, middle), np.where(smaller, middle, high)
    return 0.5 * (low + high)
