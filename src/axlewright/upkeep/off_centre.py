"""What a sum over a bowed rod and a steering wheel off centre says against driving."""

import datetime as dt
from collections.abc import Sequence
from typing import Final

from axlewright.rig import Job, Kept, Noticed
from axlewright.upkeep.looks import Objection

OFF_CENTRE: Final = "off centre"


def off_centre_objections(history: Sequence[Kept]) -> tuple[Objection, ...]:
    """Objections of the sums on record; a sum objects or is silent, it never says go.

    One that objected is answered by a later one that finds nothing seen and nothing felt; where a
    rod was bowed, work on that rod stands between the two.
    """
    ordered = sorted(history, key=_order)
    sums = [each for each in ordered if _answers(each)]
    silent = [each for each in sums if not _answers(each)["says"]]
    found: dict[str, Objection] = {}
    for each in sums:
        said = _answers(each)
        if said["says"] not in {"stop", "fix before trip"} or _answered(each, ordered, silent):
            continue
        grave = "stop" if said["says"] == "stop" else "fix before trip"
        what = f"{said.get('rod', '')}, the steering wheel off centre ({each.on})"
        if said["rod"] in found and found[said["rod"]].state == "stop":
            continue
        found[said["rod"]] = Objection(
            state="stop" if grave == "stop" else "fix before trip",
            what=what,
            why=said.get("because", ""),
        )
    return tuple(found.values())


def _answers(kept: Kept) -> dict[str, str]:
    body = kept.body
    if not isinstance(body, Noticed) or body.about != OFF_CENTRE:
        return {}
    return {"rod": "", "says": "fix before trip", **dict(body.answers)}


def _answered(one: Kept, ordered: Sequence[Kept], silent: Sequence[Kept]) -> bool:
    said = _answers(one)
    later = [each for each in silent if _order(each) > _order(one)]
    if said.get("bowed") != "yes":
        return bool(later)
    work = [
        each
        for each in ordered
        if isinstance(each.body, Job)
        and each.body.part.casefold() == said["rod"].casefold()
        and _order(each) > _order(one)
    ]
    return bool(later and work and _order(later[-1]) > _order(work[0]))


def _order(kept: Kept) -> tuple[dt.date, int]:
    return kept.on, kept.number
