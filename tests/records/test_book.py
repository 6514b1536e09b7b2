"""The book of a rig on both engines: kept as said, put right by a new entry, parts in one place."""

import dataclasses
import datetime as dt
from pathlib import Path

import pytest
import sqlalchemy as sa

from axlewright.errors import AxlewrightError, NotKept, UnknownEntry
from axlewright.records import Book, Store
from axlewright.records.happening_tables import BODIES, DETAILS
from axlewright.rig import (
    Chapter,
    Fitted,
    Happening,
    Hit,
    Job,
    LookTaken,
    Noticed,
    OwnLimit,
    Reading,
    Remark,
    TakenOff,
    Trip,
    Withdrawn,
)

DAY = dt.date(2026, 5, 3)
CAMBER = Reading(
    quantity="camber",
    value=-0.0087,
    kind="angle",
    unit="deg",
    given="-0.5 deg",
    standard=0.0015,
    freedom=2.0,
    side="left",
    instrument="angle_finder",
    repeats=(-0.0085, -0.0088, -0.0088),
    load_state="as for a trip",
    bearing="taken up",
    conditions="level floor, 20 °C",
)
EVERY = [
    LookTaken(
        occasion="before_trip",
        look="steers",
        state="watch",
        part="tie rod",
        side="left",
        found="bowed",
        until=DAY + dt.timedelta(days=30),
        until_distance=5000.0,
        until_trips=1,
    ),
    CAMBER,
    Trip(
        name="North loop",
        distance=183e3,
        duration=28_800.0,
        grounds=(("forest_roads", 120e3), ("rock", 63e3)),
        pressure=1.2e5,
    ),
    Hit(what="a rock", side="right", speed=4.2),
    Job(task="wheel nuts set", part="wheel nuts", torque="the manual's"),
    OwnLimit(
        limit="unit_hub_play",
        low=None,
        high=1e-4,
        kind="length",
        given="0.1 mm",
        printed="the manual, hub page",
    ),
    Chapter(title="Before us", shortest=40e6, longest=90e6, broke=("inner shaft", "tie rod")),
    Noticed(about="shimmy", answers=(("speed", "60 to 80 km/h"), ("begins", "after a bump"))),
    Remark(about="paint marks renewed"),
]


@pytest.fixture
def store(target, tmp_path):
    opened = Store.open(target, tmp_path / "uploads")
    yield opened
    opened.close()


@pytest.fixture
def book(store):
    store.begin("heron-front", "Heron", "front")
    store.begin("wren-front", "Wren", "front")
    return Book(store)


def said(body, on=DAY, **more):
    return Happening(body=body, on=on, **more)


@pytest.mark.parametrize("body", EVERY, ids=lambda body: type(body).__name__)
def test_each_kind_comes_back_as_it_was_said(book, body):
    number = book.enter(
        "heron-front",
        said(body, odometer=211_345_000.0, who="Ada", note="Ö ☂ 'x'\n2"),
        device="phone",
    )
    [kept] = book.history("heron-front")
    assert (kept.number, kept.body, kept.on) == (number, body, DAY)
    assert (kept.odometer, kept.who, kept.note) == (211_345_000.0, "Ada", "Ö ☂ 'x'\n2")
    assert (kept.device, kept.rig) == ("phone", "heron-front")
    assert book.one("heron-front", number) == kept


def test_every_kind_has_its_table_and_is_tried_here():
    tried = {type(body) for body in EVERY} | {Fitted, TakenOff, Withdrawn}
    assert tried == set(BODIES.values())
    for kind, body in BODIES.items():
        assert set(DETAILS[kind].c.keys()) == {"happening"} | {
            field.name for field in dataclasses.fields(body)
        }


def test_a_correction_names_what_it_replaces_and_both_stay(book):
    first = book.enter("heron-front", said(CAMBER))
    right = dataclasses.replace(CAMBER, side="right")
    second = book.enter("heron-front", said(right, replaces=first))
    assert [each.body.side for each in book.history("heron-front")] == ["right"]
    both = book.history("heron-front", replaced=True)
    assert [(each.number, each.replaced) for each in both] == [(first, second), (second, 0)]
    with pytest.raises(AxlewrightError, match=f"already put right by entry {second}"):
        book.enter("heron-front", said(CAMBER, replaces=first))


def test_what_is_withdrawn_is_out_of_the_history_and_stays_entered(book):
    first = book.enter("heron-front", said(CAMBER))
    book.enter("heron-front", said(Withdrawn(reason="wrong rig"), replaces=first))
    assert book.history("heron-front") == []
    assert len(book.history("heron-front", replaced=True)) == 2


@pytest.mark.parametrize(
    ("rig", "replaces", "body", "words"),
    [
        ("nobody", 0, CAMBER, "no rig"),
        ("heron-front", 99, CAMBER, "no entry 99"),
        ("wren-front", 1, CAMBER, "no entry 1"),
        ("heron-front", 1, Hit(what="a rock"), "not put right by 'hit'"),
    ],
)
def test_what_does_not_belong_together_is_refused(book, rig, replaces, body, words):
    book.enter("heron-front", said(CAMBER))
    with pytest.raises(AxlewrightError, match=words):
        book.enter(rig, said(body, replaces=replaces))
    assert len(book.history("heron-front", replaced=True)) == 1


def test_history_is_by_day_and_the_latest_can_be_asked_for(book):
    for day in (3, 1, 2, 1):
        book.enter("heron-front", said(Remark(about=str(day)), on=DAY.replace(day=day)))
    assert [each.body.about for each in book.history("heron-front")] == ["1", "1", "2", "3"]
    latest = book.history("heron-front", latest=2)
    assert [each.body.about for each in latest] == ["2", "3"]
    assert book.history("heron-front", ["hit"]) == []


def test_a_key_said_twice_is_entered_once(book):
    first = book.enter("heron-front", said(CAMBER), key="phone-1")
    assert book.enter("heron-front", said(CAMBER), key="phone-1") == first
    assert len(book.history("heron-front")) == 1


def test_photos_stand_by_content(book, store):
    digest = store.keep_upload(b"photo", "IMG_1.jpg")
    book.enter("heron-front", said(Remark(), photos=(digest, digest)))
    assert book.history("heron-front")[0].photos == (digest,)
    assert store.upload(digest) == b"photo"
    with pytest.raises(UnknownEntry, match="No photo"):
        book.enter("heron-front", said(Remark(), photos=("f" * 64,)))
    assert len(book.history("heron-front")) == 1


def test_a_part_keeps_its_identity_when_it_moves(book):
    shaft = book.new_component("shaft", "inner shaft, left", "three paint dots")
    assert book.component(shaft.key) == shaft
    first = book.enter("heron-front", said(Fitted(component=shaft.key, place="left shaft")))
    off = book.enter("heron-front", said(TakenOff(component=shaft.key), on=DAY.replace(day=9)))
    again = book.enter(
        "wren-front",
        said(Fitted(component=shaft.key, place="spare"), on=DAY.replace(day=9)),
    )
    assert [
        (each.rig, each.begun, each.ended, each.since.day, each.until and each.until.day)
        for each in book.fitments(component=shaft.key)
    ] == [("heron-front", first, off, 3, 9), ("wren-front", again, 0, 9, None)]


def test_a_part_is_in_one_place_and_a_place_holds_one_part(book):
    one, two = (book.new_component("hub", name) for name in ("a", "b"))
    assert one.key != two.key
    book.enter("heron-front", said(Fitted(component=one.key, place="left hub")))
    with pytest.raises(AxlewrightError, match="Take it off first"):
        book.enter("wren-front", said(Fitted(component=one.key, place="left hub")))
    with pytest.raises(AxlewrightError, match="Take it off first"):
        book.enter("heron-front", said(Fitted(component=two.key, place="left hub")))
    with pytest.raises(AxlewrightError, match="days in order"):
        book.enter("heron-front", said(TakenOff(component=one.key), on=DAY.replace(day=1)))
    with pytest.raises(UnknownEntry, match="no part"):
        book.enter("heron-front", said(Fitted(component="hub-9", place="right hub")))
    assert len(book.history("heron-front", replaced=True)) == 1


def test_the_database_itself_keeps_a_part_in_one_place(book, store):
    hub = book.new_component("hub", "a")
    begun = book.enter("heron-front", said(Fitted(component=hub.key, place="left hub")))
    other = book.enter("heron-front", said(Remark()))
    twice = f"INSERT INTO fitments VALUES ({other}, '{hub.key}', 'wren-front', 'x', NULL)"  # noqa: S608
    with pytest.raises(NotKept), store.writes() as connection:
        connection.exec_driver_sql(twice)
    ended = f"UPDATE fitments SET ended = {other} WHERE begun = {begun}"  # noqa: S608
    with store.writes() as connection:
        connection.exec_driver_sql(ended)  # the end is entered once
    with pytest.raises(NotKept, match="never changed"), store.writes() as connection:
        connection.exec_driver_sql(ended)


@pytest.mark.parametrize("table", ["happenings", "components", "photos", "readings", "looks"])
@pytest.mark.parametrize("act", ["UPDATE {} SET {} = {}", "DELETE FROM {}"])
def test_nothing_in_the_book_is_ever_changed(book, store, table, act):
    digest = store.keep_upload(b"photo", "x")
    for body in (CAMBER, EVERY[0]):
        book.enter("heron-front", said(body, photos=(digest,)))
    book.new_component("hub", "a")
    with store.reads() as connection:
        column = sa.inspect(connection).get_columns(table)[0]["name"]
    with pytest.raises(NotKept, match="never changed"), store.writes() as connection:
        connection.exec_driver_sql(act.format(table, column, column))


def test_a_number_that_is_none_is_refused_whole(book):
    bad = dataclasses.replace(CAMBER, repeats=(float("nan"),))
    with pytest.raises((AxlewrightError, sa.exc.StatementError)):
        book.enter("heron-front", said(bad))
    assert book.history("heron-front", replaced=True) == []


def test_a_folder_that_may_only_be_read_is_told(tmp_path):
    """SQLite documentation, "URI filenames", mode=ro: as a folder without leave to write."""
    Store.open(tmp_path / "store.sqlite").close()
    store = Store.open(tmp_path / "store.sqlite")
    store.begin("heron-front", "Heron", "front")
    store._engine.dispose()
    sa.event.listen(
        store._engine, "connect", lambda plain, _: plain.execute("PRAGMA query_only=ON")
    )
    with pytest.raises(NotKept, match="may not be written"):
        Book(store).enter("heron-front", said(CAMBER))
    assert Book(store).history("heron-front") == []
    store.close()
    assert Path(tmp_path / "store.sqlite").exists()
