"""Energy balance of blows, and the same blows integrated in time."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from axlewright.physics import impact

SPEED, MASS = st.floats(0.1, 10.0), st.floats(20, 800)
STIFFNESS = st.floats(5e4, 1e6)
GRAVITY = 9.80665


def peak_of_spring(speed, stiffness, mass, weight=0.0):
    """Largest force of a spring met at a speed, integrated until it is at rest."""
    stopped = lambda t, state: state[1]
    stopped.terminal, stopped.direction = True, -1
    motion = lambda t, state: [state[1], (weight - stiffness * state[0]) / mass]
    end = 10 * np.pi * np.sqrt(mass / stiffness)
    got = solve_ivp(motion, (0, end), [0.0, speed], events=stopped, rtol=1e-10, atol=1e-12)
    return stiffness * got.y[0, -1]


def test_a_strike_against_an_integrated_oscillator():
    rearward, upward = impact.strike_force(3.0, 0.15, 0.40, 300e3, 220.0)
    lean = np.arccos((0.40 - 0.15) / 0.40)
    peak = peak_of_spring(3.0 * np.sin(lean), 300e3, 220.0)
    assert np.hypot(rearward, upward) == pytest.approx(peak, rel=1e-7)
    assert np.arctan2(rearward, upward) == pytest.approx(lean)


def test_a_landing_against_an_integrated_oscillator():
    drop, mass, stiffness = 0.30, 600.0, 250e3
    peak = peak_of_spring(np.sqrt(2 * GRAVITY * drop), stiffness, mass, weight=mass * GRAVITY)
    assert impact.landing_force(drop, mass * GRAVITY, stiffness) == pytest.approx(peak, rel=1e-7)


@given(speed=SPEED, mass=MASS, stiffness=STIFFNESS)
def test_a_slide_keeps_its_energy(speed, mass, stiffness):
    force = impact.slide_force(speed, stiffness, mass)
    assert force**2 / (2 * stiffness) == pytest.approx(mass * speed**2 / 2)
    assert impact.slide_speed(force, stiffness, mass) == pytest.approx(speed)


@given(drop=st.floats(0, 3), weight=st.floats(1e3, 2e4), stiffness=STIFFNESS)
def test_a_landing_keeps_its_energy(drop, weight, stiffness):
    force = impact.landing_force(drop, weight, stiffness)
    assert force**2 / (2 * stiffness) == pytest.approx(weight * (drop + force / stiffness))
    assert impact.landing_drop(force, weight, stiffness) == pytest.approx(drop, abs=1e-6)


def test_a_force_under_twice_the_weight_needs_no_drop():
    assert impact.landing_drop(np.array([0.0, 5e3, 12e3]), 6e3, 3e5) == pytest.approx([0, 0, 0])


@given(speed=SPEED, share=st.floats(0.01, 2.0), mass=MASS, stiffness=STIFFNESS)
def test_strike_and_its_inverses(speed, share, mass, stiffness):
    height = share * 0.4
    force = float(np.hypot(*impact.strike_force(speed, height, 0.4, stiffness, mass)))
    assert impact.strike_speed(force, height, 0.4, stiffness, mass) == pytest.approx(speed)
    if share < 0.99:
        ledge = impact.strike_ledge(force, speed, 0.4, stiffness, mass)
        assert ledge == pytest.approx(height, rel=1e-5)


@given(height=st.floats(0.0, 0.39), more=st.floats(0.001, 0.2))
def test_a_higher_ledge_throws_back_more(height, more):
    low, _ = impact.strike_force(3.0, height, 0.4, 3e5, 200.0)
    high, _ = impact.strike_force(3.0, height + more, 0.4, 3e5, 200.0)
    assert high > low


def test_a_wall_is_met_square_and_level_ground_not_at_all():
    assert impact.strike_force(3.0, 0.5, 0.4, 3e5, 200.0)[1] == 0
    assert list(impact.strike_force(3.0, 0.0, 0.4, 3e5, 200.0)) == [0, 0]
    assert np.isinf(impact.strike_speed(1e4, 0.0, 0.4, 3e5, 200.0))


def test_a_force_that_no_ledge_can_reach():
    assert np.isinf(impact.strike_ledge(1e6, 1.0, 0.4, 3e5, 200.0))


def test_shapes_broadcast():
    got = impact.strike_force(np.ones((3, 1)), np.full(4, 0.2), 0.4, 3e5, 200.0)
    assert got[0].shape == got[1].shape == (3, 4)
    assert impact.landing_force(np.ones((3, 1)), np.full(4, 6e3), 3e5).shape == (3, 4)
