"""Whole visits in a real browser: looks to the last tap, a photo, a STOP, a bay that dies.

Which looks there are: common practice, no source.
"""

import io
import re

import pytest
from PIL import Image
from playwright.sync_api import expect

from web.browsing import wider_than_its_window
from web.test_answer_visits import copied
from web.test_visits import NETWORK


def picture():
    out = io.BytesIO()
    Image.new("RGB", (640, 480), "tan").save(out, "JPEG")
    return {"name": "IMG_1.jpg", "mimeType": "image/jpeg", "buffer": out.getvalue()}


def card(page, key):
    return page.locator(f"#look-{key}")


def tap(page, key, ends="Go"):
    card(page, key).locator(".ends").get_by_role("button", name=re.compile(f"^{ends}")).click()


def looks_of(page):
    cards = page.locator(".look").evaluate_all("(all) => all.map((it) => it.id)")
    return [each.removeprefix("look-") for each in cards]


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_every_look_tapped_says_go_and_a_stop_takes_the_answers_place(open_page, size):
    page = open_page(size)
    slug = copied(page, "Wagtail")
    page.get_by_role("link", name="May I drive?").click()
    page.wait_for_url("**/looks")
    expect(page.locator("#drive .verdict").first).to_have_text("not looked at")
    keys = looks_of(page)
    for key in keys:
        card(page, key).scroll_into_view_if_needed()
        before = page.evaluate("scrollY")
        tap(page, key)
        expect(card(page, key).locator(".taken .verdict")).to_have_text("go")
        assert abs(page.evaluate("scrollY") - before) < 200, "the place on the page is kept"
    expect(page.locator("#drive .verdict").first).to_have_text("go")
    expect(page.locator("#drive")).to_contain_text(f"{len(keys)} of {len(keys)} looks")
    assert wider_than_its_window(page) <= 0

    card(page, keys[0]).locator("input[type=file]").set_input_files(picture())
    card(page, keys[0]).get_by_text("Side, part, how long to watch").click()
    card(page, keys[0]).get_by_label("Where?").select_option("left")
    card(page, keys[0]).get_by_label("What was found?").select_option("loose")
    tap(page, keys[0], "Stop")
    expect(page.locator("#stop")).to_contain_text("Do not drive")
    shown = card(page, keys[0]).locator(".photos img")
    expect(shown).to_be_visible()
    assert shown.evaluate("(it) => it.decode().then(() => it.naturalWidth)") == 640
    page.goto(f"/axle/{slug}/answer")
    band = page.locator(".fold .stop")
    expect(band).to_contain_text("loose")
    assert band.bounding_box()["y"] < 300
    expect(page.locator(".behind")).to_be_attached()

    page.goto(f"/axle/{slug}/looks")
    page.locator("#open summary").click()
    page.locator("#open").get_by_label("What was done?").fill("joint renewed")
    page.locator("#open").get_by_role("button", name="Enter the work").click()
    expect(page.locator("#open")).to_contain_text("The work is entered")
    expect(page.locator("#stop .stop")).to_be_visible()
    tap(page, keys[0])
    expect(page.locator("#stop .stop")).to_have_count(0)
    expect(page.locator("#drive .verdict").first).to_have_text("go")


@pytest.mark.parametrize("photo", [False, True], ids=["a tap", "a photo"])
def test_a_dead_bay_loses_no_look(open_page, server, photo):
    page = open_page("phone")
    page.watch.forgive(NETWORK)
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/looks")
    with server.killed():
        if photo:
            card(page, "before_hubs").locator("input[type=file]").set_input_files(picture())
        tap(page, "before_hubs", "Fix")
        expect(page.locator("#unkept")).to_be_visible()
        expect(page.locator("#unkept")).to_contain_text("Not yet kept")
    expect(card(page, "before_hubs").locator(".taken .verdict")).to_have_text("fix before trip")
    expect(page.locator("#unkept")).to_be_hidden()
    page.reload()
    expect(page.locator("#drive .verdict").first).to_have_text("fix before trip")
    expect(card(page, "before_hubs").locator(".photos img")).to_have_count(int(photo))


def test_without_script_every_tap_works(open_page):
    page = open_page("phone", java_script_enabled=False)
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/looks?list=after_trip")
    card(page, "after_hubs").locator("input[type=file]").set_input_files(picture())
    tap(page, "after_hubs", "Watch")
    page.wait_for_url("**list=after_trip#look-after_hubs")
    expect(card(page, "after_hubs").locator(".taken .verdict")).to_have_text("watch")
    expect(card(page, "after_hubs").locator(".photos img")).to_have_count(1)
    page.get_by_text("Who looks, and the odometer").click()
    page.get_by_label("Who looks?").fill("Ada")
    page.get_by_role("button", name="Remember it").click()
    tap(page, "after_oil")
    expect(card(page, "after_oil").locator(".taken")).to_contain_text("by Ada")


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_from_a_hit_to_slowly_on_or_not(open_page, server, size):
    page = open_page(size)
    page.watch.forgive(NETWORK)
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/looks")
    page.get_by_role("link", name="I just hit something").last.click()
    page.wait_for_url("**/hit")
    page.get_by_label("Which side?").select_option("left")
    page.locator("#hit-photo").set_input_files(picture())
    page.get_by_role("button", name="a rock", exact=True).click()
    expect(page.locator("#hit .says")).to_contain_text("a rock, left")
    expect(page.locator("#hit .photos img")).to_be_visible()
    expect(page.locator("#brief .verdict")).to_have_text("not looked at")
    with server.killed():
        tap(page, "steers", "Fix")
        expect(page.locator("#unkept")).to_contain_text("Not yet kept")
    for key in ("stops", "holds", "carries", "drives"):
        tap(page, key)
        expect(card(page, key).locator(".taken .verdict")).to_have_text("go")
    expect(page.locator("#drive .verdict").first).to_have_text("fix before trip")
    tap(page, "steers")
    expect(page.locator("#drive .verdict").first).to_have_text("go")
    expect(page.locator("#brief")).to_contain_text("Slowly on")
    page.get_by_label("How far, with its unit?").fill("30 mm")
    page.get_by_label("How far is the steering wheel off centre").fill("60 deg")
    page.get_by_role("button", name="Weigh it").click()
    expect(page.locator("#sum .told-sum")).to_contain_text("does not explain what is felt")
    expect(page.locator("#brief")).to_contain_text("Don’t")
    page.get_by_label("How far, with its unit?").fill("400 mm")
    page.get_by_role("button", name="Weigh it").click()
    expect(page.locator("#stop .stop")).to_contain_text("has folded")
    assert wider_than_its_window(page) <= 0
    page.reload()
    expect(page.locator("#stop .stop")).to_be_visible()


def test_enter_in_a_note_takes_no_look(open_page):
    page = open_page()
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/looks")
    card(page, "before_hubs").get_by_text("Side, part, how long to watch").click()
    note = card(page, "before_hubs").get_by_label("A note")
    note.fill("hums")
    note.press("Enter")
    page.reload()
    expect(page.locator("#drive")).to_contain_text("0 of 9 looks")


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_thumb_hits_what_it_aims_at(open_page, size):
    """Targets: 44 px is WCAG 2.1's enhanced size (2.5.5); links within a line are excepted."""
    page = open_page(size)
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/looks")
    tap(page, "before_hubs", "Stop")
    expect(page.locator("#stop .stop")).to_be_visible()
    page.evaluate('document.querySelectorAll("details").forEach((it) => (it.open = true))')
    small = page.evaluate(
        """() => [..."button,select,summary,nav a,.go".split(",")]
            .flatMap((it) => [...document.querySelectorAll(`main ${it}`)])
            .concat([...document.querySelectorAll("main input:not([type=hidden], [type=radio])")])
            .filter((it) => it.checkVisibility())
            .map((it) => [it.outerHTML.slice(0, 80), it.getBoundingClientRect()])
            .filter(([, box]) => box.height < 44 || box.width < 44).map(([html]) => html)"""
    )
    assert not small
