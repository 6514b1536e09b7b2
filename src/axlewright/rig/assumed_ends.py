"""Assumptions about spindles and wheel studs."""

from axlewright.rig.assumption import Assumption
from axlewright.rig.scaling import (
    MEMORY,
    load_scale,
)

ENDS: tuple[Assumption, ...] = (
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
        spread=1.5,
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
