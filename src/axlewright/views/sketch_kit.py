"""What sketches of measuring are made of: tyres, tubes, stands, gauges, strings, arrows.

One unit of a sketch is about a pixel of a phone. The ink is that of the axle drawing; numbered
flags are the steps of the procedure.
"""

from collections.abc import Sequence
from math import atan2, cos, hypot, pi, sin
from typing import Final

from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import Pen

TEXT: Final = 12.0


def turned(points: Sequence[Point], at: Point, by: float) -> list[Point]:
    """Points about the origin, turned clockwise on the page and set at a place."""
    return [
        (at[0] + x * cos(by) - y * sin(by), at[1] + x * sin(by) + y * cos(by)) for x, y in points
    ]


def ground(pen: Pen, left: float, right: float, y: float) -> None:
    """Floor with the strokes of earth below it."""
    pen.line([(left, y), (right, y)], "part")
    steps = range(int(left) + 6, int(right), 12)
    pen.lines([[(x, y), (x - 5.0, y + 5.0)] for x in steps], "hair")


def tyre_front(
    pen: Pen, x: float, y: float, tall: float = 120.0, lean: float = 0.0, wide: float = 44.0
) -> None:
    """Tyre from the front about its hub; ``lean`` turns its top to the right of the page, rad."""
    half, across, corner = 0.5 * tall, 0.5 * wide, 11.0
    outline = [
        (-across, -half + corner), (-across + corner, -half), (across - corner, -half),
        (across, -half + corner), (across, half - corner), (across - corner, half),
        (-across + corner, half), (-across, half - corner),
    ]  # fmt: skip
    pen.shape(turned(outline, (x, y), lean), weight="part")
    treads = [[(-across + 5, up), (across - 5, up)] for up in (-0.42 * tall, 0.42 * tall)]
    pen.lines([turned(run, (x, y), lean) for run in treads], "hair")
    for up in (-0.29, 0.29):  # edge of the rim
        pen.line(turned([(-across, up * tall), (across, up * tall)], (x, y), lean), "hair")


def tyre_side(pen: Pen, x: float, y: float, radius: float = 62.0) -> None:
    """Wheel from its side."""
    pen.disc(x, y, radius, weight="part")
    pen.disc(x, y, 0.6 * radius)
    pen.disc(x, y, 0.14 * radius)
    studs = [(0.27 * radius * cos(a), 0.27 * radius * sin(a)) for a in _round(5)]
    for dx, dy in studs:
        pen.disc(x + dx, y + dy, 0.045 * radius, weight="hair")


def tyre_above(
    pen: Pen, x: float, y: float, long: float = 110.0, turn: float = 0.0, wide: float = 34.0
) -> None:
    """Tyre from above, front up; ``turn`` turns its front to the right of the page, rad."""
    half, across, corner = 0.5 * long, 0.5 * wide, 8.0
    outline = [
        (-across, -half + corner), (-across + corner, -half), (across - corner, -half),
        (across, -half + corner), (across, half - corner), (across - corner, half),
        (-across + corner, half), (-across, half - corner),
    ]  # fmt: skip
    pen.shape(turned(outline, (x, y), turn), weight="part")


def tube(pen: Pen, start: Point, end: Point, across: float = 16.0) -> None:
    """Round tube."""
    pen.bar(start, end, across)


def centre(pen: Pen, x: float, y: float, size: float = 26.0) -> None:
    """Centre casting as from front or above."""
    eight = [(size * cos(a + pi / 8), 0.9 * size * sin(a + pi / 8)) for a in _round(8)]
    pen.shape([(x + dx, y + dy) for dx, dy in eight], weight="part")
    pen.disc(x, y, 0.42 * size)


def stand(pen: Pen, x: float, top: float, floor: float) -> None:
    """Axle stand: a post on three legs."""
    foot = 0.45 * (floor - top)
    pen.shape([(x - 4, top), (x + 4, top), (x + foot, floor), (x - foot, floor)], weight="part")
    pen.line([(x - 9, top - 4), (x - 5, top), (x + 5, top), (x + 9, top - 4)], "heavy")
    pen.line([(x - 0.6 * foot, floor - 0.35 * foot), (x + 0.6 * foot, floor - 0.35 * foot)], "hair")


def finder(pen: Pen, at: Point, turn: float = 0.0, *, upright: bool = False) -> None:
    """Angle finder: a box with a window, lying on a line or standing against one."""
    wide, high = (13.0, 30.0) if upright else (32.0, 14.0)
    box = [
        (-wide / 2, -high / 2),
        (wide / 2, -high / 2),
        (wide / 2, high / 2),
        (-wide / 2, high / 2),
    ]
    pen.shape(turned(box, at, turn), weight="part")
    window = [(x * 0.55, y * 0.5) for x, y in box]
    pen.shape(turned(window, at, turn), weight="hair")


def dial(pen: Pen, at: Point, tip: Point) -> None:
    """Dial gauge with its stem to the place that it reads."""
    away = max(hypot(tip[0] - at[0], tip[1] - at[1]), 1.0)
    way = ((tip[0] - at[0]) / away, (tip[1] - at[1]) / away)
    pen.line([(at[0] + 11 * way[0], at[1] + 11 * way[1]), tip], "part")
    pen.disc(tip[0], tip[1], 1.6, weight="part")
    pen.disc(at[0], at[1], 12.0, weight="part")
    pen.line([at, (at[0] + 6.5, at[1] - 6.0)], "part")
    ticks = [(cos(a), sin(a)) for a in _round(8)]
    pen.lines(
        [
            [(at[0] + 9.5 * x, at[1] + 9.5 * y), (at[0] + 11.5 * x, at[1] + 11.5 * y)]
            for x, y in ticks
        ],
        "hair",
    )


def magnet(pen: Pen, at: Point, foot: Point) -> None:
    """Arm and magnetic foot of a dial gauge."""
    pen.line([at, (at[0], foot[1] - 8.0), (foot[0], foot[1] - 8.0)], "part")
    pen.box(foot[0] - 9, foot[1] - 10, foot[0] + 9, foot[1], weight="part")


def rule(pen: Pen, at: Point, long: float = 44.0, turn: float = 0.0) -> None:
    """Steel rule with its marks, lying to the right of a place."""
    box = [(0.0, -4.5), (long, -4.5), (long, 4.5), (0.0, 4.5)]
    pen.shape(turned(box, at, turn))
    marks = [[(x, -4.5), (x, 0.5 if n % 2 else -1.5)] for n, x in enumerate(_steps(long, 4.0))]
    pen.lines([turned(run, at, turn) for run in marks], "hair")


def arrow(pen: Pen, start: Point, end: Point, weight: str = "heavy") -> None:
    """Straight arrow."""
    pen.line([start, end], weight)
    _tip(pen, end, atan2(end[1] - start[1], end[0] - start[0]), weight)


def swing(
    pen: Pen, at: Point, radius: float, begin: float, end: float, *, both: bool = False
) -> None:
    """Arc with an arrow at its end (or at both ends), clockwise on the page where end > begin."""
    run = arc(at, radius, begin, end)
    pen.line(run, "part")
    way = 1.0 if end > begin else -1.0
    _tip(pen, run[-1], end + way * pi / 2, "part")
    if both:
        _tip(pen, run[0], begin - way * pi / 2, "part")


def arc(at: Point, radius: float, begin: float, end: float, steps: int = 14) -> list[Point]:
    """Points of an arc, rad from the right, clockwise on the page."""
    turns = [begin + (end - begin) * n / steps for n in range(steps + 1)]
    return [(at[0] + radius * cos(a), at[1] + radius * sin(a)) for a in turns]


def string(pen: Pen, start: Point, end: Point) -> None:
    """Tight string."""
    pen.line([start, end], "part", dashed=True)


def slope(pen: Pen, at: Point, long: float, angle: float) -> None:
    """A level line and one that slopes, from one end, with the angle between."""
    pen.line([at, (at[0] + long, at[1])], "hair", dashed=True)
    pen.line([at, (at[0] + long * cos(angle), at[1] + long * sin(angle))], "part")
    pen.line(arc(at, 0.8 * long, 0.0, angle), "hair")


def step(pen: Pen, number: int, at: Point, place: Point) -> None:
    """Flag with the number of a step, and a leader to its place."""
    pen.flag(at[0], at[1], number, f"step-{number}", place)


def note(pen: Pen, x: float, y: float, told: str, anchor: str = "middle") -> None:
    """Small lettering."""
    pen.words(x, y, told, anchor, clear=True)


def _tip(pen: Pen, at: Point, way: float, weight: str) -> None:
    back = 6.0
    ends = [(at[0] - back * cos(way + a), at[1] - back * sin(way + a)) for a in (0.5, -0.5)]
    pen.line([ends[0], at, ends[1]], weight)


def _round(count: int) -> list[float]:
    return [2.0 * pi * n / count for n in range(count)]


def _steps(long: float, each: float) -> list[float]:
    return [each * n for n in range(1, int(long / each))]
