"""Everything that the paper says, as plain words; the typesetter only lays it out."""

from dataclasses import dataclass
from importlib.metadata import version

from axlewright import units
from axlewright.rig import FIELDS, FIRST_FIELDS, SEED, Rig, point_columns, rig_from_text
from axlewright.strength import Assessment, Comparison, Influence, Place
from axlewright.tables import fingerprint
from axlewright.views.answer import (
    CAUTION,
    OrderRow,
    after_mend_lines,
    broken_lines,
    change_lines,
    drive_lines,
    measure_next,
    not_judged_line,
    order_rows,
    rests_line,
    sentence,
    severity_lines,
    wear_rows,
    wear_sentence,
)
from axlewright.views.drawing_sheet import Flag, blank_drawing, drawing, drawing_in_words
from axlewright.views.gearing import all_gearing_lines, mismatch_lines
from axlewright.views.phrases import closeness, quantity
from axlewright.views.questions import field_name, how
from axlewright.views.table_sources import table_sources

MOST_ASSUMPTIONS = 12
MOST_WEAR = 4
USUAL = {"tube.bare.left": "290 mm", "tube.bare.right": "580 mm"}
CAUTIONS = (
    CAUTION,
    (
        "Limits here are those of parts of this size and steel in general; the manual of the "
        "maker comes first wherever it says otherwise."
    ),
    (
        "Hub, stub and wheel nuts, ball joints, tapered steering nuts, calipers and the pinion "
        "nut: torques from the maker's manual only."
    ),
    (
        "Never go under a vehicle on a jack alone: stands under the frame, both ends chocked, "
        "looked at once more before anybody goes under."
    ),
    "Springs, straps and air hold energy: let it out before taking anything apart.",
    (
        "Weld end forgings and brackets that carry load only by a qualified welder. No heating, "
        "bending or straightening of knuckles, steering arms, tie rods, end forgings or cast "
        "centres."
    ),
    (
        "After work on steering or axle, to an alignment shop before road use; no open play, "
        "steering free lock to lock, hoses free, brakes tried, then a slow loop and a second look."
    ),
    "A mend beside the track is to get out of danger, not home: slowly, and look again soon.",
)
SHEET_CAUTIONS = (
    (
        "Stand beside the vehicle, not under it: nothing here needs anybody underneath a jack. "
        "Wheels chocked, brake on, engine off and cold."
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One assumption or answer in words: what, its value and band, and where it comes from."""

    what: str
    value: str
    source: str
    share: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One of the two orders: title, what its second column says, and its rows."""

    title: str
    note: str
    rows: tuple[OrderRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportData:
    """Words and drawings of one report, in the reader's units.

    ``picture`` is the axle from behind, ``sheet`` all three views with measurements, each with its
    size in millimetres of the real thing.
    """

    title: str
    stops: tuple[str, ...]
    sentence: str
    wear_sentence: str
    drive: tuple[str, ...]
    orders: tuple[Order, ...]
    picture: str
    picture_wide: float
    sheet: str
    sheet_wide: float
    sheet_high: float
    picture_high: float
    picture_words: str
    flags: tuple[str, ...]
    rests: str
    next_to_measure: tuple[str, ...]
    moves: tuple[str, ...]
    broken: tuple[str, ...]
    gearing: tuple[str, ...]
    mismatch: tuple[str, ...]
    not_judged: str
    change: tuple[str, ...]
    change_orders: tuple[Order, ...]
    assumptions: tuple[Told, ...]
    assumptions_left: str
    answers: tuple[Told, ...]
    cautions: tuple[str, ...]
    bases: tuple[Told, ...]
    table_sources: tuple[str, ...]
    origin: tuple[Told, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question of the paper sheet."""

    number: int
    asks: str
    how: str
    caution: str
    example: str
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetData:
    """The thirteen questions on paper, with a drawing that has empty boxes."""

    title: str
    axle: str
    intro: str
    picture: str
    picture_wide: float
    picture_high: float
    picture_words: str
    questions: tuple[Question, ...]
    cautions: tuple[str, ...]


def report_data(answer: Assessment | Comparison, system: str = "metric") -> ReportData:
    """Words of the report on an assessment, or on a rig before and after changes."""
    compared = answer if isinstance(answer, Comparison) else None
    now = compared.before if compared is not None else answer
    if not isinstance(now, Assessment):  # what mypy cannot see through the line above
        raise TypeError(answer)
    rig, flags = now.rig, flags_of(now)
    stops = tuple(drive_lines(now.stops)) if now.stops else ()
    picture = drawing(
        now.columns,
        rig.words,
        rig.tyre,
        flags,
        views=("across",),
        measures=False,
        key=False,
        system=system,
        text=40.0,
        name="behind",
    )
    sheet = drawing(
        now.columns, rig.words, rig.tyre, flags, stops=stops, system=system, text=38.0, name="sheet"
    )
    left = now.influences[MOST_ASSUMPTIONS:]
    gears = all_gearing_lines(answer, system)
    apart = mismatch_lines(gears)
    return ReportData(
        title=f"{rig.name}: {rig.axle} axle",
        stops=stops,
        sentence=sentence(now),
        wear_sentence=wear_sentence(now, system),
        drive=tuple(line for line in drive_lines(now.findings) if line not in stops),
        orders=_orders(now, system),
        picture=picture,
        picture_wide=_size(picture, 2),
        picture_high=_size(picture, 3),
        sheet=sheet,
        sheet_wide=_size(sheet, 2),
        sheet_high=_size(sheet, 3),
        picture_words=drawing_in_words(
            now.columns, rig.words, rig.tyre, flags, stops=stops, system=system
        ),
        flags=tuple(f"{row.rank} {row.part}: {row.closeness}" for row in order_rows(now, system)),
        rests=rests_line(now, system),
        next_to_measure=tuple(measure_next(now, system, 5)),
        moves=(*after_mend_lines(now), *severity_lines(now)),
        broken=tuple(broken_lines(now)),
        gearing=tuple(line for line in gears if line not in apart),
        mismatch=tuple(apart),
        not_judged=not_judged_line(now),
        change=tuple(change_lines(compared, system)) if compared is not None else (),
        change_orders=_orders(compared.after, system) if compared is not None else (),
        assumptions=tuple(_assumed(item, system) for item in now.influences[:MOST_ASSUMPTIONS]),
        assumptions_left=_left(left),
        answers=_answers(rig, system),
        cautions=CAUTIONS,
        bases=_bases(now),
        table_sources=table_sources(),
        origin=_origin(now, compared),
    )


def sheet_data(axle: str = "front") -> SheetData:
    """Words of the question sheet, with the drawing of a usual front or rear axle."""
    asked = [field for field in FIRST_FIELDS if field.axle in {"both", axle}]
    lines = [
        f'{field.path} = "{USUAL.get(field.path, field.example)}"'
        for field in asked
        if "." in field.path
    ]
    text = "\n".join(["axlewright = 1", 'rig.name = "usual"', f'rig.axle = "{axle}"', *lines])
    rig = rig_from_text(text.replace('"as listed"', '"nothing mended, nothing hurts"'))
    picture = blank_drawing(point_columns(rig), rig.words, rig.tyre, text=42.0)
    numbers = sorted({field.question for field in asked if field.question})
    return SheetData(
        title=f"Thirteen questions about one {axle} axle",
        axle=axle,
        intro=(
            "About ten minutes with a tape, nothing taken apart, on level ground, loaded as for a "
            "trip. Write the unit with each number. “About” and “don’t know” are "
            "good answers. Left and right are the vehicle's, as you sit in it; the drawing "
            "looks ahead from behind, so left is on the left. A number in a box is its question."
        ),
        picture=picture,
        picture_wide=_size(picture, 2),
        picture_high=_size(picture, 3),
        picture_words=f"A usual {axle} axle from behind, a numbered box at each measurement.",
        questions=tuple(
            Question(
                number=number,
                asks=field.asks,
                how=how(field, paper=True),
                caution=field.caution,
                example=field.example,
                choices=field.choices or (("yes", "no") if field.kind == "yes" else ()),
            )
            for number in numbers
            for field in asked
            if field.question == number
        ),
        cautions=SHEET_CAUTIONS,
    )


def flags_of(assessment: Assessment, most: int = 5) -> tuple[Flag, ...]:
    """Flags of the leading parts in one bad moment, as the drawing takes them."""
    return tuple(
        Flag(number=rank, part=_flagged(place), closeness=closeness(place))
        for rank, place in enumerate(assessment.order[:most], 1)
    )


def _flagged(place: Place) -> str:
    return place.kind if place.side == "either" else place.part


def _orders(assessment: Assessment, system: str) -> tuple[Order, ...]:
    return (
        Order(title="One bad moment", note="gives at", rows=tuple(order_rows(assessment, system))),
        Order(
            title="Wearing out (a coarse estimate)",
            note="used up after",
            rows=tuple(wear_rows(assessment, system, MOST_WEAR)),
        ),
    )


def _assumed(item: Influence, system: str) -> Told:
    doubt = item.doubt
    low, middle, high = (
        quantity(end, doubt.kind, system, 3) for end in (doubt.low, doubt.middle, doubt.high)
    )
    swaps = "; could swap the first" if item.swaps else ""
    return Told(
        what=_asked().get(doubt.quantity, doubt.label) if doubt.given else doubt.label,
        value=f"{middle} ({low} to {high})",
        source=doubt.source,
        share=f"{100.0 * item.share:.0f} %{swaps}",
    )


def _asked() -> dict[str, str]:
    return {field.quantity: f"your answer: {field.path}" for field in FIELDS if field.quantity}


def _left(left: tuple[Influence, ...]) -> str:
    if not left:
        return ""
    return f"And {len(left)} more that move the order less; the JSON answer lists them all."


def _answers(rig: Rig, system: str) -> tuple[Told, ...]:
    """Given answers in words, in the order of the questions."""
    out = []
    for field in FIELDS:
        if field.quantity in rig.given:
            datum = rig.given[field.quantity]
            about = "about " if datum.about else ""
            shown = units.show(datum.value, datum.kind, system)
            value = about + shown
            if datum.doubt > 0.0:
                value += f", give or take {units.show(1.645 * datum.doubt, datum.kind, system, 2)}"
            said = "" if datum.text in {shown, about + shown} else datum.text
            out.append(Told(what=f"{field_name(field)}:", value=value, source=said))
        elif field.required and not field.quantity and rig.words.get(field.path):
            out.append(Told(what=f"{field_name(field)}:", value=rig.words[field.path], source=""))
        elif field.kind == "tyre":
            told = units.show(round(rig.tyre.outer_diameter, 3), "length", system)
            wide = units.show(round(rig.tyre.section_width, 3), "length", system)
            out.append(
                Told(
                    what=f"{field_name(field)}:",
                    value=f"{told} in diameter, {wide} wide",
                    source=rig.tyre.note,
                )
            )
    for item in rig.conditions:
        where = f", {item.where}" if item.where else ""
        when = f", {item.date}" if item.date else ", no date"
        note = f" ({item.note})" if item.note else ""
        out.append(
            Told(
                what="mended, or hurts:",
                source="",
                value=f"{item.part}{where}: {item.what}{when}{note}",
            )
        )
    return tuple(out)


def _bases(assessment: Assessment) -> tuple[Told, ...]:
    """Formula and source behind each row of the two orders that is printed, said once each."""
    out: dict[tuple[str, str], dict[str, None]] = {}
    for place in assessment.order[:5]:
        row = assessment.point.solved.rows[place.row]
        label = next(each.part for each in order_rows(assessment) if each.key == place.part)
        out.setdefault((row.mode, row.basis), {})[label] = None
    for worn in assessment.wearing[:MOST_WEAR]:
        wear = assessment.point.wear[worn.number]
        label = next(each.part for each in wear_rows(assessment) if each.key == worn.part)
        out.setdefault((wear.mode, wear.basis), {})[label] = None
    return tuple(
        Told(what="; ".join(labels), value=mode, source=basis)
        for (mode, basis), labels in out.items()
    )


def _origin(assessment: Assessment, compared: Comparison | None) -> tuple[Told, ...]:
    drawn = assessment.drawn
    draws = f"{drawn.draws}" if drawn is not None else "none, middle values only"
    seed = drawn.seed if drawn is not None else SEED
    rows = [
        ("rig file, SHA-256", assessment.rig.digest),
        *(
            (f"change: {each.name}, SHA-256", each.digest)
            for each in (compared.changes if compared is not None else ())
        ),
        ("tables, SHA-256", fingerprint()),
        ("draws; seed; axlewright", f"{draws}; {seed}; {version('axlewright')}"),
    ]
    return tuple(Told(what=what, value=value, source="") for what, value in rows)


def _size(svg: str, place: int) -> float:
    return float(svg.partition('viewBox="')[2].partition('"')[0].split()[place])
