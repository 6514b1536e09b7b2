"""Gearing arithmetic against printed examples."""

import numpy as np
import pytest

from axlewright.physics import gearing

INCH, MILE = 0.0254, 1609.344
MPH, KMH = MILE / 3600, 1 / 3.6
RPM = 2 * np.pi / 60


def tyre(width, aspect, rim):
    """Unloaded diameter from a size code: millimetres, percent, inches."""
    return 2 * width * aspect / 100 * 1e-3 + rim * INCH


def test_rolling_radius_from_a_timed_run():
    # Hydraulic instrument maker's education page: ratio 10, 15 mph, 1680 rev/min.
    assert gearing.rolling_radius(15 * MPH, 1680 * RPM, 10) / INCH == pytest.approx(15.0, rel=5e-4)


def test_rolling_radius_metric():
    # Same page: ratio 10, 20 km/h, 1500 rev/min; 353.7 mm with an exact constant.
    assert gearing.rolling_radius(20 * KMH, 1500 * RPM, 10) == pytest.approx(0.3537, rel=5e-4)


@pytest.mark.parametrize(
    ("size", "inches", "turns"), [((215, 65, 15), 26.004, 775.6), ((255, 60, 15), 27.047, 745.7)]
)
def test_turns_a_mile(size, inches, turns):
    # Public tyre arithmetic, worked again with exact constants.
    assert tyre(*size) / INCH == pytest.approx(inches, abs=1e-3)
    assert gearing.turns_per_distance(tyre(*size)) * MILE == pytest.approx(turns, rel=1e-3)


def test_other_tyres_on_an_axle_of_3_42():
    old, new = tyre(215, 65, 15), tyre(255, 60, 15)
    assert gearing.effective_ratio(3.42, new, old) == pytest.approx(3.288, rel=1e-3)
    assert gearing.true_speed(60.0, new, old) == pytest.approx(62.4, rel=1e-3)


def test_speedometer():
    new, old = tyre(195, 50, 15), tyre(185, 70, 14)
    # The speedometer reads 6.70 % high on the smaller tyre.
    assert 1 / (1 + gearing.speed_error(new, old)) == pytest.approx(1.0670139, abs=1e-4)


@pytest.mark.parametrize(
    ("ratio", "old", "new", "effective"), [(3.55, 26, 28, 3.296), (4.10, 31.5, 35, 3.690)]
)
def test_effective_ratio(ratio, old, new, effective):
    got = gearing.effective_ratio(ratio, new, old)
    assert got == pytest.approx(effective, abs=6e-4)


def test_ratio_that_brings_the_gearing_back():
    assert gearing.ratio_for_tyre(4.10, 35, 31.5) == pytest.approx(4.556, abs=6e-4)


# UN Regulation 39: 0 <= shown - true <= 0.1 true + 4 km/h.
@pytest.mark.parametrize(("true", "shown"), [(50, 59), (70, 81), (90, 103), (110, 125), (130, 147)])
def test_lawful_speedometer(true, shown):
    assert gearing.highest_lawful_reading(true * KMH) / KMH == pytest.approx(shown)


def test_crawl_ratio():
    assert gearing.crawl_ratio(3.5, 2.7, 4.10) == pytest.approx(38.745)


def test_printed_mph_constant():
    # mph = rev/min x diameter in inches / (336.135 x ratio).
    got = gearing.road_speed(2500 * RPM, 33 / 2 * INCH, 4.10) / MPH
    assert got == pytest.approx(2500 * 33 / (336.135 * 4.10), rel=1e-5)
