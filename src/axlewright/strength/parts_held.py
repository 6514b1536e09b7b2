"""How what holds the axle gives: arms, track bar, their brackets and bolts, spring seats."""

import numpy as np

from axlewright.physics import bolt, column, metals
from axlewright.rig import Column, Columns, Words
from axlewright.strength.binding import bolt_force
from axlewright.strength.housing import Housing
from axlewright.strength.ledger import Ledger, Row, each

SIDES = ("left", "right")
PLATED = 2.0  # a second plate on each cheek doubles its thickness
FAYING = 0.20  # friction between bracket cheeks and sleeve; EN 1993-1-8 class D
PRELOAD = 0.7  # of proof
ULTIMATE = 1.3  # of a bolt over its proof stress; 1.25 for class 10.9 to 1.38 for 8.8, ISO 898-1
SHEARED = 0.6  # of its ultimate, in the thread; EN 1993-1-8, table 3.4
PITCH = 0.13  # of a bolt over its diameter
FRAME_SIDE = "track_bar_bracket_frame"
FACE = 0.65  # middle of the clamped ring of a bushing's sleeve over its bolt's diameter; memory


def held_rows(ledger: Ledger, columns: Columns, words: Words, housing: Housing) -> None:
    """Write every row of arms, track bar, brackets, bolts and spring seats."""
    for side in SIDES:
        _seat(ledger, columns, words, housing, side)
        _arm_brackets(ledger, columns, words, housing, side)
    if "track_bar" in housing.tension:
        _track_bar(ledger, columns, words, housing)


def bracket_strength(
    columns: Columns, plate: Column, height: Column, *, plated: bool = False
) -> tuple[Column, Column]:
    """Force at the bolt that bends two cheeks, and that tears their welds, (n,), N.

    Cheeks: two plates of the foot's width bent in their plane. Welds: four lines along the
    cheeks' feet, bending and shear added square (Budynas and Nisbett, tables 9-1 and 9-2), to
    0.75 of the ultimate of plate, throat 0.707 of the leg.
    """
    thick = plate * (PLATED if plated else 1.0)
    width = columns["bracket_width"]
    bends = columns["plate_yield"] * 2.0 * thick * width**2 / 4.0 / np.maximum(height, 0.01)
    throat = 0.707 * columns["weld_leg"]
    lines = 4.0 * width
    modulus = 4.0 * width**2 / 6.0
    per_newton = np.sqrt((height / modulus) ** 2 + (1.0 / lines) ** 2) / throat
    tears = 0.75 * 1.45 * columns["plate_yield"] / per_newton
    return bends, tears


def _bracket(
    ledger: Ledger,
    columns: Columns,
    words: Words,
    part: str,
    force: Column,
    plate: Column,
    height: Column,
    diameter: Column,
    times: Column | float = 1.0,
    named: str = "",
    pull: Column | None = None,
) -> None:
    plated = words["brackets.plated"] == "yes" and part != FRAME_SIDE  # a frame's stays as it is
    strengths = bracket_strength(columns, plate, height, plated=plated)
    bends, tears = (times * one for one in strengths)
    boxed = "" if isinstance(times, float) else ", times what boxing to the frame adds (memory)"
    ledger.add(
        Row(
            kind="force",
            part=part,
            mode=f"{named}bends",
            basis=f"bolt force x height against two plastic cheeks{boxed}",
        ),
        force / each(bends),
        holds=bends,
    )
    ledger.add(
        Row(
            kind="force",
            part=part,
            mode=f"{named}tears at its weld",
            basis="weld lines of the feet, bending and shear added square, throat 0.707 leg"
            f"{boxed}",
        ),
        force / each(tears),
        holds=tears,
    )
    holds = columns["plate_yield"] / bolt.hole_pressure(
        1.0, diameter, 2.0 * plate * (PLATED if plated else 1.0)
    )
    ledger.add(
        Row(
            kind="force",
            part=part,
            mode=f"{named}hole ovals",
            basis="bolt force over diameter and both cheeks against the plate's yield (Budynas and "
            "Nisbett, ch. 8)",
            breaks=False,
            caveat="once its bolt has slipped; while it grips, friction carries",
        ),
        (force if pull is None else pull) / each(holds),
        holds=holds,
    )


def _shear(ledger: Ledger, columns: Columns, name: str, force: Column, diameter: Column) -> None:
    area = bolt.stress_area(diameter, PITCH * diameter)
    ultimate = ULTIMATE * columns["bolt_proof"]
    holds = SHEARED * ultimate / bolt.shear_stress(1.0, area, 2.0)
    ledger.add(
        Row(
            kind="force",
            part="bracket_bolts",
            mode=f"the {name} bolt shears",
            basis="two planes through the thread at 0.6 of the ultimate, EN 1993-1-8 table 3.4; "
            "ultimate 1.3 x proof, ISO 898-1",
        ),
        force / each(holds),
        holds=holds,
    )


def _slip(
    ledger: Ledger,
    columns: Columns,
    name: str,
    force: Column,
    diameter: Column,
    torque: Column | None = None,
) -> None:
    pitch = PITCH * diameter
    preload = PRELOAD * columns["bolt_proof"] * bolt.stress_area(diameter, pitch)
    holds = bolt.slip_resistance(preload, FAYING, 2.0)
    ratios = [force] if torque is None else [force, torque / each(FACE * diameter)]
    ledger.add(
        Row(
            kind="force",
            part="bracket_bolts",
            mode=f"the {name} bolt slips in its bracket",
            basis="clamp (70 % of proof) x 0.20 x two faces, EN 1993-1-8 class D"
            + ("" if torque is None else "; pull and the wound-up bushing's twist added square"),
            breaks=False,
        ),
        *(ratio / each(holds) for ratio in ratios),
        holds=holds,
    )


def _seat(ledger: Ledger, columns: Columns, words: Words, housing: Housing, side: str) -> None:
    down = housing.support_force[f"spring_{side}"][..., 2]
    limit = columns["seat_limit"]
    name, part = "bends", f"spring_seat_{side}"
    if words["held_by.weight_on"].startswith("coil-over"):
        limit = 0.7 * limit  # a bracket on one side of the tube against a seat on it; memory
        part = f"damper_bracket_{side}"
    ledger.add(
        Row(
            kind="force",
            part=part,
            mode=name,
            basis="spring force against the seat's strength (from memory, scaled with the load)",
        ),
        down / each(limit),
        holds=limit,
    )


def _arm_brackets(
    ledger: Ledger, columns: Columns, words: Words, housing: Housing, side: str
) -> None:
    part = f"link_brackets_{side}"
    kind = words["held_by.arms"]
    if kind == "leaves":
        along = housing.support_force[f"spring_{side}"][..., 0]
        preload = (
            4.0
            * PRELOAD
            * columns["bolt_proof"]
            * bolt.stress_area(columns["arm_bolt"], 0.11 * columns["arm_bolt"])
        )
        holds = bolt.slip_resistance(preload, FAYING, 1.0)
        ledger.add(
            Row(
                kind="force",
                part="bracket_bolts",
                mode=f"the {side} spring pad slips under its clamps",
                basis="four clamp legs at 70 % of proof x 0.20",
                breaks=False,
            ),
            along / each(holds),
            holds=holds,
        )
        return
    name = f"lower_arm_{side}"
    force = (
        housing.support_force[f"radius_arm_{side}"][..., 0]
        if kind == "radius arms"
        else housing.tension[name]
    )
    height, bound = columns["arm_bracket_height"] + 0.0, housing.bound
    bends = force if kind == "radius arms" else bolt_force(bound, name, force, height)
    size = columns["arm_bolt"]
    _bracket(ledger, columns, words, part, bends, columns["arm_plate"], height, size, pull=force)
    twist = None if kind == "radius arms" else bound.torque[name]
    _slip(ledger, columns, f"{side} arm", force, size, twist)
    _shear(ledger, columns, f"{side} arm", force, size)
    inner = np.maximum(columns["arm_outer"] - 2.0 * columns["arm_wall"], 0.0)
    holds = column.critical_load(
        columns["arm_length"], columns["arm_outer"], inner, columns["rod_yield"], metals.STEEL, 1.0
    )
    ledger.add(
        Row(
            kind="force",
            part="links",
            mode=f"the {side} lower arm bows",
            basis="arm force, as a push, against the pinned strut by Euler or Johnson",
        ),
        force / each(holds),
        holds=holds,
    )
    if f"upper_arm_{side}" in housing.tension:
        above = f"upper_arm_{side}"
        force = bolt_force(bound, above, housing.tension[above], height)
        _bracket(
            ledger,
            columns,
            words,
            part,
            force,
            columns["arm_plate"],
            height,
            size,
            named="the upper arm's ",
            pull=housing.tension[above],
        )
    upper = [key for key in housing.tension if key in {f"upper_arm_{side}", "upper_arm"}]
    for key in upper:
        if key == "upper_arm" and side == "right":
            continue
        ledger.add(
            Row(
                kind="force",
                part="links",
                mode="an upper arm bows",
                basis="arm force, as a push, against the pinned strut by Euler or Johnson",
            ),
            housing.tension[key] / each(holds),
            holds=holds,
        )


def _track_bar(ledger: Ledger, columns: Columns, words: Words, housing: Housing) -> None:
    force = housing.tension["track_bar"]
    outer = columns["track_bar_outer"]
    inner = np.maximum(outer - 2.0 * columns["track_bar_wall"], 0.0)
    holds = column.critical_load(
        columns["track_bar_span"], outer, inner, columns["rod_yield"], metals.STEEL, 1.0
    )
    ledger.add(
        Row(
            kind="force",
            part="track_bar",
            mode="bows",
            basis="bar force, as a push, against the pinned strut by Euler or Johnson",
        ),
        force / each(holds),
        holds=holds,
    )
    _bracket(
        ledger,
        columns,
        words,
        "track_bar_bracket_axle",
        force,
        columns["track_bar_plate"],
        columns["track_bar_bracket_height"],
        columns["track_bar_bolt"],
    )
    _bracket(
        ledger,
        columns,
        words,
        FRAME_SIDE,
        force,
        columns["track_bar_plate"],
        columns["track_bar_frame_height"],
        columns["track_bar_bolt"],
        times=columns["track_bar_frame_factor"],
    )
    _slip(ledger, columns, "track-bar", force, columns["track_bar_bolt"])
    _shear(ledger, columns, "track-bar", force, columns["track_bar_bolt"])
