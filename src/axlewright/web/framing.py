"""What every page of one axle is given: its name, and what stands before everything else."""

from axlewright.actions import Bay, Draft
from axlewright.rig import findings, stops
from axlewright.upkeep import Drive
from axlewright.views import drive_lines, stop_words


def framed(
    slug: str, draft: Draft, bay: Bay | None = None, drive: Drive | None = None
) -> dict[str, object]:
    """Give the parts of a page about one axle that `base.html` and the STOP band need.

    With the bay, or the answer itself, the band says what looks, readings and a shake stop too.
    """
    if drive is None and bay is not None:
        drive = bay.log().drive(slug)
    if drive is not None:
        told = stop_words(drive)
    else:
        found = stops(findings(draft.condition_rig()))
        told = tuple(drive_lines(found)) if found else ()
    return {"slug": slug, "axle_title": f"{draft.name}, {draft.axle} axle", "stops": told}
