"""Five people at the bay for an hour: the server holds no more than it should."""

import pytest
from benchmarks import bay

HOUR = 3600.0
ROOM = 50.0  # MB, what the bay may grow by under five clients


@pytest.mark.soak
def test_an_hour_of_five_clients_stays_within_its_room():
    answered, grown = bay.crowd(HOUR)
    assert answered > 1000
    assert grown < ROOM


def test_a_crowd_is_answered_and_measured():
    answered, grown = bay.crowd(3.0)
    assert answered >= 50  # five clients, each question twice
    assert grown < ROOM
