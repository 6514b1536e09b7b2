"""Answers that are more than one number: yes or no, sides, wheel offset, toe; and near names."""

import re
from collections.abc import Iterable
from dataclasses import replace
from math import asin
from typing import Final

from axlewright.errors import BadQuantity
from axlewright.units import DONT_KNOW, Parsed, known, parse, tidied

SIDES: Final = ("left", "right")
SIDE_RULE = "left and right are the vehicle's own, as seen by someone sitting in it"
_LEFT: Final = frozenset(["l", "lh", "lhs", "lefthand", "lefthandside", "leftside", "port"])
_RIGHT: Final = frozenset(
    ["r", "rh", "rhs", "righthand", "righthandside", "rightside", "starboard"]
)
_BY_PERSON: Final = frozenset(
    [
        "driver",
        "drivers",
        "driverside",
        "driversside",
        "passenger",
        "passengers",
        "passengerside",
        "passengersside",
        "ds",
        "ps",
        "nearside",
        "offside",
        "ns",
        "os",
        "near",
        "off",
        "kerbside",
        "curbside",
    ]
)
LESS_LIKE: Final = 0.2  # likeness by which a name is out of the question beside a better one
_YES: Final = {"yes": "yes", "y": "yes", "true": "yes", "no": "no", "n": "no", "false": "no"}

# Rim width is taken between the flanges' inner faces; backspacing starts at the outer face. Both
# flanges together add about this much: common practice, no source.
FLANGES = known("length")["in"]
_OFFSET_EXAMPLES = 'Write "ET -25 mm", or "backspacing 4.5 in on an 8 in rim".'
_TOE_EXAMPLE = 'Write an angle, or the length with its diameter: "3 mm at 890 mm".'


def squashed(word: str) -> str:
    """A word without case, blanks, hyphens, underscores, apostrophes and full stops."""
    return re.sub(r"[\s_.'’-]", "", word.casefold())


def near(name: str, names: Iterable[str], most: int = 3, alike: float = 0.6) -> tuple[str, ...]:
    """Names that look like a misspelt one, the likest first; none that is far less like it."""
    from difflib import SequenceMatcher, get_close_matches

    folded = {squashed(each): each for each in names}
    said = squashed(name)[:80]
    close = get_close_matches(said, folded, n=most, cutoff=alike)
    likeness = [SequenceMatcher(None, each, said).ratio() for each in close]
    return tuple(
        folded[each]
        for each, like in zip(close, likeness, strict=True)
        if like >= max(likeness) - LESS_LIKE
    )


def sides_meant(word: str) -> tuple[str, ...]:
    """Sides that a word for a side may mean; none where it is no such word.

    Examples
    --------
    >>> sides_meant("LHS"), sides_meant("driver's side"), sides_meant("wall")
    (('left',), ('left', 'right'), ())
    """
    key = squashed(word)
    if key in SIDES or key in _LEFT or key in _RIGHT:
        return ("left",) if key == "left" or key in _LEFT else ("right",)
    return SIDES if key in _BY_PERSON else ()


def yes_or_no(text: str) -> str | None:
    """The word yes or no as it was meant; None where it is neither."""
    return _YES.get(squashed(text))


def parse_offset(text: str, rim_width: float | None = None) -> Parsed:
    """Read a wheel's offset in m: positive puts the tyre's centre inboard of the mounting face.

    Backspacing needs the rim's width, in the text or beside it.

    Notes
    -----
    ET and backspacing run in opposite senses about the rim's middle:
    offset = backspacing - (rim width + flanges) / 2, with flanges of 25.4 mm in all.
    ET is stamped in millimetres, so an ET without a unit is one in millimetres.

    Examples
    --------
    >>> round(parse_offset("backspacing 4.5 in on an 8 in rim").value, 9)
    0.0
    """
    said = tidied(text)
    about = re.match(
        r"(?:~|≈|(?:about|approximately|approx|around|roughly|circa|ca)\b\.?)\s*", said
    )
    rest = said[about.end() :] if about else said
    if found := re.fullmatch(r"(?:et|offset)\b\s*:?\s*(.+)|et([+-]?\s*[0-9].*)", rest):
        figures = found[1] or found[2]
        bare = re.fullmatch(r"[+-]?\s*[0-9]+([.,][0-9]+)?", figures) and rest.startswith("et")
        parsed = parse(f"{figures} mm" if bare else figures, "offset")
        if not parsed.dont_know:
            parsed = replace(parsed, about=parsed.about or bool(about))
        return parsed if parsed.dont_know else replace(parsed, text=text.strip())
    if re.search(r"back\s?-?spac(e|ing)|\bbs\b", rest):
        return _from_backspacing(text, rest, rim_width, about=bool(about))
    if re.search("[0-9]", rest):
        problem = f"{text.strip()!r} does not say whether it is an ET or a backspacing."
        raise BadQuantity(problem, remedy=_OFFSET_EXAMPLES)
    if parse_unknown(text):
        return DONT_KNOW
    raise BadQuantity(f"{text.strip()!r} is no offset.", remedy=_OFFSET_EXAMPLES)


def parse_toe(text: str) -> Parsed:
    """Read toe of the axle as an angle in rad, toe-in positive.

    A length is the difference between the gaps behind and ahead of the wheels, over the diameter
    at which it was taken: length = 2 diameter sin(toe / 2).
    """
    said = tidied(text)
    outward = bool(re.search(r"\btoe[ -]?out\b", said))
    said = re.sub(r"\btoe([ -]?(in|out))?\b[ :]*", "", said).strip(" ,")
    if found := re.fullmatch(r"(.+?)\s*(?:at|on|over|@)\s*(.+)", said):
        length, across = parse(found[1], "length"), parse(found[2], "length")
        if length.dont_know or across.dont_know or not 0 < abs(length.value) < across.value:
            problem = f"{text.strip()!r} is no toe: the diameter must be larger than the length."
            raise BadQuantity(problem, remedy=_TOE_EXAMPLE)
        parsed = _bent(length, across.value)
        parsed = replace(parsed, note=f"taken at a diameter of {found[2]}")
    else:
        try:
            parsed = parse(said, "angle")
        except BadQuantity as refused:
            try:
                parse(said, "length")
            except BadQuantity:
                raise refused from None
            problem = f"{text.strip()!r} is a length without the diameter it was taken at."
            raise BadQuantity(problem, remedy=_TOE_EXAMPLE) from None
    if parsed.dont_know:
        return parsed
    parsed = replace(parsed, text=text.strip())
    if not outward:
        return parsed
    band = (-parsed.band[1], -parsed.band[0]) if parsed.band else None
    return replace(parsed, value=-parsed.value, band=band)


def parse_unknown(text: str) -> bool:
    """Whether a text says that the answer is not known."""
    try:
        return parse(text, "count").dont_know
    except BadQuantity:
        return False


def _from_backspacing(text: str, rest: str, rim_width: float | None, *, about: bool) -> Parsed:
    words = re.sub(
        r"back\s?-?spac(e|ing)|\bbs\b|\bon an?\b|\bon\b|\bwide\b|\bwidth\b|[:]", " ", rest
    )
    told = "rim" in words or "wheel" in words
    if not told and rim_width is None:
        problem = f"{text.strip()!r} does not say how wide the rim is."
        raise BadQuantity(problem, remedy=_OFFSET_EXAMPLES)
    if not told and rim_width is not None:
        return _offset(parse(words, "length"), rim_width, text, about=about)
    parts = re.fullmatch(
        r"\s*(.*?[a-z\"])\s*(?:,|;|\s)\s*(?:an?\s+)?(?:(?:rim|wheel)\s+(.+?)|(\S.*?)\s+(?:rim|wheel))\s*",
        words,
    )
    if not parts:
        raise BadQuantity(f"{text.strip()!r} cannot be read.", remedy=_OFFSET_EXAMPLES)
    back, rim = parse(parts[1], "length"), parse(parts[2] or parts[3], "length")
    if rim.dont_know:
        raise BadQuantity(f"{text.strip()!r} lacks a number.", remedy=_OFFSET_EXAMPLES)
    return _offset(back, rim.value, text, about=about)


def _offset(back: Parsed, rim_width: float, text: str, *, about: bool) -> Parsed:
    if back.dont_know:
        return back
    middle = 0.5 * (rim_width + FLANGES)
    band = (back.band[0] - middle, back.band[1] - middle) if back.band else None
    return replace(
        back,
        value=back.value - middle,
        kind="offset",
        text=text.strip(),
        band=band,
        about=about or back.about,
        note="backspacing less half of rim width and flanges, flanges taken as 25.4 mm in all",
    )


def _bent(length: Parsed, across: float) -> Parsed:
    def angle(gap: float) -> float:
        return 2 * asin(gap / (2 * across))

    doubt = None if length.uncertainty is None else length.uncertainty / across
    band = (angle(length.band[0]), angle(length.band[1])) if length.band else None
    return Parsed(
        value=angle(length.value),
        kind="angle",
        unit="deg",
        text=length.text,
        uncertainty=doubt,
        band=band,
        about=length.about,
    )
