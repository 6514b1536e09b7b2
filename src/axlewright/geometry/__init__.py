"""Where an axle's rods, wheels and joints sit and move: travel, bind, clearance and their cures."""

from axlewright.geometry.alignment import Alignment, align
from axlewright.geometry.alignment_caster import Sweep
from axlewright.geometry.alignment_measured import Judged, Measured
from axlewright.geometry.alignment_turn import Recentring, RodTurn
from axlewright.geometry.bind import Pull, WindUp, parked_pulls
from axlewright.geometry.brakes import BrakesAsked, brakes_asked
from axlewright.geometry.built_in import BuiltIn, Turned
from axlewright.geometry.clearance import Clearance
from axlewright.geometry.driveline import Line, Shaking, Whirl, driveline_of, shaking
from axlewright.geometry.driveline_study import (
    Driveline,
    ShaftStance,
    driveline_in_travel,
    driveline_over,
    line_through,
)
from axlewright.geometry.driveline_verdicts import Check, Standing
from axlewright.geometry.fixes import Fix, Shift, shifts
from axlewright.geometry.limits import WAYS, Left, Limit, Way, first_hard
from axlewright.geometry.measuring import BUMP, Measures, measures
from axlewright.geometry.moved import GeometryMoved, Moved, geometry_moved
from axlewright.geometry.moving import Motion, motion
from axlewright.geometry.outline import Edge, Outline
from axlewright.geometry.points import Hardpoints, hardpoints, rod_in_words
from axlewright.geometry.posing import Pose, Reach, SteeringShape, pose_of, reach_of, steering_shape
from axlewright.geometry.study import Grid, Stance, Travel, travel, travel_grid
from axlewright.geometry.wedges import Wedge

__all__ = [
    "BUMP",
    "WAYS",
    "Alignment",
    "BrakesAsked",
    "BuiltIn",
    "Check",
    "Clearance",
    "Driveline",
    "Edge",
    "Fix",
    "GeometryMoved",
    "Grid",
    "Hardpoints",
    "Judged",
    "Left",
    "Limit",
    "Line",
    "Measured",
    "Measures",
    "Motion",
    "Moved",
    "Outline",
    "Pose",
    "Pull",
    "Reach",
    "Recentring",
    "RodTurn",
    "ShaftStance",
    "Shaking",
    "Shift",
    "Stance",
    "Standing",
    "SteeringShape",
    "Sweep",
    "Travel",
    "Turned",
    "Way",
    "Wedge",
    "Whirl",
    "WindUp",
    "align",
    "brakes_asked",
    "driveline_in_travel",
    "driveline_of",
    "driveline_over",
    "first_hard",
    "geometry_moved",
    "hardpoints",
    "line_through",
    "measures",
    "motion",
    "parked_pulls",
    "pose_of",
    "reach_of",
    "rod_in_words",
    "shaking",
    "shifts",
    "steering_shape",
    "travel",
    "travel_grid",
]
