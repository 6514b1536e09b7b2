"""Whole visits in a real browser: from nothing to the first answer, and through every mishap."""

import re

import pytest
from playwright.sync_api import expect

from web.test_axle_page import thirteen_of

NETWORK = r"net::ERR_|Failed to fetch|network connection"


def begin(page, name):
    page.goto("/")
    page.get_by_label("What do you call this rig?").fill(name)
    page.get_by_role("button", name="Begin").click()
    page.wait_for_url("**/axle/**")
    return page.url.rpartition("/")[2]


def form(page, path):
    return page.locator(f'form[data-path="{path}"]')


def say(page, path, text):
    """Answer one question as a person does: a tap on a word, or typing and Enter."""
    asked = form(page, path)
    if asked.locator("input[type=radio]").count():
        asked.get_by_text(text, exact=True).click()
        return
    field = asked.locator("input[name=text]")
    field.click()
    field.press_sequentially(text)
    field.press("Enter")


def kept(page, path):
    return form(page, path).locator(".echo")


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_from_nothing_to_the_first_answer(open_page, size):
    page = open_page(size)
    begin(page, f"Wagtail on a {size}")
    for path, text in thirteen_of("wagtail"):
        say(page, path, text)
        expect(kept(page, path)).to_contain_text("Understood")
    expect(page.locator("#progress")).to_contain_text("All thirteen are answered")
    expect(page.locator(".so-far")).to_contain_text("gives")
    expect(page.get_by_role("link", name="Read the answer")).to_be_visible()
    expect(page.locator("#rest details").first).to_be_visible()
    page.reload()
    expect(page.locator(".echo")).to_have_count(21)


def test_the_keyboard_alone_is_enough(open_page):
    page = open_page()
    page.goto("/")
    page.keyboard.press("Tab")
    expect(page.get_by_text("Skip to the page itself")).to_be_focused()
    page.keyboard.press("Enter")
    page.get_by_label("What do you call this rig?").press_sequentially("Keys")
    page.keyboard.press("Enter")
    page.wait_for_url("**/axle/**")
    page.locator("#q-3 > summary").focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.keyboard.type("385 mm")
    page.keyboard.press("Enter")
    expect(page.locator("#in-hub-height-right")).to_be_focused()
    page.keyboard.type("387 mm")
    page.keyboard.press("Enter")
    expect(page.locator("#in-track-tyres")).to_be_focused()
    expect(page.locator("#q-3 .known")).to_have_text("left 385 mm, right 387 mm")
    page.get_by_label("How far is it from tyre centre to tyre centre?").press_sequentially(
        "1500 mm"
    )
    page.keyboard.press("Enter")
    expect(kept(page, "track.tyres")).to_contain_text("1500 mm")


def test_what_cannot_be_read_says_so_and_a_tap_mends_it(open_page):
    page = open_page("phone")
    begin(page, "Slip")
    page.locator("#q-3 > summary").click()
    say(page, "hub_height.left", "395 cm")
    expect(form(page, "hub_height.left").locator(".fault")).to_contain_text("Not kept")
    form(page, "hub_height.left").get_by_role("button", name="395 mm").click()
    expect(kept(page, "hub_height.left")).to_contain_text("395 mm")
    expect(form(page, "hub_height.left").locator(".fault")).to_have_count(0)


def test_a_stop_comes_as_soon_as_it_is_listed(open_page):
    page = open_page("phone")
    begin(page, "Cracked")
    page.locator("#q-12 > summary").click()
    page.get_by_label("Which part?").fill("knuckle")
    page.get_by_label("What was found, or done?").select_option("cracked")
    page.get_by_role("button", name="List it").click()
    expect(page.locator(".stop")).to_contain_text("Do not drive")
    page.reload()
    expect(page.locator(".stop")).to_contain_text("Do not drive")
    page.locator("#q-12 > summary").click()
    page.get_by_role("button", name="Take it off the list").click()
    expect(page.locator(".stop")).to_have_count(0)


def test_a_server_killed_in_the_middle_of_a_form_loses_nothing(open_page, server):
    page = open_page("phone")
    begin(page, "Killed")
    page.locator("#q-2 > summary").click()
    say(page, "tyre.sidewall", "235/85R16 120/116Q")
    expect(kept(page, "tyre.sidewall")).to_be_visible()
    with server.killed():
        page.locator("#q-9 > summary").click()
        say(page, "weight.axle", "1020 kg")
        expect(page.locator("#unkept")).to_contain_text("Not yet kept: 1 answer.")
        page.locator("#q-4 > summary").click()
        say(page, "track.tyres", "1500 mm")
        expect(page.locator("#unkept")).to_contain_text("Not yet kept: 2 answers.")
        springs = form(page, "track.springs").locator("input[name=text]")
        springs.press_sequentially("930")  # not said yet
    expect(page.locator("#unkept")).to_be_hidden()
    for path in ("weight.axle", "track.tyres"):
        expect(kept(page, path)).to_contain_text("Understood")
    expect(springs).to_have_value("930")
    page.reload()
    for path in ("tyre.sidewall", "weight.axle", "track.tyres"):
        page.locator(f'details:has(form[data-path="{path}"])').evaluate("it => it.open = true")
        expect(kept(page, path)).to_contain_text("Understood")
    page.watch.forgive(NETWORK)


def test_a_network_gone_for_twelve_seconds_loses_nothing(open_page):
    page = open_page("phone")
    begin(page, "Dropped")
    page.locator("#q-9 > summary").click()
    page.context.set_offline(True)
    say(page, "weight.axle", "1020 kg")
    expect(page.locator("#unkept")).to_contain_text("Not yet kept: 1 answer.")
    page.wait_for_timeout(12_000)
    page.locator("#q-8 > summary").click()
    say(page, "wheel.offset", "ET 25 mm")
    expect(page.locator("#unkept")).to_contain_text("Not yet kept: 2 answers.")
    page.context.set_offline(False)
    expect(page.locator("#unkept")).to_be_hidden()
    expect(kept(page, "weight.axle")).to_contain_text("Understood")
    expect(kept(page, "wheel.offset")).to_contain_text("Understood")
    page.watch.forgive(NETWORK)


def test_a_page_closed_while_the_network_is_gone_still_says_it_later(open_page):
    page = open_page("phone")
    slug = begin(page, "Closed")
    page.locator("#q-9 > summary").click()
    page.context.set_offline(True)
    say(page, "weight.axle", "1020 kg")
    expect(page.locator("#unkept")).to_contain_text("Not yet kept: 1 answer.")
    page.watch.forgive(NETWORK)
    context = page.context
    page.close()
    context.set_offline(False)
    again = context.new_page()
    again.goto(f"/axle/{slug}")
    expect(again.locator("#q-9 .known")).to_contain_text("1020 kg")


def test_two_devices_see_each_other_and_the_later_answer_stands(open_page):
    desk, phone = open_page(), open_page("phone")
    slug = begin(desk, "Two")
    phone.goto(f"/axle/{slug}")
    desk.locator("#q-9 > summary").click()
    phone.locator("#q-9 > summary").click()
    typed = form(phone, "weight.axle").locator("input[name=text]")
    typed.press_sequentially("11")  # half an answer, under the other's hand
    say(desk, "weight.axle", "1020 kg")
    expect(phone.locator("#q-9 .known")).to_contain_text("1020 kg")
    expect(typed).to_have_value("11")
    expect(typed).to_be_focused()
    expect(form(phone, "weight.axle")).to_contain_text("on another device: 1020 kg")
    typed.press_sequentially("00 kg")
    typed.press("Enter")
    expect(desk.locator("#q-9 .known")).to_contain_text("1100 kg")
    expect(phone.locator("#q-9 .known")).to_contain_text("1100 kg")
    expect(desk.locator("#in-weight-axle")).to_have_value("1100 kg")


def test_without_pushing_the_second_device_asks_by_itself(open_page):
    desk, phone = open_page(), open_page("phone")
    slug = begin(desk, "Asked")
    phone.route("**/events*", lambda route: route.abort())
    phone.goto(f"/axle/{slug}")
    desk.locator("#q-9 > summary").click()
    say(desk, "weight.axle", "1020 kg")
    expect(phone.locator("#q-9 .known")).to_contain_text("1020 kg")
    phone.watch.forgive(NETWORK)


def test_without_script_a_form_still_works(open_page):
    page = open_page("phone", java_script_enabled=False)
    begin(page, "Plain")
    page.locator("#q-9 > summary").click()
    say(page, "weight.axle", "1020 kg")
    page.wait_for_url("**at=weight.axle**")
    expect(kept(page, "weight.axle")).to_contain_text("Understood")


def test_a_tap_on_a_word_tells_what_it_means(open_page):
    page = open_page("phone")
    begin(page, "Words")
    page.locator("#q-3 > summary").click()
    page.locator("#q-3 a.term").click()
    expect(page.locator("#meaning")).to_contain_text("From the floor to the hub's centre")
    page.get_by_role("button", name="Close").click()
    expect(page.locator("#meaning")).to_be_hidden()
    expect(page).to_have_url(re.compile("/axle/"))


def test_a_file_goes_in_and_comes_out(open_page, tmp_path):
    from web.test_axle_page import RIGS

    page = open_page()
    page.goto("/")
    page.get_by_label("A rig file (.toml)").set_input_files(RIGS / "stork-rear.toml")
    page.get_by_role("button", name="Open it").click()
    page.wait_for_url("**/axle/**")
    with page.expect_download() as download:
        page.get_by_role("link", name="This rig as a file").click()
    assert 'name = "Stork, rear"' in download.value.path().read_text("utf-8")
