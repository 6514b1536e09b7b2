"""What to carry, on paper: the packing list to tick, and every repair card of the axle."""

from axlewright.report.paper import typeset
from axlewright.views import CarryData


def carry_paper(data: CarryData) -> bytes:
    """Give packing list and repair cards as PDF/UA-1 on A4."""
    return typeset("carry.typ", data)
