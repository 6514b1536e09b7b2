"""Places taped wrong, rods that cannot reach, wheels asked too far: an error, never a wrong pose.

Every pose is judged by rotations of a general library (SciPy) alone: wheels at their heights, rods
of four at their lengths, rods of five in balance, and none on the far side of a dead centre.
"""

import re

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from axlewright.errors import AxlewrightError
from axlewright.geometry import hardpoints, rod_in_words
from axlewright.geometry.moving import at_ride, motion, refuse_unreachable
from axlewright.geometry.points import drag_on, rod_names
from axlewright.physics import linkage, rod_bind
from axlewright.rig import geometry_columns, rig_from_text
from geometry.cases import HOME, demo

HERON = (HOME / "examples/rigs/heron.toml").read_text("utf-8")
BARE = HERON[: HERON.index("[points]")] + HERON[HERON.index("[[condition]]") :]
LAYOUTS = ("three arms", "four arms", "angled arms", "radius arms")


def ready(rig):
    return at_ride(hardpoints(geometry_columns(rig), rig.words))[0]


def laid_out(arms):
    return ready(rig_from_text(BARE.replace('arms = "three arms"', f'arms = "{arms}"')))


SHAPES = {
    **{arms: laid_out(arms) for arms in LAYOUTS},
    "leaves": ready(demo("stork-rear")),
    "heron as taped": ready(demo("heron")),
    "radius arms as taped": ready(demo("wagtail")),
}


def parts(pose):
    """Turn and middle of an axle by SciPy: yaw, then pitch, then roll about the turned axes."""
    return Rotation.from_euler("ZYX", pose[[5, 4, 3]]), pose[:3]


def gaps(points, pose):
    turn, middle = parts(pose)
    ends = turn.apply([rod.axle[0] for rod in points.rods]) + middle
    away = np.linalg.norm(ends - [rod.frame[0] for rod in points.rods], axis=1)
    return away - [float(rod.length[0]) for rod in points.rods]


def energy(points, free, heights):
    """Strain energy with the wheels held at their heights; free are ahead, across, pitch, yaw."""
    x, y, pitch, yaw = free
    lean = (heights[0] - heights[1]) / (2.0 * float(points.half_track[0]) * np.cos(pitch))
    pose = np.array([x, y, 0.5 * sum(heights), np.arcsin(lean), pitch, yaw])
    stiff = [float(rod.stiffness[0]) for rod in points.rods]
    return 0.5 * float(np.sum(stiff * gaps(points, pose) ** 2)) / max(stiff)


def judged(points, heights, arm=None):
    """Pose it, and judge by the outside rules whatever comes: a pose, or words of an error."""
    made = motion(points, [heights], arm)
    if made.status[0] != linkage.POSED:
        assert np.isnan(made.wheels[0]).all()
        with pytest.raises(AxlewrightError) as told:
            refuse_unreachable(points, made, "there")
        return None, told.value.problem
    pose = made.pose[0]
    turn, middle = parts(pose)
    half = float(points.half_track[0])
    wheels = turn.apply([[0.0, half, 0.0], [0.0, -half, 0.0]]) + middle
    assert wheels[:, 2] == pytest.approx(heights, abs=1e-9)
    off = gaps(points, pose)
    for rod in points.rods:
        line = turn.apply(rod.axle[0]) + middle - rod.frame[0]
        assert line @ (rod.axle[0] - rod.frame[0]) > 0.0  # on the side where it was taped
    if len(points.rods) == 4:
        assert off == pytest.approx(0.0, abs=1e-8)
    else:
        assert np.max(np.abs(off)) <= rod_bind.MOST_GIVE
        free, least = pose[[0, 1, 4, 5]], energy(points, pose[[0, 1, 4, 5]], heights)
        for step in 1e-5 * np.eye(4):  # nothing near it strains the bushings less
            for way in (1.0, -1.0):
                assert energy(points, free + way * step, heights) >= least - 1e-13
    if points.steers:
        steered(points, made, turn, middle, arm)
    return pose, ""


def steered(points, made, turn, middle, arm):
    """Tie rod and drag link have their lengths with both knuckles turned as told."""
    at, ends, drag = points.at, [], None
    for place, side in enumerate(("left", "right")):
        upper, lower = at[f"kingpin_upper_{side}"][0], at[f"kingpin_lower_{side}"][0]
        axis, pivot = (upper - lower) / np.linalg.norm(upper - lower), 0.5 * (upper + lower)
        knuckle = Rotation.from_rotvec(made.wheels[0, place, 0] * axis)
        ends.append(turn.apply(pivot + knuckle.apply(at[f"tie_rod_end_{side}"][0] - pivot)))
        if drag_on(points) == place:
            drag = turn.apply(pivot + knuckle.apply(at["drag_link_wheel"][0] - pivot)) + middle
    tie = np.linalg.norm(at["tie_rod_end_left"][0] - at["tie_rod_end_right"][0])
    assert np.linalg.norm(ends[0] - ends[1]) == pytest.approx(tie, abs=1e-8)
    if drag is not None:
        pitman = at["drag_link_pitman"][0] if arm is None else arm[0]
        away = np.linalg.norm(drag - pitman)
        assert away == pytest.approx(float(points.drag_length[0]), abs=1e-8)


def named(points, told):
    """The error names a rod of this axle and says by how much, in mm or degrees."""
    rods = {rod_in_words(rod.name) for rod in points.rods} | {"tie rod", "drag link"}
    assert any(f"{rod} " in told for rod in rods), told
    assert re.search(r"\d+ mm|\d+°", told), told


shove = st.floats(-0.4, 0.4)
height = st.floats(-0.45, 0.45)
layout = st.sampled_from(sorted(SHAPES))
MANY = settings(max_examples=250, deadline=None)


@MANY
@given(
    arms=layout,
    number=st.integers(0, 100),
    by=st.tuples(shove, shove, shove),
    at=st.tuples(height, height),
)
def test_a_place_taped_wrong(arms, number, by, at):
    names = sorted(SHAPES[arms].at)
    points = SHAPES[arms].moved(names[number % len(names)], by)
    pose, told = judged(points, at)
    if pose is None:
        named(points, told)


@MANY
@given(
    arms=layout, number=st.integers(0, 10), by=st.floats(-0.6, 0.6), at=st.tuples(height, height)
)
@example(arms="angled arms", number=0, by=0.4375, at=(0.4375, 0.4375))
def test_a_rod_of_a_wrong_length(arms, number, by, at):
    rods = SHAPES[arms].rods
    points = SHAPES[arms].longer(rods[number % len(rods)].name, by)
    pose, told = judged(points, at)
    if pose is None:
        named(points, told)


@MANY
@given(arms=layout, one=st.integers(0, 100), other=st.integers(0, 100), mirror=st.booleans())
@example(arms="radius arms", one=0, other=84, mirror=False)
def test_places_swapped_or_mirrored_between_rods_that_are_there(arms, one, other, mirror):
    at = dict(SHAPES[arms].at)
    names = sorted(at)
    one, other = names[one % len(names)], names[other % len(names)]
    if mirror:
        at[one] = at[one] * np.array([1.0, -1.0, 1.0])
    else:
        at[one], at[other] = at[other], at[one]
    points = SHAPES[arms].with_places(at)
    pose, told = judged(points, (0.0, 0.0))
    if pose is None:
        named(points, told)


@pytest.mark.parametrize("arms", sorted(SHAPES))
def test_walked_there_or_leapt_it_is_the_same_pose(arms):
    # geometry: through travel an axle moves without a jump
    points = SHAPES[arms]
    for way in ((1.0, 1.0), (-1.0, -1.0), (1.0, -1.0), (1.0, 0.0)):
        reach = np.linspace(0.0, 0.3, 61)
        made = motion(points, reach[:, None] * np.array(way))
        good = made.status == linkage.POSED
        last = int(np.argmin(good)) if not good.all() else len(reach)
        assert last > 30  # 150 mm and more
        assert not good[last:].any()
        assert np.max(np.abs(np.diff(made.pose[:last], axis=0))) < 0.02


@pytest.mark.parametrize("arms", sorted(SHAPES))
def test_wheels_too_far_name_a_rod(arms):
    points = SHAPES[arms]
    for at in ((1.2, 1.2), (-1.2, -1.2), (0.9, -0.9), (2.5, 2.5)):
        pose, told = judged(points, at)
        if pose is None:
            named(points, told)
    assert judged(points, (2.5, 2.5))[0] is None


@pytest.mark.parametrize("arms", ["four arms", "radius arms"])
def test_bushings_give_millimetres_and_no_more(arms):
    # common practice, no source: an arm's bushing gives some millimetres, never a hand's breadth
    name = "upper_arm_left" if arms == "four arms" else "arm_left"
    points = SHAPES[arms]
    assert judged(points.longer(name, 0.004), (0.0, 0.0))[0] is not None
    pose, told = judged(points.longer(name, 0.3), (0.0, 0.0))
    assert pose is None
    assert f"{rod_in_words(name)} is 300 mm longer" in told


def test_crossed_wheels_twist_both_radius_arms_alike():
    # geometry: two level arms alike on both sides, one wheel up, the other as far down
    points = SHAPES["radius arms"]
    made = motion(points, [[0.15, -0.15]])
    off = dict(zip((rod.name for rod in points.rods), made.gap[0], strict=True))
    assert off["arm_left"] == pytest.approx(-off["arm_right"], rel=0.05)
    assert abs(made.pose[0, 4]) < np.radians(1.5)


def test_a_drag_link_that_cannot_reach_is_named_and_by_how_much():
    points = SHAPES["heron as taped"]
    at, drag = points.at, float(points.drag_length[0])
    way = at["drag_link_pitman"] - at["drag_link_wheel"]
    far = at["drag_link_wheel"] + (1.0 + 0.9 / drag) * way  # 900 mm more than its length
    pose, told = judged(points, (0.0, 0.0), far)
    assert pose is None
    short = float(re.search(r"drag link would have to be (\d+) mm longer", told).group(1))
    # triangle: the knuckle's arm turned towards the drop arm takes off no more than its own length
    upper, lower = at["kingpin_upper_right"], at["kingpin_lower_right"]
    if drag_on(points) == linkage.ON_LEFT:
        upper, lower = at["kingpin_upper_left"], at["kingpin_lower_left"]
    arm = np.linalg.norm(at["drag_link_wheel"] - 0.5 * (upper + lower))
    assert 900.0 - 2e3 * arm < short <= 900.0


AXES = ("ahead", "left", "up")
ENDS = ("arm_frame", "arm_axle", "upper_arm_frame", "upper_arm_axle", "third_arm_frame",
        "third_arm_axle", "track_bar_frame", "track_bar_axle", "arm_axle_far")  # fmt: skip


def taped(arms):
    """Whole text of a rig with every end of its rods taped where the layout has it."""
    text = BARE.replace('arms = "three arms"', f'arms = "{arms}"')
    columns = geometry_columns(rig_from_text(text))
    places = {}
    for name in ENDS:
        for side in (".left", ".right", ""):
            stem = f"point_{name}{side.replace('.', '_')}"
            if f"{stem}_up" in columns:
                places[name + side] = [float(columns[f"{stem}_{axis}"][0]) for axis in AXES]
    return text, places


def told_as(text, places):
    lines = []
    for name, (ahead, left, up) in places.items():
        way = "ahead" if ahead >= 0.0 else "behind"
        hand = "left" if left >= 0.0 else "right"
        lines.append(
            f'{name} = "{abs(ahead) * 1e3:.1f} mm {way}, {abs(left) * 1e3:.1f} mm {hand}, '
            f'{up * 1e3:.1f} mm up"'
        )
    head = text.index("[[condition]]")
    return text[:head] + "[points]\n" + "\n".join(lines) + "\n\n" + text[head:]


@pytest.mark.parametrize("arms", LAYOUTS)
def test_a_side_or_a_rod_taped_the_wrong_way_round_is_told_when_it_is_read(arms):
    text, places = taped(arms)
    assert ready(rig_from_text(told_as(text, places))).rods
    wrong = []
    for name in places:
        if name.endswith(".left"):
            other = name.replace(".left", ".right")
            wrong.append((name, {name: places[other], other: places[name]}))
            wrong.append((name, {name: [places[name][0], -places[name][1], places[name][2]]}))
    for rod in rod_names({"held_by.arms": arms}):
        side = next((f".{each}" for each in ("left", "right") if rod.endswith(each)), "")
        stem = rod.removesuffix(f"_{side[1:]}") if side else rod
        near, far = f"{stem}_frame{side}", f"{stem}_axle{side}"
        if near in places:
            wrong.append((near, {near: places[far], far: places[near]}))
    for name, instead in wrong:
        with pytest.raises(AxlewrightError) as told:
            ready(rig_from_text(told_as(text, {**places, **instead})))
        assert name.split(".")[0].removesuffix("_frame") in str(told.value), (name, instead)
