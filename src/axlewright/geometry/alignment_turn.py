"""From the toe that is wanted to what to turn, which way and how far; and the steering wheel.

Toe is set on the tie rod, the steering wheel on the drag link; the track bar sets neither: it puts
the axle in the middle.
"""

from dataclasses import dataclass
from math import cos, nan, sqrt
from typing import Final

import numpy as np
from numpy.typing import NDArray

from axlewright.geometry.alignment_measured import Measured
from axlewright.physics import alignment, linkage
from axlewright.rig import Columns, Readings, Rig, screw_pitch

FLATS: Final = 6  # of a hexagon, in one turn
RATIO: Final = 16.0  # steering wheel to road wheels; memory, 14 to 20 is usual
STEPS: Final = 8  # of Newton's rule; three are enough
NUDGE: Final = 1e-4  # m
Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class RodTurn:
    """What to do to one rod.

    ``growth`` is exact, m, positive longer; ``simple`` the small-angle figure beside it and
    ``doubt`` the standard uncertainty that the readings and the arm leave. ``turns`` is its size
    in turns; None where the pitch is not known. ``one_flat`` is what a sixth of a turn is worth,
    rad of toe or of both wheels. ``top_goes`` says how a rod or sleeve that turns in place goes:
    its top forward or back; with one threaded end it is the end that turns.
    """

    rod: str
    growth: float
    simple: float
    doubt: float
    arm: float
    arm_given: bool
    ahead: bool
    ahead_given: bool
    in_place: bool
    per_turn: float | None
    turns: float | None
    one_flat: float | None
    right_hand_end: str
    top_goes: str
    exact: bool

    @property
    def longer(self) -> bool:
        """Whether the rod has to grow."""
        return self.growth > 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Recentring:
    """What the drag link then needs.

    ``moves`` is the wheel that alone moves while the drag link holds the other ("left", "right",
    or nothing where it ends on the tie rod). ``wheel_off`` is where the steering wheel would
    stand, driving straight, were the drag link left alone: rad, to the left.
    """

    rod: RodTurn
    moves: str
    wheel_off: float
    ratio: float
    ratio_given: bool
    off_given: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The steering of one rig as points, from what is given, else assumed.

    m from the axle's middle; ``hand`` is +1 where the drag link's end stands left of its pitman.
    """

    pivot: Array
    axis: Array
    tie: Array
    drag_on: int
    drag: Array
    pitman: Array
    arm: float
    drag_arm: float
    ahead: bool
    drag_ahead: bool
    hand: float


def layout_of(rig: Rig, readings: Readings, columns: Columns) -> Layout:
    """Lay the steering out from the rig's numbers and what the readings say of it."""
    half = 0.5 * _one(columns, "kingpin_spacing")
    arm = _or(readings.value("tie_rod.arm"), _one(columns, "steering_arm"))
    drag_arm = _or(readings.value("drag_link.arm"), _one(columns, "steering_arm"))
    ahead = tie_rod_ahead(rig, readings)
    drag_ahead = readings.word("drag_link.ahead", "yes") == "yes"
    caster, lean = _one(columns, "caster"), _one(columns, "inclination")
    inset = 0.0 if ahead else arm * half / sqrt(half**2 + _one(columns, "wheelbase") ** 2)
    along = sqrt(arm**2 - inset**2) * (1.0 if ahead else -1.0)
    sides = np.array([1.0, -1.0])
    tie = np.stack([np.full(2, along), sides * (half - inset), np.zeros(2)], axis=-1)
    axis = np.stack([np.full(2, -np.tan(caster)), -sides * np.tan(lean), np.ones(2)], axis=-1)
    pivot = np.stack([np.zeros(2), sides * half, np.zeros(2)], axis=-1)
    usual = "right knuckle" if rig.words["steering.drive_side"] == "left" else "left knuckle"
    on = readings.word("drag_link.on", usual)
    side = 1.0 if on == "left knuckle" else -1.0
    if on == "tie rod":
        side = -1.0 if usual == "right knuckle" else 1.0
    end = np.array([drag_arm * (1.0 if drag_ahead else -1.0), side * half, 0.0])
    reach = _one(columns, "drag_link_length")
    return Layout(
        pivot=pivot,
        axis=axis / np.linalg.norm(axis, axis=-1, keepdims=True),
        tie=tie,
        drag_on={"left knuckle": linkage.ON_LEFT, "right knuckle": linkage.ON_RIGHT}.get(
            on, linkage.ON_TIE_ROD
        ),
        drag=np.array([0.85 if side < 0.0 else 0.15, 0.0, 0.0]) if on == "tie rod" else end,
        pitman=np.array([tie[0, 0] if on == "tie rod" else end[0], side * (half - reach), 0.0]),
        arm=arm,
        drag_arm=arm if on == "tie rod" else drag_arm,
        ahead=ahead,
        drag_ahead=ahead if on == "tie rod" else drag_ahead,
        hand=side,
    )


def tie_rod_ahead(rig: Rig, readings: Readings) -> bool:
    """Whether the tie rod lies ahead of the axle, from the readings or the rig file."""
    return readings.word("tie_rod.ahead", rig.words["steering.tie_rod_ahead"]) == "yes"


def wheels(layout: Layout, toe: float, mean: float, tie: Array, drag: Array) -> Array:
    """Headings left and right, (lanes, 2), rad, for rods that much longer than they are, (lanes,).

    ``toe`` and ``mean`` are whole toe-in and mean heading as the rods are now.
    """
    sides = np.array([1.0, -1.0])
    spindle = linkage.spindle_direction(0.5 * toe - sides * mean, 0.0, sides)
    tied = linkage.rod_lengths(layout.tie[0], layout.tie[1])
    share = layout.drag[0]
    at = (
        (1.0 - share) * layout.tie[0] + share * layout.tie[1]
        if layout.drag_on == linkage.ON_TIE_ROD
        else layout.drag
    )
    dragged = linkage.rod_lengths(layout.pitman, at)
    steering = linkage.Steering(
        pivot=layout.pivot,
        axis=layout.axis,
        spindle=spindle,
        tie_end=layout.tie,
        drag_on=layout.drag_on,
        drag_end=layout.drag,
        pitman=layout.pitman,
        tie_length=tied + np.asarray(tie),
        drag_length=dragged + np.asarray(drag),
    )
    # The axle stays where it rides, whatever holds it there: any four rods that fix it will do.
    frame = np.array([[-0.9, 0.4, 0.0], [-0.9, -0.4, 0.0], [-0.8, 0.0, 0.2], [0.1, 0.4, 0.1]])
    axle = np.array([[0.0, 0.45, -0.1], [0.0, -0.45, -0.1], [0.0, 0.0, 0.2], [0.1, -0.4, 0.1]])
    posed = linkage.axle_poses(
        linkage.axle_linkage(frame, axle, abs(layout.pivot[0, 1]) + 0.08, steering=steering),
        np.zeros((1, 2)),
    )
    sound = (posed.status == linkage.POSED)[:, None]
    return np.where(sound, posed.wheels[:, :, 1], nan)


def rods_for(layout: Layout, toe: float, mean: float, wanted: float) -> tuple[float, float] | None:
    """Growth of tie rod and drag link, m, that gives a toe and both wheels straight; exact.

    None where the rods cannot reach.

    References
    ----------
    geometry: two rods of fixed length, solved by Newton's rule
    """
    grown = np.zeros(2)
    for _ in range(STEPS):
        tried = grown + NUDGE * np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]])
        turned = wheels(layout, toe, mean, tried[:, 0], tried[:, 1])
        off = np.stack([turned[:, 1] - turned[:, 0] - wanted, turned.sum(axis=-1)], axis=-1)
        if not np.all(np.isfinite(off)):
            return None
        slope = ((off[1:] - off[0]) / NUDGE).T
        if abs(np.linalg.det(slope)) < 1e-6:
            return None
        move = np.linalg.solve(slope, off[0])
        grown = grown - move
        if float(np.max(np.abs(move))) < 1e-9:
            break
    return float(grown[0]), float(grown[1])


def tie_rod_turn(
    layout: Layout, readings: Readings, rig: Rig, toe: Measured, wanted: float
) -> tuple[RodTurn, Recentring]:
    """What to turn for a toe, and what the drag link then needs."""
    needed = wanted - toe.value
    ahead = 1.0 if layout.ahead else -1.0
    flat_arm = abs(float(layout.tie[0, 0]))
    simple = float(alignment.rod_change(needed, flat_arm, ahead))
    ratio = _or(readings.value("steering_wheel.ratio"), RATIO)
    told_off = readings.value("steering_wheel.off_left")
    mean = 0.0 if told_off is None else -told_off / ratio
    found = rods_for(layout, toe.value, mean, wanted)
    # By how much both wheels turn left when the drag link grows: its end is pushed from the pitman.
    steers_left = layout.hand * (1.0 if layout.drag_ahead else -1.0)
    # A tie rod that pulls the free wheel in moves the mean heading by half, away from that wheel.
    free = "left" if layout.hand < 0.0 else "right"
    shifted = 0.0 if layout.drag_on == linkage.ON_TIE_ROD else 0.5 * needed
    shifted *= -1.0 if free == "left" else 1.0
    need_drag = -steers_left * (mean + shifted) * layout.drag_arm
    turn = _rod_turn(
        "tie_rod",
        readings,
        growth=simple if found is None else found[0],
        simple=simple,
        doubt=sqrt((flat_arm * toe.standard) ** 2 + (needed * _arm_doubt(rig, readings)) ** 2),
        arm=layout.arm,
        arm_given=bool(readings.values("tie_rod.arm")) or "steering_arm" in rig.given,
        ahead=layout.ahead,
        ahead_given=bool(readings.word("tie_rod.ahead")) or _said(rig, "steering.tie_rod_ahead"),
        exact=found is not None,
    )
    drag = _rod_turn(
        "drag_link",
        readings,
        growth=need_drag if found is None else found[1],
        simple=need_drag,
        doubt=abs(need_drag) * 0.1,
        arm=layout.drag_arm,
        arm_given=bool(readings.values("drag_link.arm")),
        ahead=layout.drag_ahead,
        ahead_given=bool(readings.word("drag_link.ahead")),
        exact=found is not None,
    )
    return turn, Recentring(
        rod=drag,
        moves="" if layout.drag_on == linkage.ON_TIE_ROD else free,
        wheel_off=-(mean + shifted) * ratio,
        ratio=ratio,
        ratio_given=bool(readings.values("steering_wheel.ratio")),
        off_given=told_off is not None,
    )


def track_bar_growth(to_the_left: float, drop: float, span: float, *, on_axle: str) -> float:
    """Growth of the track bar that moves the axle so far to the left, m.

    The bar pushes its axle end away from its frame end. It moves the axle and sets no toe.

    References
    ----------
    geometry: a rod at a slope
    """
    away = 1.0 if on_axle == "left" else -1.0
    return away * to_the_left * cos(np.arcsin(np.clip(drop / span, -0.9, 0.9)))


def _rod_turn(
    rod: str,
    readings: Readings,
    *,
    growth: float,
    simple: float,
    doubt: float,
    arm: float,
    arm_given: bool,
    ahead: bool,
    ahead_given: bool,
    exact: bool,
) -> RodTurn:
    thread = readings.word(f"{rod}.thread")
    in_place = readings.word(f"{rod}.threaded", "left and right hand") != "one end"
    per_turn = turns = one_flat = None
    if thread:
        pitch = screw_pitch(thread)
        per_turn = float(alignment.rod_per_turn(pitch, pitch if in_place else 0.0))
        turns = abs(growth) / per_turn
        one_flat = abs(float(alignment.toe_change(per_turn / FLATS, arm, 1.0)))
    end = readings.word(f"{rod}.right_hand_end")
    return RodTurn(
        rod=rod,
        growth=growth,
        simple=simple,
        doubt=doubt,
        arm=arm,
        arm_given=arm_given,
        ahead=ahead,
        ahead_given=ahead_given,
        in_place=in_place,
        per_turn=per_turn,
        turns=turns,
        one_flat=one_flat,
        right_hand_end=end,
        top_goes=top_goes(end, longer=growth > 0.0) if end and in_place else "",
        exact=exact,
    )


def top_goes(right_hand_end: str, *, longer: bool) -> str:
    """Which way the top of a sleeve goes: "forward" or "back".

    Seen from its right-hand end, a sleeve that turns clockwise leaves both ends: the rod grows.
    Seen from the vehicle's right, clockwise is top forward.

    References
    ----------
    geometry: a right-handed screw
    """
    return "forward" if longer == (right_hand_end == "right") else "back"


def _arm_doubt(rig: Rig, readings: Readings) -> float:
    """Standard doubt of the tie rod's arm, m."""
    if readings.values("tie_rod.arm"):
        return 0.004
    given = rig.given.get("steering_arm")
    return given.doubt if given is not None else 0.017 * 1.2 / 1.645  # memory: 170 mm x/: 1.2


def _said(rig: Rig, path: str) -> bool:
    return rig.words.get(path, "") == "yes"  # "no" may be the default, nobody's word


def _one(columns: Columns, name: str) -> float:
    return float(columns[name][0])


def _or(value: float | None, otherwise: float) -> float:
    return otherwise if value is None else value


def heading_gain(layout: Layout, growth: float) -> tuple[float, float]:
    """By how much left and right wheel turn left when the tie rod alone grows; exact, rad."""
    turned = wheels(layout, 0.0, 0.0, np.array([growth]), np.zeros(1))[0]
    return float(turned[0]), float(turned[1])
