"""What may not be ticked yet, and why: gates hold in the room itself, whatever a page shows."""

import dataclasses

import pytest

from axlewright.swap import (
    Progress,
    Set,
    leave_refusals,
    next_up,
    ready,
    refusals,
    undone,
)
from swap.cases import heron_plan

PLAN = heron_plan()
VALUES = {
    line.key: Set(torque=100.0, text="100 N m", printed="manual, page 4") for line in PLAN.lines
}
FULL = Progress(values=VALUES)


def up_to(key, progress=FULL):
    before = PLAN.work.ancestors[key]
    return dataclasses.replace(progress, done=dict.fromkeys(before, "photo"))


def test_a_step_waits_for_what_comes_before_it():
    told = refusals(PLAN, FULL, "lift")
    assert any("nuts broken loose" in each for each in told)
    assert not refusals(PLAN, up_to("lift"), "lift")


@pytest.mark.parametrize("key", ["support_look", "support_again", "support_built", "standing_look"])
def test_the_support_is_looked_at_with_a_photo(key):
    assert any("photo" in each for each in refusals(PLAN, up_to(key), key))
    assert not refusals(PLAN, up_to(key), key, photo=True)


@pytest.mark.parametrize("gone", [line.key for line in PLAN.lines if line.by == "maker"])
def test_nothing_is_lifted_while_a_makers_value_is_missing(gone):
    values = {key: value for key, value in VALUES.items() if key != gone}
    progress = dataclasses.replace(up_to("lift"), values=values)
    assert not ready(PLAN, progress)
    assert any("not ready" in each for each in refusals(PLAN, progress, "lift"))
    assert refusals(PLAN, progress, "values_found")
    assert not refusals(PLAN, progress, "soak")


def test_a_makers_value_without_its_place_in_print_is_none():
    bare = {**VALUES, "wheel_nuts": Set(torque=150.0, text="150 N m")}
    assert not ready(PLAN, Progress(values=bare))


def test_a_bolt_is_not_done_before_its_line_is_filled():
    values = {key: value for key, value in VALUES.items() if key != "arm_axle"}
    progress = dataclasses.replace(up_to("bush_torque"), values=values)
    assert any("arm bolts" in each for each in refusals(PLAN, progress, "bush_torque"))


def test_no_bushing_bolt_before_ride_height():
    before = up_to("bush_torque")
    done = {key: photo for key, photo in before.done.items() if key != "ride_height"}
    told = refusals(PLAN, dataclasses.replace(before, done=done), "standing_look", photo=True)
    assert any("RIDE HEIGHT" in each for each in told)


def test_before_driving_every_question_is_answered_with_yes():
    yes = frozenset(each.key for each in PLAN.questions)
    assert len(yes) >= 8
    whole = dataclasses.replace(up_to("before_driving"), yes=yes)
    assert not refusals(PLAN, whole, "before_driving")
    for each in yes:
        short = dataclasses.replace(whole, yes=yes - {each})
        assert refusals(PLAN, short, "before_driving"), each


@pytest.mark.parametrize("key", ["before_driving", "slow_loop", "first_drive"])
def test_nothing_is_driven_while_something_says_stop(key):
    yes = frozenset(each.key for each in PLAN.questions)
    progress = dataclasses.replace(up_to(key), yes=yes)
    assert not refusals(PLAN, progress, key)
    assert any("STOP" in each for each in refusals(PLAN, progress, key, stopped=True))


@pytest.mark.parametrize("key", sorted(PLAN.work.by_key))
def test_gates_moves_and_bolts_are_never_left_out(key):
    task = PLAN.work.by_key[key]
    bolts = any(line.task == key for line in PLAN.lines)
    told = leave_refusals(PLAN, up_to(key), key, "not on this rig")
    assert bool(told) == (task.gate or task.photo_must or task.moves != "no" or bolts)


def test_leaving_out_asks_why():
    assert any("Why" in each for each in leave_refusals(PLAN, up_to("soak"), "soak", " "))


def test_what_is_undone_takes_along_what_came_after():
    whole = dataclasses.replace(FULL, done=dict.fromkeys(PLAN.work.by_key, ""))
    left = undone(PLAN, whole, "support_again")
    assert "support_again" not in left.done
    assert "arms_on" not in left.done
    assert "axle_out" in left.done


def test_somebody_who_is_alone_cannot_tick_what_needs_two():
    alone = dataclasses.replace(PLAN, people=1)
    assert any("2 people" in each for each in refusals(alone, up_to("arms_off"), "arms_off"))


def test_going_through_it_in_its_order_comes_to_the_end():
    progress = dataclasses.replace(FULL, yes=frozenset(each.key for each in PLAN.questions))
    for _ in PLAN.order:
        task = next_up(PLAN, progress)[0]
        assert not refusals(PLAN, progress, task.key, photo=True), task.key
        progress = dataclasses.replace(progress, done={**progress.done, task.key: "p"})
    assert not next_up(PLAN, progress)


def test_a_step_nobody_knows_is_told():
    assert refusals(PLAN, FULL, "fly")
    assert leave_refusals(PLAN, FULL, "fly", "x")
