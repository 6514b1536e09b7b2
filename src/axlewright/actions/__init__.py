"""One function for each thing that a person asks for."""

import importlib
import typing

from axlewright.actions.assess import assess_file
from axlewright.actions.report import write_questions, write_report

if typing.TYPE_CHECKING:
    from axlewright.actions.align import align_file, align_paper, align_rig, write_align
    from axlewright.actions.archive import archive_given, archive_in, archive_out, archive_taken
    from axlewright.actions.bay import Bay
    from axlewright.actions.bay_align import ReadingsSaid
    from axlewright.actions.bay_cache import content_hash
    from axlewright.actions.bay_changes import change_text
    from axlewright.actions.bay_geometry import Moves
    from axlewright.actions.bay_words import AxleCard, Contradiction, KeptChange, Listed, Said
    from axlewright.actions.been import (
        chapter_from,
        fit_from,
        note_from,
        off_from,
        part_from,
        trip_from,
        withdrawn_from,
    )
    from axlewright.actions.bent import typed_readings, where_bent
    from axlewright.actions.carry import (
        card_done,
        carry_pdf,
        carrying,
        carrying_of,
        outing_said,
        tick,
        usual_outing,
        write_carry,
    )
    from axlewright.actions.choosing import Choosing
    from axlewright.actions.cures import cure_text, write_cure
    from axlewright.actions.deciding import (
        DecisionAnswer,
        decide_file,
        decide_logged,
        decide_rig,
        decision_paper,
        write_decision,
    )
    from axlewright.actions.draft import Draft, number_of, read_draft
    from axlewright.actions.ends import ends_paper, write_ends
    from axlewright.actions.example_rigs import example_names
    from axlewright.actions.hit import hit_from, off_centre_from, rods_of, weigh_off_centre
    from axlewright.actions.locate import locate_rig, reading_names
    from axlewright.actions.log import Log
    from axlewright.actions.log_on_paper import log_sheet, write_log_sheet
    from axlewright.actions.log_words import entry_number, found_of, side_of, state_of
    from axlewright.actions.look_over import look_from, take_back_look, work_from
    from axlewright.actions.order import (
        blank_order,
        order_alone,
        order_draft,
        order_file,
        order_pdf,
        write_order,
    )
    from axlewright.actions.past import chapter_of, day_of, grounds_of, noticed_of
    from axlewright.actions.readings import (
        own_limit,
        own_limits,
        past_readings,
        take_reading,
        told_again,
    )
    from axlewright.actions.standing import Session
    from axlewright.actions.start import Conversation
    from axlewright.actions.swap_job import Swap, SwapDesk
    from axlewright.actions.swap_plan import (
        PlanAnswer,
        plan_file,
        plan_paper,
        rig_stop_lines,
        write_plan,
    )
    from axlewright.actions.take import take_html, take_pdf, write_take
    from axlewright.actions.travel import travel_file, travel_paper, write_travel

__all__ = [
    "AxleCard",
    "Bay",
    "Choosing",
    "Contradiction",
    "Conversation",
    "DecisionAnswer",
    "Draft",
    "KeptChange",
    "Listed",
    "Log",
    "Moves",
    "PlanAnswer",
    "ReadingsSaid",
    "Said",
    "Session",
    "Swap",
    "SwapDesk",
    "align_file",
    "align_paper",
    "align_rig",
    "archive_given",
    "archive_in",
    "archive_out",
    "archive_taken",
    "assess_file",
    "blank_order",
    "card_done",
    "carry_pdf",
    "carrying",
    "carrying_of",
    "change_text",
    "chapter_from",
    "chapter_of",
    "content_hash",
    "cure_text",
    "day_of",
    "decide_file",
    "decide_logged",
    "decide_rig",
    "decision_paper",
    "ends_paper",
    "entry_number",
    "example_names",
    "fit_from",
    "found_of",
    "grounds_of",
    "hit_from",
    "locate_rig",
    "log_sheet",
    "look_from",
    "note_from",
    "noticed_of",
    "number_of",
    "off_centre_from",
    "off_from",
    "order_alone",
    "order_draft",
    "order_file",
    "order_pdf",
    "outing_said",
    "own_limit",
    "own_limits",
    "part_from",
    "past_readings",
    "plan_file",
    "plan_paper",
    "read_draft",
    "reading_names",
    "rig_stop_lines",
    "rods_of",
    "side_of",
    "state_of",
    "take_back_look",
    "take_html",
    "take_pdf",
    "take_reading",
    "tick",
    "told_again",
    "travel_file",
    "travel_paper",
    "trip_from",
    "typed_readings",
    "usual_outing",
    "weigh_off_centre",
    "where_bent",
    "withdrawn_from",
    "work_from",
    "write_align",
    "write_carry",
    "write_cure",
    "write_decision",
    "write_ends",
    "write_log_sheet",
    "write_order",
    "write_plan",
    "write_questions",
    "write_report",
    "write_take",
    "write_travel",
]

# A question asked of a file needs no talk and no store: these load when they are asked for.
_LATER = {
    "Choosing": "choosing",
    "Swap": "swap_job",
    "SwapDesk": "swap_job",
    "blank_order": "order",
    "order_alone": "order",
    "order_draft": "order",
    "order_file": "order",
    "order_pdf": "order",
    "write_order": "order",
    "DecisionAnswer": "deciding",
    "decide_file": "deciding",
    "decide_logged": "deciding",
    "decide_rig": "deciding",
    "decision_paper": "deciding",
    "write_decision": "deciding",
    "hit_from": "hit",
    "off_centre_from": "hit",
    "rods_of": "hit",
    "weigh_off_centre": "hit",
    "plan_file": "swap_plan",
    "plan_paper": "swap_plan",
    "rig_stop_lines": "swap_plan",
    "write_plan": "swap_plan",
    "PlanAnswer": "swap_plan",
    "log_sheet": "log_on_paper",
    "write_log_sheet": "log_on_paper",
    "archive_given": "archive",
    "archive_taken": "archive",
    "chapter_from": "been",
    "fit_from": "been",
    "note_from": "been",
    "off_from": "been",
    "part_from": "been",
    "trip_from": "been",
    "withdrawn_from": "been",
    "ends_paper": "ends",
    "write_ends": "ends",
    "typed_readings": "bent",
    "where_bent": "bent",
    "write_carry": "carry",
    "usual_outing": "carry",
    "tick": "carry",
    "outing_said": "carry",
    "carrying_of": "carry",
    "carrying": "carry",
    "carry_pdf": "carry",
    "card_done": "carry",
    "noticed_of": "past",
    "grounds_of": "past",
    "chapter_of": "past",
    "archive_out": "archive",
    "archive_in": "archive",
    "take_reading": "readings",
    "own_limit": "readings",
    "look_from": "look_over",
    "take_back_look": "look_over",
    "work_from": "look_over",
    "state_of": "log_words",
    "found_of": "log_words",
    "side_of": "log_words",
    "entry_number": "log_words",
    "own_limits": "readings",
    "past_readings": "readings",
    "told_again": "readings",
    "day_of": "past",
    "Log": "log",
    "align_file": "align",
    "align_paper": "align",
    "align_rig": "align",
    "write_align": "align",
    "AxleCard": "bay_words",
    "Bay": "bay",
    "Contradiction": "bay_words",
    "Conversation": "start",
    "Draft": "draft",
    "KeptChange": "bay_words",
    "Listed": "bay_words",
    "Moves": "bay_geometry",
    "ReadingsSaid": "bay_align",
    "Session": "standing",
    "Said": "bay_words",
    "change_text": "bay_changes",
    "content_hash": "bay_cache",
    "example_names": "example_rigs",
    "locate_rig": "locate",
    "number_of": "draft",
    "read_draft": "draft",
    "reading_names": "locate",
    "take_html": "take",
    "take_pdf": "take",
    "travel_file": "travel",
    "travel_paper": "travel",
    "cure_text": "cures",
    "write_cure": "cures",
    "write_take": "take",
    "write_travel": "travel",
}


def __getattr__(name: str) -> object:
    if name not in _LATER:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found: object = getattr(importlib.import_module(f"{__name__}.{_LATER[name]}"), name)
    globals()[name] = found
    return found
