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
    system: str = "metric"

    def long(self, length: float, *, fine: bool = False) -> str:
        """A length as it is told to this person: whole millimetres, or inches."""
        if self.system == "us":
            return units.show(length, "length", "us")
        return f"{length * 1e3:.{int(fine)}f} mm"

    def span(self, low: float, high: float) -> str:
        """Two lengths as a span, the unit once."""
        first, _, unit = self.long(low).rpartition(" ")
        return f"{first} to {self.long(high).removesuffix(unit).strip()} {unit}"

    def about(self, value: float, kind: str) -> str:
        """A computed value to three digits."""
        return units.show(float(f"{value:.3g}"), kind, self.system, 3)


def lever(track: Metre, springs: Metre) -> Metre:
    """Lever from a spring to the tyre's centre, m."""
    return np.asarray(0.5 * (np.asarray(track) - np.asarray(springs)))


def outboard_share(arm: Metre, step: Metre) -> Ratio:
    """Share by which bending grows when the tyre moves outboard, same load: step over lever."""
    return np.asarray(np.asarray(step) / np.asarray(arm))


def told_lines(
    path: str,
    values: Mapping[str, float],
    words: Mapping[str, str],
    diameter: float = 0.0,
    system: str = "metric",
) -> Lines:
    """Everything that one answer tells beside those already there.

    Numbers are in SI by quantity, words by path; the tyre's diameter in m is 0 while not given.
    """
    tell = _TELLERS.get(path)
    known = _Known(values=values, words=words, diameter=diameter, system=system)
    return tell(known) if tell else []


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
    lines = [f"Loaded radius: {known.long(radius)}, the lever of every pull on the shafts."]
    if known.diameter:
        gives = 0.5 * known.diameter - radius
        if gives > 0.0:
            share = gives / (0.5 * known.diameter)
            part = f"{100.0 * share:.0f} % of its radius"
            lines.append(f"The tyre gives by {known.long(gives)} ({part}) under load.")
    near, far = radius - BELOW[1], radius - BELOW[0]
    lines.append(
        f"Ground under a typical centre: {known.span(max(near, 0.0), max(far, 0.0))} "
        f"(a centre reaches {known.span(*BELOW)} below the hubs: from memory)."
    )
    return lines


def _track(known: _Known) -> Lines:
    track = known.values.get("track")
    if track is None:
        return []
    return [f"Each tyre's centre stands {known.long(0.5 * track)} from the middle of the vehicle."]


def _springs(known: _Known) -> Lines:
    track, springs = known.values.get("track"), known.values.get("spring_spacing")
    if track is None or springs is None or track <= springs:
        return []
    arm = float(lever(track, springs))
    more = float(outboard_share(arm, STEP))
    return [
        f"From spring to tyre centre it is {known.long(arm)}: the lever that bends the tube.",
        f"Each 25 mm (1 in) further outboard would add {100.0 * more:.1f} % of bending.",
    ]


def _girth(known: _Known) -> Lines:
    across = [
        f"{side} {known.long(known.values[f'tube_girth_{side}'] / pi, fine=True)}"
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
        bare, whole, other, ends = map(known.long, (left + right, track, rest, ENDS))
        widest = known.long(max(rest - ENDS, 0.0))
        lines += [
            f"Bare tube takes {bare} of {whole}; the rest is {other}.",
            f"Ends and hubs take {ends} or more (memory): {widest} at most for the centre.",
        ]
    if abs(left - right) > 0.02:
        longer = "left" if left > right else "right"
        other = "right" if longer == "left" else "left"
        by = known.long(abs(left - right))
        lines.append(f"The {longer} tube is the longer by {by}: the centre sits to the {other}.")
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
    stands = "in the plane of" if abs(outside) < 5e-4 else f"{known.long(abs(outside))} {where}"
    span = f"{known.span(low, high)}; the bearing's place is assumed"
    about = known.long(outside + middle)
    return [
        f"The tyre's centre stands {stands} the hub's face.",
        f"Against the bearing: about {about} outboard of its middle ({span}). That lever rocks it.",
    ]


def _weight(known: _Known) -> Lines:
    weight = known.values.get("axle_weight")
    if weight is None:
        return []
    one = known.about(0.5 * weight, "weight")
    track, springs = known.values.get("track"), known.values.get("spring_spacing")
    if track is None or springs is None or track <= springs:
        return [f"Each wheel carries about {one}."]
    moment = 0.5 * weight * float(lever(track, springs))
    bends = known.about(moment, "torque")
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
    out = units.show(far, "distance", known.system, 3)
    return [f"{out} out, what can be mended beside the track counts."]


def _both(length: float) -> str:
    return f"{length * 1e3:.0f} mm ({units.show(length, 'length', 'us')})"


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
