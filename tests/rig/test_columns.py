"""Draws of a rig's doubt: keyed by name, the same whatever the page, block or thread."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import pytest
from scipy.stats import kstest

from axlewright.rig import drawn_columns, load_rig, point_columns, scores
from axlewright.rig.columns import SEED

RIGS = Path(__file__).parents[2] / "examples" / "rigs"


# By definition: a draw is numbered, so how many are asked for at once changes nothing.
@pytest.mark.parametrize("block", [1, 64, 256, 300, 1000])
def test_draws_do_not_depend_on_the_block(block):
    whole = scores(SEED, "tube_wall", 0, 1000)
    parts = [scores(SEED, "tube_wall", at, min(at + block, 1000)) for at in range(0, 1000, block)]
    assert np.array_equal(np.concatenate(parts), whole)


def test_draws_do_not_depend_on_the_threads():
    rig = load_rig(str(RIGS / "heron.toml"))
    spans = [(at, at + 100) for at in range(0, 1000, 100)]
    alone = [drawn_columns(rig, *span) for span in spans]
    with ThreadPoolExecutor(4) as pool:
        together = list(pool.map(lambda span: drawn_columns(rig, *span), spans))
    for one, other in zip(alone, together, strict=True):
        assert all(np.array_equal(one[name], other[name]) for name in one)


def test_scores_go_by_name_and_seed():
    one = scores(SEED, "tube_wall", 0, 2000)
    assert not np.array_equal(one, scores(SEED + 1, "tube_wall", 0, 2000))
    other = scores(SEED, "grip", 0, 2000)
    assert abs(np.corrcoef(one, other)[0, 1]) < 0.1


# Outside reference: the standard normal, by the Kolmogorov-Smirnov test of scipy.
def test_scores_are_standard_normal():
    assert kstest(scores(SEED, "tube_wall", 0, 20_000), "norm").pvalue > 1e-3


# By definition of a given reading with its standard uncertainty.
def test_a_reading_is_drawn_about_what_was_read():
    rig = load_rig(str(RIGS / "heron.toml"))
    drawn = drawn_columns(rig, 0, 4096)["track"]
    given = rig.given["track"]
    assert np.mean(drawn) == pytest.approx(given.value, abs=4 * given.doubt / 64)
    assert np.std(drawn) == pytest.approx(given.doubt, rel=0.06)
    assert point_columns(rig)["track"][0] == given.value
