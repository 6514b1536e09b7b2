"""Assumptions about hubs, spindles and wheel studs."""

from axlewright.rig.assumption import Assumption
from axlewright.rig.scaling import (
    MEMORY,
    load_scale,
)

ENDS: tuple[Assumption, ...] = (
    Assumption(
        quantity="bearing_setback",
        label="bearing centre inside the mounting face",
        kind="length",
        centre=0.04,
        spread=0.02,
        family="normal",
        source=MEMORY,
    ),
    Assumption(
        quantity="row_spread",
        label="spread of the bearing's rows",
        kind="length",
        centre=lambda c, w: 0.062 * load_scale(c, 0.3),
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="bearing_static",
        label="static rating of one row",
        kind="force",
        centre=lambda c, w: 105e3 * load_scale(c, 0.6),
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="bearing_rating",
        label="dynamic rating of one row",
        kind="force",
        centre=lambda c, w: 0.8 * c["bearing_static"],
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="spindle_outer",
        label="spindle at its root",
        kind="length",
        centre=lambda c, w: 0.056 * load_scale(c, 0.3),
        spread=1.2,
        source=MEMORY,
    ),
    Assumption(
        quantity="spindle_yield",
        label="yield of the spindle",
        kind="stress",
        centre=480e6,
        spread=1.35,
        source=MEMORY,
    ),
    Assumption(
        quantity="stud_count",
        label="wheel studs",
        kind="plain",
        centre=6.0,
        spread=1.01,
        source="taken as six",
    ),
    Assumption(
        quantity="stud_diameter",
        label="wheel studs across",
        kind="length",
        centre=0.0135,
        spread=1.1,
        source=MEMORY,
    ),
    Assumption(
        quantity="stud_circle",
        label="stud circle",
        kind="length",
        centre=0.1397,
        spread=1.12,
        source=MEMORY,
    ),
    Assumption(
        quantity="seat_friction",
        label="grip of the wheel seat",
        kind="plain",
        centre=0.28,
        spread=1.5,
        source="conical seats, memory",
    ),
)
