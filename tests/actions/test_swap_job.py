"""A swap in the store: gates hold in the action, what is ticked survives, the record is left."""

import dataclasses
from pathlib import Path

import numpy as np
import pytest

from axlewright.actions import Bay
from axlewright.actions.draft import read_draft
from axlewright.actions.swap_taken import taken_on
from axlewright.errors import AxlewrightError
from axlewright.rig import (
    Job,
    LookTaken,
    change_from_text,
    changed_rig,
    load_change,
)
from axlewright.swap import next_up

PHOTO = b"\x89PNG\r\n\x1a\n" + b"0" * 40
HOUSING = Path("examples/changes/heavier-housing.toml").read_text("utf-8")
LIFT = Path("examples/changes/lift.toml").read_text("utf-8")
SHAFTS = Path("examples/changes/stronger-shafts.toml").read_text("utf-8")


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


def heron(bay):
    return bay.copy_example("heron")


def fill(desk, slug):
    for line in desk.now(slug).plan.lines:  # as a person would, one by one
        value = 100.0 if line.low is None else 0.5 * (line.low + line.high)
        desk.value(slug, line.key, f"{value:.0f} N m", "manual, page 4")


def go_on(bay, slug, until=""):
    """Do whatever is next, in the plan's order, as far as a step."""
    desk = bay.swap()
    while open_steps := next_up((swap := desk.now(slug)).plan, swap.progress):
        task = open_steps[0]
        if task.key == until:
            return
        if task.key == "apart_looks":
            for look in swap.unseen:
                desk.look(slug, look, "go")
        yes = [each.key for each in swap.plan.questions]
        desk.tick(slug, task.key, photo=PHOTO if task.photo_must else None, yes=yes)


def test_nothing_is_lifted_before_the_makers_values_stand_there(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, HOUSING, kind="geared axle")
    desk.tick(slug, "read_steps")
    with pytest.raises(AxlewrightError, match="not ready"):
        desk.tick(slug, "values_found")
    with pytest.raises(AxlewrightError, match="First"):
        desk.tick(slug, "lift")
    assert set(desk.now(slug).progress.done) == {"read_steps"}
    fill(desk, slug)
    desk.tick(slug, "values_found")


def test_nobody_goes_under_without_the_photo(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, HOUSING, kind="geared axle")
    fill(desk, slug)
    go_on(bay, slug, "support_look")
    with pytest.raises(AxlewrightError, match="photo"):
        desk.tick(slug, "support_look")
    with pytest.raises(AxlewrightError, match="no photo"):
        desk.tick(slug, "support_look", photo=b"#!/bin/sh")
    with pytest.raises(AxlewrightError, match="LOOK AT THE SUPPORT"):
        desk.tick(slug, "shaft_off")
    desk.tick(slug, "support_look", photo=PHOTO, photo_name="stands.png")
    assert desk.now(slug).progress.done["support_look"]


def test_it_is_left_and_resumed_by_another_program(bay, tmp_path):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "support_look")
    before = desk.now(slug)
    again = Bay.open(tmp_path)
    after = again.swap().now(slug)
    again.close()
    assert after.progress == before.progress
    assert after.plan.order == before.plan.order


def test_a_later_answer_about_the_rig_does_not_move_the_plan(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, HOUSING, kind="geared axle")
    before = desk.now(slug).plan
    assert bay.answer(slug, "weight.axle", "1400 kg", tell=False).stored
    assert bay.swap().now(slug).plan.digest == before.digest


def test_the_whole_way_leaves_its_record(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, LIFT, skill="first-timer")
    fill(desk, slug)
    desk.measured(slug, "before", {"toe": "3 mm at 940 mm", "nonsense": "x"})
    go_on(bay, slug)
    swap = desk.now(slug)
    assert swap.closed
    history = bay.log().history(slug, ["job"])
    jobs = [kept.body for kept in history]
    begun = {job.interval for job in jobs}
    assert {"wheel_fitted", "suspension_fitted", "steering_fitted"} <= begun
    record = next(kept for kept in history if not kept.body.interval)
    assert record.body.task == "swap, springs: springs 60 mm longer"
    assert "wheel nuts" in record.body.torque
    assert "manual, page 4" in record.body.torque
    assert "toe 3 mm at 940 mm" in record.note
    assert record.photos
    due = {each.key for each in bay.log().due(slug)}
    assert {"wheel_nuts", "spring_clamps", "steering_clamps"} <= due


def test_retorque_comes_due_before_the_record_is_closed(bay):
    """Whoever drives off without closing it still has the nuts on the list."""
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "slow_loop")
    assert any(
        isinstance(kept.body, Job) and kept.body.interval == "wheel_fitted"
        for kept in bay.log().history(slug)
    )


def test_every_look_while_it_is_apart_is_asked_for_and_kept(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "apart_looks")
    with pytest.raises(AxlewrightError, match="Not looked at yet"):
        desk.tick(slug, "apart_looks")
    for look in desk.now(slug).unseen:
        desk.look(slug, look, "go")
    desk.tick(slug, "apart_looks")
    kept = [each.body for each in bay.log().history(slug, ["look"])]
    assert all(isinstance(each, LookTaken) and each.occasion == "apart" for each in kept)


def test_a_stop_found_while_it_is_apart_keeps_it_from_the_road(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "apart_looks")
    looks = desk.now(slug).unseen
    desk.look(slug, looks[0], "stop", "a line that dye runs from")
    for look in looks[1:]:
        desk.look(slug, look, "go")
    desk.tick(slug, "apart_looks")
    with pytest.raises(AxlewrightError, match="STOP"):
        go_on(bay, slug)
    swap = desk.now(slug)
    assert "before_driving" not in swap.progress.done
    assert "shaft_in_left" in swap.progress.done
    assert swap.answer.stops


def test_before_driving_takes_every_yes(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "before_driving")
    keys = [each.key for each in desk.now(slug).plan.questions]
    with pytest.raises(AxlewrightError, match="Not answered with yes"):
        desk.tick(slug, "before_driving", yes=keys[1:])
    desk.tick(slug, "before_driving", yes=keys)


def test_what_is_taken_back_takes_along_what_came_after(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "shaft_drawn_left")
    desk.undo(slug, "support_look")
    done = desk.now(slug).progress.done
    assert "lift" in done
    assert not {"support_look", "wheels_off", "hub_off_left"} & set(done)


def test_gates_are_not_left_out_and_others_say_why(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    with pytest.raises(AxlewrightError, match="never left out"):
        desk.leave_out(slug, "read_steps", "I know it")
    with pytest.raises(AxlewrightError, match="Why"):
        desk.leave_out(slug, "soak", " ")
    desk.leave_out(slug, "soak", "all bolts are new")
    assert desk.now(slug).progress.left_out == {"soak": "all bolts are new"}


def test_one_person_cannot_begin_what_needs_two(bay):
    slug, desk = heron(bay), bay.swap()
    with pytest.raises(AxlewrightError, match="need two people"):
        desk.begin(slug, HOUSING, people=1)
    assert desk.now(slug) is None


def test_one_at_a_time_and_put_aside(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    with pytest.raises(AxlewrightError, match="under way"):
        desk.begin(slug, SHAFTS)
    desk.put_aside(slug, "no parts")
    with pytest.raises(AxlewrightError, match="No swap is under way"):
        desk.tick(slug, "read_steps")
    desk.begin(slug, SHAFTS)
    assert not desk.now(slug).progress.done


def test_sent_twice_it_is_entered_once(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS, key="k1")
    desk.begin(slug, SHAFTS, key="k1")
    before = bay.last_entry(slug)
    desk.tick(slug, "read_steps", key="k2")
    desk.tick(slug, "read_steps", key="k2")
    assert bay.last_entry(slug) == before + 1


def test_a_rig_without_its_answers_has_no_plan(bay):
    slug = bay.begin("Crake", "front")
    with pytest.raises(AxlewrightError, match="thirteen"):
        bay.swap().begin(slug, SHAFTS)


@pytest.mark.parametrize(
    ("line", "text", "printed", "why"),
    [
        ("wheel_nuts", "150 N m", "", "where did the maker print"),
        ("wheel_nuts", "150", "p. 1", "unit"),
        ("wheel_nuts", "9000 N m", "p. 1", "far from"),
        ("nothing", "1 N m", "p. 1", "no torque line"),
    ],
)
def test_a_torque_that_cannot_be_meant_is_refused(bay, line, text, printed, why):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    with pytest.raises(AxlewrightError, match=why):
        desk.value(slug, line, text, printed)
    assert not desk.now(slug).progress.values


def test_a_swap_goes_through_an_archive(bay, tmp_path):
    from axlewright.actions import archive_in, archive_out

    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "wheels_off")
    before = desk.now(slug)
    archive_out(tmp_path, tmp_path / "all.zip")
    archive_in(tmp_path / "other", tmp_path / "all.zip")
    other = Bay.open(tmp_path / "other")
    after = other.swap().now(slug)
    other.close()
    assert dataclasses.replace(after.progress) == before.progress


CHANGES = sorted(Path("examples/changes").glob("*.toml"))


@pytest.mark.parametrize("file", CHANGES, ids=lambda file: file.stem)
def test_a_rig_that_took_a_change_on_is_the_changed_rig(bay, file):
    """Word for word and number for number what the change makes of it, as a rig of its own."""
    draft, change = bay.draft(heron(bay)), load_change(str(file))
    after, gone = changed_rig(draft.rig(), change)
    made, went = taken_on(draft, change)
    rig = read_draft(made.text()).rig()
    assert rig.tyre.outer_diameter == after.tyre.outer_diameter
    assert [(one.part, one.what, one.where, one.date) for one in rig.conditions] == [
        (one.part, one.what, one.where, one.date) for one in after.conditions
    ]
    assert rig.words == after.words
    told = {name: (one.value, one.doubt) for name, one in rig.given.items()}
    if "tube.girth.left" in gone:  # it has to be told: out of the diameter until it is taped
        assert told["tube_girth_left"][0] == pytest.approx(np.pi * told["tube_outer"][0], rel=1e-3)
        told = {name: one for name, one in told.items() if not name.startswith("tube_girth")}
    assert told == {name: (one.value, one.doubt) for name, one in after.given.items()}
    assert went == gone
    assert not made.missing()


def test_after_the_last_step_the_rig_takes_on_its_new_numbers_once(bay):
    slug, desk = heron(bay), bay.swap()
    bay.keep_change(slug, "", SHAFTS)
    before = bay.text(slug)
    with pytest.raises(AxlewrightError, match="no closed swap"):
        desk.take_on(slug)
    desk.begin(slug, SHAFTS)
    fill(desk, slug)
    go_on(bay, slug, "record")
    with pytest.raises(AxlewrightError, match="no closed swap"):
        desk.take_on(slug)
    assert bay.text(slug) == before
    desk.tick(slug, "record")
    done = len(bay.log().history(slug))
    wanted, _ = changed_rig(bay.rig(slug), change_from_text(SHAFTS))
    desk.take_on(slug)
    assert desk.now(slug).taken
    assert desk.now(slug).closed
    assert bay.text(slug) != before
    assert bay.rig(slug).given["stub_shaft"].value == wanted.given["stub_shaft"].value
    assert bay.changes(slug) == []  # it has been made: kept beside the rig it would be made twice
    assert len(bay.log().history(slug)) == done
    texts = [bay._store.text(digest) for _, digest in bay._store.versions(slug)]
    assert before in texts  # the rig as it was
    with pytest.raises(AxlewrightError, match="once"):
        desk.take_on(slug)
    desk.begin(slug, SHAFTS)
    assert not desk.now(slug).taken


def test_a_new_housing_that_was_taken_on_has_never_been_looked_at(bay):
    slug, desk = heron(bay), bay.swap()
    desk.begin(slug, HOUSING, kind="geared axle")
    fill(desk, slug)
    go_on(bay, slug)
    assert desk.now(slug).going
    desk.take_on(slug)
    assert ("the new housing", "never looked at") in [
        (each.part, each.what) for each in bay.rig(slug).conditions
    ]
    assert bay.log().drive(slug).state != "go"


def test_a_change_that_no_longer_goes_on_is_told_and_changes_nothing(bay):
    slug, desk = heron(bay), bay.swap()
    tyres = Path("examples/changes/smaller-tyres.toml").read_text("utf-8")
    desk.begin(slug, tyres)
    fill(desk, slug)
    go_on(bay, slug)
    bay.clear(slug, "use.hardest")
    before = bay.text(slug)
    with pytest.raises(AxlewrightError):
        desk.take_on(slug)
    assert bay.text(slug) == before
    assert not desk.now(slug).taken
