"""One pose drawn and told: what is drawn lies where it was solved to lie."""

import re
from xml.etree import ElementTree as ET

import pytest

from axlewright.geometry import driveline_in_travel, pose_of, reach_of, travel
from axlewright.rig import changed_rig, load_change
from axlewright.views import moves_page, pose_told, pose_views, still_poses
from geometry.cases import HOME, demo


@pytest.fixture(scope="module", params=["heron", "wagtail", "stork-rear"])
def study(request):
    return travel(demo(request.param), draws=32)


def _views(study, *pose):
    found = pose_of(study, *pose)
    return {each.key: each for each in pose_views(study, found, pose_told(found))}


def test_every_view_is_drawn_and_keeps_its_frame_while_the_axle_moves(study):
    reach = reach_of(study)
    ride = _views(study)
    for still in still_poses(reach, steers=study.points.steers):
        for key, view in _views(study, still.bump, still.roll, still.arm).items():
            root = ET.fromstring(view.svg)  # noqa: S314  (our own drawing)
            assert root.get("viewBox") == ET.fromstring(ride[key].svg).get("viewBox")  # noqa: S314
            assert "href" not in view.svg
            left, top, wide, high = map(float, root.get("viewBox").split())
            for spot in re.findall(r"[ML](-?[\d.]+)[ ,](-?[\d.]+)", view.svg):
                x, y = map(float, spot)
                assert left - 1 <= x <= left + wide + 1, (key, still.key)
                assert top - 1 <= y <= top + high + 1, (key, still.key)


def test_the_drawing_follows_the_axle_up(study):
    reach = reach_of(study)
    high, low = (_views(study, bump)["side"].svg for bump in (reach.up, reach.down))
    assert high != low
    assert high.count("stroke-dasharray") >= 3  # what stands at ride lies dashed behind it


def test_the_words_say_what_touches_at_the_end(study):
    reach = reach_of(study)
    assert "bump stop" in pose_told(pose_of(study, reach.up)).words
    assert "damper is pulled out" in pose_told(pose_of(study, reach.down)).words
    assert "nothing touches" in pose_told(pose_of(study)).words.lower()
    inches = pose_told(pose_of(study, reach.up), "us").words
    assert " in up" in inches


def test_the_page_says_plain_things_first_and_the_facts_of_the_trade(study):
    told = moves_page(study, None, driveline_in_travel(study, draws=32))
    assert told.plain[0].startswith("Going up, ")
    assert "Hanging, " in told.plain[0]
    if study.points.steers:
        assert "Toe is set on the tie rod, never on the track bar." in told.facts
        assert "degree for degree" in told.facts[1]
        assert told.prices
    assert told.assumed
    assert all(row.band and row.source for row in told.assumed)
    assert dict(told.deeper).keys() >= {"roll centre over the ground", "roll steer"}


def test_a_change_is_told_before_and_after():
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(HOME / "examples/changes/lift.toml")))
    before, after = travel(rig, draws=0, cures=False), travel(new, draws=0)
    told = moves_page(before, after, driveline_in_travel(after, draws=0))
    assert told.changed[0].startswith("Worse: ")
    assert "caster" in told.changed[0]
    assert told.room_before
    assert any(cure.better for cure in told.cures)
