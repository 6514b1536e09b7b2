"""Gearing arithmetic beside the answer: crawl, engine speed, other tyres, front against rear."""

from collections.abc import Sequence
from math import tau
from typing import Any, Final

from axlewright.physics import gearing
from axlewright.rig import Columns, Rig
from axlewright.strength import Assessment, Comparison
from axlewright.views.phrases import plain, quantity

DISAGREE: Final = "FRONT AND REAR DISAGREE"
AGREE = 0.01  # front and rear may differ by this in rolling speed; common practice, no source
CRUISE = 80.0 / 3.6  # m/s


def all_gearing_lines(answer: Assessment | Comparison, system: str = "metric") -> list[str]:
    """The same of the rig as it is, and what a change adds."""
    if not isinstance(answer, Comparison):
        return gearing_lines(answer, system)
    now = gearing_lines(answer.before, system)
    return now + [line for line in gearing_lines(answer, system) if line not in now]


def mismatch_lines(lines: Sequence[str]) -> list[str]:
    """Those of the gearing lines that nobody may miss: front and rear do not turn alike."""
    return [line for line in lines if line.startswith(DISAGREE)]


def gearing_json(assessment: Assessment) -> dict[str, Any]:
    """The same in SI, whether the ratio was given or assumed."""
    columns, given = assessment.columns, assessment.rig.given
    ratio, radius = (float(columns[name][0]) for name in ("axle_ratio", "radius"))
    crawl = gearing.crawl_ratio(columns["first_ratio"][0], columns["low_ratio"][0], ratio)
    return {
        "axle_ratio": ratio,
        "ratio_given": "axle_ratio" in given,
        "crawl": float(crawl),
        "gearbox_given": {"first_ratio", "low_ratio"} <= given.keys(),
        "shaft_speed_at_cruise": {
            "value": float(gearing.shaft_speed(CRUISE, radius, ratio)),
            "unit": "rad/s",
            "at": {"value": CRUISE, "unit": "m/s"},
        },
        "front_and_rear_apart": _apart(assessment.rig, columns),
        "words": gearing_lines(assessment),
    }


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
        f"{plain(turns, 2)} a minute at {quantity(CRUISE, 'speed', system, 2)}"
    )
    if "line_top_ratio" in rig.given:  # the transfer case is straight through in high range
        top = turns * rig.given["line_top_ratio"].value
        line += f", the engine {plain(top, 2)} in its highest gear"
    else:
        line += ", and so does the engine in a gear of 1 to 1"
    line += "."
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
    apart = _apart(rig, columns)
    if apart is None:
        return []
    if abs(apart) <= AGREE:
        return ["Front and rear ratios agree, tyres counted."]
    line = (
        f"{DISAGREE}: with their tyres the two axles turn {100.0 * abs(apart):.1f} % "
        "apart. Do not lock the drive between them, and order nothing, until that is explained."
    )
    return [line]


def _apart(rig: Rig, columns: Columns) -> float | None:
    """Share by which this axle turns faster than the other; None where either ratio is missing."""
    if not {"axle_ratio", "other_ratio"} <= rig.given.keys():
        return None
    here = float(columns["axle_ratio"][0] / columns["radius"][0])
    there = float(columns["other_ratio"][0] / columns["other_hub_height"][0])
    return here / there - 1.0
