"""How the torque path gives: shafts, splines, wheel joints, gears, caps, propeller shaft."""

import numpy as np

from axlewright.duty import ROW, Loads
from axlewright.physics import cross_joint, shaft
from axlewright.rig import Column, Columns, Words
from axlewright.strength.ledger import Ledger, Row, each

SIDES = ("left", "right")
WEDGED = ROW["pull_left"]  # case row whose joint angle is full lock
ROOT3 = np.sqrt(3.0)
ARM_SHARE = 0.39  # radius of the trunnion force over cap-to-cap; memory
LEVER_SHARE = 0.36  # lever of the trunnion force over cap diameter; memory
BORE_SHARE = 0.15  # grease hole over trunnion diameter; memory
EAR_FACTOR = 0.21  # ear force over cap diameter squared and yield: F = 0.21 D^2 yield; derived
USUAL_SHAFT = 0.152  # usual shaft over ring gear diameter; memory
MESH = 0.42  # mean mesh radius over ring diameter; memory
SEPARATING = 0.55  # share of the mesh force that one side's caps hold; memory


def drive_rows(ledger: Ledger, columns: Columns, words: Words, loads: Loads) -> None:
    """Write every row of the torque path."""
    for index, side in enumerate(SIDES):
        _shafts(ledger, columns, words, loads, index, side)
        if words["rig.axle"] == "front":
            _wheel_joint(ledger, columns, loads, index, side)
    _gears(ledger, columns, words, loads)


def joint_torque(columns: Columns, bend: Column) -> tuple[Column, Column]:
    """Torque at which the cross's trunnions and the yoke ears give, (n, rows), N m.

    T = 2 R cos(bend) F (drivetrain handbooks); trunnion: plastic bending of the hollow pin,
    lever from memory; ears: F = 0.21 D^2 yield, derived from a cantilever ear of width 1.5 D,
    thickness 0.45 D, lever 1.2 D.
    """
    arm = ARM_SHARE * columns["cap_to_cap"]
    trunnion = columns["trunnion"]
    plastic = trunnion**3 * (1.0 - BORE_SHARE**3) / 6.0
    pin = (
        plastic
        * columns["cross_yield"]
        * columns["cross_factor"]
        / (LEVER_SHARE * columns["cap_across"])
    )
    ear = EAR_FACTOR * columns["cap_across"] ** 2 * columns["ear_yield"]
    one = cross_joint.trunnion_force(1.0, each(arm), bend)
    return pin[:, None] / one, ear[:, None] / one


def _shafts(
    ledger: Ledger, columns: Columns, words: Words, loads: Loads, index: int, side: str
) -> None:
    torque = loads.drive[:, :, index]
    swing = torque / np.cos(loads.bend)
    limit = columns["shaft_shear_yield"]
    inner = columns["inner_shaft"]
    basis = "torque against the fully plastic shaft, pi d^3/12 x shear yield"
    twist = shaft.plastic_torque(inner, 0.0, limit)
    flex = (inner**3 / 6.0 * ROOT3 * limit)[:, None]
    ledger.add(
        Row(
            part=f"inner_shaft_{side}",
            mode="twists off",
            basis=f"{basis}; torque swings by 1/cos of the joint's angle, bending T tan(angle)",
        ),
        swing / each(twist),
        torque * np.tan(loads.bend) / flex,
        holds=twist,
    )
    count = columns["spline_teeth"]
    root = columns["spline_outer"] * (count - 2.0) / (count + 1.0)
    rooted = shaft.plastic_torque(root, 0.0, limit)
    ledger.add(
        Row(
            part=f"spline_{side}",
            mode="twists at the splines",
            basis=f"{basis}, at the spline's minor diameter (N-2)/(N+1) of the major, ANSI B92.1",
        ),
        swing / each(rooted),
        holds=rooted,
    )
    if words["rig.axle"] == "front":
        stub = columns["stub_shaft"]
        outer = shaft.plastic_torque(stub, 0.0, limit)
        flex = (stub**3 / 6.0 * ROOT3 * limit)[:, None]
        ledger.add(
            Row(part=f"stub_shaft_{side}", mode="twists off", basis=basis),
            torque / each(outer),
            torque * np.sin(loads.bend) / flex,
            holds=outer,
        )


def _wheel_joint(ledger: Ledger, columns: Columns, loads: Loads, index: int, side: str) -> None:
    torque = loads.drive[:, :, index]
    pin, ear = joint_torque(columns, loads.bend)
    ledger.add(
        Row(
            part=f"cross_joint_{side}",
            mode="a trunnion breaks",
            basis="trunnion force T/(2 R cos(angle)) against plastic bending of the pin",
        ),
        torque / pin,
        holds=pin[:, WEDGED],
    )
    ledger.add(
        Row(
            part=f"yoke_ears_{side}",
            mode="an ear stretches or tears",
            basis="trunnion force T/(2 R cos(angle)) against the ear's plastic bending",
        ),
        torque / ear,
        holds=ear[:, WEDGED],
    )


def _gears(ledger: Ledger, columns: Columns, words: Words, loads: Loads) -> None:
    total = np.sum(loads.drive, axis=-1)
    most = np.max(np.abs(loads.drive), axis=-1)
    ring = columns["ring_diameter"]
    usual = shaft.plastic_torque(USUAL_SHAFT * ring, 0.0, 560e6)
    ledger.add(
        Row(
            part="side_gears",
            mode="break teeth",
            basis="shaft torque against a usual shaft of this ring gear x a factor (memory)",
        ),
        most / (columns["side_gear_factor"] * usual)[:, None],
        holds=columns["side_gear_factor"] * usual,
    )
    design = (ring * 1e3 / columns["ring_design"]) ** 3
    ledger.add(
        Row(
            part="ring_and_pinion",
            mode="break teeth",
            basis="axle torque against design torque (D/K)^3 x break over design (memory)",
            caveat="from the ring gear's size alone, not from its teeth",
        ),
        total / (design * columns["ring_overload"])[:, None],
        holds=design * columns["ring_overload"],
    )
    mesh = total / (MESH * ring)[:, None]
    ledger.add(
        Row(
            part="carrier_caps",
            mode="spread",
            basis="share of the mesh force on one side's caps against their clamp (memory)",
            kind="force",
        ),
        SEPARATING * mesh / columns["cap_clamp"][:, None],
        holds=columns["cap_clamp"],
    )
    pinion = total / columns["axle_ratio"][:, None]
    limit = columns["propeller_limit"][:, None]
    if words["rig.axle"] == "rear":
        pin, ear = joint_torque(columns, np.full_like(total, 0.1))
        limit = np.minimum(pin, ear)
    ledger.add(
        Row(
            part="propeller_shaft",
            mode="or its joint breaks",
            basis="pinion torque against the shaft and joint",
        ),
        pinion / limit,
        holds=limit[:, 0],
    )
