"""What a look turned up, and whether the rig may be driven: kept apart from every figure.

The STOP rules hold whatever a model says; "never looked at" is a state of its own and is never
sound. A figure can add a warning here; it cannot lift one.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, TypeAlias

from axlewright.rig.part_names import PartMeant, part_meant
from axlewright.rig.reading import Condition
from axlewright.rig.rig import Rig

State: TypeAlias = Literal["stop", "fix before trip", "watch", "not looked at"]
ORDER: tuple[State, ...] = ("stop", "fix before trip", "watch", "not looked at")

STANDING_LOOKS = (
    "hub play",
    "cracks under paint",
    "brake hoses",
    "steering joints by hand",
    "oil on bare tube",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One finding: its state, what was found where and when, why it counts, what to do."""

    state: State
    part: str
    what: str
    where: str
    when: str
    why: str
    do: str


def findings(rig: Rig) -> tuple[Finding, ...]:
    """Everything that the rig's condition turned up, the gravest first."""
    found = [_finding(condition) for condition in rig.conditions]
    if rig.words.get("rig.condition") == "never looked at":
        found.append(
            Finding(
                state="not looked at",
                part="the axle",
                what="never looked at",
                where="",
                when="",
                why="nobody has looked, and no figure stands in for a look",
                do="before a trip: " + ", ".join(STANDING_LOOKS),
            )
        )
    return tuple(sorted(found, key=lambda item: ORDER.index(item.state)))


def stops(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings that say: do not drive."""
    return tuple(item for item in found if item.state == "stop")


def mended_parts(rig: Rig) -> str:
    """Part keys that were mended, separated by spaces, for the coarse wear estimate."""
    keys = set()
    for condition in rig.conditions:
        if condition.what != "mended":
            continue
        part = " ".join(condition.part.lower().replace("-", " ").split())
        if "track" in part and "bracket" in part:
            keys.add("track_bar_bracket_axle")
        if ("arm" in part or "link" in part) and "bracket" in part:
            sides = (
                ("left", "right")
                if condition.where not in {"left", "right"}
                else (condition.where,)
            )
            keys.update(f"link_brackets_{side}" for side in sides)
    return " ".join(sorted(keys))


def _finding(condition: Condition) -> Finding:
    meant = part_meant(condition.part)
    state, why, do = _judged(meant, condition.what)
    if meant.taken_as:
        why = f"taken to be the {meant.taken_as}; {why}"
    return Finding(
        state=state,
        part=condition.part,
        what=condition.what,
        where=condition.where or "",
        when=str(condition.date or "no date"),
        why=why,
        do=do,
    )


def _judged(part: PartMeant, what: str) -> tuple[State, str, str]:  # noqa: PLR0911, PLR0912  (a way out for each)
    steers, holds, brakes, shaft = part.steers, part.holds, part.brakes, part.shaft
    replace = "Do not drive. Replace it, or have it judged by someone licensed to."
    if what == "not fit to drive":
        return "stop", "whoever looked said: do not drive", replace
    if what in {"cracked", "broke"} and (steers or holds or brakes):
        return "stop", "a crack or break in a part that steers, stops or holds a wheel", replace
    if what == "broke" and shaft:
        return (
            "stop",
            "a broken joint left in place can push the knuckle's joints apart",
            "Do not drive. Take the broken shaft or joint out first, as the manual says.",
        )
    if what == "wet" and part.bare and not steers:
        return (
            "stop",
            "oil where there is no joint is a crack",
            "Do not drive. Clean to metal, look with dye, mend or replace the housing.",
        )
    if what == "rusty line":
        return _bleeding(grave=steers or holds or brakes)
    if what in {"wet", "cracked", "bent", "loose"} and brakes:
        return "stop", "damage to a brake part", replace
    if what == "loose" and steers:
        return (
            "stop",
            "play in a steering or track-bar joint, or its bolt in a worn hole",
            "Do not drive. Renew joint, bolt and hole, then look again.",
        )
    if what == "loose" and holds:
        return (
            "stop",
            "play at a hub: its limit is the manual's, a few hundredths of a millimetre",
            "Do not drive until it has been measured by dial against the manual's limit.",
        )
    if (steers or holds or brakes) and what in {"bent", "bowed", "never looked at", "wet"}:
        return (
            "fix before trip",
            "what steers, stops or holds a wheel and is not known to be sound",
            "Look closely, measure, and put it right before any trip.",
        )
    if not part.known and what not in {"mended", "never looked at"}:
        return (
            "fix before trip",
            "no such part is known, so nothing tells whether it steers, stops or holds a wheel",
            "If it does, do not drive. Name the part as the list does, and look again.",
        )
    if what == "cracked":
        return "fix before trip", "a crack grows", "Have it mended, and look at its twin."
    if what in {"loose", "shaking", "broke"}:
        return (
            "fix before trip",
            "looseness wears what it touches",
            "Find the cause, mend, retorque.",
        )
    if what == "never looked at":
        return "not looked at", "never looked at is never sound", "Look before a trip."
    if what == "mended":
        return (
            "watch",
            "a mended place gives again sooner than a new one",
            "Clean it and look for a hair crack before and after every trip.",
        )
    return "watch", "known, and not known to be sound", "Look before and after every trip."


def _bleeding(*, grave: bool) -> tuple[State, str, str]:
    if grave:
        return (
            "stop",
            "a rusty or brown line running out of such a part may be a crack",
            "Do not drive until it has been cleaned to metal and looked at, with dye.",
        )
    return (
        "fix before trip",
        "a rusty or brown line is what a crack or a loose joint bleeds",
        "Clean it to metal and look, with dye.",
    )
