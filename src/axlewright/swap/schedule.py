"""Who does what, and when: hands, spots and what must not happen at once, in the least time.

The order is found by a constraint solver where one is installed (the extra ``schedule``), else by
trying rules of priority; either way the answer says how far it may be from the best.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib.util import find_spec
from typing import Final

from axlewright.errors import AxlewrightError
from axlewright.swap.chosen import Work, in_order

MINUTE: Final = 60.0
SPOTS: Final = ("left", "right", "middle", "cab")  # one crew at a time in each
NAMES: Final = ("A", "B", "C")
EFFORT: Final = 1.0  # the solver's own count of work: the same answer on any machine


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """One task in time, s from the start, and whose hands do it."""

    key: str
    start: float
    end: float
    hands: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Schedule:
    """Tasks in time, by start; ``least`` is proved: no order can end sooner, s."""

    slots: tuple[Slot, ...]
    people: int
    end: float
    least: float
    solver: str

    @property
    def gap(self) -> float:
        """How far the end may be from the best, as a share of it."""
        return 0.0 if self.end <= 0.0 else max(0.0, self.end - self.least) / self.end

    @property
    def order(self) -> tuple[str, ...]:
        """Keys by start."""
        return tuple(slot.key for slot in self.slots)


def scheduled(
    work: Work, people: int, seconds: Mapping[str, float], *, exact: bool | None = None
) -> Schedule:
    """Give the order of least time for so many people.

    ``exact`` asks for the constraint solver or for the rules of priority; without it the solver is
    taken where it is installed. Raises `AxlewrightError` where a task needs more people than there
    are, and names those tasks.
    """
    if not 1 <= people <= len(NAMES):
        raise AxlewrightError(
            f"A plan for {people} people is not made.", remedy=f"Give 1 to {len(NAMES)}."
        )
    needs = [task.title for task in work.tasks if task.people > people]
    if needs:
        shown = "; ".join(needs)
        raise AxlewrightError(
            f"{len(needs)} of the tasks need two people, and there is one: {shown}.",
            remedy="Find a second person for those, and plan with two.",
        )
    minutes = {key: max(1, round(each / MINUTE)) for key, each in seconds.items()}
    least = _bound(work, people, minutes)
    starts, solver = _by_rules(work, people, minutes), "rules of priority"
    if exact or (exact is None and find_spec("ortools")):
        solver = "constraint solver"
        starts, proved = _by_solver(work, people, minutes, starts)
        least = max(least, proved)
    slots = _with_hands(work, people, minutes, starts)
    end = max((slot.end for slot in slots), default=0.0)
    return Schedule(slots=slots, people=people, end=end, least=MINUTE * least, solver=solver)


def apart(work: Work) -> tuple[tuple[str, str], ...]:
    """Pairs of tasks that may not happen at once, whoever does them, and that no order parts.

    Two in one spot; and while the axle or the vehicle moves, whatever is done at the vehicle.
    """
    found = []
    for place, one in enumerate(work.tasks):
        for other in work.tasks[place + 1 :]:
            if one.key in work.ancestors[other.key] or other.key in work.ancestors[one.key]:
                continue
            at_vehicle = one.where in SPOTS and other.where in SPOTS
            moving = not (one.moves == other.moves == "no")
            same = one.where == other.where and one.where in SPOTS
            if same or (at_vehicle and moving) or "road" in {one.where, other.where}:
                found.append((one.key, other.key))
    return tuple(found)


def _bound(work: Work, people: int, minutes: Mapping[str, int]) -> int:
    """Minutes that no order can beat: the longest chain, the hands, the busiest spot."""
    tails = _tails(work, minutes)
    hands = sum(task.people * minutes[task.key] for task in work.tasks)
    spots = [sum(minutes[task.key] for task in work.tasks if task.where == spot) for spot in SPOTS]
    return max([*tails.values(), -(-hands // people), *spots], default=0)


def _tails(work: Work, minutes: Mapping[str, int]) -> dict[str, int]:
    """Minutes from the start of each task to the end along its longest chain."""
    tails = dict.fromkeys(minutes, 0)
    for key in reversed(in_order(work.after)):
        tails[key] += minutes[key]
        for near in work.after[key]:
            tails[near] = max(tails[near], tails[key])
    return tails


def _by_rules(work: Work, people: int, minutes: Mapping[str, int]) -> dict[str, int]:
    """Best of a few rules: longest chain behind it, the book's order, the most hands first."""
    tails = _tails(work, minutes)
    rank = {task.key: place for place, task in enumerate(work.tasks)}
    hands = {task.key: task.people for task in work.tasks}
    rules = (
        lambda key: (-tails[key], rank[key]),
        lambda key: (rank[key],),
        lambda key: (-hands[key], -tails[key]),
        lambda key: (-tails[key] - 3 * minutes[key], rank[key]),
    )
    clash = clashes(work)
    found = [_in_turn(work, people, minutes, sorted(minutes, key=rule), clash) for rule in rules]
    return min(found, key=lambda starts: max(starts[key] + minutes[key] for key in starts))


def clashes(work: Work) -> dict[str, set[str]]:
    """By task, those that may not happen while it does."""
    clash: dict[str, set[str]] = {task.key: set() for task in work.tasks}
    for one, other in apart(work):
        clash[one].add(other)
        clash[other].add(one)
    return clash


def _in_turn(
    work: Work,
    people: int,
    minutes: Mapping[str, int],
    wanted: Sequence[str],
    clash: Mapping[str, set[str]],
) -> dict[str, int]:
    """Start whatever may start, the most wanted first, each time somebody is free."""
    starts: dict[str, int] = {}
    now = 0
    while len(starts) < len(minutes):
        running = {key for key, at in starts.items() if now < at + minutes[key]}
        free = people - sum(work.by_key[key].people for key in running)
        for key in wanted:
            if (
                key in starts
                or work.by_key[key].people > free
                or clash[key] & running
                or any(near not in starts or near in running for near in work.after[key])
            ):
                continue
            starts[key] = now
            running.add(key)
            free -= work.by_key[key].people
        ends = [starts[key] + minutes[key] for key in running]
        now = min(ends, default=now + 1)
    return starts


def _by_solver(
    work: Work, people: int, minutes: Mapping[str, int], hint: Mapping[str, int]
) -> tuple[dict[str, int], int]:
    from ortools.sat.python import cp_model

    horizon = max(hint[key] + minutes[key] for key in hint) if hint else 0
    model = cp_model.CpModel()
    starts = {key: model.new_int_var(0, horizon, key) for key in minutes}
    spans = {
        key: model.new_fixed_size_interval_var(starts[key], minutes[key], f"span {key}")
        for key in minutes
    }
    for key, nears in work.after.items():
        for near in nears:
            model.add(starts[key] >= starts[near] + minutes[near])
    busy = [task for task in work.tasks if task.people]
    model.add_cumulative([spans[each.key] for each in busy], [each.people for each in busy], people)
    for spot in SPOTS:
        model.add_no_overlap([spans[task.key] for task in work.tasks if task.where == spot])
    for pair in apart(work):
        model.add_no_overlap([spans[key] for key in pair])
    end = model.new_int_var(0, horizon, "end")
    for key in minutes:
        model.add(end >= starts[key] + minutes[key])
        model.add_hint(starts[key], hint[key])
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.catch_sigint_signal = False  # Ctrl+C stays the caller's
    solver.parameters.max_deterministic_time = EFFORT
    solver.parameters.use_overload_checker_in_cumulative = True
    solver.parameters.use_timetable_edge_finding_in_cumulative = True
    solver.parameters.use_hard_precedences_in_cumulative = True
    status = solver.solve(model)
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:  # the hint itself is an answer
        return dict(hint), 0
    found = {key: int(solver.value(starts[key])) for key in minutes}
    return found, round(solver.best_objective_bound)


def _with_hands(
    work: Work, people: int, minutes: Mapping[str, int], starts: Mapping[str, int]
) -> tuple[Slot, ...]:
    """Name the hands: whoever is free, first the one who was busy last at the same spot."""
    rank = {task.key: place for place, task in enumerate(work.tasks)}
    until = dict.fromkeys(NAMES[:people], 0)
    last = dict.fromkeys(NAMES[:people], "")
    slots = []
    for key in sorted(starts, key=lambda key: (starts[key], rank[key])):
        task, start = work.by_key[key], starts[key]
        free = [name for name in until if until[name] <= start]
        free.sort(key=lambda name: (last[name] != task.where, -until[name], name))
        hands = tuple(sorted(free[: task.people]))
        for name in hands:
            until[name], last[name] = start + minutes[key], task.where
        slots.append(
            Slot(
                key=key,
                start=MINUTE * start,
                end=MINUTE * (start + minutes[key]),
                hands=hands,
            )
        )
    return tuple(slots)
