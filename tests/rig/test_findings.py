"""What a look turned up: STOP rules hold whatever a figure says.

Outside reference: the project's safety rule on what stops a vehicle; common practice, no source.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from axlewright.rig import findings, load_rig, part_meant, stops
from axlewright.rig.part_names import HOLDS_A_WHEEL, OTHERS, STEERS, STOPS
from axlewright.rig.reading import Condition

HERON = Path(__file__).parents[2] / "examples" / "rigs" / "heron.toml"

STOP = [
    ("knuckle", "cracked"),
    ("end forging", "cracked"),
    ("steering arm", "cracked"),
    ("steering bracket", "cracked"),
    ("track-bar bracket", "cracked"),
    ("tube", "wet"),
    ("tie rod", "loose"),
    ("drag link", "broke"),
    ("track bar", "loose"),
    ("ball joint", "loose"),
    ("hub", "loose"),
    ("cross joint", "broke"),
    ("inner shaft", "broke"),
    ("brake hose", "cracked"),
    ("brake hose", "wet"),
    ("Tie-Rod end", "loose"),
    ("tierod", "loose"),
    ("track-bar", "loose"),
    ("trackbar bolt", "loose"),
    ("track rod", "cracked"),
    ("drop arm", "cracked"),
    ("king pin", "loose"),
    ("balljoint", "loose"),
    ("inner C", "cracked"),
    ("wheel bearing", "loose"),
    ("wheel studs", "broke"),
    ("left wheel", "loose"),
    ("stub axle", "cracked"),
    ("u-joint", "broke"),
    ("knuckel", "cracked"),
    ("kunckle", "cracked"),
    ("end froging", "cracked"),
    ("ball jiont", "loose"),
    ("break hose", "cracked"),
    ("stearing arm", "cracked"),
]


def _rig(part, what):
    rig = load_rig(str(HERON))
    return replace(rig, conditions=(Condition(part=part, what=what, where="left"),))


@pytest.mark.parametrize(("part", "what"), STOP)
def test_this_is_a_stop(part, what):
    found = findings(_rig(part, what))
    assert [(each.part, each.what, each.state) for each in stops(found)] == [(part, what, "stop")]
    assert "Do not drive" in found[0].do


@pytest.mark.parametrize(
    ("part", "what", "state"),
    [
        ("knuckle", "never looked at", "fix before trip"),
        ("tie rod", "bowed", "fix before trip"),
        ("spring pad", "cracked", "fix before trip"),
        ("spring pad", "shaking", "fix before trip"),
        ("spring pad", "never looked at", "not looked at"),
        ("track-bar bracket", "mended", "watch"),
        ("spring bracket", "cracked", "fix before trip"),
        ("brace", "cracked", "fix before trip"),
        ("steering damper", "wet", "watch"),
        ("thingummy", "cracked", "fix before trip"),
        ("thingummy", "bent", "fix before trip"),
        ("thingummy", "wet", "fix before trip"),
    ],
)
def test_this_is_less_than_a_stop_and_never_sound(part, what, state):
    assert [each.state for each in findings(_rig(part, what))] == [state]


def test_never_looked_at_never_reads_as_sound():
    rig = replace(load_rig(str(HERON)), conditions=()).with_word("rig.condition", "never looked at")
    assert [each.state for each in findings(rig)] == ["not looked at"]


def test_the_gravest_stands_first():
    rig = load_rig(str(HERON))
    both = (*rig.conditions, Condition(part="knuckle", what="cracked", where="left"))
    assert [each.state for each in findings(replace(rig, conditions=both))] == ["stop", "watch"]


def test_a_slip_of_the_pen_is_said_and_an_unknown_part_is_not_called_harmless():
    slip, unknown = (findings(_rig(part, "cracked"))[0] for part in ("knuckel", "thingummy"))
    assert slip.why.startswith("taken to be the knuckle; ")
    assert "no such part is known" in unknown.why
    assert "do not drive" in unknown.do


@pytest.mark.parametrize("part", [*STEERS, *HOLDS_A_WHEEL, *STOPS])
def test_a_crack_in_whatever_steers_stops_or_holds_a_wheel_is_a_stop(part):
    assert stops(findings(_rig(f"the {part.upper()}s", "cracked")))


@pytest.mark.parametrize("part", OTHERS)
def test_no_other_part_is_taken_for_one_that_steers(part):
    meant = part_meant(part)
    assert meant.known
    assert not meant.taken_as
    assert not meant.steers
    assert not meant.brakes
