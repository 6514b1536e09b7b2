"""The share of memory in an answer's doubt. Outside reference: least squares and more draws."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from axlewright.rig import doubts, load_rig, scores
from axlewright.strength import (
    acting_doubts,
    appraise_draws,
    appraise_point,
    assess_rig,
    parts_of,
    remembered_shares,
)

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
DRAWS = 1000


@pytest.fixture(scope="module")
def heron():
    rig = load_rig(str(RIGS / "heron.toml")).with_word("mended", "")
    point = appraise_point(rig)
    return rig, point, appraise_draws(rig, point, DRAWS)


@pytest.mark.parametrize("kind", ["tube_joint", "cross_joint", "side_gears", "inner_shaft"])
def test_it_is_what_least_squares_gives_to_remembered_doubts(heron, kind):
    rig, point, drawn = heron
    every = doubts(rig)
    score = np.stack([scores(drawn.seed, doubt.quantity, 0, DRAWS) for doubt in every], axis=-1)
    margin = np.log(np.clip(drawn.margin[parts_of(point.solved).index(kind)], 1e-3, 1e3))
    slope, *_ = np.linalg.lstsq(np.column_stack([score, np.ones(DRAWS)]), margin, rcond=None)
    part = slope[:-1] ** 2
    recalled = np.array([doubt.remembered for doubt in every])
    (found,) = remembered_shares(rig, point, drawn, acting_doubts(rig, point), [kind])
    assert found.share == pytest.approx(part[recalled].sum() / part.sum(), abs=0.06)
    assert sum(share for _, share in found.most) <= found.share + 1e-12
    assert all(doubt.remembered for doubt, _ in found.most)


def test_measuring_what_was_remembered_takes_its_share_away(heron):
    rig, point, drawn = heron
    kinds = ["tube_joint"]
    (before,) = remembered_shares(rig, point, drawn, acting_doubts(rig, point), kinds)
    assert before.most[0][0].quantity == "tube_wall"
    like = rig.given["wheel_offset"]
    wall = replace(like, quantity="tube_wall", path="tube.wall", value=0.0065, doubt=1e-4)
    read = replace(rig, given={**rig.given, "tube_wall": wall})
    point = appraise_point(read)
    drawn = appraise_draws(read, point, DRAWS)
    (after,) = remembered_shares(read, point, drawn, acting_doubts(read, point), kinds)
    assert "tube_wall" not in {doubt.quantity for doubt, _ in after.most}
    assert after.share < before.share


def test_an_assessment_tells_it_for_the_leading_parts():
    assessment = assess_rig(load_rig(str(RIGS / "wagtail.toml")), draws=256)
    assert [item.kind for item in assessment.remembered] == [
        place.kind for place in assessment.order[:5]
    ]
    assert all(0.0 < item.share <= 1.0 for item in assessment.remembered)
    assert assess_rig(load_rig(str(RIGS / "wagtail.toml")), draws=0).remembered == ()
