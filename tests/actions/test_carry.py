"""What to carry out of store and record. Outside reference: common practice, no source."""

import pytest

from axlewright.actions import (
    Log,
    card_done,
    carrying,
    carrying_of,
    chapter_of,
    tick,
    usual_outing,
)
from axlewright.errors import AxlewrightError
from axlewright.rig import load_rig
from axlewright.strength import assess_rig
from axlewright.tables import spares
from axlewright.upkeep import Ticked
from axlewright.views import carry_data, carry_json, history_lines

RIG = "examples/rigs/heron.toml"


@pytest.fixture(scope="module")
def heron():
    return assess_rig(load_rig(RIG), draws=100)


@pytest.fixture
def log(tmp_path):
    opened = Log.open(tmp_path)
    yield opened
    opened.close()


@pytest.fixture
def slug(log):
    return log.rig(RIG)


def test_what_is_not_said_comes_from_the_rig_and_then_from_the_last_trip(log, slug, heron):
    first = carrying(log, slug, {}, heron).load.outing
    assert (first.ground, first.far) == ("rocks_and_ledges", 60e3)
    tick(log, slug, {}, {"days": "9", "ground": "forest_roads", "mass": "95 kg"})
    later = carrying(log, slug, {}, heron).load.outing
    assert (later.days, later.ground, later.mass, later.far) == (9, "forest_roads", 95.0, 60e3)
    assert carrying(log, slug, {"days": "2"}, heron).load.outing.days == 2


def test_the_list_is_kept_line_by_line_and_never_changed(log, slug, heron):
    assert tick(log, slug, {"tie_rod": Ticked(state="packed", lies="behind the seat")})
    assert tick(log, slug, {"brake": Ticked(state="missing")})
    before = len(log.history(slug))
    assert not tick(log, slug, {"brake": Ticked(state="missing")})  # nothing new is no entry
    assert len(log.history(slug)) == before
    told = carrying(log, slug, {}, heron)
    assert (told.ticks["tie_rod"].state, told.ticks["tie_rod"].lies) == (
        "packed",
        "behind the seat",
    )
    data = carry_data(told)
    assert any("Missing from the least set: brake fluid" in line for line in data.warnings)
    tick(log, slug, {"brake": Ticked(state="packed")})
    after = carrying(log, slug, {}, heron)
    assert not any("Missing" in line for line in carry_data(after).warnings)
    assert after.ticks["tie_rod"].state == "packed"
    assert len(log.history(slug)) == before + 1
    assert "packing list: brake packed" in "\n".join(history_lines(log.history(slug), "metric"))


def test_a_withdrawn_tick_does_not_hold(log, slug, heron):
    number = tick(log, slug, {"oil": Ticked(state="packed")})
    log.withdraw(slug, number, "it was the other rig's")
    assert "oil" not in carrying(log, slug, {}, heron).ticks


def test_what_broke_before_counts(log, slug, heron):
    plain = carrying(log, slug, {"mass": "300 kg"}, heron)
    body = chapter_of(
        "before us", "20000 to 40000 km", "", "", [], ["coil spring", "drag link", "the umbrella"]
    )
    log.enter(slug, body)
    told = carrying(log, slug, {"mass": "300 kg"}, heron)
    assert told.broke == ("coil spring", "drag link", "the umbrella")
    assert told.unplaced == ("the umbrella",)
    rated = {risk.weakness.part: risk.chance for risk in told.load.risks}
    assert rated["drag_link"] > {r.weakness.part: r.chance for r in plain.load.risks}["drag_link"]
    assert "spring" in {each.spare.key for each in told.load.of("rest")}
    assert "spring" in {each.spare.key for each in plain.load.of("not judged")}
    assert any("umbrella" in line for line in carry_data(told).record)


def test_a_side_that_was_said_is_the_side_that_counts(log, slug, heron):
    body = chapter_of("once", "10000 km", "", "", [], ["left inner shaft"])
    log.enter(slug, body)
    counts = {
        risk.weakness.part: risk.weakness.broke
        for risk in carrying(log, slug, {}, heron).load.risks
    }
    assert (counts["inner_shaft_left"], counts["inner_shaft_right"]) == (1.0, 0.0)


def test_without_answers_the_least_set_stands_and_the_rest_is_not_judged(log):
    from axlewright.records import New

    draft = log.store.begin("crake-rear", "Crake", "rear", [New(kind="name", text="Crake")])
    told = carrying(log, draft, {"ground": "rocks and ledges"})
    assert not told.judged
    assert not told.load.of("rest")
    assert {"unit_hub", "taper_set"} <= {each.spare.key for each in told.load.of("least")}
    assert "hub bearing" in " ".join(told.load.unjudged)
    assert "not judged" in carry_data(told).sentence


def test_a_stop_stands_over_a_full_load(log, slug, heron):
    from axlewright.rig import LookTaken

    log.look(slug, LookTaken(occasion="", look="before_hubs", state="stop", part="hub"))
    told = carrying(log, slug, {}, heron)
    assert told.stops
    assert carry_json(told)["may_i_drive"]["stop"]
    assert carry_data(told).stops[0].startswith("STOP")


def test_a_card_is_entered_as_work_and_lifts_nothing(log, slug):
    from axlewright.rig import LookTaken

    log.look(slug, LookTaken(occasion="", look="before_hubs", state="stop", part="hub"))
    number = card_done(log, slug, "hub", side="left", who="Ada", odometer="51200 km")
    kept = log.book.one(slug, number)
    assert kept.body.task.startswith("beside the track: Hub bearing")
    assert kept.body.side == "left"
    assert log.drive(slug).state == "stop"
    for bad in ({"card": "nonsense"}, {"card": "rear_shafts"}, {"card": "hub", "side": "up"}):
        with pytest.raises(AxlewrightError):
            card_done(log, slug, **bad)


@pytest.mark.parametrize(
    "said",
    [
        {"days": "0"},
        {"days": "many"},
        {"days": "9999"},
        {"people": "-1"},
        {"mass": "50"},
        {"mass": "99999 kg"},
        {"mass": "-4 kg"},
        {"far": "nowhere"},
        {"ground": "the moon"},
        {"distance": "3 hours"},
    ],
)
def test_a_trip_that_cannot_be_is_refused_with_what_is_taken(log, slug, heron, said):
    with pytest.raises(AxlewrightError) as trouble:
        carrying(log, slug, said, heron)
    assert trouble.value.remedy
    assert usual_outing(log, slug)["days"] == "3"


def test_an_unknown_line_or_state_is_refused_and_nothing_is_kept(log, slug):
    for bad in ({"gold": Ticked(state="packed")}, {"oil": Ticked(state="perhaps")}):
        with pytest.raises(AxlewrightError):
            tick(log, slug, bad)
    assert not log.history(slug)


def test_a_files_own_conditions_count_without_a_record(heron):
    told = carrying_of(heron)
    assert told.load.outing.far == 60e3
    assert {each.spare.key for each in told.load.items} <= set(spares())
