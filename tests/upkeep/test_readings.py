"""Readings against limits: the closed form of a false word, and friendly contradictions."""

from math import erf, isinf, radians, sqrt

import numpy as np
import pytest

from axlewright import tables, units
from axlewright.rig import OwnLimit, Reading
from axlewright.upkeep import contradicted, limits_for, objections, verdict, worth

HUB = tables.procedure("unit_hub_play")
CAMBER = tables.procedure("camber")
BACKLASH = tables.procedure("backlash")
DIAL = tables.instrument("dial")
FINDER = tables.instrument("angle_finder")


def normal(z):
    """Normal distribution in closed form; Abramowitz and Stegun, 7.1 and 26.2.29."""
    return 0.5 * (1.0 + erf(z / sqrt(2.0)))


def reading(value, kind="length", unit="mm", given="x", side="left", standard=1e-5, **more):
    return Reading(
        quantity="q",
        value=value,
        kind=kind,
        unit=unit,
        given=given,
        standard=standard,
        side=side,
        **more,
    )


def test_uncertainty_is_the_root_of_the_squares():
    """JCGM 100, 4.2.3, 4.3.7 and 5.1.2, written out for this case."""
    values = [0.10e-3, 0.12e-3, 0.17e-3]
    found = worth(values, DIAL, HUB, extra=7e-6)
    scatter = np.std(values, ddof=1) / sqrt(3.0)
    boxes = [(DIAL.resolution / 2) ** 2 / 3, DIAL.own_error**2 / 3]
    assert found.mean == pytest.approx(np.mean(values))
    assert found.standard == pytest.approx(sqrt(scatter**2 + sum(boxes) + 7e-6**2))
    assert found.freedom == pytest.approx(2.0 * found.standard**4 / scatter**4)
    assert found.band[0] < found.mean < found.band[1]


def test_one_reading_takes_the_scatter_of_practice():
    one = worth([0.0], FINDER, CAMBER)
    four = worth([0.0] * 4, FINDER, CAMBER)
    assert one.standard > four.standard > 0.0
    assert isinf(one.freedom)


@pytest.mark.parametrize("off", [-3.0, -1.7, -1.6, 0.0, 1.6, 1.7, 3.0])
def test_a_verdict_is_the_closed_form_chance_of_a_false_word(off):
    """JCGM 106, 8.3: accepted only where the chance of being out is at most the risk."""
    [shown] = limits_for(HUB)
    doubt = worth([0.0], DIAL, HUB).standard
    mean = shown.high + off * doubt
    told = verdict([mean], DIAL, HUB, shown)
    inside = normal(-off)
    assert told.within == pytest.approx(inside, abs=1e-9)
    wanted = "within" if inside >= 0.95 else "out" if inside <= 0.05 else "cannot tell"
    assert told.judged == wanted
    assert told.says == ("no objection" if wanted == "within" else "fix before trip")


def test_simulated_risk_is_the_stated_one():
    """Of true values that lie out, at most one in twenty of those at the guard is called within."""
    rng = np.random.default_rng(3)
    [shown] = limits_for(HUB)
    doubt = worth([0.0], DIAL, HUB).standard
    wrong, told_within = 0, 0
    for mean in shown.high + doubt * rng.uniform(-3.0, -1.0, 400):
        if verdict([mean], DIAL, HUB, shown).judged == "within":
            truths = rng.normal(mean, doubt, 50)
            told_within += 50
            wrong += int(np.sum(truths > shown.high))
    assert told_within > 3000
    assert wrong / told_within < 0.05


def test_cannot_tell_is_fixed_where_a_wheel_hangs_on_it_and_else_measured_again():
    [shown] = limits_for(HUB)
    assert verdict([shown.high], DIAL, HUB, shown).says == "fix before trip"
    [shown] = limits_for(BACKLASH)
    assert verdict([shown.high], DIAL, BACKLASH, shown).says == "measure again"
    assert verdict([2 * shown.high], DIAL, BACKLASH, shown).says == "put right"


def test_the_repeats_that_were_asked_for_settle_it():
    [shown] = limits_for(CAMBER)
    finder = tables.instrument("inclinometer")
    value = shown.high - radians(0.14)
    told = verdict([value], finder, CAMBER, shown)
    assert told.judged == "cannot tell"
    assert told.repeats is not None
    assert verdict([value] * told.repeats, finder, CAMBER, shown).judged == "within"
    assert verdict([value] * (told.repeats - 1), finder, CAMBER, shown).judged == "cannot tell"


def test_a_finer_instrument_is_named_where_it_would_settle_it():
    [shown] = limits_for(CAMBER)
    told = verdict([shown.high - radians(0.3)], tables.instrument("phone"), CAMBER, shown)
    assert told.judged == "cannot tell"
    assert tables.instrument("alignment_rack").label in told.better
    assert tables.instrument("phone").label not in told.better


def test_nothing_settles_a_value_on_the_limit_itself():
    [shown] = limits_for(CAMBER)
    told = verdict([shown.high], FINDER, CAMBER, shown)
    assert (told.judged, told.repeats, told.better) == ("cannot tell", None, ())


@pytest.mark.parametrize("procedure", tables.procedures().values(), ids=lambda each: each.key)
def test_a_limit_is_never_shown_without_scope_and_source(procedure):
    for shown in limits_for(procedure):
        assert shown.scope
        assert shown.source
        assert shown.as_printed


def test_the_manuals_own_limit_stands_before_every_other():
    own = OwnLimit(
        limit="unit_hub_play",
        low=None,
        high=0.08e-3,
        kind="length",
        given="0.08 mm",
        printed="p. 7",
    )
    [shown] = limits_for(HUB, [own])
    assert shown.own
    assert (shown.high, shown.source) == (0.08e-3, "p. 7")
    assert "own manual" in shown.scope
    told = verdict([0.1e-3] * 3, DIAL, HUB, shown)
    [said] = objections(HUB, "left", [told])
    assert said.state == "stop"  # hub play over its limit
    [unsure] = objections(HUB, "left", [verdict([0.08e-3], DIAL, HUB, shown)])
    assert unsure.state == "fix before trip"
    assert "p. 7" in said.why


def test_what_holds_no_wheel_objects_to_nothing():
    [shown] = limits_for(BACKLASH)
    assert objections(BACKLASH, "", [verdict([1e-3], DIAL, BACKLASH, shown)]) == ()


def sizes(kind):
    return units.known(kind)


def test_a_wrong_unit_is_met_by_the_one_that_was_meant():
    said = reading(25.0e-3, unit="mm", given="25 mm")
    [doubt] = contradicted(said, HUB, [], sizes("length"))
    assert doubt.what == "unit"
    assert "thou" in doubt.ask


def test_a_wrong_sign_is_met():
    [doubt] = contradicted(reading(-1e-4, given="-0.1 mm"), HUB, [], sizes("length"))
    assert doubt.what == "sign"


def test_a_wrong_lever_is_met():
    torque = tables.procedure("pinion_torque")
    said = reading(27.1, kind="torque", unit="lbf ft", given="20 lb-ft", side="")
    [doubt] = contradicted(said, torque, [], sizes("torque"))
    assert doubt.what == "lever"
    assert "radius" in doubt.ask
    assert "lbf in" in doubt.ask


def test_a_wrong_side_is_met_by_what_was_read_before():
    degree = radians(1.0)
    earlier = [
        reading(-0.9 * degree, kind="angle", given="-0.9 deg", standard=0.1 * degree),
        reading(0.4 * degree, kind="angle", given="0.4 deg", side="right", standard=0.1 * degree),
    ]
    said = reading(0.42 * degree, kind="angle", unit="deg", given="0.4 deg", standard=0.1 * degree)
    [doubt] = contradicted(said, CAMBER, earlier, sizes("angle"))
    assert (doubt.what, "right" in doubt.ask) == ("side", True)
    mirrored = reading(0.9 * degree, kind="angle", given="0.9 deg", standard=0.1 * degree)
    assert [each.what for each in contradicted(mirrored, CAMBER, earlier, sizes("angle"))] == [
        "sign"
    ]
    same = reading(-0.8 * degree, kind="angle", given="-0.8 deg", standard=0.1 * degree)
    assert contradicted(same, CAMBER, earlier, sizes("angle")) == ()


@pytest.mark.parametrize("procedure", tables.procedures().values(), ids=lambda each: each.key)
def test_a_procedure_can_be_followed(procedure):
    """Common practice, no source: what first, steps with cautions, what people get wrong."""
    steps = [s for s in tables.procedure_steps().values() if s.procedure == procedure.key]
    assert [each.step for each in steps] == [*range(1, len(steps) + 1)]
    assert steps
    for told in (procedure.before, procedure.wrong, procedure.sketch, procedure.sign):
        assert len(told) > 8
    assert procedure.low < procedure.high
    assert procedure.pooled > 0
    kinds = {"angle": {"angle", "tilt", "wheel"}, "torque": {"torque"}, "length": {"length", "gap"}}
    assert procedure.instruments
    for key in procedure.instruments:
        assert tables.instrument(key).measures in kinds[procedure.kind], key
    for key in procedure.limits:
        entry = tables.limit(key)
        for end in (entry.low, entry.high):
            assert end is None or procedure.low <= end <= procedure.high, key
    if "off the ground" in procedure.load_state:
        assert any("tand as the manual" in each.caution for each in steps) or any(
            "Stand" in each.caution for each in steps
        )
