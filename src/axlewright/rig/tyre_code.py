"""What a tyre's sidewall says: size, load index and speed symbol."""

import re
from dataclasses import dataclass
from typing import Final, NoReturn

from axlewright.errors import BadQuantity
from axlewright.units import known, tidied

EXAMPLES: Final = ("285/75R16 122/119Q", "37x12.50R17LT 124Q", "7.50R16", "255/85R16C")

# Height of section over width where the sidewall does not print it. Memory of published outer
# diameters of such sizes (six of them): within 2 % of the diameter for either form.
WIDTH_IN_INCHES_ONLY = 1.05
WIDTH_IN_MILLIMETRES_ONLY = 0.80

_CARCASS: Final = {"R": "radial", "-": "cross-ply", "D": "cross-ply", "B": "bias-belted"}
_SPEEDS: Final = frozenset("BCDEFGJKLMNPQRSTUHVWY") | {f"A{step}" for step in range(1, 9)}
_KIND = r"(?P<kind>[RDB-])"
_RIM = r"(?P<rim>[0-9]{2}(?:\.[05])?)"
_SIZES: Final = {
    "metric": re.compile(rf"(?:P|LT)?(?P<width>[0-9]{{3}})/(?P<ratio>[0-9]{{2,3}})Z?{_KIND}{_RIM}"),
    "by diameter": re.compile(
        rf"(?P<outer>[0-9]{{2}}(?:\.[0-9]{{1,2}})?)X(?P<width>[0-9]{{1,2}}(?:\.[0-9]{{1,2}})?)"
        rf"{_KIND}{_RIM}"
    ),
    "width in inches": re.compile(rf"(?P<width>[0-9]{{1,2}}\.[0-9]{{1,2}}){_KIND}{_RIM}"),
    "width in millimetres": re.compile(rf"(?P<width>[0-9]{{3}}){_KIND}{_RIM}"),
}
_REST = re.compile(
    r"(?:LT|C)?(?:(?:LOADRANGE|LR)?[B-HL])?(?:[0-9]{1,2}(?:PR|PLY))?"
    r"(?:(?P<load>[0-9]{2,3})(?:/(?P<dual>[0-9]{2,3}))?(?P<speed>A[1-8]|[A-Z])?)?"
    r"(?:[0-9]{1,2}(?:PR|PLY)|TL|TT|XL|POR|M[+&/]?S|3PMSF)*"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TyreCode:
    """A tyre by its sidewall: metres, and the two parts of the service description."""

    outer_diameter: float
    section_width: float
    rim_diameter: float
    load_index: int | None
    speed_symbol: str | None
    construction: str
    note: str


def parse_tyre(text: str) -> TyreCode:
    """Read a sidewall's size, in the metric, the by-diameter or the width-only form.

    Notes
    -----
    Metric: rim plus twice width times ratio. By diameter: as printed. Both are the nominal size
    of a new tyre, unloaded; makes differ by 1 to 2 %.

    References
    ----------
    etrto (the arithmetic of the size designation), from memory

    Examples
    --------
    >>> round(parse_tyre("285/75R16 122/119Q").outer_diameter, 4)
    0.8339
    """
    code = tidied(text).upper().replace("·", "X").replace("*", "X").replace(",", ".")
    code = re.sub(r"[ \"]", "", code.replace("Х", "X"))
    for form, size in _SIZES.items():
        if (found := size.match(code)) and (rest := _REST.fullmatch(code[found.end() :])):
            return _tyre(text, form, found, rest)
    if re.fullmatch(r"[0-9.]+(IN|X)?", code):
        _refuse(text, "is only part of a tyre's size.")
    return _refuse(text, "is not a tyre's sidewall code.")


def _tyre(text: str, form: str, found: re.Match[str], rest: re.Match[str]) -> TyreCode:
    rim_unit = known("length")["in"]
    rim, width = float(found["rim"]) * rim_unit, float(found["width"])
    note = "nominal size, new and unloaded"
    if form in {"metric", "width in millimetres"}:
        width *= known("length")["mm"]
    else:
        width *= rim_unit
    if form == "by diameter":
        outer = float(found["outer"]) * rim_unit
    elif form == "metric":
        outer = rim + 2 * width * float(found["ratio"]) / 100
        if not 25 <= float(found["ratio"]) <= 100:
            _refuse(text, f"has a section height of {found['ratio']} % of its width.")
    else:
        ratio = WIDTH_IN_INCHES_ONLY if form == "width in inches" else WIDTH_IN_MILLIMETRES_ONLY
        outer = rim + 2 * width * ratio
        note += f"; no ratio printed, section height taken as {ratio:.0%} of width (from memory)"
    _check(text, outer, width, rim)
    load = int(rest["load"]) if rest["load"] else None
    if load is not None and not 50 <= load <= 179:
        _refuse(text, f"has a load index of {load}; they run from 50 to 179.")
    if rest["speed"] and rest["speed"] not in _SPEEDS:
        _refuse(text, f"has a speed symbol {rest['speed']!r} that does not exist.")
    return TyreCode(
        outer_diameter=outer,
        section_width=width,
        rim_diameter=rim,
        load_index=load,
        speed_symbol=rest["speed"],
        construction=_CARCASS[found["kind"]],
        note=note,
    )


def _check(text: str, outer: float, width: float, rim: float) -> None:
    rim_unit = known("length")["in"]
    if not 10 * rim_unit <= rim <= 26 * rim_unit:
        _refuse(text, f"has a rim of {rim / rim_unit:g} in; rims run from 10 to 26 in.")
    if not 0.1 <= width <= 0.6:
        _refuse(text, f"is {width * 1e3:.0f} mm wide; tyres run from 100 to 600 mm.")
    if not 0.4 <= outer <= 1.6:
        _refuse(text, f"is {outer * 1e3:.0f} mm high; tyres run from 400 to 1600 mm.")
    if outer < rim + 0.05:
        _refuse(text, "has an outer diameter that hardly clears its own rim.")


def _refuse(text: str, problem: str) -> NoReturn:
    such = " or ".join(f'"{example}"' for example in EXAMPLES)
    raise BadQuantity(f"{text.strip()[:40]!r} {problem}", remedy=f"Copy it as moulded: {such}.")
