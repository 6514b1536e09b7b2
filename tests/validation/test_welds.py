"""Weld groups, fatigue curves and spectrum damage against print and independent integrals."""

import numpy as np
import pytest
from scipy.integrate import quad

from axlewright.physics import weld

INCH, LBF = 0.0254, 4.4482216152605

CHANNEL = np.array([[[0, 0], [56, 0]], [[0, 0], [0, 190]], [[0, 190], [56, 190]]]) * 1e-3


def two_verticals(depth, apart):
    return np.array([[[0, 0], [0, depth]], [[apart, 0], [apart, depth]]])


def test_channel_group_by_hand():
    # Closed forms of Budynas & Nisbett, tables 9-1 and 9-2, for a C of 56 x 190 mm.
    group = weld.line_group(CHANNEL)
    b, d = 0.056, 0.190
    assert group.length == pytest.approx(2 * b + d)
    assert group.x == pytest.approx(10.3841059602649e-3, rel=1e-9)
    assert group.y == pytest.approx(0.095)
    assert group.about_x == pytest.approx(1582383.3333333335e-9, rel=1e-9)
    assert group.about_y == pytest.approx(84512.77704194261e-9, rel=1e-9)
    assert group.polar == pytest.approx(1666896.110375276e-9, rel=1e-9)
    printed = (8 * b**3 + 6 * b * d**2 + d**3) / 12 - b**4 / (2 * b + d)
    assert group.polar == pytest.approx(printed)


def test_shigley_two_verticals_and_box():
    b, d = 0.05, 0.12
    lines = weld.line_group(two_verticals(d, b))
    assert lines.about_x == pytest.approx(d**3 / 6)
    assert lines.polar == pytest.approx(d * (3 * b**2 + d**2) / 6)
    corners = np.array([[0, 0], [b, 0], [b, d], [0, d]])
    box = weld.line_group(np.stack([corners, np.roll(corners, -1, axis=0)], axis=1))
    assert box.about_x == pytest.approx(d**2 * (3 * b + d) / 6)
    assert box.polar == pytest.approx((b + d) ** 3 / 6)


def test_circle_group():
    group = weld.circle_group(0.0381)
    assert group.length == pytest.approx(239.389e-3, rel=1e-5)
    assert group.about_x == pytest.approx(173_750.0e-9, rel=1e-5)
    assert group.polar == pytest.approx(347_500.0e-9, rel=1e-5)


def worst(group, points, force, moment):
    lines = weld.line_force(group, np.array(points), np.array(force), np.array(moment))
    return lines[np.linalg.norm(lines, axis=-1).argmax()]


# Bhandari, Design of Machine Elements (companion notebooks): throat in mm, all digits.
def test_bhandari_8_9():
    group = weld.line_group(two_verticals(0.050, 0.050))
    ends = two_verticals(0.050, 0.050).reshape(-1, 2)
    line = worst(group, ends, [0, -7500.0, 0], [0, 0, -7500 * 0.125])
    assert weld.throat_needed(line, 100e6) * 1e3 == pytest.approx(4.538894, rel=1e-6)


def test_bhandari_8_10():
    lines = np.array([[[0, 0], [50, 0]], [[0, 0], [0, 100]], [[0, 100], [50, 100]]]) * 1e-3
    group = weld.line_group(lines)
    # The printed arm is about the centroid of the group.
    line = worst(group, lines.reshape(-1, 2), [0, -60e3, 0], [0, 0, -60e3 * 0.1875])
    throat = weld.throat_needed(line, 100e6)
    assert throat * 1e3 == pytest.approx(20.186421, rel=1e-6)
    leg = throat / weld.throat(1.0)
    assert leg * 1e3 == pytest.approx(28.552222, rel=1e-6)


def test_bhandari_8_13_by_vector_sum():
    # The book uses the largest-shear theory, 2.198406 mm; the vector sum used here is 1.87 times.
    verticals = two_verticals(0.400, 0.100)
    line = worst(
        weld.line_group(verticals), verticals.reshape(-1, 2), [0, -50e3, 0], [50e3 * 0.300, 0, 0]
    )
    assert weld.throat_needed(line, 70e6) * 1e3 == pytest.approx(4.115868, rel=1e-6)
    shear = np.hypot(line[2] / 2, line[1])
    assert shear / 70e6 * 1e3 == pytest.approx(2.198406, rel=1e-6)


def test_link_bracket_by_hand():
    # Worked apart from this project: four 90 mm lines, 20 kN at 75 mm, 6 mm legs.
    lines = np.concatenate([two_verticals(0.090, 0.012), two_verticals(0.090, 0.060)])
    line = worst(weld.line_group(lines), lines.reshape(-1, 2), [0, 20e3, 0], [20e3 * 0.075, 0, 0])
    assert np.linalg.norm(line) == pytest.approx(283.279e3, rel=1e-5)
    assert weld.throat_stress(line, weld.throat(0.006)) == pytest.approx(66.780e6, rel=1e-4)


def test_weld_round_a_tube_by_hand():
    # Worked apart from this project: 76.2 mm tube, 8 mm leg, 4.5 kN m, 2.88 kN m, 15 kN.
    line = weld.round_line_force(0.0381, 4.5e3, 2.88e3, 15e3)
    assert line == pytest.approx(np.hypot(986.763, 315.764 + 62.659) * 1e3, rel=1e-5)
    assert line / weld.throat(0.008) == pytest.approx(186.852e6, rel=1e-5)


# EN 1993-1-8, 4.5.3.3, and AWS D1.1 (memory).
@pytest.mark.parametrize(
    ("ultimate", "correlation", "allowed"),
    [(360, 0.80, 207.85), (430, 0.85, 233.66), (510, 0.90, 261.73), (490, 0.90, 251.47)],
)
def test_eurocode_weld_strength(ultimate, correlation, allowed):
    got = weld.allowable_by_ultimate(ultimate * 1e6, correlation)
    assert got / 1e6 == pytest.approx(allowed, abs=0.01)


def test_electrode_strength():
    ksi = 1000 * LBF / INCH**2
    got = weld.allowable_by_electrode(70 * ksi)
    assert got == pytest.approx(144.79e6, rel=1e-4)
    assert got * weld.throat(INCH / 16) / (1000 * LBF / INCH) == pytest.approx(0.928, abs=1e-3)


# EN 1993-1-9:2005 curves; values agree with two open fatigue libraries.
@pytest.mark.parametrize(
    ("detail", "at_hundred", "at_fifty"),
    [
        (160, 1.13851e7, np.inf),
        (112, 2.80986e6, 6.12318e7),
        (90, 1.458e6, 2.05163e7),
        (80, 1.024e6, 1.13851e7),
        (71, 715_822, 6.26871e6),
        (63, 500_094, 4.00075e6),
        (56, 351_232, 2.80986e6),
        (50, 250_000, 2.0e6),
        (45, 182_250, 1.458e6),
        (40, 128_000, 1.024e6),
        (36, 93_312, 746_496),
    ],
)
def test_eurocode_2005_table(detail, at_hundred, at_fifty):
    got = weld.endurance(np.array([100e6, 50e6]), detail * 1e6)
    assert got == pytest.approx([at_hundred, at_fifty], rel=1e-5)


@pytest.mark.parametrize(
    ("detail", "stress", "cycles"),
    [
        (71, 150, 212_095.4),
        (71, 40, 19130593.49504685),
        (71, 30, 80_616_164),
        (71, 28.5, np.inf),
        (36, 25, 6722783.36890995),
        (90, 150, 432_000),
    ],
)
def test_eurocode_2005_points(detail, stress, cycles):
    assert weld.endurance(stress * 1e6, detail * 1e6) == pytest.approx(cycles, rel=1e-6)


@pytest.mark.parametrize(
    ("detail", "sum_"), [(36, 1.385244), (63, 0.198574), (71, 0.128553), (90, 0.0561285)]
)
def test_miner_sum(detail, sum_):
    # Class 71 also by an open fatigue library.
    spectrum = np.array([(200, 500), (150, 2000), (100, 2e4), (70, 1e5), (45, 4e5), (25, 2e6)])
    got = weld.damage(spectrum[:, 1], weld.endurance(spectrum[:, 0] * 1e6, detail * 1e6))
    assert got == pytest.approx(sum_, rel=1e-5)


# EN 1993-1-9:2025, figures 8.1 and 8.2, as checked in the tests of an open standards library.
@pytest.mark.parametrize(
    ("cycles", "detail", "stress"),
    [
        (1e6, 160, 201.58737),
        (2e7, 160, 89.34316),
        (1e8, 160, 64.75411),
        (2e7, 36, 18.3276380814413),
        (5e5, 71, 112.70547468974216),
    ],
)
def test_eurocode_2025_curves(cycles, detail, stress):
    detail = detail * 1e6
    got = weld.endured_range(cycles, detail, weld.knee_2025(detail))
    assert got / 1e6 == pytest.approx(stress, rel=1e-6)
    back = weld.endurance_2025(got * (1 + 1e-12), detail)
    assert back == pytest.approx(cycles, rel=1e-9)


def test_eurocode_2025_low_curve_and_unwelded_curve():
    low = weld.endured_range(1e8, 160e6, 1e7)
    assert low / 1e6 == pytest.approx(59.03777, rel=1e-6)
    assert weld.unwelded_endurance_2025(103.59661e6, 160e6) == pytest.approx(1e8, rel=1e-6)


def test_the_new_knee_does_more_damage_under_class_71():
    stress = 25e6
    ratio = weld.endurance(stress * 0.8, 56e6 * 0.8) / weld.endurance_2025(stress * 0.8, 56e6 * 0.8)
    assert ratio == pytest.approx(2 ** (2 / 3), rel=1e-9)


def test_shear_cut_off():
    # EN 1993-1-9: cut-off at 0.457 of the category.
    assert weld.shear_endurance(0.4573051 * 80e6, 80e6) == pytest.approx(1e8, rel=1e-5)
    assert np.isinf(weld.shear_endurance(0.4572 * 80e6, 80e6))


def test_relieved_range():
    # EN 1993-1-9, 7.2.1 (memory): 120 and -180 MPa count as 228.
    assert weld.relieved_range(120e6, -180e6) == pytest.approx(228e6)


@pytest.mark.parametrize("slope", [3, 5])
def test_one_slope_spectrum_against_integration(slope):
    largest, cycles, detail = 180e6, 1e6, 71e6
    h = np.log(cycles)

    def per_range(s):
        return cycles * h / largest * np.exp(-h * s / largest) / (2e6 * (s / detail) ** -slope)

    integral, _ = quad(per_range, 0, 40 * largest / h, epsrel=1e-12, limit=200)
    got = weld.one_slope_exponential_damage(largest, cycles, detail, slope)
    assert got == pytest.approx(integral, rel=1e-8)


@pytest.mark.parametrize("largest", [60e6, 180e6, 500e6])
@pytest.mark.parametrize("knee", [5e6, 1e7])
def test_two_slope_spectrum_against_integration(largest, knee):
    cycles, detail = 1e6, 56e6
    h = np.log(cycles)
    limit = detail * (2e6 / knee) ** (1 / 3)
    cut_off = limit * (knee / 1e8) ** (1 / 5)

    def per_range(s):
        return cycles * h / largest * np.exp(-h * s / largest) / weld.endurance(s, detail, knee)

    parts = [
        (cut_off, limit),
        (limit, limit + 10 * largest / h),
        (limit + 10 * largest / h, limit + 60 * largest / h),
    ]
    integral = sum(quad(per_range, *part, epsrel=1e-11)[0] for part in parts)
    got = weld.exponential_damage(largest, cycles, detail, knee)
    assert got == pytest.approx(integral, rel=1e-7)
