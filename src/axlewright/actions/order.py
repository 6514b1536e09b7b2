"""Order an axle: from a rig, its changes and a sheet to what adds up and what does not."""

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from axlewright.errors import AxlewrightError
from axlewright.rig import (
    Rig,
    changed_rig,
    load_change,
    load_order_sheet,
    load_rig,
    order_sheet_said,
    order_sheet_text,
)
from axlewright.swap import Order, ordered

AXLES: Final = ("front", "rear")


def order_file(
    path: str, changes: Sequence[str] = (), sheet: str = "", *, needs: bool = True
) -> tuple[Order, Rig]:
    """Lay out the order for a rig file after changes, over a sheet file where there is one.

    Raises `AxlewrightError` with what has to be put right.
    """
    rig = load_rig(path)
    for change in changes:
        rig, _ = changed_rig(rig, load_change(change))
    said = load_order_sheet(sheet, rig.axle) if sheet else order_sheet_said({}, rig.axle)
    return ordered(said, rig, needs=needs), rig


def order_alone(sheet: str, axle: str = "front") -> Order:
    """Check a sheet by itself, as a shop does with one that came by mail."""
    if axle not in AXLES:
        raise AxlewrightError(f"There is no {axle!r} axle.", remedy="Say front or rear.")
    return ordered(load_order_sheet(sheet, axle))


def blank_order(axle: str = "front") -> Order:
    """Give a sheet with nothing on it."""
    if axle not in AXLES:
        raise AxlewrightError(f"There is no {axle!r} axle.", remedy="Say front or rear.")
    return ordered(order_sheet_said({}, axle))


def write_order(
    order: Order,
    path: Path,
    system: str = "metric",
    stop_lines: Sequence[str] = (),
    *,
    blank: bool = False,
) -> None:
    """Typeset a sheet; an old file stays whole until the new one is."""
    from axlewright.actions.report import written

    written(order_pdf(order, system, stop_lines, blank=blank), path)


def order_pdf(
    order: Order,
    system: str = "metric",
    stop_lines: Sequence[str] = (),
    *,
    blank: bool = False,
) -> bytes:
    """Give a sheet as PDF, what says STOP before it."""
    from axlewright.report import order_paper
    from axlewright.views import order_data

    return order_paper(order_data(order, system, stop_lines, blank=blank))


def order_draft(rig: Rig) -> str:
    """Text of a sheet file with what a rig tells already filled in, to be finished by hand."""
    known = {row.field.key: row.filled for row in ordered(order_sheet_said({}, rig.axle), rig).rows}
    said = {
        key: _text(each.value, key)
        for key, each in known.items()
        if each is not None and each.holds
    }
    return order_sheet_text(order_sheet_said(said, rig.axle))


def _text(value: float | str, key: str) -> str:
    from axlewright.tables import order_fields
    from axlewright.units import show

    if isinstance(value, str):
        return value
    kind = order_fields()[key].kind
    if kind == "count":
        return f"{value:.0f}"
    if kind == "plain":
        return f"{value:.5g}"
    if kind == "offset":
        return f"ET {show(value, 'length', 'mm', 4)}"
    return show(value, kind, "metric", 4)
