"""What a rig says already about an axle to be ordered, field by field of the order sheet."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.errors import AxlewrightError
from axlewright.rig import (
    SEED,
    Column,
    Columns,
    Rig,
    drawn_geometry_columns,
    geometry_columns,
    usual_words,
)
from axlewright.tables import order_fields

DRAWS: Final = 256
ROUGH: Final = 2.0  # tolerances that a 90 % band may reach to either side
MIDDLE: Final = 0.02  # m: nearer than this to the vehicle's middle is the middle
Whence: TypeAlias = Literal["the sheet", "the rig", "worked out", "too rough", "assumed"]
Number: TypeAlias = Callable[[Columns], Column]


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """One field's value, SI or a word, its 90 % band, and where it comes from.

    What is assumed, or was taped too roughly to cut metal by, is a proposal: it fills nothing
    until somebody has said or measured it.
    """

    key: str
    value: float | str
    band: tuple[float, float] | None
    whence: Whence

    @property
    def holds(self) -> bool:
        """Whether anybody said it, or it follows from what was said."""
        return self.whence not in {"assumed", "too rough"}


def _face(c: Columns) -> Column:
    """Half of face to face, m."""
    return c["track"] / 2.0 + c["wheel_offset"] - c["wheel_spacer"]


def _nose(c: Columns) -> Column:
    """Height of the pinion's line at the axle's centre, against it, m."""
    reach = np.abs(c["point_pinion_joint_ahead"])
    line = c["point_pinion_joint_up"] - reach * np.tan(c["line_pinion_up"])
    return np.asarray(line - c["radius"])


def _slope(c: Columns) -> Column:
    rise = c["point_transfer_joint_up"] - c["point_pinion_joint_up"]
    run = np.hypot(
        c["point_transfer_joint_ahead"] - c["point_pinion_joint_ahead"],
        c["point_transfer_joint_left"] - c["point_pinion_joint_left"],
    )
    return np.asarray(np.arctan2(rise, run))


_FACES: Final = ("track", "wheel_offset", "wheel_spacer")
_TUBES: Final = ("tube_girth_left", "tube_girth_right")
# Field: what it is worked out from, and how. Places are taken in the field's own senses.
NUMBERS: Final[Mapping[str, tuple[tuple[str, ...], Number]]] = {
    "ratio.this": (("axle_ratio",), lambda c: c["axle_ratio"]),
    "ratio.other": (("other_ratio",), lambda c: c["other_ratio"]),
    "ratio.tyre_height": (("hub_height_left", "hub_height_right"), lambda c: c["radius"]),
    "ratio.other_tyre_height": (("other_hub_height",), lambda c: c["other_hub_height"]),
    "ratio.pinion_teeth": (("pinion_teeth",), lambda c: np.round(c["pinion_teeth"])),
    "width.overall": (_FACES, lambda c: 2.0 * _face(c)),
    "width.left": (
        (*_FACES, "point_pinion_joint_left"),
        lambda c: _face(c) - c["point_pinion_joint_left"],
    ),
    "width.right": (
        (*_FACES, "point_pinion_joint_left"),
        lambda c: _face(c) + c["point_pinion_joint_left"],
    ),
    "width.offset": (("wheel_offset",), lambda c: c["wheel_offset"]),
    "width.spacer": (("wheel_spacer",), lambda c: c["wheel_spacer"]),
    "width.tyres": (("track",), lambda c: c["track"]),
    "pinion.from_middle": (
        ("point_pinion_joint_left",),
        lambda c: np.abs(c["point_pinion_joint_left"]),
    ),
    "pinion.up": (("line_pinion_up",), lambda c: c["line_pinion_up"]),
    "tube.outer": (_TUBES, lambda c: 0.5 * (c["tube_outer_left"] + c["tube_outer_right"])),
    "tube.wall": (("tube_wall",), lambda c: c["tube_wall"]),
    "tube.bare_left": (("tube_bare_left",), lambda c: c["tube_bare_left"]),
    "tube.bare_right": (("tube_bare_right",), lambda c: c["tube_bare_right"]),
    "tube.sleeve_wall": (("sleeve_wall_left",), lambda c: c["sleeve_wall_left"]),
    "forging.spacing": (("kingpin_spacing",), lambda c: c["kingpin_spacing"]),
    "forging.height": (("kingpin_height",), lambda c: c["kingpin_height"]),
    "knuckle.height": (("kingpin_height",), lambda c: c["kingpin_height"]),
    "knuckle.stops": (("lock_angle",), lambda c: c["lock_angle"]),
    "angles.caster": (("line_caster_wanted",), lambda c: c["line_caster_wanted"]),
    "angles.output_up": (("line_output_up",), lambda c: c["line_output_up"]),
    "angles.shaft_slope": (("point_pinion_joint_up", "point_transfer_joint_up"), _slope),
    "spring.apart": (("spring_spacing",), lambda c: c["spring_spacing"]),
    "spring.up": (
        ("point_spring_seat_left_up",),
        lambda c: c["point_spring_seat_left_up"] - c["radius"],
    ),
    "spring.behind": (
        ("point_spring_seat_left_ahead",),
        lambda c: -c["point_spring_seat_left_ahead"],
    ),
    "arm.apart": (
        ("point_arm_axle_left_left", "point_arm_axle_right_left"),
        lambda c: c["point_arm_axle_left_left"] - c["point_arm_axle_right_left"],
    ),
    "arm.below": (
        ("point_arm_axle_left_up",),
        lambda c: c["radius"] - c["point_arm_axle_left_up"],
    ),
    "arm.cheeks": (("arm_plate",), lambda c: c["arm_plate"]),
    "track_bar.from_middle": (
        ("point_track_bar_axle_left",),
        lambda c: np.abs(c["point_track_bar_axle_left"]),
    ),
    "track_bar.above": (
        ("point_track_bar_axle_up",),
        lambda c: c["point_track_bar_axle_up"] - c["radius"],
    ),
    "track_bar.cheeks": (("track_bar_plate",), lambda c: c["track_bar_plate"]),
    "damper.apart": (
        ("point_damper_axle_left_left",),
        lambda c: c["point_damper_axle_left_left"] - c["point_damper_axle_right_left"],
    ),
    "gears.ring": (("ring_diameter",), lambda c: c["ring_diameter"]),
    "ends.shaft_splines": (("spline_teeth",), lambda c: np.round(c["spline_teeth"])),
    "ends.cap": (("cap_across",), lambda c: c["cap_across"]),
    "ends.studs": (("stud_count",), lambda c: np.round(c["stud_count"])),
    "ends.stud_circle": (("stud_circle",), lambda c: c["stud_circle"]),
}
_WORDS: Final[Mapping[str, str]] = {
    "tube.steel": "tube.steel",
    "forging.joints": "kingpin.kind",
    "forging.gussets": "forging.gussets",
    "knuckle.joints": "kingpin.kind",
    "knuckle.driver": "steering.drive_side",
    "angles.shaft_joints": "driveline.joints",
    "spring.on": "held_by.weight_on",
    "track_bar.side": "track_bar.on_axle",
    "gears.lock": "drive.lock",
    "ends.hub": "hub.kind",
}
_SIDES: Final = {  # words that stand in a place's side
    "pinion.side": "pinion_joint",
    "pinion.output_side": "transfer_joint",
    "knuckle.drag_link": "drag_link_wheel",
}

BUILT_IN: Final = "angles.built_in"


def filled(
    rig: Rig, keys: Collection[str], built_in: float | None = None, *, seed: int = SEED
) -> Mapping[str, Filled]:
    """Fill what a rig tells of the fields named; ``built_in`` is the angle that it needs, rad."""
    columns, drawn = geometry_columns(rig), drawn_geometry_columns(rig, 0, DRAWS, seed)
    given = {*rig.given}
    if "tube_outer" in given:
        given |= {*_TUBES}
    out = _numbers(keys, columns, drawn, given)
    for key, path in _WORDS.items():
        word = rig.words.get(path, "")
        if key in keys and word:
            whence: Whence = "assumed" if usual_words().get(path) == word else "the rig"
            out[key] = Filled(key=key, value=word, band=None, whence=whence)
    for key, place in _SIDES.items():
        name = f"point_{place}_left"
        if key in keys and name in columns:
            whence = "the rig" if name in given else "assumed"
            out[key] = Filled(
                key=key, value=_side(float(columns[name][0])), band=None, whence=whence
            )
    if "pinion.height" in keys and "point_pinion_joint_up" in columns:
        whence = "worked out" if {"point_pinion_joint_up", "line_pinion_up"} <= given else "assumed"
        word = "above" if float(_nose(columns)[0]) > 0 else "below"
        out["pinion.height"] = Filled(key="pinion.height", value=word, band=None, whence=whence)
    if "knuckle.tie_rod" in keys:
        ahead = rig.words.get("steering.tie_rod_ahead") == "yes"
        for key in ("knuckle.tie_rod", "knuckle.vehicle_tie_rod"):
            out[key] = Filled(
                key=key,
                value="ahead" if ahead else "behind",
                band=None,
                whence="the rig" if ahead else "assumed",
            )
    if built_in is not None and BUILT_IN in keys:  # hangs on a caster and a pinion to choose
        out[BUILT_IN] = Filled(key=BUILT_IN, value=built_in, band=None, whence="assumed")
    return out


def _numbers(
    keys: Collection[str], columns: Columns, drawn: Columns, given: set[str]
) -> dict[str, Filled]:
    out: dict[str, Filled] = {}
    for key, (of, work) in NUMBERS.items():
        if key not in keys:
            continue
        try:
            value, spread = float(work(columns)[0]), work(drawn)
        except KeyError:  # this layout has no such place
            continue
        low, high = (float(each) for each in np.quantile(spread, (0.05, 0.95)))
        told = {*of} <= given
        whence: Whence = ("the rig" if len(of) == 1 else "worked out") if told else "assumed"
        tolerance = order_fields()[key].tolerance
        if told and tolerance is not None and high - low > ROUGH * 2.0 * tolerance:
            whence = "too rough"
        out[key] = Filled(key=key, value=value, band=(low, high), whence=whence)
    return out


def needed_built_in(rig: Rig) -> float | None:
    """Angle between steering axis and pinion that the rig needs, rad; None at a rear axle."""
    from axlewright.geometry import driveline_in_travel, travel

    if rig.axle != "front":
        return None
    try:
        found = driveline_in_travel(travel(rig, draws=0, cures=False), draws=0)
    except AxlewrightError:  # a rod that cannot reach: travel tells it
        return None
    return found.built_in.wanted if found.built_in is not None else None


def _side(left: float) -> str:
    return "middle" if abs(left) < MIDDLE else "left" if left > 0 else "right"
