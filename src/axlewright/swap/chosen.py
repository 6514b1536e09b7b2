"""The tasks of one swap: those that this rig and this change ask for, each after its own."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from axlewright.swap.facts import Facts
from axlewright.tables import Task, tasks

STAGES = ("prepare", "support", "strip", "out", "bench", "in", "build", "ground", "prove")


@dataclass(frozen=True)
class Work:
    """Tasks in the order of the book, and for each what must be done before it."""

    tasks: tuple[Task, ...]
    after: Mapping[str, tuple[str, ...]]

    @cached_property
    def by_key(self) -> Mapping[str, Task]:
        """Task by its key."""
        return {task.key: task for task in self.tasks}

    @cached_property
    def ancestors(self) -> Mapping[str, frozenset[str]]:
        """Everything that comes before each task, however far back."""
        found: dict[str, frozenset[str]] = {}
        for key in in_order(self.after):
            near = self.after[key]
            found[key] = frozenset(near).union(*(found[each] for each in near))
        return found


def chosen(facts: Facts) -> Work:
    """Tasks whose conditions hold; what stood after one that falls away stands after its own."""
    every = tasks()
    kept = [task for task in every.values() if facts.hold(task.only_if)]
    keys = {task.key for task in kept}

    def before(task: Task) -> tuple[str, ...]:
        found: dict[str, None] = {}
        ahead = list(task.after)
        seen = set(ahead)
        while ahead:
            key = ahead.pop(0)
            if key in keys:
                found[key] = None
                continue
            more = [each for each in every[key].after if each not in seen]
            seen.update(more)
            ahead += more
        return tuple(found)

    after = {task.key: before(task) for task in kept}
    return Work(tuple(kept), after)


def in_order(after: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """Keys so that each comes after its own; raises where they go round in a circle."""
    left = {key: set(near) for key, near in after.items()}
    out: list[str] = []
    while left:
        ready = [key for key, near in left.items() if not near]
        if not ready:
            raise ValueError(f"these wait for one another: {', '.join(sorted(left))}")
        out += ready
        for key in ready:
            del left[key]
        for near in left.values():
            near.difference_update(ready)
    return tuple(out)
