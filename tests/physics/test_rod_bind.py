"""Pulls of rods that fight, without compiled code: against shared cases and SciPy, live."""

import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import svdvals
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation

from axlewright.physics import linkage, rod_bind

DATA = json.loads(
    (Path(__file__).parents[1] / "validation/data/axle_poses.json").read_text("utf-8")
)
FOUR, MM = DATA["four_arms"], 1e-3


def rods(longer=None):
    told = list(FOUR["rods"].values())
    near, far = MM * np.array([rod[0] for rod in told]), MM * np.array([rod[1] for rod in told])
    more = MM * np.array([(longer or {}).get(name, 0.0) for name in FOUR["rods"]])
    return near, far, linkage.rod_lengths(near, far) + more, 1e3 * np.array([r[2] for r in told])


def pulls(heights, longer=None):
    near, far, own, stiff = rods(longer)
    half = np.array([MM * FOUR["half_track"]])
    return rod_bind.rod_pulls(
        near[None], far[None], own[None], stiff[None], half, MM * np.array([heights])
    )[0]


# Two independent solvers (an own least-energy search and a general multibody library), from the
# inputs in the data file; asked of a force: 0.1 % or 1 N.
@pytest.mark.parametrize("case", FOUR["forced"], ids=lambda case: case["name"])
def test_arms_that_fight_each_other(case):
    found = pulls(case["heights"], case["longer"])
    assert found == pytest.approx(case["pull"], rel=1e-3, abs=1.0)


@pytest.mark.oracle
@pytest.mark.parametrize("seed", range(6))
def test_pulls_beside_a_general_optimiser(seed):
    # SciPy's least squares on the root of each rod's strain energy, its rotations too
    rng = np.random.default_rng(seed)
    near, far, own, stiff = rods()
    near, far = (
        near + rng.uniform(-0.03, 0.03, near.shape),
        far + rng.uniform(-0.03, 0.03, far.shape),
    )
    own = linkage.rod_lengths(near, far) + rng.uniform(-0.005, 0.005, len(own))
    left, right = rng.uniform(-0.1, 0.1, 2)
    half = MM * FOUR["half_track"]

    def strained(at):
        x, y, pitch, yaw = at
        roll = np.arcsin((left - right) / (2 * half * np.cos(pitch)))
        moved = Rotation.from_euler("ZYX", [yaw, pitch, roll]).apply(far)
        long = linkage.rod_lengths(near, np.add(moved, [x, y, 0.5 * (left + right)]))
        return np.sqrt(stiff) * (long - own)

    found = least_squares(strained, np.zeros(4), xtol=1e-15, ftol=1e-15, gtol=1e-15)
    ours = rod_bind.rod_pulls(
        near[None], far[None], own[None], stiff[None], np.array([half]), np.array([[left, right]])
    )[0]
    assert ours == pytest.approx(np.sqrt(stiff) * found.fun, rel=1e-4, abs=0.5)


@given(left=st.floats(-100, 100), right=st.floats(-100, 100), long=st.floats(-8, 8))
def test_compiled_poses_and_these_pulls_agree(left, right, long):
    longer = {"upper_L": long}
    near, far, own, stiff = rods(longer)
    made = linkage.axle_poses(
        linkage.axle_linkage(near, far, MM * FOUR["half_track"], length=own, stiffness=stiff),
        MM * np.array([[left, right]]),
    )
    assert pulls((left, right), longer) == pytest.approx(made.gap[0] * stiff, rel=1e-5, abs=0.05)


def test_four_rods_never_fight():
    near, far, own, stiff = (one[:4] for one in rods({"upper_L": 6.0}))
    keep = [0, 1, 2, 3]  # four arms without a track bar: nothing holds them across but their splay
    found = rod_bind.rod_pulls(
        near[None, keep], far[None, keep], own[None, keep], stiff[None, keep],
        np.array([0.78]), np.array([[0.05, -0.02]]), rounds=12,
    )  # fmt: skip
    assert found == pytest.approx(0.0, abs=1e-3)


@given(angles=st.tuples(*[st.floats(-1.5, 1.5)] * 3))
def test_an_axle_is_turned_as_a_general_library_turns_it(angles):
    roll, pitch, yaw = angles
    ours = rod_bind.axle_turn(*np.array(angles)[:, None])[0]
    assert ours == pytest.approx(
        Rotation.from_euler("ZYX", [yaw, pitch, roll]).as_matrix(), abs=1e-12
    )


@given(turn=st.floats(-3.0, 3.0), apart=st.floats(0.05, 0.5))
def test_rods_hold_least_in_the_way_that_nothing_holds(turn, apart):
    # SciPy: lines of rods as unit forces and moments about the middle; the least singular value
    near, far, _, _ = rods()
    far = np.array([[0.0, apart, 0.1], [0.0, -apart, 0.1], *far[2:]])
    line = (far - near) / linkage.rod_lengths(near, far)[:, None]
    arm = np.cross(far, line)
    ways = np.column_stack([line[:, :2], arm[:, 1:]])
    least = svdvals(ways)[-1]
    assert rod_bind.least_hold(near[None], far[None]) == pytest.approx([least], rel=1e-6, abs=1e-9)
    along = Rotation.from_euler("z", turn).apply([[0.4, 0.0, 0.0]])
    beside = near[:1] + np.zeros((5, 1)) * along
    free = rod_bind.least_hold(beside[None], (beside + along)[None])
    assert free == pytest.approx([0.0], abs=1e-7)


@given(clamped=st.floats(-0.15, 0.15), rise=st.floats(-0.1, 0.2))
def test_twist_is_nought_where_clamped_at_ride_and_turns_with_the_height(clamped, rise):
    assert rod_bind.arm_twist(0.84, rise, 0.0) == pytest.approx(0.0, abs=1e-15)
    twist = float(rod_bind.arm_twist(0.84, rise, clamped))
    assert twist * clamped <= 0.0
    assert abs(twist) == pytest.approx(abs(clamped) / 0.84, rel=0.12, abs=1e-9)
