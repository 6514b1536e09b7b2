"""Turn use into loads: the cases, how hard each is, and what the ground does to the axle."""

from axlewright.duty.cases import CASES, Case, live_cases
from axlewright.duty.loads import ROW, Loads, wheel_loads
from axlewright.duty.severity import in_ground_terms
from axlewright.duty.use import hard_trail_cycles, hard_trail_share, harder_moments

__all__ = [
    "CASES",
    "ROW",
    "Case",
    "Loads",
    "hard_trail_cycles",
    "hard_trail_share",
    "harder_moments",
    "in_ground_terms",
    "live_cases",
    "wheel_loads",
]
