"""A point under the vehicle as a tape gives it: how far ahead, how far left, how high."""

import re
from typing import Final

from axlewright.errors import BadQuantity
from axlewright.units import parse, tidied

LIKE: Final = "three lengths with their ways: ahead or behind, left or right, and up"
FARTHEST: Final = (2.5, 1.5, 1.8)  # m: ahead, left, up
_WAYS: Final = {
    "ahead": (0, 1.0),
    "forward": (0, 1.0),
    "behind": (0, -1.0),
    "back": (0, -1.0),
    "left": (1, 1.0),
    "right": (1, -1.0),
    "up": (2, 1.0),
    "above": (2, 1.0),
    "high": (2, 1.0),
}
_AXES: Final = ("ahead or behind", "left or right", "up")
_PART: Final = re.compile(rf"(.+?)\s+({'|'.join(_WAYS)})\b[a-z ]*")
_ABOUT: Final = re.compile(r"(?:about|approximately|approx|around|roughly|circa|~|≈)\s*")


def parse_place(text: str) -> tuple[tuple[float, float, float], bool]:
    """Ahead of the axle, left of the centre plane and above the floor, m, and whether "about".

    Examples
    --------
    >>> parse_place("70 mm behind, 455 mm right, 325 mm up")
    ((-0.07, -0.455, 0.325), False)
    """
    plain, about = tidied(text), False
    if said := _ABOUT.match(plain):
        plain, about = plain[said.end() :], True
    found: dict[int, float] = {}
    for part in re.split(r"\s*(?:[,;]\s+|;)\s*", plain):
        read = _PART.fullmatch(part.strip())
        if read is None:
            raise BadQuantity(f"{part.strip()!r} does not say which way it is.", remedy=LIKE)
        axis, sign = _WAYS[read.group(2)]
        if axis in found:
            raise BadQuantity(f"{_AXES[axis]} is said twice.", remedy=LIKE)
        parsed = parse(read.group(1), "length")
        if parsed.dont_know:
            raise BadQuantity(f"{part.strip()!r} has no length.", remedy=LIKE)
        about = about or parsed.about
        found[axis] = sign * parsed.value
    lost = [_AXES[axis] for axis in range(3) if axis not in found]
    if lost:
        raise BadQuantity(f"It does not say how far {' and how far '.join(lost)}.", remedy=LIKE)
    if found[2] <= 0.0:
        raise BadQuantity("It is under the floor.", remedy="How high over a level floor?")
    for axis, farthest in enumerate(FARTHEST):
        if abs(found[axis]) > farthest:
            raise BadQuantity(
                f"{abs(found[axis]):.2f} m {_AXES[axis]} is not under this axle.", remedy=LIKE
            )
    return (found[0], found[1], found[2]), about
