"""The sheet of places to tape, out of a rig."""

from pathlib import Path

from axlewright.actions.report import written
from axlewright.rig import Rig, load_rig


def ends_paper(rig: Rig, system: str = "metric") -> bytes:
    """Typeset the sheet of a rig as the bytes of a PDF."""
    from axlewright.report import ends_report
    from axlewright.views import ends_data

    return ends_report(ends_data(rig, system))


def write_ends(path: str, file: Path, system: str = "metric") -> None:
    """Typeset the sheet of a rig file; an old file stays whole until the new one is."""
    written(ends_paper(load_rig(path), system), file)
