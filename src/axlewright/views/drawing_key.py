"""The key beside the drawing: which flag is which part, and what the hatching says."""

from collections.abc import Sequence

from axlewright.views.drawing_ink import ADVANCE, CLOSENESS, Pen
from axlewright.views.drawing_links import called
from axlewright.views.drawing_places import Axle

NOTES = (
    "Lengths told or assumed are to scale;",
    "castings, coils and leaves are of their",
    "usual shape, the track bar stands fore",
    "or aft as usual. Dashed: inside.",
)


def draw_key(
    pen: Pen, axle: Axle, flags: Sequence[tuple[int, str, str]], system: str, *, measured: bool
) -> None:
    """Letter the key, from its own origin downwards."""
    del axle, system
    y = 0.0
    for number, part, closeness in flags:
        pen.disc(0.95 * pen.text, y, 0.95 * pen.text, hides=False, weight="part")
        pen.words(0.95 * pen.text, y, str(number), size=1.15, bold=True)
        if closeness:
            pen.swatch(3.6 * pen.text, y, closeness)
        told = called(part) + (f": {closeness}" if closeness else "")
        pen.words(5.2 * pen.text, y, told, "start")
        y += 2.4 * pen.text
    used = [word for word in CLOSENESS if any(word == closeness for _, _, closeness in flags)]
    if used:
        y += 0.3 * pen.text
        for word in used:
            pen.words(0.0, y, f"{word}: {CLOSENESS[word]}", "start")
            y += 1.5 * pen.text
    if measured:
        y += 0.5 * pen.text
        for line in NOTES:
            pen.words(0.0, y, line, "start")
            y += 1.45 * pen.text
        scale = 500.0
        y += 0.6 * pen.text
        pen.line([(0.0, y), (scale, y)], "heavy", mark="scale_bar")
        pen.words(scale + 0.6 * pen.text, y, "0.5 m", "start")
    pen.words(0.0, -2.2 * pen.text, "", size=ADVANCE)
