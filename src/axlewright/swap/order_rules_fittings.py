"""Rules about what is welded to the tubes: spring seats and the brackets of arms, bars and dampers.

References
----------
practice: the limits are common practice, no source, unless a line says otherwise
"""

from typing import Final

import numpy as np

from axlewright.swap.order_rules import Rule, Wrong, about, angle, length

LOOSE: Final = 0.0006  # m by which a hole may pass its bolt's sleeve
TIGHT: Final = 0.0005  # m by which a bracket may be narrower than its bushing
WIDE: Final = 0.002  # m by which it may be wider
BRACKETS: Final = {
    "arm": "lower arm",
    "track_bar": "track bar",
    "damper": "damper",
}


def _too_wide(name: str) -> Rule:
    @about(f"{name}.inside", f"{name}.bushing")
    def bushing_does_not_fit(inside: float, bushing: float) -> Wrong | None:
        if -TIGHT <= inside - bushing <= WIDE:
            return None
        return Wrong(
            says=f"the {BRACKETS[name]} bracket is {{0}} inside, its bushing {{1}} wide",
            numbers=(length(inside), length(bushing)),
            do="A bolt that pulls cheeks together cracks their feet: order the bushing's width.",
        )

    return bushing_does_not_fit


def _wrong_hole(name: str) -> Rule:
    @about(f"{name}.hole", f"{name}.sleeve")
    def hole_and_sleeve_differ(hole: float, sleeve: float) -> Wrong | None:
        if -LOOSE / 2.0 <= hole - sleeve <= LOOSE:
            return None
        return Wrong(
            says=f"the {BRACKETS[name]} bracket is drilled {{0}}, the sleeve's bore is {{1}}",
            numbers=(length(hole), length(sleeve)),
            do="Hole and sleeve take one bolt: a step between them is play from the first day.",
        )

    return hole_and_sleeve_differ


@about("arm.apart", "width.overall")
def arms_stand_outside(apart: float, whole: float) -> Wrong | None:
    """Arm brackets stand well inside the wheels."""
    if whole - apart >= 0.35:
        return None
    return Wrong(
        says="the arms stand {0} apart, the faces {1}",
        numbers=(length(apart), length(whole)),
        do="They would meet tyre or knuckle at lock: tape centre to centre of the bolts.",
        weight="blocks",
    )


@about("arm.cheeks", "track_bar.cheeks")
def cheeks_are_thin(arm: float, bar: float) -> Wrong | None:
    """A heavy axle's brackets are not thinner than a light one's."""
    if min(arm, bar) >= 0.0045:
        return None
    return Wrong(
        says="cheeks of {0} at the arms and {1} at the track bar",
        numbers=(length(arm), length(bar)),
        do="Six millimetres and a full weld all round, by a qualified welder, with this brief.",
        weight="ask",
    )


@about("track_bar.side", "knuckle.drag_link")
def track_bar_crosses_the_drag_link(bar: str, link: str) -> Wrong | None:
    """Track bar and drag link end on one side, or the axle steers itself."""
    if bar == link:
        return None
    return Wrong(
        says=f"the track bar holds the axle on the {bar}, the drag link on the {link}",
        do="They run side by side, alike in slope and length, or every bump steers.",
        weight="blocks",
    )


@about("track_bar.side", "pinion.side", "track_bar.from_middle", "pinion.from_middle")
def track_bar_meets_the_casting(side: str, pinion: str, away: float, middle: float) -> Wrong | None:
    """A track bar's bracket stands clear of the centre casting."""
    if side != pinion or away - middle >= 0.12:
        return None
    return Wrong(
        says="the track bar's bolt stands {0} from the middle, the pinion {1} on the same side",
        numbers=(length(away), length(middle)),
        do="Further out, or the other side: it would sit on the casting.",
    )


@about("damper.apart", "spring.apart", "spring.on")
def damper_leans_on_the_spring(damper: float, spring: float, on: str) -> Wrong | None:
    """A damper beside its coil stands clear of it."""
    if on != "coil on a seat" or abs(damper - spring) >= 0.01:
        return None
    return Wrong(
        says="dampers {0} and springs {1} apart, centre to centre",
        numbers=(length(damper), length(spring)),
        do="Inside, outside, or well ahead or behind: say where, and try it at full travel.",
        weight="ask",
    )


@about("stabiliser.apart", "damper.apart")
def stabiliser_meets_the_damper(stabiliser: float, damper: float) -> Wrong | None:
    """A stabiliser's links stand clear of the dampers."""
    if abs(stabiliser - damper) >= 0.012:
        return None
    return Wrong(
        says="stabiliser links {0} and dampers {1} apart",
        numbers=(length(stabiliser), length(damper)),
        do="Say which stands ahead, and try both at full travel.",
        weight="ask",
    )


@about("spring.apart", "width.overall")
def springs_stand_in_the_wheels(apart: float, whole: float) -> Wrong | None:
    """Springs stand inside the wheels with room for lock."""
    if whole - apart >= 0.3:
        return None
    return Wrong(
        says="the springs stand {0} apart, the faces {1}",
        numbers=(length(apart), length(whole)),
        do="Centre to centre is wanted, not outside to outside.",
        weight="blocks",
    )


@about("spring.on", "spring.tilt")
def seat_tilts(on: str, tilt: float) -> Wrong | None:
    """A coil's seat is square to it at ride height, with the caster that is ordered."""
    if on != "coil on a seat" or abs(tilt) <= np.radians(2.0):
        return None
    return Wrong(
        says="the seat tilts {0} against the spring",
        numbers=(angle(tilt),),
        do="Weld it square at ride height with the ordered caster, else the coil bows and rubs.",
    )


@about("spring.helix", "spring.seat_helix")
def coil_ends_elsewhere(helix: str, seat: str) -> Wrong | None:
    """A seat's stop stands where the wire ends."""
    if helix == seat:
        return None
    return Wrong(
        says=f"the coils are wound {helix}, the seats are made {seat}",
        do="Order the seats of this hand, left and right each.",
    )


@about("spring.coil_inner", "spring.seat_boss")
def coil_does_not_sit(inner: float, boss: float) -> Wrong | None:
    """A seat's boss goes into the coil and holds it."""
    if 0.0 <= inner - boss <= 0.006:
        return None
    return Wrong(
        says="the coil is {0} inside, the seat's boss {1}",
        numbers=(length(inner), length(boss)),
        do="The boss goes in by a few millimetres: measure the coil's end, not its middle.",
    )


@about("spring.pad_width", "spring.leaf_width")
def leaf_does_not_lie(pad: float, leaf: float) -> Wrong | None:
    """A leaf lies on its pad whole."""
    if -0.001 <= pad - leaf <= 0.006:
        return None
    return Wrong(
        says="the pad is {0} wide, the leaf {1}",
        numbers=(length(pad), length(leaf)),
        do="Order the pad for this leaf.",
    )


@about("spring.pin", "spring.pin_hole")
def centre_bolt_does_not_locate(pin: float, hole: float) -> Wrong | None:
    """The centre bolt's head locates the axle."""
    if 0.0 <= hole - pin <= 0.0015:
        return None
    return Wrong(
        says="the centre bolt's head is {0}, the pad's hole {1}",
        numbers=(length(pin), length(hole)),
        do="A loose one lets the axle move; U-bolts clamp, they do not locate.",
    )


@about("spring.u_bolts", "tube.outer")
def u_bolts_do_not_go_round(inside: float, outer: float) -> Wrong | None:
    """U-bolts go round this tube."""
    if -0.0005 <= inside - outer <= 0.003:
        return None
    return Wrong(
        says="U-bolts of {0} round a tube of {1}",
        numbers=(length(inside), length(outer)),
        do="New ones of this tube's size; they are never used twice.",
    )


RULES: Final = (
    *(made(name) for name in BRACKETS for made in (_too_wide, _wrong_hole)),
    *(each for each in list(vars().values()) if isinstance(each, Rule)),
)
