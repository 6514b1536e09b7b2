"""Pages without a browser: every form works without script, and says what became of it."""

import re
from pathlib import Path

import pytest

from axlewright.rig import FIELDS, FIRST_FIELDS, load_rig
from house.places import ROOT
from web.visitor import Visitor

RIGS = ROOT / "examples" / "rigs"


def thirteen_of(rig):
    """Answers of an example as typed, in the order of the questions."""
    from axlewright.rig import read_rig_text

    answers = read_rig_text((RIGS / f"{rig}.toml").read_bytes()).answers
    return [
        (field.path, answers[field.path].text) for field in FIRST_FIELDS if field.path in answers
    ]


@pytest.fixture
def slug(visitor):
    answer = visitor.post("/begin", {"name": "Heron", "axle": "front"})
    assert answer.status_code == 303
    return answer.headers["location"].rpartition("/")[2]


def test_the_first_page_tells_what_there_is(visitor):
    assert "None yet" in visitor.get("/").text
    visitor.post("/copy", {"example": "heron"})
    text = visitor.get("/").text
    assert "None yet" not in text
    assert 'href="/axle/heron-front"' in text
    assert "All thirteen are answered" in text


@pytest.mark.parametrize("fields", [{}, {"name": " ", "axle": "front"}, {"name": "x", "axle": "m"}])
def test_an_axle_needs_a_name_and_a_place(visitor, bay, fields):
    answer = visitor.post("/begin", fields)
    assert answer.status_code == 422
    assert 'aria-invalid="true"' in answer.text
    assert not bay.axles()


def test_a_name_is_shown_as_typed_and_is_never_markup(visitor):
    answer = visitor.post("/begin", {"name": "<script>alert(1)</script>", "axle": "rear"})
    page = visitor.get(answer.headers["location"]).text
    assert "&lt;script&gt;alert(1)" in page
    assert "<script>alert" not in page


def test_a_whole_visit_without_script(visitor, slug):
    thirteen = thirteen_of("wagtail")
    for path, text in thirteen:
        answer = visitor.say(slug, path, text)
        assert answer.status_code == 303, path
        assert f"at={path}" in answer.headers["location"]
    page = visitor.get(f"/axle/{slug}").text
    assert len(thirteen) == 21
    assert "All thirteen are answered" in page
    assert "gives" in re.search(r'class="so-far">([^<]+)', page)[1]
    assert page.count("Understood:") >= 21


def test_each_answer_is_said_back_and_tells_something(visitor, slug):
    visitor.say(slug, "tube.girth.left", "9 7/16 in")
    page = visitor.get(f"/axle/{slug}").text
    assert "Understood: round the left tube: " in page
    assert "239.7" in page  # 9 7/16 in = 239.7125 mm, by the exact inch (NIST SP 811)
    assert "76.3 mm" in page  # over pi, the tube's diameter
    assert "0 of 13" in page  # its other side is still open


def test_what_cannot_be_read_is_shown_again_and_not_kept(visitor, bay, slug):
    before = bay.last_entry(slug)
    answer = visitor.say(slug, "tube.girth.left", "243")
    assert answer.status_code == 422
    assert "Not kept." in answer.text
    assert 'value="243"' in answer.text
    assert 'aria-invalid="true"' in answer.text
    assert bay.last_entry(slug) == before


def test_a_likely_meaning_is_one_tap_away(visitor, bay, slug):
    answer = visitor.say(slug, "hub_height.left", "395 cm")
    meant = re.search(r'name="meant" value="([^"]+)"', answer.text)[1]
    assert meant == "395 mm"
    assert visitor.say(slug, "hub_height.left", "395 cm", meant=meant).status_code == 303
    assert bay.draft(slug).answers["hub_height.left"].text == "395 mm"


def test_a_contradiction_is_told_and_both_can_be_said_at_once(visitor, bay, slug):
    visitor.say(slug, "track.tyres", "1500 mm")
    answer = visitor.say(slug, "track.springs", "1600 mm")
    assert answer.status_code == 422
    assert 'name="also.track.tyres"' in answer.text
    assert "track.springs" not in bay.draft(slug).answers
    both = {"also.track.tyres": "1900 mm"}
    assert visitor.say(slug, "track.springs", "1600 mm", **both).status_code == 303
    kept = bay.draft(slug).answers
    assert (kept["track.tyres"].text, kept["track.springs"].text) == ("1900 mm", "1600 mm")


@pytest.mark.parametrize(
    ("path", "text", "how", "kept"),
    [
        ("weight.axle", "1150 kg", "about", "about 1150 kg"),
        ("weight.axle", "about 1150 kg", "about", "about 1150 kg"),
        ("joint.cap_across", "", "unknown", "don't know"),
    ],
)
def test_rough_and_unknown_are_buttons(visitor, bay, slug, path, text, how, kept):
    assert visitor.say(slug, path, text, how=how).status_code == 303
    assert bay.draft(slug).answers[path].text == kept


def test_only_where_it_may_be_unknown_is_there_such_a_button(visitor, slug):
    page = visitor.get(f"/axle/{slug}").text
    forms = dict(re.findall(r'<form class="ask" id="ask-([^"]+)"(.*?)</form>', page, re.DOTALL))
    assert 'value="unknown"' in forms["joint-cap-across"]
    assert 'value="unknown"' not in forms["weight-axle"]
    assert 'value="about"' in forms["weight-axle"]
    assert 'value="about"' not in forms["tyre-sidewall"]


def test_the_rest_comes_after_the_thirteen_in_order_of_weight(visitor, bay):
    slug = bay.copy_example("heron")
    page = visitor.get(f"/axle/{slug}").text
    needed = bay.draft(slug).required()
    order = [path for path in bay.next_fields(slug) if path not in needed]
    shown = [path for path in re.findall(r'data-path="([^"]+)"', page) if path not in needed]
    assert shown == order
    assert len(order) > 20


def test_an_optional_answer_can_be_taken_out_again(visitor, bay):
    slug = bay.copy_example("heron")
    assert "gear.ratio" in bay.draft(slug).answers
    assert visitor.say(slug, "gear.ratio", "", how="clear").status_code == 303
    assert "gear.ratio" not in bay.draft(slug).answers


def test_a_stop_stands_before_everything_and_comes_off_the_list(visitor, bay, slug):
    found = {"part": "knuckle", "what": "cracked", "where": "left", "date": "2026-05-03"}
    assert visitor.post(f"/axle/{slug}/list", found).status_code == 303
    page = visitor.get(f"/axle/{slug}").text
    assert page.index('class="stop"') < page.index("<h1")
    assert "Do not drive" in page
    assert "STOP" in visitor.get("/").text
    [listed] = bay.conditions(slug)
    assert visitor.post(f"/axle/{slug}/unlist", {"which": listed.key}).status_code == 303
    assert 'class="stop"' not in visitor.get(f"/axle/{slug}").text
    assert visitor.post(f"/axle/{slug}/unlist", {"which": listed.key}).status_code == 422


@pytest.mark.parametrize(
    "wrong",
    [
        {"part": ""},
        {"what": "fine"},
        {"where": "driver's"},
        {"date": "3 May"},
        {"date": "2999-01-01"},
    ],
)
def test_what_was_found_is_checked_and_shown_again(visitor, bay, slug, wrong):
    found = {
        "part": "tube",
        "what": "wet",
        "where": "left",
        "date": "2026-05-03",
        "note": "by the plug",
    }
    answer = visitor.post(f"/axle/{slug}/list", found | wrong)
    assert answer.status_code == 422
    assert 'value="by the plug"' in answer.text
    assert not bay.conditions(slug)


def test_a_file_is_opened_or_every_fault_is_told(visitor, bay):
    good = (RIGS / "wagtail.toml").read_bytes()
    answer = visitor.post("/open", files={"file": ("wagtail.toml", good)})
    assert answer.headers["location"] == "/axle/wagtail-front"
    bad = good.replace(b'"385 mm"', b'"385 fathoms"').replace(b"radius arms", b"strings")
    answer = visitor.post("/open", files={"file": ("wagtail.toml", bad)})
    assert answer.status_code == 422
    assert answer.text.count("<pre>") == 3
    assert len(bay.axles()) == 1


@pytest.mark.parametrize("name", ["run.exe", "", "a.toml.sh"])
def test_only_a_rig_file_is_taken(visitor, bay, name):
    good = (RIGS / "wagtail.toml").read_bytes()
    assert visitor.post("/open", files={"file": (name, good)}).status_code == 422
    assert not bay.axles()


def test_the_file_of_a_rig_reads_again(visitor, bay, tmp_path):
    slug = bay.copy_example("heron")
    answer = visitor.get(f"/axle/{slug}/rig.toml")
    assert answer.headers["content-disposition"] == f'attachment; filename="{slug}.toml"'
    file = tmp_path / "again.toml"
    file.write_text(answer.text, "utf-8")
    assert load_rig(str(file)).name == load_rig(str(RIGS / "heron.toml")).name


def test_a_browser_that_has_it_all_is_told_so(visitor, bay):
    slug = bay.copy_example("heron")
    last = bay.last_entry(slug)
    assert visitor.get(f"/axle/{slug}/pieces?after={last}").status_code == 204
    assert visitor.get(f"/axle/{slug}/pieces?after={last - 1}").status_code == 200
    assert visitor.get(f"/axle/{slug}/pieces?after=x").status_code == 200


def test_an_answer_that_comes_twice_is_kept_once(visitor, bay, slug):
    for _ in range(2):
        assert visitor.say(slug, "wheel.spacer", "0 mm", key="one-and-the-same").status_code == 303
    assert len(bay.entries_after(slug, 0)) == 2  # begun, and one answer


def test_units_and_light_are_kept_in_the_reader_s_browser(visitor, bay):
    slug = bay.copy_example("heron")
    answer = visitor.post("/settings", {"units": "us", "theme": "dark", "back": f"/axle/{slug}"})
    assert answer.headers["location"] == f"/axle/{slug}"
    page = visitor.get(f"/axle/{slug}").text
    assert 'data-theme="dark"' in page
    assert 'data-theme="device"' in Visitor(bay).get("/").text


@pytest.mark.parametrize(
    "back", ["//elsewhere.example", "https://e.example/", "/\\e.example", "x", "/a\nb"]
)
def test_settings_lead_to_no_other_site(visitor, back):
    answer = visitor.post("/settings", {"units": "us", "theme": "dark", "back": back})
    assert answer.headers["location"] == "/"


def test_every_question_of_the_catalogue_has_a_place(visitor, bay):
    from axlewright.web.asking import TITLES

    assert set(TITLES) == {field.question for field in FIELDS if field.question}
    assert Path(RIGS / "heron.toml").is_file()


@pytest.mark.parametrize("example", ["wagtail", "heron", "stork-rear"])
def test_every_example_can_be_copied(visitor, example):
    answer = visitor.post("/copy", {"example": example})
    assert visitor.get(answer.headers["location"]).status_code == 200
