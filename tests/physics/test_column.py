"""Limits and trends of struts."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import column

STEEL = {"yield_stress": 350e6, "modulus": 205e9}
LENGTH = st.floats(0.1, 3.0)
OUTER = st.floats(0.015, 0.06)
SHARE = st.floats(0.0, 0.9)


@given(length=LENGTH, outer=OUTER, share=SHARE)
def test_a_straight_rod_never_passes_euler_or_squash(length, outer, share):
    inner = share * outer
    got = column.critical_load(length, outer, inner, **STEEL)
    assert got <= column.euler_load(length, outer, inner, 205e9) * (1 + 1e-9)
    assert got <= 350e6 * column.area(outer, inner)


def test_johnson_and_euler_meet_with_one_slope():
    outer, inner = 0.032, 0.022
    # Slenderness where Euler gives half of yield: budynas9, ch. 4.
    gyration = np.hypot(outer, inner) / 4
    length = gyration * np.pi * np.sqrt(2 * 205e9 / 350e6)
    assert column.slenderness(length, outer, inner) == pytest.approx(length / gyration)
    euler = column.euler_load(length, outer, inner, 205e9)
    assert column.johnson_load(length, outer, inner, **STEEL) == pytest.approx(euler)
    step = np.array([-1e-5, 1e-5])
    slope = np.diff(column.euler_load(length + step, outer, inner, 205e9))
    other = np.diff(column.johnson_load(length + step, outer, inner, **STEEL))
    assert slope == pytest.approx(other, rel=1e-4)


def test_a_very_short_rod_squashes():
    assert column.critical_load(1e-4, 0.03, 0.0, **STEEL) == pytest.approx(
        350e6 * column.area(0.03), rel=1e-6
    )


@given(length=LENGTH, outer=OUTER, share=SHARE, bow=st.floats(1e-4, 0.03), more=st.floats(1.01, 3))
def test_a_bow_costs_strength_and_more_bow_costs_more(length, outer, share, bow, more):
    inner = share * outer
    got = column.bowed_load(length, outer, inner, **STEEL, bow=bow)
    least = min(
        350e6 * column.area(outer, inner), float(column.euler_load(length, outer, inner, 205e9))
    )
    assert 0 < got < least
    assert column.bowed_load(length, outer, inner, **STEEL, bow=bow * more) < got


@given(length=LENGTH, outer=OUTER, bow=st.floats(1e-4, 0.03))
def test_a_bowed_rod_yields_where_stress_says_so(length, outer, bow):
    load = column.bowed_load(length, outer, 0.0, **STEEL, bow=bow)
    euler = column.euler_load(length, outer, 0.0, 205e9)
    bent = load * column.bowed_deflection(load, euler, bow)
    stress = load / column.area(outer) + bent * outer / 2 / column.second_moment(outer)
    assert stress == pytest.approx(350e6, rel=1e-6)


def test_no_bow_is_a_straight_perfect_rod():
    euler = float(column.euler_load(2.0, 0.02, 0.0, 205e9))
    assert column.bowed_load(2.0, 0.02, 0.0, **STEEL, bow=0.0) == pytest.approx(euler)
    assert np.isinf(column.bowed_deflection(euler, euler, 0.001))


@given(length=LENGTH, outer=OUTER, offset=st.floats(1e-4, 0.02))
def test_an_offset_push_yields_where_the_secant_says_so(length, outer, offset):
    load = column.eccentric_load(length, outer, 0.0, **STEEL, offset=offset)
    area, second = column.area(outer), column.second_moment(outer)
    half = length / 2 * np.sqrt(load / (205e9 * second))
    stress = load / area * (1 + offset * outer / 2 * area / second / np.cos(half))
    assert stress == pytest.approx(350e6, rel=1e-5)


def test_shapes_broadcast():
    got = column.critical_load(np.ones((4, 1)), np.full(3, 0.03), 0.02, 350e6, 205e9, 1.0)
    assert got.shape == (4, 3)
    got = column.eccentric_load(np.ones((4, 1)), np.full(3, 0.03), 0.02, 350e6, 205e9, 0.002)
    assert got.shape == (4, 3)
