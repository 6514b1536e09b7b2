"""The wheel joint as the appraisal judges it, beside worked cases and the tables."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from axlewright import tables
from axlewright.duty import ROW
from axlewright.rig import (
    ASSUMPTIONS,
    SEED,
    drawn_columns,
    load_rig,
    point_columns,
    scores,
)
from axlewright.strength import appraise, appraise_point
from axlewright.strength.parts_joint import (
    DENTED,
    ear_limit,
    needle_limit,
    trunnion_limit,
)

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
LOCK = np.array([[np.radians(35.0)]])


def columns_of(**values):
    return {name: np.array([value]) for name, value in values.items()}


def spreads():
    return {item.quantity: item.spread for item in ASSUMPTIONS}


# Reference: derived case, F = T/(2 R cos b) and 32 F l d / (pi (d^4 - h^4)): 2,500 N m at 35
# degrees on an arm of 40 mm is 38,149 N, and 737 MPa in an 18.5 mm trunnion with a 3 mm hole and
# a lever of 12 mm. A round pin takes its plastic over its elastic modulus more than first yield:
# 32 (d^3 - h^3) d / (6 pi (d^4 - h^4)), 16/(3 pi) when solid.
def test_trunnion_meets_the_worked_joint():
    shape = 32.0 * (18.5**3 - 3.0**3) * 18.5 / (6.0 * np.pi * (18.5**4 - 3.0**4))
    columns = columns_of(
        trunnion=18.5e-3,
        trunnion_hole=3e-3,
        joint_arm=40e-3,
        trunnion_lever=12e-3,
        cross_yield=737e6 / shape,
        cross_factor=1.0,
    )
    assert trunnion_limit(columns, LOCK)[0, 0] == pytest.approx(2500.0, rel=2e-3)


# Outside: line contact of Budynas and Nisbett, eq. 3-73 and 3-74, half-width first; and the
# textbook rule p = 272 sqrt((1/d1 + 1/d0) F/L) MPa with 4.6 F/Z on the busiest needle (memory).
def test_needles_dent_where_line_contact_says():
    columns = columns_of(
        trunnion=18.1e-3, needle=2.7e-3, needle_length=12.7e-3, needles=24.0, joint_arm=36.8e-3
    )
    torque = needle_limit(columns, LOCK)[0, 0]
    force = 4.6 * torque / (2.0 * 36.8e-3 * np.cos(LOCK[0, 0])) / 24.0
    softness = 2.0 * (1.0 - 0.3**2) / 206e9
    half = np.sqrt(2.0 * force / (np.pi * 12.7e-3) * softness / (1 / 18.1e-3 + 1 / 2.7e-3))
    assert 2.0 * force / (np.pi * half * 12.7e-3) == pytest.approx(DENTED, rel=1e-9)
    rule = 272.0 * np.sqrt((1 / 18.1 + 1 / 2.7) * force / 12.7)
    assert rule == pytest.approx(DENTED / 1e6, rel=0.02)


# Budynas and Nisbett, ch. 3: a rectangle bends plastically at b h^2/4; a lug tears at its two
# sides. By hand for a 30 mm cap: wall 8, thickness 13.5, reach 36, yield 500 MPa.
@pytest.mark.parametrize(("reach", "force"), [(36e-3, 99187.5), (20e-3, 108000.0)])
def test_an_ear_gives_at_its_root_or_its_eye(reach, force):
    columns = columns_of(
        cap_across=30e-3,
        ear_wall=8e-3,
        ear_thickness=13.5e-3,
        ear_reach=reach,
        ear_yield=500e6,
        joint_arm=37e-3,
    )
    root = 500e6 * 13.5e-3 * 46e-3**2 / 4.0 / reach
    eye = 500e6 * 2.0 * 8e-3 * 13.5e-3
    assert min(root, eye) == pytest.approx(force)
    torque = ear_limit(columns, LOCK)[0, 0]
    assert torque == pytest.approx(force * 2.0 * 37e-3 * np.cos(LOCK[0, 0]))


# The table's own rows and proportions, asked for by cap and length.
def test_a_measured_cap_finds_its_row_and_another_the_proportions():
    heron = point_columns(load_rig(str(RIGS / "heron.toml")))
    row = tables.cross_joint("30.2x92.1")
    for name, want in (
        ("trunnion", row.trunnion),
        ("trunnion_hole", row.hole),
        ("joint_arm", row.arm),
        ("needle", row.needle),
        ("needle_length", row.needle_length),
        ("needles", row.needles),
    ):
        assert heron[name][0] == pytest.approx(want), name
    wagtail = point_columns(load_rig(str(RIGS / "wagtail.toml")))
    assert tables.cross_joint_at(wagtail["cap_across"][0], wagtail["cap_to_cap"][0]) is None
    share = {key: item.value for key, item in tables.cross_joint_ratios().items()}
    assert wagtail["trunnion"][0] == pytest.approx(share["trunnion_to_cap"] * 0.029)
    assert wagtail["needle"][0] == pytest.approx(share["needle_to_cap"] * 0.029)
    assert wagtail["joint_arm"][0] == pytest.approx(share["arm_to_length"] * 0.090)


def test_the_row_of_each_draw_is_the_one_that_the_table_finds():
    heron = load_rig(str(RIGS / "heron.toml"))
    given = dict(heron.given)
    given["cap_to_cap"] = replace(given["cap_to_cap"], value=0.0916, doubt=0.0006)
    rig = replace(heron, given=given)
    draws = drawn_columns(rig, 0, 200)
    doubt = np.exp(scores(SEED, "joint_arm", 0, 200) * np.log(1.08) / 1.6448536)
    found = []
    for draw in range(200):
        row = tables.cross_joint_at(draws["cap_across"][draw], draws["cap_to_cap"][draw])
        found.append(row is not None)
        arm = row.arm if row is not None else 0.4 * draws["cap_to_cap"][draw]
        assert draws["joint_arm"][draw] == pytest.approx(arm * doubt[draw], rel=1e-6)
    assert 20 < sum(found) < 200


def test_bands_are_no_narrower_than_those_of_the_table():
    ratio = tables.cross_joint_ratios()
    for quantity, key in (
        ("trunnion", "trunnion_to_cap"),
        ("trunnion_hole", "hole_to_trunnion"),
        ("joint_arm", "arm_to_length"),
        ("trunnion_lever", "lever_to_cap"),
        ("needle", "needle_to_cap"),
        ("needle_length", "needle_length_to_cap"),
        ("ear_wall", "ear_wall_to_cap"),
        ("ear_thickness", "ear_thickness_to_cap"),
        ("ear_reach", "ear_reach_to_cap"),
    ):
        row = ratio[key]
        assert spreads()[quantity] >= 0.995 * np.sqrt(row.high / row.low), quantity
    # what the table's spread is a factor on: torque, so its cube root on the trunnion
    assert spreads()["trunnion"] ** 3 >= 1.5
    assert spreads()["cross_yield"] >= 1.5
    assert spreads()["hub_lock_limit"] >= 1.5


# Common practice, no source: full lock asks more of a joint than straight ahead, by 1/cos.
def test_every_limit_of_the_joint_falls_with_the_cosine_of_its_angle():
    columns = point_columns(load_rig(str(RIGS / "heron.toml")))
    straight = np.array([[0.0]])
    for limit in (trunnion_limit, ear_limit, needle_limit):
        share = limit(columns, LOCK) / limit(columns, straight)
        assert share[0, 0] == pytest.approx(np.cos(LOCK[0, 0]), rel=1e-12)


def test_a_hub_that_unlocks_stands_in_the_torque_path():
    heron = load_rig(str(RIGS / "heron.toml"))
    point = appraise_point(heron)
    parts = [row.part for row in point.solved.rows]
    number = parts.index("locking_hub_left")
    case = ROW["pull_left"] - 1
    torque = point.loads.drive[0, case + 1, 0]
    holds = point.solved.capacity[number, 0]
    assert point.solved.utilisation[number, 0, case] == pytest.approx(torque / holds)
    fixed = appraise_point(heron.with_word("drive.unlocking_hubs", "no"))
    assert "locking_hub_left" not in [row.part for row in fixed.solved.rows]
    assert tables.consequence("locking_hub_left").what_then == "limps"


# Common practice, no source: with its hubs unlocked an axle's joints stand still and wear less.
def test_joints_of_unlocking_hubs_last_by_the_share_of_driving():
    heron = load_rig(str(RIGS / "heron.toml"))
    for answer, words in (("yes", "stand still"), ("no", "turn all the way")):
        rig = heron.with_word("drive.unlocking_hubs", answer).with_word("mended", "")
        columns = point_columns(rig)
        lives = []
        for share in (columns["driven_share"], 2.0 * columns["driven_share"]):
            wear = appraise({**columns, "driven_share": share}, rig.words).wear
            (joint,) = [item for item in wear if item.part == "cross_joint_left"]
            assert words in joint.basis
            lives.append(joint.life_km[0])
        assert lives[0] == pytest.approx(2.0 * lives[1])
