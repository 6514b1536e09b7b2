"""Cures, bind and room: what gets better, what gets worse, and what is said of it."""

import numpy as np
import pytest

from axlewright.geometry import hardpoints, measures, travel
from axlewright.geometry.bind import parked_pulls, roll_bind, wind_up
from axlewright.geometry.clearance import clearance
from axlewright.geometry.fixes import fixes, shifts
from axlewright.physics import linkage
from axlewright.rig import (
    change_from_text,
    changed_rig,
    geometry_columns,
    load_change,
    rig_from_text,
)
from geometry.cases import HOME, demo

FOUR = (HOME / "examples/rigs/heron.toml").read_text("utf-8")
FOUR = FOUR[: FOUR.index("[points]")].replace('arms = "three arms"', 'arms = "four arms"') + (
    '[longer]\nupper_arm_left = "4 mm"\n\n' + FOUR[FOUR.index("[[condition]]") :]
)


def lifted(name, change="lift"):
    rig, _ = changed_rig(demo(name), load_change(str(HOME / f"examples/changes/{change}.toml")))
    return travel(rig, draws=0)


def by_key(found):
    return {fix.key: fix for fix in found.fixes}


@pytest.mark.parametrize("name", ["heron", "wagtail"])
def test_what_a_lift_costs_and_what_puts_it_right(name):
    # common practice, no source: a lift takes caster, moves the axle aside and steers in bump
    found = lifted(name)
    assert found.now.caster < found.taped.caster - 0.02
    assert abs(found.now.shift) > 0.003
    assert abs(found.now.bump_steer) > abs(found.taped.bump_steer)
    told = by_key(found)
    assert [each.measure for each in told["drop_arm"].worse] == ["bump_steer"]
    assert {each.measure for each in told["raised_track_bar"].better} >= {"bump_steer", "shift"}
    for key in ("turned_forgings", "drop_brackets"):
        caster = next(each for each in told[key].better if each.measure == "caster")
        assert caster.after == pytest.approx(found.taped.caster, abs=0.003)
    assert not any(each.measure == "pinion" for each in told["turned_forgings"].shifts)


def test_an_adjustable_arm_brings_caster_and_pinion_back_together():
    told = by_key(lifted("heron"))["adjustable_upper_arms"]
    moved = {each.measure: each for each in told.shifts}
    assert told.amount < 0.0
    gained = moved["caster"].after - moved["caster"].before
    assert moved["pinion"].before - moved["pinion"].after == pytest.approx(gained, abs=1e-4)


def test_the_lift_put_right_is_better_than_the_lift():
    bad, good = lifted("heron"), lifted("heron", "lift-put-right")
    moved = {each.measure: each.better for each in shifts(bad.now, good.now, good.taped)}
    assert moved["caster"]
    assert moved["bump_steer"]
    assert moved["shift"]
    assert good.now.droop.at > bad.now.droop.at


def test_nothing_changed_is_no_change():
    found = travel(demo("heron"), draws=0)
    assert shifts(found.now, found.now, found.taped) == ()
    assert found.now == found.taped


def test_an_arm_too_long_pulls_parked_and_its_mates_push():
    rig = rig_from_text(FOUR)
    columns = geometry_columns(rig)
    taped = columns | {"longer_upper_arm_left": np.zeros(1)}
    points = hardpoints(columns, rig.words, taped)
    found = {
        name: float(value[0]) for name, value in parked_pulls(columns, rig.words, points).items()
    }
    assert found["upper_arm_left"] < -500.0  # too long: it is squeezed
    assert found["upper_arm_right"] > 500.0
    # the force method, linear, agrees within what 4 mm of movement bends it
    line = np.stack([(rod.axle - rod.frame)[0] for rod in points.rods])
    line /= np.linalg.norm(line, axis=1)[:, None]
    pulls = linkage.self_stress(
        line,
        np.stack([rod.axle[0] for rod in points.rods]),
        [float(rod.stiffness[0]) for rod in points.rods],
    )
    wanted = 0.004 * pulls[:, [rod.name for rod in points.rods].index("upper_arm_left")]
    assert list(found.values()) == pytest.approx(wanted, rel=0.02, abs=30.0)


def test_softer_bushings_pull_less():
    rig = rig_from_text(FOUR)
    columns = geometry_columns(rig)
    taped = columns | {"longer_upper_arm_left": np.zeros(1)}
    soft = columns | {"bushing_stiffness": 0.5 * columns["bushing_stiffness"]}
    hard, easy = (
        parked_pulls(each, rig.words, hardpoints(each, rig.words, taped))
        for each in (columns, soft)
    )
    assert abs(easy["upper_arm_left"][0]) < 0.7 * abs(hard["upper_arm_left"][0])


def test_bushings_clamped_hanging_push_the_axle_down():
    # common practice, no source: tighten bushings with the weight on the wheels
    rig = demo("heron")
    columns = geometry_columns(rig)
    at_ride = wind_up(hardpoints(columns, rig.words))
    hanging = wind_up(hardpoints(columns | {"travel_clamped_at": np.array([-0.1])}, rig.words))
    assert at_ride.force[0] == pytest.approx(0.0, abs=1e-9)
    assert hanging.force[0] > 100.0
    assert hanging.rise[0] > 0.0
    assert np.all(hanging.twist > 0.0)


def test_radius_arms_resist_roll_and_three_arms_do_not():
    # common practice, no source
    for name, resists in (("wagtail", True), ("heron", False)):
        rig = demo(name)
        found = roll_bind(hardpoints(geometry_columns(rig), rig.words))
        assert (found > 300.0) == resists


def test_radius_arms_twist_as_their_four_bushings_do():
    # derived: each arm turns by roll x across / length against its two bushings
    from axlewright.geometry.bind import radius_arm_roll_stiffness

    rig = demo("wagtail")
    columns = geometry_columns(rig)
    for side, sign in (("left", 1.0), ("right", -1.0)):  # straight, level arms, no side step
        columns[f"point_arm_frame_{side}_left"] = np.array([sign * 0.418])
    found = roll_bind(hardpoints(columns, rig.words), roll=0.02)
    closed = radius_arm_roll_stiffness(
        0.15 * float(columns["bushing_stiffness"][0]), 0.09, 0.418, 0.73
    )
    assert found == pytest.approx(float(closed), rel=0.25)


def test_softer_tyres_take_room_and_smaller_ones_more():
    rig = demo("heron")
    points = hardpoints(geometry_columns(rig), rig.words)
    road, trail = clearance(points, rig.tyre), clearance(points, rig.tyre, pressure=1.1e5)
    assert trail.radius < road.radius
    assert trail.lowest.height - road.lowest.height == pytest.approx(trail.radius - road.radius)
    assert trail.approach < road.approach
    assert trail.breakover < road.breakover
    assert road.lowest.what == "the centre"
    assert [edge.height for edge in road.edges] == sorted(edge.height for edge in road.edges)
    assert float(road.outline.low.min()) == pytest.approx(road.lowest.height, abs=1e-3)
    assert trail.touch > road.touch
    assert trail.outline.area == pytest.approx(road.outline.area, rel=1e-3)


def test_smaller_tyres_lower_everything():
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(HOME / "examples/changes/smaller-tyres.toml")))
    before, after = travel(rig, draws=0), travel(new, draws=0)
    assert after.road.lowest.height < before.road.lowest.height
    assert after.road.approach < before.road.approach
    # the axle under the body does not know its tyres
    assert after.now.caster == pytest.approx(before.now.caster, abs=1e-9)


def test_cures_refuse_what_cannot_be():
    rig = demo("heron")
    columns = geometry_columns(rig)
    points = hardpoints(columns, rig.words)
    _, now = measures(points)
    for fix in fixes(points, now, now):
        assert fix.refused or fix.better or fix.worse or not fix.shifts


@pytest.mark.parametrize("name", ["heron", "wagtail", "four"])
def test_every_cure_written_as_a_change_does_what_was_told_of_it(name):
    # a change file says millimetres to a tenth; that moves an angle by a hundredth of a degree
    rig = rig_from_text(FOUR.replace('[longer]\nupper_arm_left = "4 mm"\n', "")) if (
        name == "four") else demo(name)  # fmt: skip
    lift = load_change(str(HOME / "examples/changes/lift.toml"))
    lifted_, _ = changed_rig(rig, lift)
    found = travel(lifted_, draws=0)
    written = [fix for fix in found.fixes if fix.steps]
    assert len(written) >= len([fix for fix in found.fixes if not fix.refused]) - 1
    for fix in written:
        rows = "".join(f'[[step]]\nset = "{path}"\nto = "{to}"\n' for path, to in fix.steps.items())
        change = change_from_text(f'axlewright_change = 1\nname = "x"\n{rows}')
        after = travel(changed_rig(lifted_, change)[0], draws=0, cures=False)
        for shift in fix.shifts:
            got = getattr(after.now, shift.measure)
            near = 60.0 if shift.measure == "parked" else 1e-3
            assert got == pytest.approx(shift.after, abs=near), (fix.key, shift.measure)
