"""The travel of an axle on paper."""

from axlewright.report.paper import typeset
from axlewright.views import TravelData


def travel_report(data: TravelData) -> bytes:
    """Give the report of a study of travel as PDF/UA-1 on A4."""
    return typeset("travel.typ", data)
