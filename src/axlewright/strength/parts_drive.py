"""How the torque path gives: shafts, splines and propeller shaft; joint and gears beside them."""

import numpy as np

from axlewright.duty import Loads
from axlewright.physics import shaft, spline
from axlewright.rig import Column, Columns, Words
from axlewright.strength.ledger import Ledger, Row, each
from axlewright.strength.parts_gears import gear_rows
from axlewright.strength.parts_joint import joint_limit, joint_rows

SIDES = ("left", "right")
ROOT3 = np.sqrt(3.0)
AT_RIDE = 0.1  # angle of a rear propeller shaft's joint, rad; memory
PLASTIC = "torque against the fully plastic shaft, pi d^3/12 x shear yield"


def drive_rows(ledger: Ledger, columns: Columns, words: Words, loads: Loads) -> None:
    """Write every row of the torque path."""
    for index, side in enumerate(SIDES):
        _shafts(ledger, columns, words, loads, index, side)
        _splines(ledger, columns, loads, index, side)
        if words["rig.axle"] == "front":
            joint_rows(ledger, columns, words, loads, index, side)
    gear_rows(ledger, columns, loads)
    _propeller(ledger, columns, words, loads)


def spline_limits(columns: Columns) -> tuple[Column, Column, Column]:
    """Torques at which a spline twists at its root, shears its teeth, crushes their sides, (n,).

    Half of the teeth carry (Dudley). Sides are held against the tensile yield that goes with the
    shear yield by von Mises.
    """
    teeth, length = columns["spline_teeth"], columns["spline_engaged"]
    limit = columns["shaft_shear_yield"]
    pitch = (teeth + 1.0) / columns["spline_outer"]
    sharing = spline.sharing_factor(columns["spline_slope"], length)
    root = shaft.plastic_torque(spline.minor_diameter(teeth, pitch), 0.0, limit)
    shear = spline.tooth_shear(1.0, teeth, pitch, length, sharing=sharing)
    height = spline.contact_height(pitch)
    press = spline.side_pressure_sliding(1.0, teeth, pitch, length, height, sharing=sharing)
    return np.asarray(root), np.asarray(limit / shear), np.asarray(0.5 * ROOT3 * limit / press)


def _shafts(
    ledger: Ledger, columns: Columns, words: Words, loads: Loads, index: int, side: str
) -> None:
    torque = loads.drive[:, :, index]
    swing = torque / np.cos(loads.bend)
    limit = columns["shaft_shear_yield"]
    inner = columns["inner_shaft"]
    twist = shaft.plastic_torque(inner, 0.0, limit)
    flex = (inner**3 / 6.0 * ROOT3 * limit)[:, None]
    ledger.add(
        Row(
            part=f"inner_shaft_{side}",
            mode="twists off",
            basis=f"{PLASTIC}; torque swings by 1/cos of the joint's angle, bending T tan(angle)",
        ),
        swing / each(twist),
        torque * np.tan(loads.bend) / flex,
        holds=twist,
    )
    if words["rig.axle"] == "front":
        stub = columns["stub_shaft"]
        outer = shaft.plastic_torque(stub, 0.0, limit)
        flex = (stub**3 / 6.0 * ROOT3 * limit)[:, None]
        ledger.add(
            Row(part=f"stub_shaft_{side}", mode="twists off", basis=PLASTIC),
            torque / each(outer),
            torque * np.sin(loads.bend) / flex,
            holds=outer,
        )


def _splines(ledger: Ledger, columns: Columns, loads: Loads, index: int, side: str) -> None:
    swing = loads.drive[:, :, index] / np.cos(loads.bend)
    root, shear, crush = spline_limits(columns)
    ledger.add(
        Row(
            part=f"spline_{side}",
            mode="twists at the splines",
            basis=f"{PLASTIC}, at the minor diameter, (N-2)/P from 16/32 up, ANSI B92.1 (memory)",
        ),
        swing / each(root),
        holds=root,
    )
    ledger.add(
        Row(
            part=f"spline_{side}",
            mode="strips its teeth",
            basis="tooth shear at the pitch line, half of the teeth carrying, load shared by "
            "misalignment (Dudley), against the shaft's shear yield",
        ),
        swing / each(shear),
        holds=shear,
    )
    ledger.add(
        Row(
            part=f"spline_{side}",
            mode="crushes the sides of its teeth",
            basis="side pressure, half of the teeth carrying (Dudley; memory), against the "
            "tensile yield that goes with the shear yield",
            breaks=False,
        ),
        swing / each(crush),
        holds=crush,
    )


def _propeller(ledger: Ledger, columns: Columns, words: Words, loads: Loads) -> None:
    total = np.sum(loads.drive, axis=-1)
    limit = each(columns["propeller_limit"])
    basis = "pinion torque against shaft and joint (memory)"
    if words["rig.axle"] == "rear":
        limit = joint_limit(columns, np.full_like(total, AT_RIDE))
        basis = (
            "pinion torque against its joint's trunnions and ears, as on a wheel joint; sizes "
            "from the table of joint crosses or its proportions (memory)"
        )
    ledger.add(
        Row(part="propeller_shaft", mode="or its joint breaks", basis=basis),
        total / each(columns["axle_ratio"]) / limit,
        holds=limit[:, 0],
    )
