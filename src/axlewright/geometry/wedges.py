"""Wedges between a leaf spring and its pad: how thick for a turn, and which way round."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.geometry.alignment_measured import Judged
from axlewright.geometry.points import Hardpoints, hardpoints
from axlewright.physics import alignment
from axlewright.rig import Column, Rig, geometry_columns

For: TypeAlias = Literal["pinion", "caster"]
LEAST: Final = float(np.radians(0.3))  # less needs none: an angle finder hardly shows it
MOST: Final = float(np.radians(6.0))  # steeper wedges creep; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class Wedge:
    """One wedge on each side: what it puts right, and how far it turns the pinion up, rad.

    ``thicker`` is how much thicker one end is than the other over the pad's length, m, with its
    90 % band; ``per_degree`` that of one degree; ``thick_end`` where the thicker end goes;
    ``too_steep`` says that a pad has to be moved instead.
    """

    of: For
    turn: float
    pad: float
    thicker: float
    band: tuple[float, float]
    per_degree: float
    thick_end: Literal["front", "rear"]

    @property
    def none(self) -> bool:
        """Whether so little needs no wedge."""
        return abs(self.turn) < LEAST

    @property
    def too_steep(self) -> bool:
        """Whether so much is beyond what is put under a spring."""
        return abs(self.turn) > MOST


def wedges(
    points: Hardpoints, turns: Mapping[For, float], drawn: tuple[Column, Column] | None = None
) -> tuple[Wedge, ...]:
    """Wedges that turn a leaf-sprung axle, pinion up positive; none for other axles.

    ``drawn`` are turn for the pinion and pad's length of every draw.
    """
    if points.arms != "leaves":
        return ()
    pad = float(points.columns["travel_spring_pad"][0])
    out = []
    for of, turn in turns.items():
        band = (np.nan, np.nan)
        if drawn is not None and of == "pinion":
            spread = np.abs(alignment.wedge_thickness(*drawn))
            low, high = np.quantile(spread[np.isfinite(spread)], (0.05, 0.95))
            band = (float(low), float(high))
        out.append(
            Wedge(
                of=of,
                turn=turn,
                pad=pad,
                thicker=abs(float(alignment.wedge_thickness(turn, pad))),
                band=band,
                per_degree=float(alignment.wedge_thickness(np.radians(1.0), pad)),
                thick_end=thick_end(points, turn),
            )
        )
    return tuple(out)


def caster_wedges(rig: Rig, found: Sequence[Judged]) -> tuple[Wedge, ...]:
    """Wedges that bring a caster that was read and is out to what is wanted, both sides' mean."""
    read = [each for each in found if each.key == "caster"]
    if not any(each.verdict == "out" for each in read) or rig.words["held_by.arms"] != "leaves":
        return ()
    turn = float(np.mean([each.measured.value - each.aim for each in read]))
    return wedges(hardpoints(geometry_columns(rig), rig.words), {"caster": turn})


def thick_end(points: Hardpoints, turn: float) -> Literal["front", "rear"]:
    """Where a wedge's thicker end goes for a turn of the pinion up.

    A front axle's pinion looks back, a rear one's ahead. The spring keeps its slope: under a spring
    that lies on the axle the thicker end lifts the spring's side away from the pinion that rises.
    """
    ahead = points.steers == (turn > 0.0)
    on_top = float(points.at["leaf_pad_left"][0, 2]) > 0.0
    return "front" if ahead == on_top else "rear"
