"""The travel of an axle as JSON: SI whatever the reader's units."""

from dataclasses import asdict
from importlib.metadata import version
from math import isfinite
from typing import Any

from axlewright.geometry import Clearance, Driveline, Fix, Limit, Measures, Travel
from axlewright.rig import findings, stops
from axlewright.tables import fingerprint
from axlewright.views.json_driveline import driveline_json

VERSION = 1
UNITS = {
    "caster": "rad",
    "pinion": "rad",
    "bump_steer": "rad",
    "roll_steer": "1",
    "shift": "m",
    "off_centre": "rad",
    "slope_apart": "rad",
    "roll_centre": "m",
    "anti": "1",
    "instant_ahead": "m",
    "instant_up": "m",
    "parked": "N",
    "stop_room": "m",
}


def travel_json(
    before: Travel, after: Travel | None = None, line: Driveline | None = None
) -> dict[str, Any]:
    """Everything about a study, or about a rig before and after changes."""
    head: dict[str, Any] = {
        "axlewright_travel": VERSION,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "caution": "decision support, not a certificate",
    }
    if line is not None:
        head["driveline"] = driveline_json(line)
    if after is None:
        return {**head, **_study(before)}
    return {**head, "before": _study(before), "after": _study(after)}


def _study(found: Travel) -> dict[str, Any]:
    rig = found.rig
    return {
        "rig": {
            "name": rig.name,
            "axle": rig.axle,
            "digest": rig.digest,
            "changes": [*rig.changes],
        },
        "stop": bool(stops(findings(rig))),
        "places": {"taped": found.taped_places, "of": found.places},
        "measures": _measures(found.now, found.bands),
        "as_taped": _measures(found.taped, {}),
        "stances": [
            {
                "name": each.name,
                **{
                    name: _plain(value, "rad" if name in {"caster", "pinion", "steers"} else "m")
                    for name, value in asdict(each).items()
                    if name != "name"
                },
            }
            for each in found.stances
        ],
        "limits": {way: [_limit(each) for each in every] for way, every in found.limits.items()},
        "wind_up": {
            "twist": [_plain(float(each), "rad") for each in found.wind_up.twist.reshape(-1)],
            "force": _plain(float(found.wind_up.force[0]), "N"),
            "rise": _plain(float(found.wind_up.rise[0]), "m"),
        },
        "parked": {"rod": found.parked.rod, "force": _plain(found.parked.force, "N")},
        "room": {
            "road": _room(found.road, found.bands.get("touch")),
            "trail": _room(found.trail),
        },
        "cures": [_fix(each) for each in found.fixes],
    }


def _measures(now: Measures, bands: Any) -> dict[str, Any]:  # noqa: ANN401  (a mapping of pairs)
    return {name: _plain(getattr(now, name), unit, bands.get(name)) for name, unit in UNITS.items()}


def _plain(value: float, unit: str, band: tuple[float, float] | None = None) -> dict[str, Any]:
    told: dict[str, Any] = {
        "value": value if isfinite(value) else None,
        "unit": unit,
        "band": None if band is None else list(band),
    }
    if not isfinite(value):
        told["reason"] = "never reached" if value == float("inf") else "this axle has none"
    return told


def _limit(each: Limit) -> dict[str, Any]:
    return {"what": each.what, "at": _plain(each.at, "m"), "ends_the_travel": each.hard}


def _room(room: Clearance, touch: tuple[float, float] | None = None) -> dict[str, Any]:
    return {
        "pressure": _plain(room.pressure, "Pa"),
        "hub_height": _plain(room.radius, "m"),
        "lowest": {"what": room.lowest.what, "height": _plain(room.lowest.height, "m")},
        "edges": [
            {
                "what": edge.what,
                "across": _plain(edge.across, "m"),
                "ahead": _plain(edge.ahead, "m"),
                "height": _plain(edge.height, "m"),
                "catches": list(edge.catches),
            }
            for edge in room.edges
        ],
        "outline": {"unit": "m", "corners": [list(each) for each in room.outline.corners]},
        "area": _plain(room.outline.area, "m2"),
        "touch": _plain(room.touch, "1", touch),
        "approach": _plain(room.approach, "rad"),
        "breakover": _plain(room.breakover, "rad"),
    }


def _fix(fix: Fix) -> dict[str, Any]:
    unit = "rad" if fix.key == "turned_forgings" else "m"
    return {
        "key": fix.key,
        "amount": _plain(fix.amount, unit),
        "refused": fix.refused,
        "change": dict(fix.steps),
        "moves": [
            {
                "measure": each.measure,
                "before": _plain(each.before, UNITS[each.measure]),
                "after": _plain(each.after, UNITS[each.measure]),
                "better": each.better,
            }
            for each in fix.shifts
        ],
    }
