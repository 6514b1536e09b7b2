"""The arithmetic of choosing against a published two-state example, exactly.

J. Heizer, B. Render. Operations Management, module A, "Getz Products" (the payoffs and the two
answers below as quoted from its slides): a large plant earns 200,000 or loses 180,000, a small one
earns 100,000 or loses 20,000, doing nothing earns nothing. At even odds the small plant is best, at
40,000. At 0.6 for the good market it is best at 52,000, and knowing the market is worth 68,000.
The survey (says "good" with 0.70 in a good market and 0.20 in a bad one) is that of B. Render,
R. Stair, M. Hanna, Quantitative Analysis for Management, with the same payoffs: memory. The book
prints a worth of 19,200 out of shares rounded to two digits; unrounded it is 0.45 x 115,556 and
0.55 x 12,727, less 40,000, which is 19,000.
"""

import numpy as np
import pytest

from axlewright.decide import (
    cheapest,
    fewer_draws,
    sorrow,
    standard_error,
    worth_of_a_look,
    worth_of_a_reading,
    worth_of_knowing_all,
)

LARGE, SMALL, NOTHING = 0, 1, 2
GOOD = np.array([200e3, 100e3, 0.0])
BAD = np.array([-180e3, -20e3, 0.0])


def costs(good: float, of: int = 1000):
    """Costs are what is not earned: one column a draw, so many of them in the good market."""
    many = round(good * of)
    so = np.arange(of) < many
    return -np.where(so, GOOD[:, None], BAD[:, None]), so


def test_the_small_plant_is_best_at_even_odds():
    table, _ = costs(0.5)
    assert cheapest(table) == SMALL
    assert -table[SMALL].mean() == pytest.approx(40e3)
    assert -table[LARGE].mean() == pytest.approx(10e3)


def test_knowing_the_market_is_worth_68000():
    table, so = costs(0.6)
    assert -table[SMALL].mean() == pytest.approx(52e3)
    assert worth_of_knowing_all(table) == pytest.approx(68e3)
    assert worth_of_a_look(table, so) == pytest.approx(68e3)


def test_sorrow_is_that_of_the_two_states():
    # Good market (6 of 10): a large plant would have earned 100,000 more; bad one: nothing, 20,000.
    table, _ = costs(0.6)
    found = sorrow(table, SMALL)
    assert found.share == 1.0
    assert found.mean == pytest.approx(0.6 * 100e3 + 0.4 * 20e3)
    assert found.other == LARGE
    assert found.about == pytest.approx(100e3)


def test_what_nobody_minds_is_no_sorrow():
    table, _ = costs(0.6)
    assert sorrow(table, SMALL, least=50e3).share == pytest.approx(0.6)


def test_two_plants_side_by_side_are_sorry_or_glad():
    # Good market (6 of 10): the large earns 100,000 more; bad one: it loses 160,000 more.
    table, _ = costs(0.6)
    pair = table[[SMALL, LARGE]]
    sorry, glad = sorrow(pair, 0), sorrow(pair, 1)
    assert (sorry.share, glad.share) == (pytest.approx(0.6), pytest.approx(0.4))
    assert (sorry.about, glad.about) == (pytest.approx(100e3), pytest.approx(160e3))
    assert glad.mean - sorry.mean == pytest.approx(52e3 - 48e3)  # what each earns on average


def test_a_survey_that_errs_is_worth_what_the_book_prints():
    table, so = costs(0.5)
    worth = worth_of_a_look(table, so, seen=0.70, told=0.20)
    assert worth == pytest.approx(19.0e3)
    assert worth == pytest.approx(19.2e3, rel=0.015)  # as printed, from rounded shares


def test_a_look_that_tells_nothing_is_worth_nothing():
    table, so = costs(0.5)
    assert worth_of_a_look(table, so, seen=0.4, told=0.4) == pytest.approx(0.0, abs=1e-6)


def normal_choice(n: int, sharp: float, seed: int = 1):
    """Two choices whose difference is 1 times a normal score: worth sharp / sqrt(2 pi), exactly."""
    rng = np.random.default_rng(seed)
    score = rng.standard_normal(n)
    table = np.stack([np.zeros(n), score])
    return table, score, sharp / np.sqrt(2.0 * np.pi)


@pytest.mark.parametrize("sharp", [1.0, 0.6])
def test_a_reading_of_a_normal_quantity_is_worth_its_loss_integral(sharp):
    """Raiffa and Schlaifer's unit normal loss integral at nought is 0.3989 (memory)."""
    table, score, worth = normal_choice(20_000, sharp)
    assert worth_of_a_reading(table, score, sharp) == pytest.approx(worth, rel=0.05)


def test_a_reading_of_what_does_not_matter_is_worth_next_to_nothing():
    rng = np.random.default_rng(3)
    table, _, worth = normal_choice(20_000, 1.0)
    assert worth_of_a_reading(table, rng.standard_normal(20_000)) < 0.03 * worth


def test_paired_draws_need_as_many_fewer_as_the_variances_say():
    # Two costs that share a part of variance 9 and have 1 each of their own: (10 + 10) / 2 = 10.
    rng = np.random.default_rng(5)
    shared = 3.0 * rng.standard_normal(200_000)
    one, other = (shared + rng.standard_normal(200_000) for _ in range(2))
    assert fewer_draws(one, other) == pytest.approx(10.0, rel=0.02)
    assert standard_error(one, other) == pytest.approx(np.sqrt(2.0 / 200_000), rel=0.02)
