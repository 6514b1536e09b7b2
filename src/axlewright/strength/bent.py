"""What a bad moment leaves behind in the tubes: camber, toe, and how the shafts then run."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.duty import ROW, live_cases
from axlewright.physics import metals, plastic
from axlewright.rig import Column, Columns
from axlewright.strength.housing import CAST, CAST_BORE, Housing

STRAIGHT: Final = 2e9  # yield at which the casting stays straight here, Pa
SIDE_GEAR: Final = 0.035  # middle of the splines from the middle of the carrier, m; memory
CARRIER_SEAL: Final = 0.095  # inner seal from the middle of the carrier, m; memory
END_SEAL: Final = 0.02  # seal at the tube's end, inboard of the end forging's edge, m; memory
OUTWARD: Final = {"right": 1.0, "left": -1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class ShaftRun:
    """How one inner shaft runs in a bent housing, (n,); NaN where the tube folds.

    ``spline_angle`` is between the shaft and the side gear's axis and ``end_angle`` between the
    shaft and the end of its tube, rad; ``inner_seal`` is how far off the middle it passes the
    seal beside the carrier, ``outer_seal`` the one at the tube's end, m.
    """

    spline_angle: Column
    end_angle: Column
    inner_seal: Column
    outer_seal: Column


@dataclass(frozen=True, slots=True, kw_only=True)
class Bent:
    """Camber, toe and shafts that stay after a moment, left and right, (n,), rad.

    Tops outboard and fronts inboard are positive; NaN where the tube folds.
    """

    camber_left: Column
    camber_right: Column
    toe_left: Column
    toe_right: Column
    shaft_left: ShaftRun
    shaft_right: ShaftRun


def bent_after(columns: Columns, housing: Housing, case: int, hardness: float) -> Bent:
    """Give the set that one live case at a hardness leaves, elastic and perfectly plastic tubes.

    ``case`` counts as `live_cases`; the tubes yield at their softened yield all along, which is
    the unkind side; sleeves count as part of the wall, a truss does not.
    """
    entry = live_cases()[case]
    first, last = housing.place["end_right"], housing.place["end_left"]
    faces = housing.faces[:, :, first:last]
    loads = hardness * faces[:, ROW[entry.key]]
    if entry.standing:
        loads = loads + faces[:, ROW["standing"]]
    moments = loads[..., [3, 5]]
    outer, inner, strength = _tubes(columns, housing, first, last)
    kept = plastic.permanent_set(
        housing.across[:, first : last + 1],
        moments,
        outer,
        inner,
        strength,
        np.full_like(outer, metals.STEEL),
    )
    folded = (kept.status != plastic.KEPT)[:, None]
    camber = np.where(folded, np.nan, kept.camber)
    toe = np.where(folded, np.nan, kept.toe)
    # Slopes forward and up per metre to the left, and the places they lead to.
    slope = np.stack([-kept.rotation[..., 1], kept.rotation[..., 0]], axis=-1)
    slope = np.where(folded[..., None], np.nan, slope)
    offset = np.where(folded[..., None], np.nan, kept.offset)
    return Bent(
        camber_left=camber[:, 1],
        camber_right=camber[:, 0],
        toe_left=toe[:, 1],
        toe_right=toe[:, 0],
        shaft_left=_run(housing, slope, offset, first, "left"),
        shaft_right=_run(housing, slope, offset, first, "right"),
    )


def standing_camber(housing: Housing) -> tuple[Column, Column]:
    """Camber of the sound, unbent axle under its standing load, left and right, (n,), rad.

    The housing's own elastic bow between the wheels; tops outboard are positive, so a loaded axle
    reads negative. What bearings and ball joints give is not in it.
    """
    moved = housing.displacement[:, ROW["standing"]]
    right, left = housing.place["wheel_right"], housing.place["wheel_left"]
    span = housing.across[:, left] - housing.across[:, right]
    chord = (moved[:, left, 2] - moved[:, right, 2]) / span
    return (
        np.asarray(OUTWARD["left"] * (moved[:, left, 3] - chord)),
        np.asarray(OUTWARD["right"] * (moved[:, right, 3] - chord)),
    )


def straight_on(slope: Column, offset: Column, station: Column, place: Column) -> Column:
    """Where the straight continuation of a station's tube stands at a place across, (..., 2), m.

    ``slope`` and ``offset`` are (..., 2): forward and up; ``station`` and ``place`` (...).
    """
    return np.asarray(offset + slope * (place - station)[..., None])


def shaft_run(
    stations: tuple[Column, Column],
    slopes: tuple[Column, Column],
    offsets: tuple[Column, Column],
    ends: tuple[Column, Column],
    seals: tuple[Column, Column],
) -> ShaftRun:
    """Run of a straight shaft held in the middle at its spline and at its outer joint.

    Parameters
    ----------
    stations, slopes, offsets
        Of the centre, then of the tube's end: place across, (...), and slope and offset, forward
        and up, (..., 2); m and m/m.
    ends, seals
        Places across of spline and joint, and of the inner and the outer seal, (...), m.

    Notes
    -----
    Centre and forging are stiff: spline and inner seal keep the centre's line, joint and outer
    seal that of the tube's end. The shaft is the straight line between spline and joint.
    """
    spline = straight_on(slopes[0], offsets[0], stations[0], ends[0])
    joint = straight_on(slopes[1], offsets[1], stations[1], ends[1])
    slope = (joint - spline) / (ends[1] - ends[0])[..., None]

    def off(which: int) -> Column:
        shaft = straight_on(slope, spline, ends[0], seals[which])
        tube = straight_on(slopes[which], offsets[which], stations[which], seals[which])
        return np.asarray(np.linalg.norm(shaft - tube, axis=-1))

    def between(which: int) -> Column:
        return np.asarray(np.arctan(np.linalg.norm(slope - slopes[which], axis=-1)))

    return ShaftRun(
        spline_angle=between(0), end_angle=between(1), inner_seal=off(0), outer_seal=off(1)
    )


def _run(housing: Housing, slope: Column, offset: Column, first: int, side: str) -> ShaftRun:
    """Run of one side's shaft; what the forging carries moves as one with the tube's end."""
    out = -OUTWARD[side]  # left is positive across
    centre, end = housing.place["centre"], housing.place[f"end_{side}"]
    outer = housing.place.get(f"kingpin_{side}", housing.place[f"bearing_{side}"])
    across = housing.across
    seal = across[:, end] - out * END_SEAL
    return shaft_run(
        (across[:, centre], across[:, end]),
        (slope[:, centre - first], slope[:, end - first]),
        (offset[:, centre - first], offset[:, end - first]),
        (across[:, centre] + out * SIDE_GEAR, across[:, outer]),
        (across[:, centre] + out * CARRIER_SEAL, seal),
    )


def _tubes(
    columns: Columns, housing: Housing, first: int, last: int
) -> tuple[Column, Column, Column]:
    draws, count = housing.across.shape[0], last - first
    outer = np.full((draws, count), CAST)
    inner = np.full((draws, count), CAST_BORE)
    strength = np.full((draws, count), STRAIGHT)
    spans = {
        "right": slice(0, housing.place["joint_right"] - first),
        "left": slice(housing.place["joint_left"] - first, count),
    }
    for side, span in spans.items():
        across = columns[f"tube_outer_{side}"]
        wall = np.minimum(columns["tube_wall"] + columns[f"sleeve_wall_{side}"], 0.499 * across)
        outer[:, span] = across[:, None]
        inner[:, span] = (across - 2.0 * wall)[:, None]
        strength[:, span] = (columns["tube_yield"] * columns["softening"])[:, None]
    return outer, inner, strength
