"""What to carry. Outside references: common practice, no source; closed forms where named."""

from dataclasses import replace
from itertools import pairwise
from math import exp, log
from pathlib import Path

import numpy as np
import pytest

from axlewright.actions.carry import weaknesses
from axlewright.duty import hard_trail_share, harder_moments
from axlewright.rig import load_rig
from axlewright.strength import assess_rig, breaking_rates
from axlewright.tables import duties, spares
from axlewright.upkeep import (
    Weakness,
    Worn,
    chance_of,
    least_set,
    lost_time,
    outing_of,
    what_to_carry,
)
from axlewright.upkeep.carry import ALONE, UNKNOWN_USE

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
NEW = Worn()


@pytest.fixture(scope="module", params=["heron", "wagtail", "stork-rear"])
def rig(request):
    return assess_rig(load_rig(str(RIGS / f"{request.param}.toml")), draws=200)


@pytest.fixture(scope="module")
def heron():
    return assess_rig(load_rig(str(RIGS / "heron.toml")), draws=200)


def load(rig, worn=NEW, weak=None, **said):
    told = {"days": 4, "people": 2, "mass": 160.0, "far": 60e3, "ground": "rocks_and_ledges"}
    outing = outing_of(**{**told, **said})
    words, axle = rig.rig.words, rig.rig.axle
    weak = weaknesses(axle, words, rig)[0] if weak is None else weak
    return what_to_carry(weak, outing, axle, words, worn)


def keys(load, *places):
    return {item.spare.key for item in load.of(*places)}


# -- the least set stands ----------------------------------------------------------------------


@pytest.mark.parametrize("mass", [0.0, 1.0, 90.0, 1000.0])
@pytest.mark.parametrize("ground", sorted(duties()))
def test_no_mass_no_ranking_and_no_record_takes_from_the_least_set(rig, ground, mass):
    wanted = {each.key for each in least_set(rig.rig.axle, rig.rig.words, ground)}
    nothing = [replace(each, rate=None, life=None) for each in weaknesses_of(rig)]
    for weak, worn in ((None, NEW), (nothing, NEW), (None, Worn(hard=1e9))):
        told = load(rig, worn, weak, ground=ground, mass=mass)
        assert keys(told, "least") == wanted
        assert told.over == (told.least_mass > mass)


def weaknesses_of(rig):
    return weaknesses(rig.rig.axle, rig.rig.words, rig)[0]


def test_a_heavier_duty_never_carries_fewer(rig):
    grounds = list(duties())
    sets = [keys(load(rig, ground=each, mass=1e4), "least", "rest") for each in grounds]
    least = [keys(load(rig, ground=each), "least") for each in grounds]
    for milder, harder in pairwise(least):
        assert milder <= harder
    for milder, harder in pairwise(sets):
        assert len(milder) <= len(harder)


def test_what_may_weigh_more_never_protects_less(rig):
    told = [load(rig, mass=mass) for mass in np.linspace(0.0, 400.0, 30)]
    for less, more in pairwise(told):
        assert more.saved >= less.saved * (1.0 - 1e-9)
    for each in told:
        assert each.over or each.mass <= each.outing.mass + 1e-9
        assert each.saved <= each.at_risk
        assert each.lightest < each.mass < each.heaviest


def test_every_spare_is_somewhere_once(rig):
    told = load(rig)
    listed = [item.spare.key for item in told.items]
    assert len(set(listed)) == len(listed)
    assert set(listed) <= set(spares())
    assert {item.place for item in told.items} <= {"least", "rest", "left", "not judged"}


# -- chances -----------------------------------------------------------------------------------


def test_the_reference_moment_comes_once_in_a_thousand_kilometres():
    """The spectrum's own definition; PHYSICS: reference hardness, once per 1,000 km hard trail."""
    for case in ("landing", "pull_left", "strike_right"):
        assert harder_moments(case, np.array(1.0)) == pytest.approx(1e-6)
        grown = harder_moments(case, np.array([0.0, 0.5, 1.0, 2.0, np.inf]))
        assert (np.diff(grown) < 0.0).all()
        assert grown[-1] == 0.0


def test_moments_by_chance_follow_poisson():
    part = Weakness(part="p", kind="p", label="p", what_then="stuck", rate=np.full(999, 1e-6))
    outing = outing_of(1, 2, 100.0, 1e3, "rocks_and_ledges", 200e3)
    drawn = chance_of(part, outing, "rocks_and_ledges", NEW)
    assert float(np.median(drawn)) == pytest.approx(1.0 - exp(-0.2), rel=0.01)
    low, high = np.quantile(drawn, [0.05, 0.95])
    assert log(1.0 - high) / log(1.0 - low) == pytest.approx(UNKNOWN_USE**2, rel=0.05)


def test_a_thousand_kilometres_are_as_hard_as_the_table_of_duties_says():
    part = Weakness(part="p", kind="p", label="p", what_then="stuck", rate=np.full(99, 1e-7))
    chances = [
        float(np.mean(chance_of(part, outing_of(9, 2, 1.0, 1.0, ground, 500e3), ground, NEW)))
        for ground in duties()
    ]
    assert chances == sorted(chances)
    assert chances[-1] / chances[0] == pytest.approx(
        hard_trail_share("gravel_and_farm_tracks") / hard_trail_share("speed_and_jumps"), rel=0.1
    )


def test_what_broke_counts_and_a_long_sound_record_counts_too():
    """Gamma prior of one event with Poisson counts: the textbook's posterior mean."""
    outing = outing_of(1, 2, 100.0, 1e3, "rocks_and_ledges", 10e3)
    part = Weakness(part="p", kind="p", label="p", what_then="stuck", rate=np.full(99, 2e-6))

    def rate(broke, hard):
        told = chance_of(replace(part, broke=broke), outing, "rocks_and_ledges", Worn(hard=hard))
        return float(-np.log1p(-np.median(told)) / 10e3)

    assert rate(0.0, 0.0) == pytest.approx(2e-6, rel=0.02)
    assert rate(2.0, 3e6) == pytest.approx((1.0 + 2.0) / (1.0 / 2e-6 + 3e6), rel=0.02)
    assert rate(0.0, 3e6) < rate(0.0, 0.0) < rate(1.0, 0.0)
    told = chance_of(
        Weakness(part="q", kind="q", label="q", what_then="stuck", broke=1.0),
        outing,
        "rocks_and_ledges",
        NEW,
    )
    assert float(np.median(told)) == pytest.approx(1.0 - exp(-0.01), rel=0.02)


def test_wear_goes_on_from_what_lies_behind():
    part = Weakness(part="p", kind="p", label="p", what_then="leaks", life=np.full(99, 5e7))
    outing = outing_of(1, 2, 100.0, 1e3, "rocks_and_ledges", 1e6)
    chances = [
        float(np.mean(chance_of(part, outing, "rocks_and_ledges", Worn(shortest=far, longest=far))))
        for far in (1e5, 1e7, 4e7)
    ]
    assert chances == sorted(chances)
    half = outing_of(1, 2, 100.0, 1e3, "rocks_and_ledges", 5e7)
    new = chance_of(part, half, "rocks_and_ledges", Worn(shortest=1.0, longest=1.0))
    assert float(np.median(new)) == pytest.approx(0.5, abs=0.02)  # the middle life, as it is named


def test_help_far_away_costs_more_and_whoever_crawls_is_not_slower_than_help():
    for then in ("stuck", "crooked", "limps", "steering lost"):
        assert lost_time(then, 200e3) > lost_time(then, 10e3) > 0.0
    assert lost_time("limps", 60e3) < lost_time("crooked", 60e3) < lost_time("stuck", 60e3)
    assert lost_time("crooked", 5e6) <= lost_time("stuck", 5e6)


def test_a_longer_trip_risks_more(rig):
    risks = [load(rig, days=days).at_risk for days in (1, 4, 12)]
    assert risks == sorted(risks)
    assert load(rig, far=200e3).at_risk > load(rig).at_risk


# -- who goes along, what is not judged --------------------------------------------------------


def test_one_alone_cannot_do_what_a_card_asks_two_for(heron):
    two = {each.spare.key: each for each in load(heron, mass=1e4).items}
    one = {each.spare.key: each for each in load(heron, mass=1e4, people=1).items}
    assert one["ball_joints"].short_handed
    assert not two["ball_joints"].short_handed
    assert one["tie_rod"].saves == pytest.approx(ALONE * two["tie_rod"].saves, rel=0.2)


def test_a_part_without_figures_is_not_judged_until_the_record_tells_of_it(heron):
    told = load(heron, mass=1e4)
    assert "coil spring" in told.unjudged
    assert "spring" in keys(told, "not judged")
    assert all(item.saves == 0.0 for item in told.of("not judged"))
    broke = [
        replace(each, broke=2.0) if each.kind == "coil" else each for each in weaknesses_of(heron)
    ]
    after = load(heron, weak=broke, mass=1e4)
    assert "coil spring" not in after.unjudged
    assert "spring" in keys(after, "rest")


def test_a_shaft_serves_its_own_side(heron):
    told = {each.spare.key: each for each in load(heron).items}
    for key, side in (("front_shaft", "right"), ("shaft_more", "left")):  # bare.right is longer
        sided = {each.weakness.part for each in told[key].covers}
        assert f"inner_shaft_{side}" in sided
        assert all(part.endswith(side) for part in sided)


def test_rates_of_a_point_and_of_draws_agree_in_kind(heron):
    point = assess_rig(heron.rig, draws=0)
    assert set(breaking_rates(point)) == set(breaking_rates(heron))
    assert load(point).items
