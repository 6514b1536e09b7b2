"""`axlewright assess`: the main job, from a rig file to the answer."""

import json
import shutil
import sys
from pathlib import Path

from axlewright.cli.options import STOPPED, Changes, Json, Units, checked_draws
from axlewright.cli.quick import load_kernels
from axlewright.errors import AxlewrightError

SLOW = 2000  # draws from which progress is shown


def assess(
    rig: Path,
    *,
    with_: Changes = None,
    why: int | None = None,
    json_: Json = False,
    report: Path | None = None,
    units: Units = "metric",
    draws: int = 1000,
    seed: int | None = None,
) -> int:
    """Say what gives first in one bad moment and what wears out first.

    Parameters
    ----------
    rig
        The rig file.
    with_
        A change file; may be given more than once, changes follow one another.
    why
        Open this row of the order, down to formula and source.
    json_
        Write JSON, in SI.
    report
        Write a typeset report to this PDF file as well.
    units
        The reader's units.
    draws
        How many times the doubt is drawn; 0 gives the middle alone.
    seed
        Seed of the draws.
    """
    _say_if_compiling()
    from axlewright.actions import assess_file
    from axlewright.rig import SEED
    from axlewright.strength import Comparison

    answer = assess_file(
        str(rig),
        [str(change) for change in with_ or []],
        draws=checked_draws(draws),
        seed=SEED if seed is None else seed,
        progress=_progress if draws >= SLOW else None,
    )
    shown = answer.after if isinstance(answer, Comparison) else answer
    if why is not None and not 1 <= why <= len(shown.order):
        raise AxlewrightError(
            f"There is no row {why}.", remedy=f"Give a number from 1 to {len(shown.order)}."
        )
    if json_:
        from axlewright.views import as_json

        sys.stdout.write(json.dumps(as_json(answer), indent=2, allow_nan=False) + "\n")
    else:
        from axlewright.views import answer_lines, drive_lines, folded, why_lines

        width = max(60, shutil.get_terminal_size((100, 24)).columns)
        if why is None:
            lines = answer_lines(answer, units, width)
        else:
            halts = drive_lines(shown.stops) if shown.stops else []
            lines = [*halts, *why_lines(shown, why, units)]
        _print(folded(lines, width))
    if report is not None:
        from axlewright.actions import write_report

        write_report(answer, report, units)
        sys.stderr.write(f"report: {report}\n")
    stopped = answer.before.stops if isinstance(answer, Comparison) else answer.stops
    return STOPPED if stopped else 0


def _print(lines: list[str]) -> None:
    sys.stdout.write("\n".join(lines) + "\n")


def _progress(done: int, wanted: int) -> None:
    end = "\n" if done >= wanted else ""
    sys.stderr.write(f"\r{done} of {wanted} draws{end}")
    sys.stderr.flush()


def _say_if_compiling() -> None:
    if note := load_kernels():
        sys.stderr.write(f"{note}\n")
