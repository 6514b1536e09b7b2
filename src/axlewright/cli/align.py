"""`axlewright align`: from tape readings to what to turn."""

import json
import shutil
import sys
from pathlib import Path
from typing import Annotated, Literal

from cyclopts import Parameter

from axlewright.cli.options import STOPPED, Json, Units
from axlewright.cli.quick import load_kernels
from axlewright.errors import AxlewrightError


def align(
    rig: Path,
    *,
    readings: Path | None = None,
    front: Annotated[list[str] | None, Parameter(negative="")] = None,
    rear: Annotated[list[str] | None, Parameter(negative="")] = None,
    at: str | None = None,
    with_: Annotated[str | None, Parameter(name="--with")] = None,
    rod: Literal["ahead", "behind"] | None = None,
    thread: str | None = None,
    arm: str | None = None,
    reading: Annotated[list[str] | None, Parameter(negative="")] = None,
    json_: Json = False,
    report: Path | None = None,
    sheet: Path | None = None,
    units: Units = "metric",
) -> int:
    """Say how an axle stands, what to turn, which way and how far.

    Ride height, play, square and in the middle, caster, toe, steering wheel: in this order.

    Parameters
    ----------
    rig
        The rig file.
    readings
        A file of readings; what is typed beside it counts before it.
    front
        Between the tyres' marks in front of the axle; again for each reading.
    rear
        Between the tyres' marks behind the axle; again for each reading.
    at
        The diameter at which the marks were.
    with_
        What toe was read with: tape, tape_coarse, straightedge, string or toe_bar.
    rod
        Where the tie rod lies.
    thread
        Thread of the tie rod's adjuster, as in 7/8-18 or M22x1.5.
    arm
        Length of the steering arm that the tie rod pulls.
    reading
        Any other reading by its name, as in caster.left.out=2.6deg; may be given again.
    json_
        Write JSON, in SI.
    report
        Write the worksheet and a brief for the alignment shop to this PDF file as well.
    sheet
        Write an empty worksheet to this PDF file, to be filled in by hand, and judge nothing.
    units
        The reader's units.
    """
    if note := load_kernels():
        sys.stderr.write(f"{note}\n")
    from axlewright.actions import align_file, write_align

    ahead = {"ahead": "yes", "behind": "no"}
    said = {
        "toe.front": front or [],
        "toe.rear": rear or [],
        "toe.diameter": [at] if at is not None else [],
        "toe.with": [with_] if with_ is not None else [],
        "tie_rod.ahead": [ahead[rod]] if rod is not None else [],
        "tie_rod.thread": [thread] if thread is not None else [],
        "tie_rod.arm": [arm] if arm is not None else [],
    }
    said = {path: texts for path, texts in said.items() if texts}
    for one in reading or []:
        path, found, text = one.partition("=")
        if not found:
            raise AxlewrightError(
                f"--reading {one!r} has no =.", remedy='Write it as in "camber.left=-0.3 deg".'
            )
        said.setdefault(path.strip(), []).append(text.strip())
    answer = align_file(str(rig), None if readings is None else str(readings), said)
    if sheet is not None:
        write_align(answer, sheet, units, blank=True)
        sys.stdout.write(f"Worksheet to fill in by hand: {sheet}\n")
        return STOPPED if answer.stops else 0
    if json_:
        from axlewright.views import align_json

        sys.stdout.write(json.dumps(align_json(answer), indent=2, allow_nan=False) + "\n")
    else:
        from axlewright.views import align_lines, folded

        width = max(60, shutil.get_terminal_size((100, 24)).columns)
        sys.stdout.write("\n".join(folded(align_lines(answer, units, width), width)) + "\n")
    if report is not None:
        write_align(answer, report, units)
        sys.stderr.write(f"report: {report}\n")
    return STOPPED if answer.stops else 0
