"""Splines and hub bearings as the appraisal judges them, beside worked cases and the tables."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from axlewright import tables
from axlewright.rig import load_rig, point_columns, rig_from_text
from axlewright.strength import appraise_point
from axlewright.strength.parts_drive import spline_limits

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
WAGTAIL = (RIGS / "wagtail.toml").read_text("utf-8")
INCH, PSI, POUND_INCH = 0.0254, 6894.757293168, 0.1129848290276167


def columns_of(**values):
    return {name: np.array([value]) for name, value in values.items()}


def spline_of(stress):
    return columns_of(
        spline_teeth=30.0,
        spline_outer=31.0 / 24.0 * INCH,
        spline_engaged=1.5 * INCH,
        spline_slope=0.001,
        shaft_shear_yield=stress,
    )


# Reference: Dudley's formulas worked for 30,000 lb-in on 30 teeth 24/48, 1.5 in engaged: root
# shear 96,217 psi at a root of 28/24 in, tooth shear 32,595 psi, fixed side pressure 3,160 psi for
# a flat root (0.9 of it for a fillet root, a sliding spline nine times it). A solid root is fully
# plastic at 4/3 of first yield (Beer).
@pytest.mark.parametrize(
    ("which", "stress", "torque"),
    [
        (0, 96_217.0, 30_000.0 * 4 / 3),
        (1, 32_595.0, 30_000.0),
        (2, 2.0 * 9.0 * 0.9 * 3_160.0 / np.sqrt(3.0), 30_000.0),
    ],
)
def test_splines_meet_the_worked_case(which, stress, torque):
    limits = spline_limits(spline_of(stress * PSI))
    assert limits[which][0] / POUND_INCH == pytest.approx(torque, rel=2e-3)


# Common practice, no source: the shaft under the root, not the teeth, sets a spline's torque.
@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_the_root_gives_before_the_teeth(name):
    root, shear, crush = spline_limits(point_columns(load_rig(str(RIGS / f"{name}.toml"))))
    assert root < shear
    assert root < crush


def given(text, table, **lines):
    added = "".join(f"{key} = {value}\n" for key, value in lines.items())
    return f"{text}\n[{table}]\n{added}"


# The table's row, asked for by teeth; a coarse spline is no row of it, so its root is the shaft's.
def test_teeth_alone_find_the_row_of_the_table():
    row = tables.spline("24/48x33")
    rig = rig_from_text(given(WAGTAIL, "shaft", inner='"33 mm"', spline_teeth=33))
    columns = point_columns(rig)
    assert columns["spline_outer"][0] == pytest.approx(row.major, rel=1e-5)
    coarse = point_columns(rig_from_text(given(WAGTAIL, "shaft", inner='"33 mm"', spline_teeth=10)))
    assert coarse["spline_outer"][0] == pytest.approx(0.033 * 11 / 8)


# ISO 281 and ISO 76: i rows hold i^0.7 (balls) or i^(7/9) (rollers) times one row's dynamic
# rating, and i times its static one.
@pytest.mark.parametrize(
    ("key", "rows", "dynamic"),
    [("unit_tapered_49x88", "taper rollers", 2 ** (7 / 9)), ("unit_ball_45x84", "balls", 2**0.7)],
)
def test_bore_and_width_find_the_row_of_the_table(key, rows, dynamic):
    row = tables.hub_bearing(key)
    lines = {
        "rows": f'"{rows}"',
        "bore": f'"{1e3 * row.bore} mm"',
        "width": f'"{1e3 * row.width} mm"',
    }
    columns = point_columns(rig_from_text(given(WAGTAIL, "hub", **lines)))
    assert columns["bearing_rating"][0] == pytest.approx(row.dynamic / dynamic)
    assert columns["bearing_static"][0] == pytest.approx(row.static / 2.0)
    assert columns["row_spread"][0] == pytest.approx(row.pressure_spread)


def test_tapers_on_a_spindle_are_rated_one_by_one():
    row = tables.hub_bearing("tapered_50x80")
    lines = {"kind": '"tapers on a spindle"', "bore": '"50 mm"', "width": '"20 mm"'}
    columns = point_columns(rig_from_text(given(WAGTAIL, "hub", **lines)))
    assert columns["bearing_rating"][0] == pytest.approx(row.dynamic)
    assert columns["bearing_static"][0] == pytest.approx(row.static)


def test_bore_alone_goes_by_the_tables_fit():
    text = given(WAGTAIL, "hub", rows='"balls"', bore='"45 mm"')
    columns = point_columns(rig_from_text(text))
    fit = tables.dynamic_load_rating("unit ball", 0.045)
    assert columns["bearing_rating"][0] == pytest.approx(fit / 2**0.7)


# By C: a rating from the maker's sheet carries its static rating with it.
def test_a_given_dynamic_rating_brings_its_static_one():
    text = given(WAGTAIL, "hub", rows='"taper rollers"', rating='"60 kN"')
    columns = point_columns(rig_from_text(text))
    fit = tables.hub_bearing_fit("unit tapered").static_to_dynamic
    assert columns["bearing_static"][0] == pytest.approx(60e3 * fit / 2 * 2 ** (7 / 9))


# ISO 76: the static rating dents by 1/10,000 of a roller; that is not yet the end of a bearing.
def test_a_dent_comes_before_the_end_and_is_no_break():
    solved = appraise_point(load_rig(str(RIGS / "heron.toml"))).solved
    rows = {(row.part, row.mode): (number, row.breaks) for number, row in enumerate(solved.rows)}
    dents, ends = (
        rows[("hub_bearing_left", "dents its races, outer row")],
        rows[("hub_bearing_left", "is spoilt, outer row")],
    )
    assert not dents[1]
    assert ends[1]
    share = solved.capacity[ends[0], 0] / solved.capacity[dents[0], 0]
    assert np.sqrt(10.0) > share > np.cbrt(10.0)  # balls or rollers, nobody says which


def test_a_unit_that_nobody_knows_stands_between_balls_and_rollers():
    rig = load_rig(str(RIGS / "wagtail.toml"))
    ratings = [
        point_columns(replace(rig, words={**rig.words, "hub.rows": rows}))["bearing_rating"][0]
        for rows in ("balls", "", "taper rollers")
    ]
    assert ratings[0] < ratings[1] < ratings[2]
    assert ratings[1] == pytest.approx(np.sqrt(ratings[0] * ratings[2]))
