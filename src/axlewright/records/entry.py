"""What the store gives back: entries, rigs and uploads as plain frozen words."""

import datetime as dt
from dataclasses import dataclass
from typing import Literal, TypeAlias

Kind: TypeAlias = Literal[
    "began",
    "file",
    "name",
    "answer",
    "clear",
    "condition",
    "settled",
    "change",
    "dropped",
    "ordered",
    "read",
    "anew",
    "swap",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class New:
    """One thing to be entered about a rig; ``content`` is a whole file that goes with it.

    Where ``content`` is given, its digest is entered as the text.
    """

    kind: Kind
    path: str = ""
    text: str = ""
    content: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One entry: its number (later is larger), what was said about what, where and when (UTC)."""

    number: int
    rig: str
    kind: Kind
    path: str
    text: str
    device: str
    at: dt.datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class RigRow:
    """One rig as it was begun, with the number and time (UTC) of its last entry."""

    slug: str
    name: str
    axle: str
    last: int
    touched: dt.datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Upload:
    """One file that was handed in, found again by its SHA-256; its name is a label only."""

    digest: str
    size: int
    name: str
    at: dt.datetime
