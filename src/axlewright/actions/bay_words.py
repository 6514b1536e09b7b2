"""What the bay says back: one axle in a list, one answer taken or refused, one thing found."""

import datetime as dt
import re
import unicodedata
from dataclasses import dataclass
from typing import Final

from axlewright.errors import Fault
from axlewright.rig import Condition, Field

LONGEST_SLUG: Final = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class AxleCard:
    """One axle in the list: how many of its questions are answered, and whether it must stand."""

    slug: str
    title: str
    axle: str
    answered: int
    questions: int
    touched: dt.datetime
    stop: bool
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Contradiction:
    """Answers that do not fit together: what is wrong, what to do, and which others it hangs on."""

    path: str
    problem: str
    remedy: str
    others: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What became of something that was said about a rig.

    ``echo`` says in words what was understood; ``fault`` what is wrong where it was not kept;
    ``told`` what the answer tells by itself, ``so_far`` what gives first with it. ``stop`` holds
    the lines that stand before everything else while what was found says: do not drive.
    ``number`` is that of the rig's last entry.
    """

    path: str
    text: str
    stored: bool
    number: int
    echo: str = ""
    fault: str = ""
    near: tuple[str, ...] = ()
    contradictions: tuple[Contradiction, ...] = ()
    told: tuple[str, ...] = ()
    so_far: tuple[str, ...] = ()
    stop: tuple[str, ...] = ()
    answered: int = 0
    complete: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One entry of the condition, with the key by which it is taken off the list."""

    key: str
    condition: Condition
    line: str
    stop: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptChange:
    """One change that was kept beside a rig: its number, name, file text and SHA-256."""

    number: int
    name: str
    text: str
    digest: str
    at: dt.datetime


def cleaned(text: str) -> str:
    """Text on one line: signs that cannot be printed and runs of blanks become one blank."""
    return " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())


def slug_of(name: str, axle: str) -> str:
    """Name of a rig for an address: small letters, figures and hyphens, its axle at the end.

    Examples
    --------
    >>> slug_of("Héron, die Zweite", "front"), slug_of("../..", "rear")
    ('heron-die-zweite-front', 'rig-rear')
    """
    folded = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().casefold()
    plain = re.sub("[^a-z0-9]+", "-", folded).strip("-")[:LONGEST_SLUG].strip("-")
    return f"{plain or 'rig'}-{axle}"


def refusal(asked: Field, problem: str) -> Fault:
    """Fault of one answer, with what is accepted in its place."""
    return Fault(field=asked.path, problem=problem, accepted=asked.how, example=asked.example)
