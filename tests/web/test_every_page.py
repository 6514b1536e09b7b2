"""Every page in a real browser: both widths, both themes, as the accessibility rules ask.

Rules: WCAG 2.1, levels A and AA, as axe-core checks them.
"""

import re
from itertools import product

import pytest
from axe_playwright_python.sync_playwright import Axe
from tools.bay_pages import NO_PAGES, PAGES, THEMES, WIDTHS, furnish
from tools.bay_pictures import FOLDER, PAGE, page_of_pictures

from axlewright.web.routes import ROUTES
from web.browsing import WCAG, wider_than_its_window

# Everything that opens stands open; of the many optional questions, all alike, the first three.
OPENED = """() => {
  document.querySelectorAll("#others details.question").forEach((it, at) => at < 3 || it.remove());
  document.querySelectorAll("details").forEach((it) => (it.open = true));
}"""
MOST_BYTES = 1_200_000  # of a first visit: issue of the bay, "Must show"


@pytest.fixture(scope="module")
def furnished(browser, server):
    page = browser.new_page(base_url=server.address)
    slugs = furnish(page)
    page.close()
    return slugs


def test_every_page_is_looked_at():
    seen = {place.partition("?")[0].partition("#")[0] for place in PAGES.values()}
    told = {route.path for route in ROUTES if "GET" in (route.methods or ()) and route.path}
    named = {"/1": "/{rank:int}", "/measure/camber": "/measure/{key}"}
    named |= {"/measure/unit_hub_play": "/measure/{key}"}
    places = {re.sub(r"\{\w+\}", "{slug}", place) for place in seen}
    for shown, route in named.items():
        places = {place.replace(shown, route) for place in places}
    assert places - {"/no-such-page"} == told - NO_PAGES


LOOKED_AT = list(zip(WIDTHS, THEMES, strict=True))  # the place hangs on the width, ink on the theme


@pytest.mark.parametrize(
    ("size", "theme"),
    [
        *LOOKED_AT,
        *(
            pytest.param(*pair, marks=pytest.mark.soak)
            for pair in product(WIDTHS, THEMES)
            if pair not in LOOKED_AT
        ),
    ],
)
def test_a_page_is_sound(open_page, furnished, size, theme):
    page = open_page(size, theme)
    wrong = {}
    for name, place in PAGES.items():
        page.goto(place.format(**furnished))
        page.evaluate(OPENED)
        if over := wider_than_its_window(page):
            wrong[name] = f"{over} px too wide"
        found = Axe().run(page, options=WCAG).response["violations"]
        if found:
            told = [(rule["id"], node["html"][:160]) for rule in found for node in rule["nodes"]]
            wrong.setdefault(name, told[:6])
        assert page.locator("h1").count() == 1, name
    page.watch.forgive("status of 404")  # the page that is not there
    assert not wrong


@pytest.mark.parametrize("size", list(WIDTHS))
def test_a_thumb_hits_what_it_aims_at(open_page, furnished, size):
    """Targets: 44 px is WCAG 2.1's enhanced size (2.5.5); links within a line are excepted."""
    page = open_page(size)
    for name in ("axles", "your-axle-begun", "on-a-phone"):
        page.goto(PAGES[name].format(**furnished))
        small = page.evaluate(
            """() => [...document.querySelectorAll("button, select, summary, .pick, nav a, .go")]
                .concat([...document.querySelectorAll("input:not([type=hidden], [type=radio])")])
                .filter((it) => it.checkVisibility())
                .map((it) => [it.outerHTML.slice(0, 80), it.getBoundingClientRect()])
                .filter(([, box]) => box.height < 44 || box.width < 44).map(([html]) => html)"""
        )
        assert not small


def test_a_first_visit_is_light(open_page, furnished):
    page = open_page("phone")
    sizes = []
    page.on("response", lambda answer: sizes.append(len(answer.body())))
    page.goto(PAGES["your-axle"].format(**furnished))
    page.wait_for_load_state("load")
    assert 10_000 < sum(sizes) <= MOST_BYTES


@pytest.mark.parametrize("name", PAGES)
def test_every_page_has_its_pictures(name):
    for size in WIDTHS:
        for theme in THEMES:
            assert (FOLDER / f"{name}-{size}-{theme}.png").stat().st_size > 2000
    assert PAGE.read_text("utf-8") == page_of_pictures()
