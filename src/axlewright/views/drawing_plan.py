"""The axle from above, cut through the wheels: ahead is up, left is on the left.

The page's x is minus y, its y is minus x, in millimetres.
"""

from math import pi, sin

from axlewright.views.drawing_across import COIL
from axlewright.views.drawing_curves import Point, rounded
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_places import SIDES, SIGN, Axle, Spot
from axlewright.views.drawing_wheel import draw_hub, draw_wheel

LEAF_HALF = 600.0  # half the length of a leaf spring; usual


def draw_plan(pen: Pen, axle: Axle) -> None:
    """Draw the whole axle from above, what is higher over what is lower."""
    free = 0.5 * axle.tyre_outer
    for side in SIDES:
        draw_wheel(pen, axle, side, free, free)
    if axle.arms != "leaves":
        for side in SIDES:
            _arm(pen, axle, *axle.lower_arm_ends(side))
    if axle.front:
        _rods(pen, axle)
    for side in SIDES:
        joint, end = axle.y[f"joint_{side}"], axle.y[f"end_{side}"]
        half = 0.5 * axle.mm[f"tube_outer_{side}"]
        if axle.arms != "leaves":
            _arm_bracket(pen, axle, side)
        pen.box(-joint, -half, -end, half, f"tube_{side}", "part")
        draw_hub(pen, axle, side)
        _wheel_end(pen, axle, side)
        pen.box(-joint - 9.0, -half - 5.0, -joint + 9.0, half + 5.0, f"tube_joint_{side}")
    _centre(pen, axle)
    if axle.mm["truss_height"] > 0.5:
        half = 0.5 * axle.mm["truss_outer"]
        ends = [axle.y[f"end_{side}"] - SIGN[side] * 30.0 for side in SIDES]
        pen.box(-ends[0], -half, -ends[1], half, "truss")
    for upper in axle.upper_arm_ends():
        _arm(pen, axle, *upper)
    _springs(pen, axle)
    if axle.barred:
        near, far = axle.track_bar_ends()
        pen.bar(seen(near), seen(far), axle.mm["track_bar_outer"], "track_bar")
        for place, part in ((near, "track_bar_bracket_axle"), (far, "track_bar_bracket_frame")):
            x, y = seen(place)
            pen.box(
                x - 24.0,
                y - 30.0,
                x + 24.0,
                y + 30.0,
                part,
                dashed=part.endswith("frame"),
                hides=False,
            )
            pen.disc(x, y, 8.0, "bracket_bolts")


def seen(spot: Spot) -> Point:
    """Where a spot lies on the page of this view."""
    return -spot[1], -spot[0]


def _arm(pen: Pen, axle: Axle, start: Spot, end: Spot) -> None:
    across = axle.mm["arm_outer"] * (1.35 if axle.arms == "radius arms" else 1.0)
    pen.bar(seen(start), seen(end), across, "links")
    for place in (start, end):
        x, y = seen(place)
        pen.box(x - 33.0, y - 27.0, x + 33.0, y + 27.0)
        pen.line([(x - 46.0, y), (x + 46.0, y)], "hair", dashed=True)


def _arm_bracket(pen: Pen, axle: Axle, side: str) -> None:
    foot, y = 0.5 * axle.mm["bracket_width"], axle.y[f"arm_{side}"]
    reach = axle.reach * -1.0 * (axle.tube + 26.0)
    pen.box(-y - foot, min(0.0, reach), -y + foot, max(0.0, reach), f"link_brackets_{side}")


def _wheel_end(pen: Pen, axle: Axle, side: str) -> None:
    sign, end = SIGN[side], axle.y[f"end_{side}"]
    half = 0.5 * axle.mm[f"tube_outer_{side}"]
    if not axle.front:
        pen.box(-end, -72.0, -(end + sign * 14.0), 72.0, f"end_forging_{side}", "part")
        return
    pivot = axle.y[f"kingpin_{side}"]
    pen.shape(
        [
            (-end, -half),
            (-(pivot - sign * 20.0), -38.0),
            (-(pivot + sign * 18.0), -30.0),
            (-(pivot + sign * 18.0), 30.0),
            (-(pivot - sign * 20.0), 38.0),
            (-end, half),
        ],
        f"end_forging_{side}",
        "part",
    )
    pen.shape(
        [
            (-(pivot + sign * 18.0), -44.0),
            (-(pivot + sign * 54.0), -52.0),
            (-(pivot + sign * 54.0), 52.0),
            (-(pivot + sign * 18.0), 44.0),
        ],
        f"knuckle_{side}",
        "part",
    )
    joints = "kingpins" if axle.words.get("kingpin.kind") == "kingpins" else "ball_joints"
    upper, _ = axle.joint_spots(side)
    pen.disc(*seen(upper), 15.0, f"{joints}_{side}")


def _rods(pen: Pen, axle: Axle) -> None:
    tips = {side: axle.arm_tip(side) for side in SIDES}
    far = "right" if axle.words.get("steering.drive_side", "left") == "left" else "left"
    for side in SIDES:
        sign, pivot = SIGN[side], axle.y[f"kingpin_{side}"]
        x, y = seen(tips[side])
        root = -axle.rods * 36.0
        pen.shape(
            [
                (-(pivot + sign * 50.0), root),
                (-(pivot - sign * 14.0), root),
                (x + 15.0, y),
                (x - 15.0, y),
            ],
            "steering_arm" if side == far else "",
            "part",
        )
    pen.bar(seen(tips["left"]), seen(tips["right"]), axle.mm["tie_rod_outer"], "tie_rod")
    start, end = axle.drag_ends()
    pen.bar(seen(start), seen(end), axle.mm["drag_link_outer"], "drag_link")
    for place in (*tips.values(), start, end):
        pen.disc(*seen(place), 17.0)


def _centre(pen: Pen, axle: Axle) -> None:
    mm, middle = axle.mm, axle.y["centre"]
    joints = axle.y["joint_left"], axle.y["joint_right"]
    half = min(axle.ball, 0.5 * (joints[0] - joints[1]) - 8.0)
    neck, nose = axle.tube + 10.0, -axle.nose
    tip = nose * (axle.ball + 150.0)
    back = -nose * axle.ball
    pen.box(-joints[0], -neck, -joints[1], neck, "centre", "part")
    pen.shape(
        [
            (-(middle + half), -nose * neck),
            (-(middle + half), nose * 0.5 * axle.ball),
            (-(middle + 62.0), nose * axle.ball),
            (-(middle + 48.0), tip),
            (-(middle - 48.0), tip),
            (-(middle - 62.0), nose * axle.ball),
            (-(middle - half), nose * 0.5 * axle.ball),
            (-(middle - half), -nose * neck),
        ],
        "centre",
        "part",
    )
    pen.box(-(middle + 58.0), tip, -(middle - 58.0), tip + nose * 26.0, "propeller_shaft")
    pen.bar((-middle, tip + nose * 26.0), (-middle, tip + nose * 150.0), 64.0, "propeller_shaft")
    wave = [
        (-middle - 42.0 + 84.0 * at / 12, tip + nose * (150.0 + 9.0 * sin(2.0 * pi * at / 12)))
        for at in range(13)
    ]
    pen.line(wave, "thin")
    dome = [
        (0.94, 0.0),
        (0.86, 0.5),
        (0.6, 0.86),
        (0.0, 1.0),
        (-0.6, 0.86),
        (-0.86, 0.5),
        (-0.94, 0.0),
    ]
    rim = -nose * neck
    pen.shape(
        rounded([(-(middle + out * half), rim + (back - rim) * high) for out, high in dome]),
        "cover",
    )
    ring = 0.5 * mm["ring_diameter"]
    pen.box(
        -(middle + 24.0), -ring, -(middle + 58.0), ring, "ring_and_pinion", dashed=True, hides=False
    )
    for way in (-1.0, 1.0):
        pen.box(
            -(middle - 20.0),
            way * 14.0,
            -(middle + 20.0),
            way * 36.0,
            "side_gears",
            dashed=True,
            hides=False,
        )


def _springs(pen: Pen, axle: Axle) -> None:
    leaf = axle.words["held_by.weight_on"] == "leaf"
    over = axle.words["held_by.weight_on"].startswith("coil-over")
    for side in SIDES:
        y = axle.y[f"seat_{side}"]
        if leaf:
            part = f"spring_{side}"
            pen.box(-y - 32.0, -LEAF_HALF, -y + 32.0, LEAF_HALF, part)
            for way in (-1.0, 1.0):
                near, far = way * (LEAF_HALF - 22.0), way * (LEAF_HALF + 22.0)
                pen.box(-y - 40.0, near, -y + 40.0, far, part)
            pen.box(
                -y - 52.0,
                -axle.tube - 16.0,
                -y + 52.0,
                axle.tube + 16.0,
                f"spring_seat_{side}",
                "part",
            )
            for out in (-41.0, 41.0):
                for way in (-1.0, 1.0):
                    pen.disc(-y + out, way * (axle.tube + 6.0), 7.0)
            continue
        if over:
            behind = axle.mm["damper_bracket_behind"]
            pen.box(
                -y - 40.0,
                min(0.0, behind),
                -y + 40.0,
                max(0.0, behind) + 8.0,
                f"damper_bracket_{side}",
                "part",
            )
            for radius in (46.0, 33.0, 14.0):
                pen.disc(-y, behind, radius, f"spring_{side}")
            continue
        pen.disc(-y, 0.0, COIL + 8.0, f"spring_seat_{side}", "part")
        for radius in (COIL, COIL - 13.0):
            pen.disc(-y, 0.0, radius, f"spring_{side}", hides=False)
