"""Mends of one part that come round faster: the record's own word against mending on."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import sqrt
from typing import Final

LEAST: Final = 3  # mends before a trend is spoken of
SURE: Final = 1.28  # one-sided 90 % point of a standard normal


@dataclass(frozen=True, slots=True, kw_only=True)
class Mend:
    """One mend of a part: how far (m) or how long (s) after the beginning of the record."""

    part: str
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Faster:
    """Mends of one part that come round faster: how many, the gaps, and the trend's measure."""

    part: str
    gaps: tuple[float, ...]
    trend: float
    by_distance: bool


def trend_of(times: Sequence[float], until: float) -> float:
    """Laplace's trend measure of events up to a time: above nothing, they come faster.

    A standard normal where they come at one rate; with the last event as the end, that event
    is left out.

    References
    ----------
    ascher-feingold (Laplace's test), from memory.
    """
    shown = [time for time in times if time < until]
    count = len(shown)
    if count == 0 or until <= 0.0:
        return 0.0
    return sqrt(12.0 * count) * (sum(shown) / count / until - 0.5)


def coming_faster(mends: Iterable[Mend], *, by_distance: bool) -> tuple[Faster, ...]:
    """Parts whose mends come round faster, the plainest first.

    A part counts with at least three mends, each gap shorter than the one before it, or a trend
    beyond the 90 % point; the record is taken from one first gap before the first mend to the last.
    """
    by_part: dict[str, list[float]] = {}
    for mend in mends:
        by_part.setdefault(mend.part, []).append(mend.at)
    found = []
    for part, times in by_part.items():
        times.sort()
        if len(times) < LEAST:
            continue
        gaps = tuple(after - before for before, after in pairwise(times))
        shorter = all(after < before for before, after in pairwise(gaps))
        since = times[0] - gaps[0]  # the first is no older than the gap after it
        trend = trend_of([time - since for time in times], times[-1] - since)
        if shorter or trend > SURE:
            found.append(Faster(part=part, gaps=gaps, trend=trend, by_distance=by_distance))
    return tuple(sorted(found, key=lambda each: -each.trend))
