"""What happens to a rig, as it is said once and kept: a look, a reading, a trip, a hit, a job."""

import datetime as dt
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

LookState: TypeAlias = Literal["go", "watch", "fix before trip", "stop"]
LOOK_STATES: Final[tuple[LookState, ...]] = ("stop", "fix before trip", "watch", "go")
SIDES: Final = ("left", "right", "both", "centre")
BEARINGS: Final = ("not said", "taken up", "not taken up")


@dataclass(frozen=True, slots=True, kw_only=True)
class LookTaken:
    """One look that somebody took at the real thing, and what it ended in.

    ``watch`` lasts until a day, a distance (m from here) or a number of trips, whichever is
    first. ``found`` is one of the words of a rig's condition, ``part`` where it was found.
    """

    occasion: str
    look: str
    state: LookState
    part: str = ""
    side: str = ""
    found: str = ""
    until: dt.date | None = None
    until_distance: float | None = None
    until_trips: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One quantity as it was measured: SI, with the unit and the words it was given in.

    ``standard`` is the standard uncertainty that was reckoned for the mean, ``freedom`` its
    degrees of freedom (None where there is no end of them). ``repeats`` are the single values.
    ``procedure`` is the guided one, where it was followed.
    """

    quantity: str
    value: float
    kind: str
    unit: str
    given: str
    standard: float
    freedom: float | None = None
    side: str = ""
    instrument: str = ""
    repeats: tuple[float, ...] = ()
    load_state: str = ""
    bearing: str = "not said"
    conditions: str = ""
    corrected: float = 0.0
    procedure: str = ""
    component: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trip:
    """One trip: how far (m), how long (s), the ground by distance (m), load, pressure (Pa), water.

    ``grounds`` are names of duties with the distance on each.
    """

    name: str
    distance: float
    duration: float | None = None
    grounds: tuple[tuple[str, float], ...] = ()
    load_state: str = ""
    pressure: float | None = None
    water: float | None = None
    temperature: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """Something that was hit: what, with which side, how fast (m/s) where that is known."""

    what: str
    side: str = ""
    speed: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Work done on a part; ``settles`` is the number of the look that it answers, 0 for none.

    ``interval`` names the standing job that was done, ``torque`` what was set, in words with its
    source.
    """

    task: str
    part: str = ""
    side: str = ""
    interval: str = ""
    torque: str = ""
    settles: int = 0
    component: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnLimit:
    """A limit that stands before every other for a rig: the maker's, and where it is printed."""

    limit: str
    low: float | None
    high: float | None
    kind: str
    given: str
    printed: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A stretch of the past as far as anybody knows: distances in m as a band."""

    title: str
    since: dt.date | None = None
    until: dt.date | None = None
    shortest: float = 0.0
    longest: float = 0.0
    tyre: str = ""
    load_state: str = ""
    grounds: tuple[tuple[str, float], ...] = ()
    broke: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Noticed:
    """What a driver noticed, from memory alone: each question with the word that answers it."""

    about: str
    answers: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A part was put in; the entry before it, if there was one, ends there."""

    component: str
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenOff:
    """A part was taken out."""

    component: str
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """A note by itself."""

    about: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Withdrawn:
    """An earlier entry does not hold; the one that it replaces names it."""

    reason: str


Body: TypeAlias = (
    LookTaken
    | Reading
    | Trip
    | Hit
    | Job
    | OwnLimit
    | Chapter
    | Noticed
    | Fitted
    | TakenOff
    | Remark
    | Withdrawn
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Happening:
    """What happened, on which day, at which odometer (m), who says so, with notes and photos.

    ``replaces`` is the number of an earlier entry that this one puts right; photos stand under
    their SHA-256.
    """

    body: Body
    on: dt.date
    odometer: float | None = None
    who: str = ""
    note: str = ""
    replaces: int = 0
    photos: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept(Happening):
    """A happening with the number and time (UTC) of its entry; ``replaced`` by a later one or 0."""

    number: int
    rig: str
    device: str
    at: dt.datetime
    replaced: int = 0

    @property
    def order(self) -> tuple[dt.date, int]:
        """Its place among the others: by day, and within a day as it was entered."""
        return self.on, self.number
