"""Who reads in US units meets no metric length, speed or weight that nobody wrote.

Outside reference: an inch of 25.4 mm (NIST SP 811, appendix B).
"""

import html
import re

import pytest

METRIC = re.compile(r"\d ?(mm|cm|km|km/h|kg|kN|kPa|N m|N/mm)\b")
# What stays metric: an ET is stamped in millimetres; both systems side by side; as it was given.
STAYS = re.compile(
    r"ET -?[\d.]+ mm|as told: -?[\d.]+ mm|\d+ mm \([\d.]+ in\)|\([\d.]+ mm\)|\d mm \(1 in\)"
    r"|given as '[^']*'|1/8 in \(3 mm\)|[\d.]+ in, that is [\d.]+ mm|For example: [^|]*"
)
TAILS = (
    "/answer",
    "/moves",
    "/measure",
    "/measure/camber",
    "/measure/tube_angle",
    "/bent",
    "/shook",
    "/looks?list=after_hit",
    "/hit",
    "/been",
    "/carry",
    "/cards",
)


@pytest.fixture
def slug(visitor):
    place = visitor.post("/copy", {"example": "heron"}).headers["location"]
    visitor.client.cookies.set("bay_settings", "us.light")
    return place.rpartition("/")[2]


def told(answer):
    text = re.sub(r"(?s)<script.*?</script>|<style.*?</style>|<input[^>]*>", "", answer.text)
    return html.unescape(re.sub(r"<[^>]+>", " | ", text))


@pytest.mark.parametrize("tail", TAILS)
def test_no_page_speaks_metric_to_who_reads_in_inches(visitor, slug, tail):
    answer = visitor.get(f"/axle/{slug}{tail}")
    assert answer.status_code == 200
    left = STAYS.sub("", told(answer))
    found = [left[max(each.start() - 60, 0) : each.end()] for each in METRIC.finditer(left)]
    assert not found


def test_what_an_answer_tells_is_told_in_the_units_that_were_picked(visitor, slug):
    page = told(visitor.get(f"/axle/{slug}"))
    assert "Loaded radius: 17.0 in" in page
    assert "square ledge" in page or "drop of" in page
    visitor.client.cookies.set("bay_settings", "metric.light")
    assert "Loaded radius: 431 mm" in told(visitor.get(f"/axle/{slug}"))
