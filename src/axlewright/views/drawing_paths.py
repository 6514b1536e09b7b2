"""Paths of an SVG as short as they can be: a tenth of a millimetre, steps instead of places."""

from collections.abc import Sequence
from itertools import pairwise

from axlewright.views.drawing_curves import Point


def figure(number: float) -> str:
    """A length in millimetres to a tenth, without a trailing nought."""
    text = f"{number:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text


def line_path(points: Sequence[Point], *, closed: bool = False, places: bool = False) -> str:
    """Path through points; ``places`` writes every place instead of the step to it."""
    rounded = [(round(x, 1), round(y, 1)) for x, y in points]
    start = f"M{figure(rounded[0][0])} {figure(rounded[0][1])}"
    end = "Z" if closed else ""
    if places:
        return start + "".join(f"L{figure(x)} {figure(y)}" for x, y in rounded[1:]) + end
    steps = [(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in pairwise(rounded)]
    numbers = "".join(_after(figure(each)) for step in steps for each in step).removeprefix(" ")
    return f"{start}l{numbers}{end}" if numbers else start + end


def box_path(left: float, top: float, right: float, bottom: float) -> str:
    """Path of an upright rectangle."""
    x, y, wide, high = left, top, right - left, bottom - top
    return f"M{figure(x)} {figure(y)}h{figure(wide)}v{figure(high)}h{figure(-wide)}Z"


def disc_path(x: float, y: float, radius: float) -> str:
    """Path of a circle, as two halves."""
    r, two = figure(radius), figure(2.0 * radius)
    half = f"a{r} {r} 0 1 0 "
    return f"M{figure(x - radius)} {figure(y)}{half}{two} 0{half}{figure(-2.0 * radius)} 0Z"


def _after(number: str) -> str:
    return number if number.startswith("-") else f" {number}"
