"""What the vehicle is: read from a file, checked, frozen; what was given and what was assumed."""

import typing

from axlewright import late
from axlewright.rig.alignment_fields import ALIGNMENT_FIELDS, REPEATED
from axlewright.rig.alignment_readings import (
    Readings,
    load_readings,
    readings_from_text,
    readings_said,
    readings_text,
)
from axlewright.rig.answer import Answer, read_answer
from axlewright.rig.assumed_points import has_place
from axlewright.rig.assumption import Assumption, Column, Columns, Words, normal_share
from axlewright.rig.change import Change, change_from_text, changed_rig, load_change
from axlewright.rig.clash import Clash
from axlewright.rig.columns import (
    ASSUMPTIONS,
    SEED,
    Doubt,
    assumed,
    columns_at,
    doubts,
    drawn_columns,
    drawn_geometry_columns,
    geometry_columns,
    geometry_doubts,
    point_columns,
    pushed_columns,
    scores,
)
from axlewright.rig.contradictions import contradictions
from axlewright.rig.field import Field
from axlewright.rig.fields import FIELDS, FIRST_FIELDS
from axlewright.rig.fields_points import POINT_FIELDS, POINTS
from axlewright.rig.finding import Finding, findings, mended_parts, stops
from axlewright.rig.given import Given, spoken_system
from axlewright.rig.part_names import PartMeant, part_meant
from axlewright.rig.reading import FOUND, WHERE, Condition, read_rig_text
from axlewright.rig.replaced import on_housing, stays_behind
from axlewright.rig.rig import MAY_BE_UNKNOWN, Rig, given_of, load_rig, rig_from_text, usual_words
from axlewright.rig.scaling import angled_arms, has_track_bar
from axlewright.rig.schema import change_schema, readings_schema, rig_schema
from axlewright.rig.screw import screw_pitch
from axlewright.rig.toml_text import decoded, file_bytes, tables_of
from axlewright.rig.tyre_code import TyreCode, parse_tyre
from axlewright.rig.words import near

if typing.TYPE_CHECKING:
    from axlewright.rig.component import COMPONENTS, Component, Fitment
    from axlewright.rig.happening import (
        BEARINGS,
        LOOK_STATES,
        SIDES,
        Body,
        Chapter,
        Fitted,
        Happening,
        Hit,
        Job,
        Kept,
        LookState,
        LookTaken,
        Noticed,
        OwnLimit,
        Reading,
        Remark,
        TakenOff,
        Trip,
        Withdrawn,
    )
    from axlewright.rig.order_sheet import (
        OrderSheet,
        load_order_sheet,
        order_sheet_from_text,
        order_sheet_said,
        order_sheet_text,
        sheet_fields,
    )

__all__ = [
    "ALIGNMENT_FIELDS",
    "ASSUMPTIONS",
    "BEARINGS",
    "COMPONENTS",
    "FIELDS",
    "FIRST_FIELDS",
    "FOUND",
    "LOOK_STATES",
    "MAY_BE_UNKNOWN",
    "POINTS",
    "POINT_FIELDS",
    "REPEATED",
    "SEED",
    "SIDES",
    "WHERE",
    "Answer",
    "Assumption",
    "Body",
    "Change",
    "Chapter",
    "Clash",
    "Column",
    "Columns",
    "Component",
    "Condition",
    "Doubt",
    "Field",
    "Finding",
    "Fitment",
    "Fitted",
    "Given",
    "Happening",
    "Hit",
    "Job",
    "Kept",
    "LookState",
    "LookTaken",
    "Noticed",
    "OrderSheet",
    "OwnLimit",
    "PartMeant",
    "Reading",
    "Readings",
    "Remark",
    "Rig",
    "TakenOff",
    "Trip",
    "TyreCode",
    "Withdrawn",
    "Words",
    "angled_arms",
    "assumed",
    "change_from_text",
    "change_schema",
    "changed_rig",
    "columns_at",
    "contradictions",
    "decoded",
    "doubts",
    "drawn_columns",
    "drawn_geometry_columns",
    "file_bytes",
    "findings",
    "geometry_columns",
    "geometry_doubts",
    "given_of",
    "has_place",
    "has_track_bar",
    "load_change",
    "load_order_sheet",
    "load_readings",
    "load_rig",
    "mended_parts",
    "near",
    "normal_share",
    "on_housing",
    "order_sheet_from_text",
    "order_sheet_said",
    "order_sheet_text",
    "parse_tyre",
    "part_meant",
    "point_columns",
    "pushed_columns",
    "read_answer",
    "read_rig_text",
    "readings_from_text",
    "readings_said",
    "readings_schema",
    "readings_text",
    "rig_from_text",
    "rig_schema",
    "scores",
    "screw_pitch",
    "sheet_fields",
    "spoken_system",
    "stays_behind",
    "stops",
    "tables_of",
    "usual_words",
]

# What a rig's file does not hold: these load when they are asked for.
_LATER = {
    "COMPONENTS": "component",
    "Component": "component",
    "Fitment": "component",
    "BEARINGS": "happening",
    "Body": "happening",
    "Chapter": "happening",
    "Fitted": "happening",
    "Happening": "happening",
    "Hit": "happening",
    "Job": "happening",
    "Kept": "happening",
    "LOOK_STATES": "happening",
    "LookState": "happening",
    "LookTaken": "happening",
    "Noticed": "happening",
    "OwnLimit": "happening",
    "Reading": "happening",
    "Remark": "happening",
    "SIDES": "happening",
    "TakenOff": "happening",
    "Trip": "happening",
    "Withdrawn": "happening",
    "OrderSheet": "order_sheet",
    "load_order_sheet": "order_sheet",
    "order_sheet_from_text": "order_sheet",
    "order_sheet_said": "order_sheet",
    "order_sheet_text": "order_sheet",
    "sheet_fields": "order_sheet",
}

__getattr__ = late.names(__name__, _LATER)
