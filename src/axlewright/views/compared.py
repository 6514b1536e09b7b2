"""A rig before and after changes: what moved, what it weighs, what went and what stayed."""

from collections.abc import Sequence
from math import degrees, isfinite
from typing import Any

from axlewright.rig import Column, stays_behind
from axlewright.strength import (
    Assessment,
    Comparison,
    Place,
    WearPlace,
    above_tubes,
    housing_mass,
    hub_lives,
    lowest_point,
)
from axlewright.tables import limit
from axlewright.views.phrases import kind_name, plain, quantity, several, short_name

MOST_BETTER, MOST_LATER = 6, 2
LESS, MORE = 0.97, 1.03  # smaller changes of a margin are not told
SOONER, LATER = 0.8, 1.25  # smaller changes of a coarse life are not told
LEAST_MASS, LEAST_ROOM = 0.05, 0.0005  # kg and m; less is not told
NO_SCALE = {  # words of a change and what of it no geometry here weighs
    "forging.gussets": "gussets",
    "brackets.plated": "bracket plates",
    "cover.heavy": "the cover",
}
OUT_OF_REACH = 1e9


def worse_and_better(comparison: Comparison, system: str = "metric") -> tuple[list[str], list[str]]:
    """What got worse, all of it, and what got better, the most of it; the largest first.

    Strength first, then wear, then mass and room.
    """
    before = {place.kind: place for place in comparison.before.order}
    moved = []
    for now in comparison.after.order:
        was = before.get(now.kind)
        if was is not None and (isfinite(was.margin) or isfinite(now.margin)):
            moved.append((_ratio(was, now), now))
    moved.sort(key=lambda pair: pair[0])
    worse = [_moved(*pair) for pair in moved if pair[0] < LESS]
    better = [_moved(*pair) for pair in reversed(moved) if pair[0] > MORE]
    sooner, later = _lives_moved(comparison)
    rest = len(better) - MOST_BETTER
    more = [f"and {rest} more parts a little"] if rest > 0 else []
    loss, gain = _mass_and_room(comparison, system)
    return worse + sooner + loss, better[:MOST_BETTER] + more + later[:MOST_LATER] + gain


def _mass_and_room(comparison: Comparison, system: str) -> tuple[list[str], list[str]]:
    """Mass, the lowest point and the room above the tubes: what was lost, and what gained."""
    before, after = comparison.before.columns, comparison.after.columns
    mass, drop, over = (
        float((of(after) - of(before))[0]) for of in (housing_mass, lowest_point, above_tubes)
    )
    loss: list[str] = []
    gain: list[str] = []
    if abs(mass) > LEAST_MASS:
        told = quantity(abs(mass), "mass", system, 2)
        (loss if mass > 0.0 else gain).append(
            f"mass that no spring carries: {told} {'more' if mass > 0.0 else 'less'}"
        )
    if abs(drop) >= LEAST_ROOM:
        told = quantity(abs(drop), "length", system, 2)
        (gain if drop > 0.0 else loss).append(
            f"room under the centre: {told} {'more' if drop > 0.0 else 'less'}"
        )
    if abs(over) >= LEAST_ROOM:
        told = quantity(abs(over), "length", system, 2)
        (loss if over > 0.0 else gain).append(
            f"room over the tubes: {told} {'less' if over > 0.0 else 'more'}"
        )
    return loss, gain


def bulk_lines(comparison: Comparison, system: str) -> list[str]:
    """Mass like for like, by geometry and by the scale, and how low the centre hangs."""
    before, after = comparison.before.columns, comparison.after.columns
    mass = float((housing_mass(after) - housing_mass(before))[0])
    drop = float((lowest_point(after) - lowest_point(before))[0])
    told = "no change of mass in tubes, sleeves and truss"
    if abs(mass) > LEAST_MASS:
        sense = "more" if mass > 0.0 else "less"
        told = f"{quantity(abs(mass), 'mass', system, 2)} {sense} in tubes, sleeves and truss"
    hangs = "as low as before"
    if abs(drop) >= LEAST_ROOM:
        sense = "higher" if drop > 0.0 else "lower"
        hangs = f"{quantity(abs(drop), 'length', system, 2)} {sense}"
    lines = [f"Mass and clearance: {told}; the centre hangs {hangs}."]
    old, new = (each.rig.given.get("axle_mass") for each in (comparison.before, comparison.after))
    if old is not None and new is not None and old != new:
        scale = [quantity(each.value, "mass", system, 3) for each in (old, new)]
        lines.append(f"On the scale, the whole axle: {scale[0]} before, {scale[1]} after.")
    elif _housings(comparison):
        lines.append(
            "Centre, end forgings and gears are not in that: weigh both axles with the same parts "
            "on them before comparing."
        )
    elif unweighed := _unweighed(comparison):
        lines.append(f"Not in that, since no scale saw them: {', '.join(unweighed)}.")
    return lines


def offset_lines(comparison: Comparison) -> list[str]:
    """What moving the wheels in or out does by itself to the worse row of a hub."""
    before, after = comparison.before, comparison.after
    moved = {name: after.columns[name] for name in ("wheel_offset", "wheel_spacer")}
    if all(float(moved[name][0]) == float(before.columns[name][0]) for name in moved):
        return []
    was = hub_lives(before.columns, before.rig.words)
    now = hub_lives({**before.columns, **moved}, before.rig.words)
    told = [f"{plain(float((now[how] / was[how])[0]), 2)} times {how}" for how in was]
    return [f"Where the wheels stand, by itself, makes a hub's worse row live {', '.join(told)}."]


def weld_lines(comparison: Comparison) -> list[str]:
    """What the heat of welding something on may do to a housing, and how to see it."""
    before, after = comparison.before, comparison.after
    if _housings(comparison) or not _welded(before, after):
        return []
    straight, bent = (
        f"{degrees(limit(key).high or 0.0):.1f}" for key in ("tube_angle_straight", "tube_angle")
    )
    return [
        (
            "Weld heat bends a housing, and that is in no sum here: by a qualified welder, in "
            "short runs on both sides in turn, the angle of both tubes before and after "
            f"({straight} deg apart is called straight, {bent} deg bent; one shop's opinion)."
        )
    ]


def _welded(before: Assessment, after: Assessment) -> bool:
    was, now = before.columns, after.columns
    grown = ("truss_height", "sleeve_wall_left", "sleeve_wall_right")
    if any(float(now[name][0]) > float(was[name][0]) for name in grown):
        return True
    words = ("forging.gussets", "brackets.plated")
    return any(_turned_on(before, after, name) for name in words)


def _turned_on(before: Assessment, after: Assessment, name: str) -> bool:
    return before.rig.words.get(name) != "yes" == after.rig.words.get(name)


def _unweighed(comparison: Comparison) -> list[str]:
    before, after = comparison.before, comparison.after
    out = [told for name, told in NO_SCALE.items() if _turned_on(before, after, name)]
    if before.rig.tyre != after.rig.tyre:
        out.append("tyres and wheels")
    if any(
        float(before.columns[name][0]) != float(after.columns[name][0])
        for name in ("inner_shaft", "cap_across")
        if name in before.columns and name in after.columns
    ):
        out.append("shafts and joints")
    return out


def change_json(comparison: Comparison) -> dict[str, Any]:
    """What a change did, in SI and in words; masses are of tubes, sleeves and truss."""
    before, after = comparison.before.columns, comparison.after.columns
    worse, better = worse_and_better(comparison)
    scale = [each.rig.given.get("axle_mass") for each in (comparison.before, comparison.after)]
    return {
        "worse": worse,
        "better": better,
        "mass": _moved_json(housing_mass(before), housing_mass(after), "kg"),
        "mass_on_the_scale": [None if each is None else each.value for each in scale],
        "lowest_point": _moved_json(lowest_point(before), lowest_point(after), "m"),
        "above_tubes": _moved_json(above_tubes(before), above_tubes(after), "m"),
        "cautions": weld_lines(comparison),
        "hub_by_offset_alone": offset_lines(comparison),
        "handed_on": [each for names in _housings(comparison) for each in stays_behind(names)],
    }


def _moved_json(before: Column, after: Column, unit: str) -> dict[str, Any]:
    return {"unit": unit, "before": float(before[0]), "after": float(after[0])}


def replaced_lines(comparison: Comparison) -> list[str]:
    """Readings that went with what was replaced, and what the old axle hands on."""
    lines = []
    if comparison.dropped:
        lines.append(f"Gone with what was replaced: {listed(comparison.dropped)}.")
    for names in _housings(comparison):
        stays = stays_behind(names)
        if stays:
            lines.append(
                f"Taken over from the old axle, for the change names none: {listed(stays)}."
            )
    return lines


def listed(items: Sequence[str]) -> str:
    """Items in a row, or "nothing"."""
    return "; ".join(items) if items else "nothing"


def _housings(comparison: Comparison) -> list[tuple[str, ...]]:
    steps = (step for change in comparison.changes for step in change.steps)
    return [step.names for step in steps if step.path == "housing"]


def _ratio(was: Place, now: Place) -> float:
    if not isfinite(now.margin):
        return OUT_OF_REACH
    return now.margin / max(was.margin, 1e-6) if isfinite(was.margin) else 0.0


def _moved(ratio: float, place: Place) -> str:
    name = short_name(place.part, place.side)
    takes, gives = ("take", "give") if several(place.part) else ("takes", "gives")
    if ratio == OUT_OF_REACH:
        return f"{name}: no longer in reach, in most draws"
    if ratio == 0.0:
        return f"{name}: now in reach, in most draws"
    if ratio >= 1.0:
        return f"{name}: {takes} a moment {100.0 * (ratio - 1.0):.0f} % harder"
    return f"{name}: {gives} in a moment {100.0 * (1.0 - ratio):.0f} % milder"


def _wears(place: WearPlace) -> str:
    return "wear" if several(place.part) else "wears"


def _lives_moved(comparison: Comparison) -> tuple[list[str], list[str]]:
    """Parts that wear out sooner, and later, by their middle lives; the most moved first."""
    before = {place.kind: place for place in comparison.before.wearing}
    moved: list[tuple[float, WearPlace]] = []
    for now in comparison.after.wearing:
        was = before.get(now.kind)
        if was is not None and isfinite(was.life) and isfinite(now.life) and was.life > 0.0:
            moved.append((now.life / was.life, now))
    moved.sort(key=lambda pair: pair[0])
    sooner = [
        f"{kind_name(place.kind)}: {_wears(place)} out after {100.0 * ratio:.0f} % of the distance"
        for ratio, place in moved
        if ratio < SOONER
    ]
    later = [
        f"{kind_name(place.kind)}: {_wears(place)} out after {plain(ratio, 2)} times the distance"
        for ratio, place in reversed(moved)
        if ratio > LATER
    ]
    return sooner, later
