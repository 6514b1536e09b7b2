"""One file to take along: a page for a phone, and the same on paper."""

import datetime as dt
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from axlewright.actions.carry import carrying_of
from axlewright.actions.report import written
from axlewright.strength import Assessment
from axlewright.upkeep import Carrying

if TYPE_CHECKING:
    from axlewright.views import TakeData


def take_html(
    assessment: Assessment,
    system: str = "metric",
    made: dt.date | None = None,
    carrying: Carrying | None = None,
    met: Collection[str] | None = None,
) -> bytes:
    """One self-contained HTML file of an assessment; ``made`` is its date, today by default.

    Spares are those of ``carrying``, else of a usual trip by the figures alone; ``met`` is the
    ground of the last trips, where they are on record.
    """
    from axlewright.report import take_page

    return take_page(_data(assessment, system, made, carrying, met))


def take_pdf(
    assessment: Assessment,
    system: str = "metric",
    made: dt.date | None = None,
    carrying: Carrying | None = None,
    met: Collection[str] | None = None,
) -> bytes:
    """Give the same as PDF, with lines to write on."""
    from axlewright.report import take_paper

    return take_paper(_data(assessment, system, made, carrying, met))


def write_take(
    assessment: Assessment,
    page: Path | None,
    paper: Path | None,
    system: str = "metric",
    said: Mapping[str, str] | None = None,
) -> None:
    """Put page and paper on disk, for a trip that is told in words."""
    carrying = carrying_of(assessment, said)
    if page is not None:
        written(take_html(assessment, system, carrying=carrying), page)
    if paper is not None:
        written(take_pdf(assessment, system, carrying=carrying), paper)


def _data(
    assessment: Assessment,
    system: str,
    made: dt.date | None,
    carrying: Carrying | None,
    met: Collection[str] | None,
) -> "TakeData":
    from axlewright.views import take_data

    told = carrying_of(assessment) if carrying is None else carrying
    return take_data(assessment, told, made or _today(), system, met)


def _today() -> dt.date:
    return dt.datetime.now().astimezone().date()
