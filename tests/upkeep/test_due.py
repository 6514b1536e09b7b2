"""What is due and what a part went through; the sheet after a shake. Common practice, no source."""

import datetime as dt
import itertools

import pytest

from axlewright.rig import Fitment, Hit, Job, Kept, LookTaken, Noticed, Trip
from axlewright.tables import intervals, shimmy_checks, shimmy_questions
from axlewright.upkeep import FIRST_LINE, carried, dues, sheet

START = dt.date(2026, 1, 1)
NUMBERS = itertools.count(1)


def kept(body, days=0, odometer=None, rig="heron-front"):
    return Kept(
        number=next(NUMBERS),
        rig=rig,
        device="",
        at=dt.datetime(2026, 6, 10, tzinfo=dt.UTC),
        body=body,
        on=START + dt.timedelta(days=days),
        odometer=odometer,
    )


def trip(km, **more):
    return Trip(name="x", distance=km * 1e3, **more)


def state(key, history, days=0, axle="front", **more):
    told = {each.key: each for each in dues(history, axle, START + dt.timedelta(days=days), **more)}
    return told[key].state if key in told else None


def test_wheel_nuts_are_due_after_the_first_distance_and_then_less_often():
    fitted = kept(Job(task="wheel on", interval="wheel_fitted"))
    assert state("wheel_nuts", []) is None
    assert state("wheel_nuts", [fitted, kept(trip(50))]) == "later"
    assert state("wheel_nuts", [fitted, kept(trip(70))]) == "soon"
    assert state("wheel_nuts", [fitted, kept(trip(85))]) == "due"
    done = kept(Job(task="retorqued", interval="wheel_nuts"))
    assert state("wheel_nuts", [fitted, kept(trip(85)), done]) is not None
    ordered = [fitted, kept(trip(85)), kept(Job(task="retorqued", interval="wheel_nuts"))]
    assert state("wheel_nuts", ordered) == "later"
    assert state("wheel_nuts", [*ordered, kept(trip(4900))]) == "due"


def test_days_make_it_due_as_well():
    done = kept(Job(task="looked", interval="crack_look"))
    assert state("crack_look", [done], 100) == "later"
    assert state("crack_look", [done], 300) == "soon"
    assert state("crack_look", [done], 365) == "due"
    assert state("crack_look", []) == "never recorded"


def test_water_over_the_hubs_wants_a_service_within_days():
    wet = kept(trip(50, water=0.7))
    assert state("water_service", [kept(trip(50))], 9) is None
    assert state("water_service", [wet], 1) == "later"
    assert state("water_service", [wet], 5) == "due"
    served = kept(Job(task="greased", interval="water_service"), 2)
    assert state("water_service", [wet, served], 9) is None


def test_the_odometer_counts_where_trips_were_not_entered():
    done = kept(Job(task="looked", interval="severe_look"), odometer=10e6)
    assert state("severe_look", [done], odometer=10.5e6) == "later"
    assert state("severe_look", [done], odometer=12.6e6) == "due"


def test_what_is_due_stands_first_and_a_rear_axle_has_no_toe_to_set():
    wet = kept(trip(50, water=0.7))
    told = dues([wet], "front", START + dt.timedelta(days=9))
    assert told[0].key == "water_service"
    assert "toe_check" not in {each.key for each in dues([], "rear", START)}
    assert {each.begins for each in intervals().values()} >= {"wheel_fitted", "gears_fitted"}


def test_distance_trips_and_hits_follow_a_part_that_moves():
    here = [kept(trip(100)), kept(Hit(what="a rock"))]
    fitted = kept(Job(task="x"))
    after = [kept(trip(30)), kept(Hit(what="a stump")), kept(trip(20), rig="wren-front")]
    off = kept(Job(task="x"))
    there_from = kept(Job(task="x"), rig="wren-front")
    there = [kept(trip(7), rig="wren-front"), kept(trip(1000))]
    fitments = [
        Fitment(
            component="hub-1",
            rig="heron-front",
            place="left",
            begun=fitted.number,
            since=START,
            ended=off.number,
            until=START,
        ),
        Fitment(
            component="hub-1",
            rig="wren-front",
            place="left",
            begun=there_from.number,
            since=START,
        ),
    ]
    went = carried(fitments, [*here, fitted, *after, off, there_from, *there])
    assert went.distance == pytest.approx(37e3)
    assert [each.body.what for each in went.hits] == ["a stump"]
    assert len(went.trips) == 2


# -- after a shake ---------------------------------------------------------------------------------


def noticed(still="yes", days=0):
    return kept(Noticed(about="shimmy", answers=(("still", still),)), days)


def checked(key, word="go"):
    return kept(LookTaken(occasion="shimmy", look=key, state=word))


def test_the_sheet_asks_from_memory_and_never_for_a_test_at_speed():
    for each in shimmy_checks().values():
        for word in ("provoke", "km/h", "test drive", "drive at", "speed up"):
            assert word not in each.how + each.title, each.key
    assert "slow down" in FIRST_LINE
    assert all(
        "don't remember" in each.answers
        for each in shimmy_questions().values()
        if each.key != "still"
    )


def test_the_order_is_nuts_pressures_rocking_play_tyres_and_the_damper_last():
    order = [each.key for each in sorted(shimmy_checks().values(), key=lambda each: each.rank)]
    for before, after in itertools.pairwise(
        ("nuts", "pressures", "rock", "dry_steer", "rims", "toe", "damper")
    ):
        assert order.index(before) < order.index(after)
    assert order[-1] == "damper"


def test_the_next_check_is_the_first_that_is_not_in_order():
    history = [noticed()]
    keys = [each.key for each in sorted(shimmy_checks().values(), key=lambda e: e.rank)]
    for key in keys:
        assert sheet(history).next.key == key
        history.append(checked(key))
    assert sheet(history).next is None
    assert sheet([noticed(), checked(keys[0], "fix before trip")]).next.key == keys[0]
    assert (
        sheet([checked(keys[0]), noticed()]).next.key == keys[0]
    )  # what was before does not count


def test_one_thing_is_changed_at_a_time():
    shook = noticed()
    one, two = (kept(Job(task="shimmy: changed", part=part)) for part in ("tie rod", "tyres"))
    assert not sheet([shook, one]).too_many
    assert sheet([shook, one, two]).too_many
    again = noticed("not driven since")
    three = kept(Job(task="shimmy: changed", part="track bar"))
    assert not sheet([shook, one, two, again, three]).too_many


def test_a_damper_before_the_rest_is_told():
    history = [noticed(), kept(Job(task="shimmy: changed", part="steering damper"))]
    assert sheet(history).damper_early
    assert sheet(history).still
    assert not sheet([noticed("no")]).still
