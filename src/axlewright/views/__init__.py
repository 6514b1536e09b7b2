"""Results as words, rows and figures in the reader's units."""

import importlib
import typing

from axlewright.views.answer import (
    CAUTION,
    OrderRow,
    after_mend_lines,
    broken_lines,
    change_lines,
    drive_lines,
    measure_next,
    not_judged_line,
    order_rows,
    rests_line,
    sentence,
    severity_lines,
    wear_rows,
    wear_sentence,
)
from axlewright.views.gearing import gearing_lines
from axlewright.views.json_answer import as_json
from axlewright.views.phrases import part_name, quantity
from axlewright.views.questions import (
    COMMANDS,
    choice_lines,
    chosen,
    echo_line,
    explanation_lines,
    field_name,
    missing_line,
    not_chosen_line,
    options,
    question_lines,
)
from axlewright.views.terminal import answer_lines, folded
from axlewright.views.told import told_lines
from axlewright.views.why import why_lines

if typing.TYPE_CHECKING:
    from axlewright.views.after_hit import hit_lines, hit_words
    from axlewright.views.align_drawing import toe_drawing
    from axlewright.views.align_report import AlignData, align_data
    from axlewright.views.align_words import align_lines, align_sentence
    from axlewright.views.brakes import brake_lines
    from axlewright.views.decision import DecisionWords, decision_words
    from axlewright.views.decision_facts import ChoiceRow
    from axlewright.views.decision_memo import DecisionData, decision_data
    from axlewright.views.decision_tyres import TYRE_GRID_NOTE, still_line, tyre_rows
    from axlewright.views.drawing_links import Links
    from axlewright.views.drawing_sheet import blank_drawing, drawing, drawing_in_words
    from axlewright.views.driveline import (
        DrivelineRow,
        driveline_lines,
        driveline_rows,
        driveline_sentence,
        price_rows,
    )
    from axlewright.views.json_align import align_json
    from axlewright.views.json_decision import decision_json
    from axlewright.views.json_driveline import driveline_json
    from axlewright.views.json_order import order_answer_schema, order_json
    from axlewright.views.json_schema import answer_schema
    from axlewright.views.json_swap import plan_json, plan_schema
    from axlewright.views.json_travel import travel_json
    from axlewright.views.locator import located_json, located_lines
    from axlewright.views.log import (
        as_plain,
        drive_answer_lines,
        due_lines,
        history_lines,
        sheet_lines,
        wanted_look_lines,
    )
    from axlewright.views.log_readings import (
        part_lines,
        past_lines,
        procedure_lines,
        procedure_list_lines,
        reading_lines,
        shimmy_question_lines,
    )
    from axlewright.views.look_words import (
        LEADS,
        LISTS,
        drive_words,
        due_words,
        last_hit,
        look_cards,
        open_words,
        stop_words,
    )
    from axlewright.views.named_parts import kinds_meant
    from axlewright.views.off_centre_words import (
        OffCentre,
        off_centre,
        off_centre_json,
        rod_of,
    )
    from axlewright.views.order import (
        ORDER_GROUPS,
        OrderData,
        OrderLine,
        misfit_words,
        order_data,
        order_field_rows,
        order_lines,
        order_sentence,
    )
    from axlewright.views.order_drawing import OrderPicture, order_picture
    from axlewright.views.page_answer import AnswerPage, answer_page
    from axlewright.views.page_change import ChangeWords, PartRow, change_words, side_by_side
    from axlewright.views.page_levers import LeverGroup, lever_groups, tried_values
    from axlewright.views.page_moves import MovesPage, moves_page
    from axlewright.views.page_paper import PAPERS
    from axlewright.views.page_picture import Picture, answer_picture, growing_picture
    from axlewright.views.page_why import WhyPage, why_page
    from axlewright.views.pose_drawing import PoseView, pose_views
    from axlewright.views.pose_words import PoseTold, Still, pose_told, still_poses
    from axlewright.views.report_words import ReportData, SheetData, report_data, sheet_data
    from axlewright.views.room import room_why_lines
    from axlewright.views.schema_decision import decision_schema
    from axlewright.views.swap_lines import plan_lines, plan_step_lines
    from axlewright.views.swap_paper import SwapData, day_svg, swap_data
    from axlewright.views.swap_words import BoltWords, PlanWords, StepWords, hours, plan_words
    from axlewright.views.take import TakeData, take_data
    from axlewright.views.take_rods import Rod, rods
    from axlewright.views.told_decision import decision_lines
    from axlewright.views.travel import TravelRow, travel_rows, travel_sentence, travel_why_lines
    from axlewright.views.travel_paper import TravelData, travel_data
    from axlewright.views.travel_told import travel_lines

__all__ = [
    "CAUTION",
    "COMMANDS",
    "LEADS",
    "LISTS",
    "ORDER_GROUPS",
    "PAPERS",
    "TYRE_GRID_NOTE",
    "AlignData",
    "AnswerPage",
    "BoltWords",
    "ChangeWords",
    "ChoiceRow",
    "DecisionData",
    "DecisionWords",
    "DrivelineRow",
    "LeverGroup",
    "Links",
    "MovesPage",
    "OffCentre",
    "OrderData",
    "OrderLine",
    "OrderPicture",
    "OrderRow",
    "PartRow",
    "Picture",
    "PlanWords",
    "PoseTold",
    "PoseView",
    "ReportData",
    "Rod",
    "SheetData",
    "StepWords",
    "Still",
    "SwapData",
    "TakeData",
    "TravelData",
    "TravelRow",
    "WhyPage",
    "after_mend_lines",
    "align_data",
    "align_json",
    "align_lines",
    "align_sentence",
    "answer_lines",
    "answer_page",
    "answer_picture",
    "answer_schema",
    "as_json",
    "as_plain",
    "blank_drawing",
    "brake_lines",
    "broken_lines",
    "change_lines",
    "change_words",
    "choice_lines",
    "chosen",
    "day_svg",
    "decision_data",
    "decision_json",
    "decision_lines",
    "decision_schema",
    "decision_words",
    "drawing",
    "drawing_in_words",
    "drive_answer_lines",
    "drive_lines",
    "drive_words",
    "driveline_json",
    "driveline_lines",
    "driveline_rows",
    "driveline_sentence",
    "due_lines",
    "due_words",
    "echo_line",
    "explanation_lines",
    "field_name",
    "folded",
    "gearing_lines",
    "growing_picture",
    "history_lines",
    "hit_lines",
    "hit_words",
    "hours",
    "kinds_meant",
    "last_hit",
    "lever_groups",
    "located_json",
    "located_lines",
    "look_cards",
    "measure_next",
    "misfit_words",
    "missing_line",
    "moves_page",
    "not_chosen_line",
    "not_judged_line",
    "off_centre",
    "off_centre_json",
    "open_words",
    "options",
    "order_answer_schema",
    "order_data",
    "order_field_rows",
    "order_json",
    "order_lines",
    "order_picture",
    "order_rows",
    "order_sentence",
    "part_lines",
    "part_name",
    "past_lines",
    "plan_json",
    "plan_lines",
    "plan_schema",
    "plan_step_lines",
    "plan_words",
    "pose_told",
    "pose_views",
    "price_rows",
    "procedure_lines",
    "procedure_list_lines",
    "quantity",
    "question_lines",
    "reading_lines",
    "report_data",
    "rests_line",
    "rod_of",
    "rods",
    "room_why_lines",
    "sentence",
    "severity_lines",
    "sheet_data",
    "sheet_lines",
    "shimmy_question_lines",
    "side_by_side",
    "still_line",
    "still_poses",
    "stop_words",
    "swap_data",
    "take_data",
    "toe_drawing",
    "told_lines",
    "travel_data",
    "travel_json",
    "travel_lines",
    "travel_rows",
    "travel_sentence",
    "travel_why_lines",
    "tried_values",
    "tyre_rows",
    "wanted_look_lines",
    "wear_rows",
    "wear_sentence",
    "why_lines",
    "why_page",
]

# A terminal's answer needs no picture and no paper: these modules load when they are asked for.
_LATER = {
    "ORDER_GROUPS": "order",
    "OrderData": "order",
    "OrderLine": "order",
    "OrderPicture": "order_drawing",
    "misfit_words": "order",
    "order_answer_schema": "json_order",
    "order_data": "order",
    "order_field_rows": "order",
    "order_json": "json_order",
    "order_lines": "order",
    "order_picture": "order_drawing",
    "order_sentence": "order",
    "DecisionWords": "decision",
    "decision_words": "decision",
    "ChoiceRow": "decision_facts",
    "decision_lines": "told_decision",
    "DecisionData": "decision_memo",
    "decision_data": "decision_memo",
    "decision_schema": "schema_decision",
    "TYRE_GRID_NOTE": "decision_tyres",
    "still_line": "decision_tyres",
    "tyre_rows": "decision_tyres",
    "decision_json": "json_decision",
    "kinds_meant": "named_parts",
    "hit_lines": "after_hit",
    "hit_words": "after_hit",
    "OffCentre": "off_centre_words",
    "off_centre": "off_centre_words",
    "off_centre_json": "off_centre_words",
    "rod_of": "off_centre_words",
    "Rod": "take_rods",
    "rods": "take_rods",
    "LEADS": "look_words",
    "LISTS": "look_words",
    "drive_words": "look_words",
    "due_words": "look_words",
    "last_hit": "look_words",
    "look_cards": "look_words",
    "open_words": "look_words",
    "stop_words": "look_words",
    "swap_data": "swap_paper",
    "SwapData": "swap_paper",
    "plan_words": "swap_words",
    "PlanWords": "swap_words",
    "StepWords": "swap_words",
    "BoltWords": "swap_words",
    "hours": "swap_words",
    "plan_lines": "swap_lines",
    "plan_step_lines": "swap_lines",
    "plan_json": "json_swap",
    "plan_schema": "json_swap",
    "day_svg": "swap_paper",
    "shimmy_question_lines": "log_readings",
    "reading_lines": "log_readings",
    "procedure_list_lines": "log_readings",
    "procedure_lines": "log_readings",
    "past_lines": "log_readings",
    "part_lines": "log_readings",
    "wanted_look_lines": "log",
    "sheet_lines": "log",
    "history_lines": "log",
    "due_lines": "log",
    "drive_answer_lines": "log",
    "as_plain": "log",
    "brake_lines": "brakes",
    "DrivelineRow": "driveline",
    "driveline_json": "json_driveline",
    "driveline_lines": "driveline",
    "driveline_rows": "driveline",
    "driveline_sentence": "driveline",
    "price_rows": "driveline",
    "AlignData": "align_report",
    "align_data": "align_report",
    "align_json": "json_align",
    "align_lines": "align_words",
    "align_sentence": "align_words",
    "toe_drawing": "align_drawing",
    "answer_schema": "json_schema",
    "blank_drawing": "drawing_sheet",
    "drawing": "drawing_sheet",
    "drawing_in_words": "drawing_sheet",
    "Links": "drawing_links",
    "located_json": "locator",
    "located_lines": "locator",
    "AnswerPage": "page_answer",
    "answer_page": "page_answer",
    "ChangeWords": "page_change",
    "PartRow": "page_change",
    "change_words": "page_change",
    "side_by_side": "page_change",
    "LeverGroup": "page_levers",
    "lever_groups": "page_levers",
    "tried_values": "page_levers",
    "PAPERS": "page_paper",
    "WhyPage": "page_why",
    "why_page": "page_why",
    "Picture": "page_picture",
    "answer_picture": "page_picture",
    "growing_picture": "page_picture",
    "ReportData": "report_words",
    "SheetData": "report_words",
    "report_data": "report_words",
    "sheet_data": "report_words",
    "TakeData": "take",
    "take_data": "take",
    "MovesPage": "page_moves",
    "moves_page": "page_moves",
    "PoseView": "pose_drawing",
    "pose_views": "pose_drawing",
    "PoseTold": "pose_words",
    "Still": "pose_words",
    "pose_told": "pose_words",
    "still_poses": "pose_words",
    "TravelData": "travel_paper",
    "TravelRow": "travel",
    "travel_data": "travel_paper",
    "travel_json": "json_travel",
    "travel_lines": "travel_told",
    "travel_rows": "travel",
    "travel_sentence": "travel",
    "room_why_lines": "room",
    "travel_why_lines": "travel",
}


def __getattr__(name: str) -> object:
    if name not in _LATER:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found: object = getattr(importlib.import_module(f"{__name__}.{_LATER[name]}"), name)
    globals()[name] = found
    return found
