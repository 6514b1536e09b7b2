"""The page of looks: taken with a tap, a photo by its content, what is open and how it closes.

First bytes of picture files: ISO/IEC 10918-1 (JPEG), W3C PNG, RFC 9649 (WebP), ISO/IEC 14496-12.
Which looks there are: common practice, no source.
"""

import hashlib
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from axlewright.records import MOST_PHOTO
from axlewright.rig import Trip
from web.test_fuzz import FEW, TEXTS

LIST = "before_trip"


@pytest.fixture
def slug(bay):
    return bay.copy_example("wagtail")


def picture(kind="JPEG"):
    out = io.BytesIO()
    Image.new("RGB", (8, 6), "tan").save(out, kind)
    return out.getvalue()


def take(visitor, slug, look, ends, *, photo=None, **more):
    said = {"look": look, "ends": ends, "list": LIST, **more}
    files = {"files": {"photo": ("IMG 1.jpg", photo)}} if photo is not None else {}
    return visitor.post(f"/axle/{slug}/looks/take", said, **files)


def take_all(bay, visitor, slug, occasion=LIST):
    for each in bay.log().wanted(slug, occasion):
        assert take(visitor, slug, each.key, "go").status_code == 303


def test_the_page_says_first_whether_it_may_be_driven(visitor, slug):
    told = visitor.get(f"/axle/{slug}/looks").text
    assert told.index("May I drive?") < told.index("not looked at") < told.index("Every steering")
    assert "0 of 9 looks" in told


@pytest.mark.parametrize("occasion", ["before_trip", "after_trip", "after_hit", "apart", "buying"])
def test_every_list_has_its_looks_in_order(bay, visitor, slug, occasion):
    told = visitor.get(f"/axle/{slug}/looks?list={occasion}").text
    places = [told.index(f'id="look-{each.key}"') for each in bay.log().wanted(slug, occasion)]
    assert places == sorted(places)
    assert len(places) >= 5


def test_every_look_taken_says_go_and_a_trip_ends_it(bay, visitor, slug):
    take_all(bay, visitor, slug)
    assert bay.log().drive(slug).state == "go"
    told = visitor.get(f"/axle/{slug}/looks").text
    assert "9 of 9 looks" in told
    bay.log().enter(slug, Trip(name="x", distance=1e5))
    told = visitor.get(f"/axle/{slug}/looks").text
    assert "0 of 9 looks" in told
    assert "before the last trip or hit" in told


@pytest.mark.parametrize(
    ("ends", "state"),
    [
        ("go", "go"),
        ("watch", "watch"),
        ("fix", "fix before trip"),
        ("cannot tell", "fix before trip"),
        ("stop", "stop"),
    ],
)
def test_each_tap_ends_in_its_state(bay, visitor, slug, ends, state):
    assert take(visitor, slug, "before_hubs", ends).status_code == 303
    [kept] = bay.log().history(slug)
    assert kept.body.state == state
    assert kept.body.part == "hub"


def test_a_watch_lasts_as_it_was_said(bay, visitor, slug):
    said = {"until": "2030-01-02", "within": "500 km", "trips": "2", "note": "hums"}
    take(visitor, slug, "before_hubs", "watch", **said)
    take(visitor, slug, "before_oil", "go", **said)
    hubs, oil = bay.log().history(slug)
    assert (hubs.body.until.year, hubs.body.until_distance, hubs.body.until_trips) == (2030, 5e5, 2)
    assert (oil.body.until, oil.body.until_distance, oil.body.until_trips) == (None, None, None)
    assert hubs.note == "hums"


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ({"ends": "maybe"}, "does not end in"),
        ({"ends": "watch", "until": "soon"}, "is no day"),
        ({"ends": "watch", "within": "far"}, "cannot be read"),
        ({"ends": "watch", "trips": "0"}, "0 trips"),
        ({"ends": "fix", "side": "driver"}, "is no side"),
        ({"ends": "fix", "found": "odd"}, "words for what was found"),
    ],
)
def test_what_cannot_be_is_refused_beside_its_look_and_what_was_typed_stays(
    bay, visitor, slug, said, why
):
    answer = take(visitor, slug, "before_hubs", **said, note="left one hums")
    assert answer.status_code == 422
    card = answer.text.partition('id="look-before_hubs"')[2].partition("</section>")[0]
    assert why in card
    assert 'value="left one hums"' in card
    assert bay.log().history(slug) == []


def test_a_look_that_is_none_is_not_found(visitor, slug):
    assert take(visitor, slug, "moon", "go").status_code == 404


def test_sent_twice_it_is_entered_once(bay, visitor, slug):
    for _ in range(2):
        take(visitor, slug, "before_hubs", "go", key="same-key")
    assert len(bay.log().history(slug)) == 1


def test_who_looks_and_the_odometer_go_with_every_look(bay, visitor, slug):
    said = {"who": "Ada Ørn", "odometer": "120 300 km"}
    assert visitor.post(f"/axle/{slug}/looks/who", said).status_code == 303
    take(visitor, slug, "before_hubs", "go")
    [kept] = bay.log().history(slug)
    assert (kept.who, kept.odometer) == ("Ada Ørn", 120_300_000.0)
    assert "Ada Ørn looks, at 120 300 km" in visitor.get(f"/axle/{slug}/looks").text
    back = visitor.post(f"/axle/{slug}/looks/who", {"who": "Ada", "odometer": "119 km"})
    assert back.status_code == 303  # later on the same day nothing runs backwards by the day
    refused = visitor.post(f"/axle/{slug}/looks/who", {"odometer": "much"})
    assert refused.status_code == 422
    assert "Not kept" in refused.text


# -- photos ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photo_is_kept_by_its_content_and_shown_as_what_it_is(bay, visitor, slug, kind):
    data = picture(kind)
    assert take(visitor, slug, "before_hubs", "fix", photo=data).status_code == 303
    [kept] = bay.log().history(slug)
    assert kept.photos == (hashlib.sha256(data).hexdigest(),)
    place = f"/axle/{slug}/photo/{kept.photos[0]}"
    assert place in visitor.get(f"/axle/{slug}/looks").text
    shown = visitor.get(place)
    assert shown.content == data
    assert shown.headers["content-type"] == f"image/{kind.lower()}"
    assert shown.headers["x-content-type-options"] == "nosniff"
    assert "object-src 'none'" in shown.headers["content-security-policy"]


@pytest.mark.parametrize(
    "data",
    [
        b"<script>alert(1)</script>",
        b"GIF89a<script>",
        b"\xff\xd8 no jpeg",
        b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        b"%PDF-1.7",
        b"PK\x03\x04",
    ],
)
def test_what_is_no_photo_is_not_kept_whatever_its_name_says(bay, visitor, slug, data):
    answer = take(visitor, slug, "before_hubs", "go", photo=data)
    assert answer.status_code == 422
    assert "no photo" in answer.text
    assert bay.log().history(slug) == []
    assert data not in [bay.log().store.upload(one.digest) for one in bay.log().store.uploads()]


def test_script_behind_a_photos_first_bytes_is_never_html(bay, visitor, slug):
    data = picture() + b"<script>alert(1)</script>"
    take(visitor, slug, "before_hubs", "go", photo=data)
    [kept] = bay.log().history(slug)
    shown = visitor.get(f"/axle/{slug}/photo/{kept.photos[0]}")
    assert shown.headers["content-type"] == "image/jpeg"


def test_a_photo_too_large_is_refused_and_one_of_a_phone_is_not(bay, visitor, slug):
    large = picture() + bytes(12 * 1024 * 1024)
    assert take(visitor, slug, "before_hubs", "go", photo=large).status_code == 303
    answer = take(visitor, slug, "before_oil", "go", photo=picture() + bytes(MOST_PHOTO))
    assert answer.status_code in {413, 422}
    assert len(bay.log().history(slug)) == 1
    said = {"name": "x" * 2_000_000}
    assert visitor.post("/begin", said).status_code == 413  # a form stays a form


def test_a_photo_of_another_axle_or_a_rig_file_is_not_shown_here(bay, visitor, slug):
    other = bay.copy_example("heron")
    take(visitor, slug, "before_hubs", "go", photo=picture())
    [kept] = bay.log().history(slug)
    assert visitor.get(f"/axle/{other}/photo/{kept.photos[0]}").status_code == 404
    file = bay.log().store.keep_upload(b"\xff\xd8\xffrig", "a.toml")
    for digest in (file, "0" * 64, "x", "..%2f..%2fetc%2fpasswd"):
        assert visitor.get(f"/axle/{slug}/photo/{digest}").status_code == 404


# -- open, closed, taken back ----------------------------------------------------------------------


def test_a_stop_stands_on_every_page_until_work_and_a_look_close_it(bay, visitor, slug):
    take(visitor, slug, "before_joints", "stop", side="left", part="tie rod", found="loose")
    [stop] = bay.log().history(slug)
    for tail in ("", "/looks", "/answer", "/try", "/paper", "/why/1"):
        told = visitor.get(f"/axle/{slug}{tail}").text
        assert 'class="stop"' in told, tail
        assert "eft tie rod, loose" in told, tail
    take(visitor, slug, "before_joints", "go")
    told = visitor.get(f"/axle/{slug}/looks").text
    assert 'class="stop"' in told
    assert "Closed by work that is entered for it" in told
    work = {"settles": str(stop.number), "task": "joint renewed", "part": "tie rod", "side": "left"}
    assert visitor.post(f"/axle/{slug}/looks/work", work).status_code == 303
    assert "The work is entered" in visitor.get(f"/axle/{slug}/looks").text
    take(visitor, slug, "before_joints", "go")
    for tail in ("", "/looks", "/answer"):
        assert 'class="stop"' not in visitor.get(f"/axle/{slug}{tail}").text


def test_a_shake_stops_on_every_page_too(bay, visitor, slug):
    from axlewright.actions import noticed_of

    bay.log().enter(slug, noticed_of(["still=yes"]))
    for tail in ("", "/looks", "/answer"):
        assert "shake of the steering" in visitor.get(f"/axle/{slug}{tail}").text
    assert [card.stop for card in bay.axles()] == [True]
    assert "STOP" in visitor.get("/").text


def test_a_slip_is_taken_back_and_a_grave_one_only_with_a_reason(bay, visitor, slug):
    take(visitor, slug, "before_hubs", "go")
    [slip] = bay.log().history(slug)
    back = {"look": "before_hubs", "number": str(slip.number)}
    assert visitor.post(f"/axle/{slug}/looks/back", back).status_code == 303
    assert bay.log().history(slug) == []
    take(visitor, slug, "before_hubs", "stop")
    [stop] = bay.log().history(slug)
    back["number"] = str(stop.number)
    refused = visitor.post(f"/axle/{slug}/looks/back", back)
    assert refused.status_code == 422
    assert "Why does it not hold?" in refused.text
    assert bay.log().drive(slug).state == "stop"
    back["reason"] = "the other axle"
    assert visitor.post(f"/axle/{slug}/looks/back", back).status_code == 303
    assert bay.log().drive(slug).state == "not looked at"
    assert len(bay.log().history(slug, replaced=True)) == 4


def test_a_reminder_begins_with_work_and_ends_with_the_makers_torque(bay, visitor, slug):
    place = f"/axle/{slug}/looks/work"
    begun = {"interval": "wheel_fitted", "task": "front left wheel off"}
    assert visitor.post(place, begun).status_code == 303
    told = visitor.get(f"/axle/{slug}/looks").text
    assert "wheel nuts at the maker" in told
    done = {"interval": "wheel_nuts", "place": "due-wheel_nuts"}
    refused = visitor.post(place, done)
    assert refused.status_code == 422
    assert "Which torque was set" in refused.text
    assert visitor.post(place, {**done, "torque": "130 Nm, the manual"}).status_code == 303
    assert bay.log().history(slug)[-1].body.torque == "130 Nm, the manual"
    assert visitor.post(place, {"interval": "moon", "task": "x"}).status_code == 404


def test_a_fragment_carries_the_page_again(visitor, slug):
    said = {"look": "before_hubs", "ends": "go", "list": LIST}
    answer = visitor.post(f"/axle/{slug}/looks/take", said, headers={"X-Fragment": "1"})
    assert answer.status_code == 200
    assert "1 of 9 looks" in answer.text
    said["ends"] = "maybe"
    answer = visitor.post(f"/axle/{slug}/looks/take", said, headers={"X-Fragment": "1"})
    assert (answer.status_code, answer.headers["x-not-kept"]) == (200, "1")


@settings(FEW, max_examples=8)
@given(
    look=st.one_of(st.sampled_from(["before_hubs", "after_oil", "steers"]), TEXTS),
    ends=st.one_of(st.sampled_from(["go", "watch", "fix", "stop", "cannot tell"]), TEXTS),
    more=st.dictionaries(
        st.sampled_from(["side", "part", "found", "until", "within", "trips", "note", "list"]),
        TEXTS,
    ),
    what=TEXTS,
    bow=TEXTS,
    off=TEXTS,
    digits=TEXTS,
)
def test_whatever_is_sent_is_entered_readable_or_refused(
    bay, visitor, slug, look, ends, more, what, bow, off, digits
):
    book, place = bay.log(), f"/axle/{slug}"
    before = len(book.history(slug, replaced=True))
    sent = [
        visitor.post(f"{place}/looks/take", {**more, "look": look, "ends": ends}),
        visitor.post(f"{place}/hit/enter", {**more, "what": what, "speed": bow}),
        visitor.post(f"{place}/hit/sum", {"rod": "tie_rod", "bow": bow, "off": off}),
        visitor.post(f"{place}/looks/work", {**more, "task": what, "settles": digits}),
        visitor.post(f"{place}/looks/back", {"number": digits, "reason": what}),
    ]
    assert {each.status_code for each in sent} <= {303, 403, 404, 422}
    entered = sum(each.status_code == 303 for each in sent)
    assert len(book.history(slug, replaced=True)) - before == entered
    assert visitor.post(f"{place}/looks/who", {"who": what, "odometer": off}).status_code in {
        303,
        422,
    }
    for tail in ("looks", "hit"):
        assert visitor.get(f"{place}/{tail}").status_code == 200
