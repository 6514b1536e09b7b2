"""The driveline in words: what it is judged for, its rows, and the price of each degree."""

from dataclasses import dataclass
from math import isnan, tau
from typing import Final

import numpy as np

from axlewright.geometry import BuiltIn, Check, Driveline, Turned
from axlewright.views.phrases import plain, quantity
from axlewright.views.wedge_words import wedge_lines, wedge_mind

WHAT: Final = {
    "single_road": "greatest angle of a single joint",
    "ends_apart": "difference of the two joint angles",
    "double_road": "angle of the double joint",
    "double_pinion": "angle at the pinion behind a double joint",
    "needles": "least angle at a cross",
    "torsional": "torsional acceleration of the whole line",
    "inertial_drive": "inertial acceleration, driving",
    "inertial_coast": "inertial acceleration, coasting",
    "bind_case": "greatest angle over the travel, transfer case",
    "bind_pinion": "greatest angle over the travel, pinion",
    "whirl_share": "fastest turn against whirling",
    "slip_out": "slip joint left to draw out, hanging",
    "slip_in": "slip joint left to go in, in bump",
}
MEANS: Final = {
    "single_road": "it shakes the line twice a turn and wears its needles",
    "ends_apart": "the two no longer cancel: a shake twice a turn of the shaft",
    "double_road": "a double joint runs hot and wears at such an angle",
    "double_pinion": "the pinion's own joint shakes, and nothing cancels it",
    "needles": "needles that do not roll dig into the cross",
    "torsional": "the axle end is shaken twice a turn: a drone or a growl that follows speed",
    "inertial_drive": "the shaft's own mass shakes the transfer case when driving",
    "inertial_coast": "the shaft's own mass shakes the pinion when coasting",
    "bind_case": "yokes may touch: turn the shaft by hand with the axle hanging and look",
    "bind_pinion": "yokes may touch: turn the shaft by hand with the axle hanging and look",
    "whirl_share": "the tube may bow out and whirl",
    "slip_out": "the shaft may come apart with the axle hanging",
    "slip_in": "the shaft may bottom and push on the transfer case",
}
STANDING: Final = {"within": "within", "beyond": "BEYOND", "cannot tell": "cannot tell"}


@dataclass(frozen=True, slots=True, kw_only=True)
class DrivelineRow:
    """One value beside its limit, in the reader's units, and what the limit holds for."""

    what: str
    value: str
    limit: str
    standing: str
    scope: str


def degrees(angle: float) -> str:
    """An angle to a tenth of a degree."""
    told = f"{np.degrees(angle):.1f}"
    return f"{'0.0' if told == '-0.0' else told} deg"


def driveline_sentence(found: Driveline, system: str = "metric") -> str:
    """What the shaft is judged for, and how it stands, in one sentence."""
    speed = quantity(found.road, "speed", system, 2)
    if found.turns_on_road:
        use = f"This propeller shaft turns whenever the wheels do; judged for the road, {speed}"
    else:
        use = (
            "With its hubs unlocked this propeller shaft stands still on the road; judged for "
            f"slow use, {speed}"
        )
    beyond = [WHAT[check.what] for check in found.checks if check.standing == "beyond"]
    unsure = [WHAT[check.what] for check in found.checks if check.standing == "cannot tell"]
    if beyond:
        return f"{use}: beyond what is published in {_listed(beyond)}."
    if unsure:
        return f"{use}: cannot tell about {_listed(unsure)}."
    return f"{use}: within what is published."


def driveline_rows(found: Driveline, system: str = "metric") -> list[DrivelineRow]:
    """Every value beside its limit; those beyond first."""
    order = {"beyond": 0, "cannot tell": 1, "within": 2}
    told = sorted(found.checks, key=lambda check: order[check.standing])
    return [_row(check, system) for check in told]


def driveline_lines(found: Driveline, system: str = "metric") -> list[str]:
    """Everything about a driveline, the answer first."""
    lines = [driveline_sentence(found, system), *joint_lines(found, system)]
    for check in found.checks:
        if check.standing == "within":
            continue
        row = _row(check, system)
        word = "Beyond" if check.standing == "beyond" else "Cannot tell"
        lines.append(
            f"{word}: {row.what} {row.value}, published {row.limit} ({row.scope}); "
            f"{MEANS[check.what]}."
        )
    inside = [WHAT[check.what] for check in found.checks if check.standing == "within"]
    if inside:
        lines.append(f"Within: {_listed(inside)}.")
    lines += [*locked_lines(found), *slip_lines(found, system), *whirl_lines(found, system)]
    if found.built_in is not None:
        lines += built_in_lines(found, system)
    lines += [*wedge_lines(found.wedges, system), *wedge_mind(found.wedges)]
    lines.append(rests_on(found))
    return lines


def joint_lines(found: Driveline, system: str = "metric") -> list[str]:
    """The joints at ride, and the line as one joint."""
    del system
    case, pinion = found.line.joints[0]
    double = "double joint" if found.line.double else "joint"
    whole, swing = float(found.line.whole[0]), float(found.line.swing[0])
    lines = [
        (
            f"At ride the {double} at the transfer case stands at {degrees(case)}, the joint at "
            f"the pinion at {degrees(pinion)}; together they shake as one joint of "
            f"{degrees(whole)} would (speed swings {100.0 * swing:.1f} % in a turn)."
        )
    ]
    if not found.in_line:
        lines.append(
            "The yokes stand a quarter turn apart: the two joints add instead of cancelling. Put "
            "them in line before anything else is judged, unless the maker's manual says so."
        )
    return lines


def locked_lines(found: Driveline) -> list[str]:
    """What would hold with unlocking hubs left locked on the road."""
    if found.turns_on_road:
        return []
    beyond = [WHAT[check.what] for check in found.if_locked if check.standing == "beyond"]
    if not beyond:
        return ["Left locked on the road it would not be judged beyond what is published."]
    return [f"Left locked on the road: beyond in {_listed(beyond)}. Unlock the hubs."]


def slip_lines(found: Driveline, system: str = "metric") -> list[str]:
    """What the slip joint does over the travel."""
    inward, out = found.plunge
    stances = "; ".join(
        f"{each.name} {degrees(each.joints[0])} and {degrees(each.joints[1])}"
        for each in found.stances
    )
    drawn, pushed = (quantity(max(way, 0.0), "length", system, 2) for way in (out, inward))
    return [
        f"Over the travel the shaft draws out {drawn} and goes in {pushed}; joints {stances}.",
    ]


def whirl_lines(found: Driveline, system: str = "metric") -> list[str]:
    """Whirling against what the shaft turns at in each gear."""
    tube = found.whirl
    gears = "; ".join(
        f"{plain(float(top[0]) * 60.0 / tau, 2)} in {name}"
        for name, top in zip(tube.names, tube.tops, strict=True)
    )
    return [
        (
            f"The tube would whirl at {plain(float(tube.speed[0]) * 60.0 / tau, 2)} turns a minute "
            f"({quantity(float(tube.road[0]), 'speed', system, 2)}); it turns at most {gears}."
        )
    ]


def built_in_lines(found: Driveline, system: str = "metric") -> list[str]:
    """Caster against pinion: what the housing has, what it needs, and what each degree costs."""
    built = found.built_in
    if built is None:
        return []
    low, high = built.band
    band = "" if isnan(low) else f" ({degrees(low).removesuffix(' deg')} to {degrees(high)})"
    way = "more" if built.forgings > 0.0 else "less"
    aim = (
        "its pinion looking along the shaft, 1 deg below it"
        if found.line.double
        else "its pinion parallel to the transfer case, so that both joints stand alike"
    )
    up = built.pinion_wanted
    looks = f"{degrees(abs(up))} {'up' if up >= 0.0 else 'down'}"
    lines = [
        (
            f"Built in: caster {degrees(built.caster)} and pinion up {degrees(built.pinion)} make "
            f"{degrees(built.present)}, and turning the housing never changes that sum. For "
            f"{degrees(built.caster_wanted)} of caster with {aim} ({looks}), a housing needs "
            f"{degrees(built.wanted)}: end forgings turned {degrees(abs(built.forgings))} for "
            f"{way} caster{band}."
        ),
        _for_pinion(built),
        _for_caster(built),
        _price(built, system),
    ]
    if not found.line.double:
        lines.append(
            f"With a double joint at the transfer case the pinion would look "
            f"{degrees(built.pinion_for_double)} up: a housing of "
            f"{degrees(built.caster_wanted + built.pinion_for_double)}."
        )
    lines.append(
        "A shaft that turns on the road: order the angle, or turn the end forgings, a job for a "
        "jig and a qualified welder."
        if found.turns_on_road
        else "Hubs that unlock: keep the caster, let the joints stand as they do, and unlock the "
        "hubs on the road (common practice, no source)."
    )
    return lines


def rests_on(found: Driveline) -> str:
    """What was measured, and what the limits are worth."""
    count = len(found.measured)
    told = f"{count} of its numbers measured" if count else "none of its numbers measured"
    return (
        f"Driveline: {told}, the rest assumed (memory). Published limits hold for their own "
        "scope; a maker's manual comes first. Decision support, not a certificate."
    )


def price_rows(built: BuiltIn, system: str = "metric") -> list[tuple[str, ...]]:
    """The housing turned by degrees: turned, caster, trail, pinion, both joints, as one joint."""
    return [
        (
            degrees(step.by),
            degrees(step.caster),
            quantity(step.trail, "length", system, 2),
            degrees(step.pinion),
            degrees(step.joints[0]),
            degrees(step.joints[1]),
            degrees(step.whole),
        )
        for step in built.steps
    ]


def _for_pinion(built: BuiltIn) -> str:
    turned = built.for_pinion
    way = "up" if turned.by > 0.0 else "down"
    change = "leaves" if turned.by > 0.0 else "makes"
    return (
        f"Turning the present housing {degrees(abs(turned.by))} pinion {way} puts the pinion "
        f"right and {change} {degrees(turned.caster)} of caster."
    )


def _for_caster(built: BuiltIn) -> str:
    turned = built.for_caster
    way = "up" if turned.by > 0.0 else "down"
    return (
        f"Turning it {degrees(abs(turned.by))} pinion {way} puts the caster right; the pinion's "
        f"joint then stands at {degrees(turned.joints[1])}, and the line shakes as one joint of "
        f"{degrees(turned.whole)}."
    )


def _price(built: BuiltIn, system: str) -> str:
    here, up = _step(built, 0.0), _step(built, float(np.radians(1.0)))
    joint = up.joints[1] - here.joints[1]
    trail = quantity(abs(up.trail - here.trail), "length", system, 2)
    return (
        f"Each degree of pinion up costs a degree of caster ({trail} of trail) and moves the "
        f"pinion's joint by {np.degrees(joint):+.1f} deg."
    )


def _step(built: BuiltIn, by: float) -> Turned:
    return min(built.steps, key=lambda step: abs(step.by - by))


def _row(check: Check, system: str) -> DrivelineRow:
    sign = "at least" if check.limit.kind == "min" else "at most"
    value = _shown(check.value, check.limit.unit, system)
    low, high = check.band
    if not isnan(low) and _shown(low, check.limit.unit, system) != _shown(
        high, check.limit.unit, system
    ):
        ends = [_shown(end, check.limit.unit, system) for end in (low, high)]
        value += f" ({ends[0].partition(' ')[0]} to {ends[1]})"
    return DrivelineRow(
        what=WHAT[check.what],
        value=value,
        limit=f"{sign} {_shown(check.allowed, check.limit.unit, system)}",
        standing=STANDING[check.standing],
        scope=f"{check.limit.scope}; {check.limit.origin.source.title}",
    )


def _shown(value: float, unit: str, system: str) -> str:
    match unit:
        case "rad":
            return degrees(value)
        case "m":
            return quantity(value if abs(value) > 5e-4 else 0.0, "length", system, 2)
        case "1":
            return f"{100.0 * value:.0f} %"
        case _:
            return f"{plain(value if abs(value) > 0.5 else 0.0, 2)} rad/s2"


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
