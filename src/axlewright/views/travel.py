"""The travel of an axle in words: first a sentence, five rows, then what it rests on."""

from dataclasses import dataclass
from math import isfinite, isinf

from axlewright.geometry import BUMP, Fix, Limit, Shift, Travel, rod_in_words, shifts
from axlewright.views.phrases import quantity

CAUTION = (
    "Decision support, not a certificate: the makers' manuals, local law and licensed practice "
    "come first. Have an alignment shop confirm before road use."
)
PARKED = 300.0  # N: a pull below this is not told
NAMES = {
    "caster": "caster",
    "pinion": "pinion",
    "bump_steer": "steering itself in bump or droop",
    "shift": "axle off the middle",
    "stop_room": "gap to the bump stop",
    "parked": "worst pull of a rod, parked",
}
KINDS = {"shift": "length", "stop_room": "length", "parked": "force"}
CURES = {
    "drop_arm": "A drop arm ending {amount} lower",
    "drop_arm_up": "A drop arm ending {amount} higher",
    "raised_track_bar": "Raising the track bar's bracket on the axle by {amount}, its length reset",
    "track_bar_length": "Setting the track bar's length alone",
    "adjustable_upper_arms": "Upper arms made {amount} {way}",
    "turned_arms": "Offset bushings that turn the axle in its radius arms",
    "turned_forgings": "Turning the end forgings by {angle} on their tubes",
    "drop_brackets": "Brackets that lower the arms' ends at the frame by {amount}",
    "longer_stops": "Bump stops {amount} longer",
}
PRICE = {
    "turned_forgings": "It is welding on the axle: a jig, a qualified welder, joints and steering "
    "checked after.",
    "drop_brackets": "They hang lower over the ground by as much.",
    "adjustable_upper_arms": "Caster and pinion go together: what one gains the other gives.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelRow:
    """One row: what, then hanging, at ride and in bump."""

    what: str
    hanging: str
    ride: str
    bump: str


def angle(value: float, system: str = "metric") -> str:
    """An angle to a tenth of a degree, or what is there instead."""
    del system
    degrees = value * 57.29577951308232
    return f"{degrees:.1f} deg".replace("-0.0 ", "0.0 ") if isfinite(degrees) else "none"


def length(value: float, system: str = "metric") -> str:
    """A length as it can be felt: whole millimetres, or hundredths of the other unit."""
    if isinf(value):
        return "never"
    digits = 2 if abs(value) < 0.1 else 3
    return quantity(value if abs(value) > 5e-4 else 0.0, "length", system, digits)


def shown(name: str, value: float, system: str = "metric") -> str:
    """One measure in the reader's units."""
    kind = KINDS.get(name, "angle")
    if kind == "length":
        return length(value, system)
    return quantity(abs(value), "force", system, 2) if kind == "force" else angle(value, system)


def travel_sentence(found: Travel, system: str = "metric") -> str:
    """What the axle does, in one sentence."""
    now, span = found.now, length(BUMP, system)
    ends = (
        f"it hangs {length(now.droop.at, system)} until {now.droop.what} and rises "
        f"{length(now.stop_room, system)} to its bump stops"
    )
    if not found.points.steers:
        return (
            f"Over {span} of bump or droop the axle turns by {angle(abs(now.bump_steer))}; {ends}."
        )
    band = ""
    if "caster" in found.bands:
        low, high = found.bands["caster"]
        band = f" ({angle(low).removesuffix(' deg')} to {angle(high)})"
    return (
        f"At ride height it has {angle(now.caster)} of caster{band}; over {span} of bump or droop "
        f"the wheels steer themselves by {angle(abs(now.bump_steer))}; {ends}."
    )


def travel_rows(found: Travel, system: str = "metric") -> list[TravelRow]:
    """At most five rows: what changes from hanging to bump, and what ends each way."""
    low, ride, high = found.stances
    rows = []
    if found.points.steers:
        rows.append(_row("caster", [angle(each.caster) for each in found.stances]))
    rows.append(
        _row("pinion, against now", [angle(each.pinion - ride.pinion) for each in found.stances])
    )
    steers = "wheels steer themselves" if found.points.steers else "axle steers"
    rows.append(_row(steers, [_way(each.steers, "deg", system) for each in found.stances]))
    rows.append(
        _row(
            "axle, sideways", [_way(each.shift - ride.shift, "", system) for each in found.stances]
        )
    )
    first = next(iter(found.limits["articulation"]))
    rows.append(
        _row(
            "what ends it",
            [
                f"{length(-low.height, system)}: {found.now.droop.what}",
                f"crossed, each wheel {length(first.at, system)}: {first.what}",
                f"{length(high.height, system)}: the bump stop touches",
            ],
        )
    )
    return rows


def limit_lines(found: Travel, system: str = "metric") -> list[str]:
    """What touches, binds, tops out or comes loose, first to last, each way."""
    told = []
    for way, every in found.limits.items():
        met = [_limit(each, system) for each in every if not isinf(each.at)]
        told.append(f"{way.capitalize()}: {'; '.join(met) or 'nothing within 300 mm'}.")
    return told


def fix_lines(found: Travel, system: str = "metric") -> list[str]:
    """Each common cure, with what it makes better and worse; those that help first."""
    return [_fix(each, system) for each in cures_told(found)]


def cures_told(found: Travel) -> list[Fix]:
    """The cures that are told, in their order: those that help first."""
    told = [each for each in found.fixes if each.refused or each.shifts]
    return sorted(told, key=lambda each: (bool(each.refused), len(each.worse) - len(each.better)))


def change_lines(before: Travel, after: Travel, system: str = "metric") -> list[str]:
    """What a change made worse, as plainly as what it made better."""
    moved = shifts(before.now, after.now, after.taped)
    names = " and ".join(after.rig.changes)
    lines = [f"With {names}: {travel_sentence(after, system)}"]
    lines.append(f"Worse: {_listed([each for each in moved if not each.better], system)}.")
    lines.append(f"Better: {_listed([each for each in moved if each.better], system)}.")
    if after.points.steers and abs(after.now.off_centre) > 0.009:
        way = "left" if after.now.off_centre > 0.0 else "right"
        lines.append(
            f"The wheels stood {angle(abs(after.now.off_centre))} to the {way} until the drag "
            "link is set anew; set it before you drive, after the axle is in the middle."
        )
    return lines


def bind_lines(found: Travel, system: str = "metric") -> list[str]:
    """What rods do to each other with nothing on the axle."""
    pull, lines = found.parked, []
    own = {
        name.removeprefix("longer_"): float(value[0])
        for name, value in found.points.columns.items()
        if name.startswith("longer_") and abs(float(value[0])) > 5e-4
    }
    if abs(pull.force) > PARKED and own:
        name, off = max(own.items(), key=lambda each: abs(each[1]))
        way = "long" if off > 0.0 else "short"
        does = "pulls" if pull.force > 0.0 else "pushes"
        lines.append(
            f"The {rod_in_words(name)} is {length(abs(off), system)} {way}; parked, the "
            f"{rod_in_words(pull.rod)} {does} {quantity(abs(pull.force), 'force', system, 2)} on "
            "its brackets (bushings assumed: half to twice that)."
        )
    elif own and len(found.points.rods) <= 4:
        lines.append(
            "Four rods hold this axle: one of another length moves the axle and binds nothing."
        )
    push = float(found.wind_up.force[0])
    if abs(push) > 50.0:
        way = "down" if push > 0.0 else "up"
        lines.append(
            f"The arms' bushings were clamped away from ride height: they are twisted by "
            f"{angle(abs(float(found.wind_up.twist[0, 0])))} and push the axle {way} with "
            f"{quantity(abs(push), 'force', system, 2)}. Loosen their bolts and tighten them with "
            "the weight on the wheels."
        )
    return lines


def rests_line(found: Travel) -> str:
    """What it rests on."""
    rest = found.places - found.taped_places
    told = f"Rests on {found.taped_places} of {found.places} places taped"
    if rest:
        told += f"; the other {rest} mirrored or assumed for this layout (memory)"
    leaf = (
        " Leaf springs stand as an equivalent arm: the pad moves on an arc of three quarters of "
        "the front half leaf."
    )
    tape = ""
    if found.points.steers and not found.taped_places:
        tape = " Tape the rods' ends before you trust the figures: points.* in the rig file."
    return f"{told}.{leaf if found.points.arms == 'leaves' else ''}{tape}"


def travel_why_lines(found: Travel, row: int, system: str = "metric") -> list[str]:
    """One row down to how it is worked out."""
    now = found.now
    name = travel_rows(found, system)[row - 1].what
    side = "behind" if now.instant_ahead < 0.0 else "ahead"
    if name == "caster":
        told = f"""
Caster is the kingpins' slope seen from the side; it turns with the axle's pitch, one for one.
The axle pitches about a point {length(abs(now.instant_ahead), system)} {side} and {
            length(now.instant_up, system)
        } above its own middle.
The kingpins were taped over a short distance: an angle finder on the knuckle knows caster better.
"""
    elif name.startswith("pinion"):
        gives = ": what caster gains it gives, degree for degree" if found.points.steers else ""
        told = f"""
The pinion turns with the housing{gives}.
Against where it was taped it points {angle(now.pinion)} up at ride.
"""
    elif name.startswith("axle, sideways"):
        held = "track bar's end moves" if found.points.barred else "upper arms' ends move"
        told = f"""
The {held} on an arc; at ride the axle stands {
            length(now.shift, system)
        } left of where it was taped (a minus means right).
The body rolls about a point {length(now.roll_centre, system)} over the ground.
"""
    elif name == "what ends it":
        told = "\n".join(limit_lines(found, system))
    else:
        told = f"""
{_arcs(found)}
In roll the axle steers {now.roll_steer:+.2f} of the roll.
In braking the arms take {100.0 * now.anti:.0f} % of the dive (brakes 70 : 30, memory).
"""
    return [f"{found.rig.name}: {name}", *(f"  {line}" for line in told.strip().split("\n"))]


def _arcs(found: Travel) -> str:
    """Why an axle steers as it goes up and down."""
    if not found.points.steers:
        return "Left and right the axle's ends go fore and aft on the arcs of what holds them."
    if not found.points.barred:
        return (
            "The drag link's end follows its own arc, the axle that of what holds it sideways; "
            "where they differ, wheels turn."
        )
    return (
        "The drag link's end follows its own arc, the axle the track bar's; where they differ, "
        "wheels turn.\nSeen from ahead the two rods are "
        f"{angle(abs(found.now.slope_apart))} apart in slope."
    )


def _row(what: str, cells: list[str]) -> TravelRow:
    return TravelRow(what=what, hanging=cells[0], ride=cells[1], bump=cells[2])


def _way(value: float, unit: str, system: str) -> str:
    small = abs(value) < (8e-4 if unit else 5e-4)
    if small or not isfinite(value):
        return "0"
    told = angle(abs(value)) if unit else length(abs(value), system)
    return f"{told} {'left' if value > 0.0 else 'right'}"


def _limit(each: Limit, system: str) -> str:
    return f"{each.what} at {length(each.at, system)}"


def fix_parts(
    fix: Fix, system: str = "metric"
) -> tuple[str, tuple[str, ...], tuple[str, ...], str]:
    """One cure: what it is, what it makes better, what worse, and what it costs besides."""
    key = "drop_arm_up" if fix.key == "drop_arm" and fix.amount < 0.0 else fix.key
    told = CURES[key].format(
        amount=length(abs(fix.amount), system),
        angle=angle(abs(fix.amount)),
        way="longer" if fix.amount > 0.0 else "shorter",
    )
    better, worse = ([_moved(each, system) for each in some] for some in (fix.better, fix.worse))
    return told, tuple(better), tuple(worse), PRICE.get(fix.key, "")


def _fix(fix: Fix, system: str) -> str:
    told, better, worse, price = fix_parts(fix, system)
    if fix.refused:
        return f"{told}: does not go. {fix.refused}"
    parts = [
        f"{word}, {', '.join(some)}"
        for word, some in (("better", better), ("worse", worse))
        if some
    ]
    return f"{told}: {'; '.join(parts)}.{f' {price}' if price else ''}"


def _moved(each: Shift, system: str) -> str:
    return (
        f"{NAMES[each.measure]} {shown(each.measure, _sized(each, each.before), system)} to "
        f"{shown(each.measure, _sized(each, each.after), system)}"
    )


def _listed(moved: list[Shift], system: str) -> str:
    if not moved:
        return "nothing that could be felt or measured at home"
    return ", ".join(_moved(each, system) for each in moved)


def _sized(each: Shift, value: float) -> float:
    return value if each.measure in {"caster", "pinion"} else abs(value)
