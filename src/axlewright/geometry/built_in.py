"""The angle that a front housing has built in: its steering axis against its pinion.

Caster and the pinion's upward look add up to it. Turning the housing moves degrees from one to the
other; only turning the end forgings on their tubes, or another housing, changes the sum.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from axlewright.geometry.driveline import Line, shaking
from axlewright.physics import driveline
from axlewright.rig import Column

STEPS = tuple(float(np.radians(degrees)) for degrees in (-6, -4, -2, -1, 0, 1, 2, 4, 6))
BELOW = float(np.radians(1.0))  # a pinion below its shaft's line; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """The housing turned, pinion up by ``by``: what is left, SI.

    ``trail`` is that of the caster alone at the loaded radius, m; ``torsional`` and ``coast`` are
    accelerations at the shaft speed that is judged, rad/s2.
    """

    by: float
    caster: float
    pinion: float
    joints: tuple[float, float]
    whole: float
    torsional: float
    coast: float
    trail: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltIn:
    """What this rig's housing has, and what it needs; angles in rad.

    ``wanted`` is caster wanted plus pinion wanted, ``forgings`` what the end forgings would have
    to be turned by, more caster positive; ``pinion_for_double`` what the pinion would look up for
    a double joint at the transfer case. ``for_pinion`` and ``for_caster`` turn the present
    housing for the one and pay with the other.
    """

    caster: float
    pinion: float
    caster_wanted: float
    pinion_wanted: float
    pinion_for_double: float
    band: tuple[float, float]
    steps: tuple[Turned, ...]
    for_pinion: Turned
    for_caster: Turned

    @property
    def present(self) -> float:
        """The angle that the housing has."""
        return self.caster + self.pinion

    @property
    def wanted(self) -> float:
        """The angle that it needs."""
        return self.caster_wanted + self.pinion_wanted

    @property
    def forgings(self) -> float:
        """How far the end forgings would have to be turned on their tubes, more caster positive."""
        return self.wanted - self.present


def pinion_wanted(
    pinion_joint: Column, transfer_joint: Column, rise: Column, output_rise: Column, *, double: bool
) -> Column:
    """How far up the pinion should look; points (n, 3) m from the wheels' line.

    One joint at each end: parallel to the transfer case, so that both angles are equal. A double
    joint at the case: along the shaft, a little below it, so that its needles roll.
    """
    if not double:
        return np.asarray(driveline.parallel_pinion_rise(output_rise))
    way = np.sign(transfer_joint[..., 0])
    nose, case = (
        np.stack([way * point[..., 0], point[..., 2]], axis=-1)
        for point in (pinion_joint, transfer_joint)
    )
    return np.asarray(driveline.pinion_rise_along_shaft(nose, case, rise, BELOW))


def built_in(
    line_at: Callable[[float], Line],
    caster: float,
    caster_wanted: float,
    wanted: tuple[float, float],
    speed: float,
    radius: float,
    band: tuple[float, float],
) -> BuiltIn:
    """Price every degree.

    Parameters
    ----------
    line_at
        Gives the line with the housing turned pinion up by so much.
    wanted
        How far up the pinion should look: for the joints it has, and for a double one.
    """
    pinion = float(line_at(0.0).pinion_rise[0])

    def turned(by: float) -> Turned:
        line = line_at(by)
        shaken = shaking(line, np.array([speed]))
        left = caster - by
        return Turned(
            by=by,
            caster=left,
            pinion=float(line.pinion_rise[0]),
            joints=(float(line.joints[0, 0]), float(line.joints[0, 1])),
            whole=float(line.whole[0]),
            torsional=float(shaken.torsional[0]),
            coast=float(shaken.coast[0]),
            trail=float(radius * np.tan(left)),
        )

    return BuiltIn(
        caster=caster,
        pinion=pinion,
        caster_wanted=caster_wanted,
        pinion_wanted=wanted[0],
        pinion_for_double=wanted[1],
        band=band,
        steps=tuple(turned(by) for by in STEPS),
        for_pinion=turned(wanted[0] - pinion),
        for_caster=turned(caster - caster_wanted),
    )
