"""How the wheel ends and the steering give: hubs, knuckles, joints, arms and rods."""

import numpy as np

from axlewright.physics import column, metals
from axlewright.rig import Column, Columns, Words
from axlewright.strength.ledger import Ledger, Row, each
from axlewright.strength.wheel_end import WheelEnd

SIDES = ("left", "right")
SPINDLE_TO_BEARING = 0.045  # root of the spindle inboard of the bearing's centre; memory
SPINDLE_BORE = 0.65  # bore over diameter; memory


def end_rows(ledger: Ledger, columns: Columns, words: Words, ends: WheelEnd) -> None:
    """Write every row of the two wheel ends."""
    for index, side in enumerate(SIDES):
        _bearing(ledger, columns, ends, index, side)
        if words["hub.kind"] == "tapers on a spindle":
            _spindle(ledger, columns, ends, index, side)
        _studs(ledger, columns, ends, index, side)
        if words["rig.axle"] == "front":
            _knuckle(ledger, columns, ends, index, side)
            _joints(ledger, columns, words, ends, index, side)
    if words["rig.axle"] == "front":
        _steering(ledger, columns, ends)


def _bearing(ledger: Ledger, columns: Columns, ends: WheelEnd, index: int, side: str) -> None:
    force, moment = ends.force[:, :, index], ends.at_bearing[:, :, index]
    spread = columns["row_spread"][:, None]
    dents = columns["bearing_static"]
    spoils = dents * columns["bearing_spoilt"]
    for row, sense in (("outer row", 1.0), ("inner row", -1.0)):
        outward = sense if side == "left" else -sense
        upright = 0.5 * force[..., 2] + outward * moment[..., 0] / spread
        along = 0.5 * force[..., 0] - outward * moment[..., 2] / spread
        across = 0.22 * force[..., 1]
        for holds, mode, ends_it, against in (
            (dents, f"dents its races, {row}", False, "static rating, ISO 76 (P0 = C0)"),
            (
                spoils,
                f"is spoilt, {row}",
                True,
                "load that dents ten times as deep as the static rating of ISO 76 (memory)",
            ),
        ):
            ledger.add(
                Row(
                    part=f"hub_bearing_{side}",
                    mode=mode,
                    basis="row load = half the wheel's force + moment over the spread of the "
                    f"rows, against the {against}",
                    kind="force",
                    breaks=ends_it,
                    caveat="" if ends_it else "rough from here on, and it wears out sooner",
                ),
                upright / each(holds),
                along / each(holds),
                across / each(holds),
                holds=holds,
            )


def _spindle(ledger: Ledger, columns: Columns, ends: WheelEnd, index: int, side: str) -> None:
    outer = columns["spindle_outer"]
    plastic = outer**3 * (1.0 - SPINDLE_BORE**3) / 6.0
    strength = (plastic * columns["spindle_yield"])[:, None]
    force, moment = ends.force[:, :, index], ends.at_bearing[:, :, index]
    sense = 1.0 if side == "left" else -1.0
    ledger.add(
        Row(
            part=f"spindle_{side}",
            mode="bends at its root",
            basis="moment at the spindle's root against its fully plastic hollow section",
        ),
        (moment[..., 0] + sense * SPINDLE_TO_BEARING * force[..., 2]) / strength,
        (moment[..., 2] - sense * SPINDLE_TO_BEARING * force[..., 0]) / strength,
        holds=strength[:, 0],
    )


def _studs(ledger: Ledger, columns: Columns, ends: WheelEnd, index: int, side: str) -> None:
    pitch = 0.11 * columns["stud_diameter"]
    stress_area = 0.25 * np.pi * (columns["stud_diameter"] - 0.9382 * pitch) ** 2
    preload = 0.6 * columns["bolt_proof"] * stress_area
    circle, count = columns["stud_circle"], columns["stud_count"]
    moment = ends.moment_at_wheel[:, :, index]
    hold = (count * preload * columns["seat_friction"] * 0.5 * circle)[:, None]
    ledger.add(
        Row(
            part=f"wheel_studs_{side}",
            mode="the wheel slips on its seats",
            basis="torque on the wheel against clamp x seat grip x stud-circle radius "
            "(clamp 60 % of proof, seat grip from memory)",
            breaks=False,
        ),
        moment[..., 1] / hold,
        holds=hold[:, 0],
    )
    pull = (0.25 * count * circle * preload)[:, None]
    ledger.add(
        Row(
            part=f"wheel_studs_{side}",
            mode="clamp lost on one side",
            basis="greatest stud pull 4M/(n d) against its clamp",
        ),
        moment[..., 0] / pull,
        moment[..., 2] / pull,
        holds=pull[:, 0],
    )


def _knuckle(ledger: Ledger, columns: Columns, ends: WheelEnd, index: int, side: str) -> None:
    strength = (columns["knuckle_modulus"] * columns["knuckle_yield"])[:, None]
    moment = ends.at_kingpin[:, :, index]
    ledger.add(
        Row(
            part=f"knuckle_{side}",
            mode="bends",
            basis="moment about the kingpin at hub height against the knuckle's section "
            "(section from memory, scaled with the load)",
        ),
        moment[..., 0] / strength,
        moment[..., 1] / strength,
        moment[..., 2] / strength,
        holds=strength[:, 0],
    )


def _joints(
    ledger: Ledger, columns: Columns, words: Words, ends: WheelEnd, index: int, side: str
) -> None:
    force = ends.force[:, :, index] + ends.rods_force[:, :, index]
    moment = ends.at_kingpin[:, :, index]
    height = columns["kingpin_height"][:, None]
    limit = columns["ball_joint_limit"][:, None]
    pins = words["kingpin.kind"] == "kingpins"
    name, part = ("kingpin", "kingpins") if pins else ("ball joint", "ball_joints")
    for which, sense, carries in (("lower", 1.0, 1.0), ("upper", -1.0, 0.0)):
        along = 0.5 * force[..., 0] - sense * moment[..., 1] / height
        across = 0.5 * force[..., 1] + sense * moment[..., 0] / height
        ledger.add(
            Row(
                part=f"{part}_{side}",
                mode=f"the {which} {name} pulls or bends",
                basis="joint reaction from force and moment about the kingpin at hub height "
                "over the joints' distance; strength from memory",
                kind="force",
            ),
            along / limit,
            across / limit,
            carries * force[..., 2] / limit,
            holds=limit[:, 0],
        )


def _steering(ledger: Ledger, columns: Columns, ends: WheelEnd) -> None:
    arm = columns["steering_arm"]
    strength = (columns["arm_modulus"] * columns["knuckle_yield"])[:, None]
    ledger.add(
        Row(
            part="steering_arm",
            mode="bends",
            basis="tie-rod force x 0.85 of the arm against the arm's section (from memory)",
        ),
        (0.85 * arm)[:, None] * ends.tie_rod / strength,
        holds=strength[:, 0],
    )
    length = columns["kingpin_spacing"] - 0.06
    _rod(ledger, columns, "tie_rod", length, ends.tie_rod)
    _rod(ledger, columns, "drag_link", columns["drag_link_length"], ends.drag_link)


def _rod(ledger: Ledger, columns: Columns, name: str, length: Column, force: Column) -> None:
    outer = columns[f"{name}_outer"]
    inner = np.maximum(outer - 2.0 * columns[f"{name}_wall"], 0.0)
    holds = column.critical_load(length, outer, inner, columns["rod_yield"], metals.STEEL, 1.0)
    ledger.add(
        Row(
            part=name,
            mode="bows",
            basis="rod force, as a push, against the pinned strut by Euler or Johnson",
            caveat="a pull is judged as if it were a push",
            kind="force",
        ),
        force / each(holds),
        holds=holds,
    )
