"""The order sheet: contradictions planted in every group of fields are all found.

The rules are common practice, no source, where a test names none.
"""

import json
from io import BytesIO
from pathlib import Path

import jsonschema
import pytest
from pypdf import PdfReader

from axlewright.actions import order_pdf
from axlewright.errors import BadFile
from axlewright.rig import (
    load_order_sheet,
    load_rig,
    order_sheet_from_text,
    order_sheet_said,
    order_sheet_text,
)
from axlewright.swap import contradicted_by, differs, ordered
from axlewright.swap.order import RULES
from axlewright.tables import order_fields
from axlewright.views import (
    order_answer_schema,
    order_data,
    order_json,
    order_lines,
    order_picture,
)

EXAMPLES = Path(__file__).parents[2] / "examples"
SOUND = EXAMPLES / "orders" / "heron-heavier.toml"
LEAF = {"spring.on": "leaf", "spring.pad_width": "63.5 mm", "spring.leaf_width": "63.5 mm"}
DELIVERED = {"delivery.left": "653 mm", "delivery.right": "972 mm", "delivery.bow": "0.3 mm"}

# What is planted (with what else the sheet must say for it to show), and the rule that finds it.
PLANTED = [
    ("ratio", {"ratio.other": "4.10"}, "front_and_rear_run_apart"),
    ("ratio", {"ratio.tyres": "two sizes", "ratio.tyre_height": "405 mm"},
     "front_and_rear_run_apart"),
    ("ratio", {"ratio.ring_teeth": "40"}, "teeth_say_another_ratio"),
    ("ratio", {"ratio.tyre_height": "395 mm"}, "one_size_stands_unlike"),
    ("width", {"width.left": "690 mm"}, "sides_do_not_add_up"),
    ("width", {"width.offset": "ET 0 mm"}, "tyres_stand_elsewhere"),
    ("width", {"width.left": "812 mm", "width.right": "813 mm"}, "pinion_stands_elsewhere"),
    ("width", {"tube.bare_left": "640 mm"}, "left_tube_is_too_long"),
    ("width", {"tube.bare_right": "960 mm"}, "right_tube_is_too_long"),
    ("pinion", {"pinion.output_side": "right"}, "shaft_cannot_reach"),
    ("pinion", {"pinion.cut": "reverse"}, "gears_are_cut_the_other_way"),
    ("pinion", {"pinion.shaft_cap": "34 mm"}, "yoke_and_shaft_differ"),
    ("pinion", {"pinion.up": "9 deg"}, "angles_do_not_add_up"),
    ("pinion", {"pinion.side": "middle"}, "a_middle_pinion_stands_off"),
    ("tube", {"tube.wall": "30 mm"}, "wall_leaves_no_bore"),
    ("tube", {"tube.casting_bore": "95.6 mm"}, "tube_does_not_fit_its_casting"),
    ("tube", {"tube.sleeve": "80 mm"}, "sleeve_does_not_go_in"),
    ("tube", {"tube.sleeve_wall": "18 mm"}, "shaft_does_not_go_through"),
    ("tube", {"tube.in_casting": "40 mm"}, "tube_goes_in_too_little"),
    ("tube", {"tube.joining": "plug welds alone"}, "plug_welds_alone"),
    ("forging", {"forging.bore": "89 mm"}, "forging_does_not_fit_its_tube"),
    ("forging", {"forging.joints": "kingpins"}, "joints_are_of_two_kinds"),
    ("forging", {"forging.family": "light class, ball joints"}, "families_differ"),
    ("forging", {"forging.height": "205 mm"}, "knuckle_does_not_fit_between"),
    ("forging", {"forging.gussets_clear": "no"}, "gussets_are_in_the_way"),
    ("forging", {"forging.spacing": "1610 mm"}, "joints_stand_wider_than_the_faces"),
    ("forging", {"forging.alike": "1 deg"}, "forgings_may_differ_too_much"),
    ("knuckle", {"knuckle.tie_rod": "ahead"}, "tie_rod_has_no_room"),
    ("knuckle", {"knuckle.drag_link": "left"}, "drag_link_does_not_cross"),
    ("knuckle", {"knuckle.taper": "19 mm"}, "taper_does_not_seat"),
    ("knuckle", {"knuckle.joint_lock": "30 deg"}, "joint_binds_before_the_stop"),
    ("angles", {"angles.built_in": "13 deg"}, "angles_do_not_add_up"),
    ("angles", {"angles.camber": "2 deg"}, "camber_is_built_in"),
    ("angles", {"angles.caster": "0.5 deg"}, "caster_makes_it_wander"),
    ("angles", {"angles.built_in": "-5 deg"}, "built_in_cannot_be"),
    ("angles", {"angles.output_up": "-3 deg"}, "pinion_is_not_parallel"),
    ("angles", {"angles.shaft_joints": "double at the transfer case",
                "angles.shaft_slope": "14 deg"}, "pinion_does_not_look_along"),
    ("spring", {"spring.apart": "1390 mm"}, "springs_stand_in_the_wheels"),
    ("spring", {"spring.tilt": "4 deg"}, "seat_tilts"),
    ("spring", {"spring.seat_helix": "mirrored"}, "coil_ends_elsewhere"),
    ("spring", {"spring.seat_boss": "110 mm"}, "coil_does_not_sit"),
    ("spring", {**LEAF, "spring.pad_width": "57 mm"}, "leaf_does_not_lie"),
    ("spring", {**LEAF, "spring.pin": "12 mm", "spring.pin_hole": "16 mm"},
     "centre_bolt_does_not_locate"),
    ("spring", {**LEAF, "spring.u_bolts": "76 mm"}, "u_bolts_do_not_go_round"),
    ("arm", {"arm.inside": "60 mm"}, "bushing_does_not_fit"),
    ("arm", {"arm.hole": "18 mm"}, "hole_and_sleeve_differ"),
    ("arm", {"arm.apart": "1350 mm"}, "arms_stand_outside"),
    ("arm", {"arm.cheeks": "3 mm"}, "cheeks_are_thin"),
    ("track_bar", {"track_bar.inside": "50 mm"}, "bushing_does_not_fit"),
    ("track_bar", {"track_bar.hole": "14.2 mm"}, "hole_and_sleeve_differ"),
    ("track_bar", {"track_bar.side": "left"}, "track_bar_crosses_the_drag_link"),
    ("track_bar", {"track_bar.side": "left", "track_bar.from_middle": "200 mm"},
     "track_bar_meets_the_casting"),
    ("damper", {"damper.bushing": "55 mm"}, "bushing_does_not_fit"),
    ("damper", {"damper.hole": "12 mm"}, "hole_and_sleeve_differ"),
    ("damper", {"damper.apart": "915 mm"}, "damper_leans_on_the_spring"),
    ("stabiliser", {"stabiliser.apart": "860 mm"}, "stabiliser_meets_the_damper"),
    ("gears", {"gears.ring": "224 mm"}, "ring_is_of_another_class"),
    ("gears", {"gears.carrier_low": "4.88"}, "carrier_is_for_other_ratios"),
    ("gears", {"gears.bolts": "9.5 mm"}, "ring_bolts_do_not_fit"),
    ("gears", {"gears.line_gap": "4 mm"}, "line_meets_the_ring"),
    ("gears", {"gears.lock_proved": "no"}, "lock_is_not_proved"),
    ("ends", {"ends.side_splines": "30"}, "shaft_does_not_enter_the_side_gear"),
    ("ends", {"ends.hub_splines": "33"}, "stub_does_not_enter_the_hub"),
    ("ends", {"ends.yoke": "30.2 mm"}, "joint_does_not_fit_its_yoke"),
    ("ends", {"ends.seal_bore": "35 mm"}, "seal_does_not_fit"),
    ("ends", {"ends.knuckle_hub": "sealed unit"}, "hub_does_not_fit_its_knuckle"),
    ("ends", {"ends.wheel_holes": "6"}, "wheel_does_not_go_on"),
    ("ends", {"ends.wheel_bore": "110 mm"}, "wheel_does_not_go_over_the_pilot"),
    ("ends", {"ends.wheel_inside": "188 mm"}, "wheel_meets_the_caliper"),
    ("ends", {"ends.hose": "480 mm"}, "hose_is_short"),
    ("ends", {"ends.sensor_teeth": "44"}, "computer_counts_other_teeth"),
    ("ends", {"ends.lead": "500 mm"}, "lead_is_short"),
    ("ends", {"ends.breather": "600 mm"}, "breather_drowns"),
    ("reuse", {"reuse.fasteners": "reused, read and accepted"}, "fasteners_are_used_twice"),
    ("reuse", {"reuse.shafts": "reused, not read yet"}, "shafts_are_reused_unread"),
    ("reuse", {"reuse.knuckles": "reused, not read yet"}, "knuckles_are_reused_unread"),
    ("reuse", {"reuse.hubs": "reused, not read yet"}, "hubs_are_reused_unread"),
    ("reuse", {"reuse.gears": "reused, not read yet"}, "gears_are_reused_unread"),
    ("reuse", {"reuse.rods": "reused, not read yet"}, "rods_are_reused_unread"),
    ("reuse", {"reuse.hubs": "reused, read and accepted", "ends.hub": "sealed unit"},
     "reused_hubs_go_nowhere"),
    ("delivery", {"delivery.left": "660 mm"}, "delivered_left_face_is_off"),
    ("delivery", {"delivery.right": "960 mm"}, "delivered_right_face_is_off"),
    ("delivery", {"delivery.bow": "1.6 mm"}, "delivered_tubes_are_bowed"),
    ("delivery", {"delivery.built_in": "12 deg"}, "delivered_angle_is_off"),
    ("delivery", {"delivery.alike": "0.6 deg"}, "delivered_forgings_differ"),
    ("delivery", {"delivery.lash_low": "0 mm", "delivery.lash_high": "0.3 mm"},
     "delivered_lash_varies"),
    ("delivery", {"delivery.sheet": "no"}, "delivered_without_its_sheet"),
    ("delivery", {"delivery.tight": "no"}, "delivered_weeping"),
]  # fmt: skip


def sheet(**planted):
    said = {key: answer.text for key, answer in load_order_sheet(str(SOUND)).answers.items()}
    return order_sheet_said(said | planted)


def test_a_sound_sheet_contradicts_itself_nowhere():
    order = ordered(sheet(**DELIVERED))
    assert not order.misfits
    assert not order.missing
    assert order.ready


@pytest.mark.parametrize(("group", "planted", "rule"), PLANTED)
def test_a_planted_contradiction_is_found(group, planted, rule):
    order = ordered(sheet(**planted))
    found = [each for each in order.misfits if each.rule == rule]
    assert found, f"{planted} is not found by {rule}"
    assert any(key in each.fields for each in found for key in planted)
    assert any(row.misfits for row in order.rows if row.field.group == group)
    for each in found:
        words = each.wrong.says.format(*(f"{value:g}" for value, _ in each.wrong.numbers))
        assert "{" not in words
        assert each.wrong.do.endswith(".")
        assert order.blocked == any(one.wrong.weight == "blocks" for one in order.misfits)


def test_each_group_has_three_planted_ones_and_each_rule_one():
    groups = {each.group for each in order_fields().values()}
    together = {"arm", "track_bar", "damper", "stabiliser"}  # brackets are one group to a reader
    for group in groups - together:
        assert sum(planted[0] == group for planted in PLANTED) >= 3, group
    assert sum(planted[0] in together for planted in PLANTED) >= 3
    assert {rule.name for rule in RULES} == {rule for _, _, rule in PLANTED}


# SAFETY 16: front and rear, each with its tyres, are compared before anything is ordered.
def test_a_ratio_mismatch_blocks_and_an_untold_one_is_never_ready():
    order = ordered(sheet(**{"ratio.other": "4.88"}))
    assert order.blocked
    assert not order.ready
    said = {key: answer.text for key, answer in load_order_sheet(str(SOUND)).answers.items()}
    open_ = ordered(order_sheet_said({k: v for k, v in said.items() if k != "ratio.other"}))
    assert not open_.ready
    assert [each.key for each in open_.missing] == ["ratio.other"]


# Two axles with tyres and ratios changed alike run at one speed: 4.56 on 431 mm is 4.10 on 387.5.
def test_ratio_and_tyre_make_up_for_each_other():
    alike = {
        "ratio.tyres": "two sizes",
        "ratio.other": "4.10",
        "ratio.other_tyre_height": "387.5 mm",
    }
    order = ordered(sheet(**alike))
    assert not [each for each in order.misfits if each.rule == "front_and_rear_run_apart"]


# A race axle builder's page: "moving the pinion 2 in gives two parts that differ by 4 in".
def test_moving_the_pinion_moves_both_sides():
    moved = {"width.left": "602.2 mm", "width.right": "1022.8 mm"}
    assert [each.rule for each in ordered(sheet(**moved)).misfits] == ["pinion_stands_elsewhere"]
    follows = moved | {"pinion.from_middle": "209.8 mm"}
    assert not ordered(sheet(**follows)).misfits


# Owner articles (forum): 4.2 of caster and 1.8 of pinion are 6 degrees; 10.5 and 2.5 are 13.
@pytest.mark.parametrize(("caster", "up", "built_in"), [(4.2, 1.8, 6.0), (2.5, 10.5, 13.0)])
def test_caster_and_pinion_are_the_housings_own(caster, up, built_in):
    told = {
        "angles.caster": f"{caster} deg",
        "pinion.up": f"{up} deg",
        "angles.output_up": f"{up} deg",
    }
    fits = ordered(sheet(**told, **{"angles.built_in": f"{built_in} deg"}))
    assert not [each for each in fits.misfits if each.rule == "angles_do_not_add_up"]
    off = ordered(sheet(**told, **{"angles.built_in": f"{built_in + 3} deg"}))
    assert "angles_do_not_add_up" in {each.rule for each in off.misfits}


def test_what_is_assumed_fills_nothing():
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    order = ordered(order_sheet_said({}), rig)
    rows = {row.field.key: row for row in order.rows}
    assert rows["width.overall"].filled.value == pytest.approx(1.625)
    assert rows["width.left"].filled.value == pytest.approx(0.8125 - 0.159)
    assert rows["ratio.other"].missing
    assert rows["ratio.other"].filled.whence == "assumed"
    assert not order.ready


def test_a_sheet_that_says_another_thing_than_the_rig_is_shown_so():
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    rows = {row.field.key: row for row in ordered(load_order_sheet(str(SOUND)), rig).rows}
    assert differs(rows["tube.outer"])
    assert not differs(rows["spring.apart"])
    assert differs(ordered(sheet(**{"spring.apart": "950 mm"}), rig).rows[
        list(rows).index("spring.apart")])  # fmt: skip


def test_every_field_says_what_it_is_tried_against_in_the_order_of_the_rules():
    assert contradicted_by("ratio.this")[:2] == ("ratio.other", "ratio.tyres")
    assert contradicted_by("tube.joining") == ()
    for key in order_fields():
        together = {each for rule in RULES if key in rule.fields for each in rule.fields} - {key}
        assert set(contradicted_by(key)) == together
        assert len(contradicted_by(key)) == len(together)


def test_shafts_to_be_reused_are_read_whatever_else_is_told():
    order = ordered(order_sheet_said({"reuse.shafts": "reused, not read yet"}))
    assert [each.rule for each in order.misfits] == ["shafts_are_reused_unread"]


# SAFETY 2: a STOP stands before everything, on paper and for a program too.
def test_a_stop_stands_before_the_order_on_every_face():
    order = ordered(sheet())
    said = ("STOP: crack in the knuckle",)
    made = json.loads(json.dumps(order_json(order, said), allow_nan=False))
    jsonschema.validate(made, order_answer_schema())
    assert made["stop"]
    assert made["stop_lines"] == [*said]
    assert not order_json(order)["stop"]
    assert order_data(order, stop_lines=said).stops == [*said]
    assert not order_data(order, stop_lines=said, blank=True).stops
    text = PdfReader(BytesIO(order_pdf(order, stop_lines=said))).pages[0].extract_text()
    assert text.index("Do not drive") < text.index("order of an axle")
    assert "crack in the knuckle" in text


def test_the_track_bar_is_drawn_on_its_side():
    left, right = (
        order_picture(ordered(sheet(**{"track_bar.side": side}))).svg for side in ("left", "right")
    )
    assert left != right
    assert right == order_picture(ordered(sheet())).svg


def test_a_sheet_reads_back_as_it_was_written():
    read = load_order_sheet(str(SOUND))
    again = order_sheet_from_text(order_sheet_text(read))
    assert {key: each.value for key, each in again.answers.items()} == {
        key: each.value for key, each in read.answers.items()
    }


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("axlewright = 1\n", "an order sheet is wanted"),
        ("", "does not say which version"),
        ("axlewright_order = 2\n", "another version"),
        ('axlewright_order = 1\n[tube]\nouter = "95"\n', "unit"),
        ('axlewright_order = 1\n[tube]\noutr = "95 mm"\n', "no such name"),
        ('axlewright_order = 1\n[tube]\nouter = "95 in"\n', "too large"),
        ('axlewright_order = 1\n[spring]\non = "air"\n', "not one of the words"),
        ('axlewright_order = 1\n[pinion]\nside = "driver"\n', "no side"),
    ],
)
def test_a_bad_sheet_says_what_is_wrong_and_where(text, says):
    with pytest.raises(BadFile) as told:
        order_sheet_from_text(text, "sheet.toml")
    assert says in str(told.value)
    assert "sheet.toml" in str(told.value)


def test_the_angle_to_build_in_is_a_proposal_until_caster_and_pinion_are_chosen():
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    order = ordered(order_sheet_said({}), rig)
    row = next(each for each in order.rows if each.field.key == "angles.built_in")
    assert row.missing
    assert not row.filled.holds
    chosen = {"angles.caster": "5.2 deg", "angles.built_in": "9.7 deg"}  # 5.2 + 4.5 as it stands
    assert not ordered(order_sheet_said(chosen), rig).misfits


def test_tolerances_are_told_as_a_rule_reads_them():
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    told = "\n".join(order_lines(ordered(order_sheet_said({}), rig), "us"))
    assert "± 0.063 in" in told
    assert "0.062992" not in told
    assert "about -0 " not in told
