"""The shared case of three arms, as hardpoints; its numbers are in the validation data."""

import json
from dataclasses import replace
from pathlib import Path

import numpy as np

from axlewright.geometry.points import Hardpoints, Rod
from axlewright.physics.linkage import rod_lengths
from axlewright.physics.steering import axis_direction
from axlewright.rig import load_rig

HOME = Path(__file__).parents[2]
DATA = json.loads((HOME / "tests/validation/data/axle_poses.json").read_text("utf-8"))
THREE = DATA["three_arms"]
MM = 1e-3
NAMES = ("arm_left", "arm_right", "third_arm", "track_bar")


def column(*numbers):
    return MM * np.array([numbers], dtype=float)


def three_arms():
    """The case at its ride height, wheelbase 2.62 m and mass 0.78 m high (anti-dive's case)."""
    told = THREE["steering"]
    caster, lean = np.radians(told["caster"]), np.radians(told["inclination"])
    at, rods = {}, []
    for name, (near, far) in zip(NAMES, THREE["rods"].values(), strict=True):
        end = next((f"_{each}" for each in ("left", "right") if name.endswith(each)), "")
        stem = name.removesuffix(end)
        at[f"{stem}_frame{end}"], at[f"{stem}_axle{end}"] = column(*near), column(*far)
        rods.append(
            Rod(
                name=name,
                frame=column(*near),
                axle=column(*far),
                length=rod_lengths(column(*near), column(*far)),
                stiffness=np.array([3e6]),
            )
        )
    for place, side, sign in ((0, "left", 1.0), (1, "right", -1.0)):
        axis = axis_direction(caster, lean, sign)
        pivot = column(*told["pivot"][place])
        at[f"kingpin_upper_{side}"] = pivot + 0.1 * axis
        at[f"kingpin_lower_{side}"] = pivot - 0.1 * axis
        at[f"tie_rod_end_{side}"] = column(*told["tie_end"][place])
        at[f"spring_seat_{side}"] = column(20.0, sign * 470.0, 70.0)
        at[f"spring_top_{side}"] = column(20.0, sign * 470.0, 400.0)
        at[f"damper_axle_{side}"] = column(60.0, sign * 430.0, 0.0)
        at[f"damper_frame_{side}"] = column(60.0, sign * 400.0, 500.0)
    at["drag_link_wheel"] = column(*told["drag_end"])
    at["drag_link_pitman"] = column(*told["pitman"])
    at["pitman_shaft"] = column(told["pitman"][0] - 150.0, *told["pitman"][1:])
    at["pinion_joint"], at["transfer_joint"] = column(-300, 0, 0), column(-1100, 0, 200)
    one = lambda value: np.array([value])
    columns = {
        "radius": one(0.42), "wheelbase": one(2.62), "mass_height": one(0.78),
        "travel_lift": one(0.0), "travel_bump_gap": one(0.09), "travel_damper_longest": one(0.62),
        "travel_damper_shortest": one(0.38), "travel_spring_free": one(0.47),
        "travel_arm_swing": one(0.33), "travel_rod_swing": one(0.44),
        "travel_clamped_at": one(0.0), "travel_bush_twist": one(460.0), "spring_rate": one(25e3),
    }  # fmt: skip
    return Hardpoints(
        words={
            "rig.axle": "front",
            "held_by.arms": "three arms",
            "steering.drag_link_on": "knuckle",
        },
        columns=columns,
        at=at,
        rods=tuple(rods),
        half_track=one(MM * THREE["half_track"]),
        taped_radius=one(0.42),
        drag_length=rod_lengths(at["drag_link_wheel"], at["drag_link_pitman"]),
    )


def demo(name):
    return load_rig(str(HOME / f"examples/rigs/{name}.toml"))


__all__ = ["DATA", "HOME", "MM", "THREE", "demo", "replace", "three_arms"]
