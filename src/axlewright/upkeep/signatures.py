"""What each cause does to each reading, from the axle's sizes by small-angle geometry.

Signs: camber with the top out, a tube with its outer end up, caster with the top back, headings
with the front to the left, a wheelbase longer on the left, bows with the ends up or back. Sides are
+1 on the left and -1 on the right.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final, TypeAlias

from axlewright.physics import rod_bow
from axlewright.rig import Rig, point_columns

Effect: TypeAlias = Mapping[str, float]

SIDES: Final = {"left": 1.0, "right": -1.0}
BEND_AT: Final = 0.25  # of the bare tube, outward from the centre; common practice, no source
WHEEL_RATIO: Final = (14.0, 17.0, 20.0)  # steering wheel over road wheels; memory, no source
LINK_SLOPE: Final = (
    0.09  # of a drag link, up or down across the vehicle; common practice, no source
)
END: Final = 0.08  # from the end of a rear tube to the edge of its flange, m; memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Sizes:
    """Sizes of one axle that turn a bend into readings, m.

    ``ahead`` is 1 where the tie rod lies ahead of the axle, else -1; ``link_side`` the side whose
    knuckle the drag link holds. Angles of the steering axis in rad.
    """

    axle: str
    track: float
    tube_end: float
    bare: Mapping[str, float]
    radius: float
    arm: float
    rod: float
    link: float
    ahead: float
    link_side: str
    caster: float
    inclination: float

    @property
    def stand_out(self) -> float:
        """Wheel's centre outward of the steering axis; nought behind, where there is none."""
        return 0.5 * (self.track - self.rod) if self.axle == "front" else 0.0

    @property
    def span(self) -> float:
        """Between the outer ends of the bare tubes."""
        return 2.0 * self.tube_end

    def bend(self, side: str) -> float:
        """Usual place of a bend, outward from the middle of the axle."""
        return self.tube_end - (1.0 - BEND_AT) * self.bare[side]

    def bow(self, side: str) -> float:
        """Bow under a string from end to end for a bend of one radian at its usual place."""
        inner = self.span - (self.tube_end - self.bend(side))
        return (self.tube_end - self.bend(side)) * inner / self.span


def sizes_of(rig: Rig) -> Sizes:
    """Sizes of a rig's axle, given or assumed."""
    columns = {name: float(column[0]) for name, column in point_columns(rig).items()}
    front = rig.axle == "front"
    half = 0.5 * columns["kingpin_spacing" if front else "track"]
    ends = columns["forging_length"] + (0.0 if front else END)
    return Sizes(
        axle=rig.axle,
        track=columns["track"],
        tube_end=half - ends,
        bare={side: columns[f"tube_bare_{side}"] for side in SIDES},
        radius=columns["radius"],
        arm=columns.get("steering_arm", 1.0),
        rod=columns.get("kingpin_spacing", 1.0),
        link=columns.get("drag_link_length", 1.0),
        ahead=1.0 if rig.words["steering.tie_rod_ahead"] == "yes" else -1.0,
        link_side="left" if rig.words["steering.drive_side"] == "right" else "right",
        caster=columns["caster"] if front else 0.0,
        inclination=columns["inclination"] if front else 0.0,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way for a cause to go: its share, what a size does, and what comes beside it.

    ``beside`` is what comes with it: middle and standard deviation, as readings; ``blur`` what
    comes with each unit of size, one way or the other (standard deviation).
    """

    share: float
    effect: Callable[[float], Effect]
    beside: tuple[tuple[float, float, Effect], ...] = ()
    blur: Effect = field(default_factory=dict)


def ways(kind: str, side: str, sizes: Sizes, across: float) -> tuple[Way, ...]:
    """Ways of one cause on one side (or on none); sizes are signed."""
    made: tuple[Way, ...] = _WAYS[kind](side, sizes, across)
    return made


def _camber(side: str, angle: float) -> dict[str, float]:
    return {f"camber_out_{side}": angle, f"camber_in_{side}": angle}


def _play(side: str, angle: float) -> dict[str, float]:
    return {f"camber_out_{side}": 0.5 * angle, f"camber_in_{side}": -0.5 * angle}


def _turned(sizes: Sizes, left: float, right: float) -> dict[str, float]:
    """Both wheels turned to the left by so much, steering wheel held in its middle.

    A wheel that turns also leans (by the caster) and goes back or forward (about its axis).
    """
    seen = {"heading_left": left, "heading_right": right, "toe_change": right - left}
    seen |= {
        "wheel_off": -WHEEL_RATIO[1] * 0.5 * (left + right),
        "setback": -sizes.stand_out * (left + right),
        "included_left": sizes.caster * left,
        "included_right": -sizes.caster * right,
    }
    return seen | _camber("left", sizes.caster * left) | _camber("right", -sizes.caster * right)


def _forging_turned(side: str, sizes: Sizes, left: float) -> dict[str, float]:
    """A forging turned to the left about the upright while rods hold its wheel's heading."""
    hand = SIDES[side]
    seen = {f"caster_{side}": -hand * sizes.inclination * left}
    return _camber(side, -hand * sizes.caster * left) | seen


def _tube_up(side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    def effect(up: float) -> Effect:
        seen = {f"tube_angle_{side}": up, "bow_up": up * sizes.bow(side)}
        return _camber(side, -up) | seen

    blur: Effect = {}
    if sizes.axle == "front" and side == sizes.link_side:
        raised = LINK_SLOPE * (0.5 * sizes.track - sizes.bend(side)) / sizes.arm
        blur = _turned(sizes, raised, raised)
    return (Way(share=1.0, effect=effect, blur=blur),)


def _tube_back(side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    lever = 0.5 * sizes.track - sizes.bend(side)

    def effect(back: float) -> Effect:
        seen = {"setback": -SIDES[side] * back * lever, "bow_back": back * sizes.bow(side)}
        if sizes.axle == "rear":
            return seen | {f"heading_{side}": SIDES[side] * back}
        seen["setback"] += SIDES[side] * back * sizes.stand_out  # the wheel keeps its heading
        return seen | _forging_turned(side, sizes, SIDES[side] * back)

    return (Way(share=1.0, effect=effect),)


def _loose(side: str, sizes: Sizes, across: float) -> tuple[Way, ...]:
    up = {f"tube_angle_{side}": 1.0, "bow_up": sizes.bow(side)} | _camber(side, -1.0)
    back = {"bow_back": sizes.bow(side), "setback": -SIDES[side] * 0.5 * sizes.track}
    return (
        Way(
            share=1.0,
            effect=lambda turn: {f"caster_{side}": -turn},
            beside=((0.8 * across, 0.6 * across, up), (0.0, 0.5 * across, back)),
        ),
    )


def _forging(side: str, _sizes: Sizes, across: float) -> tuple[Way, ...]:
    twist = {f"caster_{side}": 1.0}
    way = Way(
        share=1.0, effect=lambda top_in: _camber(side, -top_in), beside=((0.0, across, twist),)
    )
    return (way,)


def _knuckle(side: str, sizes: Sizes, across: float) -> tuple[Way, ...]:
    def spindle(angle: float) -> Effect:
        return _camber(side, angle) | {f"included_{side}": angle}

    def arm(angle: float) -> Effect:
        return _turned(sizes, *((angle, 0.0) if side == "left" else (0.0, angle)))

    return (
        Way(share=0.5, effect=spindle, beside=((0.0, across, arm(1.0)),)),
        Way(share=0.5, effect=arm, beside=((0.0, across, spindle(1.0)),)),
    )


def _pivot(side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    def effect(play: float) -> Effect:
        seen = {f"{key}_{side}": play * sizes.radius for key in ("rock_braked", "rock_free")}
        return _play(side, play) | seen

    return (Way(share=1.0, effect=effect),)


def _hub(side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    def effect(play: float) -> Effect:
        return _play(side, play) | {f"rock_free_{side}": play * sizes.radius}

    return (Way(share=1.0, effect=effect),)


def _shorter(bow: float, length: float) -> float:
    """Half-way between an even bow and a kink."""
    even = float(rod_bow.even_bow_shortening(bow, length))
    return 0.5 * (even + float(rod_bow.kink_shortening(bow, length)))


def _tie_rod(_side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    def effect(bow: float) -> Effect:
        toe_in = sizes.ahead * _shorter(bow, sizes.rod) / sizes.arm
        turned = _turned(sizes, *((-toe_in, 0.0) if sizes.link_side == "right" else (0.0, toe_in)))
        return turned | {"tie_rod_bow": abs(bow)}

    return (Way(share=1.0, effect=effect),)


def _drag_link(_side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    def effect(bow: float) -> Effect:
        turn = _shorter(bow, sizes.link) / sizes.arm * (1.0 if bow > 0.0 else -1.0)
        return _turned(sizes, turn, turn) | {"drag_link_bow": abs(bow)}

    return (Way(share=1.0, effect=effect),)


def _moved(_side: str, sizes: Sizes, across: float) -> tuple[Way, ...]:
    def effect(yaw: float) -> Effect:
        seen = {"setback": yaw * sizes.rod}  # the wheels keep their heading
        both = (_forging_turned(each, sizes, -yaw) for each in SIDES)
        return seen | next(both) | next(both)

    shifted = _turned(sizes, 1.0 / sizes.arm, 1.0 / sizes.arm)
    return (Way(share=1.0, effect=effect, beside=((0.0, across, shifted),)),)


def _moved_rear(_side: str, sizes: Sizes, _across: float) -> tuple[Way, ...]:
    def effect(yaw: float) -> Effect:
        return {"setback": yaw * sizes.track, "heading_left": -yaw, "heading_right": -yaw}

    return (Way(share=1.0, effect=effect),)


_WAYS: Final[Mapping[str, Callable[[str, Sizes, float], tuple[Way, ...]]]] = {
    "tube_up": _tube_up,
    "tube_back": _tube_back,
    "loose": _loose,
    "forging": _forging,
    "knuckle": _knuckle,
    "pivot": _pivot,
    "hub": _hub,
    "tie_rod": _tie_rod,
    "drag_link": _drag_link,
    "moved": _moved,
    "moved_rear": _moved_rear,
}
