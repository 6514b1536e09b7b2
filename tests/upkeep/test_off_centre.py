"""A sum over a bowed rod can make it worse and never says go. Common practice, no source."""

import dataclasses
import datetime as dt
import typing

import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.rig import Hit, Job, Kept, Noticed
from axlewright.upkeep import OFF_CENTRE, off_centre_objections
from axlewright.views import OffCentre

TODAY = dt.date(2026, 6, 10)


def book(*bodies):
    at = dt.datetime(2026, 6, 10, tzinfo=dt.UTC)
    return [
        Kept(number=number, rig="heron-front", device="", at=at, body=body, on=TODAY)
        for number, body in enumerate(bodies, 1)
    ]


def summed(says, rod="tie rod", bowed="yes"):
    said = {"rod": rod, "bowed": bowed, "says": says, "because": "x"}
    return Noticed(about=OFF_CENTRE, answers=tuple(said.items()))


BOWED, FOLDED, STRAIGHT = summed("fix before trip"), summed("stop"), summed("", bowed="no")
LOOSE = summed("fix before trip", bowed="no")
RENEWED = Job(task="renewed", part="tie rod")


@pytest.mark.parametrize(
    ("bodies", "told"),
    [
        ([], []),
        ([Hit(what="a rock")], []),
        ([BOWED], ["fix before trip"]),
        ([FOLDED], ["stop"]),
        ([FOLDED, BOWED], ["stop"]),
        ([BOWED, STRAIGHT], ["fix before trip"]),  # a bow does not go away by itself
        ([BOWED, RENEWED], ["fix before trip"]),  # and nobody has seen yet that it stands straight
        ([RENEWED, BOWED, STRAIGHT], ["fix before trip"]),
        ([BOWED, Job(task="renewed", part="drag link"), STRAIGHT], ["fix before trip"]),
        ([BOWED, RENEWED, STRAIGHT], []),
        ([BOWED, RENEWED, STRAIGHT, BOWED], ["fix before trip"]),
        ([BOWED, RENEWED, summed("", rod="drag link", bowed="no")], ["fix before trip"]),
        ([LOOSE, STRAIGHT], []),
        ([STRAIGHT, LOOSE], ["fix before trip"]),
    ],
)
def test_an_objection_stands_until_work_and_a_sum_that_is_silent(bodies, told):
    assert [each.state for each in off_centre_objections(book(*bodies))] == told


def test_an_entry_that_says_nothing_of_its_end_objects():
    odd = Noticed(about=OFF_CENTRE, answers=(("rod", "tie rod"),))
    assert [each.state for each in off_centre_objections(book(odd))] == ["fix before trip"]


@given(st.lists(st.sampled_from([BOWED, FOLDED, STRAIGHT, LOOSE, RENEWED]), max_size=8))
def test_no_sum_says_go(bodies):
    for each in off_centre_objections(book(*bodies)):
        assert each.state in {"stop", "fix before trip"}


def test_a_sum_has_no_word_for_go():
    says = typing.get_type_hints(OffCentre)["says"]
    assert set(typing.get_args(says)) == {"stop", "fix before trip", ""}
    assert "go" not in {each.name for each in dataclasses.fields(OffCentre)}
