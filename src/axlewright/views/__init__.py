"""Results as words, rows and figures in the reader's units."""

import typing

from axlewright import late
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
from axlewright.views.phrases import giving, part_name, quantity
from axlewright.views.questions import (
    COMMANDS,
    choice_lines,
    chosen,
    echo_line,
    example_of,
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
    from axlewright.views.been import (
        broke_line,
        chapter_rows,
        driven_sentence,
        graves,
        history_rows,
        part_rows,
    )
    from axlewright.views.brakes import brake_lines
    from axlewright.views.carry import CarryData, card_lines, carry_data, carry_lines
    from axlewright.views.cure_names import cure_name
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
    from axlewright.views.ends_drawing import EndsView
    from axlewright.views.ends_sheet import EndGroup, EndRow, EndsData, ends_data
    from axlewright.views.json_align import align_json
    from axlewright.views.json_carry import carry_json, carry_schema
    from axlewright.views.json_decision import decision_json
    from axlewright.views.json_driveline import driveline_json
    from axlewright.views.json_log import (
        EntryTold,
        PartTold,
        ProcedureTold,
        WithdrawnTold,
        log_json,
        log_schema,
    )
    from axlewright.views.json_order import order_answer_schema, order_json
    from axlewright.views.json_schema import answer_schema
    from axlewright.views.json_schema_geometry import alignment_schema, travel_schema
    from axlewright.views.json_swap import plan_json, plan_schema
    from axlewright.views.json_travel import travel_json
    from axlewright.views.locator import located_json, located_lines
    from axlewright.views.log import (
        drive_answer_lines,
        due_lines,
        history_lines,
        sheet_lines,
        wanted_look_lines,
    )
    from axlewright.views.log_paper import LogData, log_data
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
        stop_lines,
        stop_words,
    )
    from axlewright.views.named_parts import kinds_meant
    from axlewright.views.off_centre_words import OffCentre, off_centre, off_centre_json, rod_of
    from axlewright.views.order import (
        ORDER_GROUPS,
        OrderData,
        OrderLine,
        misfit_words,
        missing_words,
        order_data,
        order_field_rows,
        order_lines,
        order_sentence,
    )
    from axlewright.views.order_drawing import OrderPicture, order_picture
    from axlewright.views.page_align import AlignPage, align_page
    from axlewright.views.page_answer import AnswerPage, answer_page
    from axlewright.views.page_bent import bent_lines, bent_page
    from axlewright.views.page_change import ChangeWords, PartRow, change_words, side_by_side
    from axlewright.views.page_levers import LeverGroup, lever_groups, tried_values
    from axlewright.views.page_measure import limit_list, measure_groups, past_list, taken_words
    from axlewright.views.page_moves import MovesPage, moves_page, steering_lines
    from axlewright.views.page_paper import PAPERS
    from axlewright.views.page_picture import Picture, answer_picture, growing_picture
    from axlewright.views.page_shook import shook_page
    from axlewright.views.page_why import WhyPage, why_page
    from axlewright.views.pose_drawing import PoseView, pose_views
    from axlewright.views.pose_words import PoseTold, Still, pose_told, still_poses
    from axlewright.views.report_words import ReportData, SheetData, report_data, sheet_data
    from axlewright.views.room import room_why_lines
    from axlewright.views.schema_decision import decision_schema
    from axlewright.views.sketch import procedure_sketch
    from axlewright.views.swap_lines import plan_lines, plan_step_lines
    from axlewright.views.swap_paper import SwapData, day_svg, swap_data
    from axlewright.views.swap_words import BoltWords, PlanWords, StepWords, hours, plan_words
    from axlewright.views.take import TakeData, take_data
    from axlewright.views.take_rods import Rod, rods
    from axlewright.views.told_decision import decision_lines
    from axlewright.views.travel import (
        TravelRow,
        cures_told,
        travel_rows,
        travel_sentence,
        travel_why_lines,
    )
    from axlewright.views.travel_paper import TravelData, travel_data
    from axlewright.views.travel_told import travel_lines
    from axlewright.views.units_in_text import in_units

# A long list, several names a line.
# fmt: off
__all__ = [
    "CAUTION", "COMMANDS", "LEADS", "LISTS", "ORDER_GROUPS", "PAPERS", "TYRE_GRID_NOTE",
    "AlignData", "AlignPage", "AnswerPage", "BoltWords", "CarryData", "ChangeWords", "ChoiceRow",
    "DecisionData", "DecisionWords", "DrivelineRow", "EndGroup", "EndRow", "EndsData", "EndsView",
    "EntryTold", "LeverGroup", "Links", "LogData", "MovesPage", "OffCentre", "OrderData",
    "OrderLine", "OrderPicture", "OrderRow", "PartRow", "PartTold", "Picture", "PlanWords",
    "PoseTold", "PoseView", "ProcedureTold", "ReportData", "Rod", "SheetData", "StepWords",
    "Still", "SwapData", "TakeData", "TravelData", "TravelRow", "WhyPage", "WithdrawnTold",
    "after_mend_lines", "align_data", "align_json", "align_lines", "align_page", "align_sentence",
    "alignment_schema", "answer_lines", "answer_page", "answer_picture", "answer_schema",
    "as_json", "bent_lines", "bent_page", "blank_drawing", "brake_lines", "broke_line",
    "broken_lines", "card_lines", "carry_data", "carry_json", "carry_lines", "carry_schema",
    "change_lines", "change_words", "chapter_rows", "choice_lines", "chosen",
    "cure_name", "cures_told", "day_svg",
    "decision_data", "decision_json", "decision_lines", "decision_schema", "decision_words",
    "drawing", "drawing_in_words", "drive_answer_lines", "drive_lines", "drive_words",
    "driveline_json", "driveline_lines", "driveline_rows", "driveline_sentence", "driven_sentence",
    "due_lines", "due_words", "echo_line", "ends_data", "example_of", "explanation_lines",
    "field_name",
    "folded", "gearing_lines", "giving", "graves", "growing_picture", "history_lines",
    "history_rows", "hit_lines", "hit_words", "hours", "in_units", "kinds_meant", "last_hit",
    "lever_groups", "limit_list",
    "located_json", "located_lines", "log_data", "log_json", "log_schema", "look_cards",
    "measure_groups", "measure_next", "misfit_words", "missing_line",
    "missing_words", "moves_page",
    "not_chosen_line", "not_judged_line", "off_centre", "off_centre_json", "open_words", "options",
    "order_answer_schema", "order_data", "order_field_rows", "order_json", "order_lines",
    "order_picture", "order_rows", "order_sentence", "part_lines", "part_name", "part_rows",
    "past_lines", "past_list", "plan_json", "plan_lines", "plan_schema", "plan_step_lines",
    "plan_words", "pose_told", "pose_views", "price_rows", "procedure_lines",
    "procedure_list_lines", "procedure_sketch", "quantity", "question_lines", "reading_lines",
    "report_data", "rests_line", "rod_of", "rods", "room_why_lines", "sentence", "severity_lines",
    "sheet_data", "sheet_lines", "shimmy_question_lines", "shook_page", "side_by_side",
    "steering_lines", "still_line", "still_poses", "stop_lines", "stop_words", "swap_data",
    "take_data",
    "taken_words", "toe_drawing", "told_lines", "travel_data", "travel_json", "travel_lines",
    "travel_rows", "travel_schema", "travel_sentence", "travel_why_lines", "tried_values",
    "tyre_rows", "wanted_look_lines", "wear_rows", "wear_sentence", "why_lines", "why_page",
]
# fmt: on

# A terminal's answer needs no picture and no paper: these modules load when they are asked for.
_IN: dict[str, str] = {
    "json_log": "EntryTold PartTold ProcedureTold WithdrawnTold log_json log_schema",
    "json_carry": "carry_json carry_schema",
    "carry": "CarryData card_lines carry_data carry_lines",
    "units_in_text": "in_units",
    "page_measure": "limit_list measure_groups past_list taken_words",
    "sketch": "procedure_sketch",
    "page_bent": "bent_lines bent_page",
    "page_shook": "shook_page",
    "been": "broke_line chapter_rows driven_sentence graves history_rows part_rows",
    "log_paper": "LogData log_data",
    "order": (
        "ORDER_GROUPS OrderData OrderLine misfit_words missing_words order_data order_field_rows "
        "order_lines order_sentence"
    ),
    "order_drawing": "OrderPicture order_picture",
    "json_order": "order_answer_schema order_json",
    "decision": "DecisionWords decision_words",
    "decision_facts": "ChoiceRow",
    "told_decision": "decision_lines",
    "decision_memo": "DecisionData decision_data",
    "schema_decision": "decision_schema",
    "decision_tyres": "TYRE_GRID_NOTE still_line tyre_rows",
    "json_decision": "decision_json",
    "named_parts": "kinds_meant",
    "after_hit": "hit_lines hit_words",
    "off_centre_words": "OffCentre off_centre off_centre_json rod_of",
    "take_rods": "Rod rods",
    "look_words": (
        "LEADS LISTS drive_words due_words last_hit look_cards open_words stop_lines stop_words"
    ),
    "swap_paper": "swap_data SwapData day_svg",
    "swap_words": "plan_words PlanWords StepWords BoltWords hours",
    "swap_lines": "plan_lines plan_step_lines",
    "json_swap": "plan_json plan_schema",
    "log_readings": (
        "shimmy_question_lines reading_lines procedure_list_lines procedure_lines "
        "past_lines part_lines"
    ),
    "log": "wanted_look_lines sheet_lines history_lines due_lines drive_answer_lines",
    "brakes": "brake_lines",
    "driveline": "DrivelineRow driveline_lines driveline_rows driveline_sentence price_rows",
    "json_driveline": "driveline_json",
    "align_report": "AlignData align_data",
    "json_align": "align_json",
    "align_words": "align_lines align_sentence",
    "align_drawing": "toe_drawing",
    "json_schema": "answer_schema",
    "drawing_sheet": "blank_drawing drawing drawing_in_words",
    "drawing_links": "Links",
    "locator": "located_json located_lines",
    "page_answer": "AnswerPage answer_page",
    "page_change": "ChangeWords PartRow change_words side_by_side",
    "page_levers": "LeverGroup lever_groups tried_values",
    "page_paper": "PAPERS",
    "page_why": "WhyPage why_page",
    "page_picture": "Picture answer_picture growing_picture",
    "report_words": "ReportData SheetData report_data sheet_data",
    "take": "TakeData take_data",
    "page_moves": "MovesPage moves_page steering_lines",
    "page_align": "AlignPage align_page",
    "ends_sheet": "EndGroup EndRow EndsData ends_data",
    "ends_drawing": "EndsView",
    "json_schema_geometry": "alignment_schema travel_schema",
    "pose_drawing": "PoseView pose_views",
    "pose_words": "PoseTold Still pose_told still_poses",
    "travel_paper": "TravelData travel_data",
    "travel": "TravelRow cures_told travel_rows travel_sentence travel_why_lines",
    "cure_names": "cure_name",
    "json_travel": "travel_json",
    "travel_told": "travel_lines",
    "room": "room_why_lines",
}
_LATER = {name: module for module, names in _IN.items() for name in names.split()}

__getattr__ = late.names(__name__, _LATER)
