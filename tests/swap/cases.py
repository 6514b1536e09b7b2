"""Every layout and kind of work that a plan is asked for, and small works to try by hand."""

import dataclasses
from functools import cache
from itertools import product
from pathlib import Path

from axlewright.rig import changed_rig, load_change, load_rig
from axlewright.swap import KINDS, Fact, Facts, Work, chosen, planned
from axlewright.tables import tasks

ROOT = Path(__file__).parents[2]
HERON = load_rig(str(ROOT / "examples/rigs/heron.toml"))
HOUSING = load_change(str(ROOT / "examples/changes/heavier-housing.toml"))
AFTER, _ = changed_rig(HERON, HOUSING)
LAYOUTS = (("coil", "three"), ("coil", "four"), ("coil-over", "four"), ("leaf", "leaves"))


def facts(kind, spring="coil", arms="three", axle="front", **more):
    words = {
        "kind": kind,
        "axle": axle,
        "arms": arms,
        "spring": spring,
        "lock": "command",
        "lock_new": "yes",
        "track_bar": "no" if arms == "leaves" else "yes",
        "stabiliser": "yes",
        "sensors": "yes",
        "brackets": "no",
        "pinion": "below",
        "tie_rod": "old",
        "arms_moved": "yes",
        "springs_moved": "yes",
        "running": "yes",
        **more,
    }
    return Facts(tuple(Fact(name=name, word=word, who="said") for name, word in words.items()))


@cache
def every_work():
    """Each kind on each layout, front and rear, with everything and with the least."""
    found = {}
    for kind, (spring, arms), axle, full in product(
        KINDS, LAYOUTS, ("front", "rear"), (True, False)
    ):
        fewer = ("stabiliser", "sensors", "lock_new", "running")
        least = {} if full else dict.fromkeys(fewer, "no")
        less = {} if full else {"lock": "other", "brackets": "yes", "tie_rod": "its own"}
        bar = {} if full else {"track_bar": "no"}
        name = f"{kind}, {spring}, {arms}, {axle}, {'full' if full else 'least'}"
        found[name] = chosen(facts(kind, spring, arms, axle, **least, **less, **bar))
    return found


@cache
def heron_plan(kind="geared axle", people=2, skill="practised"):
    return planned(HERON, [(HOUSING, AFTER)], people=people, skill=skill, kind=kind)


def small(*rows):
    """A work out of (key, people, where, moves, under, after)."""
    usual = next(iter(tasks().values()))
    made = [
        dataclasses.replace(
            usual,
            key=key,
            people=people,
            where=where,
            moves=moves,
            under=under,
            rank=rank,
            after=after,
        )
        for rank, (key, people, where, moves, under, after) in enumerate(rows)
    ]
    return Work(tuple(made), {task.key: task.after for task in made})
