"""Gearing lines beside the answer."""

from dataclasses import replace
from math import tau

import pytest

from axlewright.rig import change_from_text, load_rig, rig_from_text
from axlewright.strength import assess_rig, compare
from axlewright.views import answer_lines, gearing_lines
from axlewright.views.gearing import gearing_json

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


def test_the_engine_turns_as_the_propeller_shaft_times_its_gear():
    # Arithmetic: road speed over radius, times the axle's ratio, times the gear.
    text = open_text().replace("[gear]\n", '[gearbox]\ntop = "0.85"\n\n[gear]\n')
    turns = 80 / 3.6 / 0.431 * 4.56 * 60 / tau
    [line] = gearing_lines(assess_rig(rig_from_text(text), draws=0))
    assert f"{float(f'{turns:.2g}'):,.0f} a minute" in line
    assert f"the engine {float(f'{0.85 * turns:.2g}'):,.0f} in its highest gear" in line
    [line, _] = gearing_lines(assess_rig(rig("4.10"), draws=0))
    assert "so does the engine in a gear of 1 to 1" in line


def test_the_mismatch_is_told_before_the_rows_and_in_si():
    assessment = assess_rig(rig("3.73"), draws=0)
    lines = answer_lines(assessment)
    told = next(at for at, line in enumerate(lines) if line.startswith("FRONT AND REAR DISAGREE"))
    assert told < lines.index(next(line for line in lines if line.startswith("  1 ")))
    assert sum("DISAGREE" in line for line in lines) == 1
    made = gearing_json(assessment)
    assert made["front_and_rear_apart"] == pytest.approx(4.10 / 3.73 - 1.0, abs=0.003)
    assert made["crawl"] == pytest.approx(3.5 * 2.7 * 4.10)


def test_nothing_is_said_without_a_ratio():
    plain = load_rig("examples/rigs/wagtail.toml")
    assert gearing_lines(assess_rig(replace(plain, name="x"), draws=0)) == []


@pytest.mark.parametrize("other", ["4.10", "4.12"])
def test_a_reading_apart_by_less_than_one_in_a_hundred_agrees(other):
    assert "agree" in gearing_lines(assess_rig(rig(other), draws=0))[1]
