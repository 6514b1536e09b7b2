"""What binds with nothing on the axle, in what the strength of an axle is judged by."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.duty import CASES, ROW, live_cases
from axlewright.errors import BadFile
from axlewright.geometry import hardpoints, parked_pulls
from axlewright.physics import metals
from axlewright.rig import (
    assumed,
    change_from_text,
    changed_rig,
    doubts,
    drawn_columns,
    geometry_columns,
    point_columns,
    rig_from_text,
)
from axlewright.strength import appraise, appraise_draws, assess_rig
from axlewright.strength.binding import HELD
from axlewright.strength.wear import wear_of
from geometry.cases import HOME, demo

HERON = (HOME / "examples/rigs/heron.toml").read_text("utf-8")
BARE, REST = HERON[: HERON.index("[points]")], HERON[HERON.index("[[condition]]") :]


def four(**said):
    """Heron on four arms; ``said`` are lines of its second hour by table."""
    tables = "".join(f"[{table}]\n{lines}\n" for table, lines in said.items())
    return rig_from_text(BARE.replace('"three arms"', '"four arms"') + tables + REST)


def judged(rig):
    return appraise(point_columns(rig), rig.words)


def held(made):
    return {name: float(pull[0, HELD]) for name, pull in made.housing.tension.items()}


LONG = four(longer='upper_arm_left = "4 mm"')


def test_it_is_the_parked_pull_of_the_travel_study_less_what_the_housing_gives():
    found = held(judged(LONG))
    columns = geometry_columns(LONG)
    taped = columns | {"longer_upper_arm_left": np.zeros(1)}
    told = parked_pulls(columns, LONG.words, hardpoints(columns, LONG.words, taped))
    for side in ("left", "right"):
        for ours, theirs in (("lower_arm", "arm"), ("upper_arm", "upper_arm")):
            share = found[f"{ours}_{side}"] / float(told[f"{theirs}_{side}"][0])
            assert 0.85 < share < 1.0


def test_a_stiff_housing_gives_nothing(monkeypatch):
    for name in ("STEEL", "IRON", "STEEL_SHEAR", "IRON_SHEAR"):
        monkeypatch.setattr(metals, name, 1e4 * getattr(metals, name))
    made = judged(LONG)
    for name, pull in made.housing.bound.pull.items():
        assert held(made)[name] == pytest.approx(float(pull[0, HELD]), rel=0.03, abs=50.0)


def test_nothing_said_is_nothing_in_the_middle_and_a_band_around_it():
    rig = four()
    assert all(abs(pull) < 1e-6 for pull in held(judged(rig)).values())
    drawn = appraise(drawn_columns(rig, 0, 200), rig.words)
    spread = np.std(drawn.housing.tension["upper_arm_left"][:, HELD])
    assert spread > 500.0
    named = {doubt.quantity for doubt in doubts(rig)}
    assert {"longer_upper_arm_left", "travel_clamped_at", "travel_crossing"} <= named
    assert {"longer_upper_arm_left", "bushing_stiffness"} <= {
        item.quantity for item in assumed(rig)
    }


def test_it_stands_in_full_in_every_case():
    # PHYSICS of a self-stress: in full in static and in slip checks, whatever the case
    plain, bound = judged(four()), judged(LONG)
    names = [(row.part, row.mode) for row in bound.solved.rows]
    for number, name in enumerate(names):
        if "slips" not in name[1] or "arm bolt" not in name[1]:
            continue
        other = [(row.part, row.mode) for row in plain.solved.rows].index(name)
        share = float(bound.solved.held[number, 0])
        assert share > 0.02
        for case, entry in enumerate(live_cases()):
            if entry.key.startswith("hung"):  # crossing comes on top
                continue
            # the same way as the case's own pull, or against it
            alone = float(plain.solved.utilisation[other, 0, case])
            either = [abs(alone + share), abs(alone - share)]
            both = float(bound.solved.utilisation[number, 0, case])
            assert min(abs(both - each) for each in either) < 2e-3, entry.key


def test_it_grows_with_misfit_and_with_the_bushings_stiffness():
    half = held(judged(four(longer='upper_arm_left = "2 mm"')))
    soft = LONG.words
    columns = point_columns(LONG)
    easy = appraise(columns | {"bushing_stiffness": 0.5 * columns["bushing_stiffness"]}, soft)
    whole = held(judged(LONG))["upper_arm_left"]
    assert half["upper_arm_left"] == pytest.approx(0.5 * whole, rel=0.03)
    assert 0.45 < held(easy)["upper_arm_left"] / whole < 0.7


@pytest.mark.parametrize("said", ["longer", "travel"])
def test_the_axle_holds_itself_up(said):
    rig = LONG if said == "longer" else four(travel='clamped_at = "-100 mm"')
    assert np.max(judged(rig).housing.residual) <= 1e-9


def test_a_changed_bracket_binds_rods_that_kept_their_length():
    rig = four(points='upper_arm_frame.left = "640 mm behind, 400 mm left, 610 mm up"')
    change = change_from_text(
        'axlewright_change = 1\nname = "x"\n[[step]]\nset = "points.upper_arm_frame.left"\n'
        'to = "634 mm behind, 400 mm left, 610 mm up"\n'
        '[[step]]\nset = "points.upper_arm_frame.right"\n'
        'to = "640 mm behind, 400 mm right, 610 mm up"\n'
    )
    new, _ = changed_rig(rig, change)
    assert abs(held(judged(rig))["upper_arm_left"]) < 1e-6
    assert held(judged(new))["upper_arm_left"] < -2000.0  # its ends are nearer: squeezed


def lives(rig):
    columns = point_columns(rig)
    made = appraise(columns, rig.words)
    return {
        (wear.part, wear.mode): float(wear.life_km[0])
        for wear in wear_of(columns, rig.words, made.housing)
    }


def test_wear_counts_the_range_and_not_what_is_always_there():
    # EN 1993-1-9: as-welded classes count ranges alone
    plain, long = lives(four()), lives(LONG)
    brackets = [key for key in plain if key[0].startswith("link_brackets")]
    assert len(brackets) == 4
    for key in brackets:
        assert long[key] == pytest.approx(plain[key], rel=0.05)
    more = lives(four(travel='crossing = "150 mm"'))
    uppers = [key for key in brackets if "upper" in key[1]]
    assert all(more[key] < 0.9 * plain[key] for key in uppers)


def test_bushings_clamped_hanging_turn_the_brackets_and_push_the_axle_down():
    # statics: T = 2 k twist, F = T / level length; common practice, no source: weight on the wheels
    text = HERON.replace("[travel]\n", '[travel]\nclamped_at = "-100 mm"\n')
    made = judged(rig_from_text(text))
    bound, columns = made.housing.bound, point_columns(rig_from_text(text))
    torque = float(bound.torque["lower_arm_left"][0, HELD])
    assert torque > 0.0
    length = float(columns["arm_length"][0])
    assert torque == pytest.approx(float(columns["travel_bush_twist"][0]) * 0.1 / length, rel=0.1)
    down = sum(float(push[0, HELD]) for push in bound.push.values())
    springs = sum(
        float(made.housing.support_force[f"spring_{side}"][0, HELD, 2])
        for side in ("left", "right")
    )
    assert 0.5 * down < springs < 1.5 * down  # the springs carry it, arms and bar lean a little
    parked = {
        (row.part, row.mode): float(share)
        for row, share in zip(made.solved.rows, made.solved.held[:, 0], strict=True)
    }
    assert parked["link_brackets_left", "bends"] > 0.001
    assert parked["bracket_bolts", "the left arm bolt slips in its bracket"] > 0.05


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_the_demo_rigs_bind_by_nothing_that_was_said(name):
    rig = demo(name)
    made = judged(rig)
    assert np.max(np.abs(made.solved.held)) == 0.0
    if rig.words["held_by.arms"] == "leaves":
        assert not made.housing.bound.torque


def lines(name, one, two, side=""):
    """Both ends of a rod as a person types them, places in mm."""
    told = []
    for end, (ahead, left, up) in (("frame", one), ("axle", two)):
        way = "ahead" if ahead >= 0 else "behind"
        hand = "left" if left >= 0 else "right"
        place = f"{abs(ahead)} mm {way}, {abs(left)} mm {hand}, {up} mm up"
        told.append(f'{name}_{end}{side} = "{place}"\n')
    return "".join(told)


LOWER = (-700, 421, 440), (0, 421, 350)


@pytest.mark.parametrize("draws", [0, 64])
@pytest.mark.parametrize(
    "wrong",
    [
        lines("upper_arm", *LOWER, ".left"),  # the lower arm's ends taped twice
        lines("track_bar", (700, -421, 540), (0, -421, 540)),  # it runs along the vehicle
    ],
    ids=["upper as lower", "bar along"],
)
def test_rods_that_leave_the_axle_free_pull_on_nothing_and_it_is_told(wrong, draws):
    rig = four(points=lines("arm", *LOWER, ".left") + wrong)
    found = assess_rig(rig, draws=draws)
    assert found.point.housing.bound.loose
    assert all(pull == 0.0 for pull in held(found.point).values())
    assert any("tape arms and track bar again" in each for each in found.not_judged)
    assert not any("tape arms" in each for each in assess_rig(four(), draws=0).not_judged)


def test_a_rod_that_fits_only_by_tearing_its_bushings_pulls_on_nothing_and_it_is_told():
    # As in `travel`: two bushings give 25 mm and no more (memory).
    torn = assess_rig(four(longer='arm_left = "150 mm"\nupper_arm_left = "-90 mm"'), draws=0)
    assert torn.point.housing.bound.torn
    assert all(pull == 0.0 for pull in held(torn.point).values())
    assert any("fit only by tearing a bushing" in each for each in torn.not_judged)
    tight = assess_rig(four(longer='arm_left = "20 mm"'), draws=0)
    assert max(map(abs, held(tight.point).values())) > 3e3
    assert not any("tearing" in each for each in tight.not_judged)


def test_rods_that_hardly_hold_the_axle_do_not_hang_on_the_block():
    wrong = lines("arm", *LOWER, ".left") + lines("upper_arm", *LOWER, ".left")
    rig = four(points=wrong)
    point = appraise(point_columns(rig), rig.words)
    whole, parts = (appraise_draws(rig, point, 96, block=block) for block in (96, 16))
    np.testing.assert_array_equal(whole.margin, parts.margin)
    np.testing.assert_array_equal(whole.life, parts.life)


PLACE = st.tuples(st.integers(-900, 900), st.integers(0, 700), st.integers(150, 900))


@given(PLACE, PLACE, PLACE, PLACE, st.integers(-20, 20))
def test_whatever_places_are_taped_the_pulls_are_finite_and_the_axle_holds_itself_up(
    one, two, three, four_, longer
):
    points = lines("arm", one, two, ".left") + lines("upper_arm", three, four_, ".left")
    try:
        rig = four(points=points, longer=f'upper_arm_left = "{longer} mm"')
    except BadFile as refused:  # two ends of one rod in one place, a length out of bounds
        assert refused.faults  # noqa: PT017
        return
    made = judged(rig)
    assert all(np.isfinite(pull).all() for pull in made.housing.tension.values())
    assert np.max(made.housing.residual) <= 1e-8


def test_crossing_is_part_of_the_cases_with_one_wheel_hung():
    bound = judged(four()).housing.bound.pull["upper_arm_left"][0]
    hung = {ROW["hung_left"], ROW["hung_right"]}
    for row in range(len(CASES)):
        assert (abs(bound[row]) > 100.0) == (row in hung)
    assert bound[ROW["hung_left"]] * bound[ROW["hung_right"]] < 0.0
