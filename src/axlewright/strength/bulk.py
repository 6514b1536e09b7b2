"""What a change weighs, and how low the axle hangs: like for like, from geometry."""

import numpy as np

from axlewright.physics import section
from axlewright.rig import Column, Columns

STEEL_DENSITY = 7850.0  # kg/m3, EN 1993-1-1
UNDER_RING = 0.035  # casting and cover below the ring gear's edge, m; memory


def housing_mass(columns: Columns) -> Column:
    """Mass of tubes, sleeves and truss, (n,), kg; what else is on the scale is left alone."""
    total = np.zeros_like(columns["track"])
    for side in ("left", "right"):
        outer, length = columns[f"tube_outer_{side}"], columns[f"tube_bare_{side}"]
        wall = np.minimum(columns["tube_wall"], 0.499 * outer)
        inner = outer - 2.0 * wall
        bore = inner - 2.0 * np.clip(columns[f"sleeve_wall_{side}"], 0.0, 0.499 * inner)
        total = total + np.asarray(section.area(outer, bore)) * length
    chord_outer = columns["truss_outer"]
    chord = np.asarray(section.area(chord_outer, chord_outer - 2.0 * columns["truss_wall"]))
    span = columns["tube_bare_left"] + columns["tube_bare_right"]
    ties = 1.3  # uprights and feet over the chord alone; memory
    total = total + np.where(columns["truss_height"] > 0.0, ties * chord * span, 0.0)
    return np.asarray(STEEL_DENSITY * total)


def lowest_point(columns: Columns) -> Column:
    """Height of the centre's underside above level ground, (n,), m."""
    return columns["radius"] - 0.5 * columns["ring_diameter"] - UNDER_RING


def above_tubes(columns: Columns) -> Column:
    """How far a truss stands above the tubes' upper side, (n,), m; nought without one."""
    tube = np.maximum(columns["tube_outer_left"], columns["tube_outer_right"])
    top = columns["truss_height"] + 0.5 * columns["truss_outer"] - 0.5 * tube
    return np.where(columns["truss_height"] > 0.0, np.maximum(top, 0.0), 0.0)
