"""The swap plan on paper: job sheets to stick to the wall and write on."""

from axlewright.report.paper import typeset
from axlewright.views import SwapData


def job_sheets(data: SwapData) -> bytes:
    """Give the job sheets of a plan as PDF/UA-1 on A4."""
    return typeset("swap.typ", data)
