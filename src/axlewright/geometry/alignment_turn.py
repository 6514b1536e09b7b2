"""From the toe that is wanted to what to turn, which way and how far; and the steering wheel.

Toe is set on the tie rod, the steering wheel on the drag link; the track bar sets neither: it puts
the axle in the middle.
"""

from dataclasses import dataclass
from math import cos, sqrt
from typing import Final

import numpy as np

from axlewright.geometry.alignment_layout import Layout, rods_for
from axlewright.geometry.alignment_measured import Measured
from axlewright.physics import alignment, linkage
from axlewright.rig import Readings, Rig, screw_pitch

FLATS: Final = 6  # of a hexagon, in one turn
RATIO: Final = 16.0  # steering wheel to road wheels; memory, 14 to 20 is usual


@dataclass(frozen=True, slots=True, kw_only=True)
class RodTurn:
    """What to do to one rod.

    ``growth`` is exact, m, positive longer; ``simple`` the small-angle figure beside it and
    ``doubt`` the standard uncertainty that the readings and the arm leave. ``turns`` is its size
    in turns; None where the pitch is not known. ``one_flat`` is what a sixth of a turn is worth,
    rad of toe or of both wheels. ``exact`` tells that both rods were solved in space, with places
    that were ``taped`` or assumed. ``top_goes`` says how a rod or sleeve that turns in place goes:
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
    taped: bool

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


def tie_rod_turn(
    layout: Layout, readings: Readings, rig: Rig, toe: Measured, wanted: float
) -> tuple[RodTurn, Recentring]:
    """What to turn for a toe, and what the drag link then needs."""
    needed = wanted - toe.value
    ahead = 1.0 if layout.ahead else -1.0
    flat_arm = layout.square_arm
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
    need_drag = -steers_left * (mean + shifted) * layout.drag_square
    turn = _rod_turn(
        "tie_rod",
        readings,
        growth=simple if found is None else found[0],
        simple=simple,
        doubt=sqrt((flat_arm * toe.standard) ** 2 + (needed * _arm_doubt(rig, readings)) ** 2),
        arm=layout.arm,
        arm_given=bool(readings.values("tie_rod.arm")) or "steering_arm" in rig.given,
        ahead=layout.ahead,
        ahead_given=layout.taped
        or bool(readings.word("tie_rod.ahead"))
        or _said(rig, "steering.tie_rod_ahead"),
        exact=found is not None,
        taped=layout.taped,
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
        ahead_given=layout.taped or bool(readings.word("drag_link.ahead")),
        exact=found is not None,
        taped=layout.taped,
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
    taped: bool,
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
        taped=taped,
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


def _or(value: float | None, otherwise: float) -> float:
    return otherwise if value is None else value
