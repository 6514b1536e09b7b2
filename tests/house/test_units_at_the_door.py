"""Only `units` knows inches and pounds: no factor and no name of them anywhere else."""

import io
import tokenize

import pytest

from house.places import MODULES, SRC, brief

# Exact or as derived from the exact inch, pound and standard gravity: NIST SP 811, app. B.
EXACT = {25.4, 0.0254, 2.54, 0.3048, 304.8, 12.7}
FACTORS = [
    0.45359237,  # kg in a pound
    4.4482216152605,  # N in a pound-force
    6894.757293168,  # Pa in a psi
    1.3558179483314,  # N m in a foot-pound
    0.1129848290276,  # N m in an inch-pound
    14.593902937206,  # N/m in a pound-force per foot
    175.12683524648,  # N/m in a pound-force per inch
    1.609344,  # km in a mile
]
NAMES = {"inch", "inches", "pound", "pounds", "lb", "lbs", "lbf", "psi", "ksi", "ft_lb"}

ELSEWHERE = [path for path in MODULES if path != SRC / "units.py"]


def is_conversion(literal):
    """Whether a number as typed is a factor between unit systems, to its own digits."""
    try:
        value = float(literal.replace("_", ""))
    except ValueError:  # hexadecimal, complex
        return False
    digits = literal.lower().split("e")[0].replace(".", "").replace("_", "").strip("0")
    if value in EXACT:
        return True
    if len(digits) < 4:
        return False
    return any(
        f"{value:.{len(digits) - 1}e}".split("e")[0]
        == f"{factor:.{len(digits) - 1}e}".split("e")[0]
        for factor in FACTORS
    )


def tokens(path):
    return tokenize.generate_tokens(io.StringIO(path.read_text("utf-8")).readline)


@pytest.mark.parametrize("literal", ["25.4", "0.0254", "4.448", "4448.2", "6894.76", "1.3558"])
def test_the_search_finds_a_factor(literal):
    assert is_conversion(literal)


@pytest.mark.parametrize("literal", ["9.80665", "0.25", "4.5", "1000", "0x1F", "1.36"])
def test_the_search_lets_other_numbers_be(literal):
    assert not is_conversion(literal)


@pytest.mark.parametrize("path", ELSEWHERE, ids=brief)
def test_no_factor_between_unit_systems(path):
    found = [
        f"line {token.start[0]}: {token.string}"
        for token in tokens(path)
        if token.type == tokenize.NUMBER and is_conversion(token.string)
    ]
    assert not found


@pytest.mark.parametrize("path", ELSEWHERE, ids=brief)
def test_no_name_of_an_inch_or_a_pound(path):
    found = [
        f"line {token.start[0]}: {token.string}"
        for token in tokens(path)
        if token.type == tokenize.NAME and token.string.lower() in NAMES
    ]
    assert not found
