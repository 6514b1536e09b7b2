"""The propeller shaft and its ends while nobody has measured them, with bands."""

from typing import Final

import numpy as np

from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.scaling import MEMORY, is_front

PRACTICE: Final = "common practice, no source"
DOUBLE: Final = "double at the transfer case"
BELOW: Final = np.radians(1.0)  # how far a pinion is set below its shaft; common practice
FRONT_PINION: Final = np.radians(2.0)  # caster is given more than the joints; memory
# Caster that is usual by the tyre's radius, m and deg; common practice, no source
CASTER_AT: Final = ((0.43, 0.47, 0.51), (5.25, 4.75, 4.25))


def _pinion(c: Columns, w: Words) -> Column:
    if w.get("driveline.joints") != DOUBLE:
        return np.asarray(FRONT_PINION if is_front(w) else -c["line_output_up"])
    ends = ("pinion_joint", "transfer_joint")
    rise = c["point_transfer_joint_up"] - c["point_pinion_joint_up"]
    run = np.hypot(*(np.subtract(*(c[f"point_{end}_{axis}"] for end in ends))
                     for axis in ("ahead", "left")))  # fmt: skip
    return np.asarray(np.arctan2(rise, run) - BELOW)


def _output(_: Columns, w: Words) -> float:
    return float(np.radians(2.0 if is_front(w) else -2.0))


def _caster(c: Columns, _: Words) -> Column:
    return np.asarray(np.radians(np.interp(c["radius"], *CASTER_AT)))


LINE: Final[tuple[Assumption, ...]] = (
    Assumption(
        quantity="line_output_up",
        label="how far the transfer case's flange looks up",
        kind="angle",
        centre=_output,
        spread=float(np.radians(2.0)),
        family="normal",
        source=f"engines stand low at the back, {MEMORY}",
    ),
    Assumption(
        quantity="line_pinion_up",
        label="how far the pinion's flange looks up",
        kind="angle",
        centre=_pinion,
        spread=float(np.radians(4.0)),
        family="normal",
        source=f"set as its joints want it, {MEMORY}",
    ),
    Assumption(
        quantity="line_tube_outer",
        label="the propeller shaft's tube",
        kind="length",
        centre=0.0635,
        spread=1.2,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_tube_wall",
        label="the propeller shaft's wall",
        kind="length",
        centre=0.0024,
        spread=1.4,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_slip_out",
        label="slip joint's way out",
        kind="length",
        centre=0.06,
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_slip_in",
        label="slip joint's way in",
        kind="length",
        centre=0.05,
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_top_speed",
        label="greatest speed on the road",
        kind="speed",
        centre=110.0 / 3.6,
        spread=1.15,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_caster_wanted",
        label="caster wanted",
        kind="angle",
        centre=_caster,
        spread=float(np.radians(0.75)),
        family="normal",
        source=f"usual for the tyre, {PRACTICE}",
        applies=is_front,
    ),
    Assumption(
        quantity="line_engine_top",
        label="greatest engine speed, turns a minute",
        kind="plain",
        centre=4500.0,
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_top_ratio",
        label="ratio of the highest gear",
        kind="plain",
        centre=0.85,
        spread=1.2,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_tyre_mass",
        label="mass of one tyre",
        kind="mass",
        centre=lambda c, _: 29.0 * (c["radius"] / 0.4) ** 3,
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="line_wheel_mass",
        label="mass of one bare wheel",
        kind="mass",
        centre=12.0,
        spread=1.4,
        source=MEMORY,
    ),
)
