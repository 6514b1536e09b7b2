"""The log on a store: entered, echoed, contradicted, told on every face."""

import datetime as dt

import pytest

from axlewright.actions import (
    Bay,
    Log,
    archive_in,
    archive_out,
    chapter_of,
    found_of,
    noticed_of,
    own_limit,
    state_of,
    take_reading,
)
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.rig import Hit, Job, LookTaken, Trip
from axlewright.views import history_lines

TODAY = dt.date(2026, 6, 10)
RIG = "wagtail-front"


@pytest.fixture
def log(tmp_path):
    opened = Log.open(tmp_path)
    opened._today = TODAY
    bay = Bay(opened.store)
    bay.copy_example("wagtail")
    yield opened
    opened.close()


def look(key, state="go", **more):
    return LookTaken(occasion="", look=key, state=state, **more)


def look_at_everything(log):
    for each in log.wanted(RIG, "before_trip"):
        log.look(RIG, look(each.key))


def test_a_rig_is_found_by_name_or_taken_in_once_by_its_file(log):
    assert log.rig(RIG) == RIG
    slug = log.rig("examples/rigs/stork-rear.toml")
    assert log.rig("examples/rigs/stork-rear.toml") == slug
    assert len([row for row in log.store.rigs() if row.slug == slug]) == 1
    with pytest.raises(UnknownEntry, match="wagtail-front"):
        log.rig("nobody")


def test_only_looks_say_go_and_a_trip_ends_it(log):
    assert log.drive(RIG).state == "not looked at"
    take_reading(log, RIG, "unit_hub_play", ["0.02 mm"] * 3, side="left")
    assert log.drive(RIG).state == "not looked at"
    look_at_everything(log)
    assert log.drive(RIG).state == "go"
    log.enter(RIG, Trip(name="x", distance=1e5))
    assert log.drive(RIG).state == "not looked at"


def test_a_stop_of_a_look_stands_on_the_bays_faces_as_well_until_it_is_closed(log):
    bay = Bay(log.store)
    number = log.look(
        RIG, look("before_joints", "stop", part="tie rod", side="left", found="loose")
    )
    assert log.drive(RIG).state == "stop"
    assert [card.stop for card in bay.axles()] == [True]
    assert bay.assessment(RIG, 0).stops
    log.look(RIG, look("before_joints"))
    assert bay.assessment(RIG, 0).stops, "a look alone lifts no stop"
    log.work(RIG, Job(task="renewed", part="tie rod", side="left", settles=number))
    log.look(RIG, look("before_joints"))
    assert [card.stop for card in bay.axles()] == [False]


def test_what_a_look_listed_leaves_the_answers_as_they_were_once_it_is_closed(log):
    bay = Bay(log.store)
    before = dict(bay.draft(RIG).words())
    log.look(RIG, look("before_joints", "fix before trip"))
    assert bay.draft(RIG).words()["rig.condition"] == "as listed"
    log.look(RIG, look("before_joints"))
    assert dict(bay.draft(RIG).words()) == before
    assert bay.assessment(RIG, 0) is not None


@pytest.mark.parametrize(
    ("part", "found"), [("tyre", "bent"), ("tyre", ""), ("spring seat", "mended")]
)
def test_a_stop_that_no_rule_knows_is_a_stop_all_the_same(log, part, found):
    log.look(RIG, look("before_wheels", "stop", part=part, found=found))
    assert [card.stop for card in Bay(log.store).axles()] == [True]


def test_what_is_withdrawn_is_off_the_list(log):
    number = log.look(RIG, look("before_joints", "stop", part="tie rod", found="loose"))
    log.withdraw(RIG, number, "the wrong rig")
    assert [card.stop for card in Bay(log.store).axles()] == [False]
    assert log.drive(RIG).state == "not looked at"
    with pytest.raises(AxlewrightError, match="Why"):
        log.withdraw(RIG, number, " ")


def test_hub_play_over_its_limit_is_a_stop_and_cannot_tell_is_fixed(log):
    look_at_everything(log)
    taken = take_reading(log, RIG, "unit_hub_play", ["0.125 mm"], side="left")
    assert [each.judged for each in taken.judged] == ["cannot tell"]
    assert log.drive(RIG).state == "fix before trip"
    take_reading(log, RIG, "unit_hub_play", ["0.3 mm"] * 3, side="left")
    assert log.drive(RIG).state == "stop"
    take_reading(log, RIG, "unit_hub_play", ["0.03 mm"] * 3, side="left")
    assert log.drive(RIG).state == "go"


def test_a_new_hub_takes_the_old_ones_reading_along_but_says_no_go_by_itself(log):
    """SAFETY: a part with no data is not judged; go comes from looks, never from a swap."""
    look_at_everything(log)
    take_reading(log, RIG, "unit_hub_play", ["0.3 mm"] * 3, side="left")
    assert log.drive(RIG).state == "stop"
    new = log.book.new_component("hub", "new left hub")
    number = log.fit(RIG, new.key, "left hub")
    drive = log.drive(RIG)
    assert drive.state == "not looked at"
    [told] = [each for each in drive.reasons if "play" in each.what]
    assert f"entry {number}" in told.why
    assert "Read it again" in told.do
    still, gone = log.readings(RIG)
    assert still == []
    assert [each.by.number for each in gone] == [number]
    assert "no longer counts" in "\n".join(history_lines(log.history(RIG), "metric", gone))
    take_reading(log, RIG, "unit_hub_play", ["0.03 mm"] * 3, side="left")
    assert log.drive(RIG).state == "go"


def test_the_manuals_limit_takes_the_place_of_the_general_one(log):
    log.enter(RIG, own_limit("unit_hub_play", "", "0.05 mm", "the manual, p. 7"))
    taken = take_reading(log, RIG, "unit_hub_play", ["0.1 mm"] * 3, side="left")
    [judged] = taken.judged
    assert (judged.judged, judged.limit.own, judged.limit.source) == (
        "out",
        True,
        "the manual, p. 7",
    )
    with pytest.raises(AxlewrightError, match="printed"):
        own_limit("unit_hub_play", "", "0.05 mm", " ")


def test_a_reading_is_echoed_and_what_looks_mixed_up_is_not_kept(log):
    taken = take_reading(log, RIG, "unit_hub_play", ["4 mm"], side="left")
    assert taken.number == 0
    assert taken.doubts
    assert "the vehicle's own left" in taken.echo
    assert "4 mm, that is" in taken.echo
    assert log.history(RIG) == []
    kept = take_reading(log, RIG, "unit_hub_play", ["4 mm"], side="left", sure=True)
    assert kept.number


@pytest.mark.parametrize(
    ("quantity", "values", "more", "words"),
    [
        ("camber", ["1 deg"], {}, "which side"),
        ("camber", ["1 deg"], {"side": "centre"}, "not 'centre'"),
        ("camber", ["1 mm"], {"side": "left"}, "not an angle"),
        ("camber", ["1"], {"side": "left"}, "unit"),
        ("camber", [], {"side": "left"}, "no value"),
        ("camber", ["1 deg"], {"side": "left", "with_": "dial"}, "not read with"),
        ("toe", ["2 mm"], {"slope": "1 deg"}, "off an angle"),
        ("toe", ["2 mm"], {"radius": "3 cm"}, "into a torque"),
        ("pinion_torque", ["20 lb"], {}, "not a torque"),
        ("tread", ["1 mm"], {}, "tread"),
    ],
)
def test_what_cannot_be_a_reading_is_refused_with_its_reason(log, quantity, values, more, words):
    with pytest.raises(AxlewrightError, match=words):
        take_reading(log, RIG, quantity, values, **more)


def test_a_pull_on_a_string_becomes_a_torque_at_its_radius(log):
    taken = take_reading(log, RIG, "pinion_torque", ["4 kg"], radius="50 mm", with_="string_pull")
    assert taken.reading.value == pytest.approx(4 * 9.80665 * 0.05)
    assert "pulled at 50 mm" in taken.echo


def test_the_floor_is_taken_off_and_adds_its_doubt(log):
    plain = take_reading(log, RIG, "camber", ["0.5 deg"] * 3, side="left")
    level = take_reading(log, RIG, "camber", ["0.5 deg"] * 3, side="left", slope="0.4 deg")
    assert level.reading.value == pytest.approx(plain.reading.value - 0.4 * 3.14159265 / 180)
    assert level.reading.standard > plain.reading.standard


def test_the_odometer_does_not_run_backwards(log):
    log.enter(RIG, Hit(what="a rock"), odometer="120 000 km", on=TODAY - dt.timedelta(days=2))
    with pytest.raises(AxlewrightError, match="backwards"):
        log.enter(RIG, Hit(what="a rock"), odometer="12 000 km")
    with pytest.raises(AxlewrightError, match="ahead"):
        log.enter(RIG, Hit(what="a rock"), on=TODAY + dt.timedelta(days=1))
    assert len(log.history(RIG)) == 1


def test_a_photo_is_kept_with_its_entry(log, tmp_path):
    photo = tmp_path / "IMG_1.jpg"
    photo.write_bytes(b"\xff\xd8\xff\xe0photo")
    number = log.enter(RIG, Hit(what="a rock"), photos=[photo])
    [digest] = log.book.one(RIG, number).photos
    assert log.store.upload(digest).endswith(b"photo")
    with pytest.raises(AxlewrightError, match="cannot be read"):
        log.enter(RIG, Hit(what="a rock"), photos=[tmp_path / "none.jpg"])


def test_the_past_is_a_wide_band_and_what_broke_has_its_place_in_the_order(log):
    broke = ["inner shaft left", "radio"]
    log.enter(RIG, chapter_of("before us", "40000 to 90000 km", "", "", [], broke))
    log.enter(RIG, chapter_of("then", "10000 km", "", "", ["forest_roads=3000km"], []))
    log.enter(RIG, Trip(name="x", distance=1e5))
    past = log.past(RIG)
    assert past.driven.shortest == pytest.approx(40e6 + 5e6 + 1e5)
    assert past.driven.longest == pytest.approx(90e6 + 20e6 + 1e5)
    ranks = {each.broke: each.rank for each in past.ranks}
    assert ranks["radio"] == 0
    assert past.judged


def test_a_part_carries_its_distance_to_another_rig(log):
    other = log.rig("examples/rigs/stork-rear.toml")
    part = log.book.new_component("hub", "left hub")
    log.fit(RIG, part.key, "left hub")
    log.enter(RIG, Trip(name="x", distance=1e5))
    log.take_off(RIG, part.key, "worn")
    log.fit(other, part.key, "left hub")
    log.enter(other, Trip(name="x", distance=5e4))
    [(_, where, went)] = log.parts(other)
    assert [each.rig for each in where] == [RIG, other]
    assert went.distance == pytest.approx(1.5e5)


def test_words_of_people_are_understood():
    assert state_of("Cannot tell") == "fix before trip"
    assert state_of("ok") == "go"
    assert found_of("Rusty line") == "rusty line"
    for call in (lambda: state_of("maybe"), lambda: found_of("odd"), lambda: noticed_of(["x=y"])):
        with pytest.raises(AxlewrightError, match=r"One of"):
            call()
    assert dict(noticed_of(["begins=after a bump"]).answers)["still"] == "yes"


def test_a_whole_folder_goes_out_and_in(log, tmp_path):
    look_at_everything(log)
    archive_out(tmp_path, tmp_path / "out.zip")
    counts = archive_in(tmp_path / "in", tmp_path / "out.zip")
    assert counts["looks"] == len(log.wanted(RIG, "before_trip"))
    other = Log.open(tmp_path / "in")
    other._today = TODAY
    assert other.drive(RIG).state == "go"
    other.close()
