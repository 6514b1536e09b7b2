"""Align it: the page, its forms and papers, and a visit in a real browser at both widths.

Outside reference: common practice, no source, for the order and for what is set where.
"""

import pytest
from playwright.sync_api import expect

from web.browsing import wider_than_its_window
from web.test_answer_visits import copied

TOE = {"toe.front": "1571 mm; 1571.5 mm", "toe.rear": "1568 mm", "toe.diameter": "900 mm"}


def test_the_steps_stand_in_the_garages_order(bay, visitor):
    slug = bay.copy_example("heron")
    told = visitor.get(f"/axle/{slug}/align").text
    order = ("Ride height", "Play", "Square and in", "Caster and", "Toe</span>", "Steering wheel</")
    places = [told.index(f'class="title">{step}') for step in order]
    assert places == sorted(places)
    assert "Toe is set on the tie rod, never on the track bar" in told
    assert "degree for degree" in told
    assert "Fingers clear of pinch points" in told
    assert "Never work under a vehicle held by a jack alone" in told
    assert "not “ok to drive”" in told


def test_readings_are_taken_refused_and_emptied(bay, visitor):
    slug = bay.copy_example("heron")
    answer = visitor.post(f"/axle/{slug}/align/say", {"step": "toe", **TOE})
    assert answer.status_code == 303
    told = visitor.get(answer.headers["location"]).text
    assert "at a diameter of 900 mm" in told
    assert "Make the tie rod" in told
    refused = visitor.post(f"/axle/{slug}/align/say", {"step": "toe", **TOE, "toe.rear": "1568"})
    assert refused.status_code == 422
    assert "Not kept." in refused.text
    assert 'value="1568"' in refused.text
    assert bay.reading(slug).said == TOE


def test_papers_and_file(bay, visitor):
    slug = bay.copy_example("heron")
    bay.read(slug, TOE)
    for name in ("worksheet.pdf", "sheet.pdf"):
        assert visitor.get(f"/axle/{slug}/align/{name}").content[:5] == b"%PDF-"
    assert "[toe]" in visitor.get(f"/axle/{slug}/align/readings.toml").text
    begun = bay.begin("Crake", "rear")
    assert "still open" in visitor.get(f"/axle/{begun}/align").text
    assert visitor.get(f"/axle/{begun}/align/sheet.pdf").status_code == 404


def test_a_rear_axle_has_no_steering_to_align(bay, visitor):
    slug = bay.copy_example("stork-rear")
    told = visitor.get(f"/axle/{slug}/align").text
    assert "Steering wheel" not in told
    assert "tie rod's adjuster" not in told


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_visit_reads_leaves_comes_back_and_closes(open_page, size):
    page = open_page(size)
    slug = copied(page)
    page.get_by_role("link", name="Set it right").click()
    page.get_by_role("link", name="Align it").click()
    page.wait_for_url("**/align")
    page.locator("#step-toe > summary").click()
    page.get_by_label("How far apart are the two tyres' marks in front of the axle?").fill(
        "1571 mm"
    )
    page.get_by_label("How far apart are the two tyres' marks behind it?").fill("1568 mm")
    page.get_by_label("At what diameter were the marks?").fill("900")
    keep = page.locator("#step-toe").get_by_role("button", name="Keep these readings")
    page.watch.forgive("status of 422")
    keep.click()
    expect(page.locator("#step-toe .fault")).to_contain_text("Not kept")
    page.get_by_label("At what diameter were the marks?").fill("900 mm")
    page.get_by_label("What thread has the tie rod's adjuster?").fill("M22x1.5")
    keep.click()
    expect(page.locator("#align-says")).to_contain_text("tie rod")
    expect(page.locator(".turning")).to_contain_text("of the hexagon")
    page.goto("/")
    page.goto(f"/axle/{slug}/align?at=toe")  # left, and taken up again
    expect(page.get_by_label("At what diameter were the marks?")).to_have_value("900 mm")
    assert wider_than_its_window(page) <= 0
    page.get_by_role("button", name="Close these and begin anew").click()
    expect(page.locator("main")).to_contain_text("Read before")
    expect(page.locator("#align-says")).to_contain_text("Nothing has been read yet")
