"""A whole store out into one file and in again."""

import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from axlewright.actions.log import Log


def archive_out(folder: Path, file: Path) -> dict[str, int]:
    """Write everything in the store of a folder into one archive; gives rows by table."""
    from axlewright.records import Store, write_archive

    store = Store.open(folder / "axlewright.sqlite")
    try:
        return write_archive(store, file)
    finally:
        store.close()


def archive_in(folder: Path, file: Path) -> dict[str, int]:
    """Enter a whole archive into the empty store of a folder; gives rows by table."""
    from axlewright.records import Store, read_archive

    store = Store.open(folder / "axlewright.sqlite")
    try:
        return read_archive(store, file)
    finally:
        store.close()


def archive_given(log: "Log") -> bytes:
    """Everything in an open store as the bytes of one archive."""
    from axlewright.records import write_archive

    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "archive.zip"
        write_archive(log.store, file)
        return file.read_bytes()


def archive_taken(log: "Log", data: bytes) -> dict[str, int]:
    """Enter the bytes of an archive into an open store that is empty; gives rows by table."""
    from axlewright.records import read_archive

    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "archive.zip"
        file.write_bytes(data)
        return read_archive(log.store, file)
