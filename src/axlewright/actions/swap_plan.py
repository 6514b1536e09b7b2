"""Plan a swap from a rig file and change files; write its job sheets."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from axlewright import units
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.rig import Change, Rig, changed_rig, findings, load_change, load_rig, stops
from axlewright.swap import Plan, Progress, Set, TorqueLine, lines_of, own_bolt, planned

LONGEST_PRINTED = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAnswer:
    """A plan, how far it has come, and what says STOP before everything else."""

    plan: Plan
    progress: Progress
    stops: tuple[str, ...]


def plan_file(
    path: str,
    changes: Sequence[str] = (),
    *,
    people: int = 2,
    skill: str = "practised",
    said: Mapping[str, str] | None = None,
    kind: str = "",
    values: Mapping[str, str] | None = None,
    bolts: Mapping[str, str] | None = None,
) -> PlanAnswer:
    """Plan the way from a rig file to what change files make of it.

    ``said`` answers questions by name. ``values`` fill torque lines by key, as text with a unit
    and, after a comma, where the maker printed it; ``bolts`` tell thread and grade of a line's own
    bolt, as on its head. Raises `AxlewrightError` with what has to be
    put right.
    """
    rig = load_rig(path)
    plan = planned(
        rig,
        steps_of(rig, [load_change(change) for change in changes]),
        people=people,
        skill=skill,
        said=said,
        kind=kind,
    )
    read = {line_of(plan, key).key: own_bolt(text) for key, text in (bolts or {}).items()}
    bare = Progress(bolts=read)
    told = {key: value_of(plan, key, text, bare) for key, text in (values or {}).items()}
    progress = Progress(values=told, bolts=read)
    return PlanAnswer(plan=plan, progress=progress, stops=rig_stop_lines(rig))


def steps_of(rig: Rig, changes: Sequence[Change]) -> list[tuple[Change, Rig]]:
    """Each change with the rig after it."""
    found = []
    for change in changes:
        rig, _ = changed_rig(rig, change)
        found.append((change, rig))
    return found


def rig_stop_lines(rig: Rig) -> tuple[str, ...]:
    """Lines that stand before everything while something found says: do not drive."""
    from axlewright.views import drive_lines

    found = stops(findings(rig))
    return tuple(drive_lines(found)) if found else ()


def line_of(plan: Plan, key: str, progress: Progress | None = None) -> TorqueLine:
    """One torque line of a plan by its key, told for the bolt that somebody read."""
    for line in lines_of(plan, progress or Progress()):
        if line.key == key:
            return line
    known = ", ".join(line.key for line in plan.lines)
    raise UnknownEntry(
        f"There is no torque line {key[:40]!r} in this plan.", remedy=f"One of: {known}."
    )


def value_of(
    plan: Plan, key: str, text: str, progress: Progress | None = None, printed: str | None = None
) -> Set:
    """Read what somebody wrote into a torque line; refuses what cannot be meant.

    Without ``printed`` the text carries it after its first comma.
    """
    line = line_of(plan, key, progress)
    if printed is None:
        text, _, printed = text.partition(",")
    read = units.parse(text, "torque")
    place = " ".join(printed.split())[:LONGEST_PRINTED]
    if read.dont_know or read.value <= 0.0:
        raise AxlewrightError(
            f"{line.what}: {text[:40]!r} is no torque.", remedy='As in "150 N m" or "110 lbf ft".'
        )
    if line.by == "maker" and not place:
        raise AxlewrightError(
            f"{line.what}: where did the maker print this value?",
            remedy='As in "150 N m, workshop manual 4-12".',
        )
    if line.low is not None and line.high is not None:
        low, high = line.low, line.high
        if line.by == "range":
            low, high = 0.3 * low, 2.0 * high
        if not 0.5 * low <= read.value <= 2.0 * high:
            raise AxlewrightError(
                f"{line.what}: {units.show(read.value, 'torque')} is far from anything that such a "
                f"bolt ({line.thread} {line.grade}) bears.",
                remedy="Look at the figure and its unit again.",
            )
    return Set(torque=read.value, text=text.strip(), printed=place)


def write_plan(answer: PlanAnswer, path: Path, system: str = "metric") -> None:
    """Typeset the job sheets; an old file stays whole until the new one is."""
    from axlewright.actions.report import written

    written(plan_paper(answer, system), path)


def plan_paper(answer: PlanAnswer, system: str = "metric") -> bytes:
    """Job sheets of a plan as the bytes of a PDF."""
    from axlewright.report import job_sheets
    from axlewright.views import swap_data

    return job_sheets(swap_data(answer.plan, system, answer.progress, answer.stops))
