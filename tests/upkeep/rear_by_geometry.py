"""Bent and worn rear axles made by three-dimensional geometry, and what gauges would read on them.

As `axles_by_geometry`, without knuckles and rods: a wheel stands at the end of its tube. Nothing
here looks at the locator's tables.
"""

import numpy as np

from axlewright.rig import point_columns
from upkeep.axles_by_geometry import BROUGHT as FRONT
from upkeep.axles_by_geometry import (
    DEG,
    JOBS,
    SHEET,
    SIGN,
    Axles,
    _either,
    _gap,
    _past,
    _wide,
    about_x,
    about_y,
    about_z,
)

# The shares that front axles are brought to a bench with, and the rear's own for one that moved.
BROUGHT = {
    hit: {cause: front[cause] for cause in ("hub", "loose", "tube_up", "tube_back")}
    | {"moved_rear": 0.07 if hit else 0.035}
    for hit, front in FRONT.items()
}
BOTH_SIDES = ("hub", "loose", "tube_up", "tube_back")
OUT = np.array([0.0, 1.0, 0.0])


class RearSide:
    """One side of the axle, from the casting's edge to the wheel."""

    def __init__(self, side, bench, harm):
        s, n, rng = SIGN[side], bench["n"], bench["rng"]
        out = s * OUT
        turn = bench["whole"] @ about_z(s * _warp(rng, n)) @ about_x(s * _warp(rng, n))
        self.edge = (bench["tube_end"] - bench["bare"][side])[:, None] * (bench["whole"] @ out)
        turn = turn @ about_x(s * harm["slack_up"]) @ about_z(s * harm["slack_back"])
        turn = turn @ about_y(harm["turned"])
        at = harm["station"] * bench["bare"][side]
        self.kink = self.edge + at[:, None] * (turn @ out)
        before = turn
        turn = turn @ about_x(s * harm["up"]) @ about_z(s * harm["back"])
        self.end = self.kink + (bench["bare"][side] - at)[:, None] * (turn @ out)
        read_at = np.where((harm["station"] < bench["finder_at"])[:, None, None], turn, before)
        self.lie = np.arcsin((read_at @ out)[:, 2])
        made = turn @ about_x(-s * bench["camber_made"][side]) @ about_z(_warp(rng, n))
        outward = made @ out
        self.centre = self.end + (0.5 * bench["track"] - bench["tube_end"])[:, None] * outward
        self.camber = -np.arcsin(outward[:, 2])
        self.heading = np.arctan2(-s * outward[:, 0], s * outward[:, 1])
        run, shaft = self.end - self.edge, self.centre - self.edge
        shaft = shaft / np.linalg.norm(shaft, axis=1, keepdims=True)
        self.off = np.linalg.norm(run - np.sum(run * shaft, axis=1, keepdims=True) * shaft, axis=1)


def _warp(rng, n):
    """What welding leaves: 0.1 degrees is called straight (one shop's opinion)."""
    return rng.normal(0.0, 0.07 * DEG, n)


def rear_size_of(rig):
    """Sizes of a rig's axle as its owner gave or left them."""
    column = {name: float(values[0]) for name, values in point_columns(rig).items()}
    return {
        "bare": {side: column[f"tube_bare_{side}"] for side in SIGN},
        "ends": column["forging_length"],
        "track": column["track"],
        "radius": column["radius"],
    }


def harms(rng, n, blame, side):
    """Sizes of everything that can be wrong on one side; nought where it is not to blame."""

    def only(cause, size):
        return np.where(blame[f"{cause}_{side}"], size, 0.0)

    return {
        "up": only("tube_up", _either(rng, n, 0.92) * _wide(rng, n, 0.2 * DEG, 2.4 * DEG)),
        "back": only("tube_back", _either(rng, n, 0.92) * _wide(rng, n, 0.2 * DEG, 2.4 * DEG)),
        "station": rng.triangular(0.0, 0.15, 0.9, n),
        "turned": only("loose", _either(rng, n) * _wide(rng, n, 0.25 * DEG, 4.5 * DEG)),
        "slack_up": only("loose", rng.uniform(0.02, 0.5, n) * DEG),
        "slack_back": only("loose", rng.normal(0.0, 0.12, n) * DEG),
        "hub": only("hub", _wide(rng, n, 0.07 * DEG, 0.9 * DEG)),
    }


def rear_axles(size, n, seed, *, jobs_done=0.6):
    """A bench of `n` rear axles, half of them just after a hit."""
    rng = np.random.default_rng(seed)
    hit = rng.random(n) < 0.5
    blame = {}
    for cause, share in BROUGHT[True].items():
        shares = np.where(hit, share, BROUGHT[False][cause])
        for key in [f"{cause}_{side}" for side in SIGN] if cause in BOTH_SIDES else [cause]:
            blame[key] = rng.random(n) < shares
    harm = {side: harms(rng, n, blame, side) for side in SIGN}
    yaw = _either(rng, n) * _wide(rng, n, 0.12 * DEG, 1.3 * DEG)
    readings = rear_gauged(size, n, rng, harm, np.where(blame["moved_rear"], yaw, 0.0))
    done = {job: np.repeat(rng.random(-(-n // SHEET)) < jobs_done, SHEET)[:n] for job in JOBS}
    return Axles(blame=blame | {"hit": hit}, readings=readings, done=done)


def rear_gauged(size, n, rng, harm, yaw):
    """Readings and signs of axles so harmed; ``yaw`` of the whole axle, left wheel ahead."""
    made = rng.normal(0.0, 0.18 * DEG, n)
    track = size["track"] * rng.normal(1.0, 0.005, n)
    flange = 0.08 * rng.uniform(0.7, 1.3, n)
    bench = {
        "n": n,
        "rng": rng,
        "whole": about_z(-yaw),
        "track": track,
        "tube_end": 0.5 * track - size["ends"] - flange,
        "bare": {side: np.full(n, size["bare"][side]) for side in SIGN},
        "finder_at": rng.uniform(0.7, 0.95, n),
        "camber_made": {side: made + rng.normal(0.0, 0.1 * DEG, n) for side in SIGN},
    }
    sides = {side: RearSide(side, bench, harm[side]) for side in SIGN}
    finder = rng.uniform(0.07, 0.16, n) * DEG
    noise = lambda scale: rng.normal(size=n) * scale
    floor, middle = noise(0.35 * DEG), noise(0.12 * DEG)
    seen, rock = {}, {}
    for side, at in sides.items():
        s = SIGN[side]
        rock[side] = harm[side]["hub"] + np.abs(noise(0.02 * DEG))
        seen[f"rock_free_{side}"] = rock[side] * size["radius"] + noise(
            rng.uniform(0.0003, 0.0007, n)
        )
        own = at.camber + s * floor + noise(0.08 * DEG)
        seen[f"camber_out_{side}"] = own + 0.5 * rock[side] + noise(finder)
        seen[f"camber_in_{side}"] = own - 0.5 * rock[side] + noise(finder)
        seen[f"tube_angle_{side}"] = at.lie - s * floor + noise(np.hypot(finder, 0.05 * DEG))
        seen[f"heading_{side}"] = at.heading + middle + noise(0.13 * DEG)
    left, right = sides["left"], sides["right"]
    points = [left.end, left.kink, left.edge, right.edge, right.kink, right.end]
    seen["bow_up"] = _gap(points, 2) + noise(0.0010)
    seen["bow_back"] = -_gap(points, 0) + noise(0.0010)
    seen["setback"] = left.centre[:, 0] - right.centre[:, 0] + noise(0.0035)
    return seen | _signs(rng, n, sides, harm, rock, (yaw != 0.0, size["radius"]))


def _signs(rng, n, sides, harm, rock, told):
    moved, radius = told
    seen = {}
    bends = sum(np.abs(harm[side]["up"]) + 0.5 * np.abs(harm[side]["back"]) for side in SIGN)
    slack = sum(harm[side]["slack_up"] + 0.2 * np.abs(harm[side]["turned"]) for side in SIGN)
    seen["backlash_varies"] = _past(rng, bends + 0.3 * slack, 1.2 * DEG, 2.0, 0.07)
    seen["oil_metal"] = _past(rng, bends + slack, 3.0 * DEG, 2.5, 0.08)
    toe = np.abs(sides["right"].heading - sides["left"].heading)
    for side, at in sides.items():
        seen[f"seal_leak_{side}"] = _past(rng, at.off, 0.0012, 1.8, 0.08)
        moving = np.hypot(harm[side]["slack_up"], harm[side]["slack_back"])
        seen[f"weep_at_centre_{side}"] = _past(rng, moving, 0.2 * DEG, 2.0, 0.04)
        shift = 0.038 * np.abs(harm[side]["turned"])
        seen[f"witness_moved_{side}"] = _past(rng, shift, 0.0004, 1.8, 0.02)
        seen[f"hub_rough_{side}"] = _past(rng, harm[side]["hub"], 0.17 * DEG, 2.0, 0.05)
        scrub = np.maximum(np.abs(at.camber), 1.2 * toe)
        seen[f"tyre_edge_{side}"] = _past(rng, scrub, 0.8 * DEG, 1.7, 0.08)
    play = np.maximum(rock["left"], rock["right"]) * radius
    knocks = _past(rng, play, 0.005, 1.8, 0.04) | _past(rng, slack, 0.8 * DEG, 2.0, 0.0)
    seen["knock"] = knocks | (moved & (rng.random(n) < 0.35))
    return {key: value.astype(float) for key, value in seen.items()}
