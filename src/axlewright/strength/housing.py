"""The housing of one rig as a chain of beams on its springs, arms and track bar.

The chain runs from the right tyre's centre to the left one's along the axle line (x = z = 0);
springs, arms and track bar hold it at rigid offsets, and what the knuckles, tie rod and drag
link do to it comes in as loads (`wheel_end`).
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import CASES, Loads
from axlewright.physics import frame, metals, section
from axlewright.rig import Column, Columns, Words, has_track_bar
from axlewright.strength.binding import HELD, Binding, binding, bound_action
from axlewright.strength.holding import SIGN, arm_slopes, supports
from axlewright.strength.wheel_end import WheelEnd

GAP = 0.004  # least distance between two stations, m, so that no beam has no length
# Sections that only share out the load between beams; no leading margin moves with them (a test
# says by how little), so they carry no band. m, memory.
FORGED = 0.072  # end forging, knuckle and spindle as one solid bar
CAST, CAST_BORE = 0.18, 0.16  # centre casting as a tube
Order: TypeAlias = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Housing:
    """A solved housing.

    ``place`` names the node of each station and ``held_at`` that of each support; ``faces`` are
    the global actions (Fx, Fy, Fz, Mx, My, Mz) on both faces of every element, (n, rows,
    element, 2, 6). Rows are the cases and, last, what is there with nothing on the axle; tension
    and support forces hold what binds. ``loads`` (n, rows, node, 6) are what the chain carries
    besides, its own pull of what binds (``own``, by support) among them.
    """

    order: Order
    place: dict[str, int]
    across: Column
    displacement: Column
    faces: Column
    held_at: dict[str, int]
    tension: dict[str, Column]
    support_force: dict[str, Column]
    loads: Column
    own: dict[str, Column]
    status: NDArray[np.int64]
    bound: Binding
    larger: dict[str, Column] = field(default_factory=dict, repr=False, compare=False)

    @property
    def residual(self) -> Column:
        """What the free body lacks over the largest load, (n, rows)."""
        largest = np.max(np.abs(self.loads), axis=(2, 3))
        left = np.array(self.loads)
        for name, acts in self.support_force.items():
            left[:, :, self.held_at[name]] += acts - self.own.get(name, 0.0)
        arm = np.zeros((*self.across.shape, 3))
        arm[..., 1] = self.across
        turn = left[..., 3:] + np.cross(arm[:, None], left[..., :3])
        rest = np.concatenate([np.sum(left[..., :3], axis=2), np.sum(turn, axis=2)], axis=-1)
        return np.asarray(np.max(np.abs(rest), axis=-1) / np.maximum(largest, 1.0))

    def actions(self, station: str, side: str) -> Column:
        """Actions just inboard and outboard of a station, the larger in moment; (n, rows, 6)."""
        name = f"{station}_{side}"
        if name not in self.larger:
            node = self.place[name]
            self.larger[name] = larger_moment(
                self.faces[:, :, node - 1, 1], self.faces[:, :, node, 0]
            )
        return self.larger[name]


def larger_moment(before: Column, after: Column) -> Column:
    """The one of two actions (n, rows, 6) with the larger moment."""
    bigger = _square(before) >= _square(after)
    return np.where(bigger[..., None], before, after)


def _square(actions: Column) -> Column:
    x, y, z = actions[..., 3], actions[..., 4], actions[..., 5]
    return np.asarray(x * x + y * y + z * z)


def inner_order(columns: Columns, words: Words) -> Order:
    """Order of the brackets along each tube, outermost first, by the first draw of the columns.

    It belongs to the shape of a rig: take it from the point and keep it for the draws.
    """
    inner = {"seat": columns["spring_spacing"], "arm": columns["arm_apart"]}
    out: dict[str, tuple[str, ...]] = {}
    for side in ("right", "left"):
        here = dict(inner)
        if words["held_by.arms"] == "leaves":
            del here["arm"]
        elif has_track_bar(words) and words["track_bar.on_axle"] == side:
            here["track_bar"] = columns["track_bar_span"]
        out[side] = tuple(sorted(here, key=lambda name: -float(here[name][0])))
    return out


def stations(
    columns: Columns, words: Words, order: Order | None = None
) -> tuple[list[str], Column]:
    """Names of the chain's nodes from right to left, and where each stands, (n, nodes), m."""
    kept = order or inner_order(columns, words)
    front = words["rig.axle"] == "front"
    half = 0.5 * columns["track"]
    face = half + columns["wheel_offset"] - columns["wheel_spacer"]
    bearing = np.minimum(face - columns["bearing_setback"], half - GAP)
    outer = {"wheel": half, "bearing": bearing}
    if front:
        pivot = 0.5 * columns["kingpin_spacing"] - 0.5 * columns["kingpin_height"] * np.tan(
            columns["inclination"]
        )
        outer["kingpin"] = np.minimum(pivot, bearing - GAP)
    end = outer["kingpin" if front else "bearing"] - columns["forging_length"]
    inner = {"seat": 0.5 * columns["spring_spacing"], "arm": 0.5 * columns["arm_apart"]}
    if has_track_bar(words):
        inner["track_bar"] = 0.5 * columns["track_bar_span"]
    names: list[str] = []
    places: list[Column] = []
    joints: dict[str, Column] = {}
    for side in ("right", "left"):
        joint = end - columns[f"tube_bare_{side}"]
        joints[side] = joint
        chain = [*outer.items(), ("end", end), *((name, inner[name]) for name in kept[side])]
        run = []
        limit = None
        for name, place in chain:
            limit = place if limit is None else np.minimum(place, limit - GAP)
            run.append((f"{name}_{side}", SIGN[side] * np.maximum(limit, joint + GAP * 0.5)))
        run.append((f"joint_{side}", SIGN[side] * joint))
        if side == "right":
            names += [name for name, _ in run]
            places += [place for _, place in run]
            names.append("centre")
            places.append(np.zeros_like(half))
            middle = len(places) - 1
        else:
            names += [name for name, _ in reversed(run)]
            places += [place for _, place in reversed(run)]
    places[middle] = 0.5 * (joints["left"] - joints["right"])
    across = np.stack(places, axis=-1)
    step = np.maximum(np.diff(across, axis=-1), 0.001)
    across = across[:, :1] + np.concatenate(
        [np.zeros_like(across[:, :1]), np.cumsum(step, axis=-1)], axis=-1
    )
    return names, across


def tube_sections(columns: Columns, side: str, at: str = "") -> dict[str, Column]:
    """Section properties of one tube with its sleeve and truss.

    Area, second moments up and fore, torsion constant, plastic and elastic moduli up and fore;
    each (n,), SI. ``at`` "end" is beside the end forging, where sleeve and truss have stopped.
    """
    outer = columns[f"tube_outer_{side}"]
    wall = np.minimum(columns["tube_wall"], 0.499 * outer)
    inner = outer - 2.0 * wall
    sleeve = np.clip(columns[f"sleeve_wall_{side}"], 0.0, 0.499 * inner)
    if at == "end":
        sleeve = 0.0 * sleeve
    bore = inner - 2.0 * sleeve
    second = section.second_moment(outer, bore)
    plastic = section.plastic_modulus(outer, bore)
    area = section.area(outer, bore)
    up, plastic_up = second, plastic
    modulus_up = np.asarray(second / (0.5 * outer))
    if "truss_bond" in columns and at != "end":
        height, bond = columns["truss_height"], columns["truss_bond"]
        chord = columns["truss_outer"]
        hollow = np.maximum(chord - 2.0 * columns["truss_wall"], 0.0)
        both = section.composite(outer, bore, outer, 0.0, chord, hollow, height, bond)
        up, modulus_up = np.asarray(both.vertical), np.asarray(both.lower_modulus)
        plastic_up = section.trussed_plastic_modulus(outer, bore, chord, hollow, height, bond)
    made = {
        "area": area,
        "up": up,
        "fore": second,
        "torsion": 2.0 * second,
        "plastic_up": plastic_up,
        "plastic_fore": plastic,
        "modulus": second / (0.5 * outer),
        "modulus_up": modulus_up,
    }
    return {name: np.asarray(values, dtype=np.float64) for name, values in made.items()}


def solve_housing(
    columns: Columns, words: Words, loads: Loads, ends: WheelEnd, order: Order | None = None
) -> Housing:
    """Displacements, section actions and support forces for every case row."""
    kept = order or inner_order(columns, words)
    names, across = stations(columns, words, kept)
    place = {name: node for node, name in enumerate(names)}
    draws, count = across.shape
    nodes = np.zeros((draws, count, 3))
    nodes[..., 1] = across
    stiff = _stiffness(columns, names, place)
    bound = binding(columns, words, arm_slopes(columns, words))
    force = _chain_loads(columns, words, loads, ends, place, across)
    rows = force.shape[1]
    own: dict[str, Column] = {}
    alike_rows = _alike(words)
    braced = {stops: supports(columns, words, place, across, stops) for stops in alike_rows}
    for support in next(iter(braced.values())):
        acts = bound_action(bound, words, support.name, nodes[:, support.node], support.offset)
        if acts is not None:
            own[support.name] = acts
            force[:, :, support.node] += acts
    displacement = np.empty((draws, rows, count, 6))
    faces = np.empty((draws, rows, count - 1, 2, 6))
    status = np.zeros(draws, dtype=np.int64)
    tension: dict[str, Column] = {}
    forces: dict[str, Column] = {}
    for stops, alike in alike_rows.items():
        held = braced[stops]
        node_of = np.array([support.node for support in held])
        about = np.stack([support.stiffness for support in held], axis=1)
        some, cut, state = frame.solve_chain(
            nodes, *stiff, node_of, about, np.zeros((count, 6), dtype=np.bool_), force[:, alike]
        )
        if len(alike_rows) == 1:
            displacement, faces = some, cut
        else:
            displacement[:, alike], faces[:, alike] = some, cut
        status = np.maximum(status, state)
        for place_in, support in enumerate(held):
            moved = some[:, :, support.node]
            acts = -np.einsum("nij,ncj->nci", about[:, place_in], moved)
            if support.name in own:
                acts += own[support.name][:, alike]
            forces.setdefault(support.name, np.empty((draws, rows, 6)))[:, alike] = acts
            if support.direction is not None and support.rod_stiffness is not None:
                pull = frame.rod_tension(
                    moved,
                    support.offset[:, None],
                    support.direction[:, None],
                    support.rod_stiffness[:, None],
                )
                if support.name in bound.pull:
                    pull += bound.pull[support.name][:, alike]
                tension.setdefault(support.name, np.empty((draws, rows)))[:, alike] = pull
    return Housing(
        order=kept,
        place=place,
        across=across,
        displacement=displacement,
        faces=faces,
        held_at={support.name: support.node for support in held},
        tension=tension,
        support_force=forces,
        loads=force,
        own=own,
        status=status,
        bound=bound,
    )


def _alike(words: Words) -> dict[tuple[str, ...], list[int] | slice]:
    """Case rows by the springs that stand on their stops.

    Only radius arms resist roll by themselves, so only there does the share on each spring
    depend on its stiffness; elsewhere it is statics, and one state serves every case.
    """
    if words["held_by.arms"] != "radius arms":
        return {("left", "right"): slice(None)}
    stood: dict[tuple[str, ...], list[int]] = {(): [HELD]}
    for row, case in enumerate(CASES):
        stood.setdefault(case.on_stop, []).append(row)
    return dict(stood)


def _stiffness(
    columns: Columns, names: list[str], place: dict[str, int]
) -> tuple[Column, Column, Column, Column]:
    draws, count = columns["track"].shape[0], len(names)
    area, up, fore, torsion = (np.empty((draws, count - 1)) for _ in range(4))
    forging = section.second_moment(np.array(FORGED), np.array(0.0))
    area[:] = metals.STEEL * section.area(np.array(FORGED), np.array(0.0))
    up[:] = fore[:] = metals.STEEL * forging
    torsion[:] = metals.STEEL_SHEAR * 2.0 * forging
    for side, step in (("right", 1), ("left", -1)):
        tube = tube_sections(columns, side)
        first, last = place[f"end_{side}"], place[f"joint_{side}"]
        span = slice(first, last) if step == 1 else slice(last, first)
        area[:, span] = (metals.STEEL * tube["area"])[:, None]
        up[:, span] = (metals.STEEL * tube["up"])[:, None]
        fore[:, span] = (metals.STEEL * tube["fore"])[:, None]
        torsion[:, span] = (metals.STEEL_SHEAR * tube["torsion"])[:, None]
    middle = slice(place["joint_right"], place["joint_left"])
    casting = section.second_moment(np.array(CAST), np.array(CAST_BORE))
    area[:, middle] = metals.IRON * section.area(np.array(CAST), np.array(CAST_BORE))
    up[:, middle] = fore[:, middle] = metals.IRON * casting
    torsion[:, middle] = metals.IRON_SHEAR * 2.0 * casting
    return area, up, fore, torsion


def _chain_loads(
    columns: Columns,
    words: Words,
    loads: Loads,
    ends: WheelEnd,
    place: dict[str, int],
    across: Column,
) -> Column:
    draws, count = across.shape
    rows = loads.ground.shape[1]
    force = np.zeros((draws, HELD + 1, count, 6))
    for index, side in enumerate(("left", "right")):
        force[:, :rows, place[f"wheel_{side}"], :3] = ends.force[:, :, index]
        force[:, :rows, place[f"wheel_{side}"], 3:] = ends.moment_at_wheel[:, :, index]
        if words["rig.axle"] == "front":
            node = place[f"kingpin_{side}"]
            force[:, :rows, node, :3] += ends.rods_force[:, :, index]
            force[:, :rows, node, 3:] += ends.rods_moment[:, :, index]
    total = np.sum(loads.drive, axis=-1)
    force[:, :rows, place["centre"], 2] += loads.centre[..., 2]
    force[:, :rows, place["centre"], 4] -= total
    force[:, :rows, place["centre"], 3] += total / columns["axle_ratio"][:, None]
    return force
