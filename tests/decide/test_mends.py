"""Mends that come round faster, and the trend they are told by."""

import pytest

from axlewright.decide import Mend, coming_faster, trend_of

DAY = 86400.0


def test_laplaces_measure_is_nought_for_even_gaps_and_signed_by_their_drift():
    """H. Ascher, H. Feingold, Repairable Systems Reliability (1984), Laplace's test: memory."""
    assert trend_of([1.0, 2.0, 3.0, 4.0], 5.0) == pytest.approx(0.0)
    # Mean of 0.7 T with three events: sqrt(36) x 0.2.
    assert trend_of([60.0, 70.0, 80.0], 100.0) == pytest.approx(1.2)
    assert trend_of([10.0, 20.0, 30.0], 100.0) < 0.0


def test_mends_of_a_bracket_that_come_round_faster_are_told():
    mends = [Mend(part="track-bar bracket", at=at * DAY) for at in (0, 400, 600, 690)]
    (found,) = coming_faster(mends, by_distance=False)
    assert found.part == "track-bar bracket"
    assert [gap / DAY for gap in found.gaps] == [400, 200, 90]


def test_even_mends_and_slower_ones_are_not():
    for times in ((0, 300, 600, 900), (0, 100, 300, 700), (0, 300)):
        mends = [Mend(part="hub", at=at * DAY) for at in times]
        assert not coming_faster(mends, by_distance=False)


def test_parts_are_told_apart():
    mends = [Mend(part=part, at=at) for part, at in (("a", 0), ("b", 5), ("a", 9), ("b", 9))]
    assert not coming_faster(mends, by_distance=True)
