"""What is due: by distance since it was last done, by days, and after certain work or water."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from axlewright.rig import Fitment, Hit, Job, Kept, Trip
from axlewright.tables import Interval, intervals

DueState: TypeAlias = Literal["due", "soon", "later", "never recorded"]
SOON = 0.8  # of an interval; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """One thing that comes due: since when and how far, when next, and what it says."""

    key: str
    title: str
    kind: str
    state: DueState
    last: dt.date | None
    driven: float
    at_distance: float | None
    by: dt.date | None
    note: str


def driven_since(history: Sequence[Kept], kept: Kept | None, odometer: float | None) -> float:
    """Distance since an entry, m: by the odometer where it was read, else by the trips.

    Without an entry it is all that is on record.
    """
    after = [each for each in history if kept is None or each.order > kept.order]
    trips = sum(each.body.distance for each in after if isinstance(each.body, Trip))
    read = [each.odometer for each in history if each.odometer is not None]
    now = odometer if odometer is not None else max(read, default=None)
    if now is None or (kept is not None and kept.odometer is None):
        return trips
    start = kept.odometer if kept is not None else min(read, default=now)
    return max(trips, now - (start if start is not None else now))


def dues(
    history: Sequence[Kept], axle: str, today: dt.date, odometer: float | None = None
) -> tuple[Due, ...]:
    """Everything that comes due on an axle, the most pressing first."""
    ordered = sorted(history, key=lambda each: each.order)
    told = [
        due
        for each in intervals().values()
        if each.axle in {axle, "both"}
        if (due := _due(each, ordered, today, odometer)) is not None
    ]
    rank: dict[DueState, int] = {"due": 0, "never recorded": 1, "soon": 2, "later": 3}
    return tuple(sorted(told, key=lambda each: rank[each.state]))


def _due(
    interval: Interval, ordered: Sequence[Kept], today: dt.date, odometer: float | None
) -> Due | None:
    done = _done(ordered, interval.key)
    began = _began(ordered, interval.begins)
    if interval.begins and began is None:
        return None
    fresh = began is not None and (done is None or done.order < began.order)
    start = began if fresh else done
    far = interval.first if fresh and interval.first is not None else interval.every
    if start is not None and not fresh and far is None and interval.days is None:
        return None  # once, and it was done
    if start is not None and interval.begins == "water" and not fresh:
        return None
    driven = driven_since(ordered, start, odometer)
    by = None if start is None or interval.days is None else _after(start.on, interval.days)
    state: DueState = "later"
    if start is None:
        state = "never recorded"
    elif (far is not None and driven >= far) or (by is not None and today >= by):
        state = "due"
    elif (far is not None and driven >= SOON * far) or (
        by is not None
        and interval.days is not None
        and (today - start.on).days >= SOON * interval.days
    ):
        state = "soon"
    return Due(
        key=interval.key,
        title=interval.title,
        kind=interval.kind,
        state=state,
        last=None if done is None else done.on,
        driven=driven,
        at_distance=far,
        by=by,
        note=interval.note,
    )


def _after(day: dt.date, days: float) -> dt.date:
    return day + dt.timedelta(days=days)


def _done(ordered: Sequence[Kept], key: str) -> Kept | None:
    found = [each for each in ordered if isinstance(each.body, Job) and each.body.interval == key]
    return found[-1] if found else None


def _began(ordered: Sequence[Kept], begins: str) -> Kept | None:
    """Give the last work that starts an interval, or the last trip through water over the hubs."""
    if begins == "water":
        wet = [each for each in ordered if isinstance(each.body, Trip) and each.body.water]
        return wet[-1] if wet else None
    return _done(ordered, begins) if begins else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What one part went through, wherever it was fitted: distance (m), trips and hits."""

    distance: float
    trips: tuple[Kept, ...]
    hits: tuple[Kept, ...]


def carried(fitments: Sequence[Fitment], history: Sequence[Kept]) -> Carried:
    """Trips and hits of the rigs that a part was on while it was on them.

    ``history`` holds the entries of every rig that the fitments name. Where the odometer was read
    at both ends of a fitment, its difference counts if it is more than the trips on record.
    """
    trips: list[Kept] = []
    hits: list[Kept] = []
    total = 0.0
    for fitment in fitments:
        start, end = (fitment.since, fitment.begun), (fitment.until, fitment.ended)
        during = [
            each
            for each in history
            if each.rig == fitment.rig
            and each.order > start
            and (not fitment.ended or each.order < end)
        ]
        here = [each for each in during if isinstance(each.body, Trip)]
        trips += here
        hits += [each for each in during if isinstance(each.body, Hit)]
        told = sum(each.body.distance for each in here if isinstance(each.body, Trip))
        if fitment.since_odometer is not None and fitment.until_odometer is not None:
            told = max(told, fitment.until_odometer - fitment.since_odometer)
        total += told
    return Carried(distance=total, trips=tuple(trips), hits=tuple(hits))
