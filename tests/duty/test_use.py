"""How hard a named use is against hard trail. Outside reference: common practice, no source."""

from itertools import pairwise

import pytest

from axlewright.duty import hard_trail_cycles, hard_trail_share, live_cases
from axlewright.rig.fields import FIELDS

[HARDEST] = [field for field in FIELDS if field.path == "use.hardest"]


def test_the_uses_are_offered_from_the_mildest_to_the_hardest():
    """Kilometres of a use that wear like one of hard trail: fewer, the harder it is."""
    wears_like_one = [hard_trail_share(use) for use in HARDEST.choices]
    assert all(milder > harder for milder, harder in pairwise(wears_like_one))
    assert wears_like_one[HARDEST.choices.index("rocks and ledges")] == 1.0  # the reference itself


@pytest.mark.parametrize("case", live_cases(), ids=lambda case: case.key)
def test_every_case_is_counted(case):
    assert hard_trail_cycles(case.key) >= 1.0


def test_twins_come_as_often_and_a_rock_under_the_middle_is_rarest():
    counts = {case.key: hard_trail_cycles(case.key) for case in live_cases()}
    for key, count in counts.items():
        assert counts[key.replace("left", "right")] == count
    assert min(counts, key=counts.get) == "rock"
