"""The built docs stand alone: a browser without a network misses nothing."""

import re
import subprocess
import sys

import pytest

from house.places import ROOT

FETCHED = re.compile(
    r"<(?:script|img|iframe|link)\b[^>]*?(?:src|href)=[\"']?(https?:)?//", re.DOTALL
)
FETCHED_BY_STYLE = re.compile(r"url\(\s*[\"']?(?:https?:)?//|@import\s+[\"']?(?:https?:)?//")


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("site")
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "--site-dir", str(folder)],
        cwd=ROOT,
        check=True,
    )
    return folder


def test_no_page_fetches_from_outside(site):
    pages = list(site.rglob("*.html"))
    assert len(pages) >= 4
    assert not [page.name for page in pages if FETCHED.search(page.read_text("utf-8"))]


def test_no_style_fetches_from_outside(site):
    styles = list(site.rglob("*.css"))
    assert styles
    assert not [style.name for style in styles if FETCHED_BY_STYLE.search(style.read_text("utf-8"))]


@pytest.mark.parametrize("tag", ['<script src="https://a.b/c.js">', "<link href='//a.b/c.css'>"])
def test_the_search_finds_what_is_fetched(tag):
    assert FETCHED.search(tag)
