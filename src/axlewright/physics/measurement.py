"""What a reading is worth: combined uncertainty, and a verdict that allows for it.

Everything is in the reading's own unit.
"""

from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

NINETY = 1.6448536269514722  # standard deviations to the 95 % point of a normal: nist-handbook

Array: TypeAlias = NDArray[np.float64]

WITHIN, OUT, CANNOT_TELL = 0, 1, 2


class Uncertainty(NamedTuple):
    """Mean, its standard uncertainty, and its effective degrees of freedom; each (...)."""

    mean: Array
    standard: Array
    freedom: Array


def combined_uncertainty(
    readings: ArrayLike,
    half_width: ArrayLike = (),
    spread: ArrayLike = (),
    freedom: ArrayLike | None = None,
    pooled: float = 0.0,
) -> Uncertainty:
    """Mean of repeated readings and its uncertainty.

    Parameters
    ----------
    readings
        (..., repeats).
    half_width
        (k,): half the width of each rectangular doubt: resolution, a stated error limit.
    spread
        (m,): standard uncertainty of each doubt known as such, an operator's or a certificate's.
    freedom
        (m,): degrees of freedom of ``spread``; left out, they are certain.
    pooled
        Standard deviation of one reading from past work, used where there are too few repeats.

    Notes
    -----
    The scatter of the mean is s/sqrt(n) with n - 1 degrees of freedom; a single reading, or a
    scatter below ``pooled``, takes the pooled one. Effective degrees of freedom by the
    Welch-Satterthwaite formula.

    References
    ----------
    jcgm100, 4.2, 4.3, 5.1, G.4
    """
    values = np.asarray(readings, dtype=np.float64)
    count = values.shape[-1]
    mean = np.mean(values, axis=-1)
    scatter = np.std(values, axis=-1, ddof=1) if count > 1 else np.zeros(mean.shape)
    trusted = scatter >= pooled if count > 1 else np.zeros(mean.shape, dtype=bool)
    own = np.where(trusted, scatter, pooled) / np.sqrt(count)
    boxes = np.asarray(half_width, dtype=np.float64).reshape(-1) / np.sqrt(3.0)
    known = np.asarray(spread, dtype=np.float64).reshape(-1)
    dof = np.full(known.shape, np.inf) if freedom is None else np.asarray(freedom, dtype=np.float64)
    total = np.sqrt(own**2 + np.sum(boxes**2) + np.sum(known**2))
    lost = np.sum(known**4 / dof) + np.where(trusted, own**4 / max(count - 1, 1), 0.0)
    with np.errstate(divide="ignore", invalid="ignore"):
        effective = np.where(lost > 0.0, total**4 / lost, np.inf)
    return Uncertainty(np.asarray(mean), np.asarray(total), np.asarray(effective))


def coverage_factor(freedom: ArrayLike, share: float = 0.95) -> Array:
    """Factor on a standard uncertainty for an interval that covers a share.

    References
    ----------
    jcgm100, G.3: Student's t
    """
    from scipy.special import stdtrit

    return np.asarray(stdtrit(np.asarray(freedom, dtype=np.float64), 0.5 * (1.0 + share)))


def chance_within(
    mean: ArrayLike, standard: ArrayLike, low: ArrayLike = -np.inf, high: ArrayLike = np.inf
) -> Array:
    """Chance that the true value lies within limits, for normal doubt and no prior knowledge.

    References
    ----------
    jcgm106, 7.2 to 7.4
    """
    from scipy.special import ndtr

    middle, doubt = np.asarray(mean, dtype=np.float64), np.asarray(standard, dtype=np.float64)
    with np.errstate(divide="ignore", invalid="ignore"):
        below = ndtr((np.asarray(high, dtype=np.float64) - middle) / doubt)
        under = ndtr((np.asarray(low, dtype=np.float64) - middle) / doubt)
    return np.asarray(below - under)


def guarded_verdict(
    mean: ArrayLike,
    standard: ArrayLike,
    low: ArrayLike = -np.inf,
    high: ArrayLike = np.inf,
    risk: float = 0.05,
) -> NDArray[np.int64]:
    """WITHIN or OUT where the chance of being wrong is at most ``risk``, else CANNOT_TELL.

    Notes
    -----
    The guard band stands on both sides of each limit. Whoever judges a part that steers, stops or
    holds a wheel takes CANNOT_TELL as a rejection.

    References
    ----------
    jcgm106, 8.3: guard bands; iso14253-1
    """
    inside = chance_within(mean, standard, low, high)
    return np.where(inside >= 1.0 - risk, WITHIN, np.where(inside <= risk, OUT, CANNOT_TELL))


def repeats_to_tell(
    mean: ArrayLike,
    scatter: ArrayLike,
    fixed: ArrayLike,
    low: ArrayLike = -np.inf,
    high: ArrayLike = np.inf,
    risk: float = 0.05,
) -> Array:
    """Number of readings that would settle a verdict if the mean stays; inf where none would.

    Parameters
    ----------
    scatter
        Standard deviation of one reading.
    fixed
        Standard uncertainty that more readings do not lessen: the instrument's.

    References
    ----------
    jcgm100, 4.2.3; jcgm106, 8.3
    """
    from scipy.special import ndtri

    middle = np.asarray(mean, dtype=np.float64)
    room = np.minimum(
        np.abs(middle - np.asarray(low, dtype=np.float64)),
        np.abs(np.asarray(high, dtype=np.float64) - middle),
    )
    allowed = (room / ndtri(1.0 - risk)) ** 2 - np.asarray(fixed, dtype=np.float64) ** 2
    with np.errstate(divide="ignore", invalid="ignore"):
        count = np.ceil(np.asarray(scatter, dtype=np.float64) ** 2 / allowed)
    return np.where(allowed > 0.0, np.maximum(count, 1.0), np.inf)
