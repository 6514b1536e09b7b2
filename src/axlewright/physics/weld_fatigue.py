"""Fatigue of steel details by nominal stress range, and damage of a whole spectrum.

Two editions of one standard stand side by side. They differ for welded details under 71 MPa:
the 2025 knee comes at ten million cycles, the 2005 one at five.
"""

import math

import numpy as np

from axlewright.physics.quantities import Cycles, Pascal, Ratio

KNEE_2005, KNEE_2025_LOW, KNEE_SPLIT = 5e6, 1e7, 71e6  # cycles, cycles, Pa
LAST = 1e8  # cycles at the cut-off
_REFERENCE = 2e6  # cycles at the detail category
_NOUGHT = 800.0  # the exponential of minus this is nought in the machine
_HALF_PASCAL = 0.5  # slack so that a category typed as 71 MPa counts as 71


def endurance(stress_range: Pascal, detail: Pascal, knee: Cycles = KNEE_2005) -> Cycles:
    """Cycles that a detail survives under direct stress of varying range, 2005 edition.

    Parameters
    ----------
    detail
        Detail category: the range survived for two million cycles.

    Returns
    -------
    Cycles
        ``inf`` where the range is below the cut-off.

    Notes
    -----
    A lower bound (75 % confidence of 95 % survival), so a life from it is a cautious one.

    References
    ----------
    en1993-1-9, 7.1

    Examples
    --------
    >>> f"{endurance(80e6, detail=80e6):.0f}"
    '2000000'
    """
    limit = (_REFERENCE / np.asarray(knee)) ** (1 / 3)
    cut_off = limit * (np.asarray(knee) / LAST) ** (1 / 5)
    relative = np.asarray(stress_range) / detail
    with np.errstate(divide="ignore"):
        steep = _REFERENCE * relative**-3.0
        shallow = knee * (relative / limit) ** -5.0
    return np.where(relative < cut_off, np.inf, np.where(relative >= limit, steep, shallow))


def endurance_2025(stress_range: Pascal, detail: Pascal) -> Cycles:
    """Cycles that a welded detail survives, 2025 edition.

    References
    ----------
    en1993-1-9-2025, curves 8.2a and 8.2b
    """
    return endurance(stress_range, detail, knee_2025(detail))


def knee_2025(detail: Pascal) -> Cycles:
    """Cycles where the welded curve of the 2025 edition changes slope.

    References
    ----------
    en1993-1-9-2025, curves 8.2a and 8.2b
    """
    low = np.asarray(detail) < KNEE_SPLIT - _HALF_PASCAL
    return np.where(low, KNEE_2025_LOW, KNEE_2005)


def endured_range(cycles: Cycles, detail: Pascal, knee: Cycles = KNEE_2005) -> Pascal:
    """Stress range survived for a number of cycles; the cut-off beyond a hundred million.

    References
    ----------
    en1993-1-9, 7.1
    """
    cycles, knee = np.asarray(cycles), np.asarray(knee)
    limit = (_REFERENCE / knee) ** (1 / 3)
    steep = (_REFERENCE / np.maximum(cycles, 1.0)) ** (1 / 3)
    shallow = limit * (knee / np.minimum(np.maximum(cycles, 1.0), LAST)) ** (1 / 5)
    return np.where(cycles <= knee, steep, shallow) * detail


def unwelded_endurance_2025(stress_range: Pascal, detail: Pascal) -> Cycles:
    """Cycles that plain metal with a light notch survives, 2025 edition.

    References
    ----------
    en1993-1-9-2025, curve 8.1a: slopes 5 and 9, knee at two million
    """
    relative = np.asarray(stress_range) / detail
    with np.errstate(divide="ignore"):
        cycles = _REFERENCE * np.where(relative >= 1, relative**-5.0, relative**-9.0)
    return np.where(cycles > LAST * (1 + 1e-9), np.inf, cycles)


def shear_endurance(stress_range: Pascal, detail: Pascal) -> Cycles:
    """Cycles that a detail survives under shear stress; one slope of five, then the cut-off.

    References
    ----------
    en1993-1-9, 7.1
    """
    relative = np.asarray(stress_range) / detail
    with np.errstate(divide="ignore"):
        cycles = _REFERENCE * relative**-5.0
    return np.where(relative < (_REFERENCE / LAST) ** (1 / 5), np.inf, cycles)


def damage(counts: Cycles, endured: Cycles) -> Ratio:
    """Share of the life used up by a spectrum, summed over its last axis.

    References
    ----------
    miner1945
    """
    return np.asarray(np.sum(np.asarray(counts) / endured, axis=-1))


def one_slope_exponential_damage(
    largest: Pascal, cycles: Cycles, detail: Pascal, slope: int, at: Cycles = _REFERENCE
) -> Ratio:
    """Damage of a spectrum that is a straight line on a log scale, by one S-N slope.

    Parameters
    ----------
    largest
        Range reached once in ``cycles``; a smaller range s is passed
        ``cycles ** (1 - s / largest)`` times.
    detail, slope, at
        The curve: ``detail`` is survived ``at`` cycles.

    Notes
    -----
    With h = ln(cycles): D = cycles/at * (largest/(h*detail))**m * m!

    References
    ----------
    miner1945, integrated
    """
    scale = np.asarray(largest) / (np.log(cycles) * np.asarray(detail))
    return np.asarray(np.asarray(cycles) / at * scale**slope * float(_gamma_above(slope, 0.0)))


def exponential_damage(
    largest: Pascal, cycles: Cycles, detail: Pascal, knee: Cycles = KNEE_2005
) -> Ratio:
    """Damage of a spectrum that is a straight line on a log scale, by the two-slope curve.

    Notes
    -----
    The integral over the curve with its cut-off, in incomplete gamma functions.

    References
    ----------
    miner1945, integrated; en1993-1-9, 7.1
    """
    limit = (_REFERENCE / np.asarray(knee)) ** (1 / 3)
    cut_off = limit * (np.asarray(knee) / LAST) ** (1 / 5)
    scale = np.asarray(largest) / (np.log(cycles) * np.asarray(detail))
    with np.errstate(divide="ignore"):
        at_knee, at_cut_off = limit / scale, cut_off / scale
    steep = scale**3 / _REFERENCE * _gamma_above(3, at_knee)
    between = np.asarray(_gamma_above(5, at_cut_off)) - _gamma_above(5, at_knee)
    return np.asarray(np.asarray(cycles) * (steep + (scale / limit) ** 5 / knee * between))


def _gamma_above(order: int, start: Ratio) -> Ratio:
    """Upper incomplete gamma of ``order + 1``: order! * exp(-x) * sum of x^k/k!."""
    x = np.minimum(start, _NOUGHT)
    total = 1.0 + x / order
    for k in range(order - 1, 0, -1):
        total = 1.0 + x / k * total
    return np.asarray(math.factorial(order) * np.exp(-x) * total)


def relieved_range(highest: Pascal, lowest: Pascal) -> Pascal:
    """Range that counts in unwelded or stress-relieved metal: 60 % of its compressive part.

    References
    ----------
    en1993-1-9, 7.2.1 (memory)
    """
    pull = np.maximum(highest, 0.0) - np.maximum(lowest, 0.0)
    push = np.minimum(highest, 0.0) - np.minimum(lowest, 0.0)
    return pull + 0.6 * push
