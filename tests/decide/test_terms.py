"""A file of prices: what it takes, and every fault at once."""

import pytest

from axlewright.decide import Terms, read_terms
from axlewright.errors import BadFile

WHOLE = """
axlewright_prices = 1
currency = "EUR"
one_usd = 0.9
[you]
skill = "shop"
hoist = true
km_a_year = [400, 900]
[costs]
day_off = 40
[prices.truss]
low = 380
high = 520
date = 2026-10-02
who = "the welder"
"""


def test_own_prices_stand_before_rough_ones_and_the_rest_are_turned_into_the_currency():
    terms = read_terms(WHOLE)
    assert terms.price("truss").band.low == 380.0
    assert terms.price("truss").own
    assert terms.price("truss").told_by == "the welder"
    rough = Terms().price("sleeve")
    assert terms.price("sleeve").band.high == pytest.approx(0.9 * rough.band.high)
    assert not terms.price("sleeve").own
    assert terms.band("day_off").middle == 40.0
    assert terms.band("call_out").low == pytest.approx(0.9 * Terms().band("call_out").low)
    assert terms.band("lost_days") == Terms().band("lost_days"), "days are no money"


def test_rough_prices_say_that_they_are():
    for key in ("truss", "bigger_class"):
        price = Terms().price(key)
        assert "memory" in price.told_by
        assert price.dated == "2026-11"
        assert price.band.high >= 2.0 * price.band.low, "a rough price is a wide band"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("currency = 'EUR'", ["axlewright_prices", "one_usd"]),
        ("axlewright_prices = 1\ncurrency = 'euro'", ["currency"]),
        ("axlewright_prices = 1\n[you]\nskill = 'wizard'", ["you.skill", "first-timer"]),
        ("axlewright_prices = 1\n[you]\nhoist = 'yes'", ["you.hoist", "true or false"]),
        ("axlewright_prices = 1\n[costs]\nday_off = [90, 10]", ["costs.day_off", "[low, high]"]),
        ("axlewright_prices = 1\n[costs]\nday_of = 3", ["costs.day_of", "day_off"]),
        ("axlewright_prices = 1\n[prices.trus]\nlow = 1", ["prices.trus", "truss"]),
        ("axlewright_prices = 1\n[prices.truss]\nlow = 1", ["high", "date", "who"]),
        ("axlewright_prices = 1\nprices = 3", ["[prices]"]),
        ("axlewright_prices = 1\none_usd = -2", ["one_usd"]),
    ],
)
def test_a_fault_says_where_what_and_how_it_is_put_right(text, told):
    with pytest.raises(BadFile) as caught:
        read_terms(text, "mine.toml")
    said = str(caught.value)
    assert "mine.toml" in said
    assert all(each in said for each in told), said


def test_all_faults_are_told_at_once():
    text = "axlewright_prices = 1\n[you]\nskill = 'wizard'\n[costs]\nday_of = 3\nown_hour = 'x'"
    with pytest.raises(BadFile) as caught:
        read_terms(text)
    assert len(caught.value.faults) == 3
    assert {fault.line for fault in caught.value.faults} == {3, 5, 6}
