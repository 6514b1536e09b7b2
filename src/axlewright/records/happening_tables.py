"""Tables of what happens to a rig: one spine, and one table for each kind out of its words."""

import datetime as dt
import json
import typing
from dataclasses import fields
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator

from axlewright.records.schema import META, UtcTime
from axlewright.rig import (
    Body,
    Chapter,
    Fitted,
    Hit,
    Job,
    LookTaken,
    Noticed,
    OwnLimit,
    Reading,
    Remark,
    TakenOff,
    Trip,
    Withdrawn,
)


class Listing(TypeDecorator[tuple[Any, ...]]):
    """A short list, one level deep or two, as JSON text on every engine."""

    impl = sa.Text
    cache_ok = True

    def process_bind_param(self, value: tuple[Any, ...] | None, dialect: Dialect) -> str | None:
        """Write the list; a number that is not finite is refused."""
        del dialect
        if value is None:
            return None
        return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))

    def process_result_value(self, value: str | None, dialect: Dialect) -> tuple[Any, ...] | None:
        """Read the list back, frozen."""
        del dialect
        return None if value is None else frozen(json.loads(value))


def frozen(given: list[Any]) -> tuple[Any, ...]:
    """Give a list as a tuple, with tuples for the lists in it."""
    return tuple(tuple(each) if isinstance(each, list) else each for each in given)


HAPPENINGS: Final = sa.Table(
    "happenings",
    META,
    sa.Column("number", sa.Integer, primary_key=True, autoincrement=True),
    sa.Column("rig", sa.String(64), sa.ForeignKey("rigs.slug"), nullable=False),
    sa.Column("kind", sa.String(16), nullable=False),
    sa.Column("day", sa.Date, nullable=False),
    sa.Column("odometer", sa.Double),
    sa.Column("who", sa.Text, nullable=False),
    sa.Column("note", sa.Text, nullable=False),
    sa.Column("device", sa.String(64), nullable=False),
    sa.Column("key", sa.String(80)),
    sa.Column("replaces", sa.Integer, sa.ForeignKey("happenings.number")),
    sa.Column("at", UtcTime, nullable=False),
    sa.UniqueConstraint("rig", "key", name="happenings_key_once"),
    sa.UniqueConstraint("replaces", name="happenings_replaced_once"),
    sa.Index("happenings_by_rig", "rig", "day", "number"),
    sqlite_autoincrement=True,
)

COMPONENTS: Final = sa.Table(
    "components",
    META,
    sa.Column("key", sa.String(64), primary_key=True),
    sa.Column("kind", sa.String(32), nullable=False),
    sa.Column("name", sa.Text, nullable=False),
    sa.Column("mark", sa.Text, nullable=False),
    sa.Column("at", UtcTime, nullable=False),
)

_OPEN: Final = sa.text("ended IS NULL")
FITMENTS: Final = sa.Table(
    "fitments",
    META,
    sa.Column("begun", sa.Integer, sa.ForeignKey("happenings.number"), primary_key=True),
    sa.Column("component", sa.String(64), sa.ForeignKey("components.key"), nullable=False),
    sa.Column("rig", sa.String(64), sa.ForeignKey("rigs.slug"), nullable=False),
    sa.Column("place", sa.String(80), nullable=False),
    sa.Column("ended", sa.Integer, sa.ForeignKey("happenings.number")),
    sa.Index(
        "fitments_one_place",
        "component",
        unique=True,
        sqlite_where=_OPEN,
        postgresql_where=_OPEN,
    ),
    sa.Index(
        "fitments_one_part", "rig", "place", unique=True, sqlite_where=_OPEN, postgresql_where=_OPEN
    ),
)

PHOTOS: Final = sa.Table(
    "photos",
    META,
    sa.Column("happening", sa.Integer, sa.ForeignKey("happenings.number"), primary_key=True),
    sa.Column("digest", sa.String(64), sa.ForeignKey("uploads.digest"), primary_key=True),
)

_KINDS: Final[dict[str, tuple[type[Body], str]]] = {
    "look": (LookTaken, "looks"),
    "reading": (Reading, "readings"),
    "trip": (Trip, "trips"),
    "hit": (Hit, "hits"),
    "job": (Job, "jobs"),
    "limit": (OwnLimit, "own_limits"),
    "chapter": (Chapter, "chapters"),
    "noticed": (Noticed, "noticed"),
    "fitted": (Fitted, "fitted"),
    "taken off": (TakenOff, "taken_off"),
    "remark": (Remark, "remarks"),
    "withdrawn": (Withdrawn, "withdrawn"),
}
_TYPES: Final[dict[object, sa.types.TypeEngine[Any]]] = {
    str: sa.Text(),
    float: sa.Double(),
    int: sa.Integer(),
    dt.date: sa.Date(),
}


def _table(name: str, body: type[Body]) -> sa.Table:
    """A table with one column for each word of a kind of happening."""
    hints = typing.get_type_hints(body)
    columns = []
    for field in fields(body):
        hint = hints[field.name]
        inner = [each for each in typing.get_args(hint) if each is not type(None)]
        empty = type(None) in typing.get_args(hint)
        if typing.get_origin(hint) is tuple:
            kind: sa.types.TypeEngine[Any] = Listing()
        else:
            kind = _TYPES.get(inner[0] if empty else hint, _TYPES[str])  # a closed set of words
        columns.append(sa.Column(field.name, kind, nullable=empty))
    spine: sa.Column[int] = sa.Column(
        "happening", sa.ForeignKey("happenings.number"), primary_key=True
    )
    return sa.Table(name, META, spine, *columns)


DETAILS: Final = {kind: _table(name, body) for kind, (body, name) in _KINDS.items()}
BODIES: Final = {kind: body for kind, (body, _) in _KINDS.items()}
KIND_OF: Final = {body: kind for kind, body in BODIES.items()}
