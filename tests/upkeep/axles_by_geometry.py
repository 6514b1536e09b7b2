"""Bent and worn axles made by three-dimensional geometry, and what gauges would read on them.

Nothing here looks at the locator's tables: how often, how large and how noisy are numbers of its
own, and a bend, a bowed rod or a turned forging is a rotation or a length in space; the rods are
closed by Newton's method.
"""

from dataclasses import dataclass
from math import radians

import numpy as np

from axlewright.rig import point_columns

DEG = radians(1.0)
SIGN = {"left": 1.0, "right": -1.0}
# Shares of axles brought to a bench with each, a side where it has sides: common practice, no
# source; not those of the table.
BROUGHT = {
    True: {
        "tie_rod": 0.14,
        "drag_link": 0.07,
        "hub": 0.035,
        "pivot": 0.035,
        "moved": 0.055,
        "loose": 0.03,
        "knuckle": 0.045,
        "tube_up": 0.1,
        "tube_back": 0.045,
        "forging": 0.05,
    },
    False: {
        "tie_rod": 0.035,
        "drag_link": 0.01,
        "hub": 0.09,
        "pivot": 0.11,
        "moved": 0.035,
        "loose": 0.018,
        "knuckle": 0.015,
        "tube_up": 0.035,
        "tube_back": 0.012,
        "forging": 0.022,
    },
}
SHEET = 25  # axles in a row on which the same jobs were done
BOTH_SIDES = ("hub", "pivot", "loose", "knuckle", "tube_up", "tube_back", "forging")
JOBS = {
    "driver": ("wheel_off",),
    "tyres": ("tyre_edge_left", "tyre_edge_right"),
    "knock": ("knock",),
    "rods": ("tie_rod_bow", "drag_link_bow"),
    "tubes": ("tube_angle_left", "tube_angle_right"),
    "toe": ("toe_change",),
    "spin": ("hub_rough_left", "hub_rough_right"),
    "wipe": (
        "seal_leak_left",
        "seal_leak_right",
        "weep_at_centre_left",
        "weep_at_centre_right",
        "witness_moved_left",
        "witness_moved_right",
    ),
    "rock": ("rock_braked_left", "rock_braked_right", "rock_free_left", "rock_free_right"),
    "square": ("setback",),
    "camber": ("camber_out_left", "camber_out_right", "camber_in_left", "camber_in_right"),
    "wheels": ("heading_left", "heading_right"),
    "bosses": ("included_left", "included_right", "caster_left", "caster_right"),
    "string": ("bow_up", "bow_back"),
    "oil": ("oil_metal",),
    "backlash": ("backlash_varies",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Axles:
    """Cases: blame by cause, every reading and sign, and which jobs were done; each (n,)."""

    blame: dict
    readings: dict
    done: dict


def about_x(angle):
    return _turn(angle, 1, 2)


def about_y(angle):
    return _turn(angle, 2, 0)


def about_z(angle):
    return _turn(angle, 0, 1)


def _turn(angle, one, two):
    """A right-handed turn that takes axis `one` to axis `two`."""
    angle = np.asarray(angle, dtype=float)
    made = np.zeros((*angle.shape, 3, 3))
    made[..., range(3), range(3)] = 1.0
    made[..., one, one] = made[..., two, two] = np.cos(angle)
    made[..., two, one], made[..., one, two] = np.sin(angle), -np.sin(angle)
    return made


def about(axis, angle):
    """A turn about unit axes (n, 3): Rodrigues' formula."""
    cross = np.zeros((len(axis), 3, 3))
    cross[:, 0, 1], cross[:, 0, 2], cross[:, 1, 2] = -axis[:, 2], axis[:, 1], -axis[:, 0]
    cross -= np.swapaxes(cross, 1, 2).copy()
    sine, versine = np.sin(angle)[:, None, None], (1.0 - np.cos(angle))[:, None, None]
    return np.eye(3) + sine * cross + versine * (cross @ cross)


def _along(turn, x, y, z):
    return np.einsum("nij,nj->ni", turn, np.stack(np.broadcast_arrays(x, y, z), axis=-1))


class Side:
    """One side of the axle, from the casting's edge to the wheel."""

    def __init__(self, side, bench, harm):
        self.s = s = SIGN[side]
        size, n = bench.size, bench.n
        out = np.array([0.0, s, 0.0])
        edge = bench.tube_end - size["bare"][side]
        self.edge = edge * (bench.whole @ out)
        turn = bench.whole @ about_z(s * bench.warp()) @ about_x(s * bench.warp())
        turn = turn @ about_x(s * harm["slack_up"]) @ about_z(s * harm["slack_back"])
        turn = turn @ about_y(harm["turned"])
        at = harm["station"] * size["bare"][side]
        self.kink = self.edge + at[:, None] * (turn @ out)
        self.before = turn
        turn = turn @ about_x(s * harm["up"]) @ about_z(s * harm["back"])
        rest = (size["bare"][side] - at)[:, None]
        self.end = self.kink + rest * (turn @ out)
        found = harm["station"] < bench.finder_at
        self.read_at = np.where(found[:, None, None], turn, self.before)
        turn = turn @ about_x(s * harm["top_in"]) @ about_y(-harm["twist"])
        self.forging = turn
        self.pin = self.end + bench.forging * (turn @ out)
        lean, back = bench.lean, bench.caster
        axis = np.stack(np.broadcast_arrays(-np.tan(back), -s * np.tan(lean), np.ones(n)), axis=-1)
        self.axis = axis / np.linalg.norm(axis, axis=1, keepdims=True)
        bent = about_z(harm["arm"]) @ about_x(-s * (harm["spindle"] + bench.camber_made[side]))
        self.spindle = bent @ out
        self.ahead = bench.ahead
        self.arm, self.stand_out = bench.arm, 0.5 * (bench.track - 2 * bench.kingpin)

    def knuckle(self, heading):
        return self.forging @ about(self.axis, heading)

    def arm_end(self, heading, ahead):
        return self.pin + _along(self.knuckle(heading), ahead * self.arm, -self.s * 0.03, 0.0)

    def wheel(self, heading):
        """Wheel centre, camber and heading."""
        outward = np.einsum("nij,nj->ni", self.knuckle(heading), self.spindle)
        camber = -np.arcsin(outward[:, 2])
        turned = np.arctan2(-self.s * outward[:, 0], self.s * outward[:, 1])
        return self.pin + self.stand_out[:, None] * outward, camber, turned

    def boss(self):
        """Inclination and caster of the steering axis."""
        axis = np.einsum("nij,nj->ni", self.forging, self.axis)
        return np.arctan2(-self.s * axis[:, 1], axis[:, 2]), np.arctan2(-axis[:, 0], axis[:, 2])


class Bench:
    """A bench full of axles of one rig: true sizes near those that the owner gave."""

    def __init__(self, size, n, rng):
        self.size, self.n, self.rng = size, n, rng
        self.tube_end = size["tube_end"]
        self.forging, self.kingpin = size["forging"], size["kingpin"]
        self.track = size["track"] * rng.normal(1.0, 0.005, n)
        self.arm = size["arm"] * np.exp(rng.normal(0.0, 0.08, n))
        self.ahead = size["ahead"]
        self.lean = np.full(n, size["lean"])
        self.caster = np.full(n, size["caster"])
        self.finder_at = rng.uniform(0.7, 0.95, n)
        made = rng.normal(0.0, 0.18 * DEG, n)
        self.camber_made = {s: made + rng.normal(0.0, 0.1 * DEG, n) for s in SIGN}
        self.whole = np.broadcast_to(np.eye(3), (n, 3, 3))

    def warp(self):
        """What welding leaves: 0.1 degrees is called straight (one shop's opinion)."""
        return self.rng.normal(0.0, 0.07 * DEG, self.n)

    def moved(self, yaw):
        self.whole = about_z(-yaw)


NOTHING = (
    *("slack_up", "slack_back", "turned", "up", "back", "top_in", "twist", "arm", "spindle"),
    *("pivot", "hub"),
)


class Still:
    """Draws that are all at their middle: no noise, nothing unlike the owner's sizes."""

    def normal(self, middle=0.0, _scale=1.0, size=None):
        return np.broadcast_to(np.asarray(middle, dtype=float), size).copy()

    def uniform(self, low, high, size):
        return np.full(size, 0.5 * (low + high))

    def random(self, size):
        return np.full(size, 0.5)


def _wide(rng, n, low, high):
    """Log-uniform."""
    return np.exp(rng.uniform(np.log(low), np.log(high), n))


def _either(rng, n, share=0.5):
    return np.where(rng.random(n) < share, 1.0, -1.0)


def harms(rng, n, blame, side):
    """Sizes of everything that can be wrong on one side; nought where it is not to blame."""
    harm = dict.fromkeys(NOTHING, np.zeros(n))

    def only(cause, size):
        return np.where(blame[f"{cause}_{side}"], size, 0.0)

    harm["up"] = only("tube_up", _either(rng, n, 0.92) * _wide(rng, n, 0.2 * DEG, 2.4 * DEG))
    harm["back"] = only("tube_back", _either(rng, n, 0.92) * _wide(rng, n, 0.2 * DEG, 2.4 * DEG))
    harm["station"] = rng.triangular(0.0, 0.15, 0.9, n)
    harm["turned"] = only("loose", _either(rng, n) * _wide(rng, n, 0.25 * DEG, 4.5 * DEG))
    harm["slack_up"] = only("loose", rng.uniform(0.02, 0.5, n) * DEG)
    harm["slack_back"] = only("loose", rng.normal(0.0, 0.12, n) * DEG)
    harm["top_in"] = only("forging", _either(rng, n, 0.8) * _wide(rng, n, 0.25 * DEG, 2.2 * DEG))
    harm["twist"] = only("forging", rng.normal(0.0, 0.8, n) * DEG)
    mainly = rng.random(n) < 0.5
    large = _either(rng, n) * _wide(rng, n, 0.25 * DEG, 3.2 * DEG)
    small = rng.normal(0.0, 0.5, n) * DEG
    harm["spindle"] = only("knuckle", np.where(mainly, large, small))
    harm["arm"] = only("knuckle", np.where(mainly, small, large))
    harm["pivot"] = only("pivot", _wide(rng, n, 0.1 * DEG, 1.3 * DEG))
    harm["hub"] = only("hub", _wide(rng, n, 0.07 * DEG, 0.9 * DEG))
    return harm


def axles(size, n, seed, *, jobs_done=0.6):
    """A bench of `n` axles, half of them just after a hit."""
    rng = np.random.default_rng(seed)
    hit = rng.random(n) < 0.5
    blame = {}
    for cause, share in BROUGHT[True].items():
        shares = np.where(hit, share, BROUGHT[False][cause])
        for key in [f"{cause}_{side}" for side in SIGN] if cause in BOTH_SIDES else [cause]:
            blame[key] = rng.random(n) < shares
    readings = _readings(size, n, rng, blame)
    done = {job: np.repeat(rng.random(-(-n // SHEET)) < jobs_done, SHEET)[:n] for job in JOBS}
    return Axles(blame=blame | {"hit": hit}, readings=readings, done=done)


def size_of(rig):
    """Sizes of a rig's axle as its owner gave or left them."""
    column = {name: float(values[0]) for name, values in point_columns(rig).items()}
    half = 0.5 * column["kingpin_spacing"]
    return {
        "bare": {side: column[f"tube_bare_{side}"] for side in SIGN},
        "tube_end": half - column["forging_length"],
        "forging": column["forging_length"],
        "kingpin": half,
        "track": column["track"],
        "arm": column["steering_arm"],
        "ahead": 1.0 if rig.words["steering.tie_rod_ahead"] == "yes" else -1.0,
        "lean": column["inclination"],
        "caster": column["caster"],
        "link": column["drag_link_length"],
        "link_side": "left" if rig.words["steering.drive_side"] == "right" else "right",
        "radius": column["radius"],
    }


def _readings(size, n, rng, blame):
    harm = {side: harms(rng, n, blame, side) for side in SIGN}
    yaw = np.where(blame["moved"], _either(rng, n) * _wide(rng, n, 0.12 * DEG, 1.3 * DEG), 0.0)
    aside = np.where(blame["moved"], rng.normal(0.0, 0.006, n), 0.0)
    bow = {
        k: np.where(blame[k], _wide(rng, n, 0.005, 0.065), 0.0) for k in ("tie_rod", "drag_link")
    }
    return gauged(size, n, rng, harm, {"yaw": yaw, "aside": aside, "bow": bow})


def gauged(size, n, rng, harm, whole):
    """Readings and signs of axles so harmed, rods closed; ``whole`` is what has no side."""
    bench = Bench(size, n, rng)
    toe = rng.normal(0.0, 0.1 * DEG, n)
    straight = dict.fromkeys(NOTHING, np.zeros(n)) | {"station": np.full(n, 0.5)}
    sound = {side: Side(side, bench, straight) for side in SIGN}
    link_ahead = _either(rng, n)
    set_to = {"left": -0.5 * toe, "right": 0.5 * toe}
    rod = np.linalg.norm(_ends(sound, set_to, bench.ahead), axis=1)
    held = size["link_side"]
    holder = sound[held].arm_end(set_to[held], link_ahead)
    across = -SIGN[held] * size["link"] * np.cos(5 * DEG)
    frame = holder + np.array([0.0, across, size["link"] * np.sin(5 * DEG)])
    factor, bow = rng.uniform(2.0, 8.0 / 3.0, n), whole["bow"]
    rod = rod - factor * bow["tie_rod"] ** 2 / rod
    link = size["link"] - factor * bow["drag_link"] ** 2 / size["link"]
    bench.moved(whole["yaw"])
    bent = {side: Side(side, bench, harm[side]) for side in SIGN}
    frame = frame - np.stack([np.zeros(n), whole["aside"], np.zeros(n)], axis=1)
    headings = _closed(bent, bench, set_to, rod, link, frame, held, link_ahead)
    return _gauges(size, rng, bench, bent, harm, headings, (toe, bow, whole["yaw"] != 0.0))


def _ends(sides, headings, ahead):
    return sides["left"].arm_end(headings["left"], ahead) - sides["right"].arm_end(
        headings["right"], ahead
    )


def _closed(sides, bench, start, rod, link, frame, held, link_ahead):
    """Turn both knuckles until rod and link have their lengths: Newton, numerical slopes."""

    def miss(turned):
        apart = np.linalg.norm(_ends(sides, turned, bench.ahead), axis=1) - rod
        holder = sides[held].arm_end(turned[held], link_ahead)
        return np.stack([apart, np.linalg.norm(holder - frame, axis=1) - link], axis=1)

    turned = dict(start)
    for _ in range(6):
        now = miss(turned)
        slopes = [
            (miss(turned | {side: turned[side] + 1e-6}) - now) / 1e-6 for side in ("left", "right")
        ]
        step = np.linalg.solve(np.stack(slopes, axis=2), now[..., None])[..., 0]
        turned = {"left": turned["left"] - step[:, 0], "right": turned["right"] - step[:, 1]}
    assert np.max(np.abs(miss(turned))) < 1e-9
    return turned


def _gap(points, axis):
    """Widest gap from a string between the first point and the last, along one axis, signed."""
    y = np.stack([p[:, 1] for p in points])
    v = np.stack([p[:, axis] for p in points])
    string = v[0] + (v[-1] - v[0]) * (y - y[0]) / (y[-1] - y[0])
    gaps = string - v
    return np.take_along_axis(gaps, np.argmax(np.abs(gaps), axis=0)[None], axis=0)[0]


def _gauges(size, rng, bench, sides, harm, headings, told):
    toe, bow, moved = told
    n = bench.n
    finder = rng.uniform(0.07, 0.16, n) * DEG
    noise = lambda scale: rng.normal(size=n) * scale
    floor, nose = noise(0.35 * DEG), noise(0.45 * DEG)
    misprint = noise(0.22 * DEG)  # of the included angle that the owner was given
    seen, wheel, rock = {}, {}, {}
    for side, at in sides.items():
        wheel[side] = at.wheel(headings[side])
        s = SIGN[side]
        pivot = harm[side]["pivot"] + np.abs(noise(0.03 * DEG))
        hub = harm[side]["hub"] + np.abs(noise(0.02 * DEG))
        rock[side] = pivot + hub
        tape = rng.uniform(0.0003, 0.0007, n)
        seen[f"rock_braked_{side}"] = pivot * size["radius"] + noise(tape)
        seen[f"rock_free_{side}"] = rock[side] * size["radius"] + noise(tape)
        own = wheel[side][1] + s * floor + noise(0.08 * DEG)
        seen[f"camber_out_{side}"] = own + 0.5 * rock[side] + noise(finder)
        seen[f"camber_in_{side}"] = own - 0.5 * rock[side] + noise(finder)
        lie = np.arcsin((at.read_at @ np.array([0.0, s, 0.0]))[:, 2])
        seen[f"tube_angle_{side}"] = lie - s * floor + noise(np.hypot(finder, 0.05 * DEG))
        lean, caster = at.boss()
        given = size["lean"] + misprint
        seen[f"included_{side}"] = wheel[side][1] + lean - given + noise(1.7 * finder)
        seen[f"caster_{side}"] = (
            caster - size["caster"] + nose + noise(np.hypot(1.5 * finder, 0.2 * DEG))
        )
    left, right = sides["left"], sides["right"]
    points = [left.end, left.kink, left.edge, right.edge, right.kink, right.end]
    seen["bow_up"] = _gap(points, 2) + noise(0.0010)
    seen["bow_back"] = -_gap(points, 0) + noise(0.0010)
    seen["setback"] = wheel["left"][0][:, 0] - wheel["right"][0][:, 0] + noise(0.0035)
    middle = noise(0.15 * DEG)
    for side in SIGN:
        seen[f"heading_{side}"] = wheel[side][2] + middle + noise(0.13 * DEG)
    now = wheel["right"][2] - wheel["left"][2]
    seen["toe_change"] = now - toe + noise(0.14 * DEG)
    ratio = rng.uniform(14.0, 20.0, n)
    seen["wheel_off"] = -ratio * 0.5 * (wheel["left"][2] + wheel["right"][2]) + noise(3.8 * DEG)
    for key in ("tie_rod", "drag_link"):
        seen[f"{key}_bow"] = np.abs(bow[key] + noise(0.0015))
    camber = {side: np.abs(wheel[side][1]) for side in SIGN}
    return seen | _signs(rng, n, sides, harm, rock, (camber, now, moved, size["radius"]))


def _past(rng, size, usual, factor, otherwise):
    """Whether a size is past a threshold that differs from axle to axle, or it shows anyway."""
    threshold = usual * np.exp(rng.normal(0.0, np.log(factor), np.shape(size)))
    return (size > threshold) | (rng.random(np.shape(size)) < otherwise)


def _signs(rng, n, sides, harm, rock, told):
    camber, toe, moved, radius = told
    seen = {}
    bends = sum(np.abs(harm[side]["up"]) + 0.5 * np.abs(harm[side]["back"]) for side in SIGN)
    slack = sum(harm[side]["slack_up"] + 0.2 * np.abs(harm[side]["turned"]) for side in SIGN)
    seen["backlash_varies"] = _past(rng, bends + 0.3 * slack, 1.2 * DEG, 2.0, 0.07)
    seen["oil_metal"] = _past(rng, bends + slack, 3.0 * DEG, 2.5, 0.08)
    for side, at in sides.items():
        shaft = (at.pin - at.edge) / np.linalg.norm(at.pin - at.edge, axis=1, keepdims=True)
        run = at.end - at.edge
        off = run - np.sum(run * shaft, axis=1, keepdims=True) * shaft
        seen[f"seal_leak_{side}"] = _past(rng, np.linalg.norm(off, axis=1), 0.0012, 1.8, 0.08)
        moving = np.hypot(harm[side]["slack_up"], harm[side]["slack_back"])
        seen[f"weep_at_centre_{side}"] = _past(rng, moving, 0.2 * DEG, 2.0, 0.04)
        shift = 0.038 * np.abs(harm[side]["turned"])
        seen[f"witness_moved_{side}"] = _past(rng, shift, 0.0004, 1.8, 0.02)
        seen[f"hub_rough_{side}"] = _past(rng, harm[side]["hub"], 0.17 * DEG, 2.0, 0.05)
        scrub = np.maximum(camber[side], 1.2 * np.abs(toe))
        seen[f"tyre_edge_{side}"] = _past(rng, scrub, 0.8 * DEG, 1.7, 0.08)
    play = np.maximum(rock["left"], rock["right"]) * radius
    knocks = _past(rng, play, 0.005, 1.8, 0.04) | _past(rng, slack, 0.8 * DEG, 2.0, 0.0)
    seen["knock"] = knocks | (moved & (rng.random(n) < 0.4))
    return {key: value.astype(float) for key, value in seen.items()}
