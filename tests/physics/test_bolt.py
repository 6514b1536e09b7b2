"""Trends and balance of bolts."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import bolt

PRELOAD = st.floats(1e3, 2e5)


@given(preload=PRELOAD, factor=st.floats(0.1, 0.4))
def test_torque_and_preload_are_inverse(preload, factor):
    torque = bolt.torque_from_preload(preload, 0.014, factor)
    assert bolt.preload_from_torque(torque, 0.014, factor) == pytest.approx(preload)


@given(friction=st.floats(0.05, 0.3))
def test_more_friction_means_less_preload_and_a_larger_nut_factor(friction):
    preload = [
        bolt.tightening_preload(0.014, 0.0015, 940e6, mu) for mu in (friction, friction + 0.02)
    ]
    assert preload[1] < preload[0]
    factor = [bolt.nut_factor(0.014, 0.0015, 0.0175, mu, mu) for mu in (friction, friction + 0.02)]
    assert factor[1] > factor[0]


@given(friction=st.floats(0.05, 0.3))
def test_rounded_and_full_torque_agree(friction):
    # The 0.16 P + 0.58 d2 mu form is the full screw with small lead, to about one percent.
    rounded = bolt.torque_by_friction(5e4, 0.014, 0.0015, 0.0175, friction, friction)
    full = bolt.screw_torque(
        5e4, bolt.flank_diameter(0.014, 0.0015), 0.0015, 0.0175, friction, friction
    )
    assert rounded == pytest.approx(full, rel=1.5e-2)


def test_twist_free_bolt_reaches_its_share_of_yield():
    # With no friction and hardly any pitch there is no twist: 0.9 Rp over the section.
    pull = bolt.tightening_preload(0.014, 1e-7, 940e6, 0.0)
    assert pull == pytest.approx(0.9 * 940e6 * np.pi / 4 * 0.014**2, rel=1e-4)


@given(preload=PRELOAD, share=st.floats(0.05, 0.5), pull=st.floats(0, 4e5))
def test_bolt_load_before_and_after_the_joint_opens(preload, share, pull):
    load = bolt.bolt_load(preload, pull, share)
    if pull <= bolt.opening_pull(preload, share):
        assert load == pytest.approx(preload + share * pull)
    else:
        assert load == pytest.approx(pull)


@given(
    places=st.lists(
        st.tuples(st.integers(-10, 10), st.integers(-10, 10)), min_size=2, max_size=6, unique=True
    ),
    across=st.floats(-1e4, 1e4),
    along=st.floats(-1e4, 1e4),
)
def test_a_group_balances_its_load(places, across, along):
    points = np.array(places) * 0.01
    force, at = np.array([across, along]), np.array([0.3, -0.1])
    loads = bolt.group_loads(points, force, at)
    assert loads.sum(axis=0) == pytest.approx(force, abs=1e-6)
    turned = (points[:, 0] * loads[:, 1] - points[:, 1] * loads[:, 0]).sum()
    assert turned == pytest.approx(at[0] * along - at[1] * across, abs=1e-6)


@given(grip=st.floats(0.01, 0.2), more=st.floats(1.01, 2))
def test_a_longer_grip_is_softer(grip, more):
    here = bolt.member_stiffness(0.016, grip, 205e9)
    assert 0 < bolt.member_stiffness(0.016, grip * more, 205e9) < here


def test_two_faces_hold_twice():
    assert bolt.slip_resistance(1e5, 0.2, 2) == 2 * bolt.slip_resistance(1e5, 0.2)


def test_shear_and_hole_pressure_are_force_over_area():
    assert bolt.shear_stress(1e4, 1e-4, 2) == pytest.approx(50e6)
    assert bolt.hole_pressure(1e4, 0.016, 0.006) == pytest.approx(1e4 / 96e-6)


def test_shapes_broadcast():
    assert bolt.tightening_preload(np.full((3, 1), 0.014), 0.0015, np.full(4, 9e8), 0.1).shape == (
        3,
        4,
    )
    loads = bolt.group_loads(np.random.default_rng(1).random((5, 4, 2)), np.ones(2), np.zeros(2))
    assert loads.shape == (5, 4, 2)
