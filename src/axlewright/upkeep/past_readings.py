"""Readings of the past, told again with the limits of today."""

from dataclasses import dataclass

from axlewright.rig import Kept, Reading
from axlewright.upkeep.outlived import Outlived
from axlewright.upkeep.readings import Verdict, Worth


@dataclass(frozen=True, slots=True, kw_only=True)
class PastReading:
    """One reading of the past: what it is worth, its verdicts, and whether it outlived its part."""

    kept: Kept
    reading: Reading
    worth: Worth
    judged: tuple[Verdict, ...]
    outlived: Outlived | None
