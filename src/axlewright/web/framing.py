"""What every page of one axle is given: its name, and what stands before everything else."""

from axlewright.actions import Bay, Draft
from axlewright.upkeep import Drive
from axlewright.views import stop_words


def framed(slug: str, draft: Draft, bay: Bay, drive: Drive | None = None) -> dict[str, object]:
    """Give the parts of a page about one axle that `base.html` and the STOP band need.

    The band says what conditions, looks, readings and a shake stop; ``drive`` where it is known.
    """
    told = stop_words(bay.log().drive(slug) if drive is None else drive)
    return {"slug": slug, "axle_title": f"{draft.name}, {draft.axle} axle", "stops": told}
