"""Whole visits in a real browser: readings said wrong and mended, a bend looked for, a shake."""

import pytest
from playwright.sync_api import expect
from tools.bay_pages import read

from web.browsing import wider_than_its_window


def copied(page, name):
    page.goto("/")
    page.get_by_role("button", name=name).click()
    page.wait_for_url("**/axle/**")
    return page.url.rpartition("/")[2]


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_reading_said_wrong_is_asked_again_and_then_weighed(open_page, size):
    page = open_page(size)
    page.watch.forgive("status of 422")
    slug = copied(page, "Heron")
    page.goto(f"/axle/{slug}/measure")
    page.get_by_role("link", name="Play of a sealed hub").click()
    page.get_by_role("radio", name="left", exact=True).check()
    page.locator("#in-value-1").fill("4 mm")
    page.get_by_role("button", name="Say it").click()
    expect(page.locator("#taken")).to_contain_text("It is not kept yet")
    expect(page.locator("#taken")).to_contain_text("outside anything")
    expect(page.locator("#in-value-1")).to_have_value("4 mm")
    page.locator("#in-value-1").fill("0.05 mm")
    page.get_by_role("button", name="Say it").click()
    expect(page.locator("#taken")).to_contain_text("Understood, and kept")
    expect(page.locator(".verdict .word")).to_have_text("within")
    read(page, slug, "pinion_torque", "", "40 lbf ft")
    expect(page.locator("#taken")).to_contain_text("Was it a pull")
    for side, value in (("left", "0.2 deg"), ("right", "-1.9 deg")):
        read(page, slug, "camber_out", side, value, value)
    read(page, slug, "camber_out", "left", "-1.9 deg", "-1.9 deg")
    expect(page.locator("#taken")).to_contain_text("Was it the vehicle's own right?")
    page.get_by_role("button", name="I looked again").click()
    expect(page.locator("#taken")).to_contain_text("Understood, and kept")
    page.get_by_role("link", name="Where is it bent?").click()
    expect(page.locator("h1")).to_have_text("Where is it bent or worn?")
    expect(page.locator(".says")).to_be_visible()
    expect(page.locator(".dangers li").first).to_contain_text("STOP")
    assert wider_than_its_window(page) <= 0


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_shake_is_a_stop_until_it_is_known_to_be_gone(open_page, size):
    page = open_page(size)
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/shook")
    expect(page.locator(".first-line")).to_contain_text("When it happens: hold the wheel")
    page.get_by_role("radio", name="not driven since").check()
    page.get_by_role("button", name="Say it").click()
    expect(page.locator(".stop")).to_contain_text("never try to bring it on")
    page.locator("#check-mud").get_by_role("button", name="In order").click()
    expect(page.locator("#check-nuts")).to_have_attribute("open", "")
    assert wider_than_its_window(page) <= 0
