"""The bay's actions on a store: answers in, answers out, nothing kept that does not fit."""

from pathlib import Path

import pytest

from axlewright.actions import Bay, read_draft
from axlewright.errors import AxlewrightError, BadFile, UnknownEntry
from axlewright.rig import rig_from_text
from axlewright.strength import assess_rig

HERON = Path("examples/rigs/heron.toml").read_bytes()


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


def filled(bay, leave=()):
    """Begin a rig and give it Heron's answers one by one, some left out."""
    slug = bay.begin("Heron", "front", "phone")
    for path, answer in read_draft(HERON).answers.items():
        if path != "rig.condition" and path not in leave:
            said = bay.answer(slug, path, answer.text, "phone", tell=False)
            assert said.stored, said
    return slug


def test_an_answer_is_said_back_and_tells_something_at_once(bay):
    slug = bay.begin("Heron", "front")
    said = bay.answer(slug, "tyre.sidewall", "37x12.50R17LT 124Q", "phone")
    assert said.stored
    assert said.echo == "Understood: tyre: 37x12.50R17LT 124Q."
    assert said.told[0] == "The tyre is 940 mm (37.0 in) high, new and unloaded."  # 37 x 25.4 mm
    assert bay.draft(slug).answers["tyre.sidewall"].text == "37x12.50R17LT 124Q"


def test_the_answer_comes_with_the_last_of_the_thirteen(bay):
    slug = filled(bay)
    assert bay.assessment(slug) is None
    said = bay.answer(slug, "rig.condition", "nothing mended, nothing hurts", "laptop")
    assert said.complete
    assert "gives first" in " ".join(said.so_far)
    alone = assess_rig(rig_from_text(bay.text(slug)), draws=256)
    assert bay.assessment(slug, draws=256).order == alone.order


def test_what_is_refused_is_not_kept(bay):
    slug = bay.begin("Heron", "front")
    before = bay.last_entry(slug)
    for path, text, why in (
        ("hub_height.left", "39 kg", "is a mass"),
        ("hub_height.left", "", "needs an answer"),
        ("weight.axle", "don't know", "cannot be left open"),
        ("drive.lock", "lokced", "is not one of the words"),
    ):
        said = bay.answer(slug, path, text)
        assert not said.stored
        assert why in said.fault
    assert bay.last_entry(slug) == before
    with pytest.raises(UnknownEntry):
        bay.answer(slug, "../../etc/passwd", "1")


def test_answers_that_do_not_fit_are_met_with_the_others(bay):
    slug = filled(bay)
    said = bay.answer(slug, "tyre.sidewall", "235/75R15")
    assert not said.stored
    assert said.contradictions
    assert {"hub_height.left", "hub_height.right"} <= {
        path for clash in said.contradictions for path in clash.others
    }
    together = {
        "tyre.sidewall": "235/75R15",
        "hub_height.left": "340 mm",
        "hub_height.right": "341 mm",
    }
    assert all(one.stored for one in bay.answers(slug, together).values())
    assert bay.draft(slug).tyre().outer_diameter < 0.8


def test_an_answer_taken_back_is_open_again_and_stays_entered(bay):
    slug = filled(bay)
    assert bay.clear(slug, "tube.girth.left", "phone").stored
    assert "tube.girth.left" in bay.draft(slug).missing()
    kinds = [entry.kind for entry in bay.entries_after(slug, 0) if entry.path == "tube.girth.left"]
    assert kinds == ["answer", "clear"]


def test_a_stop_stands_on_the_card_and_in_what_is_said(bay):
    slug = filled(bay)
    assert not bay.axles()[0].stop
    found = {"part": "knuckle", "what": "cracked", "where": "left", "date": "", "note": ""}
    said = bay.add_condition(slug, found, "phone")
    assert said.stored
    assert said.stop[0].startswith("STOP")
    assert bay.axles()[0].stop
    assert bay.answer(slug, "use.from_help", "90 km").stop  # whatever else is said
    assert bay.assessment(slug, draws=256).stops
    [listed] = bay.conditions(slug)
    assert listed.stop
    assert bay.settle_condition(slug, listed.key).stored
    assert not bay.axles()[0].stop
    assert bay.draft(slug).missing() == ("rig.condition",)


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ({"what": "cracked"}, "Which part?"),
        ({"part": "tube", "what": "sad"}, "What was found?"),
        ({"part": "tube", "what": "bent", "where": "driver"}, "Where?"),
        ({"part": "tube", "what": "bent", "date": "May"}, "When?"),
        ({"part": "tube", "what": "bent", "date": "9999-01-01"}, "lies ahead"),
        ({"part": "tube", "what": "bent", "note": "x" * 1001}, "longer than"),
    ],
)
def test_a_condition_that_cannot_be_read_is_not_kept(bay, said, why):
    slug = bay.begin("Heron", "front")
    refused = bay.add_condition(slug, said)
    assert not refused.stored
    assert why in refused.fault
    assert bay.draft(slug).conditions == []


def test_the_condition_must_fit_what_is_listed(bay):
    slug = bay.begin("Heron", "front")
    assert not bay.answer(slug, "rig.condition", "as listed").stored
    bay.add_condition(slug, {"part": "tube", "what": "bent"})
    assert not bay.answer(slug, "rig.condition", "never looked at").stored


def test_a_file_comes_in_whole_with_its_notes(bay):
    slug = bay.take_file(HERON, "heron.toml", "laptop")
    assert bay.axles()[0].answered == bay.axles()[0].questions == 13
    assert "# paper strip" in bay.text(slug)
    assert rig_from_text(bay.text(slug)).given == rig_from_text(HERON.decode()).given
    bay.answer(slug, "weight.axle", "1600 kg", tell=False)
    assert bay.draft(slug).answers["weight.axle"].text == "1600 kg"
    first = bay.conditions(slug)[0]
    bay.settle_condition(slug, first.key)
    assert first.line not in [one.line for one in bay.conditions(slug)]


@pytest.mark.parametrize(
    "spoilt",
    [
        b"\xff\xfe",
        b"axlewright = 1\n[rig\n",
        HERON.replace(b"37x12.50R17LT 124Q", b"235/75R15"),
        HERON.replace(b'"1510 kg"', b'"don\'t know"'),
        HERON.replace(b'"432 mm"', b'"432 kg"'),
    ],
)
def test_a_file_that_cannot_be_used_leaves_nothing_behind(bay, spoilt):
    with pytest.raises(BadFile):
        bay.take_file(spoilt, "heron.toml")
    assert bay.axles() == []


def test_a_reply_that_was_lost_makes_no_second_entry(bay):
    slug = bay.begin("Heron", "front")
    first = bay.answer(slug, "weight.axle", "1510 kg", "phone", key="phone-1")
    bay.answer(slug, "weight.axle", "1600 kg", "laptop", key="laptop-1")
    again = bay.answer(slug, "weight.axle", "1510 kg", "phone", key="phone-1")
    assert first.stored
    assert again.stored
    assert bay.draft(slug).answers["weight.axle"].text == "1600 kg"
    assert len(bay.entries_after(slug, 0)) == 3  # begun, and two answers


def test_two_rigs_of_one_name_keep_apart(bay):
    one, two = bay.begin("Heron", "front"), bay.begin("Heron", "front")
    assert (one, two) == ("heron-front", "heron-front-2")
    bay.answer(one, "weight.axle", "1510 kg")
    assert bay.draft(two).answers == {}
    bay.rename(two, "Wagtail")
    assert {card.title for card in bay.axles()} == {"Heron", "Wagtail"}


@pytest.mark.parametrize(("name", "axle"), [("", "front"), ("\n \t", "rear"), ("Heron", "both")])
def test_a_rig_needs_a_name_and_an_axle(bay, name, axle):
    with pytest.raises(AxlewrightError):
        bay.begin(name, axle)
    assert bay.axles() == []


def test_nobody_gets_at_a_rig_that_is_not_there(bay):
    for ask in (bay.draft, bay.assessment, bay.conditions, bay.text):
        with pytest.raises(UnknownEntry):
            ask("../heron")
    with pytest.raises(UnknownEntry):
        bay.rename("heron", "Wagtail")


def test_the_copy_that_is_handed_out_is_the_callers_own(bay):
    slug = filled(bay)
    bay.draft(slug).answers.clear()
    assert bay.draft(slug).answers
