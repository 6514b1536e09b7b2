"""Gearing lines beside the answer."""

from dataclasses import replace

import pytest

from axlewright.rig import change_from_text, load_rig, rig_from_text
from axlewright.strength import assess_rig, compare
from axlewright.views import gearing_lines

TEXT = """
[gear]
ring = "about 224 mm"
ratio = "4.10"
other_ratio = "{other}"
other_tyre_height = "431 mm"

[gearbox]
first = "3.5"
low = "2.7"
"""


def rig(other):
    text = open_text().replace(
        '[gear]\nring = "about 224 mm"\nratio = "4.56"\n', TEXT.format(other=other)
    )
    return rig_from_text(text)


def open_text():
    with open("examples/rigs/heron.toml", encoding="utf-8") as file:  # noqa: PTH123
        return file.read()


def test_crawl_is_the_product_of_the_ratios():
    # Arithmetic: 3.5 x 2.7 x 4.10 = 38.745
    [line, _] = gearing_lines(assess_rig(rig("4.10"), draws=0))
    assert "crawl 39 to 1" in line


def test_a_mismatch_between_the_axles_is_told():
    # common practice, no source: both axles must turn alike, tyres counted
    assert "agree" in gearing_lines(assess_rig(rig("4.10"), draws=0))[1]
    assert "DISAGREE" in gearing_lines(assess_rig(rig("3.73"), draws=0))[1]


def test_other_tyres_move_speedometer_and_ratio():
    # Arithmetic: speed and ratio go with the radius.
    before = assess_rig(rig("4.10"), draws=0)
    change = change_from_text(
        'axlewright_change = 1\nname = "smaller"\n[[step]]\nset = "hub_height.left"\n'
        'to = "388 mm"\n[[step]]\nset = "hub_height.right"\nto = "388 mm"\n'
        '[[step]]\nset = "tyre.sidewall"\nto = "255/85R16 119/116N"\n'
    )
    [line, *_] = gearing_lines(compare(before, [change], draws=0))
    assert f"{80 * 388 / 431:.0f} km/h" in line
    assert f"ratio of {4.10 * 388 / 431:.2f}" in line


def test_nothing_is_said_without_a_ratio():
    plain = load_rig("examples/rigs/wagtail.toml")
    assert gearing_lines(assess_rig(replace(plain, name="x"), draws=0)) == []


@pytest.mark.parametrize("other", ["4.10", "4.12"])
def test_a_reading_apart_by_less_than_one_in_a_hundred_agrees(other):
    assert "agree" in gearing_lines(assess_rig(rig(other), draws=0))[1]
