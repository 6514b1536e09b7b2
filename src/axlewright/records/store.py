"""The store: one writer at a time adds, nobody changes; whoever reads meets whole entries."""

import contextlib
import datetime as dt
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from hashlib import sha256
from pathlib import Path
from typing import Final

import sqlalchemy as sa
from sqlalchemy.engine import Connection, Engine

from axlewright.errors import NotKept, UnknownEntry
from axlewright.records.entry import Entry, New, RigRow, Upload
from axlewright.records.opening import (
    brought_up,
    copied,
    engine_for,
    opened,
    reading,
    writing,
)
from axlewright.records.schema import ENTRIES, RIGS, TEXTS, UPLOADS, VERSIONS
from axlewright.records.uploads import dropped_file, kept_file, label, read_file

FILE: Final = "axlewright.sqlite"


class Overtaken(Exception):  # noqa: N818
    """Somebody else entered something about the same rig in the meantime: look again."""


class Store:
    """Rigs and everything said about them; safe to call from threads and from processes."""

    def __init__(self, engine: Engine, folder: Path, file: Path | None = None) -> None:
        self._engine, self._folder, self._file = engine, folder, file
        self._barred: NotKept | None = None  # why nothing can be written, where nothing can
        self._turn = threading.Lock()  # threads wait here in peace, processes at the database

    @classmethod
    def open(cls, target: str | Path, folder: Path | None = None) -> "Store":
        """Open, and bring up to date, a store in a file or at a PostgreSQL address.

        ``folder`` holds what is handed in; without it, it stands beside the file.
        """
        if isinstance(target, str) and "://" in target:
            engine = engine_for(target)
            brought_up(engine, None)
            return cls(engine, folder or Path("uploads"))
        file = Path(target)
        try:
            file.parent.mkdir(parents=True, exist_ok=True)
        except OSError as trouble:
            raise NotKept(
                f"{file.parent} cannot be made: {trouble.strerror}.", remedy="Give another folder."
            ) from trouble
        engine, barred = opened(file)
        store = cls(engine, folder or file.parent / "uploads", file)
        store._barred = barred
        brought_up(engine, file)
        return store

    def close(self) -> None:
        """Let go of the database."""
        self._engine.dispose()

    @contextlib.contextmanager
    def writes(self) -> Iterator[Connection]:
        """Hold the one writer's turn, here and at the database."""
        if self._barred is not None:
            raise NotKept(self._barred.problem, remedy=self._barred.remedy)
        with self._turn, writing(self._engine) as connection:
            yield connection

    @contextlib.contextmanager
    def reads(self) -> Iterator[Connection]:
        """Read from one state of the store."""
        with reading(self._engine) as connection:
            yield connection

    @property
    def folder(self) -> Path:
        """Folder of what was handed in."""
        return self._folder

    def copy_to(self, file: Path) -> Path:
        """Write a whole copy of a store in a file while it is in use."""
        return copied(self._engine, file)

    def begin(
        self, slug: str, name: str, axle: str, news: Sequence[New] = (), *, device: str = ""
    ) -> str:
        """Begin a rig; gives its slug, with a number at its end where another has it."""
        now = dt.datetime.now(dt.UTC)
        with self.writes() as connection:
            free = self._free(connection, slug)
            connection.execute(RIGS.insert().values(slug=free, name=name, axle=axle, began=now))
            began = New(kind="began", path=axle, text=name)
            self._enter(connection, free, [began, *news], device, "", now)
        return free

    def add(
        self,
        rig: str,
        news: Sequence[New],
        *,
        device: str = "",
        key: str = "",
        after: int | None = None,
        version: str | None = None,
    ) -> int:
        """Enter some things about a rig together; gives the number of the last.

        ``key`` names this entry: said again with the same key it is entered once. ``after`` is
        the last number known; where there is a later one, nothing is entered and `Overtaken` is
        raised. ``version`` is the text of the rig's file as it stands with these entries.
        """
        now = dt.datetime.now(dt.UTC)
        with self.writes() as connection:
            if key and (before := self._of_key(connection, rig, key)):
                return before
            last = self._last(connection, rig)
            if not last:
                raise UnknownEntry(f"There is no rig {rig!r}.")
            if after is not None and last != after:
                raise Overtaken
            number = self._enter(connection, rig, news, device, key, now)
            if version is not None:
                digest = self._text(connection, version, now)
                connection.execute(VERSIONS.insert().values(entry=number, digest=digest))
        return number

    def rigs(self) -> list[RigRow]:
        """Every rig with its last entry, the last touched first."""
        last = sa.func.max(ENTRIES.c.number).label("last")
        touched = sa.func.max(ENTRIES.c.at, type_=ENTRIES.c.at.type).label("touched")
        asked = (
            sa.select(RIGS.c.slug, RIGS.c.name, RIGS.c.axle, last, touched)
            .join(ENTRIES, ENTRIES.c.rig == RIGS.c.slug)
            .group_by(RIGS.c.slug, RIGS.c.name, RIGS.c.axle)
            .order_by(last.desc())
        )
        with self.reads() as connection:
            return [RigRow(**row) for row in connection.execute(asked).mappings()]

    def last(self, rig: str) -> int:
        """Number of the last entry about a rig, 0 where there is no such rig."""
        with self.reads() as connection:
            return self._last(connection, rig)

    def entered(self, rig: str, key: str) -> int:
        """Number of the entry that a device made under a key, 0 where it made none."""
        with self.reads() as connection:
            return self._of_key(connection, rig, key)

    def entries_after(self, rig: str, number: int = 0) -> list[Entry]:
        """Entries about a rig that are later than a number, the earliest first."""
        columns = [column for column in ENTRIES.c if column.name != "key"]
        asked = (
            sa.select(*columns)
            .where(ENTRIES.c.rig == rig, ENTRIES.c.number > number)
            .order_by(ENTRIES.c.number)
        )
        with self.reads() as connection:
            return [Entry(**row) for row in connection.execute(asked).mappings()]

    def text(self, digest: str) -> str:
        """Whole text that was kept under its SHA-256."""
        with self.reads() as connection:
            found = connection.execute(
                sa.select(TEXTS.c.text).where(TEXTS.c.digest == digest)
            ).scalar()
        if found is None:
            raise UnknownEntry(f"No text of the digest {digest[:80]!r} is kept.")
        return str(found)

    def versions(self, rig: str) -> list[tuple[int, str]]:
        """Number of the entry and digest of the text of each version of a rig's file."""
        asked = (
            sa.select(VERSIONS.c.entry, VERSIONS.c.digest)
            .join(ENTRIES, ENTRIES.c.number == VERSIONS.c.entry)
            .where(ENTRIES.c.rig == rig)
            .order_by(VERSIONS.c.entry)
        )
        with self.reads() as connection:
            return [(int(row.entry), str(row.digest)) for row in connection.execute(asked)]

    def keep_upload(self, data: bytes, name: str) -> str:
        """Keep what was handed in under its SHA-256, which is given; its name is a label."""
        now = dt.datetime.now(dt.UTC)
        with self.files() as keep, self.writes() as connection:
            digest = keep(data)
            known = sa.select(UPLOADS.c.digest).where(UPLOADS.c.digest == digest)
            if connection.execute(known).scalar() is None:
                row = {"digest": digest, "size": len(data), "name": label(name), "at": now}
                connection.execute(UPLOADS.insert().values(row))
        return digest

    @contextlib.contextmanager
    def files(self) -> Iterator[Callable[[bytes], str]]:
        """Give what keeps a file; where the entry about it fails, new files go again.

        Files are kept and dropped under the writer's turn alone, so that nobody else names one
        in between.
        """
        fresh: list[str] = []

        def keep(data: bytes) -> str:
            digest, new = kept_file(self._folder, data)
            if new:
                fresh.append(digest)
            return digest

        try:
            yield keep
        except BaseException:
            with contextlib.suppress(NotKept), self.writes() as connection:
                for digest in fresh:
                    known = sa.select(UPLOADS.c.digest).where(UPLOADS.c.digest == digest)
                    if connection.execute(known).scalar() is None:
                        dropped_file(self._folder, digest)
            raise

    def upload(self, digest: str) -> bytes:
        """Give back what was handed in; raises where it is not there, or no longer the same."""
        return read_file(self._folder, digest)

    def uploads(self) -> list[Upload]:
        """Everything that was handed in, the earliest first."""
        with self.reads() as connection:
            asked = sa.select(UPLOADS).order_by(UPLOADS.c.at, UPLOADS.c.digest)
            return [Upload(**row) for row in connection.execute(asked).mappings()]

    def _enter(
        self,
        connection: Connection,
        rig: str,
        news: Iterable[New],
        device: str,
        key: str,
        now: dt.datetime,
    ) -> int:
        number = 0
        for place, new in enumerate(news):
            text = new.text
            if new.content is not None:
                text = self._text(connection, new.content, now)
            done = connection.execute(
                ENTRIES.insert().values(
                    rig=rig,
                    kind=new.kind,
                    path=new.path,
                    text=text,
                    device=device[:64],
                    key=(key[:70] + (f"/{place}" if place else "")) or None if key else None,
                    at=now,
                )
            )
            number = int((done.inserted_primary_key or (0,))[0])
        return number

    def _of_key(self, connection: Connection, rig: str, key: str) -> int:
        asked = sa.select(ENTRIES.c.number).where(ENTRIES.c.rig == rig, ENTRIES.c.key == key[:70])
        return int(connection.execute(asked).scalar() or 0)

    def _last(self, connection: Connection, rig: str) -> int:
        asked = sa.select(sa.func.max(ENTRIES.c.number)).where(ENTRIES.c.rig == rig)
        return int(connection.execute(asked).scalar() or 0)

    def _text(self, connection: Connection, text: str, now: dt.datetime) -> str:
        digest = sha256(text.encode()).hexdigest()
        known = sa.select(TEXTS.c.digest).where(TEXTS.c.digest == digest)
        if connection.execute(known).scalar() is None:
            connection.execute(TEXTS.insert().values(digest=digest, text=text, kept=now))
        return digest

    def _free(self, connection: Connection, slug: str) -> str:
        asked = sa.select(RIGS.c.slug).where(RIGS.c.slug.startswith(slug, autoescape=True))
        taken = {str(row.slug) for row in connection.execute(asked)}
        number, free = 1, slug
        while free in taken:
            number += 1
            free = f"{slug}-{number}"
        return free
