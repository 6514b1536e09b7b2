"""Questions, echoes, and what each answer already tells."""

from math import pi

import numpy as np
import pytest

from axlewright import units
from axlewright.rig import FIELDS, FIRST_FIELDS
from axlewright.views.questions import (
    DRAWINGS,
    NAMES,
    REASONS,
    chosen,
    echo_line,
    explanation_lines,
    missing_line,
    not_chosen_line,
    options,
    question_lines,
)
from axlewright.views.report_words import sheet_data
from axlewright.views.told import lever, outboard_share, told_lines

INCH = 0.0254  # exact; NIST SP 811, app. B
BY_PATH = {field.path: field for field in FIELDS}


@pytest.mark.parametrize(
    ("inches", "degrees", "within"), [(29, 0.25, 0.005), (35, 0.205, 5e-4), (37, 0.19, 0.005)]
)
def test_toe_of_an_eighth_on_a_tyre(inches, degrees, within):
    """Plain trigonometry, rebuilt: 1/8 over the diameter, in degrees, as garages round it."""
    [_, toe] = told_lines("tyre.sidewall", {}, {}, inches * INCH)
    told = float(toe.split(" is ")[1].split(" deg")[0])
    assert told == pytest.approx(degrees, abs=within)
    assert told == pytest.approx(np.degrees(0.125 / inches), abs=5e-4)


def test_a_tyre_one_step_outboard_bends_more():
    """1 in on a 14 in lever is 7 %, 2 in are 14 %: a ratio of lengths, nothing else."""
    assert outboard_share(14 * INCH, 1 * INCH) == pytest.approx(0.07, abs=0.002)
    assert outboard_share(14 * INCH, 2 * INCH) == pytest.approx(0.14, abs=0.004)


def test_the_springs_tell_the_lever():
    lines = told_lines("track.springs", {"track": 1.675, "spring_spacing": 0.915}, {})
    assert lever(1.675, 0.915) == pytest.approx(0.38)
    assert lines[0].startswith("From spring to tyre centre it is 380 mm")
    assert "6.6 %" in lines[1]  # 25 / 380


def test_the_hubs_tell_radius_and_ground():
    told = {"hub_height_left": 0.432, "hub_height_right": 0.430}
    lines = told_lines("hub_height.right", told, {}, 0.9398)
    assert lines[0].startswith("Loaded radius: 431 mm")
    assert "gives by 39 mm (8 %" in lines[1]
    assert "271 to 311 mm" in lines[2]
    assert told_lines("hub_height.left", {"hub_height_left": 0.432}, {}, 0.9398) == []


def test_a_girth_tells_the_diameter():
    [line] = told_lines("tube.girth.left", {"tube_girth_left": pi * 0.0762}, {})
    assert "left 76.2 mm" in line


def test_the_bare_tubes_tell_what_is_left_and_where_the_centre_sits():
    told = {"tube_bare_left": 0.3, "tube_bare_right": 0.618, "track": 1.675}
    lines = told_lines("tube.bare.right", told, {})
    assert "918 mm of 1675 mm; the rest is 757 mm" in lines[0]
    assert "the centre sits to the left" in lines[2]


@pytest.mark.parametrize(
    ("offset", "spacer", "says"),
    [(-0.025, 0.0, "25 mm outside"), (0.025, 0.0, "25 mm inside"), (0.03, 0.03, "in the plane")],
)
def test_the_offset_tells_where_the_tyre_stands(offset, spacer, says):
    """ET is positive with the tyre's centre inboard; a spacer goes outboard: common practice."""
    lines = told_lines("wheel.spacer", {"wheel_offset": offset, "wheel_spacer": spacer}, {})
    assert says in lines[0]
    assert "outboard" in lines[1]


def test_the_weight_tells_each_wheel_and_the_bending():
    told = {"axle_weight": 10_000.0, "track": 1.6, "spring_spacing": 0.8}
    [line] = told_lines("weight.axle", told, {})
    assert "2000 N m" in line  # 5000 N on 0.4 m
    assert "about 510 kg" in line  # 5000 N over 9.80665


def test_a_lock_tells_what_one_shaft_can_get():
    said = {
        word: told_lines("drive.lock", {}, {"drive.lock": word})
        for word in ("open", "limited slip", "locks on command")
    }
    assert len({lines[0] for lines in said.values()}) == 3
    assert "nearly all" in said["locks on command"][0]


def test_a_path_without_anything_to_tell_is_quiet():
    assert told_lines("use.hardest", {}, {}) == []


@pytest.mark.parametrize("field", FIRST_FIELDS, ids=lambda field: field.path)
def test_each_of_the_thirteen_is_named_reasoned_and_asked(field):
    lines = question_lines(field)
    assert field.path in NAMES
    assert field.question in REASONS
    assert lines[0] == f"{field.question} of 13. {field.asks}"
    if options(field):
        assert any(line.strip().startswith("1  ") for line in lines)
    else:
        assert any(field.example in line for line in lines)
    assert any("back" in line for line in explanation_lines(field, open_ok=False))


@pytest.mark.parametrize("path", ["held_by.arms", "held_by.weight_on"])
def test_each_layout_has_a_drawing_of_plain_signs(path):
    for word in BY_PATH[path].choices:
        assert DRAWINGS[word].isascii()
        assert len({line for line in DRAWINGS[word].split("\n") if line.strip()}) >= 2


def test_a_sided_question_says_whose_left_it_is():
    assert any("sitting in it" in line for line in question_lines(BY_PATH["hub_height.left"]))


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("1", "four arms"),
        ("2.", "three arms"),
        ("RADIUS", "radius arms"),
        ("le", "leaves"),
        ("four arms", "four arms"),
        ("", None),
        ("0", None),
        ("9", None),
        ("²", None),
        ("arms", None),
    ],
)
def test_a_word_is_chosen_by_number_or_beginning(said, meant):
    assert chosen(said, BY_PATH["held_by.arms"].choices) == meant


def test_a_whole_word_wins_over_longer_ones():
    assert chosen("track bar", ("track-bar bracket", "track bar")) == "track bar"


def test_a_beginning_of_two_words_names_both():
    words = BY_PATH["drive.lock"].choices
    assert "locks by itself or locks on command" in not_chosen_line("locks", words)
    assert "number from 1 to 4" in not_chosen_line("welded", words)


def test_a_number_is_said_back_in_words_with_side_and_both_units():
    parsed = units.parse("about 9 7/16 in", "length")
    line = echo_line(BY_PATH["tube.girth.left"], parsed, "about 9 7/16 in")
    assert "round the left tube" in line
    assert "about 9.4375 in" in line
    assert "239.7 mm" in line
    assert "not known" in echo_line(BY_PATH["joint.cap_across"], units.DONT_KNOW, "don't know")


def test_every_optional_field_can_be_named():
    names = [echo_line(field, None, "x") for field in FIELDS]
    assert all("_" not in name for name in names)


def test_what_is_missing_is_named_in_words():
    assert "tyre; tyre centre to tyre centre" in missing_line(["tyre.sidewall", "track.tyres"])


@pytest.mark.parametrize(
    ("path", "word"),
    [
        ("tube.girth.left", "Nobody under a vehicle on a jack alone"),
        ("tube.bare.left", "stands under the frame first"),
        ("wheel.offset", "no part of you under it"),
        ("joint.cap_across", "fingers clear of knuckle and stop"),
        ("drive.lock", "Do not find out by lifting wheels"),
        ("rig.condition", "engine off and cold"),
    ],
)
def test_a_question_that_sends_a_hand_under_it_carries_its_caution(path, word):
    """Safety rules 7 to 9: the caution stands at the step, on every face."""
    field = next(each for each in FIRST_FIELDS if each.path == path)
    assert any(line.startswith("   ! ") and word in line for line in question_lines(field))
    assert any(word in line for line in explanation_lines(field, open_ok=True))
    assert any(word in each.caution for each in sheet_data().questions)
