"""What a sum over a bowed rod and a steering wheel off centre says against driving."""

from collections.abc import Sequence
from typing import Final

from axlewright.rig import Job, Kept, Noticed
from axlewright.upkeep.looks import Objection

OFF_CENTRE: Final = "off centre"


def off_centre_objections(history: Sequence[Kept]) -> tuple[Objection, ...]:
    """Objections of the sums on record; a sum objects or is silent, it never says go.

    One that objected is answered by a later one that finds nothing seen and nothing felt; where a
    rod was bowed, by one on that rod, with work on it between the two.
    """
    ordered = sorted(history, key=lambda each: each.order)
    found: dict[str, Objection] = {}
    for each in ordered:
        said = answers_of(each)
        if not said or not said["says"] or _answered(each, ordered):
            continue
        rod, before = said["rod"], found.get(said["rod"])
        if before is not None and before.state == "stop":
            continue
        found[rod] = Objection(
            state="stop" if said["says"] == "stop" else "fix before trip",
            what=f"{rod}, the steering wheel off centre ({each.on})",
            why=said.get("because", ""),
            do=f"Renew it, enter the work on the {rod}, then weigh the {rod} again."
            if said.get("bowed") == "yes"
            else "Find what moved, put it right, then weigh it again.",
        )
    return tuple(found.values())


def answers_of(kept: Kept) -> dict[str, str]:
    """What a sum was told and what it says; empty where an entry is none."""
    body = kept.body
    if not isinstance(body, Noticed) or body.about != OFF_CENTRE:
        return {}
    return {"rod": "", "says": "fix before trip", **dict(body.answers)}


def _answered(one: Kept, ordered: Sequence[Kept]) -> bool:
    said = answers_of(one)
    later = [each for each in ordered if each.order > one.order]
    if said.get("bowed") == "yes":
        worked = (n for n, each in enumerate(later, 1) if works_on(each, said["rod"]))
        later = later[next(worked, len(later)) :]
    return any(
        told and not told["says"] and (said.get("bowed") != "yes" or told["rod"] == said["rod"])
        for told in map(answers_of, later)
    )


def works_on(kept: Kept, rod: str) -> bool:
    """Whether an entry is work on that rod."""
    return isinstance(kept.body, Job) and kept.body.part.casefold() == rod.casefold()
