"""The sheet after a shake: in order, one thing changed at a time, with the evidence kept."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.rig import Job, Kept, LookTaken, Noticed
from axlewright.tables import ShimmyCheck, shimmy_checks

FIRST_LINE: Final = (
    "When it happens: hold the wheel firmly and lightly, lift off, slow down gently below 50 km/h, "
    "do not accelerate out of it. Stop, and look before the next speed."
)
OCCASION, TASK = "shimmy", "shimmy"


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckDone:
    """One check of the sheet, and what was last found at it; ``kept`` is None while it is open."""

    check: ShimmyCheck
    kept: Kept | None

    @property
    def sound(self) -> bool:
        """Whether somebody looked and found it in order."""
        return self.kept is not None and getattr(self.kept.body, "state", "") == "go"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """How the sheet stands: what was noticed, what was checked, what is next.

    ``too_many`` says that more than one thing was changed since it was last known whether it
    shakes; ``damper_early`` that the damper was changed before what stands before it was done.
    """

    noticed: Kept | None
    checks: tuple[CheckDone, ...]
    next: ShimmyCheck | None
    changes: tuple[Kept, ...]
    too_many: bool
    damper_early: bool
    still: bool


def sheet(history: Sequence[Kept]) -> Sheet:
    """How the sheet of a rig stands after everything in its book."""
    ordered = sorted(history, key=lambda each: each.order)
    told = [each for each in ordered if isinstance(each.body, Noticed) and each.body.about == TASK]
    noticed = told[-1] if told else None
    first = told[0] if told else None
    looked = [
        each
        for each in ordered
        if isinstance(each.body, LookTaken) and each.body.occasion == OCCASION
        if first is None or each.order >= first.order
    ]
    done = {each.body.look: each for each in looked if isinstance(each.body, LookTaken)}
    checks = tuple(
        CheckDone(check=each, kept=done.get(each.key))
        for each in sorted(shimmy_checks().values(), key=lambda each: each.rank)
    )
    since = noticed.order if noticed is not None else (dt.date.min, 0)
    changes = tuple(
        each
        for each in ordered
        if isinstance(each.body, Job) and each.body.task.startswith(TASK) and each.order > since
    )
    ahead = [each for each in checks if each.check.stage != "damper"]
    damper = any("damper" in each.body.part for each in changes if isinstance(each.body, Job))
    answers = dict(noticed.body.answers) if noticed and isinstance(noticed.body, Noticed) else {}
    return Sheet(
        noticed=noticed,
        checks=checks,
        next=next((each.check for each in checks if not each.sound), None),
        changes=changes,
        too_many=len(changes) > 1,
        damper_early=damper and not all(each.sound for each in ahead),
        still=noticed is not None and answers.get("still", "yes") != "no",
    )
