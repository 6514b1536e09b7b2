"""Trends, limits and shapes of tubes bent past yield."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import plastic, section

TUBE = {"outer": 0.0762, "inner": 0.0635, "yield_stress": 350e6, "modulus": 205e9}
YIELD = float(plastic.yield_moment(0.0762, 0.0635, 350e6))
PLASTIC = float(plastic.plastic_moment(0.0762, 0.0635, 350e6))
SHARE = st.floats(0.0, 0.999)


def tube(share, outer=0.0762):
    return {**TUBE, "outer": outer, "inner": share * outer}


@given(share=st.floats(0.0, 0.9), bend=st.floats(1e-3, 1e3))
def test_curvature_and_moment_are_each_others_inverse(share, bend):
    given_tube = tube(share)
    curvature = bend * plastic.yield_curvature(0.0762, 350e6, 205e9)
    moment = plastic.moment_at_curvature(curvature, **given_tube)
    back = plastic.curvature_at_moment(moment, **given_tube)
    # The moment falls short of the plastic one by some 1 / bend squared of it, so its last digit
    # is worth bend squared as many of the curvature's; a thin wall, the difference of two bars,
    # costs another.
    assert back == pytest.approx(curvature, rel=max(1e-12, 1e-14 * bend**2))


@given(share=SHARE, sign=st.sampled_from([-1.0, 1.0]))
def test_nothing_is_kept_below_yield(share, sign):
    assert plastic.residual_curvature(sign * share * YIELD, **TUBE) == 0.0


@given(first=st.floats(1.001, 1.38), second=st.floats(1.001, 1.38))
def test_more_moment_leaves_more(first, second):
    low, high = sorted([first, second])
    kept = plastic.residual_curvature(np.array([low, high]) * YIELD, **TUBE)
    assert 0.0 < kept[0] <= kept[1]


@given(moment=st.floats(1.01, 1.38))
def test_a_bend_tells_its_moment_and_the_sign_goes_along(moment):
    kept = plastic.residual_curvature(np.array([moment, -moment]) * YIELD, **TUBE)
    found = plastic.moment_for_residual(kept, **TUBE)
    np.testing.assert_allclose(found, [moment * YIELD, -moment * YIELD], rtol=1e-9)


def test_no_bend_tells_first_yield():
    assert plastic.moment_for_residual(0.0, **TUBE) == pytest.approx(YIELD)


def test_bad_and_hopeless_numbers_do_not_raise():
    with np.errstate(all="raise"):
        found = plastic.curvature_at_moment(
            np.array([0.0, np.nan, np.inf, PLASTIC, -2 * PLASTIC]), **TUBE
        )
    assert found[0] == 0.0
    assert np.isnan(found[1])
    np.testing.assert_array_equal(found[2:], [np.inf, np.inf, -np.inf])
    assert np.isnan(plastic.moment_for_residual(np.nan, **TUBE))
    assert plastic.moment_at_curvature(np.inf, **TUBE) == pytest.approx(PLASTIC)


STATIONS = np.array([-0.75, -0.45, -0.1, 0.1, 0.45, 0.75])
OUTERS = np.array([0.0762, 0.0762, 0.12, 0.0762, 0.0762])
INNERS = np.array([0.0635, 0.0635, 0.10, 0.0635, 0.0635])


def kept(moments, outer=OUTERS, inner=INNERS):
    return plastic.permanent_set(
        STATIONS, moments, outer, inner, np.full(5, 350e6), np.full(5, 205e9)
    )


def test_rotation_and_offset_are_integrals_of_the_kept_curvature():
    moments = np.zeros((6, 2))
    moments[1:5] = [[8e3, -3e3], [9.2e3, 2e3], [9.0e3, 2e3], [9.6e3, 1e3]]
    got = kept(moments)
    turned, moved = np.zeros(2), np.zeros(2)
    share = (np.arange(20_000) + 0.5) / 20_000  # midpoints: a plain sum, no Gauss
    for beam, length in enumerate(np.diff(STATIONS)):
        acting = moments[beam] + share[:, None] * (moments[beam + 1] - moments[beam])
        size = np.hypot(*acting.T)
        bend = plastic.residual_curvature(size, OUTERS[beam], INNERS[beam], 350e6, 205e9)
        step = bend[:, None] * acting / size[:, None] * length / 20_000
        to_the_end = STATIONS[-1] - STATIONS[beam] - share * length
        turned += np.sum(step, axis=0)
        moved += np.sum(step * to_the_end[:, None], axis=0)
    assert got.rotation[-1] - got.rotation[0] == pytest.approx(turned, rel=1e-6)
    # The chord through both ends: its slope is the moved end over the span.
    assert got.rotation[0] == pytest.approx(-moved / 1.5, rel=1e-6)


def test_both_ends_lie_on_the_line_they_are_measured_from():
    moments = np.zeros((6, 2))
    moments[1:5, 0] = 9.5e3
    moments[1:5, 1] = 1e3
    got = kept(moments)
    assert got.offset[[0, -1]] == pytest.approx(np.zeros((2, 2)), abs=1e-15)
    # Ends gone up and forward: tops in (camber negative), middle low and behind.
    assert np.all(got.camber < 0.0)
    assert np.all(got.offset[1:5, 1] < 0.0)


def test_a_strike_from_ahead_leaves_toe_in_or_out_as_geometry_says():
    # Struck rearward at both wheels: Mz at the seats as the frame gives it, ends back.
    # Common practice, no source: wheels knocked back toe out, middle bowed forward.
    moments = np.zeros((6, 2))
    moments[1:5, 1] = 9.5e3
    got = kept(moments)
    middle = got.offset[2:4, 0]
    assert np.all(middle > 0.0)
    assert np.all(got.toe < 0.0)
    assert got.camber == pytest.approx(np.zeros(2))


@given(angle=st.floats(0.0, 6.283))
def test_a_round_tube_bends_the_same_in_every_direction(angle):
    moments = np.zeros((6, 2))
    moments[1:5, 0] = [9.5e3, 9e3, 9e3, 9.3e3]
    straight = kept(moments)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    turned = kept(moments @ turn.T)
    np.testing.assert_allclose(turned.rotation, straight.rotation @ turn.T, atol=1e-12)


@given(scale=st.floats(0.86, 1.1))
def test_a_wider_tube_keeps_less(scale):
    moments = np.zeros((6, 2))
    moments[1:5, 0] = scale * 9e3
    wide = np.where(OUTERS < 0.1, 0.0889, OUTERS)
    thin = kept(moments)
    bore = section.inner_at_area(wide, section.area(OUTERS, INNERS))
    strong = kept(moments, wide, bore)
    assert np.abs(strong.camber[0]) <= np.abs(thin.camber[0])


def test_moments_that_jump_at_stations_may_be_given_by_length():
    moments = np.zeros((6, 2))
    moments[1:5, 0] = 9.5e3
    apart = np.stack([moments[:-1], moments[1:]], axis=-2)
    np.testing.assert_array_equal(kept(moments).rotation, kept(apart).rotation)


def test_status_is_told_for_each_case():
    moments = np.zeros((3, 6, 2))
    moments[0, 1:5, 0], moments[1, 1:5, 0] = 9.5e3, 12e3
    moments[2, 3, 1] = np.nan
    with np.errstate(all="raise"):
        got = kept(moments)
    assert got.status.tolist() == [plastic.KEPT, plastic.BEYOND_PLASTIC, plastic.NOT_FINITE]
    assert np.all(np.isfinite(got.camber[0]))
    assert not np.any(np.isfinite(got.camber[1]))
