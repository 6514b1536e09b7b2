"""Money, shares and spans as they are said aloud: never more digits than are known."""

import numpy as np
from numpy.typing import NDArray

from axlewright.rig import Column
from axlewright.tables import consequences


def money(value: float, currency: str) -> str:
    """An amount to two digits, its currency before it."""
    return f"{currency} {_rounded(value):,.0f}"


def money_span(low: float, high: float, currency: str) -> str:
    """Two amounts, the currency once."""
    ends = [f"{_rounded(value):,.0f}" for value in (low, high)]
    return f"{currency} {ends[0]}" if ends[0] == ends[1] else f"{currency} {ends[0]} to {ends[1]}"


def about(value: float) -> str:
    """A number to two digits at most, one below one."""
    return f"{float(f'{value:.2g}' if value >= 1.0 else f'{value:.1f}'):g}"


def mean(values: Column | NDArray[np.bool_]) -> float:
    """Average over the draws."""
    return float(np.mean(values))


def band_of(values: Column) -> tuple[float, float]:
    """Where nine of ten of the values lie."""
    low, high = np.quantile(values, [0.05, 0.95])
    return float(low), float(high)


def share_of_ten(share: float) -> str:
    """A share as so many of ten, or fewer than one."""
    tenths = round(10.0 * share)
    if tenths == 0:
        return "fewer than 1 of 10" if share > 0.0 else "none of 10"
    return f"{tenths} of 10"


def spoken(kind: str) -> str:
    """Key of the consequences table for a kind of part."""
    return kind if kind in consequences() else f"{kind}_left"


def _rounded(value: float) -> float:
    rounded = float(f"{value:.2g}")
    return rounded if abs(rounded) >= 1.0 else 0.0
