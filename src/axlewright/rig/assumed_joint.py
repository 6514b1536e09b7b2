"""Assumptions about the wheel joint's cross and yoke, and about locking hubs.

Where cap and length across the caps meet a row of the table of joint crosses, that row stands in;
else the table's proportions do. The table is from memory: its spread, 1.5 on the torque, lies on
the trunnion, whose cube the torque follows; the other proportions carry their own bands.
"""

from collections.abc import Callable
from functools import cache

import numpy as np

from axlewright.physics import shaft
from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.scaling import MEMORY, is_front, yield_middle
from axlewright.tables import cross_joint_ratio, cross_joints

TABLE = "table of joint crosses by cap and length, else its proportions; memory"
RATIOS = "proportions of the table of joint crosses; memory"
WITHIN = 0.001  # m, cap and length of a row both this near
NEEDLES = 24.0  # needles in a cap where no row is met; the table's usual count, memory
FORGED = {
    "chrome-nickel-molybdenum": "shaft_4340_temper_800",
    "high-silicon vacuum-melted": "shaft_300m",
}


@cache
def _rows() -> dict[str, Column]:
    """Columns of the table of joint crosses, each (rows,)."""
    crosses = list(cross_joints().values())
    return {
        name: np.array([float(getattr(cross, name)) for cross in crosses])
        for name in ("cap", "length", "trunnion", "hole", "arm", "needles", "needle")
    } | {"needle_length": np.array([cross.needle_length for cross in crosses])}


def met(columns: Columns) -> Column:
    """Row of the table that each draw's cap and length meet, (n,); -1 where they meet none."""
    rows = _rows()
    cap, length = columns["cap_across"][:, None], columns["cap_to_cap"][:, None]
    off_cap, off_length = np.abs(rows["cap"] - cap), np.abs(rows["length"] - length)
    near = (off_cap <= WITHIN) & (off_length <= WITHIN)
    best = np.argmin(np.where(near, off_cap + off_length, np.inf), axis=-1)
    return np.where(near.any(axis=-1), best, -1)


def _cross(name: str, ratio: str, of: str) -> Callable[[Columns, Words], Column]:
    """Give the table's value, or the proportion of another measure where no row is met."""

    def centre(columns: Columns, _: Words) -> Column:
        row = met(columns)
        plain = cross_joint_ratio(ratio).value * columns[of]
        return np.where(row >= 0, _rows()[name][row], plain)

    return centre


def _needles(columns: Columns, _: Words) -> Column:
    row = met(columns)
    return np.where(row >= 0, _rows()["needles"][row], NEEDLES)


def _share(ratio: str) -> Callable[[Columns, Words], Column]:
    return lambda columns, _: cross_joint_ratio(ratio).value * columns["cap_across"]


def _ear_yield(_: Columns, words: Words) -> float:
    """Yield of the core of the shafts' steel: yokes are forged in one piece with them."""
    return yield_middle(FORGED.get(words["shaft.steel"], "shaft_1040_induction"))


def _hub_lock(columns: Columns, _: Words) -> Column:
    return np.asarray(
        shaft.plastic_torque(columns["stub_shaft"], 0.0, columns["shaft_shear_yield"])
    )


def unlocks(words: Words) -> bool:
    """Whether the axle steers and its hubs can be unlocked."""
    return is_front(words) and words["drive.unlocking_hubs"] == "yes"


JOINT: tuple[Assumption, ...] = (
    Assumption(
        quantity="trunnion",
        label="trunnion of the cross",
        kind="length",
        centre=_cross("trunnion", "trunnion_to_cap", "cap_across"),
        spread=1.145,
        source=TABLE,
    ),
    Assumption(
        quantity="trunnion_hole",
        label="grease hole in the trunnion",
        kind="length",
        centre=_cross("hole", "hole_to_trunnion", "trunnion"),
        spread=1.53,
        source=TABLE,
    ),
    Assumption(
        quantity="joint_arm",
        label="joint's centre to the middle of its needles",
        kind="length",
        centre=_cross("arm", "arm_to_length", "cap_to_cap"),
        spread=1.08,
        source=TABLE,
    ),
    Assumption(
        quantity="trunnion_lever",
        label="middle of the needles to the trunnion's root",
        kind="length",
        centre=_share("lever_to_cap"),
        spread=1.2,
        source=RATIOS,
    ),
    Assumption(
        quantity="needles",
        label="needles in a cap",
        kind="plain",
        centre=_needles,
        spread=1.1,
        source=TABLE,
    ),
    Assumption(
        quantity="needle",
        label="needle across",
        kind="length",
        centre=_cross("needle", "needle_to_cap", "cap_across"),
        spread=1.18,
        source=TABLE,
    ),
    Assumption(
        quantity="needle_length",
        label="length of a needle",
        kind="length",
        centre=_cross("needle_length", "needle_length_to_cap", "cap_across"),
        spread=1.21,
        source=TABLE,
    ),
    Assumption(
        quantity="ear_wall",
        label="wall of the yoke ear beside the cap",
        kind="length",
        centre=_share("ear_wall_to_cap"),
        spread=1.34,
        source=RATIOS,
    ),
    Assumption(
        quantity="ear_thickness",
        label="thickness of the yoke ear",
        kind="length",
        centre=_share("ear_thickness_to_cap"),
        spread=1.2,
        source=RATIOS,
    ),
    Assumption(
        quantity="ear_reach",
        label="cap's centre to the root of the ear",
        kind="length",
        centre=_share("ear_reach_to_cap"),
        spread=1.2,
        source=RATIOS,
    ),
    Assumption(
        quantity="cross_factor",
        label="cross against a usual one",
        kind="plain",
        centre=1.0,
        spread=1.02,
        source="taken as usual",
    ),
    Assumption(
        quantity="cross_yield",
        label="bending yield of the cross",
        kind="stress",
        centre=900e6,
        spread=1.5,
        source="case-hardened crosses, memory",
    ),
    Assumption(
        quantity="ear_yield",
        label="yield of the yoke ears",
        kind="stress",
        centre=_ear_yield,
        spread=1.25,
        source="core of the shafts' steel, table of materials; forged in one piece",
    ),
    Assumption(
        quantity="hub_lock_limit",
        label="torque that a locking hub holds",
        kind="torque",
        centre=_hub_lock,
        spread=1.5,
        source="about what its stub shaft holds, memory",
        applies=unlocks,
    ),
    Assumption(
        quantity="driven_share",
        label="share of the distance with this axle driven",
        kind="plain",
        centre=lambda c, w: 0.15 if unlocks(w) else 0.4,
        spread=2.0,
        source=MEMORY,
        applies=is_front,
    ),
)
