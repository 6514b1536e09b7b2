"""Bearing life and wheel-end statics against printed and hand-worked examples."""

import numpy as np
import pytest

from axlewright.physics import bearing, steering


def hours(millions, rpm):
    return millions * 1e6 / (60 * rpm)


def test_wentzell_life_and_rating():
    # Wentzell, Machine Elements: examples 20.1 and 20.2, p. 431.
    assert hours(bearing.basic_life(5050, 2400, bearing.BALL), 1750) == pytest.approx(
        88.73, abs=0.01
    )
    # The second one rounds 200 h at 1750 rev/min to 21 million turns.
    assert bearing.rating_needed(2400, 21.0, bearing.BALL) == pytest.approx(6621, rel=1e-3)


@pytest.mark.parametrize(("turning", "millions"), [(1.0, 57.30), (1.2, 43.46)])
def test_jindal_combined_load(turning, millions):
    # Jindal, Machine Design, example 18-2, p. 508.
    load = bearing.radial_equivalent(1250, 625, 0.56, 1.2, turning)
    assert bearing.basic_life(5590, load, bearing.BALL) == pytest.approx(millions, rel=1e-3)


@pytest.mark.parametrize(
    ("rating", "load", "rpm", "expected"),
    [
        pytest.param(41, 20, 720, 199.42, id="Jindal 18-4"),
        pytest.param(32.5, 8, 1450, 770.7, id="by hand"),
    ],
)
def test_ball_bearing_hours(rating, load, rpm, expected):
    assert hours(bearing.basic_life(rating, load, bearing.BALL), rpm) == pytest.approx(
        expected, rel=1e-3
    )


# ISO 281:2007, life factor for reliability (memory); two decimals printed.
@pytest.mark.parametrize(
    ("reliability", "factor"),
    [(0.90, 1.0), (0.95, 0.64), (0.96, 0.55), (0.97, 0.47), (0.98, 0.37), (0.99, 0.25)],
)
def test_reliability_factor_meets_the_table(reliability, factor):
    assert bearing.reliability_factor(reliability) == pytest.approx(factor, abs=0.0056)


def test_tapered_pair_by_hand():
    # Statics worked apart from this project: back to back, Y 1.6.
    pair = bearing.tapered_pair(6000, 4000, 3000, 1.6, 1.6)
    assert [bearing.induced_axial(6000, 1.6), bearing.induced_axial(4000, 1.6)] == [1875, 1250]
    assert list(pair) == pytest.approx([4250, 1250, 9200, 4000])


# Statics worked apart from this project: 8 kN, loaded radius 0.40 m, spread 65 mm.
@pytest.mark.parametrize(
    ("lateral", "offset", "outer", "inner"),
    [
        (0, 0.000, 4000, 4000),
        (0, 0.030, 7692, 308),
        (0, 0.050, 10154, -2154),
        (4000, 0.000, -20615, 28615),
        (4000, 0.030, -16923, 24923),
        (-4000, 0.030, 32308, -24308),
    ],
)
def test_hub_rows(lateral, offset, outer, inner):
    rows = bearing.hub_rows(8000, lateral, offset, 0.40, 0.065)
    assert [rows.outer, rows.inner] == pytest.approx([outer, inner], abs=0.5)
    assert rows.axial == lateral


@pytest.mark.parametrize(("exponent", "ratio"), [(bearing.ROLLER, 0.113), (bearing.BALL, 0.141)])
def test_thirty_millimetres_of_offset_straight_ahead(exponent, ratio):
    before, after = bearing.hub_rows(8000, 0, np.array([0.0, 0.030]), 0.40, 0.065).outer
    assert bearing.life_ratio(after, before, exponent) == pytest.approx(ratio, abs=1e-3)


@pytest.mark.parametrize(
    ("corners", "ratio"),
    [(0.0, 0.11), (0.01, 0.4), (1.0, 0.8)],
)
def test_cornering_hides_the_offset(corners, ratio):
    # Worked apart from this project: hard corners of 4 kN, half of them each way; worse row.
    lateral = np.array([0.0, 4000.0, -4000.0])
    shares = np.array([1 - corners, corners / 2, corners / 2])

    def worse(offset):
        rows = bearing.hub_rows(8000, lateral, offset, 0.40, 0.065)
        return max(bearing.mixed_load(rows.outer, shares), bearing.mixed_load(rows.inner, shares))

    assert bearing.life_ratio(worse(0.030), worse(0.0)) == pytest.approx(ratio, abs=0.015)


def test_brake_and_drive_at_the_knuckle():
    # Statics worked apart from this project: 5600 N, 0.40 m, joints 100 above and 120 below.
    braking = steering.brake_joint_forces(5600, 0.40, 0.100, 0.120)
    assert list(braking) == pytest.approx([7127, 12_727], abs=0.5)
    driving = steering.drive_joint_forces(5600, 0.100, 0.120)
    assert list(driving) == pytest.approx([3055, 2545], abs=0.6)
    assert steering.caliper_force(5600, 0.40, 0.125) == pytest.approx(17_920)
