"""Assumptions about the torque path, the wheel end, severities and the coarse wear estimate."""

import numpy as np

from axlewright.rig.assumed_frame import MEMORY
from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.tables import severity
from axlewright.tables import material

USUAL_LOAD = 11_000.0
SHAFTS = {
    "induction-hardened carbon": "shaft_1040_induction",
    "chrome-nickel-molybdenum": "shaft_4340_temper_800",
    "high-silicon vacuum-melted": "shaft_300m",
}
VON_MISES = 0.577  # torsional over tensile yield


def _scale(columns: Columns, power: float) -> Column:
    return np.asarray((columns["axle_weight"] / USUAL_LOAD) ** power)


def _shear_yield(_: Columns, words: Words) -> float:
    entry = material(SHAFTS.get(words["shaft.steel"], "shaft_1040_induction"))
    if entry.shear_yield_low is not None and entry.shear_yield_high is not None:
        return float(np.sqrt(entry.shear_yield_low * entry.shear_yield_high))
    return VON_MISES * float(np.sqrt(entry.yield_low * entry.yield_high))


def _severity(key: str, what: str = "value") -> float:
    entry = severity(key)
    return float(entry.speed or 0.0) if what == "speed" else float(entry.value)


def _front(words: Words) -> bool:
    return words["rig.axle"] == "front"


DRIVE_ASSUMPTIONS: tuple[Assumption, ...] = (
    Assumption(quantity="cap_across", label="joint cap across", kind="length",
               centre=lambda c, w: 0.0295 * _scale(c, 0.2), spread=1.15, source=MEMORY),
    Assumption(quantity="cap_to_cap", label="joint, cap to cap", kind="length",
               centre=lambda c, w: 3.05 * c["cap_across"], spread=1.12, source=MEMORY),
    Assumption(quantity="ring_diameter", label="ring gear across", kind="length",
               centre=lambda c, w: 0.216 * _scale(c, 0.25), spread=1.1, source=MEMORY),
    Assumption(quantity="ring_design", label="ring gear, K of D = K T^1/3", kind="plain",
               centre=14.1, spread=1.08, source="driveline design course, 13.0 to 15.3, memory"),
    Assumption(quantity="ring_overload", label="gear break over design torque", kind="plain",
               centre=2.2, spread=1.5, source=MEMORY),
    Assumption(quantity="axle_ratio", label="ratio of this axle", kind="plain", centre=4.1,
               spread=1.2, source=MEMORY),
    Assumption(quantity="other_hub_height", label="hub height at the other axle", kind="length",
               centre=lambda c, w: c["radius"], spread=1.01, source="taken as on this axle"),
    Assumption(quantity="other_ratio", label="ratio of the other axle", kind="plain",
               centre=lambda c, w: c["axle_ratio"] * c["other_hub_height"] / c["radius"],
               spread=1.005, source="taken as matching"),
    Assumption(quantity="inner_shaft", label="thinnest inner shaft", kind="length",
               centre=lambda c, w: 0.152 * c["ring_diameter"], spread=1.1,
               source="shafts met with this ring gear, memory"),
    Assumption(quantity="stub_shaft", label="thinnest stub shaft", kind="length",
               centre=lambda c, w: 0.97 * c["inner_shaft"], spread=1.07, source=MEMORY,
               applies=_front),
    Assumption(quantity="shaft_shear_yield", label="shear yield of the shafts", kind="stress",
               centre=_shear_yield, spread=1.3, source="hardened shafts, memory"),
    Assumption(quantity="spline_teeth", label="splines", kind="plain",
               centre=lambda c, w: c["inner_shaft"] / 1.102e-3, spread=1.08,
               source="24/48 splines, ANSI B92.1"),
    Assumption(quantity="spline_outer", label="shaft over its splines", kind="length",
               centre=lambda c, w: c["inner_shaft"] * (c["spline_teeth"] + 1.0)
               / (c["spline_teeth"] - 2.0), spread=1.02,
               source="ANSI B92.1 proportions, root as thick as the thinnest shaft"),
    Assumption(quantity="spline_engaged", label="spline engaged", kind="length", centre=0.036,
               spread=1.3, source=MEMORY),
    Assumption(quantity="trunnion", label="trunnion of the cross", kind="length",
               centre=lambda c, w: 0.635 * c["cap_across"], spread=1.08, source=MEMORY),
    Assumption(quantity="cross_factor", label="cross against a usual one", kind="plain",
               centre=1.0, spread=1.02, source="taken as usual"),
    Assumption(quantity="cross_yield", label="bending yield of the cross", kind="stress",
               centre=900e6, spread=1.35, source="case-hardened crosses, memory"),
    Assumption(quantity="ear_yield", label="yield of the yoke ears", kind="stress",
               centre=520e6, spread=1.35, source="forged shafts, memory"),
    Assumption(quantity="side_gear_factor", label="side gears against the shaft", kind="plain",
               centre=1.35, spread=1.4, source=MEMORY),
    Assumption(quantity="cap_clamp", label="clamp of the carrier caps, one side", kind="force",
               centre=lambda c, w: 130e3 * (c["ring_diameter"] / 0.216) ** 2, spread=1.4,
               source=MEMORY),
    Assumption(quantity="propeller_limit", label="propeller shaft and its joints", kind="torque",
               centre=lambda c, w: 2900.0 * (c["ring_diameter"] / 0.216) ** 2, spread=1.5,
               source=MEMORY),
    Assumption(quantity="engine_torque", label="engine's greatest torque", kind="torque",
               centre=330.0, spread=1.4, source=MEMORY),
    Assumption(quantity="first_ratio", label="first gear", kind="plain", centre=3.9, spread=1.25,
               source=MEMORY),
    Assumption(quantity="low_ratio", label="low range", kind="plain", centre=2.5, spread=1.2,
               source=MEMORY),
    Assumption(quantity="driveline_efficiency", label="share of torque not lost", kind="plain",
               centre=0.85, spread=0.06, family="normal", source="DT1 of common practice, memory"),
    Assumption(quantity="bias_ratio", label="torque bias of the differential", kind="plain",
               centre=lambda c, w: 2.6 if w["drive.lock"] == "limited slip" else 1.15,
               spread=1.2, source=MEMORY),
    Assumption(quantity="grip", label="grip of the tyres", kind="plain", centre=0.8, spread=1.2,
               source=MEMORY),
    Assumption(quantity="grip_wedged", label="grip of a wedged wheel", kind="plain",
               centre=lambda c, w: 1.4 * c["grip"], spread=1.25, source=MEMORY),
    Assumption(quantity="wedged_load", label="share of the axle's weight on the wedged wheel",
               kind="plain", centre=0.75, spread=0.15, family="uniform", source=MEMORY),
    Assumption(quantity="bearing_setback", label="bearing centre inside the mounting face",
               kind="length", centre=0.04, spread=0.02, family="normal", source=MEMORY),
    Assumption(quantity="row_spread", label="spread of the bearing's rows", kind="length",
               centre=lambda c, w: 0.062 * _scale(c, 0.3), spread=1.3, source=MEMORY),
    Assumption(quantity="bearing_static", label="static rating of one row", kind="force",
               centre=lambda c, w: 105e3 * _scale(c, 0.6), spread=1.5, source=MEMORY),
    Assumption(quantity="bearing_rating", label="dynamic rating of one row", kind="force",
               centre=lambda c, w: 0.8 * c["bearing_static"], spread=1.25, source=MEMORY),
    Assumption(quantity="spindle_outer", label="spindle at its root", kind="length",
               centre=lambda c, w: 0.056 * _scale(c, 0.3), spread=1.2, source=MEMORY),
    Assumption(quantity="spindle_yield", label="yield of the spindle", kind="stress",
               centre=480e6, spread=1.35, source=MEMORY),
    Assumption(quantity="stud_count", label="wheel studs", kind="plain", centre=6.0,
               spread=1.01, source="taken as six"),
    Assumption(quantity="stud_diameter", label="wheel studs across", kind="length", centre=0.0135,
               spread=1.1, source=MEMORY),
    Assumption(quantity="stud_circle", label="stud circle", kind="length", centre=0.1397,
               spread=1.12, source=MEMORY),
    Assumption(quantity="seat_friction", label="grip of the wheel seat", kind="plain",
               centre=0.28, spread=1.5, source="conical seats, memory"),
    Assumption(quantity="cover_share", label="share of a rock's blow that the cover takes",
               kind="plain", centre=0.25, spread=0.2, family="uniform", source=MEMORY),
    Assumption(quantity="cover_limit", label="blow that dents the cover onto the gear",
               kind="force", centre=24e3, spread=1.8, source=MEMORY),
    Assumption(quantity="strike_height", label="reference ledge", kind="length",
               centre=lambda c, w: severity("strike_left").value, spread=1.01,
               source="the ledge of the reference case"),
    Assumption(quantity="strike_speed", label="speed at which it meets the ledge", kind="speed",
               centre=lambda c, w: _severity("strike_left", "speed"), spread=1.6, source="severity, memory"),
    Assumption(quantity="strike_share", label="share of the axle's mass behind one wheel",
               kind="plain", centre=0.75, spread=1.35, source=MEMORY),
    Assumption(quantity="landing_drop", label="drop of a landing", kind="length", centre=lambda c, w: _severity("landing"), spread=1.6, source="severity, memory"),
    Assumption(quantity="landing_stiffness", label="stiffness that stops a landing",
               kind="stiffness", centre=lambda c, w: 0.45 * c["tyre_stiffness"], spread=1.5,
               source="tyres, springs and bump stops in series, less damping; memory"),
    Assumption(quantity="slide_speed", label="speed of a side slide", kind="speed", centre=lambda c, w: _severity("slide_left"), spread=1.6, source="severity, memory"),
    Assumption(quantity="lateral_stiffness", label="sideways stiffness of tyre and arms",
               kind="stiffness", centre=lambda c, w: 0.6 * c["tyre_stiffness"], spread=1.4,
               source=MEMORY),
    Assumption(quantity="hung_factor", label="one wheel hung: dynamic factor", kind="plain",
               centre=lambda c, w: _severity("hung_left"), spread=1.6, source="severity, memory"),
    Assumption(quantity="rock_factor", label="rock under the centre: axle weights", kind="plain",
               centre=lambda c, w: _severity("rock"), spread=1.6, source="severity, memory"),
    Assumption(quantity="corner_share", label="cornering, share of gravity", kind="plain",
               centre=lambda c, w: _severity("cornering_left"), spread=1.6, source="severity, memory"),
    Assumption(quantity="weld_scatter", label="scatter of weld lives", kind="plain", centre=1.0,
               spread=2.1, source="standard deviation 0.2 of log N, EN 1993-1-9 background, memory"),
    Assumption(quantity="duty_share", label="how often the reference moments come",
               kind="plain", centre=1.0, spread=2.0, source="duty, memory"),
)
