"""What each answer already tells, as it comes in."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import pi
from typing import Final, TypeAlias

import numpy as np

from axlewright import units
from axlewright.physics import steering
from axlewright.physics.quantities import Metre, Ratio
from axlewright.rig import ASSUMPTIONS

Lines: TypeAlias = list[str]

EIGHTH: Final = units.known("length")["in"] / 8.0
STEP: Final = units.parse("25 mm", "length").value
BELOW: Final = (0.12, 0.16)  # how far a centre reaches below the hubs' line, m; memory
ENDS: Final = 0.26  # both end forgings and hubs out to the tyres' centres, at least, m; memory


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """What is known so far."""

    values: Mapping[str, float]
    words: Mapping[str, str]
    diameter: float


def lever(track: Metre, springs: Metre) -> Metre:
    """Lever from a spring to the tyre's centre, m."""
    return np.asarray(0.5 * (np.asarray(track) - np.asarray(springs)))


def outboard_share(arm: Metre, step: Metre) -> Ratio:
    """Share by which bending grows when the tyre moves outboard, same load: step over lever."""
    return np.asarray(np.asarray(step) / np.asarray(arm))


def told_lines(
    path: str, values: Mapping[str, float], words: Mapping[str, str], diameter: float = 0.0
) -> Lines:
    """Everything that one answer tells beside those already there.

    Numbers are in SI by quantity, words by path; the tyre's diameter in m is 0 while not given.
    """
    tell = _TELLERS.get(path)
    return tell(_Known(values=values, words=words, diameter=diameter)) if tell else []


def _tyre(known: _Known) -> Lines:
    angle = float(steering.toe_angle(EIGHTH, known.diameter))
    return [
        f"The tyre is {_both(known.diameter)} high, new and unloaded.",
        f"1/8 in (3 mm) of toe on it is {units.show(angle, 'angle', 'deg', 3)}.",
    ]


def _hubs(known: _Known) -> Lines:
    left, right = known.values.get("hub_height_left"), known.values.get("hub_height_right")
    if left is None or right is None:
        return []
    radius = 0.5 * (left + right)
    lines = [f"Loaded radius: {_mm(radius)}, the lever of every pull on the shafts."]
    if known.diameter:
        gives = 0.5 * known.diameter - radius
        if gives > 0.0:
            share = gives / (0.5 * known.diameter)
            lines.append(
                f"The tyre gives by {_mm(gives)} ({100.0 * share:.0f} % of its radius) under load."
            )
    near, far = radius - BELOW[1], radius - BELOW[0]
    lines.append(
        f"Ground under a typical centre: {max(near, 0.0) * 1e3:.0f} to {_mm(max(far, 0.0))} "
        "(a centre reaches 120 to 160 mm below the hubs: from memory)."
    )
    return lines


def _track(known: _Known) -> Lines:
    track = known.values.get("track")
    if track is None:
        return []
    return [f"Each tyre's centre stands {_mm(0.5 * track)} from the middle of the vehicle."]


def _springs(known: _Known) -> Lines:
    track, springs = known.values.get("track"), known.values.get("spring_spacing")
    if track is None or springs is None or track <= springs:
        return []
    arm = float(lever(track, springs))
    more = float(outboard_share(arm, STEP))
    return [
        f"From spring to tyre centre it is {_mm(arm)}: the lever that bends the tube.",
        f"Each 25 mm (1 in) further outboard would add {100.0 * more:.1f} % of bending.",
    ]


def _girth(known: _Known) -> Lines:
    across = [
        f"{side} {known.values[f'tube_girth_{side}'] / pi * 1e3:.1f} mm"
        for side in ("left", "right")
        if f"tube_girth_{side}" in known.values
    ]
    return [f"Tube across, the girth over pi: {', '.join(across)}."] if across else []


def _bare(known: _Known) -> Lines:
    left, right = known.values.get("tube_bare_left"), known.values.get("tube_bare_right")
    track = known.values.get("track")
    if left is None or right is None:
        return []
    lines = []
    if track is not None:
        rest = track - left - right
        widest = _mm(max(rest - ENDS, 0.0))
        lines += [
            f"Bare tube takes {_mm(left + right)} of {_mm(track)}; the rest is {_mm(rest)}.",
            f"Ends and hubs take {_mm(ENDS)} or more (memory): {widest} at most for the centre.",
        ]
    if abs(left - right) > 0.02:
        longer = "left" if left > right else "right"
        lines.append(
            f"The {longer} tube is the longer by {_mm(abs(left - right))}: the centre sits to the "
            f"{'right' if longer == 'left' else 'left'}."
        )
    return lines


def _offset(known: _Known) -> Lines:
    offset, spacer = known.values.get("wheel_offset"), known.values.get("wheel_spacer")
    if offset is None or spacer is None:
        return []
    outside = spacer - offset
    setback = next(item for item in ASSUMPTIONS if item.quantity == "bearing_setback")
    middle = float(setback.middle({}, {}))
    low, high = (outside + end for end in setback.band(middle))
    where = "outside" if outside >= 0.0 else "inside"
    stands = "in the plane of" if abs(outside) < 5e-4 else f"{_mm(abs(outside))} {where}"
    span = f"{low * 1e3:.0f} to {_mm(high)}; the bearing's place is assumed"
    about = _mm(outside + middle)
    return [
        f"The tyre's centre stands {stands} the hub's face.",
        f"Against the bearing: about {about} outboard of its middle ({span}). That lever rocks it.",
    ]


def _weight(known: _Known) -> Lines:
    weight = known.values.get("axle_weight")
    if weight is None:
        return []
    one = units.show(0.5 * weight, "weight")
    track, springs = known.values.get("track"), known.values.get("spring_spacing")
    if track is None or springs is None or track <= springs:
        return [f"Each wheel carries about {one}."]
    moment = 0.5 * weight * float(lever(track, springs))
    bends = units.show(moment, "torque")
    return [f"Each wheel carries about {one}; standing, that bends the tube with {bends}."]


def _lock(known: _Known) -> Lines:
    if known.words.get("drive.lock", "").startswith("locks"):
        return ["Locked, one wheel wedged: that shaft can get nearly all of this axle's pull."]
    if known.words.get("drive.lock") == "limited slip":
        return ["One shaft gets more than its half, but not all of this axle's pull."]
    return ["Each shaft gets half; the wheel with less grip limits both."]


def _from_help(known: _Known) -> Lines:
    far = known.values.get("from_help")
    if far is None:
        return []
    return [f"{units.show(far, 'distance')} out, what can be mended beside the track counts."]


def _mm(length: float) -> str:
    return f"{length * 1e3:.0f} mm"


def _both(length: float) -> str:
    return f"{_mm(length)} ({units.show(length, 'length', 'us')})"


_TELLERS: Final[Mapping[str, Callable[[_Known], Lines]]] = {
    "tyre.sidewall": _tyre,
    "hub_height.left": _hubs,
    "hub_height.right": _hubs,
    "track.tyres": _track,
    "track.springs": _springs,
    "tube.girth.left": _girth,
    "tube.girth.right": _girth,
    "tube.bare.left": _bare,
    "tube.bare.right": _bare,
    "wheel.offset": _offset,
    "wheel.spacer": _offset,
    "weight.axle": _weight,
    "drive.lock": _lock,
    "use.from_help": _from_help,
}
