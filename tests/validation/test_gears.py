"""Bevel gears against printed examples."""

import numpy as np
import pytest

from axlewright.physics import bevel, bevel_rating

INCH, LBF = 0.0254, 4.4482216152605
PSI = LBF / INCH**2
FEET_A_MINUTE = 0.3048 / 60

# Budynas & Nisbett (Shigley), example 15-1: mitre pair, 5 teeth an inch of diameter, 25 teeth,
# 180 HB grade 1, uncrowned, quality 7, both overhung, 600 rev/min. Tolerance: printed digits.
MODULE, FACE, TEETH, QUALITY = INCH / 5, 1.10 * INCH, 25, 7
BENDING_J, CONTACT_I = 0.216, 0.065
STIFFNESS = 2290**2 * PSI
SPEED = np.pi * 5 * INCH * 600 / 60


def load_factors(size):
    return (
        bevel_rating.dynamic_factor(SPEED, QUALITY)
        * size
        * bevel_rating.load_distribution(FACE, bevel_rating.NONE_STRADDLED)
    )


def test_shigley_factors():
    assert pytest.approx(785.4, rel=1e-4) == SPEED / FEET_A_MINUTE
    assert bevel_rating.dynamic_factor(SPEED, QUALITY) == pytest.approx(1.299, rel=1e-3)
    assert bevel_rating.fastest_speed(QUALITY) / FEET_A_MINUTE == pytest.approx(4769, rel=1e-3)
    assert bevel_rating.bending_size_factor(MODULE) == pytest.approx(0.529, abs=5e-4)
    assert bevel_rating.load_distribution(FACE, 1.25) == pytest.approx(1.254, abs=5e-4)
    assert bevel_rating.contact_size_factor(FACE) == pytest.approx(0.575, abs=5e-4)


def test_shigley_bending_power():
    allowed = (
        bevel_rating.bending_allowable(180)
        * bevel_rating.bending_cycle_factor(1e7)
        / bevel_rating.bending_reliability(0.99)
    )
    force = bevel_rating.bending_force(allowed, FACE, MODULE, BENDING_J)
    force = force / load_factors(bevel_rating.bending_size_factor(MODULE))
    assert force / LBF == pytest.approx(552, rel=3e-3)
    assert force * SPEED / 745.7 == pytest.approx(13.1, rel=5e-3)
    stress = bevel_rating.bending_stress(
        force,
        FACE,
        MODULE,
        BENDING_J,
        dynamic=bevel_rating.dynamic_factor(SPEED, QUALITY),
        size=bevel_rating.bending_size_factor(MODULE),
        distribution=bevel_rating.load_distribution(FACE, 1.25),
    )
    assert stress == pytest.approx(allowed)


def test_shigley_wear_power():
    allowed = (
        bevel_rating.contact_allowable(180)
        * bevel_rating.contact_cycle_factor(1e7)
        / bevel_rating.contact_reliability(0.99)
    )
    assert allowed / PSI == pytest.approx(112_170, rel=3e-3)
    diameter = TEETH * MODULE
    force = bevel_rating.contact_force(allowed, FACE, diameter, CONTACT_I, STIFFNESS)
    force = force / (load_factors(bevel_rating.contact_size_factor(FACE)) * bevel_rating.UNCROWNED)
    assert force / LBF == pytest.approx(457.9, rel=3e-3)
    assert force * SPEED / 745.7 == pytest.approx(10.9, rel=5e-3)
    stress = bevel_rating.contact_stress(
        force,
        FACE,
        diameter,
        CONTACT_I,
        STIFFNESS,
        dynamic=bevel_rating.dynamic_factor(SPEED, QUALITY),
        size=bevel_rating.contact_size_factor(FACE),
        distribution=bevel_rating.load_distribution(FACE, 1.25),
        crowning=bevel_rating.UNCROWNED,
    )
    assert stress == pytest.approx(allowed)


def test_shigley_long_life():
    # Same pair: 1e9 turns, reliability 0.995, design factor 1.5.
    assert bevel_rating.bending_cycle_factor(1e9) == pytest.approx(0.8618, rel=1e-3)
    assert bevel_rating.contact_cycle_factor(1e9) == pytest.approx(1.000, abs=1e-3)
    assert bevel_rating.bending_reliability(0.995) == pytest.approx(1.075, abs=1e-3)
    assert bevel_rating.contact_reliability(0.995) == pytest.approx(1.037, abs=1e-3)
    allowed = bevel_rating.bending_allowable(180) * bevel_rating.bending_cycle_factor(1e9)
    allowed = allowed / (1.5 * bevel_rating.bending_reliability(0.995))
    assert allowed / PSI == pytest.approx(5354.5, rel=3e-3)
    force = bevel_rating.bending_force(allowed, FACE, MODULE, BENDING_J)
    force = force / load_factors(bevel_rating.bending_size_factor(MODULE))
    assert force / LBF == pytest.approx(295.2, rel=3e-3)


def test_elastic_coefficient_of_steel():
    # Budynas & Nisbett, table 14-8: 2300 (root psi) for steel on steel, two or three digits.
    root = np.sqrt(bevel_rating.contact_stiffness(30e6 * PSI, 0.292) / PSI)
    assert root == pytest.approx(2300, rel=1e-2)


def test_jindal_forces():
    # Jindal, Machine Design, example 27-1, p. 712: 8 kW, 400 rev/min, ratio 2, pitch radius
    # 200 mm, face a fifth of the cone, 20 degrees. Forces on the gear.
    cone = np.arctan(2.0)
    length = 0.200 / np.sin(cone)
    mean = 2 * (length - 0.1 * length) * np.sin(cone)
    tangential = bevel.tangential_force(8000 / (2 * np.pi * 400 / 60), mean)
    assert tangential == pytest.approx(1061.0, rel=1e-3)
    pressure = np.radians(20)
    assert bevel.separating_force(tangential, pressure) == pytest.approx(386.2, rel=1e-3)
    gear = bevel.straight_forces(tangential, pressure, cone)
    pinion = bevel.straight_forces(tangential, pressure, np.pi / 2 - cone)
    assert sorted([gear.axial, gear.radial]) == pytest.approx([172.7, 345.4], rel=1e-3)
    assert [pinion.axial, pinion.radial] == pytest.approx([gear.radial, gear.axial])


def test_jindal_straight_blank():
    # Jindal, example 27-3: module 6, 30 and 45 teeth.
    cone = bevel.pitch_angle(30, 45)
    assert np.degrees([cone, np.pi / 2 - cone]) == pytest.approx([33.69, 56.31], abs=0.01)
    outer = bevel.outer_cone_distance(30 * 0.006, cone)
    assert outer == pytest.approx(0.16225, abs=1e-5)
    face = bevel.straight_face_angle(cone, 0.006, outer)
    root = bevel.straight_root_angle(cone, 1.25 * 0.006, outer)
    assert np.degrees([face, root]) == pytest.approx([35.81, 31.04], abs=0.01)


@pytest.fixture
def sample():
    """ISO 23509 Method 0 sample, as reprinted in a published calculation report."""
    return bevel.spiral_blank(
        pinion_teeth=14,
        gear_teeth=39,
        gear_diameter=176.893e-3,
        face=25.4e-3,
        spiral=np.radians(35),
        pressure=np.radians(20),
        cutter_radius=114.3e-3,
        shift=0.505,
    )


def test_iso_23509_lengths(sample):
    assert sample.mean_cone * 1e3 == pytest.approx(81.273, abs=2e-3)
    assert sample.mean_transverse_module * 1e3 == pytest.approx(3.9227, abs=2e-3)
    assert sample.mean_normal_module * 1e3 == pytest.approx(3.2133, abs=2e-3)
    assert sample.whole_depth * 1e3 == pytest.approx(7.230, abs=2e-3)
    assert sample.clearance * 1e3 == pytest.approx(0.803, abs=2e-3)
    pinion, gear = sample.pinion, sample.gear
    got = [
        pinion.mean_diameter,
        gear.mean_diameter,
        pinion.addendum,
        gear.addendum,
        pinion.dedendum,
        gear.dedendum,
    ]
    printed = [54.919, 152.987, 4.836, 1.591, 2.394, 5.639]
    assert np.array(got) * 1e3 == pytest.approx(printed, abs=2e-3)


def test_iso_23509_angles(sample):
    pinion, gear = sample.pinion, sample.gear
    got = [
        pinion.pitch_angle,
        gear.pitch_angle,
        gear.addendum_angle,
        gear.dedendum_angle,
        pinion.face_angle,
        gear.root_angle,
    ]
    printed = [19.7468, 70.2532, 2.134, 6.492, 26.240, 63.760]
    assert np.degrees(got) == pytest.approx(printed, abs=0.01)


def test_spiral_mesh_forces(sample):
    # Formulas from memory; values worked apart from this project, closed by a vector identity.
    pressure, spiral = np.radians(20), np.radians(35)
    tangential = bevel.tangential_force(300.0, sample.pinion.mean_diameter)
    assert tangential == pytest.approx(10_925, rel=1e-3)
    cone = sample.pinion.pitch_angle
    drive = bevel.spiral_forces(tangential, pressure, spiral, cone)
    coast = bevel.spiral_forces(tangential, pressure, spiral, cone, driving=-1.0)
    assert [drive.axial, drive.radial] == pytest.approx([8840, 1984], rel=1e-3)
    assert [coast.axial, coast.radial] == pytest.approx([-5560, 7154], rel=1e-3)
    for mesh in (drive, coast):
        assert np.sqrt(np.sum(np.square(mesh))) == pytest.approx(14_193, rel=1e-3)


@pytest.mark.parametrize(
    ("torque", "least", "most"), [(4000, 206, 243), (6000, 236, 278), (8000, 260, 306)]
)
def test_ring_size_rule(torque, least, most):
    # Truck axle design rule (memory), millimetres.
    got = bevel.ring_diameter(torque, np.array(bevel.RING_SIZE))
    assert got * 1e3 == pytest.approx([least, most], abs=0.6)
