"""Rules about gears, shafts, hubs and brakes, what is reused, and what is looked at on delivery.

References
----------
practice: the limits are common practice, no source, unless a line says otherwise
"""

from typing import Final

import numpy as np

from axlewright.swap.order_rules import Rule, Wrong, about, angle, length, plain

LINE_GAP: Final = 0.0079375  # m: five sixteenths; a lock's installation sheet
BORE_BAR: Final = 0.000762  # m at the ends; common practice, no source
LASH_SPREAD: Final = 0.00005  # m round the ring; public service data
ALIKE: Final = 0.0002  # m: two callipers


@about("gears.ring", "gears.casting_ring")
def ring_is_of_another_class(ring: float, casting: float) -> Wrong | None:
    """Ring and casting are of one class."""
    if abs(ring - casting) <= 0.003:
        return None
    return Wrong(
        says="a ring of {0} in a casting made for {1}",
        numbers=(length(ring), length(casting)),
        do="Order gears and casting of one class.",
        weight="blocks",
    )


@about("ratio.this", "gears.carrier_low", "gears.carrier_high", "gears.thick")
def carrier_is_for_other_ratios(ratio: float, low: float, high: float, thick: str) -> Wrong | None:
    """A carrier takes a span of ratios; a thick ring bridges from below."""
    if low <= ratio <= high or (thick == "yes" and ratio > high):
        return None
    return Wrong(
        says="ratio {0}, and the carrier takes {1} to {2}",
        numbers=(plain(ratio), plain(low), plain(high)),
        do="The carrier of this span, or a thick ring where the gear maker has one.",
        weight="blocks",
    )


@about("gears.bolts", "gears.carrier_bolts")
def ring_bolts_do_not_fit(bolt: float, hole: float) -> Wrong | None:
    """Ring bolts fit the carrier."""
    if 0.0 <= hole - bolt <= 0.0008:
        return None
    return Wrong(
        says="ring bolts of {0}, holes of {1}",
        numbers=(length(bolt), length(hole)),
        do="New bolts of this carrier's thread; a sleeve only where the gear maker says so.",
    )


@about("gears.lock", "gears.line_gap")
def line_meets_the_ring(lock: str, gap: float) -> Wrong | None:
    """A lock's line stands clear of the ring gear."""
    if lock != "locks on command" or gap >= LINE_GAP:
        return None
    return Wrong(
        says="the lock's line passes the ring gear at {0}",
        numbers=(length(gap),),
        do="Eight millimetres at least, all round, before the cover goes on.",
    )


@about("gears.lock", "gears.lock_proved")
def lock_is_not_proved(lock: str, proved: str) -> Wrong | None:
    """A lock is proved before it is fitted."""
    if lock != "locks on command" or proved == "yes":
        return None
    return Wrong(
        says="the lock will not be proved on the bench",
        do="Have it shown: on, both ends turn as one; off, they do not. After fitting it is late.",
    )


@about("ends.shaft_splines", "ends.side_splines")
def shaft_does_not_enter_the_side_gear(shaft: float, side: float) -> Wrong | None:
    """Shaft and side gear have one spline."""
    return _splines("inner shafts", "side gears", shaft, side)


@about("ends.stub_splines", "ends.hub_splines")
def stub_does_not_enter_the_hub(stub: float, hub: float) -> Wrong | None:
    """Stub and hub have one spline."""
    return _splines("stub shafts", "hubs", stub, hub)


def _splines(this: str, that: str, first: float, second: float) -> Wrong | None:
    if first == second:
        return None
    return Wrong(
        says=f"{this} with {{0}} splines, {that} with {{1}}",
        numbers=(plain(first), plain(second)),
        do="One number on both, and one diameter over them.",
        weight="blocks",
    )


@about("ends.cap", "ends.yoke")
def joint_does_not_fit_its_yoke(cap: float, yoke: float) -> Wrong | None:
    """Joint and yokes are of one series."""
    if abs(cap - yoke) <= ALIKE:
        return None
    return Wrong(
        says="the joint's cap is {0}, the yoke is bored {1}",
        numbers=(length(cap), length(yoke)),
        do="Shafts and joints of one series.",
        weight="blocks",
    )


@about("ends.shaft", "ends.seal_bore")
def seal_does_not_fit(shaft: float, seal: float) -> Wrong | None:
    """The seal is for this shaft."""
    if abs(shaft - seal) <= 0.0005:
        return None
    return Wrong(
        says="shaft {0} at the seal, seal for {1}",
        numbers=(length(shaft), length(seal)),
        do="The seal by the shaft's ground diameter.",
    )


@about("ends.hub", "ends.knuckle_hub")
def hub_does_not_fit_its_knuckle(hub: str, knuckle: str) -> Wrong | None:
    """Hub and knuckle belong together."""
    if hub == knuckle:
        return None
    return Wrong(
        says=f"hub: {hub}; the knuckle is made for: {knuckle}",
        do="Order both of one kind; stub and nut go with them.",
        weight="blocks",
    )


@about("ends.studs", "ends.stud_circle", "ends.wheel_holes", "ends.wheel_circle")
def wheel_does_not_go_on(studs: float, circle: float, holes: float, wheel: float) -> Wrong | None:
    """Wheel and hub have one pattern."""
    if studs == holes and abs(circle - wheel) <= ALIKE:
        return None
    return Wrong(
        says="hub: {0} studs on {1}; wheel: {2} holes on {3}",
        numbers=(plain(studs), length(circle), plain(holes), length(wheel)),
        do="Order the hubs for these wheels, or wheels for both axles and the spare.",
        weight="blocks",
    )


@about("ends.pilot", "ends.wheel_bore")
def wheel_does_not_go_over_the_pilot(pilot: float, bore: float) -> Wrong | None:
    """The wheel's bore goes over the pilot, and is centred by it."""
    if 0.0 <= bore - pilot <= 0.001:
        return None
    return Wrong(
        says="the hub's pilot is {0}, the wheel is bored {1}",
        numbers=(length(pilot), length(bore)),
        do="Smaller cannot go on; larger is centred by the nuts alone, which must be made for it.",
    )


@about("ends.caliper_reach", "ends.wheel_inside")
def wheel_meets_the_caliper(reach: float, inside: float) -> Wrong | None:
    """The wheel turns over the caliper."""
    if inside - reach >= 0.003:
        return None
    return Wrong(
        says="the caliper reaches {0}, the wheel is {1} inside",
        numbers=(length(reach), length(inside)),
        do="A larger wheel or a smaller brake: balance weights want room as well.",
        weight="blocks",
    )


@about("ends.hose", "ends.hose_needed")
def hose_is_short(hose: float, needed: float) -> Wrong | None:
    """A brake hose is free at full droop and lock."""
    if hose >= needed + 0.01:
        return None
    return Wrong(
        says="hoses of {0}, full droop and lock ask for {1}",
        numbers=(length(hose), length(needed)),
        do="Longer ones made and tested for it; a stretched hose is a STOP.",
        weight="blocks",
    )


@about("ends.sensor_teeth", "ends.vehicle_teeth")
def computer_counts_other_teeth(teeth: float, vehicle: float) -> Wrong | None:
    """The wheel-speed ring has the teeth that the computer counts."""
    if teeth == vehicle:
        return None
    return Wrong(
        says="a ring of {0} teeth, the vehicle counts {1}",
        numbers=(plain(teeth), plain(vehicle)),
        do="The vehicle's own number, or its brakes and stability lose a wheel.",
        weight="blocks",
    )


@about("ends.lead", "ends.lead_needed")
def lead_is_short(lead: float, needed: float) -> Wrong | None:
    """A sensor's lead is free at full droop and lock."""
    if lead >= needed + 0.01:
        return None
    return Wrong(
        says="leads of {0}, their way asks for {1}",
        numbers=(length(lead), length(needed)),
        do="Longer leads with the vehicle's plug; no splice that hangs in the water.",
    )


@about("ends.breather", "ends.water")
def breather_drowns(breather: float, water: float) -> Wrong | None:
    """The breather ends above the deepest water."""
    if breather >= water + 0.1:
        return None
    return Wrong(
        says="the breather ends at {0}, the water {1} deep",
        numbers=(length(breather), length(water)),
        do="A hose up into the body.",
    )


@about("reuse.fasteners")
def fasteners_are_used_twice(said: str) -> Wrong | None:
    """Self-locking nuts and stretched bolts are new."""
    if said == "new":
        return None
    return Wrong(
        says="fasteners are to be used again",
        do="Self-locking nuts, stretched bolts and U-bolts are new: put them on the list.",
    )


@about("reuse.shafts")
def shafts_are_reused_unread(said: str) -> Wrong | None:
    """Reused shafts are read: splines, seal place, ears, and their length against the tubes."""
    return _unread(
        "shafts", said, "Splines, seal place and ears, and their length for these tubes."
    )


@about("reuse.knuckles")
def knuckles_are_reused_unread(said: str) -> Wrong | None:
    """Reused knuckles are tried for cracks."""
    return _unread(
        "knuckles", said, "Dye or particle test, and the joints' bores; a crack is scrap."
    )


@about("reuse.hubs")
def hubs_are_reused_unread(said: str) -> Wrong | None:
    """Reused hubs are read by dial."""
    return _unread("hubs", said, "Play by dial against their own limit, turned by hand for growl.")


@about("reuse.gears")
def gears_are_reused_unread(said: str) -> Wrong | None:
    """Reused gears are read before they are taken apart."""
    return _unread(
        "gears", said, "Pattern and backlash before they come out; caps and shims marked."
    )


@about("reuse.rods")
def rods_are_reused_unread(said: str) -> Wrong | None:
    """Reused rods are straight."""
    return _unread(
        "steering rods", said, "Straight along an edge, joints without play, tapers whole."
    )


def _unread(what: str, said: str, how: str) -> Wrong | None:
    if said != "reused, not read yet":
        return None
    return Wrong(says=f"the {what} are to be reused and have not been read", do=how)


@about("reuse.hubs", "ends.hub", "ends.knuckle_hub")
def reused_hubs_go_nowhere(said: str, hub: str, knuckle: str) -> Wrong | None:
    """Reused hubs go on knuckles made for them."""
    if said == "new" or hub == knuckle:
        return None
    return Wrong(
        says=f"the present hubs ({hub}) go on no knuckle made for {knuckle}",
        do="Hubs with the axle, or knuckles for the present hubs.",
        weight="blocks",
    )


@about("delivery.left", "width.left")
def delivered_left_face_is_off(found: float, ordered: float) -> Wrong | None:
    """The face stands where it was ordered, within 1.6 mm."""
    return _delivered("left mounting face", found, ordered)


@about("delivery.right", "width.right")
def delivered_right_face_is_off(found: float, ordered: float) -> Wrong | None:
    """The face stands where it was ordered, within 1.6 mm."""
    return _delivered("right mounting face", found, ordered)


def _delivered(what: str, found: float, ordered: float) -> Wrong | None:
    if abs(found - ordered) <= 0.0016 + ALIKE:
        return None
    return Wrong(
        says=f"{what}: {{0}} delivered, {{1}} ordered",
        numbers=(length(found), length(ordered)),
        do="Measured twice from the pinion's plumb line? Then it goes back before it is fitted.",
    )


@about("delivery.bow")
def delivered_tubes_are_bowed(bow: float) -> Wrong | None:
    """A bore bar is off by 0.76 mm at the ends at most."""
    if bow <= BORE_BAR:
        return None
    return Wrong(
        says="the bore bar is off by {0} at the ends",
        numbers=(length(bow),),
        do="Straightened by the shop that welded it, before seals, gears and hubs go in.",
    )


@about("delivery.built_in", "angles.built_in")
def delivered_angle_is_off(found: float, ordered: float) -> Wrong | None:
    """Built in as ordered, within a quarter of a degree, and the finder's tenth."""
    if abs(found - ordered) <= np.radians(0.35):
        return None
    return Wrong(
        says="{0} is built in, {1} was ordered",
        numbers=(angle(found), angle(ordered)),
        do="It cannot be set later: the end forgings are turned before anything is fitted.",
    )


@about("delivery.alike", "forging.alike")
def delivered_forgings_differ(found: float, allowed: float) -> Wrong | None:
    """Left and right as alike as was ordered."""
    if found <= allowed + np.radians(0.1):
        return None
    return Wrong(
        says="left and right forging differ by {0}, {1} was allowed",
        numbers=(angle(found), angle(allowed)),
        do="Back to the jig: it pulls to one side for ever.",
    )


@about("delivery.lash_low", "delivery.lash_high")
def delivered_lash_varies(low: float, high: float) -> Wrong | None:
    """Backlash varies by 0.05 mm round the ring at most."""
    if 0.0 <= high - low <= LASH_SPREAD * 1.02:
        return None
    return Wrong(
        says="backlash from {0} to {1} round the ring",
        numbers=(length(low), length(high)),
        do="Run-out of ring or carrier, or a saddle that moved with the heat: back to the shop.",
    )


@about("delivery.sheet")
def delivered_without_its_sheet(sheet: str) -> Wrong | None:
    """The set-up sheet comes with the axle."""
    if sheet == "yes":
        return None
    return Wrong(
        says="no set-up sheet and no photos of the patterns",
        do="They are part of the price: without them nobody can judge a noise later.",
    )


@about("delivery.tight")
def delivered_weeping(tight: str) -> Wrong | None:
    """A day with oil shows what weeps."""
    if tight == "yes":
        return None
    return Wrong(
        says="it has not stood a day with oil, dry", do="Stand it on paper for a day first."
    )


RULES: Final = tuple(each for each in list(vars().values()) if isinstance(each, Rule))
