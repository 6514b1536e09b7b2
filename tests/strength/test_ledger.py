"""How hard a moment a row takes, against plain root finding."""

import numpy as np
import pytest
from scipy.optimize import brentq

from axlewright.duty import CASES
from axlewright.strength.ledger import STANDS, Ledger, Row, each, solve

ROWS, DRAWS = 40, 3


def _random(seed, *, pushes_only):
    rng = np.random.default_rng(seed)
    ledger, ratios = Ledger(DRAWS), []
    for number in range(ROWS):
        slots = 1 if pushes_only else 1 + number % 3
        made = rng.normal(0.0, 0.6, (slots, DRAWS, len(CASES)))
        made[..., 0] *= 1.2
        ratios.append(made)
        ledger.add(
            Row(part="tube_left", mode=str(number), basis="random", pushes_only=pushes_only),
            *made,
            holds=np.full(DRAWS, 5.0 + number),
        )
    return ledger, ratios


def _brute(base, live, *, pushes_only):
    """First factor at which the row gives: a scan for the sign change, then Brent's method."""

    def over(factor):
        total = base + factor * live
        return (total[0] if pushes_only else float(np.linalg.norm(total))) - 1.0

    if over(0.0) >= 0.0:
        return 0.0
    top = 1.0
    while over(top) < 0.0:
        top *= 2.0
        if top > 1e9:
            return np.inf
    return brentq(over, 0.0, top, xtol=1e-13, rtol=1e-13)


# Outside reference: scipy.optimize.brentq.
@pytest.mark.parametrize("pushes_only", [False, True])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_hardness_is_the_root(pushes_only, seed):
    ledger, ratios = _random(seed, pushes_only=pushes_only)
    solved = solve(ledger)
    found = {"never": 0, "at once": 0, "between": 0}
    for row, made in enumerate(ratios):
        for draw in range(DRAWS):
            for case in range(len(CASES) - 1):
                base = made[:, draw, 0] * STANDS[case]
                want = _brute(base, made[:, draw, case + 1], pushes_only=pushes_only)
                got = solved.hardness[row, draw, case]
                assert got == pytest.approx(want, rel=1e-8, abs=1e-10)
                state = "never" if np.isinf(want) else "at once" if want == 0.0 else "between"
                found[state] += 1
    assert found["between"] > 500
    assert found["at once"] > 0
    assert (found["never"] > 0) == pushes_only


# By definition: all loads over the utilisation bring the row just to the point of giving.
def test_utilisation_is_one_over_the_factor_on_every_load():
    ledger, ratios = _random(4, pushes_only=False)
    solved = solve(ledger)
    for row, made in enumerate(ratios):
        total = made[..., :1] * STANDS + made[..., 1:]
        scaled = total / solved.utilisation[row]
        assert np.allclose(np.linalg.norm(scaled, axis=0), 1.0, rtol=1e-12)


# By definition.
def test_a_pull_never_breaks_what_only_pushes_break():
    ledger = Ledger(1)
    pull = np.full((1, len(CASES)), -3.0)
    row = Row(part="tube_left", mode="bows", basis="by hand", pushes_only=True)
    ledger.add(row, pull, holds=np.array([1.0]))
    solved = solve(ledger)
    assert np.all(np.isinf(solved.hardness))
    assert np.all(solved.utilisation == 0.0)


# By definition.
def test_a_row_without_live_load_never_gives_and_capacity_is_kept():
    ledger = Ledger(2)
    ratio = np.zeros((2, len(CASES)))
    ratio[:, 0] = 0.4
    row = Row(part="tube_left", mode="stands", basis="by hand")
    ledger.add(row, ratio, holds=np.array([7.0, 9.0]))
    solved = solve(ledger)
    assert np.all(np.isinf(solved.hardness))
    assert np.array_equal(solved.capacity, [[7.0, 9.0]])
    assert np.allclose(solved.utilisation[0], 0.4 * STANDS)
    assert each(np.array([1.0, 2.0])).shape == (2, 1)
