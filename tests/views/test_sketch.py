"""Sketches of guided readings: every one there, to the step, readable, and the right way round."""

import re
from xml.etree import ElementTree as ET

import pytest

from axlewright.errors import UnknownEntry
from axlewright.tables import procedure_steps, procedures
from axlewright.views.drawing_ink import ADVANCE
from axlewright.views.sketch import SKETCHES, procedure_sketch
from axlewright.views.sketch_kit import TEXT

SVG = "{http://www.w3.org/2000/svg}"
KEYS = sorted(procedures())


def tree(key):
    return ET.fromstring(procedure_sketch(key))  # noqa: S314  (our own text)


def words(svg):
    """Boxes of lettering: left, top, right, bottom."""
    found = []
    for text in svg.iter(f"{SVG}text"):
        high, told = float(text.get("font-size")), text.text
        wide, x, y = ADVANCE * high * len(told), float(text.get("x")), float(text.get("y"))
        left = x - {"middle": wide / 2, "end": wide}.get(text.get("text-anchor"), 0.0)
        box = (left, y - 0.85 * high, left + wide, y + 0.15 * high)
        if "rotate" in text.get("transform", ""):
            box = (x - high / 2, y - wide / 2, x + high / 2, y + wide / 2)
        found.append((told, box))
    return found


def marked(svg, mark):
    """Length of the dimension line with a mark."""
    [path] = [each for each in svg.iter(f"{SVG}path") if each.get("data-mark") == mark]
    x0, _, x1, _ = map(float, re.findall(r"-?[\d.]+", path.get("d")))
    return abs(x1 - x0)


def test_every_guided_reading_has_a_sketch_and_no_sketch_is_left_over():
    assert set(SKETCHES) == set(procedures())


def test_nobody_knows_another():
    with pytest.raises(UnknownEntry):
        procedure_sketch("nothing")


@pytest.mark.parametrize("key", KEYS)
def test_numbers_of_a_sketch_are_steps_of_its_procedure(key):
    flags = [int(each.get("data-flag")) for each in tree(key).iter() if each.get("data-flag")]
    told = {each.step for each in procedure_steps().values() if each.procedure == key}
    assert flags
    assert len(set(flags)) == len(flags)
    assert set(flags) <= told


@pytest.mark.parametrize("key", KEYS)
def test_a_sketch_says_itself_in_words(key):
    svg = tree(key)
    assert svg.find(f"{SVG}title").text == procedures()[key].sketch
    assert svg.get("aria-labelledby") == svg.find(f"{SVG}title").get("id")
    assert svg.get("role") == "img"


@pytest.mark.parametrize("key", KEYS)
def test_lettering_lies_within_the_sketch_and_nothing_crosses_it(key):
    svg = tree(key)
    left, top, wide, high = map(float, svg.get("viewBox").split())
    boxes = words(svg)
    for told, box in boxes:
        assert left <= box[0] <= box[2] <= left + wide, told
        assert top <= box[1] <= box[3] <= top + high, told
    for at, (one, here) in enumerate(boxes):
        for other, there in boxes[at + 1 :]:
            apart = (
                here[2] <= there[0]
                or there[2] <= here[0]
                or here[3] <= there[1]
                or there[3] <= here[1]
            )
            assert apart, (one, other)


@pytest.mark.parametrize("key", KEYS)
def test_lettering_is_of_one_size_in_all_and_large_enough_for_a_phone(key):
    """12 px on a page of 390 px less its margins; WCAG has no least size: common practice."""
    svg = tree(key)
    _, _, wide, _ = map(float, svg.get("viewBox").split())
    assert wide == pytest.approx(330.0, abs=14.0)
    sizes = {float(text.get("font-size")) for text in svg.iter(f"{SVG}text")}
    assert sizes <= {TEXT, round(1.15 * TEXT, 2)}  # lettering, and numbers of steps
    assert min(sizes) * (390.0 - 32.0) / wide >= 12.0


def test_toe_in_is_drawn_as_toe_in():
    """TM 5-3810-293-14&P-2 by way of the trade: rear less front is toe-in."""
    svg = tree("toe")
    assert marked(svg, "front") < marked(svg, "rear")


def test_no_colour_but_that_of_the_text_around_it():
    for key in KEYS:
        colours = set(re.findall(r'(?:fill|stroke)="([^"]+)"', procedure_sketch(key)))
        assert colours <= {"currentColor", "none", "#fff"}
