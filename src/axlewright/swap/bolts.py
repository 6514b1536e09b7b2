"""Torque lines: a computed range for general bolts, an empty line where only the maker's counts."""

import re
from dataclasses import dataclass, replace
from typing import Final

from axlewright.errors import AxlewrightError
from axlewright.physics import bolt
from axlewright.swap.chosen import Work
from axlewright.swap.facts import Facts
from axlewright.tables import (
    TaskBolt,
    fastener_grade_at,
    friction,
    task_bolts,
    thread,
    threads,
)

UNDER_HEAD = 1.26  # mean bearing diameter over thread diameter, hexagon heads; memory
USED = 0.9  # of yield, pull and twist together: vdi2230
THREADS = "thread_class_b"  # clean, lightly oiled, plated or blackened
LOOSEST = 0.4  # of yield: below it no such bolt is meant to stand; memory
AS_IN: Final = "As in M16x2 10.9, or 5/8-11 grade 8: read it on the bolt's head, pitch by gauge."
_BOLT: Final = re.compile(
    r"(?:m\s*(?P<wide>\d+)(?:\s*[x×*]\s*(?P<pitch>\d(?:[.,]\d+)?))?|(?P<inch>\d(?:/\d+)?-\d+))"
    r"[\s,;]+(?:class|grade|gr\.?)?\s*(?P<grade>\d+(?:[.,]\d)?)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TorqueLine:
    """One line: what, how many, and in N m what may stand there.

    ``by`` is maker or range. ``low`` and ``high`` are the range of a general bolt: greased thread
    to clean and lightly oiled. Beside a maker's line they are what is plausible, never a target;
    None where nothing is computed. ``own`` says that somebody read thread and grade on this bolt.
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
    own: bool = False


@dataclass(frozen=True, slots=True)
class OwnBolt:
    """Thread and grade as somebody read them, by the names of the tables."""

    thread: str
    grade: str


def own_bolt(text: str) -> OwnBolt:
    """Read a bolt as it is written on its head; without a pitch the coarse thread is meant.

    Raises `AxlewrightError` where it cannot be told which is meant.

    Examples
    --------
    >>> own_bolt("M16 10.9")
    OwnBolt(thread='M16x2', grade='10.9')
    """
    read = _BOLT.fullmatch(text.strip().lower())
    if read is None:
        raise AxlewrightError(f"{text[:40]!r} is no bolt.", remedy=AS_IN)
    grade = read["grade"].replace(",", ".")
    name = read["inch"] or _metric(int(read["wide"]), read["pitch"])
    size = thread(name)
    row = fastener_grade_at(grade, size.diameter)
    if (row.system == "metric") != name.startswith("M"):
        raise AxlewrightError(
            f"{text[:40]!r}: {row.system} grades stand on {row.system} threads.", remedy=AS_IN
        )
    return OwnBolt(name, grade)


def _metric(wide: int, pitch: str | None) -> str:
    if pitch is not None:
        return f"M{wide}x{float(pitch.replace(',', '.')):g}"
    for each in threads().values():
        if each.series == "metric coarse" and round(1e3 * each.diameter) == wide:
            return each.key
    raise AxlewrightError(f"There is no coarse thread M{wide} in the table.", remedy=AS_IN)


def with_own(line: TorqueLine, own: OwnBolt | None) -> TorqueLine:
    """Tell the line for the bolt that somebody read."""
    if own is None:
        return line
    low, high = _ends(line.by, own.thread, own.grade)
    return replace(line, thread=own.thread, grade=own.grade, low=low, high=high, own=True)


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
        low, high = _ends(each.by, each.thread, each.grade)
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


def _ends(by: str, name: str, grade: str) -> tuple[float, float]:
    return (bolt_range if by == "range" else plausible_range)(name, grade)
