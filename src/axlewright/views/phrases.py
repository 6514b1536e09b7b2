"""Words for parts, cases, severities and consequences, in the reader's units."""

from math import floor, isfinite, isinf, log10

from axlewright import units
from axlewright.duty import live_cases
from axlewright.rig import Columns
from axlewright.strength import Assessment, Place, WearPlace
from axlewright.tables import consequence, consequences, troubles

THEN = {
    "stuck": "stuck, not out of control",
    "crooked": "it drives, but crooked",
    "steering lost": "you lose the steering",
    "wheel lost": "you can lose the wheel",
    "limps": "limps on",
    "leaks": "leaks",
}
SOLID = "the tyres slip or the engine stalls first"
CASES_EITHER = {  # a case of either side, without its side
    "pull": "full pull with a wheel wedged",
    "slide": "a side slide into a rut",
    "hung": "one wheel hung",
    "strike": "a ledge struck by one wheel",
    "cornering": "a hard turn",
    "landing": "a landing",
    "rock": "a rock under the differential",
    "braking": "hard braking",
    "pull_both": "full pull with both wheels",
}


FAR_DOWN = 4.0  # m; a drop beyond that is told in metres or feet
LEAST_HELD = 0.01  # of a capacity; less is not told


def parked_line(assessment: Assessment, number: int, system: str) -> str:
    """What a check has to carry with nothing on the axle, by what binds; empty where little."""
    solved = assessment.point.solved
    share, holds = float(solved.held[number, 0]), float(solved.capacity[number, 0])
    if share < LEAST_HELD:
        return ""
    told = quantity(share * holds, solved.rows[number].kind, system)
    return f"of it {told} parked, with no load on the axle: what binds is there in every case"


def part_name(part: str, side: str | None = None) -> str:
    """Name of a part with an article; ``side`` "either" covers twins."""
    label = consequence(part).label
    base = label.removeprefix("left ").removeprefix("right ")
    if side == "either":
        return f"the {base} on either side" if several(part) else f"either {base}"
    return f"the {label}"


def kind_name(kind: str) -> str:
    """Name of a kind of part, without side or article."""
    if kind in troubles():
        return troubles()[kind].label
    known = consequences()
    key = next(key for key in (kind, f"{kind}_left") if key in known)
    return known[key].label.removeprefix("left ").removeprefix("right ")


def several(part: str) -> bool:
    """Whether the part's name is a plural."""
    label = consequence(part).label
    return label.endswith("s") or label == "ring and pinion"


def gives(part: str) -> str:
    """The verb beside the part's name."""
    return "give" if several(part) else "gives"


def hurts(part: str) -> bool:
    """Whether its giving takes the steering or a wheel away."""
    return consequence(part).what_then in {"steering lost", "wheel lost"}


def worn(place: WearPlace) -> str:
    """A part and how it wears out, as the beginning of a sentence."""
    name = part_name(place.part, place.side)
    verb, _, rest = place.mode.partition(" ")
    if verb not in {"cracks", "wears"}:
        return f"{name}, {place.mode}"
    verb = verb.removesuffix("s") if several(place.part) else verb
    return f"{name} {verb} {rest}".rstrip()


def case_name(key: str) -> str:
    """What happens in a case, whichever side it happens to."""
    return CASES_EITHER.get(key) or CASES_EITHER[key.rpartition("_")[0]]


def short_name(part: str, side: str | None = None) -> str:
    """Name of a part without an article, for a table."""
    return part_name(part, side).removeprefix("the ")


def then(part: str) -> str:
    """What happens when the part gives."""
    return THEN[consequence(part).what_then]


def beside_the_track(part: str, system: str = "metric") -> str:
    """Whether and how the part is mended beside the track."""
    entry = consequence(part)
    if entry.mendable == "no":
        return "no"
    told = [] if entry.duration is None else [f"{entry.duration / 60.0:.0f} min"]
    if entry.spare_mass:
        told.append(f"{quantity(entry.spare_mass, 'mass', system, 2)} spare")
    words = ", ".join(told)
    if entry.mendable == "partly":
        return f"to get out of danger, not home ({words})" if words else "partly"
    return words or "yes"


def gives_at(place: Place, columns: Columns, system: str = "metric") -> str:
    """What it takes, in the ground's own terms, as a span of nine draws in ten."""
    if isinf(place.margin) and isinf(place.margin_low):
        return f"not in reach: {SOLID}"
    return span_in_ground_terms(
        live_cases()[place.case].key,
        (place.takes_low, place.takes_high),
        place.takes_kind,
        columns,
        system,
    )


def giving(told: str) -> str:
    """What it takes, with its verb: it gives at so much, or it is not in reach."""
    return told if told.startswith("not in reach") else f"gives at {told}"


def span_in_ground_terms(  # noqa: PLR0911  (one way out for each kind)
    case: str, span: tuple[float, float], kind: str, columns: Columns, system: str
) -> str:
    """One span of a case's hardness in words."""
    low, high = span
    if kind == "speed":
        told = _span(low, high, "speed", system)
        if case.startswith("strike"):
            unit = "cm" if system != "us" else "in"
            high_as = _two(float(columns["strike_height"][0]), "length", unit)
            return f"{_article(high_as)} {high_as} {unit} square ledge at {told}"
        return f"a sideways slide into a rut at {told}"
    if kind == "length":
        return f"a landing from a drop of {_span(low, high, 'length', system)}"
    if case.startswith("pull"):
        told = _percent(low, high)
        if case == "pull_both":
            return f"{told} of full pull, both wheels"
        lock = float(columns["lock_angle"][0]) if "lock_angle" in columns else 0.0
        turned = f", {units.show(lock, 'angle', system, 2)} of lock" if lock else ""
        return f"{told} of full pull, wheel wedged{turned}"
    if case == "braking":
        return f"{_percent(low, high)} of what the tyres can grip"
    if case.startswith("hung"):
        return f"{_times(low, high)} the axle's weight on one wheel"
    if case == "rock":
        return f"{_times(low, high)} the axle's weight on a rock"
    return f"{_times(low, high)} gravity, sideways"


def life(place: WearPlace, system: str = "metric") -> str:
    """Life in distance of this use, two digits at most."""
    low, high = place.life_low * 1e3, place.life_high * 1e3
    if low > 2e9:
        return "no end seen"
    unit = units.SYSTEMS[system]["distance"]
    if high > 1e9:
        return f"more than {_distance(low, unit)}"
    ends = (_distance(low, unit).removesuffix(unit).strip(), _distance(high, unit))
    return f"about {ends[1]}" if f"{ends[0]} {unit}" == ends[1] else f"{ends[0]} to {ends[1]}"


def closeness(place: Place) -> str:
    """How close a part is, by its middle margin: over, close, near or room."""
    if place.margin < 1.0:
        return "over"
    if place.margin_low < 1.0:
        return "close"
    return "near" if place.margin < 2.0 else "room"


def quantity(value: float, kind: str, system: str = "metric", digits: int = 3) -> str:
    """A quantity of an assumption or capacity in the reader's units, never with exponents."""
    if not isfinite(value):
        return "no end"
    if kind == "volume":
        return f"{plain(value * 1e6, digits)} cm3"
    unit = units.SYSTEMS[system][kind]
    return f"{plain(value / units.known(kind)[unit], digits)} {unit}".rstrip()


def plain(number: float, digits: int) -> str:
    """A number with so many significant digits and no exponent."""
    rounded = float(f"{number:.{digits}g}")
    size = floor(log10(abs(rounded))) if rounded else 0
    return f"{rounded:,.{min(max(digits - 1 - size, 0), 6)}f}"


def _distance(metres: float, unit: str) -> str:
    number = metres / units.known("distance")[unit]
    return f"{float(f'{number:.2g}'):,.0f} {unit}"


def to_doubt(value: float, doubt: float, kind: str, unit: str = "metric") -> str:
    """A number in a unit or system, unit left out, to the second digit of its doubt.

    References
    ----------
    jcgm100, 7.2.6
    """
    size = units.known(kind)[units.SYSTEMS[unit][kind] if unit in units.SYSTEMS else unit]
    within = doubt / size
    digits = max(0, 1 - floor(log10(within))) if within > 0.0 else 3
    told = f"{value / size:.{digits}f}"
    return told.removeprefix("-") if float(told) == 0.0 else told


def span(low: float, high: float, kind: str, system: str = "metric", digits: int = 3) -> str:
    """Two ends of a quantity, the unit once."""
    ends = [quantity(end, kind, system, digits) for end in (low, high)]
    unit = ends[1].partition(" ")[2]
    return f"{ends[0].removesuffix(unit).strip()} to {ends[1]}"


def _span(low: float, high: float, kind: str, system: str) -> str:
    unit = units.SYSTEMS[system][kind]
    if kind == "length":
        small, large = ("in", "ft") if system == "us" else ("cm", "m")
        unit = large if isfinite(high) and high > FAR_DOWN else small
    told_low, told_high = (_two(value, kind, unit) for value in (low, high))
    if isinf(low):
        return "more than it can meet"
    if isinf(high):
        return f"{told_low} {unit} or more"
    if float(told_high) >= 20.0 and float(told_low) >= 1.0:
        told_low = f"{float(told_low):.0f}"
    return f"{_from_to(told_low, told_high)} {unit}"


def _from_to(low: str, high: str) -> str:
    """Two ends, or one where they are alike."""
    return f"about {high}" if low == high else f"{low} to {high}"


def _two(value: float, kind: str, unit: str) -> str:
    if not isfinite(value):
        return "more"
    number = value / units.known(kind)[unit]
    if abs(number) < 0.05:
        return "0"
    return f"{float(f'{number:.2g}'):g}"


def _article(number: str) -> str:
    """The article before a number that is read aloud: an 8, an 11, an 80, a 28."""
    whole = number.partition(".")[0]
    return "an" if whole in {"8", "11", "18"} or (whole[:1] == "8" and len(whole) == 2) else "a"


def _percent(low: float, high: float) -> str:
    ends = [f"{float(f'{100.0 * value:.2g}'):.0f}" for value in (low, high) if isfinite(value)]
    if not ends:
        return "more than 150 %"
    return f"{ends[0]} % or more" if len(ends) == 1 else f"{_from_to(*ends)} %"


def _times(low: float, high: float) -> str:
    ends = [f"{value:.2g}" for value in (low, high) if isfinite(value)]
    if not ends:
        return "far beyond"
    return f"{ends[0]} or more times" if len(ends) == 1 else f"{_from_to(*ends)} times"
