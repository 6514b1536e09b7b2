"""A housing of 40 beams, bent, on four links and two springs, under eight cases.

Beside it: PyNiteFEA (build, analyze_linear, end forces of every beam) and SciPy's
``solveh_banded`` on the same matrix and loads, as it is called by default (factorise and solve
only). Ours is whole each time: from arrays in to displacements and actions out, on one thread.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass
from statistics import median
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.linalg import solveh_banded

from axlewright.physics import frame, section

BEAMS, CASES, LANES, TURNS = 40, 8, 256, 7  # draws are appraised 256 at a time
YOUNG, SHEAR = 205e9, 80e9
TUBE = 0.0762, 0.0635
SEATS = (8, 32, 16, 8, 8, 32)
OFFSETS = np.array(
    [
        [0.0, 0.0, -0.075],
        [0.0, 0.0, -0.075],
        [0.0, 0.0, 0.18],
        [0.09, 0.0, 0.06],
        [0.0, 0.0, 0.0],
        [0.0, 0.0, 0.0],
    ]
)
LINES = np.array(
    [
        [-0.85, -0.06, 0.095],
        [-0.85, 0.06, 0.095],
        [-0.70, 0.03, 0.03],
        [0.0, 0.91, 0.06],
        [0.0, 0.0, 0.4],
        [0.0, 0.0, 0.4],
    ]
)
STIFFNESS = np.array([2.7e8, 2.7e8, 3.2e8, 2.5e8, 4e4, 4e4])
AXES = ("FZ", "FX", "FY", "MZ", "MX", "MY")
Array = NDArray[np.float64]


@dataclass(frozen=True)
class Row:
    """One line of the table: medians of processor time in seconds."""

    name: str
    ours_s: float
    peer_s: float
    note: str

    @property
    def ratio(self) -> float:
        """The peer's time over ours."""
        return self.peer_s / self.ours_s


def measure() -> list[Row]:
    """Median times of the frame, singly and in a batch, beside two general libraries.

    All take turns, so that a slow moment of the machine falls on each of them.
    """
    single, batch = housing(1), housing(LANES)
    band, right = _band(single)
    turns = [
        (
            _median(lambda: frame.solve_chain(*single), 20, 25),
            _median(lambda: frame.solve_chain(*batch), 5) / LANES,
            _median(lambda: _pynite(single), 1),
            _median(lambda: solveh_banded(band, right, lower=False), 20, 25),
        )
        for _ in range(TURNS)
    ]
    one, many, program, banded = (median(each) for each in zip(*turns, strict=True))
    alone = "peer: solveh_banded, factorise and solve alone; asked: 4 times"
    return [
        Row("frame, single", one, program, "peer: PyNiteFEA; asked: 3000 times"),
        Row(f"frame, {LANES} at once, each", many, program, "peer: PyNiteFEA; asked: 6000 times"),
        Row("frame, single", one, banded, alone),
        Row(f"frame, {LANES} at once, each", many, banded, alone),
    ]


def housing(lanes: int) -> tuple[Any, ...]:
    """Arguments of ``solve_chain`` for slightly unlike housings."""
    rng = np.random.default_rng(1)
    across = np.linspace(-0.78, 0.78, BEAMS + 1)
    nodes = np.zeros((lanes, BEAMS + 1, 3))
    nodes[..., 0] = 0.03 * np.sin(3.0 * across)
    nodes[..., 1] = across
    nodes[..., 2] = 0.05 * np.cos(2.0 * across)
    nodes += 1e-3 * rng.normal(size=(lanes, 1, 1))
    each = np.ones((lanes, BEAMS))
    bending = YOUNG * float(section.second_moment(*TUBE)) * each
    axial = YOUNG * float(section.area(*TUBE)) * each
    torsion = SHEAR * float(section.polar_moment(*TUBE)) * each
    support = np.broadcast_to(
        frame.rod_support(OFFSETS, LINES, STIFFNESS), (lanes, len(SEATS), 6, 6)
    ).copy()
    loads = np.zeros((lanes, CASES, BEAMS + 1, 6))
    loads[:, :, (0, -1)] = rng.uniform(-9e3, 9e3, (lanes, CASES, 2, 6))
    fixed = np.zeros((BEAMS + 1, 6), dtype=np.bool_)
    return nodes, axial, bending, bending, torsion, np.array(SEATS), support, fixed, loads


def _median(call: Callable[[], object], times: int, calls: int = 1) -> float:
    """Median processor time of one call: what others do on the machine does not count."""
    call()
    taken = []
    for _ in range(times):
        start = time.process_time()
        for _ in range(calls):
            call()
        taken.append((time.process_time() - start) / calls)
    return median(taken)


def _pynite(given: tuple[Any, ...]) -> list[Array]:
    """Do the same with PyNiteFEA; its X, Y, Z are our y, z, x."""
    from Pynite import FEModel3D

    nodes, loads = given[0][0], given[8][0]
    model = FEModel3D()
    model.add_material("steel", YOUNG, SHEAR, 0.28, 7850.0)
    second = float(section.second_moment(*TUBE))
    model.add_section("tube", float(section.area(*TUBE)), second, second, 2.0 * second)
    model.add_section("arm", 1.0, 0.01, 0.01, 0.02)
    for node, (x, y, z) in enumerate(nodes):
        model.add_node(f"n{node}", y, z, x)
    for beam in range(BEAMS):
        model.add_member(f"m{beam}", f"n{beam}", f"n{beam + 1}", "steel", "tube")
    for rod, (node, offset, line) in enumerate(zip(SEATS, OFFSETS, LINES, strict=True)):
        x, y, z = nodes[node] + offset
        near = f"n{node}"
        if np.any(offset != 0.0):
            near = f"a{rod}"
            model.add_node(near, y, z, x)
            model.add_member(f"arm{rod}", f"n{node}", near, "steel", "arm")
        model.add_node(f"f{rod}", y + line[1], z + line[2], x + line[0])
        model.def_support(f"f{rod}", *[True] * 6)
        area = STIFFNESS[rod] * np.linalg.norm(line) / YOUNG
        model.add_section(f"rod{rod}", area, 1e-7, 1e-7, 2e-7)
        model.add_member(f"rod{rod}", near, f"f{rod}", "steel", f"rod{rod}")
        model.def_releases(f"rod{rod}", Rxi=True, Ryi=True, Rzi=True, Ryj=True, Rzj=True)
    for case in range(CASES):
        model.add_load_combo(f"c{case}", {f"c{case}": 1.0})
        for node in (0, BEAMS):
            for axis, load in zip(AXES, loads[case, node], strict=True):
                model.add_node_load(f"n{node}", axis, load, f"c{case}")
    model.analyze_linear()
    return [
        model.members[f"m{beam}"].F(f"c{case}") for case in range(CASES) for beam in range(BEAMS)
    ]


def _band(given: tuple[Any, ...]) -> tuple[Array, Array]:
    """Upper band of the stiffness matrix, and the loads as its right-hand sides."""
    loads = given[-1]
    count = BEAMS + 1
    # The band is the inverse of the flexibility, which the kernel gives case by case.
    unit = np.eye(6 * count).reshape(1, -1, count, 6)
    pushed: tuple[Any, ...] = (*given[:-1], unit)
    flexible = frame.solve_chain(*pushed).displacement
    whole = np.linalg.inv(flexible.reshape(6 * count, 6 * count))
    whole = 0.5 * (whole + whole.T)
    band = np.zeros((12, 6 * count))
    for above in range(12):
        band[11 - above, above:] = np.diagonal(whole, above)
    return band, loads[0].reshape(CASES, -1).T.copy()
