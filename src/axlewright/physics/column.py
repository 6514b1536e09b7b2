"""Rods and tubes pushed end to end: how much they carry, straight or bowed.

``end_factor`` is the effective length over the length: 1 for ball joints at both ends.
"""

import numpy as np

from axlewright.physics.quantities import Metre, Metre2, Metre4, Newton, Pascal, Ratio

_STEPS = 80  # bisection steps: past double precision


def area(outer: Metre, inner: Metre = 0.0) -> Metre2:
    """Area of a round section.

    References
    ----------
    geometry
    """
    return np.pi / 4 * (np.square(outer) - np.square(inner))


def second_moment(outer: Metre, inner: Metre = 0.0) -> Metre4:
    """Second moment of area of a round section about a diameter.

    References
    ----------
    geometry
    """
    return np.asarray(np.pi / 64 * (np.asarray(outer) ** 4 - np.asarray(inner) ** 4))


def slenderness(length: Metre, outer: Metre, inner: Metre = 0.0, end_factor: Ratio = 1.0) -> Ratio:
    """Effective length over radius of gyration.

    References
    ----------
    budynas9, ch. 4
    """
    gyration = np.sqrt(np.square(outer) + np.square(inner)) / 4
    return np.asarray(np.asarray(end_factor) * length / gyration)


def euler_load(
    length: Metre, outer: Metre, inner: Metre, modulus: Pascal, end_factor: Ratio = 1.0
) -> Newton:
    """Load at which a long straight rod bows out.

    References
    ----------
    budynas9, ch. 4
    """
    effective = np.asarray(end_factor) * length
    return np.pi**2 * np.asarray(modulus) * second_moment(outer, inner) / effective**2


def johnson_load(
    length: Metre,
    outer: Metre,
    inner: Metre,
    yield_stress: Pascal,
    modulus: Pascal,
    end_factor: Ratio = 1.0,
) -> Newton:
    """Load at which a short straight rod fails, by the parabola that meets yield at no length.

    References
    ----------
    budynas9, ch. 4
    """
    squash = np.asarray(yield_stress) * area(outer, inner)
    euler = np.asarray(euler_load(length, outer, inner, modulus, end_factor))
    return np.asarray(squash * (1 - squash / (4 * euler)))


def critical_load(
    length: Metre,
    outer: Metre,
    inner: Metre,
    yield_stress: Pascal,
    modulus: Pascal,
    end_factor: Ratio = 1.0,
) -> Newton:
    """Load at which a straight rod fails: Johnson when short, Euler when long.

    Notes
    -----
    They meet, with one slope, at half of the squash load.

    References
    ----------
    budynas9, ch. 4
    """
    euler = np.asarray(euler_load(length, outer, inner, modulus, end_factor))
    squash = np.asarray(yield_stress) * area(outer, inner)
    parabola = johnson_load(length, outer, inner, yield_stress, modulus, end_factor)
    return np.where(euler < squash / 2, euler, parabola)


def bowed_load(
    length: Metre,
    outer: Metre,
    inner: Metre,
    yield_stress: Pascal,
    modulus: Pascal,
    bow: Metre,
    end_factor: Ratio = 1.0,
) -> Newton:
    """Push at which a rod that is already bowed starts to yield (Perry-Robertson).

    Parameters
    ----------
    bow
        Out of straight at mid-length, with no load.

    References
    ----------
    timoshenko-stability, ch. 1
    """
    section, euler = area(outer, inner), euler_load(length, outer, inner, modulus, end_factor)
    squash = np.asarray(yield_stress) * section
    eta = np.abs(bow) * np.asarray(outer) / 2 * section / second_moment(outer, inner)
    total = squash + (1 + eta) * euler
    return np.asarray(2 * squash * euler / (total + np.sqrt(total**2 - 4 * squash * euler)))


def eccentric_load(
    length: Metre,
    outer: Metre,
    inner: Metre,
    yield_stress: Pascal,
    modulus: Pascal,
    offset: Metre,
    end_factor: Ratio = 1.0,
) -> Newton:
    """Push at which a rod loaded off its centre line starts to yield (secant formula).

    References
    ----------
    budynas9, ch. 4
    """
    section, euler = area(outer, inner), euler_load(length, outer, inner, modulus, end_factor)
    squash = np.asarray(yield_stress) * section
    ratio = np.abs(offset) * np.asarray(outer) / 2 * section / second_moment(outer, inner)
    low, high = np.zeros(np.broadcast(squash, euler, ratio).shape), np.minimum(squash, euler)
    for _ in range(_STEPS):
        load = (low + high) / 2
        bend = ratio / np.cos(np.pi / 2 * np.sqrt(np.clip(load / euler, 0.0, 1 - 1e-15)))
        over = load * (1 + bend) > squash
        low, high = np.where(over, low, load), np.where(over, load, high)
    return (low + high) / 2


def bowed_deflection(load: Newton, euler: Newton, bow: Metre) -> Metre:
    """Bow under load: grows without end as the load nears Euler's.

    References
    ----------
    timoshenko-stability, ch. 1
    """
    ratio = np.asarray(load) / euler
    with np.errstate(divide="ignore"):
        return np.where(ratio < 1, np.asarray(bow) / (1 - np.minimum(ratio, 1.0)), np.inf)
