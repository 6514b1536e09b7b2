"""Study the travel of a rig file: from a file to where everything goes, with changes beside it."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from axlewright.geometry import travel
from axlewright.rig import SEED, changed_rig, load_change, load_rig

if TYPE_CHECKING:
    from axlewright.geometry import Travel


def travel_file(
    path: str, changes: Sequence[str] = (), *, draws: int = 256, seed: int = SEED
) -> "tuple[Travel, Travel | None]":
    """Study a rig file, and, with change files, the rig after them as well.

    Raises `AxlewrightError` with what has to be put right.
    """
    rig = load_rig(path)
    loaded = [load_change(change) for change in changes]
    before = travel(rig, draws=draws, seed=seed, cures=not loaded)
    if not loaded:
        return before, None
    for change in loaded:
        rig, _ = changed_rig(rig, change)
    return before, travel(rig, draws=draws, seed=seed)


def write_travel(
    before: "Travel", after: "Travel | None", path: Path, system: str = "metric"
) -> None:
    """Typeset the study; an old file stays whole until the new one is."""
    from axlewright.actions.report import written
    from axlewright.report import travel_report
    from axlewright.views import travel_data

    written(travel_report(travel_data(before, after, system)), path)
