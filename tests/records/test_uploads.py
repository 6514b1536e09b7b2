"""Files handed in: found by content, never by name, and never outside their folder."""

from hashlib import sha256

import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.records import Store
from axlewright.records.uploads import label


@pytest.fixture
def store(tmp_path):
    opened = Store.open(tmp_path / "kept" / "store.sqlite")
    yield opened
    opened.close()


def test_a_file_is_kept_once_by_content(store, tmp_path):
    digest = store.keep_upload(b"photo", "IMG_1.jpg")
    assert store.keep_upload(b"photo", "again.jpg") == digest == sha256(b"photo").hexdigest()
    assert store.upload(digest) == b"photo"
    assert [(each.digest, each.size, each.name) for each in store.uploads()] == [
        (digest, 5, "IMG_1.jpg")
    ]
    assert (tmp_path / "kept" / "uploads" / digest[:2] / digest).read_bytes() == b"photo"


@pytest.mark.parametrize(
    "name",
    ["../../out", "/etc/passwd", "..\\..\\out", "..", "a/../../b", "\x00", "", "con:", "~/.ssh/x"],
)
def test_a_name_never_leads_out_of_the_folder(store, tmp_path, name):
    store.keep_upload(name.encode(), name)
    kept = tmp_path / "kept"
    assert {path.name for path in tmp_path.iterdir()} == {"kept"}
    files = [path for path in (kept / "uploads").rglob("*") if path.is_file()]
    assert [path.name for path in files] == [sha256(name.encode()).hexdigest()]


@given(st.text())
def test_a_label_is_short_printable_and_no_path(name):
    kept = label(name)
    assert 0 < len(kept) <= 120
    assert kept.isprintable()
    assert not set(kept) & {"/", "\\"}
    assert kept not in {".", ".."}


@pytest.mark.parametrize(
    "digest", ["", "..", "../store.sqlite", "a" * 63, "A" * 64, "a" * 64 + "\n", "a" * 64]
)
def test_only_a_digest_finds_a_file(store, digest):
    with pytest.raises(UnknownEntry):
        store.upload(digest)


def test_a_file_that_was_damaged_is_not_handed_out(store, tmp_path):
    digest = store.keep_upload(b"photo", "x")
    (tmp_path / "kept" / "uploads" / digest[:2] / digest).write_bytes(b"other")
    with pytest.raises(UnknownEntry, match="damaged"):
        store.upload(digest)


def test_a_folder_in_the_way_is_told(store, tmp_path):
    (tmp_path / "kept" / "uploads").write_text("in the way")
    with pytest.raises(AxlewrightError, match="cannot be kept"):
        store.keep_upload(b"photo", "x")
    assert store.uploads() == []
