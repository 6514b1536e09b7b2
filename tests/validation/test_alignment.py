"""Alignment against a spindle turned about its kingpin by a general rotation library."""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

from axlewright.physics import alignment, steering

# Caster, inclination, camber ahead; camber at -20, -10, +10, +20 of a left wheel; the rule of one
# and a half, the small-angle and the exact two-reading caster; degrees. An independent script,
# rotations in closed form.
SWEEPS = [
    (6, 8.5, 0, -1.539785, -0.914456, 1.177447, 2.583020, 6.184206, 6.027137, 6.003519),
    (6, 8.5, -0.5, -2.037608, -1.413204, 0.676014, 2.080144, 6.176628, 6.019751, 5.996465),
    (4, 12, 0.25, -0.385678, -0.260689, 1.132909, 2.363893, 4.124356, 4.019604, 4.012049),
    (8, 8.5, 0, -2.230058, -1.265898, 1.531067, 3.280956, 8.266522, 8.056564, 8.000709),
    (10, 14, 0.5, -2.083689, -1.035327, 2.483149, 4.857954, 10.412465, 10.148004, 10.034944),
    (0, 8.5, 0, 0.516741, 0.130112, 0.130112, 0.516741, 0, 0, 0),
]
TURN = np.radians(20.0)


@pytest.mark.parametrize("case", SWEEPS, ids=lambda case: f"{case[:3]}")
def test_camber_through_a_sweep(case):
    caster, lean, ahead = np.radians(case[:3])
    headings = np.radians([-20.0, -10.0, 10.0, 20.0])
    left = alignment.steered_camber(headings, caster, lean, ahead, 1.0)
    assert np.degrees(left) == pytest.approx(case[3:7], abs=1e-5)
    right = alignment.steered_camber(-headings, caster, lean, ahead, -1.0)
    assert right == pytest.approx(left)


@pytest.mark.parametrize("case", SWEEPS, ids=lambda case: f"{case[:3]}")
def test_caster_from_a_sweep(case):
    caster, lean, ahead = np.radians(case[:3])
    inward, outward = alignment.steered_camber(np.array([-TURN, TURN]), caster, lean, ahead, 1.0)
    assert np.degrees(alignment.caster_by_rule(outward, inward)) == pytest.approx(case[7], abs=1e-5)
    two = alignment.caster_from_two(outward, inward, TURN)
    assert np.degrees(two) == pytest.approx(case[9], abs=1e-5)
    three = alignment.kingpin_from_three(ahead, outward, inward, TURN)
    assert three.caster == pytest.approx(caster, abs=1e-12)
    assert three.inclination == pytest.approx(lean, abs=1e-11)


@pytest.mark.oracle
@pytest.mark.parametrize("angle", [-25.0, -7.0, 13.0, 28.0])
def test_camber_beside_a_general_rotation(angle):
    axis = steering.axis_direction(np.radians(7.0), np.radians(11.0), 1.0)
    ahead = np.radians(-0.4)
    spindle = np.array([0.0, np.cos(ahead), -np.sin(ahead)])

    def turned(turn):
        return Rotation.from_rotvec(turn * axis).apply(spindle)

    def heading(turn):
        across = turned(turn)
        return np.arctan2(-across[0], across[1]) - np.radians(angle)

    found = turned(brentq(heading, -0.7, 0.7, xtol=1e-14))
    ours = alignment.steered_camber(
        np.radians(angle), np.radians(7.0), np.radians(11.0), ahead, 1.0
    )
    assert ours == pytest.approx(-np.arcsin(found[2]), abs=1e-10)


# An independent script: length of the tape's difference, diameter, whole angle in degrees.
@pytest.mark.parametrize(
    ("difference", "diameter", "angle"),
    [
        (3.175, 838.2, 0.217030),
        (3.175, 711.2, 0.255785),
        (1.5875, 939.8, 0.096783),
        (2.0, 400.0, 0.286479),
        (6.35, 889.0, 0.409256),
        (3.175, 889.0, 0.2046282),  # an eighth of an inch on a 35 in tyre is 0.205 degrees
    ],
)
def test_toe_in_length_needs_its_diameter(difference, diameter, angle):
    assert np.degrees(steering.toe_angle(difference, diameter)) == pytest.approx(angle, abs=1e-6)


# An independent script: thread pitches left and right, turns, arm (mm), whole toe in degrees.
@pytest.mark.parametrize(
    ("pitches", "turns", "arm", "angle"),
    [
        ((1.411111, 1.411111), 0.5, 165.0, 0.490004),
        ((1.5, 1.5), 1.0, 160.0, 1.074296),
        ((2.116667, 0.0), 0.5, 170.0, 0.356694),
    ],
)
def test_turns_of_a_sleeve(pitches, turns, arm, angle):
    longer = turns * alignment.rod_per_turn(*pitches)
    assert np.degrees(alignment.toe_change(longer, arm, -1.0)) == pytest.approx(angle, abs=1e-5)
    back = alignment.rod_change(np.radians(angle), arm, -1.0)
    assert back == pytest.approx(longer, rel=1e-5)


def test_ground_offsets():
    # An independent script: hub at 420 mm, kingpin 80 mm inboard of the tyre's middle there.
    assert steering.scrub_radius(420.0, 80.0, np.radians(8.5)) == pytest.approx(17.2306, abs=1e-4)
    trail = alignment.mechanical_trail(420.0, np.radians(6.0))
    assert trail == pytest.approx(44.1438, abs=1e-4)
    ahead = alignment.mechanical_trail(420.0, np.radians(6.0), 20.0)
    assert ahead == pytest.approx(24.1438, abs=1e-4)


@pytest.mark.parametrize(
    ("heading", "exact"),
    [(-30, -1.858642), (-20, -1.539785), (-10, -0.914456), (10, 1.177447), (20, 2.583020),
     (30, 4.173598)],
)  # fmt: skip
def test_camber_gain_and_the_small_angle_rule(heading, exact):
    # An independent script; the rule, caster sin(turn) + inclination (1 - cos(turn)), is good to
    # about three hundredths of a degree
    turn = np.radians(heading)
    found = alignment.steered_camber(turn, np.radians(6.0), np.radians(8.5), 0.0, 1.0)
    assert np.degrees(found) == pytest.approx(exact, abs=1e-5)
    rule = 6.0 * np.sin(turn) + 8.5 * (1.0 - np.cos(turn))
    assert np.degrees(found) == pytest.approx(rule, abs=0.036)


def test_a_rod_ahead_and_a_rod_behind_turn_opposite_ways():
    # common practice, no source
    assert alignment.toe_change(0.002, 0.165, 1.0) == -alignment.toe_change(0.002, 0.165, -1.0)
    assert alignment.toe_change(0.002, 0.165, 1.0) < 0.0


def test_diagonals_of_a_sheared_rectangle():
    # Pythagoras: the front axle 12 mm to the left of the rear one.
    width, base, across = 1.56, 2.62, 0.012
    left = np.hypot(base, width + across)
    right = np.hypot(base, width - across)
    assert alignment.off_square(left, right, width) == pytest.approx(across)
    assert alignment.axle_setback(2.63, 2.62, 1.56) == pytest.approx(np.arctan(0.01 / 1.56))


def test_the_outer_wheel_turns_less():
    # Rolling about one centre on the rear axle's line.
    inner = np.radians(30.0)
    outer = alignment.ackermann_angle(inner, 2.6, 1.4)
    assert 2.6 / np.tan(outer) - 2.6 / np.tan(inner) == pytest.approx(1.4)


def test_an_angle_finder_turned_round_loses_its_own_error():
    assert alignment.turned_average(0.051, -0.045) == pytest.approx(0.048)
    assert alignment.level_corrected(0.048, 0.01) == pytest.approx(0.038)
    assert alignment.included_angle(-0.01, 0.15) == pytest.approx(0.14)
