"""The garage alignment: facts of the trade, an exact linkage, and what a tape can tell."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from axlewright.errors import BadFile
from axlewright.geometry import align
from axlewright.geometry.alignment_caster import rule_table
from axlewright.geometry.alignment_layout import Layout, heading_gain, rods_for, wheels
from axlewright.geometry.alignment_turn import top_goes, track_bar_growth
from axlewright.physics import alignment, linkage, steering
from axlewright.rig import load_rig, readings_said, rig_from_text

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
HERON, REAR = load_rig(str(RIGS / "heron.toml")), load_rig(str(RIGS / "stork-rear.toml"))
PLAIN = replace(  # nobody has taped where its rods end
    HERON, given={key: each for key, each in HERON.given.items() if not key.startswith("point_")}
)
MM = 1e-3


def read(rig=HERON, **said):
    """Align a rig on readings typed; a double underscore stands for the dot."""
    words = {
        key.replace("__", "."): [value] if isinstance(value, str) else value
        for key, value in said.items()
    }
    return align(rig, readings_said(words, rig.axle))


def toed(front="1571 mm", rear="1568 mm", **more):
    return read(
        toe__front=front,
        toe__rear=rear,
        **{"toe__diameter": "900 mm", "tie_rod__thread": "7/8-18", **more},
    )


# A three-link front axle solved twice, by an own root finder and by a general multibody library:
# m from the axle's middle, kingpins at caster 6 and inclination 8.5 degrees, arms ahead.
def solved_twice():
    axis = steering.axis_direction(np.radians(6.0), np.radians(8.5), np.array([1.0, -1.0]))
    return Layout(
        pivot=MM * np.array([[0, 700, 0], [0, -700, 0]]),
        axis=axis,
        tie=MM * np.array([[165, 655, 20], [165, -655, 20]]),
        drag_on=linkage.ON_RIGHT,
        drag=MM * np.array([180, -650, 60]),
        pitman=MM * np.array([185, 400, 165]),
        arm=165 * MM,
        square_arm=165 * MM,
        drag_arm=180 * MM,
        drag_square=180 * MM,
        ahead=True,
        drag_ahead=True,
        hand=-1.0,
        taped=True,
    )


@pytest.mark.parametrize(("longer", "toe"), [(1.0, -0.342576), (3.0, -1.025965), (-3.0, 1.031462)])
def test_what_a_longer_tie_rod_does_exactly(longer, toe):
    # From the two solvers; static toe-in there is 0.10 degrees a side, a second-order matter.
    left, right = heading_gain(solved_twice(), longer * MM)
    assert np.degrees(right - left) == pytest.approx(toe, abs=2e-3 * abs(longer))


def test_the_exact_arm_beside_the_simple_one():
    # 164.38 mm effective where the arm is 165 mm along: the simple figure is 1.4 % off or less.
    left, right = heading_gain(solved_twice(), 0.2 * MM)
    simple = alignment.toe_change(0.2 * MM, 165 * MM, 1.0)
    assert right - left == pytest.approx(simple, rel=0.02)


def test_only_the_far_wheel_moves_until_recentred():
    # Common practice, no source: the drag link holds its own wheel.
    left, right = heading_gain(solved_twice(), 1.0 * MM)
    assert abs(right) < 1e-3 * abs(left)


def test_both_rods_together_give_toe_and_both_wheels_straight():
    layout, wanted = solved_twice(), np.radians(0.2)
    tie, drag = rods_for(layout, np.radians(-0.3), np.radians(0.4), wanted)
    left, right = wheels(
        layout, np.radians(-0.3), np.radians(0.4), np.array([tie]), np.array([drag])
    )[0]
    assert right - left == pytest.approx(wanted, abs=1e-8)
    assert left + right == pytest.approx(0.0, abs=1e-8)


def test_rods_that_cannot_reach_give_no_figure():
    assert rods_for(solved_twice(), 0.0, 0.0, 2.5) is None


def test_ahead_and_behind_turn_opposite_ways():
    # Common practice, no source: more toe-in asks a rod behind to grow, one ahead to shrink.
    behind, ahead = toed(tie_rod__ahead="no").turn, toed(tie_rod__ahead="yes").turn
    assert behind.longer
    assert not ahead.longer
    assert behind.growth == pytest.approx(-ahead.growth, rel=0.05)


@pytest.mark.parametrize("ahead", ["yes", "no"])
@pytest.mark.parametrize("rear", ["1568 mm", "1580 mm"])
def test_what_is_told_brings_the_toe_to_its_aim(ahead, rear):
    made = toed(rear=rear, tie_rod__ahead=ahead)
    told = alignment.toe_change(made.turn.growth, abs(made.turn.arm), 1.0 if ahead == "yes" else -1)
    assert made.toe.value + told == pytest.approx(made.of("toe").aim, abs=3e-4)


@pytest.mark.parametrize("end", ["left", "right"])
@pytest.mark.parametrize("turn", [0.3, -1.2])
def test_which_way_the_top_goes(end, turn):
    """A right-handed screw, by its own rule: turned about +y (top forward), seen piece by piece."""
    pitch = 0.0014
    out_right, out_left = -1.0, 1.0  # along y
    right_hand = out_right if end == "right" else out_left
    left_hand = -right_hand
    # The sleeve turns; each end, held still, turns the other way against it and advances by its
    # own hand: a right-hand screw along its turning, a left-hand one against it.
    against = -turn
    moves_right_hand = pitch * against / (2.0 * np.pi)
    moves_left_hand = -pitch * against / (2.0 * np.pi)
    growth = moves_right_hand * right_hand + moves_left_hand * left_hand
    forward = turn > 0.0  # about +y, z goes to x: the top goes forward
    assert top_goes(end, longer=bool(growth > 0.0)) == ("forward" if forward else "back")
    assert abs(growth) == pytest.approx(2.0 * pitch * abs(turn) / (2.0 * np.pi))


@pytest.mark.parametrize(
    ("thread", "threaded", "per_turn"),
    [  # an independent script: 7/8-18 half a turn of a sleeve 1.411111 mm; M22x1.5 a turn 3 mm
        ("7/8-18", "left and right hand", 2.822222),
        ("M22x1.5", "left and right hand", 3.0),
        ("1 1/4-12", "one end", 2.116667),
    ],
)
def test_growth_for_a_turn(thread, threaded, per_turn):
    turn = toed(tie_rod__thread=thread, tie_rod__threaded=threaded).turn
    assert turn.per_turn / MM == pytest.approx(per_turn, abs=1e-6)
    assert turn.turns == pytest.approx(abs(turn.growth) / turn.per_turn)
    assert turn.one_flat == pytest.approx(turn.per_turn / turn.arm / 6.0)


def test_without_a_thread_there_are_no_turns():
    turn = read(toe__front="1571 mm", toe__rear="1568 mm").turn
    assert turn.turns is None
    assert turn.growth > 0.0


def test_toe_is_set_on_the_tie_rod_never_on_the_track_bar():
    # Common practice, no source.
    made = toed(square__gap__left="310 mm", square__gap__right="330 mm")
    assert made.turn.rod == "tie_rod"
    assert made.track_bar is not None
    centred = toed()
    assert centred.turn.growth == made.turn.growth  # the track bar has no part in it
    assert centred.track_bar is None


@pytest.mark.parametrize("on_axle", ["left", "right"])
def test_the_track_bar_pushes_the_axle_away_from_its_frame_end(on_axle):
    grown = track_bar_growth(0.01, 0.0, 0.86, on_axle=on_axle)
    assert grown == pytest.approx(0.01 if on_axle == "left" else -0.01)
    sloped = track_bar_growth(0.01, 0.43, 0.86, on_axle=on_axle)
    assert abs(sloped) == pytest.approx(0.01 * np.cos(np.radians(30.0)))


@pytest.mark.parametrize("drive", ["left", "right"])
def test_the_drag_link_takes_the_wheel_back(drive):
    """However the wheel came to stand off, the drag link's own growth undoes just that."""
    rig = PLAIN.with_word("steering.drive_side", drive)
    off = read(
        rig,
        toe__front="1569 mm",
        toe__rear="1572.2 mm",
        toe__diameter="900 mm",
        toe__with="toe_bar",
        toe__marks="scribed_line",
        steering_wheel__off_left="32 deg",
        steering_wheel__ratio="16",
        drag_link__arm="170 mm",
        drag_link__ahead="yes",
    )
    assert off.turn is None
    assert off.recentring.wheel_off == pytest.approx(np.radians(32.0))
    # With the wheel set straight both road wheels stand 2 degrees to the right. The drag link must
    # turn them left: pushed from a pitman on the left (its end stands to the right, ahead) a
    # longer rod steers right, so it must shrink; mirrored for the other hand.
    growth = off.recentring.rod.growth
    assert np.sign(growth) == (-1.0 if drive == "left" else 1.0)
    assert abs(growth) == pytest.approx(0.170 * np.radians(2.0), rel=0.12)


@pytest.mark.parametrize(("drive", "moves"), [("left", "left"), ("right", "right")])
def test_which_wheel_moves_by_where_the_drag_link_ends(drive, moves):
    assert toed_on(drive).recentring.moves == moves


def test_taped_places_are_used_and_said():
    assert toed().turn.taped
    assert not toed_on("left").turn.taped


def toed_on(drive):
    rig = PLAIN.with_word("steering.drive_side", drive)
    return read(rig, toe__front="1571 mm", toe__rear="1568 mm", toe__diameter="900 mm")


def test_a_drag_link_on_the_tie_rod_holds_neither_wheel():
    assert toed(drag_link__on="tie rod").recentring.moves == ""


def test_an_eighth_of_an_inch_on_a_35_inch_tyre():
    # An independent script: 0.205 degrees.
    made = read(toe__front="60 in", toe__rear="60 1/8 in", toe__diameter="35 in")
    assert np.degrees(made.toe.value) == pytest.approx(0.2046, abs=1e-4)


def test_about_an_eighth_less_in_front_will_do_to_the_shop():
    # Common practice, no source: about 1/8 in (3 mm) less in front than behind on big tyres.
    fine = {"toe__with": "toe_bar", "toe__marks": "scribed_line"}
    good = toed("1570 mm", "1573.2 mm", **fine)
    assert good.of("toe").verdict == "within"
    assert good.turn is None
    assert toed("1570 mm", "1566.8 mm", **fine).of("toe").verdict == "out"


BEST_FIRST = ("toe_bar", "tape", "tape_coarse")


def test_worse_instruments_give_wider_bands():
    halves = [toed(toe__with=tool).toe.half for tool in BEST_FIRST]
    assert halves == sorted(halves)
    assert halves[-1] > 1.5 * halves[0]
    marks = [
        toed(toe__marks=mark).toe.half for mark in ("scribed_line", "same_mark", "tread_block")
    ]
    assert marks == sorted(marks)
    rough = toed("about 1571 mm").toe.half
    assert rough > toed().toe.half
    tools = ("camber_gauge", "angle_finder", "dial_finder")
    cambers = [read(camber__left="0.3 deg", camber__with=t).of("camber").measured for t in tools]
    assert [c.half for c in cambers] == sorted(c.half for c in cambers)


def test_below_what_can_be_resolved_it_cannot_tell_and_says_how_many_would():
    near = toed("1570 mm", "1571.9 mm")
    assert near.of("toe").verdict == "cannot tell"
    assert near.of("toe").repeats == np.inf  # so near a limit no number of readings would do
    assert near.turn is not None  # but it can be set away from the limit
    middle = toed("1570 mm", "1573 mm")
    assert middle.of("toe").verdict == "cannot tell"
    assert middle.turn is None  # nothing to turn: only to be read again
    bar = toed("1570 mm", "1572.5 mm", toe__with="toe_bar", toe__marks="scribed_line").of("toe")
    assert bar.verdict == "within"
    few = toed("1570 mm", "1572.8 mm").of("toe")
    assert few.verdict == "cannot tell"
    assert np.isfinite(few.repeats)
    many = int(few.repeats) + 2
    again = toed(["1570 mm"] * many, ["1572.8 mm"] * many).of("toe")
    assert again.verdict == "within"


def test_more_readings_narrow_the_band_but_not_below_the_tapes_own():
    one, nine = toed().toe, toed(["1571 mm"] * 9, ["1568 mm"] * 9).toe
    assert nine.half < one.half
    assert nine.standard > one.fixed * 0.99


# Independent script: caster, inclination, camber ahead; camber at -20 and +20; rule; degrees.
SWEEPS = [
    (6, 8.5, 0, -1.539785, 2.583020, 6.184206),
    (6, 8.5, -0.5, -2.037608, 2.080144, 6.176628),
    (4, 12, 0.25, -0.385678, 2.363893, 4.124356),
    (10, 14, 0.5, -2.083689, 4.857954, 10.412465),
]


@pytest.mark.parametrize("case", SWEEPS, ids=str)
@pytest.mark.parametrize("side", ["left", "right"])
def test_caster_from_a_sweep_exact_and_by_rule(case, side):
    caster, lean, ahead, inward, outward, rule = case
    made = read(
        **{
            f"caster__{side}__out": f"{outward} deg",
            f"caster__{side}__in": f"{inward} deg",
            f"caster__{side}__straight": f"{ahead} deg",
        }
    )
    [sweep] = made.sweeps
    assert sweep.three
    assert np.degrees(sweep.caster.value) == pytest.approx(caster, abs=1e-4)
    assert np.degrees(sweep.rule) == pytest.approx(rule, abs=2e-5)
    assert sweep.rule_off == pytest.approx(rule / caster - 1.0, abs=1e-5)
    assert np.degrees(sweep.inclination.value) == pytest.approx(lean, abs=1e-3)
    # 1/(1 - cos 20) = 16.6: what the gauge leaves open, sixteen times in the inclination.
    assert sweep.inclination.half > 5.0 * sweep.caster.half


def test_the_rule_reads_high_by_three_percent_and_more():
    # The independent script's table: 3.1 % at 4 to 6 degrees, 4.1 % at 10 (inclination 14 there).
    told = dict(rule_table())
    assert told[6.0] == pytest.approx(3.07, abs=0.05)
    assert all(2.6 < share < 4.5 for share in told.values())
    assert sorted(told.values()) == list(told.values())


def test_the_rule_is_not_used_for_another_sweep():
    made = read(caster__left__out="2 deg", caster__left__in="-1 deg", caster__sweep="15 deg")
    assert made.sweeps[0].rule is None


def test_floor_and_finder_are_taken_out():
    # A sound wheel 0.4 degrees top out on the left, floor rising 0.5 to the left, finder 0.3 off.
    true, rise, own = 0.4, 0.5, 0.3
    shown = {"left": true - rise, "right": true + rise}
    for side, plumb in shown.items():
        made = read(
            **{
                f"camber__{side}": f"{plumb + own} deg",
                f"camber__{side}_turned": f"{-plumb + own} deg",
                "floor__across": f"{rise} deg",
            }
        )
        assert np.degrees(made.of("camber", side).measured.value) == pytest.approx(true)


def test_caster_on_a_flat_with_floor_and_frame():
    # Common practice, no source: nose-down is added to get the caster at a level frame.
    made = read(
        caster__left__finder="5 deg", floor__along="0.5 deg", floor__frame_nose_down="1 deg"
    )
    assert np.degrees(made.flats["left"].value) == pytest.approx(4.5)
    assert np.degrees(made.level_frame["left"].value) == pytest.approx(5.5)


def test_reading_both_ways_round_beats_reading_once():
    once = read(camber__left="0.3 deg").of("camber").measured
    both = read(camber__left="0.3 deg", camber__left_turned="-0.3 deg").of("camber").measured
    assert both.half < once.half


def test_square_and_middle():
    made = read(
        square__wheelbase__left="2752 mm",
        square__wheelbase__right="2740 mm",
        square__gap__left="310 mm",
        square__gap__right="310 mm",
    )
    assert made.of("wheelbase").verdict == "out"
    assert made.of("off_centre").verdict == "within"
    assert made.setback.value == pytest.approx(np.arctan(0.012 / 1.675))
    assert made.first_in_the_way == "square"


def test_the_order_of_the_garage():
    made = toed(play__found="some", ride_height__left="560 mm", ride_height__right="600 mm")
    assert made.first_in_the_way == "ride_height"
    assert toed(play__found="some").first_in_the_way == "play"
    assert toed().state("play") == "not read"
    assert toed().state("toe") == "put right"


def test_the_manuals_own_value_comes_first():
    made = toed("1570 mm", "1573 mm", target__toe="-0.1 to 0 deg", target__from="page 3")
    toe = made.of("toe")
    assert toe.verdict == "out"
    assert "page 3" in toe.said_by
    assert toe.aim == pytest.approx(np.radians(-0.05))
    assert not made.turn.longer  # toe-out is wanted, the rod lies behind


def test_a_rear_axle_has_no_rod_to_turn():
    made = read(REAR, toe__front="1571 mm", toe__rear="1568 mm", toe__diameter="800 mm")
    assert made.turn is None
    assert made.of("toe").high == pytest.approx(np.radians(0.2))
    with pytest.raises(BadFile, match="front axle"):
        read(REAR, tie_rod__ahead="no")


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"toe__front": "1571 mm", "toe__rear": "1771 mm"}, "slip of the pen"),
        ({"toe__front": ["1571 mm", "1671 mm"], "toe__rear": "1571 mm"}, "30 mm"),
    ],
)
def test_what_cannot_stand_together_is_said(said, told):
    with pytest.raises(BadFile, match=told):
        read(**said)


def test_a_stop_in_the_rigs_file_is_carried():
    text = (RIGS / "heron.toml").read_text("utf-8")
    rig = rig_from_text(text + '\n[[condition]]\npart = "tie rod"\nwhat = "loose"\n')
    assert read(rig, toe__front="1571 mm", toe__rear="1568 mm").stops


@settings(max_examples=40, deadline=None)
@given(
    gap=st.floats(-20.0, 20.0),
    ahead=st.sampled_from(["yes", "no"]),
    drive=st.sampled_from(["left", "right"]),
    arm=st.floats(100.0, 260.0),
)
def test_exact_and_simple_stay_near_each_other(gap, ahead, drive, arm):
    made = read(
        PLAIN.with_word("steering.drive_side", drive),
        toe__front="1570 mm",
        toe__rear=f"{1570 + gap:.2f} mm",
        toe__diameter="900 mm",
        tie_rod__ahead=ahead,
        tie_rod__arm=f"{arm:.1f} mm",
    )
    if made.turn is not None:
        assert made.turn.exact
        assert made.turn.growth == pytest.approx(made.turn.simple, rel=0.08, abs=2e-5)
