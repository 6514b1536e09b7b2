"""A choice: a first ranked answer, and twelve changes over ten thousand paired draws."""

import os
import time
from collections.abc import Callable
from dataclasses import dataclass

from axlewright.actions.deciding import SHARED
from axlewright.decide import decide, hands_for
from axlewright.rig import load_rig

RIG = "examples/rigs/wagtail.toml"  # most of its draws fit its past, so most are tried
TWELVE = (
    *("bracket_plates", "end_gussets", "cover", "sleeve", "truss", "stiffened", "shafts_joints"),
    *("hubs", "ready_same", "heavier_bare", "heavier_ready", "bigger_class"),
)
FIRST_S, WHOLE_S = 4.0, 40.0


@dataclass(frozen=True)
class Row:
    """One line of the table, s; there is no peer, the target stands in the note."""

    name: str
    ours_s: float
    note: str
    peer_s: float | None = None
    ratio: float | None = None


def measure() -> list[Row]:
    """Times of a first ranked answer and of the whole choice, kernels warm."""
    rig = load_rig(RIG)
    decide(rig, draws=200, only=["cover"], thorough=False)
    told: list[float] = []
    first, first_busy = _timed(lambda: decide(rig, draws=1000, thorough=False))
    whole, whole_busy = _timed(
        lambda: decide(
            rig,
            draws=10_000,
            only=TWELVE,
            workers=hands_for(10_000, SHARED),
            progress=lambda _, done, of: told.append(done / max(of, 1)),
        )
    )
    return [
        Row(
            name="a first ranked answer, 1,000 draws",
            ours_s=first,
            note=f"every change of this rig; {first_busy:.3g} s busy; target {FIRST_S:g} s",
        ),
        Row(
            name="12 changes, 10,000 paired draws",
            ours_s=whole,
            note=f"with looks and flips, told {len(told)} times on the way; "
            f"{whole_busy:.3g} s busy; target {WHOLE_S:g} s",
        ),
    ]


def _timed(work: Callable[[], object]) -> tuple[float, float]:
    """Seconds on the clock, and seconds of work in all processes (a shared machine waits)."""
    clock, busy = time.perf_counter(), _busy()
    work()
    return time.perf_counter() - clock, _busy() - busy


def _busy() -> float:
    """Seconds that this process and those that it has ended were busy."""
    times = os.times()
    return times.user + times.system + times.children_user + times.children_system
