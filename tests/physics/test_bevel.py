"""Identities and trends of bevel gears."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import bevel, bevel_rating

RATIO = st.floats(1.0, 7.0)
PRESSURE = st.floats(0.25, 0.45)
SPIRAL = st.floats(0.0, 0.7)


@given(ratio=RATIO, shafts=st.floats(1.0, 2.0))
def test_the_two_cones_fill_the_shaft_angle(ratio, shafts):
    both = bevel.pitch_angle(10, 10 * ratio, shafts) + bevel.pitch_angle(10 * ratio, 10, shafts)
    assert both == pytest.approx(shafts)


@given(pressure=PRESSURE, spiral=SPIRAL, ratio=RATIO, flank=st.sampled_from([1.0, -1.0]))
def test_the_push_is_square_to_the_tooth(pressure, spiral, ratio, flank):
    mesh = bevel.spiral_forces(1e4, pressure, spiral, bevel.pitch_angle(10, 10 * ratio), flank)
    normal = 1e4 / (np.cos(pressure) * np.cos(spiral))
    assert np.sqrt(np.sum(np.square(mesh))) == pytest.approx(normal)


@given(pressure=PRESSURE, ratio=RATIO)
def test_a_straight_tooth_is_a_spiral_of_no_angle(pressure, ratio):
    cone = bevel.pitch_angle(10, 10 * ratio)
    straight = bevel.straight_forces(1e4, pressure, cone)
    assert list(straight) == pytest.approx(list(bevel.spiral_forces(1e4, pressure, 0.0, cone)))


def test_the_gear_pushes_back():
    # Square shafts: what is axial on one member is radial on the other.
    pinion, gear = bevel.pitch_angle(11, 41), bevel.pitch_angle(41, 11)
    on_pinion = bevel.straight_forces(1e4, 0.35, pinion)
    on_gear = bevel.straight_forces(1e4, 0.35, gear)
    assert (on_pinion.axial, on_pinion.radial) == pytest.approx((on_gear.radial, on_gear.axial))


def test_a_hypoid_pinion_with_the_same_spiral_is_a_bevel_pinion():
    assert bevel.hypoid_pinion_force(1e4, 0.6, 0.6) == pytest.approx(1e4)
    assert bevel.hypoid_pinion_force(1e4, 0.85, 0.6) < 1e4


@given(torque=st.floats(500, 50e3), size=st.floats(0.012, 0.016))
def test_ring_size_and_its_torque_are_inverse(torque, size):
    back = bevel.torque_capacity_by_ring(bevel.ring_diameter(torque, size), size)
    assert back == pytest.approx(torque)


def test_depths_of_a_blank_add_up():
    blank = bevel.spiral_blank(11, 41, 0.22, 0.032, 0.6, 0.35, 0.115, 0.4)
    for member, mate in ((blank.pinion, blank.gear), (blank.gear, blank.pinion)):
        assert member.addendum + member.dedendum == pytest.approx(blank.whole_depth)
        assert member.dedendum - mate.addendum == pytest.approx(blank.clearance)
        # Tip and mating root cones stay parallel: the same clearance from toe to heel.
        assert member.addendum_angle == pytest.approx(mate.dedendum_angle)


def test_the_blank_of_many_sets_at_once():
    teeth = np.array([41.0, 43.0])
    blank = bevel.spiral_blank(11, teeth, 0.22, 0.032, 0.6, 0.35, 0.115, 0.4)
    one = bevel.spiral_blank(11, 43.0, 0.22, 0.032, 0.6, 0.35, 0.115, 0.4)
    assert blank.gear.root_angle[1] == pytest.approx(one.gear.root_angle)


@given(speed=st.floats(0, 20), quality=st.integers(5, 11))
def test_finer_gears_and_lower_speeds_are_kinder(speed, quality):
    here = bevel_rating.dynamic_factor(speed, quality)
    assert here >= 1
    assert bevel_rating.dynamic_factor(speed + 1, quality) > here
    if quality < 11:
        assert bevel_rating.dynamic_factor(speed, quality + 1) <= here
        assert bevel_rating.fastest_speed(quality + 1) > bevel_rating.fastest_speed(quality)


@given(cycles=st.floats(1, 1e10), more=st.floats(1, 100))
def test_more_cycles_never_allow_more(cycles, more):
    for factor in (bevel_rating.bending_cycle_factor, bevel_rating.contact_cycle_factor):
        # The printed branches miss each other by under one percent.
        assert factor(cycles * more) <= factor(cycles) * 1.01


@given(reliability=st.floats(0.9, 0.9998))
def test_more_reliability_asks_for_more(reliability):
    more = reliability + (0.9999 - reliability) / 2
    assert bevel_rating.bending_reliability(more) > bevel_rating.bending_reliability(reliability)


@given(force=st.floats(100, 1e5), face=st.floats(0.01, 0.06), module=st.floats(0.002, 0.01))
def test_stress_and_force_are_inverse(force, face, module):
    bending = bevel_rating.bending_stress(force, face, module, 0.24)
    assert bevel_rating.bending_force(bending, face, module, 0.24) == pytest.approx(force)
    stiff = bevel_rating.contact_stiffness(206e9)
    contact = bevel_rating.contact_stress(force, face, 0.06, 0.08, stiff, crowning=1.0)
    assert bevel_rating.contact_force(contact, face, 0.06, 0.08, stiff) == pytest.approx(force)
