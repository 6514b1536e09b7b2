"""Where everything of one axle ends, from its columns, and the rods that hold it.

Points are (n, 3) in m from the axle's centre at the height at which they were taped. Leaf springs
are an equivalent arm: the axle's pad moves on an arc of three quarters of the front half leaf,
without pitching; a far point at the side stands for their stiffness across.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from axlewright.geometry.radius_arms import RADIUS_APART, TWIST_BUSH, radius_end, radius_end_moved
from axlewright.geometry.rods import Rod
from axlewright.physics import linkage, metals, section
from axlewright.rig import POINTS, Column, Columns, Words

SIDES: Final = ("left", "right")
FAR = 20.0  # m: an arc so wide that a leaf spring moves straight up
LEAF_SHARE = 0.75  # arc's radius over the half leaf: a uniform-strength leaf, derived


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardpoints:
    """One axle's points by name (``arm_axle_left``), its rods, and what it is."""

    words: Words
    columns: Columns
    at: Mapping[str, Column]
    rods: tuple[Rod, ...]
    half_track: Column
    taped_radius: Column
    drag_length: Column | None = None

    @property
    def steers(self) -> bool:
        """Whether this axle has kingpins."""
        return self.words["rig.axle"] == "front"

    @property
    def arms(self) -> str:
        """What holds the axle."""
        return self.words["held_by.arms"]

    @property
    def lanes(self) -> int:
        """How many draws the columns have."""
        return len(self.half_track)

    @property
    def barred(self) -> bool:
        """Whether a track bar holds it sideways."""
        return any(rod.name == "track_bar" for rod in self.rods)

    def rod(self, name: str) -> Rod:
        """One rod by name."""
        return next(each for each in self.rods if each.name == name)

    def bolt(self, rod: Rod) -> Column:
        """Where a rod is bolted to the axle, (n, 3): of a radius arm its near bolt."""
        return self.at.get(_ends(rod.name)[1], rod.axle)

    def moved(self, name: str, by: tuple[float, float, float]) -> "Hardpoints":
        """Move a point, rods keep their lengths."""
        at = {**self.at, name: self.at[name] + np.asarray(by)}
        return self.with_places(at)

    def with_places(self, at: Mapping[str, Column]) -> "Hardpoints":
        """Give the same rods between other points."""
        radius = self.arms == "radius arms"
        rods = []
        for rod in self.rods:
            near, far = _ends(rod.name)
            end = at.get(far, rod.axle)
            if radius and rod.name.startswith("arm_"):
                end = radius_end_moved(self.at, at, rod)
            rods.append(replace(rod, frame=at.get(near, rod.frame), axle=end))
        return replace(self, at=at, rods=tuple(rods))

    def longer(self, name: str, by: float | Column) -> "Hardpoints":
        """Give one rod another length."""
        rods = tuple(
            replace(rod, length=rod.length + by) if rod.name == name else rod for rod in self.rods
        )
        return replace(self, rods=rods)


def hardpoints(columns: Columns, words: Words, taped: Columns | None = None) -> Hardpoints:
    """Points and rods of an axle; ``taped`` are the columns to which the rods were fitted.

    A rod keeps the length that fitted when the places were taped, whatever is moved afterwards,
    plus what it was said to be longer.
    """
    fitted = columns if taped is None else taped
    at, then = _places(columns, fitted["radius"]), _places(fitted, fitted["radius"])
    if words["held_by.arms"] == "leaves":
        rods = _leaves(columns, at)
    else:
        rods = tuple(_rod(name, columns, words, at, then) for name in rod_names(words))
    drag = None
    if words["rig.axle"] == "front":
        at = forgings_turned(at, columns["travel_forgings_turned"])
        drag = linkage.rod_lengths(drag_end(then, words), then["drag_link_pitman"])
    return Hardpoints(
        words=words,
        columns=columns,
        at=at,
        rods=rods,
        half_track=0.5 * columns["track"],
        taped_radius=fitted["radius"],
        drag_length=drag,
    )


def rod_names(words: Words) -> tuple[str, ...]:
    """Names of the rods of a layout."""
    lower = ("arm_left", "arm_right")
    return {
        "four arms": (*lower, "upper_arm_left", "upper_arm_right", "track_bar"),
        "three arms": (*lower, "third_arm", "track_bar"),
        "angled arms": (*lower, "upper_arm_left", "upper_arm_right"),
        "radius arms": (*lower, "arm_far_left", "arm_far_right", "track_bar"),
        "leaves": ("leaf_left", "leaf_right", "leaf_twist", "leaf_side"),
    }[words["held_by.arms"]]


def rod_in_words(name: str) -> str:
    """Name of a rod for a person."""
    side = f"{name.rpartition('_')[2]} " if name.endswith(SIDES) else ""
    stem = name.removesuffix("_left").removesuffix("_right")
    return side + {
        "arm": "lower arm",
        "arm_far": "radius arm",
        "upper_arm": "upper arm",
        "third_arm": "upper arm",
        "track_bar": "track bar",
        "leaf": "leaf spring",
        "leaf_twist": "leaf springs in twist",
        "leaf_side": "leaf springs across",
        "tie_rod": "tie rod",
        "drag_link": "drag link",
    }.get(stem, stem.replace("_", " "))


def _places(columns: Columns, radius: Column) -> dict[str, Column]:
    found: dict[str, Column] = {}
    for point in POINTS:
        for side in ("_left", "_right") if point.sided else ("",):
            stem = f"point_{point.name}{side}"
            if f"{stem}_up" not in columns:
                continue
            found[f"{point.name}{side}"] = np.stack(
                np.broadcast_arrays(
                    columns[f"{stem}_ahead"],
                    columns[f"{stem}_left"],
                    columns[f"{stem}_up"] - radius,
                ),
                axis=-1,
            )
    return found


def _ends(name: str) -> tuple[str, str]:
    """Names of a rod's points at the frame and at the axle."""
    side = next((f"_{each}" for each in SIDES if name.endswith(f"_{each}")), "")
    stem = name.removesuffix(side)
    if stem == "arm_far":
        return f"arm_frame{side}", f"arm_axle_far{side}"
    return f"{stem}_frame{side}", f"{stem}_axle{side}"


def _rod(
    name: str, columns: Columns, words: Words, at: Mapping[str, Column], then: Mapping[str, Column]
) -> Rod:
    near, far = _ends(name)
    own, bush = name.replace("arm_far", "arm"), columns["bushing_stiffness"]
    kind = "track_bar" if name == "track_bar" else "arm"
    if words["held_by.arms"] == "radius arms" and kind == "arm":
        end = radius_end(then, name)
        made = Rod(
            name=name,
            frame=then[near],
            axle=end,
            length=linkage.rod_lengths(then[near], end) + columns[f"longer_{own}"],
            stiffness=TWIST_BUSH * bush / RADIUS_APART**2,
            soft=TWIST_BUSH,
        )
        return replace(made, frame=at[near], axle=radius_end_moved(then, at, made))
    length = linkage.rod_lengths(then[near], then[far]) + columns[f"longer_{own}"]
    outer = columns[f"{kind}_outer"]
    inner = np.maximum(outer - 2.0 * columns[f"{kind}_wall"], 0.0)
    bar = metals.STEEL * section.area(outer, inner) / length
    return Rod(
        name=name,
        frame=at[near],
        axle=at[far],
        length=length,
        stiffness=1.0 / (1.0 / bar + 2.0 / bush),
    )


def _leaves(columns: Columns, at: Mapping[str, Column]) -> tuple[Rod, ...]:
    stiff = np.full_like(columns["track"], 8e6)
    rods, pivots, pads = [], [], []
    for side in SIDES:
        eye, pad = at[f"leaf_eye_{side}"], at[f"leaf_pad_{side}"]
        reach = LEAF_SHARE * linkage.rod_lengths(eye, pad)
        rise = eye[..., 2] - pad[..., 2]
        run = np.sqrt(np.maximum(reach**2 - rise**2, 1e-4)) * np.sign(eye[..., 0] - pad[..., 0])
        pivot = pad + np.stack([run, 0.0 * run, rise], axis=-1)
        pivots.append(pivot)
        pads.append(pad)
        rods.append(_plain(f"leaf_{side}", pivot, pad, stiff))
    up = np.array([0.0, 0.0, 0.2])
    near, far = 0.5 * (pivots[0] + pivots[1]) + up, 0.5 * (pads[0] + pads[1]) + up
    rods.append(_plain("leaf_twist", near, far, stiff))
    middle = 0.5 * (pads[0] + pads[1])
    rods.append(_plain("leaf_side", middle + np.array([0.0, FAR, 0.0]), middle, stiff))
    return tuple(rods)


def _plain(name: str, frame: Column, axle: Column, stiff: Column) -> Rod:
    length = linkage.rod_lengths(frame, axle)
    return Rod(name=name, frame=frame, axle=axle, length=length, stiffness=stiff)


def forgings_turned(at: Mapping[str, Column], more: Column) -> dict[str, Column]:
    """Points of the knuckles turned about the axle, top rearward, by the angle in rad."""
    out = dict(at)
    cos, sin = np.cos(more), np.sin(more)
    for name in ("kingpin_upper", "kingpin_lower", "tie_rod_end"):
        for side in SIDES:
            out[f"{name}_{side}"] = _about_y(at[f"{name}_{side}"], cos, sin)
    out["drag_link_wheel"] = _about_y(at["drag_link_wheel"], cos, sin)
    return out


def _about_y(point: Column, cos: Column, sin: Column) -> Column:
    x, y, z = point[..., 0], point[..., 1], point[..., 2]
    return np.stack([cos * x - sin * z, y + 0.0 * cos, sin * x + cos * z], axis=-1)


def drag_on(points: Hardpoints) -> int:
    """What the drag link holds: the left knuckle, the right one, or the tie rod."""
    if points.words.get("steering.drag_link_on") == "tie rod":
        return linkage.ON_TIE_ROD
    return linkage.ON_LEFT if float(points.at["drag_link_wheel"][0, 1]) > 0 else linkage.ON_RIGHT


def tie_rod_share(at: Mapping[str, Column]) -> Column:
    """How far from left to right a drag link sits on the tie rod, 0 to 1."""
    left, right = at["tie_rod_end_left"][..., 1], at["tie_rod_end_right"][..., 1]
    return np.asarray((left - at["drag_link_wheel"][..., 1]) / (left - right))


def drag_end(at: Mapping[str, Column], words: Words) -> Column:
    """Where the drag link ends at the wheels: where it was taped, or on the tie rod's line."""
    if words.get("steering.drag_link_on") != "tie rod":
        return at["drag_link_wheel"]
    share = tie_rod_share(at)[..., None]
    return np.asarray((1.0 - share) * at["tie_rod_end_left"] + share * at["tie_rod_end_right"])


def linkage_of(points: Hardpoints, *, steers: bool = True) -> linkage.Linkage:
    """Make the linkage that `axle_poses` takes; one row for each draw."""
    return linkage.axle_linkage(
        np.stack([rod.frame for rod in points.rods], axis=-2),
        np.stack([rod.axle for rod in points.rods], axis=-2),
        points.half_track,
        length=np.stack([rod.length for rod in points.rods], axis=-1),
        stiffness=np.stack([rod.stiffness for rod in points.rods], axis=-1),
        steering=_steering(points) if steers and points.steers else None,
    )


def kingpin_axes(points: Hardpoints) -> Column:
    """Unit vectors up both kingpins, (n, 2, 3), left first."""
    up = np.stack(
        [points.at[f"kingpin_upper_{side}"] - points.at[f"kingpin_lower_{side}"] for side in SIDES],
        axis=-2,
    )
    return np.asarray(up / np.linalg.norm(up, axis=-1, keepdims=True))


def _steering(points: Hardpoints) -> linkage.Steering:
    at, held = points.at, drag_on(points)
    ties = np.stack([at[f"tie_rod_end_{side}"] for side in SIDES], axis=-2)
    end = at["drag_link_wheel"]
    if held == linkage.ON_TIE_ROD:
        share = tie_rod_share(at)
        end = np.stack([share, 0.0 * share, 0.0 * share], axis=-1)
    pivots = np.stack(
        [0.5 * (at[f"kingpin_upper_{side}"] + at[f"kingpin_lower_{side}"]) for side in SIDES],
        axis=-2,
    )
    return linkage.Steering(
        pivot=pivots,
        axis=kingpin_axes(points),
        spindle=linkage.spindle_direction(0.0, 0.0, np.array([1.0, -1.0])),
        tie_end=ties,
        drag_on=held,
        drag_end=end,
        pitman=at["drag_link_pitman"],
        drag_length=points.drag_length,
    )
