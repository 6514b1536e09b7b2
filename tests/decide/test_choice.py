"""The demo rigs' choices, and facts of the trade that a choice must not contradict.

Each fact below is common practice, no source, unless something else is said beside it.
"""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from axlewright.decide import (
    FURTHER,
    LEAVE,
    TYRE,
    Decision,
    Faster,
    Terms,
    cost_of,
    decide,
    fewer_draws,
    offers,
    still_carries,
    tried,
    tyre_grid,
    world_of,
)
from axlewright.rig import SEED, Condition, load_rig
from axlewright.tables import consequences, duties, options
from house.places import ROOT

RIGS = ROOT / "examples" / "rigs"
DRAWS = 400
GAVE = {"heron": {"track_bar_bracket_axle"}, "wagtail": set(), "stork-rear": set()}


def rig_of(name):
    return load_rig(str(RIGS / f"{name}.toml"))


@cache
def choice_of(name: str) -> Decision:
    return decide(rig_of(name), draws=DRAWS, gave=GAVE[name], thorough=False)


def average(decision, key, what="total"):
    return float(np.mean(getattr(decision.choice(key).cost, what)))


# -- the demo rigs -----------------------------------------------------------------------------


def test_the_sound_wagon_is_left_alone_and_the_overloaded_one_is_not():
    assert choice_of("wagtail").advised == LEAVE
    heron = choice_of("heron")
    assert heron.advised not in {LEAVE, "bracket_plates", "cover"}
    assert average(heron, LEAVE) > 1.2 * average(heron, heron.advised)


def test_the_reasons_are_the_axles_own():
    sound, overloaded = choice_of("wagtail"), choice_of("heron")
    gone = [average(each, LEAVE, "housing_gone") for each in (sound, overloaded)]
    assert gone[0] < 0.25 < gone[1]
    hard = [float(np.median(each.choice(LEAVE).found.margin)) for each in (sound, overloaded)]
    assert hard[0] > 1.25 * hard[1]


def test_every_change_of_the_issue_is_offered_or_says_why_not():
    wanted = {
        *("leave", "bracket_plates", "end_gussets", "cover", "sleeve", "truss", "shafts_joints"),
        *("hubs", "tyres_down", "offset_back", "bare_same", "part_built_same", "ready_same"),
        *("heavier_bare", "heavier_ready", "heaviest_ready", "bigger_class"),
    }
    assert wanted <= set(options())
    for name in GAVE:
        made = offers(rig_of(name))
        assert {each.option.key for each in made} == set(options())
        for each in made:
            changed = bool(each.sets) or each.option.housing_is_new or each.option.key == LEAVE
            assert bool(each.refused) != changed


def test_welded_changes_carry_their_heat_check_and_class():
    for option in options().values():
        welded = option.key in {"bracket_plates", "end_gussets", "sleeve", "truss", "stiffened"}
        assert (option.heat.high > 0.0) == welded
        assert bool(option.weld_class) == welded
        assert bool(option.check) == welded
        assert option.helps_not
        assert option.undo
        assert option.gears


# -- facts of the trade ------------------------------------------------------------------------


def test_sleeves_move_the_hinge_to_the_end_forgings():
    heron = choice_of("heron")
    shares = {}
    for key in (LEAVE, "sleeve"):
        found = heron.choice(key).found
        bent = {"tube", "tube_joint"}, {"end_forging"}
        housing = [
            min(found.margins[found.parts.index(part)].mean() for part in each) for each in bent
        ]
        tubes, ends = (
            np.min([found.margins[found.parts.index(part)] for part in each], axis=0)
            for each in bent
        )
        assert np.isfinite(housing).all()
        shares[key] = float(np.mean(ends < tubes))
    assert shares[LEAVE] < 0.35 < shares["sleeve"]
    assert shares["sleeve"] > 2.0 * shares[LEAVE]


def test_stronger_shafts_move_the_break_to_the_gears():
    gears = {"side_gears", "ring_and_pinion"}
    torque = {"inner_shaft", "stub_shaft", "spline", "cross_joint", "yoke_ears"} | gears
    heron = choice_of("heron")
    shares = []
    for key in (LEAVE, "shafts_joints"):
        found = heron.choice(key).found
        rows = [number for number, part in enumerate(found.parts) if part in torque]
        least = np.argmin(found.margins[rows], axis=0)
        reached = np.isfinite(np.min(found.margins[rows], axis=0))
        first = [found.parts[rows[place]] for place in least[reached]]
        shares.append(np.mean([part in gears for part in first]))
    assert shares[1] > 1.3 * shares[0]
    assert shares[1] > 0.5


def test_acting_before_the_housing_is_bent_saves_resale():
    rig = rig_of("heron")
    bent = replace(
        rig, conditions=(*rig.conditions, Condition(part="axle tube", what="bent", where="right"))
    )
    sold = []
    for each in (rig, bent):
        world = world_of(each, Terms(), DRAWS, SEED)
        offer = next(one for one in offers(each) if one.option.key == "heavier_ready")
        found = tried(offer.rig, 64, SEED, places=np.zeros(DRAWS, dtype=int))
        sold.append(float(np.mean(cost_of(offer, found, world).sold_now)))
    assert sold[1] < 0.35 * sold[0]


def test_what_needs_straight_tubes_goes_on_no_bent_housing():
    bent = replace(
        rig_of("heron"), conditions=(Condition(part="axle tube", what="bent", where="right"),)
    )
    why = {each.option.key: each.refused for each in offers(bent)}
    wants = {key for key, each in options().items() if each.needs_straight}
    assert {"sleeve", "truss", "end_gussets"} <= wants
    for key, said in why.items():
        assert ("bent" in said) == (key in wants), key


def test_paying_twice_is_the_classic_regret():
    """Plates and gussets in a light housing, then another housing all the same."""
    heron = choice_of("heron")
    light, heavy = (heron.choice(key).cost for key in ("bracket_plates", "heavier_bare"))
    twice = light.again > 0.0
    assert np.mean(twice) > 0.3
    assert np.mean(light.total[twice] - heavy.total[twice]) > 0.0
    assert np.mean(light.total[~twice] - heavy.total[~twice]) < 0.0
    assert np.mean(heavy.again > 0.0) < 0.05


def test_distance_from_help_moves_the_choice():
    near, far = (
        decide(
            rig_of("heron"),
            Terms().with_band("help_km", away, away),
            draws=DRAWS,
            gave=GAVE["heron"],
            thorough=False,
        )
        for away in (5.0, 1500.0)
    )
    gain = [average(each, LEAVE) - average(each, "bigger_class") for each in (near, far)]
    assert gain[0] < 0.0 < gain[1], "far from help the axle that strands nobody pays for itself"
    assert near.choices[0].key != far.choices[0].key


def test_papers_add_to_what_the_old_axle_brings():
    rig = rig_of("heron")
    offer = next(one for one in offers(rig) if one.option.key == "ready_same")
    found = tried(offer.rig, 64, SEED, places=np.zeros(DRAWS, dtype=int))
    sold = [
        float(np.mean(cost_of(offer, found, world_of(rig, terms, DRAWS, SEED)).sold_now))
        for terms in (Terms(), Terms(papers=True))
    ]
    assert 1.1 < sold[1] / sold[0] < 1.5


# -- how it is reckoned ------------------------------------------------------------------------


def test_paired_draws_tell_two_changes_apart_more_sharply():
    """Computed both ways: the difference of means over halves of the draws, paired and crossed."""
    heron = choice_of("heron")
    one, other = (heron.choice(key).cost.total for key in ("end_gussets", LEAVE))
    ratio = fewer_draws(one, other)
    assert ratio > 5.0
    blocks = 20
    paired = [np.mean(one[at::blocks] - other[at::blocks]) for at in range(blocks)]
    crossed = [
        np.mean(one[at::blocks]) - np.mean(other[(at + 7) % blocks :: blocks])
        for at in range(blocks)
    ]
    assert np.var(crossed) / np.var(paired) > 0.3 * min(ratio, 50.0)


def test_a_change_that_costs_steering_or_a_wheel_is_never_advised():
    for name in GAVE:
        found = choice_of(name)
        assert not found.choice(found.advised).graver
    assert choice_of("heron").choice("sleeve").graver


def test_a_stop_replaces_the_advice():
    rig = rig_of("wagtail")
    cracked = replace(
        rig,
        words={**rig.words, "rig.condition": "as listed"},
        conditions=(Condition(part="knuckle", what="cracked", where="left"),),
    )
    from axlewright.views import decision_json, decision_words

    found = decide(cracked, draws=200, thorough=False, only=["cover"])
    assert found.stops
    words = decision_words(found)
    assert "STOP" in words.sentence
    assert words.stops
    assert not [row for row in words.rows if row.mark == "advised"]
    told = decision_json(found)
    assert told["stop"]
    assert told["advised"] is None


def test_mends_that_come_round_faster_say_stop_mending():
    from axlewright.views import decision_words

    faster = (Faster(part="track-bar bracket", gaps=(9e7, 4e7), trend=1.0, by_distance=False),)
    found = decide(rig_of("wagtail"), draws=200, faster=faster, thorough=False)
    assert found.advised != LEAVE
    assert decision_words(found).sentence.startswith("Stop mending.")


def test_nobodys_look_gives_no_credit_for_the_past():
    rig = rig_of("wagtail").with_word("rig.condition", "never looked at")
    unseen = decide(rig, draws=200, thorough=False, only=["cover"])
    assert average(unseen, LEAVE) > average(choice_of("wagtail"), LEAVE)


def test_the_same_seed_gives_the_same_choice_and_draws_do_not_hang_on_what_is_laid_beside():
    alone = decide(rig_of("wagtail"), draws=DRAWS, thorough=False, only=["hubs"])
    whole = choice_of("wagtail")
    assert np.array_equal(alone.choice("hubs").cost.total, whole.choice("hubs").cost.total)


def test_flips_name_another_change_where_it_costs_less():
    """Whatever is said to be cheapest further on is cheaper there than what is cheapest now."""
    keys = ["sleeve", "offset_back", "heavier_bare", "bigger_class"]
    found = decide(rig_of("heron"), draws=DRAWS, gave=GAVE["heron"], only=keys)
    by_distance = [each for each in found.flips if each.by == FURTHER]
    assert by_distance, "an overloaded axle is left alone if it hardly drives"
    for flip in by_distance:
        moved = found.world.moved(further=flip.at / flip.now)
        costs = {
            key: cost_of(found.choice(key).offer, found.choice(key).found, moved).total.mean()
            for key in (flip.before, flip.chosen)
        }
        assert costs[flip.chosen] < costs[flip.before]
    assert {each.chosen for each in found.flips} <= {LEAVE, *keys}
    assert all(each.tyre for each in found.flips if each.by == TYRE)


def test_a_world_thinned_is_the_same_world():
    world = choice_of("heron").world
    thin = world.thinned(4)
    assert thin.draws == DRAWS // 4
    assert np.array_equal(thin.hard, world.hard[::4])
    assert np.array_equal(thin.luck, world.luck[..., ::4])


def test_one_offers_rig_tried_over_some_draws_is_the_same_as_over_all():
    rig = rig_of("heron")
    places = np.array([3, 700, 3, 299])
    some, every = tried(rig, 1000, SEED, places=places), tried(rig, 1000, SEED)
    assert np.allclose(some.margins, every.margins[:, places])
    assert np.array_equal(some.gives, every.gives[:, places])


# -- tyres -------------------------------------------------------------------------------------


@cache
def grid_of(name):
    return tyre_grid(rig_of(name), draws=128)


def test_every_tyre_and_duty_has_a_verdict_and_an_objection_a_name():
    known = {key.removesuffix("_left").removesuffix("_right") for key in consequences()}
    for name in ("heron", "wagtail"):
        grid = grid_of(name)
        assert {each.duty for each in grid} == set(duties())
        for each in grid:
            if each.verdict in {"no", "cannot tell"}:
                assert each.part in known | {"tyre"}
            assert (each.verdict == "carries") == (each.part == "" and each.why == "")


def test_bigger_tyres_and_harder_ground_never_ask_less():
    order = list(duties())
    by_tyre: dict[str, list[float]] = {}
    for each in grid_of("wagtail"):
        by_tyre.setdefault(each.tyre, [0.0] * len(order))[order.index(each.duty)] = each.margin[0]
    for margins in by_tyre.values():
        assert margins == sorted(margins, reverse=True)
    smallest, *_, largest = by_tyre
    assert by_tyre[largest][0] < by_tyre[smallest][0]


def test_the_sound_wagon_still_carries_what_the_overloaded_one_does_not():
    assert still_carries(rig_of("heron"), draws=128) is None
    weight, _, duty = still_carries(rig_of("wagtail"), draws=128)
    assert duty == "forest_roads"
    assert weight > 6e3


@pytest.mark.parametrize("key", ["cover", "bracket_plates"])
def test_what_cannot_be_told_apart_costs_its_price(key):
    """A change that mends nothing that gives costs about what is paid for it, no more."""
    found = choice_of("wagtail")
    cost = found.choice(key).cost
    gap = average(found, key) - average(found, LEAVE)
    assert gap == pytest.approx(float(np.mean(cost.price + cost.work + cost.waiting)), rel=0.35)
