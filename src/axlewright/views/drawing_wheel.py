"""A wheel and its hub, cut through the axle's line: what a flag at a bearing has to point into.

Used for the view from behind (heights up and down) and the plan (fore and aft); ``up`` and
``down`` are the tyre's radius either way, so the foot can stand flat on the ground.
"""

from collections.abc import Callable
from functools import lru_cache
from typing import TypeAlias

from axlewright.views.drawing_curves import Point, rounded
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_places import SIGN, Axle

At: TypeAlias = Callable[[float, float], Point]


def draw_wheel(pen: Pen, axle: Axle, side: str, up: float, down: float) -> None:
    """Draw tyre, rim, disc, hub, bearing and spindle of one side, cut through."""
    sign = SIGN[side]
    middle = sign * 0.5 * axle.mm["track"]

    def at(outward: float, high: float) -> Point:
        return -(middle + sign * outward), -high

    free = 0.5 * axle.tyre_outer
    _tyre(pen, axle, f"tyre_{side}", at, up, bulge=1.0 + 1.2 * max(free - up, 0.0) / free)
    _tyre(
        pen,
        axle,
        f"tyre_{side}",
        lambda out, high: at(out, -high),
        down,
        bulge=1.0 + 1.2 * max(free - down, 0.0) / free,
    )
    _disc(pen, axle, side, at)
    pen.line(
        [at(0.0, up + 0.6 * pen.text), at(0.0, -down - 0.8 * pen.text)],
        "hair",
        dashed=True,
        mark=f"tyre_centre_{side}",
    )


def draw_hub(pen: Pen, axle: Axle, side: str) -> None:
    """Draw spindle, bearing, flange and studs of one side, seen cut."""
    sign, mm = SIGN[side], axle.mm
    bearing, face = axle.y[f"bearing_{side}"], axle.hub_face(side)
    start = axle.y.get(f"kingpin_{side}", axle.y[f"end_{side}"])
    start += sign * (52.0 if axle.front else 0.0)
    half, rows = 0.5 * mm["spindle_outer"], 0.5 * mm["row_spread"]
    finish = max(abs(bearing) + rows + 12.0, abs(face) + 8.0)
    shell, circle = half + 22.0, 0.5 * mm["stud_circle"]
    begin = max(abs(bearing) - rows - 14.0, abs(start) + 2.0)
    pen.box(-sign * begin, -shell, -sign * finish, shell, weight="thin")
    pen.box(-(face - sign * 11.0), -circle - 17.0, -face, circle + 17.0)
    pen.box(-start, -half, -sign * (finish - 6.0), half, f"spindle_{side}")
    for row in (-rows, rows):
        for high in (half, -shell):
            x = -(bearing + sign * row)
            box = (x - 11.0, high, x + 11.0, high + 22.0)
            pen.box(*box, f"hub_bearing_{side}")
            pen.lines([[box[:2], box[2:]], [(box[0], box[3]), (box[2], box[1])]], "hair")
    if axle.front and axle.words.get("drive.unlocking_hubs") == "yes":
        pen.box(-face, -36.0, -(face + sign * 48.0), 36.0, f"locking_hub_{side}")
    for high in (-circle, circle):
        bolt = 0.5 * mm["stud_diameter"]
        pen.box(
            -(face - sign * 16.0),
            high - bolt,
            -(face + sign * 34.0),
            high + bolt,
            f"wheel_studs_{side}",
        )


def _tyre(pen: Pen, axle: Axle, part: str, at: At, radius: float, bulge: float) -> None:
    """One cut of a tyre: bead, sidewall, shoulder, and a tread cut into blocks."""
    half, rim = 0.5 * axle.tyre_width, 0.5 * axle.rim
    ring, hollow = _outline(half, rim, radius, bulge)
    pen.shape([at(*point) for point in ring], part)
    pen.line([at(*point) for point in hollow], "hair", part=part)
    flange, well = 0.82 * half, rim - 0.22 * half
    lip = rim + 14.0
    bed = [
        (flange, lip),
        (flange - 6.0, rim),
        (0.45 * half, rim),
        (0.3 * half, well),
        (-0.2 * half, well),
        (-0.35 * half, rim),
        (-flange + 6.0, rim),
        (-flange, lip),
    ]
    pen.line([at(*point) for point in bed], "part", part=part.replace("tyre", "wheel"))


def _disc(pen: Pen, axle: Axle, side: str, at: At) -> None:
    offset, half, rim = axle.mm["wheel_offset"], 0.5 * axle.tyre_width, 0.5 * axle.rim
    well, hub = rim - 0.22 * half, 0.5 * axle.mm["stud_circle"] + 18.0
    spacer = axle.mm["wheel_spacer"]
    bed = min(max(offset, -0.2 * half), 0.3 * half)
    for way in (1.0, -1.0):
        pen.line(
            [
                at(bed, way * well),
                at(offset + 4.0, way * (hub + 22.0)),
                at(offset, way * hub),
                at(offset, way * 42.0),
            ],
            "part",
            part=f"wheel_{side}",
        )
    pen.line([at(offset, hub), at(offset, -hub)], "hair", mark=f"mounting_face_{side}")
    if spacer > 0.5:
        x0, y0 = at(offset, hub - 8.0)
        x1, y1 = at(offset - spacer, 30.0)
        pen.box(x0, y0, x1, y1, f"spacer_{side}")
        x0, y0 = at(offset, -hub + 8.0)
        x1, y1 = at(offset - spacer, -30.0)
        pen.box(x0, y0, x1, y1, f"spacer_{side}")


@lru_cache(maxsize=32)
def _outline(
    half: float, rim: float, radius: float, bulge: float
) -> tuple[list[Point], list[Point]]:
    """Outside and hollow of a tyre's cut, from its own middle outwards and up."""
    high = radius - rim
    deep = min(0.07 * high, 14.0)
    wall = [
        (0.80, 0.0),
        (0.84, 0.14),
        (0.97 * bulge, 0.36),
        (1.0 * bulge, 0.5),
        (0.95 * bulge, 0.7),
        (0.86, 0.9),
        (0.80, 1.0),
    ]
    outer = rounded([(half * out, rim + high * share) for out, share in wall], 3)
    tread = outer[-1][0]
    blocks, steps = [], 5
    width = 2.0 * tread / (steps + 0.25 * (steps - 1))
    for step in range(steps):
        left = tread - step * 1.25 * width
        blocks += [(left, radius), (left - width, radius)]
        if step < steps - 1:
            blocks += [(left - width, radius - deep), (left - 1.25 * width, radius - deep)]
    inner = [(half * out * 0.9, rim + 0.93 * high * share) for out, share in wall[1:-2]]
    inner += [(0.66 * half, radius - 2.2 * deep)]
    ring = [*outer[:-1], *blocks, *((-out, level) for out, level in reversed(outer[:-1]))]
    inner = rounded(inner, 2)
    hollow = [*((-out, level) for out, level in inner), *reversed(inner)]
    feet = [(side * inner[0][0], rim + 4.0) for side in (-1.0, 1.0)]
    return ring, [feet[0], *hollow, feet[1]]
