"""The axle from its left side: ahead is on the left.

The page's x is minus x, its y is minus z, in millimetres.
"""

from math import acos, cos, pi, sin, tan

from axlewright.views.drawing_across import COIL, COIL_HIGH
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_places import Axle, Spot
from axlewright.views.drawing_plan import LEAF_HALF

BLOCKS = 36


def draw_side(pen: Pen, axle: Axle) -> None:
    """Draw the axle from the left, its left wheel only in outline."""
    free, down = 0.5 * axle.tyre_outer, axle.mm["hub_height_left"]
    edge = free + 70.0
    pen.line([(-edge, down), (edge, down)], "part")
    _tyre(pen, free, down)
    pen.disc(0.0, 0.0, 0.5 * axle.rim, weight="hair")
    _centre(pen, axle)
    if axle.arms != "leaves":
        for start, end in (*axle.upper_arm_ends(), axle.lower_arm_ends("left")):
            pen.bar(seen(start), seen(end), axle.mm["arm_outer"], "links")
            for place in (start, end):
                pen.disc(*seen(place), 27.0)
                pen.disc(*seen(place), 8.0, "bracket_bolts")
        _arm_bracket(pen, axle)
    _spring(pen, axle)
    pen.disc(0.0, 0.0, 0.5 * axle.mm["tube_outer_left"], "tube_left", "part")
    inner = max(0.5 * axle.mm["tube_outer_left"] - axle.mm["tube_wall"], 1.0)
    pen.disc(0.0, 0.0, inner, dashed=True, hides=False)
    pen.disc(0.0, 0.0, 0.5 * axle.mm["inner_shaft"], "inner_shaft_left")
    if axle.mm["truss_height"] > 0.5:
        pen.disc(0.0, -axle.mm["truss_height"], 0.5 * axle.mm["truss_outer"], "truss", "part")
    if axle.front:
        _steering(pen, axle)
    if axle.barred:
        x, y = seen(axle.track_bar_ends()[0])
        way = 1.0 if x > 0.0 else -1.0
        pen.shape(
            [
                (0.0, -axle.tube),
                (x - 8.0 * way, y - 24.0),
                (x + 24.0 * way, y - 24.0),
                (x + 24.0 * way, y + 20.0),
                (way * axle.tube, 0.0),
            ],
            "track_bar_bracket_axle",
            hides=False,
        )
        pen.disc(x, y, 0.5 * axle.mm["track_bar_outer"] + 5.0, "track_bar")
        pen.disc(x, y, 7.0, "bracket_bolts")
    pen.line([(-edge, 0.0), (edge, 0.0)], "hair", dashed=True)
    pen.line([(0.0, -free - 0.8 * pen.text), (0.0, down + 0.8 * pen.text)], "hair", dashed=True)


def seen(spot: Spot) -> Point:
    """Where a spot lies on the page of this view."""
    return -spot[0], -spot[2]


def _tyre(pen: Pen, free: float, down: float) -> None:
    """Tread blocks round the tyre, flat where it stands on the ground."""
    foot = acos(min(down / free, 1.0))  # half the angle of the flat
    deep, points = 13.0, []
    for block in range(BLOCKS):
        for share, radius in ((0.0, free), (0.62, free), (0.62, free - deep), (1.0, free - deep)):
            turn = 2.0 * pi * (block + share - 0.31) / BLOCKS
            x, y = radius * sin(turn), radius * cos(turn)
            points.append((x, min(y, down)))
    pen.shape(points, "tyre_left")
    wall = free - 2.4 * deep
    ring = [(wall * sin(2.0 * pi * at / 72), wall * cos(2.0 * pi * at / 72)) for at in range(73)]
    pen.line([(x, min(y, down - 8.0)) for x, y in ring], "hair")
    half = free * sin(foot)
    pen.line([(-half, down), (half, down)], "heavy", mark="foot")


def _centre(pen: Pen, axle: Axle) -> None:
    way = -axle.nose  # of the nose on the page
    ball, tip = axle.ball, -axle.nose * (axle.ball + 150.0)
    body = [(ball * cos(2.0 * pi * at / 40), ball * sin(2.0 * pi * at / 40)) for at in range(40)]
    pen.shape([(0.0, -0.6 * ball), (tip, -22.0), (tip, 62.0), (0.0, 0.8 * ball)], "centre", "part")
    pen.shape(body, "centre", "part")
    pen.box(tip, -34.0, tip + way * 26.0, 74.0, "propeller_shaft")
    pen.bar((tip + way * 26.0, 20.0), (tip + way * 130.0, 8.0), 64.0, "propeller_shaft")
    pen.disc(0.0, 0.0, 0.5 * axle.mm["ring_diameter"], "ring_and_pinion", dashed=True, hides=False)
    pen.line([(-way * 0.55 * ball, -0.83 * ball), (-way * 0.55 * ball, 0.83 * ball)], "part")


def _arm_bracket(pen: Pen, axle: Axle) -> None:
    (_, _, z), _ = axle.lower_arm_ends("left")
    wide = axle.tube + 4.0
    pen.shape(
        [(-wide, 0.0), (wide, 0.0), (26.0, -z + 30.0), (-26.0, -z + 30.0)],
        "link_brackets_left",
        hides=False,
    )


def _spring(pen: Pen, axle: Axle) -> None:
    foot = axle.tube + 16.0
    kind = axle.words["held_by.weight_on"]
    if kind == "leaf":
        for leaf in range(5):
            half = LEAF_HALF * (1.0, 0.86, 0.68, 0.5, 0.32)[4 - leaf]
            top = foot + 9.0 * (leaf + 1)
            arch = [
                (half * at / 10.0, -top - 95.0 * (half * at / 10.0 / LEAF_HALF) ** 2)
                for at in range(-10, 11)
            ]
            under = [(x, y + 9.0) for x, y in reversed(arch)]
            pen.shape([*arch, *under], "spring_seat_left" if leaf == 0 else "", "hair")
        for way in (-1.0, 1.0):
            pen.disc(way * LEAF_HALF, -foot - 140.0, 24.0)
            pen.line(
                [
                    (way * (axle.tube + 7.0), axle.tube + 24.0),
                    (way * (axle.tube + 7.0), -foot - 62.0),
                ],
                "part",
            )
        pen.box(-58.0, -foot, 58.0, -axle.tube + 6.0, "link_brackets_left")
        return
    over = kind.startswith("coil-over")
    x = axle.mm["damper_bracket_behind"] if over else 0.0
    half, turns = (46.0, 8) if over else (COIL, 6)
    low = foot + (34.0 if over else 0.0)
    step = (COIL_HIGH - (34.0 if over else 0.0)) / turns
    if over:
        pen.box(x - 14.0, -low - COIL_HIGH + 30.0, x + 14.0, -low)
        pen.shape(
            [(0.0, 0.0), (x - 30.0, -low), (x + 30.0, -low), (20.0, axle.tube)],
            "damper_bracket_left",
            "part",
        )
    for turn in range(turns - 1):
        level = low + step * (turn + 0.75)
        pen.bar((x + half, -level), (x - half, -level - 0.5 * step), 8.0, "spring_left")
    for turn in range(turns):
        level = low + step * (turn + 0.25)
        pen.bar((x - half, -level), (x + half, -level - 0.5 * step), 13.0, "spring_left")
    if not over:
        pen.box(x - half - 8.0, -low, x + half + 8.0, -axle.tube + 8.0, "spring_seat_left", "part")


def _steering(pen: Pen, axle: Axle) -> None:
    """Kingpin axis at its caster, knuckle, and the steering arm with the rods' ends."""
    (_, _, high), (_, _, low) = axle.joint_spots("left")
    lean = tan(axle.caster)
    upper, lower = (high * lean, -high), (low * lean, -low)
    pen.shape(
        [
            (upper[0] - 26.0, upper[1]),
            (upper[0] + 26.0, upper[1]),
            (50.0, 0.0),
            (lower[0] + 26.0, lower[1]),
            (lower[0] - 26.0, lower[1]),
            (-50.0, 0.0),
        ],
        "knuckle_left",
        hides=False,
    )
    joints = "kingpins" if axle.words.get("kingpin.kind") == "kingpins" else "ball_joints"
    for place in (upper, lower):
        pen.disc(*place, 15.0, f"{joints}_left")
    pen.line(
        [(upper[0] * 1.9, upper[1] * 1.9), (lower[0] * 1.9, lower[1] * 1.9)], "hair", dashed=True
    )
    x, y = seen(axle.arm_tip("left"))
    pen.shape([(0.0, y - 16.0), (0.0, y + 16.0), (x, y + 12.0), (x, y - 12.0)], hides=False)
    pen.disc(x, y, 0.5 * axle.mm["tie_rod_outer"], "tie_rod")
