"""How far a rig drives in a year, and where that number comes from, in words."""

from axlewright.decide import KM_A_YEAR, Decision, Yearly
from axlewright.views.phrases import quantity, span

WIDE = "The shorter the record, the wider."


def yearly_line(decision: Decision, system: str = "metric") -> str:
    """The distance a year on the hardest ground, and whether it is said, on record or usual."""
    terms, hardest = decision.terms, decision.rig.words["use.hardest"]
    key = KM_A_YEAR if KM_A_YEAR in terms.bands else f"{KM_A_YEAR}.{hardest.replace(' ', '_')}"
    band = terms.band(key)
    far = span(1e3 * band.low, 1e3 * band.high, "distance", system, 2)
    return f"Distance a year on {hardest}: {far}, {_whence(decision, system)}"


def yearly_from(decision: Decision) -> str:
    """Where the distance a year comes from: you, record, or usual."""
    if decision.yearly is not None:
        return "record"
    return "you" if KM_A_YEAR in decision.terms.own else "usual"


def _whence(decision: Decision, system: str) -> str:
    found = decision.yearly
    if found is None:
        if KM_A_YEAR in decision.terms.own:
            return "as you said."
        return (
            "a usual figure from memory. Three trips over two months in its record, or your own "
            "figure, take its place."
        )
    went = quantity(found.odometer, "distance", system, 2)
    if found.by == "limit":
        return (
            f"the usual figure, cut to what its odometer went: {went} in {_long(found)}, on every "
            "road. Trips with their ground would tell more."
        )
    trips = f"{found.trips} trips"
    on_it = quantity(found.on_it, "distance", system, 3)
    if found.by == "odometer":
        return (
            f"from its record: the odometer went {went} in {_long(found)}, and {trips} say how "
            f"much of that is on it. {WIDE}"
        )
    return f"from its record: {trips} after the first, {on_it} of it in {_long(found)}. {WIDE}"


def _long(found: Yearly) -> str:
    months = found.days / 30.44
    return f"{months:.0f} months"
