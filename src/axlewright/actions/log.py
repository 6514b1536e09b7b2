"""The log of a rig: what was looked at, measured, driven, hit, mended and fitted, entered and told.

It works on the same store as the bay. A look that ends in STOP or fix before trip is listed among
the rig's conditions as well, so that every face tells it.
"""

import datetime as dt
import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Final

from axlewright import units
from axlewright.actions.bay_conditions import (
    add_condition,
    condition_before,
    listed_conditions,
    settle_condition,
)
from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import cleaned, slug_of
from axlewright.actions.draft import read_draft
from axlewright.actions.log_words import Photo, read_photos
from axlewright.actions.readings import objections_of
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.rig import (
    Body,
    Component,
    Condition,
    Finding,
    Fitment,
    Fitted,
    Happening,
    Job,
    Kept,
    LookTaken,
    Reading,
    Rig,
    TakenOff,
    Withdrawn,
    file_bytes,
    findings,
)
from axlewright.tables import (
    Procedure,
    ProcedureStep,
    intervals,
    procedure,
    procedure_steps,
)
from axlewright.upkeep import (
    Carried,
    Drive,
    Due,
    Outlived,
    Past,
    Sheet,
    WantedLook,
    against_order,
    broken,
    carried,
    driven,
    dues,
    ground_met,
    may_drive,
    off_centre_objections,
    open_looks,
    procedures_of,
    sheet,
    still_of,
    wanted_looks,
)

if TYPE_CHECKING:
    from axlewright.records import Store

LONGEST_NOTE: Final = 1000
_FROM_LOOK: Final = re.compile(r"look (\d+)\b")
UNFIT: Final = "not fit to drive"


class Log:
    """The log over one store; every method may be called from any thread."""

    def __init__(
        self, store: "Store", today: dt.date | None = None, desk: Desk | None = None
    ) -> None:
        from axlewright.records import Book

        self.store = store
        self.book = Book(store)
        self.desk = desk or Desk(store)
        self._today = today

    @classmethod
    def open(cls, folder: Path) -> "Log":
        """Open the log over the store of a folder; a new one is made where there is none."""
        from axlewright.records import Store

        return cls(Store.open(folder / "axlewright.sqlite"))

    def close(self) -> None:
        """Let go of the store."""
        self.store.close()

    @property
    def today(self) -> dt.date:
        """The day that is reckoned from."""
        return self._today or dt.datetime.now(dt.UTC).astimezone().date()

    # -- which rig -----------------------------------------------------------------------------

    def rig(self, name: str, device: str = "") -> str:
        """Slug of a rig by its name in the store, or by its file, which is taken in once."""
        if name.endswith(".toml"):
            text = file_bytes(name)
            draft = read_draft(text, name)
            slug = slug_of(draft.name, draft.axle)
            if self.store.last(slug):
                return slug
            from axlewright.records import New

            file = New(kind="file", content=text.decode("utf-8-sig"))
            return self.store.begin(slug, draft.name, draft.axle, [file], device=device)
        if self.store.last(name):
            return name
        known = [row.slug for row in self.store.rigs()]
        raise UnknownEntry(
            f"There is no rig {name[:80]!r} in this store.",
            remedy=f"Known are {', '.join(known[:8])}." if known else "Give a rig file first.",
        )

    def axle(self, slug: str) -> str:
        """Front or rear."""
        return self.desk.standing(slug).draft.axle

    def words(self, slug: str) -> Mapping[str, str]:
        """Words of the rig as far as they are answered."""
        return self.desk.standing(slug).draft.words()

    # -- entering ------------------------------------------------------------------------------

    def enter(
        self,
        slug: str,
        body: Body,
        *,
        on: dt.date | None = None,
        odometer: str = "",
        who: str = "",
        note: str = "",
        replaces: int = 0,
        photos: Sequence[Photo] = (),
        device: str = "",
        key: str = "",
    ) -> int:
        """Enter one happening; gives its number. What cannot be is refused with its reason."""
        day = on or self.today
        if day > self.today:
            raise AxlewrightError(f"{day} lies ahead.", remedy="When was it seen or done?")
        metres = self.odometer_reads(slug, odometer, day)
        digests = [self.store.keep_upload(data, name) for data, name in read_photos(photos)]
        happening = Happening(
            body=body,
            on=day,
            odometer=metres,
            who=cleaned(who),
            note=cleaned(note)[:LONGEST_NOTE],
            replaces=replaces,
            photos=tuple(digests),
        )
        return self.book.enter(slug, happening, device=device, key=key)

    def odometer_reads(self, slug: str, odometer: str, day: dt.date | None = None) -> float | None:
        """Odometer in metres as it was said for a day; refused where it would run backwards."""
        read = units.parse(odometer, "distance") if odometer.strip() else None
        metres = None if read is None or read.dont_know else read.value
        if metres is not None:
            self._odometer_fits(slug, day or self.today, metres)
        return metres

    def _odometer_fits(self, slug: str, day: dt.date, metres: float) -> None:
        for kept in self.book.history(slug):
            if kept.odometer is None:
                continue
            if (kept.on < day and kept.odometer > metres) or (
                kept.on > day and kept.odometer < metres
            ):
                told = units.show(kept.odometer, "distance")
                raise AxlewrightError(
                    f"On {kept.on} the odometer stood at {told}: it does not run backwards.",
                    remedy="Look at the figure and the day again; kilometres or miles?",
                )

    def look(self, slug: str, look: LookTaken, **more: object) -> int:
        """Enter a look and how it ended; a STOP or a fix is listed among the conditions too."""
        words = self.words(slug)
        wanted = {
            each.key: each
            for occasion in ("before_trip", "after_trip", "after_hit", "apart", "buying")
            for each in wanted_looks(occasion, self.axle(slug), words, ground_met({}))
        }
        if look.occasion != "shimmy":
            if look.look not in wanted:
                raise UnknownEntry(
                    f"There is no look {look.look[:40]!r} for this axle.",
                    remedy=f"One of: {', '.join(wanted)}.",
                )
            known = wanted[look.look]
            look = replace(look, occasion=known.occasion, part=look.part or known.part)
        bad = look.state in {"stop", "fix before trip"}
        number = self.enter(slug, look, **more)  # type: ignore[arg-type]
        if bad:
            self._list_condition(slug, look, number)
        self._settle_closed(slug)
        return number

    def _list_condition(self, slug: str, look: LookTaken, number: int) -> None:
        what = look.found or ("never looked at" if look.state != "stop" else UNFIT)
        said = {
            "part": look.part or look.look,
            "what": what,
            "where": look.side,
            "date": "",
            "note": f"look {number}: {look.state}",
        }
        draft = self.desk.standing(slug).draft
        before = len(draft.conditions)
        add_condition(self.desk, slug, said, "", f"look-{number}")
        found = self.desk.standing(slug).draft
        if look.state == "stop" and len(found.conditions) > before:
            last = found.conditions[-1]
            judged = findings(_with_conditions(found.condition_rig(), (last,)))
            if not any(each.state == "stop" for each in judged):
                said |= {"what": UNFIT}
                add_condition(self.desk, slug, said, "", f"look-{number}-stop")

    def _settle_closed(self, slug: str) -> None:
        """Take off the list what a look put on it and work and a later look have closed."""
        still = {kept.number for kept, _ in open_looks(self.book.history(slug))}
        for listed in listed_conditions(self.desk.standing(slug)):
            found = _FROM_LOOK.match(listed.condition.note)
            if found and int(found[1]) not in still:
                key, then = f"settled-{listed.key}", condition_before(self.desk, slug)
                settle_condition(self.desk, slug, listed.key, "", key, then)

    def work(self, slug: str, job: Job, **more: object) -> int:
        """Enter work that was done; what it settles is a look of this rig."""
        if job.settles and not isinstance(self.book.one(slug, job.settles).body, LookTaken):
            raise AxlewrightError(
                f"Entry {job.settles} is no look.", remedy="Give the number of the look it answers."
            )
        return self.enter(slug, job, **more)  # type: ignore[arg-type]

    def withdraw(self, slug: str, number: int, reason: str, who: str = "") -> int:
        """Enter that an earlier entry does not hold; it stays on record."""
        body = Withdrawn(reason=cleaned(reason))
        if not body.reason:
            raise AxlewrightError("Why does it not hold?", remedy="Give a reason.")
        done = self.enter(slug, body, replaces=number, who=who)
        self._settle_closed(slug)
        return done

    def fit(self, slug: str, component: str, place: str, **more: object) -> int:
        """Enter that a part was put in a place."""
        body = Fitted(component=component, place=cleaned(place))
        return self.enter(slug, body, **more)  # type: ignore[arg-type]

    def take_off(self, slug: str, component: str, reason: str = "", **more: object) -> int:
        """Enter that a part was taken out."""
        body = TakenOff(component=component, reason=cleaned(reason))
        return self.enter(slug, body, **more)  # type: ignore[arg-type]

    # -- telling -------------------------------------------------------------------------------

    def history(
        self,
        slug: str,
        kinds: Collection[str] = (),
        *,
        replaced: bool = False,
        latest: int | None = None,
    ) -> list[Kept]:
        """What happened to a rig, by day; without what was replaced unless it is asked for."""
        return self.book.history(slug, kinds, replaced=replaced, latest=latest)

    def wanted(self, slug: str, occasion: str) -> tuple[WantedLook, ...]:
        """Looks of a list for a rig, the gravest consequence first."""
        return wanted_looks(occasion, self.axle(slug), self.words(slug), self.met(slug))

    def met(self, slug: str) -> frozenset[str]:
        """Ground that a rig meets, which asks for looks of its own."""
        return ground_met(self.words(slug), self.history(slug, ["trip"]), self.today)

    def readings(self, slug: str) -> tuple[list[Kept], tuple[Outlived, ...]]:
        """Readings that still count, and those whose part was replaced since."""
        still, gone = still_of(self.history(slug, ["reading", "fitted", "taken off", "job"]))
        return [kept for kept in still if isinstance(kept.body, Reading)], gone

    def photo(self, slug: str, digest: str) -> tuple[bytes, str]:
        """Give one photo of a rig's book with its media type."""
        from axlewright.records import photo_type

        if not any(digest in each.photos for each in self.history(slug, replaced=True)):
            raise UnknownEntry("There is no such photo in this rig's book.")
        data = self.store.upload(digest)
        return data, photo_type(data)

    def drive(self, slug: str, *, beside_the_track: bool = False) -> Drive:
        """May I drive: from dated looks, what was found, and readings that speak against it."""
        history = self.history(slug)
        read = [each.odometer for each in history if each.odometer is not None]
        return may_drive(
            history,
            self._findings(slug),
            self.axle(slug),
            self.words(slug),
            self.today,
            (*objections_of(history), *off_centre_objections(history)),
            max(read, default=None),
            beside_the_track=beside_the_track,
        )

    def _findings(self, slug: str) -> tuple[Finding, ...]:
        """Findings of the conditions, but for what the book itself tells: looks by their days."""
        rig = self.desk.standing(slug).draft.condition_rig()
        own = tuple(each for each in rig.conditions if not _FROM_LOOK.match(each.note))
        found = findings(_with_conditions(rig, own))
        return tuple(each for each in found if each.part != "the axle")

    def due(self, slug: str) -> tuple[Due, ...]:
        """What comes due, the most pressing first."""
        return dues(self.history(slug), self.axle(slug), self.today)

    def sheet(self, slug: str) -> Sheet:
        """How the sheet after a shake stands."""
        return sheet(self.history(slug))

    def procedures(self, slug: str) -> tuple[Procedure, ...]:
        """Every guided reading of a rig."""
        return procedures_of(self.axle(slug))

    def procedure(self, key: str) -> tuple[Procedure, tuple[ProcedureStep, ...]]:
        """One guided reading with its steps."""
        asked = procedure(key)
        steps = (each for each in procedure_steps().values() if each.procedure == key)
        return asked, tuple(sorted(steps, key=lambda each: each.step))

    def interval(self, key: str) -> str:
        """Name of a standing job, or of work that begins one; empty stays empty."""
        known = set(intervals()) | {each.begins for each in intervals().values()} - {"", "water"}
        if key and key not in known:
            raise UnknownEntry(
                f"There is no standing job {key[:40]!r}.",
                remedy=f"One of: {', '.join(sorted(known))}.",
            )
        return key

    def past(self, slug: str) -> Past:
        """How far a rig has gone, and what broke beside the order of one bad moment."""
        from axlewright.strength import assess_rig

        history = self.history(slug)
        rig = self.desk.rig(slug)
        broke = broken(history, self.desk.standing(slug).draft.conditions)
        found = None if rig is None else assess_rig(rig, draws=200)
        order = () if found is None else tuple(place.part for place in found.order)
        wearing = () if found is None else tuple(place.part for place in found.wearing)
        return Past(
            driven=driven(history),
            broke=broke,
            ranks=against_order(broke, order) if order else (),
            wears=against_order(broke, wearing) if wearing else (),
            judged=rig is not None,
        )

    def broke(self, slug: str) -> tuple[str, ...]:
        """What broke in the chapters of the past, each once."""
        return broken(self.history(slug, ["chapter"]), ())

    def parts(self, slug: str = "") -> list[tuple[Component, list[Fitment], Carried]]:
        """Every part, where it was, and what it went through; of one rig alone if it is given."""
        told = []
        for part in self.book.components():
            where = self.book.fitments(component=part.key)
            if slug and slug not in {each.rig for each in where}:
                continue
            every = [
                kept
                for rig in dict.fromkeys(each.rig for each in where)
                for kept in self.history(rig, ["trip", "hit"])
            ]
            told.append((part, where, carried(where, every)))
        return told


def _with_conditions(rig: Rig, conditions: tuple[Condition, ...]) -> Rig:
    return replace(rig, conditions=conditions)
