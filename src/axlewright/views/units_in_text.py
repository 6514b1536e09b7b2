"""Sentences of the tables in the reader's units: distances, speeds, lengths, weights, pressures."""

import re
from typing import Final

from axlewright import units
from axlewright.views.phrases import plain

# Unit as the tables write it: kind, unit of the far system where it is not the system's, digits.
_WRITTEN: Final = {
    "km/h": ("speed", "", 0),
    "km": ("distance", "", 1),
    "mm": ("length", "", 2),
    "cm": ("length", "", 2),
    "m": ("length", "ft", 1),
    "kg": ("mass", "", 2),
    "N m": ("torque", "", 2),
    "kPa": ("pressure", "", 2),
}
_NUMBER: Final = r"\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?"
_QUANTITY: Final = re.compile(
    rf"\b({_NUMBER})(?:( to | and )({_NUMBER}))? ({'|'.join(_WRITTEN)})\b(?!\s*(?:/|\())"
)


def in_units(text: str, system: str = "metric") -> str:
    """Quantities inside a sentence of a table in the reader's units, as round as they were.

    Examples
    --------
    >>> in_units("after 20 m, then every 1,000 km", "us")
    'after 70 ft, then every 600 mi'
    >>> in_units("50 to 100 km/h, within 1.5 mm", "us")
    '30 to 60 mph, within 0.059 in'
    """
    return _QUANTITY.sub(lambda found: _said(found, system), text)


def _said(found: re.Match[str], system: str) -> str:
    low, joined, high, unit = found.groups()
    kind, far, digits = _WRITTEN[unit]
    wanted = units.SYSTEMS[system][kind]
    abroad = wanted != units.SYSTEMS["metric"][kind]
    if not abroad or (unit == "m" and units.SYSTEMS[system]["distance"] == "km"):
        return found[0]
    wanted = far or wanted
    size = units.known(kind)[unit] / units.known(kind)[wanted]
    there = [float(each.replace(",", "")) * size for each in (low, high) if each]
    told = [_rounded(each, digits) for each in there]
    if len(set(told)) < len(told):
        told = [_rounded(each, 2) for each in there]
    return f"{(joined or '').join(told)} {wanted}"


def _rounded(number: float, digits: int) -> str:
    """So many digits; a speed to the nearest five, for a driver reads it off a dial."""
    if digits:
        return plain(number, digits)
    return f"{5 * round(number / 5)}" if number >= 10.0 else plain(number, 1)
