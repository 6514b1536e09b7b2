"""Lengths that follow from taped places, where nobody measured them by themselves.

Angles do not: over so short a distance a tape knows caster no better than it is assumed. They go
by the names under which they would be given or assumed, so nothing is counted twice.
"""

from collections.abc import Callable, Mapping
from math import dist, hypot, pi
from typing import Final, TypeAlias

from axlewright.rig.fields_points import AXES
from axlewright.rig.given import Given

Spot: TypeAlias = tuple[float, float, float]
Places: TypeAlias = Callable[[str], tuple[Spot, ...]]
Settle: TypeAlias = Callable[[str, float, tuple[str, ...]], None]
TAPED: Final = "its taped ends"  # how such a length was given
LEAST: Final = 0.008  # m: a bracket that would be lower than this was not meant


def taped_lengths(
    given: Mapping[str, Given],
    words: Mapping[str, str],
    fitted: Mapping[str, Given] | None = None,
) -> dict[str, Given]:
    """Quantities that the taped places settle and that were not given, by name.

    ``fitted`` is what was given of the rig before changes: heights over the ground were taped on
    its tyres, and other tyres carry axle and brackets up or down together.
    """
    if not any(name.startswith("point_") for name in given):
        return {}
    radius, half = _radius(given if fitted is None else fitted), _half_tube(given)
    found: dict[str, Given] = {}

    def places(name: str) -> tuple[Spot, ...]:
        """A place from the axle's middle; both sides mirrored to the left where it has two."""
        out = []
        for side, sign in (("", 1.0), ("_left", 1.0), ("_right", -1.0)):
            stem = f"point_{name}{side}"
            if f"{stem}_up" in given:
                ahead, left, up = (given[f"{stem}_{axis}"].value for axis in AXES)
                out.append((ahead, sign * left, up - radius))
        return tuple(out)

    doubts: dict[str, float] = {}
    for key, each in given.items():
        if key.startswith("point_"):
            stem = key.rpartition("_")[0]
            doubts[stem] = max(doubts.get(stem, 0.0), each.doubt)

    def doubt(name: str) -> float:
        return max(
            (of for stem, of in doubts.items() if stem.startswith(f"point_{name}")), default=0.0
        )

    def settle(quantity: str, value: float, ends: tuple[str, ...]) -> None:
        if quantity in given:
            return
        found[quantity] = Given(
            quantity=quantity,
            path=", ".join(f"points.{end}" for end in ends),
            value=value,
            doubt=hypot(*(doubt(end) for end in ends)),
            about=False,
            text=TAPED,
            kind="length",
        )

    _arms(places, settle, words, half)
    _bar(places, settle, half)
    if words["rig.axle"] == "front":
        _kingpins(places, settle)
    return found


def _arms(places: Places, settle: Settle, words: Mapping[str, str], half: float | None) -> None:
    near, far = places("arm_axle"), places("arm_frame")
    if not near or words["held_by.arms"] == "leaves":
        return
    if words["held_by.arms"] == "radius arms":
        other = places("arm_axle_far")
        if not other:
            return
        near = tuple(_between(one, two) for one, two in zip(near, other, strict=False))
    settle("arm_apart", 2.0 * _mean([spot[1] for spot in near]), ("arm_axle",))
    if len(near) == len(far):
        long = _mean([dist(*pair) for pair in zip(near, far, strict=True)])
        settle("arm_length", long, ("arm_axle", "arm_frame"))
    hangs = -_mean([spot[2] for spot in near]) - (half or 0.0)
    if half is not None and hangs > LEAST:
        settle("arm_bracket_height", hangs, ("arm_axle",))


def _bar(places: Places, settle: Settle, half: float | None) -> None:
    near, far = places("track_bar_axle"), places("track_bar_frame")
    if near and far:
        settle("track_bar_span", dist(near[0], far[0]), ("track_bar_axle", "track_bar_frame"))
        settle("track_bar_drop", far[0][2] - near[0][2], ("track_bar_axle", "track_bar_frame"))
    if near and half is not None and near[0][2] - half > LEAST:
        settle("track_bar_bracket_height", near[0][2] - half, ("track_bar_axle",))


def _kingpins(places: Places, settle: Settle) -> None:
    upper, lower = places("kingpin_upper"), places("kingpin_lower")
    ends = ("kingpin_upper", "kingpin_lower")
    if lower:
        settle("kingpin_spacing", 2.0 * _mean([spot[1] for spot in lower]), ("kingpin_lower",))
    if upper and len(upper) == len(lower):
        high = _mean([one[2] - two[2] for one, two in zip(upper, lower, strict=True)])
        settle("kingpin_height", high, ends)
    tie = places("tie_rod_end")
    if tie:
        settle("steering_arm", _mean([abs(spot[0]) for spot in tie]), ("tie_rod_end",))
    wheel, arm = places("drag_link_wheel"), places("drag_link_pitman")
    if wheel and arm:
        long = dist(wheel[0], arm[0])
        settle("drag_link_length", long, ("drag_link_wheel", "drag_link_pitman"))


def _mean(values: list[float]) -> float:
    return sum(values) / len(values)


def _between(one: Spot, two: Spot) -> Spot:
    return (0.5 * (one[0] + two[0]), 0.5 * (one[1] + two[1]), 0.5 * (one[2] + two[2]))


def _radius(given: Mapping[str, Given]) -> float:
    return 0.5 * (given["hub_height_left"].value + given["hub_height_right"].value)


def _half_tube(given: Mapping[str, Given]) -> float | None:
    if "tube_outer" in given:
        return 0.5 * given["tube_outer"].value
    girths = [given[f"tube_girth_{side}"].value for side in ("left", "right")
              if f"tube_girth_{side}" in given]  # fmt: skip
    return 0.5 * _mean(girths) / pi if girths else None
