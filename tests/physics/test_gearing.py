"""Round trips and trends of gearing."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import gearing

RADIUS, RATIO = st.floats(0.25, 0.6), st.floats(0.5, 150)


@given(speed=st.floats(0.1, 50), radius=RADIUS, ratio=RATIO)
def test_speeds_and_radius_round_trip(speed, radius, ratio):
    turning = gearing.shaft_speed(speed, radius, ratio)
    assert gearing.road_speed(turning, radius, ratio) == pytest.approx(speed)
    assert gearing.rolling_radius(speed, turning, ratio) == pytest.approx(radius)


@given(ratio=RATIO, old=RADIUS, new=RADIUS)
def test_effective_and_restoring_ratio_are_inverse(ratio, old, new):
    restored = gearing.ratio_for_tyre(ratio, new, old)
    assert gearing.effective_ratio(restored, new, old) == pytest.approx(ratio)


@given(old=RADIUS, more=st.floats(1.01, 1.5))
def test_a_bigger_tyre_goes_faster_and_further_than_it_shows(old, more):
    assert gearing.true_speed(20.0, old * more, old) > 20
    assert gearing.speed_error(old * more, old) == pytest.approx(more - 1)
    assert gearing.distance_correction(old * more, old) == pytest.approx(more)
    assert gearing.turns_per_distance(old * more) < gearing.turns_per_distance(old)


def test_slip_costs_road_speed():
    assert gearing.road_speed(100.0, 0.4, 10.0, slip=0.25) == pytest.approx(3.0)


def test_the_law_lets_a_standing_speedometer_show_four_km_an_hour():
    assert gearing.highest_lawful_reading(0.0) * 3.6 == pytest.approx(4)


def test_one_turn_covers_the_circumference():
    assert 1 / gearing.turns_per_distance(0.8) == pytest.approx(0.8 * np.pi)


def test_shapes_broadcast():
    assert gearing.road_speed(np.ones((3, 1)), 0.4, np.ones(5)).shape == (3, 5)
    assert gearing.crawl_ratio(np.ones((3, 1)), 2.7, np.ones(5)).shape == (3, 5)
