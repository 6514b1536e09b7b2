"""Oil in a lying drum: closed forms and a count of small squares."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import sump


@pytest.mark.parametrize(
    ("level", "share"),
    [(-1.0, 0.0), (0.0, 0.5), (1.0, 1.0), (5.0, 1.0), (-5.0, 0.0)],
)
def test_none_half_and_all_of_a_circle(level, share):
    assert sump.segment_area(1.0, level) == pytest.approx(share * np.pi, abs=1e-12)


def test_a_segment_is_that_of_the_handbooks():
    """A segment of half angle 60 degrees: r²(θ - sin θ cos θ), plane geometry."""
    theta = np.pi / 3
    level = -0.1 * np.cos(theta)
    want = 0.01 * (theta - np.sin(theta) * np.cos(theta))
    assert sump.segment_area(0.1, level) == pytest.approx(want, rel=1e-12)


@given(level=st.floats(-0.09, 0.09))
def test_a_drum_holds_what_small_slices_hold(level):
    heights = np.linspace(-0.1, level, 20_001)
    middles = 0.5 * (heights[1:] + heights[:-1])
    slices = 2.0 * np.sqrt(0.01 - middles**2) * np.diff(heights) * 0.2
    assert sump.sump_volume(0.1, 0.2, level) == pytest.approx(slices.sum(), rel=1e-4, abs=1e-9)


def test_a_turned_point_keeps_its_distance():
    angle = np.linspace(-1.0, 1.0, 7)
    up = sump.turned_height(0.2, 0.05, angle)
    ahead = sump.turned_height(0.05, -0.2, angle)
    assert np.hypot(up, ahead) == pytest.approx(np.hypot(0.2, 0.05))
    assert sump.turned_height(0.2, 0.05, 0.0) == pytest.approx(0.05)
    assert sump.turned_height(0.2, 0.0, np.pi / 2) == pytest.approx(0.2)


def test_a_ring_lies_lower_by_half_its_size_on_a_level_shaft():
    assert sump.lower_edge(0.0, 0.08, 0.0) == pytest.approx(-0.04)
    assert sump.lower_edge(0.0, 0.08, np.pi / 2) == pytest.approx(0.0)
