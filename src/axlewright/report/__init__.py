"""Typeset paper made out of views."""

from axlewright.report.paper import assessment_report, questions_sheet
from axlewright.report.take import take_page, take_paper

__all__ = ["assessment_report", "questions_sheet", "take_page", "take_paper"]
