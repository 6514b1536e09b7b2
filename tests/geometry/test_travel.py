"""Travel of whole axles: facts of the trade, swings, limits, both hands of drive, fuzz."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from axlewright.errors import AxlewrightError
from axlewright.geometry import measures, travel, travel_grid
from axlewright.geometry.joints import damper_lengths, spring_lengths, stop_gaps, swings
from axlewright.geometry.limits import limits
from axlewright.geometry.measuring import bump_steer
from axlewright.geometry.moving import at_ride, drop_arm, motion
from axlewright.geometry.points import hardpoints
from axlewright.physics import linkage
from axlewright.rig import geometry_columns
from geometry.cases import demo, three_arms

RIGS = ("heron", "wagtail", "stork-rear")


def points_of(name, **more):
    rig = demo(name)
    columns = geometry_columns(rig) | {key: np.array([value]) for key, value in more.items()}
    return hardpoints(columns, {**rig.words}, geometry_columns(rig))


@pytest.mark.parametrize("name", RIGS)
def test_at_ride_nothing_has_moved(name):
    ready, made = at_ride(points_of(name, travel_lift=0.0))
    assert made.status[0] == linkage.POSED
    assert made.pose[0] == pytest.approx(0.0, abs=1e-9)
    assert all(swing[0] < 1e-9 for swing in swings(ready, made).values())
    assert stop_gaps(ready, made) == pytest.approx(ready.columns["travel_bump_gap"][0])


@pytest.mark.parametrize("name", RIGS)
def test_up_is_up(name):
    ready, _ = at_ride(points_of(name))
    made = motion(ready, [[0.05, 0.05], [-0.05, -0.05]])
    dampers, gaps = damper_lengths(ready, made), stop_gaps(ready, made)
    assert np.all(dampers[0] < dampers[1])
    assert np.all(gaps[0] < gaps[1])
    if ready.arms != "leaves":
        springs = spring_lengths(ready, made)
        assert springs[1] - springs[0] == pytest.approx(0.1, abs=0.01)


@pytest.mark.parametrize("name", ["heron", "wagtail"])
def test_an_axle_on_arms_from_behind_loses_caster_as_it_hangs(name):
    # common practice, no source: a lift takes caster away, the pinion rises with it
    ready, _ = at_ride(points_of(name, travel_lift=0.0))
    made = motion(ready, [[-0.06, -0.06], [0.0, 0.0], [0.06, 0.06]])
    caster = made.caster.mean(axis=1)
    assert caster[0] < caster[1] < caster[2]
    assert caster - caster[1] == pytest.approx(made.pose[1, 4] - made.pose[:, 4], abs=2e-4)


def test_a_radius_arm_turns_the_axle_by_lift_over_arm():
    # common practice, no source: a 38 in arm lifted 3 in gives up 4.5 degrees
    rig = demo("wagtail")
    columns = geometry_columns(rig)
    for side in ("left", "right"):
        for end, ahead in (("arm_frame", -0.9652), ("arm_axle", -0.09), ("arm_axle_far", 0.09)):
            columns[f"point_{end}_{side}_ahead"] = np.array([ahead])
            columns[f"point_{end}_{side}_left"] = np.array([0.4 if side == "left" else -0.4])
            columns[f"point_{end}_{side}_up"] = columns["radius"] - 0.05
        columns[f"point_arm_frame_{side}_up"] = columns["radius"] + 0.03
    lifted = columns | {"travel_lift": np.array([0.0762])}
    _, before = measures(hardpoints(columns, rig.words))
    _, after = measures(hardpoints(lifted, rig.words, columns))
    assert np.degrees(after.caster - before.caster) == pytest.approx(-4.5, abs=0.25)


def test_turning_the_housing_trades_caster_for_pinion_degree_for_degree():
    # common practice, no source: both are on one housing
    _, before = measures(three_arms())
    _, after = measures(three_arms().longer("third_arm", -0.006))
    assert after.caster - before.caster == pytest.approx(before.pinion - after.pinion, abs=1e-5)
    # dL/S of two links 230 mm apart, 1.494673 degrees (derived); here the arms stand 260 apart
    assert np.degrees(after.caster - before.caster) == pytest.approx(
        np.degrees(0.006 / 0.26), rel=0.05
    )


def test_turning_the_forgings_gains_caster_and_leaves_the_pinion():
    # common practice, no source: grind out, turn, weld again
    plain, turned = points_of("heron"), points_of("heron", travel_forgings_turned=0.05)
    _, before = measures(plain)
    _, after = measures(turned)
    assert after.caster - before.caster == pytest.approx(0.05, abs=1e-6)
    assert after.pinion == pytest.approx(before.pinion, abs=1e-9)


def test_the_track_bar_sets_where_the_axle_stands_and_not_its_toe():
    # common practice, no source
    _, before = measures(three_arms())
    ready, after = measures(three_arms().longer("track_bar", 0.01))
    assert after.shift - before.shift == pytest.approx(-0.01, abs=5e-4)
    _, made = at_ride(ready)
    assert made.heading[0, 0] - made.heading[0, 1] == pytest.approx(0.0, abs=1e-5)


def test_a_drop_arm_alone_makes_bump_steer_worse_after_a_lift():
    # common practice, no source: leave the drop arm while the track bar stays
    lifted = points_of("heron", travel_lift=0.06)
    ready, _ = at_ride(lifted)
    worse, _ = at_ride(lifted.moved("drag_link_pitman", (0.0, 0.0, -0.05)))
    better, _ = at_ride(lifted.moved("track_bar_axle", (0.0, 0.0, 0.05)))
    assert abs(bump_steer(worse)) > abs(bump_steer(ready)) > abs(bump_steer(better))


def test_a_drag_link_on_the_tie_rod_turns_the_wheels_apart_in_bump():
    # common practice, no source: toe changes with travel where the drag link holds the tie rod
    rig = demo("heron")
    columns = geometry_columns(rig)
    on = hardpoints(columns, {**rig.words, "steering.drag_link_on": "tie rod"}, columns)
    ready, made = at_ride(on)
    assert made.status[0] == linkage.POSED
    moved = motion(ready, [[0.06, 0.06]])
    off = motion(at_ride(hardpoints(columns, rig.words, columns))[0], [[0.06, 0.06]])
    toe = lambda each: abs(each.heading[0, 0] - each.heading[0, 1])
    assert toe(moved) > toe(off)


def in_a_mirror(columns):
    """The same axle in a mirror."""
    out = dict(columns)
    for name, value in columns.items():
        if not name.startswith(("point_", "longer_", "tube_", "hub_height_", "sleeve_")):
            continue
        other = name
        for one, two in (("_left_", "_right_"), ("_right_", "_left_")):
            if one in name:
                other = name.replace(one, two, 1)
                break
        sign = -1.0 if name.startswith("point_") and name.endswith("_left") else 1.0
        out[other] = sign * value
    return out


def test_right_hand_drive_is_its_mirror_image():
    rig = demo("heron")
    columns = geometry_columns(rig)
    words = {**rig.words, "steering.drive_side": "right", "track_bar.on_axle": "left"}
    one, other = hardpoints(columns, rig.words), hardpoints(in_a_mirror(columns), words)
    left = motion(at_ride(one)[0], [[0.06, -0.02]])
    right = motion(at_ride(other)[0], [[-0.02, 0.06]])
    assert right.pose[0, [0, 2, 4]] == pytest.approx(left.pose[0, [0, 2, 4]], abs=1e-9)
    assert right.pose[0, [1, 3, 5]] == pytest.approx(-left.pose[0, [1, 3, 5]], abs=1e-9)
    assert right.heading[0] == pytest.approx(-left.heading[0, ::-1], abs=1e-9)


def test_the_drop_arm_turns_left_for_a_left_turn():
    ready, _ = at_ride(points_of("heron"))
    made = motion(ready, [[0.0, 0.0]], drop_arm(ready, np.array([-0.3, 0.0, 0.3])))
    assert np.all(made.status == linkage.POSED)
    assert np.all(np.diff(made.heading[:, 0]) > 0.1)


@pytest.mark.parametrize("name", RIGS)
def test_limits_come_in_order_and_at_their_own_lengths(name):
    ready, _ = at_ride(points_of(name, travel_lift=0.0))
    found = limits(ready, "bump")
    assert [each.at for each in found] == sorted(each.at for each in found)
    stop = next(each for each in found if "stop" in each.what)
    assert stop.at == pytest.approx(ready.columns["travel_bump_gap"][0], abs=0.003)
    damper = next(each for each in limits(ready, "droop") if "pulled out" in each.what)
    made = motion(ready, [[-damper.at, -damper.at]])
    assert np.max(damper_lengths(ready, made)) == pytest.approx(
        ready.columns["travel_damper_longest"][0], abs=1e-4
    )


def test_a_grid_is_what_its_poses_are():
    points = three_arms()
    bump, roll, steer = np.array([-0.05, 0.0, 0.05]), np.array([-0.05, 0.05]), np.array([0.0, 0.2])
    found = travel_grid(points, bump, roll, steer)
    assert len(found.made.status) == 12
    alone = motion(points, found.made.heights[[7]], drop_arm(points, np.array([0.2])))
    assert found.made.pose[7] == pytest.approx(alone.pose[0])
    assert found.made.heading[7] == pytest.approx(alone.heading[0])
    assert found.swings["drag_link"].shape == (12,)
    assert found.roll_centre[0] == found.roll_centre[1]


def test_an_arm_that_cannot_reach_is_named_and_by_how_much():
    with pytest.raises(AxlewrightError, match=r"track bar is 600 mm longer than its ends"):
        at_ride(three_arms().longer("track_bar", 0.6))
    with pytest.raises(AxlewrightError, match=r"upper arm.*mm (longer|shorter)"):
        at_ride(three_arms().longer("third_arm", -0.45))


def test_swapped_ends_never_give_a_wrong_pose():
    points = three_arms()
    at = dict(points.at)
    at["track_bar_frame"], at["track_bar_axle"] = at["track_bar_axle"], at["track_bar_frame"]
    try:
        _, made = at_ride(points.with_places(at))
    except AxlewrightError:
        return
    assert np.max(np.abs(made.gap)) < 1e-9


shove = st.floats(-0.4, 0.4)


@settings(max_examples=150, deadline=None)
@given(
    which=st.sampled_from(sorted(three_arms().at)),
    by=st.tuples(shove, shove, shove),
    left=st.floats(-0.3, 0.3),
    right=st.floats(-0.3, 0.3),
    turn=st.floats(-1.5, 1.5),
)
def test_whatever_is_taped_wrong_no_pose_is_wrong(which, by, left, right, turn):
    points = three_arms().moved(which, by)
    made = motion(points, [[left, right]], drop_arm(points, np.array([turn])))
    if made.status[0] in {linkage.OUT_OF_REACH, linkage.NOT_FINITE}:
        assert np.isnan(made.pose[0]).all()
        assert np.isnan(made.heading[0]).all()
        return
    for rod in points.rods:  # every rod has its own length, on the side where it was taped
        end = made.pose[0, :3] + made.turn[0] @ rod.axle[0]
        assert np.linalg.norm(end - rod.frame[0]) == pytest.approx(rod.length[0], abs=1e-8)
        first = (rod.axle[0] - rod.frame[0]) / np.linalg.norm(rod.axle[0] - rod.frame[0])
        assert (end - rod.frame[0]) @ first > 0.0
    if made.status[0] == linkage.NOT_STEERED:
        assert np.isnan(made.heading[0]).all()


@pytest.mark.parametrize("name", RIGS)
def test_the_study_of_a_demo_rig(name):
    found = travel(demo(name), draws=64)
    assert found.stances[1].height == 0.0
    assert found.taped_places <= found.places
    for low, high in found.bands.values():
        assert low <= high
    if name != "stork-rear":
        assert found.taped_places >= 17
        low, high = found.bands["caster"]
        assert low < found.now.caster < high
