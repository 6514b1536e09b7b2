"""Which tyre the axle can carry, at which duty, as rows of words."""

from collections.abc import Sequence

from axlewright.decide import Carried
from axlewright.tables import duties
from axlewright.views.phrases import kind_name, quantity

TYRE_GRID_NOTE = (
    "Carries: at the unkind end of nine draws in ten. A part that steers or holds a wheel says no "
    "already where it cannot be told. Without the rig's past. Not judged: brakes, room for the "
    "tyre, gearing. Bigger tyres ask more of the brakes: the lever at the ground is longer."
)


def tyre_rows(grid: Sequence[Carried]) -> tuple[tuple[str, ...], ...]:
    """A heading, then one row a tyre: the verdict at each duty with the part that objects."""
    by_tyre: dict[str, list[Carried]] = {}
    for each in grid:
        by_tyre.setdefault(each.tyre, []).append(each)
    heading = ("tyre", *(entry.words.lower() for entry in duties().values()))
    rows = [(tyre, *(verdict_words(each) for each in found)) for tyre, found in by_tyre.items()]
    return (heading, *rows)


def verdict_words(carried: Carried) -> str:
    """One verdict with the name of the part that objects."""
    if carried.verdict == "not judged":
        return f"not judged: {carried.why}" if carried.why else "not judged"
    if carried.verdict == "carries":
        return "carries it"
    part = "the tyre's own load index" if carried.part == "tyre" else kind_name(carried.part)
    return f"{carried.verdict}: {part}"


def still_line(still: tuple[float, str, str] | None, system: str = "metric") -> str:
    """Which lighter rig this axle would still carry, for whoever buys it."""
    if still is None:
        return (
            "Which lighter rig it would still carry: none down to six tenths of this weight, on "
            "the "
            "smallest usual tyre and forest roads, at the unkind end."
        )
    weight, tyre, duty = still
    return (
        f"It would still carry a rig with up to {quantity(weight, 'weight', system, 2)} on this "
        f"axle, on {tyre} and {duty.replace('_', ' ')}, at the unkind end."
    )
