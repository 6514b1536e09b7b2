"""The garage alignment in words: the sentence first, the order, what to turn, what it rests on."""

from typing import Final

from axlewright import units
from axlewright.geometry import Alignment, Judged
from axlewright.rig import ALIGNMENT_FIELDS
from axlewright.tables import alignment_mark, instrument
from axlewright.views.align_evidence import evidence_lines
from axlewright.views.align_phrases import (
    STATES,
    STEPS,
    across,
    length,
    measured,
    name_of,
    said_by,
    settle,
    toe_range,
    toe_words,
    turns_words,
    wanted,
    way_words,
)
from axlewright.views.align_turn_words import turn_lines, wheel_lines
from axlewright.views.answer import CAUTION, drive_lines
from axlewright.views.phrases import quantity

BAND: Final = 78
NOT_OK: Final = "Toe done is not “ok to drive”."
BEFORE_DRIVING: Final = (
    "No open play anywhere, clamps and jam nuts tight, joints not cocked against each other.",
    "Steering free from lock to lock, stops set, hoses free at full droop and lock.",
    "Brakes pumped and tried; every torque line filled from the maker's manual.",
    "Then a slow loop, hands on the hubs, and a second look. Then read toe again.",
)
STEP_NUMBERS: Final = {step: number for number, step in enumerate(STEPS, 1)}
OF_STEP: Final = {
    "ride_height": ("ride_height",),
    "square": ("wheelbase", "diagonal", "off_centre"),
    "caster": ("camber", "cross_camber", "caster", "cross_caster", "included"),
    "toe": ("toe",),
}
FIRST: Final = {
    "ride_height": "set the ride height first: springs, load, pressures. All that follows moves "
    "with it.",
    "play": "take the play out first; nothing that is read now will stay.",
    "square": "get the axle square and in the middle first: arms and their bolts for square, the "
    "track bar for the middle.",
    "caster": "put caster and camber right first; toe moves with them.",
}


def align_sentence(alignment: Alignment, system: str = "metric") -> str:
    """The answer in one sentence."""
    first = alignment.first_in_the_way
    toe = alignment.of("toe")
    if first:
        later = " Toe is told below, for later." if toe is not None else ""
        return f"Not toe yet: {FIRST[first]}{later}"
    if toe is not None:
        unseen = alignment.play == "not looked at"
        play = " Look for play first: with play in it no reading stays." if unseen else ""
        return _toe_sentence(alignment, toe, system) + play
    if all(alignment.state(step) == "not read" for step in STEPS):
        return "Nothing has been read yet: begin with ride height, end with toe."
    return "What was read is told below; toe was not read."


def _toe_sentence(alignment: Alignment, toe: Judged, system: str) -> str:
    """Toe, what is wanted and what to turn."""
    told = toe_words(alignment, system)
    span = toe_range(toe, alignment.diameter, system)
    if toe.verdict == "within":
        return f"Toe is as wanted: {told}; wanted {span}."
    turn = alignment.turn
    if turn is None and alignment.axle == "rear" and toe.verdict == "out":
        rear = "A rear axle has nothing to turn: look for what is bent or loose."
        return f"Toe is off: {told}; wanted {span}. {rear}"
    if turn is None:
        return f"Cannot tell whether toe is right: {told}; wanted {span}: {settle(toe)}."
    what = "longer" if turn.longer else "shorter"
    how = f", {turns_words(turn)}, {way_words(turn)}" if turn.turns is not None else ""
    sure = "Toe is off" if toe.verdict == "out" else "Toe may be off, and cannot be told"
    grown = length(abs(turn.growth), system)
    return f"{sure}: {told}; wanted {span}. Make the tie rod {grown} {what}{how}."


def align_lines(alignment: Alignment, system: str = "metric", width: int = 100) -> list[str]:
    """Every line of the answer for a terminal."""
    lines = [f"{alignment.rig.name}: {alignment.axle} axle, alignment", ""]
    if alignment.stops:
        band = "#" * min(BAND, width)
        lines += [band, "STOP. Do not drive. Whatever the figures below say."]
        lines += [*(f"  {line}" for line in drive_lines(alignment.stops)), band, ""]
        lines += ["Behind the stop:"]
    said = echo_line(alignment, "toe", system)
    lines += [said[0].upper() + said[1:] + "."] if said else []
    rest = tuple(each for each in alignment.findings if each not in alignment.stops)
    lines.append(align_sentence(alignment, system))
    lines += [*(drive_lines(rest) if rest or not alignment.stops else []), ""]
    lines += order_lines(alignment, system)
    for title, told in (
        ("What to turn", turn_lines(alignment, system)),
        ("Evidence", evidence_lines(alignment, system)),
        ("What it rests on", rests_lines(alignment, system)),
        (NOT_OK + " Before driving", list(BEFORE_DRIVING)),
    ):
        if told:
            lines += ["", f"{title}:", *(f"  - {line}" for line in told)]
    return [*lines, CAUTION]


def order_lines(alignment: Alignment, system: str = "metric") -> list[str]:
    """The steps in the garage's order, each with what was read and the verdict."""
    lines = []
    for step, number in STEP_NUMBERS.items():
        if alignment.axle == "rear" and step == "steering_wheel":
            continue
        lines.append(f"{number} {STEPS[step]}: {STATES[alignment.state(step)]}")
        said = "" if step == "toe" else echo_line(alignment, step, system)  # stands at the top
        told = [said, *step_lines(alignment, step, system)]
        lines += [f"    {line}" for line in told if line]
    return lines


def step_lines(alignment: Alignment, step: str, system: str = "metric") -> list[str]:
    """What was read for one step."""
    if step == "play":
        where = alignment.readings.word("play.where")
        told = {
            "none": "nothing moved that should not",
            "some": f"something moves{f': {where}' if where else ''}. Cannot wait: fix before "
            "trip, then begin again",
            "not looked at": "nobody has looked, and never looked at is never sound",
        }
        return [told[alignment.play]]
    if step == "steering_wheel":
        return wheel_lines(alignment)
    return [
        judged_line(alignment, each, system)
        for each in alignment.judged
        if each.key in OF_STEP[step]
    ]


def judged_line(alignment: Alignment, judged: Judged, system: str) -> str:
    """One quantity: value, band, what is wanted, verdict."""
    if judged.key == "toe":
        told = f"{toe_words(alignment, system)}; wanted "
        told += toe_range(judged, alignment.diameter, system)
    else:
        told = f"{name_of(judged)} {measured(judged.measured, system)}; wanted "
        told += wanted(judged, system)
    if judged.verdict != "cannot tell":
        return f"{told}: {judged.verdict}"
    return f"{told}: cannot tell, so it counts as out; {settle(judged)}"


def rests_lines(alignment: Alignment, system: str = "metric") -> list[str]:
    """Readings echoed, instruments, and what was assumed."""
    readings, lines = alignment.readings, []
    if alignment.toe is not None:
        if not alignment.diameter_given:
            lines.append(
                f"the diameter was not said: taken as the new tyre's "
                f"{across(alignment.diameter, system)}, good to 3 %"
            )
        tool = instrument(alignment.toe.instrument)
        marks = alignment_mark(readings.word("toe.marks", "same_mark"))
        lines.append(
            f"toe with {tool.label}, to {marks.label} (scatter "
            f"{'of one reading' if tool.origin.remembered else ''} from memory or practice)"
        )
    turn = alignment.turn
    if turn is not None:
        if not turn.arm_given and not turn.taped:
            lines.append(f"the steering arm is assumed: {length(turn.arm, system)}; measure it")
        if not turn.ahead_given:
            place = "ahead of" if turn.ahead else "behind"
            lines.append(f"the tie rod is assumed {place} the axle: look, or it goes the wrong way")
        where = "as taped" if turn.taped else "assumed"
        how = "solved in space" if turn.exact else "by the simple sum: the rods could not be posed"
        lines.append(f"rods {how}, their ends {where}")
    centre = alignment.recentring
    if centre is not None and not centre.ratio_given:
        lines.append(f"steering ratio assumed: {centre.ratio:.0f} (14 to 20 is usual; memory)")
    if centre is not None and not centre.rod.ahead_given:
        place = "ahead of" if centre.rod.ahead else "behind"
        lines.append(f"the drag link is assumed to pull {place} the axle: look")
    for path, word, told in _STATE:
        if readings.word(path) == word:
            lines.append(told)
    lines += [f"{name_of(each)}: {said_by(each)}" for each in _once(alignment)]
    return lines


def _once(alignment: Alignment) -> list[Judged]:
    """One of each kind of quantity, for the sake of its target."""
    return list({each.key: each for each in reversed(alignment.judged)}.values())[::-1]


_STATE: Final = (
    (
        "state.standing",
        "on stands",
        "read on stands, where joints hang unloaded: read again on wheels",
    ),
    (
        "state.rolled",
        "no",
        "not rolled before reading: tyres stay strained; roll and repeat",
    ),
    ("state.tyres_alike", "no", "tyres differ: put pressures right and read again"),
    ("state.load", "empty", "read empty: loaded as for a trip it rides lower and reads otherwise"),
)


def echo_line(alignment: Alignment, step: str, system: str = "metric") -> str:
    """What was understood for one step, in words with unit and side; nothing where not read."""
    fields = {field.path: field for field in ALIGNMENT_FIELDS}
    out = []
    for path, answers in alignment.readings.answers.items():
        field = fields[path]
        if not path.startswith(ROOMS[step]):
            continue
        told = []
        for each in answers:
            if isinstance(each.value, str):
                told.append(str(each.value).replace("_", " "))
                continue
            kind = {"toe": "angle", "ratio": "plain"}.get(field.kind, field.kind)
            own = units.SYSTEMS[system][kind] if kind != "plain" else each.unit
            number = quantity(float(each.value), kind, system, 5)
            told.append(each.text if each.unit == own else f"{each.text} (= {number})")
        words = path.replace(".", ", ").replace("_", " ")
        out.append(f"{words} {' and '.join(told)}")
    return f"understood: {'; '.join(out)}" if out else ""


ROOMS: Final[dict[str, tuple[str, ...]]] = {
    "ride_height": ("state.", "ride_height."),
    "play": ("play.",),
    "square": ("square.",),
    "caster": ("floor.", "camber.", "caster.", "target.ca"),
    "toe": ("toe.", "tie_rod.", "target.toe", "target.from"),
    "steering_wheel": ("steering_wheel.", "drag_link."),
}
