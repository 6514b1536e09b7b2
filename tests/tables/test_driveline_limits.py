"""Limits of propeller shafts, typed a second time and against the tables they come from."""

import math

import pytest

from axlewright import tables
from axlewright.physics import driveline, driveline_speed

DEGREE, RPM = math.pi / 180, 2 * math.pi / 60


@pytest.mark.parametrize(
    ("key", "low", "high"),
    [
        # Public driveline pages that carry the tables of SAE AE-7; an industrial shaft maker.
        ("torsional", None, 400.0),
        ("inertial_drive", None, 1000.0),
        ("inertial_coast", None, 1000.0),
        ("swing", None, 0.0027),
        ("single_road", None, 6 * DEGREE),
        ("ends_apart", None, 1.5 * DEGREE),
        ("needles", 0.5 * DEGREE, None),
        ("double_road", None, 10 * DEGREE),
        ("double_pinion", None, 2 * DEGREE),
        ("whirl_share", None, 0.75),
        ("half_whirl", 0.42, 0.58),
    ],
)
def test_driveline_limits_are_those_of_their_sources(
    key: str, low: float | None, high: float | None
) -> None:
    row = tables.driveline_limits()[key]
    assert row.low == (None if low is None else pytest.approx(low, rel=1e-8))
    assert row.high == (None if high is None else pytest.approx(high, rel=1e-8))


def test_a_limit_has_an_end_a_scope_and_a_use() -> None:
    for key, row in tables.driveline_limits().items():
        assert row.scope, key
        assert row.as_printed, key
        assert row.joint in {"single", "double", "line", "shaft", "any"}, key
        assert row.turning in {"road", "slow", "any"}, key
        assert (row.low is None, row.high is None) == {
            "max": (True, False),
            "min": (False, True),
            "avoid": (False, False),
        }[row.kind], key


def test_limits_meet_the_printed_angles() -> None:
    # Printed: 7.3 deg beside 0 deg at 1500 rev/min; 5.8 deg alone at 3000 rev/min.
    torsional = tables.driveline_limit("torsional").high
    inertial = tables.driveline_limit("inertial_drive").high
    assert torsional is not None
    assert inertial is not None
    two = driveline_speed.allowed_second_angle(0.0, torsional, 1500 * RPM)
    assert two == pytest.approx(7.3 * DEGREE, abs=0.07 * DEGREE)
    one = driveline_speed.angle_at_acceleration(inertial, 3000 * RPM)
    assert one == pytest.approx(5.8 * DEGREE, abs=0.3 * DEGREE)
    # The maker's swing is the trade's "3 degrees".
    swing = tables.driveline_limit("swing").high
    assert swing is not None
    assert driveline.angle_of_swing(swing) == pytest.approx(3 * DEGREE, rel=0.01)


def test_slow_use_allows_more_than_the_road() -> None:
    # common practice, no source
    for kind in ("single", "double"):
        road, slow = (tables.driveline_limit(f"{kind}_{use}").high for use in ("road", "slow"))
        assert road is not None
        assert slow is not None
        assert slow > 2 * road
