"""A cure's short name, for the change that it is kept as."""

from typing import Final

from axlewright.geometry import Fix
from axlewright.views.travel import angle, length

NAMES: Final = {
    "drop_arm": "drop arm {amount} {down}",
    "raised_track_bar": "track bar bracket {amount} up",
    "track_bar_length": "track bar's length set",
    "adjustable_upper_arms": "upper arms {amount} {way}",
    "turned_arms": "offset bushings",
    "turned_forgings": "end forgings turned {angle}",
    "drop_brackets": "arm brackets {amount} lower",
    "longer_stops": "bump stops {amount} longer",
}


def cure_name(fix: Fix, system: str = "metric") -> str:
    """Give a cure a name of a few words."""
    return NAMES[fix.key].format(
        amount=length(abs(fix.amount), system),
        angle=angle(abs(fix.amount)),
        way="longer" if fix.amount > 0.0 else "shorter",
        down="higher" if fix.amount < 0.0 else "lower",
    )
