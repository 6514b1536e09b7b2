"""Bands hold what they promise: truths from the stated bands, read with a simulated tape.

Outside reference: the binomial law. A check's 90 % band should hold the truth in 90 % of rigs,
and a part said to go first in a share of draws should do so in that share of truths.
"""

import sys
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from axlewright.rig import drawn_columns, load_rig
from axlewright.strength.appraisal import appraise, appraise_draws, appraise_point, margins
from axlewright.strength.order import first_shares

HERON = Path(__file__).parents[2] / "examples" / "rigs" / "heron.toml"
TRUTH_SEED, TAPE_SEED = 11, 12


def _trial(truths, draws):
    rig = load_rig(str(HERON)).with_word("mended", "")
    truth = drawn_columns(rig, 0, truths, seed=TRUTH_SEED)
    real = appraise(truth, rig.words)
    first = np.argmin(margins(real.solved, real.reach), axis=0)
    middle = appraise_point(rig)
    leading = np.argsort(-np.max(middle.solved.utilisation[:, 0], axis=-1))[:10]
    tape = np.random.default_rng(TAPE_SEED)
    inside, said, was = [], [], []
    for number in range(truths):
        given = {
            name: replace(
                datum,
                value=float(truth[name][number] + datum.doubt * tape.standard_normal()),
            )
            for name, datum in rig.given.items()
            if name in truth  # places of the second hour are no part of strength
        }
        read = replace(rig, given=given)
        drawn = appraise_draws(read, appraise_point(read), draws)
        low, high = np.quantile(drawn.utilisation[leading], [0.05, 0.95], axis=-1)
        true = real.solved.utilisation[leading, number, drawn.governing[leading]]
        inside.append((low <= true) & (true <= high))
        said.append(first_shares(drawn.margin))
        was.append(np.arange(drawn.margin.shape[0]) == first[number])
    return np.array(inside), np.ravel(said), np.ravel(was)


def _bins(said, was):
    edges = [0.02, 0.08, 0.2, 0.4, 1.01]
    for low, high in pairwise(edges):
        here = (said >= low) & (said < high)
        if np.sum(here) >= 50:
            yield (
                low,
                high,
                int(np.sum(here)),
                float(np.mean(said[here])),
                float(np.mean(was[here])),
            )


# Tolerance: 200 truths, checks of one rig strongly alike, so about 2.1 % of sampling error.
def test_bands_and_shares_hold_over_two_hundred_truths():
    inside, said, was = _trial(200, 256)
    assert 0.85 <= np.mean(inside) <= 0.95
    table = list(_bins(said, was))
    assert len(table) >= 3
    for _, _, count, promised, met in table:
        assert met == pytest.approx(promised, abs=0.03 + 3.0 * np.sqrt(0.25 / count))


@pytest.mark.soak
def test_bands_and_shares_hold_over_two_thousand_truths():
    inside, said, was = _trial(2000, 400)
    sys.stdout.write(f"pooled cover {np.mean(inside):.4f}; by check {np.mean(inside, axis=0)}\n")
    sys.stdout.write("share said  count  mean said  met\n")
    for low, high, count, promised, met in _bins(said, was):
        sys.stdout.write(f"{low:.2f}-{high:.2f}  {count:5d}  {promised:.3f}  {met:.3f}\n")
        assert met == pytest.approx(promised, abs=0.04)
    assert 0.87 <= np.mean(inside) <= 0.93
