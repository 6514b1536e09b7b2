"""One pose at a time: geometry of rods of fixed length, full lock, what touches at each end."""

import numpy as np
import pytest

from axlewright.geometry import pose_of, reach_of, travel
from geometry.cases import demo


@pytest.fixture(scope="module", params=["heron", "wagtail", "stork-rear"])
def study(request):
    return travel(demo(request.param), draws=0)


def test_at_ride_the_pose_is_the_ride(study):
    pose = pose_of(study)
    assert pose.reached
    assert pose.made.pose[1] == pytest.approx(pose.made.pose[0], abs=1e-12)
    assert (pose.shift, pose.pinion, pose.steers) == pytest.approx((0.0, 0.0, 0.0), abs=1e-9)


def test_every_rod_keeps_its_length_in_every_pose(study):
    # geometry: four rods or fewer do not stretch; a tie rod and a drag link never do
    reach = reach_of(study)
    for bump in (reach.down, 0.5 * reach.up, reach.up):
        pose = pose_of(study, bump, 0.3 * reach.roll, 0.7 * reach.left)
        assert pose.reached
        if len(pose.points.rods) <= 4:
            assert pose.made.gap[1] == pytest.approx(0.0, abs=1e-6)
        if pose.points.steers:
            tie = np.linalg.norm(pose.ends["tie_rod_left"] - pose.ends["tie_rod_right"], axis=1)
            drag = np.linalg.norm(pose.ends["drag_link"] - pose.ends["drop_arm"], axis=1)
            assert tie[1] == pytest.approx(tie[0], abs=1e-6)
            assert drag[1] == pytest.approx(drag[0], abs=1e-6)


def test_full_lock_is_that_of_the_inner_wheel_and_the_inner_turns_more(study):
    # Ackermann's rule: in a turn the inner wheel turns more than the outer one
    reach = reach_of(study)
    if not study.points.steers:
        assert (reach.left, reach.right) == (0.0, 0.0)
        return
    most = float(study.points.columns["lock_angle"][0])
    for arm, inner, outer in ((reach.left, 0, 1), (reach.right, 1, 0)):
        heading = np.abs(pose_of(study, arm=arm).heading)
        assert heading[outer] < heading[inner] <= most + 1e-9
        assert heading[inner] > most - np.radians(2.0)


def test_at_the_ends_of_its_reach_something_ends_it(study):
    reach = reach_of(study)
    for bump in (reach.down, reach.up):
        gone = [each for each in pose_of(study, bump).left if each.hard and each.room < 1e-3]
        assert gone


def test_rolled_to_its_reach_a_stop_touches_and_one_further_is_told(study):
    reach = reach_of(study)
    left = {each.what: each.room for each in pose_of(study, roll=reach.roll).left}
    assert left["the bump stop touches"] < 0.12
    assert not any(each.room < -0.05 for each in pose_of(study, roll=reach.roll).left)


def test_caster_is_traded_for_pinion_as_the_axle_moves(study):
    # common practice, no source: turning the housing trades one for the other, degree for degree
    if not study.points.steers:
        return
    reach = reach_of(study)
    ride = pose_of(study)
    for bump in (reach.down, reach.up):
        pose = pose_of(study, bump)
        gained = np.mean(pose.caster) - np.mean(ride.caster)
        assert gained == pytest.approx(-pose.pinion, abs=np.radians(0.1))
