"""The drawing on a page: what can be tapped, what is still empty, and what is said of each."""

import re
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from axlewright.rig import FIRST_FIELDS, load_rig, parse_tyre, point_columns
from axlewright.strength import assess_rig
from axlewright.tables import consequences
from axlewright.views.drawing_links import ASKED_AT, SHAPED_BY, called
from axlewright.views.drawing_sheet import Flag, Links, drawing
from axlewright.views.page_picture import answer_picture, growing_picture, usual_rig

EXAMPLES = Path(__file__).parents[2] / "examples"
SVG = "{http://www.w3.org/2000/svg}"
LETTERED = {  # paths of the drawing's numbers and words: the thirteen but condition and use
    each.path
    for each in FIRST_FIELDS
    if each.question not in {None, 12, 13} and each.path != "drive.unlocking_hubs"
}
SIDELESS = {each for each in LETTERED if each != "wheel.spacer"}  # told beside the offset


def assessed(name):
    return assess_rig(load_rig(str(EXAMPLES / "rigs" / f"{name}.toml")), draws=40)


def picture(name="heron"):
    links = Links(part="#part-", field="#ask-")
    return ET.fromstring(answer_picture(assessed(name), links=links).svg)  # noqa: S314


def growing(axle="front", **more):
    given = {"said": {}, "given": {}, "tyre": None, "known": set(), **more}
    links = Links(field="#ask-")
    made = growing_picture(axle, **given, links=links)
    return ET.fromstring(made.svg), made  # noqa: S314


def linked(root):
    return list(root.iter(f"{SVG}a"))


def stops(root):
    return [each for each in linked(root) if each.get("tabindex") is None]


def test_every_place_is_met_once_by_the_tab_key_and_has_a_name():
    root = picture()
    met = [each.get("href") for each in stops(root)]
    assert len(met) == len(set(met)) > 20
    assert all(each.get("aria-label") for each in stops(root))
    others = [each for each in linked(root) if each not in stops(root)]
    assert {each.get("tabindex") for each in others} == {"-1"}
    assert {each.get("aria-hidden") for each in others} == {"true"}
    assert {each.get("href") for each in others} <= set(met)


def test_what_can_be_tapped_is_no_image_and_paper_is_one():
    # WAI-ARIA 1.2, role img: its children are presentational, so nothing inside could be reached.
    assert picture().get("role") == "group"
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    paper = ET.fromstring(drawing(point_columns(rig), rig.words, rig.tyre))  # noqa: S314
    assert paper.get("role") == "img"
    assert linked(paper) == []


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_a_drawing_for_a_page_is_small_and_keeps_to_a_strict_policy(name):
    # Content-Security-Policy, default-src 'self': no style element, no style attribute, no script.
    links = Links(part="#part-", field="#ask-")
    text = answer_picture(assessed(name), links=links).svg
    assert len(text.encode()) <= 60_000  # the plan's figure
    assert not re.search(r"<style|style=|<script|\son\w+=|https?:(?!//www\.w3\.org/2000/svg)", text)


def test_a_flag_leads_to_its_part_and_says_how_close_it_is():
    root = picture()
    flags = [each for each in linked(root) if each.get("data-flag") == "1"]
    assert flags
    assert {each.get("href") for each in flags} == {"#part-tube-joint"}
    told = [each for each in stops(root) if each.get("href") == "#part-tube-joint"]
    assert "joint of tube and centre" in told[0].get("aria-label")
    assert told[0].get("aria-label").endswith(": over")


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_an_untold_axle_is_all_empty_boxes_and_each_leads_to_its_question(axle):
    root, made = growing(axle)
    empty = {each.get("data-field") for each in linked(root) if "empty" in each.get("class", "")}
    assert empty == SIDELESS
    for each in linked(root):
        if each.get("data-field"):
            ident = each.get("data-field").replace(".", "-").replace("_", "-")
            assert each.get("href") == f"#ask-{ident}"
    named = [each for each in stops(root) if each.get("data-field") == "track.tyres"]
    assert named[0].get("aria-label") == "tyre centre to tyre centre: not yet said"
    assert "usual axle" in " ".join(made.words)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_what_was_told_is_solid_and_the_rest_faint(axle):
    before, _ = growing(axle)
    told = {"tyre.sidewall", "track.tyres", "tube.girth.left", "tube.bare.left"}
    after, _ = growing(axle, tyre=parse_tyre("37x12.50R16"), known=told)

    def faint(root, part):
        (look,) = {each.get("class") for each in root.iter() if each.get("data-part") == part}
        return look == "assumed"

    assert all(faint(before, part) for part in ("tyre_left", "tube_left", "tube_right", "centre"))
    assert not faint(after, "tyre_left")
    assert not faint(after, "tube_left")
    assert faint(after, "tube_right")
    assert faint(after, "centre")  # stands between both tubes


def test_a_told_number_stands_on_its_line_as_typed_or_in_the_readers_units():
    given = dict(load_rig(str(EXAMPLES / "rigs" / "heron.toml")).given)
    more = {"given": {"track": given["track"]}, "known": {"track.tyres"}}

    def lettered(root):
        (line,) = [each for each in root.iter() if each.get("data-field") == "track.tyres"]
        return "".join(line.itertext()).strip()

    root, _ = growing(**more)
    assert lettered(root) == "1675 mm"
    root, _ = growing(**more, typed={"track.tyres": "167.5 cm"})
    assert lettered(root) == "167.5 cm"
    root, _ = growing(**more, system="us")
    assert lettered(root).endswith(" in")


def test_stand_ins_follow_the_track_that_was_told():
    given = load_rig(str(EXAMPLES / "rigs" / "heron.toml")).given
    usual = usual_rig("front", {}, {}, None)
    wide = usual_rig("front", {}, {"track": given["track"]}, None)
    ratio = wide.given["track"].value / usual.given["track"].value
    for name in ("spring_spacing", "tube_bare_left", "tube_bare_right"):
        assert wide.given[name].value == pytest.approx(ratio * usual.given[name].value)
    one = usual_rig("front", {}, {"hub_height_left": given["hub_height_left"]}, None)
    assert one.given["hub_height_right"].value == given["hub_height_left"].value


def test_every_drawn_part_is_called_something_and_is_asked_for_somewhere():
    paths = {each.path for each in FIRST_FIELDS}
    for kind, wanted in SHAPED_BY.items():
        assert {each.format(side="left") for each in wanted} <= paths, kind
    for name in ("heron", "stork-rear"):
        rig = load_rig(str(EXAMPLES / "rigs" / f"{name}.toml"))
        svg = drawing(point_columns(rig), rig.words, rig.tyre)
        for part in set(re.findall(r'data-part="([^"]+)"', svg)):
            kind = part.removesuffix("_left").removesuffix("_right")
            assert kind in ASKED_AT
            assert kind in SHAPED_BY
            assert called(part)


def test_no_consequence_goes_without_a_link():
    links = Links(part="#part-", field="#ask-")
    assert all(links.to_part(part, "").address.startswith("#part-") for part in consequences())


def test_flags_keep_to_their_parts_in_a_stacked_sheet():
    rig = load_rig(str(EXAMPLES / "rigs" / "heron.toml"))
    flags = [Flag(number=1, part="tie_rod", closeness="near")]
    more = {"stacked": True, "text": 72.0, "key": False}
    root = ET.fromstring(  # noqa: S314
        drawing(point_columns(rig), rig.words, rig.tyre, flags, **more)
    )
    moves = {}
    for group in root.iter(f"{SVG}g"):
        if group.get("data-view"):
            numbers = re.findall(r"[-\d.]+", group.get("transform"))
            moves[group.get("data-view")] = tuple(float(each) for each in numbers)
    assert {x for x, _ in moves.values()} == {moves["across"][0]}  # one middle line
    assert moves["across"][1] < moves["side"][1] < moves["plan"][1]
