"""The drawing measured with a ruler: what it shows must be what was told, and where it stands."""

import re
from itertools import combinations
from math import hypot, pi
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from axlewright.rig import change_from_text, changed_rig, load_change, load_rig, point_columns
from axlewright.tables import consequences
from axlewright.views.drawing_curves import clear_place, spread
from axlewright.views.drawing_ink import ADVANCE
from axlewright.views.drawing_sheet import (
    Flag,
    blank_drawing,
    drawing,
    drawing_in_words,
    flag_views,
)

EXAMPLES = Path(__file__).parents[2] / "examples"
SVG = "{http://www.w3.org/2000/svg}"
INCH = 25.4
RULER = 0.5  # mm of the real thing
FLAGS = (
    Flag(number=1, part="tube_joint", closeness="over"),
    Flag(number=2, part="inner_shaft_right", closeness="close"),
    Flag(number=3, part="knuckle_left", closeness="near"),
    Flag(number=4, part="tie_rod", closeness="room"),
    Flag(number=5, part="track_bar_bracket_axle", closeness="close"),
)


def rig_of(name):
    rig = load_rig(str(EXAMPLES / "rigs" / f"{name}.toml"))
    if name == "heron":
        change = load_change(str(EXAMPLES / "changes" / "truss-and-gussets.toml"))
        sleeve = change_from_text(
            'axlewright_change = 1\nname = "sleeve"\n'
            '[[step]]\nset = "sleeve.wall.right"\nto = "6 mm"\n'
        )
        rig = changed_rig(changed_rig(rig, change)[0], sleeve)[0]
    return rig


def drawn(rig, flags=(), **more):
    return ET.fromstring(drawing(point_columns(rig), rig.words, rig.tyre, flags, **more))  # noqa: S314


def view(root, name):
    return next(group for group in root.iter(f"{SVG}g") if group.get("data-view") == name)


def mark(group, name):
    """Ends of a marked line, whether it is drawn or only there to be found."""
    for element in group.iter():
        if element.get("data-mark") == name:
            numbers = [float(text) for text in re.findall(r"-?[\d.]+", element.get("d"))]
            return tuple(numbers[:2]), tuple(numbers[-2:])
    raise AssertionError(name)


def length(group, name):
    (x1, y1), (x2, y2) = mark(group, name)
    return hypot(x2 - x1, y2 - y1)


def corners(path):
    """Points that a path of M, L, l, h, v and half circles runs through."""
    points, x, y = [], 0.0, 0.0
    for letter, text in re.findall(r"([MLlhvaZ])([^MLlhvaZ]*)", path):
        numbers = [float(each) for each in re.findall(r"-?[\d.]+", text)]
        if letter in "ML":
            x, y = numbers
        elif letter == "l":
            for dx, dy in zip(numbers[::2], numbers[1::2], strict=True):
                x, y = x + dx, y + dy
                points.append((x, y))
        elif letter == "h":
            x += numbers[0]
        elif letter == "v":
            y += numbers[0]
        elif letter == "a":
            points += [(x, y - numbers[0]), (x, y + numbers[0])]
            x, y = x + numbers[5], y + numbers[6]
        points.append((x, y))
    return points


def paths(group, part):
    """Every path of a part; of both sides where the key names none."""
    wanted = {part, f"{part}_left", f"{part}_right"}
    for element in group.iter():
        if element.get("data-part") in wanted:
            yield from element.iter(f"{SVG}path")


def boxes(group, part):
    """Left, top, right and bottom of every shape of a part."""
    found = []
    for element in paths(group, part):
        across, down = zip(*corners(element.get("d")), strict=True)
        found.append((min(across), min(down), max(across), max(down)))
    return found


def test_lengths_measured_back_are_those_of_the_tape():
    # As written in examples/rigs/heron.toml; a paper strip gives the girth, pi times the diameter.
    root = drawn(rig_of("heron"))
    behind, plan = view(root, "across"), view(root, "plan")
    told = {
        "track": 1675.0,
        "springs": 915.0,
        "tube_bare_left": 300.0,
        "tube_bare_right": 618.0,
        "hub_height_left": 432.0,
        "hub_height_right": 430.0,
    }
    assert {name: length(behind, name) for name in told} == pytest.approx(told, abs=RULER)
    across = (9.0 + 7.0 / 16.0) * INCH / pi
    for group in (behind, plan):
        left, top, right, bottom = boxes(group, "tube_right")[0]
        assert (right - left, bottom - top) == pytest.approx((618.0, across), abs=RULER)
    (tyre_left, _), _ = mark(behind, "tyre_centre_left")
    (tyre_right, _), _ = mark(behind, "tyre_centre_right")
    assert tyre_right - tyre_left == pytest.approx(1675.0, abs=RULER)
    (face, _), _ = mark(behind, "mounting_face_left")
    assert face - tyre_left == pytest.approx(25.0, abs=RULER)  # ET -25: the face stands inboard
    truss = boxes(behind, "truss")[-1]
    assert -0.5 * (truss[1] + truss[3]) == pytest.approx(90.0, abs=RULER)
    assert truss[3] - truss[1] == pytest.approx(38.1, abs=RULER)


def test_the_tyre_is_as_large_as_its_sidewall_says_and_stands_on_the_ground():
    root = drawn(rig_of("heron"))
    tops = boxes(view(root, "plan"), "tyre_left")
    assert min(box[1] for box in tops) == pytest.approx(-37.0 * INCH / 2.0, abs=RULER)
    feet = boxes(view(root, "across"), "tyre_left")
    assert max(box[3] for box in feet) == pytest.approx(432.0, abs=RULER)
    (_, left), (_, right) = mark(view(root, "across"), "ground")
    assert (left, right) == pytest.approx((432.0, 430.0), abs=RULER)
    half = length(view(root, "side"), "foot") / 2.0  # the flat: a chord of the free circle
    assert half == pytest.approx(((37.0 * INCH / 2.0) ** 2 - 432.0**2) ** 0.5, abs=RULER)


def test_the_scale_bar_is_half_a_metre():
    assert length(view(drawn(rig_of("heron")), "key"), "scale_bar") == pytest.approx(500.0)


def test_assumed_rods_are_to_scale_too():
    rig = rig_of("wagtail")
    columns = point_columns(rig)
    span = 1e3 * float(columns["track_bar_span"][0])
    assert length(view(drawn(rig), "across"), "track_bar") == pytest.approx(span, abs=RULER)


def test_all_views_share_one_scale_and_the_plan_stands_under_the_view_from_behind():
    root = drawn(rig_of("heron"), FLAGS)
    moves = {
        name: re.fullmatch(r"translate\((\S+) (\S+)\)", view(root, name).get("transform"))
        for name in ("across", "plan", "side", "key")
    }
    assert all(moves.values())
    assert moves["across"][1] == moves["plan"][1]
    assert moves["across"][2] == moves["side"][2]  # one ground line, one axle line


def test_left_is_on_the_left():
    root = drawn(rig_of("heron"))
    assert mark(view(root, "across"), "hub_height_left")[0][0] < -837.5
    assert mark(view(root, "across"), "tube_bare_left")[0][0] < 0.0
    assert boxes(view(root, "plan"), "knuckle_left")[0][2] < 0.0


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
@pytest.mark.parametrize("part", sorted(consequences()))
def test_a_flag_points_into_its_part_wherever_the_part_is_drawn(name, part):
    root = drawn(rig_of(name), [Flag(number=1, part=part, closeness="close")])
    for shown in flag_views(part):
        group = view(root, shown)
        (flag,) = [each for each in group.iter() if each.get("class") == "flag"]
        x, y = float(flag.get("data-x")), float(flag.get("data-y"))
        found = boxes(group, part)
        inside = any(
            left - RULER <= x <= right + RULER and top - RULER <= y <= bottom + RULER
            for left, top, right, bottom in found
        )
        assert inside or not found, (shown, (x, y), found)


MUST_SHOW = {
    "heron": "tube_left tube_joint_right centre sleeve_right end_forging_left knuckle_right "
    "steering_arm ball_joints_left hub_bearing_left spindle_right inner_shaft_left stub_shaft_left "
    "spline_left cross_joint_right yoke_ears_left side_gears ring_and_pinion carrier_caps "
    "propeller_shaft tie_rod drag_link track_bar track_bar_bracket_axle track_bar_bracket_frame "
    "link_brackets_left links spring_seat_right wheel_studs_left bracket_bolts locking_hub_right",
    "stork-rear": "tube_left tube_joint_right centre cover end_forging_left hub_bearing_left "
    "spindle_right inner_shaft_left spline_left spring_seat_right wheel_studs_left",
}


@pytest.mark.parametrize("name", sorted(MUST_SHOW))
def test_the_parts_of_the_orders_are_all_drawn(name):
    behind = view(drawn(rig_of(name)), "across")
    assert [part for part in MUST_SHOW[name].split() if not boxes(behind, part)] == []


def test_twins_without_a_side_get_a_flag_each():
    group = view(drawn(rig_of("heron"), FLAGS[:1]), "across")
    places = [
        float(each.get("data-x")) for each in group.iter() if each.get("data-for") == "tube_joint"
    ]
    bare = [mark(group, f"tube_bare_{side}") for side in ("left", "right")]
    assert places == pytest.approx([bare[0][1][0], bare[1][0][0]], abs=RULER)


def test_closeness_is_outline_and_hatching_and_never_colour():
    text = drawing(*parts_of("heron"), FLAGS, stops=("a crack",))
    root = ET.fromstring(text)  # noqa: S314
    used = {element.get(key) for element in root.iter() for key in ("fill", "stroke")} - {None}
    assert {each for each in used if not each.startswith("url(#")} == {
        "none",
        "currentColor",
        "#000",
        "#fff",
    }  # the ground that hides what lies behind, and the band of a STOP
    behind = view(root, "across")
    for closeness, part in (("over", "tube_joint_left"), ("near", "knuckle_left")):
        found = [each.get("fill") for each in paths(behind, part)]
        assert found
        assert set(found) == {f"url(#axle-{closeness})"}
    assert not any((each.get("fill") or "").startswith("url") for each in paths(behind, "tie_rod"))
    thin = root.get("stroke-width")
    widths = {
        part: float(next(paths(behind, part)).get("stroke-width", thin))
        for part in ("tube_joint_left", "knuckle_left", "spindle_right")
    }
    assert widths["tube_joint_left"] > widths["knuckle_left"] > widths["spindle_right"]


def parts_of(name):
    rig = rig_of(name)
    return point_columns(rig), rig.words, rig.tyre


def test_a_stop_is_a_black_band_above_everything():
    stop = "steering arm (left), cracked: do not drive, whatever else this sheet says of it"
    root = drawn(rig_of("wagtail"), FLAGS[:2], stops=(stop,))
    first = next(each for each in root if each.tag == f"{SVG}g")
    assert first.get("data-view") == "stop"
    (band,) = [each for each in first.iter() if each.get("class") == "stop-band"]
    assert band.get("fill") == "#000"
    assert stop in " ".join(first.itertext()).replace("  ", " ")
    bottom = float(band.get("y")) + float(band.get("height"))
    lift = re.findall(r"[-\d.]+", view(root, "across").get("transform"))[1]
    highest = min(float(each.get("y")) for each in view(root, "across").iter(f"{SVG}text")) + float(
        lift
    )
    assert highest > bottom
    assert "stop-band" not in drawing(*parts_of("wagtail"))


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_the_svg_hangs_together_and_asks_for_nothing(name):
    text = drawing(*parts_of(name), FLAGS, stops=("a crack",), name="here")
    root = ET.fromstring(text)  # noqa: S314
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    assert set(re.findall(r"url\(#([^)]+)\)", text)) <= set(ids)
    assert all(each.startswith("here") for each in ids)
    rest = text.replace("http://www.w3.org/2000/svg", "")
    assert not re.search(r"https?:|href|@import|<image|<style|data:", rest)


def lettering(group):
    """Box of every text: a monospaced face, so its width is known."""
    for element in group.iter(f"{SVG}text"):
        high, text = float(element.get("font-size")), element.text or ""
        wide = ADVANCE * high * len(text)
        left = (
            float(element.get("x"))
            - {"start": 0.0, "middle": 0.5, "end": 1.0}[element.get("text-anchor", "start")] * wide
        )
        base = float(element.get("y"))
        box = (left, base - 0.75 * high, left + wide, base + 0.2 * high)
        if element.get("transform"):  # read from the right: turned about its middle
            x, y = float(element.get("x")), base - 0.35 * high
            box = (x - 0.5 * high, y - 0.5 * wide, x + 0.5 * high, y + 0.5 * wide)
        if text.strip():
            yield text, box


LAYOUTS = [
    ("heron", {}),
    ("heron", {"held_by.arms": "four arms", "held_by.weight_on": "coil-over on a damper bracket"}),
    ("heron", {"steering.drive_side": "right", "steering.tie_rod_ahead": "yes"}),
    ("heron", {"kingpin.kind": "kingpins", "track_bar.on_axle": "left"}),
    ("heron", {"held_by.arms": "angled arms"}),
    ("wagtail", {}),
    ("wagtail", {"held_by.arms": "leaves", "held_by.weight_on": "leaf"}),
    ("stork-rear", {}),
    ("stork-rear", {"held_by.arms": "four arms", "held_by.weight_on": "coil on a seat"}),
]


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(("name", "words"), LAYOUTS)
def test_no_lettering_lies_on_other_lettering(name, words, system):
    rig = rig_of(name)
    for key, value in words.items():
        rig = rig.with_word(key, value)
    root = drawn(rig, FLAGS, system=system)
    for shown in ("across", "plan", "side", "key"):
        for (one, a), (other, b) in combinations(lettering(view(root, shown)), 2):
            apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
            assert apart, (shown, one, other)


def test_the_page_holds_everything_that_is_lettered():
    root = drawn(rig_of("heron"), FLAGS)
    left, top, wide, high = (float(each) for each in root.get("viewBox").split())
    for shown in ("across", "plan", "side", "key"):
        group = view(root, shown)
        x, y = (float(each) for each in re.findall(r"[-\d.]+", group.get("transform")))
        for text, box in lettering(group):
            assert left <= box[0] + x, text
            assert box[2] + x <= left + wide, text
            assert top <= box[1] + y, text
            assert box[3] + y <= top + high, text


def test_the_words_name_every_flag_with_its_side_and_closeness():
    told = drawing_in_words(*parts_of("heron"), FLAGS, stops=("a crack",))
    for flag, words in zip(
        FLAGS,
        (
            "either joint of tube and centre",
            "right inner shaft",
            "left knuckle",
            "tie rod",
            "track-bar bracket on the axle",
        ),
        strict=True,
    ):
        line = next(each for each in told.splitlines() if each.startswith(f"Flag {flag.number}:"))
        assert words in line
        assert flag.closeness in line
    assert "right of the middle" in told.splitlines()[3]
    assert "STOP: a crack" in told
    assert "1675 mm" in told
    root = drawn(rig_of("heron"), FLAGS, stops=("a crack",))
    title, desc = root.find(f"{SVG}title").text, root.find(f"{SVG}desc").text
    assert "front axle" in title
    assert all(f"Flag {flag.number}:" in desc for flag in FLAGS)
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == f"{'axle'}-title axle-desc"


def test_the_blank_sheet_has_a_box_for_every_measurement():
    root = ET.fromstring(blank_drawing(*parts_of("wagtail")))  # noqa: S314
    numbered = {text.split()[0] for text, _ in lettering(root) if text[0].isdigit()}
    assert numbered == {str(number) for number in range(1, 12)}
    assert "mm" not in " ".join(root.itertext())


def test_one_view_alone_keeps_its_side_names_and_leaves_the_measures_out():
    root = drawn(rig_of("heron"), FLAGS, views=("across",), measures=False, key=False)
    told = [text for text, _ in lettering(view(root, "across"))]
    assert {"left", "right"} <= set(told)
    assert not any("mm" in text for text in told)


def test_places_move_apart_as_little_as_it_takes():
    assert spread([0.0, 10.0], 5.0) == [0.0, 10.0]
    assert spread([0.0, 0.0], 4.0) == [-2.0, 2.0]
    assert spread([3.0, 0.0, 3.0], 2.0) == pytest.approx([2.0, 0.0, 4.0])
    assert clear_place(0.0, 10.0, [], 1.0) == 5.0
    assert abs(clear_place(0.0, 10.0, [5.0], 1.0) - 5.0) > 1.0
