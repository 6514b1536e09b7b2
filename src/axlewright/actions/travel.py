"""Study the travel of a rig file: from a file to where everything goes, with changes beside it."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from axlewright.geometry import Driveline, Travel, driveline_in_travel, travel
from axlewright.rig import SEED, Change, Rig, changed_rig, load_change, load_rig


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelAnswer:
    """A rig's travel, that after changes where there are any, and the driveline of the last."""

    before: Travel
    after: Travel | None
    driveline: Driveline

    @property
    def shown(self) -> Travel:
        """The study that the rest of the answer is about."""
        return self.after or self.before


def travel_file(
    path: str, changes: Sequence[str] = (), *, draws: int = 256, seed: int = SEED
) -> TravelAnswer:
    """Study a rig file, and, with change files, the rig after them as well.

    Raises `AxlewrightError` with what has to be put right.
    """
    loaded = [load_change(change) for change in changes]
    return travel_of(load_rig(path), loaded, draws=draws, seed=seed)


def travel_of(
    rig: Rig, changes: Sequence[Change] = (), *, draws: int = 256, seed: int = SEED
) -> TravelAnswer:
    """Study a rig, and the rig after changes; raises with the rod that cannot reach."""
    before = travel(rig, draws=draws, seed=seed, cures=not changes)
    after = None
    if changes:
        for change in changes:
            rig, _ = changed_rig(rig, change)
        after = travel(rig, draws=draws, seed=seed)
    line = driveline_in_travel(after or before, draws=draws, seed=seed)
    return TravelAnswer(before=before, after=after, driveline=line)


def travel_paper(answer: TravelAnswer, system: str = "metric") -> bytes:
    """Typeset a study as the bytes of a PDF."""
    from axlewright.report import travel_report
    from axlewright.views import travel_data

    return travel_report(travel_data(answer.before, answer.after, system, answer.driveline))


def write_travel(answer: TravelAnswer, path: Path, system: str = "metric") -> None:
    """Typeset the study; an old file stays whole until the new one is."""
    from axlewright.actions.report import written

    written(travel_paper(answer, system), path)
