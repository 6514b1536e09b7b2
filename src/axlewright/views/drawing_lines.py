"""Dimension lines: level and upright, with a number in a gap of the line."""

from collections.abc import Sequence

from axlewright.views.drawing_curves import clear_place
from axlewright.views.drawing_ink import ADVANCE, Pen


def level_line(
    pen: Pen,
    x0: float,
    x1: float,
    y: float,
    told: str,
    mark: str = "",
    busy: Sequence[float] = (),
) -> None:
    """Draw a level dimension line with its value in a gap of it, clear of ``busy`` places."""
    low, high = min(x0, x1), max(x0, x1)
    half = 0.5 * ADVANCE * pen.text * (len(told) + 1)
    middle = clear_place(low + 1.5 * half, high - 1.5 * half, busy, 1.1 * half)
    fits = high - low > 2.0 * half + 1.6 * pen.text
    drop = 0.0 if fits else 0.85 * pen.text
    pen.target(low, y - pen.text, high, y + drop + pen.text)
    runs = [[(low, y), (middle - half, y)], [(middle + half, y), (high, y)]]
    tip = 0.35 * pen.text
    tips = [
        [(end + way * tip, y - 0.4 * tip), (end, y), (end + way * tip, y + 0.4 * tip)]
        for end, way in ((low, 1.0), (high, -1.0))
    ]
    pen.lines([*(runs if fits else [[(low, y), (high, y)]]), *tips], "hair")
    crossed = bool(busy)  # leaders of flags come down here
    pen.words(middle, y + drop, told, clear=crossed, last=crossed)
    pen.marked(mark, ((low, y), (high, y)))


def upright_line(pen: Pen, y0: float, y1: float, x: float, told: str, mark: str = "") -> None:
    """Draw an upright dimension line with its value, read from the right, in a gap of it."""
    low, high = min(y0, y1), max(y0, y1)
    middle, tip = 0.5 * (low + high), 0.35 * pen.text
    gap = 0.5 * ADVANCE * pen.text * (len(told) + 1)
    wide = 1.2 * pen.text
    pen.target(x - wide, low, x + wide, high)
    fits = high - low > 2.0 * gap + 1.6 * pen.text
    runs = [[(x, low), (x, middle - gap)], [(x, middle + gap), (x, high)]]
    tips = [
        [(x - 0.4 * tip, end + way * tip), (x, end), (x + 0.4 * tip, end + way * tip)]
        for end, way in ((low, 1.0), (high, -1.0))
    ]
    pen.lines([*(runs if fits else [[(x, low), (x, high)]]), *tips], "hair")
    pen.words(x if fits else x - 0.85 * pen.text, middle, told, upright=True)
    pen.marked(mark, ((x, low), (x, high)))
