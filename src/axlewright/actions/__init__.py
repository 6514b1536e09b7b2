"""One function for each thing that a person asks for."""

from axlewright.actions.assess import assess_file
from axlewright.actions.draft import Draft, read_draft
from axlewright.actions.report import write_questions, write_report
from axlewright.actions.start import Conversation

__all__ = [
    "Conversation",
    "Draft",
    "assess_file",
    "read_draft",
    "write_questions",
    "write_report",
]
