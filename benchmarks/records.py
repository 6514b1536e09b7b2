"""A store of 10,000 rigs and 1,000,000 readings: opening a history and adding a reading."""

import dataclasses
import datetime as dt
import statistics
import tempfile
import time
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any, Final

from axlewright.records import Book, Store
from axlewright.records.happening_tables import DETAILS, HAPPENINGS
from axlewright.records.schema import ENTRIES, RIGS
from axlewright.rig import Happening, Reading

RIGS_KEPT: Final = 10_000
READINGS_EACH: Final = 100
ASKED: Final = 200
BEGAN: Final = dt.datetime(2026, 1, 1, tzinfo=dt.UTC)


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class RecordRow:
    """One thing done with a full store."""

    name: str
    ours_s: float
    peer_s: float | None
    ratio: float | None
    note: str


def measure() -> list[RecordRow]:
    """Fill a store in a folder of its own, then open histories and add readings."""
    with tempfile.TemporaryDirectory(prefix="axlewright-bench-") as folder:
        store = Store.open(Path(folder) / "store.sqlite")
        _fill(store)
        book = Book(store)
        slugs = [f"rig-{(each * 7919) % RIGS_KEPT}-front" for each in range(ASKED)]
        opened = [_timed(partial(book.history, slug)) for slug in slugs]
        happening = Happening(body=_reading(0), on=dt.date(2026, 6, 1))
        added = [_timed(partial(book.enter, slug, happening)) for slug in slugs]
        last = [_timed(partial(book.history, slug, latest=20)) for slug in slugs]
        store.close()
    what = f"of {RIGS_KEPT:,} rigs with {RIGS_KEPT * READINGS_EACH:,} readings"
    return [
        _row(f"open one history {what}", opened, "asked 50 ms"),
        _row("the last twenty of it", last, ""),
        _row("add a reading to it, on the disk", added, "asked 50 ms"),
    ]


def _row(name: str, times: list[float], note: str) -> RecordRow:
    return RecordRow(name=name, ours_s=statistics.median(times), peer_s=None, ratio=None, note=note)


def _timed(call: Any) -> float:  # noqa: ANN401
    start = time.perf_counter()
    call()
    return time.perf_counter() - start


def _reading(number: int) -> Reading:
    return Reading(
        quantity=("toe", "camber", "caster", "unit_hub_play")[number % 4],
        value=0.001 * (number % 17),
        kind="length",
        unit="mm",
        given="1 mm",
        standard=1e-4,
        side=("left", "right")[number % 2],
        instrument="tape",
        repeats=(0.001, 0.0011, 0.0012),
    )


def _fill(store: Store) -> None:
    """Enter everything in a few transactions; the first entry of each rig as `Store.begin` does."""
    reading = DETAILS["reading"]
    with store.writes() as connection:
        rigs = [
            {"slug": f"rig-{each}-front", "name": f"Rig {each}", "axle": "front", "began": BEGAN}
            for each in range(RIGS_KEPT)
        ]
        connection.execute(RIGS.insert(), rigs)
        connection.execute(
            ENTRIES.insert(),
            [
                {
                    "rig": each["slug"],
                    "kind": "began",
                    "path": "front",
                    "text": each["name"],
                    "device": "",
                    "key": None,
                    "at": BEGAN,
                }
                for each in rigs
            ],
        )
    for spines, bodies in _batches():
        with store.writes() as connection:
            connection.execute(HAPPENINGS.insert(), spines)
            connection.execute(reading.insert(), bodies)


def _batches() -> Iterator[tuple[list[dict[str, Any]], list[dict[str, Any]]]]:
    """Readings by turns of the rigs, so that one history lies all over the file."""
    number = 0
    names = [each.name for each in dataclasses.fields(Reading)]
    for turn in range(READINGS_EACH):
        day = dt.date(2026, 1, 1) + dt.timedelta(days=turn)
        spines, bodies = [], []
        for rig in range(RIGS_KEPT):
            number += 1
            spines.append(
                {
                    "number": number,
                    "rig": f"rig-{rig}-front",
                    "kind": "reading",
                    "day": day,
                    "odometer": 1e5 * turn,
                    "who": "",
                    "note": "",
                    "device": "",
                    "key": None,
                    "replaces": None,
                    "at": BEGAN,
                }
            )
            body = _reading(number)
            bodies.append({"happening": number, **{name: getattr(body, name) for name in names}})
        yield spines, bodies
