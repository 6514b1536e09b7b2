"""Rules about the axle as a whole: ratio with tyres, width, and where the pinion stands.

References
----------
practice: the limits are common practice, no source, unless a line says otherwise
"""

from typing import Final

import numpy as np

from axlewright.swap.order_rules import Rule, Wrong, about, angle, length, plain

APART: Final = 0.01  # share by which front and rear may run apart; common practice, no source
TEETH: Final = 0.005
SUNK: Final = 1.0 / 3.0  # of a radial tyre's deflection that its rolling radius loses; memory
STRAIGHT: Final = 0.004  # m: two tape readings
REACH: Final = 0.05  # m: hub, knuckle and forging are never shorter than this


@about("ratio.this", "ratio.other", "ratio.tyres", "ratio.tyre_height", "ratio.other_tyre_height")
def front_and_rear_run_apart(
    this: float, other: float, tyres: str, height: float, other_height: float
) -> Wrong | None:
    """Compare turns of the two propeller shafts per metre (SAFETY: a mismatch blocks)."""
    share = height / other_height - 1.0
    rolled = 1.0 + (share * SUNK if tyres == "one size front and rear" else share)
    apart = this / (other * rolled) - 1.0
    if abs(apart) <= APART:
        return None
    return Wrong(
        says="front and rear run {0} % apart: ratio {1} here, {2} there, each with its tyres",
        numbers=(plain(round(100.0 * apart, 1)), plain(this), plain(other)),
        do="Order the other axle's ratio, or change both; locked in four-wheel drive they fight.",
        weight="blocks",
    )


@about("ratio.this", "ratio.ring_teeth", "ratio.pinion_teeth")
def teeth_say_another_ratio(this: float, ring: float, pinion: float) -> Wrong | None:
    """Ring over pinion teeth is the ratio."""
    if abs(ring / pinion / this - 1.0) <= TEETH:
        return None
    return Wrong(
        says="{0} teeth over {1} is {2}, not {3}",
        numbers=(plain(ring), plain(pinion), plain(round(ring / pinion, 3)), plain(this)),
        do="Count again; the teeth are right, the name of a ratio is rounded or wrong.",
        weight="blocks",
    )


@about("ratio.tyres", "ratio.tyre_height", "ratio.other_tyre_height")
def one_size_stands_unlike(tyres: str, height: float, other: float) -> Wrong | None:
    """Tyres of one size do not differ so much under load."""
    if tyres != "one size front and rear" or abs(height / other - 1.0) <= 0.05:
        return None
    return Wrong(
        says="one size of tyre, yet the hubs stand at {0} and {1}",
        numbers=(length(height), length(other)),
        do="Read the sidewalls and the pressures, and tape again.",
    )


@about("width.overall", "width.left", "width.right")
def sides_do_not_add_up(whole: float, left: float, right: float) -> Wrong | None:
    """Left and right from the pinion are the whole."""
    if abs(left + right - whole) <= STRAIGHT:
        return None
    return Wrong(
        says="left {0} and right {1} make {2}, the whole is {3}",
        numbers=(length(left), length(right), length(left + right), length(whole)),
        do="Name both sides from the pinion again: moving it makes one longer, the other shorter.",
        weight="blocks",
    )


@about("width.overall", "width.offset", "width.spacer", "width.tyres")
def tyres_stand_elsewhere(whole: float, offset: float, spacer: float, tyres: float) -> Wrong | None:
    """Face to face with offset and spacers is tyre centre to tyre centre."""
    stands = whole - 2.0 * offset + 2.0 * spacer
    if abs(stands - tyres) <= 2.0 * STRAIGHT:
        return None
    return Wrong(
        says="with these wheels the tyres stand {0} apart, {1} is wanted",
        numbers=(length(stands), length(tyres)),
        do="Change the width, the offset or what is wanted: one of the three gives way.",
    )


@about("width.left", "width.right", "pinion.side", "pinion.from_middle")
def pinion_stands_elsewhere(left: float, right: float, side: str, away: float) -> Wrong | None:
    """Half the difference of the sides is the pinion's way off the middle."""
    stands = 0.5 * (right - left)  # left of the middle is plus
    wanted = {"left": away, "right": -away, "middle": 0.0}[side]
    if abs(stands - wanted) <= 2.0 * STRAIGHT:
        return None
    return Wrong(
        says="the sides put the pinion {0} left of the middle, it is said to stand {1} left of it",
        numbers=(length(stands), length(wanted)),
        do="Tape from the plumb line at the pinion nut to both faces again.",
        weight="blocks",
    )


@about("width.left", "tube.bare_left")
def left_tube_is_too_long(face: float, tube: float) -> Wrong | None:
    """Casting, tube, forging and hub share one side."""
    return _too_long(face, tube, "left")


@about("width.right", "tube.bare_right")
def right_tube_is_too_long(face: float, tube: float) -> Wrong | None:
    """Casting, tube, forging and hub share one side."""
    return _too_long(face, tube, "right")


def _too_long(face: float, tube: float, side: str) -> Wrong | None:
    if face - tube >= REACH:
        return None
    return Wrong(
        says=f"the {side} tube is {{0}} long, and the face is to stand {{1}} from the pinion",
        numbers=(length(tube), length(face)),
        do="Casting, end forging and hub want their room: give the bare length, weld to weld.",
        weight="blocks",
    )


@about("pinion.side", "pinion.output_side")
def shaft_cannot_reach(side: str, output: str) -> Wrong | None:
    """The transfer case drives one side."""
    if side == output or "middle" in {side, output}:
        return None
    return Wrong(
        says=f"the pinion stands on the {side}, the transfer case drives on the {output}",
        do="Order the pinion on the driven side; left and right are the vehicle's.",
        weight="blocks",
    )


@about("pinion.height", "pinion.cut")
def gears_are_cut_the_other_way(height: str, cut: str) -> Wrong | None:
    """A front pinion above its axle goes with reverse-cut gears, one below with standard ones."""
    if (height == "above") == (cut == "reverse"):
        return None
    return Wrong(
        says=f"the pinion stands {height} the axle and the gears are cut {cut}",
        do="Above goes with reverse, below with standard: ask the builder for casting and set.",
        weight="blocks",
    )


@about("pinion.cap", "pinion.shaft_cap")
def yoke_and_shaft_differ(yoke: float, shaft: float) -> Wrong | None:
    """One joint joins yoke and shaft."""
    if abs(yoke - shaft) <= 0.0003:
        return None
    return Wrong(
        says="the pinion's yoke takes a cap of {0}, the shaft one of {1}",
        numbers=(length(yoke), length(shaft)),
        do="Order the yoke of the shaft's series; a joint of two sizes is a way home, no plan.",
    )


@about("angles.caster", "angles.built_in", "pinion.up")
def angles_do_not_add_up(caster: float, built_in: float, up: float) -> Wrong | None:
    """Caster and the pinion's upward look are what the housing has built in."""
    if abs(caster + up - built_in) <= np.radians(0.5):
        return None
    return Wrong(
        says="caster {0} and pinion {1} up make {2}, {3} is built in",
        numbers=(angle(caster), angle(up), angle(caster + up), angle(built_in)),
        do="Two of the three are free: give the third up, or turn the end forgings before welding.",
        weight="blocks",
    )


@about("pinion.up", "angles.shaft_joints", "angles.output_up")
def pinion_is_not_parallel(up: float, joints: str, output: float) -> Wrong | None:
    """One joint at each end wants pinion and transfer case parallel, within a degree or so."""
    if joints != "one at each end" or abs(up - output) <= np.radians(4.0):
        return None
    return Wrong(
        says="the pinion looks up {0}, the transfer case {1}, with one joint at each end",
        numbers=(angle(up), angle(output)),
        do="Where the hubs unlock say that slow use is all; else bring them within a degree.",
        weight="ask",
    )


@about("pinion.up", "angles.shaft_joints", "angles.shaft_slope")
def pinion_does_not_look_along(up: float, joints: str, slope: float) -> Wrong | None:
    """A double joint wants the pinion along the shaft."""
    if joints != "double at the transfer case" or abs(up - slope) <= np.radians(2.0):
        return None
    return Wrong(
        says="the pinion looks up {0}, the shaft slopes {1}, with a double joint",
        numbers=(angle(up), angle(slope)),
        do="With a double joint the pinion looks along the shaft, a degree or two below it.",
    )


@about("pinion.side", "pinion.from_middle")
def a_middle_pinion_stands_off(side: str, away: float) -> Wrong | None:
    """The middle is the middle."""
    if (side == "middle") == (away < 0.03):
        return None
    return Wrong(
        says=f"the pinion is said to stand {side}, and {{0}} from the middle",
        numbers=(length(away),),
        do="Say the side again, and tape from the middle between the frame rails.",
    )


RULES: Final = tuple(each for each in list(vars().values()) if isinstance(each, Rule))
