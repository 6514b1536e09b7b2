"""Stress of the tubes at their stations. Outside references: statics of a beam, closed forms."""

from math import pi, sqrt
from pathlib import Path

import numpy as np
import pytest

from axlewright.duty import live_cases
from axlewright.rig import load_rig, point_columns
from axlewright.strength import appraise, assess_rig, stressed
from axlewright.views import why_lines

RIGS = Path(__file__).parents[2] / "examples" / "rigs"


def found(name, **changed):
    rig = load_rig(str(RIGS / f"{name}.toml"))
    columns = point_columns(rig) | {key: np.full(1, value) for key, value in changed.items()}
    made = appraise(columns, rig.words)
    return columns, {
        f"{each.station}_{each.side}": each for each in stressed(columns, made.housing)
    }


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_both_tubes_are_told_from_end_to_centre(name):
    columns, at = found(name)
    places = [float(each.across[0]) for each in at.values()]
    assert places == sorted(places)
    assert {"end_left", "end_right", "joint_left", "joint_right", "seat_left"} <= set(at)
    for each in at.values():
        tube = float(columns[f"tube_outer_{each.side}"][0])
        bore = tube - 2.0 * float(columns["tube_wall"][0])
        modulus = pi * (tube**4 - bore**4) / (32.0 * tube)
        pull, _, _, twist, up, fore = each.actions[0]
        # Closed form: pull over area, moment over modulus, twist over twice the modulus, von Mises.
        along = sqrt(up**2 + fore**2) / modulus + abs(pull) / (pi / 4.0 * (tube**2 - bore**2))
        assert each.fibre[0] == pytest.approx(along)
        assert each.mises[0] == pytest.approx(sqrt(along**2 + 3.0 * (twist / (2.0 * modulus)) ** 2))


def test_a_landing_bends_the_tube_by_the_wheels_lever_over_the_seat():
    # Statics: leaf springs and a landing on both wheels: wheel force times the seat's distance.
    columns, at = found("stork-rear", landing_drop=0.6)
    joint = at["joint_left"]
    assert live_cases()[joint.case].key == "landing"
    weight, drop = columns["axle_weight"][0], columns["landing_drop"][0]
    peak = weight * (1.0 + sqrt(1.0 + 2.0 * drop * columns["landing_stiffness"][0] / weight))
    lever = 0.5 * (columns["track"][0] - columns["spring_spacing"][0])
    assert abs(joint.actions[0, 4]) == pytest.approx(0.5 * peak * lever, rel=0.03)


def test_an_opened_row_of_a_tube_tells_it_and_no_other_row_does():
    assessment = assess_rig(load_rig(str(RIGS / "heron.toml")), draws=0)
    for rank, place in enumerate(assessment.order, 1):
        told = "\n".join(why_lines(assessment, rank))
        rows = sum(row.part == place.part for row in assessment.point.solved.rows)
        wanted = rows if place.kind in {"tube", "tube_joint"} else 0
        assert told.count("worst fibre there, elastic") == wanted
