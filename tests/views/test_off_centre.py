"""How much of a wheel off centre a bowed rod explains.

Outside reference: geometry. A rod of two straight halves, an arm that turns about its axis, a box
that multiplies: worked by hand below, in degrees. Guard on the rejecting side: JCGM 106, 8.3.
"""

import math
from pathlib import Path

import pytest

from axlewright.errors import AxlewrightError
from axlewright.rig import load_rig
from axlewright.strength import assess_rig
from axlewright.views import off_centre, off_centre_json, rod_of, rods
from axlewright.views.take_rods import RATIO, READING

RIGS = Path(__file__).parents[2] / "examples" / "rigs"


@pytest.fixture(scope="module")
def heron():
    return assess_rig(load_rig(str(RIGS / "heron.toml")), draws=0)


@pytest.fixture(scope="module")
def link(heron):
    return rod_of(rods(heron), "drag link")


def weigh(rod, bow, felt=None, length=1.0, ratio=16.0, **more):
    return off_centre(rod, bow, length, felt, ratio, 0.8, **more)


def test_a_kink_worked_by_hand_is_the_least_that_is_explained(link):
    # halves of 500 mm, 60 mm off the line: sqrt(500^2 - 60^2) = 496.387 mm, 7.226 mm shorter
    told = weigh(link, 0.060)
    assert told.explains.short[0] == pytest.approx(7.226e-3, rel=1e-3)
    wheel = 16.0 * math.asin(7.226e-3 / link.lever_high)
    assert told.explains.wheel[0] == pytest.approx(wheel, rel=1e-3)
    assert told.explains.short[1] == pytest.approx(8 * 0.06**2 / 3, rel=1e-9)


@pytest.mark.parametrize("felt", [2.0, 20.0, 90.0, 300.0])
def test_what_is_left_is_guarded_on_the_rejecting_side(link, felt):
    told = weigh(link, 0.030, math.radians(felt))
    low, high = told.explains.wheel
    assert told.left[0] == pytest.approx(math.radians(felt) - READING - high)
    assert told.left[1] == pytest.approx(math.radians(felt) + READING - low)
    assert told.says == "fix before trip"


def test_without_a_ratio_the_band_is_as_wide_as_boxes_are(link):
    told = weigh(link, 0.030, ratio=None)
    assert told.ratio == RATIO
    assert told.explains.wheel[1] / told.explains.wheel[0] > RATIO[1] / RATIO[0]


@pytest.mark.parametrize(
    ("bow", "felt", "says", "words"),
    [
        (0.30, None, "stop", "has folded"),
        (0.03, 750.0, "stop", "something has parted"),
        (0.0, 1.0, "", "sum has nothing to say"),
        (0.0, 40.0, "fix before trip", "37 to 43 deg of 40 deg come from something else"),
        (0.03, None, "fix before trip", "changed, never straightened"),
        (0.03, 200.0, "fix before trip", "does not explain"),
    ],
)
def test_what_it_says(link, bow, felt, says, words):
    told = weigh(link, bow, None if felt is None else math.radians(felt))
    assert told.says == says
    assert words in " ".join(told.lines)
    assert "sound" not in " ".join(told.lines)


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ({"ratio": 3.0}, "steering boxes"),
        ({"length": 0.1}, "shorter than a hand"),
        ({"bow": -0.01}, "no sign"),
        ({"bow": 0.0}, "How far is it off centre"),
    ],
)
def test_what_cannot_be_is_refused(link, more, why):
    with pytest.raises(AxlewrightError, match=why):
        weigh(link, **{"bow": 0.03, **more})


def test_a_rod_is_named_by_key_or_word_and_another_is_refused(heron):
    assert rod_of(rods(heron), "Tie rod").key == rod_of(rods(heron), "tie_rod").key == "tie_rod"
    with pytest.raises(AxlewrightError, match="tie rod, drag link"):
        rod_of(rods(heron), "halo")


def test_json_is_si_with_bands(link):
    told = off_centre_json(weigh(link, 0.03, 0.5))
    for name in ("bow", "length", "off_centre", "shorter", "turn", "steering_wheel", "left_over"):
        assert set(told[name]) == {"value", "unit", "band"}
    assert told["bow"]["value"] == 0.03
    assert told["left_over"]["band"][0] < told["left_over"]["band"][1]
    assert told["says"] == "fix before trip"
