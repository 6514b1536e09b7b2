"""A propeller shaft in space and at speed."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from axlewright.physics import braking, cross_joint, driveline, driveline_speed

RPM = 2 * np.pi / 60
TURN = np.linspace(0.0, np.pi, 181)


def line(*degrees):
    """Axes in one upright plane, each so many degrees above the level."""
    return driveline.axis_direction(np.radians(degrees))


def test_single_joint_in_space_is_the_plane_one():
    axes = line(0.0, -20.0)
    got = driveline.line_speed_ratio(axes, TURN)
    # Hooke's joint (Khurmi, Gupta): cos b / (1 - sin^2 b cos^2 turn)
    assert got == pytest.approx(cross_joint.speed_ratio(np.radians(20), TURN), abs=1e-14)
    assert driveline.line_swing(axes) == pytest.approx(
        float(np.sin(np.radians(20)) * np.tan(np.radians(20))), rel=1e-7
    )


def test_turns_of_two_yokes_are_those_of_the_tangent_rule():
    # tan(driven) = tan(driving) / cos(bend), both from square to the plane; numbers of its slope.
    bend = np.radians(25.0)
    driven = np.unwrap(2 * np.arctan2(np.sin(TURN) * np.cos(bend), np.cos(TURN))) / 2
    slope = np.gradient(driven, TURN)
    # the rule's turn starts a quarter later than ours
    ours = driveline.line_speed_ratio(line(0.0, 25.0), TURN + np.pi / 2)
    assert ours[2:-2] == pytest.approx(slope[2:-2], abs=2e-4)


@settings(max_examples=40, deadline=None)
@given(rise=st.floats(-0.4, 0.4), aside=st.floats(-0.3, 0.3), out=st.floats(-0.2, 0.2))
def test_equal_and_parallel_ends_cancel(rise, aside, out):
    """Fact of the trade: common practice, no source; and exact by geometry."""
    ends = driveline.axis_direction(out)
    axes = np.stack([ends, driveline.axis_direction(rise, aside), ends])
    assert driveline.line_speed_ratio(axes, TURN) == pytest.approx(1.0, abs=1e-12)
    assert driveline.line_angle(axes) == pytest.approx(0.0, abs=1e-7)


def test_broken_back_ends_cancel_too():
    # common practice, no source: equal angles, ends not parallel but in one plane
    axes = line(0.0, -8.0, -16.0)
    assert driveline.line_speed_ratio(axes, TURN) == pytest.approx(1.0, abs=1e-12)


def test_yokes_a_quarter_turn_apart_swing_twice():
    axes = line(0.0, -10.0, 0.0)
    ratio = driveline.line_speed_ratio(axes, TURN, np.array([np.pi / 2]))
    cosine = np.cos(np.radians(10))
    # ratio runs between 1/cos^2 and cos^2 of the angle (derived)
    assert ratio.max() == pytest.approx(cosine**-2, rel=1e-12)
    assert ratio.min() == pytest.approx(cosine**2, rel=1e-12)
    angle = driveline.line_angle(axes, np.array([np.pi / 2]))
    assert angle == pytest.approx(np.radians(10) * np.sqrt(2), rel=1e-9)


@pytest.mark.parametrize(("error", "swing"), [(5, 0.00534), (10, 0.01063), (20, 0.02094)])
def test_swing_left_by_yokes_not_in_line(error, swing):
    # Derived table for 10 and 10 degrees: 2 U sin(error) at small angles, to 1 %.
    got = driveline.line_swing(line(0.0, -10.0, 0.0), np.array([np.radians(error)]))
    assert got == pytest.approx(swing, rel=0.015)


def test_planes_square_to_each_other_add():
    # One joint bends down, the other aside, each 5 degrees, yokes in line: the squares add.
    first, shaft = line(0.0, -5.0)
    across = np.cross(shaft, [0.0, 1.0, 0.0])
    turned = np.cos(np.radians(5)) * shaft + np.sin(np.radians(5)) * np.array([0.0, 1.0, 0.0])
    assert np.dot(across, turned) == pytest.approx(0.0, abs=1e-12)
    axes = np.stack([first, shaft, turned])
    assert driveline.line_angle(axes) == pytest.approx(np.radians(5) * np.sqrt(2), rel=1e-9)
    as_one = driveline.angle_of_swing(driveline.line_swing(axes))
    assert as_one == pytest.approx(np.radians(5) * np.sqrt(2), rel=1e-3)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.floats(-0.12, 0.12), min_size=4, max_size=4),
    st.floats(-1.5, 1.5),
)
def test_small_angle_rule_agrees_with_the_exact_swing(angles, phase):
    one, two, three, four = angles
    axes = np.stack(
        [
            driveline.axis_direction(0.0),
            driveline.axis_direction(one, two),
            driveline.axis_direction(three, four),
        ]
    )
    exact = np.square(driveline.angle_of_swing(driveline.line_swing(axes, np.array([phase]))))
    rule = np.square(driveline.line_angle(axes, np.array([phase])))
    # small-angle rule: off by the fourth power of the angles
    assert rule == pytest.approx(exact, abs=6 * 0.12**4)


def test_a_centred_double_joint_turns_evenly():
    axes = driveline.double_joint_line(line(0.0, -24.0))
    assert driveline.joint_angles(axes) == pytest.approx(np.radians([12.0, 12.0]), abs=1e-12)
    assert driveline.line_speed_ratio(axes, TURN) == pytest.approx(1.0, abs=1e-12)


def test_double_joint_leaves_the_pinion_joint_alone():
    axes = driveline.double_joint_line(line(2.0, -14.0, -13.0))
    assert driveline.line_angle(axes) == pytest.approx(np.radians(1.0), rel=1e-6)


def test_compound_angle_by_vectors():
    # Slopes of 4 and 3 degrees: 4.994, not 5.000 (tangents add at right angles).
    axes = np.array([[1.0, 0.0, 0.0], [1.0, np.tan(np.radians(3)), np.tan(np.radians(4))]])
    [got] = driveline.joint_angles(driveline.unit_vectors(axes))
    assert np.degrees(got) == pytest.approx(4.994, abs=1e-3)
    assert got == pytest.approx(
        float(cross_joint.compound_bend(np.radians(3), np.radians(4))), abs=1e-12
    )


def test_a_straight_line_has_no_swing_and_a_bad_number_no_answer():
    assert driveline.line_swing(line(3.0, 3.0, 3.0)) == pytest.approx(0.0, abs=1e-12)
    assert driveline.line_angle(line(3.0, 3.0, 3.0)) == pytest.approx(0.0, abs=1e-9)
    axes = np.stack([line(0.0, -5.0), line(0.0, np.nan)])
    assert np.isfinite(driveline.line_swing(axes)).tolist() == [True, False]


def test_criterion_of_an_industrial_shaft_maker():
    # swing of 0.0027: 2.977 degrees, the "3 degree" rule
    assert np.degrees(driveline.angle_of_swing(0.0027)) == pytest.approx(2.977, abs=1e-3)
    bends = np.radians([1e-4, 1.0, 20.0, 45.0])
    assert driveline.angle_of_swing(cross_joint.speed_swing(bends)) == pytest.approx(bends)


# Printed table of the greatest second angle at 0, 1, ... degrees at the first joint, yokes in
# line: a public page on vehicle driveline design that refers to SAE AE-7, 3.1.1. Every entry is
# 400 rad/s^2, +- its own rounding.
TWO_JOINTS = {
    1500: [7.3, 7.4, 7.6, 7.9, 8.3, 8.9, 9.5, 10.1, 10.8, 11.6],
    1600: [6.9, 6.9, 7.1, 7.5, 7.9, 8.5, 9.1, 9.8, 10.5],
    1700: [6.5, 6.5, 6.8, 7.1, 7.6, 8.2, 8.8],
}


@pytest.mark.parametrize("rpm", TWO_JOINTS)
def test_printed_table_of_two_joints(rpm):
    printed = TWO_JOINTS[rpm]
    first = np.radians(np.arange(len(printed)))
    got = driveline_speed.allowed_second_angle(first, 400.0, rpm * RPM)
    assert np.degrees(got) == pytest.approx(printed, abs=0.07)
    bends = np.stack([first, got], axis=-1)
    whole = cross_joint.equivalent_angle(bends, np.array([-1.0, 1.0]))
    assert driveline_speed.joint_acceleration(rpm * RPM, whole) == pytest.approx(400.0)


# Printed on two public pages: greatest single-joint angle by speed; about 1000 rad/s^2.
ONE_JOINT = {
    5000: 3.2,
    4500: 3.7,
    4000: 4.2,
    3500: 5.0,
    3000: 5.8,
    2500: 7.0,
    2000: 8.7,
    1500: 11.5,
}


@pytest.mark.parametrize(("rpm", "degrees"), ONE_JOINT.items())
def test_printed_table_of_one_joint(rpm, degrees):
    got = np.degrees(driveline_speed.angle_at_acceleration(1000.0, rpm * RPM))
    assert got == pytest.approx(degrees, abs=0.15 if rpm <= 4000 else 0.3)


def test_greatest_acceleration_of_one_joint():
    # Khurmi, Gupta: 20 degrees at 1500 rev/min, 3083.4 rad/s^2 (printed with a rounded 3090).
    got = driveline_speed.exact_joint_acceleration(1500 * RPM, np.radians(20))
    assert got == pytest.approx(3083.4, rel=1e-4)
    sampled = np.abs(cross_joint.acceleration_ratio(np.radians(20), np.linspace(0, np.pi, 40001)))
    assert got == pytest.approx(sampled.max() * (1500 * RPM) ** 2, rel=1e-7)
    small = np.radians(2.0)
    assert driveline_speed.exact_joint_acceleration(100.0, small) == pytest.approx(
        driveline_speed.joint_acceleration(100.0, small), rel=2e-3
    )
    assert driveline_speed.exact_joint_acceleration(100.0, 0.0) == 0.0


def test_whirling_speed_of_a_tube():
    inch = 0.0254
    psi = 6894.757293
    # 48 in of 3.0 x 0.125 in steel, 29e6 psi, 0.283 lb/in3: pinned beam, 8262 rev/min with a
    # density of 0.00883 slug/in3 = 0.2841 lb/in3 (derived; a printed 5800 is this over root two)
    density = 0.00883 * 14.593903 / inch**3
    got = driveline_speed.whirling_speed(48 * inch, 3 * inch, 2.75 * inch, 29e6 * psi, density)
    assert got / RPM == pytest.approx(8262.0, rel=1e-3)
    density = 0.00305 * 14.593903 / inch**3
    got = driveline_speed.whirling_speed(48 * inch, 3 * inch, 2.75 * inch, 10e6 * psi, density)
    assert got / RPM == pytest.approx(8255.0, rel=1e-3)


def test_whirling_speed_by_the_handbook_constant():
    # Steel tube: 1.2e8 sqrt(D^2 + d^2) / L^2 in mm, rev/min (constant 1.2070e8 at 206 GPa, 7850).
    got = driveline_speed.whirling_speed(1.2, 0.0635, 0.0595) / RPM
    assert got == pytest.approx(1.2070e8 * np.hypot(63.5, 59.5) / 1200**2, rel=1e-4)


def test_a_whirling_tube_meets_its_road_speed():
    # 4000 rev/min, 0.4 m, 4.1: 4000 * 2 pi / 60 * 0.4 / 4.1 = 40.87 m/s (arithmetic)
    got = driveline_speed.road_speed_at(4000 * RPM, 0.4, 4.1)
    assert got == pytest.approx(40.866, abs=1e-3)
    assert driveline_speed.top_shaft_speed(4500 * RPM, 1.0, 2.0) / RPM == pytest.approx(2250.0)


def test_pinion_that_looks_at_the_transfer_case():
    nose, case = np.array([0.30, 0.02]), np.array([1.15, 0.24])
    rise = driveline.pinion_rise_along_shaft(nose, case, 0.03, np.radians(1.0))
    by = rise - 0.03
    along = np.cos(by) * nose[0] - np.sin(by) * nose[1]
    up = np.sin(by) * nose[0] + np.cos(by) * nose[1]
    slope = np.arctan2(case[1] - up, case[0] - along)
    assert slope - rise == pytest.approx(np.radians(1.0), abs=1e-12)


def test_pinion_parallel_to_the_output():
    # geometry: the noses face each other, so one points up as far as the other points down
    out, rise = np.radians(-4.0), driveline.parallel_pinion_rise(np.radians(-4.0))
    into = driveline.axis_direction(-rise)
    assert into == pytest.approx(driveline.axis_direction(out))


def test_wheel_inertia_of_print():
    # Derived: 32 kg tyre at 0.9 of 419.1 mm and 12 kg wheel at 0.8 of 215.9 mm: 4.9085 kg m^2.
    got = braking.wheel_inertia(32.0, 12.0, 0.4191, 0.2159)
    assert got == pytest.approx(4.9085, rel=1e-3)


def test_bigger_tyres_ask_for_torque_and_not_for_heat():
    # statics and energy: torque with the radius, the vehicle's own heat the same at a true speed
    assert braking.torque_asked(0.4445, 0.40005) == pytest.approx(35 / 31.5)
    old, new = (braking.brake_torque(2200.0, 7.0, radius) for radius in (0.40, 0.45))
    assert new / old == pytest.approx(1.125)
    assert braking.stop_heat(2000.0, 20.0) == pytest.approx(400e3)
    light = braking.stop_heat(2000.0, 20.0, 4 * 4.9, 0.42)
    # a rolling wheel adds its inertia over the square of the radius as mass
    assert light - 400e3 == pytest.approx(0.5 * 4 * 4.9 * (20.0 / 0.42) ** 2)
