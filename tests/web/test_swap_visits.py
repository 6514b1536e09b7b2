"""A swap in a real browser at both widths: begun, refused, ticked, killed and gone on with."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from web.browsing import WCAG, wider_than_its_window

PHOTO = b"\x89PNG\r\n\x1a\n" + b"0" * 40


def step(page, title):
    return page.locator("#now .step").filter(has=page.get_by_role("heading", name=title))


def done(page, title, photo=False):
    card = step(page, title)
    if photo:
        file = {"name": "stands.png", "mimeType": "image/png", "buffer": PHOTO}
        card.locator("input[type=file]").set_input_files(file)
    with page.expect_navigation():
        card.get_by_role("button", name="Done").click()


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_swap_is_begun_left_and_resumed(open_page, server, size):
    page = open_page(size)
    page.goto("/")
    page.get_by_role("button", name="Heron").click()
    page.wait_for_url("**/axle/**")
    place = page.url
    page.goto(f"{place}/swap")
    expect(page.get_by_role("link", name="The swap")).to_have_attribute("aria-current", "page")
    page.get_by_label("Which kind of work is it?").select_option("wheels")
    page.get_by_label("two", exact=True).check()
    page.get_by_label("practised", exact=True).check()
    page.get_by_role("button", name="Begin this swap").click()
    expect(page.get_by_role("heading", name="Not ready")).to_be_visible()
    page.get_by_label("The maker's value").first.fill("150 N m")
    page.locator("#line-wheel_nuts").get_by_role("button", name="Keep").click()
    expect(page.locator("#line-wheel_nuts .fault")).to_contain_text("where did the maker print")
    page.watch.forgive("status of 422")
    page.locator("#line-wheel_nuts").get_by_label("Printed at").fill("manual, page 4-12")
    page.locator("#line-wheel_nuts").get_by_role("button", name="Keep").click()
    expect(page.locator("#line-wheel_nuts .echo")).to_contain_text("Set to 150 N m")
    expect(page.get_by_role("heading", name="Not ready")).to_have_count(0)
    done(page, "Read every step")
    done(page, "Makers' torque values")
    expect(page.locator("#main")).to_contain_text("2 of 18 steps behind you")
    assert wider_than_its_window(page) <= 0
    with server.killed():
        pass
    page.goto(f"{place}/swap")
    expect(page.locator("#main")).to_contain_text("2 of 18 steps behind you")
    done(page, "Parts, tools and consumables")
    done(page, "Measured and written down")
    done(page, "Paint lines", photo=True)
    expect(page.locator("#main")).to_contain_text("5 of 18 steps behind you")
    page.locator("#all details", has_text="Read every step").locator("summary").click()
    page.get_by_role("button", name="Take it back").first.click()
    expect(page.locator("#main")).to_contain_text("2 of 18 steps behind you")
    assert not Axe().run(page, options=WCAG).response["violations"]


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_thumb_hits_what_it_aims_at(open_page, size):
    page = open_page(size)
    page.goto("/")
    page.get_by_role("button", name="Heron").click()
    page.wait_for_url("**/axle/**")
    page.goto(f"{page.url}/swap")
    page.get_by_label("Which kind of work is it?").select_option("geared axle")
    page.get_by_role("button", name="Begin this swap").click()
    page.locator("#now .step").first.wait_for()
    page.evaluate('() => document.querySelectorAll("details").forEach((it) => (it.open = true))')
    small = page.evaluate(
        """() => [...document.querySelectorAll("main button, main select, main summary, main .pick,"
            + "main .go, main .jump, main input:not([type=hidden], [type=radio], [type=checkbox])")]
            .filter((it) => it.checkVisibility())
            .map((it) => [it.outerHTML.slice(0, 80), it.getBoundingClientRect()])
            .filter(([, box]) => box.height < 44 || box.width < 44).map(([html]) => html)"""
    )
    assert not small
    assert wider_than_its_window(page) <= 0
    assert not Axe().run(page, options=WCAG).response["violations"]
