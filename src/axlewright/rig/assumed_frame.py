"""Assumptions about weights, housing, steering, arms and brackets.

Middles and bands without a named source are from memory and carry at least x/: 1.25 where a
garage could measure them and x/: 1.5 where it could not.
"""

import numpy as np

from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.tables import material

MEMORY = "memory"
PRACTICE = "common practice, no source"
A513 = "ASTM A513 type 5 minima of 1015, 1020 and 1026 tube (345, 379, 448 MPa)"
HOT = "hot-rolled 1020 and 1026 bar, Budynas and Nisbett table A-20"
MEAN_OUTER = 0.0762
USUAL_LOAD = 11_000.0

STEELS = {
    "plain hot-finished": "seamless_carbon",
    "cold-drawn": "dom_1020",
    "chrome-molybdenum": "normalised_4130",
}
UNKNOWN_TUBE = 340e6  # between hot-finished and drawn tube; memory


def yield_middle(key: str) -> float:
    """Middle (geometric) yield of a material of the tables, Pa."""
    entry = material(key)
    return float(np.sqrt(entry.yield_low * entry.yield_high))


def _outer(columns: Columns, _: Words) -> Column:
    return 0.5 * (columns["tube_outer_left"] + columns["tube_outer_right"])


def _tube_scale(columns: Columns, words: Words) -> Column:
    return (_outer(columns, words) / MEAN_OUTER) ** 3


def _load_scale(columns: Columns, power: float) -> Column:
    return np.asarray((columns["axle_weight"] / USUAL_LOAD) ** power)


def _is_front(words: Words) -> bool:
    return words["rig.axle"] == "front"


def _has_track_bar(words: Words) -> bool:
    return words["held_by.arms"] != "leaves"


def _tube_yield(_: Columns, words: Words) -> float:
    steel = words["tube.steel"]
    return yield_middle(STEELS[steel]) if steel else UNKNOWN_TUBE


def _other_weight(columns: Columns, words: Words) -> Column:
    return columns["axle_weight"] * (1.05 if _is_front(words) else 0.95)


def _kingpin_spacing(columns: Columns, _: Words) -> Column:
    return columns["track"] + 2.0 * (columns["wheel_offset"] - columns["wheel_spacer"]) - 0.25


def _arm_apart(columns: Columns, _: Words) -> Column:
    return 0.9 * columns["spring_spacing"]


def _track_bar_span(columns: Columns, _: Words) -> Column:
    return 0.92 * columns["spring_spacing"]


FRAME_ASSUMPTIONS: tuple[Assumption, ...] = (
    Assumption(
        quantity="wheel_offset",
        label="wheel offset",
        kind="length",
        centre=0.0,
        spread=0.03,
        family="normal",
        source=MEMORY,
    ),
    Assumption(
        quantity="wheel_spacer",
        label="spacer",
        kind="length",
        centre=0.0,
        spread=0.002,
        family="normal",
        source=MEMORY,
    ),
    Assumption(
        quantity="spring_spacing",
        label="spring to spring",
        kind="length",
        centre=lambda c, w: 0.6 * c["track"],
        spread=1.12,
        source=MEMORY,
    ),
    Assumption(
        quantity="other_axle_weight",
        label="weight on the other axle",
        kind="force",
        centre=_other_weight,
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="wheelbase",
        label="wheelbase",
        kind="length",
        centre=2.75,
        spread=1.15,
        source=MEMORY,
    ),
    Assumption(
        quantity="mass_height",
        label="height of the centre of mass",
        kind="length",
        centre=lambda c, w: 1.9 * c["radius"],
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="axle_mass",
        label="mass of the whole axle with its wheels",
        kind="mass",
        centre=lambda c, w: 250.0 * _load_scale(c, 0.6),
        spread=1.4,
        source=MEMORY,
    ),
    Assumption(
        quantity="tyre_stiffness",
        label="stiffness of the tyre",
        kind="stiffness",
        centre=lambda c, w: 240e3 * _load_scale(c, 0.5),
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="tube_wall",
        label="wall of the tubes",
        kind="length",
        centre=lambda c, w: 0.085 * _outer(c, w),
        spread=1.25,
        source="range of walls met at this diameter, memory",
    ),
    Assumption(
        quantity="tube_yield",
        label="yield of the tubes' steel",
        kind="stress",
        centre=_tube_yield,
        spread=1.3,
        source=f"{A513}; {HOT}",
    ),
    Assumption(
        quantity="softening",
        label="yield kept beside a weld",
        kind="plain",
        centre=0.8,
        spread=0.15,
        family="uniform",
        source="fall towards hot-rolled yield, memory",
    ),
    Assumption(
        quantity="joint_share",
        label="share of the tube that its joint to the centre holds",
        kind="plain",
        centre=0.85,
        spread=0.15,
        family="uniform",
        source="pressed and plug-welded joints, memory",
    ),
    Assumption(
        quantity="centre_modulus",
        label="plastic section of the centre casting",
        kind="volume",
        centre=lambda c, w: 110e-6 * _tube_scale(c, w),
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="iron_yield",
        label="yield of the centre's iron",
        kind="stress",
        centre=lambda c, w: yield_middle("iron_60_40_18"),
        spread=1.3,
        source="ASTM A536 60-40-18 to 80-55-06",
    ),
    Assumption(
        quantity="forging_modulus",
        label="section of the end forging at its neck",
        kind="volume",
        centre=lambda c, w: 24e-6 * _tube_scale(c, w),
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="forging_factor",
        label="end forging against a usual one",
        kind="plain",
        centre=1.0,
        spread=1.02,
        source="taken as usual",
    ),
    Assumption(
        quantity="forging_yield",
        label="yield of the end forging",
        kind="stress",
        centre=lambda c, w: yield_middle("forging_1045"),
        spread=1.3,
        source="normalised 1040 to 1045 forging, memory",
    ),
    Assumption(
        quantity="knuckle_modulus",
        label="section of the knuckle at its neck",
        kind="volume",
        centre=lambda c, w: 26e-6 * _load_scale(c, 0.5),
        spread=1.5,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="knuckle_yield",
        label="yield of the knuckle",
        kind="stress",
        centre=400e6,
        spread=1.35,
        source="forged or nodular knuckles, memory",
        applies=_is_front,
    ),
    Assumption(
        quantity="kingpin_spacing",
        label="lower joint to lower joint across",
        kind="length",
        centre=_kingpin_spacing,
        spread=1.03,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="forging_length",
        label="tube's end to kingpin (rear: to bearing)",
        kind="length",
        centre=lambda c, w: np.full_like(c["track"], 0.085 if _is_front(w) else 0.045),
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="drag_link_length",
        label="drag link, eye to eye",
        kind="length",
        centre=lambda c, w: 0.58 * c["track"],
        spread=1.15,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="kingpin_height",
        label="lower to upper joint",
        kind="length",
        centre=0.19,
        spread=1.2,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="ball_joint_limit",
        label="static strength of one ball joint or kingpin",
        kind="force",
        centre=lambda c, w: 68e3 * _load_scale(c, 0.5),
        spread=1.5,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="inclination",
        label="steering-axis inclination",
        kind="angle",
        centre=0.148,
        spread=0.044,
        family="normal",
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="caster",
        label="caster",
        kind="angle",
        centre=0.087,
        spread=0.052,
        family="normal",
        source=PRACTICE,
        applies=_is_front,
    ),
    Assumption(
        quantity="lock_angle",
        label="full lock",
        kind="angle",
        centre=0.56,
        spread=0.09,
        family="normal",
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="steering_arm",
        label="steering arm",
        kind="length",
        centre=0.17,
        spread=1.2,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="arm_modulus",
        label="section of the steering arm",
        kind="volume",
        centre=lambda c, w: 7.5e-6 * _load_scale(c, 0.5),
        spread=1.5,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="tie_rod_outer",
        label="tie rod across",
        kind="length",
        centre=0.031,
        spread=1.2,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="tie_rod_wall",
        label="wall of the tie rod",
        kind="length",
        centre=0.0055,
        spread=1.35,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="drag_link_outer",
        label="drag link across",
        kind="length",
        centre=0.031,
        spread=1.2,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="drag_link_wall",
        label="wall of the drag link",
        kind="length",
        centre=0.006,
        spread=1.35,
        source=MEMORY,
        applies=_is_front,
    ),
    Assumption(
        quantity="rod_yield",
        label="yield of rods and arms",
        kind="stress",
        centre=360e6,
        spread=1.3,
        source=A513,
    ),
    Assumption(
        quantity="track_bar_outer",
        label="track bar across",
        kind="length",
        centre=0.034,
        spread=1.2,
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="track_bar_wall",
        label="wall of the track bar",
        kind="length",
        centre=0.006,
        spread=1.4,
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="track_bar_span",
        label="track bar, eye to eye",
        kind="length",
        centre=_track_bar_span,
        spread=1.12,
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="track_bar_drop",
        label="track bar, higher at the frame by",
        kind="length",
        centre=0.06,
        spread=0.06,
        family="normal",
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="track_bar_bolt",
        label="bolt of the track bar",
        kind="length",
        centre=0.0135,
        spread=1.15,
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="track_bar_plate",
        label="cheeks of the track-bar bracket",
        kind="length",
        centre=0.005,
        spread=1.3,
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="track_bar_bracket_height",
        label="track-bar bolt above the tube",
        kind="length",
        centre=0.07,
        spread=1.4,
        source=MEMORY,
        applies=_has_track_bar,
    ),
    Assumption(
        quantity="bracket_width",
        label="width of a bracket's foot along the tube",
        kind="length",
        centre=0.085,
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="weld_leg",
        label="leg of the bracket welds",
        kind="length",
        centre=0.006,
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="plate_yield",
        label="yield of bracket plate",
        kind="stress",
        centre=lambda c, w: yield_middle("plate_s235"),
        spread=1.3,
        source="EN 10025 S235 to S355",
    ),
    Assumption(
        quantity="arm_length",
        label="lower arms, eye to eye",
        kind="length",
        centre=0.75,
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="arm_apart",
        label="lower arms apart at the axle",
        kind="length",
        centre=_arm_apart,
        spread=1.1,
        source=MEMORY,
    ),
    Assumption(
        quantity="arm_outer",
        label="lower arms across",
        kind="length",
        centre=0.042,
        spread=1.25,
        source=MEMORY,
    ),
    Assumption(
        quantity="arm_wall",
        label="wall of the lower arms",
        kind="length",
        centre=0.0055,
        spread=1.4,
        source=MEMORY,
    ),
    Assumption(
        quantity="arm_plate",
        label="cheeks of the arm brackets",
        kind="length",
        centre=0.005,
        spread=1.3,
        source=MEMORY,
    ),
    Assumption(
        quantity="arm_bracket_height",
        label="arm bolt below the tube",
        kind="length",
        centre=0.05,
        spread=1.4,
        source=MEMORY,
    ),
    Assumption(
        quantity="arm_bolt",
        label="bolts of the arms",
        kind="length",
        centre=0.0135,
        spread=1.15,
        source=MEMORY,
    ),
    Assumption(
        quantity="bolt_proof",
        label="proof stress of the bracket bolts",
        kind="stress",
        centre=720e6,
        spread=1.2,
        source="ISO 898-1 classes 8.8 and 10.9",
    ),
    Assumption(
        quantity="bushing_stiffness",
        label="stiffness of an arm's bushing",
        kind="stiffness",
        centre=8e6,
        spread=2.0,
        source=MEMORY,
    ),
    Assumption(
        quantity="spring_rate",
        label="stiffness of one spring",
        kind="stiffness",
        centre=lambda c, w: 34e3 * _load_scale(c, 0.8),
        spread=1.4,
        source=MEMORY,
    ),
    Assumption(
        quantity="bump_stiffness",
        label="stiffness of one bump stop, engaged",
        kind="stiffness",
        centre=lambda c, w: 9.0 * c["spring_rate"],
        spread=1.6,
        source=MEMORY,
    ),
    Assumption(
        quantity="seat_limit",
        label="strength of a spring seat or damper bracket",
        kind="force",
        centre=lambda c, w: 52e3 * _load_scale(c, 0.5),
        spread=1.5,
        source=MEMORY,
    ),
    Assumption(
        quantity="damper_bracket_behind",
        label="coil-over bracket behind the tube",
        kind="length",
        centre=0.07,
        spread=0.05,
        family="normal",
        source=MEMORY,
    ),
)
