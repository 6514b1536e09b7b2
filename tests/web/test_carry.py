"""What to carry and the repair cards, as pages: without a browser, and whole visits in one.

Outside references: common practice, no source; sizes of targets WCAG 2.1, 2.5.5.
"""

import re

import pytest
from tools.bay_pages import WIDTHS

from web.browsing import wider_than_its_window


@pytest.fixture
def slug(bay):
    return bay.copy_example("heron")


def field(answer, name):
    return re.search(rf'name="{re.escape(name)}" value="([^"]*)"', answer.text)[1]


def test_a_trip_is_in_the_address_and_a_bad_one_is_told_at_its_form(visitor, slug):
    there = f"/axle/{slug}/carry"
    answer = visitor.get(f"{there}?days=6&people=1&mass=90+kg&far=80+km&ground=forest_roads")
    assert answer.status_code == 200
    assert "6 days with 1 person, forest roads" in answer.text
    assert "80 km from help" in answer.text
    refused = visitor.get(f"{there}?days=6&mass=heavy")
    assert refused.status_code == 422
    assert 'class="fault"' in refused.text
    assert field(refused, "mass") == "heavy"  # nothing that was typed is lost


def test_ticks_are_kept_with_the_trip_and_refused_ones_are_not(bay, visitor, slug):
    there = f"/axle/{slug}/carry"
    said = {"days": "6", "mass": "170 kg", "state.tie_rod": "packed", "lies.tie_rod": "roof"}
    assert visitor.post(f"{there}/keep", said).status_code == 303
    answer = visitor.get(there)
    assert "1 of " in answer.text
    assert "6 days" in answer.text
    assert field(answer, "lies.tie_rod") == "roof"
    entries = len(bay.log().history(slug))
    for bad in ({"state.tie_rod": "eaten"}, {"state.gold": "packed"}, {"days": "none"}):
        assert visitor.post(f"{there}/keep", bad).status_code == 422
    old = {"token": "old"}
    assert visitor.post(f"{there}/keep", said, **old).status_code == 403
    assert len(bay.log().history(slug)) == entries


def test_the_whole_list_fits_one_form(visitor, slug):
    answer = visitor.get(f"/axle/{slug}/carry?mass=900+kg&days=30")
    keys = set(re.findall(r'name="state\.(\w+)"', answer.text))
    assert len(keys) > 20
    said = {f"state.{key}": "packed" for key in keys} | {f"lies.{key}": "bed" for key in keys}
    assert visitor.post(f"/axle/{slug}/carry/keep", said).status_code == 303
    shown = visitor.get(f"/axle/{slug}/carry?mass=900+kg&days=30").text
    assert "0 missing, 0 not looked at yet" in shown


def test_files_are_there_and_carry_the_trip(visitor, slug):
    told = visitor.get(f"/axle/{slug}/carry.json?mass=90+kg").json()
    assert told["trip"]["mass"]["value"] == 90.0
    paper = visitor.get(f"/axle/{slug}/carry/list.pdf")
    assert paper.content.startswith(b"%PDF-")
    said = {"days": "8", "state.brake": "packed", "lies.brake": "cab, left door"}
    visitor.post(f"/axle/{slug}/carry/keep", said)
    taken = visitor.get(f"/axle/{slug}/take.html").text
    assert "8 days" in taken
    assert "cab, left door" in taken
    assert len(taken.encode()) <= 400_000
    for bad in ("carry", "carry.json", "carry/list.pdf", "cards"):
        assert visitor.get(f"/axle/no-such/{bad}").status_code == 404


def test_a_stop_stands_before_the_list(bay, visitor, slug):
    said = {"part": "knuckle", "what": "cracked", "where": "left", "date": "", "note": ""}
    assert bay.add_condition(slug, said).stored
    for page in ("carry", "cards"):
        text = visitor.get(f"/axle/{slug}/{page}").text
        assert text.index('class="stop-sign"') < text.index("<h1>")


def test_a_card_is_entered_and_asks_for_the_next_look(bay, visitor, slug):
    said = {"card": "tie_rod", "side": "left", "who": "Ada", "odometer": "51200 km", "note": "ends"}
    answer = visitor.post(f"/axle/{slug}/cards/done", said)
    assert answer.status_code == 303
    shown = visitor.get(answer.headers["location"].partition("#")[0]).text
    assert "Entered in the record. Next look: after the first 200 m" in shown
    (kept,) = bay.log().history(slug, ["job"])
    assert (kept.body.part, kept.body.side, kept.who, kept.note) == (
        "tie rod",
        "left",
        "Ada",
        "ends",
    )
    assert visitor.post(f"/axle/{slug}/cards/done", {"card": "gold"}).status_code == 404
    assert visitor.post(f"/axle/{slug}/cards/done", {"card": "hub", "odometer": "5"}).is_error


@pytest.mark.parametrize("size", list(WIDTHS))
def test_a_visit_packs_for_a_trip(open_page, size):
    """Choose, tick, say where it lies, come back, open the card: by tap and by key."""
    page = open_page(size)
    page.goto("/")
    page.get_by_role("button", name="Heron").first.click()
    page.wait_for_url("**/axle/**")
    page.get_by_role("link", name="May I drive?").first.click()
    page.get_by_role("link", name="What to carry").first.click()
    page.get_by_label("Days").fill("7")
    page.get_by_label("All spares and tools may weigh").fill("200 kg")
    page.get_by_label("All spares and tools may weigh").press("Enter")
    page.get_by_text("7 days with 2 people").wait_for()
    rod = page.locator("#spare-tie_rod")
    rod.get_by_label("packed").check()
    rod.get_by_label("Where it lies").fill("along the rack")
    page.locator("#spare-brake").get_by_label("missing").check()
    page.get_by_role("button", name="Keep the list").click()
    page.get_by_text("Missing from the least set: brake fluid").wait_for()
    page.reload()
    assert rod.get_by_label("packed").is_checked()
    assert rod.get_by_label("Where it lies").input_value() == "along the rack"
    assert page.get_by_label("Days").input_value() == "7"
    page.locator("#spare-tie_rod a").click()
    page.wait_for_url("**/cards#card-tie_rod")
    card = page.locator("#card-tie_rod")
    if not card.get_by_text("Tools").first.is_visible():
        card.locator("summary").click()
    card.get_by_text("No heating, bending or straightening").wait_for()
    card.get_by_label("Who").fill("Ada")
    card.get_by_role("button").click()
    card.get_by_text("Entered in the record.").wait_for()
    assert wider_than_its_window(page) <= 0


@pytest.mark.parametrize("size", list(WIDTHS))
def test_pages_fit_a_thumb(open_page, size):
    page = open_page(size)
    page.goto("/")
    page.get_by_role("button", name="Stork").first.click()
    page.wait_for_url("**/axle/**")
    slug = page.url.rpartition("/")[2].partition("#")[0]
    for tail in ("carry", "cards"):
        page.goto(f"/axle/{slug}/{tail}")
        page.evaluate("document.querySelectorAll('details').forEach((it) => (it.open = true))")
        assert wider_than_its_window(page) <= 0
        small = page.evaluate(
            """() => [...document.querySelectorAll("button, select, summary, .pick, .go")]
                .concat([...document.querySelectorAll("input[type=text]")])
                .filter((it) => it.checkVisibility())
                .filter((it) => it.getBoundingClientRect().height < 44)
                .map((it) => it.outerHTML.slice(0, 80))"""
        )
        assert not small
