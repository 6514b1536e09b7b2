"""Typeset paper made out of views."""

from axlewright.report.carry import carry_paper
from axlewright.report.order import order_paper
from axlewright.report.paper import (
    alignment_sheet,
    assessment_report,
    decision_memo,
    ends_report,
    log_paper,
    questions_sheet,
)
from axlewright.report.swap import job_sheets
from axlewright.report.take import take_page, take_paper
from axlewright.report.travel import travel_report

__all__ = [
    "alignment_sheet",
    "assessment_report",
    "carry_paper",
    "decision_memo",
    "ends_report",
    "job_sheets",
    "log_paper",
    "order_paper",
    "questions_sheet",
    "take_page",
    "take_paper",
    "travel_report",
]
