"""The sketch of a guided reading as SVG: where the gauge goes, and which step that is."""

from collections.abc import Callable, Mapping
from functools import cache
from typing import Final
from xml.sax.saxutils import escape

from axlewright.tables import procedure
from axlewright.views.drawing_ink import FONT, GROUND, Pen
from axlewright.views.drawing_paths import figure
from axlewright.views.sketch_axle import AXLE
from axlewright.views.sketch_kit import TEXT
from axlewright.views.sketch_wheels import WHEELS

WIDE: Final = 330.0
EDGE: Final = 6.0
SKETCHES: Final[Mapping[str, Callable[[Pen], None]]] = {**WHEELS, **AXLE}


@cache
def procedure_sketch(key: str) -> str:
    """SVG of one procedure; angles and bows are drawn much larger than they are.

    Raises `UnknownEntry` for a procedure that nobody knows.
    """
    told = procedure(key)
    pen = Pen(f"sketch-{key.replace('_', '-')}", TEXT, {})
    SKETCHES[key](pen)
    left, top, right, bottom = pen.extent()
    left, right = min(left, EDGE), max(right, WIDE - EDGE)  # one size of lettering in all
    wide, high = right - left + 2 * EDGE, bottom - top + 2 * EDGE
    shape = " ".join(figure(each) for each in (left - EDGE, top - EDGE, wide, high))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="axle-drawing sketch" '
        f'viewBox="{shape}" width="{figure(wide)}" height="{figure(high)}" role="img" '
        f'aria-labelledby="{pen.name}-told" font-family="{FONT}" color="currentColor">'
        f'<title id="{pen.name}-told">{escape(told.sketch)}</title>'
        f'<g stroke="currentColor" stroke-width="{pen.weight("thin"):.2f}" fill="{GROUND}" '
        f'class="ground" stroke-linejoin="round" stroke-linecap="round">{pen.drawn()}</g></svg>'
    )
