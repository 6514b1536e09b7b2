"""What must hold between the rows of a table, whoever typed them."""

import itertools
import math

import pytest

from axlewright import tables
from axlewright.errors import UnknownEntry

SIDES = (("left", "right"), ("right", "left"))


def test_bands_are_the_right_way_round() -> None:
    for entry in tables.materials().values():
        assert entry.yield_low < entry.yield_high, entry.key
        assert entry.ultimate_low < entry.ultimate_high, entry.key
        assert entry.yield_low < entry.ultimate_low, entry.key
        assert entry.yield_high < entry.ultimate_high, entry.key
        assert 0 < entry.elongation < 0.4, entry.key
        assert 150e9 < entry.elastic_modulus < 215e9, entry.key
        assert entry.family in {"tube", "shaft", "iron", "cast steel", "forging", "plate"}
        for low, high in (
            (entry.softened_low, entry.softened_high),
            (entry.shear_yield_low, entry.shear_yield_high),
        ):
            assert (low is None) == (high is None), entry.key
            assert low is None or high is None or 0 < low < high, entry.key
    bands = {
        **{key: (row.low, row.value, row.high) for key, row in tables.frictions().items()},
        **{key: (row.low, row.value, row.high) for key, row in tables.scatters().items()},
        **{key: (row.low, row.value, row.high) for key, row in tables.cross_joint_ratios().items()},
    }
    for key, (low, value, high) in bands.items():
        assert low < value < high, key


def test_everything_that_is_welded_says_how_much_is_left() -> None:
    for entry in tables.materials().values():
        assert (entry.softened_low is None) == (entry.family == "shaft"), entry.key
        assert entry.softened_high is None or entry.softened_high <= 1.0


def test_harder_temper_is_stronger_and_less_ductile() -> None:
    rows = [tables.material(f"shaft_4340_temper_{t}") for t in (1200, 1000, 800)]
    for soft, hard in itertools.pairwise(rows):
        assert soft.yield_low < hard.yield_low
        assert soft.ultimate_high < hard.ultimate_high
        assert soft.elongation > hard.elongation
    irons = [entry for entry in tables.materials().values() if entry.family == "iron"]
    for weak, strong in itertools.pairwise(irons):
        assert weak.yield_low < strong.yield_low
        assert weak.elongation > strong.elongation


def test_hardness_and_strength_fall_together() -> None:
    for hard, soft in itertools.pairwise(tables.hardnesses().values()):
        assert hard.brinell > soft.brinell
        assert hard.ultimate > soft.ultimate
        assert hard.yield_strength > soft.yield_strength
        assert hard.shear_yield > soft.shear_yield


def test_bolt_rows_are_ordered_and_meet() -> None:
    for row in tables.fastener_grades().values():
        assert row.proof < row.yield_strength < row.ultimate, row.key
        assert row.over < row.to, row.key
    assert tables.fastener_grade_at("8.8", 0.016).key == "8.8_to_m16"
    assert tables.fastener_grade_at("8.8", 0.01601).key == "8.8_over_m16"


@pytest.mark.parametrize(
    ("grade", "diameter", "word"),
    [("8.9", 0.012, "8.8"), ("5", 0.050, "6.35 to 38.1 mm"), ("8.8", 0.003, "5 to 39 mm")],
)
def test_a_bolt_outside_the_table_is_refused(grade: str, diameter: float, word: str) -> None:
    with pytest.raises(UnknownEntry, match=word):
        tables.fastener_grade_at(grade, diameter)


def test_load_index_goes_up_in_steps_of_about_three_per_cent() -> None:
    """ETRTO/TRA series: ten steps are about a third, twenty-four a doubling."""
    mass = {int(key): row.mass for key, row in tables.load_indices().items()}
    assert list(mass) == list(range(60, 151))
    for index in range(60, 150):
        assert 1.018 <= mass[index + 1] / mass[index] <= 1.04, index
    for index in range(60, 127):
        assert mass[index + 24] / mass[index] == pytest.approx(2.0, rel=0.04), index


def test_crosses_can_be_built() -> None:
    """Needles fill the ring round the trunnion, the cap has a wall, the arm ends inside."""
    for joint in tables.cross_joints().values():
        ring = math.pi * (joint.trunnion + joint.needle)
        assert 0.9 * ring < joint.needles * joint.needle <= ring, joint.key
        wall = (joint.cap - joint.trunnion) / 2 - joint.needle
        assert 0.05 * joint.cap < wall < 0.2 * joint.cap, joint.key
        assert joint.hole < 0.5 * joint.trunnion
        assert joint.arm + joint.needle_length / 2 < joint.length / 2
        ratio = tables.cross_joint_ratio("trunnion_to_cap")
        assert ratio.low < joint.trunnion / joint.cap < ratio.high


def test_a_cross_is_found_by_tape() -> None:
    found = tables.cross_joint_at(0.0303, 0.0920)
    assert found is not None
    assert found.key == "30.2x92.1"
    assert tables.cross_joint_at(0.0333, 0.0920) is None
    assert tables.cross_joint_at(0.0303, 0.0980) is None


def test_bigger_bearings_carry_more_and_the_fit_follows() -> None:
    kinds = {row.kind for row in tables.hub_bearings().values()}
    assert kinds == set(tables.hub_bearing_fits())
    for kind in kinds:
        rows = [row for row in tables.hub_bearings().values() if row.kind == kind]
        for small, large in itertools.pairwise(rows):
            assert small.bore < large.bore < large.outside
            assert small.dynamic < large.dynamic
            assert small.static < large.static
        fit = tables.hub_bearing_fit(kind)
        for row in rows:
            assert tables.dynamic_load_rating(kind, row.bore) == pytest.approx(
                row.dynamic, rel=0.14
            )
            assert row.static / row.dynamic == pytest.approx(fit.static_to_dynamic, rel=0.25)
            assert (row.pressure_spread is None) == (kind == "paired tapered")


def test_longer_attachments_are_weaker() -> None:
    ends = ("to_50mm", "to_80mm", "to_100mm", "over_100mm")
    rows = [tables.weld_detail(f"plate_along_tube_{end}").category for end in ends]
    assert rows == sorted(rows, reverse=True)
    assert len(set(rows)) == len(rows)


def test_every_weld_has_a_place_an_edition_and_a_curve() -> None:
    for row in tables.weld_details().values():
        assert row.place in {"parent", "toe", "root", "throat", "thread"}
        editions = {curve.edition for curve in tables.endurance_curves().values()}
        assert row.edition in editions
        assert row.slope == (5 if row.place == "throat" else 3)
        assert 36e6 <= row.category <= 160e6


def test_severities_are_sided_alike_and_banded() -> None:
    rows = tables.severities()
    expected = {"braking", "pull_both", "landing", "rock"} | {
        f"{case}_{side}"
        for case in ("pull", "slide", "hung", "strike", "cornering")
        for side in ("left", "right")
    }
    assert set(rows) == expected
    for key, row in rows.items():
        assert row.low_factor <= 0.6
        assert row.high_factor >= 1.6
        assert row.kind in {"grip-limited", "energy-limited", "factor"}
        if key.endswith("_left"):
            other = rows[key.removesuffix("left") + "right"]
            assert (row.value, row.unit, row.speed) == (other.value, other.unit, other.speed)
            assert row.words != other.words


def test_each_duty_counts_each_case() -> None:
    counts = tables.duty_counts()
    for duty in tables.duties():
        for case in tables.severities():
            row = tables.duty_count(f"{duty}.{case}")
            assert (row.duty, row.case) == (duty, case)
            assert row.cycles_per_1000_km > 1  # a spectrum needs more than its largest cycle
            assert row.origin.spread >= 1.6
    assert len(counts) == len(tables.duties()) * len(tables.severities())
    distance = [row.equivalent_distance for row in tables.duties().values()]
    assert distance == sorted(distance, reverse=True), "listed from mild to hard"


def test_every_part_says_what_then() -> None:
    for key, row in tables.consequences().items():
        words = {"stuck", "crooked", "steering lost", "wheel lost", "limps", "leaks"}
        assert row.what_then in words, key
        assert row.mendable in {"yes", "no", "partly"}, key
        assert (row.duration is None) == (row.mendable == "no"), key
        assert row.look, key
        for side, other in SIDES:
            if key.endswith(f"_{side}"):
                twin = tables.consequence(key.removesuffix(side) + other)
                assert (twin.what_then, twin.dangerous) == (row.what_then, row.dangerous)
                assert side in row.label


def test_whatever_steers_or_holds_a_wheel_is_dangerous() -> None:
    """Common practice, no source."""
    for key, row in tables.consequences().items():
        if row.what_then in {"steering lost", "wheel lost"}:
            assert row.dangerous, key
    for key in ("knuckle_left", "end_forging_right", "tie_rod", "wheel_studs_left"):
        assert tables.consequence(key).dangerous
    for key in ("knuckle_left", "end_forging_right", "spindle_left", "steering_arm"):
        assert tables.consequence(key).mendable == "no"


def test_limits_have_a_scope_and_an_end() -> None:
    assert len(tables.limits()) >= 20
    for key, row in tables.limits().items():
        assert row.scope, key
        assert row.as_printed, key
        assert row.load_state, key
        assert row.unit in {"m", "rad", "N m", "1"}, key
        assert row.high is not None, key
        assert (row.low is None) == (row.kind == "max"), key
        assert row.low is None or row.low < row.high, key
