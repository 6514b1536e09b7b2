"""The limits of one axle: what it gives at, its weight and tyres, and the play that is allowed."""

from dataclasses import dataclass
from math import degrees
from typing import Final

from axlewright import units
from axlewright.strength import Assessment
from axlewright.tables import Limit, limits, load_index, speed_symbol
from axlewright.views.answer import order_rows, wear_rows
from axlewright.views.phrases import quantity

GRAVITY: Final = 9.80665  # m/s2, standard
TYRES: Final = 2
WEAR: Final = 3
BOTH: Final = ("camber_difference", "rim_runout", "axle_square", "frame_diagonals")
FRONT: Final = ("camber", "included_angle")
BY_WORD: Final = {
    ("kingpin.kind", "ball joints"): ("lower_joint_total",),
    ("kingpin.kind", "kingpins"): ("kingpin_rock_ratio", "camber_rock"),
    ("hub.kind", "sealed unit"): ("unit_hub_play",),
    ("hub.kind", "tapers on a spindle"): ("spindle_end_play", "spindle_gauge_gap"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class GivesRow:
    """One leading part: what it gives at, in the ground's own terms, and what then."""

    rank: int
    part: str
    gives_at: str
    then: str
    closeness: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitRow:
    """One limit for play or angle, with what it holds for and where it stands."""

    key: str
    what: str
    value: str
    how: str
    scope: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What this axle gives at, what it weighs and stands on, and what play is allowed."""

    gives: tuple[GivesRow, ...]
    wears: tuple[GivesRow, ...]
    weight: tuple[str, ...]
    play: tuple[LimitRow, ...]


def axle_limits(assessment: Assessment, system: str = "metric") -> Limits:
    """Everything that limits this axle, in the reader's units."""
    return Limits(
        gives=tuple(
            GivesRow(
                rank=row.rank,
                part=row.part,
                gives_at=row.gives_at,
                then=row.then,
                closeness=row.closeness,
            )
            for row in order_rows(assessment, system)
        ),
        wears=tuple(
            GivesRow(
                rank=row.rank, part=row.part, gives_at=row.gives_at, then=row.then, closeness=""
            )
            for row in wear_rows(assessment, system, WEAR)
        ),
        weight=_weight(assessment, system),
        play=tuple(_limit(limits()[key], assessment, system) for key in _keys(assessment)),
    )


def _keys(assessment: Assessment) -> list[str]:
    words = assessment.rig.words
    keys = list(FRONT) if assessment.rig.axle == "front" else []
    for (field, word), named in BY_WORD.items():
        if assessment.rig.axle == "rear" and field.startswith("kingpin"):
            continue
        if words.get(field) == word:
            keys += named
    return [*keys, *BOTH]


def _weight(assessment: Assessment, system: str) -> tuple[str, ...]:
    tyre = assessment.rig.tyre
    carried = float(assessment.columns["axle_weight"][0])
    lines = [f"This axle carries {quantity(carried, 'weight', system, 3)}, as given."]
    across = quantity(tyre.outer_diameter, "length", system, 3)
    lines.append(f"Tyre: {across} in diameter, new and unloaded, by its sidewall.")
    if tyre.load_index is not None:
        may = TYRES * load_index(str(tyre.load_index)).mass * GRAVITY
        lines.append(
            f"Load index {tyre.load_index}: two such tyres may carry "
            f"{quantity(may, 'weight', system, 3)} at the pressure of the tyre's maker."
        )
        if carried > may:
            lines.append("The axle is heavier than its two tyres may carry: fix before trip.")
    else:
        lines.append("No load index was given: what the tyres may carry is not judged.")
    if tyre.speed_symbol is not None:
        fast = quantity(speed_symbol(tyre.speed_symbol).speed, "speed", system, 3)
        lines.append(f"Speed symbol {tyre.speed_symbol}: the tyre's own end is {fast}.")
    lines.append("Taller or heavier tyres than the maker's ask more of the brakes: try them.")
    return tuple(lines)


def _limit(limit: Limit, assessment: Assessment, system: str) -> LimitRow:
    """One row; a play at a hub is also told at the edge of this tyre, where a hand can feel it."""
    value = _value(limit, system)
    outer = assessment.rig.tyre.outer_diameter
    across = quantity(outer, "length", system, 3)
    if limit.key == "unit_hub_play" and limit.high is not None:
        circle = float(assessment.columns["stud_circle"][0])
        edge = quantity(limit.high * outer / circle, "length", system, 2)
        value += f"; that is {edge} at the edge of this tyre ({across}): play you can see is over"
    if limit.key == "kingpin_rock_ratio" and limit.high is not None:
        edge = quantity(limit.high * assessment.rig.tyre.rim_diameter, "length", system, 2)
        value = f"at most {edge} at this rim"
    return LimitRow(
        key=limit.key,
        what=limit.quantity,
        value=value,
        how=limit.load_state,
        scope=limit.scope,
        source=f"{limit.origin.source.title}; {limit.status}",
    )


def _value(limit: Limit, system: str) -> str:
    if limit.unit == "rad":
        low, high = (None if end is None else degrees(end) for end in (limit.low, limit.high))
        unit, place = "deg", 1.0
    else:
        unit = units.SYSTEMS[system]["length"]
        place = units.known("length")[unit]
        low, high = limit.low, limit.high
    told = [f"{float(f'{end / place:.3g}'):g}" for end in (low, high) if end is not None]
    if limit.kind == "range" and len(told) == TYRES:
        return f"{told[0]} to {told[1]} {unit}"
    return f"at most {told[-1]} {unit}"
