"""Whole visits in a real browser: where it has been, told by forms, on a desk and on a phone."""

import re

import pytest
from playwright.sync_api import expect

from web.browsing import wider_than_its_window
from web.test_answer_visits import copied
from web.test_look_visits import picture


def add(page, form, button, **said):
    page.locator(f"#{form} > summary").click()
    for name, text in said.items():
        field = page.locator(f"#{form}-{name}")
        if field.evaluate("(it) => it.tagName") == "SELECT":
            field.select_option(text)
        else:
            field.fill(text)
    with page.expect_navigation(url=re.compile("#(history|parts)$")):
        page.locator(f"#{form}").get_by_role("button", name=button).click()


@pytest.mark.parametrize(
    ("size", "script"),
    [("desk", True), ("phone", True), ("phone", False)],
    ids=["desk", "phone", "phone-plain"],
)
def test_its_past_is_told_put_right_and_carried_off(open_page, size, script):
    slug = copied(open_page(size), "Heron")
    page = open_page(size, java_script_enabled=script)
    page.goto(f"/axle/{slug}/looks")
    page.get_by_role("link", name="Where it has been").click()
    expect(page.locator(".says")).to_contain_text("Nothing is known yet")
    add(page, "chapter", "Keep it", title="before us", distance="60000 km", broke="inner shaft")
    first = int(page.locator(".entry").last.get_attribute("id").removeprefix("entry-"))
    trip, note, right = first + 1, first + 3, first + 4  # numbers go on over every rig of a store
    add(page, "trip", "Keep the trip", name="Loop", distance="18 km", ground="rocks_and_ledges")
    mark = f"dots, {size} {script}"  # the server is shared, and so are parts
    add(page, "part", "Know it", kind="hub", name="left hub", mark=mark, place="left hub")
    page.locator("#note-photo").set_input_files(picture())
    add(page, "note", "Keep it", note="after the river")
    expect(page.locator(f"#entry-{note} img")).to_have_count(1)
    expect(page.locator(".broke")).to_contain_text("inner shaft (number")

    page.locator(f"#withdraw-{trip} > summary").click()
    page.locator(f"#withdraw-{trip}").get_by_role("link", name="Put it right").click()
    expect(page.locator("#trip-distance")).to_have_value("18 km")
    page.locator("#trip-distance").fill("180 cubits")
    page.get_by_role("button", name="Keep the trip").click()
    expect(page.locator("#trip .fault")).to_contain_text("Not kept")
    expect(page.locator("#trip-distance")).to_have_value("180 cubits")
    page.watch.forgive("status of 422")
    page.locator("#trip-distance").fill("180 km")
    page.get_by_role("button", name="Keep the trip").click()
    expect(page.locator(f"#entry-{trip}")).to_contain_text(f"Put right by entry {right}")
    expect(page.locator(".says")).to_contain_text("180 km, is on record")

    add(page, "off", "It is off", reason="worn")
    known = page.locator("section.chapter").filter(has_text=mark)
    expect(known).to_contain_text("Not fitted anywhere")
    page.locator(f"#withdraw-{note} > summary").click()
    page.locator(f"#why-{note}").fill("another rig's")
    page.get_by_role("button", name="Withdraw it").click()
    expect(page.locator(f"#entry-{note}")).to_contain_text("another rig's")
    assert wider_than_its_window(page) <= 0
    with page.expect_download() as saved:
        page.get_by_role("link", name="the log as PDF").click()
    assert saved.value.suggested_filename == f"{slug}-log.pdf"
    page.goto("/archive")
    with page.expect_download() as saved:
        page.get_by_role("link", name="Save everything").click()
    assert saved.value.path().stat().st_size > 1000
    expect(page.locator("main")).to_contain_text("An archive goes into an empty bay only")
