"""The swap plan in the terminal: what it takes, the steps in order, torques, oil, gates."""

from axlewright.errors import AxlewrightError
from axlewright.swap import Plan, Progress
from axlewright.views.swap_words import BoltWords, PlanWords, StepWords, plan_words


def plan_lines(
    plan: Plan,
    system: str = "metric",
    stop_lines: tuple[str, ...] = (),
    progress: Progress | None = None,
) -> list[str]:
    """Say a plan; a STOP stands before everything, and the plan behind it."""
    words = plan_words(plan, system, progress)
    lines = [*stop_lines, ""] if stop_lines else []
    lines += [words.title, words.sentence, words.proof, *words.unready, *words.facts]
    for stage, said in words.stages:
        rows = [step for step in words.steps if step.stage == stage]
        if rows:
            lines += ["", said, *(_row(step) for step in rows)]
    lines += ["", "Torque lines", *_torques(words)]
    lines += ["", "Oil", *words.oil] if words.oil else []
    lines += ["", "Toe, to drive to the shop", words.toe] if words.toe else []
    lines += ["", "Before driving, each with yes", *(f"  – {each}" for each in words.questions)]
    lines += ["", "Measured before, and again after", *(f"  – {each}" for each in words.measures)]
    lines += ["", "Comes due", *(f"  – {each}" for each in words.due)]
    lines += ["", words.caution, "Open a step down to its caution: --why NUMBER."]
    return lines


def plan_step_lines(
    plan: Plan, number: int, system: str = "metric", progress: Progress | None = None
) -> list[str]:
    """Say everything about one step."""
    words = plan_words(plan, system, progress)
    if not 1 <= number <= len(words.steps):
        raise AxlewrightError(
            f"There is no step {number}.", remedy=f"Give a number from 1 to {len(words.steps)}."
        )
    step = words.steps[number - 1]
    before = plan.work.after[step.key]
    names = "; ".join(plan.work.by_key[key].title for key in before)
    told = (
        ("Caution", step.caution),
        ("Hands", f"{step.hands}; {step.takes}"),
        ("After", names),
        ("Lifts", step.lifts),
        ("Tools", step.tools),
        ("Consumables", step.consumables),
        ("Photo", f"{step.photo}{' – not done without it' if step.must else ''}"),
        ("Fragile", step.fragile),
    )
    lines = [_row(step).strip(), step.do]
    lines += [f"{name}: {text}" for name, text in told if text]
    lines += step.more
    return lines + [f"{each.what}: {each.bolt}. {each.says}" for each in step.bolts]


def _row(step: StepWords) -> str:
    marks = [
        step.moves and f"{step.moves}: nobody under",
        "needs two" if step.two else "",
        "under it" if step.under else "",
        "photo first" if step.must else "",
    ]
    told = "; ".join(each for each in marks if each)
    tail = f"  [{told}]" if told else ""
    return f"{step.number:>3}  {step.clock:<11} {step.hands:<9} {step.title}{tail}"


def _filled(line: BoltWords) -> str:
    if not line.filled:
        return "Set to: ________"
    return f"Set to: {line.filled}{f' ({line.printed})' if line.printed else ''}."


def _torques(words: PlanWords) -> list[str]:
    lines = []
    for step in words.steps:
        for each in step.bolts:
            bolt = f" ({each.bolt})" if each.bolt else ""
            lines.append(f"  – {each.what}{bolt}: {each.says} {_filled(each)}")
    return lines
