"""Everything that the take-along file says, as plain words; `report` only lays it out."""

import datetime as dt
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from importlib.metadata import version
from typing import Final
from xml.sax.saxutils import unescape

from axlewright.rig import SEED
from axlewright.strength import Assessment
from axlewright.tables import Look, fingerprint, look_stops, looks
from axlewright.upkeep import Carrying, wanted_looks
from axlewright.views.answer import (
    CAUTION,
    drive_lines,
    not_judged_line,
    rests_line,
    sentence,
    wear_sentence,
)
from axlewright.views.carry import CarryLine, carry_data
from axlewright.views.drawing_sheet import drawing
from axlewright.views.look_words import LEADS, LISTS
from axlewright.views.report_words import Told, flags_of
from axlewright.views.take_limits import Limits, axle_limits
from axlewright.views.take_lists import (
    CardWords,
    SpareLine,
    ToeTable,
    TorqueLine,
    repair_cards,
    toe_table,
    torque_lines,
)
from axlewright.views.take_rods import Arithmetic, arithmetic
from axlewright.views.units_in_text import in_units

PURPOSE: Final = (
    "For the track: what stops you, what to look at after a hit, what to carry and how far a mend "
    "takes you."
)
PRINTED: Final = ("before_trip", "after_trip")
BEFORE_DRIVING: Final = (
    "No open play anywhere, every torque line filled and done.",
    "Steering free from lock to lock; stops reached before hose, tyre or box.",
    "Brake hoses free at full droop and full lock; brakes pumped and tried.",
    "A slow loop; back of the hand on each hub; then every look once more.",
)
CAUTIONS: Final = (
    CAUTION,
    "Never under a vehicle on a jack alone: stands under the frame, both ends chocked.",
    (
        "No heating, bending or straightening of knuckles, steering arms, tie rods, end forgings "
        "or cast centres, here or at home."
    ),
    "A mend beside the track is to get out of danger, not home.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LookWords:
    """One look, ready to lay out."""

    key: str
    title: str
    how: str
    go: str
    watch: str
    fix: str
    stop: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LookList:
    """The looks of one occasion; ``printed`` where they stand on paper too."""

    key: str
    title: str
    lead: str
    printed: bool
    looks: tuple[LookWords, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeData:
    """Words and drawings of one take-along file, in the reader's units.

    ``stops`` are those reported in the rig's condition; ``stop_list`` is what always stops.
    ``picture`` is the axle from behind for a phone, ``sheet`` all views for paper.
    """

    title: str
    purpose: str
    made: str
    name: str
    stops: tuple[str, ...]
    drive: tuple[str, ...]
    stop_list: tuple[str, ...]
    looks: tuple[LookWords, ...]
    lists: tuple[LookList, ...]
    once_more: str
    before_driving: tuple[str, ...]
    arithmetic: Arithmetic
    torques: tuple[TorqueLine, ...]
    toe: ToeTable
    duty: str
    trip: tuple[str, ...]
    least: tuple[SpareLine, ...]
    more: tuple[SpareLine, ...]
    cards: tuple[CardWords, ...]
    sentence: str
    wear_sentence: str
    limits: Limits
    not_judged: str
    picture: str
    picture_wide: float
    picture_high: float
    picture_words: str
    rests: str
    cautions: tuple[str, ...]
    origin: tuple[Told, ...]


def take_data(
    assessment: Assessment,
    carrying: Carrying,
    made: dt.date,
    system: str = "metric",
    met: Collection[str] | None = None,
) -> TakeData:
    """Words of the take-along file of one rig, made on a day, with the spares of a trip.

    ``met`` is the ground of its last trips, which asks for looks of its own; without it the
    hardest use alone does.
    """
    rig = assessment.rig
    packing = carry_data(carrying, system)
    flags = flags_of(assessment)
    picture = drawing(
        assessment.columns,
        rig.words,
        rig.tyre,
        flags,
        views=("across",),
        measures=False,
        key=False,
        system=system,
        text=64.0,
        name="behind",
    )
    lines = drive_lines(assessment.stops) if assessment.stops else []
    stops = tuple(line.removeprefix("STOP: ") for line in lines)
    wide, high = _size(picture)
    return TakeData(
        title=f"{rig.name}: {rig.axle} axle, to take along",
        purpose=PURPOSE,
        made=made.isoformat(),
        name=rig.digest[:16],
        stops=stops,
        drive=tuple(line for line in drive_lines(assessment.findings) if line not in lines),
        stop_list=tuple(
            item.words for item in look_stops().values() if item.axle in {rig.axle, "both"}
        ),
        looks=_looks(rig.axle, system),
        lists=_lists(assessment, system, met),
        once_more=in_units("Look once more after 5 km.", system),
        before_driving=BEFORE_DRIVING,
        arithmetic=arithmetic(assessment, system),
        torques=torque_lines(assessment, system),
        toe=toe_table(assessment, system),
        duty=carrying.load.outing.ground.replace("_", " "),
        trip=(
            packing.trip,
            packing.mass,
            *packing.warnings,
            packing.not_judged,
            *packing.rough[:2],
        ),
        least=_packed(packing.least),
        more=_packed(packing.rest),
        cards=repair_cards(assessment, system),
        sentence=sentence(assessment),
        wear_sentence=wear_sentence(assessment, system),
        limits=axle_limits(assessment, system),
        not_judged=not_judged_line(assessment),
        picture=picture,
        picture_wide=wide,
        picture_high=high,
        picture_words=_words(picture),
        rests=rests_line(assessment, system),
        cautions=CAUTIONS,
        origin=_origin(assessment, made),
    )


def _packed(lines: Sequence[CarryLine]) -> tuple[SpareLine, ...]:
    return tuple(
        SpareLine(
            key=line.key,
            label=line.label,
            note=line.note,
            why=line.why.removesuffix("."),
            mass=line.mass,
            place=f"lies: {line.lies}" if line.lies else f"best: {line.place}",
        )
        for line in lines
    )


def _looks(axle: str, system: str) -> tuple[LookWords, ...]:
    mine = sorted((look for look in looks().values() if look.axle in {axle, "both"}), key=_ranked)
    return tuple(
        LookWords(
            key=look.key,
            title=look.title,
            how=in_units(look.how, system),
            go=in_units(look.go, system),
            watch=in_units(look.watch, system),
            fix=in_units(look.fix, system),
            stop=in_units(look.stop, system),
        )
        for look in mine
    )


def _lists(
    assessment: Assessment, system: str, met: Collection[str] | None
) -> tuple[LookList, ...]:
    """Lists by occasion, the same as on the page of looks; the five stand by themselves."""
    rig = assessment.rig
    return tuple(
        LookList(
            key=occasion,
            title=title,
            lead=LEADS[occasion],
            printed=occasion in PRINTED,
            looks=tuple(
                LookWords(
                    key=each.key,
                    title=in_units(each.title, system),
                    how=in_units(each.how, system),
                    go=in_units(each.ends["go"], system),
                    watch=in_units(each.ends["watch"], system),
                    fix=in_units(each.ends["fix before trip"], system),
                    stop=in_units(each.ends["stop"], system),
                )
                for each in wanted_looks(occasion, rig.axle, rig.words, met)
            ),
        )
        for occasion, title in LISTS.items()
        if occasion != "after_hit"
    )


def _ranked(look: Look) -> int:
    return look.rank


def _origin(assessment: Assessment, day: dt.date) -> tuple[Told, ...]:
    drawn = assessment.drawn
    rows = (
        ("made on", day.isoformat()),
        ("rig file, SHA-256", assessment.rig.digest),
        ("tables, SHA-256", fingerprint()),
        ("draws", f"{drawn.draws}" if drawn is not None else "none: middle values only"),
        ("seed", f"{drawn.seed if drawn is not None else SEED}"),
        ("axlewright", version("axlewright")),
        ("looks and cards", "common practice, no source"),
        ("masses, hours and chances of spares", "from memory: rough"),
    )
    return tuple(Told(what=what, value=value, source="") for what, value in rows)


def _words(svg: str) -> str:
    """What a drawing says of itself to somebody who cannot see it."""
    parts = (svg.partition(f"<{tag} ")[2].partition(">")[2] for tag in ("title", "desc"))
    return " ".join(unescape(part.partition("<")[0]) for part in parts)


def _size(svg: str) -> tuple[float, float]:
    numbers = svg.partition('viewBox="')[2].partition('"')[0].split()
    return float(numbers[2]), float(numbers[3])
