"""What every page of one axle is given: its name, and what stands before everything else."""

from axlewright.actions import Draft
from axlewright.rig import findings, stops
from axlewright.views import drive_lines


def framed(slug: str, draft: Draft) -> dict[str, object]:
    """Give the parts of a page about one axle that `base.html` and the STOP band need."""
    found = stops(findings(draft.condition_rig()))
    return {
        "slug": slug,
        "axle_title": f"{draft.name}, {draft.axle} axle",
        "stops": tuple(drive_lines(found)) if found else (),
    }
