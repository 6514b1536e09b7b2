"""One function for each thing that a person asks for."""

from axlewright.actions.assess import (
    DRAWS,
    Assessment,
    Comparison,
    assess_file,
    assess_rig,
    compare,
)

__all__ = ["DRAWS", "Assessment", "Comparison", "assess_file", "assess_rig", "compare"]
