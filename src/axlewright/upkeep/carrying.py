"""What to carry on one trip with the list as it is ticked: what every face shows."""

from collections.abc import Mapping
from dataclasses import dataclass

from axlewright.upkeep.carry import Load


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticked:
    """One line of the tick list: packed, missing or not said, where it lies, and since when."""

    state: str = "not said"
    lies: str = ""
    on: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Carrying:
    """What to carry on a trip, the list as it is ticked, and what could not be placed.

    ``judged`` is false where questions of the rig are open, so that no figure is there; ``broke``
    is what broke on record, ``unplaced`` the part of it that is nothing known here. ``stops`` say
    do not drive, whatever is packed.
    """

    slug: str
    name: str
    axle: str
    words: Mapping[str, str]
    load: Load
    ticks: Mapping[str, Ticked]
    judged: bool
    draws: int
    broke: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()
    stops: tuple[str, ...] = ()
