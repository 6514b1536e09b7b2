"""Plain geometry of the page: smooth lines, and places on a line that keep apart."""

from collections.abc import Sequence
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]


def rounded(points: Sequence[Point], steps: int = 4) -> list[Point]:
    """Give a smooth line through points (Catmull-Rom), both ends kept."""
    out = [points[0]]
    for at in range(len(points) - 1):
        before, start, end = points[max(at - 1, 0)], points[at], points[at + 1]
        after = points[min(at + 2, len(points) - 1)]
        for step in range(1, steps + 1):
            t = step / steps
            out.append(
                (
                    _through(before[0], start[0], end[0], after[0], t),
                    _through(before[1], start[1], end[1], after[1], t),
                )
            )
    return out


def _through(before: float, start: float, end: float, after: float, t: float) -> float:
    return 0.5 * (
        2.0 * start
        + (end - before) * t
        + (2.0 * before - 5.0 * start + 4.0 * end - after) * t**2
        + (3.0 * start - before - 3.0 * end + after) * t**3
    )


def clear_place(low: float, high: float, busy: Sequence[float], room: float) -> float:
    """Place nearest the middle of a span that keeps its room from busy places, if there is one."""
    middle = 0.5 * (low + high)
    places = [middle + (high - low) * share / 20.0 for share in sorted(range(-10, 11), key=abs)]
    kept = [place for place in places if all(abs(place - each) > room for each in busy)]
    return kept[0] if kept and high > low else middle


def spread(wanted: Sequence[float], gap: float) -> list[float]:
    """Move places on a line apart until each has its gap, as little as it takes."""
    order = sorted(range(len(wanted)), key=lambda each: wanted[each])
    groups: list[tuple[float, list[int]]] = []
    for each in order:
        groups.append((wanted[each], [each]))
        while len(groups) > 1:
            (left, before), (right, after) = groups[-2], groups[-1]
            room = 0.5 * gap * (len(before) + len(after))
            if right - left >= room:
                break
            both = before + after
            middle = sum(
                wanted[one] - gap * (place - 0.5 * (len(both) - 1))
                for place, one in enumerate(both)
            ) / len(both)
            groups[-2:] = [(middle, both)]
    out = [0.0] * len(wanted)
    for middle, members in groups:
        for place, one in enumerate(members):
            out[one] = middle + gap * (place - 0.5 * (len(members) - 1))
    return out
