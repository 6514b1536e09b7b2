"""The store: what was acknowledged stays, whoever is killed or writes at the same time."""

import datetime as dt
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
    opened = Store.open(tmp_path / "store.sqlite")
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


def test_an_entry_is_found_again_by_another_that_opens_the_store(store, tmp_path):
    before = dt.datetime.now(dt.UTC)
    slug = store.begin("heron-front", "Heron", "front", device="phone")
    number = store.add(slug, [answer("1510 kg")], device="phone")
    other = Store.open(tmp_path / "store.sqlite")
    [began, said] = other.entries_after(slug)
    assert (began.kind, began.text, began.path) == ("began", "Heron", "front")
    assert (said.number, said.text, said.device) == (number, "1510 kg", "phone")
    assert said.at.utcoffset() == dt.timedelta(0)
    assert before <= said.at <= dt.datetime.now(dt.UTC)
    assert other.entries_after(slug, number) == []
    other.close()


def test_numbers_only_grow(store):
    one, two = store.begin("a", "A", "front"), store.begin("b", "B", "rear")
    numbers = [store.add(rig, [answer("1")]) for rig in (one, two, one, two, two)]
    assert numbers == sorted(set(numbers))
    assert [row.slug for row in store.rigs()] == [two, one]
    assert store.rigs()[0].last == store.last(two) == numbers[-1]


def test_what_goes_together_is_entered_together_or_not_at_all(store):
    rig = store.begin("a", "A", "front")
    before = store.last(rig)
    none = New(kind="answer", path="weight.axle", text=None)
    with pytest.raises(NotKept):
        store.add(rig, [answer("1"), none])
    assert store.last(rig) == before


def test_whoever_looked_too_early_is_told(store):
    rig = store.begin("a", "A", "front")
    seen = store.last(rig)
    store.add(rig, [answer("1")], after=seen)
    with pytest.raises(Overtaken):
        store.add(rig, [answer("2")], after=seen)
    with pytest.raises(UnknownEntry):
        store.add("nobody", [answer("1")])


def test_one_key_makes_one_entry(store):
    rig = store.begin("a", "A", "front")
    first = store.add(rig, [answer("1"), answer("2")], key="phone-7")
    assert store.add(rig, [answer("1"), answer("2")], key="phone-7") < first
    assert len(store.entries_after(rig)) == 3
    assert store.entered(rig, "phone-7")
    assert not store.entered(rig, "phone-8")


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


def test_texts_are_kept_once_by_content(store):
    rig = store.begin("a", "A", "front")
    for _ in range(3):
        store.add(rig, [New(kind="change", path="x", content="same")], version="file")
    digest = sha256(b"same").hexdigest()
    assert store.text(digest) == "same"
    assert {entry.text for entry in store.entries_after(rig) if entry.kind == "change"} == {digest}
    assert {found for _, found in store.versions(rig)} == {sha256(b"file").hexdigest()}
    assert len(store.versions(rig)) == 3
    with pytest.raises(UnknownEntry):
        store.text("../../etc/passwd")


def test_a_killed_writer_loses_nothing_that_was_acknowledged(tmp_path):
    """SQLite documentation, "Write-Ahead Logging": a commit is whole or not there."""
    file = tmp_path / "store.sqlite"
    store = Store.open(file)
    rig = store.begin("heron-front", "Heron", "front")
    for kill, wanted in enumerate((1, 2, 3, 5, 8, 13, 21, 34, 55, 89)):
        writer = started(file, rig, f"w{kill}", 100_000)
        told = [writer.stdout.readline() for _ in range(wanted)]
        writer.kill()
        told += writer.stdout.read().splitlines(keepends=True)
        writer.wait()
        writer.stdout.close()
        acknowledged = [int(line) for line in told if line.endswith("\n")]
        kept = [each for each in store.entries_after(rig) if each.device == f"w{kill}"]
        assert [each.text for each in kept[: len(acknowledged)]] == [
            f"w{kill} {each}" for each in acknowledged
        ]
        assert len(kept) <= len(acknowledged) + 1  # one may be kept whose word was cut off
        versions = dict(store.versions(rig))
        for each in kept:
            assert store.text(versions[each.number]) == f"{each.text}\n" * 40
    assert integrity(file) == "ok"
    store.add(rig, [answer("1510 kg")])
    store.close()


def test_two_processes_write_at_once_and_every_answer_is_there(tmp_path):
    file = tmp_path / "store.sqlite"
    store = Store.open(file)
    rig = store.begin("heron-front", "Heron", "front")
    writers = [started(file, rig, name, 200) for name in ("phone", "laptop")]
    told = [writer.communicate()[0] for writer in writers]
    assert [len(each.splitlines()) for each in told] == [200, 200]
    entries = store.entries_after(rig)
    for name in ("phone", "laptop"):
        said = [each.text for each in entries if each.device == name]
        assert said == [f"{name} {each}" for each in range(200)]
    assert len({each.number for each in entries}) == 401
    assert integrity(file) == "ok"
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


def test_threads_write_at_once_and_every_answer_is_there(store):
    rig = store.begin("a", "A", "front")

    def go(name):
        for each in range(25):
            store.add(rig, [answer(f"{each}")], device=name)

    threads = [threading.Thread(target=go, args=(f"t{each}",)) for each in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    said = store.entries_after(rig)[1:]
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
