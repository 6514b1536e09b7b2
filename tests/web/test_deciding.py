"""Whole visits to Mend or replace? at both widths, and its parts in process."""

import time

import pytest
from playwright.sync_api import expect
from tools.bay_pages import LONG_WORK

from web.browsing import wider_than_its_window

SIZES = ("desk", "phone")


def begun(page, name="Wagtail"):
    page.goto("/")
    page.get_by_role("button", name=name).click()
    page.wait_for_url("**/axle/**")
    return page.url.rpartition("/")[2]


@pytest.mark.parametrize("size", SIZES)
def test_a_visit_left_and_resumed_ends_in_a_choice(open_page, size):
    page = open_page(size)
    slug = begun(page)
    page.get_by_role("link", name="What next?").click()
    expect(page.get_by_role("heading", name="Mend or replace?")).to_be_visible()
    page.goto("/")  # left while it is worked out
    page.goto(f"/axle/{slug}/decide")
    page.locator("#choice").wait_for(timeout=LONG_WORK)
    expect(page.locator("#choice .says")).to_contain_text("Leave it as it is")
    assert wider_than_its_window(page) <= 0
    page.get_by_role("link", name="weld a truss over the top").click()
    expect(page.locator("#row-truss")).to_contain_text("fire watch")
    with page.expect_download() as saved:
        page.get_by_role("link", name="The memo on paper").click()
    assert saved.value.suggested_filename == f"{slug}-choice.pdf"


def test_a_price_that_cannot_be_read_comes_back_and_one_that_can_is_kept(open_page):
    page = open_page("phone")
    page.watch.forgive("422")
    slug = begun(page)
    page.goto(f"/axle/{slug}/decide")
    page.get_by_label("Price of").select_option("truss")
    page.get_by_label("From").fill("38o")
    page.get_by_label("Who told you").fill("the welder")
    page.get_by_role("button", name="Reckon with these").click()
    expect(page.locator(".fault").first).to_contain_text("prices.truss.low")
    expect(page.get_by_label("From")).to_have_value("38o")
    page.get_by_label("From").fill("380")
    page.get_by_role("button", name="Reckon with these").click()
    expect(page.locator("#yours li")).to_contain_text("USD 380 to 380, the welder")
    page.get_by_role("button", name="Stop it").click()
    expect(page.get_by_role("button", name="Begin again")).to_be_visible()
    page.get_by_role("button", name="Take it out").click()
    expect(page.locator("#yours li")).to_have_count(0)


def test_a_stop_stands_over_the_choice_and_replaces_its_sentence(visitor, bay):
    slug = bay.copy_example("wagtail")
    bay.add_condition(slug, {"part": "knuckle", "what": "cracked"})
    bay.choosing().ask(bay.log(), slug)
    end = time.monotonic() + LONG_WORK / 1000.0
    while time.monotonic() < end:
        said = visitor.get(f"/axle/{slug}/decide").text
        if 'id="choice"' in said:
            break
        time.sleep(0.2)
    assert said.index("No figure lifts this") < said.index('id="choice"')
    assert "First the STOP: no change is chosen" in said
    assert "Choose “" not in said


def test_what_is_not_done_yet_is_no_file(visitor, bay, monkeypatch):
    slug = bay.copy_example("wagtail")
    monkeypatch.setattr("axlewright.actions.choosing.Choosing._run", lambda *_: None)
    for tail in ("memo.pdf", "choice.json"):
        answer = visitor.get(f"/axle/{slug}/decide/{tail}")
        assert answer.status_code == 404
        assert "still being worked out" in answer.text
    told = visitor.get(f"/axle/{slug}/decide/now").json()
    assert told == {"done": False, "what": "", "percent": 0}


def test_a_half_told_axle_is_sent_to_its_questions(visitor, bay):
    slug = bay.begin("Crake", "rear")
    assert "still open" in visitor.get(f"/axle/{slug}/decide").text
    assert visitor.get(f"/axle/{slug}/decide/now").status_code == 404
    assert visitor.get(f"/axle/{slug}/decide/memo.pdf").status_code == 404
    assert visitor.post(f"/axle/{slug}/decide/begin").status_code == 303
    assert visitor.post(f"/axle/{slug}/decide/stop").status_code == 303
