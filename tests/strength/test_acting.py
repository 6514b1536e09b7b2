"""Which doubts act on which part. Outside reference: one number moved at a time, and by hand."""

from dataclasses import replace
from math import cos, pi
from pathlib import Path

import numpy as np
import pytest

from axlewright.rig import doubts, load_rig, point_columns
from axlewright.strength import (
    acting_doubts,
    appraise,
    appraise_point,
    assess_rig,
    margins,
    parts_of,
    sizes_of,
)

RIGS = Path(__file__).parents[2] / "examples" / "rigs"


@pytest.fixture(scope="module")
def heron():
    rig = load_rig(str(RIGS / "heron.toml")).with_word("mended", "")
    return rig, appraise_point(rig)


@pytest.fixture(scope="module")
def acting(heron):
    return acting_doubts(*heron)


def _of(heron, name, kind):
    rig, point = heron
    names = [doubt.quantity for doubt in doubts(rig)]
    return names.index(name), parts_of(point.solved).index(kind)


@pytest.mark.parametrize(
    ("name", "kind", "acts"),
    [
        ("tube_wall", "tube_joint", True),
        ("landing_drop", "tube_joint", True),
        ("trunnion", "cross_joint", True),
        ("grip_wedged", "inner_shaft", True),
        ("stud_diameter", "end_forging", False),
        ("needle_length", "end_forging", False),
        ("trunnion", "tube_joint", False),
        ("tube_wall", "cross_joint", False),
        ("row_spread", "steering_arm", False),
        ("landing_drop", "inner_shaft", False),
    ],
)
def test_a_doubt_acts_where_its_formula_has_it(heron, acting, name, kind, acts):
    # Mechanics: a wheel stud is in no sum for the end forging, a tube's wall in none for a cross.
    assert acting.acts[_of(heron, name, kind)] == acts


@pytest.mark.parametrize(
    ("name", "kind"), [("tube_yield", "tube_joint"), ("bearing_rating", "hub_bearing")]
)
def test_its_ends_are_those_of_the_rig_with_that_number_said(heron, acting, name, kind):
    rig, point = heron
    doubt = next(each for each in doubts(rig) if each.quantity == name)
    like = rig.given["wheel_spacer"]
    was = margins(point.solved, point.reach)
    for end, found in ((doubt.low, acting.low), (doubt.high, acting.high)):
        datum = replace(like, quantity=name, path=name, value=end, doubt=0.0, kind=doubt.kind)
        said = appraise_point(replace(rig, given={**rig.given, name: datum}))
        place = parts_of(point.solved).index(kind)
        ratio = margins(said.solved, said.reach)[place, 0] / was[place, 0]
        assert found[_of(heron, name, kind)] == pytest.approx(ratio, rel=1e-4)


@pytest.mark.parametrize(
    ("part", "mode", "powers"),
    [
        ("inner_shaft_left", "twists off", {"inner_shaft": 3.0, "shaft_shear_yield": 1.0}),
        ("carrier_caps", "spread", {"cap_clamp": 1.0}),
        (
            "track_bar_bracket_axle",
            "bends",
            {
                "bracket_width": 2.0,
                "track_bar_plate": 1.0,
                "plate_yield": 1.0,
                "track_bar_bracket_height": -1.0,
            },
        ),
    ],
)
def test_powers_are_those_of_the_formula(heron, part, mode, powers):
    # pi d^3/12 x shear yield (Beer, Mechanics of Materials, ch. 3); t w^2/4 of a plastic plate.
    rig, point = heron
    columns = point_columns(rig)
    cases = [0] * len(point.solved.rows)
    holds, _ = sizes_of(columns, rig.words, point, cases)
    number = next(
        at for at, row in enumerate(point.solved.rows) if (row.part, row.mode) == (part, mode)
    )
    found = {size.quantity: size.power for size in holds[number]}
    assert found == pytest.approx(powers, abs=2e-3)


def test_a_capacity_can_be_worked_out_by_hand_from_its_sizes(heron):
    rig, point = heron
    columns = point_columns(rig)
    # Case 2 is full pull with the left wheel wedged.
    holds, asks = sizes_of(columns, rig.words, point, [2] * len(point.solved.rows))

    def sizes(part, mode):
        number = next(
            at for at, row in enumerate(point.solved.rows) if (row.part, row.mode) == (part, mode)
        )
        return number, {size.quantity: size.value for size in holds[number]}

    number, by = sizes("tube_joint_left", "works loose or tears at the centre")
    across, bore = by["tube_outer_left"], by["tube_outer_left"] - 2.0 * by["tube_wall"]
    hand = by["tube_yield"] * by["softening"] * by["joint_share"] * (across**3 - bore**3) / 6.0
    assert point.solved.capacity[number, 0] == pytest.approx(hand, rel=1e-9)
    number, by = sizes("cross_joint_left", "a trunnion breaks")
    pin = (
        by["trunnion"] ** 3 - by["trunnion_hole"] ** 3 * by["trunnion_hole"] / by["trunnion"]
    ) / 6
    force = by["cross_yield"] * by["cross_factor"] * pin / by["trunnion_lever"]
    hand = 2.0 * by["joint_arm"] * cos(by["lock_angle"]) * force
    assert point.solved.capacity[number, 0] == pytest.approx(hand, rel=0.01)
    assert {size.quantity for size in asks[number]} >= {"axle_weight", "radius", "grip_wedged"}
    number, by = sizes("wheel_studs_left", "clamp lost on one side")
    area = pi / 4.0 * (by["stud_diameter"] * (1.0 - 0.9382 * 0.11)) ** 2
    hand = 0.25 * by["stud_count"] * by["stud_circle"] * 0.6 * by["bolt_proof"] * area
    assert point.solved.capacity[number, 0] == pytest.approx(hand, rel=1e-9)


def test_nothing_moves_a_part_by_chance_alone():
    # Few draws make large chance shares; a doubt that is in no sum has none all the same.
    assessment = assess_rig(load_rig(str(RIGS / "wagtail.toml")), draws=64)
    for kind in ("end_forging", "steering_arm", "side_gears"):
        told = {mover.doubt.quantity for mover in assessment.movers(kind, most=200)}
        assert told
        assert not told & {"stud_diameter", "needle_length", "trunnion", "weld_leg", "arm_bolt"}
    moved = {item.doubt.quantity: item for item in assessment.influences}
    assert moved["needle_length"].swing == 0.0
    assert moved["needle_length"].share == 0.0
    assert not moved["needle_length"].swaps


def test_pushing_all_at_once_is_pushing_one_by_one(heron, acting):
    rig, point = heron
    columns = point_columns(rig)
    wall = next(each for each in doubts(rig) if each.quantity == "tube_wall")
    columns["tube_wall"] = np.array([wall.high])
    one = appraise(columns, rig.words, point.housing.order)
    at = _of(heron, "tube_wall", "tube_joint")
    ratio = margins(one.solved, one.reach)[at[1], 0] / margins(point.solved, point.reach)[at[1], 0]
    assert acting.high[at] == pytest.approx(ratio, rel=1e-4)
