"""A whole store out into one file and in again."""

from pathlib import Path


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
