"""The bay in a real browser: a slider's value to the text and to the screen, first page, clients.

``BAY_SECONDS`` in the environment is how long five clients keep asking, 30 s by default.
"""

import os
import re
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from statistics import median, quantiles
from typing import Any

import httpx

STEPS = 60
CLIENTS = 5
PAUSE = 0.25  # s between two questions of one client
# Moves a slider by one step and waits for the piece of the page that follows it: ms from the
# input event to the new text, and to the frame after it was painted.
MOVE = """(value) => new Promise((told) => {
  const slider = document.querySelector('#n-tube-wall').closest('.lever')
    .querySelector('input[type=range]');
  const start = performance.now();
  const watch = new MutationObserver(() => {
    const text = performance.now() - start;
    watch.disconnect();
    requestAnimationFrame(() => requestAnimationFrame(
      () => told([text, performance.now() - start])));
  });
  watch.observe(document.querySelector('.follows'), {childList: true});
  slider.value = value;
  slider.dispatchEvent(new Event('input', {bubbles: true}));
})"""


@dataclass(frozen=True)
class Row:
    """One line of the table: seconds; nothing stands beside them."""

    name: str
    ours_s: float
    note: str
    peer_s: float | None = None
    ratio: float | None = None


def measure() -> list[Row]:
    """Value to text and to the screen, the first page, and five clients at once."""
    from playwright.sync_api import sync_playwright
    from tools.bay_pages import FLAGS, browser_path

    rows: list[Row] = []
    with _server() as (address, process), sync_playwright() as driver:
        place = browser_path(driver.chromium.executable_path)
        browser = driver.chromium.launch(executable_path=place, args=list(FLAGS))
        page = browser.new_page(base_url=address, viewport={"width": 390, "height": 844})
        page.goto("/")
        page.get_by_role("button", name=re.compile("Heron")).click()
        page.wait_for_url("**/axle/**")
        slug = page.url.rpartition("/")[2]
        rows += _slider(page, slug)
        rows.append(_first_page(browser, address, slug))
        browser.close()
        rows.append(_clients(address, slug, process.pid))
    return rows


def _slider(page: Any, slug: str) -> list[Row]:  # noqa: ANN401  (the browser's own types are slow to import)
    page.goto(f"/axle/{slug}/try")
    page.wait_for_load_state("networkidle")
    taken = []
    for step in range(STEPS + 5):
        text, painted = page.evaluate(MOVE, f"{7.0 + 0.1 * (step % 30):.1f}")
        if step >= 5:  # the first ones warm up
            taken.append((text / 1e3, painted / 1e3))
        page.wait_for_timeout(120)  # the drawing follows
    texts, paints = zip(*taken, strict=True)
    return [
        Row("slider: value to text, median", median(texts), "target 50 ms"),
        Row("slider: value to text, p95", quantiles(texts, n=20)[-1], "target 110 ms"),
        Row("slider: value to screen, median", median(paints), "painted in software"),
    ]


def _first_page(browser: Any, address: str, slug: str) -> Row:  # noqa: ANN401
    page = browser.new_page(base_url=address, viewport={"width": 390, "height": 844})
    answers: list[Any] = []
    page.on("response", lambda answer: answers.append(answer))  # noqa: PLW0108  (it marks its handler)
    start = time.perf_counter()
    page.goto(f"/axle/{slug}/answer")
    page.wait_for_load_state("load")
    taken = time.perf_counter() - start
    sizes = [len(answer.body()) for answer in list(answers)]
    page.close()
    note = f"{sum(sizes) / 1e3:.0f} kB in {len(sizes)} answers; target 1,200 kB and 2 s"
    return Row("first page of a new browser: the answer", taken, note)


def crowd(seconds: float) -> tuple[int, float]:
    """Questions answered to five clients, and by how many MB a server of their own has grown."""
    with _server() as (address, process):
        with httpx.Client(base_url=address, timeout=60.0) as client:
            form = client.get("/").text
            token = re.search(r'name="token" value="([^"]+)"', form)
            asked = {"token": token[1] if token else "", "example": "heron"}
            made = client.post("/copy", data=asked, headers={"Origin": address})
        slug = str(made.headers["location"]).rpartition("/")[2]
        taken, grown = _crowded(address, slug, process.pid, seconds)
    return len(taken), grown


def _clients(address: str, slug: str, process: int) -> Row:
    """Five clients that ask for a while; what the server holds then, over what it held before."""
    seconds = float(os.environ.get("BAY_SECONDS", "30"))
    taken, grown = _crowded(address, slug, process, seconds)
    note = f"{len(taken)} questions in {seconds:.0f} s; grew by {grown:.1f} MB; target 50 MB"
    return Row(f"{CLIENTS} clients at once, a question", median(taken), note)


def _crowded(address: str, slug: str, process: int, seconds: float) -> tuple[list[float], float]:
    _asked_at_once(address, slug, 0.0)  # whatever the seconds: each kind twice from each client
    before = _resident(process)
    taken = _asked_at_once(address, slug, seconds)
    return taken, (_resident(process) - before) / 1e6


def _asked_at_once(address: str, slug: str, seconds: float) -> list[float]:
    taken: list[float] = []
    asking = [
        threading.Thread(target=_ask, args=(address, slug, seconds, each, taken))
        for each in range(CLIENTS)
    ]
    for each in asking:
        each.start()
    for each in asking:
        each.join()
    return taken


def _ask(address: str, slug: str, seconds: float, which: int, taken: list[float]) -> None:
    tails = ("", "/answer", "/try/now?tube.wall={0}", "/try/now?weight.axle={1}", "/why/1")
    end, turn = time.perf_counter() + seconds, which
    least = which + 2 * len(tails)
    with httpx.Client(base_url=address, timeout=60.0) as client:
        while turn < least or time.perf_counter() < end:
            tail = tails[turn % len(tails)].format(6.0 + 0.1 * (turn % 40), 1300 + 10 * (turn % 60))
            start = time.perf_counter()
            client.get(f"/axle/{slug}{tail}").raise_for_status()
            taken.append(time.perf_counter() - start)
            turn += 1
            time.sleep(PAUSE)


def _resident(process: int) -> float:
    """Memory that a process holds, in bytes; 0 where the system does not tell."""
    status = Path(f"/proc/{process}/status")
    if not status.exists():
        return 0.0
    found = re.search(r"VmRSS:\s+(\d+) kB", status.read_text("utf-8"))
    return 1024.0 * float(found[1]) if found else 0.0


@contextmanager
def _server() -> Iterator[tuple[str, subprocess.Popen[str]]]:
    with tempfile.TemporaryDirectory() as folder:
        words = ["serve", "--port", "0", "--store", folder]
        process = subprocess.Popen(  # noqa: S603  (our own command)
            [sys.executable, "-m", "axlewright", *words],
            stdout=subprocess.PIPE,
            text=True,
            env={**os.environ, "PYTHONUNBUFFERED": "1"},
        )
        try:
            line = process.stdout.readline() if process.stdout else ""
            found = re.search(r"http://[\w.]+:\d+", line)
            if found is None:
                raise RuntimeError(f"The bay did not open: {line!r}")
            yield found[0], process
        finally:
            process.terminate()
            process.wait(20)
            if process.stdout:
                process.stdout.close()
