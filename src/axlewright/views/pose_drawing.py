"""One pose of an axle, to scale: from the left, from behind and from above, as SVG.

What stands at ride is drawn dashed behind what has moved. Every view keeps its frame while the
axle moves, so that the eye sees the axle move and not the paper.
"""

from dataclasses import dataclass
from typing import Final, TypeAlias
from xml.sax.saxutils import escape

import numpy as np

from axlewright.geometry import Pose, Reach, Travel, pose_of, reach_of
from axlewright.views.drawing_ink import FONT, GROUND, Pen
from axlewright.views.pose_ink import VIEWS, draw_pose
from axlewright.views.pose_words import PoseTold

Box: TypeAlias = tuple[float, float, float, float]
LETTERS: Final = 25.0  # heights of letters across a view, so that a phone can be read
TITLES: Final = {"side": "from the left", "behind": "from behind", "above": "from above"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PoseView:
    """One view: its key, what it is called, its SVG, and its size in mm of the real thing."""

    key: str
    title: str
    svg: str
    wide: float
    high: float


def pose_views(
    found: Travel,
    pose: Pose,
    told: PoseTold,
    *,
    name: str = "pose",
    views: tuple[str, ...] = VIEWS,
) -> tuple[PoseView, ...]:
    """Draw one pose of a study; ``told`` letters it, and tells it to who cannot see it."""
    reach = reach_of(found)
    return tuple(_view(found, pose, reach, key, told, name) for key in views)


def _view(found: Travel, pose: Pose, reach: Reach, key: str, told: PoseTold, name: str) -> PoseView:
    left, top, right, bottom = _frame(found, reach, key)
    text = (right - left) / LETTERS
    top -= 2.4 * text
    wide, high = right - left, bottom - top
    pen = Pen(f"{name}-{key}", text, {})
    moved = pose.bump or pose.roll or pose.arm
    if moved or not pose.reached:
        draw_pose(pen, found, pose, key, 0)
    if pose.reached:
        draw_pose(pen, found, pose, key, 1)
    at = left + 0.4 * text, top + 0.9 * text
    pen.words(*at, told.labels.get(key, ""), "start", bold=True, clear=True, last=True)
    ident = f"{name}-{key}-told"
    shape = f"{left:.1f} {top:.1f} {wide:.1f} {high:.1f}"
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{shape}" width="{wide:.1f}" '
        f'height="{high:.1f}" role="img" aria-labelledby="{ident}" font-family="{FONT}" '
        f'class="axle-drawing" color="currentColor">'
        f'<title id="{ident}">{escape(f"{TITLES[key]}: {told.words}")}</title>'
        f'<g stroke="currentColor" stroke-width="{pen.weight("thin"):.2f}" fill="{GROUND}" '
        f'class="ground" stroke-linejoin="round" stroke-linecap="round">{pen.drawn()}</g></svg>'
    )
    return PoseView(key=key, title=TITLES[key], svg=svg, wide=wide, high=high)


def _frame(found: Travel, reach: Reach, key: str) -> Box:
    """Bounds of a view that hold every pose: those at ride, and room for what moves."""
    pen = Pen("frame", 1.0, {})
    draw_pose(pen, found, pose_of(found), key, 1)
    left, top, right, bottom = pen.extent()
    up, down = 1e3 * reach.up, -1e3 * reach.down
    sway = 1e3 * float(found.points.columns["radius"][0]) * float(np.sin(reach.roll))
    edge = 40.0
    if key == "side":
        return left - edge, top - up - edge, right + edge, bottom + down + edge
    if key == "behind":
        lean = 1e3 * float(found.points.half_track[0]) * float(np.sin(reach.roll))
        grown = max(up, lean), max(down, lean)
        return (
            left - sway - edge,
            top - grown[0] - edge,
            right + sway + edge,
            bottom + grown[1] + edge,
        )
    lock = float(found.points.columns["lock_angle"][0]) if found.points.steers else 0.35
    side = 1e3 * float(found.points.columns["radius"][0]) * float(np.sin(lock))
    return left - side, top - 2.0 * edge, right + side, bottom + edge
