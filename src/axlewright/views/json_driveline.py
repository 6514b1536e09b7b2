"""The driveline as JSON: SI whatever the reader's units."""

from dataclasses import asdict
from math import isfinite
from typing import Any

from axlewright.geometry import BuiltIn, Check, Driveline, Turned, Wedge


def driveline_json(found: Driveline) -> dict[str, Any]:
    """Everything about a driveline; part of the answer about travel."""
    return {
        "turns_on_road": found.turns_on_road,
        "judged_at": _plain(found.road, "m/s"),
        "shaft_speed": _plain(found.speed, "rad/s"),
        "double_joint": found.line.double,
        "joints": {
            "transfer_case": _plain(float(found.line.joints[0, 0]), "rad"),
            "pinion": _plain(float(found.line.joints[0, 1]), "rad"),
        },
        "as_one_joint": _plain(float(found.line.whole[0]), "rad"),
        "swing": _plain(float(found.line.swing[0]), "1"),
        "torsional": _plain(float(found.shaking.torsional[0]), "rad/s2"),
        "inertial_drive": _plain(float(found.shaking.drive[0]), "rad/s2"),
        "inertial_coast": _plain(float(found.shaking.coast[0]), "rad/s2"),
        "checks": [_check(each) for each in found.checks],
        "if_locked": [_check(each) for each in found.if_locked],
        "stances": [
            {
                "name": each.name,
                "height": _plain(each.height, "m"),
                "joints": [_plain(angle, "rad") for angle in each.joints],
                "as_one_joint": _plain(each.whole, "rad"),
                "length": _plain(each.length, "m"),
                "plunge": _plain(each.plunge, "m"),
            }
            for each in found.stances
        ],
        "whirling": {
            "speed": _plain(float(found.whirl.speed[0]), "rad/s"),
            "road": _plain(float(found.whirl.road[0]), "m/s"),
            "gears": [
                {
                    "name": name,
                    "speed": _plain(float(top[0]), "rad/s"),
                    "road": _plain(float(road[0]), "m/s"),
                }
                for name, top, road in zip(
                    found.whirl.names, found.whirl.tops, found.whirl.roads, strict=True
                )
            ],
        },
        "built_in": None if found.built_in is None else _built_in(found.built_in),
        "wedges": [wedge_json(each) for each in found.wedges],
        "measured": list(found.measured),
    }


def _built_in(built: BuiltIn) -> dict[str, Any]:
    return {
        **{
            name: _plain(getattr(built, name), "rad")
            for name in (
                *("caster", "pinion", "present", "caster_wanted", "pinion_wanted", "wanted"),
                "pinion_for_double",
            )
        },
        "forgings": _plain(built.forgings, "rad", built.band),
        "for_pinion": _turned(built.for_pinion),
        "for_caster": _turned(built.for_caster),
        "steps": [_turned(step) for step in built.steps],
    }


def wedge_json(wedge: Wedge) -> dict[str, Any]:
    """One wedge in SI."""
    return {
        "for": wedge.of,
        "turn": _plain(wedge.turn, "rad"),
        "pad": _plain(wedge.pad, "m"),
        "thicker": _plain(wedge.thicker, "m", wedge.band),
        "per_degree": _plain(wedge.per_degree, "m"),
        "thick_end": wedge.thick_end,
        "too_steep": wedge.too_steep,
    }


def _turned(step: Turned) -> dict[str, Any]:
    units = {"torsional": "rad/s2", "coast": "rad/s2", "trail": "m"}
    told: dict[str, Any] = {
        name: _plain(value, units.get(name, "rad"))
        for name, value in asdict(step).items()
        if name != "joints"
    }
    return {**told, "joints": [_plain(angle, "rad") for angle in step.joints]}


def _check(check: Check) -> dict[str, Any]:
    limit = check.limit
    unit = "rad/s2" if limit.unit == "1/s2" else limit.unit
    return {
        "what": check.what,
        **_plain(check.value, unit, check.band),
        "limit": {
            "key": limit.key,
            "kind": limit.kind,
            "value": check.allowed,
            "unit": unit,
            "scope": limit.scope,
            "as_printed": limit.as_printed,
            "source": limit.origin.source.title,
        },
        "standing": check.standing,
    }


def _plain(value: float, unit: str, band: tuple[float, float] | None = None) -> dict[str, Any]:
    known = band is not None and all(isfinite(end) for end in band)
    told: dict[str, Any] = {
        "value": value if isfinite(value) else None,
        "unit": unit,
        "band": list(band) if band is not None and known else None,
    }
    if not isfinite(value):
        told["reason"] = "the axle cannot get there"
    return told
