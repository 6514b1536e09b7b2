"""The measurements of the first thirteen questions, typed on their dimension lines."""

from collections.abc import Sequence

from axlewright import units
from axlewright.views.drawing_across import COIL_HIGH
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_places import SIDES, SIGN, Axle


def across_measures(
    pen: Pen, axle: Axle, system: str, *, blank: bool, busy: Sequence[float] = ()
) -> None:
    """Dimension lines of the view from behind; with ``blank`` a numbered box at each place.

    ``busy`` are places across where a leader of a flag comes down.
    """
    half, free = 0.5 * axle.mm["track"], 0.5 * axle.tyre_outer
    ground = max(axle.mm[f"hub_height_{side}"] for side in SIDES)
    edge = half + 0.5 * axle.tyre_width
    step = 2.4 * pen.text if blank else 1.7 * pen.text
    for side in SIDES:
        _side_measures(pen, axle, side, system, edge + 3.4 * pen.text, ground + step, blank=blank)
    y = ground + 2.2 * step
    for side in SIDES:
        x = -SIGN[side] * half
        pen.line([(x, ground + 0.9 * pen.text), (x, y + 0.4 * pen.text)], "hair")
    _level(pen, -half, half, y, _length(axle, "track", system), "track", 4, blank=blank)
    y = -max(free, axle.tube + COIL_HIGH + 40.0) - 0.9 * pen.text
    springs = [-axle.y[f"seat_{side}"] for side in SIDES]
    for x in springs:
        pen.line([(x, -axle.tube - COIL_HIGH - 20.0), (x, y - 0.4 * pen.text)], "hair")
    _level(
        pen,
        springs[0],
        springs[1],
        y,
        _length(axle, "spring_spacing", system),
        "springs",
        5,
        blank=blank,
        busy=busy,
    )
    low = 0.62 * ground
    if blank:
        _blank_words(pen, axle, low)
        return
    if axle.front:
        cap = units.show(axle.mm["cap_across"] / 1e3, "length", system)
        cross = units.show(axle.mm["cap_to_cap"] / 1e3, "length", system)
        x = -axle.y["kingpin_left"]
        pen.line(
            [(x, 0.5 * axle.mm["cap_across"]), (x + 0.4 * pen.text, low - 0.7 * pen.text)], "hair"
        )
        pen.words(
            -(half - 0.56 * axle.tyre_width),
            low,
            f"cap ⌀ {cap}, {cross} over caps",
            "start",
            clear=True,
        )
    pen.words(-axle.y["centre"], 0.86 * ground, axle.words.get("drive.lock", ""), clear=True)


def side_measures(pen: Pen, axle: Axle, system: str) -> None:
    """What stands under the view from the left: tyre and weight."""
    low = axle.mm["hub_height_left"]
    tyre = units.show(round(axle.tyre_outer / 1e3, 3), "length", system)
    wide = units.show(round(axle.tyre_width / 1e3, 3), "length", system)
    pen.words(0.0, low + 1.4 * pen.text, f"tyre ⌀ {tyre} free, {wide} wide")
    told = units.show(axle.weight, "weight", system)
    pen.words(0.0, low + 2.8 * pen.text, f"carries {told}")


def side_names(pen: Pen, axle: Axle, low: float) -> None:
    """Names of the sides under the wheels."""
    y = low + 1.3 * pen.text
    for side in SIDES:
        pen.words(-SIGN[side] * 0.5 * axle.mm["track"], y, side, bold=True)


def _side_measures(
    pen: Pen, axle: Axle, side: str, system: str, out: float, below: float, *, blank: bool
) -> None:
    sign, mm = SIGN[side], axle.mm
    height = mm[f"hub_height_{side}"]
    x = -sign * out
    if blank:
        pen.blank(x, 0.5 * height, f"3 {side}", 4.6)
    else:
        pen.upright(
            0.0, height, x, units.show(height / 1e3, "length", system), f"hub_height_{side}"
        )
    joint, end = axle.y[f"joint_{side}"], axle.y[f"end_{side}"]
    for y in (joint, end):
        pen.line([(-y, axle.tube + 12.0), (-y, below + 0.4 * pen.text)], "hair")
    _level(
        pen,
        -joint,
        -end,
        below,
        _length(axle, f"tube_bare_{side}", system),
        f"tube_bare_{side}",
        f"7 {side}",
        blank=blank,
    )
    middle, high = 0.55 * end + 0.45 * joint, 0.36 * height
    pen.line([(-middle, 0.5 * mm[f"tube_outer_{side}"]), (-middle, high - 0.7 * pen.text)], "hair")
    if blank:
        pen.blank(-middle, high, f"6 {side}", 4.6)
    else:
        told = units.show(mm[f"tube_outer_{side}"] / 1e3, "length", system)
        pen.words(-middle, high, f"⌀ {told}", clear=True)
    wheel = sign * 0.5 * mm["track"]
    if blank:
        pen.words(-wheel, -0.5 * axle.tyre_outer - 1.3 * pen.text, side, bold=True)
        if side == "left":
            pen.blank(-wheel, below, "8 offset", 5.0)
        return
    offset = units.show(round(mm["wheel_offset"] / 1e3, 3), "offset")
    spacer = mm["wheel_spacer"]
    told = f"{side}: ET {offset}" + (
        f" + {units.show(spacer / 1e3, 'length', system)}" if spacer > 0.5 else ""
    )
    pen.words(-wheel, below + 2.2 * (1.7 * pen.text), told, bold=True)


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
    x0: float,
    x1: float,
    y: float,
    told: str,
    mark: str,
    number: int | str,
    *,
    blank: bool,
    busy: Sequence[float] = (),
) -> None:
    if not blank:
        pen.across(x0, x1, y, told, mark, busy)
        return
    pen.across(x0, x1, y, "         ", mark)
    pen.blank(0.5 * (x0 + x1), y, number, 5.2)


def _length(axle: Axle, name: str, system: str) -> str:
    return units.show(axle.mm[name] / 1e3, "length", system)
