"""A cure as a change to the rig file: which fields it sets, and to what."""

from collections.abc import Mapping
from typing import Final

import numpy as np

from axlewright.errors import AxlewrightError
from axlewright.geometry.points import SIDES, Hardpoints
from axlewright.rig import POINTS, Rig, change_from_text, changed_rig

SAME: Final = 5e-5  # m: a place or length that moved less is as it was
TURNED: Final = "travel.forgings_turned"


def cure_steps(rig: Rig, points: Hardpoints, made: Hardpoints, forgings: float) -> dict[str, str]:
    """Fields of the rig file, by path, with what they are after a cure; none where it cannot be.

    ``made`` are the points after it; ``forgings`` how far the end forgings were turned, rad. A
    place that nobody taped stays an "about".
    """
    steps: dict[str, str] = {}
    if forgings:
        steps[TURNED] = _degrees(float(points.columns["travel_forgings_turned"][0]) + forgings)
    else:
        steps |= _places(rig, points, made)
    for old, new in zip(points.rods, made.rods, strict=True):
        by = float(new.length[0] - old.length[0])
        if abs(by) > SAME:
            path = f"longer.{old.name.replace('arm_far', 'arm')}"
            steps[path] = _mm(float(points.columns[f"longer_{old.name}"][0]) + by)
    gap = float(made.columns["travel_bump_gap"][0])
    if abs(gap - float(points.columns["travel_bump_gap"][0])) > SAME:
        steps["travel.bump_gap"] = _mm(gap)
    return steps if _goes(rig, steps) else {}


def _places(rig: Rig, points: Hardpoints, made: Hardpoints) -> dict[str, str]:
    steps = {}
    for point in POINTS:
        for side in SIDES if point.sided else ("",):
            name = f"{point.name}_{side}".rstrip("_")
            if name not in points.at:
                continue
            if np.max(np.abs(made.at[name][0] - points.at[name][0])) < SAME:
                continue
            ahead, left, up = made.at[name][0]
            up += float(points.taped_radius[0])
            about = "" if f"point_{name}_up" in rig.given else "about "
            steps[f"points.{point.name}.{side}".rstrip(".")] = (
                f"{about}{_mm(abs(ahead))} {'behind' if ahead < 0.0 else 'ahead'}, "
                f"{_mm(abs(left))} {'right' if left < 0.0 else 'left'}, {_mm(up)} up"
            )
    return steps


def _goes(rig: Rig, steps: Mapping[str, str]) -> bool:
    """Whether the rig file takes these values."""
    if not steps:
        return False
    rows = [f'[[step]]\nset = "{path}"\nto = "{value}"\n' for path, value in steps.items()]
    try:
        changed_rig(rig, change_from_text('axlewright_change = 1\nname = "x"\n' + "".join(rows)))
    except AxlewrightError:
        return False
    return True


def _mm(length: float) -> str:
    return f"{1e3 * length:.1f} mm"


def _degrees(angle: float) -> str:
    return f"{np.degrees(angle):.2f} deg"
