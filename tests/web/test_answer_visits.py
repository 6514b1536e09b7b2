"""Visits to the answer in a real browser: a change that follows the thumb, a download, a STOP."""

import re

import pytest
from playwright.sync_api import expect

from web.browsing import wider_than_its_window


def copied(page, name="Heron"):
    page.goto("/")
    page.get_by_role("button", name=re.compile(name)).click()
    page.wait_for_url("**/axle/**")
    return page.url.rpartition("/")[2]


def slid(page, ident, value):
    """Move a slider as a thumb does: its value, then the event that a browser sends."""
    lever = page.locator(f".lever:has(#n-{ident})")
    lever.locator("input[type=range]").evaluate(
        """(it, value) => {
            it.value = value;
            it.dispatchEvent(new Event("input", { bubbles: true }));
        }""",
        value,
    )


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_change_is_compared_kept_and_laid_side_by_side(open_page, size):
    page = open_page(size)
    slug = copied(page)
    page.get_by_role("link", name="Try a change").first.click()
    page.wait_for_url("**/try")
    expect(page.locator("#outcome")).to_contain_text("Nothing is changed yet")
    for value in ("7.0", "7.5", "8.0", "8.5", "9.0"):
        slid(page, "tube-wall", value)
    expect(page.locator("#n-tube-wall")).to_have_value("9.0")
    expect(page.locator("#outcome .says")).to_contain_text("In one bad moment")
    expect(page.locator("#outcome .better").first).to_contain_text("better")
    expect(page.locator("#outcome")).to_contain_text("nine draws in ten")  # once at rest
    expect(page.locator("#outcome svg.axle-drawing")).to_be_visible()
    if size == "phone":
        expect(page.locator("#sticky")).to_contain_text("First: ")
    page.get_by_label("Keep this change as").fill(f"thick on a {size}")
    page.get_by_role("button", name="Keep it").click()
    kept = page.locator("#kept")
    expect(kept).to_contain_text(f"thick on a {size}")
    slid(page, "weight-axle", "1700")
    page.get_by_label("Keep this change as").fill("loaded")
    page.get_by_role("button", name="Keep it").click()
    expect(kept.get_by_role("table")).to_contain_text("worse")
    expect(kept.get_by_role("table")).to_contain_text("better")
    assert wider_than_its_window(page) <= 0
    page.goto(f"/axle/{slug}/answer")
    expect(page.locator("main")).to_contain_text("loaded")


def test_the_newest_value_wins_however_fast_the_thumb_is(open_page):
    page = open_page()
    slug = copied(page)
    page.goto(f"/axle/{slug}/try")
    asked = []
    page.on("request", lambda one: asked.append(one.url) if "/try/now" in one.url else None)
    for step in range(30):
        slid(page, "weight-axle", str(1200 + 20 * step))
    slid(page, "weight-axle", "1510")  # where it was
    expect(page.locator("#outcome")).to_contain_text("Nothing is changed yet")
    page.wait_for_timeout(600)
    expect(page.locator("#outcome")).to_contain_text("Nothing is changed yet")
    assert len(asked) < 40
    expect(page).to_have_url(re.compile(r"/try$"))


def test_what_is_tried_is_in_the_address_and_survives_a_reload(open_page):
    page = open_page("phone")
    slug = copied(page)
    page.goto(f"/axle/{slug}/try")
    slid(page, "tube-wall", "8.0")
    expect(page).to_have_url(re.compile(r"tube\.wall=8"))
    page.reload()
    expect(page.locator("#n-tube-wall")).to_have_value("8.0")
    expect(page.locator("#outcome .says")).to_be_visible()


def test_a_value_that_cannot_be_is_told_in_place(open_page):
    page = open_page("phone")
    slug = copied(page)
    page.goto(f"/axle/{slug}/try")
    page.locator("#n-tube-wall").fill("80")
    expect(page.locator("#outcome .clash")).to_contain_text("That cannot be")
    page.locator("#n-tube-wall").fill("8")
    expect(page.locator("#outcome .says")).to_be_visible()
    page.watch.forgive("status of 422")


def test_sliders_move_by_the_keyboard(open_page):
    page = open_page()
    slug = copied(page)
    page.goto(f"/axle/{slug}/try")
    slider = page.locator(".lever:has(#n-tube-wall) input[type=range]")
    before = float(slider.input_value())
    slider.focus()
    for _ in range(5):
        page.keyboard.press("ArrowRight")
    assert float(slider.input_value()) == pytest.approx(before + 0.5)
    expect(page.locator("#outcome .says")).to_be_visible()


def test_papers_are_downloaded(open_page):
    page = open_page("phone")
    slug = copied(page)
    page.goto(f"/axle/{slug}/paper")
    for told, start in (("The report", b"%PDF"), ("One file to take along", b"<!")):
        entry = page.locator("li", has=page.get_by_role("heading", name=told))
        with page.expect_download() as download:
            entry.get_by_role("link").click()
        assert download.value.path().read_bytes().lstrip().startswith(start)
        assert slug in download.value.suggested_filename


def test_a_stop_replaces_the_answer(open_page):
    page = open_page("phone")
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}#q-12")
    page.locator("#q-12").evaluate("it => it.open = true")
    page.get_by_label("Which part?").fill("steering arm")
    page.get_by_label("What was found, or done?").select_option("cracked")
    page.get_by_role("button", name="List it").click()
    expect(page.locator(".stop")).to_contain_text("Do not drive")
    for tail in ("answer", "try", "why/1"):
        page.goto(f"/axle/{slug}/{tail}")
        fold = page.viewport_size["height"]
        stop = page.locator(".stop").bounding_box()
        assert stop["y"] + stop["height"] > 0.9 * fold
        assert page.locator("h1").bounding_box()["y"] >= stop["y"] + stop["height"]


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_part_is_opened_from_the_drawing_by_tap_and_by_key(open_page, size):
    page = open_page(size)
    slug = copied(page)
    page.goto(f"/axle/{slug}/answer")
    flag = page.locator("#drawing a[data-flag='1']").first
    place = flag.get_attribute("href")
    flag.locator("text").click()
    expect(page).to_have_url(re.compile(f"{re.escape(place)}$"))
    expect(page.locator(f"{place} p").first).to_be_visible()
    expect(page.locator("details.part > summary:focus")).to_have_count(1)  # the tap is over
    part = page.locator("#drawing a[data-part]:not([tabindex])").first
    part.focus()
    page.keyboard.press("Enter")
    place = part.get_attribute("href")
    expect(page.locator(f"{place} p").first).to_be_visible()
