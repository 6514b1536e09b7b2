"""One function for each thing that a person asks for."""

from axlewright.actions.assess import assess_file
from axlewright.actions.report import write_report

__all__ = ["assess_file", "write_report"]
