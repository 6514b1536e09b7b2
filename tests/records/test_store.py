"""The store: what was acknowledged stays, whoever is killed or writes at the same time."""

import datetime as dt
import os
import signal
import sqlite3
import subprocess
import sys
import threading
from hashlib import sha256
from pathlib import Path

import pytest
import sqlalchemy as sa

from axlewright.errors import AxlewrightError, NotKept, UnknownEntry
from axlewright.records import New, Overtaken, Store
from axlewright.records.schema import UtcTime

WRITER = str(Path(__file__).with_name("writer.py"))


@pytest.fixture
def store(tmp_path):
    """A store in a file."""
    opened = Store.open(tmp_path / "store.sqlite")
    yield opened
    opened.close()


@pytest.fixture
def either(target, tmp_path):
    """A store on either engine."""
    opened = Store.open(target, tmp_path / "uploads")
    yield opened
    opened.close()


def answer(text):
    return New(kind="answer", path="weight.axle", text=text)


def started(file, rig, name, count):
    return subprocess.Popen(
        [sys.executable, WRITER, str(file), rig, name, str(count)],
        stdout=subprocess.PIPE,
        text=True,
    )


def integrity(file):
    with sqlite3.connect(file) as plain:
        found = plain.execute("PRAGMA integrity_check").fetchone()[0]
        assert plain.execute("PRAGMA foreign_key_check").fetchall() == []
    plain.close()
    return found


def test_an_entry_is_found_again_by_another_that_opens_the_store(either, target):
    before = dt.datetime.now(dt.UTC)
    slug = either.begin("heron-front", "Heron", "front", device="phone")
    number = either.add(slug, [answer("1510 kg")], device="phone")
    other = Store.open(target)
    [began, said] = other.entries_after(slug)
    assert (began.kind, began.text, began.path) == ("began", "Heron", "front")
    assert (said.number, said.text, said.device) == (number, "1510 kg", "phone")
    assert said.at.utcoffset() == dt.timedelta(0)
    assert before <= said.at <= dt.datetime.now(dt.UTC)
    assert other.entries_after(slug, number) == []
    other.close()


def test_numbers_only_grow(either):
    one, two = either.begin("a", "A", "front"), either.begin("b", "B", "rear")
    numbers = [either.add(rig, [answer("1")]) for rig in (one, two, one, two, two)]
    assert numbers == sorted(set(numbers))
    assert [row.slug for row in either.rigs()] == [two, one]
    assert either.rigs()[0].last == either.last(two) == numbers[-1]


def test_what_goes_together_is_entered_together_or_not_at_all(either):
    rig = either.begin("a", "A", "front")
    before = either.last(rig)
    none = New(kind="answer", path="weight.axle", text=None)
    with pytest.raises(NotKept):
        either.add(rig, [answer("1"), none])
    assert either.last(rig) == before


def test_whoever_looked_too_early_is_told(either):
    rig = either.begin("a", "A", "front")
    seen = either.last(rig)
    either.add(rig, [answer("1")], after=seen)
    with pytest.raises(Overtaken):
        either.add(rig, [answer("2")], after=seen)
    with pytest.raises(UnknownEntry):
        either.add("nobody", [answer("1")])


def test_one_key_makes_one_entry(either):
    rig = either.begin("a", "A", "front")
    first = either.add(rig, [answer("1"), answer("2")], key="phone-7")
    assert either.add(rig, [answer("1"), answer("2")], key="phone-7") < first
    assert len(either.entries_after(rig)) == 3
    assert either.entered(rig, "phone-7")
    assert not either.entered(rig, "phone-8")


@pytest.mark.parametrize("table", ["rigs", "entries", "texts", "versions", "uploads"])
@pytest.mark.parametrize("act", ["UPDATE {} SET rowid = rowid", "DELETE FROM {}"])
def test_nothing_entered_is_ever_changed(store, tmp_path, table, act):
    rig = store.begin("a", "A", "front")
    store.add(rig, [New(kind="change", path="x", content="y")], version="z")
    store.keep_upload(b"data", "x")
    plain = sqlite3.connect(tmp_path / "store.sqlite")
    with pytest.raises(sqlite3.IntegrityError, match="never changed"):
        plain.execute(act.format(table))
    plain.close()


def test_a_replacement_does_not_slip_past_the_triggers(store):
    store.begin("a", "A", "front")
    with pytest.raises(sa.exc.IntegrityError, match="never changed"):  # noqa: SIM117
        with store._engine.connect() as connection, connection.begin():
            connection.exec_driver_sql("REPLACE INTO rigs VALUES ('a', 'B', 'rear', '2026-01-01')")


def test_texts_are_kept_once_by_content(either):
    rig = either.begin("a", "A", "front")
    for _ in range(3):
        either.add(rig, [New(kind="change", path="x", content="same")], version="file")
    digest = sha256(b"same").hexdigest()
    assert either.text(digest) == "same"
    assert {entry.text for entry in either.entries_after(rig) if entry.kind == "change"} == {digest}
    assert {found for _, found in either.versions(rig)} == {sha256(b"file").hexdigest()}
    assert len(either.versions(rig)) == 3
    with pytest.raises(UnknownEntry):
        either.text("../../etc/passwd")


KILLS = 30


@pytest.mark.parametrize(
    "kills", [KILLS, pytest.param(1000, marks=pytest.mark.soak)], ids=["gate", "soak"]
)
def test_a_killed_writer_loses_nothing_that_was_acknowledged(target, kills):
    """SQLite documentation, "Write-Ahead Logging": a commit is whole or not there.

    PostgreSQL documentation, "Reliability": the same.
    """
    store = Store.open(target)
    rig = store.begin("heron-front", "Heron", "front")
    last = store.last(rig)
    writer = subprocess.Popen(
        [sys.executable, WRITER, str(target), rig],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    for kill in range(kills):
        writer.stdin.write(f"w{kill}\n")
        writer.stdin.flush()
        child = int(writer.stdout.readline().split()[1])
        told = [writer.stdout.readline() for _ in range(1 + kill * kill % 23)]
        os.kill(child, signal.SIGKILL)
        while told[-1] != "gone\n":
            told.append(writer.stdout.readline())
        acknowledged = [int(line) for line in told[:-1]]
        store.add(rig, [answer("after")])  # waits until what was killed has let go
        kept = [each for each in store.entries_after(rig, last) if each.device == f"w{kill}"]
        last = store.last(rig)
        assert [each.text for each in kept[: len(acknowledged)]] == [
            f"w{kill} {each}" for each in acknowledged
        ]
        assert len(kept) <= len(acknowledged) + 1  # one may be kept whose word was cut off
    writer.communicate()
    versions = dict(store.versions(rig))
    for each in store.entries_after(rig):
        if each.device.startswith("w"):  # none is torn: each has its whole version
            assert store.text(versions[each.number]) == f"{each.text}\n" * 40
    if isinstance(target, Path):
        assert integrity(target) == "ok"
    store.close()


def test_two_processes_write_at_once_and_every_answer_is_there(target):
    store = Store.open(target)
    rig = store.begin("heron-front", "Heron", "front")
    writers = [started(target, rig, name, 200) for name in ("phone", "laptop")]
    told = [writer.communicate()[0] for writer in writers]
    assert [len(each.splitlines()) for each in told] == [200, 200]
    entries = store.entries_after(rig)
    for name in ("phone", "laptop"):
        said = [each.text for each in entries if each.device == name]
        assert said == [f"{name} {each}" for each in range(200)]
    assert len({each.number for each in entries}) == 401
    if isinstance(target, Path):
        assert integrity(target) == "ok"
    store.close()


def test_a_new_store_is_opened_by_many_at_once(tmp_path):
    file = tmp_path / "store.sqlite"
    opened, troubles = [], []

    def go():
        try:
            opened.append(Store.open(file))
        except Exception as trouble:  # noqa: BLE001  (whatever it is, it is told below)
            troubles.append(trouble)

    threads = [threading.Thread(target=go) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert troubles == []
    rig = opened[0].begin("a", "A", "front")
    assert all(store.last(rig) for store in opened)
    for store in opened:
        store.close()


def test_threads_write_at_once_and_every_answer_is_there(either):
    rig = either.begin("a", "A", "front")

    def go(name):
        for each in range(25):
            either.add(rig, [answer(f"{each}")], device=name)

    threads = [threading.Thread(target=go, args=(f"t{each}",)) for each in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    said = either.entries_after(rig)[1:]
    for each in range(8):
        assert [one.text for one in said if one.device == f"t{each}"] == [*map(str, range(25))]


def test_a_full_disk_is_told_and_what_was_kept_is_untouched(store, tmp_path):
    """SQLite documentation, "PRAGMA max_page_count": beyond it a write fails as on a full disk."""
    rig = store.begin("a", "A", "front")
    first = store.add(rig, [answer("1510 kg")])

    def cramped(connection, _):
        connection.execute("PRAGMA max_page_count=1")  # the size it has by now

    store._engine.dispose()
    sa.event.listen(store._engine, "connect", cramped)
    with pytest.raises(NotKept, match="no room left"):
        store.add(rig, [New(kind="change", path="x", content="y" * 200_000)])
    assert store.last(rig) == first
    sa.event.remove(store._engine, "connect", cramped)
    store._engine.dispose()
    assert store.add(rig, [answer("1600 kg")]) == first + 1
    assert integrity(tmp_path / "store.sqlite") == "ok"


def test_a_copy_of_a_store_in_use_is_whole(store, tmp_path):
    rig = store.begin("a", "A", "front")
    store.add(rig, [answer("1510 kg")])
    copies = [store.copy_to(tmp_path / "copy.sqlite") for _ in range(2)]
    assert copies[0] != copies[1]  # an older copy is left alone
    other = Store.open(copies[0])
    assert [each.text for each in other.entries_after(rig)] == ["A", "1510 kg"]
    other.close()


@pytest.mark.parametrize("content", [b"this is no store", b"SQLite format 3\x00" + b"\xff" * 4096])
def test_a_file_that_is_no_store_is_told(tmp_path, content):
    file = tmp_path / "store.sqlite"
    file.write_bytes(content)
    with pytest.raises(AxlewrightError, match="damaged, or is no store"):
        Store.open(file)
    assert file.read_bytes() == content


def test_a_folder_that_cannot_be_made_is_told(tmp_path):
    (tmp_path / "file").write_text("x")
    with pytest.raises(AxlewrightError):
        Store.open(tmp_path / "file" / "store.sqlite")


def test_an_address_without_its_driver_is_told():
    with pytest.raises(AxlewrightError, match="address"):
        Store.open("no-such-database://host/name")


def test_every_time_is_utc():
    kind, sqlite = UtcTime(), sa.create_engine("sqlite://").dialect
    there = dt.timezone(dt.timedelta(hours=5, minutes=30))
    kept = kind.process_bind_param(dt.datetime(2026, 5, 3, 2, 0, tzinfo=there), sqlite)
    assert kept == dt.datetime(2026, 5, 2, 20, 30)  # noqa: DTZ001  (naive is what is kept)
    assert kind.process_result_value(kept, sqlite) == dt.datetime(2026, 5, 2, 20, 30, tzinfo=dt.UTC)
    with pytest.raises(ValueError, match="zone"):
        kind.process_bind_param(dt.datetime(2026, 5, 3), sqlite)  # noqa: DTZ001
