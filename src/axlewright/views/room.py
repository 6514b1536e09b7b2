"""The room under an axle: in words, one level down, and drawn from behind, before and after."""

from dataclasses import dataclass
from typing import Final
from xml.sax.saxutils import escape

from axlewright.geometry import Clearance, Travel
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import FONT, GROUND, Pen
from axlewright.views.phrases import quantity
from axlewright.views.travel import angle, change_lines, length

LAW: Final = (
    "The mean height is that of travel.step, or usual for this use (memory); an exponential law "
    "about it, anywhere between the tyres alike. It is a comparison, not a promise."
)
LETTERS: Final = 28.0  # heights of letters across the drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomPicture:
    """A drawing as SVG, its size in mm of the real thing, and the same in words."""

    svg: str
    wide: float
    high: float
    words: str


def touch_line(found: Travel, system: str = "metric") -> str:
    """How many of a hundred rocks and steps between the wheels touch the axle, with its band."""
    band = ""
    if "touch" in found.bands:
        low, high = (_hundredth(each) for each in found.bands["touch"])
        band = f" ({low} to {high})"
    step = float(found.points.columns["travel_step"][0])
    return (
        f"Of a hundred rocks and steps between the wheels about {_hundredth(found.road.touch)}"
        f"{band} touch it, where they are {length(step, system)} high in the mean and as wide as "
        "two hands."
    )


def edge_lines(found: Travel, system: str = "metric") -> list[str]:
    """The edges under the axle one by one: how high, how far under the tube, where they catch."""
    told = []
    for edge in found.road.edges:
        under = f", {length(edge.under, system)} under the tube" if edge.under > 5e-4 else ""
        caught = f"; catches {' and '.join(edge.catches)}" if edge.catches else ""
        told.append(f"{edge.what}: {length(edge.height, system)} over the ground{under}{caught}")
    full = 1.0 - float(found.road.outline.low.mean()) / found.road.radius
    told.append(f"from the front it fills {100.0 * full:.0f} % of what is free up to the hubs")
    return told


def room_change_line(before: Travel, after: Travel, system: str = "metric") -> str:
    """What a change does to the room under the axle; empty where it does nothing."""
    one, two = before.road, after.road
    if abs(two.lowest.height - one.lowest.height) < 0.002 and abs(two.touch - one.touch) < 0.005:
        return ""
    return (
        f"Room: {one.lowest.what} {length(one.lowest.height, system)} over the ground, then "
        f"{two.lowest.what} {length(two.lowest.height, system)}; of a hundred rocks "
        f"{_hundredth(one.touch)} touched, then {_hundredth(two.touch)}."
    )


def _hundredth(chance: float) -> str:
    return f"{100.0 * chance:.0f}" if chance > 0.095 else f"{100.0 * chance:.1f}"


def changed_lines(before: Travel, after: Travel, system: str = "metric") -> list[str]:
    """What a change does, the room under the axle as well."""
    room = room_change_line(before, after, system)
    return [*change_lines(before, after, system), *([room] if room else [])]


def _catch_line(found: Travel, system: str) -> str:
    back = [edge for edge in found.road.edges if "going back" in edge.catches]
    if not back:
        return "Going back nothing under it catches: arms or the round centre lead over."
    named = [f"{edge.what} ({length(edge.height, system)})" for edge in back[:3]]
    return f"Going back these edges catch first, with nothing to lead over: {', '.join(named)}."


def room_lines(found: Travel, system: str = "metric") -> list[str]:
    """Room under the axle at road and at trail pressure."""
    lines = []
    for name, room in (("road", found.road), ("trail", found.trail)):
        low = room.lowest
        soft = "" if room is found.road else " (the tyre's softness from memory)"
        lines.append(
            f"At {name} pressure ({quantity(room.pressure, 'pressure', system, 2)}) the hubs stand "
            f"{length(room.radius, system)} high and {low.what} is the lowest, "
            f"{length(low.height, system)} over the ground; ramps of up to {angle(room.approach)} "
            f"and crests of up to {angle(room.breakover)}{soft}."
        )
    return [*lines, _catch_line(found, system)]


def room_why_lines(found: Travel, system: str = "metric") -> list[str]:
    """The room under the axle, one level down: every edge, and the chance of a touch."""
    return [
        f"{found.rig.name}: room under the axle, at road pressure",
        *(f"  {line}" for line in edge_lines(found, system)),
        f"  {touch_line(found, system)}",
        f"  {LAW}",
    ]


def room_picture(
    found: Travel, before: Travel | None = None, system: str = "metric"
) -> RoomPicture:
    """Draw the axle as an obstacle meets it, from behind; what was before is dashed."""
    half = 1e3 * float(found.points.half_track[0])
    wide = 1e3 * found.rig.tyre.section_width
    edge = half + 0.5 * wide + 60.0
    pen = Pen("room", 2.0 * edge / LETTERS, {})
    pen.line([(-edge, 0.0), (edge, 0.0)], "part")
    for sign in (1.0, -1.0):
        _tyre(pen, sign * half, wide, found)
    if before is not None:
        pen.shape(_corners(before.road), weight="hair", dashed=True, hides=False)
    pen.shape(_corners(found.road), weight="part")
    low = found.road.lowest
    at = -1e3 * low.across
    pen.line([(at, 0.0), (at, -1e3 * low.height)], "thin")
    said = f"{low.what} {length(low.height, system)}"
    way, anchor, other = (1.0, "start", "end") if at < 0.0 else (-1.0, "end", "start")
    beside = at + 0.5 * way * pen.text
    pen.words(beside, -0.5 * pen.text, said, anchor, bold=True, clear=True, last=True)
    step = 1e3 * float(found.points.columns["travel_step"][0])
    inner = half - 0.5 * wide
    pen.line([(-inner, -step), (inner, -step)], "hair", dashed=True)
    told = f"usual rock {length(1e-3 * step, system)}"
    beside = way * (inner - 0.4 * pen.text)
    over = max(step, 1.7 * pen.text) + 0.4 * pen.text
    pen.words(beside, -over, told, other, clear=True, last=True)
    left, top, right, bottom = pen.extent()
    bottom += 0.5 * pen.text
    words = (
        f"The axle from behind, as a rock meets it: {said} over the ground is the lowest; "
        f"{touch_line(found, system)}"
    )
    if before is not None:
        words += " Dashed is how it was before."
    size = right - left, bottom - top
    shape = f"{left:.1f} {top:.1f} {size[0]:.1f} {size[1]:.1f}"
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{shape}" width="{size[0]:.1f}" '
        f'height="{size[1]:.1f}" role="img" aria-labelledby="room-told" font-family="{FONT}" '
        f'class="axle-drawing" color="currentColor"><title id="room-told">{escape(words)}</title>'
        f'<g stroke="currentColor" stroke-width="{pen.weight("thin"):.2f}" fill="{GROUND}" '
        f'class="ground" stroke-linejoin="round" stroke-linecap="round">{pen.drawn()}</g></svg>'
    )
    return RoomPicture(svg=svg, wide=size[0], high=size[1], words=words)


def _corners(room: Clearance) -> list[Point]:
    return [(-1e3 * across, -1e3 * height) for across, height in room.outline.corners]


def _tyre(pen: Pen, middle: float, wide: float, found: Travel) -> None:
    """A tyre from behind, standing on the ground."""
    top = -1e3 * (found.road.radius + 0.5 * found.rig.tyre.outer_diameter)
    round_ = 0.16 * wide
    left, right = middle - 0.5 * wide, middle + 0.5 * wide
    pen.shape(
        [
            (left + round_, 0.0), (right - round_, 0.0), (right, -round_), (right, top + round_),
            (right - round_, top), (left + round_, top), (left, top + round_), (left, -round_),
        ],
        weight="thin",
    )  # fmt: skip
