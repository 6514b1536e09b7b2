"""A coarse estimate of what wears out first, from the same cases as the bad moments.

Each case comes as an exponential spectrum: its reference hardness is passed once in 1,000 km of
hard trail, smaller ones more often. Trips, ground and rainflow will replace this.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np

from axlewright.duty import CASES, hard_trail_cycles, hard_trail_share, live_cases
from axlewright.physics import bearing, cross_joint, weld_fatigue
from axlewright.rig import Column, Columns, Words
from axlewright.strength.binding import bolt_force
from axlewright.strength.housing import Housing, tube_sections
from axlewright.strength.parts_joint import trunnion_limit
from axlewright.tables import weld_detail

SIDES = ("left", "right")
TARGET_KM = 50_000.0
MENDED = 0.7  # category of a weld mended in the field against a fresh one; memory
CORNERS = 0.01  # share of the distance in hard corners
HARD_CORNER = 0.5  # of a wheel's load, sideways, as often one way as the other
SHOCKS = 1.6  # rough ground on top of the smooth load of a hub; memory
MEAN_PULL = 0.15  # usual torque of a driven wheel over what its grip allows; memory
MEAN_BEND = 0.07  # usual angle of a wheel joint, rad; memory
RATED = 0.25  # rated torque of a cross joint over what breaks its trunnions; memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Wear:
    """One thing that is used up: its life in km of this owner's use, (n,)."""

    part: str
    mode: str
    life_km: Column
    slope: float
    basis: str


@cache
def cycles() -> Column:
    """Load cycles of every live case in 1,000 km of hard trail."""
    return np.array([hard_trail_cycles(case.key) for case in live_cases()])


def wear_of(columns: Columns, words: Words, housing: Housing) -> tuple[Wear, ...]:
    """Every life that can be estimated, in no order."""
    per_km = _per_km(columns, words)
    out: list[Wear] = []
    root = weld_detail("load_carrying_root").category
    for side in SIDES:
        whole, at_end = (tube_sections(columns, side, at) for at in ("", "end"))
        spots = [
            ("joint", f"tube_joint_{side}", "weld to the centre cracks", "tube_in_casting"),
            ("end", f"end_forging_{side}", "weld to the tube cracks", "tube_to_end_forging"),
            ("seat", f"tube_{side}", "cracks at the spring seat's weld", "pad_on_tube_to_100mm"),
        ]
        if words["held_by.arms"] != "leaves":
            spots.append(
                (
                    "arm",
                    f"tube_{side}",
                    "cracks at the arm bracket's weld",
                    "plate_along_tube_to_100mm",
                )
            )
        for station, part, mode, detail in spots:
            actions, tube = housing.actions(station, side), at_end if station == "end" else whole
            stress = np.hypot(
                actions[..., 3] / tube["modulus_up"][:, None],
                actions[..., 5] / tube["modulus"][:, None],
            )
            out.append(_weld(columns, part, mode, stress, weld_detail(detail).category, per_km))
        out.append(_bearing(columns, words, side, per_km))
        if words["rig.axle"] == "front":
            out.append(_joint(columns, words, side, per_km))
        for rod, mode in (("lower_arm", "cracks at its weld"), *_upper_weld(words)):
            if f"{rod}_{side}" not in housing.tension:
                continue
            arm = f"{rod}_{side}"
            height = columns["arm_bracket_height"]
            force = bolt_force(housing.bound, arm, housing.tension[arm], height)
            stress = np.abs(force) * _per_newton(columns, "arm_bracket_height")[:, None]
            category = root * _mended(words, f"link_brackets_{side}")
            out.append(_weld(columns, f"link_brackets_{side}", mode, stress, category, per_km))
    if "track_bar" in housing.tension:
        force = np.abs(housing.tension["track_bar"])
        ends = {
            "track_bar_bracket_axle": _per_newton(columns, "track_bar_bracket_height"),
            "track_bar_bracket_frame": _per_newton(columns, "track_bar_frame_height")
            / columns["track_bar_frame_factor"],
        }
        for part, per_newton in ends.items():
            category = root * _mended(words, part)
            out.append(
                _weld(
                    columns,
                    part,
                    "the mended weld cracks" if category < root else "cracks at its weld",
                    force * per_newton[:, None],
                    category,
                    per_km,
                )
            )
    return tuple(out)


def _upper_weld(words: Words) -> tuple[tuple[str, str], ...]:
    """Two upper arms hold the axle sideways or fight the lower ones: their brackets count too."""
    if words["held_by.arms"] not in {"angled arms", "four arms"}:
        return ()
    return (("upper_arm", "cracks at the upper arm's weld"),)


def _mended(words: Words, part: str) -> float:
    return MENDED if part in words.get("mended", "").split() else 1.0


def _per_newton(columns: Columns, height_of: str) -> Column:
    """Stress on the throat of a bracket's weld lines for one newton at its bolt, Pa/N."""
    width, height = columns["bracket_width"], columns[height_of]
    throat = 0.707 * columns["weld_leg"]
    modulus = 4.0 * width**2 / 6.0
    return np.sqrt((height / modulus) ** 2 + (0.25 / width) ** 2) / throat


def _weld(
    columns: Columns, part: str, mode: str, stress: Column, category: float, per_km: Column
) -> Wear:
    live = stress[:, 1 : len(CASES)]
    damage = np.sum(weld_fatigue.exponential_damage(live, cycles(), category), axis=-1)
    damage = damage / columns["weld_scatter"] * per_km / 2.13
    return Wear(
        part=part,
        mode=mode,
        life_km=1000.0 / np.maximum(damage, 1e-12),
        slope=3.0,
        basis=f"EN 1993-1-9:2005 category {category / 1e6:.0f}, two slopes, Miner over straight "
        "spectra; middle life 2.13 x the design curve's",
    )


def _bearing(columns: Columns, words: Words, side: str, per_km: Column) -> Wear:
    return Wear(
        part=f"hub_bearing_{side}",
        mode="wears out",
        life_km=hub_life(columns, words, per_km, CORNERS),
        slope=_hub_exponent(words),
        basis="ISO 281 basic life of the worse row, 1 % of the distance in hard corners (half of "
        "the wheel's load sideways, each way), loads x 1.6 for rough ground (memory); middle life "
        "5 x L10",
    )


def hub_life(columns: Columns, words: Words, per_km: Column, corners: float) -> Column:
    """Life of the worse row of a hub with a share of the distance in hard corners, (n,), km."""
    weight = 0.5 * columns["axle_weight"]
    arm = columns["bearing_setback"] + columns["wheel_spacer"] - columns["wheel_offset"]
    sideways = weight[:, None] * np.array([0.0, HARD_CORNER, -HARD_CORNER])
    shares = np.array([1.0 - corners, 0.5 * corners, 0.5 * corners])
    rows = bearing.hub_rows(
        weight[:, None],
        sideways,
        arm[:, None],
        columns["radius"][:, None],
        columns["row_spread"][:, None],
    )
    exponent = _hub_exponent(words)
    worse = np.maximum(
        bearing.mixed_load(rows.outer, shares, exponent),
        bearing.mixed_load(rows.inner, shares, exponent),
    )
    turns = 1e6 * bearing.basic_life(columns["bearing_rating"], SHOCKS * worse, exponent)
    return np.asarray(5.0 * turns * 2.0 * np.pi * columns["radius"] / 1e3 / (0.5 + 0.5 * per_km))


def hub_lives(columns: Columns, words: Words) -> dict[str, Column]:
    """Life of a hub's worse row by how it is driven, (n,), km of this owner's use."""
    per_km = _per_km(columns, words)
    mixes = {
        "straight ahead": 0.0,
        "with 1 % of hard corners": CORNERS,
        "cornering all the way": 1.0,
    }
    return {name: hub_life(columns, words, per_km, share) for name, share in mixes.items()}


def _hub_exponent(words: Words) -> float:
    return bearing.BALL if words.get("hub.rows", "") == "balls" else bearing.ROLLER


def _per_km(columns: Columns, words: Words) -> Column:
    """Kilometres of hard trail in one of this use, (n,)."""
    return np.asarray(columns["duty_share"] / hard_trail_share(words["use.hardest"]))


def _joint(columns: Columns, words: Words, side: str, per_km: Column) -> Wear:
    """Needles of a wheel joint: it wears only while this axle is driven."""
    straight = np.asarray(trunnion_limit(columns, np.zeros_like(columns["track"])[:, None]))[:, 0]
    pull = 0.5 * columns["grip"] * columns["axle_weight"] * columns["radius"]
    turns = cross_joint.life_turns(MEAN_PULL * pull, MEAN_BEND, RATED * straight)
    turning = 2.0 * np.pi * columns["radius"] / 1e3
    hard = 0.5 + 0.5 * per_km
    stands = (
        "with its hubs unlocked the shafts stand still"
        if words["drive.unlocking_hubs"] == "yes"
        else "its shafts turn all the way, unloaded where the axle is not driven"
    )
    return Wear(
        part=f"cross_joint_{side}",
        mode="needles wear out",
        life_km=5.0 * np.asarray(turns) * turning / (columns["driven_share"] * hard),
        slope=10.0 / 3.0,
        basis="industrial sizing rule of cross joints, 10/3 power of torque, mean life 5 x L10, "
        "clean and greased; rated torque a quarter of what breaks a trunnion, mean pull 0.15 of "
        f"grip and mean angle 4 degrees from memory; {stands}",
    )
