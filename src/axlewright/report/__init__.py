"""Typeset paper made out of views."""

from axlewright.report.paper import assessment_report, questions_sheet
from axlewright.report.take import take_page, take_paper
from axlewright.report.travel import travel_report

__all__ = [
    "assessment_report",
    "questions_sheet",
    "take_page",
    "take_paper",
    "travel_report",
]
