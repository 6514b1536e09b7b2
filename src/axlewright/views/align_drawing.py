"""Two tyres from above with the two tape marks: the whole of a toe reading in one drawing.

The turn of the wheels is drawn larger than it is, and the drawing says by how much.
"""

from math import cos, radians, sin
from textwrap import wrap
from xml.sax.saxutils import escape

from axlewright.geometry import Alignment
from axlewright.views.align_phrases import (
    across,
    angle,
    length,
    toe_words,
    turns_words,
    way_words,
)
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import FONT, GROUND, Pen
from axlewright.views.phrases import quantity

TEXT = 36.0
SHOWN = radians(6.0)  # how far each wheel is drawn turned, at the least toe worth drawing
BETWEEN = 32  # letters of a line that stays between the tyres
TYRE_WIDE = 0.32  # of the diameter


def toe_drawing(
    alignment: Alignment, system: str = "metric", *, name: str = "toe", text: float = TEXT
) -> str:
    """SVG of the two tape marks; with empty boxes where nothing was read.

    ``text`` is the height of its letters in mm of the real thing.
    """
    pen = Pen(name, text, {})
    track = 1000.0 * float(_track(alignment))
    size = 1000.0 * alignment.diameter
    toe = None if alignment.toe is None else alignment.toe.value
    turned = 0.0 if toe is None or abs(toe) < 1e-5 else SHOWN * (1.0 if toe > 0.0 else -1.0)
    marks = _wheels(pen, track, size, turned)
    _tapes(pen, alignment, marks, size, system)
    _rod(pen, alignment, track, size, system)
    left, top, right, bottom = pen.extent()
    edge = 0.8 * text
    box = (left - edge, top - edge, right - left + 2 * edge, bottom - top + 2 * edge)
    told = drawing_words(alignment, system)
    shape = " ".join(f"{each:.1f}" for each in box)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{shape}" width="{box[2]:.1f}" '
        f'height="{box[3]:.1f}" class="axle-drawing" role="img" aria-labelledby="{name}-told" '
        f'font-family="{FONT}" color="currentColor">'
        f'<title id="{name}-told">{escape(told)}</title>'
        f'<g stroke="currentColor" stroke-width="{pen.weight("thin"):.2f}" fill="{GROUND}" '
        f'class="ground" stroke-linejoin="round" stroke-linecap="round">{pen.drawn()}</g></svg>'
    )


def drawing_size(svg: str) -> tuple[float, float]:
    """Width and height of a drawing, mm of the real thing."""
    box = svg.partition('viewBox="')[2].partition('"')[0].split()
    return float(box[2]), float(box[3])


def drawing_words(alignment: Alignment, system: str = "metric") -> str:
    """The drawing for somebody who cannot see it."""
    if alignment.toe is None:
        return (
            "Two tyres from above, front up, with one tape mark in front of the axle and one "
            "behind it, each with a box to write in."
        )
    told = (
        "Two tyres from above, front up. The tape reads "
        f"{_read(alignment, 'front', system)} in front and {_read(alignment, 'rear', system)} "
        f"behind: {toe_words(alignment, system)}."
    )
    turn = alignment.turn
    if turn is not None:
        place = "ahead of" if turn.ahead else "behind"
        what = "longer" if turn.longer else "shorter"
        told += (
            f" The tie rod, {place} the axle, is made {length(abs(turn.growth), system)} {what}."
        )
    return told


def _wheels(pen: Pen, track: float, size: float, turned: float) -> dict[str, tuple[Point, Point]]:
    """Draw both wheels; gives the marks at the front and at the rear, left then right."""
    marks: dict[str, list[Point]] = {"front": [], "rear": []}
    half, wide = 0.5 * size, 0.5 * TYRE_WIDE * size
    for sign in (-1.0, 1.0):
        x, lean = 0.5 * sign * track, -sign * turned
        ahead, aside = (sin(lean), -cos(lean)), (cos(lean), sin(lean))

        def at(
            along: float, over: float, x: float = x, one: Point = ahead, two: Point = aside
        ) -> Point:
            return x + along * one[0] + over * two[0], along * one[1] + over * two[1]

        corner = 0.25 * wide
        pen.shape(
            [
                at(half, -wide + corner), at(half, wide - corner), at(half - corner, wide),
                at(-half + corner, wide), at(-half, wide - corner), at(-half, -wide + corner),
                at(-half + corner, -wide), at(half - corner, -wide),
            ],
            weight="part",
        )  # fmt: skip
        pen.line([at(half, 0.0), at(-half, 0.0)], "hair", dashed=True)
        for place, along in (("front", half), ("rear", -half)):
            mark = at(along, 0.0)
            marks[place].append(mark)
            pen.line([at(along - 1.6 * pen.text * (1 if along > 0 else -1), 0.0), mark], "heavy")
    pen.bar((-0.5 * track, 0.0), (0.5 * track, 0.0), 0.08 * size)
    return {place: (both[0], both[1]) for place, both in marks.items()}


def _tapes(
    pen: Pen,
    alignment: Alignment,
    marks: dict[str, tuple[Point, Point]],
    size: float,
    system: str,
) -> None:
    for place, sign in (("front", -1.0), ("rear", 1.0)):
        y = sign * (0.5 * size + 2.4 * pen.text)
        start, end = marks[place]
        for mark in (start, end):
            pen.line([mark, (mark[0], y + sign * 0.7 * pen.text)], "hair")
            pen.line(
                [
                    (mark[0] - 0.4 * pen.text, y + 0.4 * pen.text),
                    (mark[0] + 0.4 * pen.text, y - 0.4 * pen.text),
                ],
                "part",
            )
        pen.line([(start[0], y), (end[0], y)], "thin")
        middle = 0.5 * (start[0] + end[0])
        told = _read(alignment, place, system)
        if told:
            pen.words(middle, y, f" {place} {told} ", clear=True, bold=True)
        else:
            pen.blank(middle, y, place[0].upper(), wide=9.0, high=2.2)
    told = f"marks at a diameter of {across(alignment.diameter, system)}"
    if not alignment.diameter_given:
        told += " (the new tyre's)"
    y = 0.5 * size + 5.2 * pen.text
    pen.words(0.0, y, told)
    if alignment.toe is not None:
        what = "toe-in" if alignment.toe.value >= 0.0 else "toe-out"
        drawn = f"{what} {angle(abs(alignment.toe.value))} in all; drawn much larger"
        pen.words(0.0, y + 1.5 * pen.text, drawn)


def _rod(pen: Pen, alignment: Alignment, track: float, size: float, system: str) -> None:
    """Draw the tie rod on its side of the axle, with what to do to it."""
    turn = alignment.turn
    if turn is None:
        return
    y = (-1.0 if turn.ahead else 1.0) * 0.25 * size
    reach = 0.42 * track - 0.5 * TYRE_WIDE * size
    pen.bar((-reach, y), (reach, y), 0.035 * size)
    pen.box(-2.2 * pen.text, y - 0.6 * pen.text, 2.2 * pen.text, y + 0.6 * pen.text, weight="part")
    for at in (-0.75, 0.75):
        pen.line([(at * pen.text, y - 0.6 * pen.text), (at * pen.text, y + 0.6 * pen.text)], "hair")
    if turn.top_goes:
        tip = -1.0 if turn.top_goes == "forward" else 1.0
        x = 3.2 * pen.text
        pen.line([(x, y - tip * 0.7 * pen.text), (x, y + tip * 0.7 * pen.text)], "part")
        pen.line(
            [
                (x - 0.4 * pen.text, y + tip * 0.3 * pen.text),
                (x, y + tip * 0.7 * pen.text),
                (x + 0.4 * pen.text, y + tip * 0.3 * pen.text),
            ],
            "part",
        )
    what = "longer" if turn.longer else "shorter"
    grown = f"tie rod {length(abs(turn.growth), system)} {what}"
    side = 1.0 if turn.ahead else -1.0
    pen.words(0.0, y - side * 1.7 * pen.text, grown, bold=True)
    if turn.turns is not None:
        pen.words(0.0, y + side * 1.7 * pen.text, turns_words(turn), size=0.85, clear=True)
        how = way_words(turn).partition(" (")[0]
        lines = wrap(how, BETWEEN)[:: 1 if side > 0.0 else -1]
        for row, told in enumerate(lines):
            at = y + side * (2.9 + 1.1 * row) * pen.text
            pen.words(0.0, at, told, size=0.85, clear=True)


def _read(alignment: Alignment, place: str, system: str) -> str:
    values = alignment.readings.values(f"toe.{place}")
    if not values:
        return ""
    return quantity(sum(values) / len(values), "length", system, 5)


def _track(alignment: Alignment) -> float:
    given = alignment.rig.given.get("track")
    return 1.6 if given is None else given.value
