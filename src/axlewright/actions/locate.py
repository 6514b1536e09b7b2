"""Where is it bent or worn: from readings as a garage writes them to shares over causes."""

import re
from collections.abc import Mapping

from axlewright import units
from axlewright.errors import BadQuantity, UnknownEntry
from axlewright.physics import steering
from axlewright.rig import Rig
from axlewright.tables import LocatorReading, locator_readings
from axlewright.upkeep import Evidence, Located, Taken, located

_THERE = {"yes": True, "y": True, "true": True, "no": False, "n": False, "false": False}
_SIDES = ("left", "right")


def locate_rig(
    rig: Rig,
    readings: Mapping[str, str],
    *,
    after_hit: bool = False,
    floor_mapped: bool = False,
) -> Located:
    """Shares over everything that can be bent or worn, for readings by name.

    A number may be repeated with ";" between, and may carry its own "±"; a sign is yes or no;
    "don't know" counts as not read. Raises `UnknownEntry` or `BadQuantity`.
    """
    told = evidence_of(rig, readings, after_hit=after_hit, floor_mapped=floor_mapped)
    return located(rig, told)


def evidence_of(
    rig: Rig,
    readings: Mapping[str, str],
    *,
    after_hit: bool = False,
    floor_mapped: bool = False,
    taken: Mapping[str, Taken] | None = None,
    seen: Mapping[str, bool] | None = None,
) -> Evidence:
    """Evidence out of readings by name, beside ``taken`` and ``seen`` that are known already."""
    taken, seen = dict(taken or {}), dict(seen or {})
    for name, text in readings.items():
        key, row = _reading(rig, name)
        if key in taken or key in seen:
            raise BadQuantity(
                f"{name!r} is given twice.", remedy='Put ";" between repeats of one reading.'
            )
        if row.kind == "sign":
            there = _there(name, text)
            if there is not None:
                seen[key] = there
        elif (number := _number(rig, row, text)) is not None:
            taken[key] = number
    return Evidence(taken=taken, seen=seen, after_hit=after_hit, floor_mapped=floor_mapped)


def reading_names(axle: str) -> tuple[str, ...]:
    """Names of everything that can be read on a front or rear axle."""
    return tuple(_known(axle))


def _known(axle: str) -> dict[str, LocatorReading]:
    return {
        key: row
        for row in locator_readings().values()
        if row.axle in {axle, "both"}
        for key in ([f"{row.key}_{side}" for side in _SIDES] if row.each else [row.key])
    }


def _reading(rig: Rig, name: str) -> tuple[str, LocatorReading]:
    known = _known(rig.axle)
    key = re.sub(r"[\s.\-_]+", "_", name.strip().casefold())
    if key in known:
        return key, known[key]
    sided = [f"{key}_{side}" for side in _SIDES if f"{key}_{side}" in known]
    if sided:
        problem = f"{name!r} does not say which side."
        raise UnknownEntry(problem, remedy=f"Write {' or '.join(sided)}: the vehicle's own sides.")
    from difflib import get_close_matches

    near = get_close_matches(key, known, n=3, cutoff=0.5) or list(known)
    problem = f"no reading of a {rig.axle} axle is called {name!r}."
    raise UnknownEntry(problem, remedy=f"There is {', '.join(near)}.")


def _there(name: str, text: str) -> bool | None:
    word = text.strip().casefold()
    if word in _THERE:
        return _THERE[word]
    remedy = "Write yes, no or don't know."
    try:
        if units.parse(text, "count").dont_know:
            return None
    except BadQuantity:
        pass
    raise BadQuantity(f"{text!r} is no answer to {name!r}.", remedy=remedy)


def _number(rig: Rig, row: LocatorReading, text: str) -> Taken | None:
    values, own = [], []
    for part in text.split(";"):
        parsed = _parsed(rig, row, part)
        if parsed is None:
            continue
        value, doubt = parsed
        values.append(value)
        own.append(doubt)
    if not values:
        return None
    stated = [doubt for doubt in own if doubt is not None]
    return Taken(values=tuple(values), give_or_take=max(stated) if stated else None)


def _parsed(rig: Rig, row: LocatorReading, text: str) -> tuple[float, float | None] | None:
    """Value and its "±" in SI; toe may be a length at the tyre's own diameter."""
    turned = 1.0
    try:
        read = units.parse(text, row.kind)
    except BadQuantity:
        if row.key != "toe_change":
            raise
        read = units.parse(text, "length")
        turned = float(steering.toe_angle(read.value, rig.tyre.outer_diameter)) / (
            read.value or 1.0
        )
    if read.dont_know:
        return None
    doubt = read.uncertainty
    if read.band is not None:
        doubt = 0.5 * (read.band[1] - read.band[0])
    return read.value * turned, None if doubt is None else doubt * turned
