"""Bolts against published tables and textbook examples."""

import numpy as np
import pytest

from axlewright.physics import bolt

INCH, LBF = 0.0254, 4.4482216152605
KSI = 1000 * LBF / INCH**2


# ISO 898-1 stress areas, mm2, three digits printed.
@pytest.mark.parametrize(
    ("diameter", "pitch", "area"),
    [
        (6, 1.0, 20.1),
        (8, 1.25, 36.6),
        (10, 1.5, 58.0),
        (12, 1.75, 84.3),
        (14, 2.0, 115),
        (16, 2.0, 157),
        (18, 2.5, 192),
        (20, 2.5, 245),
        (24, 3.0, 353),
        (8, 1.0, 39.2),
        (10, 1.25, 61.2),
        (12, 1.25, 92.1),
        (12, 1.5, 88.1),
        (14, 1.5, 125),
        (16, 1.5, 167),
        (18, 1.5, 216),
    ],
)
def test_metric_stress_areas(diameter, pitch, area):
    assert bolt.stress_area(diameter * 1e-3, pitch * 1e-3) * 1e6 == pytest.approx(area, rel=5e-3)


# ISO 898-1 proof loads in newtons; the printed loads are rounded by up to 0.63 %.
@pytest.mark.parametrize(
    ("diameter", "pitch", "proof", "load"),
    [
        (10, 1.5, 580, 33_700),
        (12, 1.75, 580, 48_900),
        (14, 2.0, 580, 66_700),
        (16, 2.0, 580, 91_000),
        (20, 2.5, 600, 147_000),
        (10, 1.5, 830, 48_100),
        (12, 1.75, 830, 70_000),
        (14, 2.0, 830, 95_500),
        (16, 2.0, 830, 130_000),
        (20, 2.5, 830, 203_000),
        (12, 1.75, 970, 81_800),
    ],
)
def test_metric_proof_loads(diameter, pitch, proof, load):
    got = bolt.proof_load(bolt.stress_area(diameter * 1e-3, pitch * 1e-3), proof * 1e6)
    assert got == pytest.approx(load, rel=7e-3)


# SAE J429 with unified threads, square inches to four places.
@pytest.mark.parametrize(
    ("diameter", "threads", "area"),
    [
        (7 / 16, 20, 0.1187),
        (1 / 2, 20, 0.1600),
        (9 / 16, 18, 0.2030),
        (5 / 8, 18, 0.2560),
        (3 / 4, 16, 0.3730),
    ],
)
def test_unified_stress_areas(diameter, threads, area):
    got = bolt.unified_stress_area(diameter * INCH, INCH / threads) / INCH**2
    assert got == pytest.approx(area, abs=6e-5)


@pytest.mark.parametrize(
    ("diameter", "threads", "proof", "share", "load"),
    [
        (0.5, 13, 55, 0.75, 5853),
        (0.625, 18, 55, 0.75, 10_560),
        (0.5, 20, 85, 1.0, 13_596.0),
        (0.5, 20, 120, 1.0, 19_194.4),
        (0.75, 16, 85, 1.0, 31_701.7),
        (0.75, 16, 120, 1.0, 44_755.3),
    ],
)
def test_unified_clamp_and_proof_loads(diameter, threads, proof, share, load):
    # Grade 2 clamp loads published by suppliers; the rest by hand from SAE J429 proof stresses.
    area = bolt.unified_stress_area(diameter * INCH, INCH / threads)
    assert share * bolt.proof_load(area, proof * KSI) / LBF == pytest.approx(load, rel=3e-4)


# VDI 2230 table, fine and coarse threads: kN within 0.35 %, N m within 1.2 %. Washer face and
# medium hole diameters of hexagon heads.
@pytest.mark.parametrize(
    ("diameter", "pitch", "yield_", "friction", "washer", "hole", "preload", "torque"),
    [
        (12, 1.25, 940, 0.12, 16.63, 13.5, 70.5, 133),
        (14, 1.5, 940, 0.12, 19.64, 15.5, 95.2, 209),
    ],
)
def test_vdi_table(diameter, pitch, yield_, friction, washer, hole, preload, torque):
    d, p = diameter * 1e-3, pitch * 1e-3
    got = bolt.tightening_preload(d, p, yield_ * 1e6, friction)
    assert got / 1e3 == pytest.approx(preload, rel=3.5e-3)
    bearing = (washer + hole) / 2 * 1e-3
    assert bolt.torque_by_friction(got, d, p, bearing, friction, friction) == pytest.approx(
        torque, rel=1.2e-2
    )


@pytest.mark.parametrize(
    ("diameter", "pitch", "yield_", "friction", "preload"),
    [
        (10, 1.25, 640, 0.12, 31.6),
        (16, 1.5, 640, 0.14, 85.5),
        (20, 1.5, 660, 0.12, 148),
        (12, 1.75, 640, 0.14, 41.9),
    ],
)
def test_vdi_preloads(diameter, pitch, yield_, friction, preload):
    got = bolt.tightening_preload(diameter * 1e-3, pitch * 1e-3, yield_ * 1e6, friction)
    assert got / 1e3 == pytest.approx(preload, rel=3.5e-3)


@pytest.mark.parametrize(
    ("diameter", "pitch", "washer", "hole", "preload", "torque", "factor"),
    [
        (12, 1.75, 16.63, 13.5, 63.317121133017444, 122.83449187503244, 0.16166571494538332),
        (14, 1.5, 19.64, 15.5, 95.32215921734887, 209.78407488422792, 0.1571993007762),
    ],
)
def test_vdi_forms_by_hand(diameter, pitch, washer, hole, preload, torque, factor):
    # Same relations evaluated apart from this project: 10.9, friction 0.12.
    d, p, bearing = diameter * 1e-3, pitch * 1e-3, (washer + hole) / 2 * 1e-3
    force = bolt.tightening_preload(d, p, 940e6, 0.12)
    assert force == pytest.approx(preload * 1e3, rel=1e-6)
    assert bolt.torque_by_friction(force, d, p, bearing, 0.12, 0.12) == pytest.approx(
        torque, rel=1e-6
    )
    assert bolt.nut_factor(d, p, bearing, 0.12, 0.12) == pytest.approx(factor, rel=1e-6)


def test_shigley_8_3():
    # Budynas & Nisbett, example 8-3, p. 439: 3/4-16 grade 5, 25 kip, 6.50 and 13.8, pull 6 kip.
    area = 0.373 * INCH**2
    assert 25_000 * LBF / area / KSI == pytest.approx(67.02, abs=0.01)
    share = bolt.bolt_share(6.50, 13.8)
    assert share == pytest.approx(0.320, abs=5e-4)
    load = bolt.bolt_load(25_000 * LBF, 6000 * LBF, share)
    assert load / area / KSI == pytest.approx(72.17, abs=0.01)
    torque = bolt.torque_from_preload(25_000 * LBF, 0.75 * INCH, 0.20)
    assert torque / (LBF * INCH) == pytest.approx(3750)
    full = bolt.screw_torque(
        25_000 * LBF,
        mean_diameter=0.7093 * INCH,
        lead=INCH / 16,
        collar_diameter=1.25 * 0.75 * INCH,
        thread_friction=0.15,
        collar_friction=0.15,
    )
    assert full / (LBF * INCH) == pytest.approx(3551, rel=1e-3)


# EN 1993-1-8, 3.9 (memory): M16 and M20 of class 8.8.
@pytest.mark.parametrize(
    ("diameter", "pitch", "friction", "holds"), [(16, 2.0, 0.3, 21_056), (20, 2.5, 0.5, 54_834)]
)
def test_eurocode_slip(diameter, pitch, friction, holds):
    area = bolt.stress_area(diameter * 1e-3, pitch * 1e-3)
    assert bolt.design_slip_resistance(area, 800e6, friction) == pytest.approx(holds, rel=1e-4)


def test_link_bolt_by_hand():
    # Worked apart from this project: M16 x 2, 10.9, thread friction 0.12, two faces at 0.20.
    preload = bolt.tightening_preload(16e-3, 2e-3, 940e6, 0.12)
    assert bolt.slip_resistance(preload, 0.20, 2) == pytest.approx(47_572, rel=1e-4)


def test_spring_seat_clamp_by_hand():
    # Four legs of 5/8-18 grade 8 at 75 % of proof.
    area = bolt.unified_stress_area(0.625 * INCH, INCH / 18)
    assert 4 * 0.75 * bolt.proof_load(area, 120 * KSI) == pytest.approx(409_881, rel=1e-4)


def test_wheel_studs_by_hand():
    # Six M14 x 1.5 at 140 N m, K 0.2, friction 0.15 on a 139.7 mm circle.
    each = bolt.preload_from_torque(140.0, 14e-3, 0.2)
    assert each == pytest.approx(50e3)
    assert bolt.ring_friction_torque(each, 6, 0.15, 0.1397) == pytest.approx(3143, rel=1e-3)


def test_shigley_bolt_group():
    # Four bolts, 150 x 120 mm, 16 kN at 425 mm: 21.0 and 14.8 kN (memory), digits by hand.
    points = np.array([[-75, 60], [75, 60], [75, -60], [-75, -60]]) * 1e-3
    loads = bolt.group_loads(points, np.array([0.0, -16e3]), np.array([0.425, 0.0]))
    assert np.linalg.norm(loads, axis=-1) == pytest.approx(
        [14788.848065358945, 20972.559178182928, 20972.559178182928, 14788.848065358945], rel=1e-9
    )
