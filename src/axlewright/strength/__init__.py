"""What the axle can take: every part against every case, the two orders, and their doubt."""

from axlewright.strength.acting import Acting, Size, acting_doubts, sizes_of
from axlewright.strength.appraisal import (
    Appraised,
    Drawn,
    Progress,
    appraise,
    appraise_draws,
    appraise_point,
    kind_of,
    margins,
    parts_of,
)
from axlewright.strength.assessment import DRAWS, Assessment, Comparison, assess_rig, compare
from axlewright.strength.bent import Bent, ShaftRun, bent_after, shaft_run, standing_camber
from axlewright.strength.breaking import breaking_rates, wear_lives
from axlewright.strength.bulk import above_tubes, housing_mass, lowest_point
from axlewright.strength.doubt import (
    Influence,
    Mover,
    Remembered,
    SeverityMove,
    influences,
    remembered_shares,
    severity_moves,
)
from axlewright.strength.housing import stations, tube_sections
from axlewright.strength.ledger import Row, Solved
from axlewright.strength.order import (
    Mended,
    Place,
    WearPlace,
    after_mend,
    bad_moment_order,
    wear_order,
)
from axlewright.strength.stressed import Stressed, stressed
from axlewright.strength.wear import TARGET_KM, Wear, hub_lives

__all__ = [
    "DRAWS",
    "TARGET_KM",
    "Acting",
    "Appraised",
    "Assessment",
    "Bent",
    "Comparison",
    "Drawn",
    "Influence",
    "Mended",
    "Mover",
    "Place",
    "Progress",
    "Remembered",
    "Row",
    "SeverityMove",
    "ShaftRun",
    "Size",
    "Solved",
    "Stressed",
    "Wear",
    "WearPlace",
    "above_tubes",
    "acting_doubts",
    "after_mend",
    "appraise",
    "appraise_draws",
    "appraise_point",
    "assess_rig",
    "bad_moment_order",
    "bent_after",
    "breaking_rates",
    "compare",
    "housing_mass",
    "hub_lives",
    "influences",
    "kind_of",
    "lowest_point",
    "margins",
    "parts_of",
    "remembered_shares",
    "severity_moves",
    "shaft_run",
    "sizes_of",
    "standing_camber",
    "stations",
    "stressed",
    "tube_sections",
    "wear_lives",
    "wear_order",
]
