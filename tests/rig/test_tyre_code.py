"""Sidewalls as printed, against published diameters."""

import pytest

from axlewright.errors import BadQuantity
from axlewright.rig.tyre_code import parse_tyre

INCH = 0.0254  # exact: NIST SP 811, app. B


# Metric size arithmetic, rim + 2 * width * ratio. The first three: worked examples published with
# 26.004, 27.047 and 33.736 in; the rest: the same arithmetic by hand, in mm.
@pytest.mark.parametrize(
    ("code", "outer"),
    [
        pytest.param("215/65R15", 26.004 * INCH, id="published 26.004 in"),
        pytest.param("255/60R15", 27.047 * INCH, id="published 27.047 in"),
        pytest.param("265/85R16", 33.736 * INCH, id="published 33.736 in"),
        ("285/70R17", 0.8308),
        ("315/70R17", 0.8728),
        ("235/85R16", 0.8059),
        ("245/75R17", 0.7993),
        ("33x12.50R15", 0.8382),
        ("37x12.50R17LT 124Q", 0.9398),
    ],
)
def test_outer_diameter(code, outer):
    assert parse_tyre(code).outer_diameter == pytest.approx(outer, abs=6e-5)


def test_speedometer_after_a_change_of_size():
    """Published: 185/70R14 to 195/50R15 makes it read 6.70 % high (ratio 1.0670139)."""
    ratio = parse_tyre("185/70R14").outer_diameter / parse_tyre("195/50R15").outer_diameter
    assert ratio == pytest.approx(1.0670139, abs=1e-6)


# Outer diameters of new tyres as in size tables, from memory: the width-only forms print no ratio.
@pytest.mark.parametrize(
    ("code", "outer"),
    [("7.50R16", 0.805), ("7.00R16", 0.775), ("6.50R16", 0.750), ("205R16", 0.736)],
)
def test_width_only_sizes_come_near_the_tables(code, outer):
    tyre = parse_tyre(code)
    assert tyre.outer_diameter == pytest.approx(outer, rel=0.02)
    assert "from memory" in tyre.note


def test_every_part_of_a_sidewall():
    tyre = parse_tyre("285/75R16 122/119Q")
    assert tyre.section_width == pytest.approx(0.285)
    assert tyre.rim_diameter == pytest.approx(16 * INCH)
    assert (tyre.load_index, tyre.speed_symbol, tyre.construction) == (122, "Q", "radial")


@pytest.mark.parametrize(
    ("code", "load", "speed", "construction"),
    [
        ("37x12.50R17LT 124Q", 124, "Q", "radial"),
        ("7.50R16", None, None, "radial"),
        ("7.50-16C 116/114N", 116, "N", "cross-ply"),
        ("255/85R16C", None, None, "radial"),
        ("LT285/75R16 E 126/123Q", 126, "Q", "radial"),
        ("255/85D16 8PR", None, None, "cross-ply"),
    ],
)
def test_service_description_and_carcass(code, load, speed, construction):
    tyre = parse_tyre(code)
    assert (tyre.load_index, tyre.speed_symbol, tyre.construction) == (load, speed, construction)


@pytest.mark.parametrize(
    "code",
    [
        "285 / 75 R 16 122/119 q",
        "２８５/75r16 122/119Q",
        "285/75\u00a0R16\u2009122/119Q",
        "LT285/75R16 122/119Q",
    ],
)
def test_blanks_case_and_wide_digits_do_not_matter(code):
    assert parse_tyre(code) == parse_tyre("285/75R16 122/119Q")


@pytest.mark.parametrize(
    "code", ["37×12,50R17LT", '37" x 12.50 R17', "37*12.50R17", "37X12.5R17LT"]
)
def test_many_ways_to_write_a_cross(code):
    assert parse_tyre(code).outer_diameter == pytest.approx(37 * INCH)


@pytest.mark.parametrize(
    ("code", "told"),
    [
        ("37", "only part of a tyre's size"),
        ("35 in", "only part of a tyre's size"),
        ("big ones", "is not a tyre's sidewall code"),
        ("14.00-20 A6", "is not a tyre's sidewall code"),
        ("285/75", "is not a tyre's sidewall code"),
        ("", "is not a tyre's sidewall code"),
        ("285/12R16", "section height of 12 % of its width"),
        ("285/75R40", "rim of 40 in"),
        ("990/75R16", "990 mm wide"),
        ("18x12.5R17", "hardly clears its own rim"),
        ("285/75R16 300Q", "load index of 300"),
        ("285/75R16 122O", "speed symbol 'O'"),
        ("285/75R16" * 20, "characters long"),
    ],
)
def test_what_is_no_tyre_is_refused(code, told):
    with pytest.raises(BadQuantity, match=told) as refused:
        parse_tyre(code)
    assert refused.value.remedy
