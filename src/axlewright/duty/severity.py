"""From a hardness back to what a person can picture: a ledge and a speed, a drop, a share."""

import numpy as np

from axlewright.duty.cases import Case
from axlewright.physics import impact
from axlewright.rig import Column, Columns


def in_ground_terms(case: Case, hardness: Column, columns: Columns) -> tuple[Column, str]:  # noqa: PLR0911  (one way out for each kind)
    """What it takes, as a number in SI and the kind of that number.

    ``hardness`` is a factor on the live part of the case; the answer is the speed, drop or share
    at which the case is that hard: strike and slide forces grow with speed, a landing's force
    is turned back into its drop, the rest are shares.
    """
    if case.key.startswith("strike"):
        return np.asarray(hardness * columns["strike_speed"]), "speed"
    if case.key.startswith("slide"):
        return np.asarray(hardness * columns["slide_speed"]), "speed"
    if case.key == "landing":
        weight, stiffness = columns["axle_weight"], columns["landing_stiffness"]
        peak = hardness * impact.landing_force(columns["landing_drop"], weight, stiffness)
        return np.asarray(impact.landing_drop(peak, weight, stiffness)), "length"
    if case.key.startswith("hung"):
        return np.asarray(hardness * columns["hung_factor"]), "plain"
    if case.key == "rock":
        return np.asarray(hardness * columns["rock_factor"]), "plain"
    if case.key.startswith("cornering"):
        return np.asarray(hardness * columns["corner_share"]), "plain"
    return np.asarray(hardness), "plain"
