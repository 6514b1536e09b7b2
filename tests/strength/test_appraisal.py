"""The whole chain from a rig to its checks: balance, facts of the trade, draws and bands."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import brentq

from axlewright.duty import ROW, live_cases
from axlewright.rig import (
    change_from_text,
    changed_rig,
    drawn_columns,
    load_rig,
    point_columns,
)
from axlewright.strength import appraise, appraise_draws, appraise_point, assess_rig, compare
from axlewright.strength.appraisal import margins
from axlewright.strength.housing import tube_sections
from axlewright.strength.ledger import Ledger, Row, solve

RIGS = ("heron", "wagtail", "stork-rear")
LAYOUTS = (
    ("four arms", "coil on a seat"),
    ("three arms", "coil-over on a damper bracket"),
    ("radius arms", "coil on a seat"),
    ("leaves", "leaf"),
)


def rig_of(name):
    return load_rig(f"examples/rigs/{name}.toml")


@pytest.fixture(scope="module")
def heron():
    return rig_of("heron")


@pytest.fixture(scope="module")
def wagtail():
    return rig_of("wagtail")


@pytest.mark.parametrize("name", RIGS)
def test_every_case_of_every_demo_rig_is_a_free_body_in_balance(name):
    # Statics: what the ground does and what holds the axle add up to nothing.
    point = appraise_point(rig_of(name))
    assert np.all(point.housing.status == 0)
    assert np.max(point.housing.residual) <= 1e-9


@pytest.mark.parametrize(("arms", "weight_on"), LAYOUTS)
def test_every_layout_is_in_balance(heron, arms, weight_on):
    rig = heron.with_word("held_by.arms", arms).with_word("held_by.weight_on", weight_on)
    point = appraise_point(rig)
    assert np.all(point.housing.status == 0)
    assert np.max(point.housing.residual) <= 1e-9


def test_the_ground_carries_what_the_scale_said(heron):
    # Statics: standing, the two contact patches carry the weight on the axle.
    point = appraise_point(heron)
    standing = point.loads.ground[0, ROW["standing"], :, 2]
    assert standing.sum() == pytest.approx(1510 * 9.80665)
    springs = [point.housing.support_force[f"spring_{side}"][0, 0, 2] for side in ("left", "right")]
    assert -sum(springs) == pytest.approx(standing.sum(), rel=0.02)


def test_hardness_is_where_the_ratios_reach_one():
    # Brute force: scipy's root finder on the same ratios.
    rng = np.random.default_rng(5)
    for _ in range(40):
        base, live = rng.normal(0.0, 0.3, 3), rng.normal(0.0, 1.0, 3)
        ledger = Ledger(1)
        ratios = [np.zeros((1, 1 + len(live_cases()))) for _ in range(3)]
        for ratio, start, more in zip(ratios, base, live, strict=True):
            ratio[0, 0] = start
            ratio[0, ROW["strike_left"]] = more
        ledger.add(Row(part="centre", mode="m", basis="b"), *ratios, holds=np.ones(1))
        solved = solve(ledger)
        case = ROW["strike_left"] - 1

        def short(hardness, base=base, live=live):
            return np.linalg.norm(base + hardness * live) - 1.0

        assert solved.hardness[0, 0, case] == pytest.approx(brentq(short, 0.0, 1e3), rel=1e-9)
        assert solved.utilisation[0, 0, case] == pytest.approx(np.linalg.norm(base + live))


PLACES = {
    "joint": ("beside the centre", "at the centre"),
    "brackets": ("at the spring", "at the arm bracket", "at the track-bar bracket"),
    "outboard": ("beside the end forging",),
}


def highest_by_place(rig, case):
    """The loudest tube row of the joint, of the seat and link brackets, and outboard of them.

    Seat, arm and track-bar brackets stand within a hand's breadth of each other; the joint counts
    with its own class, the share that pressing and plug welds hold.
    """
    point = appraise_point(rig)
    column = ROW[case] - 1
    return {
        place: max(
            point.solved.utilisation[number, 0, column]
            for number, row in enumerate(point.solved.rows)
            if row.part.startswith("tube_") and row.mode.endswith(ends)
        )
        for place, ends in PLACES.items()
    }


@pytest.mark.parametrize("name", RIGS)
@pytest.mark.parametrize("case", ["landing", "strike_left", "strike_right"])
def test_tubes_are_hardest_pressed_beside_the_centre_and_at_the_seat(name, case):
    # common practice, no source
    loudest = highest_by_place(rig_of(name), case)
    assert min(loudest["joint"], loudest["brackets"]) > 1.05 * loudest["outboard"]


@pytest.mark.parametrize("name", RIGS)
@pytest.mark.parametrize("side", ["left", "right"])
def test_a_strike_bends_the_tube_backward_and_a_little_upward(name, side):
    # common practice, no source
    housing = appraise_point(rig_of(name)).housing
    node, root = housing.place[f"wheel_{side}"], housing.place[f"joint_{side}"]
    moved = housing.displacement[0, ROW[f"strike_{side}"]]
    arm = np.array([0.0, housing.across[0, node] - housing.across[0, root], 0.0])
    back, _, up = moved[node, :3] - moved[root, :3] - np.cross(moved[root, 3:], arm)
    assert 0.0 < up < -0.65 * back


def stiffer_stops(rig, factor):
    columns = point_columns(rig)
    columns["bump_stiffness"] = factor * columns["bump_stiffness"]
    appraised = appraise(columns, rig.words)
    return margins(appraised.solved, appraised.reach)[:, 0]


@pytest.mark.parametrize("name", ["heron", "stork-rear"])
def test_without_radius_arms_the_stops_move_no_leading_margin(name):
    # Statics: two springs and arms that are free to roll share the load by their places alone.
    rig = rig_of(name)
    usual, free = stiffer_stops(rig, 1.0), stiffer_stops(rig, 0.0)
    leading = np.argsort(usual)[:8]
    assert free[leading] == pytest.approx(usual[leading], rel=0.005)


def test_radius_arms_work_hardest_when_only_one_spring_is_on_its_stop(wagtail):
    # Radius arms are a bar against roll (common practice, no source): the more a hung wheel can
    # roll the axle, the more they twist it.
    point = appraise_point(wagtail)
    columns = point_columns(wagtail)
    columns["bump_stiffness"] = 0.0 * columns["bump_stiffness"]
    free = appraise(columns, wagtail.words)
    twist = ROW["hung_left"], point.housing.place["arm_left"], 0, 4
    row, node, face, moment = twist
    held, soft = (
        abs(housing.faces[0, row, node - 1, face, moment])
        for housing in (point.housing, free.housing)
    )
    assert 0.0 < held < soft


def test_a_stronger_shaft_moves_the_break_to_the_next_part(heron):
    # common practice, no source
    rig, _ = changed_rig(heron, change_from_text(open_text("heavier-tube")))
    rig, _ = changed_rig(rig, change_from_text(GOOD_JOINTS))
    before = assess_rig(rig, draws=256)
    assert before.order[0].kind == "inner_shaft"
    both, _ = changed_rig(rig, change_from_text(open_text("stronger-shafts")))
    after = assess_rig(both, draws=256)
    assert after.order[0].kind not in {"inner_shaft", "stub_shaft", "spline"}
    kinds = {place.kind: place.margin for place in after.order}
    was = {place.kind: place.margin for place in before.order}
    assert kinds["cross_joint"] == pytest.approx(was["cross_joint"])


GOOD_JOINTS = """
axlewright_change = 1
name = "good joints and a four-pinion differential"
[[step]]
set = "joint.steel_factor"
to = "1.6"
[[step]]
set = "gear.side_mates"
to = "4"
"""


def open_text(name):
    return Path(f"examples/changes/{name}.toml").read_text("utf-8")


def test_a_truss_does_little_for_a_fore_and_aft_hit(heron):
    # common practice, no source; a chord over the tube adds nothing to bending fore and aft
    trussed, _ = changed_rig(heron, change_from_text(open_text("truss-and-gussets")))
    plain, better = (dict(_seat_rows(rig)) for rig in (heron, trussed))
    assert better["landing"] < 0.8 * plain["landing"]
    # A strike also lifts; only that part of it gains.
    assert better["strike_left"] / plain["strike_left"] > better["landing"] / plain["landing"]
    bare, stiff = (tube_sections(point_columns(rig), "left") for rig in (heron, trussed))
    assert stiff["plastic_fore"] == pytest.approx(bare["plastic_fore"])
    assert stiff["plastic_up"] > 1.3 * bare["plastic_up"]


def _seat_rows(rig):
    point = appraise_point(rig)
    number = next(
        number
        for number, row in enumerate(point.solved.rows)
        if row.part == "tube_left" and row.mode == "bends at the arm bracket"
    )
    return [
        (case, point.solved.utilisation[number, 0, ROW[case] - 1])
        for case in ("landing", "strike_left")
    ]


@pytest.mark.parametrize("name", RIGS)
def test_in_low_range_grip_not_the_engine_limits_a_shaft(name):
    # common practice, no source
    assert np.all(appraise_point(rig_of(name)).loads.engine_share >= 1.0)


def test_the_standard_wagon_is_quiet_where_the_overloaded_one_is_marginal():
    # common practice, no source: the same severities for both
    quiet, loud = (assess_rig(rig_of(name), draws=512) for name in ("wagtail", "heron"))
    for key in ("landing_drop", "strike_speed", "slide_speed", "hung_factor"):
        assert quiet.columns[key] == loud.columns[key]
    breaking = [row.breaks for row in quiet.point.solved.rows]
    assert np.max(quiet.point.solved.utilisation[breaking]) < 0.8
    assert quiet.order[0].margin > 1.2
    assert np.max(loud.point.solved.utilisation) > 1.0
    assert loud.order[0].margin < 1.0


def test_more_offset_loads_the_bearing_more(heron):
    # Statics of the hub: the moment is the load times the tyre's distance from the bearing.
    given = dict(heron.given)
    given["wheel_spacer"] = replace(given["wheel_spacer"], value=0.03)
    spaced = replace(heron, given=given)

    def worst(rig):
        point = appraise_point(rig)
        rows = [
            number for number, row in enumerate(point.solved.rows) if row.part == "hub_bearing_left"
        ]
        return np.max(point.solved.utilisation[rows, 0, ROW["landing"] - 1])

    assert worst(spaced) > worst(heron)


@pytest.mark.parametrize("block", [64, 100, 1000])
def test_draws_do_not_depend_on_the_block(heron, block):
    point = appraise_point(heron)
    whole = appraise_draws(heron, point, 300, block=256)
    parts = appraise_draws(heron, point, 300, block=block)
    np.testing.assert_array_equal(whole.margin, parts.margin)
    np.testing.assert_array_equal(whole.life, parts.life)


def test_a_fleet_of_one_is_a_rig(heron):
    many = drawn_columns(heron, 0, 5)
    order = appraise_point(heron).housing.order
    batch = appraise(many, heron.words, order)
    for lane in range(5):
        single = {name: values[lane : lane + 1] for name, values in many.items()}
        one = appraise(single, heron.words, order)
        np.testing.assert_allclose(
            one.solved.utilisation[:, 0], batch.solved.utilisation[:, lane], rtol=1e-9
        )


def test_a_change_keeps_the_draws_of_what_it_leaves_alone(heron):
    change = change_from_text(open_text("heavier-tube"))
    comparison = compare(assess_rig(heron, draws=256), [change], draws=256)
    before = {place.kind: place for place in comparison.before.order}
    for place in comparison.after.order:
        if place.kind in {"cross_joint", "ring_and_pinion", "hub_bearing", "knuckle"}:
            assert place.margin == before[place.kind].margin
            assert place.margin_low == before[place.kind].margin_low


def test_bands_cover_what_they_say(heron):
    # Calibration: truths from the stated bands, simulated tape readings, 90 % bands; 120 truths
    # and ten checks leave about 2 % of sampling error on the pooled share.
    truths, draws = 120, 240
    truth = drawn_columns(heron, 0, truths, seed=11)
    names = [name for name in heron.given if heron.given[name].doubt > 0.0 and name in truth]
    noise = np.random.default_rng(12)
    point = appraise_point(heron)
    leading = np.argsort(-np.max(point.solved.utilisation[:, 0], axis=-1))[:10]
    real = appraise(truth, heron.words, point.housing.order)
    inside = []
    for number in range(truths):
        given = dict(heron.given)
        for name in names:
            read = truth[name][number] + given[name].doubt * noise.standard_normal()
            given[name] = replace(given[name], value=float(read))
        read_rig = replace(heron, given=given)
        here = appraise_point(read_rig)
        drawn = appraise_draws(read_rig, here, draws)
        low, high = np.quantile(drawn.utilisation[leading], [0.05, 0.95], axis=-1)
        true = real.solved.utilisation[leading, number, drawn.governing[leading]]
        inside.append((low <= true) & (true <= high))
    assert 0.85 <= np.mean(inside) <= 0.95


def test_the_point_is_the_middle_of_everything(heron):
    columns = point_columns(heron)
    assert columns["landing_drop"][0] == pytest.approx(0.2)
    assert columns["tube_outer_left"][0] == pytest.approx(columns["tube_girth_left"][0] / np.pi)
