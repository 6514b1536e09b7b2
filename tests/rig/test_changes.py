"""A change to a rig: what it sets, adds, removes and drops. By definition of the change file."""

from pathlib import Path

import numpy as np
import pytest

from axlewright.errors import BadFile
from axlewright.rig import (
    ASSUMPTIONS,
    change_from_text,
    changed_rig,
    load_change,
    load_rig,
    point_columns,
    rig_from_text,
)
from axlewright.rig.replaced import RENEWED

NEW_HOUSING = """\
set = "housing"
[step.to]
tube.outer = "95.2 mm"
tube.wall = "9.5 mm"
tube.steel = "plain hot-finished"
tube.bare.left = "310 mm"
tube.bare.right = "600 mm"
gear.ring = "248 mm\""""
WALL = 'set = "tube.wall"\nto = "7.9 mm"'
HERON = Path(__file__).parents[2] / "examples" / "rigs" / "heron.toml"


def _change(*steps):
    told = "".join(f"\n[[step]]\n{step}\n" for step in steps)
    return change_from_text(f'axlewright_change = 1\nname = "test"\n{told}', file="change.toml")


def test_setting_a_name_that_is_none_is_refused():
    with pytest.raises(BadFile, match=r"tube\.outre"):
        _change('set = "tube.outre"\nto = "88.9 mm"')


def test_a_calliper_overrides_the_paper_strip():
    rig, _ = changed_rig(load_rig(str(HERON)), _change('set = "tube.outer"\nto = "88.9 mm"'))
    columns = point_columns(rig)
    for side in ("left", "right"):
        assert np.allclose(columns[f"tube_outer_{side}"], 0.0889)


def test_what_is_given_can_be_removed_and_then_is_assumed():
    rig = load_rig(str(HERON))
    new, _ = changed_rig(rig, _change('remove = "gear.ring"'))
    assert "ring_diameter" in rig.given
    assert "ring_diameter" not in new.given
    assert np.isfinite(point_columns(new)["ring_diameter"]).all()


def test_what_is_not_there_cannot_be_removed():
    with pytest.raises(BadFile, match="nothing of this name on the rig to remove"):
        changed_rig(load_rig(str(HERON)), _change('remove = "truss.height"'))


def test_a_reading_of_the_old_tyre_goes_with_it():
    text = HERON.read_text("utf-8").replace(
        "[hub_height]", 'stiffness = "300 N/mm"\n\n[hub_height]'
    )
    rig = rig_from_text(text)
    assert "tyre_stiffness" in rig.given
    new, dropped = changed_rig(rig, _change('set = "tyre.sidewall"\nto = "37x13.50R17LT 121Q"'))
    assert dropped == ("tyre.stiffness",)
    assert "tyre_stiffness" not in new.given


def test_a_change_that_cannot_be_is_refused():
    with pytest.raises(BadFile, match="the springs would be inside the wheels"):
        changed_rig(load_rig(str(HERON)), _change('set = "track.springs"\nto = "1600 mm"'))


def test_a_change_leaves_the_rig_itself_alone_and_is_named():
    rig = load_rig(str(HERON))
    new, _ = changed_rig(rig, _change('set = "gear.ratio"\nto = "4.88"'))
    assert rig.given["axle_ratio"].value == pytest.approx(4.56)
    assert new.given["axle_ratio"].value == pytest.approx(4.88)
    assert new.changes == ("test",)
    assert new.digest != rig.digest


def test_another_tube_takes_the_paper_strip_and_the_old_wall_with_it():
    rig = rig_from_text(HERON.read_text("utf-8").replace("[tube]", '[tube]\nwall = "6.4 mm"'))
    tube = 'set = "tube.outer"\nto = "88.9 mm"'
    new, dropped = changed_rig(rig, _change(tube))
    assert set(dropped) == {"tube.girth.left", "tube.girth.right", "tube.wall"}
    assert "tube_wall" not in new.given
    for steps in ((tube, WALL), (WALL, tube)):  # whichever stands first
        new, dropped = changed_rig(rig, _change(*steps))
        assert "tube.wall" not in dropped
        assert new.given["tube_wall"].value == pytest.approx(0.0079)


def test_another_tyre_needs_the_height_of_the_hubs():
    taller = 'set = "tyre.sidewall"\nto = "40x13.50R17LT 121Q"'
    with pytest.raises(BadFile, match="the hub stands elsewhere") as told:
        changed_rig(load_rig(str(HERON)), _change(taller))
    assert [fault.field for fault in told.value.faults] == ["hub_height.left", "hub_height.right"]
    sides = [f'set = "hub_height.{side}"\nto = "466 mm"' for side in ("left", "right")]
    new, _ = changed_rig(load_rig(str(HERON)), _change(taller, *sides))
    assert new.given["hub_height_left"].value == pytest.approx(0.466)


def test_a_housing_brings_its_own_numbers():
    rig = load_rig(str(HERON))
    new, _ = changed_rig(rig, _change(NEW_HOUSING))
    columns, before = point_columns(new), point_columns(rig)
    for side in ("left", "right"):
        assert np.allclose(columns[f"tube_outer_{side}"], 0.0952)
    assert np.allclose(columns["tube_wall"], 0.0095)
    # Sections grow with the diameter cubed: what is assumed of the old casting does not stay.
    grown = (0.0952 / np.mean([before[f"tube_outer_{side}"] for side in ("left", "right")])) ** 3
    for name in ("centre_modulus", "forging_modulus"):
        assert columns[name][0] / before[name][0] == pytest.approx(grown, rel=1e-9)


def test_a_housing_takes_the_readings_of_the_old_one_with_it():
    text = HERON.read_text("utf-8").replace(
        "[wheel]", '[links]\nbracket_plate = "6 mm"\n[shaft]\ninner = "33 mm"\n\n[wheel]'
    )
    rig = rig_from_text(text.replace("[tube]", '[truss]\nheight = "90 mm"\n\n[tube]'))
    new, dropped = changed_rig(rig, _change(NEW_HOUSING))
    told = ("tube.girth.left", "tube.girth.right", "truss.height", "links.bracket_plate")
    assert set(dropped) == {*told, "gear.ratio", "track-bar bracket, mended"}
    assert point_columns(new)["truss_height"][0] == 0.0
    # What the change does not name stays on the vehicle: the shafts that were measured.
    assert new.given["inner_shaft"].value == pytest.approx(0.033)
    moved, dropped = changed_rig(rig, _change(f'{NEW_HOUSING}\nshaft.stub = "36 mm"'))
    assert "shaft.inner" in dropped
    assert "inner_shaft" not in moved.given
    assert moved.given["stub_shaft"].value == pytest.approx(0.036)


def test_the_new_housing_has_not_been_looked_at():
    new, _ = changed_rig(load_rig(str(HERON)), _change(NEW_HOUSING))
    assert [(each.part, each.what) for each in new.conditions] == [
        ("the new housing", "never looked at")
    ]


def test_a_finding_off_the_housing_stays():
    hose = '\n[[condition]]\npart = "brake hose"\nwhat = "cracked"\n'
    rig = rig_from_text(HERON.read_text("utf-8") + hose)
    new, _ = changed_rig(rig, _change(NEW_HOUSING))
    assert "brake hose" in [each.part for each in new.conditions]


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ('set = "housing"\nto = "95 mm"', "a housing comes with its own numbers"),
        ('set = "housing"', "a housing comes with its own numbers"),
        ('remove = "housing"', "replaced whole"),
        ('set = "housing"\n[step.to]\ntube.outer = "95 mm"', r"tube\.bare\.left: this is missing"),
    ],
)
def test_a_housing_without_its_numbers_is_refused(step, told):
    with pytest.raises(BadFile, match=told):
        _change(step)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('wheel.offset = "ET 0 mm"', r"wheel\.offset: this does not come with a housing"),
        ('tube.wal = "9 mm"', r"tube\.wal: there is no such name"),
        ('forging.gussets = "don\'t know"', r"forging\.gussets: a change needs a known value"),
    ],
)
def test_what_a_housing_cannot_bring_is_told_by_line(line, told):
    with pytest.raises(BadFile, match=told) as found:
        _change(f"{NEW_HOUSING}\n{line}")
    assert {fault.line for fault in found.value.faults} == {13}


def test_a_name_of_the_housing_is_not_changed_twice():
    with pytest.raises(BadFile, match=r"tube\.wall is changed twice"):
        _change(NEW_HOUSING, WALL)


def test_every_demo_change_fits_a_demo_rig():
    for path in sorted((HERON.parents[1] / "changes").glob("*.toml")):
        new, _ = changed_rig(load_rig(str(HERON)), load_change(str(path)))
        assert new.changes == (load_change(str(path)).name,)


def test_what_is_assumed_anew_is_assumed_at_all():
    assert {item.quantity for item in ASSUMPTIONS} >= RENEWED
