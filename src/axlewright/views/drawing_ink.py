"""Pen, hatching, lettering and dimension lines of the axle drawing: plain SVG text.

Everything is drawn in the colour of the text around it on whatever lies behind, so that the same
drawing serves paper, a light page and a dark one. What lies nearer hides what lies behind it: a
nearer shape cuts its own outline out of everything drawn so far.
"""

from collections.abc import Mapping, Sequence
from xml.sax.saxutils import escape

from axlewright.views.drawing_curves import Point, clear_place

FONT = "DejaVu Sans Mono, ui-monospace, Menlo, Consolas, monospace"
ADVANCE = 0.602  # width of a letter over the height of the type, of that face
WEIGHTS: Mapping[str, float] = {"hair": 0.045, "thin": 0.07, "part": 0.105, "heavy": 0.2}
OUTLINES: Mapping[str, str] = {"over": "heavy", "close": "heavy", "near": "part", "room": "part"}
HATCHED = ("over", "close", "near")
CLOSENESS: Mapping[str, str] = {
    "over": "gives before its reference moment",
    "close": "gives there in some draws",
    "near": "holds, without much room",
    "room": "holds with room",
}
FAR = 20_000


class Pen:
    """One view in the making, in millimetres of the real thing, y down as SVG has it.

    ``marks`` gives the closeness of each marked part; a mark without a side counts for both.
    """

    def __init__(self, name: str, text: float, marks: Mapping[str, str]) -> None:
        self.name, self.text, self.marks = name, text, marks
        self._body: list[str] = []
        self._clips: list[str] = []
        self._corners: list[Point] = []

    def weight(self, name: str) -> float:
        """Width of a line, mm."""
        return WEIGHTS[name] * self.text

    def closeness(self, part: str) -> str:
        """Closeness of a part, or nothing where it is not marked."""
        kind = part.removesuffix("_left").removesuffix("_right")
        return self.marks.get(part, self.marks.get(kind, "")) if part else ""

    def line(
        self, points: Sequence[Point], weight: str = "thin", *, dashed: bool = False, mark: str = ""
    ) -> None:
        """Draw an open line."""
        self._reach(points)
        path = "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in points)
        self._path(path, weight, dashed, f' data-mark="{mark}"' if mark else "")

    def shape(
        self,
        points: Sequence[Point],
        part: str = "",
        weight: str = "thin",
        *,
        dashed: bool = False,
        hides: bool = True,
    ) -> None:
        """Draw a closed shape that hides what is behind it; hatched if its part is marked."""
        self._reach(points)
        self._closed(
            "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in points) + "Z",
            part,
            weight,
            dashed=dashed,
            hides=hides,
        )

    def box(
        self,
        left: float,
        top: float,
        right: float,
        bottom: float,
        part: str = "",
        weight: str = "thin",
        *,
        dashed: bool = False,
        hides: bool = True,
    ) -> None:
        """Draw an upright rectangle."""
        x, y = min(left, right), min(top, bottom)
        wide, high = abs(right - left), abs(bottom - top)
        self._reach([(x, y), (x + wide, y + high)])
        self._closed(
            f"M{_n(x)} {_n(y)}h{_n(wide)}v{_n(high)}h{_n(-wide)}Z",
            part,
            weight,
            dashed=dashed,
            hides=hides,
        )

    def disc(
        self,
        x: float,
        y: float,
        radius: float,
        part: str = "",
        weight: str = "thin",
        *,
        dashed: bool = False,
        hides: bool = True,
    ) -> None:
        """Draw a circle."""
        self._reach([(x - radius, y - radius), (x + radius, y + radius)])
        r, two = _n(radius), _n(2.0 * radius)
        self._closed(
            f"M{_n(x - radius)} {_n(y)}a{r} {r} 0 1 0 {two} 0a{r} {r} 0 1 0 -{two} 0Z",
            part,
            weight,
            dashed=dashed,
            hides=hides,
        )

    def bar(
        self,
        start: Point,
        end: Point,
        across: float,
        part: str = "",
        *,
        dashed: bool = False,
        hides: bool = True,
    ) -> None:
        """Draw a rod between two points, as thick as it is."""
        (x0, y0), (x1, y1) = start, end
        length = max(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5, 1e-6)
        side = (-(y1 - y0) / length * across / 2.0, (x1 - x0) / length * across / 2.0)
        self.shape(
            [
                (x0 + side[0], y0 + side[1]),
                (x1 + side[0], y1 + side[1]),
                (x1 - side[0], y1 - side[1]),
                (x0 - side[0], y0 - side[1]),
            ],
            part,
            dashed=dashed,
            hides=hides,
        )

    def words(
        self,
        x: float,
        y: float,
        text: str,
        anchor: str = "middle",
        *,
        size: float = 1.0,
        bold: bool = False,
        clear: bool = False,
    ) -> None:
        """Letter a text with its middle height at y; with ``clear`` nothing behind crosses it."""
        if not text:
            return
        high = self.text * size
        half = ADVANCE * high * len(text) / 2.0
        shift = {"start": half, "end": -half, "middle": 0.0}[anchor]
        self._reach([(x + shift - half, y - 0.6 * high), (x + shift + half, y + 0.6 * high)])
        if clear:
            left, wide = x + shift - half - 0.25 * high, 2.0 * half + 0.5 * high
            self._hide(f"M{_n(left)} {_n(y - 0.6 * high)}h{_n(wide)}v{_n(1.2 * high)}h{_n(-wide)}Z")
        strong = ' font-weight="bold"' if bold else ""
        self._body.append(
            f'<text x="{_n(x)}" y="{_n(y + 0.35 * high)}" text-anchor="{anchor}" '
            f'font-size="{_n(high)}"{strong} fill="currentColor" stroke="none">'
            f"{escape(text)}</text>"
        )

    def across(
        self,
        x0: float,
        x1: float,
        y: float,
        told: str,
        mark: str = "",
        busy: Sequence[float] = (),
    ) -> None:
        """Draw a level dimension line with its value in a gap of it, clear of ``busy`` places."""
        low, high = min(x0, x1), max(x0, x1)
        half = 0.5 * ADVANCE * self.text * (len(told) + 1)
        middle = clear_place(low + 1.5 * half, high - 1.5 * half, busy, 1.1 * half)
        if high - low > 2.0 * half + 1.6 * self.text:
            self.line([(low, y), (middle - half, y)], "hair")
            self.line([(middle + half, y), (high, y)], "hair")
            self.words(middle, y, told)
        else:
            self.line([(low, y), (high, y)], "hair")
            self.words(middle, y + 0.85 * self.text, told)
        self._tips(low, high, y, mark)

    def upright(self, y0: float, y1: float, x: float, told: str, mark: str = "") -> None:
        """Draw an upright dimension line with its value in a gap of it."""
        low, high = min(y0, y1), max(y0, y1)
        middle, gap, tip = 0.5 * (low + high), 0.75 * self.text, 0.35 * self.text
        self.line([(x, low), (x, middle - gap)], "hair")
        self.line([(x, middle + gap), (x, high)], "hair")
        self.words(x, middle, told)
        for end, way in ((low, 1.0), (high, -1.0)):
            self.line(
                [(x - 0.4 * tip, end + way * tip), (x, end), (x + 0.4 * tip, end + way * tip)],
                "hair",
            )
        self._marked(mark, f'x1="{_n(x)}" y1="{_n(low)}" x2="{_n(x)}" y2="{_n(high)}"')

    def blank(self, x: float, y: float, number: int | str, wide: float = 5.0) -> None:
        """Draw an empty box to write in, with the number of its question before it."""
        high, half = 1.9 * self.text, 0.5 * wide * self.text
        label = f"{number}"
        self.shape(
            [
                (x - half, y - high / 2),
                (x + half, y - high / 2),
                (x + half, y + high / 2),
                (x - half, y + high / 2),
            ],
            weight="part",
        )
        self.words(
            x - half + 0.3 * self.text, y - 0.35 * self.text, label, "start", size=0.8, bold=True
        )

    def flag(self, x: float, y: float, number: int, part: str, at: Point) -> None:
        """Draw a numbered flag with its leader to the place of a part."""
        radius = 0.95 * self.text
        away = max(((at[0] - x) ** 2 + (at[1] - y) ** 2) ** 0.5, 1e-6)
        start = (x + (at[0] - x) * radius / away, y + (at[1] - y) * radius / away)
        self._body.append(
            f'<g class="flag" data-flag="{number}" data-for="{part}" '
            f'data-x="{_n(at[0])}" data-y="{_n(at[1])}">'
        )
        self.line([start, at], "thin")
        self._body.append(
            f'<circle cx="{_n(at[0])}" cy="{_n(at[1])}" r="{_n(0.17 * self.text)}" '
            'fill="currentColor" stroke="none"/>'
        )
        outline = OUTLINES.get(self.closeness(part), "part")
        self.disc(x, y, radius, weight=outline, hides=False)
        self.words(x, y, str(number), size=1.15, bold=True)
        self._body.append("</g>")

    def swatch(self, x: float, y: float, closeness: str) -> None:
        """Draw a little field of the hatching of one closeness."""
        half = 0.55 * self.text
        wide, high = 3.2 * half, 2.0 * half
        path = f"M{_n(x - 1.6 * half)} {_n(y - half)}h{_n(wide)}v{_n(high)}h{_n(-wide)}Z"
        self._reach([(x - 1.6 * half, y - half), (x + 1.6 * half, y + half)])
        self._hatch(path, closeness)
        self._path(path, OUTLINES[closeness], dashed=False, more="")

    def black(self, wide: float, lines: Sequence[str]) -> None:
        """Draw a black band with white words from the origin; black on a dark page too."""
        high = (0.75 + 1.5 * len(lines)) * self.text
        self._reach([(0.0, 0.0), (wide, high)])
        told = "".join(
            f'<text x="{_n(self.text)}" y="{_n((1.45 + 1.5 * at) * self.text)}" '
            f'font-size="{_n(1.1 * self.text)}" font-weight="bold" fill="#fff" stroke="none">'
            f"{escape(line)}</text>"
            for at, line in enumerate(lines)
        )
        self._body.append(
            f'<rect class="stop-band" x="0" y="0" width="{_n(wide)}" height="{_n(high)}" '
            f'fill="#000" stroke-width="{_n(self.weight("part"))}"/>{told}'
        )

    def extent(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of what was drawn, mm."""
        across, down = zip(*self._corners, strict=True)
        return min(across), min(down), max(across), max(down)

    def definitions(self) -> str:
        """Clip paths that the drawing refers to."""
        return "".join(self._clips)

    def drawn(self) -> str:
        """Give everything drawn so far."""
        return "".join(self._body)

    def _closed(self, path: str, part: str, weight: str, *, dashed: bool, hides: bool) -> None:
        if hides:
            self._hide(path)
        closeness = self.closeness(part)
        if closeness:
            self._hatch(path, closeness)
            weight = OUTLINES[closeness]
        told = f' data-part="{part}"' if part else ""
        self._path(path, weight, dashed, told)

    def _hatch(self, path: str, closeness: str) -> None:
        if closeness in HATCHED:
            self._body.append(
                f'<path d="{path}" fill="url(#{hatch_name(self.name, closeness)})" stroke="none"/>'
            )

    def _hide(self, path: str) -> None:
        if not self._body:
            return
        held = f"{self.name}-c{len(self._clips)}"
        self._clips.append(
            f'<clipPath id="{held}"><path clip-rule="evenodd" '
            f'd="M{-FAR} {-FAR}H{FAR}V{FAR}H{-FAR}Z{path}"/></clipPath>'
        )
        self._body = [f'<g clip-path="url(#{held})">', *self._body, "</g>"]

    def _path(self, path: str, weight: str, dashed: bool, more: str) -> None:
        gaps = (
            f' stroke-dasharray="{_n(0.35 * self.text)} {_n(0.22 * self.text)}"' if dashed else ""
        )
        self._body.append(
            f'<path d="{path}" stroke-width="{_n(self.weight(weight))}"{gaps}{more}/>'
        )

    def _tips(self, low: float, high: float, y: float, mark: str) -> None:
        tip = 0.35 * self.text
        for end, way in ((low, 1.0), (high, -1.0)):
            self.line(
                [(end + way * tip, y - 0.4 * tip), (end, y), (end + way * tip, y + 0.4 * tip)],
                "hair",
            )
        self._marked(mark, f'x1="{_n(low)}" y1="{_n(y)}" x2="{_n(high)}" y2="{_n(y)}"')

    def _marked(self, mark: str, ends: str) -> None:
        if mark:
            self._body.append(f'<line data-mark="{mark}" {ends} stroke="none"/>')

    def _reach(self, points: Sequence[Point]) -> None:
        self._corners += points


def hatch_name(name: str, closeness: str) -> str:
    """Id of the hatching of one closeness."""
    return f"{name.partition('--')[0]}-{closeness}"


def hatchings(name: str, text: float) -> str:
    """Patterns of the three hatchings: crossed, close and wide."""
    out = []
    for closeness, step, crossed in (
        ("over", 0.3, True),
        ("close", 0.3, False),
        ("near", 0.6, False),
    ):
        side, wide = step * text, 0.055 * text
        lines = f'<path d="M0 0V{_n(side)}" stroke="currentColor" stroke-width="{_n(2 * wide)}"/>'
        if crossed:
            lines += (
                f'<path d="M0 0H{_n(side)}" stroke="currentColor" stroke-width="{_n(2 * wide)}"/>'
            )
        out.append(
            f'<pattern id="{hatch_name(name, closeness)}" patternUnits="userSpaceOnUse" '
            f'width="{_n(side)}" height="{_n(side)}" patternTransform="rotate(45)">'
            f"{lines}</pattern>"
        )
    return "".join(out)


def _n(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".") if abs(number) >= 0.005 else "0"
