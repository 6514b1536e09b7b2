"""The sheet after a shake as a page shows it: what was noticed, checks in order, evidence."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.rig import Job, Kept, LookTaken, Noticed
from axlewright.tables import shimmy_questions
from axlewright.upkeep import FIRST_LINE, CheckDone, Sheet
from axlewright.views.log import happened
from axlewright.views.units_in_text import in_units

STAGES: Final[Mapping[str, str]] = {
    "first": "First, by hand and by gauge",
    "play": "Then play",
    "tyres": "Then tyres, toe and what was changed",
    "damper": "The damper, last of all",
}
READINGS: Final[Mapping[str, tuple[str, ...]]] = {  # guided readings that a check asks for
    "rock": ("tyre_rock", "upper_joint_rock", "free_rock"),
    "dry_steer": ("joint_play",),
    "hubs": ("unit_hub_play", "end_play"),
    "joints": ("lower_joint_total", "camber_rock"),
    "rims": ("rim_runout",),
    "toe": ("toe",),
    "caster": ("caster",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ShookQuestion:
    """One question to the driver, from memory: its words, and the one that was said."""

    key: str
    asks: str
    why: str
    answers: tuple[str, ...]
    said: str
    shown: tuple[str, ...]
    told: str

    @property
    def choices(self) -> tuple[tuple[str, str], ...]:
        """Each answer as it is kept, and as it is shown in the reader's units."""
        return tuple(zip(self.answers, self.shown, strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class ShookCheck:
    """One check: how, what follows, how it stands, and whether it is the next one."""

    key: str
    number: int
    title: str
    how: str
    finding: str
    state: str
    when: str
    note: str
    next: bool
    readings: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShookPage:
    """Everything on the page; its first line is what to do when it happens."""

    first_line: str
    still: bool
    noticed: str
    questions: tuple[ShookQuestion, ...]
    stages: tuple[tuple[str, tuple[ShookCheck, ...]], ...]
    done: int
    of: int
    changes: tuple[str, ...]
    too_many: bool
    damper_early: bool
    evidence: tuple[tuple[str, str], ...]


def shook_page(sheet: Sheet, history: Sequence[Kept], system: str) -> ShookPage:
    """The sheet with its evidence, the latest last."""
    body = sheet.noticed.body if sheet.noticed is not None else None
    said = dict(body.answers) if isinstance(body, Noticed) else {}
    checks = [_check(at, one, sheet, system) for at, one in enumerate(sheet.checks, 1)]
    stage_of = {one.check.key: one.check.stage for one in sheet.checks}
    return ShookPage(
        first_line=in_units(FIRST_LINE, system),
        still=sheet.still,
        noticed="" if sheet.noticed is None else f"{sheet.noticed.on}",
        questions=tuple(
            ShookQuestion(
                key=one.key,
                asks=one.question,
                why=in_units(one.why, system),
                answers=one.answers,
                said=said.get(one.key, ""),
                shown=tuple(in_units(word, system) for word in one.answers),
                told=in_units(said.get(one.key, ""), system),
            )
            for one in sorted(shimmy_questions().values(), key=lambda one: one.rank)
        ),
        stages=tuple(
            (title, tuple(one for one in checks if stage_of[one.key] == stage))
            for stage, title in STAGES.items()
        ),
        done=sum(one.state == "go" for one in checks),
        of=len(checks),
        changes=tuple(_told(one, system) for one in sheet.changes),
        too_many=sheet.too_many,
        damper_early=sheet.damper_early,
        evidence=tuple((f"{one.on}", _told(one, system)) for one in history if _belongs(one)),
    )


def _check(number: int, one: CheckDone, sheet: Sheet, system: str) -> ShookCheck:
    check, kept = one.check, one.kept
    look = kept.body if kept is not None else None
    return ShookCheck(
        key=check.key,
        number=number,
        title=check.title,
        how=in_units(check.how, system),
        finding=in_units(check.finding, system),
        state=look.state if isinstance(look, LookTaken) else "",
        when="" if kept is None else f"{kept.on}",
        note="" if kept is None else kept.note,
        next=sheet.next is not None and sheet.next.key == check.key,
        readings=READINGS.get(check.key, ()),
    )


def _belongs(kept: Kept) -> bool:
    match kept.body:
        case Noticed() as noticed:
            return noticed.about == "shimmy"
        case LookTaken() as look:
            return look.occasion == "shimmy"
        case Job() as job:
            return job.task.startswith("shimmy")
        case _:
            return False


def _told(kept: Kept, system: str) -> str:
    note = f" ({kept.note})" if kept.note else ""
    return f"{happened(kept, system)}{note}"
