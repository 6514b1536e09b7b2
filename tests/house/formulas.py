"""The physics formulas whose every input and answer carries a unit."""

import dataclasses
import inspect
import types
import typing
from dataclasses import dataclass
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from axlewright.physics.quantities import SI
from house.places import physics_modules


def unit(hint):
    """The SI mark of a hint, or None where it carries none."""
    if get_origin(hint) is Annotated:
        return next((mark for mark in hint.__metadata__ if isinstance(mark, SI)), None)
    if get_origin(hint) in {typing.Union, types.UnionType}:  # a quantity or nothing
        marks = {unit(part) for part in get_args(hint) if part is not type(None)}
        return marks.pop() if len(marks) == 1 else None
    return None


def answer_units(hint):
    """The units of an answer, one for each of its parts, or None where one has no unit."""
    parts = [hint]
    if get_origin(hint) is tuple:
        parts = list(get_args(hint))
    elif isinstance(hint, type) and (dataclasses.is_dataclass(hint) or hasattr(hint, "_fields")):
        parts = list(get_type_hints(hint, include_extras=True).values())
    units = [unit(part) for part in parts]
    return None if None in units else units


@dataclass(frozen=True)
class Formula:
    """A function, the unit of each input it is given, and of each part of its answer."""

    name: str
    call: Any
    inputs: dict[str, SI]
    answers: list[SI]


def public_functions():
    """Every function that a physics module offers, by its full name."""
    found = {}
    for module in physics_modules():
        for name, thing in vars(module).items():
            plain = inspect.unwrap(getattr(thing, "py_func", thing))
            if (
                inspect.isfunction(plain)
                and plain.__module__ == module.__name__
                and not name.startswith("_")
            ):
                found[f"{module.__name__.removeprefix('axlewright.physics.')}.{name}"] = plain
    return dict(sorted(found.items()))


def _formula(name, call):
    hints = get_type_hints(call, include_extras=True)
    answers = answer_units(hints.pop("return", None))
    defaults = {
        key
        for key, parameter in inspect.signature(call).parameters.items()
        if parameter.default is not inspect.Parameter.empty
    }
    inputs = {key: unit(hint) for key, hint in hints.items()}
    unmarked = {key for key, mark in inputs.items() if mark is None}
    if answers is None or unmarked - defaults:
        return None
    return Formula(name, call, {k: v for k, v in inputs.items() if v is not None}, answers)


FORMULAS = [
    formula
    for name, call in public_functions().items()
    if (formula := _formula(name, call)) is not None
]

# Numbers in the range a formula is for, where a number between 0.2 and 1.2 would not do.
RANGES: dict[str, tuple[float, float]] = {
    "bore": (0.05, 0.15),
    "inner": (0.05, 0.15),
    "inner_diameter": (0.05, 0.15),
    "wall": (0.02, 0.08),
    "quality": (6.0, 11.0),
    "teeth": (9.0, 40.0),
    "mate_teeth": (9.0, 40.0),
    "poisson": (0.2, 0.4),
}
# The same for one formula only, by "formula.parameter".
RANGES_OF_ONE: dict[str, tuple[float, float]] = {
    # Between first yield, 0.098, and fully plastic, 0.167.
    "plastic.curvature_at_moment.moment": (0.11, 0.15),
    "plastic.curvature_at_moment.outer": (0.99, 1.01),
    "plastic.curvature_at_moment.yield_stress": (0.99, 1.01),
    "plastic.residual_curvature.moment": (0.11, 0.15),
    "plastic.residual_curvature.outer": (0.99, 1.01),
    "plastic.residual_curvature.yield_stress": (0.99, 1.01),
    "bevel_rating.contact_size_factor.face": (0.02, 0.04),  # between its two flat ends
    "shaft.elastic_core.torque": (1e-4, 2e-3),
    "shaft.twist.torque": (1e-4, 2e-3),
    "shaft.residual_twist.torque": (1e-4, 2e-3),
    "shaft.residual_shear.torque": (1e-4, 2e-3),
    "weld_fatigue.endurance.knee": (5e6, 1e7),
    "bearing.mixed_load.exponent": (3.0, 3.0),
    "section.inner_at_area.area": (1e-3, 1e-2),
    "rod_bow.kink_shortening.bow": (0.02, 0.08),  # below half the length
}

# Fits to measurements, whose constants carry units of their own: they cannot scale. Each says why.
_PRINTED_IN_POUNDS = (
    "bevel_rating.bending_allowable",
    "bevel_rating.bending_size_factor",
    "bevel_rating.contact_allowable",
    "bevel_rating.contact_size_factor",
    "bevel_rating.dynamic_factor",
    "bevel_rating.fastest_speed",
    "bevel_rating.load_distribution",
)
FITS: dict[str, str] = {
    **dict.fromkeys(_PRINTED_IN_POUNDS, "a printed fit in pounds and inches, made SI inside"),
    "gearing.highest_lawful_reading": "a rule whose 4 km/h is a constant",
}
