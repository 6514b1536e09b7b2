"""Everything beyond the first thirteen answers; none of it is required."""

from axlewright.rig.field import Field
from axlewright.rig.fields_drive import DRIVE_FIELDS
from axlewright.rig.fields_frame import FRAME_FIELDS

MORE_FIELDS: tuple[Field, ...] = FRAME_FIELDS + DRIVE_FIELDS
