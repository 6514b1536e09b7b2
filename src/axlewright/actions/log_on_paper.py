"""The log of an axle on paper: open findings, hits, welds and bends can never be left out."""

from collections.abc import Collection
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from axlewright.actions.log import Log


def log_sheet(
    log: "Log",
    slug: str,
    system: str = "metric",
    *,
    only: Collection[str] = (),
    latest: int | None = None,
) -> bytes:
    """Typeset a rig's log; ``only`` and ``latest`` choose among its entries, not among its graves.

    What is open, and every hit, weld and bend, is told of the whole log.
    """
    from axlewright.report import log_paper
    from axlewright.strength import assess_rig
    from axlewright.upkeep import driven
    from axlewright.views import broke_line, log_data, part_rows

    history = log.history(slug, replaced=True)
    still = log.history(slug)
    draft, rig = log.desk.standing(slug).draft, log.desk.rig(slug)
    broke = broke_line(None if rig is None else assess_rig(rig, draws=0), log.broke(slug))
    data = log_data(
        draft.name,
        draft.axle,
        history,
        log.history(slug, only, replaced=True, latest=latest),
        log.drive(slug),
        draft.conditions,
        driven(still),
        broke,
        part_rows(log.parts(slug), slug, system),
        log.readings(slug)[1],
        system,
    )
    return log_paper(data)


def write_log_sheet(
    log: "Log",
    slug: str,
    path: Path,
    system: str = "metric",
    *,
    only: Collection[str] = (),
    latest: int | None = None,
) -> None:
    """Write the paper; an old file stays whole until the new one is."""
    from axlewright.actions.report import written

    written(log_sheet(log, slug, system, only=only, latest=latest), path)
