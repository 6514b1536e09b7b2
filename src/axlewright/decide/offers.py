"""Changes to choose from, filled from the rig: what each sets, or why it does not go."""

import json
import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from typing import Final

from axlewright.errors import AxlewrightError, BadFile
from axlewright.rig import (
    FIELDS,
    Change,
    Columns,
    Condition,
    Rig,
    change_from_text,
    changed_rig,
    on_housing,
    parse_tyre,
    point_columns,
)
from axlewright.tables import Option, OptionStep, option_steps, option_tyres, options

BENT: Final = "its housing is bent, and this goes on straight tubes only: to the shop first"
SMALLER: Final = 0.97  # a tyre is a size down from here
WORKS_OFFSET: Final = 0.025  # m
ALIKE: Final = 0.02  # tyres this close in height are the same
QUANTITY: Final = {field.path: field.quantity for field in FIELDS}
KIND: Final = {field.path: field.kind for field in FIELDS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """One change as it would be made on this rig.

    ``rig`` is the rig after it; ``sets`` are the fields and their new values in words; ``refused``
    says why it does not go, and is empty where it does. ``change`` is None where nothing that is
    computed is set.
    """

    option: Option
    rig: Rig
    sets: tuple[tuple[str, str], ...] = ()
    change: Change | None = None
    text: str = ""
    dropped: tuple[str, ...] = ()
    refused: str = ""


class NotThisRigError(AxlewrightError):
    """A change that makes no sense on this rig, in words."""


def offers(rig: Rig) -> tuple[Offer, ...]:
    """Every change of the table, filled from this rig, in the table's order."""
    columns = point_columns(rig)
    return tuple(_offer(each, rig, columns) for each in options().values())


def _offer(option: Option, rig: Rig, columns: Columns) -> Offer:
    try:
        sets = _filled(option, rig, columns)
        if not sets:
            return Offer(option=option, rig=_renewed(rig) if option.housing_is_new else rig)
        text = change_text(option.label, sets, _housing_paths(option))
        change = change_from_text(text, f"{option.key}.toml")
        after, dropped = changed_rig(rig, change)
    except NotThisRigError as trouble:
        return Offer(option=option, rig=rig, refused=str(trouble))
    except BadFile as trouble:
        return Offer(option=option, rig=rig, refused=trouble.faults[0].problem)
    return Offer(
        option=option,
        rig=after,
        sets=tuple(sets.items()),
        change=change,
        text=text,
        dropped=dropped,
    )


def _filled(option: Option, rig: Rig, columns: Columns) -> dict[str, str]:
    _fits(option, rig, columns)
    sets: dict[str, str] = {}
    for step in _steps(option, rig.axle):
        sets |= _value(step, rig, columns)
    return sets


def _fits(option: Option, rig: Rig, columns: Columns) -> None:
    if option.axle not in {"both", rig.axle}:
        raise NotThisRigError(f"this belongs to a {option.axle} axle")
    path, _, wanted = option.only_if.partition("=")
    if path and rig.words.get(path, "") != wanted:
        raise NotThisRigError("it has this already")
    if option.needs_straight and said_bent(rig):
        raise NotThisRigError(BENT)
    sleeved = float(columns["sleeve_wall_left"][0]) > 0.0
    trussed = float(columns["truss_height"][0]) > 0.0
    if (option.key in {"sleeve", "stiffened"} and sleeved) or (
        option.key in {"truss", "stiffened"} and trussed
    ):
        raise NotThisRigError("it has this already")


def said_bent(rig: Rig) -> bool:
    """Whether somebody found the housing itself bent."""
    tubes = ("tube", "housing", "end forging", "casting")
    return any(
        each.what in {"bent", "bowed"} and any(word in each.part.lower() for word in tubes)
        for each in rig.conditions
    )


def _value(  # noqa: PLR0911  (one way out for each way of filling)
    step: OptionStep, rig: Rig, columns: Columns
) -> dict[str, str]:
    path, to = step.path, step.to
    quantity = QUANTITY.get(path, "")
    if to == "one size down":
        return _smaller_tyre(rig, columns)
    if path in {"wheel.offset", "track.tyres", "wheel.spacer"}:
        return _offset(step, columns)
    if to == "same":
        if path == "gear.ratio" and quantity not in rig.given:
            return {}
        return {path: _told(path, _column(quantity, columns))}
    if found := re.fullmatch(r"times ([\d.]+)", to):
        return {path: _told(path, float(found[1]) * _column(quantity, columns))}
    if found := re.fullmatch(r"at least ([\d.]+) mm", to):
        return {path: _told(path, max(1e-3 * float(found[1]), _column(quantity, columns)))}
    if found := re.fullmatch(r"half (\w+) plus ([\d.]+) mm", to):
        half = 0.5 * float(columns[found[1]][0])
        return {path: _told(path, half + 1e-3 * float(found[2]))}
    return {path: to}


def _column(quantity: str, columns: Columns) -> float:
    name = "tube_outer_left" if quantity == "tube_outer" else quantity
    if name not in columns:
        raise NotThisRigError("this axle has no such part")
    return float(columns[name][0])


def _told(path: str, value: float) -> str:
    if KIND[path] == "length":
        return f"{1e3 * value:.1f} mm"
    if KIND[path] == "force":
        return f"{1e-3 * value:.1f} kN"
    return f"{value:.4g}"


def _smaller_tyre(rig: Rig, columns: Columns) -> dict[str, str]:
    wide = rig.tyre.outer_diameter
    lower = [
        (code.outer_diameter, each.sidewall)
        for each in option_tyres().values()
        if (code := parse_tyre(each.sidewall)).outer_diameter < SMALLER * wide
    ]
    if not lower:
        raise NotThisRigError("no usual tyre is a size smaller than this one")
    across, sidewall = max(lower)
    return {"tyre.sidewall": sidewall, **hubs_with(rig, columns, across)}


def hubs_with(rig: Rig, columns: Columns, across: float) -> dict[str, str]:
    """Heights of the hubs with a tyre of another outer diameter (m), about in proportion."""
    ratio = 1e3 * across / rig.tyre.outer_diameter
    heights = {side: float(columns[f"hub_height_{side}"][0]) for side in ("left", "right")}
    return {
        f"hub_height.{side}": f"about {ratio * height:.0f} mm" for side, height in heights.items()
    }


def on_tyre(rig: Rig, columns: Columns, sidewall: str) -> Rig:
    """Rig on another tyre; raises `BadFile` where it cannot stand on it."""
    across = parse_tyre(sidewall).outer_diameter
    sets = {"tyre.sidewall": sidewall, **hubs_with(rig, columns, across)}
    return changed_rig(rig, change_from_text(change_text("tyre", sets)))[0]


def _offset(step: OptionStep, columns: Columns) -> dict[str, str]:
    now, spacer = (float(columns[name][0]) for name in ("wheel_offset", "wheel_spacer"))
    inboard = WORKS_OFFSET - now + spacer
    if inboard < 0.01:
        raise NotThisRigError("its wheels stand as far in already")
    if step.path == "track.tyres":
        return {step.path: f"{1e3 * (float(columns['track'][0]) - 2.0 * inboard):.0f} mm"}
    return {step.path: step.to}


def _renewed(rig: Rig) -> Rig:
    """Rig with another housing of the same size: what was found on the old one goes with it."""
    stays = tuple(each for each in rig.conditions if not on_housing(each.part))
    unseen = Condition(part="the new housing", what="never looked at")
    return replace(
        rig.with_word("rig.condition", "as listed"),
        conditions=(*stays, unseen),
        changes=(*rig.changes, "another housing of the same size"),
    )


def _steps(option: Option, axle: str) -> list[OptionStep]:
    return [
        step
        for step in option_steps().values()
        if step.option == option.key and step.axle in {"both", axle}
    ]


def _housing_paths(option: Option) -> frozenset[str]:
    steps = option_steps().values()
    return frozenset(each.path for each in steps if each.option == option.key and each.housing)


def change_text(name: str, sets: Mapping[str, str], housing: Collection[str] = frozenset()) -> str:
    """Text of a change that sets fields by path; those of ``housing`` come with a housing."""
    rows = ["axlewright_change = 1", f"name = {json.dumps(name)}"]
    inside = {path: text for path, text in sets.items() if path in housing}
    if inside:
        rows += ["", "[[step]]", 'set = "housing"', "", "[step.to]"]
        rows += [f"{path} = {json.dumps(text)}" for path, text in inside.items()]
    for path, text in sets.items():
        if path not in inside:
            rows += ["", "[[step]]", f"set = {json.dumps(path)}", f"to = {json.dumps(text)}"]
    return "\n".join(rows) + "\n"
