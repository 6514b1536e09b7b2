"""One rig assessed: the two orders, what they rest on, and a change beside it."""

from collections.abc import Sequence
from dataclasses import dataclass

from axlewright.rig import (
    SEED,
    Change,
    Column,
    Finding,
    Rig,
    assumed,
    changed_rig,
    findings,
    has_track_bar,
    mended_parts,
    point_columns,
    stops,
)
from axlewright.strength.acting import Acting, acting_doubts
from axlewright.strength.appraisal import Appraised, Drawn, Progress, appraise, appraise_draws
from axlewright.strength.doubt import (
    Influence,
    Mover,
    Remembered,
    SeverityMove,
    influences,
    part_influences,
    remembered_shares,
    severity_moves,
)
from axlewright.strength.order import (
    Mended,
    Place,
    WearPlace,
    after_mend,
    bad_moment_order,
    wear_order,
)

DRAWS = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessment:
    """Everything that was found out about one rig (or one rig after changes).

    ``columns`` are the middle values, arrays of one draw; ``acting`` tells which doubts can move
    which part, where draws were made; ``after_mend`` names, for each part at
    the head of the order, the part that gives next once it has been made strong; ``remembered``
    tells for the five leading parts how much of their doubt stands on memory.
    """

    rig: Rig
    columns: dict[str, Column]
    point: Appraised
    drawn: Drawn | None
    acting: Acting | None
    order: tuple[Place, ...]
    wearing: tuple[WearPlace, ...]
    influences: tuple[Influence, ...]
    remembered: tuple[Remembered, ...]
    severities: tuple[SeverityMove, ...]
    findings: tuple[Finding, ...]
    not_judged: tuple[str, ...]
    after_mend: tuple[Mended, ...]
    doubts: int

    def movers(self, kind: str, most: int = 8) -> tuple[Mover, ...]:
        """Doubts that act on one kind of part, the most moving first; none without draws."""
        if self.drawn is None or self.acting is None:
            return ()
        return part_influences(self.rig, self.point, self.drawn, self.acting, kind, most)

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
    point = appraise(columns, rig.words)
    drawn = appraise_draws(rig, point, draws, seed=seed, progress=progress) if draws else None
    order = bad_moment_order(point, columns, drawn)
    acting = acting_doubts(rig, point) if drawn is not None else None
    return Assessment(
        rig=rig,
        columns=columns,
        point=point,
        drawn=drawn,
        acting=acting,
        order=order,
        wearing=wear_order(point, drawn),
        influences=() if drawn is None or acting is None else influences(rig, point, drawn, acting),
        remembered=_remembered(rig, point, drawn, acting, order),
        severities=severity_moves(point),
        findings=findings(rig),
        not_judged=_not_judged(rig, point),
        after_mend=after_mend(point, drawn, order),
        doubts=len(assumed(rig)),
    )


def compare(
    before: Assessment,
    changes: Sequence[Change],
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Progress | None = None,
) -> Comparison:
    """Assess the same rig after changes, on the same draws."""
    rig = before.rig
    dropped: list[str] = []
    for change in changes:
        rig, lost = changed_rig(rig, change)
        dropped += lost
    after = assess_rig(rig, draws=draws, seed=seed, progress=progress)
    return Comparison(before=before, after=after, changes=tuple(changes), dropped=tuple(dropped))


def _remembered(
    rig: Rig,
    point: Appraised,
    drawn: Drawn | None,
    acting: Acting | None,
    order: Sequence[Place],
    most: int = 5,
) -> tuple[Remembered, ...]:
    """How much of the leading parts' doubt stands on memory; none without draws."""
    if drawn is None or acting is None:
        return ()
    return remembered_shares(rig, point, drawn, acting, [place.kind for place in order[:most]])


def _not_judged(rig: Rig, point: Appraised) -> tuple[str, ...]:
    bound = point.housing.bound
    pivots = "kingpin" if rig.words["kingpin.kind"] == "kingpins" else "ball joint"
    never = ["hub play", "cracks under paint", "brake hoses"]
    if rig.axle == "front":
        never.append(f"{pivots} wear (no rate for it is known: rock the wheel)")
    never.append("gear wear (it hangs on oil, backlash and pattern)")
    if has_track_bar(rig.words):
        never.append("the frame rail behind the track bar's bracket")
    if bound.loose:
        never.append(
            "arms that pull on each other (as told their ends leave the axle free to turn: tape "
            "arms and track bar again)"
        )
    if bound.torn:
        never.append(
            "arms that pull on each other (as told they fit only by tearing a bushing: tape the "
            "ends and lengths of arms and track bar again)"
        )
    return tuple(never)
