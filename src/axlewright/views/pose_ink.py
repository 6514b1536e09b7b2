"""The three views of one pose, drawn with the pen: what is where, in millimetres of the real thing.

Of the two rows of a pose the first is at ride and drawn faint, the second is the pose itself.
"""

from collections.abc import Callable
from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.geometry import Pose, Travel
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import Pen

Spot: TypeAlias = NDArray[np.float64]
Seen: TypeAlias = Callable[[Spot], Point]
VIEWS: Final = ("side", "behind", "above")
SIDES: Final = ("left", "right")
SIGNS: Final = (1.0, -1.0)
COILS: Final = 6


def draw_pose(pen: Pen, found: Travel, pose: Pose, view: str, row: int) -> None:
    """Draw one row of a pose in one view; row 0 is faint."""
    hand = _Hand(pen, found, pose, row)
    {"side": _side, "behind": _behind, "above": _above}[view](hand)


class _Hand:
    """A pen that knows which pose it draws, and how boldly."""

    def __init__(self, pen: Pen, found: Travel, pose: Pose, row: int) -> None:
        self.pen, self.found, self.pose, self.row = pen, found, pose, row
        self.faint = row == 0
        self.points, self.made = pose.points, pose.made
        self.middle: Spot = self.made.pose[row, :3]
        self.turn: Spot = self.made.turn[row]

    def mm(self, name: str, otherwise: float = 40.0) -> float:
        """One column in mm."""
        column = self.points.columns.get(name)
        return otherwise if column is None else 1e3 * float(column[0])

    def at(self, name: str) -> Spot:
        """Where a point of the axle is in this pose."""
        return np.asarray(self.made.at[name][self.row])

    def carried(self, spot: tuple[float, float, float]) -> Spot:
        """Where a place fixed to the axle is, m."""
        return np.asarray(self.middle + self.turn @ np.array(spot))

    def bar(self, one: Point, two: Point, across: float) -> None:
        if self.faint:
            self.pen.line([one, two], "hair", dashed=True)
        else:
            self.pen.bar(one, two, across)

    def disc(self, at: Point, radius: float, weight: str = "thin") -> None:
        if self.faint:
            self.pen.disc(*at, radius, weight="hair", dashed=True, hides=False)
        else:
            self.pen.disc(*at, radius, weight=weight)

    def line(self, run: list[Point], weight: str = "thin", *, dashed: bool = False) -> None:
        self.pen.line(run, "hair" if self.faint else weight, dashed=dashed or self.faint)

    def shape(self, run: list[Point], weight: str = "thin") -> None:
        if self.faint:
            self.pen.shape(run, weight="hair", dashed=True, hides=False)
        else:
            self.pen.shape(run, weight=weight)

    def joint(self, at: Point, radius: float) -> None:
        if not self.faint:
            self.pen.disc(*at, radius)
            self.pen.disc(*at, 0.3 * radius)

    def fixed(self, at: Point, radius: float) -> None:
        """An end that the frame holds: a disc with a cross."""
        if self.faint:
            return
        self.pen.disc(*at, radius, weight="part")
        reach = 0.7 * radius
        self.pen.lines(
            [
                [(at[0] - reach, at[1] - reach), (at[0] + reach, at[1] + reach)],
                [(at[0] - reach, at[1] + reach), (at[0] + reach, at[1] - reach)],
            ],
            "hair",
        )

    def ends(self) -> list[tuple[str, Spot, Spot]]:
        """Name and both ends of every rod that can be seen, frame first."""
        return [
            (rod.name, rod.frame[0], self.middle + self.turn @ self.points.bolt(rod)[0])
            for rod in self.points.rods
            if rod.name not in {"leaf_twist", "leaf_side", "arm_far_left", "arm_far_right"}
        ]

    def thick(self, name: str) -> float:
        """Diameter of a rod, mm."""
        if name.startswith("leaf"):
            return 30.0
        return self.mm("track_bar_outer" if name == "track_bar" else "arm_outer")


def _from_left(spot: Spot) -> Point:
    return -1e3 * float(spot[0]), -1e3 * float(spot[2])


def _from_behind(spot: Spot) -> Point:
    return -1e3 * float(spot[1]), -1e3 * float(spot[2])


def _from_above(spot: Spot) -> Point:
    return -1e3 * float(spot[1]), -1e3 * float(spot[0])


def _ground(hand: _Hand) -> float:
    """Height of the ground at ride on the page."""
    low = -float(hand.points.columns["travel_lift"][0])
    return -1e3 * (low - float(hand.found.road.radius))


def _side(hand: _Hand) -> None:
    pen, radius = hand.pen, 1e3 * float(hand.found.road.radius)
    hub = _from_left(hand.carried((0.0, float(hand.points.half_track[0]), 0.0)))
    if not hand.faint:
        y = _ground(hand)
        pen.line([(hub[0] - 1.25 * radius, y), (hub[0] + 1.25 * radius, y)], "part")
    hand.disc(hub, radius, "part")
    if not hand.faint:
        hand.disc(hub, 500.0 * hand.found.rig.tyre.rim_diameter, "hair")
    _spring(hand, "left", _from_left)
    for name, near, far in hand.ends():
        if name.endswith("right") or name == "track_bar":
            continue
        hand.bar(_from_left(near), _from_left(far), hand.thick(name))
        hand.joint(_from_left(far), 0.55 * hand.thick(name))
        hand.fixed(_from_left(near), 0.75 * hand.thick(name))
    if "pinion_joint" in hand.made.at:
        nose = _from_left(hand.at("pinion_joint"))
        middle = _from_left(hand.carried((0.0, _aside(hand), 0.0)))
        case = _from_left(hand.points.at["transfer_joint"][0])
        hand.bar(nose, case, hand.mm("line_tube_outer", 60.0))
        hand.bar(middle, nose, 110.0)
        hand.joint(nose, 42.0)
        hand.fixed(case, 42.0)
    hand.disc(hub, 0.5 * hand.mm("tube_outer_left", 80.0), "part")
    if hand.points.steers:
        upper, lower = hand.at("kingpin_upper_left"), hand.at("kingpin_lower_left")
        away = 1.1 * (upper - lower)
        top, foot = _from_left(upper + away), _from_left(lower - away)
        hand.line([top, foot], "part", dashed=not hand.faint)


def _behind(hand: _Hand) -> None:
    pen, radius = hand.pen, 1e3 * float(hand.found.road.radius)
    half = float(hand.points.half_track[0])
    if not hand.faint:
        y = _ground(hand)
        edge = 1e3 * half + 0.75e3 * hand.found.rig.tyre.section_width
        pen.line([(-edge, y), (edge, y)], "part")
    for side in SIDES:
        _spring(hand, side, _from_behind)
    hubs = [hand.carried((0.0, sign * half, 0.0)) for sign in SIGNS]
    hand.bar(_from_behind(hubs[0]), _from_behind(hubs[1]), hand.mm("tube_outer_left", 80.0))
    hand.disc(_from_behind(hand.carried((0.0, _aside(hand), 0.0))), 135.0, "part")
    wide = 500.0 * hand.found.rig.tyre.section_width
    for place, hub in enumerate(hubs):
        lean = -float(hand.made.pose[hand.row, 3])
        if hand.points.steers:
            lean = SIGNS[place] * -float(hand.made.wheels[hand.row, place, 2])
        hand.shape(_wheel(_from_behind(hub), wide, radius, lean), "part")
    for name, near, far in hand.ends():
        if name == "track_bar" or (name.startswith("upper") and not hand.points.barred):
            hand.bar(_from_behind(near), _from_behind(far), hand.thick(name))
            hand.joint(_from_behind(far), 0.6 * hand.thick(name))
            hand.fixed(_from_behind(near), 0.85 * hand.thick(name))
    if hand.pose.ends:
        arm, wheel = (
            _from_behind(hand.pose.ends[each][hand.row]) for each in ("drop_arm", "drag_link")
        )
        hand.bar(arm, wheel, 30.0)
        hand.joint(wheel, 24.0)
        hand.joint(arm, 24.0)


def _above(hand: _Hand) -> None:
    pen, radius = hand.pen, 1e3 * float(hand.found.road.radius)
    half = float(hand.points.half_track[0])
    hubs = [hand.carried((0.0, sign * half, 0.0)) for sign in SIGNS]
    for name, near, far in hand.ends():
        hand.bar(_from_above(near), _from_above(far), hand.thick(name))
        hand.joint(_from_above(far), 0.55 * hand.thick(name))
        hand.fixed(_from_above(near), 0.75 * hand.thick(name))
    if "pinion_joint" in hand.made.at:
        nose = _from_above(hand.at("pinion_joint"))
        case = _from_above(hand.points.at["transfer_joint"][0])
        hand.bar(nose, case, hand.mm("line_tube_outer", 60.0))
        hand.bar(_from_above(hand.carried((0.0, _aside(hand), 0.0))), nose, 110.0)
        hand.joint(nose, 42.0)
        hand.fixed(case, 42.0)
    hand.bar(_from_above(hubs[0]), _from_above(hubs[1]), hand.mm("tube_outer_left", 80.0))
    hand.disc(_from_above(hand.carried((0.0, _aside(hand), 0.0))), 135.0, "part")
    wide = 500.0 * hand.found.rig.tyre.section_width
    for place, hub in enumerate(hubs):
        turned = float(
            hand.made.heading[hand.row, place]
            if hand.points.steers
            else hand.made.pose[hand.row, 5]
        )
        at = _from_above(hub)
        hand.shape(_wheel(at, wide, radius, -turned), "part")
        if not hand.faint and abs(turned) > np.radians(0.25):
            way = "left" if turned > 0.0 else "right"
            told = f"{_degrees(abs(turned))} {way}"
            pen.words(
                at[0], at[1] - radius - 1.2 * pen.text, told, bold=True, clear=True, last=True
            )
    if hand.pose.ends:
        ends = {name: _from_above(spot[hand.row]) for name, spot in hand.pose.ends.items()}
        hand.bar(ends["tie_rod_left"], ends["tie_rod_right"], 34.0)
        hand.bar(ends["drag_link"], ends["drop_arm"], 34.0)
        shaft = _from_above(hand.points.at["pitman_shaft"][0])
        hand.bar(shaft, ends["drop_arm"], 46.0)
        hand.fixed(shaft, 36.0)
        for end in ends.values():
            hand.joint(end, 25.0)


def _wheel(hub: Point, half_wide: float, radius: float, lean: float) -> list[Point]:
    """Outline of a wheel seen edge on, leaning clockwise by an angle."""
    corner = 0.35 * half_wide
    run = [
        (-half_wide, -radius + corner), (-half_wide + corner, -radius),
        (half_wide - corner, -radius), (half_wide, -radius + corner),
        (half_wide, radius - corner), (half_wide - corner, radius),
        (-half_wide + corner, radius), (-half_wide, radius - corner),
    ]  # fmt: skip
    cos, sin = float(np.cos(lean)), float(np.sin(lean))
    return [(hub[0] + x * cos - y * sin, hub[1] + x * sin + y * cos) for x, y in run]


def _spring(hand: _Hand, side: str, seen: Seen) -> None:
    """A coil between its seats, and the bump stop over what it lands on."""
    seat_name = "leaf_pad" if hand.points.arms == "leaves" else "spring_seat"
    if f"{seat_name}_{side}" not in hand.made.at:
        return
    if f"spring_top_{side}" in hand.points.at and not hand.faint:
        seat, top = (
            seen(hand.at(f"spring_seat_{side}")),
            seen(hand.points.at[f"spring_top_{side}"][0]),
        )
        run = [seat]
        for turn in range(2 * COILS):
            share = (turn + 0.5) / (2 * COILS)
            x = seat[0] + share * (top[0] - seat[0]) + (48.0 if turn % 2 else -48.0)
            run.append((x, seat[1] + share * (top[1] - seat[1])))
        hand.line([*run, top], "thin")
        hand.pen.line([(top[0] - 75.0, top[1]), (top[0] + 75.0, top[1])], "part")
    if hand.faint:
        return
    rest = hand.points.at[f"{seat_name}_{side}"][0]
    gap = float(hand.points.columns["travel_bump_gap"][0])
    shift = np.array([0.0, 0.0, gap])
    x, y = seen(rest + shift)
    hand.pen.box(x - 22.0, y - 55.0, x + 22.0, y, weight="part")


def _aside(hand: _Hand) -> float:
    """How far left of the middle the centre stands, m."""
    return float(hand.points.at["pinion_joint"][0, 1]) if "pinion_joint" in hand.points.at else 0.0


def _degrees(angle: float) -> str:
    return f"{np.degrees(angle):.1f}°".replace("-0.0°", "0.0°")
