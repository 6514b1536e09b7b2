"""Pen, hatching and lettering of the axle drawing: plain SVG text.

Everything is drawn in the colour of the text around it on the ground of the page, so that the same
drawing serves paper, a light page and a dark one: the ground is white unless a style sheet says
otherwise of the class ``ground``. What lies nearer is drawn later and covers what lies behind it.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager
from itertools import groupby
from typing import TypeAlias
from xml.sax.saxutils import escape

from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_links import Links, assumed, unsaid
from axlewright.views.drawing_paths import box_path, disc_path, figure, line_path

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
GROUND = "#fff"
Wrap: TypeAlias = tuple[str, str, str]  # what it is, its key, more attributes


class Pen:
    """One view in the making, in millimetres of the real thing, y down as SVG has it.

    ``marks`` gives the closeness of each marked part; a mark without a side counts for both.
    ``known`` are the fields that were told, None where everything counts as told.
    """

    def __init__(
        self,
        name: str,
        text: float,
        marks: Mapping[str, str],
        *,
        known: Collection[str] | None = None,
        links: Links | None = None,
    ) -> None:
        self.name, self.text, self.marks = name, text, marks
        self.known, self.links = known, links
        self._body: list[tuple[Wrap, str]] = []
        self._last: list[tuple[Wrap, str]] = []
        self._wrap: Wrap = ("", "", "")
        self._corners: list[Point] = []

    def weight(self, name: str) -> float:
        """Width of a line, mm."""
        return WEIGHTS[name] * self.text

    def closeness(self, part: str) -> str:
        """Closeness of a part, or nothing where it is not marked."""
        kind = part.removesuffix("_left").removesuffix("_right")
        return self.marks.get(part, self.marks.get(kind, "")) if part else ""

    def line(
        self,
        points: Sequence[Point],
        weight: str = "thin",
        *,
        dashed: bool = False,
        mark: str = "",
        part: str = "",
    ) -> None:
        """Draw an open line."""
        self.reach(points)
        told = f' data-mark="{mark}"' if mark else ""
        path = line_path(points, places=bool(mark))
        self._path(path, weight, f'{told} fill="none"', dashed=dashed, part=part)

    def lines(self, runs: Sequence[Sequence[Point]], weight: str) -> None:
        """Draw some open lines of one weight as one path."""
        self.reach([point for run in runs for point in run])
        self._path("".join(line_path(run) for run in runs), weight, ' fill="none"')

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
        self.reach(points)
        self._closed(line_path(points, closed=True), part, weight, dashed=dashed, hides=hides)

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
        low, high = (min(left, right), min(top, bottom)), (max(left, right), max(top, bottom))
        self.reach([low, high])
        self._closed(box_path(*low, *high), part, weight, dashed=dashed, hides=hides)

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
        self.reach([(x - radius, y - radius), (x + radius, y + radius)])
        self._closed(disc_path(x, y, radius), part, weight, dashed=dashed, hides=hides)

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
        upright: bool = False,
        last: bool = False,
    ) -> None:
        """Letter a text with its middle height at y; with ``clear`` nothing behind crosses it.

        ``upright`` text is centred and read from the right; ``last`` lies over all that follows.
        """
        if not text:
            return
        high = self.text * size
        half = ADVANCE * high * len(text) / 2.0
        shift = {"start": half, "end": -half, "middle": 0.0}[anchor]
        left, right = x + shift - half, x + shift + half
        turned = ""
        if upright:
            self.reach([(x - 0.6 * high, y - half), (x + 0.6 * high, y + half)])
            turned = f' transform="rotate(-90 {figure(x)} {figure(y)})"'
        else:
            self.reach([(left, y - 0.6 * high), (right, y + 0.6 * high)])
        body = self._last if last else self._body
        if clear:
            edge = box_path(left - 0.25 * high, y - 0.6 * high, right + 0.25 * high, y + 0.6 * high)
            body.append((self._wrap, f'<path d="{edge}" stroke="none"/>'))
        strong = ' font-weight="bold"' if bold else ""
        settled = "" if anchor == "start" else f' text-anchor="{anchor}"'
        lettered = (
            f'<text x="{figure(x)}" y="{figure(y + 0.35 * high)}"{settled} '
            f'font-size="{figure(high)}"{strong}{turned} fill="currentColor" stroke="none">'
            f"{escape(text)}</text>"
        )
        body.append((self._wrap, lettered))

    def blank(
        self, x: float, y: float, number: int | str, wide: float = 5.0, high: float = 1.9
    ) -> None:
        """Draw an empty box to write in, with the number of its question in its corner."""
        high, half = high * self.text, 0.5 * wide * self.text
        self.box(x - half, y - high / 2, x + half, y + high / 2, weight="part")
        label = f"{number}"
        top = y - 0.5 * high + 0.6 * self.text
        self.words(x - half + 0.3 * self.text, top, label, "start", size=0.8, bold=True)

    def flag(self, x: float, y: float, number: int, part: str, at: Point) -> None:
        """Draw a numbered flag with its leader to the place of a part."""
        radius = 0.95 * self.text
        away = max(((at[0] - x) ** 2 + (at[1] - y) ** 2) ** 0.5, 1e-6)
        start = (x + (at[0] - x) * radius / away, y + (at[1] - y) * radius / away)
        more = f' data-flag="{number}" data-x="{figure(at[0])}" data-y="{figure(at[1])}"'
        before, self._wrap = self._wrap, ("flag", part, more)
        self.line([start, at], "thin")
        dot = disc_path(*at, 0.17 * self.text)
        self.add(f'<path d="{dot}" fill="currentColor" stroke="none"/>')
        self.disc(x, y, radius, weight=OUTLINES.get(self.closeness(part), "part"))
        self.words(x, y, str(number), size=1.15, bold=True)
        self._wrap = before

    @contextmanager
    def asked(self, path: str, told: str) -> Iterator[None]:
        """Everything drawn within belongs to the question of one field; ``told`` is its answer."""
        before, self._wrap = self._wrap, ("field", path, told)
        yield
        self._wrap = before

    def target(self, left: float, top: float, right: float, bottom: float) -> None:
        """Lay an unseen field under what belongs to a question, so that a thumb finds it."""
        if self.links is not None:
            path = box_path(left, top, right, bottom)
            self.add(f'<path d="{path}" fill="none" stroke="none" pointer-events="all"/>')

    def swatch(self, x: float, y: float, closeness: str) -> None:
        """Draw a little field of the hatching of one closeness."""
        half = 0.55 * self.text
        low, high = (x - 1.6 * half, y - half), (x + 1.6 * half, y + half)
        self.reach([low, high])
        self._path(box_path(*low, *high), OUTLINES[closeness], self._filled(closeness))

    def black(self, wide: float, lines: Sequence[str]) -> None:
        """Draw a black band with white words from the origin; black on a dark page too."""
        high = (0.75 + 1.5 * len(lines)) * self.text
        self.reach([(0.0, 0.0), (wide, high)])
        told = "".join(
            f'<text x="{figure(self.text)}" y="{figure((1.45 + 1.5 * at) * self.text)}" '
            f'font-size="{figure(1.1 * self.text)}" font-weight="bold" fill="#fff" stroke="none">'
            f"{escape(line)}</text>"
            for at, line in enumerate(lines)
        )
        self.add(
            f'<rect class="stop-band" x="0" y="0" width="{figure(wide)}" height="{figure(high)}" '
            f'fill="#000" stroke-width="{self.weight("part"):.2f}"/>{told}'
        )

    def extent(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of what was drawn, mm."""
        across, down = zip(*self._corners, strict=True)
        return min(across), min(down), max(across), max(down)

    def drawn(self) -> str:
        """Everything drawn so far, what belongs together in one group or link."""
        out = []
        for wrap, run in groupby([*self._body, *self._last], key=lambda item: item[0]):
            inside = "".join(text for _, text in run)
            start, end = self._opened(*wrap)
            out.append(f"{start}{inside}{end}")
        return "".join(out)

    def add(self, svg: str, part: str = "") -> None:
        """Add a piece of SVG, to its part or to what is being asked."""
        self._body.append((("part", part, "") if part else self._wrap, svg))

    def reach(self, points: Sequence[Point]) -> None:
        """Make the view reach to these places."""
        self._corners += points

    def marked(self, mark: str, ends: tuple[Point, Point]) -> None:
        """Leave an unseen line from end to end of a dimension on paper, for a ruler to find."""
        if mark and self.links is None:
            path = line_path(ends, places=True)
            self.add(f'<path data-mark="{mark}" d="{path}" stroke="none"/>')

    def _opened(self, what: str, key: str, more: str) -> tuple[str, str]:
        if not what:
            return "", ""
        attributes = f' data-{"for" if what == "flag" else what}="{key}"'
        attributes += more if what == "flag" else ""
        empty = what == "field" and unsaid(key, self.known)
        faint = what == "part" and assumed(key, self.known)
        classes = {"field": "measure", "flag": "flag", "part": ""}[what]
        classes = f"{classes}{' empty' if empty else ''}{'assumed' if faint else ''}"
        attributes += f' class="{classes}"' if classes else ""
        if faint:
            dots = f"{figure(0.1 * self.text)} {figure(0.18 * self.text)}"
            attributes += f' stroke-opacity="0.6" stroke-dasharray="{dots}"'
        if self.links is not None:
            link = (
                self.links.to_field(key, "" if empty else more)
                if what == "field"
                else self.links.to_part(key, self.closeness(key))
            )
            if link.address:
                return self.links.opened(link, attributes), "</a>"
        return f"<g{attributes}>", "</g>"

    def _closed(self, path: str, part: str, weight: str, *, dashed: bool, hides: bool) -> None:
        closeness = self.closeness(part)
        fill = "" if hides else ' fill="none"'
        if closeness:
            fill = self._filled(closeness)
            weight = OUTLINES[closeness]
        self._path(path, weight, fill, dashed=dashed, part=part)

    def _filled(self, closeness: str) -> str:
        if closeness not in HATCHED:
            return ""
        return f' fill="url(#{hatch_name(self.name, closeness)})"'

    def _path(
        self, path: str, weight: str, more: str, *, dashed: bool = False, part: str = ""
    ) -> None:
        faint = bool(part) and assumed(part, self.known)
        gaps = f' stroke-dasharray="{figure(0.35 * self.text)} {figure(0.22 * self.text)}"'
        wide = "" if weight == "thin" or faint else f' stroke-width="{figure(self.weight(weight))}"'
        self.add(f'<path d="{path}"{wide}{gaps if dashed and not faint else ""}{more}/>', part)


def hatch_name(name: str, closeness: str) -> str:
    """Id of the hatching of one closeness."""
    return f"{name.partition('--')[0]}-{closeness}"


def hatchings(name: str, text: float) -> str:
    """Patterns of the three hatchings, crossed, close and wide, each on its own ground."""
    out = []
    for closeness, step, crossed in (
        ("over", 0.3, True),
        ("close", 0.3, False),
        ("near", 0.6, False),
    ):
        side, wide = f"{step * text:.2f}", f"{0.11 * text:.2f}"
        lines = f"M0 0V{side}M0 0H{side}" if crossed else f"M0 0V{side}"
        out.append(
            f'<pattern id="{hatch_name(name, closeness)}" patternUnits="userSpaceOnUse" '
            f'width="{side}" height="{side}" patternTransform="rotate(45)">'
            f'<rect class="ground" width="{side}" height="{side}" fill="{GROUND}" stroke="none"/>'
            f'<path d="{lines}" stroke="currentColor" stroke-width="{wide}"/></pattern>'
        )
    return "".join(out)
