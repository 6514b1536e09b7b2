"""What other tyres ask of the brakes."""

from dataclasses import dataclass

import numpy as np

from axlewright.physics import braking
from axlewright.rig import Rig, geometry_columns

WHEELS = 4
SAME = 0.01  # radii closer than this ask nothing new; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class BrakesAsked:
    """Radius now and before, m, and what follows: torque over that before, wheels' inertia.

    ``torque`` is for the same stop; ``inertia`` of all wheels before and after, kg m2; ``as_mass``
    the mass that they add to a stop, before and after, kg; ``heat`` what those of the vehicle at
    this axle and its share of wheels turn into, over that before.
    """

    before: float
    after: float
    torque: float
    inertia: tuple[float, float]
    as_mass: tuple[float, float]
    heat: float


def brakes_asked(before: Rig, after: Rig) -> BrakesAsked | None:
    """Compare two sets of tyres under the same vehicle; nothing where they are of one height."""
    one, two = (geometry_columns(rig) for rig in (before, after))
    old, new = float(one["radius"][0]), float(two["radius"][0])
    if abs(new / old - 1.0) < SAME:
        return None
    inertia, as_mass, heat = [], [], []
    carried = 2.0 * float(one["axle_weight"][0]) / 9.80665  # both axles alike
    for columns, rig in ((one, before), (two, after)):
        radius = float(columns["radius"][0])
        wheels = WHEELS * float(
            braking.wheel_inertia(
                float(columns["line_tyre_mass"][0]),
                float(columns["line_wheel_mass"][0]),
                radius,
                0.5 * rig.tyre.rim_diameter,
            )
        )
        inertia.append(wheels)
        as_mass.append(wheels / radius**2)
        heat.append(float(np.asarray(braking.stop_heat(carried, 1.0, wheels, radius))))
    return BrakesAsked(
        before=old,
        after=new,
        torque=float(braking.torque_asked(new, old)),
        inertia=(inertia[0], inertia[1]),
        as_mass=(as_mass[0], as_mass[1]),
        heat=heat[1] / heat[0],
    )
