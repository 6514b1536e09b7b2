"""What the tests of the bay share: a bay over a folder of its own, and somebody who visits it."""

import logging

import pytest
from tools.bay_pages import FLAGS, WIDTHS, browser_path

from axlewright.actions import Bay
from web.browsing import Server, Watch, no_browser
from web.visitor import Visitor


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


@pytest.fixture
def visitor(bay):
    return Visitor(bay)


@pytest.fixture(autouse=True)
def _no_bug_of_ours(caplog):
    """A page that could not be made is logged by the door: no test may meet one by accident."""
    yield
    bugs = [
        record.getMessage()
        for record in caplog.get_records("call")
        if record.name == "axlewright.web" and record.levelno >= logging.ERROR
    ]
    assert not [bug for bug in bugs if "on purpose" not in bug]


PATIENCE = 20_000  # ms: a busy machine is no fault of the page


@pytest.fixture(scope="session")
def browser():
    from playwright.sync_api import expect, sync_playwright

    expect.set_options(timeout=PATIENCE)
    with sync_playwright() as driver:
        place = browser_path(driver.chromium.executable_path)
        if place is None:
            no_browser()
        opened = driver.chromium.launch(executable_path=place, args=list(FLAGS))
        yield opened
        opened.close()


@pytest.fixture(scope="session")
def _one_server(tmp_path_factory):
    running = Server(tmp_path_factory.mktemp("bay") / "store")
    yield running
    assert running.stop() == 0
    assert "Traceback" not in running.log()


@pytest.fixture(scope="module")
def server(_one_server):
    """One bay for all visits of a run, as a person keeps one; each begins axles of its own."""
    before = len(_one_server.log())
    yield _one_server
    assert "Traceback" not in _one_server.log()[before:]


@pytest.fixture
def open_page(browser, server):
    """Open pages of a given size and theme; what they may never do is looked at in the end."""
    contexts, watches = [], []

    def opened(size="desk", theme="light", **more):
        context = browser.new_context(
            viewport=dict(zip(("width", "height"), WIDTHS[size], strict=True)),
            color_scheme=theme,
            base_url=server.address,
            **more,
        )
        context.set_default_timeout(PATIENCE)
        contexts.append(context)
        page = context.new_page()
        page.watch = Watch(page, server.address)
        watches.append(page.watch)
        return page

    yield opened
    for context in contexts:
        context.close()
    for watch in watches:
        watch.check()
