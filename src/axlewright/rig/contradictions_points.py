"""Places that cannot all be true: swapped sides, ends upside down, lengths that do not agree."""

from collections.abc import Callable, Iterator, Mapping
from math import dist
from typing import TypeAlias

from axlewright.rig.clash import Clash
from axlewright.rig.fields_points import BY_NAME, POINTS

Say: TypeAlias = Callable[[float], str]  # a length in the reader's own unit
Spot: TypeAlias = tuple[float, float, float]
SLACK = 0.025  # m: two tapes of one thing may differ by so much
NEAREST = 0.1  # m: no rod is shorter
UNLIKE = 0.12  # m: how far twins may stand apart from mirrored
CROSS = frozenset({"upper_arm_axle", "upper_arm_frame"})  # a triangle's ends may meet in the middle
RODS = (
    ("arm", "left"),
    ("arm", "right"),
    ("upper_arm", "left"),
    ("upper_arm", "right"),
    ("third_arm", ""),
    ("track_bar", ""),
)
UPRIGHT = (
    ("kingpin_upper", "kingpin_lower"),
    ("spring_top", "spring_seat"),
    ("damper_frame", "damper_axle"),
)
AGAIN = "tape it again: ahead or behind, left or right of the middle, up from the floor"


def place_clashes(
    words: Mapping[str, str], value: Mapping[str, float], say: Say
) -> Iterator[Clash]:
    """Every contradiction among the places that were taped."""
    spots = _spots(value)
    if not spots:
        return
    yield from _sides(spots, say)
    yield from _heights(spots, say)
    yield from _rods(spots, value, say)
    yield from _said(spots, words, say)


def _spots(value: Mapping[str, float]) -> dict[str, Spot]:
    found: dict[str, Spot] = {}
    for point in POINTS:
        for side in ("left", "right") if point.sided else ("",):
            stem = f"point_{point.name}_{side}".rstrip("_")
            if f"{stem}_up" in value:
                found[f"{point.name}.{side}".rstrip(".")] = (
                    value[f"{stem}_ahead"],
                    value[f"{stem}_left"],
                    value[f"{stem}_up"],
                )
    return found


def _name(path: str) -> str:
    name, _, side = path.partition(".")
    return f"{BY_NAME[name].what}{f', {side} side,' if side else ''}"


def _sides(spots: Mapping[str, Spot], say: Say) -> Iterator[Clash]:
    for path, (_, left, _) in spots.items():
        name, _, side = path.partition(".")
        if not side:
            continue
        outward = left if side == "left" else -left
        if outward < (-0.05 if name in CROSS else 0.0):
            other = "right" if side == "left" else "left"
            yield Clash(
                f"points.{path}",
                f"{_name(path)} stands {say(-outward)} {other} of the middle, across the centre "
                "plane",
                "are left and right swapped? Looking forward, left is the vehicle's left",
            )
        twin = spots.get(f"{name}.right") if side == "left" else None
        if twin is not None and name not in CROSS and twin[1] <= 0.0 <= left:
            apart = dist(spots[path], (twin[0], -twin[1], twin[2]))
            if apart > UNLIKE:
                yield Clash(
                    f"points.{name}.right",
                    f"mirrored, the two sides of {BY_NAME[name].what} are {say(apart)} apart",
                    AGAIN,
                )


def _heights(spots: Mapping[str, Spot], say: Say) -> Iterator[Clash]:
    for high, low in UPRIGHT:
        for side in ("left", "right"):
            top, foot = spots.get(f"{high}.{side}"), spots.get(f"{low}.{side}")
            if top is not None and foot is not None and top[2] - foot[2] < 0.05:
                yield Clash(
                    f"points.{high}.{side}",
                    f"{_name(f'{high}.{side}')} is {say(top[2])} up and "
                    f"{BY_NAME[low].what} {say(foot[2])}: the upper one must be the higher",
                    "are upper and lower swapped?",
                )


def _rods(spots: Mapping[str, Spot], value: Mapping[str, float], say: Say) -> Iterator[Clash]:
    for stem, side in RODS:
        end = f".{side}" if side else ""
        frame, axle = spots.get(f"{stem}_frame{end}"), spots.get(f"{stem}_axle{end}")
        if frame is None or axle is None:
            continue
        long = dist(frame, axle)
        if long < NEAREST:
            yield Clash(
                f"points.{stem}_frame{end}",
                f"both ends of this rod are {say(long)} apart",
                AGAIN,
            )
        if stem != "track_bar" and abs(frame[0]) < abs(axle[0]):
            yield Clash(
                f"points.{stem}_frame{end}",
                f"its end at the axle is {say(abs(axle[0]))} from the line below the wheel "
                f"centres, that at the frame only {say(abs(frame[0]))}",
                "are frame and axle swapped? The end at the axle is the nearer one to that line",
            )
        told = {"track_bar": "track_bar_span", "arm": "arm_length"}.get(stem)
        radius_arm = stem == "arm" and f"arm_axle_far{end}" in spots
        if (
            told is not None
            and told in value
            and not radius_arm
            and abs(value[told] - long) > SLACK
        ):
            yield Clash(
                f"points.{stem}_frame{end}",
                f"its ends are {say(long)} apart, but it was given as {say(value[told])} long",
                "measure eye to eye again, or tape both ends again",
            )


def _said(spots: Mapping[str, Spot], words: Mapping[str, str], say: Say) -> Iterator[Clash]:
    ahead = words.get("steering.tie_rod_ahead", "no") == "yes"
    for side in ("left", "right"):
        tie = spots.get(f"tie_rod_end.{side}")
        if tie is not None and (tie[0] > 0.0) != ahead:
            where = "ahead of" if tie[0] > 0.0 else "behind"
            yield Clash(
                f"points.tie_rod_end.{side}",
                f"the tie rod's end is {say(abs(tie[0]))} {where} the axle, but the tie rod is "
                f"told to be {'ahead' if ahead else 'behind'}",
                f'say steering.tie_rod_ahead = "{"no" if ahead else "yes"}", or tape it again',
            )
            break
    bar = spots.get("track_bar_axle")
    on_axle = words.get("track_bar.on_axle", "right")
    if bar is not None and (bar[1] > 0.0) != (on_axle == "left"):
        yield Clash(
            "points.track_bar_axle",
            f"it is {say(abs(bar[1]))} {'left' if bar[1] > 0 else 'right'} of the middle, but the "
            f"track bar is told to be bolted to the axle on the {on_axle}",
            "say so in track_bar.on_axle, or tape it again",
        )
