"""How long it may take: each task's time in doubt, all of them together, in the chosen order."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp, log, sqrt

import numpy as np

from axlewright.physics.measurement import NINETY
from axlewright.rig import SEED, Column, scores
from axlewright.swap.chosen import Work
from axlewright.swap.schedule import Schedule, clashes

TOGETHER = 0.5  # of a task's doubt is the day's: rust, weather, who helps; common practice
DRAWS = 2000


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Seconds: nine in ten between low and high; one day in twenty is longer than high."""

    low: float
    middle: float
    high: float


def middle_of(ends: tuple[float, float]) -> float:
    """Middle of a time that is one in twenty shorter than the first, longer than the second."""
    return exp(0.5 * (log(ends[0]) + log(ends[1])))


def drawn(
    work: Work, ends: Mapping[str, tuple[float, float]], draws: int = DRAWS
) -> Mapping[str, Column]:
    """Times of each task, s: lognormal, one half of the doubt common to all."""
    day = scores(SEED, "swap day", 0, draws)
    found = {}
    for task in work.tasks:
        low, high = ends[task.key]
        own = scores(SEED, f"swap {task.key}", 0, draws)
        score = sqrt(TOGETHER) * day + sqrt(1.0 - TOGETHER) * own
        spread = log(high / low) / (2.0 * NINETY)
        found[task.key] = np.asarray(sqrt(low * high) * np.exp(spread * score))
    return found


def ends_drawn(work: Work, schedule: Schedule, times: Mapping[str, Column]) -> Mapping[str, Column]:
    """End of each task, s, when the order, the hands and the spots stay as planned."""
    clash = {key: near.union(work.after[key]) for key, near in clashes(work).items()}
    ends: dict[str, Column] = {}
    slots = {slot.key: slot for slot in schedule.slots}
    for slot in schedule.slots:
        waits = [
            key
            for key in ends
            if slots[key].end <= slot.start + 1e-6
            and (key in clash[slot.key] or set(slots[key].hands) & set(slot.hands))
        ]
        begin = np.maximum.reduce([ends[key] for key in waits]) if waits else 0.0
        ends[slot.key] = np.asarray(begin + times[slot.key])
    return ends


def band_of(values: Column) -> Band:
    """Ninety in a hundred of some seconds, and their middle."""
    low, middle, high = np.quantile(values, [0.05, 0.5, 0.95])
    return Band(low=float(low), middle=float(middle), high=float(high))
