"""How the wheel joint gives: trunnions, needles, yoke ears, and the locking hub behind them."""

import numpy as np

from axlewright.duty import ROW, Loads
from axlewright.physics import cross_joint
from axlewright.physics.quantities import NewtonMetre
from axlewright.rig import Column, Columns, Words
from axlewright.strength.ledger import Ledger, Row, each

WEDGED = ROW["pull_left"]  # case row whose joint angle is full lock
PLASTIC = 1.5  # fully plastic over first yield of a rectangle in bending; beer-mechanics
DENTED = 4000e6  # contact pressure whose dent is 1/10,000 of a roller's diameter, ISO 76; Pa


def trunnion_limit(columns: Columns, bend: Column) -> NewtonMetre:
    """Torque at which a trunnion has yielded right through, (n, rows)."""
    return cross_joint.plastic_joint_capacity(
        each(columns["trunnion"]),
        each(columns["trunnion_hole"]),
        each(columns["joint_arm"]),
        each(columns["trunnion_lever"]),
        each(columns["cross_yield"] * columns["cross_factor"]),
        bend,
    )


def ear_limit(columns: Columns, bend: Column) -> NewtonMetre:
    """Torque at which an ear tears at its eye or bends at its root, (n, rows)."""
    wall, thickness = columns["ear_wall"], columns["ear_thickness"]
    width = columns["cap_across"] + 2.0 * wall
    eye = np.asarray(cross_joint.eye_stress(1.0, wall, thickness))
    root = cross_joint.ear_root_stress(1.0, columns["ear_reach"], width, thickness)
    force = columns["ear_yield"] / np.maximum(eye, np.asarray(root) / PLASTIC)
    return each(force) / cross_joint.trunnion_force(1.0, each(columns["joint_arm"]), bend)


def needle_limit(columns: Columns, bend: Column) -> NewtonMetre:
    """Torque at which the busiest needle dents the trunnion, (n, rows)."""
    pressure = np.asarray(
        cross_joint.needle_pressure(
            1.0,
            columns["trunnion"],
            columns["needle"],
            columns["needles"],
            columns["needle_length"],
        )
    )
    force = (DENTED / pressure) ** 2
    return each(force) / cross_joint.trunnion_force(1.0, each(columns["joint_arm"]), bend)


def joint_limit(columns: Columns, bend: Column) -> Column:
    """Torque at which the cross or its yoke breaks, whichever comes first, (n, rows)."""
    return np.minimum(trunnion_limit(columns, bend), ear_limit(columns, bend))


def joint_rows(
    ledger: Ledger, columns: Columns, words: Words, loads: Loads, index: int, side: str
) -> None:
    """Write the rows of one wheel joint of a front axle, and of its hub where it unlocks."""
    torque = loads.drive[:, :, index]
    pin = np.asarray(trunnion_limit(columns, loads.bend))
    ledger.add(
        Row(
            part=f"cross_joint_{side}",
            mode="a trunnion breaks",
            basis="trunnion force T/(2 R cos(angle)), Ivanovic 2011, against plastic bending of "
            "the drilled pin; sizes from the table of joint crosses or its proportions (memory)",
        ),
        torque / pin,
        holds=pin[:, WEDGED],
    )
    dent = np.asarray(needle_limit(columns, loads.bend))
    ledger.add(
        Row(
            part=f"cross_joint_{side}",
            mode="needles dent the trunnion",
            basis="Hertz pressure of the busiest needle, 4.6 x the mean (memory), against "
            "4,000 MPa, the static limit of roller bearings in ISO 76",
            breaks=False,
            caveat="a dent starts looseness; it does not break the joint",
        ),
        torque / dent,
        holds=dent[:, WEDGED],
    )
    ear = np.asarray(ear_limit(columns, loads.bend))
    ledger.add(
        Row(
            part=f"yoke_ears_{side}",
            mode="an ear stretches or tears",
            basis="trunnion force T/(2 R cos(angle)) against the eye's net section and plastic "
            "bending at the ear's root (Budynas and Nisbett, ch. 3 and 8); sizes from the "
            "table's proportions (memory)",
        ),
        torque / ear,
        holds=ear[:, WEDGED],
    )
    if words["drive.unlocking_hubs"] == "yes":
        ledger.add(
            Row(
                part=f"locking_hub_{side}",
                mode="its lock strips",
                basis="wheel torque against what a stub shaft of the built axle holds (memory)",
                caveat="unlocked, this axle takes no drive and its shafts stand still",
            ),
            torque / each(columns["hub_lock_limit"]),
            holds=columns["hub_lock_limit"],
        )
