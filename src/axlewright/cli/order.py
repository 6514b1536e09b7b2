"""`axlewright order`: the order sheet of a replacement axle, filled, checked, and blank."""

import json
import shutil
import sys
from pathlib import Path
from typing import Annotated, Literal

from cyclopts import Parameter

from axlewright.cli.options import STOPPED, Changes, Json, Units
from axlewright.cli.quick import load_kernels
from axlewright.errors import AxlewrightError


def order(
    rig: Path | None = None,
    *,
    with_: Changes = None,
    sheet: Path | None = None,
    every: Annotated[bool, Parameter(negative="")] = False,
    begin: Path | None = None,
    blank: Path | None = None,
    axle: Literal["front", "rear"] = "front",
    json_: Json = False,
    report: Path | None = None,
    units: Units = "metric",
) -> int:
    """Fill an order sheet from a rig and check it before metal is cut.

    Parameters
    ----------
    rig
        The rig file; without one a sheet is checked by itself.
    with_
        A change file; may be given more than once, changes follow one another.
    sheet
        The order sheet, a file; what it says goes before what the rig tells.
    every
        Tell of each field why it is asked, how it is measured and what it is tried against.
    begin
        Write a sheet with what the rig tells already to this new file, to be finished by hand.
    blank
        Write the blank intake sheet, for the mail, to this PDF file.
    axle
        Which axle, where no rig says it.
    json_
        Write JSON, in SI.
    report
        Write the sheet as typeset paper to this PDF file as well.
    units
        The reader's units.
    """
    from axlewright.actions import (
        blank_order,
        order_alone,
        order_draft,
        order_file,
        rig_stop_lines,
        write_order,
    )
    from axlewright.views import folded, order_json, order_lines

    if blank is not None:
        write_order(blank_order(axle), blank, units, blank=True)
        sys.stderr.write(f"intake sheet: {blank}\n")
        if rig is None and sheet is None:
            return 0
    if rig is None and sheet is None:
        raise AxlewrightError("There is nothing to order from.", remedy="Give RIG or --sheet FILE.")
    stop_lines: tuple[str, ...] = ()
    if rig is None:
        made = order_alone(str(sheet), axle)
    else:
        if note := load_kernels():
            sys.stderr.write(f"{note}\n")
        changes = [str(change) for change in with_ or []]
        made, whole = order_file(str(rig), changes, str(sheet) if sheet else "")
        stop_lines = rig_stop_lines(whole)
        if begin is not None:
            if begin.exists():
                raise AxlewrightError(f"{begin} is there already.", remedy="Give a new name.")
            begin.write_text(order_draft(whole), encoding="utf-8")
            sys.stderr.write(f"sheet begun: {begin}\n")
    if json_:
        told = json.dumps(order_json(made, stop_lines), indent=2, allow_nan=False)
    else:
        width = max(60, shutil.get_terminal_size((100, 24)).columns)
        lines = [*stop_lines, *order_lines(made, units, every=every)]
        told = "\n".join(folded(lines, width))
    sys.stdout.write(f"{told}\n")
    if report is not None:
        write_order(made, report, units, stop_lines)
        sys.stderr.write(f"report: {report}\n")
    return STOPPED if stop_lines else 0
