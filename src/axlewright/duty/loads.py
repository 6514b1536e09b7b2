"""Forces at the two contact patches for every case, with where drive and brake torque react.

Row 0 of every array is the vehicle standing; row 1 onwards is the live part of each case at its
reference hardness. Sides are left, right. Forces act on the axle, in newton, x forward, y left,
z up.
"""

from dataclasses import dataclass

import numpy as np

from axlewright.duty.cases import CASES
from axlewright.physics import grip, impact
from axlewright.rig import Column, Columns, Words

LEFT, RIGHT = 0, 1
GRAVITY = 9.80665
ROW = {case.key: row for row, case in enumerate(CASES)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Loads:
    """What the ground does; arrays have draws first, then case rows.

    ``ground`` acts at the contact patch and ``hub`` at the wheel centre, both (n, rows, side, 3);
    ``centre`` acts under the differential, (n, rows, 3); ``drive`` is the torque each shaft gives
    its wheel, (n, rows, side); ``braked`` is 1 where the wheel is held by its brake, (rows,);
    ``bend`` is the wheel joint's angle, (n, rows); ``engine_share`` is the part of
    the wedged wheel's grip that the engine can use up (1: grip limits, not the engine), (n,).
    """

    ground: Column
    hub: Column
    centre: Column
    drive: Column
    braked: Column
    bend: Column
    engine_share: Column


def wheel_loads(columns: Columns, words: Words) -> Loads:
    """Loads of every case at reference hardness, from one rig's columns."""
    weight = columns["axle_weight"]
    draws = weight.shape[0]
    ground = np.zeros((draws, len(CASES), 2, 3))
    hub = np.zeros((draws, len(CASES), 2, 3))
    centre = np.zeros((draws, len(CASES), 3))
    drive = np.zeros((draws, len(CASES), 2))
    bend = np.zeros((draws, len(CASES)))
    ground[:, ROW["standing"], :, 2] = 0.5 * weight[:, None]
    _braking(columns, words, ground)
    engine_share = _pulling(columns, words, ground, drive, bend)
    _sideways(columns, ground)
    _vertical(columns, ground, centre)
    _striking(columns, hub)
    braked = np.zeros(len(CASES))
    braked[ROW["braking"]] = 1.0
    return Loads(
        ground=ground,
        hub=hub,
        centre=centre,
        drive=drive,
        braked=braked,
        bend=bend,
        engine_share=engine_share,
    )


def _braking(columns: Columns, words: Words, ground: Column) -> None:
    weight, friction = columns["axle_weight"], columns["grip"]
    total = weight + columns["other_axle_weight"]
    sense = 1.0 if words["rig.axle"] == "front" else -1.0
    transfer = sense * friction * total * columns["mass_height"] / columns["wheelbase"]
    transfer = np.maximum(transfer, -0.8 * weight)
    row = ROW["braking"]
    ground[:, row, :, 2] = 0.5 * transfer[:, None]
    ground[:, row, :, 0] = -0.5 * (friction * (weight + transfer))[:, None]


def _pulling(columns: Columns, words: Words, ground: Column, drive: Column, bend: Column) -> Column:
    weight, radius = columns["axle_weight"], columns["radius"]
    gearing = columns["first_ratio"] * columns["low_ratio"] * columns["axle_ratio"]
    engine = grip.engine_torque(
        columns["engine_torque"], gearing, columns["driveline_efficiency"], 1.0
    )
    both = np.minimum(0.5 * engine, grip.grip_torque(weight, columns["grip"], radius))
    _pull(ground, drive, ROW["pull_both"], LEFT, 0.5 * both, radius)
    _pull(ground, drive, ROW["pull_both"], RIGHT, 0.5 * both, radius)
    held = columns["wedged_load"] * weight
    wedged = grip.grip_torque(held, columns["grip_wedged"], radius)
    free = grip.grip_torque(weight - held, columns["grip"], radius)
    for key, side, other in (("pull_left", LEFT, RIGHT), ("pull_right", RIGHT, LEFT)):
        row = ROW[key]
        if words["drive.lock"].startswith("locks"):
            mine = np.minimum(engine, wedged)
            rest = np.minimum(np.maximum(engine - mine, 0.0), free)
        else:
            mine = np.minimum(np.minimum(0.6 * engine, wedged), columns["bias_ratio"] * free)
            rest = np.minimum(mine, free)
        _pull(ground, drive, row, side, mine, radius)
        _pull(ground, drive, row, other, rest, radius)
        shift = held - 0.5 * weight
        ground[:, row, side, 2] = shift
        ground[:, row, other, 2] = -shift
        if words["rig.axle"] == "front":
            bend[:, row] = columns["lock_angle"]
    return np.asarray(np.minimum(engine / wedged, 1.0))


def _pull(
    ground: Column, drive: Column, row: int, side: int, torque: Column, radius: Column
) -> None:
    ground[:, row, side, 0] = torque / radius
    drive[:, row, side] = torque


def _sideways(columns: Columns, ground: Column) -> None:
    weight = columns["axle_weight"]
    slide = impact.slide_force(
        columns["slide_speed"], columns["lateral_stiffness"], weight / GRAVITY
    )
    ground[:, ROW["slide_left"], LEFT, 1] = -slide
    ground[:, ROW["slide_right"], RIGHT, 1] = slide
    share = columns["corner_share"]
    shift = share * weight * columns["mass_height"] / columns["track"]
    for key, sense in (("cornering_left", 1.0), ("cornering_right", -1.0)):
        row = ROW[key]
        ground[:, row, LEFT, 2] = -sense * shift
        ground[:, row, RIGHT, 2] = sense * shift
        ground[:, row, LEFT, 1] = sense * share * (0.5 * weight - sense * shift)
        ground[:, row, RIGHT, 1] = sense * share * (0.5 * weight + sense * shift)


def _vertical(columns: Columns, ground: Column, centre: Column) -> None:
    weight = columns["axle_weight"]
    ground[:, ROW["hung_left"], LEFT, 2] = columns["hung_factor"] * weight
    ground[:, ROW["hung_right"], RIGHT, 2] = columns["hung_factor"] * weight
    landed = impact.landing_force(columns["landing_drop"], weight, columns["landing_stiffness"])
    ground[:, ROW["landing"], :, 2] = 0.5 * np.asarray(landed)[:, None]
    centre[:, ROW["rock"], 2] = columns["rock_factor"] * weight


def _striking(columns: Columns, hub: Column) -> None:
    rearward, upward = impact.strike_force(
        columns["strike_speed"],
        columns["strike_height"],
        columns["radius"],
        columns["tyre_stiffness"],
        columns["strike_share"] * columns["axle_mass"],
    )
    for key, side in (("strike_left", LEFT), ("strike_right", RIGHT)):
        hub[:, ROW[key], side, 0] = -rearward
        hub[:, ROW[key], side, 2] = upward
