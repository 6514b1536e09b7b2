"""The swap in words, as JSON and as a drawing."""

import json
import xml.etree.ElementTree as ET

import jsonschema
import pytest

from axlewright.swap import KINDS, Progress, Set, planned
from axlewright.views import (
    hours,
    plan_json,
    plan_lines,
    plan_schema,
    plan_step_lines,
    plan_words,
    swap_data,
)
from swap.cases import AFTER, HERON, HOUSING, heron_plan

PLAN = heron_plan()


@pytest.mark.parametrize("kind", KINDS)
def test_the_json_is_that_of_its_schema(kind):
    plan = planned(HERON, [(HOUSING, AFTER)], kind=kind, exact=False)
    made = json.loads(json.dumps(plan_json(plan), allow_nan=False))
    jsonschema.validate(made, plan_schema())


def test_json_never_gives_a_target_to_a_makers_line():
    made = plan_json(PLAN)
    maker = [line for line in made["torques"] if line["by"] == "maker"]
    assert maker
    assert all(line["range"] is None for line in maker)
    assert made["ready"] is False
    values = {line.key: Set(torque=1.0, text="1 N m", printed="p. 1") for line in PLAN.lines}
    assert plan_json(PLAN, Progress(values=values))["ready"] is True
    assert plan_json(PLAN, Progress(values=values), ("STOP: x",))["ready"] is False


def test_json_tells_who_is_where_in_si():
    made = plan_json(PLAN)
    steps = {step["key"]: step for step in made["steps"]}
    assert steps["arms_off"]["moves"] == "axle"
    assert len(steps["arms_off"]["hands"]) == 2
    assert steps["arms_off"]["start"]["unit"] == "s"
    assert steps["axle_out"]["mass"]["unit"] == "kg"
    assert made["oil"]["volume"]["unit"] == "m3"


def test_a_stop_stands_before_the_plan():
    lines = plan_lines(PLAN, stop_lines=("STOP: crack in the knuckle",))
    assert lines[0].startswith("STOP")
    assert any("LOOK AT THE SUPPORT" in line for line in lines)


def test_every_step_shows_its_caution_when_opened():
    for number, step in enumerate(plan_words(PLAN).steps, 1):
        told = "\n".join(plan_step_lines(PLAN, number))
        assert step.caution in told
        assert step.do in told


def test_a_line_that_is_empty_has_room_and_a_filled_one_says_where_from():
    told = "\n".join(plan_lines(PLAN))
    assert "Set to: ________" in told
    values = {"wheel_nuts": Set(torque=150.0, text="150 N m", printed="manual 4-12")}
    filled = "\n".join(plan_lines(PLAN, progress=Progress(values=values)))
    assert "Set to: 150 N m (manual 4-12)." in filled


def test_us_readers_get_their_own_units():
    told = "\n".join(plan_lines(PLAN, "us"))
    assert "lbf ft" in told
    assert " N m" not in told
    assert " km" not in told


def test_marks_are_words():
    told = "\n".join(plan_lines(PLAN))
    for mark in ("AXLE MOVES: nobody under", "needs two", "under it", "photo first"):
        assert mark in told


def test_the_day_is_a_drawing_with_a_box_for_each_pair_of_hands():
    data = swap_data(PLAN)
    root = ET.fromstring(data.day)  # noqa: S314  (our own)
    boxes = [each for each in root if each.tag.endswith("rect") and each.get("stroke")]
    assert len(boxes) == sum(len(slot.hands) for slot in PLAN.schedule.slots)


@pytest.mark.parametrize(("seconds", "told"), [(60, "1 min"), (5399, "90 min"), (7200, "2.0 h")])
def test_times_are_told_as_people_tell_them(seconds, told):
    assert hours(seconds) == told
