"""Free-body balance of the knuckle, and signs of the steering axis."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import steering

PART = st.floats(-1e4, 1e4)
VECTOR = st.tuples(PART, PART, PART).map(np.array)
UPPER, LOWER = np.array([-0.012, 0.70, 0.52]), np.array([0.010, 0.73, 0.28])


@given(force=VECTOR, moment=VECTOR.map(lambda v: 0.1 * v))
def test_the_knuckle_is_in_balance(force, moment):
    patch = np.array([0.0, 0.80, 0.0])
    got = steering.joint_reactions(force, patch, moment, UPPER, LOWER)
    assert got.upper + got.lower + force == pytest.approx(np.zeros(3), abs=1e-6)
    axis = (UPPER - LOWER) / np.linalg.norm(UPPER - LOWER)
    left = np.cross(patch, force) + moment + np.cross(UPPER, got.upper) + np.cross(LOWER, got.lower)
    assert left == pytest.approx(
        got.steering_moment * axis, abs=1e-5
    )  # all that is left turns the wheel
    assert got.upper @ axis == pytest.approx(0, abs=1e-6)  # the lower joint carries the weight


def test_space_and_plane_agree_on_braking_and_drive():
    upper, lower = np.array([0, 0, 0.50]), np.array([0, 0, 0.28])
    push = np.array([-5600.0, 0, 0])
    braking = steering.joint_reactions(push, np.zeros(3), np.zeros(3), upper, lower)
    assert sorted(np.abs([braking.upper[0], braking.lower[0]])) == pytest.approx(
        list(steering.brake_joint_forces(5600, 0.40, 0.10, 0.12))
    )
    drive = steering.joint_reactions(-push, np.array([0, 0, 0.40]), np.zeros(3), upper, lower)
    assert np.abs([drive.upper[0], drive.lower[0]]) == pytest.approx(
        list(steering.drive_joint_forces(5600, 0.10, 0.12))
    )


@pytest.mark.parametrize("side", [1, -1])
def test_axis_leans_back_and_inward(side):
    axis = steering.axis_direction(np.radians(6), np.radians(10), side)
    assert np.linalg.norm(axis) == pytest.approx(1)
    assert axis[0] < 0
    assert axis[1] * side < 0


@given(
    push=VECTOR, caster=st.floats(-0.1, 0.3), lean=st.floats(0, 0.3), side=st.sampled_from([1, -1])
)
def test_moment_from_scrub_and_trail_is_the_moment_in_space(push, caster, lean, side):
    scrub, trail = 0.06, 0.03
    axis = steering.axis_direction(caster, lean, side)
    foot = np.array([0.4, side * 0.7, 0.0])
    patch = foot + np.array([-trail, side * scrub, 0.0])
    direct = steering.moment_about(axis, foot + 0.3 * axis, patch, push)
    got = steering.steering_moment(*push, 0.0, caster, lean, scrub, trail, side)
    assert got == pytest.approx(direct, abs=1e-6)


def test_signs_of_the_steering_moment():
    flat = {"caster": 0.0, "inclination": 0.0, "scrub": 0.05, "trail": 0.03}
    # A left wheel with its patch outboard toes out (left) when it is braked.
    assert steering.steering_moment(-1e3, 0, 0, 0, side=1, **flat) == pytest.approx(50)
    assert steering.steering_moment(-1e3, 0, 0, 0, side=-1, **flat) == pytest.approx(-50)
    # A side force to the left, behind the axis, steers right.
    assert steering.steering_moment(0, 1e3, 0, 0, side=1, **flat) == pytest.approx(-30)


@given(angle=st.floats(-0.3, 0.3), moment=st.floats(-1000, 1000))
def test_a_rod_in_space_holds_as_one_in_the_plane(angle, moment):
    axis, through = np.array([0, 0, 1.0]), np.zeros(3)
    joint = np.array([-0.15, 0, 0.1])
    direction = np.array([np.sin(angle), np.cos(angle), 0.0])
    tension = steering.rod_force_in_space(moment, axis, through, joint, direction)
    assert tension == pytest.approx(steering.rod_force(moment, 0.15, angle), abs=1e-9)
    held = steering.moment_about(axis, through, joint, tension * direction)
    assert held + moment == pytest.approx(0, abs=1e-9)


def test_a_drag_link_turns_both_wheels():
    assert steering.drag_link_force(100, 150, 0.20) == pytest.approx(250 / 0.20)


@given(difference=st.floats(-0.05, 0.05), diameter=st.floats(0.6, 1.2))
def test_toe_angle_and_length_are_inverse(difference, diameter):
    angle = steering.toe_angle(difference, diameter)
    assert steering.toe_length(angle, diameter) == pytest.approx(difference, abs=1e-12)
    assert angle == pytest.approx(difference / diameter, rel=1e-2, abs=1e-12)


def test_scrub_is_where_the_axis_misses_the_tyre():
    assert steering.scrub_radius(0.4, 0.4 * np.tan(0.2), 0.2) == pytest.approx(0, abs=1e-12)
    assert steering.scrub_radius(0.4, 0.12, 0.1) > steering.scrub_radius(0.4, 0.12, 0.2)


def test_arm_stress_is_moment_over_modulus():
    assert steering.arm_bending_stress(5e3, 0.1, 0.04, 0.02) == pytest.approx(
        5e3 * 0.1 / (0.02 * 0.04**2 / 6)
    )


def test_shapes_broadcast():
    got = steering.joint_reactions(np.ones((5, 1, 3)), np.zeros((2, 3)), np.zeros(3), UPPER, LOWER)
    assert got.upper.shape == (5, 2, 3)
    assert got.steering_moment.shape == (5, 2)
    assert steering.axis_direction(np.zeros((5, 1)), np.zeros(2), 1).shape == (5, 2, 3)
