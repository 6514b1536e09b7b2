"""The log of an axle as the words of its paper: what is open and what was bent stand first."""

from collections.abc import Sequence
from dataclasses import dataclass

from axlewright.rig import Condition, Kept
from axlewright.upkeep import SPOKE, Drive, Driven, Outlived
from axlewright.views.answer import CAUTION
from axlewright.views.been import (
    HistoryRow,
    KnownPart,
    chapter_rows,
    driven_sentence,
    graves,
    history_rows,
)
from axlewright.views.log import HEAD


@dataclass(frozen=True, slots=True, kw_only=True)
class LogData:
    """Everything that the paper says. ``grave`` is of the whole log, whatever was chosen."""

    title: str
    drive: str
    stops: list[str]
    open: list[str]
    grave: list[tuple[str, list[str]]]
    driven: str
    broke: str
    chapters: list[tuple[str, list[tuple[str, str]]]]
    parts: list[tuple[str, str, str]]
    chosen: str
    rows: list[tuple[str, str, str, str]]
    caution: str


def log_data(
    name: str,
    axle: str,
    history: Sequence[Kept],
    shown: Sequence[Kept],
    drive: Drive,
    conditions: Sequence[Condition],
    driven: Driven,
    broke: str,
    parts: Sequence[KnownPart],
    outlived: Sequence[Outlived] = (),
    system: str = "metric",
) -> LogData:
    """Words of the paper: ``history`` is everything entered, ``shown`` what was chosen of it."""
    wanted = {kept.number for kept in shown}
    rows = [row for row in history_rows(history, outlived, system) if row.number in wanted]
    less = len(history) - len(rows)
    return LogData(
        title=f"{name}: log of its {axle} axle",
        drive=f"May I drive? {HEAD[drive.state]}",
        stops=_reasons(drive, ("stop",)),
        open=[*_reasons(drive, ("fix before trip", "watch")), *_unread(drive)],
        grave=[(head, list(lines)) for head, lines in graves(history, conditions, system)],
        driven=driven_sentence(driven, system),
        broke=broke,
        chapters=[(row.title, list(row.facts)) for row in chapter_rows(history, system)],
        parts=[_part(each) for each in parts],
        chosen=f"{len(rows)} of {len(history)} entries, as chosen; what stands above is of all."
        if less
        else f"All {len(rows)} entries, the newest first.",
        rows=[_row(row) for row in rows],
        caution=CAUTION,
    )


def _reasons(drive: Drive, states: Sequence[str]) -> list[str]:
    return [
        f"{each.state.upper()}: {each.what}: {each.why.rstrip('.')}. {each.do}"
        for each in drive.reasons
        if each.state in states
    ]


def _unread(drive: Drive) -> list[str]:
    """What spoke against driving until its part was replaced, and was not read since."""
    return [
        f"READ AGAIN: {each.what}: {each.why.rstrip('.')}. {each.do}"
        for each in drive.reasons
        if each.state == "not looked at" and each.why.startswith(SPOKE)
    ]


def _part(part: KnownPart) -> tuple[str, str, str]:
    mark = f" ({part.mark})" if part.mark else ""
    return f"{part.key}: {part.name}{mark}", "; ".join(part.was) or "never fitted", part.followed


def _row(row: HistoryRow) -> tuple[str, str, str, str]:
    said = [row.says, row.note, *row.marks]
    when = f"{row.when}, {row.odometer}" if row.odometer else row.when
    return str(row.number), when, row.who or "–", f"{row.kind}: {'. '.join(s for s in said if s)}"
