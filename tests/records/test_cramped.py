"""A full disk and a folder that may only be read: told once, with what to do; nothing is torn."""

import errno
import json
import os
import shutil
import subprocess
import sys
import tempfile
from functools import cache
from pathlib import Path

import pytest
import sqlalchemy as sa

from axlewright.errors import NotKept
from axlewright.records import Book, Store

CRAMPED = str(Path(__file__).with_name("cramped.py"))
SMALL_DISK = 'mount -t tmpfs -o size=1200k tmpfs "$1" && exec "$2" "$3" disk "$1"'


def mounts():
    """Whether a small disk of our own can be mounted here, in a name space of its own."""
    if not (shutil.which("unshare") and shutil.which("mount")):
        return False
    with tempfile.TemporaryDirectory() as there:
        words = ["unshare", "-rm", "mount", "-t", "tmpfs", "tmpfs", there]
        return not subprocess.run(words, capture_output=True, check=False).returncode


KINDS = ["limit", "only read", *(["disk"] if mounts() else [])]


@cache
def told(kind):
    """What a cramped process tells of itself, and where it was."""
    home = Path(tempfile.mkdtemp(prefix="cramped"))
    home.chmod(0o755)  # whoever may only read can come in
    try:
        words = [sys.executable, CRAMPED, kind, str(home)]
        if kind == "disk":
            words = ["unshare", "-rm", "sh", "-c", SMALL_DISK, "-", str(home), words[0], words[1]]
        done = subprocess.run(words, capture_output=True, text=True, check=True)
        found = json.loads(done.stdout)
        if kind == "limit":  # the same folder, with room again
            store = Store.open(home / "kept" / "axlewright.sqlite")
            found["later"] = [kept.note for kept in Book(store).history("heron-front")]
            store.close()
            store = Store.open(home / "new" / "axlewright.sqlite")
            found["new"] = [row.slug for row in store.rigs()]
            store.close()
        return found
    finally:
        for path in [home, *home.rglob("*")]:
            if path.is_dir():
                path.chmod(0o755)
        shutil.rmtree(home)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("name", ["entry", "happening", "upload", "archive out", "archive in"])
def test_each_thing_that_cannot_be_kept_is_told_with_what_to_do(kind, name):
    said = told(kind)[name]
    assert said != "kept"
    assert any(word in said["problem"] for word in ("room", "large", "space", "written", "denied"))
    assert any(word in said["remedy"] for word in ("room", "folder"))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("name", ["note", "out", "in"])
def test_the_terminal_says_it_in_one_line_and_leaves_with_two(kind, name):
    done = told(kind)[name]
    assert done["code"] == 2
    assert done["out"] == ""
    assert len(done["err"].splitlines()) == 1
    assert "Traceback" not in done["err"]


@pytest.mark.parametrize("kind", KINDS)
def test_what_was_kept_before_is_read_all_the_same(kind):
    done = told(kind)["history"]
    assert done["code"] == 0
    assert [line.strip() for line in done["out"].splitlines()][1::2] == ["before", "more"]


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_half_written_is_left(kind):
    files = told(kind)["files"]
    kept = [name for name in files if "uploads" in name and name.count("/") == 3]
    assert len(kept) == 1  # the one that was kept before
    assert not [name for name in files if name.endswith(".part") or name == "out.zip"]
    assert not [name for name in files if name.startswith("new/uploads")]


def test_with_room_again_it_goes_on():
    found = told("limit")
    assert found["later"] == ["before", "more"]
    assert found["new"] == []
    if "disk" in KINDS:
        assert told("disk")["after"]["code"] == 0
        assert "after" in told("disk")["history after"]["out"]


@pytest.fixture
def store(tmp_path):
    opened = Store.open(tmp_path / "store.sqlite")
    yield opened
    opened.close()


def files_in(store):
    return [path for path in store.folder.rglob("*") if path.is_file()]


def test_a_photo_for_which_the_disk_is_too_small_leaves_nothing(store, monkeypatch):
    def full(_handle):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("axlewright.records.uploads.os.fsync", full)
    with pytest.raises(NotKept, match="No space left"):
        store.keep_upload(b"photo", "photo.jpg")
    assert files_in(store) == []
    assert store.uploads() == []


def test_a_photo_whose_entry_is_refused_is_off_the_disk_again(store):
    store._engine.dispose()
    sa.event.listen(store._engine, "connect", lambda plain, _: plain.execute("PRAGMA query_only=1"))
    with pytest.raises(NotKept):
        store.keep_upload(b"photo", "photo.jpg")
    assert files_in(store) == []


def test_a_photo_that_another_kept_as_well_stays(store):
    digest = store.keep_upload(b"photo", "photo.jpg")

    def refused():
        with store.files() as keep:
            assert keep(b"photo") == digest
            raise RuntimeError

    with pytest.raises(RuntimeError):
        refused()
    assert store.upload(digest) == b"photo"
