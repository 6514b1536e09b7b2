"""A number that a person gave, with the doubt it carries."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from axlewright.units import SYSTEMS, known

_OF_INCHES: Final = re.compile(
    r"[0-9.)]\s*(\"|''|in|inch|inches|ft|foot|feet|lb|lbs|lbf|pounds?|mi|miles?|psi)\b|\"",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """One given quantity: value and standard uncertainty in SI, and the text it came from."""

    quantity: str
    path: str
    value: float
    doubt: float
    about: bool
    text: str
    kind: str


def told_length(length: float, system: str) -> str:
    """A length in sentences: whole millimetres, or tenths below 100 mm; inches likewise.

    Examples
    --------
    >>> told_length(0.0541, "metric"), told_length(0.61, "us")
    ('54.1 mm', '24 in')
    """
    unit = SYSTEMS[system]["length"]
    number = length / known("length")[unit]
    places = int(abs(number) < 100.0) if unit == "mm" else 1 + (abs(number) < 10.0)
    return f"{round(number, places):g} {unit}" if places else f"{number:.0f} {unit}"


def spoken_system(given: Iterable[Given]) -> str:
    """System in which most numbers were given: metric or us; metric where nothing was.

    Examples
    --------
    >>> spoken_system([])
    'metric'
    """
    texts = {each.path: each.text for each in given if each.text}
    told = [bool(_OF_INCHES.search(text)) for text in texts.values()]
    return "us" if 2 * sum(told) > len(told) else "metric"
