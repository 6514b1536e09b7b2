"""It shook, without a browser: what to do first, memory alone, checks in order, one change."""

import pytest

from axlewright.tables import shimmy_checks, shimmy_questions
from web.test_measure_page import plain


@pytest.fixture
def slug(bay):
    return bay.copy_example("wagtail")


def noticed(visitor, slug, still="yes", **said):
    return visitor.post(f"/axle/{slug}/shook/noticed", {"still": still, **said})


def check(visitor, slug, key, state="go", **said):
    return visitor.post(f"/axle/{slug}/shook/check", {"check": key, "state": state, **said})


def changed(visitor, slug, task, part=""):
    return visitor.post(f"/axle/{slug}/shook/changed", {"task": task, "part": part})


def test_the_first_line_is_what_to_do_when_it_happens(visitor, slug):
    """SAFETY, rule 4: before anything else on the page, a STOP included."""
    for told in (None, noticed(visitor, slug)):
        assert told is None or told.status_code == 303
        text = visitor.get(f"/axle/{slug}/shook").text
        main = text[text.index('<main id="main"') :]
        first = main.index("When it happens: hold the wheel")
        assert first < main.index("<h1>")
        if told is not None:
            assert first < main.index('class="stop"') < main.index("<h1>")


def test_nothing_on_the_page_tells_anybody_to_bring_it_on(visitor, slug):
    """SAFETY, rule 4: from memory alone, no test at speed, never provoked."""
    noticed(visitor, slug)
    told = plain(visitor.get(f"/axle/{slug}/shook")).casefold()
    for word in ("test drive", "try it at", "provoke", "drive at", "speed up", "see whether it"):
        assert word not in told
    assert "nothing is tried out on a road" in told
    assert "from memory" in told


def test_a_shake_that_may_still_be_there_is_a_stop_on_every_page(visitor, bay, slug):
    noticed(visitor, slug, "not driven since", speed="50 to 100 km/h")
    assert bay.log().drive(slug).state == "stop"
    for tail in ("/shook", "/measure", "/bent"):
        assert 'class="stop"' in visitor.get(f"/axle/{slug}{tail}").text
    noticed(visitor, slug, "no")
    assert 'class="stop"' not in visitor.get(f"/axle/{slug}/shook").text
    assert bay.log().drive(slug).state == "not looked at", "no shake is no look"


def test_checks_stand_in_the_trades_order_with_the_damper_last(visitor, slug):
    """Three maintenance manuals merged, cheap to dear: TRADE, G; the damper hides and cures not."""
    text = visitor.get(f"/axle/{slug}/shook").text
    places = {key: text.index(f'id="check-{key}"') for key in shimmy_checks()}
    order = sorted(places, key=places.get)
    assert order == sorted(shimmy_checks(), key=lambda key: shimmy_checks()[key].rank)
    assert order[-1] == "damper"
    assert order.index("nuts") < order.index("rock") < order.index("hubs") < order.index("toe")
    told = plain(visitor.get(f"/axle/{slug}/shook"))
    for one in shimmy_checks().values():
        assert one.how in told
    for one in shimmy_questions().values():
        assert one.question in told


def test_the_next_check_stands_open_and_the_evidence_is_kept(visitor, bay, slug):
    noticed(visitor, slug)
    assert 'id="check-mud" open' in visitor.get(f"/axle/{slug}/shook").text
    assert check(visitor, slug, "mud", note="inside the left rim").status_code == 303
    text = visitor.get(f"/axle/{slug}/shook").text
    assert 'id="check-nuts" open' in text
    assert "inside the left rim" in text
    [look] = bay.log().history(slug, ["look"])
    assert (look.body.look, look.body.occasion, look.body.state) == ("mud", "shimmy", "go")


def test_one_thing_at_a_time(visitor, slug):
    noticed(visitor, slug)
    changed(visitor, slug, "drag-link end renewed", "drag link")
    assert "More than one thing" not in plain(visitor.get(f"/axle/{slug}/shook"))
    changed(visitor, slug, "toe set")
    assert "More than one thing was changed" in plain(visitor.get(f"/axle/{slug}/shook"))
    noticed(visitor, slug, "not driven since")
    told = plain(visitor.get(f"/axle/{slug}/shook"))
    assert "More than one thing" not in told
    assert "drag-link end renewed" in told, "what was changed before stays among the evidence"


def test_a_damper_before_the_rest_is_told_of(visitor, slug):
    noticed(visitor, slug)
    changed(visitor, slug, "new one", "steering damper")
    assert "damper was changed before the rest" in plain(visitor.get(f"/axle/{slug}/shook"))


def test_a_check_that_stops_stops(visitor, bay, slug):
    check(visitor, slug, "box", "stop", note="a crack beside it")
    assert bay.log().drive(slug).state == "stop"


@pytest.mark.parametrize(
    ("tail", "fields", "status"),
    [
        ("noticed", {}, 422),
        ("noticed", {"still": "perhaps"}, 422),
        ("check", {"check": "moon", "state": "go"}, 404),
        ("check", {"check": "mud", "state": "lovely"}, 422),
        ("changed", {"task": " "}, 422),
        ("changed", {"task": "x", "side": "up"}, 422),
    ],
)
def test_what_cannot_be_is_refused_in_words(visitor, bay, slug, tail, fields, status):
    assert visitor.post(f"/axle/{slug}/shook/{tail}", fields).status_code == status
    assert bay.log().history(slug) == []
