"""From a shell, caches warm: the first help and the first answer, beside what libraries ask."""

import dataclasses
import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from typing import Final

ROUNDS: Final = 9
ROOT: Final = Path(__file__).parent.parent
HELP: Final = ("-m", "axlewright", "--help")
ASSESS: Final = ("-m", "axlewright", "assess", "examples/rigs/heron.toml")
NUMPY: Final = ("-c", "import numpy")
NUMBA: Final = ("-c", "import numba")


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class StartRow:
    """One command, by the clock or in processor time, beside a bare import."""

    name: str
    ours_s: float
    peer_s: float | None
    ratio: float | None
    note: str


def measure() -> list[StartRow]:
    """Run commands and imports in turns, so that each meets the same machine."""
    asked = (HELP, ASSESS, NUMPY, NUMBA)
    for command in asked:
        _ran(command)  # leaves bytecode and kernels behind
    rounds = [[_ran(command) for command in asked] for _ in range(ROUNDS)]
    rows = []
    for kind, by in enumerate(("by the clock", "processor time")):
        first_help, answer, numpy, numba = (
            statistics.median(ran[kind] for ran in runs) for runs in zip(*rounds, strict=True)
        )
        rows += [
            _row(f"axlewright --help, {by}", first_help, numpy, "import numpy; asked 0.3 s"),
            _row(f"axlewright assess, cold, {by}", answer, numba, "import numba; asked 1.5 s"),
        ]
    return rows


def _row(name: str, ours: float, peer: float, note: str) -> StartRow:
    return StartRow(name=name, ours_s=ours, peer_s=peer, ratio=peer / ours, note=note)


def _ran(command: Sequence[str]) -> tuple[float, float]:
    """One child from start to end: time by the clock and on the processor, s."""
    before, start = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    subprocess.run(  # noqa: S603 - our own commands
        [sys.executable, *command], cwd=ROOT, check=True, stdout=subprocess.DEVNULL
    )
    clock, after = time.perf_counter() - start, resource.getrusage(resource.RUSAGE_CHILDREN)
    return clock, after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime
