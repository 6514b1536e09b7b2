"""Assess a rig file: the main job, from a file to the two orders, with changes beside it."""

from collections.abc import Sequence

from axlewright.rig import SEED, load_change, load_rig
from axlewright.strength import DRAWS, Assessment, Comparison, Progress, assess_rig, compare


def assess_file(
    path: str,
    changes: Sequence[str] = (),
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Progress | None = None,
) -> Assessment | Comparison:
    """Assess a rig file, and, with change files, the rig after them beside it.

    Raises `BadFile` with every fault of the first file that cannot be used.
    """
    rig = load_rig(path)
    loaded = [load_change(change) for change in changes]
    before = assess_rig(rig, draws=draws, seed=seed, progress=progress)
    if not loaded:
        return before
    return compare(before, loaded, draws=draws, seed=seed, progress=progress)
