"""The housing and the wheel ends hold themselves up: statics on every rig and every layout."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from axlewright.duty import CASES, ROW, wheel_loads
from axlewright.rig import load_rig, point_columns
from axlewright.strength.appraisal import appraise
from axlewright.strength.housing import solve_housing
from axlewright.strength.wheel_end import SIGNS, wheel_ends

RIGS = sorted((Path(__file__).parents[2] / "examples" / "rigs").glob("*.toml"))
HERON = next(path for path in RIGS if path.stem == "heron")
LAYOUTS = [
    ("four arms", "coil on a seat"),
    ("four arms", "coil-over on a damper bracket"),
    ("three arms", "coil on a seat"),
    ("three arms", "coil-over on a damper bracket"),
    ("radius arms", "coil on a seat"),
    ("radius arms", "coil-over on a damper bracket"),
    ("angled arms", "coil on a seat"),
    ("leaves", "leaf"),
]


def _words(rig, **words):
    return {**rig.words, **{key.replace("__", "."): value for key, value in words.items()}}


def _solved(rig, words):
    columns = point_columns(replace(rig, words=words))
    loads = wheel_loads(columns, words)
    ends = wheel_ends(columns, words, loads)
    return columns, loads, ends, solve_housing(columns, words, loads, ends)


def _out_of_balance(columns, words, loads, ends, housing):
    """Own sum of forces and moments about the origin, from the loads at the ground up."""
    total = []
    for row in range(len(CASES)):
        force, moment, largest = np.zeros(3), np.zeros(3), 1.0

        def add(at, push):
            nonlocal force, moment, largest
            force = force + push
            moment = moment + np.cross(at, push)
            largest = max(largest, float(np.max(np.abs(push))))

        for side, name in enumerate(("left", "right")):
            across = 0.5 * SIGNS[side] * columns["track"][0]
            height = columns[f"hub_height_{name}"][0]
            add(np.array([0.0, across, -height]), loads.ground[0, row, side])
            add(np.array([0.0, across, 0.0]), loads.hub[0, row, side])
            moment = moment + np.array([0.0, loads.drive[0, row, side], 0.0])
            if words["rig.axle"] == "front":
                kingpin = housing.across[0, housing.place[f"kingpin_{name}"]]
                add(np.array([0.0, kingpin, 0.0]), ends.rods_force[0, row, side])
                moment = moment + ends.rods_moment[0, row, side]
        centre = housing.across[0, housing.place["centre"]]
        add(np.array([0.0, centre, 0.0]), loads.centre[0, row])
        torque = float(np.sum(loads.drive[0, row]))
        moment = moment + np.array([torque / columns["axle_ratio"][0], -torque, 0.0])
        for name, node in housing.held_at.items():
            act = housing.support_force[name][0, row]
            at = np.array([0.0, housing.across[0, node], 0.0])
            add(at, act[:3])
            moment = moment + act[3:]
        total.append(max(np.max(np.abs(force)), np.max(np.abs(moment))) / largest)
    return np.array(total)


# Statics: the sum of forces and of moments of a body at rest is nought, to rounding.
@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
def test_every_case_of_every_demo_rig_is_in_balance(path):
    rig = load_rig(str(path))
    columns, loads, ends, housing = _solved(rig, dict(rig.words))
    assert not np.any(housing.status)
    assert np.max(_out_of_balance(columns, rig.words, loads, ends, housing)) <= 1e-9
    assert np.max(housing.residual) <= 1e-9


# Statics, as above.
@pytest.mark.parametrize(("arms", "weight_on"), LAYOUTS)
@pytest.mark.parametrize("track_bar", ["left", "right"])
def test_every_layout_is_in_balance(arms, weight_on, track_bar):
    rig = load_rig(str(HERON))
    words = _words(
        rig, held_by__arms=arms, held_by__weight_on=weight_on, track_bar__on_axle=track_bar
    )
    columns, loads, ends, housing = _solved(rig, words)
    assert not np.any(housing.status)
    assert np.max(_out_of_balance(columns, words, loads, ends, housing)) <= 1e-9


# Statics: what balances is a real answer, not a table of noughts.
def test_a_landing_goes_into_the_springs():
    rig = load_rig(str(HERON))
    _, loads, _, housing = _solved(rig, dict(rig.words))
    row = ROW["landing"]
    up = sum(housing.support_force[f"spring_{side}"][0, row, 2] for side in ("left", "right"))
    assert -up == pytest.approx(np.sum(loads.ground[0, row, :, 2]), rel=0.1)


# Statics: tie rod and drag link, with the loads, turn neither knuckle about its own axis.
@pytest.mark.parametrize("ahead", ["yes", "no"])
@pytest.mark.parametrize("driver", ["left", "right"])
def test_the_steering_rods_hold_both_knuckles(ahead, driver):
    rig = load_rig(str(HERON))
    words = _words(rig, steering__tie_rod_ahead=ahead, steering__drive_side=driver)
    columns = point_columns(replace(rig, words=words))
    ends = wheel_ends(columns, words, wheel_loads(columns, words))
    for side in (0, 1):
        axis = np.array(
            [-np.tan(columns["caster"][0]), -SIGNS[side] * np.tan(columns["inclination"][0]), 1.0]
        )
        axis /= np.linalg.norm(axis)
        turn = (ends.at_kingpin[0, :, side] + ends.rods_moment[0, :, side]) @ axis
        assert np.max(np.abs(turn)) <= 1e-9 * np.max(np.abs(ends.at_kingpin))
    # the tie rod pulls on one knuckle as much as on the other; the drag link is what is left
    rods = ends.rods_force[0, :, 0, 1] + ends.rods_force[0, :, 1, 1]
    assert np.allclose(rods, ends.drag_link[0], rtol=1e-12, atol=1e-9)


# Statics: with equal braking on both wheels the moments about the two axes are a mirror pair, so
# the tie rod takes them and the drag link carries nothing.
def test_even_braking_loads_the_tie_rod_and_not_the_drag_link():
    rig = load_rig(str(HERON))
    columns = dict(point_columns(rig))
    columns["hub_height_left"] = columns["hub_height_right"] = columns["radius"]
    ends = wheel_ends(columns, rig.words, wheel_loads(columns, rig.words))
    row = ROW["braking"]
    assert ends.tie_rod[0, row] != 0.0
    assert abs(ends.drag_link[0, row]) <= 1e-9 * abs(ends.tie_rod[0, row])


# Reference: hub pair, statics worked by hand (case HB1): Fz 8000 N, spread 65 mm, radius 0.40 m;
# outer/inner 4000/4000 at no offset, 7692/308 at 30 mm, 10154/-2154 at 50 mm, and with a side
# force of 4000 N toward the vehicle -16923/24923 at 30 mm.
@pytest.mark.parametrize(
    ("arm", "inward", "outer", "inner"),
    [
        (0.0, 0.0, 4000.0, 4000.0),
        (0.03, 0.0, 7692.0, 308.0),
        (0.05, 0.0, 10154.0, -2154.0),
        (0.0, 4000.0, -20615.0, 28615.0),
        (0.03, 4000.0, -16923.0, 24923.0),
        (0.03, -4000.0, 32308.0, -24308.0),
    ],
)
def test_hub_rows_meet_the_worked_pair(arm, inward, outer, inner):
    rig = load_rig(str(HERON))
    columns = {**point_columns(rig), "row_spread": np.array([0.065])}
    columns["hub_height_left"] = columns["hub_height_right"] = np.array([0.40])
    columns["bearing_setback"] = columns["wheel_offset"] + arm - columns["wheel_spacer"]
    loads = wheel_loads(columns, rig.words)
    ground = np.zeros_like(loads.ground)
    ground[:, 1, 0] = [0.0, -inward, 8000.0]  # toward the vehicle is to the right on the left
    loads = replace(loads, ground=ground, hub=0.0 * ground, drive=0.0 * loads.drive)
    ends = wheel_ends(columns, rig.words, loads)
    moment = ends.at_bearing[0, 1, 0, 0] / 0.065
    share = 0.5 * ends.force[0, 1, 0, 2]
    assert (share + moment, share - moment) == pytest.approx((outer, inner), abs=0.6)


# Reference: brake and drive reaction on the knuckle by statics (case BK1): Fx 5600 N, radius
# 0.40 m; braking leaves 2240 N m on the knuckle about the axle line, driving leaves none, since
# the shaft takes the torque to the ring gear.
@pytest.mark.parametrize(("sense", "torque", "left_over"), [(-1, 0.0, 2240.0), (1, 2240.0, 0.0)])
def test_braking_twists_the_knuckle_and_driving_does_not(sense, torque, left_over):
    rig = load_rig(str(HERON))
    columns = dict(point_columns(rig))
    columns["hub_height_left"] = columns["hub_height_right"] = np.array([0.40])
    loads = wheel_loads(columns, rig.words)
    ground, drive = np.zeros_like(loads.ground), np.zeros_like(loads.drive)
    ground[:, 1, 0, 0] = sense * 5600.0
    drive[:, 1, 0] = torque
    ends = wheel_ends(
        columns, rig.words, replace(loads, ground=ground, hub=0.0 * ground, drive=drive)
    )
    assert ends.force[0, 1, 0, 0] == sense * 5600.0
    assert ends.moment_at_wheel[0, 1, 0, 1] == pytest.approx(left_over, abs=1e-9)


# Common practice, no source: 30 mm further out loads the outer hub row harder.
def test_thirty_millimetres_of_offset_raise_the_hub_row():
    rig = load_rig(str(HERON))
    given = rig.given["wheel_offset"]
    out = replace(
        rig, given={**rig.given, "wheel_offset": replace(given, value=given.value - 0.03)}
    )
    worst = []
    for each in (rig, out):
        words = {**each.words, "mended": ""}
        solved = appraise(point_columns(each), words).solved
        rows = [n for n, row in enumerate(solved.rows) if row.part == "hub_bearing_left"]
        worst.append(np.max(solved.utilisation[rows, 0, ROW["landing"] - 1]))
    assert worst[1] > 1.05 * worst[0]
