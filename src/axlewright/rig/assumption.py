"""What stands in for an answer that nobody gave: a middle, a band and where they come from."""

from collections.abc import Callable, Container, Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.measurement import NINETY

Column: TypeAlias = NDArray[np.float64]
Columns: TypeAlias = Mapping[str, Column]
Words: TypeAlias = Mapping[str, str]
Family: TypeAlias = Literal["lognormal", "normal", "uniform"]

SIDES = ("left", "right")


def always(_: Words) -> bool:
    """Hold for every rig."""
    return True


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """One quantity that is assumed where it is not given.

    ``spread`` bounds 90 % of what is met: a factor (lognormal), half the band in SI (normal), or
    half the whole range in SI (uniform). ``centre`` may look at quantities already settled.
    ``beside`` names a quantity without which this one means nothing, such as a truss's height.
    """

    quantity: str
    label: str
    kind: str
    centre: float | Callable[[Columns, Words], Column | float]
    spread: float
    source: str
    family: Family = "lognormal"
    applies: Callable[[Words], bool] = always
    beside: str = ""

    def matters(self, words: Words, given: Container[str]) -> bool:
        """Tell whether a rig with these words and given quantities has the thing at all."""
        return self.applies(words) and (not self.beside or self.beside in given)

    def values(self, settled: Columns, words: Words, score: Column) -> Column:
        """Give the quantity for standard normal scores, in SI; shape as ``score``."""
        middle = self.middle(settled, words)
        if self.family == "lognormal":
            return np.asarray(middle * np.exp(score * (np.log(self.spread) / NINETY)))
        if self.family == "normal":
            return np.asarray(middle + score * (self.spread / NINETY))
        return np.asarray(middle + self.spread * (2.0 * normal_share(score) - 1.0))

    def middle(self, settled: Columns, words: Words) -> Column:
        """Give the middle value."""
        made = self.centre(settled, words) if callable(self.centre) else self.centre
        return np.asarray(made, dtype=np.float64)

    def band(self, middle: float) -> tuple[float, float]:
        """Give the 90 % band about a middle value."""
        if self.family == "lognormal":
            return middle / self.spread, middle * self.spread
        half = self.spread if self.family == "normal" else 0.9 * self.spread
        return middle - half, middle + half


def normal_share(score: Column) -> Column:
    """Share of a standard normal below each score.

    References
    ----------
    abramowitz-stegun, 7.1.26 (error below 1.5e-7); the
    library function would cost a quarter of the start-up of a command.
    """
    size = np.abs(score) / np.sqrt(2.0)
    step = 1.0 / (1.0 + 0.3275911 * size)
    poly = step * (
        0.254829592
        + step * (-0.284496736 + step * (1.421413741 + step * (-1.453152027 + step * 1.061405429)))
    )
    erf = 1.0 - poly * np.exp(-size * size)
    return np.asarray(0.5 * (1.0 + np.sign(score) * erf))
