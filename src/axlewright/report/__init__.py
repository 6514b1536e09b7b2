"""Typeset paper made out of views."""

from axlewright.report.paper import assessment_report, questions_sheet

__all__ = ["assessment_report", "questions_sheet"]
