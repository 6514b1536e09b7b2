"""Looks, cards and spares. Outside reference: common practice, no source; and each other."""

import re

import pytest

from axlewright import tables
from axlewright.rig import FIELDS

AXLES = ("front", "rear")
KINDS = sorted(
    {re.sub(r"_(left|right)$", "", key) for key in tables.consequences()} | set(tables.troubles())
)
FRONT_ONLY = {
    *("ball_joints", "kingpins", "tie_rod", "drag_link", "knuckle", "steering_arm"),
    "locking_hub",
}


def on(axle, entries):
    return [entry for entry in entries if entry.axle in {axle, "both"}]


@pytest.mark.parametrize("axle", AXLES)
def test_five_looks_in_order_of_consequence(axle):
    ranked = sorted(on(axle, tables.looks().values()), key=lambda look: look.rank)
    assert [look.rank for look in ranked] == [1, 2, 3, 4, 5]
    for look in ranked:
        assert "cannot tell" in look.fix  # what nobody can tell is mended before a trip
        assert len({look.go, look.watch, look.fix, look.stop}) == 4


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize(
    "word",
    ["crack", "bare tube", "parted", "play over its limit", "still in", "hose", "brown line"],
)
def test_every_stop_rule_is_in_the_list(axle, word):
    assert any(word in stop.words for stop in on(axle, tables.look_stops().values()))


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_of_part_has_one_card_that_agrees_with_its_consequence(axle, kind):
    if axle == "rear" and kind in FRONT_ONLY:
        return
    found = [card for card in on(axle, tables.cards().values()) if kind in card.serves]
    assert len(found) == 1
    assert tables.card_of(kind, axle) is found[0]
    if kind in tables.troubles():
        assert tables.troubles()[kind].mendable == found[0].mendable
    for key, part in tables.consequences().items():
        if re.sub(r"_(left|right)$", "", key) == kind:
            assert part.mendable == found[0].mendable


@pytest.mark.parametrize("key", sorted(tables.cards()))
def test_a_card_has_steps_with_cautions_and_says_how_far(key):
    card = tables.cards()[key]
    steps = [step for step in tables.card_steps().values() if step.card == key]
    assert [step.step for step in steps] == list(range(1, len(steps) + 1))
    assert len(steps) >= 2
    assert all(len(step.caution) > 8 and len(step.do) > 8 for step in steps)
    for told in (card.next_look, card.never, card.limits, card.tools, card.materials, card.record):
        assert told
    if card.mendable != "no":
        assert 0 < card.speed <= 17.0  # 60 km/h
        assert 0 < card.distance <= 200e3
        assert card.duration
        assert card.people in {1, 2}


def test_whoever_lifts_it_is_told_of_stands_and_chocks():
    for step in tables.card_steps().values():
        if re.search(r"\blift", step.do):
            assert "stand" in step.do + step.caution, step.key
            assert "hock" in step.do + step.caution, step.key


def test_whoever_welds_is_told_of_gas_fire_and_licence():
    welds = [step for step in tables.card_steps().values() if "qualified welder" in step.do]
    assert len(welds) >= 3
    for step in welds:
        told = step.do + step.caution
        for word in ("hlorinated", "fire watch", "Battery"):
            assert word in told, step.key
    for step in tables.card_steps().values():
        assert "weld" not in step.do.lower() or "qualified welder" in step.do


def test_whoever_straps_or_winches_is_told_of_what_is_stored():
    for step in tables.card_steps().values():
        if re.search(r"\b(strap one|one strap|chain the|winch)", step.do, re.IGNORECASE):
            assert "nobody" in step.caution.lower(), step.key


def test_nothing_that_steers_is_heated_or_straightened():
    for step in tables.card_steps().values():
        assert not re.search(r"\b(heat|straighten|bend)\b", step.do, re.IGNORECASE), step.key
    for key in ("tie_rod", "drag_link", "wheel_end"):
        assert "heating, bending or straightening" in tables.cards()[key].never.replace(
            "welding, heating", "heating"
        )


@pytest.mark.parametrize("duty", sorted(tables.duties()))
def test_the_least_set_only_grows_with_the_duty(duty):
    order = list(tables.duties())
    here = {key for key, spare in tables.spares().items() if duty in spare.duties}
    assert len(here) >= 9
    for milder in order[: order.index(duty)]:
        assert here >= {key for key, spare in tables.spares().items() if milder in spare.duties}


def test_a_condition_of_a_spare_is_a_word_that_a_rig_can_say():
    choices = {
        field.path: ("yes", "no") if field.kind == "yes" else field.choices for field in FIELDS
    }
    for spare in (*tables.spares().values(), *tables.troubles().values()):
        field, _, word = spare.only_if.partition("=")
        assert not field or word in choices[field], spare.key
    for spare in tables.spares().values():
        assert set(spare.serves) <= set(KINDS), spare.key
        assert set(spare.duties) <= set(tables.duties()), spare.key


def test_a_spare_fits_by_axle_and_by_word():
    joints = tables.spares()["ball_joints"]
    assert joints.fits("front", {"kingpin.kind": "ball joints"})
    assert not joints.fits("front", {"kingpin.kind": "kingpins"})
    assert joints.fits("front", {})  # nobody has said: carried rather than left behind
    assert not joints.fits("rear", {"kingpin.kind": "ball joints"})
    assert tables.card_of("tie_rod", "rear") is None


def test_a_spare_weighs_something_saves_a_share_and_has_a_place():
    for spare in tables.spares().values():
        assert spare.mass > 0 or spare.key == "recovery", spare.key  # a plan weighs nothing
        assert 0.0 <= spare.share < 1.0, spare.key
        assert bool(spare.serves) == (spare.share > 0) or spare.duties, spare.key
        assert spare.place, spare.key
        assert spare.origin.remembered
        assert not spare.side or spare.side in {"long", "short"}


@pytest.mark.parametrize(
    ("spare", "part"),
    [
        ("tie_rod", "tie_rod"),
        ("drag_link", "drag_link"),
        ("track_bar", "track_bar"),
        ("arm", "links"),
        ("unit_hub", "hub_bearing_left"),
        ("wheel_joint", "cross_joint_left"),
        ("prop_joint", "propeller_shaft"),
        ("locking_hub", "locking_hub_left"),
    ],
)
def test_a_spare_weighs_what_the_answer_says_that_it_weighs(spare, part):
    assert tables.spares()[spare].mass == tables.consequence(part).spare_mass


def test_whatever_can_happen_then_has_its_price():
    """Who stands waits for help; who still goes is quicker than help (common practice)."""
    then = {part.what_then for part in tables.consequences().values()}
    then |= {trouble.what_then for trouble in tables.troubles().values()}
    assert then == set(tables.strandings())
    for key in ("steering lost", "wheel lost", "brakes lost", "stuck"):
        assert tables.stranding(key).pace is None
        assert tables.stranding(key).weight >= tables.stranding("stuck").weight
