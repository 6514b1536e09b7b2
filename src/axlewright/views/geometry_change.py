"""What a change moves in the geometry, as lines beside what it does to the parts.

The kinematics are loaded only where a number changed that they read.
"""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from axlewright.rig import Rig, geometry_columns
from axlewright.strength import Comparison
from axlewright.views.phrases import quantity

if TYPE_CHECKING:
    from axlewright.geometry import GeometryMoved

READ: Final = ("point_", "travel_", "longer_", "line_")  # how columns begin that geometry reads
WORDS: Final = ("held_by.", "steering.", "track_bar.", "driveline.")  # and words
SAME: Final = 1e-9  # m, rad or N/m: what moved less is as it was
ALSO: Final = ("radius", "track", "wheelbase", "spring_rate")
NAMES: Final[Mapping[str, str]] = {
    "caster": "caster at ride",
    "pinion": "pinion, up, against where it was taped",
    "bump_steer": "steering itself over 50 mm of bump or droop",
    "toe": "toe-in that the rods give at ride",
    "shift": "axle off the middle",
    "stop_room": "gap to the bump stop",
    "parked": "worst pull of a rod, parked",
    "hangs": "how far it hangs",
    "lowest": "room under the lowest point",
    "approach": "steepest ramp it meets",
    "crest": "sharpest crest it clears",
    "joint_case": "shaft joint at the transfer case",
    "joint_pinion": "shaft joint at the pinion",
}
UNITS: Final[Mapping[str, str]] = {
    **dict.fromkeys(NAMES, "rad"),
    **dict.fromkeys(("shift", "stop_room", "hangs", "lowest"), "m"),
    "parked": "N",
}


def moved_by(comparison: Comparison) -> "GeometryMoved | None":
    """What moves, None where nothing changed that the geometry reads."""
    before, after = comparison.before.rig, comparison.after.rig
    if not _touched(before, after):
        return None
    from axlewright.geometry import geometry_moved

    return geometry_moved(before, after)


def geometry_lines(comparison: Comparison, system: str = "metric") -> list[str]:
    """Lines for what moves: what got worse first."""
    found = moved_by(comparison)
    if found is None:
        return []
    if found.refused:
        return [f"Geometry: cannot be told. {found.refused}"]
    if not found.moved:
        return []
    lines = []
    for way, word in ((False, "worse"), (True, "better"), (None, "moved")):
        told = [
            f"{NAMES[each.measure]} {_shown(each.measure, each.before, system)} to "
            f"{_shown(each.measure, each.after, system)}"
            for each in found.moved
            if each.better is way
        ]
        if told:
            lines.append(f"Geometry, {word}: {'; '.join(told)}.")
    return lines


def geometry_json(comparison: Comparison) -> list[dict[str, Any]]:
    """The same for a program, SI; middle values, so without a band."""
    found = moved_by(comparison)
    if found is None:
        return []
    return [
        {
            "measure": each.measure,
            "before": _plain(each.before, each.measure),
            "after": _plain(each.after, each.measure),
            "better": each.better,
        }
        for each in found.moved
    ]


def _touched(before: Rig, after: Rig) -> bool:
    words = {**before.words, **after.words}
    if any(before.words.get(key) != after.words.get(key) for key in words if key.startswith(WORDS)):
        return True
    one, two = geometry_columns(before), geometry_columns(after)
    names = [name for name in two if name.startswith(READ) or name in ALSO]
    return any(
        name not in one or not abs(float(one[name][0]) - float(two[name][0])) <= SAME
        for name in names
    )


def _plain(value: float, measure: str) -> dict[str, Any]:
    return {"value": value, "unit": UNITS[measure], "band": None}


def _shown(measure: str, value: float, system: str) -> str:
    unit = UNITS[measure]
    if unit == "rad":
        told = f"{np.degrees(value):.1f} deg"
        return f"{np.degrees(value):.2f} deg" if measure == "toe" else told.replace("-0.0 ", "0.0 ")
    if measure == "shift":
        way = "left" if value > 0.0 else "right"
        small = abs(value) < 5e-4
        return "0" if small else f"{quantity(abs(value), 'length', system, 2)} {way}"
    return quantity(value, "length" if unit == "m" else "force", system, 3)
