"""Pictures of every page of the bay, at both widths and in both themes, and the page of them.

``python -m tools.bay_pictures`` writes them again; it needs a Chromium on PATH.
"""

import io
import tempfile
import threading
import time
from pathlib import Path

import uvicorn
from PIL import Image
from playwright.sync_api import Browser, sync_playwright

from axlewright.actions import Bay
from axlewright.web import bay_app
from tools.bay_pages import FLAGS, PAGES, THEMES, WIDTHS, browser_path, furnish

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "docs" / "images" / "bay"
PAGE = ROOT / "docs" / "bay-pages.md"
HIGHEST = {"desk": 1100, "phone": 1500}  # px; the rest of a longer page is left out
COLOURS = 32  # ink, paper, one accent, and what lies between them
PHRASE, ADDRESS = "copper heron gravel walnut", "http://192.0.2.1:8321"  # RFC 5737
SAID = {
    "axles": "Your axles",
    "your-axle-begun": "Your axle, just begun",
    "your-axle": "Your axle, all thirteen answered",
    "your-axle-stopped": "Your axle, with a crack found",
    "answer": "The answer",
    "answer-not-yet": "The answer, before there is one",
    "answer-stopped": "The answer, with a crack found",
    "why": "Why",
    "try": "Try a change",
    "moves": "How it moves",
    "moves-not-yet": "How it moves, before there is an answer",
    "moves-stopped": "How it moves, with a crack found",
    "mend-or-replace": "Mend or replace?",
    "mend-or-replace-not-yet": "Mend or replace, before there is an answer",
    "mend-or-replace-stopped": "Mend or replace, with a crack found",
    "align": "Align it",
    "align-not-yet": "Align it, before there is an answer",
    "ends": "Where the rods end",
    "ends-not-yet": "Where the rods end, before there is an answer",
    "measure": "Measure",
    "measure-one": "One guided reading",
    "measure-stopped": "One guided reading, with a crack found",
    "bent": "Where is it bent?",
    "bent-not-yet": "Where is it bent, before there is an answer",
    "shook": "It shook",
    "shook-stopped": "It shook, with a STOP",
    "paper": "Paper",
    "looks": "Look it over",
    "hit": "I just hit something",
    "looks-stopped": "Look it over, with a crack found",
    "been": "Where it has been",
    "been-stopped": "Where it has been, with a crack found",
    "archive": "Everything out, and in again",
    "carry": "What to carry",
    "carry-not-yet": "What to carry, before there is an answer",
    "carry-stopped": "What to carry, with a crack found",
    "cards": "Repair cards",
    "order": "What to order",
    "swap-begin": "The swap, before it is begun",
    "swap": "The swap, under way",
    "words": "What the words mean",
    "on-a-phone": "On a phone",
    "not-there": "A page that is not there",
}


def page_of_pictures() -> str:
    """The page of the docs that shows them all."""
    rows = ["# What the bay looks like", ""]
    rows += ["Written by `make pictures-bay`, of invented rigs. A long page is cut off below.", ""]
    for name in PAGES:
        rows += [f"## {SAID[name]}", ""]
        for theme in THEMES:
            shown = {"light": "on paper", "dark": "at night"}[theme]
            for size in WIDTHS:
                where = {"desk": "at the desk", "phone": "on the phone"}[size]
                told = f"{SAID[name]}, {where}, {shown}"
                rows += [f"![{told}](images/bay/{name}-{size}-{theme}.png)", ""]
    return "\n".join(rows).rstrip() + "\n"


def main() -> None:
    """Take every picture."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        bay = Bay.open(Path(folder))
        app = bay_app(bay, pass_phrase=PHRASE, address=ADDRESS)
        server = uvicorn.Server(uvicorn.Config(app, port=0, log_level="warning", ws="none"))
        thread = threading.Thread(target=server.run)
        thread.start()
        try:
            while not server.started:
                time.sleep(0.05)
            port = server.servers[0].sockets[0].getsockname()[1]
            place = browser_path(driver.chromium.executable_path)
            browser = driver.chromium.launch(executable_path=place, args=list(FLAGS))
            _take(browser, f"http://127.0.0.1:{port}")
            browser.close()
        finally:
            app.state.closing = server.should_exit = True
            thread.join()
            bay.close()
    PAGE.write_text(page_of_pictures(), "utf-8")


def _take(browser: Browser, address: str) -> None:
    first = browser.new_page(base_url=address)
    slugs = furnish(first)
    first.close()
    for size, (wide, high) in WIDTHS.items():
        for theme in THEMES:
            context = browser.new_context(
                base_url=address,
                viewport={"width": wide, "height": high},
                color_scheme="dark" if theme == "dark" else "light",
            )
            page = context.new_page()
            for name, path in PAGES.items():
                page.goto(path.format(**slugs))
                page.evaluate("document.fonts.ready")
                tall = page.evaluate("document.documentElement.scrollHeight")
                page.set_viewport_size({"width": wide, "height": min(tall, HIGHEST[size])})
                file = FOLDER / f"{name}-{size}-{theme}.png"
                file.write_bytes(_small(page.screenshot()))
                page.set_viewport_size({"width": wide, "height": high})
                print(file.relative_to(ROOT), f"{file.stat().st_size / 1e3:.0f} kB")
            context.close()


def _small(png: bytes) -> bytes:
    """The same picture in a few colours."""
    out = io.BytesIO()
    with Image.open(io.BytesIO(png)) as whole:
        few = whole.convert("RGB").quantize(COLOURS, dither=Image.Dither.NONE)
        few.save(out, "PNG", optimize=True)
    return out.getvalue()


if __name__ == "__main__":
    main()
