"""An alignment in words, as a drawing and on paper."""

import io
import re
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET

import pypdf
import pytest

from axlewright.actions import align_file, align_paper
from axlewright.geometry import align
from axlewright.rig import load_rig, readings_said
from axlewright.views import align_data, align_lines, align_sentence, toe_drawing

ROOT = Path(__file__).parents[2]
HERON = str(ROOT / "examples" / "rigs" / "heron.toml")
STORK = load_rig(str(ROOT / "examples" / "rigs" / "stork-rear.toml"))
READ = str(ROOT / "examples" / "readings" / "heron-after-the-lift.toml")
DONE = {"play.found": ["none"]}
TOE = {"toe.front": ["1571 mm"], "toe.rear": ["1568 mm"], "toe.diameter": ["900 mm"]}


def said(**more):
    words = {key.replace("__", "."): [value] for key, value in more.items()}
    return align_file(HERON, said={**TOE, **DONE, **words})


LENGTH_OF_TOE = re.compile(r"[0-9.]+ (?:mm|in) of toe-(?:in|out)")


@pytest.mark.parametrize("system", ["metric", "us", "mixed"])
def test_toe_in_length_says_its_diameter(system):
    # A length of toe without its diameter means nothing: geometry.
    for answer in (said(), said(toe__rear="1574 mm"), said(toe__rear="1571.9 mm")):
        for line in align_lines(answer, system):
            if LENGTH_OF_TOE.search(line):
                assert "at a diameter of" in line, line
    brief = align_data(said(), system).brief
    assert all("at a diameter of" in line for line in brief if LENGTH_OF_TOE.search(line))


def test_the_sentence_says_what_to_turn_and_which_way():
    told = align_sentence(
        said(tie_rod__thread="M22x1.5", tie_rod__right_hand_end="right", tie_rod__ahead="no")
    )
    assert "longer" in told
    assert "flats" in told
    assert "its top going forward" in told
    assert "on the right" in told


def test_play_comes_before_toe():
    assert align_sentence(said(play__found="some")).startswith("Not toe yet: take the play out")
    assert "Look for play first" in align_sentence(align_file(HERON, said=TOE))


def test_cannot_tell_counts_as_out_and_says_what_would_settle_it():
    told = " ".join(align_lines(said(toe__front="1570 mm", toe__rear="1573 mm")))
    assert "cannot tell, so it counts as out" in told
    assert "would settle it" in told


def test_the_rule_is_told_beside_the_exact_caster():
    answer = align_file(HERON, READ)
    told = " ".join(align_lines(answer))
    assert "one and a half times the change of camber says" in told
    assert re.search(r"[23]\.\d % off", told)


@pytest.mark.parametrize(
    ("camber", "included", "told"),
    [
        ("1.9 deg", None, "it cannot be told"),
        ("1.9 deg", "same", "cannot be told"),
    ],
)
def test_included_angle_is_evidence(camber, included, told):
    more = {"camber__left": camber, "camber__with": "camber_gauge"}
    if included:
        for side in ("left", "right"):
            more |= {
                f"caster__{side}__out": "2.58302 deg",
                f"caster__{side}__straight": "0 deg",
                f"caster__{side}__in": "-1.539785 deg",
            }
    assert told in " ".join(align_lines(said(**more)))


def test_careful_readings_tell_knuckle_from_tube():
    """Readings with their own small ±: the sum agrees, so the tube is bent."""
    sweep = {"out": "2.58302", "straight": "0", "in": "-1.539785"}
    more = {"camber.left": ["1.9 ± 0.05 deg"], "caster.sweep": ["20 ± 0.05 deg"]}
    for side in ("left", "right"):
        for place, value in sweep.items():
            more[f"caster.{side}.{place}"] = [f"{value} ± 0.002 deg"]
    same = " ".join(align_lines(align_file(HERON, said={**more, **DONE})))
    assert "tube or end forging is bent" in same
    # An independent script: caster 4, inclination 12, camber 0.25 degrees straight ahead.
    other = {"out": "2.363893", "straight": "0.25", "in": "-0.385678"}
    for place, value in other.items():
        more[f"caster.left.{place}"] = [f"{value} ± 0.002 deg"]
    assert "belongs to the knuckle" in " ".join(
        align_lines(align_file(HERON, said={**more, **DONE}))
    )


def test_a_rear_axle_has_nothing_to_turn():
    words = {"toe.front": ["1571 mm"], "toe.rear": ["1560 mm"], "toe.diameter": ["800 mm"]}
    answer = align(STORK, readings_said({**words, **DONE}, "rear"))
    told = align_sentence(answer)
    assert "nothing to turn" in told
    assert not any("steering wheel:" in line for line in align_lines(answer))


def test_the_drawing_is_two_tape_marks_and_speaks():
    svg = toe_drawing(said(tie_rod__thread="M22x1.5"))
    root = ET.fromstring(svg)  # noqa: S314
    text = " ".join(root.itertext())
    assert "front 1,571.0 mm" in text
    assert "rear 1,568.0 mm" in text
    assert "tie rod" in text
    assert "marks at a diameter of 900 mm" in text
    assert root.attrib["role"] == "img"
    assert "colour" not in svg
    blank = toe_drawing(align_file(HERON))
    assert "empty" in blank or "box to write in" in blank
    assert ET.fromstring(blank) is not None  # noqa: S314


@pytest.mark.parametrize("ahead", ["yes", "no"])
def test_which_way_to_turn_stands_between_the_tyres(ahead):
    svg = toe_drawing(said(tie_rod__thread="M22x1.5", tie_rod__ahead=ahead))
    told = [each.text for each in ET.fromstring(svg).iter() if each.text]  # noqa: S314
    rows = [line for line in told if "clockwise" in line or "right-hand" in line]
    assert len(rows) == 2
    assert max(map(len, rows)) <= 32
    assert "clockwise" in rows[0 if ahead == "yes" else 1]


def test_the_drawings_rod_is_on_its_side_of_the_axle():
    def rod_height(svg):
        found = re.search(r'y="(-?[\d.]+)"[^>]*>tie rod', svg)
        return float(found[1])

    assert rod_height(toe_drawing(said(tie_rod__ahead="yes"))) < 0.0
    assert rod_height(toe_drawing(said(tie_rod__ahead="no"))) > 0.0


def text_of(pdf):
    return " ".join(
        " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages).split()
    )


def test_the_worksheet_and_the_shops_brief():
    told = text_of(align_paper(align_file(HERON, READ)))
    assert "For the alignment shop" in told
    assert "camber cannot be adjusted" in told
    assert "Do not force caster" in told
    assert "before and after" in told
    assert "Toe done is not “ok to drive”" in told
    assert "What it rests on" in told


@pytest.mark.parametrize("system", ["metric", "us"])
def test_the_blank_sheet_asks_in_the_garages_order(system):
    told = text_of(align_paper(align_file(HERON), system, blank=True))
    places = [
        told.index(title)
        for title in (
            "1 ride height",
            "2 play",
            "3 square",
            "4 caster",
            "5 toe",
            "6 steering wheel",
        )
    ]
    assert places == sorted(places)
    assert "chocked" in told
    assert "Fingers clear of pinch points" in told


def test_the_brief_says_a_makers_value_comes_first():
    brief = " ".join(align_data(said()).brief)
    assert "A maker's value comes before it" in brief
    assert "common practice, no source" in brief


def test_whether_one_may_drive_comes_from_looks_never_from_toe():
    told = align_lines(said(toe__rear="1574.2 mm"))
    assert any("track-bar bracket" in line for line in told[:12])  # mended, from the rig's file
    plain = align(replace(STORK, conditions=()), readings_said({}, "rear"))
    assert any(line.startswith("May I drive?") for line in align_lines(plain))
