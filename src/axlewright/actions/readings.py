"""Taking a reading: echoed in words, held against what can be, kept, and judged."""

from collections.abc import Callable, Sequence
from math import sqrt
from typing import Final, Protocol

from axlewright import units
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.rig import Kept, OwnLimit, Reading
from axlewright.tables import Procedure, instrument, procedure, procedures
from axlewright.upkeep import (
    SPOKE,
    Objection,
    PastReading,
    ReadingTaken,
    contradicted,
    judged_again,
    limits_for,
    objections,
    still_of,
    verdict,
    worth,
)

AT: Final = "at "  # before the radius of a pull, among the texts of a reading
NINETY: Final = 1.645  # a "±" in a garage is taken as a 90 % band, as in the rig file


class Entering(Protocol):
    """Where a reading is entered and earlier ones are found: the log."""

    @property
    def history(self) -> Callable[..., list[Kept]]:
        """What happened to a rig, of some kinds alone."""

    @property
    def enter(self) -> Callable[..., int]:
        """Enter one happening; gives its number."""


def take_reading(
    log: Entering,
    slug: str,
    quantity: str,
    texts: Sequence[str],
    *,
    side: str = "",
    with_: str = "",
    bearing: str = "not said",
    load_state: str = "",
    conditions: str = "",
    slope: str = "",
    radius: str = "",
    component: str = "",
    sure: bool = False,
    **more: object,
) -> ReadingTaken:
    """Take repeated readings of one quantity as texts with units.

    ``slope`` of the floor or frame is taken off an angle, its doubt is added. ``radius`` turns a
    pull on a string into a torque. ``sure`` keeps what looks mixed up.
    """
    asked = procedure(quantity)
    tool = instrument(with_ or asked.instruments[0])
    if tool.key not in asked.instruments:
        raise AxlewrightError(
            f"{asked.title} is not read with {tool.label}.",
            remedy=f"One of: {', '.join(asked.instruments)}.",
        )
    _side(asked, side)
    if not texts:
        raise AxlewrightError("There is no value.", remedy="Give one or more, with their unit.")
    values, extra, unit = _values(asked, texts, radius)
    correction = 0.0
    if slope:
        if asked.kind != "angle":
            raise AxlewrightError("A slope is taken off an angle alone.", remedy="Leave it out.")
        correction = -units.parse(slope, "angle").value
        extra = sqrt(extra**2 + worth([0.0], tool, asked).standard ** 2)
    corrected = [each + correction for each in values]
    known = worth(corrected, tool, asked, extra)
    reading = Reading(
        quantity=asked.key,
        value=known.mean,
        kind=asked.kind,
        unit=unit,
        given=" | ".join([*texts, *([f"{AT}{radius}"] if radius else [])]),
        standard=known.standard,
        freedom=known.freedom if known.freedom < 1e6 else None,
        side=side,
        instrument=tool.key,
        repeats=tuple(corrected),
        load_state=load_state,
        bearing=bearing,
        conditions=conditions,
        corrected=correction,
        procedure=asked.key,
        component=component,
    )
    history = log.history(slug, ["reading", "limit", "fitted", "taken off", "job"])
    earlier = [
        kept.body
        for kept in still_of(history)[0]
        if isinstance(kept.body, Reading) and kept.body.quantity == asked.key
    ]
    doubts = contradicted(reading, asked, earlier, units.known(asked.kind))
    number = 0
    if not doubts or sure:
        number = log.enter(slug, reading, **more)
    judged = tuple(
        verdict(corrected, tool, asked, shown, extra)
        for shown in limits_for(asked, own_limits(history))
    )
    return ReadingTaken(
        number=number,
        reading=reading,
        procedure=asked,
        worth=known,
        echo=_echo(asked, reading),
        doubts=doubts,
        judged=judged,
        objections=objections(asked, side, judged, known.mean),
    )


def told_again(log: Entering, slug: str, number: int) -> ReadingTaken:
    """Give a kept reading as it was told when it was taken, with its limits of today."""
    history = log.history(slug, ["reading", "limit"])
    kept = next((each for each in history if each.number == number), None)
    if kept is None or not isinstance(kept.body, Reading):
        raise UnknownEntry(
            f"Entry {number} is no reading that holds.", remedy="Open the page of readings again."
        )
    reading, asked = kept.body, procedure(kept.body.procedure)
    known, judged = judged_again(reading, asked, own_limits(history))
    return ReadingTaken(
        number=number,
        reading=reading,
        procedure=asked,
        worth=known,
        echo=_echo(asked, reading),
        doubts=(),
        judged=judged,
        objections=objections(asked, reading.side, judged, known.mean),
    )


def past_readings(history: Sequence[Kept], quantity: str = "") -> tuple[PastReading, ...]:
    """Give guided readings of the past (of one quantity, or of all), the latest first."""
    mine = own_limits(history)
    gone = {each.reading.number: each for each in still_of(history)[1]}
    found = []
    for kept in history:
        if not isinstance(kept.body, Reading) or kept.body.quantity not in procedures():
            continue
        if quantity and kept.body.quantity != quantity:
            continue
        asked = procedure(kept.body.quantity)
        known, judged = judged_again(kept.body, asked, mine)
        found.append(
            PastReading(
                kept=kept,
                reading=kept.body,
                worth=known,
                judged=judged,
                outlived=gone.get(kept.number),
            )
        )
    return tuple(sorted(found, key=lambda one: (one.kept.on, one.kept.number), reverse=True))


def own_limits(history: Sequence[Kept]) -> tuple[OwnLimit, ...]:
    """Limits that the person gave for this rig, the latest of each."""
    latest = {kept.body.limit: kept.body for kept in history if isinstance(kept.body, OwnLimit)}
    return tuple(latest.values())


def objections_of(history: Sequence[Kept]) -> tuple[Objection, ...]:
    """What the latest reading of each quantity and side says against driving.

    A reading on a part that was replaced no longer counts; where it spoke against driving, what is
    there now has to be read.
    """
    still, gone = still_of(history)
    now = _against(history, still)
    known = {each.what for each in now}
    read_again = [
        Objection(
            state="not looked at",
            what=f"{old.what}, read on {each.reading.on}",
            why=f"{SPOKE}, and {each.why}",
            do="Read it again, and look at the new part itself.",
        )
        for each in gone
        for old in _against(history, [each.reading])
        if old.what not in known and not _read_since(each.reading, still)
    ]
    return (*now, *read_again)


def _read_since(old: Kept, still: Sequence[Kept]) -> bool:
    was = old.body
    return isinstance(was, Reading) and any(
        isinstance(each.body, Reading)
        and (each.body.quantity, each.body.side) == (was.quantity, was.side)
        and each.order > old.order
        for each in still
    )


def _against(history: Sequence[Kept], readings: Sequence[Kept]) -> tuple[Objection, ...]:
    latest: dict[tuple[str, str], Reading] = {}
    for kept in readings:
        if isinstance(kept.body, Reading) and kept.body.quantity in procedures():
            latest[kept.body.quantity, kept.body.side] = kept.body
    found: list[Objection] = []
    mine = own_limits(history)
    for (quantity, side), reading in latest.items():
        asked = procedure(quantity)
        known, judged = judged_again(reading, asked, mine)
        found += objections(asked, side, judged, known.mean)
    return tuple(found)


def own_limit(limit: str, low: str, high: str, printed: str) -> OwnLimit:
    """Give a limit of the rig's own manual, which stands before every other."""
    asked = next(
        (each for each in procedures().values() if limit in {each.key, *each.limits}), None
    )
    if asked is None:
        raise AxlewrightError(
            f"There is no limit {limit[:40]!r}.", remedy=f"One of: {', '.join(procedures())}."
        )
    ends = [units.parse(text, asked.kind).value if text else None for text in (low, high)]
    if all(each is None for each in ends):
        raise AxlewrightError("A limit has an end.", remedy="Give --low, --high or both.")
    if ends[0] is not None and ends[1] is not None and ends[0] >= ends[1]:
        raise AxlewrightError("The limit runs backwards.", remedy="Give the smaller as --low.")
    if not printed.strip():
        raise AxlewrightError(
            "Where is it printed?", remedy="Give manual and page with --printed: it is shown."
        )
    given = " to ".join(text for text in (low, high) if text)
    return OwnLimit(
        limit=limit, low=ends[0], high=ends[1], kind=asked.kind, given=given, printed=printed
    )


def _side(asked: Procedure, side: str) -> None:
    if side not in asked.sides:
        sides = [each or "none" for each in asked.sides]
        raise AxlewrightError(
            f"{asked.title}: {'which side?' if not side else f'not {side!r}.'}",
            remedy=f"The vehicle's own side, one of: {', '.join(sides)}.",
        )


def _values(asked: Procedure, texts: Sequence[str], radius: str) -> tuple[list[float], float, str]:
    """Values in SI, the doubt that was given with them, and the unit."""
    if radius and asked.kind != "torque":
        raise AxlewrightError("A radius turns a pull into a torque.", remedy="Leave it out.")
    arm = units.parse(radius, "length").value if radius else 1.0
    values, doubts, unit = [], [0.0], ""
    for text in texts:
        parsed = units.parse(text, "force" if radius else asked.kind)
        if parsed.dont_know:
            raise AxlewrightError("A reading is a number.", remedy="Leave it out until it is read.")
        values.append(parsed.value * arm)
        unit = parsed.unit
        if parsed.uncertainty is not None:
            doubts.append(parsed.uncertainty * arm / NINETY)
        if parsed.band is not None:
            doubts.append((parsed.band[1] - parsed.band[0]) * arm / 2 / NINETY)
    return values, max(doubts), unit


def _echo(asked: Procedure, reading: Reading) -> str:
    """Say in words what was understood, with unit and side, before any verdict."""
    texts = reading.given.split(" | ")
    radius = texts.pop().removeprefix(AT) if texts[-1].startswith(AT) else ""
    where = f"the vehicle's own {reading.side}, " if reading.side else ""
    said = [units.echo(units.parse(text, "force" if radius else asked.kind)) for text in texts]
    told = f"{where}{asked.title}: {'; '.join(said)}"
    if radius:
        torque = units.show(reading.value, "torque")
        told += f"; pulled at {units.echo(units.parse(radius, 'length'))}: {torque}"
    if reading.corrected:
        told += f"; less the slope of {units.show(-reading.corrected, 'angle', digits=2)}"
    if asked.asks_bearing:
        told += f"; bearing play {reading.bearing}"
    return f"{told}. Here {asked.sign}."
