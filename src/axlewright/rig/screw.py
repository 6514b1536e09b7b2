"""A screw's pitch from the name that is stamped on it or read off a gauge."""

import re
from typing import Final

from axlewright.errors import BadQuantity
from axlewright.units import parse, tidied

LEAST, MOST = 0.0005, 0.006  # m
_METRIC: Final = re.compile(r"m\s*[0-9]+(?:[.,][0-9]+)?\s*(?:x|·|\*)\s*([0-9]+(?:[.,][0-9]+)?)")
_UNIFIED: Final = re.compile(
    r"(?:[0-9]+[ -])?[0-9]+(?:/[0-9]+)?(?:\.[0-9]+)?\s*(?:in)?\s*-\s*([0-9]{1,2}(?:[.,]5)?)"
    r"\s*(?:tpi|un[cfs]?j?)?"
)
_COUNT: Final = re.compile(r"([0-9]{1,2}(?:[.,]5)?)\s*(?:tpi|threads? (?:per|to the) in(?:ch)?)")
_EXAMPLE: Final = "Write it as M22x1.5, 7/8-18, 18 tpi, or the pitch as 1.5 mm."


def screw_pitch(text: str) -> float:
    """Pitch in m.

    Examples
    --------
    >>> round(screw_pitch("M22x1.5"), 6), round(screw_pitch("7/8-18"), 8)
    (0.0015, 0.00141111)
    """
    said = re.sub(r"\b(rh|lh|right|left)\b", "", tidied(text)).strip()
    if found := _METRIC.fullmatch(said):
        pitch = parse(f"{found[1]} mm", "length").value
    elif found := _COUNT.fullmatch(said) or _UNIFIED.fullmatch(said):
        count = float(found[1].replace(",", "."))
        pitch = parse("1 in", "length").value / count if count else 0.0
    else:
        try:
            pitch = parse(said, "length").value
        except BadQuantity:
            raise BadQuantity(f"{text.strip()!r} is no thread.", remedy=_EXAMPLE) from None
    if not LEAST <= pitch <= MOST:
        raise BadQuantity(f"{text.strip()!r} is no thread of a rod.", remedy=_EXAMPLE)
    return pitch
