"""Wedges under leaf springs in words: how thick, which way round, and what to mind."""

from collections.abc import Sequence
from math import degrees, isnan
from typing import Final

from axlewright.geometry import Wedge
from axlewright.views.phrases import quantity

MIND: Final = (
    "A wedge: of steel, as long as the pad and as wide as the spring, both sides alike, held by "
    "the centre bolt or a pin of its own, whose head must still sit in its hole. Frame on stands, "
    "both ends chocked, axle on jacks of its own: it may roll when it is freed, nobody under. The "
    "pack stays clamped: never take the centre bolt out of a loaded spring. New U-bolts and nuts, "
    "crosswise to the maker's value, and again after the first drive; then brake hoses, shaft and "
    "caster are looked at again (common practice, no source)."
)
STEEP: Final = (
    "So much is beyond a wedge, which creeps out above 6 deg (common practice, no source): the "
    "pads are set anew on the tube, by a qualified welder, with a jig."
)
FOR: Final = {"pinion": "the pinion", "caster": "the caster"}


def wedge_lines(wedges: Sequence[Wedge], system: str = "metric") -> list[str]:
    """What each degree takes, and each wedge that is wanted; none for other axles."""
    if not wedges:
        return []
    asked, one = [each for each in wedges if not each.none], wedges[0]
    step, pad = (
        quantity(one.per_degree, "length", system, 2),
        quantity(one.pad, "length", system, 3),
    )
    lines = [
        f"On leaf springs a wedge turns the axle: each degree is {step} over a pad {pad} long.",
    ]
    lines += [_line(each, system) for each in asked]
    if len({each.turn > 0.0 for each in asked}) > 1:
        lines.append("The two ask for opposite turns: one wedge cannot put both right.")
    if not asked:
        lines.append("Here nothing asks for one: it stands within 0.3 deg of what is wanted.")
    return lines


def wedge_mind(wedges: Sequence[Wedge]) -> list[str]:
    """What to mind where a wedge is asked for, as one line; none where it is not."""
    return [MIND] if any(not each.none for each in wedges) else []


def _line(wedge: Wedge, system: str) -> str:
    way = "up" if wedge.turn > 0.0 else "down"
    told, band = quantity(wedge.thicker, "length", system, 2), ""
    if not isnan(wedge.band[0]):
        low, high = (quantity(end, "length", system, 2) for end in wedge.band)
        band = f" ({low.rpartition(' ')[0]} to {high})"
    line = (
        f"Turning it {abs(degrees(wedge.turn)):.1f} deg pinion {way} for {FOR[wedge.of]} takes "
        f"wedges {told} thicker at the {wedge.thick_end} end than at the other{band}."
    )
    return f"{line} {STEEP}" if wedge.too_steep else line
