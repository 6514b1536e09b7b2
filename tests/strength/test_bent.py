"""What a bad moment leaves behind, and what standing weight does meanwhile."""

from itertools import pairwise

import numpy as np
import pytest

from axlewright.duty import ROW
from axlewright.rig import load_rig, point_columns
from axlewright.strength import appraise, bent_after, shaft_run, standing_camber, tube_sections

LANDING = ROW["landing"] - 1
STEEL, IRON = 205e9, 165e9  # Pa; Budynas and Nisbett, appendix A
RIGS = ("wagtail", "heron", "stork-rear")


def _appraised(name):
    rig = load_rig(f"examples/rigs/{name}.toml")
    columns = point_columns(rig)
    return columns, appraise(columns, rig.words)


@pytest.fixture(scope="module")
def landed():
    columns, point = _appraised("wagtail")
    return columns, point.housing


@pytest.fixture(scope="module")
def hardest(landed):
    """Hardness of a landing at which the tubes begin to keep something, and that folds them."""
    steps = np.linspace(0.2, 6.0, 400)
    kept = np.array([bent_after(*landed, LANDING, hard).camber_left[0] for hard in steps])
    return steps[np.argmax(np.abs(np.nan_to_num(kept)) > 1e-9)], steps[np.argmax(np.isnan(kept))]


def _pair(value):
    return np.array([value, 0.0])


def _run(station, slope, offset, ends, seals):
    """Run in one plane, with floats in."""
    return shaft_run(
        tuple(np.array(each) for each in station),
        tuple(_pair(each) for each in slope),
        tuple(_pair(each) for each in offset),
        tuple(np.array(each) for each in ends),
        tuple(np.array(each) for each in seals),
    )


def test_a_landing_bends_both_ends_up_so_the_tops_lean_in(landed, hardest):
    # common practice, no source: ends up is negative camber on both sides
    bent = bent_after(*landed, LANDING, np.mean(hardest))
    assert bent.camber_left[0] < 0.0
    assert bent.camber_right[0] < 0.0


def test_an_everyday_load_leaves_nothing(landed, hardest):
    # Elastic below first yield: beam theory.
    bent = bent_after(*landed, LANDING, 0.9 * hardest[0])
    np.testing.assert_allclose([bent.camber_left, bent.toe_left], 0.0, atol=1e-12)
    for run in (bent.shaft_left, bent.shaft_right):
        assert run.inner_seal[0] == pytest.approx(0.0, abs=1e-12)
        assert run.spline_angle[0] == pytest.approx(0.0, abs=1e-12)


def test_more_leaves_more_until_the_tube_folds(landed, hardest):
    first, last = hardest
    bents = [
        bent_after(*landed, LANDING, first + share * (last - first)) for share in (0.5, 0.7, 0.9)
    ]
    for told in (
        [-each.camber_left[0] for each in bents],
        [each.shaft_left.inner_seal[0] for each in bents],
        [each.shaft_left.spline_angle[0] for each in bents],
    ):
        assert told == sorted(told)
        assert told[0] > 0.0
    folded = bent_after(*landed, LANDING, last * 1.2)
    assert np.isnan(folded.camber_left[0])
    assert np.isnan(folded.shaft_left.inner_seal[0])


def test_a_straight_housing_runs_true():
    run = _run((0.0, 0.6), (0.0, 0.0), (0.0, 0.0), (0.03, 0.7), (0.1, 0.58))
    assert run.spline_angle == run.end_angle == run.inner_seal == run.outer_seal == 0.0


def test_a_housing_that_only_tilts_takes_its_shaft_along():
    # A rigid turn and shift move tube, seals and shaft alike.
    run = _run((0.0, 0.6), (0.02, 0.02), (0.001, 0.013), (0.03, 0.7), (0.1, 0.58))
    for value in (run.spline_angle, run.end_angle, run.inner_seal, run.outer_seal):
        assert value == pytest.approx(0.0, abs=1e-12)


def test_an_even_bow_parts_chord_and_tangents_by_half_its_turn():
    # Euclid III.32: the chord of an arc makes half the arc's turn with either tangent. Small
    # turns: an arc of curvature k over L rises k L^2/2 and turns k L (Beer, cantilever under an
    # end couple).
    curve, length, seal = 0.02, 0.6, 0.07
    run = _run(
        (0.0, length),
        (0.0, curve * length),
        (0.0, 0.5 * curve * length**2),
        (0.0, length),
        (seal, length - seal),
    )
    half = 0.5 * curve * length
    assert run.spline_angle == pytest.approx(half, rel=1e-4)
    assert run.end_angle == pytest.approx(half, rel=1e-4)
    assert run.inner_seal == pytest.approx(half * seal, rel=1e-9)
    assert run.outer_seal == pytest.approx(half * seal, rel=1e-9)


def test_a_tip_load_bends_a_cantilever_two_thirds_to_the_tip():
    # Roark, cantilever with an end load: rise W L^3/3EI, turn W L^2/2EI; the chord stands at
    # 2/3 of the end's turn from the root, 1/3 from the tip.
    length, turn = 0.5, 0.012
    rise = turn * length * 2.0 / 3.0
    run = _run((0.0, length), (0.0, turn), (0.0, rise), (0.0, length), (0.1, 0.4))
    assert run.spline_angle == pytest.approx(turn * 2.0 / 3.0, rel=1e-4)
    assert run.end_angle == pytest.approx(turn / 3.0, rel=1e-4)


def test_a_kink_is_shared_by_lever():
    # Triangle: a kink at a of L turns the chord by (L - a)/L of it against the inner tangent.
    kink, place, length = 0.01, 0.15, 0.6
    run = _run(
        (0.0, length), (0.0, kink), (0.0, kink * (length - place)), (0.0, length), (0.1, 0.5)
    )
    assert run.spline_angle == pytest.approx(kink * (length - place) / length, rel=1e-4)
    assert run.spline_angle + run.end_angle == pytest.approx(kink, rel=1e-4)


def test_both_planes_add_as_a_right_angle_does():
    # Pythagoras: forward and up are square to one another.
    at = ends = (np.array(0.0), np.array(0.6))
    seals = (np.array(0.1), np.array(0.55))
    slope = (np.zeros(2), np.array([0.003, 0.004]))
    offset = (np.zeros(2), 0.5 * 0.6 * slope[1])
    run = shaft_run(at, slope, offset, ends, seals)
    assert np.tan(run.spline_angle) == pytest.approx(0.0025, rel=1e-9)


@pytest.mark.parametrize("name", RIGS)
def test_standing_weight_leans_the_tops_in_by_the_areas_of_the_moment(name):
    # Mohr's moment-area theorem (Beer, Mechanics of Materials, ch. 9): the turn between two
    # places is the area of M/EI; a wheel's load F at lever c from its spring bends with F c
    # between the springs and F x outboard of them. The arms' rubber, left out here, holds a little
    # of that turn.
    columns, point = _appraised(name)
    housing, half = point.housing, 0.5 * columns["track"][0]
    load = 0.5 * columns["axle_weight"][0]
    bore = np.pi / 64.0 * (0.18**4 - 0.16**4)  # the centre: a round casting
    forged = np.pi / 64.0 * 0.072**4
    turns = []
    places = housing.across[0]
    for first, (low, high) in enumerate(pairwise(places)):
        stiff = STEEL * forged
        if housing.place["joint_right"] <= first < housing.place["joint_left"]:
            stiff = IRON * bore
        elif housing.place["end_right"] <= first < housing.place["end_left"]:
            side = "right" if first < housing.place["centre"] else "left"
            stiff = STEEL * tube_sections(columns, side)["up"][0]
        seat = 0.5 * columns["spring_spacing"][0]
        middle = np.linspace(low, high, 201)
        moment = load * (half - np.maximum(np.abs(middle), seat))
        turns.append(np.trapezoid(moment, middle) / stiff)
    total = np.sum(turns)
    left, right = (float(each[0]) for each in standing_camber(housing))
    assert left < 0.0
    assert right < 0.0
    assert -(left + right) == pytest.approx(total, rel=0.05)
    assert -(left + right) <= 1.001 * total


@pytest.mark.parametrize("name", RIGS)
def test_a_bent_housing_kinks_its_shafts_by_what_it_turns(name):
    # Plane geometry: a straight shaft between two tangents shares the turn between them.
    columns, point = _appraised(name)
    steps = np.linspace(0.2, 6.0, 300)
    bents = [bent_after(columns, point.housing, LANDING, hard) for hard in steps]
    bent = [each for each in bents if np.isfinite(each.camber_left[0])][-1]
    shafts = (bent.shaft_left, bent.shaft_right)
    turned = sum(float(run.spline_angle[0] + run.end_angle[0]) for run in shafts)
    assert turned == pytest.approx(-float(bent.camber_left[0] + bent.camber_right[0]), rel=0.02)
