"""Every conversion, rebuilt from the definitions it rests on; then what a garage writes."""

import re
from math import isnan, pi, radians

import pint
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from axlewright import units
from axlewright.errors import BadQuantity
from axlewright.rig.words import parse_offset, parse_toe

INCH, POUND, GRAVITY, MILE = 0.0254, 0.45359237, 9.80665, 1609.344  # exact; NIST SP 811, app. B
LBF = POUND * GRAVITY
LENGTH = {"m": 1, "cm": 1e-2, "mm": 1e-3, "in": INCH, "ft": 12 * INCH, "thou": 1e-3 * INCH}
WEIGHT = {
    "N": 1,
    "daN": 10,
    "kN": 1e3,
    "kgf": GRAVITY,
    "lbf": LBF,
    "kg": GRAVITY,
    "t": 1e3 * GRAVITY,
    "lb": LBF,
}
STRESS = {
    "Pa": 1,
    "kPa": 1e3,
    "MPa": 1e6,
    "GPa": 1e9,
    "bar": 1e5,
    "kgf/cm2": GRAVITY / 0.01**2,
    "psi": LBF / INCH**2,
    "ksi": 1e3 * LBF / INCH**2,
}
DEFINED = {
    "length": LENGTH,
    "offset": LENGTH,
    "distance": {"km": 1e3, "m": 1, "mi": MILE},
    "mass": {"kg": 1, "g": 1e-3, "t": 1e3, "lb": POUND},
    "force": WEIGHT,
    "weight": WEIGHT,
    "torque": {
        "N m": 1,
        "kN m": 1e3,
        "daN m": 10,
        "kgf m": GRAVITY,
        "kgf cm": GRAVITY / 100,
        "lbf ft": LBF * 12 * INCH,
        "lbf in": LBF * INCH,
    },
    "stress": STRESS,
    "pressure": STRESS,
    "angle": {"rad": 1, "deg": pi / 180, "arcmin": pi / 180 / 60},
    "speed": {"m/s": 1, "km/h": 1000 / 3600, "mph": MILE / 3600},
    "stiffness": {
        "N/m": 1,
        "N/mm": 1e3,
        "kN/m": 1e3,
        "kgf/mm": 1e3 * GRAVITY,
        "kgf/cm": 1e2 * GRAVITY,
        "lbf/in": LBF / INCH,
    },
    "plain": {"": 1, "%": 0.01},
    "ratio": {"": 1},
    "count": {"": 1},
}
KINDS = sorted(set(DEFINED) - {"count"})


@pytest.mark.parametrize("kind", DEFINED)
def test_units_are_what_they_are_defined_to_be(kind):
    assert units.known(kind) == pytest.approx(DEFINED[kind], rel=1e-12)


# The same in the words of a general units library.
LIBRARY = {
    "length": "m",
    "distance": "m",
    "mass": "kg",
    "force": "N",
    "torque": "N*m",
    "stress": "Pa",
    "angle": "rad",
    "speed": "m/s",
    "stiffness": "N/m",
}
RENAMED = {
    "thou": "mil_length",
    "N m": "N*m",
    "kN m": "kN*m",
    "daN m": "daN*m",
    "kgf m": "kgf*m",
    "kgf cm": "kgf*cm",
    "lbf ft": "lbf*ft",
    "lbf in": "lbf*in",
    "kgf/cm2": "kgf/cm**2",
    "kg": "kgf",
    "lb": "lbf",
    "t": "1000*kgf",
}


@pytest.mark.parametrize("kind", LIBRARY)
def test_a_general_units_library_agrees(kind):
    library = pint.UnitRegistry()
    library.define("mil_length = 0.001 * inch")
    for unit, size in units.known(kind).items():
        weighs = kind != "mass" or unit == "g"
        word = RENAMED.get(unit, unit) if weighs else {"t": "tonne"}.get(unit, unit)
        assert library.Quantity(word).to(LIBRARY[kind]).magnitude == pytest.approx(size, rel=1e-9)


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_shown_can_be_read_back(kind):
    for unit in units.known(kind):
        shown = units.show(0.1234, kind, unit, digits=12)
        assert units.parse(shown, kind).value == pytest.approx(0.1234)


@given(st.sampled_from(KINDS), st.floats(1e-6, 1e9), st.data())
def test_any_value_in_any_unit_comes_back(kind, value, data):
    unit = data.draw(st.sampled_from(sorted(units.known(kind))))
    assert units.parse(units.show(value, kind, unit, digits=17), kind).value == pytest.approx(
        value, rel=1e-12
    )


@given(st.integers(0, 500), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_every_fraction_of_a_tape_is_read(whole, above, below):
    expected = (whole + above / below) * INCH
    for text in (f"{whole} {above}/{below} in", f'{whole}-{above}/{below}"'):
        assert units.parse(text, "length").value == pytest.approx(expected, rel=1e-12)


@given(st.text(max_size=40), st.sampled_from(KINDS))
@example("1" * 119, "length")
@example("1e400 mm", "length")
@example("٣ mm", "length")
@example("\ud800 mm", "length")
def test_any_text_is_read_or_refused(text, kind):
    for found in (
        outcome(units.parse, text, kind),
        outcome(parse_offset, text),
        outcome(parse_toe, text),
    ):
        if isinstance(found, BadQuantity):
            assert found.problem
            assert found.remedy
        else:
            assert found.dont_know == isnan(found.value)


def outcome(read, *given):
    try:
        return read(*given)
    except BadQuantity as refused:
        return refused


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("3 1/2 in", "length", 3.5 * INCH),
        ('3-1/2"', "length", 3.5 * INCH),
        ("3½ in", "length", 3.5 * INCH),
        ("3 ½ inches", "length", 3.5 * INCH),
        ("5/8″", "length", 0.625 * INCH),
        ("5' 3 1/2\"", "length", 63.5 * INCH),
        ("5 ft 3 in", "length", 63 * INCH),
        ("0.375in", "length", 0.375 * INCH),
        (".5 in", "length", 0.5 * INCH),
        ("8 thou", "length", 0.008 * INCH),
        ("88,9 mm", "length", 0.0889),
        ("0,125 in", "length", 0.125 * INCH),
        ("1900,125 mm", "length", 1.900125),
        ("1 900 mm", "length", 1.9),
        ("1\u202f900 mm", "length", 1.9),
        ("８８．９　ｍｍ", "length", 0.0889),
        ("−5 mm", "length", -0.005),
        ("- 5 mm", "length", -0.005),
        ("+5\u00a0mm", "length", 0.005),
        ("1e3 mm", "length", 1.0),
        ("1.75 t", "force", 1750 * GRAVITY),
        ("1150 kg", "force", 1150 * GRAVITY),
        ("2500 lb", "force", 2500 * LBF),
        ("2500 lbs", "mass", 2500 * POUND),
        ("260 kg", "mass", 260.0),
        ("250 ft-lb", "torque", 250 * LBF * 12 * INCH),
        ("250 lb-ft", "torque", 250 * LBF * 12 * INCH),
        ("250 lbf ft", "torque", 250 * LBF * 12 * INCH),
        ("250 ft.lbs.", "torque", 250 * LBF * 12 * INCH),
        ("120 in-lb", "torque", 120 * LBF * INCH),
        ("12 N·m", "torque", 12.0),
        ("12 Nm", "torque", 12.0),
        ("12 N m", "torque", 12.0),
        ("30 kgf·cm", "torque", 30 * GRAVITY * 0.01),
        ("3 kgf m", "torque", 3 * GRAVITY),
        ("35 psi", "pressure", 35 * LBF / INCH**2),
        ("2,4 bar", "pressure", 2.4e5),
        ("240 kPa", "pressure", 2.4e5),
        ("350 N/mm²", "stress", 350e6),
        ("50 ksi", "stress", 50e3 * LBF / INCH**2),
        ("32°", "angle", radians(32)),
        ("32 deg", "angle", radians(32)),
        ("1°30'", "angle", radians(1.5)),
        ("20'", "angle", radians(1 / 3)),
        ("15 km/h", "speed", 15 / 3.6),
        ("10 mph", "speed", 10 * MILE / 3600),
        ("60 km", "distance", 6e4),
        ("40 miles", "distance", 40 * MILE),
        ("200 lb per in", "stiffness", 200 * LBF / INCH),
        ("38 N/mm", "stiffness", 38e3),
        ("4.10:1", "ratio", 4.10),
        ("1:4.10", "plain", 4.10),
        ("41:10", "plain", 4.10),
        ("80 %", "plain", 0.8),
        ("6", "count", 6.0),
    ],
)
def test_what_a_garage_writes(text, kind, value):
    parsed = units.parse(text, kind)
    assert parsed.value == pytest.approx(value, rel=1e-12)
    assert parsed.text == text
    assert not parsed.about
    assert parsed.band is None
    assert parsed.uncertainty is None


@pytest.mark.parametrize(
    "text",
    [
        "about 88.9 mm",
        "~88.9 mm",
        "ca. 88.9 mm",
        "c. 88.9 mm",
        "approx. 88.9 mm",
        "≈ 3.5 in",
        "About 3.5in",
        "88.9 mm or so",
        "3 1/2 in more or less",
        "88,9 mm approx.",
    ],
)
def test_about_is_heard(text):
    parsed = units.parse(text, "length")
    assert parsed.about
    assert parsed.value == pytest.approx(0.0889)


@pytest.mark.parametrize(
    "text", ["don't know", "Don’t know", "unknown", "?", "not sure", " ?? ", "n/a", "unsure"]
)
def test_not_knowing_is_an_answer(text):
    assert units.parse(text, "length") is units.DONT_KNOW
    assert units.DONT_KNOW.dont_know


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("5-8 mm", 0.005, 0.008),
        ("5 – 8 mm", 0.005, 0.008),
        ("5 to 8 mm", 0.005, 0.008),
        ("between 5 and 8 mm", 0.005, 0.008),
        ("5 mm to 0.8 cm", 0.005, 0.008),
        ("1/4-3/8 in", 0.25 * INCH, 0.375 * INCH),
        ("3-1/2 to 4 in", 3.5 * INCH, 4 * INCH),
    ],
)
def test_a_range_is_a_band(text, low, high):
    parsed = units.parse(text, "length")
    assert parsed.band == pytest.approx((low, high))
    assert parsed.value == pytest.approx((low + high) / 2)


@pytest.mark.parametrize(
    "text", ["12 mm ± 0.5", "12 ± 0.5 mm", "12 mm +/- 0.5 mm", "12 mm ± 0.05 cm", "1.2 cm ± 0.5 mm"]
)
def test_give_or_take_is_an_uncertainty(text):
    parsed = units.parse(text, "length")
    assert (parsed.value, parsed.uncertainty) == pytest.approx((0.012, 0.0005))


def test_give_or_take_in_percent():
    assert units.parse("200 N m ± 5 %", "torque").uncertainty == pytest.approx(10.0)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1.200,5 kg", 1200.5),
        ("1,200.5 kg", 1200.5),
        ("1 200,5 kg", 1200.5),
        ("1.200.000 kg", 1.2e6),
        ("1,200,000.25 kg", 1200000.25),
    ],
)
def test_thousands_are_parted_where_no_other_meaning_is_left(text, value):
    assert units.parse(text, "mass").value == value


@pytest.mark.parametrize(
    ("text", "kind", "meant"),
    [
        ("6 mn", "length", "Did you mean mm?"),
        ("3.3 kips", "weight", "'kips'. Write a weight"),
        ("200 stone", "weight", "'stone'. Write a weight"),
    ],
)
def test_a_unit_is_guessed_only_where_it_is_a_slip(text, kind, meant):
    with pytest.raises(BadQuantity, match=re.escape(meant)):
        units.parse(text, kind)


@pytest.mark.parametrize(
    ("text", "kind", "told"),
    [
        ("1,900 mm", "length", r"two ways. Write 1900 or 1.900"),
        ("1,90,5 mm", "length", "more than one comma or point. Write it as 1200,5 or 1200.5"),
        ("12,00.5 mm", "length", "more than one comma or point"),
        ("1,900,000,5 mm", "length", "more than one comma or point"),
        ("1'510 kg", "mass", "parts the thousands with an apostrophe. Leave it out, as in 1200"),
        ("3", "length", "has no unit. Write a length with one of: m, cm, mm, in, ft"),
        ("5-8", "length", "has no unit"),
        ("12 Nm", "length", "is a torque, not a length"),
        ("12 Nm?", "torque", 'If not sure, write "about 12 Nm"'),
        ("12 mn", "length", "not known here: 'mn'"),
        ("2 tons", "mass", "a long, a short or a metric ton"),
        ("inf mm", "length", "not a number that can be measured"),
        ("nan", "length", "not a number that can be measured"),
        ("1e999 mm", "length", "too large to be a number"),
        ("8-5 mm", "length", "runs backwards"),
        ("12 mm ± 0", "length", "no doubt behind"),
        ("12 mm ± -1 mm", "length", "no doubt behind"),
        ("1/0 in", "length", "divides by zero"),
        ("three inches", "length", "cannot be read"),
        ("", "length", "is empty"),
        ("5 in 3 in", "length", "not known here|cannot be read"),
        ("6.5", "count", "not a whole number"),
        ("-6", "count", "not a whole number"),
        ("3 mm", "plain", "is a length, not a plain number"),
        ("x" * 200, "length", "200 characters long"),
        ("5 mm²", "length", "not known here"),
        ("60 mm", "distance", "is a length, not a distance"),
    ],
)
def test_what_has_no_one_meaning_is_refused_with_a_remedy(text, kind, told):
    with pytest.raises(BadQuantity, match=told) as refused:
        units.parse(text, kind)
    assert refused.value.remedy


@pytest.mark.parametrize(
    ("text", "kind", "told"),
    [
        ('3-1/2"', "length", "3.5 in, that is 88.9 mm"),
        ("88,9 mm", "length", "88.9 mm, that is 3.50 in"),
        ("about 1150 kg", "force", "about 1150 kg, that is 2535 lbf"),
        ("250 ft-lb", "torque", "250 lbf ft, that is 339 N m"),
        ("5-8 mm", "length", "5 to 8 mm, that is 0.197 to 0.315 in"),
        ("12 mm ± 0.5", "length", "12 mm, give or take 0.5 mm, that is 0.472 in"),
        ("32 deg", "angle", "32 deg"),
        ("4.10", "ratio", "4.1"),
        ("17 1/4 in", "length", "17.25 in, that is 438.1 mm"),
        ("9 7/16 in", "length", "9.4375 in, that is 239.7 mm"),
        ("1.200,5 kg", "mass", "1200.5 kg, that is 2647 lb"),
        ("1,500,000 N", "force", "1500000 N, that is 337213 lbf"),
        ("?", "length", "not known"),
    ],
)
def test_a_number_is_echoed_in_words(text, kind, told):
    assert units.echo(units.parse(text, kind)) == told


@pytest.mark.parametrize(
    ("system", "told"),
    [("metric", "88.9 mm"), ("us", "3.50 in"), ("mixed", "3.50 in"), ("m", "0.0889 m")],
)
def test_a_length_in_each_system(system, told):
    assert units.show(0.0889, "length", system) == told


def test_mixed_keeps_the_scale_in_kg_and_the_road_in_km():
    assert units.show(1000 * GRAVITY, "weight", "mixed") == "1000 kg"
    assert units.show(12e3, "distance", "mixed") == "12.0 km"
    assert units.show(float("nan"), "length") == "not known"
