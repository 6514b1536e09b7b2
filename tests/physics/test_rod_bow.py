"""How much a bow shortens a rod, against closed forms and a length measured along the curve."""

import numpy as np
import pytest

from axlewright.physics import rod_bow


def along(curve, chord, steps=200_001):
    """Length along a curve over a chord, by straight pieces."""
    x = np.linspace(0.0, chord, steps)
    return float(np.sum(np.hypot(np.diff(x), np.diff(curve(x)))))


@pytest.mark.parametrize("share", [0.002, 0.01, 0.03, 0.1])
def test_an_even_bow_is_as_short_as_its_own_length_along_the_curve(share):
    # Outside reference: length summed along the parabola itself.
    chord, bow = 1.2, 1.2 * share
    length = along(lambda x: 4.0 * bow * x * (chord - x) / chord**2, chord)
    told = float(rod_bow.even_bow_shortening(bow, length))
    assert told == pytest.approx(length - chord, rel=3.2e-3 * (share / 0.1) ** 2 + 1e-4)


def test_a_half_sine_lies_between_a_kink_and_an_even_bow():
    chord, bow = 1.0, 0.02
    length = along(lambda x: bow * np.sin(np.pi * x / chord), chord)
    low = float(rod_bow.kink_shortening(bow, length))
    high = float(rod_bow.even_bow_shortening(bow, length))
    assert low < length - chord < high


def test_a_kink_is_a_triangle():
    # 3-4-5: halves of 0.5, kink of 0.3, so the ends stand 0.8 apart.
    assert float(rod_bow.kink_shortening(0.3, 1.0)) == pytest.approx(0.2, rel=1e-12)
    assert np.isnan(rod_bow.kink_shortening(0.6, 1.0))


def test_an_arm_turns_by_the_sine():
    # sin 30 degrees is one half.
    assert float(rod_bow.arm_turn(0.085, 0.17)) == pytest.approx(np.pi / 6, rel=1e-12)
    assert np.isnan(rod_bow.arm_turn(0.2, 0.17))


def test_lanes_stand_beside_each_other():
    bows = np.array([0.0, 0.01, 0.02])
    told = rod_bow.even_bow_shortening(bows, np.array([[1.0], [2.0]]))
    assert told.shape == (2, 3)
    np.testing.assert_allclose(told[:, 0], 0.0)
    np.testing.assert_allclose(told[:, 2], 4.0 * told[:, 1], rtol=1e-12)
