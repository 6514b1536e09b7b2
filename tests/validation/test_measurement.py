"""Uncertainty and verdicts against the guides' own examples and closed forms."""

import numpy as np
import pytest
from scipy import stats

from axlewright.physics import measurement


def test_the_end_gauge_of_the_guide():
    # JCGM 100:2008, H.1 (from memory): standard 25 nm (18 degrees of freedom), comparison 9.7 nm
    # (25.6), expansion 2.9 nm (50), temperature 16.6 nm (2): 32 nm with 16, times 2.92: 93 nm.
    made = measurement.combined_uncertainty(
        [838.0], spread=[25.0, 9.7, 2.9, 16.6], freedom=[18.0, 25.6, 50.0, 2.0]
    )
    assert round(float(made.standard)) == 32
    assert int(made.freedom) == 16
    factor = measurement.coverage_factor(int(made.freedom), 0.99)
    assert factor == pytest.approx(2.92, abs=0.005)
    assert round(float(factor * made.standard)) in {92, 93}


def test_repeated_readings_of_the_guide():
    # JCGM 100:2008, 4.4.3, table 1 (from memory): twenty temperatures, mean 100.145, scatter 1.489,
    # of the mean 0.333 degrees.
    read = [
        96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
        100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
    ]  # fmt: skip
    made = measurement.combined_uncertainty(read)
    assert made.mean == pytest.approx(100.145, abs=5e-4)
    assert made.standard == pytest.approx(0.333, abs=5e-4)
    assert made.freedom == pytest.approx(19.0)


def test_a_rectangle_of_the_guide():
    # JCGM 100:2008, 4.4.5 (from memory): between 96 and 104 degrees, 2.3 degrees.
    made = measurement.combined_uncertainty([100.0], half_width=[4.0])
    assert made.standard == pytest.approx(2.3, abs=0.05)
    assert np.isinf(made.freedom)


@pytest.mark.parametrize("freedom", [2, 5, 16, 100])
def test_coverage_is_that_of_student(freedom):
    assert measurement.coverage_factor(freedom) == pytest.approx(stats.t.ppf(0.975, freedom))


def test_more_repeats_and_a_better_instrument_narrow_the_band():
    rng = np.random.default_rng(1)
    few, many = rng.normal(0.0, 1.0, 3), rng.normal(0.0, 1.0, 30)
    wide = measurement.combined_uncertainty(few, half_width=[1.0], pooled=1.0)
    narrow = measurement.combined_uncertainty(many, half_width=[1.0], pooled=1.0)
    finer = measurement.combined_uncertainty(many, half_width=[0.1], pooled=1.0)
    assert wide.standard > narrow.standard > finer.standard


def test_one_reading_takes_the_scatter_of_past_work():
    made = measurement.combined_uncertainty([5.0], pooled=0.4)
    assert made.standard == pytest.approx(0.4)


@pytest.mark.parametrize("mean", [-0.3, 0.0, 0.35, 0.52, 0.9, 1.3])
def test_the_chance_is_the_normal_law(mean):
    chance = measurement.chance_within(mean, 0.2, 0.0, 1.0)
    assert chance == pytest.approx(stats.norm.cdf(1.0, mean, 0.2) - stats.norm.cdf(0.0, mean, 0.2))


def test_the_stated_risk_is_met():
    # A truth at the limit is passed as within no oftener than the risk (closed form and draws).
    rng = np.random.default_rng(7)
    read = rng.normal(1.0, 0.1, 40_000)
    passed = measurement.guarded_verdict(read, 0.1, high=1.0) == measurement.WITHIN
    failed = measurement.guarded_verdict(read, 0.1, high=1.0) == measurement.OUT
    assert np.mean(passed) == pytest.approx(0.05, abs=0.004)
    assert np.mean(failed) == pytest.approx(0.05, abs=0.004)


def test_worse_instruments_cannot_tell_and_say_how_many_repeats_would():
    sharp = measurement.guarded_verdict(0.8, 0.05, high=1.0)
    dull = measurement.guarded_verdict(0.8, 0.3, high=1.0)
    assert (sharp, dull) == (measurement.WITHIN, measurement.CANNOT_TELL)
    count = measurement.repeats_to_tell(0.8, scatter=0.3, fixed=0.02, high=1.0)
    settled = np.hypot(0.3 / np.sqrt(count), 0.02)
    assert measurement.guarded_verdict(0.8, settled, high=1.0) == measurement.WITHIN
    less = np.hypot(0.3 / np.sqrt(count - 1), 0.02)
    assert measurement.guarded_verdict(0.8, less, high=1.0) == measurement.CANNOT_TELL
    assert np.isinf(measurement.repeats_to_tell(0.8, scatter=0.3, fixed=0.2, high=1.0))
