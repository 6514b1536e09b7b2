"""Assumptions about shafts, splines, engine and grip."""

from functools import cache

import numpy as np

from axlewright.physics import spline as splines
from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.scaling import (
    MEMORY,
    is_front,
    load_scale,
    shaft_shear_yield,
)
from axlewright.tables import spline

SAME_ROOT = 0.1  # a row of the table counts where its root is this near the thinnest shaft


@cache
def _pitch() -> float:
    """Teeth in a metre of pitch diameter of the splines of the table."""
    row = spline("24/48x30")
    return row.teeth / row.pitch_diameter


def _spline_teeth(columns: Columns, _: Words) -> Column:
    return columns["inner_shaft"] * _pitch() + 2.0


def _spline_outer(columns: Columns, _: Words) -> Column:
    teeth, shaft = columns["spline_teeth"], columns["inner_shaft"]
    root = np.asarray(splines.minor_diameter(teeth, _pitch()))
    near = np.abs(root / shaft - 1.0) < SAME_ROOT
    row = np.asarray(splines.major_diameter(teeth, _pitch()))
    return np.where(near, row, shaft * (teeth + 1.0) / (teeth - 2.0))


DRIVE: tuple[Assumption, ...] = (
    Assumption(
        quantity="cap_across",
        label="joint cap across",
        kind="length",
        centre=lambda c, w: 0.0295 * load_scale(c, 0.2),
        spread=1.15,
        source=MEMORY,
    ),
    Assumption(
        quantity="cap_to_cap",
        label="joint, cap to cap",
        kind="length",
        centre=lambda c, w: 3.05 * c["cap_across"],
        spread=1.12,
        source=MEMORY,
    ),
    Assumption(
        quantity="ring_diameter",
        label="ring gear across",
        kind="length",
        centre=lambda c, w: 0.216 * load_scale(c, 0.25),
        spread=1.1,
        source=MEMORY,
    ),
    Assumption(
        quantity="axle_ratio",
        label="ratio of this axle",
        kind="plain",
        centre=4.1,
        spread=1.2,
        source=MEMORY,
    ),
    Assumption(
        quantity="other_hub_height",
        label="hub height at the other axle",
        kind="length",
        centre=lambda c, w: c["radius"],
        spread=1.01,
        source="taken as on this axle",
    ),
    Assumption(
        quantity="other_ratio",
        label="ratio of the other axle",
        kind="plain",
        centre=lambda c, w: c["axle_ratio"] * c["other_hub_height"] / c["radius"],
        spread=1.005,
        source="taken as matching",
    ),
    Assumption(
        quantity="inner_shaft",
        label="thinnest inner shaft",
        kind="length",
        centre=lambda c, w: 0.152 * c["ring_diameter"],
        spread=1.1,
        source="shafts met with this ring gear, memory",
    ),
    Assumption(
        quantity="stub_shaft",
        label="thinnest stub shaft",
        kind="length",
        centre=lambda c, w: 0.97 * c["inner_shaft"],
        spread=1.07,
        source=MEMORY,
        applies=is_front,
    ),
    Assumption(
        quantity="shaft_shear_yield",
        label="shear yield of the shafts",
        kind="stress",
        centre=shaft_shear_yield,
        spread=1.43,
        source="hardened 1040 shafts, table of materials (Fett 2009; low end memory)",
        applies=lambda w: not w["shaft.steel"],
    ),
    Assumption(
        quantity="shaft_shear_yield",
        label="shear yield of the shafts",
        kind="stress",
        centre=shaft_shear_yield,
        spread=1.25,
        source="the steel named, table of materials; how well it was hardened: memory",
        applies=lambda w: bool(w["shaft.steel"]),
    ),
    Assumption(
        quantity="spline_teeth",
        label="splines",
        kind="plain",
        centre=_spline_teeth,
        spread=1.04,
        source="table of splines 24/48, root as thick as the thinnest shaft; memory",
    ),
    Assumption(
        quantity="spline_outer",
        label="shaft over its splines",
        kind="length",
        centre=_spline_outer,
        spread=1.03,
        source="table of splines 24/48, else root as thick as the thinnest shaft; memory",
    ),
    Assumption(
        quantity="spline_engaged",
        label="spline engaged",
        kind="length",
        centre=0.036,
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="spline_slope",
        label="slope of the shaft in the side gear",
        kind="plain",
        centre=0.002,
        spread=2.0,
        source=MEMORY,
    ),
    Assumption(
        quantity="propeller_limit",
        label="propeller shaft and its joints",
        kind="torque",
        centre=lambda c, w: 2900.0 * (c["ring_diameter"] / 0.216) ** 2,
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="engine_torque",
        label="engine's greatest torque",
        kind="torque",
        centre=330.0,
        spread=1.4,
        source=MEMORY,
    ),
    Assumption(
        quantity="first_ratio",
        label="first gear",
        kind="plain",
        centre=3.9,
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="low_ratio", label="low range", kind="plain", centre=2.5, spread=1.2, source=MEMORY
    ),
    Assumption(
        quantity="driveline_efficiency",
        label="share of torque not lost",
        kind="plain",
        centre=0.85,
        spread=0.06,
        family="normal",
        source="DT1 of common practice, memory",
    ),
    Assumption(
        quantity="bias_ratio",
        label="torque bias of the differential",
        kind="plain",
        centre=lambda c, w: 2.6 if w["drive.lock"] == "limited slip" else 1.15,
        spread=1.2,
        source=MEMORY,
    ),
    Assumption(
        quantity="grip",
        label="grip of the tyres",
        kind="plain",
        centre=0.8,
        spread=1.2,
        source=MEMORY,
    ),
    Assumption(
        quantity="grip_wedged",
        label="grip of a wedged wheel",
        kind="plain",
        centre=lambda c, w: 1.4 * c["grip"],
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="wedged_load",
        label="share of the axle's weight on the wedged wheel",
        kind="plain",
        centre=0.75,
        spread=0.15,
        family="uniform",
        source=MEMORY,
    ),
)
