"""The chain of beams against closed forms of beam theory.

The numbers of the data file come from any strength-of-materials text; the case says which rule.
Newtons and millimetres throughout.
"""

import json
from pathlib import Path

import numpy as np
import pytest

from axlewright.physics import frame, section

DATA = Path(__file__).parent / "data" / "beam_standard_checks.json"
READ = json.loads(DATA.read_text(encoding="utf-8"))["cases"]
CLAMPED, NOTHING = [True] * 6, np.zeros((0, 6, 6))


def case(word):
    """The one case whose name holds a word, as (inputs, expected)."""
    [found] = [each for each in READ if word in each["name"]]
    return found["inputs"], found["expected"]


def tube(given):
    inner = given["D"] - 2.0 * given["t"]
    return section.area(given["D"], inner), section.second_moment(given["D"], inner)


def solve(nodes, fixed, loads, *, axial=1e9, up, fore=None, torsion=1e12):
    beams = len(nodes) - 1
    spread = lambda value: np.broadcast_to(np.asarray(value, dtype=float), beams)
    held = np.zeros((len(nodes), 6), dtype=bool)
    for node, freedoms in fixed.items():
        held[node] = freedoms
    acting = np.zeros((1, len(nodes), 6))
    for node, load in loads.items():
        acting[0, node] = load
    solved = frame.solve_chain(
        np.array(nodes, dtype=float),
        spread(axial),
        spread(up),
        spread(up if fore is None else fore),
        spread(torsion),
        np.zeros(0, dtype=int),
        NOTHING,
        held,
        acting,
    )
    assert solved.status[0] == frame.SOLVED
    return solved.displacement[0, 0], solved.face[0, 0]


def test_cantilever_with_two_loads_and_a_torque():
    given, expected = case("cantilever tube: tip P")
    area, second = tube(given)
    stiff = given["E"] * second
    moved, face = solve(
        [[0, 0, 0], [0, given["L"], 0]],
        {0: CLAMPED},
        {1: [given["P"] / 2, 0, -given["P"], 0, given["T"], 0]},
        axial=given["E"] * area,
        up=stiff,
        torsion=2.0 * given["G"] * second,
    )
    assert moved[1, 2] == pytest.approx(expected["dy"], rel=1e-9)
    assert moved[1, 0] == pytest.approx(expected["dz"], rel=1e-9)
    assert moved[1, 3] == pytest.approx(expected["slope"], rel=1e-9)
    assert moved[1, 4] == pytest.approx(expected["twist"], rel=1e-9)
    assert np.hypot(face[0, 0, 3], face[0, 0, 5]) == pytest.approx(expected["M_root"], rel=1e-9)


def test_four_point_bending():
    given, expected = case("four-point")
    _, second = tube(given)
    places = np.cumsum(
        [0, given["a"], given["L_between_loads"] / 2, given["L_between_loads"] / 2, given["a"]]
    )
    moved, face = solve(
        [[0, place, 0] for place in places],
        {0: [True, True, True, False, True, False], 4: [True, False, True, False, True, False]},
        {node: [0, 0, -given["F_each"], 0, 0, 0] for node in (1, 3)},
        up=given["E"] * second,
    )
    assert moved[2, 2] == pytest.approx(expected["d_mid"], rel=1e-9)
    assert moved[1, 2] == pytest.approx(expected["d_load"], rel=1e-9)
    assert moved[0, 3] == pytest.approx(expected["slope_end"], rel=1e-9)
    assert abs(face[1, 1, 3]) == pytest.approx(expected["M_const"], rel=1e-9)
    stress = section.bending_stress(abs(face[1, 1, 3]), given["D"], given["D"] - 2 * given["t"])
    assert stress == pytest.approx(expected["sigma"], rel=1e-9)


def test_axle_with_wheels_outside_its_seats():
    given, expected = case("uniform axle")
    _, second = tube(given)
    half, seat = given["track"] / 2, given["seat_spacing"] / 2
    moved, face = solve(
        [[0, place, 0] for place in (-half, -seat, 0, seat, half)],
        {1: [True, True, True, False, True, False], 3: [True, False, True, False, True, False]},
        {node: [0, 0, given["F"], 0, 0, 0] for node in (0, 4)},
        up=given["E"] * second,
    )
    assert moved[[0, 4], 2] == pytest.approx(expected["d_end"], rel=1e-9)
    assert moved[0, 3] == pytest.approx(expected["slope_end"], rel=1e-9)
    assert moved[2, 2] == pytest.approx(expected["d_mid"], rel=1e-9)
    assert np.degrees(moved[4, 3]) == pytest.approx(expected["camber_deg"], rel=1e-9)
    # Wheels pushed up: the moment that bends the ends upward is positive about x.
    assert face[1, 1, 3] == pytest.approx(expected["M_const"], rel=1e-9)


def test_stepped_cantilever():
    given, expected = case("stepped cantilever")
    moved, _ = solve(
        [[0, 0, 0], [0, given["L1"], 0], [0, given["L1"] + given["L2"], 0]],
        {0: CLAMPED},
        {2: [0, 0, -given["P"], 0, 0, 0]},
        up=given["E"] * np.array([given["I1"], given["I2"]]),
    )
    assert moved[2, 2] == pytest.approx(expected["d_tip"], rel=1e-9)
    assert moved[2, 3] == pytest.approx(expected["slope_tip"], rel=1e-9)


def portal(given, loads):
    """Feet clamped; bending in the plane of y and z, with another stiffness across it."""
    young = given.get("E", 205e3)
    column, beam = young * given["Ic"], young * given["Ib"]
    high, wide = given["h"], given["span"]
    return solve(
        [[0, 0, 0], [0, 0, high], [0, wide, high], [0, wide, 0]],
        {0: CLAMPED, 3: CLAMPED},
        loads,
        axial=1e15,
        # A vertical beam takes x as "up": in this plane the columns bend "fore".
        up=[7.7 * column, beam, 7.7 * column],
        fore=[column, 7.7 * beam, column],
    )


def test_portal_pushed_sideways():
    given, expected = case("lateral P at eaves")
    moved, face = portal(given, {1: [0, given["P"], 0, 0, 0, 0]})
    # Closed form has no axial strain; here a stiff one is left, hence six digits.
    assert moved[1, 1] == pytest.approx(expected["sway"], rel=1e-6)
    assert abs(face[0, 0, 3]) == pytest.approx(expected["M_foot"], rel=1e-6)
    assert abs(face[1, 0, 3]) == pytest.approx(expected["M_eaves"], rel=1e-6)
    assert abs(face[0, 0, 1]) == pytest.approx(expected["H_foot"], rel=1e-6)
    assert abs(face[0, 0, 2]) == pytest.approx(expected["V_foot"], rel=1e-6)


def test_portal_under_a_spread_load():
    given, expected = case("UDL w on beam")
    # The spread load as the end loads of a clamped beam: exact at the nodes.
    down, turn = given["w"] * given["span"] / 2, given["w"] * given["span"] ** 2 / 12
    _, face = portal(given, {1: [0, 0, -down, -turn, 0, 0], 2: [0, 0, -down, turn, 0, 0]})
    assert abs(face[0, 0, 3]) == pytest.approx(expected["M_foot"], rel=1e-6)
    assert abs(face[0, 1, 3]) == pytest.approx(expected["M_eaves"], rel=1e-6)
    assert abs(face[0, 0, 1]) == pytest.approx(expected["H_foot"], rel=1e-6)


def test_bent_tube_loaded_out_of_its_plane():
    given, expected = case("right-angle bent tube")
    area, second = tube(given)
    moved, face = solve(
        [[0, 0, 0], [0, given["La"], 0], [given["Lb"], given["La"], 0]],
        {0: CLAMPED},
        {2: [0, 0, -given["P"], 0, 0, 0]},
        axial=given["E"] * area,
        up=given["E"] * second,
        torsion=2.0 * given["G"] * second,
    )
    assert moved[2, 2] == pytest.approx(expected["d_tip"], rel=1e-9)
    assert abs(face[0, 0, 3]) == pytest.approx(expected["M_root"], rel=1e-9)
    assert abs(face[0, 0, 4]) == pytest.approx(expected["T_root"], rel=1e-9)


def test_torque_between_two_clamped_ends():
    given, expected = case("torsionally fixed ends")
    moved, face = solve(
        [[0, 0, 0], [0, given["a"], 0], [0, given["a"] + given["b"], 0]],
        {0: CLAMPED, 2: CLAMPED},
        {1: [0, 0, 0, 0, given["T"], 0]},
        up=1e11,
        torsion=given["G"] * given["J"],
    )
    assert abs(face[0, 0, 4]) == pytest.approx(expected["T_a"], rel=1e-9)
    assert abs(face[1, 0, 4]) == pytest.approx(expected["T_b"], rel=1e-9)
    assert moved[1, 4] == pytest.approx(expected["twist"], rel=1e-9)


# Timoshenko's cantilever: P L^3 / 3EI + P L / kGA (any text on shear deformation).
@pytest.mark.parametrize("vertical", [True, False])
def test_shear_flexibility_adds_its_own_deflection(vertical):
    length, stiff, soft, load = 0.4, 1.75e5, 1.5e-8, 6e3
    direction = 2 if vertical else 0
    force = np.zeros(6)
    force[direction] = load
    acting = np.zeros((1, 4, 6))
    acting[0, 3] = force
    held = np.zeros((4, 6), dtype=bool)
    held[0] = True
    share = np.full(3, soft)
    solved = frame.solve_chain(
        [[0, place, 0] for place in np.linspace(0, length, 4)],
        np.full(3, 3e8),
        np.full(3, stiff),
        np.full(3, stiff),
        np.full(3, 1.3e5),
        [],
        NOTHING,
        held,
        acting,
        shear_up=share if vertical else 0.0 * share,
        shear_fore=0.0 * share if vertical else share,
    )
    expected = load * length**3 / (3 * stiff) + load * length * soft
    assert solved.displacement[0, 0, 3, direction] == pytest.approx(expected, rel=1e-12)
