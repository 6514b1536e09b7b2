"""`axlewright plan`: the swap as a job: steps in order, hands, torques, gates."""

import json
import shutil
import sys
from pathlib import Path
from typing import Annotated, Literal

from cyclopts import Parameter

from axlewright.cli.options import STOPPED, Changes, Json, Units
from axlewright.errors import AxlewrightError


def plan(
    rig: Path,
    *,
    with_: Changes = None,
    people: int = 2,
    skill: Literal["practised", "first-timer"] = "practised",
    kind: str = "",
    say: Annotated[list[str] | None, Parameter(negative="")] = None,
    value: Annotated[list[str] | None, Parameter(negative="")] = None,
    bolt: Annotated[list[str] | None, Parameter(negative="")] = None,
    why: int | None = None,
    json_: Json = False,
    report: Path | None = None,
    units: Units = "metric",
) -> int:
    """Plan a swap: every step with its caution, in a good order for one, two or three people.

    Parameters
    ----------
    rig
        The rig file.
    with_
        A change file; may be given more than once, changes follow one another.
    people
        How many pairs of hands: 1, 2 or 3.
    skill
        How often you did this before.
    kind
        Kind of work, where the change does not tell it: bare housing, part-built housing, geared
        axle, gears, brackets, shafts, springs or wheels.
    say
        An answer to what is assumed, as in sensors=no; may be given again.
    value
        A torque line filled in, as in wheel_nuts="150 N m, manual 4-12"; may be given again.
    bolt
        The bolt that you read on a line, as in arm_axle="M16x2 12.9"; may be given again.
    why
        Open this step, down to its caution.
    json_
        Write JSON, in SI.
    report
        Write the job sheets to this PDF file as well.
    units
        The reader's units.
    """
    from axlewright.actions import plan_file
    from axlewright.views import folded, plan_json, plan_lines, plan_step_lines

    answer = plan_file(
        str(rig),
        [str(change) for change in with_ or []],
        people=people,
        skill=skill,
        said=_pairs(say or [], "sensors=no"),
        kind=kind,
        values=_pairs(value or [], 'wheel_nuts="150 N m, manual 4-12"'),
        bolts=_pairs(bolt or [], 'arm_axle="M16x2 12.9"'),
    )
    if json_:
        made = plan_json(answer.plan, answer.progress, answer.stops)
        told = json.dumps(made, indent=2, ensure_ascii=False, allow_nan=False)
    else:
        width = max(60, shutil.get_terminal_size((100, 24)).columns)
        if why is None:
            lines = plan_lines(answer.plan, units, answer.stops, answer.progress)
        else:
            step = plan_step_lines(answer.plan, why, units, answer.progress)
            lines = [*answer.stops, *step]
        told = "\n".join(folded(lines, width))
    sys.stdout.write(f"{told}\n")
    if report is not None:
        from axlewright.actions import write_plan

        write_plan(answer, report, units)
        sys.stderr.write(f"report: {report}\n")
    return STOPPED if answer.stops else 0


def _pairs(given: list[str], example: str) -> dict[str, str]:
    found = {}
    for each in given:
        name, sign, word = each.partition("=")
        if not sign or not name.strip():
            raise AxlewrightError(f"{each[:60]!r} is no answer.", remedy=f"As in {example}.")
        found[name.strip()] = word.strip().strip('"')
    return found
