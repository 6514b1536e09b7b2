"""Toe, caster, flats and verdicts in the reader's units: the phrases of an alignment."""

from math import degrees, isfinite

from axlewright import units
from axlewright.geometry import Alignment, Judged, Measured, RodTurn
from axlewright.physics import steering
from axlewright.rig import Field
from axlewright.tables import alignment_marks, instrument, instruments
from axlewright.views.phrases import quantity

FLATS = 6
STEPS = {
    "ride_height": "ride height",
    "play": "play",
    "square": "square and in the middle",
    "caster": "caster and camber",
    "toe": "toe",
    "steering_wheel": "steering wheel",
}
STATES = {
    "done": "as wanted",
    "put right": "put right",
    "cannot tell": "cannot tell",
    "not read": "not read",
}
NAMES = {
    "ride_height": "ride height, left less right",
    "wheelbase": "wheelbase, left less right",
    "diagonal": "diagonals, left less right",
    "off_centre": "axle left of the middle",
    "camber": "camber",
    "cross_camber": "camber, left less right",
    "caster": "caster",
    "cross_caster": "caster, left less right",
    "included": "camber and inclination together, left less right",
    "toe": "toe-in of both wheels together",
}


def length(value: float, system: str) -> str:
    """A small length: tenths of a millimetre, or hundredths of the other."""
    unit = units.SYSTEMS[system]["length"]
    number = value / units.known("length")[unit]
    return f"{number + 0.0:.{1 if unit == 'mm' else 2}f} {unit}"


def fine(value: float, system: str) -> str:
    """A length of a rod, without sign, a digit finer."""
    unit = units.SYSTEMS[system]["length"]
    number = abs(value) / units.known("length")[unit]
    return f"{number:.{2 if unit == 'mm' else 3}f} {unit}"


def angle(value: float) -> str:
    """An angle in hundredths of a degree."""
    return f"{degrees(value) + 0.0:.2f} deg"


def measured(value: Measured, system: str) -> str:
    """A measured value with its 90 % band."""
    show = angle if value.kind == "angle" else lambda each: length(each, system)
    return f"{show(value.value).rpartition(' ')[0]} ± {show(value.half)}"


def across(diameter: float, system: str) -> str:
    """A diameter, to the millimetre or tenth."""
    return quantity(diameter, "length", system, 3)


def toe_words(alignment: Alignment, system: str) -> str:
    """Toe as a length at its diameter and as an angle; never a length alone."""
    gap, toe = alignment.toe_length, alignment.toe
    if gap is None or toe is None:
        return "not read"
    way = "toe-in" if gap.value >= 0.0 else "toe-out"
    told = f"{length(abs(gap.value), system).rpartition(' ')[0]} ± {length(gap.half, system)}"
    turned = f"{angle(abs(toe.value)).rpartition(' ')[0]} ± {angle(toe.half)}"
    taken = across(alignment.diameter, system)
    return f"{told} of {way} at a diameter of {taken} ({turned})"


def toe_range(judged: Judged, diameter: float, system: str) -> str:
    """Range of toe that is wanted, as lengths at the same diameter."""
    low, high = (
        length(float(steering.toe_length(end, diameter)), system)
        for end in (judged.low, judged.high)
    )
    unit = low.rpartition(" ")[2]
    return f"{low.removesuffix(unit).strip()} to {high} of toe-in"


def wanted(judged: Judged, system: str) -> str:
    """Range that is wanted."""
    show = angle if judged.measured.kind == "angle" else lambda each: length(each, system)
    low, high = show(judged.low), show(judged.high)
    return f"{low.rpartition(' ')[0]} to {high}"


def name_of(judged: Judged) -> str:
    """What was judged, with its side."""
    return f"{judged.side} {NAMES[judged.key]}".strip()


def settle(judged: Judged) -> str:
    """What would settle a verdict that cannot be told."""
    ways = []
    if isfinite(judged.repeats) and judged.repeats <= 50:
        ways.append(f"{max(int(judged.repeats), judged.measured.count + 1)} readings in all")
    if judged.better:
        tool = instrument(judged.better).label
        ways.append(f"a few with a finer instrument ({tool})")
    if ways:
        return f"{' or '.join(ways)} would settle it"
    return (
        "no number of readings here would settle it: have a shop read it, or set it nearer the "
        "middle where it can be set"
    )


def said_by(judged: Judged) -> str:
    """Who says what is wanted, and for what it holds."""
    who = {"practice": "common practice, no source", "memory": "from memory"}
    kind, _, rest = judged.said_by.partition(": ")
    told = f"{who.get(kind, kind)}{': ' if rest else ''}{rest}"
    if kind == "manual":
        told = "another vehicle's manual"
    if kind == "given":
        told = rest
    return f"{told}; {judged.scope}" if judged.scope else told


def turns_words(turn: RodTurn) -> str:
    """How far to turn: whole turns and flats of the hexagon; or whole turns of an end."""
    if turn.turns is None:
        return "say the adjuster's thread to have it in turns"
    if not turn.in_place:
        return (
            f"{turn.turns:.2f} turns of the end: whole turns where its stud is tapered, half "
            "turns for a spherical rod end"
        )
    flats = round(FLATS * turn.turns)
    whole, rest = divmod(flats, FLATS)
    if flats == 0:
        return "less than half a flat: leave it"
    parts = [f"{whole} turn{'s' if whole > 1 else ''}"] if whole else []
    parts += [f"{rest} flat{'s' if rest > 1 else ''}"] if rest else []
    return " and ".join(parts) + " of the hexagon"


def way_words(turn: RodTurn) -> str:
    """Which way it turns."""
    if not turn.in_place:
        return "screw the end " + ("out" if turn.longer else "in")
    clock = "clockwise" if turn.longer else "anticlockwise"
    seen = f"{clock} as seen from the end with the right-hand thread"
    if turn.top_goes:
        return f"its top going {turn.top_goes} ({seen}, on the {turn.right_hand_end})"
    return seen


def choice_labels(field: Field) -> tuple[tuple[str, str], ...]:
    """Words that a field takes, each with what a person calls it."""
    known, marks = instruments(), alignment_marks()
    words = ("yes", "no") if field.kind == "yes" else field.choices
    return tuple(
        (
            word,
            known[word].label if word in known else marks[word].label if word in marks else word,
        )
        for word in words
    )
