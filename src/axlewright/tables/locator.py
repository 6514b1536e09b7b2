"""Where is it bent or worn: causes, what each shows, readings, jobs, what blurs several at once.

Chances and shares are those of the trade's habit, not counted: they are editable weights.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatorCause:
    """One thing that can be bent or worn; ``each`` where there is one a side.

    ``after_hit`` and ``in_use`` are the shares of axles that are brought with it, a side. ``low``
    to ``high`` is the 90 % band of its size; ``main_way`` the share that goes the usual way;
    ``across`` the usual size of what comes with it square to that. ``danger`` says what it takes
    away (empty where nothing that steers, stops, holds or carries), ``look`` what rules it out and
    how many ``minutes`` that takes, ``stop`` what then stops. ``rank`` is the trade's fixed order.
    """

    key: str
    axle: str
    each: bool
    label: str
    danger: str
    rank: int
    minutes: float
    after_hit: float
    in_use: float
    low: float
    high: float
    unit: str
    main_way: float
    across: float
    look: str
    stop: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatorLikelihood:
    """Chance that a cause, by itself, shows a sign, on its own side where both have sides."""

    key: str
    cause: str
    sign: str
    chance: float
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatorReading:
    """One thing to read: an angle, a length, or a sign that is there or is not.

    For a number, ``usual`` and ``as_built`` are middle and standard deviation on sound axles,
    ``half_width`` and ``repeat`` the instrument's resolution (half) and scatter. For a sign,
    ``usual`` is its chance on a sound axle.
    """

    key: str
    axle: str
    each: bool
    label: str
    kind: str
    job: str
    usual: float
    as_built: float
    half_width: float
    repeat: float
    unit: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatorJob:
    """Readings that are taken at one go, and how many minutes that takes."""

    key: str
    axle: str
    label: str
    minutes: float
    tool: str
    how: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatorDoubt:
    """What blurs several readings at once: how much (standard deviation) and which, with signs.

    ``only`` is "mapped" where it stands in for one of the same first word once that is known.
    """

    key: str
    axle: str
    label: str
    spread: float
    unit: str
    only: str
    loads: tuple[tuple[str, float], ...]
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatorEvidence:
    """What on record answers a reading of the locator.

    ``of`` is a guided reading, a look by its key, or "look" for any look. ``how`` says what becomes
    of it: a reading is taken as it is, or less another, or gives yes where it is out of its limit;
    a look gives yes or no where it ended in ``state`` or found ``found`` at one of ``parts``.
    """

    key: str
    reading: str
    of: str
    how: str
    found: str
    parts: tuple[str, ...]
    state: str
    origin: Origin


@cache
def locator_evidence() -> Mapping[str, LocatorEvidence]:
    """Read what on record answers which reading."""
    return {
        row["key"]: LocatorEvidence(
            key=row["key"],
            reading=row["reading"],
            of=row["of"],
            how=row["how"],
            found=row["found"],
            parts=tuple(row["parts"].split()),
            state=row["state"],
            origin=origin(row),
        )
        for row in rows("locator_evidence")
    }


@cache
def locator_causes() -> Mapping[str, LocatorCause]:
    """Read the causes."""
    return {
        row["key"]: LocatorCause(
            key=row["key"],
            axle=row["axle"],
            each=row["sides"] == "each",
            label=row["label"],
            danger=row["danger"],
            rank=int(row["rank"]),
            minutes=number(row, "minutes"),
            after_hit=number(row, "after_hit"),
            in_use=number(row, "in_use"),
            low=number(row, "low"),
            high=number(row, "high"),
            unit=row["unit"],
            main_way=number(row, "main_way"),
            across=number(row, "across"),
            look=row["look"],
            stop=row["stop"],
            origin=origin(row),
        )
        for row in rows("locator_causes")
    }


@cache
def locator_likelihoods() -> Mapping[str, LocatorLikelihood]:
    """Read the chances of signs."""
    return {
        row["key"]: LocatorLikelihood(
            key=row["key"],
            cause=row["cause"],
            sign=row["sign"],
            chance=number(row, "chance"),
            origin=origin(row),
        )
        for row in rows("locator_likelihoods")
    }


@cache
def locator_readings() -> Mapping[str, LocatorReading]:
    """Read what can be read."""
    return {
        row["key"]: LocatorReading(
            key=row["key"],
            axle=row["axle"],
            each=row["sides"] == "each",
            label=row["label"],
            kind=row["kind"],
            job=row["job"],
            usual=number(row, "usual"),
            as_built=float(row["as_built"] or 0.0),
            half_width=float(row["half_width"] or 0.0),
            repeat=float(row["repeat"] or 0.0),
            unit=row["unit"],
            origin=origin(row),
        )
        for row in rows("locator_readings")
    }


@cache
def locator_jobs() -> Mapping[str, LocatorJob]:
    """Read the jobs."""
    return {
        row["key"]: LocatorJob(
            key=row["key"],
            axle=row["axle"],
            label=row["label"],
            minutes=number(row, "minutes"),
            tool=row["tool"],
            how=row["how"],
            origin=origin(row),
        )
        for row in rows("locator_jobs")
    }


@cache
def locator_doubts() -> Mapping[str, LocatorDoubt]:
    """Read what blurs several readings at once."""
    return {
        row["key"]: LocatorDoubt(
            key=row["key"],
            axle=row["axle"],
            label=row["label"],
            spread=float(row["spread_of"]),
            unit=row["unit"],
            only=row["only"],
            loads=tuple(
                (each.partition(":")[0], float(each.partition(":")[2]))
                for each in row["loads"].split()
            ),
            origin=origin(row),
        )
        for row in rows("locator_doubts")
    }
