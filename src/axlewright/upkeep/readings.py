"""What a reading says against a limit: within, out, or cannot tell, and what would settle it.

Nothing here says go: a reading within its limit is no objection, and a look is still a look.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite, sqrt
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.physics import measurement
from axlewright.rig import OwnLimit, Reading
from axlewright.tables import Instrument, Procedure, instrument, instruments, limit, procedures
from axlewright.upkeep.looks import Objection

Judged: TypeAlias = Literal["within", "out", "cannot tell"]
WORDS: Final[dict[int, Judged]] = {
    measurement.WITHIN: "within",
    measurement.OUT: "out",
    measurement.CANNOT_TELL: "cannot tell",
}
RISK: Final = 0.05  # chance of a false word on either side; common practice, no source
LOOK: Final = "Look at the part itself."
HALT: Final = "Do not drive. Mend or renew it, enter the work, then read it again."
HUB_PLAYS: Final = frozenset({"unit_hub_play", "end_play"})  # over the limit: STOP
LINES: Final = frozenset({"dye_test"})  # a line found: STOP
PATIENCE: Final = 20  # readings that somebody may still be asked for


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitShown:
    """A limit as it is held against a reading, never without its scope and source.

    ``own`` is true where the person replaced it by the manual's.
    """

    key: str
    low: float
    high: float
    as_printed: str
    scope: str
    status: str
    source: str
    load_state: str
    own: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """Mean of the repeats (SI), its standard uncertainty, degrees of freedom, and a 95 % band."""

    mean: float
    standard: float
    freedom: float
    band: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """One reading against one limit.

    ``within`` is the chance that the true value lies within; ``repeats`` how many readings in all
    would settle it (None where none would), ``better`` the instruments with which a few would.
    ``says`` is what follows: on what steers, stops or holds a wheel cannot tell is to be fixed.
    """

    limit: LimitShown
    judged: Judged
    within: float
    repeats: int | None
    better: tuple[str, ...]
    says: Literal["no objection", "fix before trip", "measure again", "put right"]


def worth(
    values: Sequence[float], instrument: Instrument, procedure: Procedure, extra: float = 0.0
) -> Worth:
    """Value of repeated readings (SI) and what they are worth.

    ``extra`` is any further standard uncertainty, as of a floor's slope that was read as well.

    References
    ----------
    jcgm100, 4.2, 4.3, 5.1, G.4
    """
    found = measurement.combined_uncertainty(
        np.asarray(values, dtype=float),
        half_width=_boxes(instrument),
        spread=(extra,),
        pooled=max(procedure.pooled, instrument.scatter),
    )
    freedom = float(found.freedom)
    factor = float(measurement.coverage_factor(min(freedom, 1e6)))
    mean, standard = float(found.mean), float(found.standard)
    return Worth(
        mean=mean,
        standard=standard,
        freedom=freedom,
        band=(mean - factor * standard, mean + factor * standard),
    )


def _boxes(instrument: Instrument) -> tuple[float, float]:
    return (instrument.resolution / 2.0, instrument.own_error)


def limits_for(procedure: Procedure, own: Sequence[OwnLimit] = ()) -> tuple[LimitShown, ...]:
    """Limits that a reading is held against: the person's own alone, where there are any."""
    mine = {each.limit: each for each in own}
    replaced = [
        mine[key] for key in dict.fromkeys((procedure.key, *procedure.limits)) if key in mine
    ]
    if replaced:
        return tuple(
            LimitShown(
                key=each.limit,
                low=-inf if each.low is None else each.low,
                high=inf if each.high is None else each.high,
                as_printed=each.given,
                scope="this axle, by its own manual",
                status="given",
                source=each.printed,
                load_state="",
                own=True,
            )
            for each in replaced
        )
    general = [limit(key) for key in procedure.limits]
    apart = len({each.quantity for each in general}) > 1
    return tuple(
        LimitShown(
            key=each.key,
            low=-inf if each.low is None else each.low,
            high=inf if each.high is None else each.high,
            as_printed=each.as_printed,
            scope=f"{each.quantity}; {each.scope}" if apart else each.scope,
            status=each.status,
            source=each.origin.source.title,
            load_state=each.load_state,
        )
        for each in general
    )


def verdict(
    values: Sequence[float],
    instrument: Instrument,
    procedure: Procedure,
    shown: LimitShown,
    extra: float = 0.0,
) -> Verdict:
    """Hold a reading against a limit, with a guard band on both sides of it.

    References
    ----------
    jcgm106, 8.3; iso14253-1
    """
    known = worth(values, instrument, procedure, extra)
    within = float(measurement.chance_within(known.mean, known.standard, shown.low, shown.high))
    found = measurement.guarded_verdict(known.mean, known.standard, shown.low, shown.high, RISK)
    judged = WORDS[int(found)]
    repeats: int | None = None
    better: tuple[str, ...] = ()
    if judged == "cannot tell":
        repeats = _repeats(known.mean, instrument, procedure, shown, extra, values)
        better = _better(known.mean, instrument, procedure, shown, extra)
    return Verdict(
        limit=shown,
        judged=judged,
        within=within,
        repeats=repeats,
        better=better,
        says=_says(judged, holds=procedure.holds),
    )


def judged_again(
    reading: Reading, procedure: Procedure, own: Sequence[OwnLimit] = ()
) -> tuple[Worth, tuple[Verdict, ...]]:
    """What a kept reading is worth with the doubt it was given, and its verdicts of today."""
    tool = instrument(reading.instrument)
    plain = worth(reading.repeats, tool, procedure).standard
    extra = sqrt(max(reading.standard**2 - plain**2, 0.0))
    return worth(reading.repeats, tool, procedure, extra), tuple(
        verdict(reading.repeats, tool, procedure, shown, extra)
        for shown in limits_for(procedure, own)
    )


def _says(
    judged: Judged, *, holds: bool
) -> Literal["no objection", "fix before trip", "measure again", "put right"]:
    if judged == "within":
        return "no objection"
    if holds:
        return "fix before trip"
    return "put right" if judged == "out" else "measure again"


def _repeats(
    mean: float,
    instrument: Instrument,
    procedure: Procedure,
    shown: LimitShown,
    extra: float,
    values: Sequence[float] = (),
) -> int | None:
    fixed = sqrt(sum(box**2 / 3.0 for box in _boxes(instrument)) + extra**2)
    own = float(np.std(values, ddof=1)) if len(values) > 1 else 0.0
    scatter = max(procedure.pooled, instrument.scatter, own)
    count = float(measurement.repeats_to_tell(mean, scatter, fixed, shown.low, shown.high, RISK))
    return int(count) if isfinite(count) and count <= PATIENCE else None


def _better(
    mean: float, now: Instrument, procedure: Procedure, shown: LimitShown, extra: float
) -> tuple[str, ...]:
    """Other instruments for this reading with which three readings or fewer would settle it."""
    found = []
    for key in procedure.instruments:
        tool = instruments()[key]
        count = _repeats(mean, tool, procedure, shown, extra)
        if tool.key != now.key and count is not None and count <= 3:
            found.append(tool.label)
    return tuple(found)


def objections(
    procedure: Procedure, side: str, verdicts: Sequence[Verdict], value: float = 0.0
) -> tuple[Objection, ...]:
    """What verdicts on what steers, stops or holds a wheel say against driving; maybe nothing.

    A line of any length in the dye is a crack, whatever a limit says: ``value`` is its length.
    """
    if procedure.key in LINES and value > 0.0:
        why = "a line that bleeds through is a crack until magnetic particles say it is none"
        return (Objection(state="stop", what=f"{side} dye test".strip(), why=why, do=HALT),)
    told = [each for each in verdicts if each.says != "no objection"]
    if not procedure.holds or not told:
        return ()
    worst = min(told, key=lambda each: each.judged != "out")
    over = procedure.key in HUB_PLAYS and worst.judged == "out"
    return (
        Objection(
            state="stop" if over else "fix before trip",
            what=f"{procedure.title}, {side}" if side else procedure.title,
            why=f"{worst.judged} against {worst.limit.as_printed} "
            f"({worst.limit.scope}; {worst.limit.source})",
            do=HALT if over else LOOK,
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubtful:
    """Why a reading looks as if something was mixed up, and what it may have been."""

    what: Literal["side", "unit", "sign", "lever", "size"]
    problem: str
    ask: str


def contradicted(
    reading: Reading,
    procedure: Procedure,
    earlier: Sequence[Reading],
    units: dict[str, float],
) -> tuple[Doubtful, ...]:
    """Contradictions of a reading with what can be, and with what was read before.

    Parameters
    ----------
    earlier
        Readings of the same quantity on this rig, the latest last.
    units
        Size in SI of every unit that the reading could have been given in.
    """
    found = [*_size(reading, procedure, units)]
    if not found:
        found += _against(reading, earlier)
    return tuple(found)


def _size(reading: Reading, procedure: Procedure, units: dict[str, float]) -> list[Doubtful]:
    low, high = procedure.low, procedure.high
    if low <= reading.value <= high:
        return []
    number = reading.value / units.get(reading.unit, 1.0)
    meant = [
        unit
        for unit, size in units.items()
        if unit != reading.unit and low <= number * size <= high and _likely(number * size, high)
    ]
    if reading.value < 0.0 <= low and -reading.value <= high:
        return [
            Doubtful(
                what="sign",
                problem=f"{reading.given} is below zero, and {procedure.title} is {procedure.sign}",
                ask="Was it the size of it, without a sign?",
            )
        ]
    if reading.kind == "torque" and reading.value > high:
        radii = [unit for unit in meant if unit != reading.unit]
        return [
            Doubtful(
                what="lever",
                problem=f"{reading.given} is more than such a part turns with",
                ask="Was it a pull in a unit of force, and at which radius? "
                + (f"Or in {' or '.join(radii)}?" if radii else ""),
            )
        ]
    if meant:
        return [
            Doubtful(
                what="unit",
                problem=f"{reading.given} is outside anything that {procedure.title} can be",
                ask=f"Was it in {' or '.join(meant[:3])}?",
            )
        ]
    return [
        Doubtful(
            what="size",
            problem=f"{reading.given} is outside anything that {procedure.title} can be",
            ask="Look at the figure and the unit once more.",
        )
    ]


def _likely(value: float, high: float) -> bool:
    return abs(value) >= 1e-3 * high


def _against(reading: Reading, earlier: Sequence[Reading]) -> list[Doubtful]:
    """Hold a reading against the last of both sides: the other side's, or its mirror."""
    if reading.side not in {"left", "right"}:
        return []
    own = [each for each in earlier if each.side == reading.side]
    other = [each for each in earlier if each.side in {"left", "right"} - {reading.side}]
    if not own or not other:
        return []
    here, there = own[-1], other[-1]

    def apart(one: float, second: Reading) -> float:
        doubt = sqrt(reading.standard**2 + second.standard**2)
        return abs(one - second.value) / doubt if doubt > 0 else inf

    if apart(reading.value, here) > 3.0 and apart(reading.value, there) <= 1.5:
        return [
            Doubtful(
                what="side",
                problem=f"{reading.given} on the {reading.side} is far from its last reading "
                f"({here.given}) and like that of the {there.side} ({there.given})",
                ask=f"Was it the vehicle's own {there.side}?",
            )
        ]
    if apart(reading.value, here) > 3.0 and apart(-reading.value, here) <= 1.5:
        return [
            Doubtful(
                what="sign",
                problem=f"{reading.given} is the last reading ({here.given}) with the other sign",
                ask="Which way does it lean?",
            )
        ]
    return []


def procedures_of(axle: str) -> tuple[Procedure, ...]:
    """Every guided reading of an axle."""
    return tuple(each for each in procedures().values() if each.axle in {axle, "both"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingTaken:
    """What became of a reading: its words, what is doubtful about it, its verdicts.

    ``number`` is 0 where it was not kept: something looks mixed up and nobody said to keep it.
    ``judged`` is empty where no limit is known; that is "not judged", and no objection either way.
    """

    number: int
    reading: Reading
    procedure: Procedure
    worth: Worth
    echo: str
    doubts: tuple[Doubtful, ...]
    judged: tuple[Verdict, ...]
    objections: tuple[Objection, ...]
