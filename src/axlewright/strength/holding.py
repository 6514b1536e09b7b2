"""What holds the housing: springs on their stops, arms, radius arms, leaves, track bar."""

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from axlewright.physics import frame, metals, section
from axlewright.rig import Column, Columns, Words, angled_arms, has_track_bar

# Where arms and springs end, m; memory. No leading margin moves with them (a test says by how
# little), so they carry no band. Lengths and heights come taped where they were (`rig.taped`).
FOUR_UP, THREE_UP = 0.14, 0.16  # upper arm's end above the tube's centre line: two arms, one
FRAME_UP = 0.06  # lower arm's end at the frame above that line
UPPER_RISE = 0.02  # rise of an upper arm towards the frame
UPPER_SHARE = 0.8  # length of an upper arm over a lower one
SEAT_UP = 0.06  # a spring's pad above that line
LEAF_SIDEWAYS, LEAF_ALONG = 3.0e6, 8.0e6  # N/m, of the frame cases' order
LEAF_UPRIGHT, LEAF_YAW = 2.0e5, 2.0e4  # N m/rad, a leaf's hold on pitch and on yaw
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


def supports(
    columns: Columns,
    words: Words,
    place: dict[str, int],
    across: Column,
    stops: Collection[str] = SIGN,
) -> list[Support]:
    """Everything that holds the housing, each with its stiffness about its node.

    ``across`` is where each node stands, (n, nodes) m; ``stops`` names the sides whose spring
    stands on its bump stop.
    """
    held: list[Support] = []
    bush = columns["bushing_stiffness"]
    for side in ("right", "left"):
        held.append(_spring(columns, words, place, side, on_stop=side in stops))
        if words["held_by.arms"] == "leaves":
            continue
        low = -(0.5 * columns[f"tube_outer_{side}"] + columns["arm_bracket_height"])
        node = place[f"arm_{side}"]
        if words["held_by.arms"] == "radius arms":
            held.append(_radius_arm(columns, node, side, low))
            continue
        back = _direction(-columns["arm_length"], 0.0, FRAME_UP - low)
        rod = _in_series(_bar(columns, "arm", columns["arm_length"]), bush)
        held.append(_rod(f"lower_arm_{side}", node, _offset(0.0 * low, 0.0, low), back, rod))
        if words["held_by.arms"] == "four arms":
            node = place[f"joint_{side}"]
            rise = FOUR_UP + 0.0 * low
            held.append(
                _rod(
                    f"upper_arm_{side}",
                    node,
                    _offset(0.0 * low, 0.0, rise),
                    _direction(-UPPER_SHARE * columns["arm_length"], 0.0, UPPER_RISE + 0.0 * low),
                    rod,
                )
            )
        if words["held_by.arms"] == "angled arms":
            held.append(_angled_arm(columns, words, place["centre"], side, across, rod))
    if words["held_by.arms"] == "three arms":
        rise = THREE_UP + 0.0 * bush
        rod = _in_series(_bar(columns, "arm", columns["arm_length"]), bush)
        held.append(
            _rod(
                "upper_arm",
                place["centre"],
                _offset(0.0 * rise, 0.0, rise),
                _direction(-UPPER_SHARE * columns["arm_length"], 0.0, UPPER_RISE + 0.0 * rise),
                rod,
            )
        )
    if has_track_bar(words):
        held.append(_track_bar(columns, words, place))
    return held


def arm_slopes(columns: Columns, words: Words) -> dict[str, tuple[Column, Column]]:
    """Length of each arm and how much higher its end at the frame is, m, by name."""
    arms, length = words["held_by.arms"], columns["arm_length"]
    out: dict[str, tuple[Column, Column]] = {}
    if arms == "leaves":
        return out
    for side in ("right", "left"):
        low = -(0.5 * columns[f"tube_outer_{side}"] + columns["arm_bracket_height"])
        name = "radius_arm" if arms == "radius arms" else "lower_arm"
        out[f"{name}_{side}"] = (length, FRAME_UP - low)
        if arms in {"four arms", "angled arms"}:
            out[f"upper_arm_{side}"] = (UPPER_SHARE * length, UPPER_RISE + 0.0 * length)
    if arms == "three arms":
        out["upper_arm"] = (UPPER_SHARE * length, UPPER_RISE + 0.0 * length)
    return out


def _spring(
    columns: Columns, words: Words, place: dict[str, int], side: str, *, on_stop: bool
) -> Support:
    rate = columns["spring_rate"] + on_stop * columns["bump_stiffness"]
    node = place[f"seat_{side}"]
    none = 0.0 * rate
    if words["held_by.weight_on"] == "leaf":
        sideways, along = LEAF_SIDEWAYS + none, LEAF_ALONG + none
        pad = frame.point_support(
            _offset(none, 0.0, SEAT_UP + none),
            np.stack([along, sideways, rate], -1),
            np.stack([none, LEAF_UPRIGHT + none, LEAF_YAW + none], -1),
        )
        return Support(
            name=f"spring_{side}",
            node=node,
            stiffness=pad,
            offset=_offset(none, 0.0, SEAT_UP + none),
            direction=None,
            rod_stiffness=None,
        )
    behind = none
    if words["held_by.weight_on"].startswith("coil-over"):
        behind = -columns["damper_bracket_behind"]
    offset = _offset(behind, 0.0, SEAT_UP + none)
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


def _angled_arm(
    columns: Columns, words: Words, node: int, side: str, across: Column, stiffness: Column
) -> Support:
    near, far, run = angled_arms(columns)
    none, way = 0.0 * run, -1.0 if words["rig.axle"] == "front" else 1.0
    return _rod(
        f"upper_arm_{side}",
        node,
        _offset(none, SIGN[side] * near - across[:, node], THREE_UP + none),
        _direction(way * run, SIGN[side] * (far - near), UPPER_RISE + none),
        stiffness,
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


def _track_bar(columns: Columns, words: Words, place: dict[str, int]) -> Support:
    side = words["track_bar.on_axle"]
    span, drop = columns["track_bar_span"], columns["track_bar_drop"]
    reach = np.sqrt(np.maximum(span**2 - drop**2, 0.01))
    rod = _in_series(_bar(columns, "track_bar", span), columns["bushing_stiffness"])
    offset = _offset(
        0.0 * span, 0.0, 0.5 * columns[f"tube_outer_{side}"] + columns["track_bar_bracket_height"]
    )
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
    return metals.STEEL * section.area(outer, inner) / length


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
