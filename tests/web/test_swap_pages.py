"""The swap as a page: begun, filled, refused, ticked with a photo, left and resumed, and kept."""

import re

import pytest

from axlewright.actions import Bay
from axlewright.swap import next_up
from house.places import ROOT
from web.visitor import Visitor

SHAFTS = (ROOT / "examples" / "changes" / "stronger-shafts.toml").read_text("utf-8")
PHOTO = b"\x89PNG\r\n\x1a\n" + b"0" * 40


@pytest.fixture(scope="module")
def begun(tmp_path_factory):
    bay = Bay.open(tmp_path_factory.mktemp("swap"))
    slug = bay.copy_example("heron")
    visitor = Visitor(bay)
    kept = bay.keep_change(slug, "", SHAFTS)
    fields = {"change": f"{kept.number}", "kind": "shafts", "people": "2", "skill": "practised"}
    answer = visitor.post(f"/axle/{slug}/swap/begin", fields)
    assert answer.status_code == 303, answer.text
    yield bay, slug, visitor
    bay.close()


def test_the_page_says_what_is_now_and_what_is_missing(begun):
    _, slug, visitor = begun
    told = visitor.get(f"/axle/{slug}/swap").text
    assert "Not ready" in told
    assert "Nobody goes under before the photo of the support" in told
    assert "Read every step and its caution" in told
    assert told.count("<h1") == 1


def test_a_tick_too_early_comes_back_with_its_reason_and_is_not_kept(begun):
    bay, slug, visitor = begun
    before = bay.last_entry(slug)
    answer = visitor.post(f"/axle/{slug}/swap/tick", {"step": "lift"})
    assert answer.status_code == 422
    assert "First:" in answer.text
    assert "not ready" in answer.text
    assert bay.last_entry(slug) == before


def test_a_torque_without_its_page_comes_back_with_the_words(begun):
    _, slug, visitor = begun
    fields = {"line": "wheel_nuts", "text": "150 N m", "printed": ""}
    answer = visitor.post(f"/axle/{slug}/swap/value", fields)
    assert answer.status_code == 422
    assert "where did the maker print" in answer.text
    assert 'value="150 N m"' in answer.text
    kept = visitor.post(f"/axle/{slug}/swap/value", {**fields, "printed": "manual 4-12"})
    assert kept.status_code == 303
    assert "Set to 150 N m, printed at manual 4-12" in visitor.get(f"/axle/{slug}/swap").text


def test_a_bolt_that_was_read_gives_its_line_another_range(begun):
    bay, slug, visitor = begun
    place = f"/axle/{slug}/swap"
    line = next(each for each in bay.swap().now(slug).plan.lines if each.thread)
    fields = {"line": line.key, "text": "", "printed": "", "bolt": "M12 something"}
    refused = visitor.post(f"{place}/value", fields)
    assert refused.status_code == 422
    assert "no bolt" in refused.text
    assert 'value="M12 something"' in refused.text
    assert visitor.post(f"{place}/value", {**fields, "bolt": "M12 12.9"}).status_code == 303
    assert "M12x1.75 12.9, as read" in visitor.get(place).text
    told = {each["key"]: each for each in visitor.get(f"{place}/plan.json").json()["torques"]}
    assert told[line.key]["own"]
    assert told[line.key]["thread"] == "M12x1.75"
    assert told[line.key]["set"] is None


def test_the_files_are_there(begun):
    _, slug, visitor = begun
    paper = visitor.get(f"/axle/{slug}/swap/jobs.pdf")
    assert paper.content.startswith(b"%PDF")
    made = visitor.get(f"/axle/{slug}/swap/plan.json").json()
    assert made["axlewright_plan"] == 1


def test_the_whole_way_by_post(begun):
    bay, slug, visitor = begun
    place = f"/axle/{slug}/swap"
    desk = bay.swap()
    for line in desk.now(slug).plan.lines:
        value = 150.0 if line.low is None else 0.5 * (line.low + line.high)
        fields = {"line": line.key, "text": f"{value:.0f} N m", "printed": "manual 4-12"}
        assert visitor.post(f"{place}/value", fields).status_code == 303
    while open_steps := next_up((swap := desk.now(slug)).plan, swap.progress):
        task = open_steps[0]
        if task.key == "apart_looks":
            for look in swap.unseen:
                fields = {"look": look, "ends": "go"}
                assert visitor.post(f"{place}/look", fields).status_code == 303
        fields = {"step": task.key} | {f"yes.{each.key}": "1" for each in swap.plan.questions}
        if task.photo_must:
            refused = visitor.post(f"{place}/tick", fields)
            assert refused.status_code == 422
            assert "photo" in refused.text
            files = {"photo": ("stands.png", PHOTO, "image/png")}
            answer = visitor.post(f"{place}/tick", fields, files=files)
        else:
            answer = visitor.post(f"{place}/tick", fields)
        assert answer.status_code == 303, (task.key, answer.text)
    told = visitor.get(place).text
    assert "The last one is closed" in told
    assert "Begin one" in told
    assert "Is the rig now as changed?" in told
    assert visitor.post(f"{place}/take").status_code == 303
    told = visitor.get(place).text
    assert "has taken on its new numbers" in told
    assert "Is the rig now as changed?" not in told
    again = visitor.post(f"{place}/take")
    assert again.status_code == 422


def test_one_person_is_told_on_the_page(begun):
    bay, _, visitor = begun
    slug = bay.copy_example("heron")
    fields = {"change": "", "kind": "geared axle", "people": "1", "skill": "practised"}
    answer = visitor.post(f"/axle/{slug}/swap/begin", fields)
    assert answer.status_code == 422
    assert "need two people" in answer.text
    assert re.search(r'value="geared axle" selected', answer.text)


@pytest.mark.parametrize(
    ("tail", "fields", "status"),
    [
        ("begin", {}, 422),
        ("begin", {"change": "999999", "people": "2", "skill": "practised"}, 404),
        ("begin", {"kind": "shafts", "people": "x", "skill": "y"}, 422),
        ("tick", {"step": "<script>"}, 422),
        ("leave", {"step": "read_steps", "reason": "x"}, 422),
        ("undo", {"step": "nothing"}, 422),
        ("value", {"line": "nothing", "text": "1 N m"}, 404),
        ("value", {"line": "wheel_nuts", "text": "\0"}, 422),
        ("measure", {"when": "never"}, 422),
        ("look", {"look": "nothing", "ends": "go"}, 422),
        ("look", {"look": "apart_shafts", "ends": "perhaps"}, 422),
    ],
)
def test_what_cannot_be_is_refused_in_words(begun, tail, fields, status):
    bay, _, visitor = begun
    slug = bay.copy_example("heron")
    if tail != "begin":
        bay.swap().begin(slug, "", kind="shafts")
    before = bay.last_entry(slug)
    answer = visitor.post(f"/axle/{slug}/swap/{tail}", fields)
    assert answer.status_code == status, answer.text
    assert "<script>" not in answer.text.split("<main")[1]
    assert bay.last_entry(slug) == before


def test_without_a_swap_there_are_no_files(begun):
    bay, _, visitor = begun
    slug = bay.copy_example("wagtail")
    for tail in ("jobs.pdf", "plan.json"):
        assert visitor.get(f"/axle/{slug}/swap/{tail}").status_code == 404
