"""A whole store as one file, out and in: tables as lines of JSON, what was handed in as it was.

The same store gives the same bytes wherever it is written: entries in a fixed order, nothing
compressed, no time and no rights of a file. What comes in is read and checked to its end before
anything is entered, and is then entered as a whole.
"""

import contextlib
import datetime as dt
import json
import math
import os
import stat
import tempfile
import zipfile
import zlib
from collections.abc import Callable, Iterator
from hashlib import sha256
from pathlib import Path
from typing import Any, BinaryIO, Final

import sqlalchemy as sa
from sqlalchemy.engine import Connection

from axlewright.errors import AxlewrightError, NotKept
from axlewright.records.happening_tables import Listing, frozen
from axlewright.records.schema import META, STORE_VERSION, UtcTime
from axlewright.records.store import Store

ARCHIVE_VERSION: Final = 1  # docs/formats.md
MOST_FILES: Final = 1_000_000
LARGEST_TABLE: Final = 4 << 30  # bytes of one table
LARGEST_FILE: Final = 1 << 30  # bytes of one thing handed in
AT_ONCE: Final = 5_000  # rows
_FIRST: Final = (1980, 1, 1, 0, 0, 0)  # the earliest that the format knows
_MANIFEST: Final = "manifest.json"
TABLES: Final = tuple(META.sorted_tables)  # what is pointed at stands first
_NO_ARCHIVE: Final = "This is no archive of a store, or it is damaged"


def write_archive(store: Store, file: Path) -> dict[str, int]:
    """Write everything that a store holds into one file; gives the number of rows by table."""
    part = ""
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(prefix=".", suffix=".part", dir=file.parent)
        with os.fdopen(handle, "wb") as out:
            counts = _written(store, out)
            out.flush()
            os.fsync(out.fileno())
        os.replace(part, file)  # noqa: PTH105
    except OSError as trouble:
        raise NotKept(
            f"The archive cannot be written: {trouble.strerror or trouble}.",
            remedy="Make room, or give another place; the store is untouched.",
        ) from trouble
    finally:
        with contextlib.suppress(OSError):
            Path(part).unlink()
    return counts


def _written(store: Store, out: BinaryIO) -> dict[str, int]:
    told: dict[str, dict[str, Any]] = {}
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive, store.reads() as connection:
        for table in TABLES:
            count, summed = 0, sha256()
            with archive.open(_entry(f"tables/{table.name}.jsonl"), "w", force_zip64=True) as to:
                for line in _lines(connection, table):
                    to.write(line)
                    summed.update(line)
                    count += 1
            told[table.name] = {"rows": count, "sha256": summed.hexdigest()}
        uploads = META.tables["uploads"]
        found = connection.execute(sa.select(uploads.c.digest).order_by(uploads.c.digest))
        digests = [str(row.digest) for row in found]
        for digest in digests:
            archive.writestr(_entry(f"files/{digest}"), store.upload(digest))
        manifest = {
            "axlewright_archive": ARCHIVE_VERSION,
            "store": STORE_VERSION,
            "tables": told,
            "files": len(digests),
        }
        archive.writestr(_entry(_MANIFEST), _json(manifest) + b"\n")
    return {name: each["rows"] for name, each in told.items()}


def _entry(name: str) -> zipfile.ZipInfo:
    entry = zipfile.ZipInfo(name, _FIRST)
    entry.external_attr = 0o644 << 16
    entry.create_system = 3  # the same wherever it is written
    return entry


def _lines(connection: Connection, table: sa.Table) -> Iterator[bytes]:
    keys = list(table.primary_key.columns)
    streamed = connection.execution_options(yield_per=AT_ONCE)
    for row in streamed.execute(sa.select(table).order_by(*keys)).mappings():
        yield _json({name: _out(each) for name, each in row.items()}) + b"\n"


def _out(value: object) -> object:
    if isinstance(value, dt.datetime):
        return value.isoformat(timespec="microseconds")
    return value.isoformat() if isinstance(value, dt.date) else value


def _json(value: object) -> bytes:
    return json.dumps(
        value, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":")
    ).encode()


def read_archive(store: Store, file: Path) -> dict[str, int]:
    """Enter a whole archive into an empty store; gives the number of rows by table.

    Whatever is wrong with the archive, nothing of it is entered.
    """
    try:
        with zipfile.ZipFile(file) as archive:
            manifest = _manifest(archive, file.stat().st_size)
            digests = _files(archive, manifest)
            counts = {
                table.name: sum(1 for _ in _rows(archive, table, manifest)) for table in TABLES
            }
            _enter(store, archive, manifest, digests)
    except OSError as trouble:
        raise NotKept(f"{file} cannot be read: {trouble.strerror or trouble}.") from trouble
    except (
        *(zipfile.BadZipFile, zipfile.LargeZipFile, zlib.error, EOFError, RecursionError),
        *(UnicodeError, KeyError, TypeError, OverflowError, RuntimeError),
    ) as trouble:
        raise _damaged(str(trouble)) from trouble
    return counts


def _damaged(why: str) -> AxlewrightError:
    return AxlewrightError(
        f"{_NO_ARCHIVE}: {why[:200]}.",
        remedy="Nothing of it was entered. Take another copy of the archive.",
    )


def _manifest(archive: zipfile.ZipFile, whole: int) -> dict[str, Any]:
    """What an archive of so many bytes says of itself, once its list of contents is plain."""
    entries = archive.infolist()
    names = [entry.filename for entry in entries]
    if any(entry.compress_type != zipfile.ZIP_STORED for entry in entries):
        raise _damaged("something in it is packed tight, which may swell; nothing here ever is")
    if any(stat.S_IFMT(entry.external_attr >> 16) not in {0, stat.S_IFREG} for entry in entries):
        raise _damaged("something in it is no plain file")
    if sum(entry.file_size for entry in entries) > whole:
        raise _damaged("its contents are larger than the archive itself")
    if len(names) > MOST_FILES or len(set(names)) != len(names) or _MANIFEST not in names:
        raise _damaged("its list of contents cannot be read")
    told = _parsed(_small(archive, _MANIFEST))
    version = told.get("axlewright_archive") if isinstance(told, dict) else None
    if not isinstance(told, dict) or type(version) is not int or type(told.get("store")) is not int:
        raise _damaged("it does not say which version it is")
    if version != ARCHIVE_VERSION or told["store"] != STORE_VERSION:
        raise AxlewrightError(
            f"This archive is of version {version}, of a store of version {told['store']}; "
            f"this program reads {ARCHIVE_VERSION}, of {STORE_VERSION}.",
            remedy="Nothing of it was entered. A program of its own version reads it.",
        )
    wanted = {f"tables/{table.name}.jsonl" for table in TABLES} | {_MANIFEST}
    tables = told.get("tables")
    if not isinstance(tables, dict) or set(tables) != {table.name for table in TABLES}:
        raise _damaged("its tables are not those of a store")
    strange = [
        name for name in names if name not in wanted and not _is_digest(name.removeprefix("files/"))
    ]
    if strange or not wanted <= set(names):
        raise _damaged("something is in it that does not belong, or is missing")
    return told


def _is_digest(name: str) -> bool:
    return len(name) == 64 and not set(name) - set("0123456789abcdef")


def _small(archive: zipfile.ZipFile, name: str, most: int = 1 << 20) -> bytes:
    """Read a member whole, and no more of it than it may be."""
    entry = archive.getinfo(name)
    with archive.open(entry) as member:
        data = member.read(most + 1)
    if len(data) > most:
        raise _damaged(f"{name[:60]} is larger than it may be")
    return data


def _files(archive: zipfile.ZipFile, manifest: dict[str, Any]) -> list[str]:
    """Digests of what was handed in, each held against what is there."""
    names = sorted(name for name in archive.namelist() if name.startswith("files/"))
    if len(names) != manifest.get("files"):
        raise _damaged("not every file that was handed in is there")
    digests = [name.removeprefix("files/") for name in names]
    listed = {row["digest"] for row in _rows(archive, META.tables["uploads"], manifest)}
    if listed != set(digests):
        raise _damaged("the files are not those that the table names")
    for digest in digests:
        if sha256(_small(archive, f"files/{digest}", LARGEST_FILE)).hexdigest() != digest:
            raise _damaged(f"the file {digest[:12]} is not what it was")
    return digests


def _rows(
    archive: zipfile.ZipFile, table: sa.Table, manifest: dict[str, Any]
) -> Iterator[dict[str, Any]]:
    """Rows of one table, each checked; the sum is held against the manifest at the end."""
    said = manifest["tables"][table.name]
    readers = {column.name: _reader(column) for column in table.columns}
    summed, count, size = sha256(), 0, 0
    with archive.open(f"tables/{table.name}.jsonl") as lines:
        while line := lines.readline(LARGEST_FILE):
            summed.update(line)
            count, size = count + 1, size + len(line)
            if size > LARGEST_TABLE:
                raise _damaged(f"the table {table.name} is larger than it may be")
            row = _parsed(line)
            if not isinstance(row, dict) or set(row) != set(readers):
                raise _damaged(f"row {count} of {table.name} has other columns")
            try:
                yield {name: read(row[name]) for name, read in readers.items()}
            except (ValueError, TypeError, OverflowError) as trouble:
                raise _damaged(f"row {count} of {table.name}: {trouble}") from trouble
    if not isinstance(said, dict) or (said.get("rows"), said.get("sha256")) != (
        count,
        summed.hexdigest(),
    ):
        raise _damaged(f"the table {table.name} is not what it was")


def _parsed(text: bytes) -> Any:  # noqa: ANN401  (whatever stands there)
    def refuse(word: str) -> float:
        raise ValueError(f"{word} is no number")

    try:
        return json.loads(text, parse_constant=refuse)
    except ValueError as trouble:
        raise _damaged(f"a line is no JSON: {trouble}") from trouble


def _reader(column: "sa.Column[Any]") -> Callable[[object], object]:
    """Give the function that reads one column's values, or raises ValueError."""
    kind, empty, length = column.type, column.nullable, getattr(column.type, "length", None)

    def read(value: object) -> object:
        if value is None:
            if not empty:
                raise ValueError(f"{column.name} is empty")
            return None
        if isinstance(kind, Listing):
            return _list(value)
        if isinstance(kind, sa.Integer):
            return _whole(value)
        if isinstance(kind, sa.Double):
            return _number(value)
        if not isinstance(value, str) or "\x00" in value or (length and len(value) > length):
            raise ValueError(f"{column.name} is no text that fits")
        value.encode()  # no half of a sign
        if isinstance(kind, UtcTime):
            moment = dt.datetime.fromisoformat(value)
            if moment.tzinfo is None:
                raise ValueError(f"{column.name} has no zone")
            return moment
        return dt.date.fromisoformat(value) if isinstance(kind, sa.Date) else value

    return read


def _whole(value: object) -> int:
    if type(value) is not int or not 0 <= value < 2**31:
        raise ValueError("a whole number was wanted")
    return value


def _number(value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError("a number was wanted")  # noqa: TRY004  (told as the others)
    if not math.isfinite(value):
        raise ValueError("a number has no end")
    return float(value)


def _list(value: object) -> tuple[Any, ...]:
    if not isinstance(value, list):
        raise ValueError("a list was wanted")  # noqa: TRY004  (told as the others)
    for each in value:
        for one in each if isinstance(each, list) else [each]:
            if not isinstance(one, str):
                _number(one)
    return frozen(value)


def _enter(
    store: Store, archive: zipfile.ZipFile, manifest: dict[str, Any], digests: list[str]
) -> None:
    with store.files() as keep, store.writes() as connection:
        for table in TABLES:
            if connection.execute(sa.select(table).limit(1)).first() is not None:
                raise AxlewrightError(
                    "There is something in this store already.",
                    remedy="Give a new folder with --store; nothing was entered.",
                )
        for digest in digests:  # under their own content: what is there already stays
            keep(_small(archive, f"files/{digest}", LARGEST_FILE))
        for table in TABLES:
            few: list[dict[str, Any]] = []
            for row in _rows(archive, table, manifest):
                few.append(row)
                if len(few) == AT_ONCE:
                    connection.execute(table.insert(), few)
                    few = []
            if few:
                connection.execute(table.insert(), few)
            _go_on_counting(connection, table)
        for table in TABLES:
            _whole_record(connection, table)


def _go_on_counting(connection: Connection, table: sa.Table) -> None:
    """Let the next entry have the next number, on a server that counts apart."""
    counted = table.autoincrement_column
    if connection.dialect.name == "postgresql" and counted is not None and counted.name == "number":
        asked = (
            f"SELECT setval(pg_get_serial_sequence('{table.name}', 'number'), "  # noqa: S608
            f"GREATEST((SELECT max(number) FROM {table.name}), 1))"
        )
        connection.exec_driver_sql(asked)


def _whole_record(connection: Connection, table: sa.Table) -> None:
    """Refuse a spine without its words, and words of another kind than the spine says."""
    from axlewright.records.happening_tables import DETAILS, HAPPENINGS

    kinds = [kind for kind, detail in DETAILS.items() if detail is table]
    if not kinds:
        return
    spine = sa.select(HAPPENINGS.c.number).where(HAPPENINGS.c.kind == kinds[0])
    of_kind = connection.execute(sa.select(sa.func.count()).select_from(spine.subquery())).scalar()
    every = connection.execute(sa.select(sa.func.count()).select_from(table)).scalar()
    both = connection.execute(
        sa.select(sa.func.count())
        .select_from(table.join(HAPPENINGS, HAPPENINGS.c.number == table.c.happening))
        .where(HAPPENINGS.c.kind == kinds[0])
    ).scalar()
    if not of_kind == every == both:
        raise _damaged(f"entries of the kind {kinds[0]!r} are not whole")
