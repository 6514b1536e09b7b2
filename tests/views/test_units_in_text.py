"""Sentences of the tables in the reader's units, and numbers to the digits that are known.

Outside reference: a mile of 1,609.344 m and an inch of 25.4 mm (NIST SP 811, appendix B); two
digits of doubt (JCGM 100, 7.2.6).
"""

import pytest

from axlewright import units
from axlewright.tables import shimmy_questions
from axlewright.views.log_readings import shimmy_question_lines
from axlewright.views.phrases import to_doubt
from axlewright.views.units_in_text import in_units


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("slow down below 50 km/h", "slow down below 30 mph"),
        ("50 to 100 km/h", "30 to 60 mph"),
        ("above 100 km/h.", "above 60 mph."),
        ("at 5 km/h", "at 3 mph"),
        ("within 1.5 mm at the end", "within 0.059 in at the end"),
        ("25 to 30 km, then cool", "16 to 19 mi, then cool"),
        ("after 1,000 km", "after 600 mi"),
        ("a drop of 30 cm", "a drop of 12 in"),
        ("240 kPa and 32 kg", "35 psi and 71 lb"),
        ("0.1 mm (0.004 in)", "0.1 mm (0.004 in)"),
        ("5 N/mm", "5 N/mm"),
        ("3 minutes", "3 minutes"),
    ],
)
def test_a_sentence_is_told_in_the_readers_units(text, told):
    assert in_units(text, "us") == told
    assert in_units(text) == text


def test_a_mixed_reader_keeps_the_road_in_km_and_measures_in_inches():
    assert in_units("80 km, then 1.5 mm", "mixed") == "80 km, then 0.059 in"


def test_the_sheet_after_a_shake_is_whole_in_miles_and_its_answers_are_kept_as_they_are():
    lines = shimmy_question_lines("us")
    assert any("below 50 km/h (below 30 mph)" in line for line in lines)
    assert all(f"{word}" in "".join(lines) for word in shimmy_questions()["speed"].answers)
    assert "km" not in "".join(shimmy_question_lines()[:1])


@pytest.mark.parametrize(
    ("value", "doubt", "kind", "unit", "told"),
    [
        (-0.45, 0.27, "angle", "deg", "-0.45"),
        (-0.5, 1.6, "angle", "deg", "-0.5"),
        (0.05, 0.0233, "length", "mm", "0.050"),
        (1510.0, 31.0, "mass", "kg", "1510"),
        (-0.001, 0.2, "angle", "deg", "0.00"),
    ],
)
def test_no_more_digits_than_are_known(value, doubt, kind, unit, told):
    size = units.known(kind)[unit]
    assert to_doubt(value * size, doubt * size, kind, unit) == told
