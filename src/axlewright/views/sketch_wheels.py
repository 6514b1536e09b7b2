"""Sketches of readings at a wheel: toe, camber, rocking, run-out, plays of hub and joint."""

from collections.abc import Callable, Mapping
from math import pi
from typing import Final

from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_lines import level_line
from axlewright.views.sketch_kit import (
    arc,
    arrow,
    dial,
    finder,
    ground,
    magnet,
    note,
    rule,
    stand,
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
LEAN: Final = 0.09  # as drawn, rad: much larger than any that is read


def toe(pen: Pen) -> None:
    """Two treads from above with the tape in front and behind."""
    for x, turn in ((70.0, LEAN), (270.0, -LEAN)):
        tyre_above(pen, x, 100.0, turn=turn)
        pen.line(turned([(0.0, -55.0), (0.0, 55.0)], (x, 100.0), turn), "thin", dashed=True)
    tube(pen, (87.0, 100.0), (253.0, 100.0), 12.0)
    level_line(pen, 75.0, 265.0, 36.0, "front", "front")
    level_line(pen, 65.0, 275.0, 164.0, "rear", "rear")
    step(pen, 1, (24.0, 80.0), (71.0, 86.0))
    step(pen, 3, (170.0, 140.0), (170.0, 158.0))
    arrow(pen, (310.0, 130.0), (310.0, 70.0))
    note(pen, 310.0, 56.0, "front")
    note(pen, 170.0, 192.0, "toe-in = rear less front")


def camber(pen: Pen) -> None:
    """One wheel from the front, the gauge upright on its rim at three places."""
    _wheel(pen, LEAN)
    finder(pen, (133.0, 138.0), LEAN, upright=True)
    pen.line([(110.0, 60.0), (110.0, FLOOR)], "hair", dashed=True)
    swing(pen, (110.0, FLOOR), 148.0, -pi / 2, -pi / 2 + LEAN)
    note(pen, 148.0, 40.0, "+ top out", "start")
    step(pen, 2, (180.0, 110.0), (139.0, 130.0))
    finder(pen, (190.0, FLOOR - 8.0))
    step(pen, 1, (250.0, 160.0), (203.0, FLOOR - 10.0))
    tyre_side(pen, 275.0, 66.0, 36.0)
    for x, y in ((275.0, 44.0), (294.0, 77.0), (256.0, 77.0)):
        pen.disc(x, y, 4.5, weight="heavy")
    note(pen, 275.0, 116.0, "three places")


def camber_out(pen: Pen) -> None:
    """The same wheel clear of the ground, its top pulled out."""
    _lifted(pen, LEAN)
    arrow(pen, (142.0, 58.0), (200.0, 58.0))
    finder(pen, (133.0, 124.0), LEAN, upright=True)
    note(pen, 250.0, 58.0, "pulled out")
    step(pen, 2, (176.0, 26.0), (170.0, 56.0))
    step(pen, 3, (206.0, 124.0), (140.0, 124.0))


def camber_in(pen: Pen) -> None:
    """The same wheel clear of the ground, its top pushed in."""
    _lifted(pen, -LEAN)
    arrow(pen, (200.0, 58.0), (134.0, 58.0))
    finder(pen, (134.0, 124.0), -LEAN, upright=True)
    note(pen, 246.0, 58.0, "pushed in")
    step(pen, 2, (176.0, 26.0), (166.0, 56.0))
    step(pen, 3, (206.0, 124.0), (141.0, 124.0))


def camber_rock(pen: Pen) -> None:
    """The wheel twice, top out and top in, with the angle between."""
    _lifted(pen, LEAN)
    pen.line(turned([(0.0, -72.0), (0.0, 72.0)], (110.0, 112.0), LEAN), "thin", dashed=True)
    pen.line(turned([(0.0, -78.0), (0.0, 78.0)], (110.0, 112.0), -LEAN), "thin", dashed=True)
    swing(pen, (110.0, 112.0), 84.0, -pi / 2 - 2 * LEAN, -pi / 2 + 2 * LEAN, both=True)
    finder(pen, (136.0, 124.0), LEAN, upright=True)
    step(pen, 2, (172.0, 50.0), (126.0, 30.0))
    _pedal(pen, 240.0, 90.0, on=True)
    note(pen, 262.0, 74.0, "2: brake on")
    note(pen, 262.0, 168.0, "3: then off")


def heading(pen: Pen) -> None:
    """Strings along both sides, level, and the gaps to one rim."""
    for x in (80.0, 250.0):
        tyre_above(pen, x, 110.0, 92.0, -LEAN if x < 100.0 else 0.0)
    tube(pen, (97.0, 110.0), (233.0, 110.0), 12.0)
    for x in (34.0, 296.0):
        string(pen, (x, 20.0), (x, 196.0))
    pen.line([(165.0, 20.0), (165.0, 196.0)], "hair", dashed=True)
    for y, edge in ((72.0, 60.0), (148.0, 66.0)):
        pen.line([(34.0, y), (edge, y)], "heavy")
    note(pen, 165.0, 208.0, "centre line")
    step(pen, 1, (16.0, 176.0), (34.0, 184.0))
    step(pen, 2, (120.0, 60.0), (52.0, 72.0))
    step(pen, 3, (120.0, 160.0), (52.0, 148.0))
    note(pen, 165.0, 10.0, "front")


def wheel_off(pen: Pen) -> None:
    """A steering wheel from the seat, its spoke turned to the left."""
    x, y = 150.0, 108.0
    pen.disc(x, y, 82.0, weight="part")
    pen.disc(x, y, 70.0, weight="part")
    for at in (0.0, pi / 2, pi):
        pen.line(turned([(16.0, 0.0), (70.0, 0.0)], (x, y), at - 0.35), "heavy")
    pen.disc(x, y, 17.0, weight="part")
    pen.line([(x - 100.0, y), (x + 100.0, y)], "hair", dashed=True)
    swing(pen, (x, y), 94.0, 0.0, -0.35)
    note(pen, 292.0, 92.0, "+ to the")
    note(pen, 292.0, 106.0, "left")
    step(pen, 1, (44.0, 40.0), (89.0, 68.0))
    step(pen, 2, (262.0, 40.0), (238.0, 76.0))


def rim_runout(pen: Pen) -> None:
    """A rim from its side with a dial at the bead seat."""
    tyre_side(pen, 120.0, 104.0, 82.0)
    dial(pen, (232.0, 74.0), (167.0, 92.0))
    magnet(pen, (238.0, 84.0), (262.0, FLOOR))
    ground(pen, 10.0, 320.0, FLOOR)
    swing(pen, (120.0, 104.0), 92.0, -pi * 0.8, -pi * 0.35)
    step(pen, 1, (206.0, 140.0), (176.0, 90.0))
    step(pen, 2, (200.0, 22.0), (160.0, 22.0))


def unit_hub_play(pen: Pen) -> None:
    """A hub from its side, the dial by the top stud, the tyre pushed and pulled."""
    _section(pen)
    dial(pen, (232.0, 70.0), (158.0, 92.0))
    magnet(pen, (240.0, 80.0), (270.0, FLOOR))
    arrow(pen, (148.0, 20.0), (196.0, 20.0))
    arrow(pen, (116.0, 20.0), (70.0, 20.0))
    step(pen, 1, (206.0, 122.0), (162.0, 93.0))
    step(pen, 2, (230.0, 20.0), (190.0, 20.0))


def end_play(pen: Pen) -> None:
    """A hub from its side with the dial on its end, along the axis."""
    _section(pen)
    dial(pen, (240.0, 110.0), (172.0, 110.0))
    magnet(pen, (250.0, 120.0), (276.0, FLOOR))
    arrow(pen, (150.0, 162.0), (198.0, 162.0))
    arrow(pen, (114.0, 162.0), (66.0, 162.0))
    step(pen, 1, (206.0, 70.0), (176.0, 108.0))
    step(pen, 2, (226.0, 146.0), (192.0, 160.0))


def upper_joint_rock(pen: Pen) -> None:
    """Hands at twelve and six, a rule at the top, foot brake on."""
    _rocked(pen, top=True, brake=True)


def lower_joint_rock(pen: Pen) -> None:
    """Hands at twelve and six, a rule at the bottom, foot brake on."""
    _rocked(pen, top=False, brake=True)


def free_rock(pen: Pen) -> None:
    """Hands at twelve and six, a rule at the top, foot brake off."""
    _rocked(pen, top=True, brake=False)


def tyre_rock(pen: Pen) -> None:
    """A wheel from its side on the ground, gripped in front and behind, a rule at the tread."""
    tyre_side(pen, 120.0, 118.0, 82.0)
    ground(pen, 6.0, 320.0, FLOOR)
    for way in (0.0, pi):
        pen.line(arc((120.0, 118.0), 84.0, way - 0.16, way + 0.16), "heavy")
        pen.line(arc((120.0, 118.0), 90.0, way - 0.12, way + 0.12), "heavy")
    rule(pen, (206.0, 96.0), 48.0)
    _pedal(pen, 256.0, 104.0, on=True)
    step(pen, 1, (232.0, 52.0), (208.0, 108.0))
    step(pen, 2, (306.0, 150.0), (284.0, 126.0))
    note(pen, 268.0, 178.0, "on, then off")


def joint_play(pen: Pen) -> None:
    """A rod's joint with the dial from rod to arm."""
    tube(pen, (10.0, 60.0), (150.0, 60.0), 18.0)
    pen.disc(166.0, 60.0, 22.0, weight="part")
    pen.shape([(154.0, 84.0), (178.0, 84.0), (172.0, 124.0), (160.0, 124.0)], weight="part")
    pen.box(120.0, 124.0, 300.0, 148.0, weight="part")
    pen.box(158.0, 148.0, 174.0, 162.0, weight="part")
    note(pen, 50.0, 36.0, "rod")
    note(pen, 262.0, 164.0, "arm")
    dial(pen, (238.0, 84.0), (188.0, 64.0))
    magnet(pen, (244.0, 94.0), (268.0, 124.0))
    step(pen, 1, (238.0, 40.0), (196.0, 66.0))
    arrow(pen, (74.0, 96.0), (30.0, 96.0))
    arrow(pen, (80.0, 96.0), (124.0, 96.0))
    step(pen, 2, (78.0, 124.0), (78.0, 98.0))


def lower_joint_total(pen: Pen) -> None:
    """A lower joint with the dial on the knuckle's flat, a bar under the tyre."""
    pen.shape([(20.0, 60.0), (96.0, 44.0), (96.0, 84.0), (20.0, 96.0)], weight="part")
    note(pen, 48.0, 16.0, "end forging")
    pen.shape([(84.0, 84.0), (118.0, 84.0), (112.0, 116.0), (90.0, 116.0)], weight="part")
    pen.shape([(70.0, 116.0), (200.0, 110.0), (200.0, 146.0), (70.0, 140.0)], weight="part")
    note(pen, 148.0, 160.0, "knuckle")
    dial(pen, (156.0, 66.0), (150.0, 112.0))
    magnet(pen, (150.0, 56.0), (74.0, 46.0))
    pen.bar((196.0, 194.0), (306.0, 158.0), 7.0)
    arrow(pen, (292.0, 148.0), (292.0, 112.0))
    arrow(pen, (310.0, 112.0), (310.0, 148.0))
    step(pen, 1, (206.0, 84.0), (154.0, 104.0))
    arrow(pen, (222.0, 128.0), (262.0, 128.0))
    step(pen, 2, (240.0, 100.0), (240.0, 126.0))


def _wheel(pen: Pen, lean: float) -> None:
    ground(pen, 6.0, 320.0, FLOOR)
    tube(pen, (10.0, 128.0), (96.0, 128.0), 14.0)
    tyre_front(pen, 110.0, 130.0, 138.0, lean)


def _lifted(pen: Pen, lean: float) -> None:
    ground(pen, 6.0, 320.0, FLOOR)
    tube(pen, (10.0, 112.0), (96.0, 112.0), 14.0)
    stand(pen, 52.0, 124.0, FLOOR)
    tyre_front(pen, 110.0, 112.0, 134.0, lean)
    step(pen, 1, (18.0, 150.0), (46.0, 174.0))


def _rocked(pen: Pen, *, top: bool, brake: bool) -> None:
    _lifted(pen, 0.0)
    y = 56.0 if top else 168.0
    rule(pen, (134.0, y), 50.0)
    at = 34.0 if top else 189.0
    arrow(pen, (106.0, at), (74.0, at))
    arrow(pen, (114.0, at), (146.0, at))
    step(pen, 2, (206.0, 86.0 if top else 134.0), (184.0, y))
    _pedal(pen, 250.0, 96.0, on=brake)
    note(pen, 272.0, 78.0, "brake on" if brake else "brake off")


def _pedal(pen: Pen, x: float, y: float, *, on: bool) -> None:
    """A foot brake: its arm, its pad, and a foot on it or not."""
    pen.line([(x + 34.0, y), (x + 14.0, y + 42.0)], "part")
    pen.shape(
        turned([(-4, -12), (4, -12), (4, 12), (-4, 12)], (x + 12, y + 44), 0.5), weight="part"
    )
    if on:
        arrow(pen, (x - 14.0, y + 30.0), (x + 5.0, y + 41.0))


def _section(pen: Pen) -> None:
    """A wheel clear of the ground, cut through its hub."""
    ground(pen, 6.0, 320.0, FLOOR)
    tube(pen, (8.0, 110.0), (96.0, 110.0), 14.0)
    stand(pen, 40.0, 122.0, FLOOR)
    tyre_front(pen, 132.0, 110.0, 138.0)
    pen.box(96.0, 92.0, 152.0, 128.0, weight="part")
    pen.box(150.0, 84.0, 158.0, 136.0, weight="part")
    pen.box(158.0, 102.0, 172.0, 118.0, weight="part")
    for y in (92.0, 128.0):
        pen.box(156.0, y - 3.0, 164.0, y + 3.0)


WHEELS: Final[Mapping[str, Callable[[Pen], None]]] = {
    each.__name__: each
    for each in (
        toe,
        camber,
        camber_out,
        camber_in,
        camber_rock,
        heading,
        wheel_off,
        rim_runout,
        unit_hub_play,
        end_play,
        upper_joint_rock,
        lower_joint_rock,
        free_rock,
        tyre_rock,
        joint_play,
        lower_joint_total,
    )
}
