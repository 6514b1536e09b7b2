"""A change to a rig: what it sets, adds, removes and drops. By definition of the change file."""

from pathlib import Path

import numpy as np
import pytest

from axlewright.errors import BadFile
from axlewright.rig import change_from_text, changed_rig, load_rig, point_columns, rig_from_text

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
