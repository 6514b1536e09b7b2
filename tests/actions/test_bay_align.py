"""Readings of an alignment in the store: kept, left, taken up again, closed; none half kept."""

import datetime as dt

import pytest

from axlewright.actions import Bay, align_file
from axlewright.errors import AxlewrightError
from axlewright.rig import readings_from_text, readings_text

TOE = {"toe.front": "1571 mm; 1571.5 mm", "toe.rear": "1568 mm", "toe.diameter": "900 mm"}


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


def test_readings_are_kept_and_judged_as_the_command_judges_them(bay):
    slug = bay.copy_example("heron")
    assert bay.read(slug, TOE).stored
    found = bay.alignment(slug)
    told = {path: text.split("; ") for path, text in TOE.items()}
    from_file = align_file("examples/rigs/heron.toml", said=told)
    assert found.toe.value == pytest.approx(from_file.toe.value, abs=1e-12)


def test_they_are_left_and_taken_up_again_after_a_restart(bay, tmp_path):
    slug = bay.copy_example("heron")
    bay.read(slug, TOE)
    again = Bay.open(tmp_path)
    assert again.reading(slug).said == TOE
    again.close()


def test_all_of_a_step_are_kept_or_none(bay):
    slug = bay.copy_example("heron")
    said = bay.read(slug, {**TOE, "toe.diameter": "900"})
    assert not said.stored
    assert set(said.faults) == {"toe.diameter"}
    assert said.texts["toe.front"] == TOE["toe.front"]  # nothing that was typed is lost
    assert not bay.reading(slug).said


def test_what_cannot_stand_together_is_refused_where_it_stands(bay):
    slug = bay.copy_example("heron")
    said = bay.read(slug, {"toe.front": "1571 mm", "toe.rear": "1771 mm", "toe.diameter": "900 mm"})
    assert "too far apart to be toe" in said.faults["toe.rear"]


def test_an_emptied_field_takes_the_reading_out(bay):
    slug = bay.copy_example("heron")
    bay.read(slug, TOE)
    assert bay.read(slug, {"toe.rear": ""}).stored
    assert "toe.rear" not in bay.reading(slug).said
    assert bay.alignment(slug).toe is None


def test_said_twice_with_one_key_it_is_entered_once(bay):
    slug = bay.copy_example("heron")
    bay.read(slug, TOE, key="phone-1")
    last = bay.last_entry(slug)
    bay.read(slug, {"toe.rear": "1569 mm"}, key="phone-1")
    assert bay.last_entry(slug) == last


def test_closed_readings_stay_on_record_with_what_they_said(bay):
    slug = bay.copy_example("heron")
    with pytest.raises(AxlewrightError, match="Nothing has been read"):
        bay.close_reading(slug)
    bay.read(slug, TOE)
    bay.close_reading(slug)
    assert not bay.reading(slug).said
    before = bay.readings_before(slug)
    assert [session.said for session in before] == [TOE]
    assert bay.alignment(slug, before[0]).toe is not None
    kept = bay.log().history(slug, ["remark"])
    assert "toe-out" in kept[0].note.lower()


def test_a_stranger_is_refused(bay):
    slug = bay.copy_example("heron")
    with pytest.raises(AxlewrightError, match="Nothing of the name"):
        bay.read(slug, {"toe.nothing": "1 mm"})


def test_the_file_of_them_reads_as_they_were_said(bay):
    slug = bay.copy_example("heron")
    bay.read(slug, {**TOE, "square.wheelbase.left": "2622 mm", "caster.left.finder": "5.2 deg"})
    readings = readings_from_text(bay.readings_file(slug))
    assert readings.values("toe.front") == pytest.approx((1.571, 1.5715))
    assert readings.value("square.wheelbase.left") == pytest.approx(2.622)
    text = readings_text({"play.where": ['a "joint" \\ here']}, dt.date(2026, 5, 3), "one\ntwo")
    again = readings_from_text(text)
    assert again.date == dt.date(2026, 5, 3)
    assert again.word("play.where") == 'a "joint" \\ here'
