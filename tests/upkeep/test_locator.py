"""The locator against geometry in space, against Bayes' rule done plainly, and by its rules."""

import itertools
import json

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import multivariate_normal

from axlewright.actions import locate_rig, reading_names
from axlewright.errors import BadQuantity, UnknownEntry
from axlewright.rig import doubts
from axlewright.tables import locator_causes, locator_readings
from axlewright.upkeep import looks_in_order
from axlewright.upkeep.belief import gains, set_shares, unread
from axlewright.upkeep.network import jobs_readings
from axlewright.upkeep.signatures import sizes_of, ways
from axlewright.views import located_json, located_lines
from axlewright.views.take_rods import Rod, explained
from upkeep.axles_by_geometry import DEG, NOTHING, Still, gauged, size_of
from upkeep.benches import net_of, rig_called
from upkeep.rear_by_geometry import rear_gauged, rear_size_of

REAR_HARMS = ("slack_up", "slack_back", "turned", "up", "back", "hub")

SMALL = 0.5 * DEG
# The harm of the geometry that goes with each cause, its size, and how far the usual place of a
# bend or the middle of a rod's shape may be off from one case to another.
HARMS = [
    ("tube_up", "up", SMALL),
    ("tube_back", "back", SMALL),
    ("forging", "top_in", SMALL),
    ("pivot", "pivot", SMALL),
    ("hub", "hub", SMALL),
    ("loose", "turned", SMALL),
]


def made(harms=None, whole=None):
    """Readings of one axle of the geometry without any noise."""
    size = size_of(rig_called("heron"))
    size["bare"] = dict(size["bare"])
    still = {side: dict.fromkeys(NOTHING, np.zeros(1)) for side in ("left", "right")}
    for side, harm in still.items():
        harm["station"] = np.full(1, 0.25)
        harm |= {key: np.full(1, value) for key, value in (harms or {}).get(side, {}).items()}
    none = {"yaw": np.zeros(1), "aside": np.zeros(1)}
    none["bow"] = {"tie_rod": np.zeros(1), "drag_link": np.zeros(1)}
    none |= whole or {}
    seen = gauged(size, 1, Still(), still, none)
    return {key: float(value[0]) for key, value in seen.items()}


def differences(harmed):
    sound, numbers = made(), net_of("heron", hit=True).numbers
    return {key: harmed[key] - sound[key] for key in numbers}


def near(seen, said, but=()):
    """Small-angle geometry within an eighth, or a trace: 0.07 degrees, half a millimetre."""
    sizes = locator_readings()
    for key, value in seen.items():
        if key in but:
            continue
        name = key.removesuffix("_left").removesuffix("_right")
        trace = 5e-4 if sizes[name].unit == "m" else 0.07 * DEG
        trace = 1.2 * DEG if key == "wheel_off" else trace  # the ratio makes it 17 times as much
        assert value == pytest.approx(said.get(key, 0.0), rel=0.125, abs=trace), key


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize(("kind", "harm", "size"), HARMS)
def test_a_cause_does_to_each_gauge_what_geometry_in_space_says(kind, harm, size, side):
    sizes = sizes_of(rig_called("heron"))
    [way] = ways(kind, side, sizes, 0.0)
    # A drag link slopes: a knuckle that rises or turns on its tube moves it, which is blur there.
    but = ("heading_left", "heading_right", "wheel_off", "toe_change", "setback")
    but = but if kind in {"tube_up", "loose"} and side == sizes.link_side else ()
    near(differences(made({side: {harm: size}})), way.effect(size), but)


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("which", [0, 1])
def test_a_bent_knuckle_shows_in_the_included_angle_or_in_the_heading(side, which):
    way = ways("knuckle", side, sizes_of(rig_called("heron")), 0.0)[which]
    seen = differences(made({side: {("spindle", "arm")[which]: SMALL}}))
    near(seen, way.effect(SMALL))


@pytest.mark.parametrize("rod", ["tie_rod", "drag_link"])
def test_a_bowed_rod_turns_the_wheels_as_geometry_in_space_says(rod):
    bow = {"tie_rod": np.zeros(1), "drag_link": np.zeros(1)} | {rod: np.full(1, 0.025)}
    [way] = ways(rod, "", sizes_of(rig_called("heron")), 0.0)
    seen = differences(made(whole={"bow": bow}))
    said = way.effect(0.025)
    if rod == "drag_link" and seen["heading_left"] * said["heading_left"] < 0.0:
        said = way.effect(-0.025)  # ahead of the axle or behind it
    near(seen, said)


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize(("kind", "harm", "size"), [HARMS[at] for at in (0, 1, 4)])
def test_a_rear_cause_does_to_each_gauge_what_geometry_in_space_says(kind, harm, size, side):
    rig = rig_called("stork-rear")

    def seen(harmed, yaw=0.0):
        harms = {each: dict.fromkeys(REAR_HARMS, np.zeros(1)) for each in ("left", "right")}
        for each in harms.values():
            each["station"] = np.full(1, 0.25)
        harms[side][harm] = np.full(1, harmed)
        read = rear_gauged(rear_size_of(rig), 1, Still(), harms, np.full(1, yaw))
        return {key: float(read[key][0]) for key in net_of("stork-rear", hit=True).numbers}

    sound, bent, askew = seen(0.0), seen(size), seen(0.0, 0.5 * DEG)
    [way] = ways(kind, side, sizes_of(rig), 0.0)
    near({key: bent[key] - sound[key] for key in sound}, way.effect(size))
    [way] = ways("moved_rear", "", sizes_of(rig), 0.0)
    near({key: askew[key] - sound[key] for key in sound}, way.effect(0.5 * DEG))


def test_an_axle_askew_shows_in_the_setback():
    [way] = ways("moved", "", sizes_of(rig_called("heron")), 0.0)
    # The bar of a yawed axle draws on a link that slopes: second order, but times the ratio.
    seen = differences(made(whole={"yaw": np.full(1, SMALL)}))
    near(seen, way.effect(SMALL), but=("wheel_off",))
    moved = differences(made(whole={"aside": np.full(1, 0.004)}))
    [(_, _, shift)] = way.beside
    assert abs(moved["heading_left"]) == pytest.approx(0.004 * abs(shift["heading_left"]), rel=0.1)
    assert moved["heading_left"] == pytest.approx(moved["heading_right"], abs=0.02 * DEG)


def test_shares_are_those_of_bayes_rule_done_plainly():
    """Against the multivariate normal of scipy, mixed over scales; signs at their trust."""
    from axlewright.upkeep.belief import SCALES, TRUST, WEIGHTS

    net = net_of("heron", hit=True)
    numbers, standard = np.full(len(net.numbers), np.nan), unread(net).standard
    signs = np.full(len(net.signs), np.nan)
    taken = [net.numbers.index(k) for k in ("camber_out_left", "tube_angle_left", "setback")]
    numbers[taken] = [-0.9 * DEG, 0.7 * DEG, 0.004]
    signs[[0, 3]] = [1.0, 0.0]
    some = np.ix_(taken, taken)
    weights = np.zeros(len(net.prior))
    for at, of in enumerate(net.of):
        spread = net.spread[at][some] + np.diag(standard[taken] ** 2)
        density = sum(
            weight * multivariate_normal(net.mean[at][taken], scale**2 * spread).pdf(numbers[taken])
            for scale, weight in zip(SCALES, WEIGHTS, strict=True)
        )
        signed = net.chance[at][0] * (1.0 - net.chance[at][3])
        weights[of] += net.prior[of] * net.share[at] * density * signed**TRUST
    [shares] = set_shares(net, numbers[None], standard, signs[None])
    assert shares == pytest.approx(weights / weights.sum(), rel=1e-9)


def test_without_a_reading_the_shares_are_the_tables():
    """Nearly: sets of three are not listed, and "none of these" is taken for a little less."""
    found = locate_rig(rig_called("heron"), {}, after_hit=True)
    rows = locator_causes()
    for one in found.suspects:
        share = rows[one.key.removesuffix("_left").removesuffix("_right")].after_hit
        assert 0.8 * share < one.share <= 1.1 * share


def test_a_signs_gain_is_the_mutual_information():
    """Exact for one sign that is there or not; the forecast draws."""
    net = net_of("heron", hit=False)
    read = unread(net)
    read.numbers[net.numbers.index("rock_free_left")] = 0.004
    [now] = set_shares(net, read.numbers[None], read.standard, read.signs[None])
    at, exact = net.signs.index("knock"), entropy(now)
    # A forecast takes the sign at full trust: shares of the classes of each set, from two answers.
    from axlewright.upkeep import belief

    weights = belief._class_logs(
        net, np.flatnonzero(np.isfinite(read.numbers)), read.numbers[None], read.standard
    )
    weights = np.exp(weights[0] - weights.max())
    weights /= weights.sum()
    for there in (1.0, 0.0):
        both = weights * (net.chance[:, at] if there else 1.0 - net.chance[:, at])
        after = np.bincount(net.of, both, minlength=len(net.prior))
        exact -= after.sum() * entropy(after / after.sum())
    [gain] = [each for each in gains(net, read) if each.job == "knock"]
    assert gain.bits == pytest.approx(exact, abs=0.03)


def entropy(shares):
    some = shares[shares > 0.0]
    return -np.sum(some * np.log2(some))


def test_what_has_been_read_is_not_asked_for_again():
    rig = rig_called("heron")
    net = net_of("heron", hit=False)
    for job in net.jobs:
        keys = jobs_readings(net, job.key)
        said = {
            key: "no" if key in net.signs else "0 mm" if net.rows[key].unit == "m" else "0 deg"
            for key in keys
        }
        still = {each.key for each in locate_rig(rig, said).jobs}
        assert still == {each.key for each in net.jobs} - {job.key}


LEANING = {  # what a floor that falls by a degree to the left does to a sound axle
    "camber_out left": "1 deg",
    "camber_in left": "1 deg",
    "camber_out right": "-1 deg",
    "camber_in right": "-1 deg",
    "tube_angle left": "-1 deg",
    "tube_angle right": "1 deg",
}


def test_a_sloping_floor_accuses_nobody_until_it_is_said_to_be_level():
    rig = rig_called("heron")
    unmapped = locate_rig(rig, LEANING)
    mapped = locate_rig(rig, LEANING, floor_mapped=True)
    assert unmapped.nothing > 0.35
    assert mapped.nothing < 0.1  # two tubes bent the opposite way are seldom
    accused = {one.key: one.share for one in mapped.suspects}
    assert accused["tube_up_right"] > 0.5


def test_play_taken_out_parts_wear_from_bend():
    """Rocking with the brake on takes the bearing out, off adds it: common practice, no source."""
    rig = rig_called("heron")
    bend = {f"camber_{way} left": "-1.3 deg" for way in ("out", "in")}
    play = {"camber_out left": "0.5 deg", "camber_in left": "-0.5 deg"}
    shares = lambda said: {one.key: one.share for one in locate_rig(rig, said).suspects}
    worn = lambda found: found["pivot_left"] + found["hub_left"]
    assert worn(shares(play)) > 0.9
    assert worn(shares(bend)) < 0.3
    braked = shares(play | {"rock_braked left": "0.5 mm", "rock_free left": "7 mm"})
    assert braked["hub_left"] > 0.9
    assert braked["pivot_left"] < 0.2
    both = shares(play | {"rock_braked left": "7 mm", "rock_free left": "7 mm"})
    assert both["pivot_left"] > 0.9
    assert both["hub_left"] < 0.2


def test_what_a_bowed_rod_explains_is_not_held_against_the_knuckle():
    """Neither its toe nor the steering wheel; what it leaves is still looked into."""
    rig = rig_called("heron")
    off = {"wheel_off": "-9 deg", "drag_link_bow": "0 mm"}
    shares = lambda said: {
        one.key: one.share for one in locate_rig(rig, said, after_hit=True).suspects
    }
    straight, bowed = (shares(off | {"tie_rod_bow": bow}) for bow in ("0 mm", "40 mm"))
    assert bowed["tie_rod"] > 0.99
    knuckles = lambda found: found["knuckle_left"] + found["knuckle_right"]
    assert knuckles(bowed) < 0.6 * knuckles(straight)
    more = shares(off | {"tie_rod_bow": "40 mm", "wheel_off": "-45 deg"})
    assert knuckles(more) > 2.0 * knuckles(bowed)


@pytest.mark.parametrize(("key", "share"), [("tie_rod", 0.5), ("drag_link", 1.0)])
def test_the_arithmetic_is_that_of_the_sheet_to_take_along(key, share):
    rig = rig_called("heron")
    sizes = sizes_of(rig)
    [arm] = [each for each in doubts(rig) if each.quantity == "steering_arm"]
    length = sizes.rod if key == "tie_rod" else sizes.link
    rod = Rod(
        key=key,
        name="",
        measure="",
        effect="",
        straight=False,
        length=length,
        length_said="",
        lever_low=arm.low,
        lever_high=arm.high,
        lever_said="",
        share=share,
    )
    told = explained(rod, 0.030, length)
    found = locate_rig(rig, {f"{key}_bow": "30 mm", "wheel_off": "-20 deg ± 4 deg"})
    [one] = found.explains
    assert (one.low, one.high) == pytest.approx(told.wheel, rel=1e-12)
    most = np.radians(24.0) - told.wheel[0]
    assert found.remainder == pytest.approx((max(0.0, np.radians(16.0) - told.wheel[1]), most))


def test_repeats_narrow_a_reading_and_ones_own_band_replaces_the_tables():
    """GUM, 4.2: the scatter of a mean falls with the root of the count; the instrument's stays."""
    rig = rig_called("heron")
    once, thrice, own = (
        locate_rig(rig, {"heading left": text}).echoes[0].standard
        for text in ("0.5 deg", "0.5 deg; 0.5 deg; 0.5 deg", "0.5 deg ± 0.3 deg")
    )
    row = locator_readings()["heading"]
    assert once == pytest.approx(np.hypot(row.half_width / np.sqrt(3.0), row.repeat))
    assert thrice == pytest.approx(np.hypot(row.half_width / np.sqrt(3.0), row.repeat / 3**0.5))
    assert own == pytest.approx(0.3 * DEG / 1.6448536269514722)


def said_of(draw_from, axle):
    """Any few readings, each with any plausible answer."""
    rows = {
        name: locator_readings()[name.removesuffix("_left").removesuffix("_right")]
        for name in reading_names(axle)
    }
    answers = {
        "angle": st.floats(-4.0, 4.0).map(lambda number: f"{number:.3f} deg"),
        "length": st.floats(0.0, 40.0).map(lambda number: f"{number:.2f} mm"),
        "sign": st.sampled_from(["yes", "no", "don't know"]),
    }
    names = draw_from(st.lists(st.sampled_from(sorted(rows)), unique=True, max_size=8))
    return {name: draw_from(answers[rows[name].kind]) for name in names}


@pytest.mark.parametrize("name", ["heron", "stork-rear"])
@settings(max_examples=max(20, settings.default.max_examples // 20))
@given(data=st.data())
def test_whatever_was_read_dangerous_causes_stand_there_with_their_look(name, data):
    """They are listed whatever their share; nothing here says that it may be driven."""
    rig = rig_called(name)
    said = said_of(data.draw, rig.axle)
    found = locate_rig(rig, said, after_hit=data.draw(st.booleans()))
    owed = {
        f"{row.key}_{side}" if row.each else row.key
        for row in locator_causes().values()
        if row.axle in {rig.axle, "both"} and row.danger
        for side in ("left", "right")
    }
    assert {one.key for one in found.dangerous} == owed
    lines = "\n".join(located_lines(found))
    told = located_json(found)
    for one in found.dangerous:
        assert f"{one.label}: {one.look}. STOP: {one.stop}" in lines
    assert set(told["dangerous"]) == owed
    assert told["may_drive"] is None
    json.dumps(told, allow_nan=False)
    assert "never that it may be driven" in lines
    shares = [one.share for one in found.suspects]
    assert shares == sorted(shares, reverse=True)
    assert 0.0 <= found.nothing <= 1.0 + 1e-9
    assert max(shares) <= 1.0 + 1e-9
    assert sum(shares) + found.nothing >= 1.0 - 1e-9


def test_a_sound_axle_is_still_no_leave_to_drive():
    rig = rig_called("heron")
    net = net_of("heron", hit=False)
    said = dict.fromkeys(net.signs, "no")
    said |= {k: "0 mm" if net.rows[k].unit == "m" else "0 deg" for k in net.numbers}
    found = locate_rig(rig, said, floor_mapped=True)
    lines = located_lines(found)
    assert found.nothing > 0.8
    assert "no leave to drive" in lines[0]
    assert not found.jobs


def test_a_reading_is_echoed_with_side_unit_and_way():
    rig = rig_called("heron")
    lines = located_lines(locate_rig(rig, {"camber out left": "-0.4 deg"}))
    assert any("top pulled out, left: 0.40 deg (top in)" in line for line in lines)


@pytest.mark.parametrize(
    ("said", "kind", "words"),
    [
        ({"camber_out": "1 deg"}, UnknownEntry, "does not say which side"),
        ({"cambr_out_left": "1 deg"}, UnknownEntry, "camber_out_left"),
        ({"camber_out left": "1"}, BadQuantity, "no unit"),
        ({"camber_out left": "3 mm"}, BadQuantity, "length"),
        ({"knock": "sometimes"}, BadQuantity, "yes, no"),
        ({"setback": "3 mm", "Setback": "4 mm"}, BadQuantity, "twice"),
    ],
)
def test_what_cannot_be_meant_is_met_with_what_can(said, kind, words):
    with pytest.raises(kind, match=words):
        locate_rig(rig_called("heron"), said)


def test_toe_may_be_taped_at_the_tyre():
    rig = rig_called("heron")
    [echo] = locate_rig(rig, {"toe_change": "-3 mm"}).echoes
    assert echo.value == pytest.approx(-0.003 / rig.tyre.outer_diameter, rel=1e-4)


def test_what_is_not_known_is_not_read():
    found = locate_rig(rig_called("heron"), {"knock": "don't know", "setback": "?"})
    assert not found.echoes


def test_looks_go_by_share_for_their_minutes():
    found = locate_rig(rig_called("heron"), {"hub_rough left": "yes"})
    rates = [one.share / one.minutes for one in looks_in_order(found)]
    assert rates == sorted(rates, reverse=True)
    assert len(rates) == len(found.suspects)


def test_mirrored_readings_give_mirrored_shares():
    """Left and right differ only in the bare tubes and in which knuckle holds the drag link."""
    rig = rig_called("heron")
    left, right = (
        {
            one.key: one.share
            for one in locate_rig(rig, {f"rock_free {side}": "8 mm", "knock": "yes"}).suspects
        }
        for side in ("left", "right")
    )
    for kind, (one, other) in itertools.product(("hub", "pivot"), [("left", "right")]):
        assert left[f"{kind}_{one}"] == pytest.approx(right[f"{kind}_{other}"], rel=1e-6)
