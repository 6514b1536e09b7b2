"""One file to take along: a page for a phone, and the same on paper."""

import datetime as dt
from collections.abc import Collection
from pathlib import Path

from axlewright.actions.report import written
from axlewright.strength import Assessment


def take_html(
    assessment: Assessment,
    system: str = "metric",
    made: dt.date | None = None,
    met: Collection[str] | None = None,
) -> bytes:
    """One self-contained HTML file of an assessment; ``made`` is its date, today by default.

    ``met`` is the ground of the last trips, where they are on record.
    """
    from axlewright.report import take_page
    from axlewright.views import take_data

    return take_page(take_data(assessment, made or _today(), system, met))


def take_pdf(
    assessment: Assessment,
    system: str = "metric",
    made: dt.date | None = None,
    met: Collection[str] | None = None,
) -> bytes:
    """Give the same as PDF, with lines to write on."""
    from axlewright.report import take_paper
    from axlewright.views import take_data

    return take_paper(take_data(assessment, made or _today(), system, met))


def write_take(
    assessment: Assessment, page: Path | None, paper: Path | None, system: str = "metric"
) -> None:
    """Put page and paper on disk; an old file stays whole until the new one is."""
    if page is not None:
        written(take_html(assessment, system), page)
    if paper is not None:
        written(take_pdf(assessment, system), paper)


def _today() -> dt.date:
    return dt.datetime.now().astimezone().date()
