"""Every formula must give the same physics whatever the size of the metre.

Scale kilogram, metre, second and kelvin by awkward factors; feed the formula the scaled inputs;
the answer must scale as its signature says. A forgotten square or a lost length fails here.
Degrees for radians, or two swapped inputs of one unit, do not show: other tests look for those.
"""

import dataclasses

import numpy as np
import pytest

from house.formulas import FITS, FORMULAS, RANGES, RANGES_OF_ONE

BASE = {"kg": 1.7, "m": 2.3, "s": 0.6, "kelvin": 1.3}
LANES = 16


def factor(mark):
    return np.prod([BASE[base] ** getattr(mark, base) for base in BASE])


def parts(answer):
    """An answer as a list of arrays."""
    if dataclasses.is_dataclass(answer):
        return [getattr(answer, field.name) for field in dataclasses.fields(answer)]
    return list(answer) if isinstance(answer, tuple) else [answer]


def mismatch(formula):
    """What is wrong with how the answer scales, or nothing."""
    rng = np.random.default_rng(7)
    inputs = {}
    for name in formula.inputs:
        low, high = RANGES_OF_ONE.get(f"{formula.name}.{name}", RANGES.get(name, (0.2, 1.2)))
        inputs[name] = np.sort(rng.uniform(low, high, LANES))
    scaled = {name: value * factor(formula.inputs[name]) for name, value in inputs.items()}
    with np.errstate(all="ignore"):
        before, after = parts(formula.call(**inputs)), parts(formula.call(**scaled))
    for mark, one, other in zip(formula.answers, before, after, strict=True):
        one, other = np.asarray(one, float), np.asarray(other, float)  # noqa: PLW2901
        if not np.isfinite(one).any():
            return "no finite answer: give it a range in formulas.py"
        if not np.allclose(other, one * factor(mark), rtol=1e-7, atol=0, equal_nan=True):
            return f"{other} where {one * factor(mark)} was due"
    return None


def test_there_is_something_to_test():
    assert len(FORMULAS) > 50


@pytest.mark.parametrize(
    "formula", [f for f in FORMULAS if f.name not in FITS], ids=lambda f: f.name
)
def test_formula_is_dimensionally_sound(formula):
    assert mismatch(formula) is None


@pytest.mark.parametrize("formula", [f for f in FORMULAS if f.name in FITS], ids=lambda f: f.name)
def test_a_fit_is_excused_only_while_it_needs_to_be(formula):
    assert mismatch(formula) is not None
    assert len(FITS[formula.name]) > 10


def test_only_what_exists_is_excused():
    assert not set(FITS) - {formula.name for formula in FORMULAS}
