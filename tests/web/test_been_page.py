"""Where it has been: what is entered there, refused there and put right there, without a script."""

import io
import re
import zipfile

import pytest

from axlewright.actions import Bay
from web.visitor import Visitor

HEAD = re.compile(r"<p class=\"says\">(.*?)</p>", re.DOTALL)


@pytest.fixture
def slug(bay):
    return bay.copy_example("heron")


def send(visitor, slug, form, **said):
    return visitor.post(f"/axle/{slug}/been/{form}", said)


def entries(visitor, slug, page=""):
    text = visitor.get(f"/axle/{slug}/been{page}").text
    return [int(each) for each in re.findall(r'id="entry-(\d+)"', text)]


def test_a_trip_is_kept_by_the_form_and_counts(visitor, slug):
    answer = send(
        visitor,
        slug,
        "trip",
        name="North loop",
        distance="180 km",
        ground="forest_roads",
        odometer="120 480 km",
        water="70 cm",
    )
    assert (answer.status_code, answer.headers["location"]) == (303, f"/axle/{slug}/been#history")
    page = visitor.get(f"/axle/{slug}/been").text
    assert "one trip of it, 180 km, is on record" in HEAD.search(page)[1]
    assert "North loop: 180 km, forest roads, water 700 mm" in page
    assert "at 120480 km" in page


@pytest.mark.parametrize(
    ("form", "said", "told"),
    [
        ("trip", {"distance": "180"}, "unit"),
        ("trip", {"distance": "don't know"}, "How far was it?"),
        ("trip", {"distance": "5 km", "on": "tomorrow"}, "is no day"),
        ("trip", {"distance": "5 km", "on": "2999-01-01"}, "lies ahead"),
        ("trip", {"distance": "5 km", "ground": "moon"}, "no ground"),
        ("trip", {"distance": "5 km", "right": "77"}, "no entry 77"),
        ("chapter", {"title": "", "distance": "5 km"}, "What was it?"),
        ("chapter", {"title": "before", "distance": ""}, "distance"),
        ("part", {"kind": "hub", "name": ""}, "What is the part called?"),
        ("note", {"note": " "}, "nothing to keep"),
        ("withdraw", {"number": "x", "reason": "twice"}, "Which entry?"),
        ("withdraw", {"number": "7", "reason": "twice"}, "no entry 7"),
    ],
)
def test_what_cannot_be_kept_is_told_beside_its_form(visitor, slug, form, said, told):
    answer = send(visitor, slug, form, **said)
    assert answer.status_code in {404, 422}
    assert told in answer.text.replace("&#39;", "'")
    if answer.status_code == 422:
        assert "Not kept." in answer.text
        assert all(f'value="{each}"' in answer.text for each in said.values() if each == "5 km")
    assert entries(visitor, slug) == []


def test_a_wrong_entry_is_put_right_or_withdrawn_and_stays_named(visitor, slug):
    send(visitor, slug, "trip", name="Loop", distance="18 km")
    send(visitor, slug, "note", note="paint marks", about="left hub")
    form = visitor.get(f"/axle/{slug}/been?right=1").text
    assert "This puts entry 1 right" in form
    assert 'value="18 km"' in form
    send(visitor, slug, "trip", name="Loop", distance="180 km", right="1")
    send(visitor, slug, "withdraw", number="2", reason="another rig's")
    page = visitor.get(f"/axle/{slug}/been").text
    assert "180 km, is on record" in HEAD.search(page)[1]
    assert "Put right by entry 3." in page
    assert "In place of entry 1." in page
    assert "(entry 4): another rig&#39;s." in page
    assert entries(visitor, slug) == [4, 3, 2, 1]
    # what was put right once is not put right again behind its back
    assert send(visitor, slug, "trip", distance="1 km", right="1").status_code == 422
    assert "This puts" not in visitor.get(f"/axle/{slug}/been?right=1").text


def test_the_past_has_wide_bands_and_what_broke_stands_beside_both_orders(visitor, slug):
    """HOUSE: what has broken is compared with what the order would have said."""
    said = {"title": "before us", "distance": "60000 km", "broke": "inner shaft, left tube"}
    send(visitor, slug, "chapter", **said)
    page = visitor.get(f"/axle/{slug}/been").text
    assert "30000 km to 120000 km" in HEAD.search(page)[1]
    line = re.search(r'<p class="broke">(.*?)<a', page, re.DOTALL)[1]
    assert re.search(r"inner shaft \(number \d+ of \d+ in one bad moment", line)
    assert re.search(r"left tube \(number \d+ of \d+ in one bad moment.* in wearing out\)", line)
    assert line.strip() in visitor.get(f"/axle/{slug}/answer").text


def test_a_part_keeps_its_identity_and_what_it_went_through(visitor, slug, bay):
    other = bay.copy_example("wagtail")
    part = {"kind": "hub", "name": "left hub", "mark": "three dots", "place": "left hub"}
    assert send(visitor, slug, "part", **part).headers["location"].endswith("#parts")
    send(visitor, slug, "trip", distance="100 km")
    assert "place holds one part" in send(visitor, slug, "part", **part | {"mark": "x"}).text
    assert "is a part of that name" in send(visitor, slug, "part", **part).text
    send(visitor, slug, "off", component="hub-1", reason="worn")
    send(visitor, other, "fit", component="hub-1", place="right hub")
    send(visitor, other, "trip", distance="40 km")
    page = visitor.get(f"/axle/{other}/been").text
    assert "Went through 140 km, 2 trips, 0 hits" in page
    assert "In at <b>right hub</b>" in page
    assert f"On <b>{other}</b>" in visitor.get(f"/axle/{slug}/been").text


def test_history_is_paged_the_newest_first(visitor, slug):
    for number in range(45):
        send(visitor, slug, "note", note=f"note {number}", key=f"k{number}")
    assert entries(visitor, slug) == list(range(45, 25, -1))
    assert entries(visitor, slug, "?page=3") == list(range(5, 0, -1))
    for odd in ("0", "99", "-1", "x", "9" * 50):
        assert entries(visitor, slug, f"?page={odd}")


def test_a_form_sent_twice_is_entered_once(visitor, slug):
    for _ in range(2):
        send(visitor, slug, "trip", distance="10 km", key="phone-1")
    assert entries(visitor, slug) == [1]


def test_the_log_is_a_pdf_that_needs_no_answers(visitor, bay):
    answer = visitor.get(f"/axle/{bay.begin('Crake', 'rear')}/been/log.pdf")
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")


def test_everything_goes_out_and_into_an_empty_bay_alone(visitor, slug, tmp_path):
    send(visitor, slug, "note", note="over there")
    given = visitor.get("/archive/axlewright-archive.zip")
    assert zipfile.ZipFile(io.BytesIO(given.content)).testzip() is None
    upload = {"archive": ("a.zip", given.content, "application/zip")}
    assert "Save everything" in visitor.get("/archive").text
    refused = visitor.post("/archive", files=upload)
    assert refused.status_code == 422
    assert "keeps axles already" in refused.text
    empty = Bay.open(tmp_path / "new")
    there = Visitor(empty)
    damaged = {"archive": ("a.zip", given.content[:-40], "application/zip")}
    told = there.post("/archive", files=damaged)
    assert told.status_code == 422
    assert "Nothing was taken in." in told.text
    assert empty.axles() == []
    assert there.post("/archive").status_code == 422
    assert there.post("/archive", files=upload).headers["location"] == "/"
    assert entries(there, slug) == [1]
    assert there.get("/archive/axlewright-archive.zip").content == given.content
    empty.close()
