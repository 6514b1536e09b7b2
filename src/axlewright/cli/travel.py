"""`axlewright travel`: what the axle does through its travel, and what puts it right."""

import json
import shutil
import sys
from pathlib import Path

from axlewright.cli.options import STOPPED, Changes, Json, Units, checked_draws
from axlewright.cli.quick import load_kernels
from axlewright.errors import AxlewrightError


def travel(
    rig: Path,
    *,
    with_: Changes = None,
    why: int | None = None,
    json_: Json = False,
    report: Path | None = None,
    sheet: Path | None = None,
    keep_cure: tuple[int, Path] | None = None,
    units: Units = "metric",
    draws: int = 256,
    seed: int | None = None,
) -> int:
    """Say what caster, pinion, steer and room do through the travel, and what puts them right.

    Parameters
    ----------
    rig
        The rig file.
    with_
        A change file; may be given more than once, changes follow one another.
    why
        Open this row, down to how it is worked out.
    json_
        Write JSON, in SI.
    report
        Write a typeset report to this PDF file as well.
    sheet
        Write the places to tape as a sheet to this PDF file, and study nothing.
    keep_cure
        Write a cure, by its number among those tried, as a change to this file as well.
    units
        The reader's units.
    draws
        How many times the doubt is drawn; 0 gives the middle alone.
    seed
        Seed of the draws.
    """
    if note := load_kernels():
        sys.stderr.write(f"{note}\n")
    if sheet is not None:
        from axlewright.actions import write_ends

        write_ends(str(rig), sheet, units)
        sys.stdout.write(f"Sheet of the places to tape: {sheet}\n")
        return 0
    from axlewright.actions import travel_file
    from axlewright.rig import SEED, findings, stops
    from axlewright.views import (
        drive_lines,
        driveline_lines,
        folded,
        room_why_lines,
        travel_json,
        travel_lines,
        travel_rows,
        travel_why_lines,
    )

    answer = travel_file(
        str(rig),
        [str(change) for change in with_ or []],
        draws=checked_draws(draws, 100_000),
        seed=SEED if seed is None else seed,
    )
    shown, line = answer.shown, answer.driveline
    halts = stops(findings(answer.before.rig))
    rows = [row.what for row in travel_rows(shown, units)]
    if why is not None and not 1 <= why <= len(rows) + 1:
        raise AxlewrightError(
            f"There is no row {why}.",
            remedy=f"Give a number from 1 to {len(rows)}, or {len(rows) + 1} for the room under "
            "the axle.",
        )
    if json_:
        told = json.dumps(travel_json(answer.before, answer.after, line), indent=2, allow_nan=False)
    else:
        width = max(60, shutil.get_terminal_size((100, 24)).columns)
        if why is None:
            lines = travel_lines(answer.before, answer.after, units, width, line)
        elif why > len(rows):
            lines = room_why_lines(shown, units)
        else:
            lines = travel_why_lines(shown, why, units)
            if rows[why - 1].startswith("pinion"):
                lines += driveline_lines(line, units)
        if why is not None and halts:
            lines = [*drive_lines(halts), *lines]
        told = "\n".join(folded(lines, width))
    sys.stdout.write(f"{told}\n")
    if report is not None:
        from axlewright.actions import write_travel

        write_travel(answer, report, units)
        sys.stderr.write(f"report: {report}\n")
    if keep_cure is not None:
        from axlewright.actions import write_cure

        number, kept = keep_cure
        write_cure(answer.shown, number, kept, units)
        sys.stderr.write(f"change: {kept}\n")
    return STOPPED if halts else 0
