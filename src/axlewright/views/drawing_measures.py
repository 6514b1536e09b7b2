"""The measurements of the first thirteen questions, typed on their dimension lines.

What was not told yet is an empty box with the number of its question in the same place.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from axlewright import units
from axlewright.views.drawing_across import COIL_HIGH
from axlewright.views.drawing_ink import ADVANCE, Pen
from axlewright.views.drawing_lines import level_line, upright_line
from axlewright.views.drawing_links import unsaid
from axlewright.views.drawing_places import SIDES, SIGN, Axle

LONGEST = 18  # letters of an answer as typed that a line has room for


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """How numbers are lettered: in which units, or as they were typed, by field.

    With ``blank`` every place is an empty box, whatever was told. With ``listed`` what is no
    length between two places stands in a list under the view from the left.
    """

    system: str = "metric"
    typed: Mapping[str, str] = field(default_factory=dict)
    blank: bool = False
    listed: bool = False

    def length(self, axle: Axle, name: str, path: str) -> str:
        """A length of the axle."""
        typed = self.typed.get(path, "")
        if typed and len(typed) <= LONGEST:
            return typed
        return units.show(axle.mm[name] / 1e3, "length", self.system)

    def empty(self, pen: Pen, path: str) -> bool:
        """Whether the place of a field waits for its number."""
        return self.blank or unsaid(path, pen.known)


def across_measures(pen: Pen, axle: Axle, lettering: Lettering, busy: Sequence[float] = ()) -> None:
    """Dimension lines of the view from behind; ``busy`` is where leaders of flags come down."""
    half, free = 0.5 * axle.mm["track"], 0.5 * axle.tyre_outer
    ground = max(axle.mm[f"hub_height_{side}"] for side in SIDES)
    step = (2.4 if lettering.blank or pen.known is not None else 1.7) * pen.text
    for side in SIDES:
        _side_measures(pen, axle, side, lettering, ground, step)
    y = ground + 2.2 * step
    with pen.asked("track.tyres", lettering.length(axle, "track", "track.tyres")):
        for side in SIDES:
            x = -SIGN[side] * half
            pen.line([(x, ground + 0.9 * pen.text), (x, y + 0.4 * pen.text)], "hair")
        _level(pen, (-half, half), y, axle, ("track", "track", "track.tyres", 4), lettering)
    y = (
        -max(free, axle.tube + COIL_HIGH + 40.0)
        - (0.9 if step < 2.0 * pen.text else 1.3) * pen.text
    )
    springs = [-axle.y[f"seat_{side}"] for side in SIDES]
    with pen.asked("track.springs", lettering.length(axle, "spring_spacing", "track.springs")):
        for x in springs:
            pen.line([(x, -axle.tube - COIL_HIGH - 20.0), (x, y - 0.4 * pen.text)], "hair")
        _level(
            pen,
            (springs[0], springs[1]),
            y,
            axle,
            ("spring_spacing", "springs", "track.springs", 5),
            lettering,
            busy,
        )
    if lettering.blank:
        _blank_words(pen, axle, 0.62 * ground)
        return
    if lettering.listed:
        return
    if axle.front:
        _joint(pen, axle, lettering, 0.62 * ground)
    lock = axle.words.get("drive.lock", "")
    _line_of_words(pen, (-axle.y["centre"], 0.86 * ground), "drive.lock", lock, "11 lock")


def side_measures(pen: Pen, axle: Axle, lettering: Lettering) -> None:
    """What stands under the view from the left: tyre and weight, and what holds the axle."""
    system = lettering.system
    tyre = units.show(round(axle.tyre_outer / 1e3, 3), "length", system)
    wide = units.show(round(axle.tyre_width / 1e3, 3), "length", system)
    carries = units.show(axle.weight, "weight", system)
    rows = [
        ("tyre.sidewall", f"tyre ⌀ {tyre} free, {wide} wide", "2 tyre"),
        ("weight.axle", f"carries {carries}", "9 weight"),
    ]
    if lettering.listed:
        rows += [
            ("held_by.arms", axle.arms, "1 held by"),
            ("held_by.weight_on", axle.words["held_by.weight_on"], "1 weight on"),
            ("joint.cap_across", _cap(axle, lettering), "10 cap"),
            ("joint.cap_to_cap", _cross(axle, lettering), "10 over caps"),
            ("drive.lock", axle.words.get("drive.lock", ""), "11 differential"),
        ]
    y = axle.mm["hub_height_left"] + 1.4 * pen.text
    for path, told, label in rows:
        empty = lettering.empty(pen, path)
        y += 0.6 * pen.text if empty else 0.0
        _line_of_words(pen, (0.0, y), path, "" if empty else told, label)
        y += (2.1 if empty else 1.8 if lettering.listed else 1.4) * pen.text


def side_names(pen: Pen, axle: Axle, low: float) -> None:
    """Names of the sides under the wheels."""
    y = low + 1.3 * pen.text
    for side in SIDES:
        pen.words(-SIGN[side] * 0.5 * axle.mm["track"], y, side, bold=True)


def _side_measures(
    pen: Pen, axle: Axle, side: str, lettering: Lettering, ground: float, step: float
) -> None:
    sign, mm, below = SIGN[side], axle.mm, ground + step
    height, path = mm[f"hub_height_{side}"], f"hub_height.{side}"
    out = 3.4 if lettering.blank else 2.0
    x = -sign * (0.5 * (mm["track"] + axle.tyre_width) + out * pen.text)
    told = lettering.length(axle, f"hub_height_{side}", path)
    with pen.asked(path, told):
        if lettering.blank:
            pen.blank(x, 0.5 * height, f"3 {side}", 4.6)
        elif lettering.empty(pen, path):
            pen.blank(x, 0.5 * height, 3, 2.0, 4.6)
        else:
            upright_line(pen, 0.0, height, x, told, f"hub_height_{side}")
    joint, end = axle.y[f"joint_{side}"], axle.y[f"end_{side}"]
    path = f"tube.bare.{side}"
    with pen.asked(path, lettering.length(axle, f"tube_bare_{side}", path)):
        for y in (joint, end):
            pen.line([(-y, axle.tube + 12.0), (-y, below + 0.4 * pen.text)], "hair")
        name = f"tube_bare_{side}"
        _level(pen, (-joint, -end), below, axle, (name, name, path, f"7 {side}"), lettering)
    middle = 0.55 * end + 0.45 * joint
    high = max(0.36 * height, axle.tube + 1.9 * pen.text)
    told = units.show(mm[f"tube_outer_{side}"] / 1e3, "length", lettering.system)
    path = f"tube.girth.{side}"
    with pen.asked(path, f"⌀ {told}"):
        foot = (-middle, high - 0.7 * pen.text)
        pen.line([(-middle, 0.5 * mm[f"tube_outer_{side}"]), foot], "hair")
        empty = lettering.empty(pen, path)
        _boxed(pen, (-middle, high), "" if empty else f"⌀ {told}", f"6 {side}", 4.6)
    wheel = sign * 0.5 * mm["track"]
    if lettering.blank:
        pen.words(-wheel, -0.5 * axle.tyre_outer - 1.3 * pen.text, side, bold=True)
        if side == "left":
            pen.blank(-wheel, below, "8 offset", 5.0)
        return
    _offset(pen, axle, side, lettering, below + 1.2 * step + (1.7 * pen.text))


def _offset(pen: Pen, axle: Axle, side: str, lettering: Lettering, y: float) -> None:
    """Side, offset and spacer under a wheel."""
    x = -SIGN[side] * 0.5 * axle.mm["track"]
    spacer = axle.mm["wheel_spacer"]
    told = f"ET {units.show(round(axle.mm['wheel_offset'] / 1e3, 3), 'offset', digits=3)}"
    if spacer > 0.5:
        told += f" + {units.show(spacer / 1e3, 'length', lettering.system)}"
    if not lettering.empty(pen, "wheel.offset"):
        with pen.asked("wheel.offset", told):
            _boxed(pen, (x, y), f"{side}: {told}", "", 0.0, bold=True)
        return
    pen.words(x, y, side, bold=True)
    if side == "left":
        with pen.asked("wheel.offset", ""):
            pen.blank(x, y + 1.9 * pen.text, "8 offset", 5.0)


def _joint(pen: Pen, axle: Axle, lettering: Lettering, low: float) -> None:
    """Cap and cross of the joint at the left wheel, with a leader to it."""
    x, cap = -axle.y["kingpin_left"], 0.5 * axle.mm["cap_across"]
    start = -(0.5 * axle.mm["track"] - 0.56 * axle.tyre_width)
    pen.line([(x, cap), (x + 0.4 * pen.text, low - 0.7 * pen.text)], "hair")
    for path, told, label in (
        ("joint.cap_across", f"{_cap(axle, lettering)},", "10 cap"),
        ("joint.cap_to_cap", _cross(axle, lettering), "10 over caps"),
    ):
        with pen.asked(path, told.removesuffix(",")):
            if lettering.empty(pen, path):
                half = 0.3 * pen.text * (len(label) + 2)
                pen.blank(start + half, low, label, 2.0 * half / pen.text)
                start += 2.0 * half + 0.5 * pen.text
                continue
            wide = ADVANCE * pen.text * len(told)
            pen.target(start, low - pen.text, start + wide, low + pen.text)
            pen.words(start, low, told, "start", clear=True)
            start += wide + 0.5 * pen.text


def _cap(axle: Axle, lettering: Lettering) -> str:
    return f"cap ⌀ {lettering.length(axle, 'cap_across', 'joint.cap_across')}"


def _cross(axle: Axle, lettering: Lettering) -> str:
    return f"{lettering.length(axle, 'cap_to_cap', 'joint.cap_to_cap')} over caps"


def _line_of_words(pen: Pen, at: tuple[float, float], path: str, told: str, label: str) -> None:
    with pen.asked(path, told):
        _boxed(pen, at, told, label, 0.5 * len(label) + 4.0)


def _boxed(
    pen: Pen,
    at: tuple[float, float],
    told: str,
    label: str,
    wide: float,
    *,
    bold: bool = False,
) -> None:
    """Words where they are told, else an empty box with its question."""
    if not told:
        pen.blank(*at, label, wide)
        return
    half = 0.5 * ADVANCE * pen.text * (len(told) + 1)
    pen.target(at[0] - half, at[1] - pen.text, at[0] + half, at[1] + pen.text)
    pen.words(*at, told, clear=not bold, bold=bold)


def _blank_words(pen: Pen, axle: Axle, low: float) -> None:
    """Boxes for what is no length: tyre, weight, joint, lock."""
    half = 0.5 * axle.mm["track"]
    pen.blank(
        -(half + 0.5 * axle.tyre_width + 3.4 * pen.text), -0.3 * axle.tyre_outer, "2 tyre", 4.6
    )
    x = -axle.y.get("kingpin_right", axle.y["centre"] - 11.0 * pen.text)
    start = x if axle.front else -axle.y["centre"]
    pen.line([(start, 50.0), (x - 3.0 * pen.text, low - 0.9 * pen.text)], "hair")
    pen.blank(x - 3.6 * pen.text, low, "10 joint", 6.0)
    pen.blank(-axle.y["centre"], low, "11 lock", 6.0)
    pen.line([(-axle.y["centre"], axle.ball), (-axle.y["centre"], low - 0.95 * pen.text)], "hair")
    pen.blank(0.0, -axle.tube - 0.62 * COIL_HIGH, "9 weight", 6.5)
    pen.blank(-axle.y["seat_left"] + 4.6 * pen.text, -axle.tube - 0.8 * COIL_HIGH, "1 held", 4.4)


def _level(
    pen: Pen,
    ends: tuple[float, float],
    y: float,
    axle: Axle,
    what: tuple[str, str, str, int | str],
    lettering: Lettering,
    busy: Sequence[float] = (),
) -> None:
    name, mark, path, number = what
    if not lettering.empty(pen, path):
        level_line(pen, *ends, y, lettering.length(axle, name, path), mark, busy)
        return
    level_line(pen, *ends, y, " " * 9, mark)
    pen.blank(0.5 * (ends[0] + ends[1]), y, number, 5.2)
