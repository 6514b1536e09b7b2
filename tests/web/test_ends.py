"""Where the rods end: the places as a form and as a sheet; a visit at both widths."""

import io
import re

import pypdf
import pytest
from playwright.sync_api import expect

from axlewright.actions import ends_paper
from axlewright.cli import run
from axlewright.rig import POINT_FIELDS, geometry_columns, load_rig
from axlewright.views import ends_data
from geometry.cases import demo
from web.browsing import wider_than_its_window
from web.test_answer_visits import copied

RIGS = ("heron", "wagtail", "stork-rear")


@pytest.mark.parametrize("name", RIGS)
def test_every_place_of_the_layout_is_asked_once_and_numbered_on_the_drawing(name):
    data = ends_data(demo(name))
    places = [row for group in data.groups for row in group.rows if row.place]
    numbers = [int(row.number) for row in places]
    assert numbers == list(range(1, len(places) + 1))
    above = data.views[0].svg
    for number in numbers:
        assert f">{number}</text>" in above
    paths = [row.path for group in data.groups for row in group.rows]
    assert len(set(paths)) == len(paths)
    if name == "stork-rear":
        assert not any("track_bar" in path or "kingpin" in path for path in paths)
    if name == "heron":
        assert "points.third_arm_frame" in paths
        assert not any(path.startswith("points.upper_arm") for path in paths)
    assert all(row.given or row.stands for group in data.groups for row in group.rows)
    columns = geometry_columns(demo(name))  # what the study reads can be said here
    read = {field.path for field in POINT_FIELDS if field.quantity in columns}
    assert all(path.startswith("longer.") for path in read - set(paths))  # of other layouts


def test_the_sheet_has_the_cautions_and_a_stop():
    text = "".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(
        ends_paper(demo("heron")))).pages)  # fmt: skip
    assert "never under a jack alone" in text.replace("\n", " ")
    assert "ahead / behind" in text
    assert "STOP" not in text


def test_the_command_writes_the_sheet(tmp_path, capsys):
    file = tmp_path / "ends.pdf"
    assert run(["travel", "examples/rigs/heron.toml", "--sheet", str(file)]) == 0
    assert "Sheet of the places" in capsys.readouterr().out
    assert file.read_bytes()[:5] == b"%PDF-"
    assert load_rig("examples/rigs/heron.toml").name == "Heron"


def test_a_place_is_kept_refused_and_taken_out(bay, visitor):
    slug = bay.copy_example("wagtail")
    place = "735 mm behind, 330 mm right, 441 mm up"
    said = {"group": "rods", "points.arm_frame.right": place}
    assert visitor.post(f"/axle/{slug}/ends/say", said).status_code == 303
    assert bay.draft(slug).answers["points.arm_frame.right"].text == place
    wrong = {"group": "rods", "points.arm_frame.right": "735 mm behind, 441 mm up"}
    refused = visitor.post(f"/axle/{slug}/ends/say", wrong)
    assert refused.status_code == 422
    assert "does not say how far left or right" in refused.text
    assert "735 mm behind, 441 mm up" in refused.text
    assert bay.draft(slug).answers["points.arm_frame.right"].text == place
    empty = {"group": "rods", "points.arm_frame.right": ""}
    assert visitor.post(f"/axle/{slug}/ends/say", empty).status_code == 303
    assert "points.arm_frame.right" not in bay.draft(slug).answers
    strange = {"group": "../x", "rig.name": "no", "tyre.sidewall": "no"}
    before = bay.last_entry(slug)
    assert visitor.post(f"/axle/{slug}/ends/say", strange).status_code == 303
    assert bay.last_entry(slug) == before


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_a_taped_place_narrows_what_is_assumed(open_page, size):
    page = open_page(size)
    slug = copied(page, "Wagtail")
    page.goto(f"/axle/{slug}/ends?at=rods")
    taped = page.locator(".says.second")
    expect(taped).to_contain_text("17 of 27")
    field = page.get_by_label(re.compile("lower \\(or radius\\) arm's bolt at the frame, right"))
    field.fill("730 mm behind, 329 mm right, 440 mm up")
    page.locator("#group-rods").get_by_role("button", name="Keep these").click()
    expect(taped).to_contain_text("18 of 27")
    assert wider_than_its_window(page) <= 0
