"""Where an axle's rods, wheels and joints sit and move: travel, bind, clearance and their cures."""

from axlewright.geometry.alignment import Alignment, align
from axlewright.geometry.alignment_caster import Sweep
from axlewright.geometry.alignment_measured import Judged, Measured
from axlewright.geometry.alignment_turn import Recentring, RodTurn
from axlewright.geometry.bind import Pull, WindUp, parked_pulls
from axlewright.geometry.clearance import Clearance, silhouette
from axlewright.geometry.fixes import Fix, Shift, shifts
from axlewright.geometry.hardpoints import Hardpoints, hardpoints, rod_in_words
from axlewright.geometry.limits import WAYS, Limit, Way, first_hard
from axlewright.geometry.measures import Measures, measures
from axlewright.geometry.study import Grid, Stance, Travel, travel, travel_grid
from axlewright.geometry.travel import Motion, motion

__all__ = [
    "WAYS",
    "Alignment",
    "Clearance",
    "Fix",
    "Grid",
    "Hardpoints",
    "Judged",
    "Limit",
    "Measured",
    "Measures",
    "Motion",
    "Pull",
    "Recentring",
    "RodTurn",
    "Shift",
    "Stance",
    "Sweep",
    "Travel",
    "Way",
    "WindUp",
    "align",
    "first_hard",
    "hardpoints",
    "measures",
    "motion",
    "parked_pulls",
    "rod_in_words",
    "shifts",
    "silhouette",
    "travel",
    "travel_grid",
]
