"""The axle seen from behind, cut through the wheels: left is on the left, as one sits.

The page's x is minus y, its y is minus z, in millimetres.
"""

from axlewright.views.drawing_curves import Point, rounded
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_places import SIDES, SIGN, Axle, Spot
from axlewright.views.drawing_wheel import draw_hub, draw_wheel

COIL = 61.0  # half a coil's width; usual
COIL_HIGH = 290.0


def draw_across(pen: Pen, axle: Axle) -> None:
    """Draw the whole axle from behind, what is nearer over what is farther."""
    down = {side: axle.mm[f"hub_height_{side}"] for side in SIDES}
    edge = 0.5 * axle.mm["track"] + 0.5 * axle.tyre_width + 60.0
    pen.line([(-edge, down["left"]), (edge, down["right"])], "part", mark="ground")
    for side in SIDES:
        draw_wheel(pen, axle, side, 0.5 * axle.tyre_outer, down[side])
    _springs(pen, axle)
    if axle.mm["truss_height"] > 0.5:
        _truss(pen, axle)
    for side in SIDES:
        _tube(pen, axle, side)
        if axle.front:
            _forging(pen, axle, side)
        draw_hub(pen, axle, side)
        _wheel_end(pen, axle, side)
    _centre(pen, axle)
    for side in SIDES:
        _shaft(pen, axle, side)
    if axle.arms != "leaves":
        _arms(pen, axle)
    if axle.barred:
        _track_bar(pen, axle)
    if axle.front:
        _rods(pen, axle)
    pen.line([(-edge, 0.0), (edge, 0.0)], "hair", dashed=True, mark="axle_line")


def seen(spot: Spot) -> Point:
    """Where a spot lies on the page of this view."""
    return -spot[1], -spot[2]


def _tube(pen: Pen, axle: Axle, side: str) -> None:
    joint, end = axle.y[f"joint_{side}"], axle.y[f"end_{side}"]
    half = 0.5 * axle.mm[f"tube_outer_{side}"]
    pen.box(-joint, -half, -end, half, f"tube_{side}", "part")
    sleeve = axle.mm[f"sleeve_wall_{side}"]
    if sleeve > 0.05:
        outer = half - axle.mm["tube_wall"]
        for way in (-1.0, 1.0):
            pen.box(
                -joint,
                way * (outer - sleeve),
                -end,
                way * outer,
                f"sleeve_{side}",
                dashed=True,
                hides=False,
            )
    ring = 0.5 * pen.weight("heavy")
    pen.box(-joint - 9.0, -half - 5.0, -joint + 9.0, half + 5.0, f"tube_joint_{side}")
    pen.box(-end - ring, -half, -end + ring, half, weight="hair")


def _forging(pen: Pen, axle: Axle, side: str) -> None:
    """The end forging's fork, from the tube's end to above and below the two joints."""
    sign, half = SIGN[side], 0.5 * axle.mm[f"tube_outer_{side}"]
    (_, upper, high), (_, lower, low) = axle.joint_spots(side)
    end = axle.y[f"end_{side}"]
    neck = end + sign * 0.42 * (axle.y[f"kingpin_{side}"] - end)
    fork = [
        (end, half),
        (neck, half + 6.0),
        (upper - sign * 26.0, high + 22.0),
        (upper + sign * 22.0, high + 22.0),
        (upper + sign * 22.0, high - 6.0),
        (upper - sign * 14.0, high - 8.0),
        (neck + sign * 24.0, half * 0.75),
        (neck + sign * 24.0, -half * 0.75),
        (lower - sign * 14.0, low + 8.0),
        (lower + sign * 22.0, low + 6.0),
        (lower + sign * 22.0, low - 22.0),
        (lower - sign * 26.0, low - 22.0),
        (neck, -half - 6.0),
        (end, -half),
    ]
    pen.shape([(-y, -z) for y, z in fork], f"end_forging_{side}", "part")
    if axle.words.get("forging.gussets") == "yes":
        for way in (1.0, -1.0):
            pen.shape(
                [
                    (-(end - sign * 70.0), -way * half),
                    (-end, -way * half),
                    (-neck, -way * (half + 30.0)),
                ],
                f"gusset_{side}",
            )


def _wheel_end(pen: Pen, axle: Axle, side: str) -> None:
    sign = SIGN[side]
    if not axle.front:
        end = axle.y[f"end_{side}"]
        pen.box(-end, -72.0, -(end + sign * 14.0), 72.0, f"end_forging_{side}", "part")
        return
    (_, upper, high), (_, lower, low) = axle.joint_spots(side)
    pivot = axle.y[f"kingpin_{side}"]
    near, far = pivot + sign * 34.0, pivot + sign * 54.0
    knuckle = [
        (upper - sign * 18.0, high - 8.0),
        (upper + sign * 24.0, high - 8.0),
        (far, high - 34.0),
        (far, low + 34.0),
        (lower + sign * 24.0, low + 8.0),
        (lower - sign * 18.0, low + 8.0),
        (lower - sign * 18.0, low + 30.0),
        (near, low + 48.0),
        (near, high - 48.0),
        (upper - sign * 18.0, high - 30.0),
    ]
    pen.shape([(-y, -z) for y, z in knuckle], f"knuckle_{side}", "part")
    joints = "kingpins" if axle.words.get("kingpin.kind") == "kingpins" else "ball_joints"
    for y, z in ((upper, high + 4.0), (lower, low - 4.0)):
        pen.disc(-y, -z, 15.0, f"{joints}_{side}")
    pen.line([(-upper, -high - 60.0), (-lower, -low + 60.0)], "hair", dashed=True)


def _shaft(pen: Pen, axle: Axle, side: str) -> None:
    """What turns inside: shafts dashed, the joint at the wheel drawn out."""
    sign, mm, y = SIGN[side], axle.mm, axle.y
    half = 0.5 * mm["inner_shaft"]
    outer_end = y.get(f"kingpin_{side}", axle.hub_face(side))
    cross = 0.5 * mm["cap_to_cap"] if axle.front else 0.0
    pen.box(
        -(y["centre"] + sign * 60.0),
        -half,
        -(outer_end - sign * (cross + 14.0)),
        half,
        f"inner_shaft_{side}",
        dashed=True,
        hides=False,
    )
    pen.box(
        -(y["centre"] + sign * (42.0 - 0.5 * mm["spline_engaged"])),
        -half - 2.0,
        -(y["centre"] + sign * (42.0 + 0.5 * mm["spline_engaged"])),
        half + 2.0,
        f"spline_{side}",
        dashed=True,
        hides=False,
    )
    if not axle.front:
        return
    stub = 0.5 * mm["stub_shaft"]
    pen.box(
        -(outer_end + sign * (cross + 2.0)),
        -stub,
        -(axle.hub_face(side) + sign * 20.0),
        stub,
        f"stub_shaft_{side}",
        dashed=True,
        hides=False,
    )
    for way in (-1.0, 1.0):
        pen.box(
            -(outer_end - sign * (cross + 16.0)),
            way * 12.0,
            -(outer_end - sign * 14.0),
            way * (0.5 * mm["cap_across"] + 16.0),
            f"yoke_ears_{side}",
        )
    pen.disc(-outer_end, 0.0, cross, f"cross_joint_{side}")
    cap = 0.5 * mm["cap_across"]
    pen.box(-outer_end - cross, -cap, -outer_end + cross, cap, f"cross_joint_{side}", hides=False)
    pen.disc(-outer_end, 0.0, cap, f"cross_joint_{side}")


def _centre(pen: Pen, axle: Axle) -> None:
    mm, middle = axle.mm, axle.y["centre"]
    joints = axle.y["joint_left"], axle.y["joint_right"]
    half = min(axle.ball, 0.5 * (joints[0] - joints[1]) - 8.0)
    neck = axle.tube + 10.0
    outline = []
    for sign, joint in ((1.0, joints[0]), (-1.0, joints[1])):
        run = [
            (joint, neck),
            (middle + sign * half, max(neck, 0.62 * axle.ball)),
            (middle + sign * 0.62 * half, 0.9 * axle.ball),
            (middle + sign * 0.25 * half, axle.ball),
        ]
        outline += run if sign > 0 else list(reversed(run))
    outline = rounded(outline)
    outline += [(y, -z) for y, z in reversed(outline)]
    pen.shape([(-y, -z) for y, z in outline], "centre", "part")
    ring = 0.5 * mm["ring_diameter"]
    pen.box(
        -(middle + 24.0), -ring, -(middle + 58.0), ring, "ring_and_pinion", dashed=True, hides=False
    )
    for way in (-1.0, 1.0):
        pen.box(
            -(middle - 78.0),
            way * 26.0,
            -(middle - 48.0),
            way * 52.0,
            "carrier_caps",
            dashed=True,
            hides=False,
        )
        pen.box(
            -(middle - 20.0),
            way * 14.0,
            -(middle + 20.0),
            way * 36.0,
            "side_gears",
            dashed=True,
            hides=False,
        )
    if axle.front:
        pen.disc(-middle, 20.0, 0.36 * axle.ball, "propeller_shaft", "part", hides=False)
        return
    pen.disc(-middle, 0.0, 0.82 * min(axle.ball, half * 1.1), "cover", "part", hides=False)


def _springs(pen: Pen, axle: Axle) -> None:
    foot = axle.tube + 16.0
    leaf = axle.words["held_by.weight_on"] == "leaf"
    for side in SIDES:
        y = axle.y[f"seat_{side}"]
        pen.line(
            [(-y, -axle.tube - 8.0), (-y, -foot - COIL_HIGH - 20.0)],
            "hair",
            dashed=True,
            mark=f"spring_{side}",
        )
        if leaf:
            for leaf_number in range(5):
                low = foot + 9.0 * leaf_number
                pen.box(-y - 32.0, -low, -y + 32.0, -low - 9.0, f"spring_seat_{side}", "hair")
            for out in (-41.0, 41.0):
                pen.line([(-y + out, axle.tube + 26.0), (-y + out, -foot - 62.0)], "part")
            pen.box(-y - 52.0, -foot, -y + 52.0, -axle.tube + 6.0, f"link_brackets_{side}")
            continue
        over = axle.words["held_by.weight_on"].startswith("coil-over")
        part = "damper_bracket" if over else "spring_seat"
        half, turns = (46.0, 8) if over else (COIL, 6)
        low = foot + (34.0 if over else 0.0)
        step = (COIL_HIGH - (34.0 if over else 0.0)) / turns
        if over:
            pen.box(-y - 14.0, -low, -y + 14.0, -low - COIL_HIGH + 30.0)
        for turn in range(turns - 1):
            level = low + step * (turn + 0.75)
            pen.bar((-y + half, -level), (-y - half, -level - 0.5 * step), 8.0, f"spring_{side}")
        for turn in range(turns):
            level = low + step * (turn + 0.25)
            pen.bar((-y - half, -level), (-y + half, -level - 0.5 * step), 13.0, f"spring_{side}")
        pen.box(-y - half - 8.0, -low, -y + half + 8.0, -axle.tube + 8.0, f"{part}_{side}", "part")


def _truss(pen: Pen, axle: Axle) -> None:
    high, half = axle.mm["truss_height"], 0.5 * axle.mm["truss_outer"]
    ends = [axle.y[f"end_{side}"] - SIGN[side] * 30.0 for side in SIDES]
    for side, end in zip(SIDES, ends, strict=True):
        joint = axle.y[f"joint_{side}"]
        steps = max(int(abs(end - joint) / 110.0), 2)
        places = [joint + (end - joint) * step / steps for step in range(steps + 1)]
        zigzag = [(-y, -(axle.tube if at % 2 else high)) for at, y in enumerate(places)]
        pen.line(zigzag, "thin", part="truss")
    pen.box(-ends[0], -high - half, -ends[1], -high + half, "truss", "part")


def _arms(pen: Pen, axle: Axle) -> None:
    half = 0.5 * axle.mm["arm_outer"]
    for (_, y, z), _ in axle.upper_arm_ends():
        pen.shape(
            [
                (-y - 30.0, -axle.tube * 0.6),
                (-y - 22.0, -z - 30.0),
                (-y + 22.0, -z - 30.0),
                (-y + 30.0, -axle.tube * 0.6),
            ],
            hides=False,
        )
        pen.disc(-y, -z, half, "links")
    for side in SIDES:
        (_, y, z), _ = axle.lower_arm_ends(side)
        if axle.arms == "radius arms":
            pen.box(-y - 34.0, -axle.tube - 14.0, -y + 34.0, -z + half, f"link_brackets_{side}")
            pen.box(-y - 24.0, -z - half, -y + 24.0, -z + half, "links")
            continue
        foot = 0.5 * axle.mm["bracket_width"]
        pen.shape(
            [
                (-y - foot, axle.tube * 0.7),
                (-y + foot, axle.tube * 0.7),
                (-y + foot * 0.7, -z + half + 8.0),
                (-y - foot * 0.7, -z + half + 8.0),
            ],
            f"link_brackets_{side}",
        )
        pen.disc(-y, -z, half, "links")


def _track_bar(pen: Pen, axle: Axle) -> None:
    start, end = axle.track_bar_ends()
    x, y = seen(start)
    foot = 0.5 * axle.mm["bracket_width"]
    pen.shape(
        [
            (x - foot, -axle.tube * 0.8),
            (x - 22.0, y - 26.0),
            (x + 22.0, y - 26.0),
            (x + foot, -axle.tube * 0.8),
        ],
        "track_bar_bracket_axle",
    )
    far, up = seen(end)
    pen.shape(
        [
            (far - 26.0, up + 34.0),
            (far - 34.0, up - 110.0),
            (far + 34.0, up - 110.0),
            (far + 26.0, up + 34.0),
        ],
        "track_bar_bracket_frame",
        dashed=True,
        hides=False,
    )
    pen.bar((x, y), (far, up), axle.mm["track_bar_outer"], "track_bar")
    pen.line([(x, y), (far, up)], "hair", dashed=True, mark="track_bar")
    for place in ((x, y), (far, up)):
        pen.disc(*place, 21.0, "track_bar")
        pen.disc(*place, 0.5 * axle.mm["track_bar_bolt"], "bracket_bolts")


def _rods(pen: Pen, axle: Axle) -> None:
    tips = {side: axle.arm_tip(side) for side in SIDES}
    far = "right" if axle.words.get("steering.drive_side", "left") == "left" else "left"
    for side in SIDES:
        x, y = seen(tips[side])
        pen.box(x - 21.0, y - 24.0, x + 21.0, y + 14.0, "steering_arm" if side == far else "")
    start, end = axle.drag_ends()
    pen.bar(seen(start), seen(end), axle.mm["drag_link_outer"], "drag_link")
    pen.bar(seen(tips["left"]), seen(tips["right"]), axle.mm["tie_rod_outer"], "tie_rod")
    for place in (*tips.values(), start, end):
        pen.disc(*seen(place), 16.0, hides=False)
