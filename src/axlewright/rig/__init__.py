"""What the vehicle is: read from a file, checked, frozen; what was given and what was assumed."""

from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.change import Change, change_from_text, changed_rig, load_change
from axlewright.rig.columns import (
    ASSUMPTIONS,
    SEED,
    Doubt,
    assumed,
    doubts,
    drawn_columns,
    point_columns,
    scores,
)
from axlewright.rig.contradictions import Clash, contradictions
from axlewright.rig.field import Field
from axlewright.rig.fields import FIELDS
from axlewright.rig.finding import Finding, findings, mended_parts, stops
from axlewright.rig.given import Given
from axlewright.rig.rig import Rig, load_rig, rig_from_text
from axlewright.rig.schema import change_schema, rig_schema

__all__ = [
    "ASSUMPTIONS",
    "FIELDS",
    "SEED",
    "Assumption",
    "Change",
    "Clash",
    "Column",
    "Columns",
    "Doubt",
    "Field",
    "Finding",
    "Given",
    "Rig",
    "Words",
    "assumed",
    "change_from_text",
    "change_schema",
    "changed_rig",
    "contradictions",
    "doubts",
    "drawn_columns",
    "findings",
    "load_change",
    "load_rig",
    "mended_parts",
    "point_columns",
    "rig_from_text",
    "rig_schema",
    "scores",
    "stops",
]
