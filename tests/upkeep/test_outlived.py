"""A reading goes with the part it was taken on (common practice, no source), and that is said."""

import datetime as dt

import pytest

from axlewright.rig import Fitted, Job, Kept, Reading, TakenOff
from axlewright.tables import procedures, reading_parts
from axlewright.upkeep import still_of

DAY = dt.date(2026, 5, 3)


def kept(number, body, on=DAY):
    at = dt.datetime(2026, 5, 3, tzinfo=dt.UTC)
    return Kept(number=number, rig="r", device="", at=at, body=body, on=on)


def reading(quantity="unit_hub_play", side="left", component=""):
    return Reading(
        quantity=quantity,
        value=0.0,
        kind="length",
        unit="mm",
        given="0 mm",
        standard=1e-5,
        side=side,
        component=component,
    )


HUB = Fitted(component="hub-2", place="left hub")


@pytest.mark.parametrize(
    ("said", "after", "goes"),
    [
        (reading(), HUB, True),
        (reading(side="right"), HUB, False),
        (reading("camber"), HUB, True),
        (reading("tube_angle", ""), HUB, False),
        (reading("toe", ""), Fitted(component="rod-1", place="tie rod"), True),
        (reading("lower_joint_rock"), Fitted(component="ball-joints-3", place="left"), True),
        (reading("backlash", ""), Job(task="new gears", interval="gears_fitted"), True),
        (reading(), Job(task="new hub", interval="hub_fitted", side="right"), False),
        (reading(), Job(task="nuts", interval="wheel_nuts"), False),
        (reading(component="hub-1"), TakenOff(component="hub-1"), True),
        (reading(component="hub-1"), TakenOff(component="hub-7"), False),
        (reading(component="hub-1"), HUB, False),  # of another part, whatever came here
    ],
)
def test_what_was_read_on_a_part_goes_with_it(said, after, goes):
    still, gone = still_of([kept(1, said), kept(2, after)])
    assert (len(still), len(gone)) == ((1, 1) if goes else (2, 0))
    if goes:
        assert gone[0].reading.number == 1
        assert f"entry {gone[0].by.number}" in gone[0].why
    # whatever was read afterwards stands
    later = DAY + dt.timedelta(days=1)
    assert still_of([kept(2, after), kept(3, said, later)])[1] == ()


def test_what_was_taken_off_ends_what_was_read_at_its_place():
    history = [
        kept(1, HUB),
        kept(2, reading()),
        kept(3, reading(side="right")),
        kept(4, TakenOff(component="hub-2")),
    ]
    still, gone = still_of(history)
    assert [each.number for each in still] == [1, 3, 4]
    assert [each.reading.number for each in gone] == [2]


def test_every_reading_that_has_parts_is_one_that_can_be_taken():
    assert set(reading_parts()) <= set(procedures())
    assert set(procedures()) - set(reading_parts()) == {"frame_diagonals", "dye_test"}
