"""Instruments, marks and targets of an alignment against the words they are known by."""

import itertools

import numpy as np
import pytest

from axlewright import tables, units
from axlewright.errors import UnknownEntry
from axlewright.rig import ALIGNMENT_FIELDS

INCH = units.known("length")["in"]


@pytest.mark.parametrize(
    "finer_first",
    [
        ("toe_bar", "tape", "tape_coarse"),
        ("camber_gauge", "angle_finder", "phone", "dial_finder"),
        ("turn_plates", "floor_marks"),
    ],
)
def test_instruments_are_in_order_of_fineness(finer_first):
    # Common practice, no source.
    found = tables.instruments()
    for finer, coarser in itertools.pairwise(finer_first):
        assert found[finer].scatter < found[coarser].scatter
        assert found[finer].own_error <= found[coarser].own_error


def test_a_coarse_tape_tells_a_tenth_of_a_degree():
    # Common practice, no source: a tape is good for 1/16 in on a 35 in tyre, about 0.1 degrees.
    tape = tables.instruments()["tape_coarse"]
    one = np.hypot(tape.resolution / np.sqrt(12.0), tape.scatter)
    both = 1.645 * np.sqrt(2.0) * one
    assert both == pytest.approx(INCH / 16.0, rel=0.5)
    assert np.degrees(both / (35.0 * INCH)) == pytest.approx(0.1, abs=0.06)


def test_a_scribed_line_is_the_best_mark():
    # Common practice, no source.
    doubts = {key: each.doubt for key, each in tables.alignment_marks().items()}
    assert doubts["scribed_line"] < doubts["same_mark"] < doubts["tread_block"]


def test_an_eighth_in_front_is_the_aim_on_big_tyres():
    # Common practice, no source: about 1/8 in (3 mm) less in front than behind, on big tyres.
    entry = tables.alignment_targets()["toe_to_the_shop"]
    assert entry.aim == pytest.approx(INCH / 8.0)
    assert entry.low < 0.003 < entry.high
    assert tables.alignment_target("toe", "front", 37 * INCH).key == "toe_to_the_shop"
    assert entry.origin.source.kind == "practice"


@pytest.mark.parametrize(
    ("target", "limit"),
    [("toe_military", "toe_total"), ("camber", "camber")],
)
def test_the_printed_toe_is_that_of_the_limit(target, limit):
    # TM 9-2320-272-24-1, preventive checks; a truck manual of 1993: as in the table of limits.
    entry, read = tables.alignment_targets()[target], tables.limit(limit)
    assert (entry.low, entry.high) == pytest.approx((read.low, read.high), abs=1e-9)


def test_camber_is_that_of_the_limit():
    # A truck manual of 1993: -1 to +1 degrees.
    entry = tables.alignment_targets()["camber"]
    assert np.degrees([entry.low, entry.high]) == pytest.approx([-1.0, 1.0])


def test_included_angle_is_that_of_the_limit():
    # A beam-axle manual of 1998: half a degree off.
    entry = tables.alignment_targets()["included_difference"]
    assert np.degrees(entry.high) == pytest.approx(0.5, abs=1e-6)


def test_taller_tyres_ask_for_no_more_caster():
    # Common practice, no source: a taller tyre has more trail at the same angle.
    keys = ["caster_small", "caster_37", "caster_40"]
    rows = [tables.alignment_targets()[key] for key in keys]
    assert all(one.aim >= other.aim for one, other in itertools.pairwise(rows))
    assert all(one.tyre_high == other.tyre_low for one, other in itertools.pairwise(rows))
    assert [tables.alignment_target("caster", "front", d).key for d in (0.8, 0.94, 1.05)] == keys


def test_every_aim_lies_in_its_range():
    for entry in tables.alignment_targets().values():
        assert entry.low <= entry.aim <= entry.high
        lengths = {"ride_height", "wheelbase", "diagonal", "off_centre", "toe", "toe_cross_check"}
        assert entry.unit == ("m" if entry.quantity in lengths else "rad")


def test_no_target_is_made_up():
    with pytest.raises(UnknownEntry, match="rear axle"):
        tables.alignment_target("caster", "rear", 0.9)


@pytest.mark.parametrize("measures", ["length", "angle", "turn"])
def test_every_instrument_can_be_named_in_a_readings_file(measures):
    named = {key for key, each in tables.instruments().items() if each.measures == measures}
    assert {f.choices for f in ALIGNMENT_FIELDS if set(f.choices) & named}
    for field in ALIGNMENT_FIELDS:
        if set(field.choices) & named:
            assert set(field.choices) == named


def test_every_mark_can_be_named_in_a_readings_file():
    [field] = [each for each in ALIGNMENT_FIELDS if each.path == "toe.marks"]
    assert set(field.choices) == set(tables.alignment_marks())
