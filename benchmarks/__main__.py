"""Run every benchmark of this folder and print one table of medians and ratios.

A benchmark is a module with ``measure()``, which returns rows: dataclasses with ``name``,
``ours_s``, ``peer_s``, ``ratio`` and ``note``. ``peer_s`` and ``ratio`` may be None where there is
nothing to stand beside. Times are medians in seconds; a ratio is how many times longer the peer
takes, measured in the same run. ``python -m benchmarks frame`` runs one of them.
"""

import pkgutil
import platform
import sys
from collections.abc import Iterable
from importlib import import_module
from importlib.metadata import version
from pathlib import Path
from typing import Protocol


class Row(Protocol):
    """What every benchmark's rows have."""

    @property
    def name(self) -> str:
        """What was done."""

    @property
    def ours_s(self) -> float:
        """Our median, s."""

    @property
    def peer_s(self) -> float | None:
        """The peer's median, s."""

    @property
    def ratio(self) -> float | None:
        """The peer's time over ours."""

    @property
    def note(self) -> str:
        """Who the peer is, and what is asked of the ratio."""


def duration(seconds: float | None) -> str:
    """Three digits with a fitting unit."""
    if seconds is None:
        return "–"
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("µs", 1e-6)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds / 1e-9:.3g} ns"


def table(rows: Iterable[Row]) -> str:
    """Rows as columns of text."""
    cells = [("what", "ours", "peer", "ratio", "note")]
    for row in rows:
        ratio = "–" if row.ratio is None else f"{row.ratio:,.3g} ×"
        if row.ratio is not None and row.ratio >= 1000:
            ratio = f"{row.ratio:,.0f} ×"
        cells.append((row.name, duration(row.ours_s), duration(row.peer_s), ratio, row.note))
    widths = [max(len(cell[column]) for cell in cells) for column in range(4)]
    return "\n".join(
        "  ".join([name.ljust(widths[0]), *map(str.rjust, numbers, widths[1:]), note])
        for name, *numbers, note in cells
    )


def main() -> None:
    """Measure what was asked for, or everything."""
    wanted = set(sys.argv[1:])
    rows: list[Row] = []
    for found in pkgutil.iter_modules([str(Path(__file__).parent)]):
        if found.name.startswith("_") or (wanted and found.name not in wanted):
            continue
        module = import_module(f"benchmarks.{found.name}")
        if hasattr(module, "measure"):
            print(f"measuring {found.name} …", file=sys.stderr)
            rows.extend(module.measure())
    print(
        f"axlewright {version('axlewright')}, NumPy {version('numpy')}, Numba {version('numba')}, "
        f"Python {platform.python_version()}, {platform.machine()}"
    )
    print(table(rows))


if __name__ == "__main__":
    main()
