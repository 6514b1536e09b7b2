"""One function for each thing that a person asks for."""

from axlewright.actions.assess import assess_file

__all__ = ["assess_file"]
