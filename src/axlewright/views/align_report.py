"""Words of the alignment's papers: the worksheet, filled in or blank, and the shop's brief."""

from dataclasses import dataclass
from typing import Final

from axlewright.geometry import Alignment
from axlewright.rig import ALIGNMENT_FIELDS, REPEATED, Field
from axlewright.views.align_drawing import drawing_size, drawing_words, toe_drawing
from axlewright.views.align_evidence import evidence_lines
from axlewright.views.align_phrases import (
    STATES,
    STEPS,
    angle,
    choice_labels,
    said_by,
    toe_range,
    toe_words,
    wanted,
)
from axlewright.views.align_turn_words import turn_lines
from axlewright.views.align_words import (
    BEFORE_DRIVING,
    NOT_OK,
    ROOMS,
    align_sentence,
    echo_line,
    rests_lines,
    step_lines,
)
from axlewright.views.answer import CAUTION, drive_lines
from axlewright.views.phrases import quantity

CAUTIONS: Final = (
    "Level hard floor, both ends chocked; nobody under it while it is rolled or the wheels turn.",
    "Fingers clear of pinch points when somebody rocks the steering wheel; engine off.",
    "Never work under a vehicle held by a jack alone.",
)
ORDER_WORDS: Final = (
    "In this order: tyres and pressures, ride height, play, square and in the middle, caster, toe, "
    "steering wheel. What comes first moves what comes after it."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignLine:
    """One thing to read: what, how, what was read; as many empty boxes as readings."""

    asks: str
    how: str
    said: str
    boxes: int
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignStep:
    """One step on paper."""

    number: int
    title: str
    state: str
    told: tuple[str, ...]
    lines: tuple[AlignLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignData:
    """The alignment on paper; ``blank`` is the sheet to write on."""

    title: str
    blank: bool
    stops: tuple[str, ...]
    sentence: str
    order: str
    picture: str
    picture_wide: float
    picture_high: float
    picture_words: str
    steps: tuple[AlignStep, ...]
    turn: tuple[str, ...]
    evidence: tuple[str, ...]
    rests: tuple[str, ...]
    brief: tuple[str, ...]
    asked: tuple[str, ...]
    cautions: tuple[str, ...]
    not_ok: str
    before: tuple[str, ...]
    caution: str
    digest: str


def align_data(alignment: Alignment, system: str = "metric", *, blank: bool = False) -> AlignData:
    """Words of the worksheet; with ``blank`` the empty one."""
    picture = toe_drawing(alignment, system)
    wide, high = drawing_size(picture)
    return AlignData(
        title=f"{alignment.rig.name}: {alignment.axle} axle, alignment",
        blank=blank,
        stops=tuple(drive_lines(alignment.stops)) if alignment.stops else (),
        sentence="" if blank else align_sentence(alignment, system),
        order=ORDER_WORDS,
        picture=picture,
        picture_wide=wide,
        picture_high=high,
        picture_words=drawing_words(alignment, system),
        steps=_steps(alignment, system, blank=blank),
        turn=() if blank else tuple(turn_lines(alignment, system)),
        evidence=() if blank else tuple(evidence_lines(alignment, system)),
        rests=() if blank else tuple(rests_lines(alignment, system)),
        brief=shop_brief(alignment, system),
        asked=SHOP_FIELDS,
        cautions=CAUTIONS,
        not_ok=NOT_OK,
        before=BEFORE_DRIVING,
        caution=CAUTION,
        digest=alignment.readings.digest[:12],
    )


SHOP_FIELDS: Final = (
    "toe in all, before and after",
    "camber left and right",
    "caster left and right",
    "thrust angle",
    "setback",
    "torques used, by the manual",
)


def shop_brief(alignment: Alignment, system: str = "metric") -> tuple[str, ...]:
    """What the alignment shop needs to know, each as one line."""
    front = alignment.axle == "front"
    outer = quantity(alignment.rig.tyre.outer_diameter, "length", system, 3)
    lines = [
        "Beam axle: camber cannot be adjusted, and nothing is to be bent or heated to change it.",
        f"Tyres: {outer} outer diameter, loaded as for a trip, at the pressures it travels on.",
    ]
    toe = alignment.of("toe")
    if toe is not None:
        span = toe_range(toe, alignment.diameter, system)
        at = quantity(alignment.diameter, "length", system, 3)
        lines += [
            (
                f"Toe wanted: {span} at a diameter of {at}, that is {wanted(toe, system)} in all "
                f"({said_by(toe)}). A maker's value comes before it."
            ),
            f"As it came off the garage floor: {toe_words(alignment, system)}.",
        ]
    if front:
        lines += [
            (
                "Toe is set on the tie rod, the steering wheel on the drag link; only one wheel "
                "moves until the drag link has been set."
            ),
            (
                "Set the steering wheel straight; then check the steering stops and the sensor of "
                "the stability system, where there is one."
            ),
            "Do not force caster: it belongs to the arms and the housing. "
            + _caster_words(alignment),
        ]
    lines += [
        "Say so rather than adjust round it if anything is loose, bent or cracked.",
        "Please print before and after, with thrust angle and setback.",
    ]
    return tuple(lines)


def _caster_words(alignment: Alignment) -> str:
    told = [
        f"{each.side} {angle(each.measured.value)} ± {angle(each.measured.half)}"
        for each in alignment.judged
        if each.key == "caster"
    ]
    return f"Read in the garage: {', '.join(told)}." if told else "It was not read in the garage."


def _steps(alignment: Alignment, system: str, *, blank: bool) -> tuple[AlignStep, ...]:
    made = []
    for number, (step, title) in enumerate(STEPS.items(), 1):
        if alignment.axle == "rear" and step == "steering_wheel":
            continue
        told: list[str] = []
        if not blank:
            told = [echo_line(alignment, step, system), *step_lines(alignment, step, system)]
        lines = tuple(
            _line(field)
            for field in ALIGNMENT_FIELDS
            if blank
            and field.path.startswith(ROOMS[step])
            and field.axle in {"both", alignment.axle}
        )
        made.append(
            AlignStep(
                number=number,
                title=title,
                state="" if blank else STATES[alignment.state(step)],
                told=tuple(line for line in told if line),
                lines=lines,
            )
        )
    return tuple(made)


def _line(field: Field) -> AlignLine:
    return AlignLine(
        asks=field.asks,
        how=field.how,
        said=field.path,
        boxes=3 if field.path in REPEATED and not field.path.startswith("floor.") else 1,
        choices=tuple(label for _, label in choice_labels(field)),
    )
