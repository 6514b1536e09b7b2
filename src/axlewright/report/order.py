"""The order sheet of an axle on paper, filled or blank."""

from axlewright.report.paper import typeset
from axlewright.views import OrderData


def order_paper(data: OrderData) -> bytes:
    """Give an order sheet, or the intake sheet that a shop mails, as PDF/UA-1 on A4."""
    return typeset("order.typ", data)
