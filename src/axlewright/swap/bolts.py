"""Torque lines: a computed range for general bolts, an empty line where only the maker's counts."""

from dataclasses import dataclass

from axlewright.physics import bolt
from axlewright.swap.chosen import Work
from axlewright.swap.facts import Facts
from axlewright.tables import (
    TaskBolt,
    fastener_grade_at,
    friction,
    task_bolts,
    thread,
)

UNDER_HEAD = 1.26  # mean bearing diameter over thread diameter, hexagon heads; memory
USED = 0.9  # of yield, pull and twist together: vdi2230
THREADS = "thread_class_b"  # clean, lightly oiled, plated or blackened
LOOSEST = 0.4  # of yield: below it no such bolt is meant to stand; memory


@dataclass(frozen=True, slots=True, kw_only=True)
class TorqueLine:
    """One line: what, how many, and in N m what may stand there.

    ``by`` is maker or range. ``low`` and ``high`` are the range of a general bolt: greased thread
    to clean and lightly oiled. Beside a maker's line they are what is plausible, never a target;
    None where nothing is computed.
    """

    key: str
    task: str
    what: str
    count: int
    thread: str
    grade: str
    by: str
    low: float | None
    high: float | None
    note: str


def bolt_range(name: str, grade: str) -> tuple[float, float]:
    """Tightening torque, N m, at nine tenths of yield: slippery thread, and usual one.

    References
    ----------
    vdi2230
    """
    rubs = friction(THREADS)
    return _torque(name, grade, rubs.low, USED), _torque(name, grade, rubs.value, USED)


def plausible_range(name: str, grade: str) -> tuple[float, float]:
    """Torques that such a bolt could be meant to have, N m: a check on typing, never a target."""
    rubs = friction(THREADS)
    return _torque(name, grade, rubs.low, LOOSEST), _torque(name, grade, rubs.high, USED)


def _torque(name: str, grade: str, rub: float, used: float) -> float:
    size = thread(name)
    strong = fastener_grade_at(grade, size.diameter).yield_strength
    pull = bolt.tightening_preload(size.diameter, size.pitch, strong, rub, used)
    seat = UNDER_HEAD * size.diameter
    return float(bolt.torque_by_friction(pull, size.diameter, size.pitch, seat, rub, rub))


def torque_lines(work: Work, facts: Facts, studs: int = 0) -> tuple[TorqueLine, ...]:
    """Every torque line of a plan, in the order of its tasks; ``studs`` of one wheel, if known."""
    found = [
        _line(each, 2 * studs if not each.count else each.count)
        for each in task_bolts().values()
        if each.task in work.by_key and facts.hold(each.only_if)
    ]
    rank = {task.key: task.rank for task in work.tasks}
    return tuple(sorted(found, key=lambda line: rank[line.task]))


def _line(each: TaskBolt, count: int) -> TorqueLine:
    low = high = None
    if each.thread:
        ends = bolt_range if each.by == "range" else plausible_range
        low, high = ends(each.thread, each.grade)
    return TorqueLine(
        key=each.key,
        task=each.task,
        what=each.what,
        count=count,
        thread=each.thread,
        grade=each.grade,
        by=each.by,
        low=low,
        high=high,
        note=each.note,
    )
