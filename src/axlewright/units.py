"""The only place that knows inches and pounds: text to SI numbers and back.

Inside, everything is metre, kilogram, second, newton, pascal and radian. Each kind of quantity has
a closed list of units. Whether kg and lb are a mass or a weight is settled by the kind that is
asked for. Text with more than one meaning is refused, with a way to say it plainly.

References
----------
nist-sp811, appendix B (inch, foot, mile, pound, standard gravity: exact by definition)
"""

import re
import unicodedata
from dataclasses import dataclass, replace
from functools import cache
from math import floor, isfinite, isnan, log10, nan, pi
from typing import Final, NoReturn

from axlewright.errors import BadQuantity

_INCH, _MILE, _POUND, _GRAVITY = 0.0254, 1609.344, 0.45359237, 9.80665
_LBF = _POUND * _GRAVITY

# Kind -> unit -> (size in SI, other ways it is written). Case, blanks, dots and hyphens are free.
_LENGTH: Final = {
    "m": (1.0, "metre metres meter meters"),
    "cm": (1e-2, "centimetre centimetres centimeter centimeters"),
    "mm": (1e-3, "millimetre millimetres millimeter millimeters"),
    "in": (_INCH, 'inch inches ins "'),
    "ft": (12 * _INCH, "foot feet '"),
    "thou": (_INCH / 1000, "thousandths"),
}
_MASS: Final = {
    "kg": (1.0, "kgs kilo kilos kilogram kilograms"),
    "g": (1e-3, "gram grams"),
    "t": (1e3, "tonne tonnes"),
    "lb": (_POUND, "lbs pound pounds"),
}
_FORCE: Final = {
    "N": (1.0, "newton newtons"),
    "daN": (10.0, ""),
    "kN": (1e3, ""),
    "kgf": (_GRAVITY, "kp"),
    "lbf": (_LBF, "lbsf"),
    "kg": (_GRAVITY, "kgs kilo kilos kilogram kilograms"),
    "t": (1e3 * _GRAVITY, "tonne tonnes"),
    "lb": (_LBF, "lbs pound pounds"),
}
_STRESS: Final = {
    "Pa": (1.0, ""),
    "kPa": (1e3, ""),
    "MPa": (1e6, "n/mm2"),
    "GPa": (1e9, ""),
    "bar": (1e5, "bars"),
    "kgf/cm2": (_GRAVITY / 1e-4, "kg/cm2"),
    "psi": (_LBF / _INCH**2, "lbf/in2 lb/in2 lbs/in2"),
    "ksi": (1e3 * _LBF / _INCH**2, "kpsi"),
}
_UNITS: Final[dict[str, dict[str, tuple[float, str]]]] = {
    "length": _LENGTH,
    "distance": {
        "km": (1e3, "kms kilometre kilometres kilometer kilometers"),
        "m": _LENGTH["m"],
        "mi": (_MILE, "mile miles"),
    },
    "mass": _MASS,
    "force": _FORCE,
    "weight": _FORCE,
    "torque": {
        "N m": (1.0, "newtonmetre newtonmetres newtonmeter newtonmeters mnewton"),
        "kN m": (1e3, ""),
        "daN m": (10.0, ""),
        "kgf m": (_GRAVITY, "kgm mkg mkgf kpm mkp"),
        "kgf cm": (_GRAVITY / 100, "kgcm cmkg kpcm"),
        "lbf ft": (12 * _INCH * _LBF, "lbft ftlb ftlbf lbsft ftlbs footpounds poundfeet"),
        "lbf in": (_INCH * _LBF, "lbin inlb inlbf lbsin inlbs inchpounds poundinches"),
    },
    "stress": _STRESS,
    "pressure": _STRESS,
    "angle": {
        "rad": (1.0, "radian radians"),
        "deg": (pi / 180, "° degree degrees degs"),
        "arcmin": (pi / 10800, "' min minute minutes"),
    },
    "speed": {
        "m/s": (1.0, ""),
        "km/h": (1 / 3.6, "kmh kph km/hr kmph"),
        "mph": (_MILE / 3600, "mi/h mile/h miles/h"),
    },
    "stiffness": {
        "N/m": (1.0, ""),
        "N/mm": (1e3, ""),
        "kN/m": (1e3, ""),
        "kgf/mm": (1e3 * _GRAVITY, "kg/mm"),
        "kgf/cm": (1e2 * _GRAVITY, "kg/cm"),
        "lbf/in": (_LBF / _INCH, "lb/in lbs/in"),
    },
    "plain": {"": (1.0, ""), "%": (1e-2, "percent")},
    "ratio": {"": (1.0, "")},
    "count": {"": (1.0, "")},
    "offset": _LENGTH,
}

# Mixed: tools in inches, but the scale in kg and the road in km.
_IN_ORDER: Final = {
    "kinds": "length|offset|distance|mass|force|weight|torque|stress|pressure|angle|speed|stiffness"
    "|plain|ratio|count",
    "metric": "mm|mm|km|kg|kN|kg|N m|MPa|kPa|deg|km/h|N/mm|||",
    "us": "in|in|mi|lb|lbf|lb|lbf ft|ksi|psi|deg|mph|lbf/in|||",
    "mixed": "in|mm|km|kg|kN|kg|lbf ft|MPa|psi|deg|km/h|N/mm|||",
}
SYSTEMS: Final[dict[str, dict[str, str]]] = {
    name: dict(zip(_IN_ORDER["kinds"].split("|"), units.split("|"), strict=True))
    for name, units in _IN_ORDER.items()
    if name != "kinds"
}
_OF_INCHES: Final = {*_IN_ORDER["us"].split("|"), "ft", "thou", "lbf in"}

_UNKNOWN = re.compile(
    r"\?+|(i )?(don'?t|do not) know|un(known|sure)|not (known|sure|measured)|no (idea|clue)|dunno"
    r"|can'?t (tell|say)|n/a|idk"
)
_ABOUT = re.compile(
    r"^(?:~|≈|(?:about|approximately|approx|around|roughly|circa|ca|c(?=\.))\b\.?)\s*"
    r"|\s*\b(?:or so|more or less|approximately|approx\.?|roughly)$"
)
_FIGURES = (
    r"(?:[0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]{1,3}(?: [0-9]{3})+(?:[.,][0-9]+)?"
    r"|(?:[0-9]+(?:[.,][0-9]+)*|[.,][0-9]+)(?:e[+-]?[0-9]+)?)"
)
_UNIT = r"(?:[a-z°\"'%](?:[a-z°\"'%/·*. -]*?)(?:(?<=[a-z])\^?2)?\.?)?"
_THOUSANDS = re.compile(r"\d{1,3}([.,])\d{3}((\1\d{3})+|(\1\d{3})*(?!\1)[.,]\d+)")
_TERM = rf"([+-]?)\s*({_FIGURES})\s*({_UNIT})"
_TWO = re.compile(rf"([+-]?)\s*([0-9]+)\s*(f(?:ee|oo)?t|'|°|deg)\s*-?\s*({_FIGURES})\s*({_UNIT})")
_GIVE_OR_TAKE = re.compile(rf"{_TERM}\s*(?:±|\+/-|\+-|give or take|plus or minus)\s*{_TERM}")
_BAND = re.compile(rf"(?:between\s+|from\s+)?{_TERM}\s*(?:to|and|-|\.\.\.?)\s*{_TERM}")
_SAME = str.maketrans(
    {"″": '"', "“": '"', "”": '"', "′": "'", "’": "'", "‘": "'", "`": "'", "º": "°", "˚": "°"}
    | dict.fromkeys("−‐‑‒–—―﹣－", "-")
    | dict.fromkeys("⋅•∙・×", "·")
    | {"\u200b": None, "\u2060": None, "\ufeff": None, "\u00ad": None}
)
_OTHER_UNITS = re.compile("k(ip|lb)s?|st|stones?|cwt|slugs?|y(ar)?ds?|oz|days?|hours?")
LONGEST = 120  # characters of one answer


@dataclass(frozen=True, slots=True, kw_only=True)
class Parsed:
    """One number as a person gave it, in SI.

    ``uncertainty`` is the "±" as written; of a band, ``value`` is the middle.
    """

    value: float
    kind: str
    unit: str
    text: str
    uncertainty: float | None = None
    band: tuple[float, float] | None = None
    about: bool = False
    note: str = ""

    @property
    def dont_know(self) -> bool:
        """Whether the person said that it is not known."""
        return isnan(self.value)


DONT_KNOW: Final = Parsed(value=nan, kind="", unit="", text="don't know")


def known(kind: str) -> dict[str, float]:
    """Size in SI of each unit that a kind of quantity may be written in."""
    return {unit: size for unit, (size, _) in _UNITS[kind].items()}


def parse(text: str, kind: str) -> Parsed:
    """Read one quantity as a garage writes it; `DONT_KNOW` where that is the answer.

    Examples
    --------
    >>> round(parse("3 1/2 in", "length").value, 9)
    0.0889
    """
    said = tidied(text)
    if _UNKNOWN.fullmatch(said):
        return DONT_KNOW
    about = bool(_ABOUT.search(said))
    said = _ABOUT.sub("", said)
    reader = _Reader(text.strip(), kind)
    if kind in {"plain", "ratio"}:
        said = reader.without_to_one(said)
    value, unit, doubt, band = reader.read(said)
    if not all(map(isfinite, (value, doubt or 0.0, *(band or ())))):
        reader.refuse("is too large to be a number.", "Write what was measured.")
    if kind == "count" and (value != round(value) or value < 0 or band):
        reader.refuse("is not a whole number.", "Count them and write, for example, 6.")
    found = Parsed(value=value, kind=kind, unit=unit, text=text.strip(), about=about)
    return replace(found, uncertainty=doubt, band=band)


def tidied(text: str) -> str:
    """Text with one kind of blank, dash, quote and digit, in small letters."""
    if len(text) > LONGEST:
        msg = f"{text[:30]!r}... is {len(text)} characters long."
        raise BadQuantity(msg, remedy=f"Give the answer alone, in at most {LONGEST} characters.")
    parted = re.sub("[¼½¾⅐-⅞]", lambda part: f" {unicodedata.normalize('NFKC', part[0])}", text)
    plain = unicodedata.normalize("NFKC", parted.translate(_SAME)).translate(_SAME)
    plain = plain.replace("\u2044", "/").replace("''", '"').casefold()
    return re.sub(r"(?<=[-+±]) (?=[0-9]+/)", "", " ".join(plain.split()))


class _Reader:
    """Reads the parts of one quantity and words what is wrong with it."""

    def __init__(self, text: str, kind: str) -> None:
        self.text, self.kind = text, kind

    def refuse(self, problem: str, remedy: str) -> NoReturn:
        raise BadQuantity(f"{self.text!r} {problem}", remedy=remedy)

    def read(self, said: str) -> tuple[float, str, float | None, tuple[float, float] | None]:
        """Value, unit, uncertainty and band."""
        if not said:
            self.refuse("is empty.", 'Write a value, or "don\'t know".')
        if re.search(r"[0-9]'[0-9]{3}(?![0-9]*/)", said):
            self.refuse("parts the thousands with an apostrophe.", "Leave it out, as in 1200.")
        if said.endswith("?"):
            plain = self.text.rstrip("? ")
            self.refuse("ends in a question mark.", f'If not sure, write "about {plain}".')
        if found := re.fullmatch(_TERM, said):
            value, unit = self._term(*found.groups())
            return value, unit, None, None
        if found := _TWO.fullmatch(said):
            return (*self._two_part(*found.groups()), None, None)
        if found := _GIVE_OR_TAKE.fullmatch(said):
            return self._give_or_take(*found.groups())
        if found := _BAND.fullmatch(said):
            return self._band(*found.groups())
        if re.search(r"\b(inf|infinity|nan)\b", said):
            self.refuse("is not a number that can be measured.", self._how())
        return self.refuse("cannot be read.", self._how())

    def without_to_one(self, said: str) -> str:
        """Ratios such as 4.10:1 and 1:4.10 as one number; 41:10 as a fraction."""
        found = re.fullmatch(rf"({_FIGURES})\s*:\s*({_FIGURES})", said)
        if not found:
            return said
        first, second = found.groups()
        if "1" in (first, second):
            return first if second == "1" else second
        return f"{first}/{second}" if (first + second).isdigit() else said

    def _term(self, sign: str, figures: str, unit: str, *, fallback: str = "") -> tuple[float, str]:
        size, name = self._unit(unit or fallback, figures)
        return (-1.0 if sign == "-" else 1.0) * self._number(figures) * size, name

    def _two_part(self, *parts: str) -> tuple[float, str]:
        sign, large, unit, figures, small = parts
        value, name = self._term("", large, unit)
        size, small_name = self._unit(small, figures)
        if (name, small_name) not in {("ft", "in"), ("deg", "arcmin")}:
            self.refuse("cannot be read.", self._how())
        whole = value + self._number(figures) * size
        return (-whole if sign == "-" else whole), ("in" if name == "ft" else name)

    def _give_or_take(self, *parts: str) -> tuple[float, str, float, None]:
        sign, figures, unit, minus, doubt, doubt_unit = parts
        if doubt_unit in {"%", "percent"} and self.kind != "plain":
            value, name = self._term(sign, figures, unit)
            uncertainty = abs(value) * self._number(doubt) / 100
        else:
            value, name = self._term(sign, figures, unit, fallback=doubt_unit)
            uncertainty, _ = self._term("", doubt, doubt_unit, fallback=unit)
        if minus or not uncertainty > 0:
            self.refuse("has no doubt behind the ±.", "Write the ± as a number above zero.")
        return value, name, uncertainty, None

    def _band(self, *parts: str) -> tuple[float, str, None, tuple[float, float]]:
        sign, figures, unit, upper_sign, upper, upper_unit = parts
        low, name = self._term(sign, figures, unit, fallback=upper_unit)
        high, _ = self._term(upper_sign, upper, upper_unit, fallback=unit)
        if low >= high:
            self.refuse("runs backwards.", "Write the smaller value first, as in 5 to 8 mm.")
        return 0.5 * (low + high), name, None, (low, high)

    def _number(self, figures: str) -> float:
        if "/" in figures:
            whole, _, fraction = figures.replace("-", " ").rpartition(" ")
            above, below = fraction.split("/")
            if float(below) == 0:
                self.refuse("divides by zero.", "Write the fraction as in 3 1/2 in.")
            return float(whole or 0) + float(above) / float(below)
        figures = figures.replace(" ", "")
        if found := _THOUSANDS.fullmatch(figures):  # 1.200,5 or 1,200.5 or 1,200,000
            figures = figures.replace(found[1], "")
        marks = re.findall("[.,]", figures)
        if len(marks) > 1:
            self.refuse("has more than one comma or point.", "Write it as 1200,5 or 1200.5.")
        whole, _, rest = figures.partition(",")
        if marks == [","] and len(rest) == 3 and whole.strip("0") and len(whole) <= 3:
            remedy = f"Write {whole}{rest} or {whole}.{rest}, whichever you mean."
            self.refuse("can be read in two ways.", remedy)
        return float(figures.replace(",", "."))

    def _unit(self, unit: str, figures: str) -> tuple[float, str]:
        key, units = _key(unit), _UNITS[self.kind]
        if key in _names(self.kind):
            name = _names(self.kind)[key]
            return units[name][0], name
        if not key:
            self.refuse("has no unit.", self._how(figures))
        if key in {"ton", "tons"} and "t" in units:
            self.refuse("can be a long, a short or a metric ton.", "Write it in kg, t or lb.")
        others = [kind for kind in _UNITS if key in _names(kind)]
        if others:
            self.refuse(f"is {_a(others[0])}, not {_a(self.kind)}.", self._how())
        from difflib import get_close_matches

        near = get_close_matches(key, filter(None, _names(self.kind)), n=3, cutoff=0.5)
        best = (
            ""
            if _OTHER_UNITS.fullmatch(key)
            else min(near, key=lambda each: abs(len(each) - len(key)), default="")
        )
        meant = f" Did you mean {_names(self.kind)[best]}?" if best else ""
        return self.refuse(f"has a unit that is not known here: {unit!r}.{meant}", self._how())

    def _how(self, figures: str = "") -> str:
        if "" in _UNITS[self.kind]:
            return "Write a number without a unit, such as 4."
        such = f', such as "{figures} {SYSTEMS["metric"][self.kind]}"' if figures else ""
        return f"Write {_a(self.kind)} with one of: {', '.join(_UNITS[self.kind])}{such}."


def echo(parsed: Parsed) -> str:
    """Say in words what was understood, in the unit given and in one of the other system.

    Examples
    --------
    >>> echo(parse('3-1/2"', "length"))
    '3.5 in, that is 88.9 mm'
    """
    if parsed.dont_know:
        return "not known"
    kind, unit = parsed.kind, parsed.unit
    other = SYSTEMS["metric" if unit in _OF_INCHES else "us"][kind]
    plain = None if parsed.note else 9  # digits: as it was said, or as a computed value is told
    told = ("about " if parsed.about else "") + _span(parsed, unit, plain)
    doubt = parsed.uncertainty
    told += "" if doubt is None else f", give or take {show(doubt, kind, unit, plain)}"
    return told if other == unit else f"{told}, that is {_span(parsed, other)}"


def show(value: float, kind: str, unit: str = "metric", digits: int | None = None) -> str:
    """Write a value in a unit or a system's unit, to so many digits or as the eye reads it."""
    unit = SYSTEMS[unit][kind] if unit in SYSTEMS else unit
    told = _rounded(value / _UNITS[kind][unit][0], digits)
    return "not known" if isnan(value) else f"{told} {unit}".rstrip()


def _span(parsed: Parsed, unit: str, digits: int | None = None) -> str:
    if parsed.band is None:
        return show(parsed.value, parsed.kind, unit, digits)
    low, high = (show(end, parsed.kind, unit, digits) for end in parsed.band)
    return f"{low.removesuffix(unit).strip()} to {high}"


def _rounded(number: float, digits: int | None) -> str:
    if digits is not None:
        told = f"{number:.{digits}g}"
        return told if abs(number) < 10**digits else f"{float(told):.0f}"
    if number == 0 or not isfinite(number):
        return f"{number:.0f}"
    size = floor(log10(abs(number)))
    if not -4 <= size < 9:
        return f"{number:.3g}"
    told = f"{number:.{2 - size if size < 2 else int(size == 2)}f}"
    return told.removesuffix(".0") if size == 2 else told


def _key(unit: str) -> str:
    """Spelling of a unit with case, blanks, dots and hyphens taken out."""
    return re.sub(r"[ .·*^-]", "", tidied(unit).replace(" per ", "/"))


@cache
def _names(kind: str) -> dict[str, str]:
    """Every spelling of the units of one kind, to the unit's name."""
    return {
        _key(spelt): unit
        for unit, (_, more) in _UNITS[kind].items()
        for spelt in (unit, *more.split())
    }


def _a(kind: str) -> str:
    word = {"plain": "plain number", "offset": "length"}.get(kind, kind)
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"
