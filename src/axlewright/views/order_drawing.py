"""The axle that is ordered, to scale from behind, with the numbers of the order sheet's fields.

What nobody has told stands dashed where it would usually be. Millimetres of the real thing.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from axlewright.swap import Filled, Order
from axlewright.units import show
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import FONT, GROUND, Pen

USUAL: Final[Mapping[str, float]] = {  # m: where nothing was told
    "width.overall": 1.6,
    "width.left": 0.65,
    "ratio.tyre_height": 0.42,
    "tube.outer": 0.08,
    "tube.bare_left": 0.33,
    "tube.bare_right": 0.6,
    "spring.apart": 0.9,
    "spring.up": 0.06,
    "arm.apart": 0.82,
    "arm.below": 0.07,
    "track_bar.from_middle": 0.42,
    "track_bar.above": 0.1,
    "damper.apart": 0.86,
    "gears.ring": 0.22,
    "pinion.offset": 0.03,
}
TEXT: Final = 38.0
BOX: Final = "_________"
TYRE: Final = 300.0  # mm drawn of a tyre's width
NAMES: Final[Mapping[int, str]] = {
    1: "tyre and wheel",
    2: "left mounting face",
    3: "hub, brake, shaft joint",
    4: "knuckle",
    5: "end forging",
    6: "tube",
    7: "spring seat",
    8: "arm bracket",
    9: "centre: gears, carrier, lock",
    10: "pinion",
    11: "track-bar bracket",
    12: "damper bracket",
    13: "right mounting face",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderPicture:
    """A drawing as SVG text, its size in mm of the real thing, and the same in words."""

    svg: str
    wide: float
    high: float
    words: str


def order_picture(order: Order, system: str = "metric", *, blank: bool = False) -> OrderPicture:
    """Draw an order from wheel to wheel, seen from behind: the vehicle's left is left."""

    def said(value: float, key: str) -> str:
        if blank:
            return BOX
        return f"{'' if key in sure else 'about '}{show(value / 1e3, 'length', system, 5)}"

    told = {row.field.key: row.filled for row in order.rows if row.filled is not None}
    at = {key: _number(told.get(key), 1e3 * usual) for key, usual in USUAL.items()}
    sure = {key for key, each in told.items() if each.holds}
    pen = Pen("order", TEXT, {})
    left, right = -at["width.left"], at["width.overall"] - at["width.left"]
    middle = 0.5 * (left + right)
    tube, up = 0.5 * at["tube.outer"], at["ratio.tyre_height"]
    _wheels(pen, left, right, up, dashed="ratio.tyre_height" not in sure)
    ring = 0.62 * at["gears.ring"]
    ends = {"left": -0.6 * ring - at["tube.bare_left"], "right": 0.6 * ring + at["tube.bare_right"]}
    dashed = "tube.outer" not in sure
    pen.box(ends["left"], -tube, ends["right"], tube, weight="part", dashed=dashed)
    pen.disc(0.0, 0.0, ring, weight="part", dashed="gears.ring" not in sure)
    below = -1.0 if _word(told.get("pinion.height")) == "above" else 1.0
    nose = (0.0, below * at["pinion.offset"])
    pen.disc(*nose, 0.28 * ring, weight="part", dashed="pinion.offset" not in sure)
    for side, face in (("left", left), ("right", right)):
        out = -1.0 if side == "left" else 1.0
        end = ends[side]
        pen.box(end, -1.25 * tube, end + out * 60.0, 1.25 * tube, weight="part")
        pen.box(end + out * 60.0, -1.6 * tube, face - out * 40.0, 1.6 * tube, weight="thin")
        pen.line([(face, -2.4 * tube), (face, 2.4 * tube)], "heavy")
    bar = -1.0 if _word(told.get("track_bar.side")) == "left" else 1.0
    places = _fittings(pen, at, sure, middle, tube, bar)
    flags = {
        1: (left - 0.5 * TYRE, -0.6 * up),
        2: (left, -2.2 * tube),
        3: (left + 28.0, 1.2 * tube),
        4: (0.5 * (left + 40.0 + ends["left"] - 60.0), -1.2 * tube),
        5: (ends["left"] - 30.0, 1.1 * tube),
        6: (0.5 * (ends["right"] + ring), -tube),
        9: (0.45 * ring, -0.6 * ring),
        10: nose,
        13: (right, -2.2 * tube),
        **places,
    }
    _flags(pen, flags, top=-up - 60.0, bottom=max(up, ring) + 110.0)
    _dimension(pen, left, 0.0, up + 190.0, said(-left, "width.left"))
    _dimension(pen, 0.0, right, up + 190.0, said(right, "width.right"))
    _dimension(pen, left, right, up + 270.0, said(right - left, "width.overall"))
    edges = pen.extent()
    x, y = edges[0] - 20.0, edges[1] - 20.0
    wide, high = edges[2] - edges[0] + 40.0, edges[3] - edges[1] + 40.0
    words = (
        f"The ordered axle from behind, the vehicle's left on the left. Its left mounting face "
        f"stands {said(-left, 'width.left')} from the pinion, its right one "
        f"{said(right, 'width.right')}. Numbers from wheel to wheel: "
        + "; ".join(f"{number} {name}" for number, name in NAMES.items())
        + ". Dashed is what nobody has told."
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{x:.0f} {y:.0f} {wide:.0f} {high:.0f}" '
        f'role="img" class="ground" fill="{GROUND}" stroke="currentColor" font-family="{FONT}" '
        f'stroke-width="{pen.weight("thin"):.2f}"><title>The axle that is ordered</title>'
        f"<desc>{words}</desc>{pen.drawn()}</svg>"
    )
    return OrderPicture(svg=svg, wide=wide, high=high, words=words)


def _wheels(pen: Pen, left: float, right: float, up: float, *, dashed: bool) -> None:
    for face, out in ((left, -1.0), (right, 1.0)):
        pen.box(face - out * 40.0, -up, face + out * (TYRE - 40.0), up, dashed=dashed)
    pen.line([(left - TYRE, up), (right + TYRE, up)], "hair")


def _fittings(
    pen: Pen, at: Mapping[str, float], sure: set[str], middle: float, tube: float, side: float
) -> dict[int, Point]:
    """Draw seats and brackets; gives the place that each number points to.

    ``side`` is that of the track bar's bracket: -1 left, 1 right.
    """
    half, up = 0.5 * at["spring.apart"], -max(at["spring.up"], tube)
    places: dict[int, Point] = {}
    for out in (-1.0, 1.0):
        x = middle + out * half
        pen.box(x - 55.0, up, x + 55.0, up + 12.0, weight="part", dashed="spring.up" not in sure)
        pen.line([(x - 30.0, up + 12.0), (x - 30.0, -tube)])
        pen.line([(x + 30.0, up + 12.0), (x + 30.0, -tube)])
        arm = middle + out * 0.5 * at["arm.apart"]
        deep = at["arm.below"]
        pen.box(arm - 36.0, tube, arm + 36.0, deep + 26.0, dashed="arm.below" not in sure)
        pen.disc(arm, deep, 9.0)
        damper = middle + out * 0.5 * at["damper.apart"]
        pen.disc(damper, 0.35 * tube, 12.0, dashed="damper.apart" not in sure)
        if out > 0:
            places |= {7: (x, up), 8: (arm + 20.0, deep), 12: (damper, 0.35 * tube)}
    bar = middle + side * at["track_bar.from_middle"]
    high = -at["track_bar.above"]
    dashed = "track_bar.above" not in sure
    pen.box(bar - 30.0, high - 26.0, bar + 30.0, -tube, dashed=dashed)
    pen.disc(bar, high, 9.0)
    return {**places, 11: (bar, high)}


def _flags(pen: Pen, flags: Mapping[int, Point], top: float, bottom: float) -> None:
    """Number the places: those above the middle line from above, the others from below."""
    radius = 1.05 * TEXT
    for high, y in ((True, top), (False, bottom)):
        row = sorted((at, number) for number, at in flags.items() if (at[1] < 0.0) == high)
        xs: list[float] = []
        for (x, _), _ in row:
            xs.append(max(x, xs[-1] + 2.6 * radius) if xs else x)
        for (at, number), x in zip(row, xs, strict=True):
            pen.line([(x, y + (radius if high else -radius)), at], "hair")
            pen.disc(x, y, radius, weight="part")
            pen.words(x, y, f"{number}", size=1.1, bold=True)


def _dimension(pen: Pen, start: float, end: float, y: float, told: str) -> None:
    pen.line([(start, y), (end, y)], "hair")
    for x in (start, end):
        pen.line([(x, y - 16.0), (x, y + 16.0)], "thin")
    pen.words(0.5 * (start + end), y, told, clear=True)


def _number(filled: Filled | None, otherwise: float) -> float:
    if filled is None or isinstance(filled.value, str):
        return otherwise
    return 1e3 * filled.value


def _word(filled: Filled | None) -> str:
    return str(filled.value) if filled is not None else ""
