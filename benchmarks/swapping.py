"""A swap of 70 and of 80 steps planned: the constraint solver beside rules of priority."""

import dataclasses
import statistics
import time
from pathlib import Path
from typing import Final

from axlewright.rig import Change, Rig, changed_rig, load_change, load_rig
from axlewright.swap import Plan, planned

EXAMPLES: Final = Path(__file__).parents[1] / "examples"
KINDS: Final = ("geared axle", "bare housing")
TIMES: Final = 5


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class SwapRow:
    """One plan: ours with the solver, and the rules of priority as the peer."""

    name: str
    ours_s: float
    peer_s: float | None
    ratio: float | None
    note: str


def measure() -> list[SwapRow]:
    """Plan each kind for two people, with and without the solver."""
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    change = load_change(str(EXAMPLES / "changes" / "heavier-housing.toml"))
    after, _ = changed_rig(rig, change)
    return [_row(rig, change, after, kind) for kind in KINDS]


def _row(rig: Rig, change: Change, after: Rig, kind: str) -> SwapRow:
    def plan(*, exact: bool) -> Plan:
        return planned(rig, [(change, after)], people=2, kind=kind, exact=exact)

    solved, ruled = plan(exact=True), plan(exact=False)
    ours, peer = (_median(rig, change, after, kind, exact=exact) for exact in (True, False))
    longer = 100.0 * (ruled.schedule.end / solved.schedule.end - 1.0)
    return SwapRow(
        name=f"plan a {kind}, {len(solved.order)} steps, two people",
        ours_s=ours,
        peer_s=peer,
        ratio=peer / ours,
        note=f"asked 10 s; gap {100 * solved.schedule.gap:.1f} %; rules of priority as the peer, "
        f"whose order is {longer:.1f} % longer",
    )


def _median(rig: Rig, change: Change, after: Rig, kind: str, *, exact: bool) -> float:
    taken = []
    for _ in range(TIMES):
        start = time.perf_counter()
        planned(rig, [(change, after)], people=2, kind=kind, exact=exact)
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)
