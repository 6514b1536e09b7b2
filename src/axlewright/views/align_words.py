"""The garage alignment in words: the sentence first, the order, what to turn, what it rests on."""

from math import degrees
from typing import Final

from axlewright import units
from axlewright.geometry import Alignment, Judged, Recentring, RodTurn
from axlewright.rig import ALIGNMENT_FIELDS
from axlewright.tables import alignment_mark, instrument
from axlewright.views.align_phrases import (
    STATES,
    STEPS,
    across,
    angle,
    fine,
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
from axlewright.views.answer import CAUTION, drive_lines
from axlewright.views.phrases import quantity

BAND: Final = 78
STRAIGHT: Final = 0.017  # rad at the steering wheel; nobody sees less
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


def turn_lines(alignment: Alignment, system: str = "metric") -> list[str]:
    """What to turn, which way and how far, in the order of doing."""
    lines = []
    if alignment.track_bar is not None:
        what = "longer" if alignment.track_bar > 0.0 else "shorter"
        lines.append(
            f"Track bar {length(abs(alignment.track_bar), system)} {what}: it moves the axle to "
            "the middle and sets no toe. Its adjuster turns with one end off or by its own sleeve."
        )
    turn, centre = alignment.turn, alignment.recentring
    if turn is not None:
        lines += rod_lines(turn, system)
    if centre is not None:
        if turn is not None and centre.moves:
            lines.append(
                f"Only the {centre.moves} wheel moves while the drag link holds the other: that "
                "is right, the drag link shares it out afterwards."
            )
        lines += recentring_lines(centre, system)
    return lines


def rod_lines(turn: RodTurn, system: str = "metric") -> list[str]:
    """What to do to the tie rod."""
    what = "longer" if turn.longer else "shorter"
    place = "ahead of" if turn.ahead else "behind"
    grown, sure = length(abs(turn.growth), system), length(1.645 * turn.doubt, system)
    lines = [
        f"Tie rod {grown} {what} (± {sure}): {turns_words(turn)}; {way_words(turn)}.",
        (
            f"The rod lies {place} the axle; on its other side the same toe would ask for the "
            "opposite turn. Toe is set here, never on the track bar."
        ),
        (
            "Mark sleeve and rod, loosen clamps or jam nuts, turn, tighten, roll forward a turn of "
            "the wheels, read again."
        ),
        (
            f"Solved in space it is {fine(turn.growth, system)}; the simple sum, toe times arm, "
            f"says {fine(turn.simple, system)}."
        ),
    ]
    if turn.one_flat is not None and turn.in_place:
        lines.append(f"One flat is worth {angle(turn.one_flat)} of toe.")
    return lines


def recentring_lines(centre: Recentring, system: str = "metric") -> list[str]:
    """What to do to the drag link."""
    rod = centre.rod
    what = "longer" if rod.longer else "shorter"
    if abs(centre.wheel_off) < STRAIGHT:
        return ["The steering wheel stays where it is, as far as this can be told; drive and look."]
    lines = [
        (
            f"Left alone, the steering wheel would stand {wheel_off(centre)}. "
            f"Drag link {length(abs(rod.growth), system)} {what}: "
            f"{turns_words(rod)}; {way_words(rod)}."
        )
    ]
    if rod.turns is not None and rod.turns > 1.0:
        lines.append(
            "More than a turn of the drag link: first see that the steering box is at its centre; "
            "only then is the wheel itself put over."
        )
    return lines


def wheel_off(centre: Recentring) -> str:
    """Where the steering wheel would stand."""
    side = "left" if centre.wheel_off > 0.0 else "right"
    return f"{degrees(abs(centre.wheel_off)):.0f} deg to the {side} when driving straight"


def wheel_lines(alignment: Alignment) -> list[str]:
    """The steering wheel as a step: last, by the drag link."""
    centre = alignment.recentring
    if centre is None:
        return ["last, on the drag link; say where it stands when driving straight"]
    if abs(centre.wheel_off) < STRAIGHT:
        return ["stays where it is, as far as this can be told; drive and look"]
    return [f"would stand {wheel_off(centre)}; set it on the drag link, below"]


def evidence_lines(alignment: Alignment, system: str = "metric") -> list[str]:
    """What the figures say about what is bent, and how the simple rule errs."""
    lines = []
    for sweep in alignment.sweeps:
        how = "three readings, exact" if sweep.three else "two readings, within 0.04 deg"
        told = f"{sweep.side} caster by the sweep: {measured(sweep.caster, system)} ({how})"
        if sweep.rule is not None:
            told += f"; one and a half times the change of camber says {angle(sweep.rule)}"
        if sweep.rule_off is not None:
            told += f", {100.0 * sweep.rule_off:.1f} % off"
        lines.append(told)
        if sweep.inclination is not None:
            lines.append(
                f"{sweep.side} inclination {measured(sweep.inclination, system)}: a sweep "
                "magnifies what the gauge leaves open, so wide a band is honest"
            )
    for side, level in alignment.level_frame.items():
        lines.append(
            f"{side} caster with the frame level, nose-down added: {measured(level, system)}"
        )
    if alignment.setback is not None:
        ahead = "left" if alignment.setback.value > 0.0 else "right"
        lines.append(
            f"axle turned in plan by {angle(abs(alignment.setback.value))} ± "
            f"{angle(alignment.setback.half)}, {ahead} side ahead"
        )
    return lines + _bent_lines(alignment)


def _bent_lines(alignment: Alignment) -> list[str]:
    """Included angle as evidence: knuckle or tube."""
    together = alignment.of("included")
    cambers = [each for each in alignment.judged if each.key == "camber"]
    off = [each.side for each in cambers if each.verdict == "out"]
    if not off:
        return []
    sides = " and ".join(off)
    if together is None or together.verdict == "cannot tell":
        return [
            (
                f"{sides} camber is out and a beam axle has no adjustment for it: knuckle or tube "
                "is bent, or a joint is loose. Camber and inclination together would tell which; "
                "here it cannot be told"
            )
        ]
    if together.verdict == "out":
        return [
            (
                f"{sides} camber is out, and camber with inclination differs left to right: that "
                "angle belongs to the knuckle. Look there first"
            )
        ]
    return [
        (
            f"{sides} camber is out while camber with inclination agrees left to right: the "
            "knuckle is as it was, the tube or end forging is bent"
        )
    ]


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
