"""Our own past numbers: nothing moves by more than two hundredths without being told.

Outside reference: none, on purpose. These say that an answer changed, not that it is right.
"""

import pytest
from tools.pinned import CHANGES, RIGS, kept, moved, names, today

TELL = (
    "If that was meant: `make pinned` (python -m tools.pinned) writes the numbers again, and a "
    'line under "Numbers that changed, and why" in CHANGELOG.md says what changed and why.'
)


@pytest.mark.parametrize("name", names())
def test_the_leading_rows_are_what_they_were(name):
    told = moved(kept()[name], today(name), 0.02)
    assert not told, "; ".join([*told, TELL])


def test_every_demo_rig_and_change_is_pinned():
    assert list(kept()) == names()
    assert len(names()) == len(RIGS) + len(CHANGES) >= 7
    assert all(len(numbers) >= 6 for numbers in kept().values())


@pytest.mark.parametrize(
    ("now", "told"),
    [
        ({"a": 1.0, "b": 2.03}, []),
        ({"a": 1.0, "b": 2.05}, ["b: 2 became 2.05"]),
        ({"a": 1.0}, ["b has left the leading rows"]),
        ({"a": 1.0, "b": 2.0, "c": 3.0}, ["c is new: 3"]),
    ],
)
def test_what_moved_is_told(now, told):
    assert moved({"a": 1.0, "b": 2.0}, now, 0.02) == told
