"""`axlewright log …`: the record of a rig, entered and told; on the same store as the bay."""

import json
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, Literal

from cyclopts import App, Parameter

from axlewright.cli.options import STOPPED, Json, Units
from axlewright.cli.serve import usual_folder

if TYPE_CHECKING:
    from axlewright.actions import Log
    from axlewright.upkeep import Drive

PUT_RIGHT = 2
Side = Literal["left", "right", "both", "centre"]

app = App(
    name="log",
    help_format="markdown",
    help="The record of a rig: looks, readings, trips, hits, work and parts; what is due, and "
    "whether it may be driven. RIG is its name in the store, or its file.",
)


@Parameter(name="*")
@dataclass(frozen=True, kw_only=True)
class Where:
    """Which store, and how to answer.

    Parameters
    ----------
    store
        Folder that keeps what is said; the same as the bay's.
    json_
        Write JSON, in SI.
    units
        The reader's units.
    """

    store: Path | None = None
    json_: Json = False
    units: Units = "metric"


@Parameter(name="*")
@dataclass(frozen=True, kw_only=True)
class Entry(Where):
    """What goes with every entry.

    Parameters
    ----------
    on
        The day, year-month-day; today where it is left out.
    odometer
        As read, with its unit.
    who
        Who says so.
    note
        In your own words.
    photo
        A photo to keep with it; may be given again.
    replaces
        Number of an earlier entry that this one puts right.
    """

    on: str | None = None
    odometer: str = ""
    who: str = ""
    note: str = ""
    photo: Annotated[list[Path], Parameter(negative="")] = field(default_factory=list)
    replaces: int = 0

    def said(self) -> dict[str, Any]:
        """Words of the entry as the action takes them."""
        from axlewright.actions import day_of

        return {
            "on": day_of(self.on or ""),
            "odometer": self.odometer,
            "who": self.who,
            "note": self.note,
            "photos": self.photo,
            "replaces": self.replaces,
        }


NOWHERE, NOTHING = Where(), Entry()


@contextmanager
def _opened(where: Where) -> Iterator["Log"]:
    from axlewright.actions import Log

    log = Log.open(where.store or usual_folder())
    try:
        yield log
    finally:
        log.close()


def _tell(where: Where, answer: str, thing: object, lines: Sequence[str]) -> None:
    """Tell an answer: as JSON under its name, or in lines."""
    from axlewright.views import log_json

    if where.json_:
        made = log_json(answer, thing)
        told = json.dumps(made, indent=2, ensure_ascii=False, allow_nan=False)
        sys.stdout.write(f"{told}\n")
    else:
        sys.stdout.write("\n".join(lines) + "\n")


def _entered(
    log: "Log",
    slug: str,
    number: int,
    entry: Entry,
    more: Sequence[str] = (),
    off_centre: Mapping[str, object] | None = None,
) -> int:
    """Tell what was entered, and what says now: do not drive."""
    from axlewright.views import EntryTold, history_lines

    kept = log.book.one(slug, number)
    drive = log.drive(slug)
    stops = _stops(drive)
    lines = [*stops, "Entered:", *history_lines([kept], entry.units)]
    told = EntryTold(rig=slug, entry=kept, drive=drive, off_centre=off_centre)
    _tell(entry, "entered", told, [*lines, *more])
    return STOPPED if stops else 0


def _stops(drive: "Drive") -> list[str]:
    """Every STOP that is open: it stands before whatever else is told."""
    return [
        f"STOP: {each.what}: {each.why}. {each.do}"
        for each in drive.reasons
        if each.state == "stop"
    ]


@app.command
def look(
    rig: str,
    key: str | None = None,
    ends: str | None = None,
    *,
    list_: Annotated[
        Literal["before_trip", "after_trip", "after_hit", "apart", "buying"] | None,
        Parameter(name="--list"),
    ] = None,
    side: Side | None = None,
    part: str = "",
    found: str = "",
    until: str | None = None,
    within: str = "",
    trips: int | None = None,
    entry: Entry = NOTHING,
) -> int:
    """Enter a look and how it ended, or show a list of looks with --list.

    Parameters
    ----------
    key
        Which look, as the list names it.
    ends
        How it ended: go, watch, fix or stop; "cannot tell" counts as fix.
    list_
        Show the looks of an occasion.
    side
        The vehicle's own side.
    part
        The part it was found at, where it is not the list's own.
    found
        What was found, one of the words of a rig's condition.
    until
        To be watched until this day.
    within
        To be watched within this distance.
    trips
        To be watched for so many trips.
    """
    from axlewright import units
    from axlewright.actions import day_of, found_of, state_of
    from axlewright.rig import LookTaken
    from axlewright.views import wanted_look_lines

    with _opened(entry) as log:
        slug = log.rig(rig)
        if key is None or ends is None:
            looks = log.wanted(slug, list_ or "before_trip")
            stops = _stops(log.drive(slug))
            _tell(entry, "looks", looks, [*stops, *wanted_look_lines(looks, entry.units)])
            return STOPPED if stops else 0
        taken = LookTaken(
            occasion="shimmy" if key.startswith("shimmy.") else "",
            look=key.removeprefix("shimmy."),
            state=state_of(ends),
            part=part,
            side=side or "",
            found=found_of(found),
            until=day_of(until or ""),
            until_distance=units.parse(within, "distance").value if within else None,
            until_trips=trips,
        )
        return _entered(log, slug, log.look(slug, taken, **entry.said()), entry)


@app.command
def reading(
    rig: str,
    quantity: str | None = None,
    *values: Annotated[str, Parameter(allow_leading_hyphen=True)],
    side: Side | None = None,
    with_: Annotated[str, Parameter(name="--with")] = "",
    bearing: Literal["not said", "taken up", "not taken up"] = "not said",
    load: str = "",
    conditions: str = "",
    slope: str = "",
    radius: str = "",
    part: str = "",
    sure: Annotated[bool, Parameter(negative="")] = False,
    entry: Entry = NOTHING,
) -> int:
    """Enter a reading, its repeats one after another; without values, how it is taken.

    Parameters
    ----------
    quantity
        What was read; without it, the list.
    values
        Each with its unit.
    side
        The vehicle's own side.
    with_
        What it was read with.
    bearing
        Whether a bearing's play was taken up.
    load
        How the vehicle was loaded.
    conditions
        Floor, temperature, anything that matters.
    slope
        Slope of the floor or frame, taken off an angle.
    radius
        Radius on which a pull was read, for a torque.
    part
        Key of the part that it was read on.
    sure
        Keep it although it looks mixed up.
    """
    from axlewright.actions import take_reading
    from axlewright.views import (
        ProcedureTold,
        procedure_lines,
        procedure_list_lines,
        reading_lines,
    )

    with _opened(entry) as log:
        slug = log.rig(rig)
        if quantity is None:
            every = log.procedures(slug)
            _tell(entry, "procedures", every, procedure_list_lines(every))
            return 0
        if not values:
            asked, steps = log.procedure(quantity)
            told = ProcedureTold(procedure=asked, steps=steps)
            _tell(entry, "procedure", told, procedure_lines(asked, steps, entry.units))
            return 0
        taken = take_reading(
            log,
            slug,
            quantity,
            values,
            side=side or "",
            with_=with_,
            bearing=bearing,
            load_state=load,
            conditions=conditions,
            slope=slope,
            radius=radius,
            component=part,
            sure=sure,
            **entry.said(),
        )
        stops = _stops(log.drive(slug))
        _tell(entry, "reading", taken, [*stops, *reading_lines(taken, entry.units)])
        if not taken.number:
            return PUT_RIGHT
        return STOPPED if stops else 0


@app.command
def trip(
    rig: str,
    name: str,
    distance: str,
    *,
    ground: Annotated[list[str] | None, Parameter(negative="")] = None,
    hours: float | None = None,
    load: str = "",
    pressure: str = "",
    water: str = "",
    entry: Entry = NOTHING,
) -> int:
    """Enter a trip and how far it was.

    Parameters
    ----------
    ground
        A ground and the distance on it, as in rocks_and_ledges=12km; may be given again.
    hours
        How long.
    load
        How it was loaded.
    pressure
        Of the tyres.
    water
        How deep, where it went through any.
    """
    from axlewright import units
    from axlewright.actions import grounds_of
    from axlewright.rig import Trip

    with _opened(entry) as log:
        slug = log.rig(rig)
        body = Trip(
            name=name,
            distance=units.parse(distance, "distance").value,
            duration=None if hours is None else 3600.0 * hours,
            grounds=grounds_of(ground or []),
            load_state=load,
            pressure=units.parse(pressure, "pressure").value if pressure else None,
            water=units.parse(water, "length").value if water else None,
        )
        return _entered(log, slug, log.enter(slug, body, **entry.said()), entry)


@app.command
def hit(
    rig: str,
    what: str,
    *,
    side: Side | None = None,
    speed: str = "",
    rod: str = "",
    bow: str = "",
    length: str = "",
    off: str = "",
    ratio: str = "",
    entry: Entry = NOTHING,
) -> int:
    """Enter something that was hit, weigh a bowed rod, and show the five looks that it asks for.

    Parameters
    ----------
    side
        The vehicle's own side.
    speed
        How fast, about.
    rod
        What is bowed or moved: tie rod, drag link, track bar, lower arm, one wheel further back.
    bow
        How far it is bowed, or one wheel further back.
    length
        Of the rod, eye to eye; as given or assumed where it is left out.
    off
        How far the steering wheel is off centre, from memory; nobody drives to find out.
    ratio
        Of the steering.
    """
    from axlewright import units
    from axlewright.actions import off_centre_from, weigh_off_centre
    from axlewright.rig import Hit
    from axlewright.views import hit_lines, off_centre_json

    with _opened(entry) as log:
        slug = log.rig(rig)
        fast = units.parse(speed, "speed").value if speed else None
        said = {"rod": rod, "bow": bow, "length": length, "off": off, "ratio": ratio}
        told = weigh_off_centre(log, slug, said, entry.units) if any(said.values()) else None
        body = Hit(what=what, side=side or "", speed=fast)
        number = log.enter(slug, body, **entry.said())
        if told is not None:
            when = {name: entry.said()[name] for name in ("on", "who")}
            off_centre_from(log, slug, said, **when, system=entry.units)
        sum_ = None if told is None else off_centre_json(told)
        lines = hit_lines(told, log.wanted(slug, "after_hit"), log.axle(slug), entry.units)
        return _entered(log, slug, number, entry, lines, sum_)
