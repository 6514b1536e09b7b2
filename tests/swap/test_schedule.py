"""The order of work: against trying every order by hand, and what must never happen at once."""

import os
import subprocess
import sys
from itertools import permutations

import numpy as np
import pytest

from axlewright.errors import AxlewrightError
from axlewright.swap import apart, chosen, planned, scheduled
from swap.cases import HERON, ROOT, every_work, facts, heron_plan, small

WORKS = every_work()
SIZED = ("geared axle", "bare housing", "springs", "shafts")
SOLVED = [name for name in WORKS if name.startswith(SIZED) and name.endswith("front, full")]


def random_work(rng, count=6):
    rows = []
    for place in range(count):
        near = tuple(f"t{k}" for k in range(place) if rng.random() < 0.3)
        where = ("left", "right", "middle", "bench", "apart")[rng.integers(5)]
        moves = "axle" if where == "middle" and rng.random() < 0.3 else "no"
        rows.append((f"t{place}", int(rng.integers(1, 3)), where, moves, False, near))
    return small(*rows)


def forbidden(one, other):
    """Written down anew: the same spot, or a move while somebody is at the vehicle."""
    spots = {"left", "right", "middle", "cab"}
    both = one.where in spots and other.where in spots
    return both and (one.where == other.where or one.moves != "no" or other.moves != "no")


def shortest(work, people, minutes):
    """Least minutes over every order in which tasks can be put in, each as early as it fits.

    Such orders hold a best one (Kolisch 1996 on serial generation; memory).
    """
    best = sum(minutes.values())
    for order in permutations(work.tasks):
        placed, ends = {}, {}
        for task in order:
            if any(near not in ends for near in work.after[task.key]):
                break
            start = max([ends[near] for near in work.after[task.key]], default=0)
            while not fits(task, start, minutes, placed, people):
                start += 1
            placed[task.key] = (task, start)
            ends[task.key] = start + minutes[task.key]
        else:
            best = min(best, max(ends.values()))
    return best


def fits(task, start, minutes, placed, people):
    for minute in range(start, start + minutes[task.key]):
        busy = [t for t, at in placed.values() if at <= minute < at + minutes[t.key]]
        if sum(t.people for t in busy) + task.people > people:
            return False
        if any(forbidden(task, t) for t in busy):
            return False
    return True


@pytest.mark.parametrize("seed", range(12))
def test_the_solver_finds_what_trying_every_order_finds(seed):
    rng = np.random.default_rng(seed)
    work, people = random_work(rng), int(rng.integers(2, 4))
    minutes = {task.key: int(rng.integers(1, 6)) for task in work.tasks}
    seconds = {key: 60.0 * each for key, each in minutes.items()}
    best = shortest(work, people, minutes)
    exact = scheduled(work, people, seconds, exact=True)
    assert exact.end / 60 == best
    assert exact.gap == 0.0
    ruled = scheduled(work, people, seconds, exact=False)
    assert ruled.end / 60 >= best
    assert ruled.least / 60 <= best  # what is called proved is


def held(work, schedule):
    """Everything that a schedule promises, looked at pair by pair."""
    slots = schedule.slots
    assert {slot.key for slot in slots} == set(work.by_key)
    at = {slot.key: slot for slot in slots}
    for slot in slots:
        task = work.by_key[slot.key]
        assert len(slot.hands) == task.people
        assert len(set(slot.hands)) == task.people
        assert all(at[near].end <= slot.start for near in work.after[slot.key])
    for place, one in enumerate(slots):
        for other in slots[place + 1 :]:
            together = one.start < other.end and other.start < one.end
            if not together:
                continue
            first, second = work.by_key[one.key], work.by_key[other.key]
            assert not set(one.hands) & set(other.hands), (one.key, other.key)
            assert not forbidden(first, second), (one.key, other.key)
            assert not (first.under and second.moves != "no")
            assert not (second.under and first.moves != "no")
    for slot in slots:  # whoever goes under does so after a look that is later than the last move
        if work.by_key[slot.key].under:
            looks = [s.end for s in slots if work.by_key[s.key].photo_must and s.end <= slot.start]
            moves = [
                s.end for s in slots if work.by_key[s.key].moves != "no" and s.end <= slot.start
            ]
            assert looks
            assert not moves or max(looks) > max(moves), slot.key


@pytest.mark.parametrize("people", [2, 3])
@pytest.mark.parametrize("name", WORKS)
def test_no_hands_in_two_places_and_nobody_under_what_moves(name, people):
    work = WORKS[name]
    seconds = {task.key: task.practised[0] for task in work.tasks}
    held(work, scheduled(work, people, seconds, exact=False))


@pytest.mark.parametrize("people", [2, 3])
@pytest.mark.parametrize("name", SOLVED)
def test_the_solvers_order_holds_all_that_as_well(name, people):
    work = WORKS[name]
    seconds = {task.key: task.practised[0] for task in work.tasks}
    held(work, scheduled(work, people, seconds, exact=True))


def test_one_person_is_told_which_tasks_need_two():
    work = WORKS["geared axle, coil, three, front, full"]
    with pytest.raises(AxlewrightError) as told:
        scheduled(work, 1, {task.key: 60.0 for task in work.tasks})
    for task in work.tasks:
        assert (task.title in str(told.value)) == (task.people > 1), task.title
    assert "two people" in str(told.value)


def test_one_person_can_do_what_needs_no_second():
    work = chosen(facts("shafts", running="no"))
    schedule = scheduled(work, 1, {task.key: 600.0 for task in work.tasks})
    assert schedule.people == 1
    assert max(len(slot.hands) for slot in schedule.slots) == 1


def test_nobody_runs_it_on_stands_alone():
    work = chosen(facts("shafts"))
    with pytest.raises(AxlewrightError, match="RUN ON THE STANDS"):
        scheduled(work, 1, {task.key: 600.0 for task in work.tasks})
    assert planned(HERON, [], people=1, kind="shafts").facts.word("running") == "no"


@pytest.mark.parametrize("people", [0, 4, -1])
def test_other_numbers_of_people_are_refused(people):
    work = WORKS["wheels, coil, three, front, full"]
    with pytest.raises(AxlewrightError, match="1 to 3"):
        scheduled(work, people, {task.key: 60.0 for task in work.tasks})


def test_more_people_never_make_it_longer():
    work = WORKS["bare housing, coil, three, front, full"]
    seconds = {task.key: task.practised[1] for task in work.tasks}
    two, three = (scheduled(work, people, seconds) for people in (2, 3))
    assert three.end <= two.end
    assert two.gap < 0.05


def test_pairs_that_must_stay_apart_are_not_told_where_the_order_parts_them():
    work = WORKS["springs, coil, three, front, full"]
    for one, other in apart(work):
        assert one not in work.ancestors[other]


INTERRUPTED = """
import signal, time
from swap.cases import heron_plan
signal.signal(signal.SIGINT, signal.default_int_handler)  # a run in the background ignores it
heron_plan()
try:
    signal.raise_signal(signal.SIGINT)  # to this thread; sent to the process, any may take it
    time.sleep(60.0)
except KeyboardInterrupt:
    print("told")
"""


@pytest.mark.skipif(sys.platform == "win32", reason="signals are other things there")
def test_the_solver_leaves_ctrl_c_to_whoever_called_it():
    done = subprocess.run(
        [sys.executable, "-c", INTERRUPTED],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT / "tests")},
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )
    assert done.stdout == "told\n", done.stderr


def test_a_schedule_is_the_same_again():
    plan = heron_plan()
    heron_plan.cache_clear()
    assert heron_plan().schedule == plan.schedule
