"""Trends and limits of bearings and hubs."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import bearing

LOAD = st.floats(100, 50e3)


@given(load=LOAD, more=st.floats(1.01, 3))
def test_life_falls_by_the_exponent(load, more):
    ratio = bearing.basic_life(60e3, load) / bearing.basic_life(60e3, load * more)
    assert ratio == pytest.approx(more ** (10 / 3))


@given(load=LOAD, turns=st.floats(0.1, 1e4))
def test_rating_and_life_are_inverse(load, turns):
    assert bearing.basic_life(bearing.rating_needed(load, turns), load) == pytest.approx(turns)


@pytest.mark.parametrize("factor", [bearing.ball_condition_factor, bearing.roller_condition_factor])
@pytest.mark.parametrize("at", [0.4, 1.0])
def test_the_printed_branches_of_the_oil_factor_meet(factor, at):
    # ISO 281: three branches for the viscosity ratio, printed to five digits.
    below, above = factor(np.array([at * (1 - 1e-9), at]), 0.05)
    assert below == pytest.approx(above, rel=1e-3)


@given(viscosity=st.floats(0.1, 3.9), clean=st.floats(0.0, 4.0))
def test_better_oil_and_less_dirt_never_shorten_life(viscosity, clean):
    for factor in (bearing.ball_condition_factor, bearing.roller_condition_factor):
        here = factor(viscosity, clean)
        assert 0.1 - 1e-12 <= here <= 50
        assert factor(viscosity, clean + 0.1) >= here - 1e-9
        # The branches are rounded in print, so they miss by a hair where they meet.
        assert factor(viscosity + 0.1, clean) >= here * (1 - 1e-2)


def test_adjusted_life_is_the_product_of_its_factors():
    got = bearing.adjusted_life(60e3, 10e3, reliability=0.95, condition=0.5)
    assert got == pytest.approx(6 ** (10 / 3) * bearing.reliability_factor(0.95) * 0.5)


@given(a=LOAD, b=LOAD, push=st.floats(-2e4, 2e4))
def test_a_tapered_pair_is_in_balance(a, b, push):
    pair = bearing.tapered_pair(a, b, push, 1.6, 1.4)
    assert pair.first_axial - pair.second_axial == pytest.approx(push, abs=1e-6)
    assert pair.first_axial >= bearing.induced_axial(a, 1.6) - 1e-6
    assert pair.second_axial >= bearing.induced_axial(b, 1.4) - 1e-6
    assert pair.first >= a
    assert pair.second >= b


@given(lateral=st.floats(-8e3, 8e3), offset=st.floats(-0.05, 0.1))
def test_hub_rows_are_in_balance(lateral, offset):
    rows = bearing.hub_rows(8e3, lateral, offset, 0.4, 0.065)
    assert rows.outer + rows.inner == pytest.approx(8e3)
    moment = (rows.outer - rows.inner) * 0.065 / 2
    assert moment == pytest.approx(bearing.hub_moment(8e3, lateral, offset, 0.4), abs=1e-6)


@given(load=LOAD, share=st.floats(0.01, 0.99))
def test_a_steady_duty_is_its_own_mean(load, share):
    loads, shares = np.array([load, -load]), np.array([share, 1 - share])
    assert bearing.mixed_load(loads, shares) == pytest.approx(load)


@given(heavy=st.floats(1.01, 5), share=st.floats(0.01, 0.99))
def test_a_mixed_duty_lies_between_its_loads_and_above_their_mean(heavy, share):
    got = bearing.mixed_load(np.array([1.0, heavy]), np.array([1 - share, share]))
    assert 1 - share + share * heavy < got < heavy


def test_static_safety_of_a_row():
    assert bearing.static_equivalent(4e3, 1e3, 0.8) == 4e3  # never under its radial load
    assert bearing.static_equivalent(4e3, 5e3, 0.8) == pytest.approx(6e3)
    assert bearing.static_safety(60e3, 6e3) == pytest.approx(10)


def test_shapes_broadcast():
    rows = bearing.hub_rows(np.full((3, 1), 8e3), np.zeros(4), 0.03, 0.4, 0.065)
    assert rows.outer.shape == (3, 4)
    assert bearing.mixed_load(np.ones((3, 4, 5)), np.full(5, 0.2)).shape == (3, 4)
    assert bearing.tapered_pair(np.ones((3, 1)), np.ones(4), 0.0, 1.6, 1.6).first.shape == (3, 4)
