"""Metric and unified threads."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Thread:
    """One thread: diameter and pitch in metre, the printed stress area in square metre.

    The printed area is there to be compared with; the area that is used is computed.
    """

    key: str
    series: str
    diameter: float
    pitch: float
    printed_stress_area: float | None
    origin: Origin


@cache
def threads() -> Mapping[str, Thread]:
    """Read the whole table."""
    return {
        row["key"]: Thread(
            key=row["key"],
            series=row["series"],
            diameter=number(row, "diameter_mm"),
            pitch=number(row, "pitch_mm"),
            printed_stress_area=number_or_none(row, "stress_area_mm2"),
            origin=origin(row),
        )
        for row in rows("threads")
    }


def thread(key: str) -> Thread:
    """Find one thread by key, such as M12x1.75 or 1/2-20.

    Examples
    --------
    >>> thread("M12x1.75").pitch
    0.00175
    """
    return look_up(threads(), key, what="thread")
