"""How an axle in the store moves: studies of its travel, each worked out once."""

from dataclasses import dataclass
from typing import Final

from axlewright.actions.bay_cache import Latest, content_hash
from axlewright.actions.travel import TravelAnswer, travel_of
from axlewright.errors import AxlewrightError
from axlewright.geometry import BrakesAsked, Pose, Reach, brakes_asked, pose_of, reach_of
from axlewright.rig import Change, Rig

DRAWS: Final = 256


@dataclass(frozen=True, slots=True, kw_only=True)
class Moves(TravelAnswer):
    """A rig's travel with the brakes that a change asks for, and posed as it is shown moving."""

    brakes: BrakesAsked | None

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
    found = travel_of(rig, () if change is None else (change,), draws=draws)
    brakes = None if found.after is None else brakes_asked(rig, found.after.rig)
    return Moves(before=found.before, after=found.after, driveline=found.driveline, brakes=brakes)
