"""What assumptions scale with: the load, the tube, and materials of the tables."""

import numpy as np

from axlewright.rig.assumption import Column, Columns, Words
from axlewright.tables import material, severity

MEMORY = "memory"
PRACTICE = "common practice, no source"
A513 = "ASTM A513 type 5 minima of 1015, 1020 and 1026 tube (345, 379, 448 MPa)"
HOT = "hot-rolled 1020 and 1026 bar, Budynas and Nisbett table A-20"
MEAN_OUTER = 0.0762
USUAL_LOAD = 11_000.0
VON_MISES = 0.577  # torsional over tensile yield
UNKNOWN_TUBE = 340e6  # between hot-finished and drawn tube; memory
TUBES = {
    "plain hot-finished": "seamless_carbon",
    "cold-drawn": "dom_1020",
    "chrome-molybdenum": "normalised_4130",
}
SHAFTS = {
    "induction-hardened carbon": "shaft_1040_induction",
    "chrome-nickel-molybdenum": "shaft_4340_temper_800",
    "high-silicon vacuum-melted": "shaft_300m",
}


def yield_middle(key: str) -> float:
    """Middle (geometric) yield of a material of the tables, Pa."""
    entry = material(key)
    return float(np.sqrt(entry.yield_low * entry.yield_high))


def tube_yield(_: Columns, words: Words) -> float:
    """Yield of the tubes' steel as named, Pa."""
    steel = words["tube.steel"]
    return yield_middle(TUBES[steel]) if steel else UNKNOWN_TUBE


def shaft_shear_yield(_: Columns, words: Words) -> float:
    """Shear yield of the shafts' steel as named, Pa."""
    entry = material(SHAFTS.get(words["shaft.steel"], "shaft_1040_induction"))
    if entry.shear_yield_low is not None and entry.shear_yield_high is not None:
        return float(np.sqrt(entry.shear_yield_low * entry.shear_yield_high))
    return VON_MISES * yield_middle(entry.key)


def reference(key: str, *, speed: bool = False) -> float:
    """Reference severity of a case of the tables, or the speed that belongs to it."""
    entry = severity(key)
    return float(entry.speed or 0.0) if speed else float(entry.value)


def tube_outer(columns: Columns, _: Words) -> Column:
    """Mean outside diameter of both tubes, m."""
    return 0.5 * (columns["tube_outer_left"] + columns["tube_outer_right"])


def tube_scale(columns: Columns, words: Words) -> Column:
    """Tube diameter against a usual one, cubed: how sections grow with it."""
    return np.asarray((tube_outer(columns, words) / MEAN_OUTER) ** 3)


def load_scale(columns: Columns, power: float) -> Column:
    """Weight on the axle against a usual one, to a power."""
    return np.asarray((columns["axle_weight"] / USUAL_LOAD) ** power)


def is_front(words: Words) -> bool:
    """Whether the axle steers."""
    return words["rig.axle"] == "front"


def has_track_bar(words: Words) -> bool:
    """Whether a track bar holds the axle sideways; leaves and angled arms do it themselves."""
    return words["held_by.arms"] not in {"leaves", "angled arms"}


def angled_arms(columns: Columns) -> tuple[float, Column, Column]:
    """Angled upper arms: their ends from the middle at axle and frame, and their run, m; memory."""
    near, far = 0.07, 0.45 * columns["arm_apart"]
    return (
        near,
        far,
        np.sqrt(np.maximum((0.8 * columns["arm_length"]) ** 2 - (far - near) ** 2, 0.01)),
    )


def other_weight(columns: Columns, words: Words) -> Column:
    """Weight on the other axle where only this one was weighed, N."""
    return columns["axle_weight"] * (1.05 if is_front(words) else 0.95)


def kingpin_spacing(columns: Columns, _: Words) -> Column:
    """Lower joint to lower joint, 125 mm inside each mounting face, m; memory."""
    return columns["track"] + 2.0 * (columns["wheel_offset"] - columns["wheel_spacer"]) - 0.25
