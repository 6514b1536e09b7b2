"""Gearing arithmetic beside the answer: crawl, engine speed, other tyres, front against rear."""

from math import tau

from axlewright.physics import gearing
from axlewright.rig import Columns, Rig
from axlewright.strength import Assessment, Comparison
from axlewright.views.phrases import plain, quantity

AGREE = 0.01  # front and rear may differ by this in rolling speed; common practice, no source
CRUISE = 80.0 / 3.6  # m/s


def gearing_lines(answer: Assessment | Comparison, system: str = "metric") -> list[str]:
    """What can be said of the gearing from what was given; nothing where no ratio was."""
    if isinstance(answer, Comparison):
        return [*_change(answer, system), *_agreement(answer.after.rig, answer.after.columns)]
    rig, columns = answer.rig, answer.columns
    if "axle_ratio" not in rig.given:
        return []
    ratio, radius = (float(columns[name][0]) for name in ("axle_ratio", "radius"))
    crawl = float(
        gearing.crawl_ratio(float(columns["first_ratio"][0]), float(columns["low_ratio"][0]), ratio)
    )
    taken = [] if {"first_ratio", "low_ratio"} <= rig.given.keys() else ["gearbox assumed"]
    turns = float(gearing.shaft_speed(CRUISE, radius, ratio)) * 60.0 / tau
    told = f" ({', '.join(taken)})" if taken else ""
    line = (
        f"Gearing: crawl {plain(crawl, 2)} to 1{told}; the propeller shaft turns "
        f"{plain(turns, 2)} a minute at {quantity(CRUISE, 'speed', system, 2)}."
    )
    return [line, *_agreement(rig, columns)]


def _change(answer: Comparison, system: str) -> list[str]:
    before, after = answer.before.columns, answer.after.columns
    old, new = float(before["radius"][0]), float(after["radius"][0])
    if abs(new / old - 1.0) < AGREE:
        return []
    ratio = float(after["axle_ratio"][0])
    wanted = float(gearing.ratio_for_tyre(ratio, new, old))
    error = float(gearing.speed_error(new, old))
    shown = quantity(CRUISE, "speed", system, 2)
    real = quantity(CRUISE * (1.0 + error), "speed", system, 2)
    line = (
        f"Other tyres: {shown} on the speedometer is {real}; a ratio of {plain(wanted, 3)} would "
        "bring the old gearing back."
    )
    if new > old:
        line += (
            f" The brakes must give {100.0 * (new / old - 1.0):.0f} % more torque to stop alike."
        )
    return [line]


def _agreement(rig: Rig, columns: Columns) -> list[str]:
    if not {"axle_ratio", "other_ratio"} <= rig.given.keys():
        return []
    here = float(columns["axle_ratio"][0] / columns["radius"][0])
    there = float(columns["other_ratio"][0] / columns["other_hub_height"][0])
    apart = here / there - 1.0
    if abs(apart) <= AGREE:
        return ["Front and rear ratios agree, tyres counted."]
    line = (
        f"FRONT AND REAR DISAGREE: with their tyres the two axles turn {100.0 * abs(apart):.1f} % "
        "apart. Do not lock the drive between them, and order nothing, until that is explained."
    )
    return [line]
