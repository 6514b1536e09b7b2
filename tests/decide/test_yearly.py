"""Distance a year out of a record; the records are invented, those of a survey team's rigs."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from axlewright.decide import KM_A_YEAR, Terms, with_record, yearly
from axlewright.rig import Kept, Remark, Trip, load_rig
from axlewright.tables import Band
from house.places import ROOT

ROCKS, FOREST = "rocks_and_ledges", "forest_roads"
USUAL = Band(low=200.0, high=1500.0)
FIRST = dt.date(2025, 5, 1)


def entry(number, on, body, odometer=None):
    return Kept(
        body=body,
        on=on,
        odometer=odometer,
        number=number,
        rig="wagtail",
        device="",
        at=dt.datetime(2026, 5, 1, tzinfo=dt.UTC),
    )


def trip(number, day, km, *grounds, odometer=None):
    body = Trip(name="to the gauges", distance=1e3 * km, grounds=grounds)
    return entry(number, FIRST + dt.timedelta(days=day), body, odometer)


def on_rocks(days, km):
    return [trip(number, day, km, (ROCKS, 1e3 * km)) for number, day in enumerate(days, 1)]


def found(history, days):
    return yearly(history, ROCKS, USUAL, FIRST + dt.timedelta(days=days))


def test_twelve_trips_of_a_year_are_the_year_with_the_doubt_of_twelve_trips():
    told = found(on_rocks(range(0, 361, 30), 100.0), 365)
    # Relative variance 12 d^2/(12 d)^2 = 1/12, so nine in ten within a factor exp(1.645/sqrt 12).
    rate, factor = 1200.0 * 365.25 / 365.0, np.exp(1.645 / 12**0.5)
    assert (told.by, told.trips, told.on_it) == ("trips", 12, pytest.approx(1.2e6))
    assert told.band.low == pytest.approx(rate / factor, rel=0.03)
    assert told.band.high == pytest.approx(rate * factor, rel=0.03)


def test_the_shorter_the_record_the_wider_the_band():
    spans = [
        found(on_rocks(range(0, days + 1, 30), 100.0), days).band for days in (90, 180, 360, 720)
    ]
    widths = [each.high / each.low for each in spans]
    assert widths == sorted(widths, reverse=True)
    assert widths[0] > 2.0 * widths[-1]


def test_nine_in_ten_records_hold_the_truth_that_made_them():
    # The textbook case: trips come by themselves (Poisson), 15 a year, of any length.
    rng, held = np.random.default_rng(5), 0
    for _ in range(300):
        days = np.cumsum(rng.exponential(365.25 / 15.0, size=60))
        days = days[days < 730].astype(int)
        far = rng.gamma(4.0, 25.0, size=days.size)
        rows = zip(days, far, strict=True)
        history = [
            trip(at, int(day), km, (ROCKS, 1e3 * km)) for at, (day, km) in enumerate(rows, 1)
        ]
        told = found(history, 730)
        held += told.band.low <= 1500.0 <= told.band.high
    assert 0.84 <= held / 300 <= 0.96


def test_a_short_record_says_nothing_of_a_year():
    assert found([], 365) is None
    assert found(on_rocks((0, 30), 100.0), 365) is None
    assert found(on_rocks((0, 5, 10, 15), 100.0), 59) is None
    late = on_rocks((400, 430, 460), 100.0)
    assert found(late, 365) is None


def test_only_that_ground_counts_and_a_trip_without_one_counts_as_the_others():
    days = range(0, 361, 30)
    mixed = [
        trip(number, day, 100.0, (ROCKS, 2.5e4), (FOREST, 7.5e4))
        for number, day in enumerate(days, 1)
    ]
    assert found(mixed, 365).on_it == pytest.approx(12 * 25e3)
    half = [*mixed[:7], *(trip(20 + at, 210 + 30 * at, 100.0) for at in range(6))]
    assert found(half, 365).on_it == pytest.approx(12 * 25e3)
    forest = [trip(number, day, 100.0, (FOREST, 1e5)) for number, day in enumerate(days, 1)]
    assert found(forest, 365) is None


def test_an_odometer_that_went_further_tells_of_trips_that_were_not_entered():
    days = range(0, 361, 30)
    history = [
        trip(number, day, 100.0, (ROCKS, 5e4), (FOREST, 5e4), odometer=1e6 * (40 + day / 90.0))
        for number, day in enumerate(days, 1)
    ]
    told = found(history, 365)
    assert told.by == "odometer"
    assert told.odometer == pytest.approx(4e6)
    middle = (told.band.low * told.band.high) ** 0.5
    assert middle == pytest.approx(0.5 * 4000.0 * 365.25 / 360.0, rel=0.03)


def test_an_odometer_alone_only_cuts_the_usual_figure():
    def read(km, days=360):
        note = Remark(about="fuel")
        return [
            entry(1, FIRST, note, 5e7),
            entry(2, FIRST + dt.timedelta(days=days), note, 5e7 + 1e3 * km),
        ]

    cut = found(read(500.0), 365)
    assert cut.by == "limit"
    assert cut.band.low == USUAL.low
    assert 500.0 < cut.band.high < USUAL.high
    assert found(read(9000.0), 365) is None
    assert found(read(100.0, days=20), 365) is None


def test_what_the_owner_said_stands_before_the_record():
    rig = load_rig(str(ROOT / "examples" / "rigs" / "heron.toml"))
    hardest = rig.words["use.hardest"].replace(" ", "_")
    days = range(0, 361, 30)
    history = [trip(at, day, 90.0, (hardest, 9e4)) for at, day in enumerate(days, 1)]
    today = FIRST + dt.timedelta(days=365)
    terms, told = with_record(Terms(), rig, history, today)
    assert terms.band(KM_A_YEAR) == told.band
    assert KM_A_YEAR not in terms.own
    own = Terms().with_band(KM_A_YEAR, 400.0, 900.0)
    assert with_record(own, rig, history, today) == (own, None)
    assert with_record(replace(own, own=frozenset()), rig, history, today)[1] == told
