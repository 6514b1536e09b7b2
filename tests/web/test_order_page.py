"""A visit to the order sheet: filled from the rig, written on, contradicted, kept, printed.

Common practice, no source: front and rear, each with its tyres, are compared first.
"""

import re

import pytest

from web.browsing import wider_than_its_window

SHEET = """axlewright_order = 1

[ratio]
this = "4.56"
other = "4.10"
tyres = "one size front and rear"
tyre_height = "431 mm"
other_tyre_height = "431 mm"
"""


def copied(page, name):
    page.goto("/")
    page.get_by_role("button", name=re.compile(name)).first.click()
    page.wait_for_url(re.compile(r"/axle/[^/]+$"))
    return page.url.rsplit("/", 1)[1]


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_visit_from_an_open_sheet_to_a_contradiction_and_paper(open_page, size):
    page = open_page(size)
    slug = copied(page, "Heron")
    page.get_by_role("link", name="What next?").click()
    page.goto(f"/axle/{slug}/order")
    assert page.get_by_role("heading", name="What to order").is_visible()
    assert (
        "needed answers are open"
        in page.get_by_role("status").filter(has_text="order").inner_text()
    )
    page.locator("#ratio > summary").click()
    page.get_by_label("This axle's ratio").fill("4.56")
    page.get_by_label("The other axle's ratio").fill("4.10")
    page.get_by_label("Tyres of the two axles").select_option("one size front and rear")
    page.get_by_label("Hub centre above the ground, the other axle").fill("431 mm")
    page.locator("#ratio button.main").click()
    page.wait_for_url(re.compile("#ratio$"))
    assert page.get_by_text("front and rear run").first.is_visible()
    assert "cannot be sent" in page.locator(".so-far").inner_text()
    assert not wider_than_its_window(page)
    page.get_by_label("The other axle's ratio").fill("4,1 1")
    page.locator("#ratio button.main").click()
    assert page.locator(".fault").first.is_visible()
    assert page.get_by_label("The other axle's ratio").input_value() == "4,1 1"
    page.watch.forgive("status of 422")
    page.get_by_label("The other axle's ratio").fill("4.56")
    page.locator("#ratio button.main").click()
    page.wait_for_url(re.compile("#ratio$"))
    assert not page.get_by_text("front and rear run").count()
    with page.expect_download() as saved:
        page.get_by_role("link", name="Save the order sheet").click()
    assert saved.value.path().read_bytes().startswith(b"%PDF")
    with page.expect_download() as saved:
        page.get_by_role("link", name="Save the intake sheet").click()
    assert saved.value.path().read_bytes().startswith(b"%PDF")


def test_a_sheet_that_came_by_mail_is_taken_in_and_kept(open_page, server):
    page = open_page("phone")
    slug = copied(page, "Heron")
    page.goto(f"/axle/{slug}/order")
    page.get_by_label("A sheet that came back as a file").set_input_files(
        {"name": "order.toml", "mimeType": "text/plain", "buffer": SHEET.encode()}
    )
    page.get_by_role("button", name="Take it in").click()
    page.wait_for_url(re.compile("/order$"))
    assert "cannot be sent" in page.locator(".so-far").inner_text()
    told = page.request.get(f"/axle/{slug}/order.toml").text()
    assert 'other = "4.10"' in told
    answer = page.request.get(f"/axle/{slug}/order.json").json()
    assert answer["blocked"] is True
    assert {each["rule"] for each in answer["contradictions"]} == {"front_and_rear_run_apart"}
