"""How much of a steering wheel off centre a bowed rod explains, in words; what remains, and where.

The file to take along says the same, word for word, out of its own script.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite, pi
from typing import Any, Final, Literal, TypeAlias

from axlewright import units
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.physics import steering
from axlewright.views.take_rods import RATIO, READING, Explained, Rod, explained, rod_span

Says: TypeAlias = Literal["stop", "fix before trip", ""]
RATIOS: Final = (5.0, 40.0)  # of steering boxes: from memory, no source
TWO_TURNS: Final = 4.0 * pi
SHORTEST: Final = 0.2  # m
FOLDED: Final = 5.0  # of the length: a rod bowed further has folded; practice


@dataclass(frozen=True, slots=True, kw_only=True)
class OffCentre:
    """What was seen and felt, what it explains, what is left over; SI.

    ``says`` can be grave or empty: no sum ever says that it may be driven. ``left`` is what
    something else turns, at the least and at the most, None where nothing felt was said.
    """

    rod: Rod
    bow: float
    length: float
    felt: float | None
    ratio: tuple[float, float]
    says: Says
    lines: tuple[str, ...]
    because: str = ""
    explains: Explained | None = None
    left: tuple[float, float] | None = None


def rod_of(rods: Iterable[Rod], name: str) -> Rod:
    """One of an axle's rods, by its key or its name."""
    known = list(rods)
    told = name.strip().casefold().replace(" ", "_")
    for rod in known:
        if told in {rod.key, rod.name.replace(" ", "_")}:
            return rod
    raise UnknownEntry(
        f"{name[:40]!r} cannot turn the wheel of this axle.",
        remedy=f"One of: {', '.join(rod.name for rod in known)}.",
    )


def off_centre(
    rod: Rod,
    bow: float,
    length: float | None,
    felt: float | None,
    ratio: float | None,
    diameter: float,
    system: str = "metric",
) -> OffCentre:
    """Weigh a bow (m) against a wheel off centre (rad); without a length the rod's own stands.

    The guard stands on the rejecting side: what may be something else is to be looked for.
    """
    long = rod.length if length is None else length
    low, high = RATIO if ratio is None else (ratio, ratio)
    _can_be(rod, bow, long, felt, ratio)
    seen = OffCentre(
        rod=rod, bow=bow, length=long, felt=felt, ratio=(low, high), says="stop", lines=()
    )
    if felt is not None and felt > TWO_TURNS:
        return _with(seen, "stop", ["More than two turns off centre: something has parted. STOP."])
    if not rod.straight and bow > long / FOLDED:
        told = "A bow of more than a fifth of its length: this rod has folded. STOP; no sum is "
        return _with(seen, "stop", [told + "needed."])
    got = explained(rod, bow, long, (low, high))
    if not all(isfinite(each) for each in (*got.turn, *got.wheel)):
        told = "So far no lever of this axle reaches: measure again. If it is so, STOP."
        return _with(seen, "stop", [told])
    lines = [_said(seen, system)]
    if not rod.straight:
        lines.append(f"It is shorter by {rod_span(got.short, 'length', system)}: {rod.effect}.")
    else:
        lines.append(f"So {rod.effect}, by {rod_span(got.turn, 'angle', system)}.")
    if rod.share != 1.0:
        toe = (
            float(steering.toe_length(got.turn[0], diameter)),
            float(steering.toe_length(got.turn[1], diameter)),
        )
        lines.append(
            f"Toe changes by {rod_span(got.turn, 'angle', system)}, which is "
            f"{rod_span(toe, 'length', system)} at this tread."
        )
    lines.append(
        f"It turns the steering wheel off centre by {rod_span(got.wheel, 'angle', system)}."
    )
    left = None if felt is None else (felt - READING - got.wheel[1], felt + READING - got.wheel[0])
    if bow == 0.0 and left is not None and left[0] <= 0.0:
        lines = ["Nothing seen and nothing felt: the sum has nothing to say. The looks stand."]
        return _with(seen, "", lines, got, left)
    if left is not None and felt is not None:
        lines.append(_remains(left, felt))
    if bow == 0.0:
        lines = [f"You said: nothing bowed; steering wheel {_degrees(felt or 0.0)} deg off centre."]
        lines.append(_remains(left or (0.0, 0.0), felt or 0.0))
        return _with(seen, "fix before trip", lines, got, left)
    because = lines[-1] if felt is not None else ""
    lines.append(
        "An axle that has moved: fix before trip."
        if rod.straight
        else "A bowed rod is changed, never straightened: fix before trip."
    )
    return _with(seen, "fix before trip", lines, got, left, because)


def _can_be(rod: Rod, bow: float, long: float, felt: float | None, ratio: float | None) -> None:
    if ratio is not None and not RATIOS[0] <= ratio <= RATIOS[1]:
        raise AxlewrightError(
            f"A ratio of {ratio:g} to 1 is outside what steering boxes have (5 to 40).",
            remedy="Count again, or leave it out.",
        )
    if not rod.straight and long < SHORTEST:
        raise AxlewrightError(
            "A rod shorter than a hand is not meant.", remedy="Give its length eye to eye."
        )
    if bow < 0.0 or (felt is not None and felt < 0.0):
        raise AxlewrightError("A bow has no sign here, nor a wheel off centre.", remedy="How far?")
    if bow == 0.0 and felt is None:
        raise AxlewrightError(
            "Nothing seen and nothing said of the wheel.", remedy="How far is it off centre?"
        )


def _with(
    seen: OffCentre,
    says: Says,
    lines: list[str],
    got: Explained | None = None,
    left: tuple[float, float] | None = None,
    because: str = "",
) -> OffCentre:
    return OffCentre(
        rod=seen.rod,
        bow=seen.bow,
        length=seen.length,
        felt=seen.felt,
        ratio=seen.ratio,
        says=says,
        lines=tuple(lines),
        because=because or lines[-1],
        explains=got,
        left=left,
    )


def _said(seen: OffCentre, system: str) -> str:
    unit = units.SYSTEMS[system]["length"]
    scale = units.known("length")[unit]
    bow, length = (f"{round(each / scale, 6):g}" for each in (seen.bow, seen.length))
    if seen.rod.straight:
        return f"You said: one wheel {bow} {unit} further back."
    felt = "." if seen.felt is None else f"; steering wheel {_degrees(seen.felt)} deg off centre."
    return f"You said: {seen.rod.name}, {length} {unit} eye to eye, bowed {bow} {unit}{felt}"


def _remains(left: tuple[float, float], felt: float) -> str:
    if left[0] > 0.0:
        return (
            "What is seen does not explain what is felt: "
            f"{_whole(*left)} of {_degrees(felt)} deg come from something else. Fix before trip: "
            "look below, from the top."
        )
    if left[1] < 0.0:
        return (
            "What is seen should turn the wheel further than is felt: measure the bow again. Two "
            "faults may hide each other: look below all the same."
        )
    return (
        f"What is seen may explain it all, or leave up to {_deg(left[1]):.0f} deg to something "
        "else. Cannot tell means fix before trip: look below, from the top."
    )


def _whole(low: float, high: float) -> str:
    ends = [f"{_deg(each):.0f}" for each in (low, high)]
    if float(ends[1]) == 0.0:
        return "less than 1 deg"
    return f"{ends[0]} deg" if ends[0] == ends[1] else f"{ends[0]} to {ends[1]} deg"


def _deg(angle: float) -> float:
    return angle * 180.0 / pi


def _degrees(angle: float) -> str:
    return f"{round(_deg(angle), 6):g}"


def off_centre_json(told: OffCentre) -> dict[str, Any]:
    """The sum in SI, each quantity with its unit and, where there is doubt, its band."""
    got = told.explains
    ends = {
        "shorter": (None if got is None else got.short, "m"),
        "turn": (None if got is None else got.turn, "rad"),
        "steering_wheel": (None if got is None else got.wheel, "rad"),
        "left_over": (told.left, "rad"),
    }
    return {
        "rod": told.rod.key,
        "bow": {"value": told.bow, "unit": "m", "band": None},
        "length": {"value": told.length, "unit": "m", "band": None},
        "off_centre": {"value": told.felt, "unit": "rad", "band": None},
        "ratio": {"value": None, "unit": "1", "band": list(told.ratio)},
        **{
            name: {
                "value": None if band is None else 0.5 * (band[0] + band[1]),
                "unit": unit,
                "band": None if band is None else list(band),
            }
            for name, (band, unit) in ends.items()
        },
        "says": told.says or None,
        "lines": list(told.lines),
    }
