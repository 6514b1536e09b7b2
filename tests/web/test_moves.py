"""How it moves: the page, what follows the thumb, and a visit at both widths.

Outside reference: common practice, no source, for what is set where.
"""

import re

import pytest
from playwright.sync_api import expect

from web.browsing import wider_than_its_window
from web.test_answer_visits import copied

LIFT = 'axlewright_change = 1\nname = "lift"\n[[step]]\nset = "travel.lift"\nto = "60 mm"\n'
FAR = "1500 mm ahead, 421 mm right, 540 mm up"


def test_the_page_says_it_and_shows_it_without_a_script(bay, visitor):
    slug = bay.copy_example("heron")
    told = visitor.get(f"/axle/{slug}/moves?pose=bump").text
    assert told.count("<svg") >= 3
    assert "Toe is set on the tie rod, never on the track bar." in told
    assert "degree for degree" in told
    assert "Both wheels 122 mm up" in told
    assert "unlocked" in told  # the hubs decide
    assert "by a qualified welder" in told


def test_before_the_questions_are_answered_it_says_so(bay, visitor):
    slug = bay.begin("Crake", "rear")
    assert "still open" in visitor.get(f"/axle/{slug}/moves").text
    assert visitor.get(f"/axle/{slug}/moves/now").status_code == 404
    assert visitor.get(f"/axle/{slug}/moves/travel.pdf").status_code == 404


def test_a_rod_that_cannot_reach_is_named(bay, visitor):
    slug = bay.copy_example("heron")
    assert bay.answer(slug, "points.track_bar_axle", FAR, tell=False).stored
    answer = visitor.get(f"/axle/{slug}/moves")
    assert answer.status_code == 200
    assert re.search("track bar|turn over", answer.text)


def test_a_kept_change_stands_before_and_after(bay, visitor):
    slug = bay.copy_example("heron")
    number = bay.keep_change(slug, "lift", LIFT).number
    told = visitor.get(f"/axle/{slug}/moves?with={number}").text
    assert "Worse: caster" in told
    assert "Before the change" in told
    assert visitor.get(f"/axle/{slug}/moves?with=999999").status_code == 404
    assert visitor.get(f"/axle/{slug}/moves/travel.pdf?with={number}").content[:5] == b"%PDF-"


def test_a_cure_is_kept_as_a_change_after_the_one_it_was_tried_on(bay, visitor):
    slug = bay.copy_example("heron")
    number = bay.keep_change(slug, "lift", LIFT).number
    told = visitor.get(f"/axle/{slug}/moves?with={number}").text
    assert "Keep it as a change" in told
    posted = visitor.post(
        f"/axle/{slug}/moves/keep",
        {"cure": "raised_track_bar", "with": str(number)},
    )
    assert posted.status_code == 303, posted.text
    kept = bay.changes(slug)[-1]
    assert kept.name == "lift; track bar bracket 50 mm up"
    assert [line for line in kept.text.splitlines() if line.startswith("set")] == [
        'set = "travel.lift"', 'set = "points.track_bar_axle"', 'set = "longer.track_bar"',
    ]  # fmt: skip
    assert posted.headers["location"].startswith(f"/axle/{slug}/moves?with={kept.number}")
    after = bay.moves(slug, kept.text).shown
    tried = bay.moves(slug, LIFT).shown
    cure = next(each for each in tried.fixes if each.key == "raised_track_bar")
    for shift in cure.shifts:  # what was told of the cure is what the change does
        assert getattr(after.now, shift.measure) == pytest.approx(shift.after, abs=2e-3)
    assert "track bar bracket 50 mm up" in visitor.get(f"/axle/{slug}/try").text


def test_a_cure_that_was_not_tried_is_not_kept(bay, visitor):
    slug = bay.copy_example("heron")
    answer = visitor.post(f"/axle/{slug}/moves/keep", {"cure": "longer_stops"})
    assert answer.status_code == 422
    assert "No such cure was tried here." in answer.text
    assert bay.changes(slug) == []


@pytest.mark.parametrize("text", ["nan", "1e9", "-1e9", "x", "", "٣"])
def test_whatever_a_slider_says_there_is_a_pose(bay, visitor, text):
    slug = bay.copy_example("heron")
    answer = visitor.get(f"/axle/{slug}/moves/now", params={"bump": text, "steer": text})
    assert answer.status_code == 200
    assert "<svg" in answer.text


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_the_axle_follows_the_keys(open_page, size):
    page = open_page(size)
    slug = copied(page)
    page.goto(f"/axle/{slug}/moves")
    lines = page.locator(".pose-lines")
    expect(lines).to_contain_text("at ride height")
    bump = page.get_by_role("slider", name=re.compile("Both wheels"))
    before = page.locator("#posed svg").first.inner_html()
    bump.focus()
    for _ in range(20):
        page.keyboard.press("ArrowRight")
    expect(bump).to_have_value("20")
    expect(lines).to_contain_text("Both wheels 20 mm up")
    assert page.locator("#posed svg").first.inner_html() != before
    expect(bump).to_have_attribute("aria-valuetext", re.compile("20 mm up"))
    page.keyboard.press("Home")
    expect(lines).to_contain_text("the damper is pulled out")
    page.get_by_role("link", name="full lock").click()
    expect(lines).to_contain_text("The left wheel is turned")
    assert wider_than_its_window(page) <= 0
