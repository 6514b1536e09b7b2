"""Shafts, splines, cross joints and torque at the wheel, against printed examples."""

import numpy as np
import pytest

from axlewright.physics import cross_joint, grip, shaft, spline

INCH, LBF = 0.0254, 4.4482216152605
PSI = LBF / INCH**2
LBF_INCH = LBF * INCH


# Beer, Johnston et al., Mechanics of Materials, examples 3.8 and 3.9 (companion notebooks).
BAR = {"diameter": 0.050, "bore": 0.0, "shear_yield": 150e6}


def test_beer_solid_shaft_yield_and_plastic_torque():
    assert shaft.yield_torque(**BAR) == pytest.approx(3.68e3, rel=5e-3)
    assert shaft.plastic_torque(**BAR) == pytest.approx(4.909e3, rel=5e-3)


def test_beer_solid_shaft_core_twist_and_what_is_left():
    core = shaft.elastic_core(4.60e3, **BAR)
    # 15.75 to 15.8 mm, as the torque is rounded on the way.
    assert core / 2 == pytest.approx(15.78e-3, rel=5e-3)
    held = {"length": 1.2, "shear_modulus": 77e9}
    assert np.degrees(shaft.twist(4.60e3, **BAR, **held)) == pytest.approx(8.50, rel=5e-3)
    assert np.degrees(shaft.residual_twist(4.60e3, **BAR, **held)) == pytest.approx(1.80, abs=0.015)


def test_beer_solid_shaft_locked_in_stress():
    core = shaft.elastic_core(4.60e3, **BAR) / 2
    surface = shaft.residual_shear(0.025, 4.60e3, **BAR)
    assert abs(surface) == pytest.approx(37.4e6, rel=5e-3)
    assert shaft.residual_shear(core, 4.60e3, **BAR) == pytest.approx(31.7e6, rel=1.5e-2)


# Beer, Johnston et al., sample problems 3.7 and 3.8: hollow, 1.5 and 2.25 in.
TUBE = {"diameter": 2.25 * INCH, "bore": 1.5 * INCH, "shear_yield": 21e3 * PSI}
TUBE_LENGTH = {"length": 60 * INCH, "shear_modulus": 11.2e6 * PSI}


def test_beer_hollow_shaft():
    first = shaft.yield_torque(**TUBE)
    full = shaft.plastic_torque(**TUBE)
    assert first == pytest.approx(37.7e3 * LBF_INCH, rel=5e-3)
    assert full == pytest.approx(44.1e3 * LBF_INCH, rel=5e-3)
    twisted = np.degrees(shaft.twist(np.array([first, full]), **TUBE, **TUBE_LENGTH))
    assert twisted == pytest.approx([5.73, 8.59], rel=5e-3)
    left = shaft.residual_twist(full, **TUBE, **TUBE_LENGTH)
    assert np.degrees(left) == pytest.approx(1.89, rel=5e-3)


def test_hibbeler_hollow_shaft():
    # Hibbeler, Mechanics of Materials, example 5.14.
    tube = {"diameter": 0.100, "bore": 0.060, "shear_yield": 20e6}
    assert shaft.yield_torque(**tube) == pytest.approx(3.42e3, rel=3e-3)
    assert shaft.plastic_torque(**tube) == pytest.approx(4.105e3, rel=3e-3)


@pytest.mark.parametrize(
    ("diameter", "shear_yield", "first", "full"),
    [
        (0.0333, 600e6, 4350.246246201931, 5800.328328269242),
        (0.0381, 0.577 * 1030e6, 6453.8, 8605.1),
    ],
)
def test_solid_shafts_by_hand(diameter, shear_yield, first, full):
    # Closed forms evaluated apart from this project.
    assert shaft.yield_torque(diameter, 0.0, shear_yield) == pytest.approx(first, rel=1e-4)
    assert shaft.plastic_torque(diameter, 0.0, shear_yield) == pytest.approx(full, rel=1e-4)


def test_combined_stress_of_a_tube_by_hand():
    # Closed forms evaluated apart from this project: 76.2 x 6.35 mm, 5 and 3 kN m.
    direct = shaft.bending_stress(5e3, 0.0762, 0.0635)
    shear = shaft.shear_stress(3e3, 0.0762, 0.0635)
    assert direct == pytest.approx(222.32468072501788e6, rel=1e-9)
    assert shear == pytest.approx(66.69740421750537e6, rel=1e-9)
    assert shaft.von_mises(direct, shear) == pytest.approx(250.54719085940886e6, rel=1e-9)
    assert shaft.tresca(direct, shear) == pytest.approx(259.2729e6, rel=1e-6)


def test_dudley_spline_stresses():
    # Dudley's formulas worked by hand: 30 teeth 24/48, 30 000 lbf in, 1.5 in long, flat root.
    pitch = 24 / INCH
    torque = 30_000 * LBF_INCH
    root = 28 / 24 * INCH
    assert spline.minor_diameter(30, pitch) == pytest.approx(root)
    assert spline.root_shear(torque, root) == pytest.approx(96_217 * PSI, rel=1e-3)
    assert spline.tooth_shear(torque, 30, pitch, 1.5 * INCH) == pytest.approx(
        32_595 * PSI, rel=1e-3
    )
    height = spline.contact_height(pitch, fillet_root=False)
    pressure = spline.side_pressure(torque, 30, pitch, 1.5 * INCH, height)
    assert pressure == pytest.approx(3160 * PSI, rel=1e-3)


# ANSI B92.1, 30 degree fillet root, side fit, 24/48 (memory; four decimals of an inch).
@pytest.mark.parametrize(
    ("teeth", "major", "minor"),
    [
        (27, 1.1667, 1.0417),
        (28, 1.2083, 1.0833),
        (29, 1.2500, 1.1250),
        (30, 1.2917, 1.1667),
        (31, 1.3333, 1.2083),
        (32, 1.3750, 1.2500),
        (33, 1.4167, 1.2917),
        (35, 1.5000, 1.3750),
        (40, 1.7083, 1.5833),
    ],
)
def test_spline_diameters(teeth, major, minor):
    pitch = 24 / INCH
    assert spline.major_diameter(teeth, pitch) / INCH == pytest.approx(major, abs=6e-5)
    assert spline.minor_diameter(teeth, pitch) / INCH == pytest.approx(minor, abs=6e-5)


# Dudley, printed factors.
@pytest.mark.parametrize(
    ("cycles", "one_way", "both_ways"),
    [(1e3, 1.8, 1.8), (1e4, 1.0, 1.0), (1e5, 0.5, 0.4), (1e6, 0.4, 0.3), (1e7, 0.3, 0.2)],
)
def test_spline_fatigue_factors(cycles, one_way, both_ways):
    assert spline.fatigue_factor(cycles) == pytest.approx(one_way)
    assert spline.fatigue_factor(cycles, reversed_torque=True) == pytest.approx(both_ways)


@pytest.mark.parametrize(("turns", "factor"), [(1e4, 4.0), (1e6, 2.0), (1e8, 1.0), (1e10, 0.5)])
def test_spline_wear_factors(turns, factor):
    assert spline.wear_factor(turns) == pytest.approx(factor)


@pytest.mark.parametrize(
    ("slope", "inches", "factor"),
    [(0.001, 4, 1.5), (0.004, 1, 1.5), (0.002, 2, 1.5), (0.008, 4, 3.0)],
)
def test_spline_sharing_factors(slope, inches, factor):
    assert spline.sharing_factor(slope, inches * INCH) == pytest.approx(factor)


# Khurmi & Gupta, Theory of Machines, chapter on Hooke's joint (memory, worked again).
def test_khurmi_largest_acceleration():
    speed, bend = 1500 * 2 * np.pi / 60, np.radians(20)
    turn = np.linspace(0, np.pi, 200_001)
    acceleration = np.abs(cross_joint.acceleration_ratio(bend, turn)) * speed**2
    assert acceleration.max() == pytest.approx(3083.4, rel=1e-3)
    assert 12 * 0.10**2 * acceleration.max() == pytest.approx(370.0, rel=1e-3)
    at = np.degrees(turn[acceleration.argmax()])
    assert min(at, 180 - at) == pytest.approx(41.46, abs=0.02)


@pytest.mark.parametrize("turn", [44.28, 135.72])
def test_khurmi_equal_speeds_at_eighteen_degrees(turn):
    bend = np.radians(18)
    before, after = cross_joint.speed_ratio(bend, np.radians([turn - 0.02, turn + 0.02])) - 1
    assert before * after < 0


def test_khurmi_swing_of_twelve_percent():
    assert cross_joint.speed_swing(np.radians(19.64)) == pytest.approx(0.12, abs=2e-4)


def test_khurmi_fluctuation_of_a_hundred_turns_a_minute():
    bend = np.radians(16.42)
    fast, slow = 1200 * cross_joint.speed_ratio(bend, np.array([0.0, np.pi / 2]))
    # Angle printed to 0.01 degree, which is 0.1 rev/min.
    assert [fast, slow] == pytest.approx([1251.0, 1151.0], abs=0.15)


def test_khurmi_torques_at_forty_five_degrees():
    speed, bend, turn = 240 * 2 * np.pi / 60, np.radians(20), np.radians(45)
    acceleration = cross_joint.acceleration_ratio(bend, turn) * speed**2
    assert acceleration == pytest.approx(-78.33, rel=5e-3)
    driven = 200 + 55 * 0.15**2 * acceleration
    assert driven == pytest.approx(103.07, rel=5e-3)
    driving = driven * cross_joint.speed_ratio(bend, turn)
    assert driving == pytest.approx(102.87, rel=5e-3)


@pytest.mark.parametrize(
    ("degrees", "swing"), [(30, 0.289), (35, 0.402), (40, 0.539), (42, 0.602), (2.977, 0.0027)]
)
def test_swing_at_steering_angles(degrees, swing):
    # Closed form by hand; the last is the 0.0027 limit of an industrial shaft maker's page.
    assert cross_joint.speed_swing(np.radians(degrees)) == pytest.approx(swing, rel=2e-3)


def test_compound_angle():
    bend = cross_joint.compound_bend(np.radians(4), np.radians(3))
    assert np.degrees(bend) == pytest.approx(4.994, abs=1e-3)


# Driveline table that refers to SAE AE-7, 3.1.1: joint 2 allowed with joint 1 at 0, 1, 2 ...
# degrees. Every printed pair is 400 rad/s2 of torsional acceleration.
@pytest.mark.parametrize(
    ("rpm", "second"),
    [
        (1500, [7.3, 7.4, 7.6, 7.9, 8.3, 8.9, 9.5, 10.1, 10.8, 11.6]),
        (1600, [6.9, 6.9, 7.1, 7.5, 7.9, 8.5, 9.1, 9.8, 10.5]),
        (1700, [6.5, 6.5, 6.8, 7.1, 7.6, 8.2, 8.8]),
    ],
)
def test_two_joint_table(rpm, second):
    speed = rpm * 2 * np.pi / 60
    bends = np.radians(np.stack([second, np.arange(len(second))], axis=-1))
    line = cross_joint.equivalent_angle(bends, np.array([1, -1]))
    # Angles printed to 0.1 degree.
    assert (speed * line) ** 2 == pytest.approx(np.full(len(second), 400.0), rel=2.5e-2)


@pytest.mark.parametrize(("error", "swing"), [(5, 0.00534), (10, 0.01063), (20, 0.02094)])
def test_yokes_out_of_phase(error, swing):
    # Two joints at 10 degrees, kinematics worked apart from this project.
    left = cross_joint.phase_error_swing(np.radians(10), np.radians(error))
    assert left == pytest.approx(swing, rel=1e-2)


# Industrial joint maker's sizing page: B10 hours 1.5e6/(bend rpm) (Tc/T)^(10/3).
@pytest.mark.parametrize(
    ("degrees", "rpm", "share", "hours"),
    [(3, 100, 1.0, 5000), (10, 500, 0.5, 3023.8), (6, 800, 1 / 1.5, 1207.3)],
)
def test_joint_life(degrees, rpm, share, hours):
    turns = cross_joint.life_turns(share * 1000.0, np.radians(degrees), 1000.0)
    assert turns / (60 * rpm) == pytest.approx(hours, rel=1e-4)


def test_ivanovic_torque_in_the_cross():
    # Ivanovic et al., Scientific Technical Review 61(1), 2011: 63.662 N m at 30 degrees.
    arm, bend = 0.030, np.radians(30)
    couple = 2 * arm * cross_joint.trunnion_force(63.662, arm, bend)
    assert couple == pytest.approx(73.511, abs=1e-3)
    ratio = cross_joint.speed_ratio(bend, np.pi / 2)
    assert 63.662 * ratio == pytest.approx(55.133, abs=1e-3)


def test_ivanovic_bending_form():
    # Same paper: 32 M (h - L/2) / ((F - L) pi d^3), evaluated by hand for h - L/2 = 6 mm.
    got = cross_joint.cross_bending(
        63.662,
        np.radians(30),
        span=0.060,
        bearing_length=0.010,
        root_distance=0.011,
        trunnion=0.012,
    )
    assert got == pytest.approx(32 * 73.511 * 0.006 / (0.050 * np.pi * 0.012**3), rel=1e-4)


def test_trunnion_by_hand():
    # Worked apart from this project: 2500 N m, 35 degrees, R 40, trunnion 18.5, hole 3, arm 12 mm.
    force = cross_joint.trunnion_force(2500.0, 0.040, np.radians(35))
    assert force == pytest.approx(38_149, rel=1e-3)
    bending = cross_joint.trunnion_bending(force, 0.0185, 0.003, 0.012)
    assert bending == pytest.approx(737e6, rel=1e-3)
    assert cross_joint.trunnion_shear(force, 0.0185, 0.003) == pytest.approx(145.8e6, rel=1e-3)


def test_needle_pressure_textbook_constant():
    # Automotive design textbook (memory): p = 272 sqrt((1/d1 + 1/d0) Fn / L) in N and mm, with
    # Fn = 4.6 F / (rows * needles). Printed for E = 212 GPa and rounded to three digits.
    force, trunnion, roller, rollers, length = 20e3, 18.0, 2.5, 22, 12.0
    printed = 272e6 * np.sqrt((1 / trunnion + 1 / roller) * 4.6 * force / rollers / length)
    got = cross_joint.needle_pressure(
        force, trunnion * 1e-3, roller * 1e-3, rollers, length * 1e-3, modulus=212e9
    )
    assert got == pytest.approx(printed, rel=2e-3)


def test_torque_at_a_shaft_by_hand():
    # Worked apart from this project: 400 N m, 3.5 x 2.7 x 4.10, 85 %; axle 15 kN, 0.40 m, mu 1.
    engine = grip.engine_torque(400.0, 3.5 * 2.7 * 4.10, 0.85)
    assert engine == pytest.approx(13_173.3, rel=1e-6)
    axle, wheel = grip.grip_torque(np.array([15e3, 7.5e3]), 1.0, 0.40)
    assert (axle, wheel) == (6000.0, 3000.0)
    assert grip.shaft_torque(engine, axle) == 6000.0
    assert grip.open_shaft_torques(engine, wheel, wheel) == (3000.0, 3000.0)
    assert grip.air_shaft_torque(engine, 15e3, 1.0, 0.40, locked=1.0) == 6000.0


def test_gillespie_open_and_locked_axle():
    # Gillespie, Fundamentals of Vehicle Dynamics, ch. 2 example (inputs from memory).
    common = {"load": 1850 * LBF, "friction": 0.62, "height": 21 * INCH, "wheelbase": 108 * INCH}
    locked = grip.locked_traction(**common) / LBF
    opened = grip.open_traction(
        **common,
        radius=13 * INCH,
        final_ratio=2.9,
        track=59 * INCH,
        front_roll_share=1150 / (1150 + 280),
    )
    assert locked == pytest.approx(1304.5, rel=2e-3)
    assert opened / LBF == pytest.approx(1201, rel=2e-3)
    assert [opened / LBF / 3950, locked / 3950] == pytest.approx([0.304, 0.330], rel=2e-3)


def test_slope_by_hand():
    assert grip.slope_force(2500 * 9.81, np.radians(30)) == pytest.approx(12_262.5)
    assert np.degrees(grip.grip_slope(0.8)) == pytest.approx(38.66, abs=0.005)
