"""Room under and around the axle: loaded radius, lowest point, outline, ramp angles."""

from dataclasses import dataclass

import numpy as np

from axlewright.geometry.outline import Edge, Outline, edges, outline, touch_chance
from axlewright.geometry.points import Hardpoints
from axlewright.physics.quantities import Num
from axlewright.rig import Column, TyreCode

KGF_PER_MM = 9.80665e3  # N/m


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearance:
    """Room at one pressure: hubs' height, m, edges lowest first, and angles in rad.

    ``touch`` is the chance that one obstacle between the wheels touches the axle.
    """

    pressure: float
    radius: float
    edges: tuple[Edge, ...]
    outline: Outline
    touch: float
    approach: float
    breakover: float

    @property
    def lowest(self) -> Edge:
        """The lowest edge."""
        return self.edges[0]


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
    seen = outline(points, tyre, radius)
    lift = c["travel_lift"] + c["radius"] - float(points.taped_radius[0])
    return Clearance(
        pressure=asked,
        radius=radius,
        edges=edges(points, radius),
        outline=seen,
        touch=float(touch_chance(seen.across, seen.low, c["travel_step"])[0]),
        approach=float(
            approach_angle(c["travel_bumper_ahead"], c["travel_bumper_up"] + lift - sunk, radius)
        ),
        breakover=float(
            breakover_angle(c["wheelbase"], c["travel_belly_up"] + lift - sunk, radius)
        ),
    )
