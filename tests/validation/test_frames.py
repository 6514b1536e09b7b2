"""The housing frame against a general 3-D frame program and against statics.

The kernel is free of units: the file's newtons and millimetres are used as they stand.
"""

import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from axlewright.physics import frame

DATA = Path(__file__).parent / "data" / "axle_frames.json"


@cache
def model(name):
    """One model of the file, solved under all of its cases."""
    read = json.loads(DATA.read_text(encoding="utf-8"))["models"][name]
    nodes = np.array(read["nodes"])
    axial, bending, torsion = (
        np.array([modulus * section[key] for section in read["sections"]])
        for modulus, key in ((read["E"], "A"), (read["E"], "I"), (read["G"], "J"))
    )
    fixed = np.zeros((len(nodes), 6), dtype=bool)
    for node, freedom in read["fixed"]:
        fixed[node, freedom] = True
    seats, springs, rods = [], [], {}
    for node, freedom, stiffness in read["springs"]:
        seats.append(node)
        springs.append(np.diag(np.where(np.arange(6) == freedom, stiffness, 0.0)))
    for rod, given in read.get("rods", {}).items():
        offset = np.array(given["axle_end"]) - nodes[given["node"]]
        line = np.array(given["far_end"]) - np.array(given["axle_end"])
        stiffness = read["E"] * given["A"] / np.linalg.norm(line)
        rods[rod] = given["node"], offset, line, stiffness
        seats.append(given["node"])
        springs.append(frame.rod_support(offset, line, stiffness))
    loads = np.zeros((len(read["cases"]), len(nodes), 6))
    for case, given in enumerate(read["cases"].values()):
        for node, *load in given["loads"]:
            loads[case, node] = load
    support = np.array(springs).reshape(-1, 6, 6)
    seats = np.array(seats, dtype=int)
    solved = frame.solve_chain(
        nodes, axial, bending, bending, torsion, seats, support, fixed, loads
    )
    out = frame.out_of_balance(solved, seats, support, loads)
    missing = frame.free_body_residual(nodes, out, fixed)
    return read, solved, rods, np.where(fixed, 0.0, out), missing, loads


def worst(got, expected):
    """Largest difference over the largest value, forces and moments each by their own kind."""
    got, expected = np.asarray(got), np.asarray(expected)
    return max(
        np.max(np.abs(got[..., kind] - expected[..., kind])) / np.max(np.abs(expected[..., kind]))
        for kind in (slice(0, 3), slice(3, 6))
    )


CASES = (
    "static",
    "bump_one_wheel",
    "fore_aft_hit",
    "brake",
    "lateral",
    "drive",
    "combined",
)


# PyNiteFEA 3.2.0; two solvers agree there to 3e-13 (rigid seats) and 8e-10 (sprung seats).
@pytest.mark.parametrize("case", CASES)
@pytest.mark.parametrize(("name", "near"), [("axle_A_rigid", 1e-9), ("axle_A_spring", 1e-8)])
def test_displacements_and_actions_are_those_of_the_frame_program(name, near, case):
    read, solved, *_ = model(name)
    assert solved.status[0] == frame.SOLVED
    order = list(read["cases"]).index(case)
    expected = read["cases"][case]
    assert worst(solved.displacement[0, order], expected["displacements"]) < near
    assert worst(solved.face[0, order], expected["faces"]) < near


# Statics of the axle as a rigid body on four links and two springs: six equations, six unknowns.
@pytest.mark.parametrize("case", CASES)
def test_links_and_springs_carry_what_statics_says(case):
    read, solved, rods, *_ = model("linked_C")
    order = list(read["cases"]).index(case)
    expected = read["cases"][case]["link_statics"]
    got = {
        rod: frame.rod_tension(solved.displacement[0, order, node], offset, line, stiffness)
        for rod, (node, offset, line, stiffness) in rods.items()
    }
    for (node, freedom, stiffness), name in zip(
        read["springs"], ("spring_sL", "spring_sR"), strict=True
    ):
        got[name] = -stiffness * solved.displacement[0, order, node, freedom]
    largest = max(abs(force) for force in expected.values())
    assert got.keys() == expected.keys()
    for name, force in expected.items():
        assert got[name] == pytest.approx(force, abs=1e-8 * largest), name


# PyNiteFEA 3.2.0 with stiff beams where ours are exact rigid arms: hence five digits.
@pytest.mark.parametrize("case", CASES)
def test_a_linked_axle_moves_as_in_the_frame_program(case):
    read, solved, *_ = model("linked_C")
    order = list(read["cases"]).index(case)
    assert worst(solved.displacement[0, order], read["cases"][case]["displacements"]) < 1e-5


# Brake and hit cases as a second author printed them, N (links to two decimals).
@pytest.mark.parametrize(
    ("case", "tensions"),
    [
        ("brake", (-13_593.74, -19_452.97, 18_395.41, -377.72)),
        ("fore_aft_hit", (-14_551.93, 5_977.45, -3_505.89, -1_289.45)),
    ],
)
def test_printed_link_tensions(case, tensions):
    read, solved, rods, *_ = model("linked_C")
    order = list(read["cases"]).index(case)
    for rod, tension in zip(("link_loL", "link_loR", "link_up", "link_tb"), tensions, strict=True):
        node, offset, line, stiffness = rods[rod]
        got = frame.rod_tension(solved.displacement[0, order, node], offset, line, stiffness)
        assert got == pytest.approx(tension, abs=0.006)


# Equilibrium: a law, no source needed.
@pytest.mark.parametrize("name", ["axle_A_rigid", "axle_A_spring", "linked_C"])
def test_every_case_is_in_equilibrium(name):
    *_, out, missing, loads = model(name)
    largest = np.max(np.abs(loads), axis=(1, 2))
    assert np.all(np.abs(out[0]) <= 1e-9 * largest[:, None, None])
    assert np.all(np.abs(missing[0]) <= 1e-9 * largest[:, None])


# Common practice, no source: a wheel strike bends the housing backward and slightly upward.
def test_a_strike_bends_the_housing_backward_and_upward():
    read, solved, *_ = model("axle_A_rigid")
    struck = solved.displacement[0, list(read["cases"]).index("fore_aft_hit"), -1]
    assert struck[0] < 0.0 < struck[2]
    assert abs(struck[0]) > struck[2]


@pytest.mark.oracle
@pytest.mark.parametrize("seed", range(3))
def test_a_bent_chain_on_springs_beside_a_frame_program(seed):
    """PyNiteFEA, run here: a chain with turns out of plane, springs, one fixed freedom."""
    program = pytest.importorskip("Pynite")
    rng = np.random.default_rng(seed)
    count = 7
    nodes = np.cumsum(rng.uniform([-0.1, 0.1, -0.1], [0.1, 0.3, 0.1], (count, 3)), axis=0)
    area, second = rng.uniform(1e-3, 3e-3, count - 1), rng.uniform(5e-7, 2e-6, count - 1)
    loads = rng.uniform(-5e3, 5e3, (count, 6))
    young, shear = 205e9, 80e9
    seats = {1: (6e6, 7e6, 5e6, 2e5, 3e5, 1e5), 5: (4e6, 3e6, 8e6, 1e5, 2e5, 4e5)}
    fixed = np.zeros((count, 6), dtype=bool)
    fixed[3, 0] = True

    # Its X, Y, Z are our y, z, x.
    turned = [1, 2, 0]
    model = program.FEModel3D()
    model.add_material("steel", young, shear, 0.28, 7850.0)
    for node in range(count):
        model.add_node(f"n{node}", *nodes[node, turned])
    for beam in range(count - 1):
        model.add_section(f"s{beam}", area[beam], second[beam], second[beam], 2.0 * second[beam])
        model.add_member(f"m{beam}", f"n{beam}", f"n{beam + 1}", "steel", f"s{beam}")
    axes = ("DZ", "DX", "DY", "RZ", "RX", "RY")
    for node, stiffness in seats.items():
        for axis, value in zip(axes, stiffness, strict=True):
            model.def_support_spring(f"n{node}", axis, value)
    model.def_support("n3", support_DZ=True)
    for node in range(count):
        for axis, load in zip(("FZ", "FX", "FY", "MZ", "MX", "MY"), loads[node], strict=True):
            model.add_node_load(f"n{node}", axis, load)
    model.analyze_linear()
    moved = [
        [getattr(model.nodes[f"n{node}"], axis)["Combo 1"] for axis in axes]
        for node in range(count)
    ]
    back = [2, 0, 1, 5, 3, 4]
    ends = np.array([np.ravel(model.members[f"m{beam}"].F("Combo 1")) for beam in range(count - 1)])

    solved = frame.solve_chain(
        nodes,
        young * area,
        young * second,
        young * second,
        2.0 * shear * second,
        list(seats),
        np.array([np.diag(each) for each in seats.values()]),
        fixed,
        loads[None],
    )
    assert worst(solved.displacement[0, 0], moved) < 1e-8
    assert worst(solved.face[0, 0, :, 1], ends[:, 6:][:, back]) < 1e-7
    assert worst(solved.face[0, 0, :, 0], -ends[:, :6][:, back]) < 1e-7
