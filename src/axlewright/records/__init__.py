"""What was said, changed and handed in: kept at once, added to and never changed."""

from axlewright.records.book import Book
from axlewright.records.entry import Entry, Kind, New, RigRow, Upload
from axlewright.records.schema import STORE_VERSION
from axlewright.records.store import Overtaken, Store

__all__ = [
    "STORE_VERSION",
    "Book",
    "Entry",
    "Kind",
    "New",
    "Overtaken",
    "RigRow",
    "Store",
    "Upload",
]
