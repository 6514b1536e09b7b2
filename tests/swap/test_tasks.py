"""The book of tasks: every named step of the trade, and who may be where while what moves."""

import re
from itertools import pairwise

import pytest

from axlewright.rig import COMPONENTS
from axlewright.swap import chosen, in_order
from axlewright.tables import intervals, procedures, swap_measures, task_bolts, tasks
from swap.cases import every_work, facts, heron_plan

WORKS = every_work()
BARE = chosen(facts("bare housing"))

# Common practice, no source: a list of the job's steps as people who do it tell them, each with
# the task of ours that it is.
NAMED = {
    "measure and photograph everything first": ["measure_before"],
    "soak bolts a week": ["soak"],
    "parts laid out, consumables": ["parts_laid"],
    "chock the end that stays": ["chock"],
    "stands on the frame, load path clear": ["lift", "support_look"],
    "wheels": ["wheels_off"],
    "calipers hung by wire, discs": ["caliper_off_left", "caliper_off_right"],
    "sensor leads": ["sensor_off_left", "sensor_off_right"],
    "vent, plugs, lock line": ["lines_off"],
    "propeller shaft, index mark": ["shaft_off"],
    "stabiliser links": ["sway_off"],
    "dampers": ["damper_off_left", "damper_off_right"],
    "tie rod, drag link": ["tie_rod_off", "draglink_off"],
    "weight back on the axle, track bar freed": ["unload_bar", "bar_off"],
    "cams marked, arms": ["arms_off"],
    "axle strapped to the jack": ["jack_under"],
    "coils come down with the axle": ["coils_down"],
    "axle out": ["axle_out"],
    "strip the old one": ["old_stripped"],
    "accept or reject reused parts": ["apart_looks"],
    "press joints": ["joints_pressed"],
    "inner seals, carrier out": ["inner_seals"],
    "transfer brackets": ["brackets_moved"],
    "ring and pinion, lock": ["gears_set"],
    "lock proved on the bench": ["lock_bench"],
    "springs in, axle raised": ["axle_under", "coils_in"],
    "arms and track bar snug only": ["arms_on", "bar_on"],
    "hubs": ["ends_built"],
    "brakes": ["caliper_on_left", "caliper_on_right"],
    "wires, vent": ["sensor_on_left", "sensor_on_right", "lines_on"],
    "lock wired, drilled where needed": ["lock_wired"],
    "bleed, pressure unit cycled": ["bleed"],
    "oil by the pinion's bearing": ["oil_in"],
    "seal wait": ["seal_wait"],
    "bounced, at ride height": ["ride_height"],
    "every rubber bushing torqued there": ["bush_torque"],
    "toe": ["toe_home"],
    "steering wheel centred": ["wheel_centred"],
    "stops; hoses and wires at droop and lock": ["stops_set", "droop_look"],
    "run on stands, low idle": ["turned_by_hand", "running_support", "running_check"],
    "before driving": ["before_driving"],
    "first drive, hot hubs, leaks": ["slow_loop", "second_look", "first_drive"],
    "measured again": ["measure_after"],
    "record, retorque, looks": ["record"],
}


@pytest.mark.parametrize("step", NAMED)
def test_every_named_step_is_there(step):
    assert not [key for key in NAMED[step] if key not in BARE.by_key]


# Common practice, no source: what people get wrong in the order, each with where it is told.
RULES = {
    "joints in the maker's order: lower, upper, final": ("joints_pressed", "lower, upper, then"),
    "never backed off for the pin": ("draglink_on", "Never backed off for the pin"),
    "a unit hub is not loaded before its nut": ("ends_built", "carries nothing until its axle nut"),
    "index marks": ("shaft_on", "Marks together"),
    "hoses not twisted": ("caliper_on_left", "without a twist"),
    "sensor lead clear of the coil": ("sensor_on_left", "clear of coil"),
    "bolts clear of the shaft": ("arms_on", "clears the shaft"),
    "new locking nuts": ("parts_laid", "new self-locking nuts"),
    "never by the hose": ("caliper_off_left", "Never by its hose"),
    "seals cut by splines": ("shaft_drawn_left", "INNER SEAL"),
}


@pytest.mark.parametrize("rule", RULES)
def test_every_rule_of_order_stands_at_its_step(rule):
    key, words = RULES[rule]
    task = tasks()[key]
    assert words in f"{task.do} {task.caution} {task.fragile}"


@pytest.mark.parametrize("name", WORKS)
def test_no_work_waits_for_itself(name):
    work = WORKS[name]
    assert set(in_order(work.after)) == set(work.by_key)


@pytest.mark.parametrize("name", WORKS)
def test_nobody_goes_under_before_a_look_at_the_support(name):
    """Between whatever moved last and whoever goes under there is always a look with a photo."""
    work = WORKS[name]
    looks = [task.key for task in work.tasks if task.photo_must]
    moving = [task.key for task in work.tasks if task.moves != "no"]
    for task in work.tasks:
        if not task.under:
            continue
        before = work.ancestors[task.key]
        assert "read_steps" in before, task.key
        seen = [look for look in looks if look in before]
        assert seen, task.key
        for move in moving:
            after = task.key in work.ancestors[move]
            covered = any(move in work.ancestors[look] for look in seen)
            assert after or covered, (move, task.key)


@pytest.mark.parametrize("name", WORKS)
def test_looks_at_the_support_stand_apart_from_what_moves(name):
    work = WORKS[name]
    for task in work.tasks:
        if task.photo_must:
            assert task.gate
            assert task.moves == "no"
            assert not task.under
            for other in work.tasks:
                if other.moves != "no":
                    before = other.key in work.ancestors[task.key]
                    assert before or task.key in work.ancestors[other.key], (other.key, task.key)


MOVING = (  # common practice, no source: each of these leaves the axle free to roll, drop or swing
    *("leaf_off", "leaf_on", "arms_off", "arms_on", "coil_overs_off", "coil_overs_on"),
    *("bar_off", "bar_on", "unload_bar", "coils_down", "coils_in", "axle_out", "axle_under"),
)


@pytest.mark.parametrize("key", MOVING)
def test_what_frees_the_axle_says_so_and_needs_two(key):
    task = tasks()[key]
    assert task.moves == "axle"
    assert task.people >= 2
    assert not task.under
    assert "AXLE MOVES" in task.caution
    assert "obody under" in task.caution


def test_nothing_else_is_said_to_move_the_axle():
    assert {task.key for task in tasks().values() if task.moves == "axle"} == set(MOVING)


def test_nobody_is_under_what_moves_and_every_caution_is_told():
    for task in tasks().values():
        assert not (task.under and task.moves != "no")
        assert task.caution or task.key == "seal_wait"
        assert task.practised[0] < task.practised[1]
        assert task.first[0] >= task.practised[0]


@pytest.mark.parametrize("name", [name for name in WORKS if "bush_torque" in WORKS[name].by_key])
def test_no_bushing_bolt_is_final_before_ride_height(name):
    work = WORKS[name]
    assert {"ride_height", "down", "standing_look"} <= work.ancestors["bush_torque"]
    for line in task_bolts().values():
        if line.task in work.by_key and "weight on the wheels" in line.note:
            assert line.task == "bush_torque"


@pytest.mark.parametrize("name", WORKS)
def test_the_last_gate_comes_after_everything_and_before_the_road(name):
    work = WORKS[name]
    stages = {"prepare", "support", "strip", "out", "bench", "in", "build", "ground"}
    before = work.ancestors["before_driving"]
    late = {
        task.key
        for task in work.tasks
        if task.stage in stages and task.key not in before and task.key != "before_driving"
    }
    assert not late
    for task in work.tasks:
        if task.where == "road":
            assert "before_driving" in work.ancestors[task.key]
    assert "second_look" in work.ancestors["first_drive"]


def test_toe_done_is_not_ok_to_drive():
    work = WORKS["geared axle, coil, three, front, full"]
    assert "toe_home" in work.ancestors["before_driving"]
    assert "not ok to drive" in tasks()["toe_home"].caution


@pytest.mark.parametrize("name", WORKS)
def test_a_plan_has_only_what_its_layout_has(name):
    work = WORKS[name]
    _, spring, arms, axle, _ = name.split(", ")
    keys = set(work.by_key)
    assert not (keys & {"leaf_off", "leaf_on"} and spring != "leaf")
    assert not (keys & {"coils_in", "coils_down"} and spring != "coil")
    assert not (keys & {"coil_overs_off", "coil_overs_on"} and spring != "coil-over")
    assert not (keys & {"arms_on"} and arms == "leaves")
    assert not (keys & {"toe_home", "stops_set", "draglink_on"} and axle == "rear")


def test_what_is_taken_off_goes_on_again():
    for name, work in WORKS.items():
        keys = set(work.by_key)
        for key in keys:
            if "_off" in key and key not in {"battery_off", "wheels_off"}:
                assert key.replace("_off", "_on") in keys, (name, key)


def test_welding_says_what_keeps_people_whole():
    """SAFETY of welding: common practice, no source."""
    for key in ("weld", "brackets_moved"):
        told = tasks()[key].do + tasks()[key].caution
        for word in ("qualified welder", "Battery and sensors off", "oil"):
            assert word in told
    assert "No chlorinated cleaner" in tasks()["weld_place"].caution
    assert "chlorinated" in tasks()["brackets_moved"].caution
    assert "fire_watch" in chosen(facts("brackets")).ancestors["weld_look"]


RUN = ("turned_by_hand", "raise_other", "running_support", "running_check", "lower_other")


@pytest.mark.parametrize("kind", ["bare housing", "part-built housing", "geared axle", "gears"])
def test_what_is_run_on_stands_is_turned_by_hand_and_looked_at_first(kind):
    """Running checks, common practice, no source: bench first, stands on the frame at both ends."""
    work = chosen(facts(kind))
    for before, after in pairwise((*RUN, "down")):
        assert before in work.ancestors[after], (before, after)
    run = work.ancestors["running_check"]
    assert {"oil_in", "wheels_on", "shaft_on", "support_look"} <= run
    if kind != "gears":
        assert {"lock_bench", "bleed", "lock_wired"} <= run
    assert not [task.key for task in work.tasks if task.under and task.key not in run
                and "standing_look" not in work.ancestors[task.key]]  # fmt: skip


def test_the_running_check_says_what_keeps_people_whole_at_its_step():
    run, look = tasks()["running_check"], tasks()["running_support"]
    for words in ("plane of the wheels", "obody under", "ow idle, never revved", "no shake ever"):
        assert words in run.caution
    assert "low idle" in run.do
    assert run.people == 2
    assert run.moves != "no"
    assert run.gate
    assert not run.under
    assert look.photo_must
    assert "on the frame at both ends" in look.do
    assert "every wheel" in look.photo
    assert "by hand" in tasks()["turned_by_hand"].title
    assert "fingers clear of pinch points" in tasks()["play"].caution


def test_who_runs_nothing_on_stands_has_none_of_it():
    work = chosen(facts("geared axle", running="no"))
    assert not set(RUN) & set(work.by_key)
    assert "wheels_on" in work.ancestors["down"]


def test_no_step_heats_bends_or_straightens():
    every = " ".join(f"{task.do} {task.caution}" for task in tasks().values()).casefold()
    for found in re.finditer(r"\b(heat|bend|bending|straighten\w*)\b", every):
        near = every[max(0, found.start() - 90) : found.end()]
        assert re.search(r"\b(no|never|nobody|not)\b", near), near


def test_what_a_task_begins_is_known_to_the_intervals():
    begins = {each.begins for each in intervals().values()}
    assert {task.begins for task in tasks().values()} - {""} <= begins
    assert set(COMPONENTS)


def test_measures_name_readings_that_exist():
    assert {each.procedure for each in swap_measures().values()} - {""} <= set(procedures())


def test_the_same_is_measured_before_and_after():
    plan = heron_plan()
    keys = [each.key for each in plan.measures]
    assert {"ride_height", "toe", "caster", "wheelbase"} <= set(keys)
    assert {"measure_before", "measure_after"} <= set(plan.work.by_key)


def test_drilling_and_both_lines_are_told():
    assert "drill" in tasks()["lock_wired"].do
    assert "drilled and tapped" in tasks()["sensor_fit"].do
    for key, word in {
        "lines_off": "lock plug",
        "sensor_off_left": "thread",
        "hub_on_left": "lead",
    }.items():
        assert word in tasks()[key].fragile


def test_the_lock_is_proved_before_it_goes_under():
    for kind in ("bare housing", "part-built housing", "geared axle"):
        assert "lock_bench" in chosen(facts(kind)).ancestors["axle_under"]


def test_a_rear_axle_is_asked_nothing_about_what_steers():
    """Common practice, no source: no ball joints, no dry steer where nothing steers."""
    for name, work in WORKS.items():
        if ", rear," not in name:
            continue
        told = " ".join(task.title.lower() for task in work.tasks)
        for word in ("ball joint", "kingpin", "dry steer", "tie rod", "drag link", "stops set"):
            assert word not in told, (name, word)
    assert "play_rear" in chosen(facts("geared axle", axle="rear")).by_key


def test_nothing_rolls_or_bounces_on_nuts_that_are_hand_tight():
    for name, work in WORKS.items():
        if {"ride_height", "wheel_torque"} <= set(work.by_key):
            assert "wheel_torque" in work.ancestors["ride_height"], name
