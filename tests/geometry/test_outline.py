"""The axle as a rock meets it: its outline against a polygon library, edges, chance of a touch."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon, box
from shapely.ops import unary_union

from axlewright.geometry import hardpoints, travel
from axlewright.geometry.clearance import clearance
from axlewright.geometry.outline import CAST, EYE, FLAT, SLOPE, edges, outline, touch_chance
from axlewright.rig import changed_rig, geometry_columns, load_change
from geometry.cases import HOME, demo
from geometry.test_angled_arms import angled


def points_of(rig):
    return hardpoints(geometry_columns(rig), rig.words)


@pytest.mark.oracle
@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_the_outline_covers_what_a_polygon_library_joins(name):
    # shapely: tubes as a box, the centre as a circle, brackets as trapezes, all joined
    rig = demo(name)
    points, radius = points_of(rig), 0.43
    c = {key: float(value[0]) for key, value in points.columns.items()}
    half = 0.25 * (c["tube_outer_left"] + c["tube_outer_right"])
    end = float(points.half_track[0]) - 0.5 * rig.tyre.section_width
    centre = Point(float(points.at["pinion_joint"][0, 1]), radius)
    parts = [box(-end, radius - half, end, radius + half),
             centre.buffer(0.5 * c["ring_diameter"] + CAST, quad_segs=512)]  # fmt: skip
    for edge in edges(points, radius):
        if "bracket" in edge.what and edge.under > 0.0:
            foot, top = FLAT, FLAT + SLOPE
            y, low = edge.across, edge.height
            parts.append(
                Polygon([(y - foot, low), (y + foot, low), (y + top, radius - half),
                         (y - top, radius - half)])
            )  # fmt: skip
    found = outline(points, rig.tyre, radius)
    whole = Polygon(found.corners)
    assert whole.is_valid
    assert whole.area == pytest.approx(found.area, rel=1e-6)
    joined = unary_union(parts)
    assert joined.difference(whole).area < 3e-3 * joined.area
    if not points.steers:  # a tie rod hangs free of the tubes: what is between counts as full
        assert found.area == pytest.approx(joined.area, rel=3e-3)
    assert whole.bounds[1] == pytest.approx(edges(points, radius)[0].height, abs=1e-3)


def test_a_bracket_ends_a_little_below_its_bolt():
    rig = demo("heron")
    points = points_of(rig)
    low = next(edge for edge in edges(points, 0.43) if edge.what == "the left lower arm's bracket")
    assert low.height == pytest.approx(0.43 + float(points.at["arm_axle_left"][0, 2]) - EYE)


def test_arms_lead_an_obstacle_under_their_bolts_and_nothing_leads_it_under_a_rod():
    # common practice, no source: what hangs behind the axle catches going back; arms are ramps
    front = {edge.what: edge.catches for edge in edges(points_of(demo("heron")), 0.43)}
    assert front["the left lower arm's bracket"] == ("going forward",)
    assert "going back" in front["the tie rod"]  # behind the axle on this rig
    assert front["the centre"] == front["the tubes"] == ()
    rear = angled("stork-rear")
    hung = {edge.what: edge.catches for edge in edges(points_of(rear), 0.43)}
    assert hung["the left lower arm's bracket"] == ("going back",)


def test_a_tie_rod_ahead_and_over_the_tubes_catches_going_forward_alone():
    points = points_of(demo("heron"))
    at = dict(points.at)
    for side, sign in (("left", 1.0), ("right", -1.0)):
        at[f"tie_rod_end_{side}"] = np.array([[0.16, sign * 0.6, 0.02]])
    told = {edge.what: edge for edge in edges(replace(points, at=at), 0.43)}
    assert told["the tie rod"].catches == ("going forward",)


def test_the_chance_of_a_touch_under_a_level_edge_is_the_exponential_law():
    # closed form: exp(-h / s) where everything is equally high
    across, low = np.linspace(-0.6, 0.6, 601), np.full(601, 0.25)
    steps = np.array([0.05, 0.1, 0.2])
    assert touch_chance(across, low, steps) == pytest.approx(np.exp(-0.25 / steps))


def test_the_chance_of_a_touch_beside_many_rocks_thrown_at_random():
    # NumPy's own generator: places, heights, and whether anything within the width is lower
    rng = np.random.default_rng(7)
    found = outline(points_of(demo("heron")), demo("heron").tyre, 0.43)
    spot = rng.uniform(found.across[0], found.across[-1], 40_000)
    tall = rng.exponential(0.12, 40_000)
    touched = 0
    for place, height in zip(spot, tall, strict=True):
        near = np.abs(found.across - place) <= 0.075
        touched += height > found.low[near].min()
    told = float(touch_chance(found.across, found.low, 0.12)[0])
    assert told == pytest.approx(touched / 40_000, abs=0.004)


@given(low=st.floats(0.1, 0.4), down=st.floats(0.0, 0.09), step=st.floats(0.02, 0.3))
def test_lower_touches_more_and_higher_rocks_too(low, down, step):
    across, edge = np.linspace(-0.5, 0.5, 201), np.full(201, low)
    here = float(touch_chance(across, edge, step)[0])
    assert float(touch_chance(across, edge - down, step)[0]) >= here
    assert float(touch_chance(across, edge, 1.1 * step)[0]) >= here
    assert 0.0 <= here <= 1.0


def test_use_and_tyres_decide_how_often_it_touches():
    rig = demo("heron")
    easy = rig.with_word("use.hardest", "gravel and farm tracks")
    assert clearance(points_of(easy), easy.tyre).touch < clearance(points_of(rig), rig.tyre).touch
    new, _ = changed_rig(rig, load_change(str(HOME / "examples/changes/smaller-tyres.toml")))
    before, after = travel(rig, draws=64), travel(new, draws=0)
    assert after.road.touch > before.road.touch
    low, high = before.bands["touch"]
    assert low < before.road.touch < high
