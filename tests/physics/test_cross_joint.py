"""Kinematics, trends and limits of cross joints."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from axlewright.physics import cross_joint

BEND = st.floats(0.0, 0.9)


@pytest.mark.parametrize("bend", np.radians([0.0, 5.0, 17.0, 30.0]))
def test_a_turn_in_is_a_turn_out(bend):
    turned, _ = quad(lambda turn: cross_joint.speed_ratio(bend, turn), 0, 2 * np.pi)
    assert turned == pytest.approx(2 * np.pi)


@pytest.mark.parametrize("bend", np.radians([5.0, 17.0, 30.0]))
def test_ratio_and_acceleration_are_slopes(bend):
    turn, step = np.radians(37.0), 1e-6
    # Geometry of the cross: tan(output) = tan(input) / cos(bend).
    out = lambda t: np.arctan2(np.sin(t), np.cos(t) * np.cos(bend))
    slope = (out(turn + step) - out(turn - step)) / (2 * step)
    assert cross_joint.speed_ratio(bend, turn) == pytest.approx(slope, rel=1e-6)
    ratio = lambda t: cross_joint.speed_ratio(bend, t)
    slope = (ratio(turn + step) - ratio(turn - step)) / (2 * step)
    assert cross_joint.acceleration_ratio(bend, turn) == pytest.approx(slope, rel=1e-5)


@given(bend=BEND)
def test_swing_and_lead_match_a_whole_turn(bend):
    turn = np.linspace(0, np.pi, 4001)
    ratio = cross_joint.speed_ratio(bend, turn)
    assert np.ptp(ratio) == pytest.approx(cross_joint.speed_swing(bend), rel=1e-9, abs=1e-12)
    out = np.unwrap(np.arctan2(np.sin(turn), np.cos(turn) * np.cos(bend)))
    assert np.abs(out - turn).max() == pytest.approx(
        cross_joint.largest_lead(bend), rel=1e-4, abs=1e-7
    )


def test_two_equal_bends_in_phase_cancel():
    assert cross_joint.equivalent_angle(np.array([0.2, 0.2]), np.array([1, -1])) == 0


def test_two_joints_against_true_kinematics():
    # Equal bends whose second yoke is set wrong by a known angle.
    bend, error = np.radians(8.0), np.radians(12.0)
    turn = np.linspace(0, 2 * np.pi, 20_001)
    middle = np.unwrap(np.arctan2(np.sin(turn), np.cos(turn) * np.cos(bend)))
    second = cross_joint.speed_ratio(bend, middle + error + np.pi / 2)
    swing = np.ptp(cross_joint.speed_ratio(bend, turn) * second)
    assert cross_joint.phase_error_swing(bend, error) == pytest.approx(swing, rel=1e-2)


@given(bend=st.floats(0.0, 0.7), more=st.floats(0.01, 0.2))
def test_more_bend_loads_every_part_more(bend, more):
    force = [cross_joint.trunnion_force(2e3, 0.04, b) for b in (bend, bend + more)]
    assert force[1] > force[0]
    assert cross_joint.secondary_couple(2e3, bend + more) > cross_joint.secondary_couple(2e3, bend)
    hold = [
        cross_joint.joint_capacity(0.018, 0.003, 0.04, 0.012, 9e8, b) for b in (bend, bend + more)
    ]
    assert hold[1] < hold[0]


def test_force_through_a_turn_never_passes_the_worst():
    # In the driving yoke's plane the pair is T / (2 R cos(bend)); a quarter turn on, T / (2 R).
    bend, torque, arm = 0.5, 2e3, 0.04
    turn = np.linspace(0, 2 * np.pi, 721)
    output = torque / cross_joint.speed_ratio(bend, turn)
    assert output.max() / (2 * arm) == pytest.approx(cross_joint.trunnion_force(torque, arm, bend))


@given(trunnion=st.floats(0.012, 0.04), bend=st.floats(0.0, 0.8))
def test_capacity_is_where_stress_meets_yield(trunnion, bend):
    torque = cross_joint.joint_capacity(trunnion, 0.003, 0.04, 0.012, 900e6, bend)
    force = cross_joint.trunnion_force(torque, 0.04, bend)
    assert cross_joint.trunnion_bending(force, trunnion, 0.003, 0.012) == pytest.approx(900e6)


def test_plastic_capacity_of_a_plain_pin_is_higher_by_its_shape():
    arguments = (0.018, 0.0, 0.04, 0.012, 900e6, 0.3)
    ratio = cross_joint.plastic_joint_capacity(*arguments) / cross_joint.joint_capacity(*arguments)
    assert ratio == pytest.approx(16 / (3 * np.pi))  # round bar: budynas9, plastic bending


def test_needle_pressure_follows_hertz():
    # Line contact: half width b and peak p satisfy F = pi b L p / 2 (budynas9, ch. 3).
    force, trunnion, roller, rollers, length = 20e3, 0.018, 0.0025, 22, 0.012
    peak = cross_joint.needle_pressure(force, trunnion, roller, rollers, length)
    busiest = 4.6 * force / rollers
    softness = 2 * (1 - 0.3**2) / 206e9
    half_width = np.sqrt(2 * busiest * softness / (np.pi * length * (1 / trunnion + 1 / roller)))
    assert peak == pytest.approx(2 * busiest / (np.pi * half_width * length))


def test_ear_takes_the_worse_of_eye_and_root():
    eye = cross_joint.eye_stress(20e3, 0.006, 0.015)
    root = cross_joint.ear_root_stress(20e3, 0.030, 0.045, 0.015)
    ear = cross_joint.ear_stress(20e3, 0.006, 0.015, reach=0.030, width=0.045)
    assert ear == max(eye, root)
    assert cross_joint.cap_pressure(20e3, 0.027, 0.015) == pytest.approx(20e3 / (0.027 * 0.015))


@given(bend=st.floats(0.01, 0.5), torque=st.floats(100, 3000), more=st.floats(1.01, 2.0))
def test_life_falls_with_torque_and_bend(bend, torque, more):
    life = cross_joint.life_turns(torque, bend, 1000.0)
    assert cross_joint.life_turns(torque * more, bend, 1000.0) == pytest.approx(
        life * more ** (-10 / 3)
    )
    assert cross_joint.life_turns(torque, bend * more, 1000.0) < life


def test_shapes_broadcast():
    torque, bend = np.ones((6, 1)) * 2e3, np.linspace(0, 0.6, 4)
    assert cross_joint.trunnion_force(torque, 0.04, bend).shape == (6, 4)
    assert cross_joint.joint_capacity(np.full((6, 1), 0.018), 0, 0.04, 0.012, 9e8, bend).shape == (
        6,
        4,
    )
    assert cross_joint.equivalent_angle(np.ones((6, 4, 2)), np.array([1, -1])).shape == (6, 4)
