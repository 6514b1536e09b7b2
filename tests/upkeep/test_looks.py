"""May I drive: only dated looks say go. Outside reference: common practice, no source."""

import ast
import dataclasses
import datetime as dt
import inspect
import itertools
import re
import typing

import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright import upkeep
from axlewright.rig import (
    FIELDS,
    Condition,
    Finding,
    Hit,
    Job,
    Kept,
    LookTaken,
    Noticed,
    Reading,
    Remark,
    Trip,
    part_meant,
)
from axlewright.tables import duties, looks_lists
from axlewright.upkeep import Objection, ground_met, may_drive, open_looks, wanted_looks
from house.places import MODULES, SRC, brief

TODAY = dt.date(2026, 6, 10)
NUMBERS = itertools.count(1)
TRIP, HIT = Trip(name="North loop", distance=200e3), Hit(what="a rock")


def kept(body, day=TODAY, note="", odometer=None):
    return Kept(
        number=next(NUMBERS),
        rig="heron-front",
        device="",
        at=dt.datetime(2026, 6, 10, tzinfo=dt.UTC),
        body=body,
        on=day,
        note=note,
        odometer=odometer,
    )


def look(key, state="go", occasion="before_trip", **more):
    return LookTaken(occasion=occasion, look=key, state=state, **more)


def every_look(day=TODAY, occasion="before_trip", but=None, axle="front", words=None):
    but = but or {}
    return [
        kept(but.get(each.key, look(each.key, occasion=occasion)), day)
        for each in wanted_looks(occasion, axle, words or {})
    ]


def ask(history, findings=(), objections=(), **more):
    return may_drive(history, findings, "front", {}, TODAY, objections, **more)


def test_never_looked_at_is_a_state_of_its_own():
    drive = ask([])
    assert drive.state == "not looked at"
    assert drive.looked == 0 < drive.wanted
    assert all("never sound" in each.why for each in drive.reasons)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_only_every_look_of_the_list_says_go(axle):
    looks = every_look(axle=axle)
    assert may_drive(looks, (), axle, {}, TODAY).state == "go"
    for left_out in range(len(looks)):
        some = looks[:left_out] + looks[left_out + 1 :]
        assert may_drive(some, (), axle, {}, TODAY).state == "not looked at"


@pytest.mark.parametrize(
    ("state", "told"),
    [("stop", "stop"), ("fix before trip", "fix before trip"), ("watch", "watch")],
)
def test_the_gravest_look_decides(state, told):
    drive = ask(every_look(but={"before_hubs": look("before_hubs", state)}))
    assert drive.state == told
    assert drive.reasons[0].state == told


@pytest.mark.parametrize("after", [TRIP, HIT], ids=["a trip", "a hit"])
def test_a_look_is_stale_after_a_trip_or_a_hit(after):
    assert ask([*every_look(), kept(after)]).state == "not looked at"


def test_a_look_is_stale_after_some_days():
    assert ask(every_look(TODAY - dt.timedelta(days=3))).state == "go"
    assert ask(every_look(TODAY - dt.timedelta(days=4))).state == "not looked at"


def test_a_look_of_a_day_to_come_counts_for_nothing():
    assert ask(every_look(TODAY + dt.timedelta(days=1))).state == "not looked at"


def test_after_a_hit_the_five_looks_are_asked_for_as_well():
    hit = kept(HIT)
    assert ask([hit, *every_look()]).state == "not looked at"
    five = every_look(occasion="after_hit")
    assert len(five) == 5
    assert ask([hit, *five, *every_look()]).state == "go"
    assert ask([hit, *five], beside_the_track=True).state == "go"
    assert ask([hit, *five[1:]], beside_the_track=True).state == "not looked at"
    assert ask([], beside_the_track=True).state == "not looked at"


CRACK = look(
    "after_steering", "stop", "after_trip", part="steering arm", side="left", found="cracked"
)


@pytest.mark.parametrize(
    "then",
    [
        [],
        [Remark()],
        [look("after_steering", "go", "after_trip", part="steering arm", side="left")],
        [Job(task="renewed", part="steering arm", side="left")],
        [Job(task="renewed", part="steering arm", side="right"), "again"],
        ["again", Job(task="renewed", part="steering arm", side="left")],
    ],
    ids=["nothing", "a note", "a look alone", "work alone", "the other side", "the wrong order"],
)
def test_a_stop_stays_open(then):
    again = look("after_steering", "go", "after_trip", part="steering arm", side="left")
    later = [kept(again if each == "again" else each) for each in then]
    stop = kept(CRACK)
    ordered = [stop, *(dataclasses.replace(each, number=next(NUMBERS)) for each in later)]
    assert [each.number for each, _ in open_looks(ordered)] == [stop.number]
    assert ask([*ordered, *every_look()]).state == "stop"


def test_a_stop_is_closed_by_work_and_then_a_look():
    stop = kept(CRACK)
    work = kept(Job(task="arm renewed", settles=stop.number))
    again = kept(look("after_steering", "go", "after_trip", part="steering arm", side="left"))
    assert open_looks([stop, work, again]) == ()
    assert ask([stop, work, again, *every_look()]).state == "go"


def test_cannot_tell_is_closed_by_a_look_that_could_tell():
    unsure = kept(look("before_hubs", "fix before trip", part="hub", side="left"))
    assert ask([unsure, *every_look(but={"before_hubs": Remark()})]).state == "fix before trip"
    assert ask([unsure, *every_look()]).state == "go"


@pytest.mark.parametrize(
    ("more", "day", "trips", "told"),
    [
        ({}, 0, 0, "watch"),
        ({}, 0, 1, "not looked at"),
        ({"until_trips": 2}, 0, 1, "watch"),
        ({"until_trips": 2}, 0, 2, "not looked at"),
        ({"until_distance": 300e3}, 0, 1, "watch"),
        ({"until_distance": 300e3}, 0, 2, "not looked at"),
        ({"until": TODAY}, 0, 1, "watch"),
        ({"until": TODAY - dt.timedelta(days=1)}, 2, 0, "not looked at"),
    ],
)
def test_a_watch_lasts_until_a_day_a_distance_or_a_trip(more, day, trips, told):
    watched = kept(look("before_oil", "watch", **more), TODAY - dt.timedelta(days=day))
    others = every_look(but={"before_oil": Remark()})
    driven = [kept(TRIP, TODAY - dt.timedelta(days=day)) for _ in range(trips)]
    again = [dataclasses.replace(each, number=next(NUMBERS)) for each in others]
    assert ask([watched, *driven, *again]).state == told


def test_the_odometer_ends_a_watch_where_no_trip_was_entered():
    watched = kept(look("before_oil", "watch", until_distance=300e3), odometer=10e6)
    others = every_look(but={"before_oil": Remark()})
    assert ask([watched, *others], odometer=10.2e6).state == "watch"
    assert ask([watched, *others], odometer=10.4e6).state == "not looked at"


@pytest.mark.parametrize("still", ["yes", "not driven since"])
def test_a_shake_that_may_remain_is_a_stop(still):
    shook = kept(Noticed(about="shimmy", answers=(("still", still),)))
    drive = ask([shook, *every_look()])
    assert drive.state == "stop"
    assert "never try to bring it on" in drive.reasons[0].do
    cured = kept(Noticed(about="shimmy", answers=(("still", "no"),)))
    assert ask([shook, cured, *every_look()]).state == "go"


@pytest.mark.parametrize("state", ["stop", "fix before trip", "watch"])
def test_what_was_reckoned_makes_it_worse_and_never_better(state):
    said = Objection(state=state, what="left hub", why="over its limit")
    assert ask(every_look(), objections=[said]).state == state
    assert ask([], objections=[said]).state in {state, "not looked at"}


def test_a_finding_of_the_rigs_condition_counts():
    found = Finding(
        state="stop", part="knuckle", what="cracked", where="left", when="", why="", do=""
    )
    assert ask(every_look(), findings=[found]).state == "stop"


# -- no path from a calculation to go --------------------------------------------------------------

STATES = ["stop", "fix before trip", "watch", "go"]
KEYS = [each.key for each in wanted_looks("before_trip", "front", {})]
READINGS = st.builds(
    Reading,
    quantity=st.sampled_from(["camber", "toe"]),
    value=st.floats(-1, 1),
    kind=st.just("angle"),
    unit=st.just("deg"),
    given=st.just("x"),
    standard=st.floats(0, 1),
)
UNSEEN = st.one_of(READINGS, st.just(TRIP), st.just(Remark()), st.just(Job(task="x", part="hub")))
SEEN = st.builds(look, st.sampled_from(KEYS), st.sampled_from(STATES))


@given(st.lists(UNSEEN, max_size=12))
def test_without_a_look_nothing_says_go(bodies):
    assert ask([kept(body) for body in bodies]).state == "not looked at"


@given(st.lists(SEEN, max_size=14), st.lists(UNSEEN, max_size=6), st.data())
def test_what_is_no_look_never_lifts_a_warning(seen, others, data):
    history = [kept(body) for body in seen]
    before = upkeep.DRIVE_STATES.index(ask(history).state)
    more = [kept(body) for body in others if not isinstance(body, Job)]
    mixed = data.draw(st.permutations([*history, *more]))
    again = [dataclasses.replace(each, number=n) for n, each in enumerate(mixed, 1)]
    plain = [each for each in again if isinstance(each.body, LookTaken)]
    with_all = upkeep.DRIVE_STATES.index(ask(again).state)
    assert with_all <= upkeep.DRIVE_STATES.index(ask(plain).state)
    assert before >= 0


def makers_of_go():
    """Every place in the source where the word go is made, not compared with or declared."""
    found = set()
    for path in MODULES:
        tree = ast.parse(path.read_text("utf-8"))
        parents = {child: node for node in ast.walk(tree) for child in ast.iter_child_nodes(node)}
        for node in ast.walk(tree):
            if not (isinstance(node, ast.Constant) and node.value == "go"):
                continue
            above = parents[node]
            declared = isinstance(above, ast.Compare | ast.Set | ast.Tuple | ast.Subscript)
            while above in parents and not declared:
                above = parents[above]
                declared = isinstance(above, ast.Subscript) and "Literal" in ast.dump(above.value)
                if isinstance(above, ast.FunctionDef | ast.ClassDef):
                    break
            if not declared:
                found.add(brief(path))
    return found


def test_the_word_go_is_made_in_one_place_of_the_source():
    """Looks say it as data, a person says it, the terminal reads it; only one study answers it."""
    assert "upkeep/looks.py" in {place.removeprefix("src/axlewright/") for place in makers_of_go()}
    studies = ("strength", "duty", "geometry", "physics", "rig", "life", "shimmy", "records")
    for place in makers_of_go():
        room = place.removeprefix("src/axlewright/").split("/")[0]
        assert room not in studies, place


def test_the_study_of_looks_knows_no_figure():
    """It imports neither mechanics nor another study, and takes no number but distance and day."""
    tree = ast.parse((SRC / "upkeep" / "looks.py").read_text("utf-8"))
    rooms = {
        node.module.split(".")[1]
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("axlewright.")
    }
    assert rooms == {"rig", "tables"}
    takes = typing.get_type_hints(may_drive)
    assert takes.pop("odometer") == float | None
    assert float not in takes.values()
    given_words = typing.get_args(typing.get_type_hints(Objection)["state"])
    assert "go" not in given_words


def test_no_other_function_of_any_room_answers_whether_to_drive():
    """Only `may_drive` gives a `Drive`; whoever passes one on does not make it."""
    makers = set()
    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Drive":
                makers.add(brief(path))
    assert {place.removeprefix("src/axlewright/") for place in makers} == {"upkeep/looks.py"}
    assert inspect.signature(may_drive).return_annotation is upkeep.Drive


def test_a_verdict_on_a_reading_has_no_word_for_go():
    hints = typing.get_type_hints(upkeep.Verdict)
    assert "go" not in (*typing.get_args(hints["says"]), *typing.get_args(hints["judged"]))


# -- the lists -------------------------------------------------------------------------------------


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("occasion", upkeep.OCCASIONS)
@pytest.mark.parametrize("duty", ["", *duties()])
def test_each_list_ends_in_four_words_the_gravest_part_first(occasion, axle, duty):
    looks = wanted_looks(occasion, axle, {"use.hardest": duty.replace("_", " ")})
    assert 5 <= len(looks) <= (13 if duty else 15)
    assert len({each.key for each in looks}) == len(looks)
    for each in looks:
        assert set(each.ends) == set(STATES)
        assert "cannot tell" in each.ends["fix before trip"]
        assert len(set(each.ends.values())) == 4
    if axle == "front":
        assert re.search("steer|knuckle|What steers", looks[0].title + looks[0].how, re.IGNORECASE)


# -- the ground asks for looks of its own ----------------------------------------------------------

MILD = {"use.hardest": "forest roads"}
ASKED = {
    "rocks_and_ledges": {"rods", "under"},
    "rough_tracks_and_corrugation": {"bolts"},
    "speed_and_jumps": {"rods", "bolts", "landing"},
    "water": {"water"},
}


def keys(occasion, words, met=None, axle="front"):
    return {each.key.partition("_")[2] for each in wanted_looks(occasion, axle, words, met)}


@pytest.mark.parametrize(("duty", "more"), ASKED.items())
def test_the_ground_adds_its_looks_and_takes_none_away(duty, more):
    plain = keys("after_trip", MILD, ())
    assert keys("after_trip", MILD, {duty}) - plain == more
    assert keys("after_trip", MILD, {duty}) >= plain
    if duty != "water":
        said = {"use.hardest": duty.replace("_", " ")}
        assert keys("before_trip", said) - keys("before_trip", MILD) >= more


@pytest.mark.parametrize("occasion", ["before_trip", "after_trip"])
def test_where_nobody_said_how_hard_it_is_used_every_look_is_asked(occasion):
    every = {
        each.key.partition("_")[2]
        for each in looks_lists().values()
        if each.occasion == occasion and each.axle in {"front", "both"}
    }
    assert keys(occasion, {}) == every


def test_a_trip_of_this_month_asks_and_an_older_one_no_longer():
    rocky = Trip(name="x", distance=1e5, grounds=(("rocks_and_ledges", 5e3),))
    wet = Trip(name="x", distance=1e5, water=0.7)
    dry = Trip(name="x", distance=1e5, grounds=(("rocks_and_ledges", 0.0),))
    old = TODAY - dt.timedelta(days=31)
    assert ground_met(MILD, [kept(rocky)], TODAY) == {"forest_roads", "rocks_and_ledges"}
    assert ground_met(MILD, [kept(rocky, old), kept(dry)], TODAY) == {"forest_roads"}
    assert ground_met(MILD, [kept(wet)], TODAY) == {"forest_roads", "water"}
    assert "water" in ground_met(MILD, [], TODAY)  # nobody knows: it is looked at


def test_a_rocky_trip_asks_for_more_before_the_next_one():
    told = may_drive(every_look(words=MILD), (), "front", MILD, TODAY)
    assert told.state == "go"
    rocky = Trip(name="x", distance=1e5, grounds=(("rocks_and_ledges", 5e3),))
    after = [kept(rocky), *every_look(words=MILD)]
    told = may_drive(after, (), "front", MILD, TODAY)
    assert told.state == "not looked at"
    assert {each.what for each in told.reasons} == {
        "Rods and arms sighted, for a bow",
        "Undersides that meet rock",
    }


def test_a_duty_of_a_look_is_a_duty_of_a_rig_or_water():
    named = {duty for each in looks_lists().values() for duty in each.duties}
    assert named <= {*duties(), "water"}
    hardest = next(each for each in FIELDS if each.path == "use.hardest")
    assert {word.replace(" ", "_") for word in hardest.choices} == set(duties())


@pytest.mark.parametrize("occasion", ["before_trip", "after_trip"])
@pytest.mark.parametrize(
    "word", ["crack", "bare tube", "parted", "still in its place", "hose cut", "brown line"]
)
def test_the_stop_rules_stand_in_the_lists(occasion, word):
    told = " ".join(each.ends["stop"] for each in wanted_looks(occasion, "front", {}))
    assert word in told.replace("A hose", "a hose").replace("Oil from", "oil from")


def test_whoever_lifts_is_told_of_stands_and_chocks():
    for each in looks_lists().values():
        if "off the ground" in each.how:
            assert "stand" in each.how
            assert "chock" in each.how


def test_a_part_of_a_list_is_judged_by_the_stop_rules():
    from axlewright.rig.finding import _judged

    for each in looks_lists().values():
        if each.part in {"knuckle", "end forging", "hub", "steering joint", "brake hose"}:
            assert _judged(part_meant(each.part), "cracked")[0] in {"stop", "fix before trip"}
    assert Condition(part="knuckle", what="cracked").part == "knuckle"
