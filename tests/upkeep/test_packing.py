"""The choice of spares against every choice there is, and against a general solver."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from axlewright.upkeep import best_choice, gain_of


def case(seed, spares, parts, zeros=0.5):
    chance = np.random.default_rng(seed)
    gains = chance.lognormal(0.0, 1.5, (spares, parts)) * (chance.random((spares, parts)) > zeros)
    held = chance.lognormal(-1.0, 1.0, parts) * (chance.random(parts) > 0.6)
    masses = np.round(chance.lognormal(1.2, 0.9, spares), 1)
    return gains, held, masses, float(0.4 * masses.sum())


def by_trying_all(gains, held, masses, room):
    most = 0.0
    for count in range(len(masses) + 1):
        for some in combinations(range(len(masses)), count):
            chosen = np.zeros(len(masses), dtype=bool)
            chosen[list(some)] = True
            if masses[chosen].sum() <= room + 1e-9:
                most = max(most, gain_of(chosen, gains, held))
    return most


def by_general_solver(gains, held, masses, room):
    """The same as a mixed-integer program: each part is saved by one spare that is packed."""
    spares, parts = gains.shape
    more = np.maximum(gains - held, 0.0)
    cost = -np.concatenate([np.zeros(spares), more.ravel()])
    rows, tops = [np.concatenate([masses, np.zeros(spares * parts)])], [room]
    for part in range(parts):
        once = np.zeros((spares, parts))
        once[:, part] = 1.0
        rows.append(np.concatenate([np.zeros(spares), once.ravel()]))
        tops.append(1.0)
    for spare in range(spares):
        for part in range(parts):
            used, packed = np.zeros((spares, parts)), np.zeros(spares)
            used[spare, part], packed[spare] = 1.0, -1.0
            rows.append(np.concatenate([packed, used.ravel()]))
            tops.append(0.0)
    whole = np.concatenate([np.ones(spares), np.zeros(spares * parts)])
    done = milp(
        cost,
        integrality=whole,
        bounds=Bounds(0.0, 1.0),
        constraints=LinearConstraint(np.array(rows), -np.inf, np.array(tops)),
        options={"mip_rel_gap": 1e-9},
    )
    assert done.success
    return -done.fun


@pytest.mark.parametrize("seed", range(25))
def test_it_is_as_good_as_trying_every_choice(seed):
    gains, held, masses, room = case(seed, 9, 6)
    chosen = best_choice(gains, held, masses, room)
    assert masses[chosen].sum() <= room + 1e-9
    assert gain_of(chosen, gains, held) == pytest.approx(by_trying_all(gains, held, masses, room))


@pytest.mark.parametrize("seed", range(12))
def test_it_is_as_good_as_a_general_solver(seed):
    """SciPy's mixed-integer solver (HiGHS), at the size of the real table."""
    gains, held, masses, room = case(100 + seed, 22, 16, zeros=0.75)
    chosen = best_choice(gains, held, masses, room)
    best = by_general_solver(gains, held, masses, room)
    assert gain_of(chosen, gains, held) == pytest.approx(best, rel=1e-6)


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 10**6), more=st.floats(0.0, 30.0))
def test_more_room_never_saves_less(seed, more):
    gains, held, masses, room = case(seed, 12, 8)
    less = best_choice(gains, held, masses, room)
    plenty = best_choice(gains, held, masses, room + more)
    assert gain_of(plenty, gains, held) >= gain_of(less, gains, held) * (1.0 - 1e-9)


def test_what_saves_nothing_more_stays_and_the_lighter_of_two_alike_goes():
    gains = np.array([[5.0, 0.0], [5.0, 0.0], [3.0, 0.0], [0.0, 2.0]])
    masses = np.array([4.0, 3.0, 0.5, 0.0])
    assert best_choice(gains, np.zeros(2), masses, 50.0).tolist() == [False, True, False, True]
    assert not best_choice(gains, np.array([9.0, 9.0]), masses, 50.0).any()
    assert best_choice(np.zeros((0, 2)), np.zeros(2), np.zeros(0), 5.0).size == 0
