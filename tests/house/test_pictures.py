"""The picture that the README opens with says what the demo rig says today."""

import re

import pytest
from tools.pictures import PICTURE, answer, picture, words

from house.places import ROOT

LINES = answer()
NUMBER = re.compile(r"\d[\d,]*(?:\.\d+)?")


def numbers(text):
    return [float(found.replace(",", "")) for found in NUMBER.findall(text)]


def shape(text):
    return " ".join(NUMBER.sub("#", text).split())


def test_the_picture_says_what_is_said_today():
    shown, today = words(PICTURE.read_text("utf-8")), "\n".join(LINES)
    behind = "behind the answer: `make pictures`"
    assert shape(shown) == shape(today), behind
    # Another processor may round the last digit of a share of draws the other way.
    assert numbers(shown) == pytest.approx(numbers(today), rel=0.03, abs=1), behind


def test_a_picture_says_every_line_and_only_once():
    assert words(picture(LINES)).split() == " ".join(LINES).split()


def test_a_picture_is_the_same_each_time():
    assert picture(LINES) == picture(LINES)


def test_a_picture_fetches_nothing():
    fetched = re.compile(r"(?:href|src)=|url\((?!#)|@import|<script")
    assert not fetched.search(PICTURE.read_text("utf-8"))
    assert not fetched.search(picture(LINES))
    assert fetched.search('@font-face { src: url("https://a.b/c.woff") }')


def test_the_readme_shows_it():
    assert f"]({PICTURE.relative_to(ROOT).as_posix()})" in (ROOT / "README.md").read_text("utf-8")
