"""Guided readings as pages show them: the list, one procedure, a verdict, readings of the past."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import isinf
from typing import Final

from axlewright import units
from axlewright.tables import Procedure, instrument
from axlewright.upkeep import LimitShown, PastReading, ReadingTaken, Verdict, Worth
from axlewright.views.log import limit_words
from axlewright.views.phrases import to_doubt

GROUPS: Final[Mapping[str, str]] = {
    "play": "Is anything loose?",
    "bent": "Is it straight?",
    "set": "Does it stand as it should?",
    "drive": "How does the driveline run?",
    "round": "Does it run true?",
    "gears": "Ring and pinion, with the cover off",
}
LINE: Final = (0.0, 100.0)  # ends of the little line that shows a reading against its limits


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureRow:
    """One guided reading in the list: what it is called, and what was last read."""

    key: str
    title: str
    last: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureGroup:
    """Guided readings that answer one question."""

    said: str
    rows: tuple[MeasureRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class VerdictWords:
    """One verdict: its state, the limit with scope and source, what settles it, what follows."""

    state: str
    limit: str
    printed: str
    chance: str
    settles: str
    follows: str
    own: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenWords:
    """What became of a reading, in the order in which it is told: echo, value, verdicts."""

    number: int
    echo: str
    value: str
    verdicts: tuple[VerdictWords, ...]
    stops: tuple[str, ...]
    doubts: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PastRow:
    """One reading of the past; ``low`` to ``high`` are places on its little line, 0 to 100."""

    number: int
    day: str
    side: str
    value: str
    band: str
    how: str
    state: str
    overtaken: str
    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PastList:
    """Readings of one quantity, the latest first, on one scale with the limits on it."""

    rows: tuple[PastRow, ...]
    scale: tuple[str, str]
    limits: tuple[float, ...]


def measure_groups(
    procedures: Sequence[Procedure], past: Sequence[PastReading], system: str
) -> tuple[MeasureGroup, ...]:
    """Every guided reading of an axle by the question that it answers."""
    last: dict[str, dict[str, PastReading]] = {}
    for each in past:  # the latest first
        last.setdefault(each.reading.quantity, {}).setdefault(each.reading.side, each)
    return tuple(
        MeasureGroup(
            said=said,
            rows=tuple(
                MeasureRow(
                    key=each.key,
                    title=each.title,
                    last=tuple(_last(one, each, system) for one in last.get(each.key, {}).values()),
                )
                for each in procedures
                if each.group == group
            ),
        )
        for group, said in GROUPS.items()
        if any(each.group == group for each in procedures)
    )


def _last(one: PastReading, asked: Procedure, system: str) -> str:
    value = _read(one.worth, asked.kind, system)
    side = f"{one.reading.side} " if one.reading.side else ""
    old = ", on a part that was replaced" if one.outlived else ""
    return f"{side}{value} on {one.kept.on}, {state_of_all(one.judged)}{old}"


def _read(worth: Worth, kind: str, system: str) -> str:
    """Mean of a reading with its unit, in no more digits than are known."""
    return f"{_figure(worth.mean, worth, kind, system)} {units.SYSTEMS[system][kind]}"


def _figure(value: float, worth: Worth, kind: str, system: str) -> str:
    """Number in the reader's unit, to the second digit of its doubt."""
    return to_doubt(value, 0.5 * (worth.band[1] - worth.band[0]), kind, system)


def state_of_all(judged: Sequence[Verdict]) -> str:
    """Give the gravest of some verdicts in a word; not judged where there is none."""
    told = {each.judged for each in judged}
    for state in ("out", "cannot tell", "within"):
        if state in told:
            return state
    return "not judged"


def taken_words(taken: ReadingTaken, system: str) -> TakenWords:
    """A reading as a page tells it."""
    kind = taken.procedure.kind
    low, high = (_figure(end, taken.worth, kind, system) for end in taken.worth.band)
    mean = _read(taken.worth, kind, system)
    stops = tuple(f"{each.what}: {each.why}." for each in taken.objections if each.state == "stop")
    return TakenWords(
        number=taken.number,
        echo=taken.echo,
        value=f"{mean}; 95 times in 100 between {low} and {high}.",
        verdicts=tuple(_verdict(each, kind, system, stops=bool(stops)) for each in taken.judged),
        stops=stops,
        doubts=tuple((f"{each.problem}.", each.ask) for each in taken.doubts),
    )


def _verdict(verdict: Verdict, kind: str, system: str, *, stops: bool = False) -> VerdictWords:
    ways = [f"{verdict.repeats} readings in all"] if verdict.repeats else []
    ways += [f"three readings with {each}" for each in verdict.better]
    settles = ""
    if verdict.judged == "cannot tell":
        settles = f"It would be settled by {'; or by '.join(ways) or 'a finer instrument'}."
    follows = {
        "no objection": "No objection. A reading within its limit is no go: looks say that.",
        "fix before trip": "FIX BEFORE TRIP: it steers, stops or holds a wheel.",
        "measure again": "Measure again.",
        "put right": "To be put right.",
    }[verdict.says]
    if stops and verdict.judged == "out":
        follows = "STOP: do not drive. It steers, stops or holds a wheel."
    return VerdictWords(
        state=verdict.judged,
        limit=limit_words(verdict.limit, kind, system),
        printed=verdict.limit.as_printed,
        chance=f"Chance that it truly lies within: {_chance(verdict.within)}.",
        settles=settles,
        follows=follows,
        own=verdict.limit.own,
    )


def _chance(share: float) -> str:
    if share < 0.01:
        return "under 1 in 100"
    return "over 99 in 100" if share > 0.99 else f"{100 * share:.0f} in 100"


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitWords:
    """One limit that a reading is held against, with everything that must stand beside it."""

    key: str
    ends: str
    printed: str
    load: str
    own: bool


def limit_list(limits: Sequence[LimitShown], kind: str, system: str) -> tuple[LimitWords, ...]:
    """Limits with scope and source, load state, and the source's own words."""
    return tuple(
        LimitWords(
            key=each.key,
            ends=limit_words(each, kind, system),
            printed=each.as_printed,
            load=each.load_state,
            own=each.own,
        )
        for each in limits
    )


def past_list(
    past: Sequence[PastReading], asked: Procedure, limits: Sequence[LimitShown], system: str
) -> PastList:
    """Readings of one quantity with their bands on one scale."""
    ends = [end for each in limits for end in (each.low, each.high) if not isinf(end)]
    spots = [end for one in past for end in one.worth.band] + ends
    low, high = min(spots, default=0.0), max(spots, default=1.0)
    room = 0.06 * (high - low) or 1.0

    def at(value: float) -> float:
        share = (value - low + room) / (high - low + 2.0 * room)
        return round(LINE[0] + share * (LINE[1] - LINE[0]), 1)

    return PastList(
        rows=tuple(_past_row(one, asked, system, at) for one in past),
        scale=(units.show(low, asked.kind, system), units.show(high, asked.kind, system)),
        limits=tuple(at(end) for end in dict.fromkeys(ends)),
    )


def _past_row(
    one: PastReading, asked: Procedure, system: str, at: Callable[[float], float]
) -> PastRow:
    low, high = one.worth.band
    reading, kept = one.reading, one.kept
    told = [_figure(end, one.worth, asked.kind, system) for end in (low, high)]
    repeats = len(reading.repeats)
    how = [f"{repeats} readings" if repeats > 1 else "one reading"]
    how.append(f"with {instrument(reading.instrument).label}")
    if asked.asks_bearing:
        how.append(f"bearing play {reading.bearing}")
    how += [each for each in (reading.load_state, reading.conditions) if each]
    overtaken = ""
    if one.outlived is not None:
        overtaken = f"It no longer counts: {one.outlived.why}."
    far = "" if kept.odometer is None else f", {units.show(kept.odometer, 'distance', system)}"
    return PastRow(
        number=kept.number,
        day=f"{kept.on}{far}",
        side=reading.side,
        value=_read(one.worth, asked.kind, system),
        band=f"{told[0]} to {told[1]}",
        how=", ".join(how),
        state=state_of_all(one.judged),
        overtaken=overtaken,
        low=at(low),
        middle=at(one.worth.mean),
        high=at(high),
    )
