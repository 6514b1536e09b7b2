"""Rules about the housing: tubes, end forgings, knuckles, and the angles built in.

References
----------
practice: the limits are common practice, no source, unless a line says otherwise
"""

from typing import Final

import numpy as np

from axlewright.swap.order_rules import Rule, Wrong, about, angle, length

FIT: Final = 0.0003  # m: a press fit is less than this either way
SLIP: Final = 0.0015  # m: a tube that passes another's bore has less room than this


@about("tube.outer", "tube.wall")
def wall_leaves_no_bore(outer: float, wall: float) -> Wrong | None:
    """A tube has a bore: a wall of this trade is under a quarter of its diameter."""
    if wall < 0.25 * outer:
        return None
    return Wrong(
        says="a wall of {0} in a tube of {1}",
        numbers=(length(wall), length(outer)),
        do="Give the wall of one side; the shaft has to go through.",
        weight="blocks",
    )


@about("tube.outer", "tube.casting_bore")
def tube_does_not_fit_its_casting(outer: float, bore: float) -> Wrong | None:
    """A press fit: the tube is a little larger than the bore."""
    if 0.0 <= outer - bore <= FIT:
        return None
    return Wrong(
        says="the tube is {0}, the casting is bored {1}",
        numbers=(length(outer), length(bore)),
        do="The tube should be larger by some hundredths of a millimetre: a loose one turns.",
        weight="blocks",
    )


@about("tube.outer", "tube.wall", "tube.sleeve")
def sleeve_does_not_go_in(outer: float, wall: float, sleeve: float) -> Wrong | None:
    """A sleeve goes into the tube's bore."""
    bore = outer - 2.0 * wall
    if sleeve == 0.0 or -SLIP <= sleeve - bore <= FIT:
        return None
    return Wrong(
        says="the sleeve is {0}, the tube's bore {1}",
        numbers=(length(sleeve), length(bore)),
        do="Measure the bore before the sleeve is turned.",
    )


@about("tube.outer", "tube.wall", "tube.sleeve_wall", "ends.shaft")
def shaft_does_not_go_through(
    outer: float, wall: float, sleeve: float, shaft: float
) -> Wrong | None:
    """The shaft passes tube and sleeve with room to move."""
    bore = outer - 2.0 * wall - 2.0 * sleeve
    if bore - shaft >= 0.006:
        return None
    return Wrong(
        says="the bore left is {0}, the shaft is {1}",
        numbers=(length(bore), length(shaft)),
        do="A thinner sleeve or wall, or a larger tube.",
        weight="blocks",
    )


@about("tube.in_casting", "tube.outer")
def tube_goes_in_too_little(depth: float, outer: float) -> Wrong | None:
    """A tube goes in about its own diameter."""
    if depth >= 0.7 * outer:
        return None
    return Wrong(
        says="the tube goes {0} into the casting, its diameter is {1}",
        numbers=(length(depth), length(outer)),
        do="Ask the builder how much the fit holds; plug welds alone crack one after the other.",
        weight="ask",
    )


@about("tube.joining")
def plug_welds_alone(joining: str) -> Wrong | None:
    """Plug welds alone let the tube turn."""
    if joining != "plug welds alone":
        return None
    return Wrong(
        says="the tubes are held by plug welds alone",
        do="Have them pressed and welded round as well, by a qualified welder, with this brief.",
    )


@about("forging.bore", "tube.outer")
def forging_does_not_fit_its_tube(bore: float, outer: float) -> Wrong | None:
    """The end forging fits the tube before it is welded."""
    if abs(bore - outer) <= 2.0 * FIT:
        return None
    return Wrong(
        says="the end forging is bored {0}, the tube is {1}",
        numbers=(length(bore), length(outer)),
        do="Order the forging for this tube; filler in the gap pulls it out of square.",
        weight="blocks",
    )


@about("forging.joints", "knuckle.joints")
def joints_are_of_two_kinds(forging: str, knuckle: str) -> Wrong | None:
    """Knuckle and forging have one kind of joint."""
    if forging == knuckle:
        return None
    return Wrong(
        says=f"the end forging is for {forging}, the knuckle for {knuckle}",
        do="Order both of one kind.",
        weight="blocks",
    )


@about("forging.family", "knuckle.family")
def families_differ(forging: str, knuckle: str) -> Wrong | None:
    """Forging and knuckle are of one family."""
    if forging.casefold().split() == knuckle.casefold().split():
        return None
    return Wrong(
        says=f"end forgings: {forging!r}; knuckles: {knuckle!r}",
        do="If these are two names of one family write one of them; else they do not meet.",
    )


@about("forging.height", "knuckle.height")
def knuckle_does_not_fit_between(forging: float, knuckle: float) -> Wrong | None:
    """The knuckle fits between the forging's bosses."""
    if abs(forging - knuckle) <= 0.002:
        return None
    return Wrong(
        says="the joints stand {0} apart at the forging, {1} at the knuckle",
        numbers=(length(forging), length(knuckle)),
        do="Measure both seat to seat; shims do not bridge this.",
        weight="blocks",
    )


@about("forging.gussets", "forging.gussets_clear")
def gussets_are_in_the_way(gussets: str, clear: str) -> Wrong | None:
    """A gusset leaves room for hub, press and lock."""
    if gussets != "yes" or clear == "yes":
        return None
    return Wrong(
        says="the gussets do not clear hub, joint press or full lock",
        do="Another shape, or none: a joint that cannot be pressed cannot be mended on the track.",
    )


@about("forging.spacing", "width.overall")
def joints_stand_wider_than_the_faces(spacing: float, whole: float) -> Wrong | None:
    """The knuckles' joints stand inside the mounting faces."""
    if 0.08 <= whole - spacing <= 0.6:
        return None
    return Wrong(
        says="joint to joint {0}, face to face {1}",
        numbers=(length(spacing), length(whole)),
        do="One of the two was taken between other points.",
        weight="blocks",
    )


@about("knuckle.tie_rod", "knuckle.vehicle_tie_rod")
def tie_rod_has_no_room(knuckle: str, vehicle: str) -> Wrong | None:
    """The arms point where the vehicle has room."""
    if knuckle == vehicle:
        return None
    return Wrong(
        says=f"these knuckles put the tie rod {knuckle}, the vehicle has room {vehicle}",
        do="Other knuckles, or show the room by full travel and lock first.",
        weight="blocks",
    )


@about("knuckle.drag_link", "knuckle.driver")
def drag_link_does_not_cross(link: str, driver: str) -> Wrong | None:
    """A drag link from the driver's side crosses to the other knuckle."""
    if link != driver:
        return None
    return Wrong(
        says=f"the drag link goes to the {link} knuckle, the driver sits on the {driver}",
        do="Across, its length is the track bar's; on one side it is short and steers by itself.",
        weight="ask",
    )


@about("knuckle.taper", "knuckle.rod_taper")
def taper_does_not_seat(arm: float, rod: float) -> Wrong | None:
    """Rod end and arm have one taper."""
    if abs(arm - rod) <= 0.0004:
        return None
    return Wrong(
        says="the arm's taper opens to {0}, the rod end's is {1}",
        numbers=(length(arm), length(rod)),
        do="Order arms reamed for these ends, or the ends of these arms; no sleeve by eye.",
        weight="blocks",
    )


@about("knuckle.stops", "knuckle.joint_lock")
def joint_binds_before_the_stop(stops: float, joint: float) -> Wrong | None:
    """The stop comes before the joint binds."""
    if joint - stops >= np.radians(2.0):
        return None
    return Wrong(
        says="the stops allow {0}, the shaft's joint {1}",
        numbers=(angle(stops), angle(joint)),
        do="Set the stops at least two degrees inside what the joint takes.",
    )


@about("angles.camber")
def camber_is_built_in(camber: float) -> Wrong | None:
    """A beam axle has nothing to set camber with."""
    if abs(camber) <= np.radians(1.0):
        return None
    return Wrong(
        says="camber of {0} would be welded in",
        numbers=(angle(camber),),
        do="Nought, or a quarter of a degree for the load; nothing sets it later.",
    )


@about("angles.caster")
def caster_makes_it_wander(caster: float) -> Wrong | None:
    """Without caster the steering does not come back."""
    if np.radians(2.0) <= caster <= np.radians(9.0):
        return None
    return Wrong(
        says="caster of {0} is wanted",
        numbers=(angle(caster),),
        do="Two to nine degrees is what beam axles are driven with; say why, if it is meant.",
        weight="ask",
    )


@about("forging.alike")
def forgings_may_differ_too_much(alike: float) -> Wrong | None:
    """A quarter of a degree between left and right is what a jig holds."""
    if alike <= np.radians(0.5):
        return None
    return Wrong(
        says="left and right forging may differ by {0}",
        numbers=(angle(alike),),
        do="Ask for a quarter of a degree: half a degree across is felt as a pull.",
    )


@about("angles.built_in", "pinion.height")
def built_in_cannot_be(built_in: float, height: str) -> Wrong | None:
    """No housing has been welded with so much or so little."""
    low, high = np.radians(-2.0), np.radians(30.0 if height == "below" else 25.0)
    if low <= built_in <= high:
        return None
    return Wrong(
        says="{0} between steering axis and pinion",
        numbers=(angle(built_in),),
        do="Both against the same level, the housing not moved between.",
        weight="blocks",
    )


RULES: Final = tuple(each for each in list(vars().values()) if isinstance(each, Rule))
