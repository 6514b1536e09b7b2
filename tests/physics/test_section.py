"""Trends, limits and shapes of round sections and of what reinforces them."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from axlewright.physics import section

DIAMETER = st.floats(0.03, 0.2)
SHARE = st.floats(0.1, 0.95)


@pytest.mark.parametrize("bore", [0.0, 0.3, 0.8, 0.95])
def test_moments_are_the_integrals_they_are_defined_by(bore):
    outer, inner = 0.08, 0.08 * bore
    chord = lambda y, size: 2 * np.sqrt(max((size / 2) ** 2 - y**2, 0.0))
    width = lambda y: chord(y, outer) - chord(y, inner)
    over = lambda f: (
        2
        * sum(
            quad(f, low, high, epsabs=0.0, epsrel=1e-11)[0]
            for low, high in ((0.0, inner / 2), (inner / 2, outer / 2))
        )
    )
    assert section.area(outer, inner) == pytest.approx(over(width), rel=1e-8)
    assert section.second_moment(outer, inner) == pytest.approx(
        over(lambda y: y * y * width(y)), rel=1e-8
    )
    assert section.plastic_modulus(outer, inner) == pytest.approx(
        over(lambda y: y * width(y)), rel=1e-8
    )
    assert section.plastic_torque(outer, inner, 1.0) == pytest.approx(
        quad(lambda r: 2 * np.pi * r * r, inner / 2, outer / 2, epsabs=0.0)[0], rel=1e-8
    )


@given(outer=DIAMETER, share=SHARE)
def test_plastic_reserve_lies_between_ring_and_bar(outer, share):
    factor = section.shape_factor(outer, share * outer)
    assert 4 / np.pi < factor < 16 / (3 * np.pi)


@given(outer=DIAMETER, share=SHARE)
def test_a_tube_is_found_again_by_its_area(outer, share):
    inner = share * outer
    assert section.inner_at_area(outer, section.area(outer, inner)) == pytest.approx(inner)


def test_more_area_than_a_bar_has_gives_no_bore():
    assert np.isnan(section.inner_at_area(0.05, 0.01))


@given(outer=DIAMETER, share=SHARE, wider=st.floats(1.01, 2.0))
def test_at_equal_mass_a_wider_tube_is_stronger(outer, share, wider):
    # Closed form; common practice says the same.
    inner = share * outer
    bore = section.inner_at_area(wider * outer, section.area(outer, inner))
    assert section.elastic_modulus(wider * outer, bore) > section.elastic_modulus(outer, inner)


TUBE = 0.0762, 0.0635
CHORD = 0.0381, 0.03175


@given(height=st.floats(0.06, 0.3), bond=st.floats(0.0, 1.0), more=st.floats(0.0, 1.0))
def test_a_better_joined_truss_is_stiffer_up_and_no_stiffer_fore(height, bond, more):
    better = bond + more * (1.0 - bond)
    poor = section.composite(*TUBE, 0.0762, 0.0, *CHORD, height, bond)
    good = section.composite(*TUBE, 0.0762, 0.0, *CHORD, height, better)
    assert good.vertical >= poor.vertical
    assert good.fore_aft == poor.fore_aft
    assert good.lower_modulus >= poor.lower_modulus * (1 - 1e-12)


@given(bond=st.floats(0.0, 1.0))
def test_stress_in_the_pair_balances_the_moment(bond):
    # Under one curvature: own bending of both tubes, and the pair of direct forces at its lever.
    height, curvature = 0.09, 0.01
    both = section.composite(*TUBE, 0.0762, 0.0, *CHORD, height, bond)
    moment = both.vertical * curvature  # over the modulus of elasticity, as all below
    lowest, highest = moment / both.lower_modulus, moment / both.upper_modulus
    at_tube = lowest - curvature * TUBE[0] / 2  # mean stress of each tube
    at_chord = highest - curvature * CHORD[0] / 2
    pull = at_tube * section.area(*TUBE)
    assert pull == pytest.approx(at_chord * section.area(*CHORD), abs=1e-15)
    own = curvature * (section.second_moment(*TUBE) + section.second_moment(*CHORD))
    assert own + pull * height == pytest.approx(moment)


def test_nothing_added_leaves_the_tube():
    bare = section.composite(*TUBE, 0.0762, 1.0, 0.0, 0.0, 0.1, 1.0)
    assert bare.vertical == section.second_moment(*TUBE)
    assert bare.lower_modulus == pytest.approx(section.elastic_modulus(*TUBE))
    assert bare.upper_modulus == pytest.approx(section.elastic_modulus(*TUBE))
    assert bare.fore_modulus == pytest.approx(section.elastic_modulus(*TUBE))


def test_a_loose_sleeve_is_not_counted():
    loose = section.composite(*TUBE, 0.0889, 0.0, 0.0, 0.0, 0.0, 0.0)
    assert loose.lower_modulus == pytest.approx(section.elastic_modulus(*TUBE))


def test_rigs_and_trusses_broadcast():
    outer = np.array([[0.07], [0.08], [0.09]])
    both = section.composite(outer, 0.06, outer, 0.0, *CHORD, np.array([0.1, 0.12]), 1.0)
    assert both.vertical.shape == (3, 2)
    assert both.fore_modulus.shape == (3, 1)


@pytest.mark.parametrize("height", [0.08, 0.15])
def test_a_truss_in_full_bond_takes_the_fully_plastic_moment(height):
    # Both tubes yielded on either side of the axis of equal area, summed over thin strips.
    level = np.linspace(-0.04, 0.3, 400_001)

    def width(outer, inner, middle):
        chord = lambda across: (
            2.0 * np.sqrt(np.maximum(0.25 * across**2 - (level - middle) ** 2, 0.0))
        )
        return chord(outer) - chord(inner)

    across = width(*TUBE, 0.0) + width(*CHORD, height)
    step = level[1] - level[0]
    half = level[np.searchsorted(np.cumsum(across), 0.5 * np.sum(across))]
    exact = np.sum(across * np.abs(level - half)) * step
    ours = section.trussed_plastic_modulus(*TUBE, *CHORD, height, 1.0)
    assert ours == pytest.approx(exact, rel=0.01)
    assert section.trussed_plastic_modulus(*TUBE, *CHORD, height, 0.0) == pytest.approx(
        section.plastic_modulus(*TUBE)
    )
