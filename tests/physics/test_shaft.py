"""Trends, limits and shapes of shafts in torsion."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from axlewright.physics import shaft

DIAMETER = st.floats(0.01, 0.1)
SHARE = st.floats(0.0, 0.95)
LIMIT = 600e6


@given(diameter=DIAMETER, more=st.floats(1.001, 2.0), share=SHARE)
def test_a_thicker_shaft_is_stronger(diameter, more, share):
    bore = share * diameter
    for strength in (shaft.yield_torque, shaft.plastic_torque):
        assert strength(more * diameter, bore, LIMIT) > strength(diameter, bore, LIMIT)


@given(diameter=DIAMETER)
def test_a_solid_bar_keeps_a_third_in_hand(diameter):
    first = shaft.yield_torque(diameter, 0.0, LIMIT)
    assert shaft.plastic_torque(diameter, 0.0, LIMIT) == pytest.approx(4 / 3 * first)


def test_a_bore_of_half_costs_a_sixteenth_of_strength():
    # Closed form: 1 - (1/2)^4, for a quarter of the mass.
    ratio = shaft.yield_torque(0.0333, 0.0333 / 2, LIMIT) / shaft.yield_torque(0.0333, 0.0, LIMIT)
    assert ratio == pytest.approx(0.9375, rel=1e-12)


@given(diameter=DIAMETER, share=SHARE)
def test_surface_stress_at_first_yield_is_the_yield_stress(diameter, share):
    bore = share * diameter
    torque = shaft.yield_torque(diameter, bore, LIMIT)
    assert shaft.shear_stress(torque, diameter, bore) == pytest.approx(LIMIT)


@given(diameter=DIAMETER, share=SHARE, at=st.floats(0.01, 0.99))
def test_core_and_torque_are_inverse(diameter, share, at):
    bore = share * diameter
    first = shaft.yield_torque(diameter, bore, LIMIT)
    torque = first + at * (shaft.plastic_torque(diameter, bore, LIMIT) - first)
    core = shaft.elastic_core(torque, diameter, bore, LIMIT)
    assert bore <= core <= diameter
    back = shaft.part_plastic_torque(core, diameter, bore, LIMIT)
    assert back == pytest.approx(torque, rel=1e-9)


def test_part_plastic_torque_is_the_integral_of_stress():
    core, outer, inner = 0.0125, 0.025, 0.008
    stress = lambda r: LIMIT * min(r / core, 1.0)
    torque, _ = quad(lambda r: 2 * np.pi * r**2 * stress(r), inner, outer, points=[core])
    got = shaft.part_plastic_torque(2 * core, 2 * outer, 2 * inner, LIMIT)
    assert got == pytest.approx(torque, rel=1e-9)


@given(torque=st.floats(-1.4, 1.4))
def test_twist_is_odd_and_leaves_nothing_while_elastic(torque):
    first = float(shaft.yield_torque(0.03, 0.0, LIMIT))
    given_ = {
        "length": 1.0,
        "diameter": 0.03,
        "bore": 0.0,
        "shear_yield": LIMIT,
        "shear_modulus": 79e9,
    }
    twisted = shaft.twist(torque * first, **given_)
    left = shaft.residual_twist(torque * first, **given_)
    if abs(torque) > 4 / 3 + 1e-9:
        assert np.isnan(twisted)
    elif abs(torque) < 4 / 3 - 1e-6:
        assert shaft.twist(-torque * first, **given_) == pytest.approx(-twisted)
        if abs(torque) <= 1:
            assert left == pytest.approx(0, abs=1e-15)
        else:
            assert left * torque > 0


def test_residual_stress_carries_no_torque():
    diameter, bore = 0.05, 0.02
    torque = 1.15 * float(shaft.yield_torque(diameter, bore, LIMIT))
    core = float(shaft.elastic_core(torque, diameter, bore, LIMIT)) / 2
    kept = lambda r: float(shaft.residual_shear(r, torque, diameter, bore, LIMIT))
    left, _ = quad(lambda r: 2 * np.pi * r**2 * kept(r), bore / 2, diameter / 2, points=[core])
    assert left == pytest.approx(0, abs=1e-6 * torque)


@given(near=st.floats(0.1, 2), far=st.floats(0.1, 2))
def test_two_fixed_ends_share_all_the_torque(near, far):
    assert shaft.fixed_end_share(near, far) + shaft.fixed_end_share(far, near) == pytest.approx(1)


def test_shapes_broadcast():
    torque, diameter = np.ones((4, 1)) * 5e3, np.array([0.03, 0.035, 0.04])
    assert shaft.twist(torque, 1.0, diameter, 0.0, LIMIT, 79e9).shape == (4, 3)
    assert shaft.residual_shear(0.01, torque, diameter, 0.0, LIMIT).shape == (4, 3)
