"""Where rods, springs and stops end while nobody has taped them, by layout, with bands.

They follow from the quantities that the strength of the axle is judged by (arm length, spacing,
track bar, kingpins), so that drawing, strength and travel speak of one axle.
"""

from collections.abc import Callable, Collection, Container
from functools import lru_cache
from typing import Final, TypeAlias

import numpy as np

from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.fields_points import AXES, BY_NAME, POINTS, ROD_LENGTHS
from axlewright.rig.scaling import MEMORY, angled_arms, has_track_bar, is_front, tube_outer

Place: TypeAlias = tuple[Column | float, Column | float, Column | float]
Placed: TypeAlias = Callable[[Columns, Words, float], Place]
SIGNS: Final = {"left": 1.0, "right": -1.0}
# m: half the 90 % band of a place not taped, of one beside its twin, of one settled otherwise
BAND, TWIN, SHARP = 0.03, 0.006, 0.001
GRAVITY = 9.80665
STEP_BY_USE: Final = {  # m: mean height of what passes between the wheels on such ground; memory
    "gravel and farm tracks": 0.03,
    "forest roads": 0.04,
    "rough tracks and corrugation": 0.06,
    "rocks and ledges": 0.10,
    "speed and jumps": 0.05,
}
EYE_RISE, HALF_ARM = 0.06, 0.09  # m: arm's eye above the hubs, and the two bolts of a radius arm


def reach(words: Words) -> float:
    """Way in which the arms reach from the axle to the frame."""
    return -1.0 if is_front(words) else 1.0


def _rods(words: Words) -> float:
    return 1.0 if words.get("steering.tie_rod_ahead") == "yes" else -1.0


def _low(c: Columns, w: Words) -> Column:
    return -(0.5 * tube_outer(c, w) + c["arm_bracket_height"])


def _joint(c: Columns, w: Words, side: str) -> Column:
    """Where a tube meets the centre, from the middle."""
    half = 0.5 * c["track"]
    face = half + c["wheel_offset"] - c["wheel_spacer"]
    outer = np.minimum(face - c["bearing_setback"], half - 0.004)
    if is_front(w):
        outer = _pivot(c)
    return np.asarray(outer - c["forging_length"] - c[f"tube_bare_{side}"])


def _centre(c: Columns, w: Words) -> Column:
    return np.asarray(0.5 * (_joint(c, w, "left") - _joint(c, w, "right")))


def _pivot(c: Columns) -> Column:
    """Kingpin axis at hub height, from the middle."""
    return np.asarray(
        0.5 * c["kingpin_spacing"] - 0.5 * c["kingpin_height"] * np.tan(c["inclination"])
    )


def _arm_axle(c: Columns, w: Words, sign: float) -> Place:
    near = reach(w) * HALF_ARM if w["held_by.arms"] == "radius arms" else 0.0
    return near, sign * 0.5 * c["arm_apart"], _low(c, w)


def _arm_axle_far(c: Columns, w: Words, sign: float) -> Place:
    return -reach(w) * HALF_ARM, sign * 0.5 * c["arm_apart"], _low(c, w)


def _arm_frame(c: Columns, w: Words, sign: float) -> Place:
    length, rise = c["arm_length"], EYE_RISE - _low(c, w)
    inward = (0.12 if w["held_by.arms"] == "radius arms" else 0.0) * length
    run = np.sqrt(np.maximum(length**2 - rise**2 - inward**2, 0.01))
    return reach(w) * run, sign * (0.5 * c["arm_apart"] - inward), EYE_RISE


def _upper_axle(c: Columns, w: Words, sign: float) -> Place:
    if w["held_by.arms"] == "angled arms":
        return 0.0, sign * angled_arms(c)[0], 0.16
    return 0.0, sign * _joint(c, w, "left" if sign > 0 else "right"), 0.14


def _upper_frame(c: Columns, w: Words, sign: float) -> Place:
    ahead, left, up = _upper_axle(c, w, sign)
    if w["held_by.arms"] == "angled arms":
        _, far, run = angled_arms(c)
        return reach(w) * run, sign * far, up + 0.02
    return ahead + reach(w) * 0.8 * c["arm_length"], left, up + 0.02


def _third_frame(c: Columns, w: Words, _: float) -> Place:
    return reach(w) * 0.8 * c["arm_length"], _centre(c, w), 0.18


def _kingpin(half: float) -> Placed:
    def placed(c: Columns, _: Words, sign: float) -> Place:
        up = half * c["kingpin_height"]
        return -up * np.tan(c["caster"]), sign * (_pivot(c) - up * np.tan(c["inclination"])), up

    return placed


def _tie_rod(c: Columns, w: Words, sign: float) -> Place:
    arm, pivot = c["steering_arm"], _pivot(c)
    lean = arm * pivot / c["wheelbase"]
    return _rods(w) * arm, sign * (pivot + _rods(w) * lean), -0.34 * c["kingpin_height"]


def _far(w: Words) -> float:
    return 1.0 if w.get("steering.drive_side") == "right" else -1.0


def _drag_wheel(c: Columns, w: Words, _: float) -> Place:
    far = _far(w)
    ahead, left, up = _tie_rod(c, w, far)
    if w.get("steering.drag_link_on") == "tie rod":
        return ahead, left - far * 0.15, up
    return ahead, left - far * 0.014, up + 0.052


def _pitman(c: Columns, w: Words, _: float) -> Place:
    ahead, left, up = _drag_wheel(c, w, 0.0)
    run = np.sqrt(np.maximum(c["drag_link_length"] ** 2 - 0.07**2 - 0.06**2, 0.01))
    return ahead + 0.07 * _rods(w), left - _far(w) * run, up + 0.06


def _pitman_shaft(c: Columns, w: Words, _: float) -> Place:
    ahead, left, up = _pitman(c, w, 0.0)
    return ahead - 0.15 * _rods(w), left, up + 0.03


def _bar_axle(c: Columns, w: Words, _: float) -> Place:
    sign = SIGNS[w["track_bar.on_axle"]]
    beside = -_rods(w) * (0.5 * tube_outer(c, w) + 0.055)
    high = 0.5 * tube_outer(c, w) + c["track_bar_bracket_height"]
    return beside, sign * 0.5 * c["track_bar_span"], high


def _bar_frame(c: Columns, w: Words, _: float) -> Place:
    ahead, left, up = _bar_axle(c, w, 0.0)
    span, drop = c["track_bar_span"], c["track_bar_drop"]
    run = np.sqrt(np.maximum(span**2 - drop**2, 0.01))
    return ahead, left - SIGNS[w["track_bar.on_axle"]] * run, up + drop


def _seat(c: Columns, w: Words, sign: float) -> Place:
    over = w["held_by.weight_on"].startswith("coil-over")
    ahead = -c["damper_bracket_behind"] if over else 0.0
    return ahead, sign * 0.5 * c["spring_spacing"], 0.5 * tube_outer(c, w) + 0.016


def _spring_top(c: Columns, w: Words, sign: float) -> Place:
    ahead, left, up = _seat(c, w, sign)
    return ahead, left, up + 0.33


def _damper(up: float, inward: float) -> Placed:
    def placed(c: Columns, w: Words, sign: float) -> Place:
        return -0.06 * reach(w), sign * (0.47 * c["spring_spacing"] - inward), up

    return placed


def _leaf_pad(c: Columns, w: Words, sign: float) -> Place:
    return 0.0, sign * 0.5 * c["spring_spacing"], 0.5 * tube_outer(c, w) + 0.05


def _leaf_eye(c: Columns, w: Words, sign: float) -> Place:
    ahead, left, up = _leaf_pad(c, w, sign)
    return ahead + 0.58, left, up + 0.05


def _nose(c: Columns, w: Words) -> Column:
    return np.asarray(reach(w) * (0.5 * c["ring_diameter"] + 0.2))


def _pinion(c: Columns, w: Words, _: float) -> Place:
    return _nose(c, w), _centre(c, w), 0.0


def _transfer(c: Columns, w: Words, _: float) -> Place:
    return _nose(c, w) + reach(w) * 0.3 * c["wheelbase"], _centre(c, w), 0.21


PLACED: Final[dict[str, Placed]] = {
    "arm_frame": _arm_frame,
    "arm_axle": _arm_axle,
    "arm_axle_far": _arm_axle_far,
    "upper_arm_frame": _upper_frame,
    "upper_arm_axle": _upper_axle,
    "leaf_eye": _leaf_eye,
    "leaf_pad": _leaf_pad,
    "kingpin_upper": _kingpin(0.5),
    "kingpin_lower": _kingpin(-0.5),
    "tie_rod_end": _tie_rod,
    "spring_seat": _seat,
    "spring_top": _spring_top,
    "damper_axle": _damper(0.0, 0.0),
    "damper_frame": _damper(0.5, 0.03),
    "third_arm_frame": _third_frame,
    "third_arm_axle": lambda c, w, _: (0.0, _centre(c, w), 0.16),
    "track_bar_frame": _bar_frame,
    "track_bar_axle": _bar_axle,
    "drag_link_wheel": _drag_wheel,
    "drag_link_pitman": _pitman,
    "pitman_shaft": _pitman_shaft,
    "pinion_joint": _pinion,
    "transfer_joint": _transfer,
}
ONE_SIDED: Final = frozenset({"upper_arm_frame", "upper_arm_axle"})  # at the tubes' inner ends
SETTLED: Final = frozenset({"kingpin_upper", "kingpin_lower"})  # caster and spacing have the doubt
STEERED: Final = frozenset(point.name for point in POINTS if point.axle == "front")
HELD_BY: Final = {
    "four arms": {"arm_frame", "arm_axle", "upper_arm_frame", "upper_arm_axle"},
    "angled arms": {"arm_frame", "arm_axle", "upper_arm_frame", "upper_arm_axle"},
    "three arms": {"arm_frame", "arm_axle", "third_arm_frame", "third_arm_axle"},
    "radius arms": {"arm_frame", "arm_axle", "arm_axle_far"},
    "leaves": {"leaf_eye", "leaf_pad"},
}
OF_SOME: Final = frozenset().union(*HELD_BY.values())


def has_place(name: str, words: Words) -> bool:
    """Whether an axle of these words has a place of this name."""
    arms = words["held_by.arms"]
    if name in STEERED and not is_front(words):
        return False
    if name.startswith("track_bar"):
        return has_track_bar(words)
    if name.startswith("spring_") and arms == "leaves":
        return False
    return name not in OF_SOME or name in HELD_BY[arms]


def mirrored(given: Container[str]) -> frozenset[str]:
    """Places that follow their twin, because only the twin was taped."""
    return frozenset(
        f"point_{point.name}_{side}_{axis}"
        for point in POINTS
        if point.sided
        for side, twin in (("left", "right"), ("right", "left"))
        for axis in AXES
        if f"point_{point.name}_{twin}_{axis}" in given
        and f"point_{point.name}_{side}_{axis}" not in given
    )


def point_assumptions(
    given: Container[str], only: Collection[str] | None = None
) -> tuple[Assumption, ...]:
    """Assumptions of what the second hour measures, for what was given; ``only`` some of it."""
    if only is not None and not any(name.startswith("point_") for name in only):
        return tuple(item for item in TRAVEL if item.quantity in only)
    return _made(mirrored(given), None if only is None else frozenset(only))


@lru_cache(maxsize=32)
def _made(follow: frozenset[str], only: frozenset[str] | None) -> tuple[Assumption, ...]:
    made = [
        _coordinate(name, side, axis, follow)
        for name in PLACED
        for side in (("left", "right") if BY_NAME[name].sided else ("",))
        for axis in range(3)
        if only is None or _quantity(name, side, axis) in only
    ]
    return (*made, *(item for item in TRAVEL if only is None or item.quantity in only))


def _quantity(name: str, side: str, axis: int) -> str:
    return f"point_{name}_{side}_{AXES[axis]}".replace("__", "_")


def _coordinate(name: str, side: str, axis: int, follow: Container[str]) -> Assumption:
    quantity = _quantity(name, side, axis)
    sign, placed = SIGNS.get(side, 1.0), PLACED[name]
    twin = quantity.replace("_left_", "_right_") if side == "left" else ""
    twin = quantity.replace("_right_", "_left_", 1) if side == "right" else twin

    def alone(c: Columns, w: Words) -> Column:
        value = placed(c, w, sign)[axis]
        return np.asarray(value + (c["radius"] if axis == 2 else 0.0))

    def beside(c: Columns, _: Words) -> Column:
        return np.asarray(-c[twin] if axis == 1 else c[twin])

    follows = quantity in follow or (side == "right" and name not in ONE_SIDED)
    words = f"{BY_NAME[name].what}{f', {side}' if side else ''}, {AXES[axis]}"
    return Assumption(
        quantity=quantity,
        label=words.removeprefix("the "),
        kind="length",
        centre=beside if follows else alone,
        spread=SHARP if name in SETTLED else TWIN if follows else BAND,
        family="normal",
        source="as its twin" if follows else f"usual for this layout, {MEMORY}",
        applies=lambda w: has_place(name, w),
    )


def _long(c: Columns, high: str, low: str) -> Column:
    ends = [
        np.stack([c[f"point_{name}_left_{axis}"] for axis in AXES], axis=-1) for name in (high, low)
    ]
    return np.asarray(np.linalg.norm(ends[0] - ends[1], axis=-1))


def _damper_length(c: Columns) -> Column:
    return _long(c, "damper_frame", "damper_axle")


def _spring_free(c: Columns, _: Words) -> Column:
    carried = 0.5 * (c["axle_weight"] - GRAVITY * c["axle_mass"])
    return np.asarray(_long(c, "spring_top", "spring_seat") + carried / c["spring_rate"])


def _plain(
    quantity: str,
    label: str,
    centre: float | Callable[[Columns, Words], Column | float],
    spread: float,
    **more: object,
) -> Assumption:
    said: dict[str, object] = {"kind": "length", "family": "normal", "source": MEMORY, **more}
    return Assumption(quantity=quantity, label=label, centre=centre, spread=spread, **said)  # type: ignore[arg-type]


TRAVEL: Final[tuple[Assumption, ...]] = (
    _plain("travel_bump_gap", "gap to the bump stop at ride", 0.09, 1.5, family="lognormal"),
    _plain("travel_damper_longest", "damper pulled out",
           lambda c, w: _damper_length(c) + 0.12, 0.04),
    _plain("travel_damper_shortest", "damper pushed in",
           lambda c, w: _damper_length(c) - 0.13, 0.04),
    _plain(
        "travel_spring_free", "spring with nothing on it", _spring_free, 0.03,
        applies=lambda w: w["held_by.arms"] != "leaves",
    ),
    _plain(
        "travel_spring_pad", "length of the leaf spring's pad", 0.127, 1.15, family="lognormal",
        applies=lambda w: w["held_by.arms"] == "leaves",
    ),
    _plain("travel_lift", "lift since the places were taped", 0.0, 0.002,
           source="none was told of"),
    _plain("travel_clamped_at", "axle's height when the bolts were tightened", 0.0, 0.01),
    _plain("travel_crossing", "one wheel up and the other down, where they cross", 0.08, 1.5,
           family="lognormal"),
    _plain(
        "travel_step", "rocks and steps that pass between the wheels, mean height",
        lambda c, w: STEP_BY_USE.get(w["use.hardest"], 0.06), 1.5, family="lognormal",
    ),
    _plain(
        "travel_forgings_turned", "end forgings turned", 0.0, 0.003, kind="angle",
        source="none was told of", applies=is_front,
    ),
    _plain("travel_arm_swing", "swing that an arm's bushing allows", 0.33, 1.35,
           kind="angle", family="lognormal"),
    _plain("travel_rod_swing", "swing that a rod's joint allows", 0.44, 1.25,
           kind="angle", family="lognormal"),
    _plain("travel_bush_twist", "twist of one bushing, N m for each rad", 460.0, 2.0,
           kind="torque", family="lognormal"),
    _plain("travel_bumper_ahead", "bumper's lowest edge beyond the axle", 0.72, 0.2),
    _plain("travel_bumper_up", "height of that edge", lambda c, w: c["radius"] + 0.16, 0.12),
    _plain("travel_belly_up", "height of the belly", lambda c, w: c["radius"] - 0.06, 0.08),
    _plain("travel_road_pressure", "tyre pressure on the road", 2.4e5, 1.2,
           kind="pressure", family="lognormal"),
    _plain("travel_trail_pressure", "tyre pressure on the trail", 1.2e5, 1.4,
           kind="pressure", family="lognormal"),
    *(
        _plain(f"longer_{name}", f"{what} longer than what fits", 0.0, 0.002,
               source="a careful builder's, memory",
               applies=has_track_bar if name == "track_bar" else (lambda w: True))
        for name, what in ROD_LENGTHS
    ),
)  # fmt: skip
