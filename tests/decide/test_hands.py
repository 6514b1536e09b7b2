"""Work that other processes share gives the numbers that one gives, bit for bit."""

import multiprocessing
import os

import numpy as np
import pytest

from axlewright.decide import Hands, decide, hands_for, tried
from axlewright.rig import load_rig
from house.places import ROOT

HERON = str(ROOT / "examples" / "rigs" / "heron.toml")


def squared(number):
    """A piece of work; the third piece takes its process along, but not this one."""
    if number == 3 and multiprocessing.parent_process() is not None:
        os._exit(1)
    return number * number


def test_two_hands_find_what_one_finds_and_tell_how_far_they_are():
    rig, told = load_rig(HERON), []
    alone = tried(rig, 2100, 7)
    with Hands(2) as hands:
        shared = tried(rig, 2100, 7, progress=lambda *each: told.append(each), hands=hands)
    for name in ("reach", "gives", "margins", "life"):
        np.testing.assert_array_equal(getattr(shared, name), getattr(alone, name))
    assert (shared.parts, shared.wears) == (alone.parts, alone.wears)
    assert told == [(1024, 2100), (2048, 2100), (2100, 2100)]


def test_a_choice_that_is_shared_is_the_same_choice():
    rig, told = load_rig(HERON), []
    alone, shared = (
        decide(
            rig,
            draws=1100,
            only=["cover", "truss"],
            workers=workers,
            progress=lambda what, done, of: told.append((what, done / of)),
        )
        for workers in (1, 2)
    )
    assert shared.advised == alone.advised
    assert (shared.looks, shared.flips) == (alone.looks, alone.flips)
    for one, other in zip(alone.choices, shared.choices, strict=True):
        np.testing.assert_array_equal(one.cost.total, other.cost.total)
    assert told[-1][1] == pytest.approx(1.0)


def test_pieces_come_back_in_order_and_a_lost_process_loses_none():
    with Hands(2) as hands:
        assert list(hands.each(squared, [1, 2, 4, 5, 6])) == [1, 4, 16, 25, 36]
        assert list(hands.each(squared, [1, 2, 3, 4, 5])) == [1, 4, 9, 16, 25]
        assert not hands.many


def test_a_stop_on_the_way_ends_the_work_of_all():
    class Enough(Exception):  # noqa: N818
        pass

    def stop(*_):
        raise Enough

    before = set(multiprocessing.active_children())
    with pytest.raises(Enough), Hands(2) as hands:
        tried(load_rig(HERON), 4096, 7, progress=stop, hands=hands)
    assert set(multiprocessing.active_children()) <= before


def test_small_work_and_a_busy_machine_stay_in_one_process(monkeypatch):
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: {0, 1, 2, 3}, raising=False)
    for busy, hands in ((0.2, 4), (1.9, 2), (3.0, 1), (9.0, 1)):
        monkeypatch.setattr(os, "getloadavg", lambda busy=busy: (busy, 0.0, 0.0), raising=False)
        assert hands_for(1000, 4000) == 1
        assert hands_for(10_000, 4000) == hands
