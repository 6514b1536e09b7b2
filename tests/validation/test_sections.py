"""Round sections against closed forms, a textbook problem and general polygon libraries."""

import numpy as np
import pytest

from axlewright.physics import section

MM = 1e-3


# Closed forms A, I, S, J, Z of a tube, worked twice by independent routes; mm, ten digits.
@pytest.mark.parametrize(
    ("outer", "wall", "area", "second", "elastic", "polar", "plastic", "kg_per_m"),
    [
        (76.2, 6.35, 1393.4456, 856_854.936, 22_489.6309, 1_713_709.871, 31_067.1422, 10.93855),
        (88.9, 7.9375, 2018.9126, 1_670_127.872, 37_573.1805, 3_340_255.743, 52_196.4262, 15.84846),
        (101.6, 6.35, 1900.1530, 2_164_484.525, 42_607.9631, 4_328_969.049, 57_696.1212, 14.91620),
    ],
)
def test_properties_of_tubes(outer, wall, area, second, elastic, polar, plastic, kg_per_m):
    tube = outer * MM, (outer - 2 * wall) * MM
    near = {"rel": 4e-8}  # the area is printed to eight digits
    assert section.area(*tube) == pytest.approx(area * MM**2, **near)
    assert section.second_moment(*tube) == pytest.approx(second * MM**4, rel=1e-9)
    assert section.elastic_modulus(*tube) == pytest.approx(elastic * MM**3, rel=4e-9)
    assert section.polar_moment(*tube) == pytest.approx(polar * MM**4, rel=1e-9)
    assert section.plastic_modulus(*tube) == pytest.approx(plastic * MM**3, rel=4e-9)
    # Steel of 7850 kg/m3, as the table has it.
    assert section.area(*tube) * 7850 == pytest.approx(kg_per_m, rel=1e-6)


# A worked problem (8.52) of a mechanics-of-materials solutions manual: pipe 142 x 6.5 mm with
# 17 kN of compression at 370 mm from its middle; mm2, mm4, MPa as printed there.
def test_a_pipe_under_a_load_beside_it():
    tube = 142 * MM, 129 * MM
    direct = section.axial_stress(-17e3, *tube)
    bent = section.bending_stress(17e3 * 0.370, *tube)
    assert section.area(*tube) == pytest.approx(2766.958e-6, rel=2e-7)
    assert section.second_moment(*tube) == pytest.approx(6_364_867e-12, rel=1e-7)
    assert direct - bent == pytest.approx(-76.309e6, rel=7e-6)
    assert direct + bent == pytest.approx(64.021e6, rel=8e-6)


# (16 / 3 pi)(1 - k^3) / (1 - k^4): plastic over elastic modulus, from the definitions.
@pytest.mark.parametrize(
    ("bore", "factor"), [(0.0, 1.697653), (0.5, 1.584476), (0.8, 1.403209), (0.9, 1.337784)]
)
def test_shape_factors(bore, factor):
    assert section.shape_factor(1.0, bore) == pytest.approx(factor, rel=4e-7)


def test_shape_factor_of_a_real_tube_is_not_that_of_a_thin_ring():
    # Closed form: 1.38140 for 76.2 x 6.35 mm; 4 / pi only for a vanishing wall.
    assert section.shape_factor(0.0762, 0.0635) == pytest.approx(1.38140, rel=4e-6)
    assert section.shape_factor(1.0, 1.0 - 1e-6) == pytest.approx(4 / np.pi, rel=1e-5)


# Closed forms; MPa to four places (76.2 x 6.35 mm, 5 kN m bending, 3 kN m torsion).
def test_bending_and_torsion_together():
    tube = 0.0762, 0.0635
    bent, turned = section.bending_stress(5e3, *tube), section.shear_stress(3e3, *tube)
    assert bent == pytest.approx(222.3247e6, rel=3e-7)
    assert turned == pytest.approx(66.6974e6, rel=8e-7)
    assert section.von_mises(bent, turned) == pytest.approx(250.5472e6, rel=3e-7)


# Closed forms pi d^3 / 16 and 4/3 of it: 33.3 mm, 600 MPa.
def test_torque_of_a_solid_shaft():
    assert section.yield_torque(0.0333, 0.0, 600e6) == pytest.approx(4350.25, rel=2e-6)
    assert section.plastic_torque(0.0333, 0.0, 600e6) == pytest.approx(5800.33, rel=2e-6)


# Closed forms at equal mass (area 1393.4456 mm2): wall, S and I against 76.2 x 6.35 mm.
@pytest.mark.parametrize(
    ("outer", "wall", "strength", "stiffness"),
    [
        (63.5, 7.9905, 0.7672, 0.6393),
        (69.85, 7.0645, 0.8852, 0.8115),
        (82.55, 5.7774, 1.1122, 1.2049),
        (88.9, 5.3060, 1.2225, 1.4262),
        (95.25, 4.9097, 1.3311, 1.6639),
        (101.6, 4.5713, 1.4385, 1.9180),
        (114.3, 4.0221, 1.6503, 2.4754),
    ],
)
def test_diameter_against_wall_at_equal_mass(outer, wall, strength, stiffness):
    start = 0.0762, 0.0635
    inner = section.inner_at_area(outer * MM, section.area(*start))
    tube = outer * MM, inner
    assert (outer * MM - inner) / 2 == pytest.approx(wall * MM, abs=6e-8)
    gained = section.elastic_modulus(*tube) / section.elastic_modulus(*start)
    stiffer = section.second_moment(*tube) / section.second_moment(*start)
    assert gained == pytest.approx(strength, abs=6e-5)
    assert stiffer == pytest.approx(stiffness, abs=6e-5)


# Closed form: d ln S / d ln D = 2.25484, d ln S / d ln t = 0.74516 at 76.2 x 6.35 mm.
def test_diameter_buys_more_strength_than_wall():
    strength = lambda outer, wall: np.log(section.elastic_modulus(outer, outer - 2 * wall))
    step = 1e-5
    by_diameter = strength(0.0762 * (1 + step), 0.00635) - strength(0.0762 * (1 - step), 0.00635)
    by_wall = strength(0.0762, 0.00635 * (1 + step)) - strength(0.0762, 0.00635 * (1 - step))
    assert by_diameter / (2 * step) == pytest.approx(2.25484, rel=4e-6)
    assert by_wall / (2 * step) == pytest.approx(0.74516, rel=1e-5)


def test_a_millimetre_of_rust_all_round():
    # Closed form: S falls to 0.82677 for 1 mm off the outside, the bore unchanged.
    left = section.elastic_modulus(0.0742, 0.0635) / section.elastic_modulus(0.0762, 0.0635)
    assert left == pytest.approx(0.82677, rel=1e-5)


# Parallel-axis theorem, worked by hand: 38.1 x 3.175 mm tube 90 mm above 76.2 x 6.35 mm.
def test_a_truss_over_a_tube():
    start = 0.0762, 0.0635
    both = section.composite(*start, 0.0762, 0.0, 0.0381, 0.03175, 0.090, 1.0)
    assert both.centroid == pytest.approx(18.000 * MM, abs=6e-7)
    assert both.vertical == pytest.approx(3_167_790 * MM**4, rel=3e-7)
    assert both.lower_modulus == pytest.approx(56_466.8 * MM**3, rel=2e-6)
    assert both.upper_modulus == pytest.approx(34_791.8 * MM**3, rel=2e-6)
    assert both.fore_aft == pytest.approx(910_408 * MM**4, rel=1e-6)
    gained = both.lower_modulus / section.elastic_modulus(*start)
    assert gained == pytest.approx(2.511, rel=2e-4)


def test_a_bonded_sleeve():
    # Closed form: 88.9 mm outside over 76.2 x 6.35 mm, S x 2.2687.
    both = section.composite(0.0762, 0.0635, 0.0889, 1.0, 0.0, 0.0, 0.0, 0.0)
    gained = both.lower_modulus / section.elastic_modulus(0.0762, 0.0635)
    assert gained == pytest.approx(2.2687, rel=2e-5)
    assert both.fore_modulus == pytest.approx(both.lower_modulus)


@pytest.mark.oracle
def test_tube_and_truss_beside_polygon_libraries():
    """Run with shapely and trimesh: circles as polygons of 1024 sides lose some 1e-5."""
    shapely = pytest.importorskip("shapely")
    affinity = pytest.importorskip("shapely.affinity")
    second_moments = pytest.importorskip("trimesh.path.polygons").second_moments

    def ring(outer, inner, up=0.0):
        outside, bore = (shapely.Point(0, 0).buffer(d / 2, quad_segs=256) for d in (outer, inner))
        return affinity.translate(outside - bore, 0.0, up)

    def moments_about_centroid(shape):
        return second_moments(affinity.translate(shape, 0.0, -shape.centroid.y))[:2]

    tube, chord = ring(76.2, 63.5), ring(38.1, 31.75, up=90.0)
    given = 0.0762, 0.0635
    assert section.area(*given) / MM**2 == pytest.approx(tube.area, rel=2e-5)
    bent, sideways = moments_about_centroid(tube)
    assert section.second_moment(*given) / MM**4 == pytest.approx(bent, rel=3e-5)
    assert section.polar_moment(*given) / MM**4 == pytest.approx(bent + sideways, rel=3e-5)
    upper = tube & shapely.box(-100, 0, 100, 100)
    plastic = 2 * upper.area * upper.centroid.y
    assert section.plastic_modulus(*given) / MM**3 == pytest.approx(plastic, rel=3e-5)

    # The two rings stand apart: second moments of a sum of shapes about one line add up.
    middle = (tube | chord).centroid.y
    parts = [affinity.translate(part, 0.0, -middle) for part in (tube, chord)]
    up, fore = np.sum([second_moments(part)[:2] for part in parts], axis=0)
    both = section.composite(*given, 0.0762, 0.0, 0.0381, 0.03175, 0.090, 1.0)
    assert both.vertical / MM**4 == pytest.approx(up, rel=3e-5)
    assert both.fore_aft / MM**4 == pytest.approx(fore, rel=3e-5)
    _, lowest, _, highest = shapely.union_all(parts).bounds
    assert both.lower_modulus / MM**3 == pytest.approx(up / -lowest, rel=3e-5)
    assert both.upper_modulus / MM**3 == pytest.approx(up / highest, rel=3e-5)
