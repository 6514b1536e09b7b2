"""One line drawing of one axle, to scale, as SVG text; and the same drawing in words.

Made once and used on page, phone and paper. Lengths that were given or assumed are to scale in
millimetres; castings, coils and leaves have their usual shape. Nothing is said by colour: the
drawing takes the colour of the text around it.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias
from xml.sax.saxutils import escape

from axlewright.rig import Columns, TyreCode, Words
from axlewright.views import drawing_across, drawing_plan, drawing_side
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_flags import flag_views, placed_flags
from axlewright.views.drawing_ink import FONT, GROUND, WEIGHTS, Pen, hatchings
from axlewright.views.drawing_key import draw_key
from axlewright.views.drawing_links import Links
from axlewright.views.drawing_measures import (
    Lettering,
    across_measures,
    side_measures,
    side_names,
)
from axlewright.views.drawing_places import Axle, Spot, axle_places, spots
from axlewright.views.drawing_words import picture_words

View: TypeAlias = Literal["across", "plan", "side"]
TITLES: Mapping[View, str] = {
    "across": "from behind, wheels cut through",
    "plan": "from above, ahead is up",
    "side": "from the left, ahead is left",
}
DRAWS: Mapping[View, Callable[[Pen, Axle], None]] = {
    "across": drawing_across.draw_across,
    "plan": drawing_plan.draw_plan,
    "side": drawing_side.draw_side,
}
SEEN: Mapping[View, Callable[[Spot], Point]] = {
    "across": drawing_across.seen,
    "plan": drawing_plan.seen,
    "side": drawing_side.seen,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Flag:
    """One numbered flag: a part's key (both sides where it names none) and how close it is."""

    number: int
    part: str
    closeness: str


def drawing(
    columns: Columns,
    words: Words,
    tyre: TyreCode,
    flags: Sequence[Flag] = (),
    *,
    stops: Sequence[str] = (),
    views: Sequence[View] = ("across", "side", "plan"),
    measures: bool = True,
    key: bool = True,
    system: str = "metric",
    text: float = 36.0,
    name: str = "axle",
    known: Collection[str] | None = None,
    typed: Mapping[str, str] | None = None,
    links: Links | None = None,
    stacked: bool = False,
) -> str:
    """SVG of one axle; ``text`` is the height of the lettering in millimetres of the real thing.

    With all three views it is a sheet (from behind and side in one row, plan below); with one it
    is that view alone. ``name`` keeps ids apart where two drawings share a page. ``known`` are
    the fields that were told, where not all were: the rest is drawn faint, with empty boxes.
    ``typed`` has answers to be lettered as they were typed, by field. With ``links`` parts and
    dimension lines can be tapped and reached by the Tab key. ``stacked`` sets the views below each
    other, for a narrow page, with what is no length listed under the view from the left.
    """
    axle = axle_places(columns, words, tyre)
    made = _pens(axle, flags, views, name, text, named=not measures, known=known, links=links)
    if measures:
        _measured(made, axle, Lettering(system=system, typed=typed or {}, listed=stacked), flags)
    for view, pen in made.items():
        placed_flags(pen, axle, flags, view, SEEN[view])
    more = Pen(f"{name}--key", text, {}) if key and (flags or len(views) > 1) else None
    if more is not None:
        draw_key(
            more,
            axle,
            [(flag.number, flag.part, flag.closeness) for flag in flags],
            system,
            measured=measures,
        )
    told = picture_words(axle, flags, stops, system, views)
    return _sheet(
        made,
        more,
        name,
        text,
        stops,
        told,
        role="img" if links is None else "group",
        stacked=stacked,
    )


def blank_drawing(
    columns: Columns, words: Words, tyre: TyreCode, *, text: float = 36.0, name: str = "blank"
) -> str:
    """SVG of a usual axle with an empty, numbered box at the place of each measurement."""
    axle = axle_places(columns, words, tyre)
    made = _pens(axle, (), ("across",), name, text, named=False)
    _measured(made, axle, Lettering(blank=True))
    told = [
        "An axle from behind, with an empty box at the place of each measurement.",
        "The number in a box is that of its question.",
    ]
    return _sheet(made, None, name, text, (), told)


def drawing_in_words(
    columns: Columns,
    words: Words,
    tyre: TyreCode,
    flags: Sequence[Flag] = (),
    *,
    stops: Sequence[str] = (),
    system: str = "metric",
) -> str:
    """The drawing for somebody who cannot see it: one sentence a line."""
    axle = axle_places(columns, words, tyre)
    return "\n".join(picture_words(axle, flags, stops, system, ("across", "side", "plan")))


def _pens(
    axle: Axle,
    flags: Sequence[Flag],
    views: Sequence[View],
    name: str,
    text: float,
    *,
    named: bool,
    known: Collection[str] | None = None,
    links: Links | None = None,
) -> dict[View, Pen]:
    marks = {flag.part: flag.closeness for flag in reversed(flags)}
    made = {}
    for view in views:
        pen = Pen(f"{name}--{view}", text, marks, known=known, links=links)
        DRAWS[view](pen, axle)
        made[view] = pen
    if "plan" in made:
        side_names(made["plan"], axle, 0.5 * axle.tyre_outer)
    if named and "across" in made:
        side_names(made["across"], axle, axle.mm["hub_height_left"])
    return made


def _measured(
    made: Mapping[View, Pen], axle: Axle, lettering: Lettering, flags: Sequence[Flag] = ()
) -> None:
    if "across" in made:
        busy = [-spot[1] for flag in flags for spot in spots(axle, flag.part)]
        across_measures(made["across"], axle, lettering, busy)
    if "side" in made:
        side_measures(made["side"], axle, lettering)


def _sheet(
    made: Mapping[View, Pen],
    key: Pen | None,
    name: str,
    text: float,
    stops: Sequence[str],
    told: Sequence[str],
    *,
    role: str = "img",
    stacked: bool = False,
) -> str:
    """Set the views beside and below each other, all at one scale."""
    gap = 2.2 * text
    for view, pen in made.items():
        left, top, right, _ = pen.extent()
        pen.words(
            0.5 * (left + right) if view != "across" else 0.0,
            top - 1.4 * text,
            TITLES[view],
            size=1.05,
            bold=True,
        )
    rows = _rows(made, key, stacked=stacked)
    parts, down, wide = [], 0.0, 0.0
    if stops:
        wide = max(sum(_width(pen) for pen in row) + gap * (len(row) - 1) for row in rows)
        band = Pen(f"{name}--stop", text, {})
        fits = max(int((wide - 2.0 * text) / (0.602 * 1.1 * text)), 20)
        lines = [
            line for stop in stops for line in _folded(f"STOP: {stop.removeprefix('STOP: ')}", fits)
        ]
        band.black(wide, lines)
        parts.append(f'<g data-view="stop">{band.drawn()}</g>')
        down = band.extent()[3] + gap
    shared = _shared_left(made, ("across", "plan", "side") if stacked else ("across", "plan"))
    for row in rows:
        high = [pen.extent() for pen in row]
        above = max(-top for _, top, _, _ in high)
        free = made.get("across") not in row
        right = 0.0
        for at, pen in enumerate(row):
            left, top, end, _ = pen.extent()
            start = (
                shared if at == 0 and shared is not None else right - left + (gap if at else 0.0)
            )
            lift = -top if free else above
            parts.append(
                f'<g data-view="{pen.name.partition("--")[2]}" '
                f'class="ground" transform="translate({start:.2f} {down + lift:.2f})">'
                f"{pen.drawn()}</g>"
            )
            right = start + end
        wide = max(wide, right)
        lowest = max((bottom - top if free else above + bottom) for _, top, _, bottom in high)
        down += lowest + gap
    edge = 0.3 * text
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="axle-drawing" role="{role}" '
        f'aria-labelledby="{name}-title {name}-desc" '
        f'viewBox="{-edge:.2f} {-edge:.2f} {wide + 2 * edge:.2f} {down - gap + 2 * edge:.2f}" '
        f'fill="{GROUND}" stroke="currentColor" stroke-width="{WEIGHTS["thin"] * text:.2f}" '
        f'stroke-linejoin="round" '
        f'font-family="{FONT}">'
        f'<title id="{name}-title">{escape(told[0])}</title>'
        f'<desc id="{name}-desc">{escape(" ".join(told[1:]))}</desc>'
        f"<defs>{hatchings(name, text)}</defs>{''.join(parts)}</svg>\n"
    )


def _rows(made: Mapping[View, Pen], key: Pen | None, *, stacked: bool) -> list[list[Pen]]:
    if len(made) < 3 or stacked:
        rows = [[pen] for pen in made.values()]
        return [*rows, [key]] if key is not None else rows
    low = [made["plan"], key] if key is not None else [made["plan"]]
    return [[made["across"], made["side"]], low]


def _shared_left(made: Mapping[View, Pen], views: Sequence[View]) -> float | None:
    """Where the middle of the axle stands on the sheet, the same for both views across."""
    lefts = [-made[view].extent()[0] for view in views if view in made]
    return max(lefts) if lefts and len(made) > 1 else None


def _width(pen: Pen) -> float:
    left, _, right, _ = pen.extent()
    return right - left


def _folded(text: str, fits: int) -> list[str]:
    lines = [""]
    for word in text.split():
        if len(lines[-1]) + len(word) + 1 > fits:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return lines


__all__ = ["Flag", "Links", "blank_drawing", "drawing", "drawing_in_words", "flag_views"]
