"""How hard a person's use is, against a thousand kilometres of hard trail."""

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
