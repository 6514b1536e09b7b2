"""Every page of the bay, the axles that show each at its fullest, and a browser to see it in."""

import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from playwright.sync_api import Page

# First the one that draws pages alone: a whole browser draws its windows too, at twice the cost.
BROWSERS: Final = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
FLAGS: Final = (
    "--no-sandbox",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-gpu",  # flat pages: drawing them in software costs a quarter less than through GL
)
WIDTHS: Final[Mapping[str, tuple[int, int]]] = {"desk": (1280, 800), "phone": (390, 844)}
THEMES: Final = ("light", "dark")
PAGES: Final[Mapping[str, str]] = {
    "axles": "/",
    "your-axle-begun": "/axle/{crake}",
    "your-axle": "/axle/{heron}",
    "your-axle-stopped": "/axle/{plover}",
    "answer": "/axle/{heron}/answer",
    "answer-not-yet": "/axle/{crake}/answer",
    "answer-stopped": "/axle/{plover}/answer",
    "why": "/axle/{heron}/why/1",
    "try": "/axle/{heron}/try",
    "moves": "/axle/{heron}/moves",
    "moves-not-yet": "/axle/{crake}/moves",
    "moves-stopped": "/axle/{plover}/moves?pose=bump",
    "align": "/axle/{heron}/align",
    "align-not-yet": "/axle/{crake}/align",
    "ends": "/axle/{heron}/ends",
    "ends-not-yet": "/axle/{crake}/ends",
    "measure": "/axle/{heron}/measure",
    "measure-one": "/axle/{heron}/measure/camber",
    "measure-stopped": "/axle/{plover}/measure/unit_hub_play",
    "bent": "/axle/{heron}/bent?tie_rod_bow=25+mm&wheel_off=-15+deg&hit=yes",
    "shook": "/axle/{heron}/shook",
    "shook-stopped": "/axle/{plover}/shook",
    "bent-not-yet": "/axle/{crake}/bent",
    "swap": "/axle/{heron}/swap",
    "swap-begin": "/axle/{plover}/swap",
    "paper": "/axle/{heron}/paper",
    "looks": "/axle/{heron}/looks",
    "hit": "/axle/{heron}/hit",
    "looks-stopped": "/axle/{plover}/looks?list=after_trip",
    "order": "/axle/{heron}/order",
    "been": "/axle/{heron}/been",
    "been-stopped": "/axle/{plover}/been",
    "archive": "/archive",
    "mend-or-replace": "/axle/{heron}/decide",
    "mend-or-replace-not-yet": "/axle/{crake}/decide",
    "mend-or-replace-stopped": "/axle/{plover}/decide",
    "carry": "/axle/{heron}/carry",
    "carry-not-yet": "/axle/{crake}/carry",
    "carry-stopped": "/axle/{plover}/carry",
    "cards": "/axle/{heron}/cards",
    "words": "/words",
    "on-a-phone": "/pair",
    "not-there": "/no-such-page",
}
# What answers, but is no page: parts, files and streams.
NO_PAGES: Final = frozenset(
    {
        "/axle/{slug}/pieces",
        "/axle/{slug}/events",
        "/axle/{slug}/rig.toml",
        "/axle/{slug}/answer.json",
        "/axle/{slug}/bent.json",
        "/axle/{slug}/carry.json",
        "/axle/{slug}/carry/list.pdf",
        "/axle/{slug}/try/now",
        "/axle/{slug}/moves/now",
        "/axle/{slug}/moves/travel.pdf",
        "/axle/{slug}/align/worksheet.pdf",
        "/axle/{slug}/align/sheet.pdf",
        "/axle/{slug}/ends/sheet.pdf",
        "/axle/{slug}/align/readings.toml",
        "/axle/{slug}/paper/report.pdf",
        "/axle/{slug}/paper/sheet.pdf",
        "/axle/{slug}/paper/take.pdf",
        "/axle/{slug}/take.html",
        "/axle/{slug}/photo/{digest}",
        "/axle/{slug}/swap/jobs.pdf",
        "/axle/{slug}/swap/plan.json",
        "/axle/{slug}/order.pdf",
        "/axle/{slug}/order.toml",
        "/axle/{slug}/order.json",
        "/axle/{slug}/been/log.pdf",
        "/archive/axlewright-archive.zip",
        "/axle/{slug}/decide/now",
        "/axle/{slug}/decide/memo.pdf",
        "/axle/{slug}/decide/choice.json",
    }
)


LONG_WORK: Final = 240_000  # ms that a choice may take on a busy machine


def browser_path(own: str = "") -> str | None:
    """Path of a Chromium: one on PATH, else the one that Playwright itself installed."""
    found = next(filter(None, map(shutil.which, BROWSERS)), None)
    return found or (own if own and Path(own).exists() else None)


READ: Final[Mapping[str, str]] = {
    "How far apart are the two tyres' marks in front of the axle?": "1571 mm; 1571.5 mm",
    "How far apart are the two tyres' marks behind it?": "1568 mm; 1568 mm",
    "At what diameter were the marks?": "900 mm",
    "What thread has the tie rod's adjuster?": "M22x1.5",
}


def furnish(page: Page) -> dict[str, str]:
    """Begin the axles that the pages show; gives the slug of each."""
    made = {"heron": _copied(page, "Heron")}
    page.goto(f"/axle/{made['heron']}/align?at=toe")
    for asked, text in READ.items():
        page.get_by_label(asked).fill(text)
    page.locator("#step-toe").get_by_role("button", name="Keep these readings").click()
    page.locator(".turning p").get_by_text("Tie rod").first.wait_for()
    made["plover"] = _copied(page, "Wagtail")
    page.locator("#q-12 > summary").click()
    page.get_by_label("Which part?").fill("knuckle")
    page.get_by_label("What was found, or done?").select_option("cracked")
    page.get_by_role("button", name="List it").click()
    page.locator(".stop").wait_for()
    for reading in (("left", "-0.6 deg", "-0.4 deg"), ("right", "1.6 deg", "1.7 deg")):
        read(page, made["heron"], "camber", *reading)
    read(page, made["heron"], "camber_out", "left", "-1.9 deg", "-2.0 deg")
    read(page, made["heron"], "tube_slope", "left", "1.4 deg")
    page.goto(f"/axle/{made['heron']}/swap")
    page.get_by_label("Which kind of work is it?").select_option("geared axle")
    page.get_by_role("button", name="Begin this swap").click()
    page.locator("#now .step").first.wait_for()
    page.goto("/")
    page.get_by_label("What do you call this rig?").fill("Crake")
    page.get_by_role("radio", name="rear", exact=True).check()
    page.get_by_role("button", name="Begin").click()
    made["crake"] = _slug(page)
    page.locator("#q-3 > summary").click()
    for path, text in {"left": "395 mm", "right": "39 mm"}.items():
        field = page.locator(f"#in-hub-height-{path}")
        field.fill(text)
        field.press("Enter")
    page.locator(".fault").wait_for()
    for name in ("heron", "plover"):
        page.goto(f"/axle/{made[name]}/decide")
        page.locator("#choice").wait_for(timeout=LONG_WORK)
    return made


def read(page: Page, slug: str, key: str, side: str, *values: str) -> None:
    """Say a reading on its page; left and right are the vehicle's, no side where it has none."""
    page.goto(f"/axle/{slug}/measure/{key}")
    if side:
        page.get_by_role("radio", name=side, exact=True).check()
    for at, value in enumerate(values, 1):
        page.locator(f"#in-value-{at}").fill(value)
    page.get_by_role("button", name="Say it").click()
    page.locator("#taken").wait_for()


def _copied(page: Page, name: str) -> str:
    page.goto("/")
    page.get_by_role("button", name=name).click()
    return _slug(page)


def _slug(page: Page) -> str:
    page.wait_for_url("**/axle/**")
    return page.url.rpartition("/")[2]
