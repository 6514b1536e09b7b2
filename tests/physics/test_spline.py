"""Trends and shapes of splines."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import shaft, spline

PITCH = 945.0  # teeth per metre
TEETH = st.integers(16, 50)


@given(teeth=TEETH, pitch=st.floats(300, 1800))
def test_diameters_stand_in_order(teeth, pitch):
    minor, middle, major = (
        f(teeth, pitch)
        for f in (spline.minor_diameter, spline.pitch_diameter, spline.major_diameter)
    )
    assert minor < middle < major


@given(teeth=TEETH)
def test_more_teeth_of_one_pitch_carry_more(teeth):
    stress = [
        spline.root_shear(3e3, spline.minor_diameter(count, PITCH)) for count in (teeth, teeth + 1)
    ]
    assert stress[1] < stress[0]
    stress = [spline.tooth_shear(3e3, count, PITCH, 0.04) for count in (teeth, teeth + 1)]
    assert stress[1] < stress[0]


def test_the_shaft_under_the_root_gives_before_the_teeth():
    # A usual length, one to one and a half diameters, leaves the root the weaker (dudley).
    root = spline.minor_diameter(30, PITCH)
    assert spline.root_shear(3e3, root) > spline.tooth_shear(3e3, 30, PITCH, 1.2 * root)


def test_root_shear_is_the_stress_of_a_round_shaft():
    assert spline.root_shear(3e3, 0.03, 0.01) == pytest.approx(shaft.shear_stress(3e3, 0.03, 0.01))


def test_sliding_pressure_is_nine_times_the_clamped_one():
    arguments = (3e3, 30, PITCH, 0.04, spline.contact_height(PITCH))
    assert spline.side_pressure_sliding(*arguments) == pytest.approx(
        9 * spline.side_pressure(*arguments)
    )


@given(cycles=st.floats(1, 1e12), more=st.floats(1, 100))
def test_more_cycles_never_allow_more(cycles, more):
    for factor in (spline.fatigue_factor, spline.wear_factor):
        assert factor(cycles * more) <= factor(cycles)


@given(slope=st.floats(0, 0.02), length=st.floats(0.005, 0.2), more=st.floats(1, 3))
def test_worse_alignment_or_length_never_shares_better(slope, length, more):
    here = spline.sharing_factor(slope, length)
    assert 1 <= here <= spline.sharing_factor(slope * more, length) + 1e-12
    assert here <= spline.sharing_factor(slope, length * more) + 1e-12


def test_shapes_broadcast():
    torque = np.ones((5, 1)) * 3e3
    teeth = np.array([27.0, 30.0, 35.0])
    assert spline.tooth_shear(torque, teeth, PITCH, 0.04).shape == (5, 3)
    assert spline.sharing_factor(np.full((5, 1), 0.001), np.full(3, 0.03)).shape == (5, 3)
