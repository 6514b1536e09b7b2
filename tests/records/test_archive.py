"""A whole store as one file: the same bytes out of what came in; damage enters nothing."""

import datetime as dt
import io
import json
import random
import sqlite3
import zipfile
from hashlib import sha256
from pathlib import Path

import pytest

from axlewright.errors import AxlewrightError, NotKept
from axlewright.records import ARCHIVE_VERSION, Book, New, Store, read_archive, write_archive
from axlewright.rig import Fitted, Happening, Hit, Reading, Remark, TakenOff, Trip, Withdrawn

DAY = dt.date(2026, 5, 3)
READING = Reading(
    quantity="toe",
    value=0.1 + 0.2,  # no short decimal: every bit must come back
    kind="length",
    unit="in",
    given="1/8 in",
    standard=5e-324,
    repeats=(1e-300, 0.1, -0.0),
)


def filled(store):
    """Something in every corner of a store."""
    rig = store.begin("heron-front", "Hérön ☂", "front", device="phone")
    store.begin("wren-rear", "Wren", "rear")
    store.add(rig, [New(kind="change", path="x", content="a\r\nb\u2028c")], version="file", key="k")
    photo = store.keep_upload(bytes(range(256)) * 9, "IMG_1.jpg")
    book = Book(store)
    first = book.enter(rig, Happening(body=READING, on=DAY, odometer=2e8, photos=(photo,)), key="a")
    book.enter(rig, Happening(body=READING, on=DAY, replaces=first))
    grounds = (("forest_roads", 1e5), ("rock", 3.5))
    trip = book.enter(rig, Happening(body=Trip(name="n", distance=1.5, grounds=grounds), on=DAY))
    book.enter(rig, Happening(body=Withdrawn(reason="twice"), on=DAY, replaces=trip))
    book.enter(rig, Happening(body=Hit(what="a rock"), on=DAY, who="Ada", note="line\nline"))
    hub = book.new_component("hub", "left hub", "dot")
    for body in (
        Fitted(component=hub.key, place="left hub"),
        TakenOff(component=hub.key),
        Fitted(component=hub.key, place="right hub"),
    ):
        book.enter(rig, Happening(body=body, on=DAY))
    return store


@pytest.fixture
def archive(tmp_path):
    file = tmp_path / "out.zip"
    store = filled(Store.open(tmp_path / "full" / "store.sqlite"))
    write_archive(store, file)
    store.close()
    return file


def test_what_goes_in_comes_out_bit_for_bit_on_either_engine(archive, target, tmp_path):
    store = Store.open(target, tmp_path / "in")
    counts = read_archive(store, archive)
    assert counts["happenings"] == 8
    again = tmp_path / "again.zip"
    assert write_archive(store, again) == counts
    assert again.read_bytes() == archive.read_bytes()
    # it is a store like any other: numbers go on, and a part is still in one place
    book = Book(store)
    last = max(each.number for each in book.history("heron-front", replaced=True))
    assert book.enter("heron-front", Happening(body=Remark(), on=DAY)) == last + 1
    assert store.add("heron-front", [New(kind="name", text="x")]) == store.last("heron-front")
    with pytest.raises(AxlewrightError, match="Take it off first"):
        book.enter("wren-rear", Happening(body=Fitted(component="hub-1", place="x"), on=DAY))
    assert book.history("heron-front")[0].body.repeats[2] == 0.0
    store.close()


def test_a_store_that_holds_something_takes_no_archive(archive, target, tmp_path):
    store = Store.open(target, tmp_path / "in")
    store.begin("wren", "Wren", "rear")
    with pytest.raises(AxlewrightError, match="already"):
        read_archive(store, archive)
    assert [row.slug for row in store.rigs()] == ["wren"]
    store.close()


def empty(store):
    with store.reads() as connection:
        return all(
            connection.exec_driver_sql(f"SELECT count(*) FROM {name}").scalar() == 0  # noqa: S608
            for name in ("rigs", "entries", "texts", "happenings", "readings", "uploads")
        )


def members(file):
    with zipfile.ZipFile(file) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def packed(file, parts, method=zipfile.ZIP_STORED):
    with zipfile.ZipFile(file, "w", method) as archive:
        for name, data in parts.items():
            archive.writestr(name, data)


@pytest.fixture
def into(tmp_path):
    store = Store.open(tmp_path / "into" / "store.sqlite")
    yield store
    store.close()


def test_no_damage_of_the_bytes_crashes_or_enters_half(archive, into, tmp_path):
    """Bits turned, pieces cut out, doubled or put in elsewhere: told, or taken in whole."""
    rng, whole, bad = random.Random(7), archive.read_bytes(), tmp_path / "bad.zip"  # noqa: S311
    refused = 0
    for _ in range(400):
        data = bytearray(whole)
        for _ in range(rng.choice((1, 1, 2, 8))):
            at, length = rng.randrange(len(data)), rng.randrange(1, 60)
            match rng.randrange(4):
                case 0:
                    data[at] ^= 1 << rng.randrange(8)
                case 1:
                    del data[at : at + length]
                case 2:
                    data[at:at] = data[at : at + length]
                case 3:
                    data[at : at + length] = rng.randbytes(length)
        bad.write_bytes(data)
        try:
            read_archive(into, bad)
        except AxlewrightError:
            refused += 1
            assert empty(into)
        else:  # the damage lay where nothing is read: what came in is what went out
            again = tmp_path / "again.zip"
            write_archive(into, again)
            assert again.read_bytes() == whole
            into.close()
            for file in (tmp_path / "into").glob("store.sqlite*"):
                file.unlink()
            into = Store.open(tmp_path / "into" / "store.sqlite")
    assert refused > 300


WORDS = [None, True, -1, 2**40, 1e400, "x" * 100, "\x00", "", [], [[["deep"]]], {}, "2026-99-99", 7]


def test_no_strange_row_crashes_or_enters_half(archive, into, tmp_path):
    """Rows whose sums are right and whose words are not."""
    rng, parts, bad = random.Random(11), members(archive), tmp_path / "bad.zip"  # noqa: S311
    names = [name for name, data in parts.items() if name.endswith("jsonl") and data]
    refused = 0
    for _ in range(300):
        name = rng.choice(names)
        rows = [json.loads(line) for line in parts[name].splitlines()]
        row = rng.choice(rows)
        match rng.randrange(4):
            case 0:
                row[rng.choice(list(row))] = rng.choice(WORDS)
            case 1:
                del row[rng.choice(list(row))]
            case 2:
                rows.append(row)
            case 3:
                rows.remove(row)
        data = b"".join(json.dumps(each).encode() + b"\n" for each in rows)
        manifest = json.loads(parts["manifest.json"])
        manifest["tables"][Path(name).stem] = {
            "rows": len(rows),
            "sha256": sha256(data).hexdigest(),
        }
        packed(bad, {**parts, name: data, "manifest.json": json.dumps(manifest)})
        try:
            read_archive(into, bad)
        except AxlewrightError:
            refused += 1
            assert empty(into)
        else:
            into.close()
            with sqlite3.connect(tmp_path / "into" / "store.sqlite") as plain:
                assert plain.execute("PRAGMA foreign_key_check").fetchall() == []
            plain.close()
            for file in (tmp_path / "into").glob("store.sqlite*"):
                file.unlink()
            into = Store.open(tmp_path / "into" / "store.sqlite")
    assert refused > 150


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"axlewright_archive": ARCHIVE_VERSION + 1}, "version 2"),
        ({"axlewright_archive": None}, "which version"),
        ({"store": 99}, "version 99"),
        ({"tables": {}}, "not those of a store"),
        ({"files": 7}, "not every file"),
    ],
)
def test_an_archive_of_another_kind_is_told(archive, into, tmp_path, change, words):
    parts = members(archive)
    manifest = json.loads(parts["manifest.json"]) | change
    packed(tmp_path / "bad.zip", {**parts, "manifest.json": json.dumps(manifest)})
    with pytest.raises(AxlewrightError, match=words):
        read_archive(into, tmp_path / "bad.zip")
    assert empty(into)


@pytest.mark.parametrize("name", ["../../out", "files/../../out", "/etc/x", "files/x", "more.txt"])
def test_what_does_not_belong_is_refused_and_written_nowhere(archive, into, tmp_path, name):
    packed(tmp_path / "bad.zip", {**members(archive), name: b"x"})
    with pytest.raises(AxlewrightError, match="does not belong"):
        read_archive(into, tmp_path / "bad.zip")
    assert empty(into)
    assert not list(tmp_path.rglob("out"))


def test_a_file_that_swells_is_refused(archive, into, tmp_path, monkeypatch):
    monkeypatch.setattr("axlewright.records.archive.LARGEST_FILE", 1000)
    packed(tmp_path / "bad.zip", members(archive))
    with pytest.raises(AxlewrightError, match="larger than it may be"):
        read_archive(into, tmp_path / "bad.zip")
    assert empty(into)


def test_a_bomb_is_refused_before_anything_of_it_is_read(archive, into, tmp_path):
    """PKWARE APPNOTE 4.4.5: method 8 swells; a list of contents may name the same bytes twice."""
    bomb = {**members(archive), f"files/{'0' * 64}": bytes(30_000_000)}
    packed(tmp_path / "bad.zip", bomb, zipfile.ZIP_DEFLATED)
    assert (tmp_path / "bad.zip").stat().st_size < 100_000
    with pytest.raises(AxlewrightError, match="may swell"):
        read_archive(into, tmp_path / "bad.zip")
    with zipfile.ZipFile(tmp_path / "over.zip", "w") as over:
        for name, data in bomb.items():
            over.writestr(name, data[:3_000_000])
        [last] = [each for each in over.infolist() if each.filename.startswith("files/000")]
        for number in range(40):  # forty names for one stretch of bytes
            again = zipfile.ZipInfo(f"files/{number:064x}"[:-1] + "f")
            again.header_offset, again.CRC = last.header_offset, last.CRC
            again.file_size = again.compress_size = last.file_size
            over.filelist.append(again)
            over.NameToInfo[again.filename] = again
    with pytest.raises(AxlewrightError, match="larger than the archive itself"):
        read_archive(into, tmp_path / "over.zip")
    assert empty(into)


def test_a_link_and_a_name_given_twice_are_refused(archive, into, tmp_path):
    """POSIX st_mode in the upper half of the external attributes: APPNOTE 4.4.15."""
    packed(tmp_path / "link.zip", members(archive))
    with zipfile.ZipFile(tmp_path / "link.zip", "a") as linked:
        link = zipfile.ZipInfo(f"files/{'a' * 64}")
        link.create_system, link.external_attr = 3, 0o120777 << 16
        linked.writestr(link, "/etc/passwd")
    with pytest.raises(AxlewrightError, match="no plain file"):
        read_archive(into, tmp_path / "link.zip")
    packed(tmp_path / "twice.zip", members(archive))
    with (
        zipfile.ZipFile(tmp_path / "twice.zip", "a") as twice,
        pytest.warns(UserWarning, match="Duplicate name"),
    ):
        twice.writestr("manifest.json", members(archive)["manifest.json"])
    with pytest.raises(AxlewrightError, match="cannot be read"):
        read_archive(into, tmp_path / "twice.zip")
    assert empty(into)


def test_what_a_refused_archive_brought_is_off_the_disk_again(archive, into, tmp_path):
    """Files go in before the rows do; where the rows are refused, they go again."""
    kept_before = into.folder / "ab" / "other"
    kept_before.parent.mkdir(parents=True)
    kept_before.write_bytes(b"not ours")
    parts = members(archive)
    rows = [json.loads(line) for line in parts["tables/happenings.jsonl"].splitlines()]
    rows[0]["rig"] = "nobody"
    data = b"".join(json.dumps(each).encode() + b"\n" for each in rows)
    manifest = json.loads(parts["manifest.json"])
    manifest["tables"]["happenings"]["sha256"] = sha256(data).hexdigest()
    changed = {**parts, "tables/happenings.jsonl": data, "manifest.json": json.dumps(manifest)}
    packed(tmp_path / "bad.zip", changed)
    with pytest.raises(AxlewrightError):
        read_archive(into, tmp_path / "bad.zip")
    assert empty(into)
    assert [path for path in into.folder.rglob("*") if path.is_file()] == [kept_before]
    assert read_archive(into, archive)["uploads"] == 1
    assert len([path for path in into.folder.rglob("*") if path.is_file()]) == 2


@pytest.mark.parametrize("data", [b"", b"PK", b"x" * 4000])
def test_what_is_no_archive_is_told(into, tmp_path, data):
    (tmp_path / "bad.zip").write_bytes(data)
    with pytest.raises(AxlewrightError, match="no archive"):
        read_archive(into, tmp_path / "bad.zip")
    with pytest.raises(NotKept, match="cannot be read"):
        read_archive(into, tmp_path / "none.zip")


def test_an_archive_that_cannot_be_written_is_told_and_leaves_nothing(archive, tmp_path):
    store = Store.open(tmp_path / "full" / "store.sqlite")
    (tmp_path / "file").write_text("x")
    with pytest.raises(NotKept, match="cannot be written"):
        write_archive(store, tmp_path / "file" / "out.zip")
    (tmp_path / "full" / "uploads" / "x").mkdir()
    before = sorted(tmp_path.iterdir())
    write_archive(store, archive)
    assert sorted(tmp_path.iterdir()) == before
    store.close()


def test_it_opens_with_any_zip_program(archive):
    """JSON Lines, UTF-8, one row a line; ZIP without compression (APPNOTE, method 0)."""
    with zipfile.ZipFile(io.BytesIO(archive.read_bytes())) as plain:
        assert {entry.compress_type for entry in plain.infolist()} == {zipfile.ZIP_STORED}
        [first, *_] = plain.read("tables/rigs.jsonl").decode().splitlines()
    assert json.loads(first)["name"] == "Hérön ☂"
