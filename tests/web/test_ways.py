"""The way round an axle: every page has a door, and the visitor is told where he stands.

Rule: WAI-ARIA 1.2, aria-current: one link of a set is the page that is shown.
"""

import re

import pytest
from tools.bay_pages import PAGES

from axlewright.web.ways import WAYS, steps

DOORS = [door for way in WAYS for door in way.doors]


def test_every_page_of_an_axle_has_one_door():
    tails = {re.sub(r"^/axle/\{\w+\}", "", place) for place in PAGES.values() if "/axle/" in place}
    for tail in sorted(tail.partition("?")[0].partition("#")[0] for tail in tails):
        _, pages = steps("x", f"/axle/x{tail}")
        assert sum(step.here for step in pages) == 1, tail


@pytest.mark.parametrize("door", DOORS, ids=lambda door: door.tail or "/")
def test_a_door_shows_its_own_way(door):
    ways, pages = steps("x", f"/axle/x{door.tail}")
    assert [step.said for step in pages if step.here] == [door.said]
    assert not ways or sum(step.here for step in ways) == 1


def test_no_two_doors_look_alike():
    assert len({door.said for door in DOORS}) == len({door.tail for door in DOORS}) == len(DOORS)
