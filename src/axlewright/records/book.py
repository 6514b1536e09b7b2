"""The book of a rig: what was looked at, measured, driven, hit, mended and fitted, by day."""

import datetime as dt
import re
from collections.abc import Collection, Iterable
from dataclasses import fields
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.engine import Connection

from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.records.happening_tables import (
    BODIES,
    COMPONENTS,
    DETAILS,
    FITMENTS,
    HAPPENINGS,
    KIND_OF,
    PHOTOS,
)
from axlewright.records.schema import RIGS, UPLOADS
from axlewright.records.store import Store
from axlewright.rig import (
    COMPONENTS as COMPONENT_KINDS,
)
from axlewright.rig import Body, Component, Fitment, Fitted, Happening, Kept, TakenOff, Withdrawn

LONGEST_PLACE: Final = 80
_MOVES: Final = ("fitted", "taken off")


class Book:
    """What happened to the rigs of a store; safe to call from threads and from processes."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def enter(self, rig: str, happening: Happening, *, device: str = "", key: str = "") -> int:
        """Enter one happening; gives its number. With a ``key``, it is entered once."""
        now = dt.datetime.now(dt.UTC)
        kind = KIND_OF[type(happening.body)]
        with self._store.writes() as connection:
            if key and (before := self._of_key(connection, rig, key)):
                return before
            asked = sa.select(RIGS.c.slug).where(RIGS.c.slug == rig)
            if connection.execute(asked).scalar() is None:
                raise UnknownEntry(f"There is no rig {rig[:80]!r}.")
            if happening.replaces:
                self._may_replace(connection, rig, kind, happening.replaces)
            row = {
                "rig": rig,
                "kind": kind,
                "day": happening.on,
                "odometer": happening.odometer,
                "who": _plain(happening.who),
                "note": _plain(happening.note),
                "device": _plain(device)[:64],
                "key": key[:80] or None,
                "replaces": happening.replaces or None,
                "at": now,
            }
            done = connection.execute(HAPPENINGS.insert().values(row))
            number = int((done.inserted_primary_key or (0,))[0])
            connection.execute(
                DETAILS[kind].insert().values(happening=number, **_row(happening.body))
            )
            self._move(connection, rig, happening, number)
            for digest in dict.fromkeys(happening.photos):
                self._photo(connection, number, digest)
        return number

    def new_component(self, kind: str, name: str, mark: str = "") -> Component:
        """Give a part an identity of its own, which it keeps wherever it goes."""
        if kind not in COMPONENT_KINDS:
            raise UnknownEntry(
                f"There is no kind of part {kind[:40]!r}.",
                remedy=f"One of: {', '.join(COMPONENT_KINDS)}.",
            )
        stem = re.sub("[^a-z0-9]+", "-", kind)
        with self._store.writes() as connection:
            asked = sa.select(COMPONENTS.c.key).where(COMPONENTS.c.key.startswith(f"{stem}-"))
            taken = [int(row.key.rpartition("-")[2]) for row in connection.execute(asked)]
            part = Component(
                key=f"{stem}-{max(taken, default=0) + 1}",
                kind=kind,
                name=_plain(name),
                mark=_plain(mark),
            )
            now = dt.datetime.now(dt.UTC)
            connection.execute(COMPONENTS.insert().values(at=now, **_row(part)))
        return part

    def components(self) -> list[Component]:
        """Every part that has an identity."""
        columns = [COMPONENTS.c[field.name] for field in fields(Component)]
        with self._store.reads() as connection:
            found = connection.execute(sa.select(*columns).order_by(COMPONENTS.c.key))
            return [Component(**row) for row in found.mappings()]

    def component(self, key: str) -> Component:
        """One part by its key."""
        for part in self.components():
            if part.key == key:
                return part
        raise UnknownEntry(
            f"There is no part {key[:64]!r}.", remedy="See the list of parts, or begin it."
        )

    def fitments(self, *, rig: str = "", component: str = "") -> list[Fitment]:
        """Where parts were fitted, the earliest first; of one rig or of one part."""
        with self._store.reads() as connection:
            return _fitments(connection, rig=rig, component=component)

    def history(
        self,
        rig: str,
        kinds: Collection[str] = (),
        *,
        replaced: bool = False,
        latest: int | None = None,
    ) -> list[Kept]:
        """What happened to a rig, by day and then as entered.

        What was replaced or withdrawn is left out, unless ``replaced`` asks for it as well.
        ``latest`` gives so many of the last alone.
        """
        later = HAPPENINGS.alias("later")
        asked = (
            sa.select(HAPPENINGS, later.c.number.label("replaced"))
            .outerjoin(later, later.c.replaces == HAPPENINGS.c.number)
            .where(HAPPENINGS.c.rig == rig)
        )
        if kinds:
            asked = asked.where(HAPPENINGS.c.kind.in_(sorted(kinds)))
        if not replaced:
            asked = asked.where(later.c.number.is_(None), HAPPENINGS.c.kind != "withdrawn")
        asked = asked.order_by(HAPPENINGS.c.day.desc(), HAPPENINGS.c.number.desc())
        if latest is not None:
            asked = asked.limit(latest)
        with self._store.reads() as connection:
            rows = list(reversed(list(connection.execute(asked).mappings())))
            return list(_kept(connection, rows))

    def one(self, rig: str, number: int) -> Kept:
        """One happening of a rig by its number."""
        later = HAPPENINGS.alias("later")
        asked = (
            sa.select(HAPPENINGS, later.c.number.label("replaced"))
            .outerjoin(later, later.c.replaces == HAPPENINGS.c.number)
            .where(HAPPENINGS.c.rig == rig, HAPPENINGS.c.number == number)
        )
        with self._store.reads() as connection:
            for kept in _kept(connection, list(connection.execute(asked).mappings())):
                return kept
        raise UnknownEntry(f"There is no entry {number} about {rig[:80]!r}.")

    def _of_key(self, connection: Connection, rig: str, key: str) -> int:
        asked = sa.select(HAPPENINGS.c.number).where(
            HAPPENINGS.c.rig == rig, HAPPENINGS.c.key == key[:80]
        )
        return int(connection.execute(asked).scalar() or 0)

    def _may_replace(self, connection: Connection, rig: str, kind: str, number: int) -> None:
        asked = sa.select(HAPPENINGS.c.kind).where(
            HAPPENINGS.c.rig == rig, HAPPENINGS.c.number == number
        )
        before = connection.execute(asked).scalar()
        if before is None:
            raise UnknownEntry(f"There is no entry {number} about this rig to put right.")
        if before in _MOVES or (kind not in {before, KIND_OF[Withdrawn]}):
            raise AxlewrightError(
                f"Entry {number} is of the kind {before!r} and is not put right by {kind!r}.",
                remedy="Take the part off, or fit it again, as it was."
                if before in _MOVES
                else "Give one of the same kind, or withdraw it.",
            )
        asked = sa.select(HAPPENINGS.c.number).where(HAPPENINGS.c.replaces == number)
        if after := connection.execute(asked).scalar():
            raise AxlewrightError(
                f"Entry {number} was already put right by entry {after}.",
                remedy=f"Put entry {after} right instead.",
            )

    def _move(self, connection: Connection, rig: str, happening: Happening, number: int) -> None:
        body = happening.body
        if isinstance(body, Fitted):
            self._fit(connection, rig, body, happening.on, number)
        elif isinstance(body, TakenOff):
            held = _fitments(connection, rig=rig, component=body.component)
            open_one = next((each for each in held if not each.ended), None)
            if open_one is None:
                raise UnknownEntry(f"{body.component} is not on this rig.")
            _in_order(happening.on, open_one.since, "fitted")
            connection.execute(
                FITMENTS.update().where(FITMENTS.c.begun == open_one.begun).values(ended=number)
            )

    def _fit(
        self, connection: Connection, rig: str, body: Fitted, on: dt.date, number: int
    ) -> None:
        asked = sa.select(COMPONENTS.c.key).where(COMPONENTS.c.key == body.component)
        if connection.execute(asked).scalar() is None:
            raise UnknownEntry(
                f"There is no part {body.component[:64]!r}.", remedy="Begin it first."
            )
        place = _plain(body.place)[:LONGEST_PLACE]
        there = [each for each in _fitments(connection, rig=rig) if each.place == place]
        own = _fitments(connection, component=body.component)
        for each in own + there:
            if not each.ended:
                raise AxlewrightError(
                    f"{each.component} is at {each.place} of {each.rig} since {each.since}.",
                    remedy="Take it off first: a part is in one place, and a place holds one part.",
                )
            _in_order(on, each.until or on, "taken off")
        connection.execute(
            FITMENTS.insert().values(begun=number, component=body.component, rig=rig, place=place)
        )

    def _photo(self, connection: Connection, number: int, digest: str) -> None:
        known = sa.select(UPLOADS.c.digest).where(UPLOADS.c.digest == digest)
        if connection.execute(known).scalar() is None:
            raise UnknownEntry(f"No photo of the digest {digest[:64]!r} is kept.")
        connection.execute(PHOTOS.insert().values(happening=number, digest=digest))


def _fitments(connection: Connection, *, rig: str = "", component: str = "") -> list[Fitment]:
    begun, ended = HAPPENINGS.alias("b"), HAPPENINGS.alias("e")
    asked = (
        sa.select(
            FITMENTS.c.component,
            FITMENTS.c.rig,
            FITMENTS.c.place,
            FITMENTS.c.begun,
            begun.c.day.label("since"),
            begun.c.odometer.label("since_odometer"),
            sa.func.coalesce(FITMENTS.c.ended, 0).label("ended"),
            ended.c.day.label("until"),
            ended.c.odometer.label("until_odometer"),
        )
        .join(begun, begun.c.number == FITMENTS.c.begun)
        .outerjoin(ended, ended.c.number == FITMENTS.c.ended)
        .order_by(begun.c.day, FITMENTS.c.begun)
    )
    if rig:
        asked = asked.where(FITMENTS.c.rig == rig)
    if component:
        asked = asked.where(FITMENTS.c.component == component)
    return [Fitment(**row) for row in connection.execute(asked).mappings()]


def _kept(connection: Connection, rows: list[Any]) -> Iterable[Kept]:
    """Join the spine with the words of each kind and with the photos."""
    numbers = {row["number"]: row["kind"] for row in rows}
    bodies = dict(_bodies(connection, numbers))
    photos: dict[int, list[str]] = {}
    for digest, number in _parted(connection, PHOTOS.c.digest, PHOTOS.c.happening, numbers):
        photos.setdefault(number, []).append(digest)
    for row in rows:
        yield Kept(
            number=row["number"],
            rig=row["rig"],
            body=bodies[row["number"]],
            on=row["day"],
            odometer=row["odometer"],
            who=row["who"],
            note=row["note"],
            device=row["device"],
            at=row["at"],
            replaces=row["replaces"] or 0,
            replaced=row["replaced"] or 0,
            photos=tuple(sorted(photos.get(row["number"], ()))),
        )


def _bodies(connection: Connection, numbers: dict[int, str]) -> Iterable[tuple[int, Body]]:
    for kind in sorted(set(numbers.values())):
        table, body = DETAILS[kind], BODIES[kind]
        wanted = [number for number, one in numbers.items() if one == kind]
        for row in _rows(connection, table, wanted):
            said = dict(row)
            number = said.pop("happening")
            yield number, body(**said)


AT_ONCE: Final = 500  # numbers in one question; SQLite takes 32,766


def _rows(connection: Connection, table: sa.Table, numbers: list[int]) -> Iterable[Any]:
    for start in range(0, len(numbers), AT_ONCE):
        few = numbers[start : start + AT_ONCE]
        yield from connection.execute(sa.select(table).where(table.c.happening.in_(few))).mappings()


def _parted(
    connection: Connection, what: sa.Column[Any], by: sa.Column[Any], numbers: Collection[int]
) -> Iterable[Any]:
    every = list(numbers)
    for start in range(0, len(every), AT_ONCE):
        few = every[start : start + AT_ONCE]
        yield from connection.execute(sa.select(what, by).where(by.in_(few)))


def _row(words: Body | Component) -> dict[str, Any]:
    row = {field.name: getattr(words, field.name) for field in fields(words)}
    return {name: _plain(each) if isinstance(each, str) else each for name, each in row.items()}


def _plain(text: str) -> str:
    """Text that both engines take: without the one sign that PostgreSQL cannot hold."""
    return text.replace("\x00", " ")


def _in_order(on: dt.date, before: dt.date, what: str) -> None:
    if on < before:
        raise AxlewrightError(
            f"{on} lies before {before}, when it was {what}.", remedy="Give the days in order."
        )
