"""The swap in words: what it takes, each step with its caution, torques, oil, gates and proof."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from axlewright import units
from axlewright.swap import (
    QUESTIONS,
    Band,
    Plan,
    Progress,
    TorqueLine,
    lines_of,
    missing_values,
)
from axlewright.tables import Task
from axlewright.views.phrases import plain, quantity
from axlewright.views.units_in_text import in_units

SWAP_CAUTION: Final = (
    "Decision support, not a certificate. The makers' manuals, local law and licensed practice "
    "come first; welding and gear setting are for those qualified. An alignment shop confirms "
    "before road use."
)
STAGE_WORDS: Final[Mapping[str, str]] = {
    "prepare": "Before anything is lifted",
    "support": "Lifted and held",
    "strip": "Stripped",
    "out": "Out",
    "bench": "On the bench",
    "in": "In",
    "build": "Built up",
    "ground": "On its wheels",
    "prove": "Proved",
}
PEOPLE: Final = ("nobody", "one person", "two people", "three people")
LOOK_FIRST: Final = "Nobody goes under before the photo of the support."


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltWords:
    """One torque line: what, the bolt, what may stand there, and what was written."""

    key: str
    what: str
    bolt: str
    says: str
    by: str
    filled: str
    printed: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StepWords:
    """One step as every face shows it."""

    number: int
    key: str
    title: str
    stage: str
    clock: str
    takes: str
    hands: str
    two: bool
    moves: str
    under: bool
    gate: bool
    do: str
    caution: str
    photo: str
    must: bool
    lifts: str
    tools: str
    consumables: str
    fragile: str
    more: list[str]
    bolts: list[BoltWords]
    state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanWords:
    """The whole plan as every face shows it."""

    title: str
    sentence: str
    unready: list[str]
    facts: list[str]
    proof: str
    steps: list[StepWords]
    stages: list[list[str]]
    oil: list[str]
    toe: str
    questions: list[str]
    measures: list[str]
    looks: list[list[str]]
    due: list[str]
    tools: str
    consumables: str
    caution: str


def plan_words(plan: Plan, system: str = "metric", progress: Progress | None = None) -> PlanWords:
    """Put a plan into words; with ``progress``, each step with how it stands."""
    how = progress or Progress()
    return PlanWords(
        title=f"{plan.rig}, {plan.axle} axle: {plan.facts.word('kind')}",
        sentence=plan_sentence(plan),
        unready=unready_lines(plan, how),
        facts=fact_lines(plan),
        proof=proof_line(plan),
        steps=[_step(plan, number, system, how) for number in range(len(plan.order))],
        stages=[[key, STAGE_WORDS[key]] for key in STAGE_WORDS],
        oil=oil_lines(plan, system),
        toe=toe_line(plan, system),
        questions=[each.question for each in plan.questions],
        measures=[
            f"{each.title}{f' ({each.note})' if each.note else ''}" for each in plan.measures
        ],
        looks=[[each.key, each.title, each.how] for each in plan.looks],
        due=[in_units(line, system) for line in _due(plan)],
        tools=_gathered(task.tools for task in plan.work.tasks),
        consumables=_gathered(task.consumables for task in plan.work.tasks),
        caution=SWAP_CAUTION,
    )


DUE: Final = (
    "Wheel nuts: after 80 km, wheels on the ground, crosswise.",
    "Every fastener that was touched, leaf clamps too: after 800 km; paint marks before that.",
    "New gears' oil and the magnet: after 800 km.",
    "Alignment printed by a shop before road use, and once more after 800 km.",
    "Hubs felt and looked at after the first drive, and before each trip.",
)


def _due(plan: Plan) -> list[str]:
    geared = plan.oil is not None and plan.facts.word("kind") != "shafts"
    return [line for line in DUE if geared or not line.startswith("New gears' oil")]


def plan_sentence(plan: Plan) -> str:
    """What it takes, in one sentence or two."""
    who = f"{PEOPLE[plan.people].capitalize()}, {plan.skill}"
    swap = ""
    if plan.swap is not None:
        swap = (
            f"{_band(plan.swap)} from the first jack to the last bolt with the weight on the "
            f"wheels; "
        )
    return (
        f"{who}: {swap}{_band(plan.whole)} with preparing and proving, {_band(plan.hands)} of work "
        f"by all hands. One day in twenty is longer than {hours(plan.bad_day)}."
    )


def unready_lines(plan: Plan, progress: Progress) -> list[str]:
    """Why work may not begin; nothing where it may."""
    lines = list(plan.blocks)
    empty = missing_values(plan, progress)
    if empty:
        lines.append(
            f"NOT READY: the maker's value is missing for {', '.join(empty)}. No value is computed "
            "for these."
        )
    return lines


def fact_lines(plan: Plan) -> list[str]:
    """What the plan hangs on, with who says so; what is assumed with how to say otherwise."""
    lines = []
    for fact in plan.facts.each:
        if fact.who == "assumed" and fact.name in plan.asked:
            asks, words = QUESTIONS[fact.name]
            lines.append(f"Assumed: {asks} {fact.word} ({fact.name}; {' or '.join(words)}).")
        elif fact.name == "kind":
            kind = f"Kind of work: {fact.word}"
            lines.append(
                f"{kind} (assumed of the change)." if fact.who == "assumed" else f"{kind}."
            )
    return lines


def proof_line(plan: Plan) -> str:
    """Whether a better order is possible, and by whom that was looked into."""
    made = plan.schedule
    if made.gap == 0.0:
        return (
            f"No order of these steps with these hands ends sooner ({made.solver}, middle times)."
        )
    return (
        f"Another order may end up to {100.0 * made.gap:.0f} % sooner; no more than that is "
        f"possible ({made.solver}, middle times)."
    )


def oil_lines(plan: Plan, system: str = "metric") -> list[str]:
    """The oil's level and how much, with what they rest on."""
    oil = plan.oil
    if oil is None:
        return []
    low, middle, high = (1e3 * each for each in oil.volume)
    level, plug = oil.level[1], oil.plug[1]
    given = "" if oil.slope_given else ", assumed"
    slope = quantity(oil.slope, "angle", system, 2)
    ends = f"{_signed(oil.level[0], system)} to {_signed(oil.level[2], system)}"
    first = (
        f"Oil to {_signed(level, system)} the axle's line (band {ends}), so that the pinion's "
        f"outer bearing dips in it with the pinion at {slope} up{given}; about "
        f"{plain(middle, 2)} L ({plain(low, 2)} to {plain(high, 2)}), and what the tubes take."
    )
    lines = [first]
    if oil.more[1] > 1e-5:
        more = [plain(1e6 * max(each, 0.0), 2) for each in oil.more]
        short = quantity(level - plug, "length", system, 2)
        lines.append(
            f"The cover's plug, as it would stand, stops {short} short of that: {more[1]} mL more "
            f"({more[0]} to {more[2]}). Fill from above, or with the pinion held level, and mark a "
            "new level."
        )
    else:
        lines.append("The cover's plug stands high enough at this slope.")
    lines.append(
        "Sizes of the centre are assumed from the ring gear: look with a rule at the bearing and "
        "the plug of yours; the maker's quantity comes first where the slope is the maker's."
    )
    return lines


def toe_line(plan: Plan, system: str = "metric") -> str:
    """Toe by tape, to drive to the shop; empty where toe is not touched."""
    toe = plan.toe
    if toe is None:
        return ""
    ends = f"{quantity(toe.low, 'length', system, 2)} to {quantity(toe.high, 'length', system, 2)}"
    across = quantity(plan.tyre_across, "length", system, 3)
    return (
        f"Toe-in {quantity(toe.aim, 'length', system, 2)} ({ends}) at the tread, {across} across: "
        f"{toe.scope}. Toe done is not ok to drive."
    )


def hours(seconds: float) -> str:
    """A time as people say it.

    Examples
    --------
    >>> hours(540), hours(15000)
    ('9 min', '4.2 h')
    """
    return f"{seconds / 60:.0f} min" if seconds < 5400 else f"{seconds / 3600:.1f} h"


def torque_says(line: TorqueLine, system: str = "metric") -> str:
    """What may stand in a torque line."""
    if line.low is None or line.high is None:
        return "Maker's value only. Nothing is computed."
    unit = units.SYSTEMS[system]["torque"]
    ends = [plain(each / units.known("torque")[unit], 2) for each in (line.low, line.high)]
    if line.by == "maker":
        return (
            f"Maker's value only: no target. Beyond {ends[0]} to {ends[1]} {unit} look again at "
            "what you typed."
        )
    return (
        f"{ends[0]} (greased) to {ends[1]} {unit} (clean, lightly oiled); the manual comes first."
    )


def _step(plan: Plan, place: int, system: str, progress: Progress) -> StepWords:
    slot = plan.schedule.slots[place]
    task = plan.work.by_key[slot.key]
    if task.key in progress.done:
        state = "done"
    else:
        state = "left out" if task.key in progress.left_out else "open"
    moves = {"axle": "AXLE MOVES", "vehicle": "VEHICLE MOVES"}.get(task.moves, "")
    low, high = plan.minutes[task.key]
    return StepWords(
        number=place + 1,
        key=task.key,
        title=in_units(task.title, system),
        stage=task.stage,
        clock=f"{_clock(slot.start)}–{_clock(slot.end)}",
        takes=f"{low / 60:.0f} to {high / 60:.0f} min",
        hands=" + ".join(slot.hands) or ("the shop" if task.skill == "shop" else "waits"),
        two=task.people > 1,
        moves=moves,
        under=task.under,
        gate=task.gate,
        do=in_units(task.do, system),
        caution=in_units(task.caution, system),
        photo=task.photo,
        must=task.photo_must,
        lifts=_lifts(plan, task, system),
        tools=task.tools,
        consumables=task.consumables,
        fragile=task.fragile,
        more=_more(plan, task, system),
        bolts=[
            _bolt(line, system, progress)
            for line in lines_of(plan, progress)
            if line.task == task.key
        ],
        state=state,
    )


def _more(plan: Plan, task: Task, system: str) -> list[str]:
    measures = [each.title for each in plan.measures]
    told = {
        "toe_home": [toe_line(plan, system)],
        "measure_before": measures,
        "measure_after": measures,
        "before_driving": [each.question for each in plan.questions],
        "apart_looks": [f"{each.title}: {each.how}" for each in plan.looks],
    }
    if task.key == "oil_in":
        return oil_lines(plan, system)
    return told.get(task.key, [LOOK_FIRST] if task.under else [])


def _bolt(line: TorqueLine, system: str, progress: Progress) -> BoltWords:
    set_to = progress.values.get(line.key)
    count = f"{line.count} × " if line.count else ""
    size = f"{count}{line.thread} {line.grade}".strip() if line.thread else count.rstrip(" ×")
    bolt = f"{size}, {'as read' if line.own else 'usual: read yours'}" if line.thread else size
    return BoltWords(
        key=line.key,
        what=line.what,
        bolt=bolt,
        says=torque_says(line, system) + (f" {line.note.capitalize()}." if line.note else ""),
        by=line.by,
        filled="" if set_to is None else units.show(set_to.torque, "torque", system, 3),
        printed="" if set_to is None else set_to.printed,
    )


def _lifts(plan: Plan, task: Task, system: str) -> str:
    if not task.lifts:
        return ""
    name = "new axle" if task.key == "axle_under" else task.lifts
    low, middle, high = plan.lifts[name]
    told = quantity(middle, "mass", system, 2)
    ends = [quantity(each, "mass", system, 2).split()[0] for each in (low, high)]
    what = {"front": "the axle's share of the vehicle", "axle": "the axle without wheels"}
    return f"{what.get(task.lifts, f'a {task.lifts}')}: about {told} ({ends[0]} to {ends[1]})"


def _band(band: Band) -> str:
    low, high = hours(band.low), hours(band.high)
    if low.split()[1] == high.split()[1]:
        low = low.split()[0]
    return f"{hours(band.middle)} ({low} to {high})"


def _signed(value: float, system: str) -> str:
    told = quantity(abs(value), "length", system, 2)
    return f"{told} {'below' if value < 0.0 else 'above'}"


def _clock(seconds: float) -> str:
    minutes = round(seconds / 60)
    return f"{minutes // 60}:{minutes % 60:02d}"


def _gathered(texts: Iterable[str]) -> str:
    found: dict[str, None] = {}
    for text in texts:
        for each in text.split(", "):
            if each:
                found[each] = None
    return ", ".join(found)
