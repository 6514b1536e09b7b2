"""How an axle moves, for its page: plain sentences first, then tables, then what lies deeper."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.geometry import BrakesAsked, Driveline, Fix, Travel, first_hard, steering_shape
from axlewright.rig import geometry_doubts
from axlewright.views.brakes import brake_lines
from axlewright.views.driveline import (
    DrivelineRow,
    built_in_lines,
    degrees,
    driveline_rows,
    driveline_sentence,
    joint_lines,
    locked_lines,
    price_rows,
    rests_on,
    slip_lines,
    whirl_lines,
)
from axlewright.views.phrases import quantity
from axlewright.views.pose_words import aside, steered
from axlewright.views.room import (
    RoomPicture,
    changed_lines,
    room_lines,
    room_picture,
    room_why_lines,
)
from axlewright.views.travel import (
    CAUTION,
    TravelRow,
    angle,
    bind_lines,
    cures_told,
    fix_parts,
    length,
    limit_lines,
    rests_line,
    travel_rows,
    travel_sentence,
)
from axlewright.views.wedge_words import wedge_lines, wedge_mind

TURNED: Final = (
    "Turning the housing trades caster for pinion angle, degree for degree: what one gains the "
    "other loses."
)
FACTS: Final = ("Toe is set on the tie rod, never on the track bar.", TURNED)
FAR: Final = 200.0  # m: an axle that pitches about a point so far off does not pitch
PRICES: Final = (
    "turned", "caster", "trail", "pinion up", "joint, transfer case", "joint, pinion",
    "shakes as one joint of",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class CureRow:
    """One cure tried: what it is, what it makes better and worse, what it costs besides.

    ``keeps`` says that it can be kept as a change, asked for by its ``key``.
    """

    key: str
    keeps: bool
    said: str
    better: tuple[str, ...]
    worse: tuple[str, ...]
    price: str
    refused: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AssumedRow:
    """One thing that nobody measured: what stands in, its band and where it comes from."""

    what: str
    middle: str
    band: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MovesPage:
    """Everything that the page says of one axle, or of one before and after a change."""

    sentence: str
    plain: tuple[str, ...]
    facts: tuple[str, ...]
    changed: tuple[str, ...]
    rows: tuple[TravelRow, ...]
    before_rows: tuple[TravelRow, ...]
    ends: tuple[str, ...]
    cures: tuple[CureRow, ...]
    shaft: str
    shaft_lines: tuple[str, ...]
    shaft_rows: tuple[DrivelineRow, ...]
    built_in: tuple[str, ...]
    wedges: tuple[str, ...]
    wedge_cautions: tuple[str, ...]
    price_heads: tuple[str, ...]
    prices: tuple[tuple[str, ...], ...]
    gearing: tuple[str, ...]
    room_picture: RoomPicture
    room_deeper: tuple[str, ...]
    room: tuple[str, ...]
    room_before: tuple[str, ...]
    brakes: tuple[str, ...]
    deeper: tuple[tuple[str, str], ...]
    assumed: tuple[AssumedRow, ...]
    rests: str
    caution: str


def moves_page(
    before: Travel,
    after: Travel | None,
    line: Driveline,
    system: str = "metric",
    *,
    gearing: Sequence[str] = (),
    brakes: BrakesAsked | None = None,
) -> MovesPage:
    """Words of the page; ``gearing`` are lines made beside the answer, where there is one."""
    shown = after or before
    built = line.built_in
    return MovesPage(
        sentence=travel_sentence(shown, system),
        plain=tuple(plain_lines(shown, line, system)),
        facts=FACTS if shown.points.steers else (),
        changed=() if after is None else tuple(changed_lines(before, after, system)[1:]),
        rows=tuple(travel_rows(shown, system)[:-1]),
        before_rows=() if after is None else tuple(travel_rows(before, system)[:-1]),
        ends=tuple(limit_lines(shown, system)),
        cures=cure_rows(shown, system),
        shaft=driveline_sentence(line, system),
        shaft_lines=(
            *joint_lines(line, system), *locked_lines(line), *slip_lines(line, system),
            *whirl_lines(line, system),
        ),
        shaft_rows=tuple(driveline_rows(line, system)),
        built_in=tuple(built_in_lines(line, system)),
        wedges=tuple(wedge_lines(line.wedges, system)),
        wedge_cautions=tuple(wedge_mind(line.wedges)),
        price_heads=PRICES if built is not None else (),
        prices=() if built is None else tuple(price_rows(built, system)),
        gearing=tuple(gearing),
        room_picture=room_picture(shown, None if after is None else before, system),
        room_deeper=tuple(line.strip() for line in room_why_lines(shown, system)[1:]),
        room=tuple(room_lines(shown, system)),
        room_before=() if after is None else tuple(room_lines(before, system)),
        brakes=tuple(brake_lines(brakes)),
        deeper=deeper_rows(shown, system),
        assumed=assumed_rows(shown, system),
        rests=f"{rests_line(shown)} {rests_on(line)}",
        caution=CAUTION,
    )  # fmt: skip


def plain_lines(found: Travel, line: Driveline, system: str = "metric") -> list[str]:
    """What a person asks first: what ends it, caster, pinion, steer, sideways, bind."""
    low, ride, high = found.stances
    first = {way: every[0] for way, every in found.limits.items()}
    hard = first_hard(found.limits["bump"])
    told = [
        (
            f"Going up, {first['bump'].what} first, after {length(first['bump'].at, system)}"
            + (
                f", and {hard.what} after {length(hard.at, system)}. "
                if hard != first["bump"]
                else ". "
            )
            + f"Hanging, {first['droop'].what} after {length(first['droop'].at, system)}. Crossed, "
            f"{first['articulation'].what} when each wheel has gone "
            f"{length(first['articulation'].at, system)}."
        )
    ]
    if found.points.steers:
        told.append(
            f"Caster is {angle(low.caster)} hanging, {angle(ride.caster)} at ride and "
            f"{angle(high.caster)} at the bump stops."
        )
    case, pinion = line.line.joints[0]
    told.append(
        f"Against ride the pinion looks {_updown(low.pinion - ride.pinion)} hanging and "
        f"{_updown(high.pinion - ride.pinion)} in bump; its shaft's joints stand at "
        f"{degrees(case)} and {degrees(pinion)} at ride."
    )
    steers = "The wheels steer themselves" if found.points.steers else "The axle steers"
    told.append(
        f"{steers} {steered(low.steers)} hanging and {steered(high.steers)} in bump; as the body "
        f"rolls by a degree the axle steers by {abs(found.now.roll_steer):.2f} of it."
    )
    shifts = [aside(each.shift - ride.shift, system) for each in (low, high)]
    told.append(f"Sideways the axle moves {shifts[0]} hanging and {shifts[1]} in bump.")
    bind = bind_lines(found, system)
    return [*told, *(bind or ["Parked, no rod fights another that could be told from here."])]


def cure_rows(found: Travel, system: str = "metric") -> tuple[CureRow, ...]:
    """The common cures, those that help first."""
    return tuple(_cure(each, system) for each in cures_told(found))


def _cure(fix: Fix, system: str) -> CureRow:
    said, better, worse, price = fix_parts(fix, system)
    return CureRow(
        key=fix.key, keeps=bool(fix.steps), said=said, better=better, worse=worse, price=price,
        refused=fix.refused,
    )  # fmt: skip


def deeper_rows(found: Travel, system: str = "metric") -> tuple[tuple[str, str], ...]:
    """What engineers ask: centres, anti-dive, slopes."""
    now = found.now
    side = "behind" if now.instant_ahead < 0.0 else "ahead of"
    pitches = "nowhere: it moves straight up and down"
    if abs(now.instant_ahead) < FAR:
        pitches = (
            f"{length(abs(now.instant_ahead), system)} {side} the axle, "
            f"{length(now.instant_up, system)} over its middle"
        )
    braked = "dive" if found.points.steers else "lift"
    rows = [
        ("roll centre over the ground", length(now.roll_centre, system)),
        ("it pitches about", pitches),
        (
            f"{braked} that the arms take in braking",
            f"{100.0 * now.anti:.0f} % (brakes 70 : 30, memory)",
        ),
        ("roll steer", f"{now.roll_steer:+.2f} of the roll"),
    ]
    if found.points.steers and found.points.barred:
        rows.append(("drag link against track bar, slopes", angle(now.slope_apart)))
    rows += steering_lines(found, system)
    rows.append(("worst pull of a rod, parked", quantity(abs(now.parked), "force", system, 2)))
    return tuple(rows)


def steering_lines(found: Travel, system: str = "metric") -> list[tuple[str, str]]:
    """Full lock beside what rolls about one centre, and the caster's trail."""
    shape = steering_shape(found)
    if shape is None:
        return []
    rows = []
    for side, (inner, outer, ideal) in (("left", shape.left), ("right", shape.right)):
        told = (
            f"inner wheel {angle(inner)}, outer {angle(outer)}; rolling about one centre "
            f"(Ackermann) the outer would turn {angle(ideal)}"
        )
        rows.append((f"full lock to the {side}", told))
    return [*rows, ("trail that the caster makes at this tyre", length(shape.trail, system))]


def assumed_rows(found: Travel, system: str = "metric") -> tuple[AssumedRow, ...]:
    """What nobody measured, each with its band; three ways of a place as one row."""
    rows: dict[str, AssumedRow] = {}
    rods = {f"longer_{rod.name}" for rod in found.points.rods}
    for each in geometry_doubts(found.rig):
        if each.quantity.startswith("longer_") and each.quantity not in rods:
            continue
        place = each.quantity.startswith("point_")
        what = each.label.rpartition(", ")[0] if place else each.label
        if what in rows:
            continue
        half = 0.5 * (each.high - each.low)
        rows[what] = AssumedRow(
            what=what,
            middle="" if place else _shown(each.middle, each.kind, system),
            band=(
                f"± {_shown(half, each.kind, system)} each way"
                if place
                else f"{_shown(each.low, each.kind, system)} to "
                f"{_shown(each.high, each.kind, system)}"
            ),
            source=each.source,
        )
    return tuple(rows.values())


def _shown(value: float, kind: str, system: str) -> str:
    if kind == "angle":
        return angle(value)
    return quantity(value, kind, system, 2)


def _updown(value: float) -> str:
    if abs(value) < 9e-4:
        return "the same"
    return f"{angle(abs(value))} {'higher' if value > 0.0 else 'lower'}"
