"""`axlewright take`: one file to take along."""

import sys
from pathlib import Path
from typing import Annotated

from cyclopts import Parameter

from axlewright.cli.options import STOPPED, Units, checked_draws


def take(
    rig: Path,
    *,
    out: Annotated[Path | None, Parameter(name=["--out", "-o"])] = None,
    pdf: Path | None = None,
    days: str = "",
    people: str = "",
    mass: str = "",
    far: str = "",
    ground: str = "",
    units: Units = "metric",
    draws: int = 1000,
    seed: int | None = None,
) -> int:
    """Write one file for the phone: stop list, looks after a hit, torque lines, spares, cards.

    Parameters
    ----------
    rig
        The rig file.
    out
        The HTML file; the rig file's name with the ending .take.html, in this folder, by default.
    pdf
        Write the same as paper to this PDF file as well.
    days
        How many days the trip is; its spares are chosen for it.
    people
        How many go along.
    mass
        What all spares and tools may weigh.
    far
        How far from help at the farthest; the rig file's own where it is left out.
    ground
        Hardest ground of the trip; this owner's use where it is left out.
    units
        The reader's units.
    draws
        How many times the doubt is drawn; 0 gives the middle alone.
    seed
        Seed of the draws.
    """
    from axlewright.physics.compiled import cache_note

    if note := cache_note():
        sys.stderr.write(f"{note}\n")
    from axlewright.actions import assess_file, write_take
    from axlewright.rig import SEED
    from axlewright.strength import Comparison

    answer = assess_file(str(rig), draws=checked_draws(draws), seed=SEED if seed is None else seed)
    shown = answer.before if isinstance(answer, Comparison) else answer
    page = out if out is not None else Path(rig.name).with_suffix(".take.html")
    trip = {"days": days, "people": people, "mass": mass, "far": far, "ground": ground}
    write_take(shown, page, pdf, units, trip)
    sys.stdout.write(f"{page}: one file, opens without a network.\n")
    if pdf is not None:
        sys.stdout.write(f"{pdf}: the same on paper.\n")
    for stop in shown.stops:
        sys.stdout.write(f"STOP: {stop.part}, {stop.what}. Do not drive.\n")
    return STOPPED if shown.stops else 0
