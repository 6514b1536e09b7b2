"""What was read for the tables that an answer stands on."""

from axlewright.tables import (
    cross_joints,
    duties,
    endurance_curves,
    fastener_grades,
    frictions,
    hardnesses,
    hub_bearings,
    load_indices,
    materials,
    scatters,
    severities,
    speed_symbols,
    splines,
    weld_details,
)


def table_sources() -> tuple[str, ...]:
    """What was read for the tables that an answer stands on."""
    asked = (
        *(materials, hardnesses, fastener_grades, frictions, splines, cross_joints, hub_bearings),
        *(weld_details, endurance_curves, scatters, severities, duties, load_indices),
        speed_symbols,
    )
    read = {row.origin.source for table in asked for row in table().values()}
    return tuple(sorted(each.title for each in read if each.kind not in {"memory", "practice"}))
