"""How hard a person's use is, against a thousand kilometres of hard trail."""

HARD_TRAIL_SHARE = {
    "gravel and farm tracks": 12.0,
    "forest roads": 6.0,
    "rough tracks and corrugation": 2.5,
    "rocks and ledges": 1.0,
    "speed and jumps": 0.6,
}  # km of this use that wear like one km of hard trail; memory, x/: 2 ("duty_share")


def hard_trail_share(hardest: str) -> float:
    """Kilometres of this use that wear like one kilometre of hard trail."""
    return HARD_TRAIL_SHARE[hardest]
