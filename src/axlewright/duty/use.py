"""How hard a person's use is, against a thousand kilometres of hard trail."""

import numpy as np

from axlewright.rig import Column
from axlewright.tables import duty, duty_count

HARD_TRAIL = 1.0e6  # m
HARD = "rocks_and_ledges"


def duty_key(hardest: str) -> str:
    """Key of the duties table for what a person said."""
    return hardest.replace(" ", "_")


def hard_trail_share(hardest: str) -> float:
    """Kilometres of this use that wear like one kilometre of hard trail."""
    return duty(duty_key(hardest)).equivalent_distance / HARD_TRAIL


def hard_trail_cycles(case: str) -> float:
    """Load cycles of one case in 1,000 km of hard trail."""
    return duty_count(f"{HARD}.{case}").cycles_per_1000_km


def harder_moments(case: str, hardness: Column) -> Column:
    """How often a case is at least so hard, in one metre of hard trail.

    The exceedances of an exponential spectrum: the case's count at hardness 0, one in 1,000 km at
    hardness 1, none at inf. The same spectrum stands behind the order of wearing out.
    """
    count = hard_trail_cycles(case)
    with np.errstate(over="ignore"):
        return np.asarray(count ** (1.0 - np.maximum(hardness, 0.0)) / HARD_TRAIL)
