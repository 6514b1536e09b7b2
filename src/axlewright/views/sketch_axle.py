"""Sketches of readings on the axle itself: slopes, bows, squareness, gears, cracks."""

from collections.abc import Callable, Mapping
from math import cos, pi, sin
from typing import Final

from axlewright.views.drawing_curves import rounded
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_lines import level_line, upright_line
from axlewright.views.sketch_kit import (
    arc,
    arrow,
    centre,
    dial,
    finder,
    ground,
    note,
    slope,
    step,
    string,
    swing,
    tube,
    turned,
    tyre_above,
    tyre_front,
    tyre_side,
)

FLOOR: Final = 200.0


def caster(pen: Pen) -> None:
    """Side view: finder across the joints' bosses, the frame's slope above."""
    ground(pen, 6.0, 320.0, FLOOR)
    tyre_side(pen, 120.0, 128.0, 72.0)
    pen.line([(134.0, 48.0), (104.0, 200.0)], "thin", dashed=True)
    pen.line([(120.0, 48.0), (120.0, 200.0)], "hair", dashed=True)
    for x, y in ((128.0, 80.0), (111.0, 164.0)):
        pen.disc(x, y, 8.0, weight="part")
    finder(pen, (143.0, 92.0), 0.19, upright=True)
    pen.shape([(20.0, 22.0), (310.0, 34.0), (310.0, 48.0), (20.0, 36.0)], weight="part")
    finder(pen, (250.0, 24.5), 0.041)
    step(pen, 1, (206.0, 72.0), (240.0, 30.0))
    step(pen, 2, (206.0, 110.0), (149.0, 92.0))
    arrow(pen, (44.0, 62.0), (14.0, 62.0))
    note(pen, 30.0, 80.0, "front")
    note(pen, 238.0, 150.0, "+ top back", "start")
    swing(pen, (120.0, 124.0), 98.0, -pi / 2, -pi / 2 + 0.19)
    step(pen, 3, (206.0, 176.0), (172.0, 176.0))


def included_angle(pen: Pen) -> None:
    """Front view: the wheel's plane and the steering axis, the angle between them."""
    ground(pen, 6.0, 320.0, FLOOR)
    tube(pen, (10.0, 120.0), (80.0, 120.0), 14.0)
    tyre_front(pen, 150.0, 126.0, 146.0, 0.05)
    pen.shape([(78.0, 84.0), (96.0, 80.0), (104.0, 162.0), (84.0, 162.0)], weight="part")
    for x, y in ((91.0, 86.0), (96.0, 156.0)):
        pen.disc(x, y, 8.0, weight="part")
    pen.line([(85.0, 24.0), (99.0, 200.0)], "part", dashed=True)
    pen.line([(157.0, 24.0), (147.0, 200.0)], "part", dashed=True)
    pen.line([(85.0, 34.0), (156.0, 34.0)], "hair")
    for x in (85.8, 156.4):
        pen.line([(x, 30.0), (x, 38.0)], "part")
    step(pen, 1, (214.0, 92.0), (174.0, 92.0))
    step(pen, 2, (44.0, 62.0), (86.0, 52.0))
    step(pen, 3, (120.0, 12.0), (120.0, 34.0))
    note(pen, 256.0, 140.0, "wheel's plane")
    note(pen, 46.0, 184.0, "steering axis")


def pinion_slope(pen: Pen) -> None:
    """Side view: finder on the flange's machined ring."""
    _pinion(pen)
    finder(pen, (176.0, 88.0), pi / 2 - 0.12)
    step(pen, 1, (176.0, 44.0), (178.0, 76.0))
    swing(pen, (162.0, 92.0), 46.0, -0.9, 0.5)
    step(pen, 2, (240.0, 70.0), (208.0, 84.0))
    slope(pen, (60.0, 176.0), 130.0, -0.12)
    note(pen, 256.0, 172.0, "+ nose up")


def shaft_slope(pen: Pen) -> None:
    """Side view of the three slopes: gearbox, shaft, pinion."""
    pen.shape([(230.0, 18.0), (316.0, 12.0), (316.0, 58.0), (230.0, 52.0)], weight="part")
    note(pen, 276.0, 74.0, "gearbox")
    pen.box(222.0, 24.0, 230.0, 46.0, weight="part")
    tube(pen, (126.0, 112.0), (218.0, 38.0), 13.0)
    for x, y in ((126.0, 112.0), (220.0, 36.0)):
        pen.disc(x, y, 8.0, weight="part")
    pen.disc(58.0, 122.0, 36.0, weight="part")
    pen.shape([(88.0, 104.0), (112.0, 106.0), (112.0, 122.0), (90.0, 132.0)], weight="part")
    pen.box(112.0, 100.0, 118.0, 126.0, weight="part")
    note(pen, 58.0, 176.0, "axle")
    finder(pen, (168.0, 68.0), -0.68)
    step(pen, 1, (120.0, 52.0), (158.0, 66.0))
    step(pen, 2, (196.0, 108.0), (118.0, 120.0))
    pen.line([(196.0, 96.0), (222.0, 46.0)], "thin")
    slope(pen, (196.0, 170.0), 90.0, -0.5)


def string_bow(pen: Pen) -> None:
    """A bowed tube under a string on two equal blocks."""
    run = rounded([(30.0, 92.0), (165.0, 112.0), (300.0, 92.0)], 10)
    below = [(x, y + 26.0) for x, y in reversed(run)]
    pen.shape([*run, *below], weight="part")
    for x in (40.0, 290.0):
        pen.box(x - 7, 56.0, x + 7, 93.0, weight="part")
    string(pen, (40.0, 55.0), (290.0, 55.0))
    upright_line(pen, 57.0, 111.0, 165.0, "")
    step(pen, 1, (76.0, 28.0), (42.0, 54.0))
    step(pen, 2, (206.0, 28.0), (168.0, 80.0))
    swing(pen, (165.0, 124.0), 34.0, 0.3, pi - 0.3)
    step(pen, 3, (230.0, 160.0), (192.0, 148.0))
    note(pen, 84.0, 172.0, "gap less block = bow")


def housing_bow_up(pen: Pen) -> None:
    """The housing from the front, ends up, under a string."""
    _housing_bow(pen)
    note(pen, 165.0, 186.0, "from the front: + ends up")


def housing_bow_back(pen: Pen) -> None:
    """The housing from above, ends back, behind a string."""
    _housing_bow(pen)
    note(pen, 165.0, 186.0, "from above, front down: + ends back")


def tie_rod_bow(pen: Pen) -> None:
    """A bowed tie rod between both steering arms, with a string from eye to eye."""
    for x, foot in ((30.0, 20.0), (300.0, 310.0)):
        pen.bar((x, 84.0), (foot, 156.0), 15.0)
    _rod_bow(pen)


def drag_link_bow(pen: Pen) -> None:
    """A bowed drag link from the box's arm to a steering arm, with a string from eye to eye."""
    pen.bar((30.0, 84.0), (20.0, 156.0), 15.0)
    pen.bar((300.0, 76.0), (300.0, 18.0), 15.0)
    pen.disc(300.0, 18.0, 13.0, weight="part")
    _rod_bow(pen)


def tube_angle(pen: Pen) -> None:
    """The housing from the front, finder on the left tube, then on the right."""
    _housing(pen, 0.06, 0.02)
    finder(pen, (70.0, 76.0), 0.06)
    finder(pen, (260.0, 82.0), -0.02)
    step(pen, 1, (70.0, 36.0), (70.0, 70.0))
    step(pen, 2, (260.0, 40.0), (260.0, 76.0))
    for x in (108.0, 222.0):
        finder(pen, (x, 85.0), 0.0)
    step(pen, 3, (165.0, 30.0), (112.0, 80.0))
    note(pen, 165.0, 176.0, "+ both ends up")


def tube_slope(pen: Pen) -> None:
    """The housing from the front with the finder on the outer part of one tube."""
    ground(pen, 6.0, 320.0, 190.0)
    _housing(pen, 0.09, 0.0)
    finder(pen, (62.0, 72.5), 0.09)
    slope(pen, (140.0, 132.0), -110.0, 0.09)
    finder(pen, (165.0, 182.0))
    step(pen, 1, (226.0, 150.0), (179.0, 178.0))
    step(pen, 2, (62.0, 34.0), (62.0, 66.0))
    step(pen, 3, (262.0, 46.0), (262.0, 91.0))
    note(pen, 74.0, 156.0, "+ outer end up")


def wheelbase_difference(pen: Pen) -> None:
    """Plan: hub to hub on both sides."""
    _plan(pen, askew=-6.0)
    upright_line(pen, 40.0, 168.0, 44.0, "left")
    upright_line(pen, 52.0, 168.0, 286.0, "right")
    step(pen, 1, (165.0, 20.0), (94.0, 42.0))
    step(pen, 2, (120.0, 116.0), (44.0, 140.0))


def frame_diagonals(pen: Pen) -> None:
    """Plan: a cross between four marks of the frame."""
    _plan(pen, askew=0.0)
    for x in (120.0, 210.0):
        pen.box(x - 5, 24.0, x + 5, 186.0, weight="part")
        for y in (34.0, 176.0):
            pen.disc(x, y, 4.0, weight="heavy")
    pen.line([(120.0, 34.0), (210.0, 176.0)], "part", dashed=True)
    pen.line([(210.0, 34.0), (120.0, 176.0)], "part", dashed=True)
    step(pen, 1, (165.0, 18.0), (122.0, 32.0))
    step(pen, 2, (165.0, 64.0), (165.0, 103.0))


def flange_runout(pen: Pen) -> None:
    """The flange of a pinion with the dial on its face and on its register."""
    _pinion(pen)
    dial(pen, (240.0, 104.0), (178.0, 96.0))
    dial(pen, (176.0, 32.0), (169.0, 66.0))
    step(pen, 1, (272.0, 60.0), (200.0, 97.0))
    swing(pen, (168.0, 96.0), 44.0, 0.7, 2.0)


def backlash(pen: Pen) -> None:
    """The ring with a dial along a tooth's path, the pinion held."""
    _ring(pen)
    dial(pen, (262.0, 48.0), (208.0, 48.0))
    swing(pen, (130.0, 104.0), 62.0, -1.1, -0.2, both=True)
    step(pen, 1, (250.0, 96.0), (212.0, 50.0))
    for a in (1.3, 2.6, 4.2):
        pen.disc(130 + 84 * cos(a), 104 + 84 * sin(a), 4.0, weight="heavy")
    step(pen, 2, (230.0, 184.0), (155.0, 186.0))


def backlash_variation(pen: Pen) -> None:
    """The same ring, four places."""
    _ring(pen)
    dial(pen, (262.0, 48.0), (208.0, 48.0))
    for a in (-0.8, 0.8, 2.35, 3.9):
        pen.disc(130 + 84 * cos(a), 104 + 84 * sin(a), 4.0, weight="heavy")
    step(pen, 1, (264.0, 120.0), (190.0, 164.0))
    note(pen, 258.0, 176.0, "2: largest less")
    note(pen, 258.0, 190.0, "smallest")


def ring_runout(pen: Pen) -> None:
    """The ring edge on, a dial on its back face."""
    pen.box(120.0, 24.0, 150.0, 188.0, weight="part")
    for y in range(34, 184, 10):
        pen.line([(150.0, float(y)), (160.0, float(y) + 4.0)], "thin")
    pen.line([(150.0, 24.0), (162.0, 34.0), (162.0, 178.0), (150.0, 188.0)], "part")
    pen.box(84.0, 82.0, 120.0, 130.0, weight="part")
    pen.line([(60.0, 106.0), (230.0, 106.0)], "hair", dashed=True)
    dial(pen, (54.0, 46.0), (120.0, 46.0))
    step(pen, 1, (60.0, 158.0), (116.0, 54.0))
    swing(pen, (196.0, 106.0), 30.0, -1.2, 1.2)
    note(pen, 262.0, 106.0, "one turn")


def pinion_torque(pen: Pen) -> None:
    """The flange from its end with a string round it and the pull on it."""
    pen.disc(120.0, 112.0, 66.0, weight="part")
    pen.disc(120.0, 112.0, 20.0, weight="part")
    for a in (0.8, 2.35, 3.93, 5.5):
        pen.disc(120 + 44 * cos(a), 112 + 44 * sin(a), 6.0)
    pen.line(arc((120.0, 112.0), 69.0, pi * 0.9, -pi / 2 + 2 * pi, 30), "heavy")
    pen.line([(120.0, 43.0), (226.0, 43.0)], "heavy")
    pen.box(226.0, 32.0, 286.0, 54.0, weight="part")
    pen.line([(240.0, 36.0), (240.0, 50.0)], "part")
    arrow(pen, (288.0, 43.0), (318.0, 43.0))
    pen.line([(120.0, 112.0), (186.0, 112.0)], "part")
    note(pen, 222.0, 112.0, "radius")
    step(pen, 1, (30.0, 40.0), (74.0, 64.0))
    step(pen, 2, (256.0, 82.0), (256.0, 54.0))
    note(pen, 240.0, 176.0, "pull x radius")


def dye_test(pen: Pen) -> None:
    """A bracket's foot with a line that bleeds through the white."""
    tube(pen, (10.0, 150.0), (310.0, 150.0), 48.0)
    pen.shape([(96.0, 28.0), (196.0, 28.0), (230.0, 126.0), (70.0, 126.0)], weight="part")
    pen.disc(146.0, 58.0, 14.0, weight="part")
    weld = [(62.0 + 8.0 * n, 124.0 + (5.0 if n % 2 else 0.0)) for n in range(23)]
    pen.line(weld, "part")
    crack = [(176, 118), (186, 124), (192, 120), (202, 127), (210, 124), (222, 131)]
    pen.line([(float(x), float(y)) for x, y in crack], "heavy")
    level_line(pen, 176.0, 222.0, 96.0, "")
    step(pen, 1, (36.0, 96.0), (72.0, 122.0))
    step(pen, 2, (36.0, 48.0), (92.0, 60.0))
    step(pen, 3, (270.0, 92.0), (210.0, 122.0))
    note(pen, 326.0, 14.0, "a line bleeds: STOP", "end")


def _housing(pen: Pen, left: float, right: float) -> None:
    """Housing from the front, its tubes sloping up outward, rad; the vehicle's right at left."""
    for way, up in ((-1.0, left), (1.0, right)):
        ends = turned([(20.0 * way, 0.0), (146.0 * way, 0.0)], (165.0, 100.0), -way * up)
        tube(pen, ends[0], ends[1], 18.0)
    centre(pen, 165.0, 102.0, 30.0)


def _housing_bow(pen: Pen) -> None:
    for way in (-1.0, 1.0):
        tube(pen, (165.0 + 20.0 * way, 118.0), (165.0 + 146.0 * way, 104.0), 18.0)
    centre(pen, 165.0, 120.0, 30.0)
    for x in (32.0, 298.0):
        pen.box(x - 7, 56.0, x + 7, 96.0, weight="part")
    string(pen, (32.0, 55.0), (298.0, 55.0))
    for x in (118.0, 212.0):
        upright_line(pen, 57.0, 106.0, x, "")
    step(pen, 1, (68.0, 26.0), (34.0, 54.0))
    step(pen, 2, (165.0, 26.0), (122.0, 76.0))


def _rod_bow(pen: Pen) -> None:
    run = rounded([(44.0, 84.0), (165.0, 128.0), (286.0, 84.0)], 10)
    upper = [(x, y - 7.0) for x, y in run]
    lower = [(x, y + 7.0) for x, y in reversed(run)]
    pen.shape([*upper, *lower], weight="part")
    for x in (30.0, 300.0):
        pen.disc(x, 80.0, 16.0, weight="part")
        pen.disc(x, 80.0, 5.0)
    string(pen, (30.0, 80.0), (300.0, 80.0))
    upright_line(pen, 81.0, 127.0, 165.0, "")
    step(pen, 1, (62.0, 36.0), (36.0, 76.0))
    step(pen, 2, (206.0, 36.0), (168.0, 100.0))
    note(pen, 165.0, 164.0, "widest gap")


def _plan(pen: Pen, askew: float) -> None:
    """Both axles from above, front up, the front one askew."""
    for x, y in ((80.0, 46.0 + askew), (250.0, 46.0 - askew), (80.0, 168.0), (250.0, 168.0)):
        tyre_above(pen, x, y, 58.0, wide=24.0)
    tube(pen, (92.0, 46.0 + 0.85 * askew), (238.0, 46.0 - 0.85 * askew), 10.0)
    tube(pen, (92.0, 168.0), (238.0, 168.0), 10.0)
    note(pen, 165.0, 204.0, "front up")


def _pinion(pen: Pen) -> None:
    """Centre and pinion from the side, the flange a little up."""
    pen.disc(70.0, 104.0, 46.0, weight="part")
    pen.disc(70.0, 104.0, 13.0)
    nose = [(40.0, -20.0), (86.0, -12.0), (86.0, 12.0), (40.0, 20.0)]
    pen.shape(turned(nose, (70.0, 104.0), -0.12), weight="part")
    flange = [(86.0, -32.0), (96.0, -32.0), (96.0, 32.0), (86.0, 32.0)]
    pen.shape(turned(flange, (70.0, 104.0), -0.12), weight="part")
    pen.line(turned([(0.0, 0.0), (150.0, 0.0)], (70.0, 104.0), -0.12), "hair", dashed=True)


def _ring(pen: Pen) -> None:
    """A ring gear from behind, the pinion beside it."""
    pen.disc(130.0, 104.0, 84.0, weight="part")
    teeth = [2.0 * pi * n / 36 for n in range(36)]
    pen.lines(
        [
            [(130 + r * cos(a + s), 104 + r * sin(a + s)) for r, s in ((66.0, 0.0), (82.0, 0.05))]
            for a in teeth
        ],
        "hair",
    )
    pen.disc(130.0, 104.0, 64.0, weight="part")
    pen.disc(130.0, 104.0, 40.0)
    pen.disc(40.0, 104.0, 18.0, weight="part")
    pen.disc(40.0, 104.0, 7.0)


AXLE: Final[Mapping[str, Callable[[Pen], None]]] = {
    each.__name__: each
    for each in (
        caster,
        included_angle,
        pinion_slope,
        shaft_slope,
        string_bow,
        housing_bow_up,
        housing_bow_back,
        tie_rod_bow,
        drag_link_bow,
        tube_angle,
        tube_slope,
        wheelbase_difference,
        frame_diagonals,
        flange_runout,
        backlash,
        backlash_variation,
        ring_runout,
        pinion_torque,
        dye_test,
    )
}
