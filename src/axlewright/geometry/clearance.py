"""Room under and around the axle: loaded radius, lowest point, silhouette, ramp angles."""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from axlewright.geometry.points import SIDES, Hardpoints
from axlewright.physics.quantities import Num
from axlewright.rig import Column, TyreCode

KGF_PER_MM = 9.80665e3  # N/m
EYE = 0.032  # m: below a bolt's centre its bracket goes on so far; memory
CAST = 0.030  # m: the centre casting's wall and room round the ring gear; memory


class Spot(NamedTuple):
    """One lowest edge seen from the front: what, where across, how high over the ground, m."""

    what: str
    across: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearance:
    """Room at one pressure: loaded radius, m, edges lowest first, and angles in rad."""

    pressure: float
    radius: float
    spots: tuple[Spot, ...]
    approach: float
    breakover: float

    @property
    def lowest(self) -> Spot:
        """The lowest edge."""
        return self.spots[0]


def tyre_stiffness(pressure: Num, width: Num, rim: Num, aspect: Num) -> Column:
    """Upright stiffness of a tyre, N/m, from pressure (Pa), width and rim (m), aspect (percent).

    References
    ----------
    memory: form of Tire Science and Technology 33(3) 136, coefficients not read
    """
    wide, hub = 1e3 * width, 1e3 * rim
    inside = (1.03 - 0.004 * aspect) * wide * (wide * aspect / 50.0 + hub)
    return np.asarray(KGF_PER_MM * (2.8e-7 * pressure * np.sqrt(inside) + 3.45))


def approach_angle(beyond: Num, height: Num, radius: Num) -> Column:
    """Angle of the line from an edge to the loaded tyre's arc, rad (49 CFR 523.2: memory).

    ``beyond`` is how far the edge is from the axle and ``height`` over the ground, m.

    References
    ----------
    geometry: tangent to a circle
    """
    rise = height - radius
    away = np.hypot(beyond, rise)
    return np.asarray(np.arctan2(rise, beyond) + np.arcsin(np.clip(radius / away, -1.0, 1.0)))


def breakover_angle(wheelbase: Num, height: Num, radius: Num) -> Column:
    """Both tangents' angles from the belly halfway between the axles, together, rad.

    References
    ----------
    geometry: tangents to both loaded tyres' arcs (49 CFR 523.2: memory)
    """
    return np.asarray(2.0 * approach_angle(0.5 * wheelbase, height, radius))


def clearance(points: Hardpoints, tyre: TyreCode, *, pressure: float | None = None) -> Clearance:
    """Room at road pressure, where everything was taped, or at another pressure."""
    c = {name: float(value[0]) for name, value in points.columns.items()}
    road = c["travel_road_pressure"]
    asked = road if pressure is None else pressure
    aspect = 100.0 * (tyre.outer_diameter - tyre.rim_diameter) / (2.0 * tyre.section_width)
    stiff = [
        float(tyre_stiffness(each, tyre.section_width, tyre.rim_diameter, aspect))
        for each in (road, asked)
    ]
    sunk = 0.5 * c["axle_weight"] * (1.0 / stiff[1] - 1.0 / stiff[0])
    radius = c["radius"] - sunk
    spots = tuple(sorted(_spots(points, c, radius), key=lambda each: each.height))
    lift = c["travel_lift"] + c["radius"] - float(points.taped_radius[0])
    return Clearance(
        pressure=asked,
        radius=radius,
        spots=spots,
        approach=float(
            approach_angle(c["travel_bumper_ahead"], c["travel_bumper_up"] + lift - sunk, radius)
        ),
        breakover=float(
            breakover_angle(c["wheelbase"], c["travel_belly_up"] + lift - sunk, radius)
        ),
    )


def silhouette(points: Hardpoints, found: Clearance) -> list[tuple[float, float]]:
    """Lowest edge from right to left as (across, height) corners, wheels left out, m."""
    tube = 0.25 * float(
        points.columns["tube_outer_left"][0] + points.columns["tube_outer_right"][0]
    )
    end = 0.82 * float(points.half_track[0])
    level = found.radius - tube
    hung = [
        (spot, 0.14 if spot.what == "the centre" else 0.04)
        for spot in found.spots
        if spot.what not in {"the tie rod", "the tubes"}
    ]
    places = {-end, end}
    for spot, wide in hung:
        places |= {spot.across - wide, spot.across, spot.across + wide}
    return [
        (
            across,
            min(
                level
                - max(level - spot.height, 0.0) * max(1.0 - abs(across - spot.across) / wide, 0.0)
                for spot, wide in hung
            ),
        )
        for across in sorted(places)
    ]


def _spots(points: Hardpoints, c: dict[str, float], radius: float) -> list[Spot]:
    ball = 0.5 * c["ring_diameter"] + CAST
    found = [
        Spot("the centre", float(points.at["pinion_joint"][0, 1]), radius - ball),
        Spot("the tubes", 0.0, radius - 0.25 * (c["tube_outer_left"] + c["tube_outer_right"])),
    ]
    brackets = {
        "arm_axle": "lower arm's bracket",
        "damper_axle": "damper's bracket",
        "leaf_pad": "leaf spring's bolts",
    }
    for name, what in brackets.items():
        for side in SIDES:
            if f"{name}_{side}" not in points.at:
                continue
            place = points.at[f"{name}_{side}"][0]
            below = 0.13 if name == "leaf_pad" else EYE  # pad, tube and U-bolt ends; memory
            found.append(
                Spot(f"the {side} {what}", float(place[1]), radius + float(place[2]) - below)
            )
    if points.steers:
        low = min(float(points.at[f"tie_rod_end_{side}"][0, 2]) for side in SIDES)
        found.append(Spot("the tie rod", 0.0, radius + low - 0.5 * c["tie_rod_outer"]))
    return found
