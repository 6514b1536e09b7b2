"""Open a database so that what was acknowledged is on the disk, and bring it up to date.

Notes
-----
SQLite documentation, "Write-Ahead Logging": readers go on while one writes; with
``synchronous=FULL`` a commit outlives a power cut. "VACUUM": ``VACUUM INTO`` writes a whole,
consistent copy of a live database. "Transactions": ``BEGIN IMMEDIATE`` takes the one writer's
lock at once and waits for it as long as ``busy_timeout`` says. "Read-Only Databases" and "URI
Filenames": where nothing may be written, a log that is still there is read with the file; without
one the file is taken as it stands (``immutable``).
"""

import contextlib
import os
import sqlite3
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.engine import Connection, Engine

from axlewright.errors import AxlewrightError, NotKept
from axlewright.records.schema import STORE_VERSION

BUSY: Final = 20.0  # s that a writer waits for the writer before it
LOCK: Final = 711_004_133  # any number: the one writer's lock among PostgreSQL's advisory ones
MIGRATIONS: Final = "axlewright.records:migrations"
NEWEST: Final = f"{STORE_VERSION:04d}"
WRITES: Final = "axlewright_writes"


def engine_for(target: str | Path, *, just_read: bool = False) -> Engine:
    """Give the engine of a SQLite file or of a PostgreSQL address; ``just_read`` writes nothing."""
    if isinstance(target, str) and "://" in target:
        return _server(target)
    file = Path(target)
    given: dict[str, Any] = {"timeout": BUSY, "check_same_thread": False}
    name = os.fspath(file)
    if just_read:
        log = file.with_name(f"{file.name}-wal")
        still = "" if log.exists() and log.stat().st_size else "&immutable=1"
        name = f"{file.absolute().as_uri()}?mode=ro{still}"
        given["uri"] = True
    engine = sa.create_engine(
        "sqlite://", creator=lambda: sqlite3.connect(name, **given), poolclass=sa.pool.QueuePool
    )
    sa.event.listen(engine, "connect", _settled)
    sa.event.listen(engine, "begin", _begun)
    return engine


def opened(file: Path) -> tuple[Engine, NotKept | None]:
    """Give the engine of a file, and why nothing can be written to it where nothing can.

    Without leave or room to write, what was kept can still be read.
    """
    new = not file.exists()
    if not new and not (os.access(file, os.W_OK) and os.access(file.parent, os.W_OK)):
        barred = "readonly"
        return engine_for(file, just_read=True), NotKept(_plain(barred), remedy=_remedy(barred))
    engine = engine_for(file)
    try:
        put_in_wal(engine)
    except NotKept as trouble:
        engine.dispose()
        if new or not _full(str(trouble.__cause__)):
            raise
        return engine_for(file, just_read=True), trouble
    return engine, None


def _server(address: str) -> Engine:
    if address.startswith(("postgresql://", "postgres://")):  # the driver that our extra brings
        address = f"postgresql+pg8000://{address.partition('://')[2]}"
    try:
        engine = sa.create_engine(address, pool_pre_ping=True)
    except (sa.exc.SQLAlchemyError, ImportError) as trouble:
        raise AxlewrightError(
            f"A store cannot be opened at such an address: {trouble}.",
            remedy="Give the path of a file, or the address of a PostgreSQL server with its "
            "driver installed.",
        ) from trouble
    sa.event.listen(engine, "begin", _server_begun)
    return engine


def _settled(connection: sqlite3.Connection, _: object) -> None:
    connection.isolation_level = None  # transactions are begun by us, see _begun
    for setting in (
        f"busy_timeout={int(BUSY * 1000)}",
        "foreign_keys=ON",
        "synchronous=FULL",
        "recursive_triggers=ON",  # a REPLACE meets the triggers that refuse a deletion
        "trusted_schema=OFF",
    ):
        connection.execute(f"PRAGMA {setting}")


def _begun(connection: Connection) -> None:
    writes = connection.get_execution_options().get(WRITES)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def _server_begun(connection: Connection) -> None:
    if connection.get_execution_options().get(WRITES):
        connection.exec_driver_sql(f"SET LOCAL lock_timeout = {int(BUSY * 1000)}")
        connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({LOCK})")


@contextlib.contextmanager
def writing(engine: Engine) -> Iterator[Connection]:
    """Hold the one writer's lock; what is not kept as a whole is not kept at all."""
    with (
        told(),
        engine.connect().execution_options(**{WRITES: True}) as connection,
        connection.begin(),
    ):
        yield connection


@contextlib.contextmanager
def reading(engine: Engine) -> Iterator[Connection]:
    """Read from one state of the store."""
    with told(), engine.connect() as connection, connection.begin():
        yield connection


@contextlib.contextmanager
def told() -> Iterator[None]:
    """Turn the database's troubles into one that a person can put right."""
    try:
        yield
    except sa.exc.DBAPIError as trouble:
        said = str(trouble.orig)
        raise NotKept(_plain(said), remedy=_remedy(said)) from trouble


def _plain(said: str) -> str:
    if _full(said):
        return "There is no room left on the disk; this was not kept."
    if "locked" in said or "lock timeout" in said or "busy" in said:
        return "Somebody else was writing for too long; this was not kept."
    if _barred(said):
        return "The store may not be written; this was not kept."
    if "not a database" in said or "malformed" in said:
        return "The file of the store is damaged, or is no store."
    return f"The store did not take this: {said}."


def _remedy(said: str) -> str:
    if _full(said):
        return "Make room and say it again; what was kept before is untouched."
    if _barred(said):
        return "Get leave to write in its folder, or give another; what was kept can still be read."
    if "not a database" in said or "malformed" in said:
        return "Put it aside, and put a copy of an earlier day in its place."
    return "Say it again; what was kept before is untouched."


def _barred(said: str) -> bool:
    return "readonly" in said or "unable to open" in said


def _full(said: str) -> bool:
    return any(word in said for word in ("full", "disk I/O", "No space"))


def brought_up(engine: Engine, file: Path | None, newest: str = NEWEST) -> None:
    """Bring a store up to date, with a copy of it beside it first; a new one gets its tables."""
    found = version_of(engine)
    if found == newest:
        return
    if found > newest:
        raise AxlewrightError(
            f"This store is of version {int(found)}, newer than this program can read.",
            remedy=f"A newer axlewright opens it; this one reads up to {int(newest)}.",
        )
    if found and file is not None:
        copied(engine, file.with_name(f"{file.name}.before-{newest}"))
    from alembic import command
    from alembic.config import Config

    with writing(engine) as connection:
        config = Config()
        config.set_main_option("script_location", MIGRATIONS)
        config.attributes["connection"] = connection
        command.upgrade(config, newest)


def version_of(engine: Engine) -> str:
    """Version of a store as its four figures, empty where there are no tables yet."""
    with reading(engine) as connection:
        if not sa.inspect(connection).has_table("alembic_version"):
            return ""
        found = connection.exec_driver_sql("SELECT version_num FROM alembic_version").scalar()
    return str(found or "")


def copied(engine: Engine, beside: Path) -> Path:
    """Write a whole copy of a live SQLite store; an older copy of that name is left alone."""
    target, number = beside, 1
    while target.exists():
        number += 1
        target = beside.with_name(f"{beside.name}-{number}")
    part = target.with_name(f"{target.name}.part")
    part.unlink(missing_ok=True)
    with told(), engine.connect() as connection:
        plain = connection.connection.driver_connection
        if not isinstance(plain, sqlite3.Connection):
            raise AxlewrightError(
                "Only a store in a file is copied like this.",
                remedy="Copy a PostgreSQL store with its own tools.",
            )
        plain.execute("VACUUM INTO ?", (os.fspath(part),))
    os.replace(part, target)  # noqa: PTH105
    return target


def put_in_wal(engine: Engine, patience: int = 200) -> None:
    """Let readers go on while one writes; where another is opening the same file, wait for it."""
    while True:
        try:
            with engine.connect() as connection:
                plain: Any = connection.connection.driver_connection
                plain.execute("PRAGMA journal_mode=WAL")
        except (sqlite3.OperationalError, sa.exc.OperationalError) as trouble:
            patience -= 1
            if "locked" not in str(trouble) or patience < 1:
                raise NotKept(_plain(str(trouble)), remedy=_remedy(str(trouble))) from trouble
            time.sleep(0.05)
        except (sqlite3.DatabaseError, sa.exc.DatabaseError) as trouble:
            raise NotKept(_plain(str(trouble)), remedy=_remedy(str(trouble))) from trouble
        else:
            return
