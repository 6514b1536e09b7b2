"""`axlewright log carry` and `log pack`: what to carry for a trip, and what of it is packed."""

from pathlib import Path
from typing import Literal

from axlewright.cli.log import NOTHING, NOWHERE, Entry, Where, _entered, _opened, app
from axlewright.cli.options import STOPPED, checked_draws


@app.command
def carry(
    rig: str,
    *,
    days: str = "",
    people: str = "",
    mass: str = "",
    far: str = "",
    ground: str = "",
    distance: str = "",
    cards: bool = False,
    report: Path | None = None,
    draws: int = 1000,
    where: Where = NOWHERE,
) -> int:
    """Say what to carry for a trip: the least set, and the rest by hours saved for its mass.

    Parameters
    ----------
    days
        How many days; what is left out comes from the trip that was last packed for.
    people
        How many go along.
    mass
        What all spares and tools may weigh.
    far
        How far from help at the farthest.
    ground
        Hardest ground of the trip; this owner's use where it is left out.
    distance
        How far in all, if it is known.
    cards
        Show the repair cards as well.
    report
        Write packing list and repair cards to this PDF file as well.
    draws
        How many times the doubt is drawn; 0 gives the middle alone.
    """
    import json
    import sys

    from axlewright.actions import carrying, write_carry
    from axlewright.cli.quick import load_kernels
    from axlewright.views import card_lines, carry_data, carry_json, carry_lines

    said = {"days": days, "people": people, "mass": mass, "far": far}
    said |= {"ground": ground, "distance": distance}
    if note := load_kernels():
        sys.stderr.write(f"{note}\n")
    with _opened(where) as log:
        told = carrying(log, log.rig(rig), said, draws=checked_draws(draws))
        if where.json_:
            answer = json.dumps(carry_json(told), indent=2, ensure_ascii=False, allow_nan=False)
            sys.stdout.write(f"{answer}\n")
        else:
            data = carry_data(told, where.units)
            lines = [*carry_lines(data), *(card_lines(data.cards) if cards else [])]
            sys.stdout.write("\n".join(lines) + "\n")
        if report is not None:
            write_carry(told, report, where.units)
            sys.stderr.write(f"report: {report}\n")
        return STOPPED if told.stops else 0


@app.command
def pack(
    rig: str,
    spare: str,
    state: Literal["packed", "missing", "not said"] = "packed",
    *,
    lies: str = "",
    entry: Entry = NOTHING,
) -> int:
    """Tick one line of the packing list, and say where it lies.

    Parameters
    ----------
    spare
        Which, as `log carry` names it.
    state
        Packed, missing, or not said.
    lies
        Where it lies.
    """
    from axlewright.actions import tick
    from axlewright.upkeep import Ticked

    with _opened(entry) as log:
        slug = log.rig(rig)
        number = tick(log, slug, {spare: Ticked(state=state, lies=lies)}, **entry.said())
        return _entered(log, slug, number, entry) if number else 0
