"""What a bad moment leaves behind."""

import numpy as np
import pytest

from axlewright.duty import ROW
from axlewright.rig import load_rig, point_columns
from axlewright.strength import appraise, bent_after

LANDING = ROW["landing"] - 1


@pytest.fixture(scope="module")
def landed():
    rig = load_rig("examples/rigs/wagtail.toml")
    columns = point_columns(rig)
    return columns, appraise(columns, rig.words).housing


def test_a_landing_bends_both_ends_up_so_the_tops_lean_in(landed):
    # common practice, no source: ends up is negative camber on both sides
    bent = bent_after(*landed, LANDING, 1.9)
    assert bent.camber_left[0] < 0.0
    assert bent.camber_right[0] < 0.0


def test_an_everyday_load_leaves_nothing(landed):
    # Elastic below first yield: beam theory.
    bent = bent_after(*landed, LANDING, 0.5)
    np.testing.assert_allclose([bent.camber_left, bent.toe_left], 0.0, atol=1e-12)


def test_more_leaves_more_until_the_tube_folds(landed):
    sets = [-bent_after(*landed, LANDING, hard).camber_left[0] for hard in (1.7, 1.85, 2.0)]
    assert sets == sorted(sets)
    assert np.isnan(bent_after(*landed, LANDING, 5.0).camber_left[0])
