"""The few numbers by which one set-up of an axle is better or worse than another."""

from dataclasses import dataclass
from math import inf

import numpy as np

from axlewright.geometry.bind import worst_parked
from axlewright.geometry.joints import pinion_rise
from axlewright.geometry.limits import Limit, first_hard, limits
from axlewright.geometry.moving import at_ride, motion, off_centre, slopes
from axlewright.geometry.points import Hardpoints, drag_end
from axlewright.physics import linkage
from axlewright.rig import Column

BUMP = 0.05  # m: over which bump steer is told


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """One set-up at ride height, SI.

    ``bump_steer`` is the most that the wheels turn by themselves within 50 mm up and down;
    ``shift`` how far left of the body's middle the axle stands against where it was taped;
    ``off_centre`` how far the wheels stood off before the drag link was set; ``slope_apart``
    between drag link and track bar; ``parked`` the worst pull of a rod with no load.
    """

    caster: float
    pinion: float
    bump_steer: float
    roll_steer: float
    shift: float
    off_centre: float
    slope_apart: float
    roll_centre: float
    anti: float
    instant_ahead: float
    instant_up: float
    parked: float
    parked_rod: str
    stop_room: float
    bump: Limit
    droop: Limit


def measures(points: Hardpoints) -> tuple[Hardpoints, Measures]:
    """Let the axle stand and measure it; gives the points with the drag link set as well."""
    apart = off_centre(points) if points.steers else np.zeros(1)
    ready, stands = at_ride(points)
    low = -float(points.columns["travel_lift"][0])
    level = np.array([[low, low]])
    turned = slopes(ready, level)
    bump, droop = limits(ready, "bump"), limits(ready, "droop")
    pull = worst_parked(ready)
    return ready, Measures(
        caster=float(np.mean(stands.caster[0])) if points.steers else 0.0,
        pinion=float(pinion_rise(ready, stands)[0]),
        bump_steer=bump_steer(ready) if points.steers else _axle_steer(ready),
        roll_steer=float(turned.roll_steer[0]),
        shift=float(stands.shift[0]),
        off_centre=float(apart[0]),
        slope_apart=_slope_apart(ready, stands.turn[0], stands.pose[0]) if points.steers else 0.0,
        roll_centre=float(turned.roll_centre[0]),
        anti=float(turned.anti[0]),
        instant_ahead=float(turned.instant[0, 0]),
        instant_up=float(turned.instant[0, 1]),
        parked=pull.force,
        parked_rod=pull.rod,
        stop_room=next((each.at for each in bump if "stop" in each.what), inf),
        bump=first_hard(bump),
        droop=first_hard(droop),
    )


def bump_steer(points: Hardpoints, span: float = BUMP) -> float:
    """Most that the wheels turn by themselves within a span up and down, either way, rad."""
    low = -float(points.columns["travel_lift"][0])
    rise = np.linspace(-span, span, 11)
    made = motion(points, low + np.stack([rise, rise], axis=-1))
    told = made.heading.mean(axis=-1) - made.heading[5].mean()
    told = told[made.status == linkage.POSED]
    return float(told[np.argmax(np.abs(told))]) if told.size else inf


def _axle_steer(points: Hardpoints, span: float = BUMP) -> float:
    low = -float(points.columns["travel_lift"][0])
    rise = np.linspace(-span, span, 11)
    yaw = motion(points, low + np.stack([rise, rise], axis=-1)).pose[:, 5]
    told = yaw - yaw[5]
    return float(told[np.nanargmax(np.abs(told))])


def _slope_apart(points: Hardpoints, turn: Column, pose: Column) -> float:
    """Angle between drag link and track bar seen from ahead, rad; nought without a track bar."""
    if not points.barred:
        return 0.0
    bar = points.rod("track_bar")
    axle = pose[:3] + turn @ bar.axle[0]
    wheel = pose[:3] + turn @ drag_end(points.at, points.words)[0]
    lines = (bar.frame[0] - axle, points.at["drag_link_pitman"][0] - wheel)
    slope = [np.arctan2(line[2], abs(line[1])) * np.sign(line[1]) for line in lines]
    return float(slope[1] - slope[0])
