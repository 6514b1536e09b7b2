"""Linkages: trends, arcs of the trade, what cannot be reached."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.physics import linkage as axle
from axlewright.physics.steering import axis_direction

SIDES = np.array([1.0, -1.0])
FRAME = np.array([[-0.9, 0.4, 0.0], [-0.9, -0.4, 0.0], [-0.8, -0.25, 0.15], [0.13, 0.43, 0.12]])
AXLE = np.array(
    [[-0.07, 0.45, -0.09], [-0.07, -0.45, -0.09], [0.015, -0.29, 0.16], [0.13, -0.44, 0.04]]
)


def steered(*, ahead=1.0, caster=0.0, lean=0.0, bar=None, link=None, longer=0.0, drag_on=None):
    """A linkage whose track bar and drag link can be laid as wanted, (far end, near end)."""
    near, far = FRAME.copy(), AXLE.copy()
    if bar is not None:
        near[3], far[3] = bar
    tie = np.array([[0.165 * ahead, 0.655, 0.02], [0.165 * ahead, -0.655, 0.02]])
    pitman, drag = ([0.185, 0.4, 0.165], [0.18, -0.65, 0.06]) if link is None else link
    return axle.axle_linkage(
        near,
        far,
        0.78,
        steering=axle.Steering(
            pivot=np.array([[0.0, 0.7, 0.0], [0.0, -0.7, 0.0]]),
            axis=np.stack([axis_direction(caster, lean, side) for side in SIDES]),
            spindle=axle.spindle_direction(0.0, 0.0, SIDES),
            tie_end=tie,
            drag_on=axle.ON_RIGHT if drag_on is None else drag_on,
            drag_end=np.array(drag),
            pitman=np.array(pitman),
            tie_length=axle.rod_lengths(tie[0], tie[1]) + longer,
        ),
    )


@given(left=st.floats(-0.1, 0.1), right=st.floats(-0.1, 0.1))
def test_rods_keep_their_lengths(left, right):
    posed = axle.axle_poses(axle.axle_linkage(FRAME, AXLE, 0.78), [[left, right]])
    assert posed.status[0] == axle.POSED
    assert np.max(np.abs(posed.gap)) < 1e-10


@given(left=st.floats(-0.1, 0.1), right=st.floats(-0.1, 0.1))
def test_the_wheels_stand_at_their_heights(left, right):
    posed = axle.axle_poses(axle.axle_linkage(FRAME, AXLE, 0.78), [[left, right]])
    roll, pitch = posed.pose[0, 3], posed.pose[0, 4]
    up = 0.78 * np.cos(pitch) * np.sin(roll)
    assert posed.pose[0, 2] + up == pytest.approx(left, abs=1e-12)
    assert posed.pose[0, 2] - up == pytest.approx(right, abs=1e-12)


def test_equal_slope_and_length_of_drag_link_and_track_bar_give_no_bump_steer():
    # common practice, no source: parallel and equal, the two ends travel on the same arc.
    fall = np.array([0.0, -0.86, -0.09])
    bar = np.array([0.13, 0.43, 0.12]), np.array([0.13, 0.43, 0.12]) + fall
    link = np.array([0.165, 0.21, 0.11]), np.array([0.165, 0.21, 0.11]) + fall
    arms = np.array(
        [[-0.9, 0.45, -0.09], [-0.9, -0.45, -0.09], [-0.9, -0.29, 0.16]]
    )  # level and equal: the axle rises without pitching
    far = np.array([[-0.07, 0.45, -0.09], [-0.07, -0.45, -0.09], [-0.07, -0.29, 0.16]])
    made = steered(bar=bar, link=link)
    numbers = made.numbers.copy()
    for rod in range(3):
        first = 1 + 8 * rod
        numbers[0, first : first + 3], numbers[0, first + 3 : first + 6] = arms[rod], far[rod]
        numbers[0, first + 6] = 0.83
    level = made._replace(numbers=numbers)
    posed = axle.axle_poses(level, [[0.08, 0.08], [-0.08, -0.08]])
    assert np.all(posed.status == axle.POSED)
    assert posed.wheels[:, :, 1] == pytest.approx(0.0, abs=1e-9)
    steeper = axle.axle_poses(
        steered(bar=bar, link=(link[0] + [0.0, 0.0, 0.08], link[1])), [[0.08, 0.08]]
    )
    assert abs(np.degrees(steeper.wheels[0, 1, 1])) > 1.0


@pytest.mark.parametrize(("ahead", "sense"), [(1.0, -1.0), (-1.0, 1.0)])
def test_a_longer_tie_rod_toes_out_ahead_of_the_axle_and_in_behind(ahead, sense):
    # common practice, no source
    posed = axle.axle_poses(steered(ahead=ahead, longer=0.002), np.zeros((1, 2)))
    toe_in = posed.wheels[0, 1, 1] - posed.wheels[0, 0, 1]
    assert sense * toe_in > 0.005


def test_only_the_far_wheel_moves_when_the_tie_rod_is_turned():
    # common practice, no source: the drag link holds its own knuckle.
    posed = axle.axle_poses(steered(longer=0.002), np.zeros((1, 2)))
    assert posed.wheels[0, 1, 1] == pytest.approx(0.0, abs=1e-12)
    assert abs(posed.wheels[0, 0, 1]) > 0.005


def test_a_pitched_axle_changes_caster_degree_for_degree():
    # Geometry: with no lean and no steer the kingpin turns with the housing.
    made = steered(caster=np.radians(5.0))
    posed = axle.axle_poses(made, [[0.06, 0.06]])
    gained = posed.wheels[0, 0, 3] - np.radians(5.0)
    assert gained == pytest.approx(-posed.pose[0, 4], abs=2e-5)
    assert abs(gained) > 0.01


def test_a_drag_link_on_the_tie_rod_turns_both_wheels_alike():
    made = steered(link=([0.18, 0.4, 0.1], [0.5, 0.0, 0.0]), drag_on=axle.ON_TIE_ROD)
    posed = axle.axle_poses(made, np.zeros((1, 2)), [[0.18, 0.43, 0.1]])
    assert posed.status[0] == axle.POSED
    assert np.all(posed.wheels[0, :, 1] > 0.1)


def test_rods_that_cannot_reach_say_which_and_by_how_much():
    lengths = axle.rod_lengths(FRAME, AXLE)
    lengths[3] = 3.0
    posed = axle.axle_poses(axle.axle_linkage(FRAME, AXLE, 0.78, length=lengths), np.zeros((1, 2)))
    assert posed.status[0] == axle.OUT_OF_REACH
    assert np.all(np.isnan(posed.pose[0]))
    assert np.argmax(np.abs(posed.gap[0])) == 3


def test_more_droop_than_the_track_can_lean_is_out_of_reach():
    posed = axle.axle_poses(axle.axle_linkage(FRAME, AXLE, 0.78), [[0.9, -0.9]])
    assert posed.status[0] == axle.OUT_OF_REACH


@pytest.mark.parametrize("bad", [np.nan, np.inf])
def test_a_bad_number_spoils_its_own_lane_alone(bad):
    posed = axle.axle_poses(axle.axle_linkage(FRAME, AXLE, 0.78), [[0.0, bad], [0.01, 0.02]])
    assert posed.status[0] != axle.POSED
    assert posed.status[1] == axle.POSED


def test_steering_that_cannot_reach_leaves_the_axle_posed():
    posed = axle.axle_poses(steered(), np.zeros((1, 2)), [[0.185, 5.0, 0.165]])
    assert posed.status[0] == axle.NOT_STEERED
    assert np.all(np.isfinite(posed.pose[0]))
    assert np.all(np.isnan(posed.wheels[0]))


def test_lanes_do_not_depend_on_their_neighbours():
    rng = np.random.default_rng(3)
    heights = rng.uniform(-0.1, 0.1, (50, 2))
    made = steered(caster=0.1, lean=0.15)
    whole = axle.axle_poses(made, heights)
    for place in (0, 17, 49):
        alone = axle.axle_poses(made, heights[place])
        np.testing.assert_array_equal(whole.pose[place], alone.pose[0])
        np.testing.assert_array_equal(whole.wheels[place], alone.wheels[0])


@given(
    moves=st.lists(st.floats(-2.0, 2.0), min_size=24, max_size=24),
    left=st.floats(-0.5, 0.5),
    right=st.floats(-0.5, 0.5),
)
def test_any_hardpoints_give_a_pose_that_holds_or_say_no(moves, left, right):
    near = FRAME + np.reshape(moves[:12], (4, 3))
    far = AXLE + np.reshape(moves[12:], (4, 3))
    posed = axle.axle_poses(axle.axle_linkage(near, far, 0.78), [[left, right]])
    if posed.status[0] == axle.POSED:
        assert np.max(np.abs(posed.gap)) < 1e-8
    else:
        assert posed.status[0] in {axle.OUT_OF_REACH, axle.NOT_FINITE}


def test_three_rods_are_too_few():
    with pytest.raises(ValueError, match="four rods"):
        axle.axle_linkage(FRAME[:3], AXLE[:3], 0.78)
