"""A whole assessment, warm: the point, and draws of its doubt, beside one bare frame solve."""

import time
import tracemalloc
from collections.abc import Callable
from dataclasses import dataclass
from statistics import median

from axlewright.rig import Rig, load_rig, point_columns
from axlewright.strength import appraise, appraise_draws, appraise_point

RIG = "examples/rigs/heron.toml"
TIMES = 15


@dataclass(frozen=True)
class Row:
    """One line of the table: medians in seconds."""

    name: str
    ours_s: float
    peer_s: float
    note: str

    @property
    def ratio(self) -> float:
        """The peer's time over ours."""
        return self.peer_s / self.ours_s


def measure() -> list[Row]:
    """Median times of the point and of draws, as ratios to the point's own columns."""
    rig = load_rig(RIG)
    point = appraise_point(rig)
    columns = point_columns(rig)

    def one() -> None:
        appraise(point_columns(rig), rig.words)

    single = _median(one, TIMES)
    thousand = _median(lambda: appraise_draws(rig, point, 1000), 5)
    ten = _median(lambda: appraise_draws(rig, point, 10_000), 1)
    bare = _median(lambda: appraise(columns, rig.words), TIMES)
    return [
        Row(
            name="point assessment, warm",
            ours_s=single,
            peer_s=bare,
            note="peer: the checks alone, columns ready; target 10 ms",
        ),
        Row(
            name="1,000 draws",
            ours_s=thousand,
            peer_s=1000.0 * single,
            note="peer: as many single points; target 0.3 s",
        ),
        Row(
            name="10,000 draws",
            ours_s=ten,
            peer_s=10_000.0 * single,
            note=f"peer: as many single points; target 3 s; {_growth(rig):.0f} MB beyond results",
        ),
    ]


def _growth(rig: Rig) -> float:
    """Peak memory of 10,000 draws over that of 1,000, less the results themselves, in MB."""
    point = appraise_point(rig)
    peaks = []
    for draws in (1000, 10_000):
        tracemalloc.start()
        drawn = appraise_draws(rig, point, draws)
        kept = sum(
            part.nbytes for part in (drawn.margin, drawn.hardness, drawn.utilisation, drawn.life)
        )
        peaks.append(tracemalloc.get_traced_memory()[1] - kept)
        tracemalloc.stop()
    return (peaks[1] - peaks[0]) / 1e6


def _median(call: Callable[[], object], times: int) -> float:
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        call()
        taken.append(time.perf_counter() - start)
    return median(taken)
