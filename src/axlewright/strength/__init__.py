"""What the axle can take: every part against every case, the two orders, and their doubt."""

from axlewright.strength.appraisal import (
    Appraised,
    Drawn,
    appraise,
    appraise_draws,
    appraise_point,
    margins,
    parts_of,
)
from axlewright.strength.doubt import Influence, SeverityMove, influences, severity_moves
from axlewright.strength.ledger import Row, Solved
from axlewright.strength.order import Place, WearPlace, bad_moment_order, wear_order
from axlewright.strength.wear import TARGET_KM, Wear

__all__ = [
    "TARGET_KM",
    "Appraised",
    "Drawn",
    "Influence",
    "Place",
    "Row",
    "SeverityMove",
    "Solved",
    "Wear",
    "WearPlace",
    "appraise",
    "appraise_draws",
    "appraise_point",
    "bad_moment_order",
    "influences",
    "margins",
    "parts_of",
    "severity_moves",
    "wear_order",
]
