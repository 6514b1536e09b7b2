"""How far a rig drives in a year on its hardest ground, by its trips and its odometer."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import exp, log10
from typing import Final, Literal

from axlewright.decide.terms import Terms
from axlewright.physics.measurement import NINETY
from axlewright.rig import Kept, Rig, Trip
from axlewright.tables import Band

YEAR: Final = 365.25  # days
LEAST_DAYS: Final = 60  # a shorter record says nothing of a year
LEAST_TRIPS: Final = 3
SEASONS: Final = 0.5  # spread of use over the seasons that a part of a year misses; memory
MONTHS: Final = 12.0  # use comes about in months, where only the odometer was read; memory
KM_A_YEAR: Final = "km_a_year"


@dataclass(frozen=True, slots=True, kw_only=True)
class Yearly:
    """Distance a year on the hardest ground, as a record has it.

    ``band`` is in km a year. ``trips`` and ``days`` are what it rests on, ``on_it`` the distance
    of those trips on that ground and ``odometer`` what the odometer went, both in m. By ``limit``
    the odometer alone was read, which counts every road: it only cuts the usual figure.
    """

    by: Literal["trips", "odometer", "limit"]
    band: Band
    trips: int
    days: int
    on_it: float
    odometer: float


def yearly(history: Sequence[Kept], hardest: str, usual: Band, today: dt.date) -> Yearly | None:
    """Distance a year on the ground of that name; None where the record is too short to tell.

    The clock starts with the first trip, which is not counted. A trip that names no ground counts
    as the others do, all of it where none does. Where the odometer went further than the trips,
    some were not entered: the odometer's distance then counts, by the trips' share of the ground.

    References
    ----------
    statistics: a sum of n independent trips has a relative variance of about sum d^2/(sum d)^2
    """
    past = sorted((each for each in history if each.on <= today), key=lambda each: each.order)
    went, read_days = _odometer(past)
    trips = [each for each in past if isinstance(each.body, Trip)]
    days = (today - trips[0].on).days if trips else 0
    if len(trips) < LEAST_TRIPS or days < LEAST_DAYS:
        return _limit(went, read_days, usual)
    later = [each.body for each in trips[1:] if isinstance(each.body, Trip)]
    share = _share(later, hardest)
    each_far = [_on(trip, hardest, share) for trip in later]
    on_it = sum(each_far)
    if on_it <= 0.0:
        return None
    years = days / YEAR
    rate, by = on_it / years, "trips"
    if read_days >= LEAST_DAYS and share * went / read_days > rate / YEAR:
        rate, by = share * went / (read_days / YEAR), "odometer"
    spread = sum(far**2 for far in each_far) / on_it**2 + _season(years)
    return Yearly(
        by="trips" if by == "trips" else "odometer",
        band=_about(rate, spread),
        trips=len(later),
        days=days if by == "trips" else read_days,
        on_it=on_it,
        odometer=went,
    )


def with_record(
    terms: Terms, rig: Rig, history: Sequence[Kept], today: dt.date
) -> tuple[Terms, Yearly | None]:
    """The same terms with the record's distance a year, where the owner said none himself."""
    if KM_A_YEAR in terms.own:
        return terms, None
    hardest = rig.words["use.hardest"].replace(" ", "_")
    found = yearly(history, hardest, terms.band(f"{KM_A_YEAR}.{hardest}"), today)
    if found is None:
        return terms, None
    return replace(terms, bands={**terms.bands, KM_A_YEAR: found.band}), found


def _share(trips: Sequence[Trip], hardest: str) -> float:
    """Share of the distance on the hardest ground, by the trips that name grounds."""
    named = [trip for trip in trips if trip.grounds]
    total = sum(trip.distance for trip in named)
    on_it = sum(far for trip in named for ground, far in trip.grounds if ground == hardest)
    return min(on_it / total, 1.0) if total > 0.0 else 1.0


def _on(trip: Trip, hardest: str, share: float) -> float:
    if not trip.grounds:
        return share * trip.distance
    return sum(far for ground, far in trip.grounds if ground == hardest)


def _odometer(past: Sequence[Kept]) -> tuple[float, int]:
    """How far the odometer went, m, and in how many days."""
    read = [each for each in past if each.odometer is not None]
    if len(read) < 2:
        return 0.0, 0
    went = (read[-1].odometer or 0.0) - (read[0].odometer or 0.0)
    return max(went, 0.0), (read[-1].on - read[0].on).days


def _limit(went: float, days: int, usual: Band) -> Yearly | None:
    """The usual figure, cut to what the odometer went in all."""
    if days < LEAST_DAYS or went <= 0.0:
        return None
    years = days / YEAR
    most = _about(went / years, 1.0 / (MONTHS * years) + _season(years))
    if most.high >= usual.high:
        return None
    band = Band(low=min(usual.low, most.low), high=most.high)
    return Yearly(by="limit", band=band, trips=0, days=days, on_it=0.0, odometer=went)


def _season(years: float) -> float:
    """Relative variance of a year's use that so many years have not shown."""
    return SEASONS**2 * max(1.0 - years, 0.0)


def _about(rate: float, spread: float) -> Band:
    """Band of nine in ten about a rate in m a year, in km, told to two digits."""
    factor = exp(NINETY * spread**0.5)
    return Band(low=_short(1e-3 * rate / factor), high=_short(1e-3 * rate * factor))


def _short(value: float) -> float:
    """Two digits: a record does not know more, and a day more of it changes no choice."""
    return round(value, 1 - int(log10(value) // 1)) if value > 0.0 else 0.0
