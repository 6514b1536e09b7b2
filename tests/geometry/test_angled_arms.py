"""Four links without a track bar: the angled upper arms alone hold the axle sideways."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation

from axlewright.errors import AxlewrightError
from axlewright.geometry import hardpoints, measures, travel, travel_grid
from axlewright.geometry.bind import carried, parked_pulls
from axlewright.geometry.clearance import clearance
from axlewright.geometry.moving import at_ride, motion, slopes
from axlewright.physics import linkage
from axlewright.rig import geometry_columns, rig_from_text
from geometry.cases import HOME, demo

RIGS = ("heron", "stork-rear")
OTHERS = ("point_", "longer_", "track_bar_")  # what another layout's owner taped


def angled(name="heron"):
    rig = demo(name)
    given_ = {key: datum for key, datum in rig.given.items() if not key.startswith(OTHERS)}
    rig = replace(rig, given=given_).with_word("held_by.arms", "angled arms")
    return rig.with_word("held_by.weight_on", "coil on a seat")


def points_of(name="heron", **more):
    rig = angled(name)
    columns = geometry_columns(rig)
    told = columns | {key: np.array([value]) for key, value in more.items()}
    return hardpoints(told, rig.words, columns | {"longer_upper_arm_left": np.zeros(1)})


@pytest.mark.oracle
@pytest.mark.parametrize("name", RIGS)
@pytest.mark.parametrize(
    "heights", [(0.05, 0.05), (-0.1, -0.1), (0.08, -0.08), (-0.08, 0.08), (0.12, -0.04)]
)
def test_a_pose_beside_a_general_optimiser(name, heights):
    # SciPy's least squares and rotations, on the lengths of the four rods; asked: 1 um and 1 urad
    points, _ = at_ride(points_of(name, travel_lift=0.0))
    near = np.stack([rod.frame[0] for rod in points.rods])
    far = np.stack([rod.axle[0] for rod in points.rods])
    half, (left, right) = float(points.half_track[0]), heights

    def gone(at):
        x, y, pitch, yaw = at
        roll = np.arcsin((left - right) / (2 * half * np.cos(pitch)))
        moved = Rotation.from_euler("ZYX", [yaw, pitch, roll]).apply(far)
        long = linkage.rod_lengths(near, np.add(moved, [x, y, 0.5 * (left + right)]))
        return long - linkage.rod_lengths(near, far)

    found = least_squares(gone, np.zeros(4), xtol=1e-15, ftol=1e-15, gtol=1e-15)
    assert np.max(np.abs(found.fun)) < 1e-10
    made = motion(points, [heights])
    assert made.status[0] == linkage.POSED
    assert made.pose[0, [0, 1, 4, 5]] == pytest.approx(found.x, abs=1e-8)


@pytest.mark.parametrize("name", RIGS)
def test_the_roll_axis_goes_through_the_point_where_the_upper_arms_meet(name):
    # gillespie1992, ch. 7, four-link axle: through the upper arms' meeting point and, the lower
    # arms being parallel from above, along the lower arms' slope; it is exact at ride
    points, _ = at_ride(points_of(name, travel_lift=0.0))
    arm, upper = points.rod("arm_left"), points.rod("upper_arm_left")
    other = points.rod("upper_arm_right")
    lines = np.stack(
        [(upper.frame - upper.axle)[0, :2], -(other.frame - other.axle)[0, :2]], axis=1
    )
    share = np.linalg.solve(lines, (other.axle - upper.axle)[0, :2])
    meet = upper.axle[0] + share[0] * (upper.frame - upper.axle)[0]
    low = (arm.frame - arm.axle)[0]
    height = meet[2] - meet[0] * low[2] / low[0] + float(points.columns["radius"][0])
    found = slopes(points, np.zeros((1, 2)))
    assert found.roll_centre[0] == pytest.approx(height, abs=1e-3)


def test_a_side_load_is_carried_by_the_upper_arms():
    points, _ = at_ride(points_of(travel_lift=0.0))
    patch = np.array([[0.0, 0.75, -0.43], [0.0, -0.75, -0.43]])
    springs = np.stack([points.at[f"spring_seat_{side}"][0] for side in ("left", "right")])
    found = carried(points, np.array([[0.0, 1500.0, 0.0]] * 2), patch, springs)
    upper = points.rod("upper_arm_left")
    line = (upper.frame - upper.axle)[0] / upper.length[0]
    # statics across: the lower arms run straight back, so both upper arms carry all of it
    assert (found[3] - found[2]) * line[1] == pytest.approx(3000.0, rel=1e-9)
    assert min(abs(found[2]), abs(found[3])) > 0.5 * 3000.0 / (2.0 * line[1])


def test_no_length_binds_it_and_a_long_upper_arm_moves_it_aside():
    # common practice, no source: unequal upper arms set the axle sideways and askew
    points = points_of(longer_upper_arm_left=0.004)
    assert all(
        pull[0] == 0.0 for pull in parked_pulls(points.columns, points.words, points).values()
    )
    _, moved = measures(points)
    _, before = measures(points_of())
    assert moved.shift - before.shift < -0.002
    assert moved.parked == 0.0


def test_without_a_track_bar_the_drag_link_steers_in_bump():
    # common practice, no source: nothing follows the drag link's arc; with a track bar parallel to
    # it something does
    _, now = measures(points_of(travel_lift=0.0))
    _, taped = measures(hardpoints(geometry_columns(demo("heron")), demo("heron").words))
    assert abs(now.bump_steer) > abs(taped.bump_steer)
    assert now.slope_apart == 0.0


def test_the_grid_and_the_study_have_every_output():
    points = points_of()
    found = travel_grid(
        points, np.linspace(-0.08, 0.08, 5), np.linspace(-0.08, 0.08, 5), np.linspace(-0.2, 0.2, 5)
    )
    assert np.all(found.made.status == linkage.POSED)
    assert set(found.swings) == {rod.name for rod in points.rods} | {"tie_rod", "drag_link"}
    assert np.isfinite(found.roll_centre).all()
    whole = travel(angled(), draws=32)
    assert {fix.key for fix in whole.fixes}.isdisjoint({"raised_track_bar", "track_bar_length"})
    assert clearance(points, whole.rig.tyre).lowest.what == "the centre"


def test_measures_of_a_track_bar_do_not_go_with_angled_arms():
    text = (HOME / "examples/rigs/heron.toml").read_text("utf-8")
    with pytest.raises(AxlewrightError, match="hold the axle sideways by themselves"):
        rig_from_text(text.replace('arms = "three arms"', 'arms = "angled arms"'))


def test_an_upper_arm_that_cannot_reach_is_named_and_by_how_much():
    points, _ = at_ride(points_of())
    with pytest.raises(AxlewrightError, match=r"left upper arm .*\d+ mm (longer|shorter)"):
        at_ride(points.longer("upper_arm_left", 0.5))


shove = st.floats(-0.4, 0.4)
LAYOUTS = {"heron": "three arms", "wagtail": "radius arms", "stork-rear": "leaves"}
SHAPES = {
    "angled arms": at_ride(points_of())[0],
    **{
        arms: at_ride(hardpoints(geometry_columns(demo(name)), demo(name).words))[0]
        for name, arms in LAYOUTS.items()
    },
}


@settings(max_examples=200, deadline=None)
@given(
    arms=st.sampled_from(sorted(SHAPES)),
    number=st.integers(0, 100),
    by=st.tuples(shove, shove, shove),
    left=st.floats(-0.3, 0.3),
    right=st.floats(-0.3, 0.3),
)
def test_whatever_is_taped_wrong_on_any_layout_no_pose_is_wrong(arms, number, by, left, right):
    names = sorted(SHAPES[arms].at)
    points = SHAPES[arms].moved(names[number % len(names)], by)
    made = motion(points, [[left, right]])
    if made.status[0] in {linkage.OUT_OF_REACH, linkage.NOT_FINITE}:
        assert np.isnan(made.pose[0]).all()
        return
    pull = np.zeros(4)
    for place, rod in enumerate(points.rods):
        end = made.pose[0, :3] + made.turn[0] @ rod.axle[0]
        long = np.linalg.norm(end - rod.frame[0])
        assert made.gap[0, place] == pytest.approx(long - rod.length[0], abs=1e-9)
        line = (end - rod.frame[0]) / long
        assert line @ (rod.axle[0] - rod.frame[0]) > 0.0  # on the side where it was taped
        turning = np.cross(end - made.pose[0, :3], line)
        pull += made.gap[0, place] * rod.stiffness[0] * np.array([*line[:2], *turning[1:]])
    # nothing pulls it ahead or across: four rods pull nothing, more are in balance
    stiff = max(float(rod.stiffness[0]) for rod in points.rods)
    assert np.abs(pull[:2]) == pytest.approx(0.0, abs=1e-7 * stiff)
