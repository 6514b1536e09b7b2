"""Oil for the axle as it will lie: the level that reaches the pinion's bearing, and how much."""

from dataclasses import dataclass
from math import radians

import numpy as np

from axlewright.physics import sump
from axlewright.physics.measurement import NINETY
from axlewright.rig import SEED, Column, Rig, drawn_columns, scores
from axlewright.swap.doubt import DRAWS

# Of the ring's diameter: where the centre's inside and the pinion's parts lie. Memory; each ± 15 %.
INSIDE, WIDE = 1.12, 0.72  # drum around the ring: across, and wide
BEARING_AHEAD, BEARING_ACROSS = 0.98, 0.34  # outer bearing's middle from the axle; across
PINION_DOWN = 0.16  # pinion's offset below (low pinion) or above the axle's line
OIL_SHARE = 0.6  # of the drum is oil, the rest gears
PLUG_BEHIND, PLUG_DOWN = 0.62, 0.10  # fill plug's lower edge in the cover
BUILT_UP = radians(3.0)  # pinion slope that the plug was drilled for, ± 2 deg
SPREAD, SLOPE = 1.15, radians(2.0)
DIPPED = 0.25  # of the bearing's height must stand in oil


@dataclass(frozen=True, slots=True, kw_only=True)
class OilLevel:
    """Oil for the pinion: bands (low, middle, high), m over the axle's line and m³.

    ``level`` reaches the pinion's outer bearing, ``plug`` is where the cover's plug would stop,
    ``volume`` what the centre then holds, ``more`` what goes in beyond the plug; ``slope`` is the
    pinion's, rad. Tubes that fill by the seals hold some besides.
    """

    slope: float
    slope_given: bool
    level: tuple[float, float, float]
    plug: tuple[float, float, float]
    volume: tuple[float, float, float]
    more: tuple[float, float, float]


def oil_level(rig: Rig, *, high_pinion: bool = False) -> OilLevel:
    """Work out the level for a rig's pinion slope; what nobody gave is assumed, with its band."""
    ring = drawn_columns(rig, 0, DRAWS)["ring_diameter"]
    given = rig.given.get("line_pinion_up")
    own = 0.0 if given is None else given.doubt
    slope = (BUILT_UP if given is None else given.value) + _score("slope") * (
        own if given is not None else SLOPE / NINETY
    )
    side = 1.0 if high_pinion else -1.0
    bearing = sump.turned_height(
        _near("ahead", BEARING_AHEAD) * ring, side * _near("down", PINION_DOWN) * ring, slope
    )
    across = _near("across", BEARING_ACROSS) * ring
    low_edge = np.asarray(sump.lower_edge(bearing, across, slope))
    level = low_edge + DIPPED * across
    turned = slope - (BUILT_UP + _score("built") * SLOPE / NINETY)
    plug = sump.turned_height(
        -_near("behind", PLUG_BEHIND) * ring, -_near("plug", PLUG_DOWN) * ring, turned
    )
    radius, wide = 0.5 * _near("inside", INSIDE) * ring, _near("wide", WIDE) * ring
    needed = np.maximum(level, plug)
    share = _near("share", OIL_SHARE)
    volume = share * sump.sump_volume(radius, wide, needed)
    more = np.asarray(volume) - share * sump.sump_volume(radius, wide, plug)
    return OilLevel(
        slope=BUILT_UP if given is None else given.value,
        slope_given=given is not None,
        level=_band(needed),
        plug=_band(np.asarray(plug)),
        volume=_band(np.asarray(volume)),
        more=_band(np.asarray(more)),
    )


def _score(name: str) -> Column:
    return scores(SEED, f"swap oil {name}", 0, DRAWS)


def _near(name: str, middle: float) -> Column:
    return np.asarray(middle * np.exp(_score(name) * np.log(SPREAD) / NINETY))


def _band(values: Column) -> tuple[float, float, float]:
    low, middle, high = np.quantile(values, [0.05, 0.5, 0.95])
    return float(low), float(middle), float(high)
