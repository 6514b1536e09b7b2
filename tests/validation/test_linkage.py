"""Poses of a beam axle against two independent solvers, and live against SciPy."""

import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import least_squares, root
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


def lengths_apart(at, case):
    """How much too long every rod of the three arms is, tie rod and drag link among them.

    ``at`` is x, y, pitch, yaw and the turns of both wheels; every rotation is SciPy's.
    """
    told = THREE["steering"]
    near, far = ends(THREE)
    left, right = MM * np.array(case["heights"])
    x, y, pitch, yaw = at[:4]
    roll = np.arcsin((left - right) / (2 * MM * THREE["half_track"] * np.cos(pitch)))
    body = Rotation.from_euler("ZYX", [yaw, pitch, roll])
    shift = np.array([x, y, 0.5 * (left + right)])

    def knuckle(side, point):
        axis = axis_direction(
            np.radians(told["caster"]), np.radians(told["inclination"]), SIDES[side]
        )
        pivot = MM * np.array(told["pivot"][side])
        turned = Rotation.from_rotvec(at[4 + side] * axis).apply(MM * np.array(point) - pivot)
        return body.apply(pivot + turned) + shift

    tie = [knuckle(side, told["tie_end"][side]) for side in (0, 1)]
    drag = knuckle(1, told["drag_end"])
    pitman = MM * np.add(told["pitman"], [0.0, case["pitman"], 0.0])
    own = lambda one, other: MM * np.linalg.norm(np.subtract(one, other))
    return np.append(
        axle.rod_lengths(near, body.apply(far) + shift) - axle.rod_lengths(near, far),
        [
            np.linalg.norm(tie[1] - tie[0]) - own(*told["tie_end"]),
            np.linalg.norm(drag - pitman) - own(told["drag_end"], told["pitman"]),
        ],
    )


@pytest.mark.oracle
@pytest.mark.parametrize(
    "case", THREE["poses"], ids=lambda case: f"{case['heights']}{case['pitman']:+}"
)
def test_axle_and_both_wheels_beside_a_general_optimiser(case):
    # SciPy's least squares on all six lengths at once, poses and steer sweep of the shared case.
    found = least_squares(
        lengths_apart, np.zeros(6), args=(case,), xtol=1e-15, ftol=1e-15, gtol=1e-15
    ).x
    posed = axle.axle_poses(
        three_arms(), MM * np.array([case["heights"]]), pitman_at(case["pitman"])
    )
    assert posed.pose[0, [0, 1, 4, 5]] == pytest.approx(found[:4], abs=1e-8)
    assert posed.wheels[0, :, 0] == pytest.approx(found[4:], abs=1e-8)
    assert found[:2] == pytest.approx(MM * np.array(case["pose"][:2]), abs=1e-8)
    assert found[2:4] == pytest.approx(np.radians(case["pose"][3:]), abs=1e-8)


# Strain energy of each forced case, J, by the same independent solvers.
ENERGIES = {
    "ride_upperL_+4mm": 7.8905780405735495,
    "ride_trackbar_+5mm": 0.0037236495845916714,
    "heave+80_nominal": 0.0028232160991866332,
    "articulate_+80/-80_nominal": 3.805386577045838,
    "articulate_+80/-80_upperL_+4mm": 0.8110722201582947,
    "articulate_-80/+80_upperL_+4mm": 22.478269081155947,
    "droop-100_upperL_+4mm": 6.812723746773582,
}


@pytest.mark.oracle
@pytest.mark.parametrize("case", FOUR["forced"], ids=lambda case: case["name"])
def test_arms_that_fight_beside_a_general_optimiser(case):
    # SciPy's least squares on the root of each rod's strain energy.
    made, stiff = four_arms(case["longer"])
    near, far = ends(FOUR)
    own = made.numbers[0, 1:].reshape(-1)[: 8 * 5].reshape(5, 8)[:, 6]
    left, right = MM * np.array(case["heights"])

    def strained(at):
        x, y, pitch, yaw = at
        roll = np.arcsin((left - right) / (2 * MM * FOUR["half_track"] * np.cos(pitch)))
        moved = Rotation.from_euler("ZYX", [yaw, pitch, roll]).apply(far)
        gone = axle.rod_lengths(near, np.add(moved, [x, y, 0.5 * (left + right)])) - own
        return np.sqrt(stiff) * gone

    found = least_squares(strained, np.zeros(4), xtol=1e-15, ftol=1e-15, gtol=1e-15)
    posed = axle.axle_poses(made, MM * np.array([case["heights"]]))
    assert posed.pose[0, [0, 1, 4, 5]] == pytest.approx(found.x, abs=1e-7)
    assert posed.gap[0] * stiff == pytest.approx(np.sqrt(stiff) * found.fun, rel=1e-4, abs=0.1)
    energy = 0.5 * float(np.sum(stiff * posed.gap[0] ** 2))
    assert energy == pytest.approx(found.cost, rel=1e-6, abs=1e-9)
    assert energy == pytest.approx(ENERGIES[case["name"]], rel=1e-5)


def test_the_tie_rods_own_arm():
    # The same script: how far the rod's end goes across for each radian about the kingpin, at
    # ride, 164.38088575183068 mm; toe itself changes less, for the kingpin leans.
    step = 1e-3
    turn = [
        axle.axle_poses(three_arms(by), np.zeros((1, 2))).wheels[0, 0, 0] for by in (-step, step)
    ]
    assert 2 * step / (turn[1] - turn[0]) == pytest.approx(164.38088575183068, rel=1e-6)
