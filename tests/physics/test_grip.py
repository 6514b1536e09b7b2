"""Limits and trends of grip and drive torque."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import grip

TORQUE = st.floats(0, 3e4)


@given(engine=TORQUE, hold=TORQUE)
def test_a_shaft_never_sees_more_than_engine_or_grip(engine, hold):
    got = grip.shaft_torque(engine, hold)
    assert got <= engine
    assert got <= hold
    assert got in {engine, hold}


@given(axle=TORQUE, left=TORQUE, right=TORQUE, bias=st.floats(1, 5))
def test_open_and_biasing_differentials(axle, left, right, bias):
    a, b = grip.open_shaft_torques(axle, left, right, bias)
    assert a + b <= axle * (1 + 1e-12)
    assert a <= left * (1 + 1e-12)
    assert b <= right * (1 + 1e-12)
    assert max(a, b) <= bias * min(a, b) * (1 + 1e-12)
    more = grip.open_shaft_torques(axle, left, right, bias * 1.5)
    assert sum(more) >= (a + b) * (1 - 1e-12)


@given(axle=TORQUE, left=TORQUE, right=TORQUE)
def test_a_plain_differential_halves_and_the_weaker_tyre_rules(axle, left, right):
    a, b = grip.open_shaft_torques(axle, left, right)
    assert a == pytest.approx(b)
    assert a == pytest.approx(min(axle / 2, left, right))


def test_a_wheel_in_the_air():
    assert grip.open_shaft_torques(9e3, 6e3, 0.0) == (0.0, 0.0)
    assert grip.locked_shaft_torques(9e3, 6e3, 0.0) == (6e3, 0.0)
    assert grip.air_shaft_torque(9e3, 15e3, 1.0, 0.4, np.array([0.0, 1.0])) == pytest.approx(
        [0, 6e3]
    )


@given(pull=st.floats(0, 2e4))
def test_load_moves_and_is_not_lost(pull):
    front = grip.shifted_load(14e3, -pull, 0.7, 2.6)
    rear = grip.shifted_load(12e3, pull, 0.7, 2.6)
    assert front + rear == pytest.approx(26e3)


def test_an_axle_pushes_and_never_pulls_on_the_ground():
    assert grip.shifted_load(1e3, -1e5, 0.7, 2.6) == 0


def test_braked_load_by_moments():
    # Moments about the rear contact: W b + m a h = F L.
    assert grip.braked_load(14e3, 26e3, 0.8, 0.7, 2.6) == pytest.approx(
        14e3 + 26e3 * 0.8 * 0.7 / 2.6
    )


@given(friction=st.floats(0.05, 1.2))
def test_a_locked_axle_pulls_more_than_an_open_one(friction):
    common = (8e3, friction, 0.6, 2.6)
    opened = grip.open_traction(*common, 0.4, 4.1, 1.5, 0.6)
    locked = grip.locked_traction(*common)
    assert opened < locked
    # Self-consistent: the load that gives this pull includes what the pull itself moved.
    assert locked == pytest.approx(friction * grip.shifted_load(8e3, locked, 0.6, 2.6))


def test_pinion_torque_rolls_the_axle():
    # Couple across the track equals ring torque over the final ratio.
    assert grip.pinion_roll(8e3, 4.1, 1.5) * 1.5 == pytest.approx(8e3 / 4.1)


@given(friction=st.floats(0.05, 1.5))
def test_the_steepest_slope_is_where_grip_meets_weight(friction):
    slope = grip.grip_slope(friction)
    assert grip.slope_force(1e4, slope) == pytest.approx(friction * 1e4 * np.cos(slope))


def test_shapes_broadcast():
    left, right = grip.open_shaft_torques(np.ones((3, 1)) * 9e3, np.ones(4) * 3e3, 2e3, 1.5)
    assert left.shape == right.shape == (3, 4)
