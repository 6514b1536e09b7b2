"""Travel, forces, centres, arcs and room against closed forms and independent solvers.

Where no other source is named, numbers are of an independent script in double precision, solved
twice (own Newton steps, and a general multibody library) from the stated inputs.
"""

from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation

from axlewright.geometry import bind, clearance
from axlewright.geometry.moving import at_ride, motion, slopes
from axlewright.geometry.points import LEAF_SHARE, hardpoints, linkage_of
from axlewright.physics import linkage, rod_bind
from axlewright.rig import geometry_columns
from geometry.cases import DATA, MM, THREE, demo, three_arms

CONTACTS = np.array([[0.0, 0.78, -0.42], [0.0, -0.78, -0.42]])
SPRINGS = np.array([[0.02, 0.47, 0.07], [0.02, -0.47, 0.07]])
# case: loads (N) and their places, then lower left, lower right, upper, track bar, springs
STATICS = {
    "weight": ([[0, 0, 5000.0]] * 2, CONTACTS,
               [-138.83880800520555, -608.6117390748968, 742.0858192125932, 1.2538726967648017,
                4972.63019741453, 4933.784221605891]),
    "braking": ([[-4000.0, 0, 0]] * 2, CONTACTS,
                [-5784.453711675341, -11709.218666280252, 9359.168577398923, 15.813812418711112,
                 -776.3250191947109, -1266.2495356507477]),
    "sideways": ([[0, 3000.0, 0]] * 2, CONTACTS,
                 [793.7150692951009, -1031.2726142922365, 235.8525070026424, -5908.514710600268,
                  2947.2996473898856, -3554.9047548107023]),
    "drive": ([[3000.0, 0, 0]] * 2, CONTACTS,
              [4338.340283756506, 8781.913999710188, -7019.376433049192, -11.860359314033905,
               582.2437643960333, 949.6871517380608]),
    "strike": ([[-15000.0, 0, 0]], np.array([[0.0, 0.78, 0.0]]),
               [-19053.488729812947, 9725.187993472558, -5755.424296588702, -1809.5108391806716,
                -1654.5098081314934, 587.5588814431765]),
}  # fmt: skip


@pytest.mark.parametrize("case", STATICS)
def test_what_rods_and_springs_carry(case):
    forces, at, wanted = STATICS[case]
    found = bind.carried(three_arms(), np.array(forces), at, SPRINGS)
    assert found == pytest.approx(wanted, rel=1e-6, abs=1e-3)


def test_poses_come_through_the_hardpoints():
    for case in THREE["poses"]:
        if case["pitman"]:
            continue
        made = motion(three_arms(), MM * np.array([case["heights"]]))
        assert made.status[0] == linkage.POSED
        assert made.pose[0, [0, 1]] == pytest.approx(MM * np.array(case["pose"][:2]), abs=1e-6)
        assert made.pose[0, 3:] == pytest.approx(np.radians(case["pose"][2:]), abs=1e-6)
        wanted = np.radians(np.array(case["wheels"]))
        assert made.caster[0] == pytest.approx(wanted[:, 3], abs=1e-6)
        # the case is set with 0.10 degrees of toe-in a side, ours runs straight: in roll a part of
        # that shows as camber (exact with toe in tests/validation/test_linkage.py)
        toe = np.radians([-0.1, 0.1])
        assert made.heading[0] == pytest.approx(wanted[:, 1] - toe, abs=2e-5)


def test_roll_centre_instant_centre_and_anti_dive():
    found = slopes(three_arms(), np.zeros((1, 2)), front_share=1.0)
    told = THREE["slopes"]
    assert found.roll_centre[0] - 0.42 == pytest.approx(
        MM * told["roll"]["z_roll_centre_above_axle_mm"], abs=2e-6
    )
    assert found.roll_steer[0] == pytest.approx(told["roll"]["dyaw/droll"], abs=1e-5)
    assert found.instant[0] == pytest.approx(
        MM
        * np.array([told["heave"]["svic_x_from_axle_mm"], told["heave"]["svic_z_above_axle_mm"]]),
        rel=1e-5,
    )
    assert found.anti[0] == pytest.approx(0.865721534335297, abs=2e-6)
    part = slopes(three_arms(), np.zeros((1, 2)), front_share=0.65)
    assert part.anti[0] == pytest.approx(0.5627189973179431, abs=2e-6)


def test_braking_by_virtual_work():
    # what the springs give back equals what the brakes do: 1.009447 and 0.257734 of the case
    _, _, wanted = STATICS["braking"]
    work = (wanted[4] + wanted[5]) * 1.009447
    assert work == pytest.approx(-8000.0 * 0.257734, rel=2e-4)


@pytest.mark.parametrize(
    ("rise", "up", "shift"),
    [
        (0.0, 0.100, -5.799790502818837), (0.0, -0.050, -1.4462958217363848),
        (85.0, 0.050, 3.461282959695268), (85.0, 0.100, 4.036823155382649),
        (85.0, -0.050, -6.3819242526979), (85.0, -0.100, -15.750331174630446),
        (150.0, 0.100, 11.484455081777128), (0.0, -0.100, -5.799790502818837),
        (0.0, 0.050, -1.4462958217363848), (150.0, -0.100, -23.438950521116453),
        (150.0, -0.050, -10.175456599425956), (150.0, 0.050, 7.195505606397774),
    ],
)  # fmt: skip
def test_an_axle_on_parallel_arms_follows_the_track_bars_arc(rise, up, shift):
    # sqrt(L^2 - (h0 - z)^2) - Y0 with Y0 = 865 mm; arms level and equal, long, and the bar at x = 0
    bar = 0.865
    near = np.array([[-99, 0.4, 0], [-99, -0.4, 0], [-99, 0, 0.2], [0, 0.4325, MM * rise]])
    far = np.array([[0, 0.4, 0], [0, -0.4, 0], [0, 0, 0.2], [0, 0.4325 - bar, 0]])
    made = linkage.axle_poses(linkage.axle_linkage(near, far, 0.78), np.array([[up, up]]))
    # the frame's end is on the left: the closed form counts away from it; the arms are so long
    # that they neither pitch nor draw the axle back
    assert -made.pose[0, 1] == pytest.approx(MM * shift, abs=1e-6)


@pytest.mark.parametrize(
    ("drag_rise", "up", "steer"),
    [
        (103.17919075144509, -75.0, 0.20499623071137035),
        (103.17919075144509, 75.0, 0.198693326050072),
        (180.0, -75.0, -1.723551144447402), (180.0, 75.0, 2.0898374595230425),
        (85.0, -75.0, 0.6599645356172614), (85.0, 75.0, -0.2504836603715923),
    ],
)  # fmt: skip
def test_drag_link_against_track_bar_on_flat_arcs(drag_rise, up, steer):
    def shift(long, rise):
        return np.sqrt(long**2 + rise**2 - (rise - up) ** 2) - long

    told = np.degrees(np.arctan((shift(1050.0, drag_rise) - shift(865.0, 85.0)) / 165.0))
    assert told == pytest.approx(steer, abs=1e-9)


@pytest.mark.parametrize(
    ("up", "exact", "arc"),
    [(25.0, 0.744740934808874, 0.7447078449694686),
     (50.0, 2.987346881868916, 2.9868107601391216), (100.0, 12.08746872758013, 12.078438912577212),
     (150.0, 27.74913044400853, 27.699095081339408)],
)  # fmt: skip
def test_a_leaf_springs_pad_moves_on_three_quarters_of_its_half(up, exact, arc):
    long = LEAF_SHARE * 560.0
    told = long - np.sqrt(long**2 - up**2)
    assert told == pytest.approx(arc, abs=1e-6)
    assert told == pytest.approx(exact, rel=2e-3)


def test_the_leaf_axle_itself_moves_on_that_arc():
    rig = demo("stork-rear")
    columns = geometry_columns(rig)
    for side in ("left", "right"):  # a flat leaf with its eye 560 mm ahead
        columns[f"point_leaf_eye_{side}_ahead"] = np.array([0.56])
        columns[f"point_leaf_eye_{side}_up"] = columns[f"point_leaf_pad_{side}_up"]
    points = hardpoints(columns, rig.words)
    made = motion(points, [[0.1, 0.1], [0.15, 0.15]])
    assert made.pose[:, 0] == pytest.approx([0.012078438912577212, 0.0276990950813394], abs=1e-6)
    assert made.pose[:, 4] == pytest.approx(0.0, abs=1e-9)


def test_bushings_clamped_hanging_down():
    # arm 842 mm rising 90 mm, two bushings of 8 N m a degree, clamped 100 mm down
    each = np.degrees(8.0)
    twist = rod_bind.arm_twist(0.842, 0.09, -0.1)
    assert np.degrees(twist) == pytest.approx(6.905317971239625)
    torque = 2.0 * each * twist
    assert torque == pytest.approx(110.485087539834)
    level = np.sqrt(0.842**2 - 0.09**2)
    assert torque / level == pytest.approx(131.97351613617775)
    assert 4 * torque / level / 50e3 == pytest.approx(0.01055788129089422)
    assert np.degrees(rod_bind.arm_twist(0.842, 0.09, 0.1)) == pytest.approx(-6.816462493721408)
    # clamped hanging 100 mm down it twists through the same range, all of it to one side
    through = np.degrees(rod_bind.arm_twist(0.842, 0.09 - 0.1, -0.2))
    assert through == pytest.approx(13.721780464961034)
    assert 4 * torque / level == pytest.approx(527.894064544711)


def test_two_radius_arms_hold_against_roll():
    # derived: four bushings, each moved by half_apart x roll x across / length
    found = bind.radius_arm_roll_stiffness(1.2e6, 0.09, 0.42, 0.75)
    moved = 0.09 * 0.42 / 0.75
    assert found == pytest.approx(4 * 1.2e6 * moved**2)


@pytest.mark.oracle
@pytest.mark.parametrize("roll", [0.02, 0.1])
def test_radius_arms_in_roll_beside_a_general_optimiser(roll):
    # SciPy's least squares on the root of each rod's strain energy; the shared case's stiffness
    # and energy (47,958.7 N m/rad, 253.14 J at 80 mm on 780) agree as 1/2 K roll^2
    assert 0.5 * 47958.74914224096 * np.arcsin(80 / 780) ** 2 == pytest.approx(253.1398, rel=1e-5)
    rig = demo("wagtail")
    points, _ = at_ride(hardpoints(geometry_columns(rig), rig.words))
    near = np.stack([rod.frame[0] for rod in points.rods])
    far = np.stack([rod.axle[0] for rod in points.rods])
    own = np.array([rod.length[0] for rod in points.rods])
    stiff = np.array([rod.stiffness[0] for rod in points.rods])
    side = float(points.half_track[0]) * np.sin(roll)

    def strained(at, lean):
        x, y, pitch, yaw = at
        turned = np.arcsin(lean / (float(points.half_track[0]) * np.cos(pitch)))
        moved = Rotation.from_euler("ZYX", [yaw, pitch, turned]).apply(far)
        return np.sqrt(stiff) * (linkage.rod_lengths(near, np.add(moved, [x, y, 0.0])) - own)

    energy = [
        least_squares(strained, np.zeros(4), args=(lean,), xtol=1e-15, ftol=1e-15, gtol=1e-15).cost
        for lean in (0.0, side)
    ]
    wanted = 2.0 * (energy[1] - energy[0]) / roll**2
    assert wanted > 300.0
    assert bind.roll_bind(points, roll) == pytest.approx(wanted, rel=1e-6)


@pytest.mark.parametrize(
    ("beyond", "height", "degrees"),
    [
        (0.75, 0.55, 42.72549619648308),
        (0.9, 0.5, 32.49904826713395),
        (0.6, 0.6, 57.397293643049686),
    ],
)
def test_approach_angle(beyond, height, degrees):
    assert np.degrees(clearance.approach_angle(beyond, height, 0.395)) == pytest.approx(degrees)


def test_breakover_angle():
    found = np.degrees(clearance.breakover_angle(2.62, 0.28, 0.395))
    assert found == pytest.approx(24.925998374734206)


@pytest.mark.parametrize(
    ("kilopascal", "stiffness"),
    [(80, 126.40288618864516), (120, 172.68785803296774), (170, 230.54407283837097),
     (240, 311.5427735659355), (300, 380.97023133241936)],
)  # fmt: skip
def test_stiffness_of_a_tyre(kilopascal, stiffness):
    # 285/70R17; Tire Science and Technology 33(3) 136, coefficients from memory
    found = clearance.tyre_stiffness(1e3 * kilopascal, 0.285, 17 * 0.0254, 70.0)
    assert found == pytest.approx(1e3 * stiffness, rel=1e-6)


def test_arms_that_fight_through_the_hardpoints():
    four = DATA["four_arms"]
    case = next(
        each
        for each in four["forced"]
        if "upper" in str(each["longer"]) and each["heights"] == [0, 0]
    )
    ready, _ = at_ride(three_arms())
    rods = tuple(
        type(ready.rods[0])(
            name=name,
            frame=MM * np.array([rod[0]]),
            axle=MM * np.array([rod[1]]),
            length=linkage.rod_lengths(MM * np.array([rod[0]]), MM * np.array([rod[1]]))
            + MM * case["longer"].get(name, 0.0),
            stiffness=np.array([1e3 * rod[2]]),
        )
        for name, rod in four["rods"].items()
    )
    points = replace(ready, rods=rods)
    assert linkage_of(points, steers=False).rods == 5
    found = bind.pulls(points, np.zeros((1, 2)))
    assert found[0] == pytest.approx(case["pull"], rel=1e-3, abs=1.0)
