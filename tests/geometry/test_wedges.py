"""Wedges under leaf springs: thickness by trigonometry, and which end is the thicker."""

import numpy as np
import pytest

from axlewright.geometry import align, driveline_in_travel, travel
from axlewright.physics import alignment
from axlewright.rig import change_from_text, changed_rig, readings_from_text, rig_from_text
from axlewright.views import align_json, align_lines, driveline_json, driveline_lines
from geometry.cases import HOME, demo

# shared case of geometry, "caster corrections": right triangle, 2 deg over a pad of 127 mm
CASE = (2.0, 0.127, 4.434938e-3)


def under(**fields):
    steps = "".join(f'[[step]]\nset = "{path}"\nto = "{to}"\n' for path, to in fields.items())
    change = change_from_text(f'axlewright_change = 1\nname = "x"\n{steps}')
    rig, _ = changed_rig(demo("stork-rear"), change)
    return driveline_in_travel(travel(rig, draws=0, cures=False), draws=64)


def test_two_degrees_on_a_pad_of_five_inches():
    degrees, pad, thick = CASE
    assert alignment.wedge_thickness(np.radians(degrees), pad) == pytest.approx(thick, abs=1e-9)


def test_the_thickness_goes_with_the_pad_and_turns_with_the_sign():
    pads = np.array([0.1, 0.2])
    told = alignment.wedge_thickness(np.radians([1.0, -1.0]), pads)
    assert told[1] == pytest.approx(-2.0 * told[0])


@pytest.mark.parametrize(("up", "way", "end"), [(-2.0, "up", "rear"), (2.0, "down", "front")])
def test_a_rear_axle_on_leaf_springs_is_told_its_wedge(up, way, end):
    # geometry: the spring keeps its slope and lies on the axle; a rear pinion looks ahead, so where
    # it is to rise the pad's rear end sinks away from the spring
    level = under(**{"driveline.pinion_up": "0 deg", "driveline.output_up": "0 deg"})
    assert [each.none for each in level.wedges] == [True]
    found = under(
        **{
            "driveline.pinion_up": f"{up} deg",
            "driveline.output_up": "0 deg",
            "travel.spring_pad": "127 mm",
        }
    )
    (wedge,) = found.wedges
    assert np.degrees(wedge.turn) == pytest.approx(-up, abs=1e-6)
    assert wedge.thicker == pytest.approx(CASE[2], rel=1e-6)
    assert wedge.band[0] < wedge.thicker < wedge.band[1]
    assert wedge.thick_end == end
    told = " ".join(driveline_lines(found))
    assert f"2.0 deg pinion {way} for the pinion takes wedges 4.4 mm thicker at the {end}" in told
    assert "New U-bolts" in told
    assert "maker's value" in told
    told = driveline_json(found)["wedges"][0]
    assert told["thicker"]["value"] == pytest.approx(CASE[2], rel=1e-6)


def test_too_steep_a_wedge_is_not_advised():
    found = under(**{"driveline.pinion_up": "-8 deg", "driveline.output_up": "0 deg"})
    assert found.wedges[0].too_steep
    assert "the pads are set anew on the tube, by a qualified welder" in " ".join(
        driveline_lines(found)
    )


def test_other_axles_have_none():
    assert driveline_in_travel(travel(demo("heron"), draws=0), draws=0).wedges == ()


def test_a_caster_that_was_read_out_is_told_its_wedge_on_leaf_springs():
    # common practice, no source: more caster takes a wedge; the pinion pays for it
    text = (HOME / "examples/rigs/heron.toml").read_text("utf-8")
    text = text[: text.index("[points]")] + text[text.index("[[condition]]") :]
    text = text.replace('arms = "three arms"', 'arms = "leaves"').replace(
        'weight_on = "coil on a seat"', 'weight_on = "leaf"'
    )
    rig = rig_from_text(text)
    read = readings_from_text(
        "axlewright_alignment = 1\n[caster]\n"
        + "".join(f'{side}.finder = "1.0 deg"\n' for side in ("left", "right"))
    )
    found = align(rig, read)
    (wedge,) = found.wedges
    wanted = found.of("caster").aim
    assert wedge.turn == pytest.approx(np.radians(1.0) - wanted, abs=1e-9)
    assert wedge.thicker == pytest.approx(0.127 * np.tan(abs(wedge.turn)), rel=1e-6)
    assert wedge.thick_end == "rear"  # geometry: more caster drops the tops back, the pinion down
    told = " ".join(align_lines(found))
    assert "thicker at the rear end" in told
    assert "New U-bolts" in told
    assert align_json(found)["wedges"][0]["for"] == "caster"
