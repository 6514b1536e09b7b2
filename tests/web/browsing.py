"""A real browser before a real server: found on the path, and told to stay on this machine."""

import os
import re
import signal
import subprocess
import sys
from contextlib import contextmanager
from urllib.parse import urlsplit

import pytest
from tools.bay_pages import BROWSERS

WCAG = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"],
    "resultTypes": ["violations"],
}


def no_browser():
    """What a desk without a browser is told; in CI the skip is turned into a failure."""
    pytest.skip(f"no browser: none of {', '.join(BROWSERS)} is on PATH; .ci/run installs one")


class Server:
    """`axlewright serve` as a person starts it, over a folder of its own."""

    def __init__(self, folder):
        self.folder, self.port, self.process = folder, 0, None
        self.start()

    @property
    def address(self):
        return f"http://127.0.0.1:{self.port}"

    def start(self):
        words = ["serve", "--port", str(self.port), "--store", str(self.folder)]
        with (self.folder.parent / f"{self.folder.name}.log").open("ab") as log:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "axlewright", *words],
                stdout=subprocess.PIPE,
                stderr=log,
                text=True,
                env={**os.environ, "PYTHONUNBUFFERED": "1"},
            )
        line = self.process.stdout.readline()
        self.port = int(re.search(r":(\d+)$", line.strip())[1])

    @contextmanager
    def killed(self):
        """End it as a flat battery would, and start it again at the same port."""
        self.process.kill()
        self.process.wait()
        self.process.stdout.close()
        try:
            yield
        finally:
            self.start()

    def stop(self):
        """End it as Ctrl+C does; gives the exit code."""
        self.process.send_signal(signal.SIGINT)
        code = self.process.wait(20)
        self.process.stdout.close()
        return code

    def log(self):
        return (self.folder.parent / f"{self.folder.name}.log").read_text("utf-8")


class Watch:
    """What a page must never do: report an error, or ask another machine for anything."""

    def __init__(self, page, address):
        self.errors, self.strangers, self.requests = [], [], []
        self._forgiven = []
        self._host = urlsplit(address).netloc
        page.on("console", self._console)
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        page.on("request", self._request)

    def _console(self, message):
        if message.type in {"error", "warning"}:
            self.errors.append(message.text)

    def _request(self, request):
        self.requests.append(request.url)
        parts = urlsplit(request.url)
        if parts.scheme not in {"data", "blob"} and parts.netloc != self._host:
            self.strangers.append(request.url)

    def forgive(self, pattern):
        """Leave out what a test brought about on purpose, such as a dead network."""
        self._forgiven.append(pattern)

    def check(self):
        assert not [
            error
            for error in self.errors
            if not any(re.search(one, error) for one in self._forgiven)
        ]
        assert not self.strangers


def wider_than_its_window(page):
    """By how many pixels a page can be pushed sideways."""
    return page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
