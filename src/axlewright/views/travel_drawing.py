"""The axle moving: hanging, at ride and in bump from the left, and crossed from behind, as SVG.

Lines of the colour of the text around them; hanging is dashed, ride heavy, bump thin. In
millimetres of the real thing; every rod lies where it was solved to lie.
"""

from dataclasses import dataclass
from typing import Final, TypeAlias
from xml.sax.saxutils import escape

import numpy as np
from numpy.typing import NDArray

from axlewright.geometry import Hardpoints, Motion, Travel, motion
from axlewright.views.travel import angle, length

Point: TypeAlias = tuple[float, float]
STYLES: Final = {  # of each pose: width of line, dashes
    "hanging": (5.0, "22 14"),
    "at ride": (13.0, ""),
    "in bump": (5.0, ""),
}
TEXT: Final = 38.0
EDGE: Final = 60.0
FONT: Final = "DejaVu Sans Mono, ui-monospace, Menlo, Consolas, monospace"


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelPicture:
    """A drawing as SVG text, its size in millimetres of the real thing, and the same in words."""

    svg: str
    wide: float
    high: float
    words: str


def travel_picture(found: Travel, system: str = "metric") -> TravelPicture:
    """Draw one axle through its travel: from the left, and from behind with wheels crossed."""
    low = -float(found.points.columns["travel_lift"][0])
    crossed = min(0.5 * (found.stances[2].height - found.stances[0].height), 0.15)
    heights = [(each.height, each.height) for each in found.stances] + [(crossed, -crossed)]
    made = motion(found.points, low + np.array(heights))
    ground = -1e3 * (float(found.road.radius) - low)
    side, across = _Sheet(), _Sheet()
    for row, stance in enumerate(found.stances):
        _from_left(side, found.points, made, row, stance.name)
    side.line([(-560.0, -ground), (1250.0 if _behind(found) else 560.0, -ground)], "ground")
    _from_behind(across, found.points, made, 1, "at ride")
    _from_behind(across, found.points, made, 3, "hanging")
    half = 1.15e3 * float(found.points.half_track[0])
    across.line([(-half, -ground), (half, -ground)], "ground")
    side.say("from the left; dashed hanging, heavy at ride, thin in bump")
    across.say("from behind; heavy at ride, dashed crossed")
    words = (
        f"The axle drawn three times from its left side: hanging {length(-heights[0][0], system)} "
        f"down, at ride, and {length(heights[2][0], system)} up at its bump stops; it turns by "
        f"{angle(abs(float(made.pose[2, 4] - made.pose[0, 4])))} between. Below, from behind, at "
        f"ride and with its wheels crossed by {length(2.0 * crossed, system)}."
    )
    return _stacked([side, across], words)


def _behind(found: Travel) -> bool:
    return found.points.steers


class _Sheet:
    """One view in the making: y down, as SVG has it."""

    def __init__(self) -> None:
        self.body: list[str] = []
        self.corners: list[Point] = []
        self.title = ""

    def line(self, run: list[Point], pose: str) -> None:
        """Draw an open line."""
        width, dashes = STYLES.get(pose, (7.0, ""))
        self.corners += run
        told = " ".join(f"{x:.1f},{y:.1f}" for x, y in run)
        dash = f' stroke-dasharray="{dashes}"' if dashes else ""
        self.body.append(f'<polyline points="{told}" fill="none" stroke-width="{width}"{dash}/>')

    def ring(self, at: Point, radius: float, pose: str) -> None:
        """Draw a circle."""
        width, dashes = STYLES[pose]
        self.corners += [(at[0] - radius, at[1] - radius), (at[0] + radius, at[1] + radius)]
        dash = f' stroke-dasharray="{dashes}"' if dashes else ""
        self.body.append(
            f'<circle cx="{at[0]:.1f}" cy="{at[1]:.1f}" r="{radius:.1f}" fill="none" '
            f'stroke-width="{width}"{dash}/>'
        )

    def say(self, title: str) -> None:
        """Letter the view beneath."""
        self.title = title


def _left(spot: NDArray[np.float64]) -> Point:
    return -1e3 * float(spot[0]), -1e3 * float(spot[2])


def _rear(spot: NDArray[np.float64]) -> Point:
    return -1e3 * float(spot[1]), -1e3 * float(spot[2])


def _ends(
    points: Hardpoints, made: Motion, row: int
) -> dict[str, tuple[NDArray[np.float64], NDArray[np.float64]]]:
    """Both ends of every rod, frame first, in one pose."""
    turn, at = made.turn[row], made.pose[row, :3]
    return {
        rod.name: (rod.frame[0], at + turn @ rod.axle[0])
        for rod in points.rods
        if rod.name not in {"leaf_twist", "leaf_side"}
    }


def _from_left(sheet: _Sheet, points: Hardpoints, made: Motion, row: int, pose: str) -> None:
    middle = _left(made.pose[row, :3])
    radius = 1e3 * float(points.columns["radius"][0])
    tube = 500.0 * float(points.columns["tube_outer_left"][0])
    sheet.ring(middle, radius, pose)
    sheet.ring(middle, tube, pose)
    for name, (near, far) in _ends(points, made, row).items():
        if name.endswith("right") or name == "track_bar":
            continue
        sheet.line([_left(near), _left(far)], pose)
    if points.steers:
        ends = [made.at[f"kingpin_{end}_left"][row] for end in ("upper", "lower")]
        reach = 0.6 * (ends[0] - ends[1])
        sheet.line([_left(ends[0] + reach), _left(ends[1] - reach)], pose)
    sheet.line([middle, _left(made.at["pinion_joint"][row])], pose)
    sheet.line([_left(made.at["pinion_joint"][row]), _left(points.at["transfer_joint"][0])], pose)


def _from_behind(sheet: _Sheet, points: Hardpoints, made: Motion, row: int, pose: str) -> None:
    turn, at = made.turn[row], made.pose[row, :3]
    half = float(points.half_track[0])
    hubs = [at + turn @ np.array([0.0, sign * half, 0.0]) for sign in (1.0, -1.0)]
    sheet.line([_rear(hub) for hub in hubs], pose)
    radius = float(points.columns["radius"][0])
    for hub in hubs:
        wheel = [hub + turn @ np.array([0.0, 0.0, up * radius]) for up in (1.0, -1.0)]
        sheet.line([_rear(end) for end in wheel], pose)
    for name, (near, far) in _ends(points, made, row).items():
        if name == "track_bar":
            sheet.line([_rear(near), _rear(far)], pose)
    for side in ("left", "right"):
        if f"spring_seat_{side}" in made.at:
            seat = made.at[f"spring_seat_{side}"][row]
            sheet.line([_rear(points.at[f"spring_top_{side}"][0]), _rear(seat)], pose)


def _stacked(sheets: list[_Sheet], words: str) -> TravelPicture:
    bounds = []
    for sheet in sheets:
        xs, ys = zip(*sheet.corners, strict=True)
        bounds.append((min(xs), max(xs), min(ys), max(ys)))
    wide = max(right - left for left, right, _, _ in bounds) + 2.0 * EDGE
    parts, down = [], EDGE
    for sheet, (left, right, top, bottom) in zip(sheets, bounds, strict=True):
        x = 0.5 * wide - 0.5 * (left + right)
        parts.append(
            f'<g transform="translate({x:.1f} {down - top:.1f})">{"".join(sheet.body)}</g>'
        )
        down += bottom - top + 1.6 * TEXT
        parts.append(
            f'<text x="{0.5 * wide:.1f}" y="{down:.1f}" text-anchor="middle" stroke="none" '
            f'font-family="{FONT}" font-size="{TEXT}">{escape(sheet.title)}</text>'
        )
        down += 1.2 * TEXT
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:.1f} {down:.1f}" role="img" '
        f'fill="currentColor" stroke="currentColor" stroke-linecap="round">'
        f"<title>The axle through its travel</title><desc>{escape(words)}</desc>"
        f"{''.join(parts)}</svg>"
    )
    return TravelPicture(svg=svg, wide=wide, high=down, words=words)
