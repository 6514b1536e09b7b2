"""What a choice hangs on besides strength, drawn: each thing by its own name, changes share it."""

from math import log

import numpy as np

from axlewright.physics.measurement import NINETY
from axlewright.rig import Column, normal_share, scores
from axlewright.tables import Band


def drawn(name: str, band: Band, draws: int, seed: int) -> Column:
    """Draws of a band, (n,): lognormal where it is positive, else evenly over the whole range."""
    if band.low == band.high:
        return np.full(draws, band.low)
    score = scores(seed, f"choice.{name}", 0, draws)
    if band.low <= 0.0:
        wide = (band.high - band.low) / 0.9
        return np.asarray(np.maximum(band.middle + wide * (normal_share(score) - 0.5), 0.0))
    return np.asarray(band.middle * np.exp(score * log(band.high / band.low) / (2.0 * NINETY)))


def chance(name: str, draws: int, seed: int) -> Column:
    """Even draws between 0 and 1, (n,), for what is so or is not."""
    return normal_share(scores(seed, f"choice.{name}", 0, draws))
