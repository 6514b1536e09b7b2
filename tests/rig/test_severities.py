"""Severities are data that a user can change. Outside reference: each is a sum by hand."""

from pathlib import Path

import numpy as np
import pytest

from axlewright.duty import ROW, wheel_loads
from axlewright.errors import BadFile
from axlewright.rig import point_columns, rig_from_text

TEXT = (Path(__file__).parents[2] / "examples" / "rigs" / "wagtail.toml").read_text("utf-8")


def loads(*lines):
    rig = rig_from_text(TEXT + "\n[severity]\n" + "\n".join(lines) + "\n")
    columns = point_columns(rig)
    return columns, wheel_loads(columns, rig.words)


@pytest.mark.parametrize(
    ("line", "case", "of"),
    [
        ('hung = "1.5"', "hung_left", lambda made, row: made.ground[0, row, 0, 2]),
        ('rock = "0.8"', "rock", lambda made, row: made.centre[0, row, 2]),
    ],
)
def test_a_share_of_the_axles_weight_is_that_share(line, case, of):
    columns, made = loads(line)
    share = float(line.split('"')[1])
    assert of(made, ROW[case]) == pytest.approx(share * columns["axle_weight"][0])


def test_a_harder_turn_throws_more_load_over():
    columns, made = loads('cornering = "0.4"')
    weight, track = columns["axle_weight"][0], columns["track"][0]
    thrown = 0.4 * weight * columns["mass_height"][0] / track
    assert made.ground[0, ROW["cornering_right"], 0, 2] == pytest.approx(thrown)
    sideways = made.ground[0, ROW["cornering_right"], :, 1].sum()
    assert abs(sideways) == pytest.approx(0.4 * weight)


def test_a_lower_ledge_lifts_more_than_it_pushes_back():
    # Geometry: the push runs from the edge to the hub, so it stands at acos((r - h)/r).
    columns, made = loads('ledge_height = "100 mm"')
    back, _, up = made.hub[0, ROW["strike_left"], 0]
    radius = columns["radius"][0]
    steep = np.arccos((radius - 0.1) / radius)
    assert -back / up == pytest.approx(np.tan(steep))


def test_the_same_severities_reach_the_words():
    from axlewright.strength import assess_rig
    from axlewright.views.answer import order_rows

    rig = rig_from_text(TEXT + '\n[severity]\nledge_height = "200 mm"\nstrike_speed = "40 km/h"\n')
    told = " ".join(row.gives_at for row in order_rows(assess_rig(rig, draws=0)))
    assert "a 20 cm square ledge" in told


@pytest.mark.parametrize("line", ['hung = "9"', 'rock = "-1"', 'ledge_height = "2 m"'])
def test_what_no_axle_meets_is_refused(line):
    with pytest.raises(BadFile):
        loads(line)
