"""Numbers that carry no band may move no leading margin: they share the load, they do not hold."""

import numpy as np
import pytest

from axlewright.rig import load_rig, point_columns
from axlewright.strength import appraise, holding, housing
from axlewright.strength.appraisal import margins

NUMBERS = [
    (housing, "FORGED"),
    (housing, "CAST_BORE"),
    (holding, "FOUR_UP"),
    (holding, "THREE_UP"),
    (holding, "FRAME_UP"),
    (holding, "UPPER_RISE"),
    (holding, "UPPER_SHARE"),
    (holding, "SEAT_UP"),
    (holding, "LEAF_SIDEWAYS"),
    (holding, "LEAF_ALONG"),
    (holding, "LEAF_UPRIGHT"),
    (holding, "LEAF_YAW"),
]
LEADING = 8


def margins_of(rig):
    made = appraise(point_columns(rig), rig.words)
    return margins(made.solved, made.reach)[:, 0]


# Statics: with the load's path given by the layout, stiffness alone moves little.
@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
@pytest.mark.parametrize(("room", "number"), NUMBERS, ids=lambda one: getattr(one, "__name__", one))
def test_a_number_without_a_band_moves_no_leading_margin(name, room, number, monkeypatch):
    rig = load_rig(f"examples/rigs/{name}.toml")
    usual = margins_of(rig)
    leading = np.argsort(usual)[:LEADING]
    for factor in (0.67, 1.06 if number == "CAST_BORE" else 1.5):  # the bore stays within
        monkeypatch.setattr(room, number, factor * vars(room)[number])
        moved = margins_of(rig)
        monkeypatch.undo()
        assert moved[leading] == pytest.approx(usual[leading], rel=0.03)


def test_the_numbers_do_something_somewhere(monkeypatch):
    rig = load_rig("examples/rigs/heron.toml")
    usual = appraise(point_columns(rig), rig.words).solved.utilisation
    monkeypatch.setattr(holding, "THREE_UP", 0.08)
    moved = appraise(point_columns(rig), rig.words).solved.utilisation
    assert np.max(np.abs(moved / np.maximum(usual, 1e-9) - 1.0)) > 0.05
