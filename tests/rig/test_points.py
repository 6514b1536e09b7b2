"""Places taped in a second hour: how they are said, mirrored, assumed and contradicted.

Outside reference: plane geometry, and what the words mean; common practice, no source.
"""

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.errors import BadFile, BadQuantity
from axlewright.rig import (
    change_from_text,
    changed_rig,
    doubts,
    drawn_geometry_columns,
    geometry_columns,
    load_rig,
    point_columns,
    rig_from_text,
)
from axlewright.rig.assumed_points import PLACED, has_place
from axlewright.rig.fields_points import POINTS, said
from axlewright.rig.place_text import parse_place

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
HERON = (RIGS / "heron.toml").read_text("utf-8")
BARE = HERON[: HERON.index("[points]")] + HERON[HERON.index("[[condition]]") :]


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("70 mm behind, 455 mm left, 325 mm up", (-0.07, 0.455, 0.325)),
        ("325 mm above the floor; 70 mm behind the axle; 455 mm right of centre",
         (-0.07, -0.455, 0.325)),
        ("0 mm ahead, 17 15/16 in left, 12,8 in up", (0.0, 0.455613, 0.32512)),
        ("7,5 cm forward, 0 mm left, 1/2 m up", (0.075, 0.0, 0.5)),
    ],
)  # fmt: skip
def test_a_place_is_read(text, place):
    found, about = parse_place(text)
    assert found == pytest.approx(place, abs=1e-5)
    assert not about


def test_about_is_heard():
    assert parse_place("about 70 mm behind, 455 mm left, 325 mm up")[1]
    assert parse_place("70 mm behind, about 455 mm left, 325 mm up")[1]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("70 mm behind, 455 mm left", "how far up"),
        ("70 mm behind, 70 mm ahead, 455 mm left, 325 mm up", "said twice"),
        ("70 mm, 455 mm left, 325 mm up", "which way"),
        ("70 behind, 455 mm left, 325 mm up", "unit"),
        ("70 mm behind, 455 mm left, -25 mm up", "under the floor"),
        ("70 mm behind, 4550 mm left, 325 mm up", "not under this axle"),
    ],
)
def test_what_is_no_place(text, told):
    with pytest.raises(BadQuantity, match=told):
        parse_place(text)


@given(ahead=st.integers(-2000, 2000), left=st.integers(-1400, 1400), up=st.integers(1, 1700))
def test_what_is_said_is_read_again(ahead, left, up):
    found, _ = parse_place(said((ahead, left, up)))
    assert found == pytest.approx((ahead / 1e3, left / 1e3, up / 1e3))


def test_the_side_that_was_not_taped_is_its_twins_mirror():
    columns = geometry_columns(load_rig(str(RIGS / "heron.toml")))
    for name in ("kingpin_upper", "tie_rod_end", "spring_top"):
        for axis, sign in (("ahead", 1.0), ("left", -1.0), ("up", 1.0)):
            one, other = (columns[f"point_{name}_{side}_{axis}"] for side in ("left", "right"))
            assert other == pytest.approx(sign * one)


def test_a_change_of_one_side_moves_its_twin():
    rig = load_rig(str(RIGS / "heron.toml"))
    change = change_from_text(
        'axlewright_change = 1\nname = "x"\n[[step]]\nset = "points.spring_top.left"\n'
        'to = "0 mm behind, 457 mm left, 850 mm up"\n'
    )
    new, _ = changed_rig(rig, change)
    assert geometry_columns(new)["point_spring_top_right_up"] == pytest.approx(0.85)


@pytest.mark.parametrize("arms", ["three arms", "four arms", "radius arms", "angled arms"])
def test_assumed_places_agree_with_what_the_strength_is_judged_by(arms):
    rig = rig_from_text(BARE.replace('arms = "three arms"', f'arms = "{arms}"'))
    columns = {name: float(value[0]) for name, value in geometry_columns(rig).items()}
    axes = ("ahead", "left", "up")

    def place(name):
        return np.array([columns[f"point_{name}_{axis}"] for axis in axes])

    axle = place("arm_axle_left")
    if arms == "radius arms":
        axle = 0.5 * (axle + place("arm_axle_far_left"))
    assert np.linalg.norm(place("arm_frame_left") - axle) == pytest.approx(columns["arm_length"])
    if arms == "angled arms":
        assert "point_track_bar_frame_up" not in columns
        upper = np.linalg.norm(place("upper_arm_frame_left") - place("upper_arm_axle_left"))
        assert upper == pytest.approx(0.8 * columns["arm_length"], rel=0.02)
        return
    bar = np.linalg.norm(place("track_bar_frame") - place("track_bar_axle"))
    assert bar == pytest.approx(columns["track_bar_span"])
    upper, lower = place("kingpin_upper_left"), place("kingpin_lower_left")
    assert upper[2] - lower[2] == pytest.approx(columns["kingpin_height"])
    assert lower[1] == pytest.approx(0.5 * columns["kingpin_spacing"])
    assert np.arctan2(lower[0] - upper[0], upper[2] - lower[2]) == pytest.approx(columns["caster"])


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_every_place_of_the_layout_is_settled_and_no_other(name):
    rig = load_rig(str(RIGS / f"{name}.toml"))
    columns = drawn_geometry_columns(rig, 0, 32)
    for point in POINTS:
        assert point.name in PLACED
        sides = ("_left", "_right") if point.sided else ("",)
        for side in sides:
            there = f"point_{point.name}{side}_up" in columns
            assert there == has_place(point.name, rig.words), point.name
            if there:
                assert np.all(np.isfinite(columns[f"point_{point.name}{side}_up"]))


SETTLED = {
    "arm_apart", "arm_length", "arm_bracket_height", "track_bar_span", "track_bar_drop",
    "track_bar_bracket_height", "kingpin_spacing", "kingpin_height", "steering_arm",
    "drag_link_length",
}  # fmt: skip


def test_what_the_second_hour_settles_is_assumed_no_more_and_nothing_else_is_touched():
    taped, bare = load_rig(str(RIGS / "heron.toml")), rig_from_text(BARE)
    assert taped.answers == bare.answers
    told = {doubt.quantity: doubt for doubt in doubts(taped)}
    alone = {doubt.quantity: doubt for doubt in doubts(bare)}
    assert set(told) == set(alone)
    settled = {name for name, doubt in told.items() if doubt.given != alone[name].given}
    assert settled == SETTLED
    assert all(told[name].high - told[name].low < 0.03 for name in settled)
    one, other = point_columns(taped), point_columns(bare)
    assert one.keys() == other.keys()
    assert {name for name in one if one[name] != other[name]} <= SETTLED


def test_lengths_are_those_between_the_taped_ends():
    # plane geometry by hand, in mm: hypot(733, 7, 145), hypot(839, 72), hypot(70, 968, 80)
    columns = {name: float(value[0]) for name, value in point_columns(
        load_rig(str(RIGS / "heron.toml"))).items()}  # fmt: skip
    assert columns["arm_length"] == pytest.approx(0.747237, abs=1e-6)
    assert columns["track_bar_span"] == pytest.approx(0.842084, abs=1e-6)
    assert columns["drag_link_length"] == pytest.approx(0.973819, abs=1e-6)
    assert columns["kingpin_spacing"] == pytest.approx(2 * 0.687)
    assert columns["steering_arm"] == pytest.approx(0.170)
    assert columns["kingpin_height"] == pytest.approx(0.190)


def test_what_was_measured_by_itself_stands_over_its_taped_ends():
    text = HERON.replace("[points]", '[links]\nlength = "760 mm"\n\n[points]')
    assert point_columns(rig_from_text(text))["arm_length"] == pytest.approx(0.760)


def test_a_raised_bracket_is_taller_for_the_strength_too():
    rig = load_rig(str(RIGS / "heron.toml"))
    change = change_from_text(
        'axlewright_change = 1\nname = "x"\n[[step]]\nset = "points.track_bar_axle"\n'
        'to = "96 mm ahead, 421 mm right, 595 mm up"\n'
    )
    new, _ = changed_rig(rig, change)
    before, after = point_columns(rig), point_columns(new)
    grown = after["track_bar_bracket_height"] - before["track_bar_bracket_height"]
    assert grown == pytest.approx(0.055)
    assert before["track_bar_drop"] - after["track_bar_drop"] == pytest.approx(0.055)


CLASHES = [
    (
        'arm_axle.right = "2 mm behind, 412 mm right',
        'arm_axle.right = "2 mm behind, 412 mm left',
        "points.arm_axle.right",
        "across the centre plane",
    ),
    (
        'kingpin_upper.left = "8 mm behind, 659 mm left, 527 mm up"',
        'kingpin_upper.left = "8 mm behind, 659 mm left, 327 mm up"',
        "points.kingpin_upper.left",
        "the upper one must be the higher",
    ),
    (
        'tie_rod_end.left = "170 mm behind',
        'tie_rod_end.left = "170 mm ahead',
        "points.tie_rod_end.left",
        "170 mm ahead of the axle, but the tie rod is told to be behind",
    ),
    (
        'track_bar_axle = "96 mm ahead, 421 mm right',
        'track_bar_axle = "96 mm ahead, 421 mm left',
        "points.track_bar_axle",
        "bolted to the axle on the right",
    ),
    (
        "[points]",
        '[links]\nlength = "900 mm"\n\n[points]',
        "points.arm_frame.left",
        "apart, but it was given as 900 mm long",
    ),
    (
        'arm_frame.right = "735 mm behind, 405 mm right, 488 mm up"',
        'arm_frame.right = "535 mm behind, 405 mm right, 488 mm up"',
        "points.arm_frame.right",
        "200 mm apart",
    ),
    (
        'third_arm_frame = "592 mm behind, 150 mm left, 618 mm up"',
        'third_arm_frame = "20 mm behind, 150 mm left, 600 mm up"',
        "points.third_arm_frame",
        "both ends of this rod are",
    ),
]


@pytest.mark.parametrize(("old", "new", "path", "told"), CLASHES)
def test_places_that_cannot_all_be_true(old, new, path, told):
    assert old in HERON
    with pytest.raises(BadFile) as refused:
        rig_from_text(HERON.replace(old, new, 1))
    faults = [fault for fault in refused.value.faults if fault.field == path]
    assert faults
    assert told in faults[0].problem
    assert faults[0].accepted
    assert faults[0].line
