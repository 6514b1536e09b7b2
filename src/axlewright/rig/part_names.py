"""What a part is, by the name that somebody gave it: hyphens, blanks and slips of the pen are free.

Whether a crack stops the vehicle hangs on the part's name, so a misspelt knuckle is a knuckle, and
a name that nobody knows is never taken for a harmless one.
"""

import re
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import cache
from typing import Final

STEERS: Final = (
    "knuckle",
    "swivel",
    "steering",
    "tie rod",
    "track rod",
    "toe link",
    "drag link",
    "drop arm",
    "pitman",
    "idler arm",
    "relay rod",
    "centre link",
    "center link",
    "rod end",
    "ball joint",
    "kingpin",
    "track bar",
    "lateral rod",
)
HOLDS_A_WHEEL: Final = (
    "hub",
    "wheel bearing",
    "spindle",
    "stub axle",
    "wheel stud",
    "wheel nut",
    "wheel bolt",
    "lug nut",
    "lug bolt",
    "lug stud",
    "rim",
    "end forging",
    "inner c",
    "outer c",
    "end c",
    "c forging",
)
STOPS: Final = ("brake", "caliper", "calliper")
SHAFTS: Final = (
    "shaft",
    "cross joint",
    "wheel joint",
    "u joint",
    "universal joint",
    "uj",
    "cv",
    "cvj",
    "yoke",
)
# Where oil has no business: there is no joint for it to come from.
BARE: Final = ("tube", "forging", "centre", "center", "casting", "housing")
OTHERS: Final = (
    "spring",
    "coil",
    "leaf",
    "seat",
    "pad",
    "perch",
    "damper",
    "shock",
    "bump stop",
    "arm",
    "link",
    "bracket",
    "bush",
    "mount",
    "bolt",
    "frame",
    "chassis",
    "cover",
    "drain",
    "plug",
    "pinion",
    "ring",
    "gear",
    "diff",
    "locker",
    "carrier",
    "case",
    "truss",
    "gusset",
    "sleeve",
    "plate",
    "skid",
    "guard",
    "seal",
    "breather",
    "vent",
    "sway bar",
    "anti roll bar",
    "wheel",
    "tyre",
    "tire",
    "sensor",
    "wiring",
    "axle",
    "weld",
    "brace",
    "steel",
    "body",
    "engine",
    "gearbox",
    "transfer",
)
ALIKE: Final = 0.8  # likeness from which a word is a slip of the pen
SHORTEST: Final = 4  # signs of a word below which nothing is guessed


@dataclass(frozen=True, slots=True)
class PartMeant:
    """What a named part does, whether its name is known, and for which name it was taken."""

    steers: bool
    holds: bool
    brakes: bool
    shaft: bool
    bare: bool
    known: bool
    taken_as: str = ""


_NAMES: Final = (*STEERS, *HOLDS_A_WHEEL, *STOPS, *SHAFTS, *BARE)
_WORDS: Final = frozenset(word for name in (*_NAMES, *OTHERS) for word in name.split())


@cache
def part_meant(said: str) -> PartMeant:
    """What a part does, by the name that it was given.

    Examples
    --------
    >>> part_meant("Tie-Rod end").steers, part_meant("knuckel").taken_as
    (True, 'knuckle')
    >>> part_meant("spring bracket").steers, part_meant("thingummy").known
    (False, False)
    """
    found = {name: _in(said, name) for name in _NAMES}
    guessed = ""
    if not any(found.values()):
        near = sorted(((_likeness(said, name), name) for name in found), reverse=True)
        guessed = near[0][1] if near[0][0] >= ALIKE else ""
        if guessed:
            found[guessed] = True
    damps = _in(said, "damper") or _in(said, "stabiliser") or _in(said, "stabilizer")
    return PartMeant(
        steers=not damps and any(found[name] for name in STEERS),
        holds=_is_wheel(said) or any(found[name] for name in HOLDS_A_WHEEL),
        brakes=any(found[name] for name in STOPS),
        shaft=any(found[name] for name in SHAFTS),
        bare=any(found[name] for name in BARE),
        known=any(found.values()) or any(_in(said, name) for name in OTHERS),
        taken_as=guessed,
    )


def _is_wheel(said: str) -> bool:
    """Whether a wheel itself is named, and nothing at it."""
    rest = set(_words(said)) - {"left", "right", "front", "rear", "the", "a"}
    return bool(rest) and rest <= {"wheel", "wheels"}


def _words(name: str) -> list[str]:
    return re.findall(r"[^\W_]+", name.casefold())


def _in(said: str, name: str) -> bool:
    """Whether a name stands in what was said; short words only whole, or with an s."""
    wanted, words = _words(name), _words(said)
    if min(map(len, wanted)) >= SHORTEST or (len(wanted) > 1 and min(map(len, wanted)) > 1):
        return "".join(wanted) in "".join(words)
    windows = (words[at : at + len(wanted)] for at in range(len(words) - len(wanted) + 1))
    return any(
        all(word in {want, f"{want}s"} for word, want in zip(window, wanted, strict=True))
        for window in windows
    )


def _likeness(said: str, name: str) -> float:
    """Likeness of the words of a name to as many words in a row, or to one, of what was said."""
    wanted, words = _words(name), _words(said)
    if min(map(len, wanted)) < SHORTEST and len(wanted) == 1:
        return 0.0
    windows = [words[at : at + len(wanted)] for at in range(len(words) - len(wanted) + 1)]
    row = [
        min(_alike(word, want) for word, want in zip(window, wanted, strict=True))
        for window in windows
    ]
    whole = "".join(wanted)
    return max([*row, *(_alike(word, whole) for word in (*words, "".join(words)))], default=0.0)


def _alike(word: str, want: str) -> float:
    """Likeness of two words; a word that is right as it stands is no slip for another."""
    if word in _WORDS and word != want:
        return 0.0
    return SequenceMatcher(None, word, want, autojunk=False).ratio()
