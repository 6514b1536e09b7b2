"""What is on record as evidence: the newest that still tells, and what is left out with its why."""

import datetime as dt
from math import degrees, hypot, radians

import pytest

from axlewright.rig import Hit, Job, Kept, LookTaken, Noticed, OwnLimit, Reading
from axlewright.tables import locator_evidence, locator_readings, looks_lists, procedures
from axlewright.upkeep import on_record

DIAMETER = 35 * 0.0254


class Book:
    """Entries one after another, a day apart."""

    def __init__(self):
        self.kept = []

    def add(self, body, **more):
        number = len(self.kept) + 1
        day = dt.date(2026, 5, 1) + dt.timedelta(days=number)
        at = dt.datetime(2026, 5, 1, tzinfo=dt.UTC)
        self.kept.append(Kept(body=body, on=day, number=number, rig="r", device="", at=at, **more))
        return number

    def read(self, quantity, value, side="", standard=1e-3, **more):
        asked = procedures()[quantity]
        return self.add(
            Reading(
                quantity=quantity,
                value=value,
                kind=asked.kind,
                unit="",
                given=f"{value}",
                standard=standard,
                side=side,
                instrument=asked.instruments[0],
                repeats=(value,),
                procedure=quantity,
                **more,
            )
        )

    def told(self, axle="front", own=()):
        return on_record(self.kept, axle, DIAMETER, own)


@pytest.fixture
def book():
    return Book()


def test_the_newest_of_each_side_stands(book):
    book.read("camber_out", radians(-0.5), "left")
    newest = book.read("camber_out", radians(-0.9), "left", standard=2e-3)
    book.read("camber_out", radians(0.1), "right")
    found = book.told()
    assert found.taken["camber_out_left"].values == pytest.approx((radians(-0.9),))
    assert found.taken["camber_out_left"].give_or_take == pytest.approx(1.645 * 2e-3, rel=1e-3)
    assert set(found.taken) == {"camber_out_left", "camber_out_right"}
    assert newest in {one.number for one in found.used}
    assert found.left_out == ()


def test_what_was_read_before_the_hit_is_left_out_and_that_is_said(book):
    old = book.read("camber_out", radians(-0.5), "left")
    book.add(Hit(what="a rock"))
    found = book.told()
    assert found.taken == {}
    [left] = found.left_out
    assert (left.number, "before the hit" in left.left_out) == (old, True)


def test_what_was_read_on_a_part_that_was_replaced_is_left_out(book):
    book.read("tie_rod_bow", 0.025)
    book.add(Job(task="renewed", part="tie rod", interval="steering_fitted"))
    found = book.told()
    assert found.taken == {}
    assert "replaced" in found.left_out[0].left_out


def test_toe_counts_as_a_change_since_before_the_hit(book):
    """1/8 in is 0.205 deg at a 35 in tyre: TRADE, conversions; and JCGM 100, 5.1.2 for the doubt.

    Small angles: total toe over the diameter at which it is taped.
    """
    book.read("toe", 0.001)
    book.add(Hit(what="a rock"))
    book.read("toe", 0.001 + 0.125 * 0.0254)
    found = book.told().taken["toe_change"]
    assert degrees(found.values[0]) == pytest.approx(0.205, abs=0.001)
    assert found.give_or_take == pytest.approx(1.645 * hypot(1e-3, 1e-3) / DIAMETER, rel=2e-3)


def test_one_toe_alone_tells_no_change(book):
    book.read("toe", 0.001)
    found = book.told()
    assert "toe_change" not in found.taken
    assert "earlier" in found.left_out[0].left_out


def test_caster_is_held_against_the_manuals_own_value(book):
    book.read("caster", radians(4.0), "left")
    assert "manual" in book.told().left_out[0].left_out
    low, high = radians(5.0), radians(7.0)
    own = OwnLimit(limit="caster", low=low, high=high, kind="angle", given="x", printed="p. 7")
    assert book.told(own=[own]).taken["caster_left"].values == pytest.approx((radians(-2.0),))


@pytest.mark.parametrize(("value", "there"), [(0.0002, True), (0.00001, False), (5.08e-5, None)])
def test_backlash_that_varies_is_a_sign_only_where_it_can_be_told(book, value, there):
    """0.002 in is the limit that the table quotes; on it nobody can tell."""
    book.read("backlash_variation", value, standard=1e-6)  # no more doubt than the dial's own
    found = book.told()
    assert found.seen.get("backlash_varies") is there
    assert bool(found.left_out) == (there is None)


def test_looks_are_signs_on_their_side(book):
    book.add(WET)
    book.add(looked("before_joints", "stop", "tie rod", "left", "loose"))
    book.add(CLEAN)
    book.add(looked("before_tubes", "stop", "tube", "left", "wet"))  # bare tube: no seal leaks
    found = book.told()
    assert found.seen == {"seal_leak_left": True, "knock": True, "oil_metal": False}
    assert [one.number for one in found.used] == [3, 2, 1]


def looked(key, state, part="", side="", found=""):
    return LookTaken(occasion="", look=key, state=state, part=part, side=side, found=found)


WET = looked("before_hubs", "fix before trip", "hub seal", "left", "wet")
DRY = looked("before_hubs", "go")
PIECE, CLEAN = looked("after_oil", "stop"), looked("after_oil", "go")


@pytest.mark.parametrize(
    ("looks", "seen"),
    [
        ([WET], {"seal_leak_left": True}),
        ([WET, DRY], {}),
        ([DRY, WET], {"seal_leak_left": True}),
        ([WET, looked("before_hubs", "watch")], {"seal_leak_left": True}),  # it may still be wet
        ([WET, DRY, WET], {"seal_leak_left": True}),
        ([CLEAN, PIECE], {"oil_metal": True}),
        ([PIECE, CLEAN], {"oil_metal": False}),
        ([PIECE, Hit(what="a rock")], {}),
    ],
)
def test_what_a_look_found_tells_until_a_later_look_or_a_hit(book, looks, seen):
    """Common practice, no source: a seal that was renewed and is dry accuses no tube."""
    for each in looks:
        book.add(each)
    found = book.told()
    assert found.seen == seen
    grave = [at for at, each in enumerate(looks, 1) if each in (WET, PIECE)]
    told = {one.number for one in (*found.used, *found.left_out)}
    assert set(grave) <= told  # taken or left out, and that is said


def bowed(rod="tie rod", bow="30 mm", seen="yes"):
    answers = (("rod", rod), ("bow", bow), ("bowed", seen), ("says", "stop"))
    return Noticed(about="off centre", answers=answers)


def test_a_bow_said_after_a_hit_is_evidence_until_the_rod_is_worked_on(book):
    book.add(Hit(what="a rock", side="left"))
    number = book.add(bowed())
    found = book.told()
    assert found.taken["tie_rod_bow"].values == pytest.approx((0.030,))
    assert [(one.key, one.number, one.said) for one in found.used] == [
        ("tie_rod_bow", number, "30 mm")
    ]
    book.add(Job(task="renewed", part="Tie rod"))
    found = book.told()
    assert "tie_rod_bow" not in found.taken
    assert "work was done on it" in found.left_out[0].left_out


def test_a_bow_of_an_earlier_hit_and_a_rod_called_straight_tell_nothing(book):
    book.add(bowed())
    book.add(Hit(what="a rock", side="left"))
    book.add(bowed("drag link", "0 mm", seen="no"))
    found = book.told()
    assert not found.taken
    assert [one.key for one in found.left_out] == ["tie_rod_bow"]


def test_a_bow_read_later_stands_in_place_of_what_was_said(book):
    book.add(bowed())
    book.read("tie_rod_bow", 0.022)
    assert book.told().taken["tie_rod_bow"].values == pytest.approx((0.022,))
    book.add(bowed(bow="35 mm"))
    assert book.told().taken["tie_rod_bow"].values == pytest.approx((0.035,))


def test_a_doubt_that_was_given_counts_in_a_sign_as_well(book):
    """JCGM 106, 8.3: with a wide doubt nobody can tell within from out."""
    value = 0.0002
    book.read("backlash_variation", value, standard=1e-6)
    assert book.told().seen == {"backlash_varies": True}
    book.read("backlash_variation", value, standard=value)
    found = book.told()
    assert "backlash_varies" not in found.seen
    assert "cannot tell" in found.left_out[0].left_out


def test_the_floor_is_mapped_only_where_every_reading_says_so(book):
    book.read("camber_out", 0.01, "left", corrected=-0.003)
    assert book.told().mapped
    book.read("tube_slope", 0.01, "left")
    assert not book.told().mapped


def test_a_rear_axle_takes_no_front_readings(book):
    book.read("tie_rod_bow", 0.02)
    book.read("camber_out", 0.01, "left")
    assert set(book.told("rear").taken) == {"camber_out_left"}


def test_the_table_names_what_is_there():
    for row in locator_evidence().values():
        assert row.reading in locator_readings()
        assert row.of in {*procedures(), *looks_lists(), "look"}
        reading = locator_readings()[row.reading]
        if row.of in procedures() and row.how == "same":
            asked = procedures()[row.of]
            assert asked.kind == reading.kind
            assert ("left" in asked.sides) == reading.each
