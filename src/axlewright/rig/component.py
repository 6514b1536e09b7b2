"""Parts that keep their identity when they move, and where each was fitted."""

import datetime as dt
from dataclasses import dataclass
from typing import Final

COMPONENTS: Final = (
    "housing",
    "hub",
    "shaft",
    "wheel joint",
    "ball joints",
    "knuckle",
    "rod",
    "track bar",
    "bracket",
    "ring and pinion",
    "brake",
    "wheel",
    "tyre",
    "other",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Component:
    """One part: what it is, what to call it, and the mark by which it is known again."""

    key: str
    kind: str
    name: str
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitment:
    """One part in one place of one rig, from one entry to another; ``ended`` is 0 while it is in.

    ``begun`` and ``ended`` are numbers of entries; ``since`` and ``until`` the days, and the
    odometer in m where it was read.
    """

    component: str
    rig: str
    place: str
    begun: int
    since: dt.date
    since_odometer: float | None = None
    ended: int = 0
    until: dt.date | None = None
    until_odometer: float | None = None
