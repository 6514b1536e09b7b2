"""What the ground does to the axle: each case against a free body or an energy balance of its own.

Outside references: T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992): the dynamic axle
load in braking, W_f = W_fs + (h/L)(W/g) D_x (ch. 3), the lateral load transfer of a rigid vehicle
in a steady turn (ch. 6), traction limits of open and locked differentials (ch. 2); Newton's laws.
"""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from axlewright.duty import CASES, ROW, in_ground_terms, live_cases, wheel_loads
from axlewright.rig import load_rig, point_columns

RIGS = sorted((Path(__file__).parents[2] / "examples" / "rigs").glob("*.toml"))
GRAVITY = 9.80665  # exact; NIST SP 811, app. B
X, Y, Z = range(3)
LEFT, RIGHT = range(2)


@pytest.fixture(params=RIGS, ids=lambda path: path.stem)
def rig(request):
    return load_rig(str(request.param))


def loaded(rig, **changed):
    """Columns and loads at the middle of every doubt, some of them set."""
    columns = dict(point_columns(rig))
    columns |= {name: np.array([value]) for name, value in changed.items()}
    return {name: column[0] for name, column in columns.items()}, wheel_loads(columns, rig.words)


def whole(loads, key):
    """Force at each contact patch with the standing weight where the case has it, (side, 3)."""
    [case] = [case for case in CASES if case.key == key]
    standing = loads.ground[0, ROW["standing"]] if case.standing else 0.0
    return loads.ground[0, ROW[key]] + standing


def locked(rig, kind):
    return replace(rig, words={**rig.words, "drive.lock": kind})


def test_standing_still_is_the_weight_and_nothing_else(rig):
    columns, loads = loaded(rig)
    stands = loads.ground[0, ROW["standing"]]
    assert np.sum(stands[:, Z]) == pytest.approx(columns["axle_weight"], rel=1e-12)
    assert not np.any(stands[:, :Z])


def test_braking_loads_are_those_of_the_whole_vehicle(rig):
    """Moments about the other axle's contact: this axle's load times L balances weight and m a."""
    columns, loads = loaded(rig)
    force = whole(loads, "braking")
    here, there = columns["axle_weight"], columns["other_axle_weight"]
    wheelbase, height = columns["wheelbase"], columns["mass_height"]
    braking = columns["grip"] * (here + there)  # every tyre at its grip
    sense = 1.0 if rig.axle == "front" else -1.0
    from_other_axle = wheelbase * here / (here + there)  # centre of mass, by statics at rest
    moments = (here + there) * from_other_axle + sense * braking * height
    assert np.sum(force[:, Z]) == pytest.approx(moments / wheelbase, rel=1e-12)
    np.testing.assert_allclose(force[:, X], -columns["grip"] * force[:, Z], rtol=1e-12)
    assert loads.braked[ROW["braking"]] == 1.0
    assert not np.any(loads.drive[0, ROW["braking"]])


def test_what_the_front_gains_in_braking_the_rear_loses(rig):
    columns, gained = {"lock_angle": np.zeros(1), **point_columns(rig)}, {}
    for axle in ("front", "rear"):
        loads = wheel_loads(columns, {**rig.words, "rig.axle": axle})
        gained[axle] = np.sum(loads.ground[0, ROW["braking"], :, Z])
    assert gained["front"] > 0
    assert gained["front"] == pytest.approx(-gained["rear"], rel=1e-12)


@pytest.mark.parametrize("key", ["pull_both", "pull_left", "pull_right"])
def test_each_pulling_wheel_is_in_balance_and_within_grip_and_engine(rig, key):
    columns, loads = loaded(rig)
    force, torque = whole(loads, key), loads.drive[0, ROW[key]]
    np.testing.assert_allclose(torque, force[:, X] * columns["radius"], rtol=1e-12)
    held = {"pull_left": LEFT, "pull_right": RIGHT}.get(key)
    for side in (LEFT, RIGHT):
        grip = columns["grip_wedged"] if side == held else columns["grip"]
        assert force[side, X] <= grip * force[side, Z] * (1 + 1e-12)
    gearing = columns["first_ratio"] * columns["low_ratio"] * columns["axle_ratio"]
    most = columns["engine_torque"] * gearing * columns["driveline_efficiency"]
    assert np.sum(torque) <= most * (1 + 1e-12)
    assert np.sum(force[:, Z]) == pytest.approx(columns["axle_weight"], rel=1e-12)
    if held is not None:
        share = force[held, Z] / columns["axle_weight"]
        assert share == pytest.approx(columns["wedged_load"], rel=1e-12)


def test_grip_and_not_the_engine_limits_a_shaft_in_low_range(rig):
    """Common practice, no source."""
    columns, loads = loaded(rig)
    assert loads.engine_share[0] == 1.0
    twice, more = loaded(rig, engine_torque=2 * columns["engine_torque"])
    assert twice["engine_torque"] > columns["engine_torque"]
    pulls = [ROW["pull_both"]] + [ROW["pull_left"], ROW["pull_right"]] * (
        not rig.words["drive.lock"].startswith(("open", "limited"))
    )
    np.testing.assert_array_equal(more.drive[:, pulls], loads.drive[:, pulls])


def test_without_a_low_range_a_weak_engine_limits_it(rig):
    """Common practice, no source."""
    columns, loads = loaded(
        locked(rig, "locks on command"), low_ratio=1.0, first_ratio=1.0, engine_torque=60.0
    )
    assert loads.engine_share[0] < 1.0
    most = 60.0 * columns["axle_ratio"] * columns["driveline_efficiency"]
    assert np.max(loads.drive[0, ROW["pull_left"]]) == pytest.approx(most, rel=1e-12)


def test_a_lock_can_put_more_on_one_shaft_than_an_open_differential(rig):
    """Gillespie, ch. 2: open, both sides get what the weaker holds; locked, each what it holds."""
    row = ROW["pull_left"]
    loads = {kind: loaded(locked(rig, kind))[1] for kind in ("open", "locks on command")}
    columns = loaded(rig)[0]
    held = columns["grip_wedged"] * columns["wedged_load"] * columns["axle_weight"]
    locked_up = loads["locks on command"].drive[0, row]
    assert locked_up[LEFT] == pytest.approx(held * columns["radius"], rel=1e-12)
    assert locked_up[LEFT] > 1.5 * loads["open"].drive[0, row, LEFT]


def test_a_slide_puts_its_energy_into_the_tyre(rig):
    """Energy: m v^2 / 2 = F^2 / (2 k)."""
    columns, loads = loaded(rig)
    moving = columns["axle_weight"] / GRAVITY * columns["slide_speed"] ** 2 / 2
    for key, side, sense in (("slide_left", LEFT, -1.0), ("slide_right", RIGHT, 1.0)):
        push = loads.ground[0, ROW[key]]
        stored = push[side, Y] ** 2 / (2 * columns["lateral_stiffness"])
        assert stored == pytest.approx(moving, rel=1e-12)
        assert np.sign(push[side, Y]) == sense  # the rut pushes the leading wheel inwards
        assert np.count_nonzero(push) == 1


def test_a_landing_stops_the_fall(rig):
    """Energy: W (h + x) = k x^2 / 2, with x = F / k."""
    columns, loads = loaded(rig)
    force = np.sum(whole(loads, "landing")[:, Z])
    give = force / columns["landing_stiffness"]
    fallen = columns["axle_weight"] * (columns["landing_drop"] + give)
    assert columns["landing_stiffness"] * give**2 / 2 == pytest.approx(fallen, rel=1e-12)
    assert force >= 2 * columns["axle_weight"]


def test_a_strike_pushes_from_the_edge_through_the_wheel_centre(rig):
    """Geometry of a circle on an edge, and energy of the speed toward the edge."""
    columns, loads = loaded(rig)
    radius, ledge = columns["radius"], columns["strike_height"]
    reach = np.sqrt(radius**2 - (radius - ledge) ** 2)  # edge ahead of the wheel centre
    for key, side, sense in (("strike_left", LEFT, 1.0), ("strike_right", RIGHT, -1.0)):
        push = loads.hub[0, ROW[key], side]
        assert push[Z] * reach == pytest.approx(-push[X] * (radius - ledge), rel=1e-9)
        toward = columns["strike_speed"] * reach / radius
        mass = columns["strike_share"] * columns["axle_mass"]
        stored = (push[X] ** 2 + push[Z] ** 2) / (2 * columns["tyre_stiffness"])
        assert stored == pytest.approx(mass * toward**2 / 2, rel=1e-9)
        assert push[X] < 0
        assert not np.any(loads.hub[0, ROW[key], RIGHT if sense > 0 else LEFT])


def test_a_hung_wheel_leaves_everything_to_the_other(rig):
    columns, loads = loaded(rig)
    for key, side in (("hung_left", LEFT), ("hung_right", RIGHT)):
        force = whole(loads, key)
        assert force[side, Z] == pytest.approx(columns["hung_factor"] * columns["axle_weight"])
        assert np.count_nonzero(force) == 1


def test_a_rock_lifts_the_centre_and_the_wheels_carry_nothing(rig):
    columns, loads = loaded(rig)
    lifted = loads.centre[0, ROW["rock"]]
    assert lifted[Z] == pytest.approx(columns["rock_factor"] * columns["axle_weight"])
    assert not np.any(whole(loads, "rock"))
    others = np.delete(loads.centre[0], ROW["rock"], axis=0)
    assert not np.any(others)


@pytest.mark.parametrize(("key", "toward"), [("cornering_left", 1.0), ("cornering_right", -1.0)])
def test_a_turn_is_in_balance_about_the_ground(rig, key, toward):
    """Gillespie, ch. 6, rigid vehicle: (N_outer - N_inner) t / 2 = m a_y h."""
    columns, loads = loaded(rig)
    force = whole(loads, key)
    inertia = columns["corner_share"] * columns["axle_weight"]
    assert np.sum(force[:, Y]) == pytest.approx(toward * inertia, rel=1e-12)
    assert np.sum(force[:, Z]) == pytest.approx(columns["axle_weight"], rel=1e-12)
    rolled = toward * (force[RIGHT, Z] - force[LEFT, Z]) * columns["track"] / 2
    assert rolled == pytest.approx(inertia * columns["mass_height"], rel=1e-12)
    np.testing.assert_allclose(force[:, Y] / force[:, Z], toward * columns["corner_share"])


@pytest.mark.parametrize("pair", ["pull", "slide", "hung", "strike", "cornering"])
def test_a_case_and_its_twin_are_mirror_images(rig, pair):
    _, loads = loaded(rig)
    mirror = np.array([1.0, -1.0, 1.0])
    left, right = ROW[f"{pair}_left"], ROW[f"{pair}_right"]
    for force in (loads.ground, loads.hub):
        np.testing.assert_allclose(force[:, left], force[:, right, ::-1] * mirror, atol=1e-9)
    np.testing.assert_array_equal(loads.drive[:, left], loads.drive[:, right, ::-1])


def test_a_heavier_rig_is_no_easier_on_its_axle(rig):
    """Common practice, no source: more weight, more of everything that the ground does."""
    columns, light = loaded(rig)
    _, heavy = loaded(rig, axle_weight=1.2 * columns["axle_weight"])
    for row in range(len(CASES)):
        if not CASES[row].key.startswith("strike"):  # its mass is the axle's own
            pushes = [np.sum(np.abs(each.ground[0, row])) for each in (light, heavy)]
            pushes = np.add(pushes, [abs(each.centre[0, row, Z]) for each in (light, heavy)])
            assert pushes[1] > pushes[0], CASES[row].key


@pytest.mark.parametrize("case", live_cases(), ids=lambda case: case.key)
def test_reference_hardness_reads_back_as_the_reference(rig, case):
    columns, _ = loaded(rig)
    arrays = {name: np.array([value]) for name, value in columns.items()}
    told, _ = in_ground_terms(case, np.ones(1), arrays)
    named = {
        "strike": "strike_speed",
        "slide": "slide_speed",
        "landing": "landing_drop",
        "hung": "hung_factor",
        "rock": "rock_factor",
        "cornering": "corner_share",
    }
    wanted = named.get(case.key.split("_")[0])
    assert told[0] == pytest.approx(columns[wanted] if wanted else 1.0, rel=1e-9)


@pytest.mark.parametrize("hardness", [0.4, 0.8, 1.7])
def test_a_drop_told_lands_as_hard_as_was_said(rig, hardness):
    columns, loads = loaded(rig)
    arrays = {name: np.array([value]) for name, value in columns.items()}
    [landing] = [case for case in CASES if case.key == "landing"]
    told, kind = in_ground_terms(landing, np.array([hardness]), arrays)
    _, again = loaded(rig, landing_drop=float(told[0]))
    wanted = hardness * loads.ground[0, ROW["landing"], :, Z]
    bare = columns["axle_weight"]  # twice the weight is met from no height at all, so half of it
    np.testing.assert_allclose(
        again.ground[0, ROW["landing"], :, Z], np.maximum(wanted, bare), rtol=1e-9
    )
    assert kind == "length"
