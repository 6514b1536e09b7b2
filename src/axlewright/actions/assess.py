"""Assess a rig: the main job, from a file to the two orders, what they rest on, and a change."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from axlewright import strength
from axlewright.rig import (
    SEED,
    Change,
    Column,
    Finding,
    Rig,
    changed_rig,
    doubts,
    findings,
    load_change,
    load_rig,
    mended_parts,
    point_columns,
    stops,
)

DRAWS = 1000
Progress: TypeAlias = Callable[[int, int], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessment:
    """Everything that was found out about one rig (or one rig after changes).

    ``columns`` are the middle values, arrays of one draw; ``after_mend`` names, for each part at
    the head of the order, the part that gives next once it has been made strong.
    """

    rig: Rig
    columns: dict[str, Column]
    point: strength.Appraised
    drawn: strength.Drawn | None
    order: tuple[strength.Place, ...]
    wearing: tuple[strength.WearPlace, ...]
    influences: tuple[strength.Influence, ...]
    severities: tuple[strength.SeverityMove, ...]
    findings: tuple[Finding, ...]
    not_judged: tuple[str, ...]
    after_mend: tuple[tuple[str, str], ...]
    doubts: int

    @property
    def stops(self) -> tuple[Finding, ...]:
        """Findings that say: do not drive."""
        return stops(self.findings)


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """A rig before and after changes, on the same draws."""

    before: Assessment
    after: Assessment
    changes: tuple[Change, ...]
    dropped: tuple[str, ...]


def assess_rig(
    rig: Rig, *, draws: int = DRAWS, seed: int = SEED, progress: Progress | None = None
) -> Assessment:
    """Find out what gives first and what wears out first; ``draws`` 0 gives the point alone."""
    rig = rig.with_word("mended", mended_parts(rig))
    columns = point_columns(rig)
    point = strength.appraise(columns, rig.words)
    drawn = (
        strength.appraise_draws(rig, point, draws, seed=seed, progress=progress)
        if draws
        else None
    )
    order = strength.bad_moment_order(point, columns, drawn)
    return Assessment(
        rig=rig,
        columns=columns,
        point=point,
        drawn=drawn,
        order=order,
        wearing=strength.wear_order(point, drawn),
        influences=strength.influences(rig, point, drawn) if drawn is not None else (),
        severities=strength.severity_moves(point),
        findings=findings(rig),
        not_judged=_not_judged(rig),
        after_mend=_after_mend(order),
        doubts=sum(not doubt.given for doubt in doubts(rig)),
    )


def assess_file(
    path: str,
    changes: Sequence[str] = (),
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Progress | None = None,
) -> Assessment | Comparison:
    """Assess a rig file, and, with change files, the rig after them beside it."""
    rig = load_rig(path)
    before = assess_rig(rig, draws=draws, seed=seed, progress=progress)
    if not changes:
        return before
    loaded = tuple(load_change(change) for change in changes)
    return compare(before, loaded, draws=draws, seed=seed, progress=progress)


def compare(
    before: Assessment,
    changes: Sequence[Change],
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Progress | None = None,
) -> Comparison:
    """Assess the same rig after changes, on the same draws."""
    rig, dropped = before.rig, []
    for change in changes:
        rig, lost = changed_rig(rig, change)
        dropped += lost
    after = assess_rig(rig, draws=draws, seed=seed, progress=progress)
    return Comparison(before=before, after=after, changes=tuple(changes), dropped=tuple(dropped))


def _after_mend(order: Sequence[strength.Place], most: int = 3) -> tuple[tuple[str, str], ...]:
    """Which part gives next once each of the leading ones has been made strong enough."""
    ranked = [place.part for place in sorted(order, key=lambda place: place.margin)]
    out = []
    for place in order[:most]:
        rest = [part for part in ranked if _kind(part) != _kind(place.part)]
        if rest:
            out.append((place.part, rest[0]))
    return tuple(out)


def _kind(part: str) -> str:
    return part.removesuffix("_left").removesuffix("_right")


def _not_judged(rig: Rig) -> tuple[str, ...]:
    never = ["hub play", "cracks under paint", "brake hoses", "ball joint wear", "gear wear"]
    if rig.axle == "rear":
        never = ["hub play", "cracks under paint", "brake hoses", "gear wear"]
    if rig.words["held_by.arms"] != "leaves":
        never.append("the track bar's bracket on the frame")
    return tuple(never)
