"""Tables of the store as this version writes them, and the type that holds every time in UTC."""

import datetime as dt
from typing import Final

import sqlalchemy as sa
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator

STORE_VERSION: Final = 2  # docs/formats.md


class UtcTime(TypeDecorator[dt.datetime]):
    """A time that is always aware and always UTC, on engines that forget the zone as well."""

    impl = sa.DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: dt.datetime | None, dialect: Dialect) -> dt.datetime | None:
        """Refuse a time without a zone; turn any other into UTC."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a time without a zone cannot be kept")
        moment = value.astimezone(dt.UTC)
        return moment.replace(tzinfo=None) if dialect.name == "sqlite" else moment

    def process_result_value(
        self, value: dt.datetime | None, dialect: Dialect
    ) -> dt.datetime | None:
        """Give the time in UTC, aware."""
        del dialect
        if value is None:
            return None
        return value.replace(tzinfo=dt.UTC) if value.tzinfo is None else value.astimezone(dt.UTC)


META: Final = sa.MetaData()

RIGS: Final = sa.Table(
    "rigs",
    META,
    sa.Column("slug", sa.String(64), primary_key=True),
    sa.Column("name", sa.String(80), nullable=False),
    sa.Column("axle", sa.String(5), nullable=False),
    sa.Column("began", UtcTime, nullable=False),
)

TEXTS: Final = sa.Table(
    "texts",
    META,
    sa.Column("digest", sa.String(64), primary_key=True),
    sa.Column("text", sa.Text, nullable=False),
    sa.Column("kept", UtcTime, nullable=False),
)

ENTRIES: Final = sa.Table(
    "entries",
    META,
    sa.Column("number", sa.Integer, primary_key=True, autoincrement=True),
    sa.Column("rig", sa.String(64), sa.ForeignKey("rigs.slug"), nullable=False),
    sa.Column("kind", sa.String(16), nullable=False),
    sa.Column("path", sa.String(80), nullable=False),
    sa.Column("text", sa.Text, nullable=False),
    sa.Column("device", sa.String(64), nullable=False),
    sa.Column("key", sa.String(80)),
    sa.Column("at", UtcTime, nullable=False),
    sa.UniqueConstraint("rig", "key", name="entries_key_once"),
    sa.Index("entries_by_rig", "rig", "number"),
    sqlite_autoincrement=True,
)

VERSIONS: Final = sa.Table(
    "versions",
    META,
    sa.Column("entry", sa.Integer, sa.ForeignKey("entries.number"), primary_key=True),
    sa.Column("digest", sa.String(64), sa.ForeignKey("texts.digest"), nullable=False),
)

UPLOADS: Final = sa.Table(
    "uploads",
    META,
    sa.Column("digest", sa.String(64), primary_key=True),
    sa.Column("size", sa.Integer, nullable=False),
    sa.Column("name", sa.String(120), nullable=False),
    sa.Column("at", UtcTime, nullable=False),
)
