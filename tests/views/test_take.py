"""What the take-along file says. Outside references stand beside each check."""

import datetime as dt
import re
from math import asin, degrees, pi, radians, sin, sqrt
from pathlib import Path

import pytest

from axlewright import tables
from axlewright.actions import carrying_of
from axlewright.rig import load_rig, rig_from_text
from axlewright.strength import assess_rig, kind_of
from axlewright.views import take_data
from axlewright.views.take_limits import axle_limits
from axlewright.views.take_lists import torque_lines
from axlewright.views.take_rods import RATIO, explained, rods
from axlewright.views.units_in_text import in_units

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
DAY = dt.date(2026, 6, 1)
NEVER_COMPUTED = [
    "wheel_nuts",
    "hub_bolts",
    "stub_nut",
    "spindle_nuts",
    "kingpin_caps",
    "ball_joints",
    "steering_nuts",
    "rod_clamps",
    "caliper",
    "flange",
    "pinion_nut",
    "leaf_clamps",
]


def assessed(name, **changes):
    text = (RIGS / f"{name}.toml").read_text("utf-8")
    for old, new in changes.values():
        assert old in text
        text = text.replace(old, new)
    return assess_rig(rig_from_text(text), draws=64)


@pytest.fixture(scope="module", params=["heron", "wagtail", "stork-rear"])
def rig(request):
    return assess_rig(load_rig(str(RIGS / f"{request.param}.toml")), draws=64)


@pytest.fixture(scope="module")
def heron():
    return assessed("heron")


def test_a_bow_explains_what_the_closed_forms_say(heron):
    # Outside reference: a triangle and a flat parabola, then the sine of an arm's turn.
    rod = {each.key: each for each in rods(heron)}["drag_link"]
    told = explained(rod, 0.030, 0.97)
    kink = 0.97 - 2.0 * sqrt(0.485**2 - 0.030**2)
    even = 8.0 * 0.030**2 / (3.0 * 0.97)
    assert told.short == pytest.approx((kink, even), rel=1e-9)
    assert told.wheel == pytest.approx(
        (14.0 * asin(kink / rod.lever_high), 20.0 * asin(even / rod.lever_low)), rel=1e-9
    )


def test_a_bowed_tie_rod_turns_the_steering_wheel_by_half_of_its_toe(heron):
    # Going straight the two wheels share the toe evenly: common practice, no source.
    tie = {each.key: each for each in rods(heron)}["tie_rod"]
    told = explained(tie, 0.030, 1.3, (16.0, 16.0))
    assert told.wheel == pytest.approx(tuple(0.5 * 16.0 * turn for turn in told.turn), rel=1e-12)


def test_a_bow_that_barely_shows_explains_hardly_anything(heron):
    tie = {each.key: each for each in rods(heron)}["tie_rod"]
    assert degrees(explained(tie, 0.010, tie.length).wheel[1]) < 1.0
    small, large = (explained(tie, bow, tie.length).wheel[1] for bow in (0.02, 0.04))
    assert large / small == pytest.approx(4.0, rel=0.02)  # with the square of the bow


def test_an_axle_that_stands_askew_turns_the_wheel_by_the_angle_and_the_ratio():
    # A right triangle: 10 mm over 1,010 mm.
    (rod,) = rods(assessed("stork-rear"))
    told = explained(rod, 0.010, 0.0)
    assert told.short == (0.010, 0.010)
    assert told.wheel[0] <= RATIO[0] * asin(0.010 / 1.010) <= RATIO[1] * asin(0.010 / 1.010)
    assert told.wheel[1] >= RATIO[1] * asin(0.010 / 1.010)


def test_a_given_steering_arm_leaves_no_band_but_its_own():
    given = assessed("heron", arm=("[steering]\n", '[steering]\narm = "170 mm"\n'))
    rod = rods(given)[0]
    assert rod.lever_low == pytest.approx(0.170, abs=0.008)
    assert rod.lever_high - rod.lever_low < 0.02
    assert "given" in rod.lever_said


def test_toe_goes_in_where_the_rod_is_ahead():
    behind = rods(assessed("heron"))[0].effect
    turned = assessed(
        "heron",
        said=("[steering]\n", '[steering]\ntie_rod_ahead = "yes"\n'),
        taped=('tie_rod_end.left = "170 mm behind', 'tie_rod_end.left = "170 mm ahead'),
    )
    ahead = rods(turned)[0].effect
    assert "toe goes out" in behind
    assert "toe goes in" in ahead


def test_no_torque_of_a_hub_a_joint_or_a_brake_is_ever_computed(rig):
    lines = {line.key: line for line in torque_lines(rig)}
    assert {"wheel_nuts", "caliper", "pinion_nut"} <= set(lines)
    for key, line in lines.items():
        if key in NEVER_COMPUTED:
            assert not re.search(r"\d", line.range + line.note), key
        else:
            assert key in {"arm_bolt", "track_bar_bolt"}
            assert "plausible" in line.range
            assert line.range.endswith("no target")


def test_a_bolts_range_holds_what_a_table_prints():
    # M14 of class 8.8, clamped to 70 % of 580 MPa on 115 mm2 at K = 0.2 (Budynas 9, table 8-15
    # for K; ISO 898-1 for the proof load): 131 N m.
    given = assessed("heron", bar=("[gear]\n", '[track_bar]\nbolt = "14 mm"\n\n[gear]\n'))
    told = {line.key: line.range for line in torque_lines(given)}["track_bar_bolt"]
    low, high = (float(end) for end in re.match(r"plausible (\d+) to (\d+) N m", told).groups())
    assert low < 131.0 < high


def test_toe_is_told_at_this_tyres_own_diameter(heron):
    # 0.2 deg at 35 in is 0.12 in, at 37 in 0.13, at 40 in 0.14: the trade's own table.
    data = take_data(heron, carrying_of(heron), DAY, "us")
    assert data.toe.diameter == "37.0 in"
    assert {row.angle: row.length for row in data.toe.rows}["0.2 deg"] == "0.13 in"
    metric = take_data(heron, carrying_of(heron), DAY).toe
    for row in metric.rows:
        angle, length = (float(text.split()[0]) for text in (row.angle, row.length))
        assert length == pytest.approx(2.0 * 939.8 * sin(radians(angle) / 2.0), rel=0.03)


def test_the_least_set_stands_whatever_the_order_says(rig):
    words = rig.rig.words
    duty = words["use.hardest"].replace(" ", "_")
    wanted = {
        key
        for key, spare in tables.spares().items()
        if duty in spare.duties and spare.fits(rig.rig.axle, words)
    }
    data = take_data(rig, carrying_of(rig, {"mass": "1 kg"}), DAY)
    assert {line.key for line in data.least} == wanted
    assert not wanted & {line.key for line in data.more}
    none = assess_rig(rig.rig, draws=0)
    assert {line.key for line in take_data(none, carrying_of(none), DAY).least} == wanted


def test_spares_carry_their_mass_their_place_and_the_trip(rig):
    data = take_data(rig, carrying_of(rig, {"days": "6", "mass": "200 kg"}), DAY)
    assert data.trip[0].startswith("The trip: 6 days with 2 people")
    assert any("The chances are rough" in line for line in data.trip)
    for line in (*data.least, *data.more):
        assert line.mass
        assert line.place.startswith("best: ")


def test_every_leading_part_has_its_card(rig):
    data = take_data(rig, carrying_of(rig), DAY)
    shown = {card.title for card in data.cards}
    leading = [place.part for place in (*rig.order[:5], *rig.wearing[:4])]
    for part in leading:
        card = tables.card_of(kind_of(part), rig.rig.axle)
        assert card is not None
        assert card.title in shown
    assert all(
        "to get out of danger, not home" in card.after or "Not driven" in card.after
        for card in data.cards
        if card.leads
    )


def test_whoever_steers_is_told_what_to_do_when_it_shakes(rig):
    cards = {card.key: card for card in take_data(rig, carrying_of(rig), DAY).cards}
    assert ("shake" in cards) == (rig.rig.axle == "front")
    if "shake" in cards:
        assert cards["shake"].steps[0].do.startswith("Hold the wheel lightly")
        assert "Never bring it on again" in cards["shake"].never


def test_play_of_a_hub_is_told_at_the_edge_of_this_tyre():
    # 0.005 in at a 2.5 in radius is 0.037 in at the edge of a 37 in tyre: 0.85 to 0.95 mm for
    # stud circles of 127 to 140 mm.
    given = assessed("heron", studs=("[wheel]\n", '[wheel]\nstud_circle = "127 mm"\n'))
    play = {row.key: row.value for row in axle_limits(given).play}["unit_hub_play"]
    assert "0.127 mm" in play
    assert "0.94 mm at the edge of this tyre (940 mm)" in play


def test_every_limit_has_scope_and_source(rig):
    for row in axle_limits(rig).play:
        assert row.scope
        assert "; read" in row.source
        assert row.value


def test_more_weight_than_two_tyres_may_carry_is_said():
    heavy = assessed("wagtail", weight=('axle = "1020 kg"', 'axle = "2900 kg"'))
    assert any("heavier than its two tyres" in line for line in axle_limits(heavy).weight)
    usual = axle_limits(assessed("wagtail")).weight
    assert not any("fix before trip" in line for line in usual)
    assert any("2,800 kg" in line for line in usual)  # load index 120: 1,400 kg each, charts


def test_distances_in_sentences_follow_the_reader():
    # 5 km is 3.1 mi, 20 m is 66 ft: exact inch, NIST SP 811.
    assert in_units("after 5 km") == "after 5 km"
    assert in_units("after 5 km, 20 m", "us") == "after 3 mi, 70 ft"


def test_the_turns_from_lock_to_lock_give_the_ratio(heron):
    lock = float(heron.columns["lock_angle"][0])
    told = take_data(heron, carrying_of(heron), DAY).arithmetic.lock_words
    assert f"times {pi / lock:.1f}" in told  # 360 deg a turn over twice the lock
