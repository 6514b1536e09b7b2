"""Numbered flags at the real places of the leading parts, with leaders that do not tangle."""

from collections.abc import Callable, Sequence
from typing import Protocol

from axlewright.views.drawing_curves import Point, spread
from axlewright.views.drawing_ink import Pen
from axlewright.views.drawing_places import Axle, Spot, spots

TOLD_FROM_SIDE = frozenset(
    {
        "links",
        "link_brackets_left",
        "spring_seat_left",
        "damper_bracket_left",
        "cover",
        "propeller_shaft",
        "ring_and_pinion",
        "track_bar_bracket_axle",
    }
)
HIDDEN_FROM_ABOVE = frozenset({"ball_joints", "kingpins"})


class Flagged(Protocol):
    """What a flag has to say for itself."""

    @property
    def number(self) -> int:
        """Its number."""

    @property
    def part(self) -> str:
        """Its part's key."""


def flag_views(part: str) -> tuple[str, ...]:
    """Views in which a part carries its flag."""
    kind = part.removesuffix("_left").removesuffix("_right")
    views = ["across"]
    if kind not in HIDDEN_FROM_ABOVE:
        views.append("plan")
    if part in TOLD_FROM_SIDE or f"{part}_left" in TOLD_FROM_SIDE:
        views.append("side")
    return tuple(views)


def placed_flags(
    pen: Pen, axle: Axle, flags: Sequence[Flagged], view: str, seen: Callable[[Spot], Point]
) -> None:
    """Draw the flags of one view in a row above it and, for what hangs low, in one below."""
    left, top, right, bottom = pen.extent()
    upper: list[tuple[Flagged, Point]] = []
    lower: list[tuple[Flagged, Point]] = []
    for flag in flags:
        if view not in flag_views(flag.part):
            continue
        places = spots(axle, flag.part)
        for spot in places[:1] if view == "side" else places:
            at = seen(spot)
            (lower if view == "plan" and at[1] > 0.25 * bottom else upper).append((flag, at))
    half = 0.95 * pen.text
    for row, y in ((upper, top - 2.0 * pen.text), (lower, bottom + 2.0 * pen.text)):
        wanted = [at[0] + (0.0 if abs(at[0]) < 1.0 else 0.06 * at[0]) for _, at in row]
        inside = [min(max(x, left + half), right - half) for x in wanted]
        ends = spread(inside, 2.4 * pen.text)
        for (flag, at), x in zip(row, ends, strict=True):
            pen.flag(x, y, flag.number, flag.part, at)
