"""What can be tried on an axle: sliders and choices round its own values, from the catalogue."""

from collections.abc import Mapping
from dataclasses import dataclass

from axlewright import units
from axlewright.rig import FIELDS, Columns, Field, Rig
from axlewright.views.drawing_links import ident
from axlewright.views.questions import field_name

UNKNOWN = "not known"
AROUND = 0.45  # how far a slider reaches to either side of the value, as a share of it
GROUPS: Mapping[str, tuple[str, ...]] = {
    "Housing": (
        "tube.outer",
        "tube.wall",
        "tube.steel",
        "truss.height",
        "forging.gussets",
        "brackets.plated",
    ),
    "Tyre, wheel and load": ("tyre.sidewall", "wheel.offset", "wheel.spacer", "weight.axle"),
    "Shafts and joint": (
        "shaft.inner",
        "shaft.stub",
        "shaft.steel",
        "joint.cap_across",
        "joint.cap_to_cap",
    ),
}
REACH: Mapping[str, tuple[float, float]] = {  # m, where the value itself may be nothing
    "wheel.offset": (-0.075, 0.075),
    "truss.height": (0.0, 0.15),
    "wheel.spacer": (0.0, 0.06),
}
COLUMN: Mapping[str, str] = {"tube.outer": "tube_outer_left"}
NAMES: Mapping[str, str] = {
    "tube.outer": "Outer diameter of the tubes",
    "tube.wall": "Wall of the tubes",
    "tube.steel": "Steel of the tubes",
    "truss.height": "Truss above the tubes",
    "forging.gussets": "Gussets on the end forgings",
    "brackets.plated": "Brackets plated",
    "tyre.sidewall": "Tyre",
    "wheel.offset": "Wheel offset (ET)",
    "wheel.spacer": "Spacer on each side",
    "weight.axle": "Load on the axle",
    "shaft.inner": "Inner shaft, at its thinnest",
    "shaft.stub": "Stub shaft, at its thinnest",
    "shaft.steel": "Steel of the shafts",
}
SIZES = (  # common sizes, as moulded
    "7.50R16 116/114N",
    "235/85R16 120/116Q",
    "255/85R16 119/116N",
    "265/75R16 123/120Q",
    "285/75R16 126/123Q",
    "33x10.50R15 114Q",
    "35x12.50R17 121Q",
    "37x12.50R17 124Q",
    "40x13.50R17 121Q",
)
_BY_PATH = {each.path: each for each in FIELDS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Lever:
    """One thing to try: a slider where it has ``step``, else a choice among words.

    ``was`` is the axle's own value as the form holds it: a number in the reader's unit, or a word.
    """

    path: str
    ident: str
    name: str
    how: str
    was: str
    shown: str
    unit: str = ""
    low: str = ""
    high: str = ""
    step: str = ""
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LeverGroup:
    """Levers that belong together."""

    title: str
    levers: tuple[Lever, ...]


def lever_groups(
    rig: Rig, columns: Columns, system: str = "metric", tyre: str = ""
) -> tuple[LeverGroup, ...]:
    """Everything that can be tried on one axle; ``tyre`` is its sidewall as it was typed."""
    return tuple(
        LeverGroup(
            title=title,
            levers=tuple(
                _lever(_BY_PATH[path], rig, columns, system, tyre)
                for path in paths
                if _BY_PATH[path].axle in {"both", rig.axle}
            ),
        )
        for title, paths in GROUPS.items()
    )


def tried_values(groups: tuple[LeverGroup, ...], said: Mapping[str, str]) -> dict[str, str]:
    """Values that differ from the axle's own, by path, as a change file takes them.

    ``said`` is what a form holds by path: numbers in the reader's unit, or words. What is not a
    number is handed on as it was typed, to be refused where it is read.
    """
    out = {}
    for group in groups:
        for lever in group.levers:
            text = said.get(lever.path, lever.was).strip()
            if text in {"", lever.was}:
                continue
            if not lever.step:
                out[lever.path] = text
                continue
            try:
                moved = abs(float(text) - float(lever.was)) > 0.49 * float(lever.step)
            except ValueError:
                out[lever.path] = text
                continue
            if moved:
                head = "ET " if lever.path == "wheel.offset" else ""
                out[lever.path] = f"{head}{text} {lever.unit}"
    return out


def _lever(field: Field, rig: Rig, columns: Columns, system: str, tyre: str) -> Lever:
    named = NAMES.get(field.path, field_name(field))
    name, place = named[:1].upper() + named[1:], ident(field.path)
    if field.kind in {"word", "yes", "tyre"}:
        return _choice(field, rig, name, place, tyre)
    column = COLUMN.get(field.path, field.quantity)
    value = float(columns[column][0])
    unit = "mm" if field.kind == "offset" else units.SYSTEMS[system][field.kind]
    size = units.known(field.kind)[unit]
    step = _step(unit, value / size)
    low, high = (value * (1.0 - AROUND), value * (1.0 + AROUND))
    if field.path in REACH:
        low, high = REACH[field.path]
        low, high = min(low, value), max(high, value)
    low, high = max(low, field.low or -1e9), min(high, field.high or 1e9)
    ends = [round(end / size / step) * step for end in (low, high)]
    given = field.quantity in rig.given or (
        field.path == "tube.outer" and "tube_girth_left" in rig.given
    )
    was = _figure(round(value / size / step) * step, step)
    return Lever(
        path=field.path,
        ident=place,
        name=name,
        how="as told" if given else "assumed so far",
        was=was,
        shown=f"{was} {unit}",
        unit=unit,
        low=_figure(ends[0], step),
        high=_figure(ends[1], step),
        step=_figure(step, step),
    )


def _choice(field: Field, rig: Rig, name: str, place: str, tyre: str) -> Lever:
    if field.kind == "tyre":
        return Lever(
            path=field.path,
            ident=place,
            name=name,
            how="as told",
            was=tyre,
            shown=tyre,
            choices=(tyre, *(size for size in SIZES if size != tyre)),
        )
    words = field.choices or ("no", "yes")
    was = rig.words.get(field.path, "")
    return Lever(
        path=field.path,
        ident=place,
        name=name,
        how="as told" if was else "not known yet",
        was=was or UNKNOWN,
        shown=was,
        choices=words if was else (UNKNOWN, *words),
    )


def _step(unit: str, value: float) -> float:
    if unit == "in":
        return 0.01 if abs(value) < 2.0 else 0.05
    if unit in {"kg", "lb"}:
        return 10.0
    return 0.1 if abs(value) < 120.0 else 1.0


def _figure(number: float, step: float) -> str:
    digits = 2 if step < 0.1 else 1 if step < 1.0 else 0
    return f"{number + 0.0:.{digits}f}"
