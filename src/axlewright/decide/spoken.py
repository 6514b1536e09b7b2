"""Terms as the text of a file of prices, so that what was told is kept as it is read."""

import json

from axlewright.decide.terms import COSTS, YOU, Terms
from axlewright.tables import Band


def terms_text(terms: Terms) -> str:
    """Text of a file of prices that reads as these terms."""
    rows = ["axlewright_prices = 1", f"currency = {json.dumps(terms.currency)}"]
    rows += [f"one_usd = {terms.one_usd!r}", "", "[you]", f"skill = {json.dumps(terms.skill)}"]
    rows += [f"hoist = {_yes(terms.hoist)}", f"papers = {_yes(terms.papers)}"]
    own = [key for key in terms.bands if key in terms.own]
    rows += [f"{key} = {_pair(terms.bands[key])}" for key in own if key in YOU]
    costs = [f"{key} = {_pair(terms.bands[key])}" for key in own if key in COSTS]
    rows += ["", "[costs]", *costs] if costs else []
    for key, price in terms.prices.items():
        rows += [
            "",
            f"[prices.{key}]",
            f"low = {price.band.low!r}",
            f"high = {price.band.high!r}",
            f"date = {price.dated}",
            f"who = {json.dumps(price.told_by, ensure_ascii=False)}",
        ]
    return "\n".join(rows) + "\n"


def _pair(band: Band) -> str:
    return f"[{band.low!r}, {band.high!r}]"


def _yes(value: bool) -> str:
    return "true" if value else "false"
