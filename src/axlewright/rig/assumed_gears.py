"""Assumptions about ring and pinion, the differential's gears and the carrier's caps."""

import numpy as np

from axlewright.physics import bevel
from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.scaling import MEMORY

FACE = "0.3 of the cone distance, Budynas and Nisbett, ch. 15"
RING_TEETH = 41.0  # usual ring gear, so that a ratio tells the pinion's teeth; memory
SIDE_RATIO = 1.6  # side gear's teeth over its mate's; memory
TWO, SOME = 2.0, 3.0  # mates in an open differential, and in one with a lock (2 to 4); memory


def _face(columns: Columns, _: Words) -> Column:
    cone = bevel.pitch_angle(columns["axle_ratio"], 1.0)
    return np.asarray(0.3 * bevel.outer_cone_distance(columns["ring_diameter"], cone))


def _side_face(columns: Columns, _: Words) -> Column:
    cone = bevel.pitch_angle(SIDE_RATIO, 1.0)
    return np.asarray(0.3 * bevel.outer_cone_distance(columns["side_gear"], cone))


GEARS: tuple[Assumption, ...] = (
    Assumption(
        quantity="pinion_teeth",
        label="teeth of the pinion",
        kind="plain",
        centre=lambda c, w: RING_TEETH / c["axle_ratio"],
        spread=1.08,
        source="a ring of about 41 teeth, memory",
    ),
    Assumption(
        quantity="ring_face",
        label="face width of the ring gear",
        kind="length",
        centre=_face,
        spread=1.15,
        source=FACE,
    ),
    Assumption(
        quantity="ring_bending",
        label="bending geometry factor J of ring and pinion",
        kind="plain",
        centre=0.22,
        spread=1.5,
        source="charts of AGMA 2003-B97 for spiral bevels, memory",
    ),
    Assumption(
        quantity="ring_pitting",
        label="pitting geometry factor I of ring and pinion",
        kind="plain",
        centre=0.11,
        spread=1.5,
        source="charts of AGMA 2003-B97 for spiral bevels, memory",
    ),
    Assumption(
        quantity="tooth_bending",
        label="allowable bending number of carburised teeth",
        kind="stress",
        centre=240e6,
        spread=1.17,
        source="AGMA 2003-B97, grades 1 to 3: 205 to 275 MPa, memory",
    ),
    Assumption(
        quantity="tooth_contact",
        label="allowable contact number of carburised teeth",
        kind="stress",
        centre=1550e6,
        spread=1.12,
        source="AGMA 2003-B97, grades 1 to 3: 1380 to 1720 MPa, memory",
    ),
    Assumption(
        quantity="tooth_blow",
        label="one blow that breaks a tooth over a thousand",
        kind="plain",
        centre=1.4,
        spread=1.5,
        source="overload tests of single carburised teeth, memory",
    ),
    Assumption(
        quantity="ring_spiral",
        label="spiral angle of the ring gear",
        kind="angle",
        centre=np.radians(35.0),
        spread=np.radians(5.0),
        family="normal",
        source="spiral bevels, 35 degrees usual; memory",
    ),
    Assumption(
        quantity="ring_pressure",
        label="pressure angle of ring and pinion",
        kind="angle",
        centre=np.radians(20.0),
        spread=np.radians(2.0),
        family="normal",
        source="20 to 22.5 degrees in use, memory",
    ),
    Assumption(
        quantity="mesh_share",
        label="share of the mesh force on the nearer carrier bearing",
        kind="plain",
        centre=0.65,
        spread=0.1,
        family="uniform",
        source=MEMORY,
    ),
    Assumption(
        quantity="carrier_span",
        label="carrier bearing to carrier bearing",
        kind="length",
        centre=lambda c, w: 0.8 * c["ring_diameter"],
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="cap_clamp",
        label="clamp of the carrier caps, one side",
        kind="force",
        centre=lambda c, w: 130e3 * (c["ring_diameter"] / 0.216) ** 2,
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="side_gear",
        label="side gear across",
        kind="length",
        centre=lambda c, w: 0.4 * c["ring_diameter"],
        spread=1.15,
        source=MEMORY,
    ),
    Assumption(
        quantity="side_teeth",
        label="teeth of a side gear",
        kind="plain",
        centre=16.0,
        spread=1.12,
        source=MEMORY,
    ),
    Assumption(
        quantity="side_face",
        label="face width of the side gears",
        kind="length",
        centre=_side_face,
        spread=1.25,
        source=FACE,
    ),
    Assumption(
        quantity="side_mates",
        label="small gears in the differential",
        kind="plain",
        centre=lambda c, w: TWO if w["drive.lock"] == "open" else SOME,
        spread=1.3,
        source="two where open, two to four with a lock; memory",
    ),
    Assumption(
        quantity="side_bending",
        label="bending geometry factor J of the side gears",
        kind="plain",
        centre=0.23,
        spread=1.5,
        source="charts of AGMA 2003-B97 for straight bevels, memory",
    ),
)
