"""Changes tried on a rig in the store: on the same draws, kept, and let go."""

from pathlib import Path

import pytest

from axlewright.actions import Bay, change_text, content_hash, example_names
from axlewright.errors import AxlewrightError, BadFile, UnknownEntry
from axlewright.rig import change_from_text, rig_from_text
from axlewright.strength import assess_rig, compare

HEAVIER = Path("examples/changes/heavier-tube.toml").read_text("utf-8")


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


@pytest.fixture
def slug(bay):
    return bay.copy_example("heron")


def test_a_comparison_is_the_same_as_from_files(bay, slug):
    before = assess_rig(rig_from_text(bay.text(slug)), draws=128)
    alone = compare(before, [change_from_text(HEAVIER)], draws=128)
    made = bay.comparison(slug, HEAVIER, draws=128)
    assert made.before.order == alone.before.order
    assert made.after.order == alone.after.order
    assert bay.comparison(slug, HEAVIER, draws=128) is made  # worked out once


def test_a_slider_gets_the_middle_of_the_same_comparison(bay, slug):
    moved = bay.quick(slug, {"tyre.sidewall": "255/85R16 119/116N"})
    assert moved.after.drawn is None
    values = bay.whole_values(slug, {"tyre.sidewall": "255/85R16 119/116N"})
    # Heights in mm: 16 x 25.4 + 2 x 0.85 x 255 = 839.9 against 37 x 25.4 = 939.8; hub 432 x 0.8937
    assert values["hub_height.left"] == "about 386 mm"
    kept = bay.comparison(slug, change_text("x", values), 0)
    assert moved.after.order == kept.after.order
    assert moved.after.order != moved.before.order


@pytest.mark.parametrize(
    "values",
    [{"tyre.sidewall": "large"}, {"nothing.such": "1"}, {"weight.axle": '"]\n[x'}, {}],
)
def test_values_that_cannot_be_used_are_told(bay, slug, values):
    with pytest.raises(BadFile):
        bay.quick(slug, values)


def test_a_change_is_kept_and_let_go(bay, slug):
    kept = bay.keep_change(slug, "Stout", HEAVIER, "phone")
    assert bay.changes(slug) == [kept]
    assert kept.name == change_from_text(kept.text).name == "Stout"
    assert bay.comparison(slug, kept.text, draws=0).changes[0].name == "Stout"
    bay.let_go(slug, kept.number)
    assert bay.changes(slug) == []
    with pytest.raises(UnknownEntry):
        bay.let_go(slug, kept.number)
    assert [each.kind for each in bay.entries_after(slug, 0)][-2:] == ["change", "dropped"]


@pytest.mark.parametrize("text", ["", "x", 'axlewright_change = 1\nname = "x"\n'])
def test_a_change_that_cannot_be_made_is_not_kept(bay, slug, text):
    with pytest.raises(BadFile):
        bay.keep_change(slug, "x", text)
    assert bay.changes(slug) == []


def test_a_change_waits_for_a_whole_axle(bay):
    slug = bay.begin("Wren", "front")
    with pytest.raises(AxlewrightError, match="still missing"):
        bay.quick(slug, {"weight.axle": "1500 kg"})
    with pytest.raises(AxlewrightError, match="no answer to print"):
        bay.paper(slug, "report")


def test_what_matters_most_for_this_rig_is_asked_first(bay, slug):
    asked = bay.next_fields(slug)
    thirteen = bay.draft(slug).required()
    assert tuple(asked[: len(thirteen)]) == thirteen
    assert len(asked) > len(thirteen) + 10
    matter = [each.doubt.quantity for each in bay.assessment(slug, draws=256).influences]
    quantities = [bay_field(path) for path in asked[len(thirteen) :]]
    ranks = [matter.index(each) for each in quantities if each in matter]
    assert ranks[0] == min(ranks)
    assert ranks == sorted(ranks)


def bay_field(path):
    from axlewright.actions.draft import BY_PATH
    from axlewright.actions.first_answer import SETTLES

    return SETTLES.get(path, BY_PATH[path].quantity)


def test_before_the_thirteen_only_they_are_asked(bay):
    slug = bay.begin("Wren", "rear")
    assert tuple(bay.next_fields(slug)) == bay.draft(slug).required()
    assert bay.so_far_line(slug) == ""


def test_the_line_so_far_grows_with_the_answers(bay, slug):
    assert "gives first" in bay.so_far_line(slug)
    bay.clear(slug, "drive.lock")
    assert "with the rest assumed" in bay.so_far_line(slug)
    bay.clear(slug, "tube.girth.left")
    assert "still missing: round the left tube" in bay.so_far_line(slug)


def test_what_is_taken_along_comes_from_the_kept_axle(bay, slug):
    bay.add_condition(slug, {"part": "knuckle", "what": "cracked", "where": "left"})
    page = bay.paper(slug, "take.html").decode()
    assert "STOP" in page
    assert "knuckle" in page
    assert bay.paper(slug, "take.pdf", "us", HEAVIER).startswith(b"%PDF-")


def test_paper_comes_as_pdf(bay, slug):
    assert bay.paper(slug, "sheet").startswith(b"%PDF-")
    assert bay.paper(slug, "report", "us", HEAVIER).startswith(b"%PDF-")
    with pytest.raises(UnknownEntry):
        bay.paper(slug, "../report")


@pytest.mark.parametrize("name", example_names())
def test_an_example_of_the_package_is_the_example_of_the_project(bay, name):
    shipped = Path("src/axlewright/actions/examples", f"{name}.toml").read_text("utf-8")
    assert shipped == Path("examples/rigs", f"{name}.toml").read_text("utf-8"), "copy it again"
    assert bay.assessment(bay.copy_example(name), draws=16) is not None


def test_every_example_is_shipped():
    assert example_names() == sorted(path.stem for path in Path("examples/rigs").glob("*.toml"))


def test_there_is_no_example_outside_their_folder(bay):
    for name in ("../draft", "heron.toml", ""):
        with pytest.raises(UnknownEntry):
            bay.copy_example(name)


def test_the_content_hash_holds_still_and_tells_apart(bay, slug):
    rig = bay.draft(slug).rig()
    again = rig_from_text(bay.text(slug), file="elsewhere.toml")
    assert content_hash(rig, 1000) == content_hash(again, 1000)
    bay.answer(slug, "weight.axle", "1511 kg", tell=False)
    other = bay.draft(slug).rig()
    hashes = {
        content_hash(rig, 1000),
        content_hash(rig, 999),
        content_hash(rig, 1000, seed=1),
        content_hash(other, 1000),
    }
    assert len(hashes) == 4
