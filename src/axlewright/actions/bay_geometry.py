"""How an axle in the store moves: studies of its travel, each worked out once."""

from dataclasses import dataclass
from typing import Final

from axlewright.actions.bay_cache import Latest, content_hash
from axlewright.errors import AxlewrightError
from axlewright.geometry import (
    BrakesAsked,
    Driveline,
    Pose,
    Reach,
    Travel,
    brakes_asked,
    driveline_in_travel,
    pose_of,
    reach_of,
    travel,
)
from axlewright.rig import Change, Rig, changed_rig

DRAWS: Final = 256


@dataclass(frozen=True, slots=True, kw_only=True)
class Moves:
    """A rig's travel, that after a change where there is one, and the driveline of the last."""

    before: Travel
    after: Travel | None
    driveline: Driveline
    brakes: BrakesAsked | None

    @property
    def shown(self) -> Travel:
        """The study that is shown moving."""
        return self.after or self.before

    def reach(self) -> Reach:
        """How far it can be moved."""
        return reach_of(self.shown)

    def pose(self, bump: float, roll: float, arm: float) -> Pose:
        """One pose: bump in m, roll and the drop arm's turn in rad, kept within its reach."""
        reach = self.reach()
        return pose_of(
            self.shown,
            min(max(bump, reach.down), reach.up),
            min(max(roll, -reach.roll), reach.roll),
            min(max(arm, reach.right), reach.left),
        )


class Studies:
    """Studies of travel, each worked out once; what cannot be posed is remembered as well."""

    def __init__(self) -> None:
        self._kept: Latest[str, Moves | AxlewrightError] = Latest(16)

    def moves(self, rig: Rig, change: Change | None = None) -> Moves:
        """Study a rig, and the rig after a change; raises with the rod that cannot reach."""
        key = f"{content_hash(rig, DRAWS)} {'' if change is None else change.digest}"
        found = self._kept.get(key, lambda: _tried(rig, change))
        if isinstance(found, AxlewrightError):
            raise found
        return found


def _tried(rig: Rig, change: Change | None) -> Moves | AxlewrightError:
    try:
        return study(rig, change)
    except AxlewrightError as trouble:
        return trouble


def study(rig: Rig, change: Change | None = None, *, draws: int = DRAWS) -> Moves:
    """Study a rig and, with a change, the rig after it."""
    before = travel(rig, draws=draws, cures=change is None)
    after = brakes = None
    if change is not None:
        changed, _ = changed_rig(rig, change)
        after = travel(changed, draws=draws)
        brakes = brakes_asked(rig, changed)
    line = driveline_in_travel(after or before, draws=draws)
    return Moves(before=before, after=after, driveline=line, brakes=brakes)
