"""Where each place to tape lies: the axle from above and from the left, its places numbered."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, hypot, pi, sin
from typing import Final
from xml.sax.saxutils import escape

from axlewright.geometry import Hardpoints, hardpoints
from axlewright.rig import Columns, Rig
from axlewright.views.drawing_curves import Point
from axlewright.views.drawing_ink import FONT, GROUND, Pen

LETTERS: Final = 27.0  # heights of letters across a view
REACHES: Final = (2.0, 3.2, 4.4, 5.6)  # how far a number may stand from its place, in letters
TURNS: Final = 16
RING: Final = 1.0
SIDE: Final = -0.03  # m: what lies further right is hidden from the left
TITLES: Final = {"above": "from above, front up", "side": "from the left, front to the left"}


@dataclass(frozen=True, slots=True, kw_only=True)
class EndsView:
    """One view: its title, its SVG, its size in mm of the real thing, and the same in words."""

    title: str
    svg: str
    wide: float
    high: float
    words: str


def ends_views(rig: Rig, columns: Columns, numbers: Mapping[str, int]) -> tuple[EndsView, ...]:
    """Draw both views; ``numbers`` by the point's name."""
    points = hardpoints(columns, rig.words)
    return tuple(_view(rig, points, numbers, key) for key in ("above", "side"))


def _view(rig: Rig, points: Hardpoints, numbers: Mapping[str, int], key: str) -> EndsView:
    shown = {
        name: number
        for name, number in numbers.items()
        if key == "above" or float(points.at[name][0, 1]) > SIDE
    }
    spots = {name: _seen(points, name, key) for name in shown}
    xs = [spot[0] for spot in spots.values()]
    radius = 1e3 * float(points.columns["radius"][0])
    half = 1e3 * float(points.half_track[0]) + 500.0 * rig.tyre.section_width
    wide = 2.0 * half if key == "above" else max([radius, *xs]) - min([-radius, *xs])
    text = 1.15 * wide / LETTERS
    pen = Pen(f"ends-{key}", text, {})
    _axle(pen, rig, points, key)
    taken: list[Point] = []
    for name, number in sorted(shown.items(), key=lambda item: item[1]):
        spot = spots[name]
        at = _free(spot, list(spots.values()), taken, text)
        taken.append(at)
        away = max(hypot(at[0] - spot[0], at[1] - spot[1]), 1e-6)
        start = (
            at[0] + (spot[0] - at[0]) * RING * text / away,
            at[1] + (spot[1] - at[1]) * RING * text / away,
        )
        pen.line([start, spot], "thin")
        pen.disc(*spot, 0.28 * text, weight="part")
        pen.disc(*at, RING * text, weight="part")
        pen.words(*at, str(number), bold=True)
    left, top, right, bottom = pen.extent()
    edge = 0.6 * text
    box = (left - edge, top - edge, right - left + 2.0 * edge, bottom - top + 2.0 * edge)
    told = f"{TITLES[key]}: the places to tape, numbered as in the list."
    shape = " ".join(f"{each:.1f}" for each in box)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{shape}" width="{box[2]:.1f}" '
        f'height="{box[3]:.1f}" class="axle-drawing" role="img" aria-labelledby="ends-{key}-told" '
        f'font-family="{FONT}" color="currentColor"><title id="ends-{key}-told">{escape(told)}'
        f'</title><g stroke="currentColor" stroke-width="{pen.weight("thin"):.2f}" '
        f'fill="{GROUND}" class="ground" stroke-linejoin="round" stroke-linecap="round">'
        f"{pen.drawn()}</g></svg>"
    )
    return EndsView(title=TITLES[key], svg=svg, wide=box[2], high=box[3], words=told)


def _seen(points: Hardpoints, name: str, key: str) -> Point:
    ahead, left, up = (1e3 * float(each) for each in points.at[name][0])
    return (-left, -ahead) if key == "above" else (-ahead, -up)


def _axle(pen: Pen, rig: Rig, points: Hardpoints, key: str) -> None:
    """The axle in hair lines: wheels, tube, rods."""
    radius = 1e3 * float(points.columns["radius"][0])
    half = 1e3 * float(points.half_track[0])
    if key == "above":
        wide = 500.0 * rig.tyre.section_width
        for x in (-half, half):
            pen.box(x - wide, -radius, x + wide, radius, weight="hair", hides=False)
        pen.bar((-half, 0.0), (half, 0.0), 80.0, hides=False)
    else:
        pen.disc(0.0, 0.0, radius, weight="hair", hides=False)
        pen.disc(0.0, 0.0, 40.0, weight="hair", hides=False)
        pen.line([(-1.2 * radius, radius), (1.2 * radius, radius)], "part")
    for start, end in _runs(points):
        if key == "side" and min(float(points.at[each][0, 1]) for each in (start, end)) < SIDE:
            continue
        pen.bar(_seen(points, start, key), _seen(points, end, key), 22.0, hides=False)


def _runs(points: Hardpoints) -> list[tuple[str, str]]:
    """Pairs of places between which something runs."""
    pairs = [("third_arm_frame", "third_arm_axle"), ("track_bar_frame", "track_bar_axle")]
    for side in ("left", "right"):
        pairs += [(f"{name}_frame_{side}", f"{name}_axle_{side}") for name in ("arm", "upper_arm")]
        pairs += [
            (f"leaf_eye_{side}", f"leaf_pad_{side}"),
            (f"damper_axle_{side}", f"damper_frame_{side}"),
            (f"spring_seat_{side}", f"spring_top_{side}"),
            (f"kingpin_lower_{side}", f"kingpin_upper_{side}"),
        ]
    pairs += [
        ("tie_rod_end_left", "tie_rod_end_right"),
        ("drag_link_wheel", "drag_link_pitman"),
        ("pitman_shaft", "drag_link_pitman"),
        ("pinion_joint", "transfer_joint"),
    ]
    return [pair for pair in pairs if all(each in points.at for each in pair)]


def _free(spot: Point, spots: list[Point], taken: list[Point], text: float) -> Point:
    """Where a number may stand near its place without covering another."""
    best, least = spot, 1e9
    for reach in REACHES:
        for turn in range(TURNS):
            angle = 2.0 * pi * turn / TURNS
            at = spot[0] + reach * text * cos(angle), spot[1] + reach * text * sin(angle)
            cost = 0.15 * reach
            cost += sum(
                4.0 for each in taken if hypot(at[0] - each[0], at[1] - each[1]) < 2.15 * text
            )
            cost += sum(
                1.0 for each in spots if hypot(at[0] - each[0], at[1] - each[1]) < 1.35 * text
            )
            if cost < least - 1e-9:
                best, least = at, cost
    return best
