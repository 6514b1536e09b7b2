"""The travel of an axle in words, JSON and lines; outside reference: common practice, no source."""

import json
import re

import pytest

from axlewright.geometry import travel
from axlewright.rig import changed_rig, load_change, rig_from_text
from axlewright.views import (
    travel_data,
    travel_json,
    travel_lines,
    travel_rows,
    travel_why_lines,
)
from axlewright.views.room import room_change_line, room_picture
from geometry.cases import HOME, demo
from geometry.test_cures import FOUR


@pytest.fixture(scope="module", params=["heron", "wagtail", "stork-rear"])
def study(request):
    return travel(demo(request.param), draws=64)


@pytest.fixture(scope="module")
def pair():
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(HOME / "examples/changes/lift.toml")))
    return travel(rig, draws=64, cures=False), travel(new, draws=64)


def test_the_sentence_comes_first_then_at_most_five_rows(study):
    lines = travel_lines(study)
    assert "bump" in lines[2]
    assert lines[2].endswith(".")
    assert 3 <= len(travel_rows(study)) <= 5
    assert any(line.startswith("Rests on") for line in lines)
    assert "certificate" in lines[-1]


def test_the_readers_units(study):
    told = "\n".join(travel_lines(study, system="us"))
    assert not re.search(r"\d ?(mm|kPa|N)\b", told)
    assert re.search(r"\d in\b", told)
    metric = "\n".join(travel_lines(study))
    assert not re.search(r"\d ?(in|psi|lbf)\b", metric)


def test_a_change_tells_worse_as_plainly_as_better(pair):
    told = "\n".join(travel_lines(*pair))
    assert "Worse: caster 4.8 deg to 2.8 deg" in told
    assert "Better: nothing that could be felt" in told
    assert "until the drag link is set anew" in told
    assert "A drop arm ending 50 mm lower: worse" in told
    assert "Turning the end forgings" in told


def test_every_row_opens(study):
    for row in range(1, len(travel_rows(study)) + 1):
        lines = travel_why_lines(study, row)
        assert len(lines) > 1
        assert lines[0].startswith(study.rig.name)


def test_json_is_si_and_finite(pair, study):
    for told in (travel_json(study), travel_json(*pair)):
        text = json.dumps(told, allow_nan=False)
        assert '"axlewright_travel": 1' in text
    found = travel_json(study)
    assert found["measures"]["roll_centre"]["unit"] == "m"
    assert found["measures"]["roll_centre"]["value"] == study.now.roll_centre
    low, high = found["measures"]["roll_centre"]["band"]
    assert low < high
    assert set(found["limits"]) == {"bump", "droop", "articulation"}


def test_an_arm_too_long_is_told_with_what_it_pulls():
    found = travel(rig_from_text(FOUR), draws=0)
    told = "\n".join(travel_lines(found))
    assert re.search(
        r"The left upper arm is 4.0 mm long; parked, the \w+ (upper|lower) arm pu\w+ [\d.]+ kN",
        told,
    )


def test_a_stop_stands_over_everything():
    crack = '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'
    rig = rig_from_text((HOME / "examples/rigs/heron.toml").read_text("utf-8") + crack)
    lines = travel_lines(travel(rig, draws=0))
    assert lines.index("STOP. Do not drive. Whatever the figures below say.") < 5


def test_the_paper_shows_the_poses_and_a_stop_over_them(study):
    data = travel_data(study)
    poses = ["Hanging", "At ride", "In bump", "Crossed", "Full lock"]
    shown = [each.said for each in data.poses]
    assert shown == (poses if study.points.steers else poses[:-1])
    assert not data.stops
    crack = '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'
    rig = rig_from_text((HOME / "examples/rigs/heron.toml").read_text("utf-8") + crack)
    assert "knuckle" in travel_data(travel(rig, draws=0)).stops[0]


def test_the_paper_has_the_same_words(pair):
    data = travel_data(*pair)
    assert data.sentence in travel_lines(*pair)
    assert len(data.rows) <= 5
    assert data.changed


def test_the_room_is_drawn_before_and_after_and_told_to_who_cannot_see_it(pair):
    alone, both = room_picture(pair[0]), room_picture(pair[1], pair[0])
    assert "stroke-dasharray" in both.svg
    assert "Dashed is how it was before." in both.words
    assert "Dashed" not in alone.words
    for made in (alone, both):
        assert made.words.split(";")[0] in made.svg.replace("&#x27;", "'")
        assert made.high > 0.95e3 * pair[0].rig.tyre.outer_diameter


def test_smaller_tyres_tell_what_they_take_of_the_room():
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(HOME / "examples/changes/smaller-tyres.toml")))
    before, after = travel(rig, draws=0), travel(new, draws=0)
    line = next(each for each in travel_lines(before, after) if each.startswith("Room:"))
    assert re.search(r"289 mm over the ground, then the centre 260 mm", line)
    assert room_change_line(before, before) == ""
    data = travel_data(before, after)
    assert data.room_deeper
    assert data.room_picture.svg.startswith("<svg")
    told = travel_json(before, after)["after"]["room"]["road"]
    assert 0.0 < told["touch"]["value"] < 1.0
    assert {edge["what"] for edge in told["edges"]} >= {"the centre", "the tie rod"}
    assert len(told["outline"]["corners"]) > 20
