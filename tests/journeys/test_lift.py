"""Lifting a rig and putting its geometry right, as the docs walk through it.

Common practice, no source: a lift takes caster, a drop arm alone makes bump steer worse, a raised
track-bar bracket makes it better, toe comes last.
"""

import re

import numpy as np
import pytest

from axlewright.actions import align_file
from axlewright.geometry import travel
from axlewright.rig import changed_rig, load_change
from geometry.cases import HOME, demo

PAGE = (HOME / "docs" / "travel.md").read_text("utf-8")
CHANGES = HOME / "examples" / "changes"


def after(name):
    rig = demo("heron")
    return travel(changed_rig(rig, load_change(str(CHANGES / name)))[0], draws=0)


@pytest.fixture(scope="module")
def lifted():
    return after("lift.toml")


def row(what):
    """The two numbers of a row of the docs' table."""
    line = re.search(rf"^\| {what} \| (.+?) \| (.+?) \|$", PAGE, re.MULTILINE)
    return [float(re.search(r"-?[\d.]+", cell)[0]) for cell in line.groups()]


def test_the_table_of_the_walk_is_true(lifted):
    taped = travel(demo("heron"), draws=0, cures=False)
    told = {
        "caster at ride": lambda it: np.degrees(it.now.caster),
        "pinion, up": lambda it: np.degrees(it.now.pinion),
        "wheels steer themselves over 50 mm": lambda it: np.degrees(abs(it.now.bump_steer)),
    }
    for what, value in told.items():
        assert row(what) == pytest.approx([value(taped), value(lifted)], abs=0.051), what
    hangs = row("hangs until the damper is pulled out")
    assert hangs == pytest.approx([1e3 * it.now.droop.at for it in (taped, lifted)], abs=0.6)
    assert row("axle off the middle")[1] == pytest.approx(1e3 * lifted.now.shift, abs=0.6)


def test_the_cures_do_what_the_walk_says(lifted):
    cures = {each.key: {it.measure: it for it in each.shifts} for each in lifted.fixes}
    assert cures["drop_arm"]["bump_steer"].better is False
    assert cures["raised_track_bar"]["bump_steer"].better is True


def test_put_right_it_stands_as_it_was():
    right = after("lift-put-right.toml")
    assert np.degrees(right.now.caster) == pytest.approx(4.9, abs=0.051)
    assert abs(right.now.shift) <= 0.001
    assert np.degrees(abs(right.now.bump_steer)) == pytest.approx(0.6, abs=0.051)


def test_the_day_with_the_tape_ends_on_the_tie_rod():
    read = str(HOME / "examples" / "readings" / "heron-after-the-lift.toml")
    found = align_file(str(HOME / "examples" / "rigs" / "heron.toml"), read)
    assert found.toe is not None
    assert found.turn is None or found.turn.rod == "tie_rod"
