"""The driveline in words and as JSON."""

import json

import pytest

from axlewright.geometry import brakes_asked, driveline_in_travel, travel
from axlewright.rig import change_from_text, changed_rig, load_rig
from axlewright.views import (
    brake_lines,
    driveline_json,
    driveline_lines,
    driveline_rows,
    driveline_sentence,
    price_rows,
)


def studied(rig):
    return driveline_in_travel(travel(rig, draws=0, cures=False), draws=64)


@pytest.fixture(scope="module")
def heron():
    return studied(load_rig("examples/rigs/heron.toml"))


@pytest.fixture(scope="module")
def wagtail():
    return studied(load_rig("examples/rigs/wagtail.toml"))


def test_the_answer_says_what_it_is_judged_for(heron, wagtail):
    assert "unlocked" in driveline_sentence(heron)
    assert "40 km/h" in driveline_sentence(heron)
    assert "turns whenever the wheels do" in driveline_sentence(wagtail)
    assert "110 km/h" in driveline_sentence(wagtail)
    assert "mph" in driveline_sentence(wagtail, "us")


def test_every_check_is_told_once(heron, wagtail):
    for found in (heron, wagtail):
        rows = driveline_rows(found)
        assert len(rows) == len(found.checks)
        assert len({row.what for row in rows}) == len(rows)
        order = ["BEYOND", "cannot tell", "within"]
        places = [order.index(row.standing) for row in rows]
        assert places == sorted(places)
        text = "\n".join(driveline_lines(found))
        assert all(row.what in text for row in rows)


def test_locked_hubs_are_told_to_be_unlocked(heron, wagtail):
    assert any("Unlock the hubs" in line for line in driveline_lines(heron))
    assert not any("Unlock the hubs" in line for line in driveline_lines(wagtail))


def test_each_degree_has_its_price(heron):
    text = "\n".join(driveline_lines(heron))
    assert "costs a degree of caster" in text
    rows = price_rows(heron.built_in)
    assert [row[0] for row in rows][:2] == ["-6.0 deg", "-4.0 deg"]
    casters = [float(row[1].split()[0]) for row in rows]
    # degree for degree: 12 degrees of turn, 12 degrees of caster
    assert casters[0] - casters[-1] == pytest.approx(12.0, abs=0.11)


def test_nobody_is_told_how_to_bend_an_end_forging(heron, wagtail):
    # safety rule of the house: end forgings are a jig's and a qualified welder's job
    text = "\n".join([*driveline_lines(heron), *driveline_lines(wagtail)])
    assert "qualified welder" in text
    assert "heat the" not in text
    assert "a maker's manual comes first" in text


def test_json_is_finite_and_in_si(heron, wagtail):
    for found in (heron, wagtail):
        told = json.loads(json.dumps(driveline_json(found), allow_nan=False))
        assert told["joints"]["pinion"]["unit"] == "rad"
        assert told["checks"][0]["limit"]["source"]
        assert told["built_in"]["forgings"]["band"]


def test_a_smaller_or_bigger_tyre_says_what_it_asks_of_the_brakes():
    rig = load_rig("examples/rigs/heron.toml")
    change = change_from_text(
        'axlewright_change = 1\nname = "t"\n[[step]]\nset = "hub_height.left"\nto = "470 mm"\n'
        '[[step]]\nset = "hub_height.right"\nto = "468 mm"\n'
    )
    lines = brake_lines(brakes_asked(rig, changed_rig(rig, change)[0]))
    # arithmetic: 469 / 431 is 8.8 % more
    assert "9 % more torque" in lines[0]
    assert "No figure here says that the brakes are enough" in lines[-1]
    assert brake_lines(None) == []
