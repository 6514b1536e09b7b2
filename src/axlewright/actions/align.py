"""Align an axle in the garage: from a rig file and readings to what to turn, and the papers."""

from collections.abc import Mapping, Sequence
from pathlib import Path

from axlewright.actions.report import written
from axlewright.geometry import Alignment, align
from axlewright.rig import Readings, Rig, load_readings, load_rig, readings_said


def align_rig(rig: Rig, readings: Readings) -> Alignment:
    """Judge readings of a rig's axle; raises `BadFile` where they contradict each other."""
    return align(rig, readings)


def align_file(
    path: str, readings: str | None = None, said: Mapping[str, Sequence[str]] | None = None
) -> Alignment:
    """Judge readings of a rig file's axle: those of a file, and over them what was typed.

    ``said`` has texts by field, as in ``{"toe.front": ["1571 mm"]}``. Raises `BadFile` with every
    fault of the first that cannot be used.
    """
    rig = load_rig(path)
    before = load_readings(readings, rig.axle) if readings is not None else None
    return align(rig, readings_said(said or {}, rig.axle, before))


def align_paper(alignment: Alignment, system: str = "metric", *, blank: bool = False) -> bytes:
    """Worksheet and shop's brief as the bytes of a PDF; with ``blank`` to be written on."""
    from axlewright.report import alignment_sheet
    from axlewright.views import align_data

    return alignment_sheet(align_data(alignment, system, blank=blank))


def write_align(
    alignment: Alignment, path: Path, system: str = "metric", *, blank: bool = False
) -> None:
    """Typeset the worksheet; an old file stays whole until the new one is."""
    written(align_paper(alignment, system, blank=blank), path)
