"""Everything beyond the first thirteen answers; none of it is required."""

from axlewright.rig.field import Field
from axlewright.rig.fields_drive import DRIVE_FIELDS
from axlewright.rig.fields_held import HELD_FIELDS
from axlewright.rig.fields_housing import HOUSING_FIELDS
from axlewright.rig.fields_points import POINT_FIELDS
from axlewright.rig.fields_severity import SEVERITY_FIELDS

MORE_FIELDS: tuple[Field, ...] = (
    HOUSING_FIELDS + HELD_FIELDS + DRIVE_FIELDS + SEVERITY_FIELDS + POINT_FIELDS
)
