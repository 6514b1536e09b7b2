"""Putting an axle right, for its page: the steps in their order, what is read, what to turn."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from axlewright.geometry import Alignment
from axlewright.rig import ALIGNMENT_FIELDS, REPEATED, Field
from axlewright.tables import alignment_target
from axlewright.views.align_drawing import drawing_words, toe_drawing
from axlewright.views.align_evidence import evidence_lines
from axlewright.views.align_phrases import STATES, STEPS, angle, choice_labels, length, said_by
from axlewright.views.align_report import CAUTIONS, shop_brief
from axlewright.views.align_turn_words import turn_lines
from axlewright.views.align_words import (
    BEFORE_DRIVING,
    FIRST,
    NOT_OK,
    ROOMS,
    align_sentence,
    echo_line,
    rests_lines,
    step_lines,
)
from axlewright.views.answer import CAUTION
from axlewright.views.page_moves import TURNED

ON_THE_ROD: Final = (
    "Toe is set on the tie rod, never on the track bar; the bar brings the axle to the middle."
)
LETTERS: Final = 58.0  # mm of the real thing: to be read on a phone
CHOCKED, FINGERS, JACK = CAUTIONS
AT_STEP: Final[Mapping[str, tuple[str, ...]]] = {
    "ride_height": (CHOCKED,),
    "play": (FINGERS,),
    "square": (CHOCKED,),
    "caster": ("Brakes held while the wheels are turned; fingers clear of wheel and knuckle.",),
    "toe": (JACK, CHOCKED),
    "steering_wheel": ("Try it slowly, in a yard, before any road.",),
}
# Of each step: what stands together, and how the names of its fields begin or end.
GROUPS: Final[Mapping[str, tuple[tuple[str, tuple[str, ...]], ...]]] = {
    "ride_height": (
        ("Before anything is read", ("state.",)),
        ("How high it rides", ("ride_height.",)),
    ),
    "play": (("A hand on each joint", ("play.",)),),
    "square": (
        ("Square", ("square.wheelbase", "square.diagonal", "square.with")),
        ("In the middle", ("square.gap",)),
    ),
    "caster": (
        ("The floor and the frame, to be taken out", ("floor.",)),
        ("Camber", ("camber.",)),
        ("Caster by a finder on the knuckle", ("caster.left.finder", "caster.right.finder")),
        ("Caster by a sweep of the wheels", ("caster.left.", "caster.right.", "caster.sweep",
                                             "caster.turned_on")),
        ("Read with", ("caster.with",)),
        ("What the manual wants", ("target.ca",)),
    ),
    "toe": (
        ("The two tape readings", ("toe.",)),
        ("The tie rod", ("tie_rod.",)),
        ("What the manual wants", ("target.toe", "target.from")),
    ),
    "steering_wheel": (
        ("Where it stands", ("steering_wheel.",)),
        ("The drag link", ("drag_link.",)),
    ),
}  # fmt: skip
WANTED: Final[Mapping[str, tuple[tuple[str, str], ...]]] = {
    "ride_height": (("ride_height", "left and right"),),
    "square": (
        ("wheelbase", "wheelbase"), ("diagonal", "diagonals"), ("off_centre", "in the middle"),
    ),
    "caster": (
        ("caster", "caster"), ("cross_caster", "caster, side to side"), ("camber", "camber"),
        ("cross_camber", "camber, side to side"),
    ),
    "toe": (("toe", "toe"),),
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignField:
    """One thing to read, as a form shows it."""

    path: str
    ident: str
    asks: str
    how: str
    example: str
    choices: tuple[tuple[str, str], ...]
    text: str
    many: bool
    fault: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignGroup:
    """Fields that are read together."""

    title: str
    fields: tuple[AlignField, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignStepPage:
    """One step: its state, what was read, what is wanted, and what to fill in."""

    key: str
    number: int
    title: str
    state: str
    told: tuple[str, ...]
    understood: str
    first: str
    cautions: tuple[str, ...]
    wanted: tuple[str, ...]
    groups: tuple[AlignGroup, ...]
    faulty: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AlignPage:
    """Everything that the page says."""

    sentence: str
    facts: tuple[str, ...]
    steps: tuple[AlignStepPage, ...]
    svg: str
    svg_words: str
    turn: tuple[str, ...]
    evidence: tuple[str, ...]
    rests: tuple[str, ...]
    brief: tuple[str, ...]
    not_ok: str
    before: tuple[str, ...]
    caution: str


def align_page(
    alignment: Alignment,
    texts: Mapping[str, str],
    faults: Mapping[str, str],
    system: str = "metric",
) -> AlignPage:
    """Words of the page; ``texts`` fill its forms, ``faults`` stand beside what was refused."""
    front = alignment.axle == "front"
    return AlignPage(
        sentence=align_sentence(alignment, system),
        facts=(ON_THE_ROD, TURNED) if front else (),
        steps=tuple(
            _step(alignment, step, number, texts, faults, system)
            for number, step in enumerate(STEPS, 1)
            if front or step != "steering_wheel"
        ),
        svg=toe_drawing(alignment, system, text=LETTERS),
        svg_words=drawing_words(alignment, system),
        turn=tuple(turn_lines(alignment, system)),
        evidence=tuple(evidence_lines(alignment, system)),
        rests=tuple(rests_lines(alignment, system)),
        brief=shop_brief(alignment, system),
        not_ok=NOT_OK,
        before=BEFORE_DRIVING,
        caution=CAUTION,
    )


def _step(
    alignment: Alignment,
    step: str,
    number: int,
    texts: Mapping[str, str],
    faults: Mapping[str, str],
    system: str,
) -> AlignStepPage:
    groups = _groups(alignment.axle, step, texts, faults)
    state = alignment.state(step)
    return AlignStepPage(
        key=step,
        number=number,
        title=STEPS[step],
        state=STATES[state],
        told=() if state == "not read" and step != "play" else tuple(
            step_lines(alignment, step, system)
        ),
        understood=echo_line(alignment, step, system),
        first=FIRST.get(step, "") if state == "put right" else "",
        cautions=AT_STEP[step],
        wanted=tuple(_wanted(alignment, step, system)),
        groups=groups,
        faulty=any(each.fault for group in groups for each in group.fields),
    )  # fmt: skip


def _groups(
    axle: str, step: str, texts: Mapping[str, str], faults: Mapping[str, str]
) -> tuple[AlignGroup, ...]:
    left = [
        field
        for field in ALIGNMENT_FIELDS
        if field.path.startswith(ROOMS[step]) and field.axle in {"both", axle}
    ]
    made = []
    for title, begins in GROUPS[step]:
        taken = [field for field in left if field.path.startswith(begins)]
        left = [field for field in left if field not in taken]
        if taken:
            fields = tuple(_field(field, texts, faults) for field in taken)
            made.append(AlignGroup(title=title, fields=fields))
    return tuple(made)


def _field(field: Field, texts: Mapping[str, str], faults: Mapping[str, str]) -> AlignField:
    return AlignField(
        path=field.path,
        ident=field.path.replace(".", "-").replace("_", "-"),
        asks=field.asks,
        how=field.how,
        example=field.example,
        choices=choice_labels(field),
        text=texts.get(field.path, ""),
        many=field.path in REPEATED,
        fault=faults.get(field.path, ""),
    )


def _wanted(alignment: Alignment, step: str, system: str) -> list[str]:
    """What is wanted at a step, and who says so: of what was read, else of the table."""
    lines = []
    for key, name in WANTED.get(step, ()):
        read = alignment.of(key)
        if read is not None:
            lines.append(_range(name, read.low, read.high, read.measured.kind, system))
            lines[-1] += f" ({said_by(read)})"
            continue
        if key in {"caster", "cross_caster"} and alignment.axle == "rear":
            continue
        of_rear = "toe_rear" if key == "toe" and alignment.axle == "rear" else key
        entry = alignment_target(of_rear, alignment.axle, alignment.rig.tyre.outer_diameter)
        lines.append(f"{name}: {entry.as_printed} ({_who(entry.origin.source.kind, entry.scope)})")
    return lines


def _range(name: str, low: float, high: float, kind: str, system: str) -> str:
    ends = [angle(end) if kind == "angle" else length(end, system) for end in (low, high)]
    return f"{name}: {ends[0].rpartition(' ')[0]} to {ends[1]}"


def _who(kind: str, scope: str) -> str:
    who = {"practice": "common practice, no source", "memory": "from memory"}
    told = who.get(kind, "another vehicle's manual")
    return f"{told}; {scope}"
