"""What was said, changed and handed in: kept at once, added to and never changed."""

from axlewright.records.archive import ARCHIVE_VERSION, read_archive, write_archive
from axlewright.records.book import Book
from axlewright.records.entry import Entry, Kind, New, RigRow, Upload
from axlewright.records.schema import STORE_VERSION
from axlewright.records.store import Overtaken, Store
from axlewright.records.uploads import MOST_PHOTO, photo_type

__all__ = [
    "ARCHIVE_VERSION",
    "MOST_PHOTO",
    "STORE_VERSION",
    "Book",
    "Entry",
    "Kind",
    "New",
    "Overtaken",
    "RigRow",
    "Store",
    "Upload",
    "photo_type",
    "read_archive",
    "write_archive",
]
