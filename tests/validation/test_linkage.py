"""Poses of a beam axle against two independent solvers, and live against SciPy."""

import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import root
from scipy.spatial.transform import Rotation

from axlewright.physics import linkage as axle
from axlewright.physics.steering import axis_direction

DATA = json.loads((Path(__file__).parent / "data" / "axle_poses.json").read_text("utf-8"))
THREE, FOUR = DATA["three_arms"], DATA["four_arms"]
MM = 1e-3
SIDES = np.array([1.0, -1.0])


def ends(case):
    rods = list(case["rods"].values())
    return MM * np.array([rod[0] for rod in rods]), MM * np.array([rod[1] for rod in rods])


@cache
def three_arms(longer=0.0):
    told = THREE["steering"]
    caster, lean = np.radians(told["caster"]), np.radians(told["inclination"])
    tie = MM * np.array(told["tie_end"])
    return axle.axle_linkage(
        *ends(THREE),
        MM * THREE["half_track"],
        steering=axle.Steering(
            pivot=MM * np.array(told["pivot"]),
            axis=np.stack([axis_direction(caster, lean, side) for side in SIDES]),
            spindle=axle.spindle_direction(np.radians(told["toe_in"]), 0.0, SIDES),
            tie_end=tie,
            drag_on=axle.ON_RIGHT,
            drag_end=MM * np.array(told["drag_end"]),
            pitman=MM * np.array(told["pitman"]),
            tie_length=axle.rod_lengths(tie[0], tie[1]) + MM * longer,
        ),
    )


def pitman_at(across):
    return MM * np.add([THREE["steering"]["pitman"]], [[0.0, across, 0.0]])


# Independent solvers (source in the data file); asked of a pose: 1 um and 1 urad.
@pytest.mark.parametrize(
    "case", THREE["poses"], ids=lambda case: f"{case['heights']}{case['pitman']:+}"
)
def test_a_pose_with_both_wheels(case):
    made = axle.axle_poses(
        three_arms(), MM * np.array([case["heights"]]), pitman_at(case["pitman"])
    )
    assert made.status[0] == axle.POSED
    x, y, _, roll, pitch, yaw = made.pose[0]
    assert [x, y] == pytest.approx(MM * np.array(case["pose"][:2]), abs=1e-9)
    assert [roll, pitch, yaw] == pytest.approx(np.radians(case["pose"][2:]), abs=1e-9)
    assert made.wheels[0] == pytest.approx(np.radians(case["wheels"]), abs=1e-9)


def test_the_lengths_of_the_rods():
    assert axle.rod_lengths(*ends(THREE)) == pytest.approx(
        MM * np.array(list(THREE["lengths"].values()))
    )


@pytest.mark.parametrize("case", THREE["tie_rod"], ids=lambda case: f"{case['longer']:+} mm")
def test_a_longer_tie_rod_ahead_of_the_axle_toes_out(case):
    made = axle.axle_poses(three_arms(case["longer"]), np.zeros((1, 2)))
    headings = np.degrees(made.wheels[0, :, 1])
    assert headings == pytest.approx(case["headings"], abs=1e-6)
    assert headings[1] - headings[0] == pytest.approx(case["toe_in"], abs=1e-6)


def test_roll_centre_and_instant_centre_by_small_moves():
    step = 1e-4
    roll = axle.axle_poses(three_arms(), np.array([[step, -step], [-step, step]])).pose
    turn = roll[0, 3] - roll[1, 3]
    slopes = THREE["slopes"]["roll"]
    assert (roll[0, 1] - roll[1, 1]) / turn == pytest.approx(
        MM * slopes["z_roll_centre_above_axle_mm"], abs=1e-6
    )
    assert (roll[0, 5] - roll[1, 5]) / turn == pytest.approx(slopes["dyaw/droll"], abs=1e-6)
    up = axle.axle_poses(three_arms(), np.array([[step, step], [-step, -step]])).pose
    pitch = (up[0, 4] - up[1, 4]) / (2 * step)
    ahead = (up[0, 0] - up[1, 0]) / (2 * step)
    slopes = THREE["slopes"]["heave"]
    assert 1.0 / pitch == pytest.approx(MM * slopes["svic_x_from_axle_mm"], rel=1e-5)
    assert -ahead / pitch == pytest.approx(MM * slopes["svic_z_above_axle_mm"], rel=1e-5)


def four_arms(longer):
    near, far = ends(FOUR)
    stiff = 1e3 * np.array([rod[2] for rod in FOUR["rods"].values()])
    more = MM * np.array([longer.get(name, 0.0) for name in FOUR["rods"]])
    made = axle.axle_linkage(
        near,
        far,
        MM * FOUR["half_track"],
        length=axle.rod_lengths(near, far) + more,
        stiffness=stiff,
    )
    return made, stiff


# Independent solvers; asked of a force: 0.1 % or 1 N.
@pytest.mark.parametrize("case", FOUR["forced"], ids=lambda case: case["name"])
def test_arms_that_fight_each_other(case):
    made, stiff = four_arms(case["longer"])
    posed = axle.axle_poses(made, MM * np.array([case["heights"]]))
    assert posed.status[0] == axle.POSED
    x, y, _, roll, pitch, yaw = posed.pose[0]
    assert [x, y] == pytest.approx(MM * np.array(case["pose"][:2]), abs=1e-8)
    assert [roll, pitch, yaw] == pytest.approx(np.radians(case["pose"][2:]), abs=1e-6)
    assert posed.gap[0] * stiff == pytest.approx(case["pull"], rel=1e-4, abs=0.1)


def test_a_long_arm_by_the_force_method():
    near, far = ends(FOUR)
    line = (far - near) / axle.rod_lengths(near, far)[:, None]
    pulls = axle.self_stress(line, far, [1e3 * rod[2] for rod in FOUR["rods"].values()])
    third = 4 * MM * pulls[:, list(FOUR["rods"]).index("upper_L")]
    assert third == pytest.approx(FOUR["linear_upper_L_4mm_long"], rel=1e-6)


@pytest.mark.oracle
@pytest.mark.parametrize("seed", range(8))
def test_a_pose_beside_a_general_root_finder(seed):
    # SciPy's root finder and its rotations, on the lengths of the rods themselves.
    rng = np.random.default_rng(seed)
    near, far = ends(THREE)
    near = near + rng.uniform(-0.03, 0.03, near.shape)
    far = far + rng.uniform(-0.03, 0.03, far.shape)
    left, right = rng.uniform(-0.12, 0.12, 2)
    half = MM * THREE["half_track"]
    lengths = axle.rod_lengths(near, far)

    def short(at):
        x, y, pitch, yaw = at
        roll = np.arcsin((left - right) / (2 * half * np.cos(pitch)))
        turned = Rotation.from_euler("ZYX", [yaw, pitch, roll]).apply(far)
        return axle.rod_lengths(near, np.add(turned, [x, y, 0.5 * (left + right)])) - lengths

    found = root(short, np.zeros(4), method="lm", tol=1e-14)
    posed = axle.axle_poses(axle.axle_linkage(near, far, half), np.array([[left, right]]))
    assert posed.pose[0, [0, 1, 4, 5]] == pytest.approx(found.x, abs=1e-9)
