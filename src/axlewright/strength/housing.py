"""The housing of one rig as a chain of beams on its springs, arms and track bar.

The chain runs from the right tyre's centre to the left one's along the axle line (x = z = 0);
springs, arms and track bar hold it at rigid offsets, and what the knuckles, tie rod and drag
link do to it comes in as loads (`wheel_end`).
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from axlewright.duty import Loads
from axlewright.physics import frame, section
from axlewright.rig import Column, Columns, Words
from axlewright.strength.wheel_end import WheelEnd

STEEL, SHEAR = 205e9, 80e9
IRON, IRON_SHEAR = 165e9, 65e9
GAP = 0.004
INNER_STATIONS = ("seat", "arm", "track_bar")
SIGN = {"left": 1.0, "right": -1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Support:
    """One thing that holds the axle: its node and its stiffness about that node.

    For a rod, ``offset`` (from the node) and ``direction`` (towards the frame) give its tension.
    """

    name: str
    node: int
    stiffness: Column
    offset: Column
    direction: Column | None
    rod_stiffness: Column | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Housing:
    """A solved housing.

    ``place`` names the node of each station; ``faces`` are the global actions (Fx, Fy, Fz, Mx,
    My, Mz) on both faces of every element, (n, rows, element, 2, 6); ``residual`` is what the
    free body lacks over the largest load, (n, rows).
    """

    place: dict[str, int]
    across: Column
    displacement: Column
    faces: Column
    supports: tuple[Support, ...]
    tension: dict[str, Column]
    support_force: dict[str, Column]
    residual: Column
    status: NDArray[np.int64]

    def actions(self, station: str, side: str) -> Column:
        """Actions just inboard and outboard of a station, the larger in moment; (n, rows, 6)."""
        node = self.place[f"{station}_{side}"]
        before, after = self.faces[:, :, node - 1, 1], self.faces[:, :, node, 0]
        bigger = np.sum(before[..., 3:] ** 2, -1) >= np.sum(after[..., 3:] ** 2, -1)
        return np.where(bigger[..., None], before, after)


def stations(columns: Columns, words: Words) -> tuple[list[str], Column]:
    """Names of the chain's nodes from right to left, and where each stands, (n, nodes), m."""
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
    names: list[str] = []
    places: list[Column] = []
    joints: dict[str, Column] = {}
    for side in ("right", "left"):
        here = dict(inner)
        if words["held_by.arms"] == "leaves":
            del here["arm"]
        elif words["track_bar.on_axle"] == side:
            here["track_bar"] = 0.5 * columns["track_bar_span"]
        order = sorted(here, key=lambda name: -float(here[name][0]))
        joint = end - columns[f"tube_bare_{side}"]
        joints[side] = joint
        chain = [*outer.items(), ("end", end), *((name, here[name]) for name in order)]
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


def tube_sections(columns: Columns, side: str) -> dict[str, Column]:
    """Section properties of one tube with its sleeve and truss.

    Area, second moments up and fore, torsion constant, plastic and elastic moduli up and fore;
    each (n,), SI.
    """
    outer = columns[f"tube_outer_{side}"]
    wall = np.minimum(columns["tube_wall"], 0.499 * outer)
    inner = outer - 2.0 * wall
    sleeve = np.clip(columns[f"sleeve_wall_{side}"], 0.0, 0.499 * inner)
    bore = inner - 2.0 * sleeve
    second = section.second_moment(outer, inner) + section.second_moment(inner, bore)
    plastic = section.plastic_modulus(outer, inner) + section.plastic_modulus(inner, bore)
    area = section.area(outer, bore)
    up, plastic_up = second, plastic
    height = columns["truss_height"]
    if np.any(height > 0.0):
        chord_outer = columns["truss_outer"]
        chord = section.area(chord_outer, chord_outer - 2.0 * columns["truss_wall"])
        chord = np.where(height > 0.0, chord, 0.0)
        tube_area = section.area(outer, bore)
        shift = chord * height / (tube_area + chord)
        shear_share = 0.7  # stitched chords carry part of the full composite action; memory
        gain = chord * (height - shift) ** 2 + tube_area * shift**2
        up = second + shear_share * gain
        plastic_up = plastic + shear_share * np.minimum(chord, 0.5 * tube_area) * height
    made = {
        "area": area,
        "up": up,
        "fore": second,
        "torsion": 2.0 * second,
        "plastic_up": plastic_up,
        "plastic_fore": plastic,
        "modulus": second / (0.5 * outer),
        "modulus_up": up / (0.5 * outer),
    }
    return {name: np.asarray(values, dtype=np.float64) for name, values in made.items()}


def solve_housing(columns: Columns, words: Words, loads: Loads, ends: WheelEnd) -> Housing:
    """Displacements, section actions and support forces for every case row."""
    names, across = stations(columns, words)
    place = {name: node for node, name in enumerate(names)}
    draws, count = across.shape
    nodes = np.zeros((draws, count, 3))
    nodes[..., 1] = across
    stiff = _stiffness(columns, names, place)
    held = _supports(columns, words, place)
    force = _chain_loads(columns, words, loads, ends, place, across)
    node_of = np.array([support.node for support in held])
    about = np.stack([support.stiffness for support in held], axis=1)
    displacement, faces, status = frame.solve_chain(
        nodes, *stiff, node_of, about, np.zeros((count, 6), dtype=np.bool_), force
    )
    tension, forces = {}, {}
    reaction = np.zeros((draws, force.shape[1], 6))
    for place_in, support in enumerate(held):
        moved = displacement[:, :, support.node]
        acts = -np.einsum("nij,ncj->nci", about[:, place_in], moved)
        forces[support.name] = acts
        arm = nodes[:, None, support.node]
        reaction[..., :3] += acts[..., :3]
        reaction[..., 3:] += acts[..., 3:] + np.cross(arm, acts[..., :3])
        if support.direction is not None and support.rod_stiffness is not None:
            tension[support.name] = frame.rod_tension(
                moved,
                support.offset[:, None],
                support.direction[:, None],
                support.rod_stiffness[:, None],
            )
    arm = nodes[:, None]
    applied = np.concatenate(
        [
            np.sum(force[..., :3], axis=2),
            np.sum(force[..., 3:] + np.cross(arm, force[..., :3]), axis=2),
        ],
        axis=-1,
    )
    largest = np.max(np.abs(force), axis=(2, 3))
    residual = np.max(np.abs(applied + reaction), axis=-1) / np.maximum(largest, 1.0)
    return Housing(
        place=place,
        across=across,
        displacement=displacement,
        faces=faces,
        supports=tuple(held),
        tension=tension,
        support_force=forces,
        residual=residual,
        status=status,
    )


def _stiffness(
    columns: Columns, names: list[str], place: dict[str, int]
) -> tuple[Column, Column, Column, Column]:
    draws, count = columns["track"].shape[0], len(names)
    area, up, fore, torsion = (np.empty((draws, count - 1)) for _ in range(4))
    forging = section.second_moment(np.array(0.072), np.array(0.0))
    area[:] = STEEL * section.area(np.array(0.072), np.array(0.0))
    up[:] = fore[:] = STEEL * forging
    torsion[:] = SHEAR * 2.0 * forging
    for side, step in (("right", 1), ("left", -1)):
        tube = tube_sections(columns, side)
        first, last = place[f"end_{side}"], place[f"joint_{side}"]
        span = slice(first, last) if step == 1 else slice(last, first)
        area[:, span] = (STEEL * tube["area"])[:, None]
        up[:, span] = (STEEL * tube["up"])[:, None]
        fore[:, span] = (STEEL * tube["fore"])[:, None]
        torsion[:, span] = (SHEAR * tube["torsion"])[:, None]
    middle = slice(place["joint_right"], place["joint_left"])
    casting = section.second_moment(np.array(0.18), np.array(0.16))
    area[:, middle] = IRON * section.area(np.array(0.18), np.array(0.16))
    up[:, middle] = fore[:, middle] = IRON * casting
    torsion[:, middle] = IRON_SHEAR * 2.0 * casting
    return area, up, fore, torsion


def _supports(columns: Columns, words: Words, place: dict[str, int]) -> list[Support]:
    held: list[Support] = []
    tube = 0.5 * columns["tube_outer_left"]
    bush = columns["bushing_stiffness"]
    for side in ("right", "left"):
        held.append(_spring(columns, words, place, side))
        if words["held_by.arms"] == "leaves":
            continue
        low = -(tube + columns["arm_bracket_height"])
        node = place[f"arm_{side}"]
        if words["held_by.arms"] == "radius arms":
            held.append(_radius_arm(columns, node, side, low))
            continue
        back = _direction(-columns["arm_length"], 0.0, 0.06 - low)
        rod = _in_series(_bar(columns, "arm", columns["arm_length"]), bush)
        held.append(_rod(f"lower_arm_{side}", node, _offset(0.0 * low, 0.0, low), back, rod))
        if words["held_by.arms"] == "four arms":
            node = place[f"joint_{side}"]
            rise = 0.14 + 0.0 * low
            held.append(
                _rod(
                    f"upper_arm_{side}",
                    node,
                    _offset(0.0 * low, 0.0, rise),
                    _direction(-0.8 * columns["arm_length"], 0.0, 0.02 + 0.0 * low),
                    rod,
                )
            )
    if words["held_by.arms"] == "three arms":
        rise = 0.16 + 0.0 * tube
        rod = _in_series(_bar(columns, "arm", columns["arm_length"]), bush)
        held.append(
            _rod(
                "upper_arm",
                place["centre"],
                _offset(0.0 * rise, 0.0, rise),
                _direction(-0.8 * columns["arm_length"], 0.0, 0.02 + 0.0 * rise),
                rod,
            )
        )
    if words["held_by.arms"] != "leaves":
        held.append(_track_bar(columns, words, place, tube))
    return held


def _spring(columns: Columns, words: Words, place: dict[str, int], side: str) -> Support:
    rate = columns["spring_rate"] + columns["bump_stiffness"]  # a bad moment is on the stops
    node = place[f"seat_{side}"]
    none = 0.0 * rate
    if words["held_by.weight_on"] == "leaf":
        sideways, along = 3.0e6 + none, 8.0e6 + none  # of the frame cases' order; memory
        pad = frame.point_support(
            _offset(none, 0.0, 0.06 + none),
            np.stack([along, sideways, rate], -1),
            np.stack([none, 2.0e5 + none, none + 2.0e4], -1),
        )
        return Support(
            name=f"spring_{side}",
            node=node,
            stiffness=pad,
            offset=_offset(none, 0.0, 0.06 + none),
            direction=None,
            rod_stiffness=None,
        )
    behind = none
    if words["held_by.weight_on"].startswith("coil-over"):
        behind = -columns["damper_bracket_behind"]
    offset = _offset(behind, 0.0, 0.06 + none)
    coil = frame.point_support(
        offset, np.stack([0.05 * rate, 0.05 * rate, rate], -1), np.stack([none, none, none], -1)
    )
    return Support(
        name=f"spring_{side}",
        node=node,
        stiffness=coil,
        offset=offset,
        direction=None,
        rod_stiffness=None,
    )


def _radius_arm(columns: Columns, node: int, side: str, low: Column) -> Support:
    length, bush = columns["arm_length"], columns["bushing_stiffness"]
    none = 0.0 * length
    twist = 0.15 * bush * 0.09**2  # two soft bushings 90 mm either side of the tube; memory
    upright = 1.0 / (1.0 / bush + length**2 / twist)
    offset = _offset(-length, 0.0, low)
    held = frame.point_support(
        offset, np.stack([0.5 * bush, 0.005 * bush, upright], -1), np.stack([none] * 3, -1)
    )
    return Support(
        name=f"radius_arm_{side}",
        node=node,
        stiffness=held,
        offset=offset,
        direction=None,
        rod_stiffness=None,
    )


def _track_bar(columns: Columns, words: Words, place: dict[str, int], tube: Column) -> Support:
    side = words["track_bar.on_axle"]
    span, drop = columns["track_bar_span"], columns["track_bar_drop"]
    reach = np.sqrt(np.maximum(span**2 - drop**2, 0.01))
    rod = _in_series(_bar(columns, "track_bar", span), columns["bushing_stiffness"])
    offset = _offset(0.0 * span, 0.0, tube + columns["track_bar_bracket_height"])
    return _rod(
        "track_bar",
        place[f"track_bar_{side}"],
        offset,
        _direction(0.0 * span, -SIGN[side] * reach, drop),
        rod,
    )


def _bar(columns: Columns, name: str, length: Column) -> Column:
    outer = columns[f"{name}_outer"]
    inner = np.maximum(outer - 2.0 * columns[f"{name}_wall"], 0.0)
    return STEEL * section.area(outer, inner) / length


def _in_series(bar: Column, bushing: Column) -> Column:
    return 1.0 / (1.0 / bar + 2.0 / bushing)


def _rod(name: str, node: int, offset: Column, direction: Column, stiffness: Column) -> Support:
    return Support(
        name=name,
        node=node,
        stiffness=frame.rod_support(offset, direction, stiffness),
        offset=offset,
        direction=direction,
        rod_stiffness=stiffness,
    )


def _offset(ahead: Column, left: float | Column, up: Column) -> Column:
    return np.stack(np.broadcast_arrays(ahead, left, up), axis=-1)


def _direction(ahead: Column, left: float | Column, up: float | Column) -> Column:
    vector = np.stack(np.broadcast_arrays(ahead, left, up), axis=-1)
    return np.asarray(vector / np.linalg.norm(vector, axis=-1, keepdims=True))


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
    force = np.zeros((draws, rows, count, 6))
    for index, side in enumerate(("left", "right")):
        force[:, :, place[f"wheel_{side}"], :3] = ends.force[:, :, index]
        force[:, :, place[f"wheel_{side}"], 3:] = ends.moment_at_wheel[:, :, index]
        if words["rig.axle"] == "front":
            node = place[f"kingpin_{side}"]
            force[:, :, node, :3] += ends.rods_force[:, :, index]
            force[:, :, node, 3:] += ends.rods_moment[:, :, index]
    total = np.sum(loads.drive, axis=-1)
    force[:, :, place["centre"], 2] += loads.centre[..., 2]
    force[:, :, place["centre"], 4] -= total
    force[:, :, place["centre"], 3] += total / columns["axle_ratio"][:, None]
    return force
