"""Wheel offset and toe, each in the ways that a garage writes them."""

from math import asin, radians

import pytest

from axlewright.errors import BadQuantity
from axlewright.rig.words import parse_offset, parse_toe

INCH = 0.0254  # exact: NIST SP 811, app. B


# Offset: ET is stamped in mm. Backspacing less half of the overall width, which is the rim's width
# plus 25.4 mm of flanges: common practice, no source.
@pytest.mark.parametrize(
    ("text", "offset"),
    [
        ("ET -25 mm", -0.025),
        ("ET35", 0.035),
        ("et +20", 0.020),
        ("offset 1 in", INCH),
        ("backspacing 4.5 in on an 8 in rim", 0.0),
        ("4 1/2 in backspacing, 7 in rim", 0.5 * INCH),
        ("BS 3.75 in on 8 in wheel", -0.75 * INCH),
    ],
)
def test_offset_and_backspacing_run_in_opposite_senses(text, offset):
    parsed = parse_offset(text)
    assert parsed.value == pytest.approx(offset, abs=1e-12)
    assert parsed.text == text
    assert parsed.kind == "offset"


def test_a_backspacing_takes_the_rim_width_that_stands_beside_it():
    assert parse_offset("backspacing 4 1/2 in", 7 * INCH).value == pytest.approx(0.5 * INCH)
    assert "flanges" in parse_offset("backspacing 4 1/2 in", 7 * INCH).note


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("-25 mm", "does not say whether it is an ET or a backspacing"),
        ("backspacing 4.5 in", "does not say how wide the rim is"),
        ("round", "is no offset"),
        ("ET 12 Nm", "is a torque, not a length"),
    ],
)
def test_half_an_offset_is_refused(text, told):
    with pytest.raises(BadQuantity, match=told):
        parse_offset(text)


# The gap between the tyres differs by d over a diameter D when each wheel turns by toe / 2:
# d = 2 D sin(toe / 2), plane geometry.
@pytest.mark.parametrize(
    ("text", "toe"),
    [
        ("1/8 in at 35 in", 2 * asin(0.125 / 70)),
        ("toe-in 3 mm at 890 mm", 2 * asin(3 / 1780)),
        ("3 mm toe-out at 890 mm", -2 * asin(3 / 1780)),
        ("0.2 deg", radians(0.2)),
        ("toe-out 0.2°", -radians(0.2)),
    ],
)
def test_toe_as_an_angle_or_a_length_with_its_diameter(text, toe):
    assert parse_toe(text).value == pytest.approx(toe, rel=1e-12)


@pytest.mark.parametrize("text", ["1/8 in", "3 mm", "900 mm at 3 mm"])
def test_toe_as_a_length_without_its_diameter_is_refused(text):
    with pytest.raises(BadQuantity, match="diameter"):
        parse_toe(text)
