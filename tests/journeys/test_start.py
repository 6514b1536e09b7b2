"""Whole talks: a front rig, a rear rig, leaving and coming back, mistakes on the way."""

import datetime as dt
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from axlewright.actions import Conversation, Draft, read_draft
from axlewright.actions.first_answer import FirstAnswer
from axlewright.rig import FIELDS, rig_from_text
from axlewright.strength import assess_rig

TODAY = dt.date(2026, 11, 5)

HEAD = ["front", "Heron"]
FRONT = {
    "held_by.arms": "three",
    "held_by.weight_on": "1",
    "tyre.sidewall": "37x12.50R17LT 124Q",
    "hub_height.left": "432 mm",
    "hub_height.right": "about 430 mm",
    "track.tyres": "1675 mm",
    "track.springs": "915 mm",
    "tube.girth.left": "9 7/16 in",
    "tube.girth.right": "9 7/16 in",
    "tube.bare.left": "300 mm",
    "tube.bare.right": "618 mm",
    "wheel.offset": "ET -25 mm",
    "wheel.spacer": "0 mm",
    "weight.axle": "1510 kg",
    "joint.cap_across": "30,2 mm",
    "joint.cap_to_cap": "92 mm",
    "drive.lock": "4",
    "drive.unlocking_hubs": "y",
    "rig.condition": "2",
    "use.hardest": "rocks",
    "use.from_help": "60 km",
}
REAR = {
    **{path: said for path, said in FRONT.items() if path != "drive.unlocking_hubs"},
    "held_by.arms": "leaves",
    "held_by.weight_on": "leaf",
    "joint.cap_across": "don't know",
    "joint.cap_to_cap": "?? no idea",
    "drive.lock": "limited",
}
REAR["joint.cap_to_cap"] = "no idea"


def quick(rig, draws):
    """An assessment at its middle alone: a talk is tested, not doubt."""
    return assess_rig(rig, draws=0)


class Desk:
    """A talk with what was said and what was kept."""

    def __init__(self, text=None, *, everything=False, draws=None):
        draft = Draft(name="rig") if text is None else read_draft(text)
        self.kept = []
        answer = FirstAnswer() if draws else FirstAnswer(quick)
        self.talk = Conversation(
            draft, self.kept.append, today=TODAY, everything=everything, first_answer=answer
        )
        self.told = [self.talk.begin()]

    def hears(self, *lines):
        for line in lines:
            self.told.append(self.talk.hear(line))
        return self.told[-1]

    @property
    def text(self):
        return self.kept[-1]


def upto(path, rig=None):
    """Lines from the first to the answer of a path, left out."""
    said = rig or FRONT
    return [*HEAD, *list(said.values())[: list(said).index(path)]]


def test_a_front_rig_from_nothing_to_an_answer():
    desk = Desk()
    desk.hears(*HEAD, *FRONT.values())
    rig = rig_from_text(desk.text)
    assert rig.name == "Heron"
    assert rig.axle == "front"
    assert rig.answers == len(FRONT)
    assert rig.given["hub_height_right"].about
    assert rig.given["cap_across"].value == pytest.approx(0.0302)
    assert "In one bad moment" in desk.told[-1]
    assert "May I drive?" in desk.told[-1]
    assert desk.hears("") == ""
    assert desk.talk.done
    assert not desk.talk.stopped


def test_the_questions_come_in_the_order_of_the_catalogue():
    desk = Desk()
    desk.hears(*HEAD, *FRONT.values())
    asked = [field.asks for field in FIELDS if field.required]
    for question, told in zip(asked, desk.told[2:], strict=False):
        assert question in told


def test_a_rear_rig_is_not_asked_what_only_a_front_axle_has():
    desk = Desk()
    desk.hears("2", "Stork, rear", *REAR.values())
    rig = rig_from_text(desk.text)
    assert rig.axle == "rear"
    assert "cap_across" not in rig.given
    assert all("unlocked" not in told for told in desk.told)
    assert "In one bad moment" in desk.told[-1]


def test_each_answer_is_said_back_with_unit_and_side():
    desk = Desk()
    told = desk.hears(*upto("hub_height.left"), "432 mm")
    assert "left hub centre above the ground: 432 mm, that is 17.0 in" in told


def test_the_tyre_tells_its_toe_at_once():
    told = Desk().hears(*upto("tyre.sidewall"), "37x12.50R17LT 124Q")
    assert "1/8 in (3 mm) of toe on it is 0.194 deg" in told


def test_the_first_answer_comes_after_the_weight_and_then_narrows():
    desk = Desk()
    assert "first answer" not in desk.hears(*upto("weight.axle"))
    assert "A first answer, with the rest assumed: " in desk.hears(FRONT["weight.axle"])
    assert "answer so far" in desk.hears("30.2 mm")
    told = desk.hears("92 mm")
    assert "such a joint holds about" in told
    assert "answer so far" in told


def test_without_the_tubes_the_weight_names_what_is_missing():
    draft_only = "axlewright = 1\n[rig]\nname = 'x'\naxle = 'front'\n[tyre]\nsidewall = '7.50R16'\n"
    desk = Desk(draft_only)
    desk.talk.draft.answers.update(
        {
            field.path: desk.talk.draft.read(field, FRONT[field.path])
            for field in FIELDS
            if field.path in FRONT and field.question in {1, 3, 4, 5, 8} and field.kind != "word"
        }
    )
    desk.hears("three", "1", "9 1/2 in")
    left = desk.talk.draft.needed()
    assert left == ("tube.girth.right", "tube.bare.left", "tube.bare.right", "weight.axle")


def test_a_talk_left_in_the_middle_goes_on_where_it_was():
    desk = Desk()
    told = desk.hears(*upto("track.springs"), "later")
    assert desk.talk.done
    assert "Kept: 6 of 21 answers" in told
    again = Desk(desk.text)
    assert "spring to spring?" in again.told[0]
    assert "Which axle" not in again.told[0]
    rest = list(FRONT.values())[list(FRONT).index("track.springs") :]
    again.hears(*rest)
    assert rig_from_text(again.text).answers == len(FRONT)
    straight = Desk()
    straight.hears(*HEAD, *FRONT.values())
    assert again.text == straight.text


def test_the_file_is_kept_after_every_answer():
    desk = Desk()
    desk.hears(*HEAD, *FRONT.values())
    assert len(desk.kept) == len(HEAD) + len(FRONT)
    for number, text in enumerate(desk.kept):
        assert len(read_draft(text).answers) == max(number - 1, 0)


def test_the_end_of_input_leaves_cleanly():
    desk = Desk()
    desk.hears(*upto("track.tyres"))
    assert "Kept: 5 of 21 answers. Next: tyre centre to tyre centre." in desk.talk.leave()
    assert desk.talk.done
    assert desk.talk.hear("1675 mm") == ""


def test_back_asks_the_question_before_and_an_empty_line_keeps_it():
    desk = Desk()
    told = desk.hears(*upto("track.springs"), "back")
    assert "tyre centre to tyre centre?" in told
    assert "So far: 1675 mm" in told
    assert "How high is the right hub" in desk.hears("back")
    assert "spring to spring?" in desk.hears("")
    desk.hears("back", "1680 mm")
    assert read_draft(desk.text).answers["track.tyres"].text == "1680 mm"


def test_back_at_the_first_question_stays_there():
    desk = Desk()
    assert "This is the first question" in desk.hears("back")
    assert "Which axle" in desk.told[-1]


def test_an_unreadable_number_gets_one_message_with_an_example_and_is_asked_again():
    desk = Desk()
    desk.hears(*upto("track.tyres"))
    before = len(desk.kept)
    assert "has no unit" in desk.hears("1675")
    assert "Did you mean 1675 mm?" in desk.told[-1]
    assert desk.told[-1].count("\n") == 0
    assert "is too small" in desk.hears("1675 thou")
    assert "is a mass" in desk.hears("1675 kg")
    assert len(desk.kept) == before
    assert "spring to spring?" in desk.hears("1675 mm")


def test_dont_know_is_refused_where_the_answer_hangs_on_it():
    desk = Desk()
    told = desk.hears(*upto("weight.axle"), "don't know")
    assert "cannot be left open" in told
    assert "weight.axle" not in read_draft(desk.text).answers
    told = desk.hears("about 1500 kg", "don't know")
    assert "not known" in told
    assert read_draft(desk.text).answers["joint.cap_across"].dont_know


def test_a_question_mark_explains():
    told = Desk().hears(*upto("tube.girth.left"), "?")
    assert "Divided by pi" in told
    assert "about" in told


def test_a_contradiction_can_be_answered_by_another_number():
    desk = Desk()
    told = desk.hears(*upto("track.springs"), "1600 mm")
    assert "That does not fit: the springs stand 1600 mm apart" in told
    assert "go back to tyre centre to tyre centre: 1675 mm" in told
    assert "track.springs" not in read_draft(desk.text).answers
    assert "380 mm" in desk.hears("915 mm")


def test_a_contradiction_can_go_back_to_the_other_number():
    desk = Desk()
    desk.hears(*upto("track.springs"), "1600 mm")
    assert "tyre centre to tyre centre?" in desk.hears("2")
    assert "spring to spring?" in desk.hears("1950 mm")
    desk.hears("1600 mm")
    kept = read_draft(desk.text).answers
    assert kept["track.springs"].text == "1600 mm"
    assert kept["track.tyres"].text == "1950 mm"


def test_a_contradiction_can_keep_the_old_answer():
    desk = Desk()
    desk.hears(*upto("tube.girth.left"), "back", "1600 mm")
    assert "keep the old answer: 915 mm" in desk.told[-1]
    assert "The old answer stands" in desk.hears("keep")
    assert read_draft(desk.text).answers["track.springs"].text == "915 mm"


def test_what_is_set_aside_comes_again():
    desk = Desk()
    desk.hears(*upto("track.springs"), "1600 mm", "set")
    assert "round the left tube?" in desk.told[-1]
    rest = list(FRONT.values())[list(FRONT).index("track.springs") + 1 :]
    assert "What was set aside comes again" in desk.hears(*rest)
    desk.hears("915 mm")
    assert rig_from_text(desk.text).answers == len(FRONT)


def test_leaves_under_a_coil_are_a_contradiction_too():
    told = Desk().hears(*HEAD, "leaves", "1")
    assert "do not go together" in told
    assert "go back to what holds the axle: leaves" in told


def test_a_crack_in_a_knuckle_is_a_stop_at_once_and_stands_before_the_answer():
    desk = Desk()
    desk.hears(*upto("rig.condition"), "as listed")
    told = desk.hears("knuckle", "cracked", "left", "", "seen with dye")
    assert "STOP: knuckle (left), cracked, 2026-11-05" in told
    assert desk.talk.stopped
    told = desk.hears("", "rocks", "60 km")
    assert told.index("STOP: knuckle") < told.index("In one bad moment")
    [condition] = rig_from_text(desk.text).conditions
    assert (condition.part, condition.what, condition.where) == ("knuckle", "cracked", "left")
    assert condition.date == TODAY
    assert condition.note == "seen with dye"
    assert "STOP: knuckle" in Desk(desk.text).told[0]


def test_several_conditions_with_back_and_a_date_ahead():
    desk = Desk()
    desk.hears(*upto("rig.condition"), "1", "1", "mended", "right")
    assert "lies ahead" in desk.hears("2030-01-01")
    assert "is no date" in desk.hears("last spring")
    desk.hears("back", "both", "2026-05-03", "")
    desk.hears("seat of the left spring", "bent", "", "", "", "")
    found = read_draft(desk.text).conditions
    assert [(one.part, one.where) for one in found] == [
        ("track-bar bracket", "both"),
        ("seat of the left spring", ""),
    ]
    assert "hardest" in desk.told[-1]


@pytest.mark.parametrize(
    ("said", "again", "kept"),
    [("knuckel", "7", "knuckle"), ("knuckel", "knuckel", "knuckel"), ("thingummy", "tube", "tube")],
)
def test_a_part_that_is_not_known_is_asked_twice(said, again, kept):
    desk = Desk()
    told = desk.hears(*upto("rig.condition"), "1", said)
    asked = "Did you mean knuckle?" if said == "knuckel" else "No such part is known here."
    assert asked in told
    desk.hears(again, "cracked", "left", "", "", "")
    assert read_draft(desk.text).conditions[0].part == kept
    assert desk.talk.stopped is (kept != "tube")


def test_an_empty_line_is_no_word_of_a_list():
    desk = Desk()
    assert desk.hears(*upto("rig.condition"), "1", "hub", "") == "This one needs an answer."


def test_a_word_that_ends_only_one_choice_is_guessed_and_not_taken():
    desk = Desk()
    told = desk.hears(*upto("drive.lock"), "on command")
    assert "Did you mean 4, locks on command?" in told
    assert "drive.lock" not in read_draft(desk.text).answers


def test_dont_know_at_a_choice_is_met_with_a_choice():
    told = Desk().hears(*upto("use.hardest"), "don't know")
    assert "Take what comes nearest" in told
    assert '"about' not in told


def test_no_spacer_can_be_said_in_a_word():
    desk = Desk()
    told = desk.hears(*upto("wheel.spacer"), "none")
    assert "spacer on each side: 0 mm" in told


def test_who_answers_in_inches_is_told_in_inches():
    inches = FRONT | {
        "hub_height.left": "17 in",
        "hub_height.right": "17 in",
        "track.tyres": "66 in",
        "track.springs": "36 in",
        "tube.bare.left": "12 in",
        "tube.bare.right": "24 1/2 in",
        "weight.axle": "3300 lb",
    }
    desk = Desk()
    desk.hears(*upto("joint.cap_across", inches))
    told = "\n".join(desk.told)
    assert "The right tube is the longer by 12.5 in" in told
    assert "Each wheel carries about 1650 lb" in told
    assert "lbf ft" in told
    assert re.search(r"drop of about \S+ in\b", told)
    assert " mm" not in desk.told[-1]
    assert "For example: 1.19 in" in desk.hears("none at all")
    assert "For example: 1.19 in" in desk.hears("")


def test_the_first_answer_stands_in_a_line_for_each_kind_of_differential():
    desk = Desk(draws=True)
    desk.hears(*upto("joint.cap_across"))
    rows = desk.told[-1].split("\n")
    told = [row.strip() for row in rows if "one bad moment" in row]
    assert len(told) == 1 or told[1].startswith("Locked: ")


def test_listed_but_nothing_listed_is_asked_again():
    desk = Desk()
    told = desk.hears(*upto("rig.condition"), "1", "")
    assert "Nothing is listed yet" in told
    assert "rig.condition" not in read_draft(desk.text).answers


def test_what_was_listed_cannot_be_talked_away():
    desk = Desk()
    desk.hears(*upto("rig.condition"), "1", "hub", "loose", "left", "", "", "", "back", "2")
    assert "That does not fit" in desk.told[-1]
    assert desk.talk.stopped


def test_never_looked_at_is_not_sound():
    told = Desk().hears(*upto("rig.condition"), "never")
    assert "NOT LOOKED AT" in told


def test_turning_a_front_axle_into_a_rear_one_takes_out_what_it_has_not():
    desk = Desk()
    desk.hears(*HEAD, *list(FRONT.values())[:-2])
    for _ in range(len(FRONT) + 2):
        desk.hears("back")
    assert "Which axle" in desk.told[-1]
    assert "Taken out" in desk.hears("rear")
    assert "drive.unlocking_hubs" not in read_draft(desk.text).answers


def test_at_the_end_any_question_can_be_asked_again():
    desk = Desk()
    desk.hears(*HEAD, *FRONT.values())
    assert "1 to 13" in desk.told[-1]
    assert "How much weight" in desk.hears("9")
    desk.hears("1600 kg")
    assert rig_from_text(desk.text).given["axle_weight"].value == pytest.approx(1600 * 9.80665)
    assert "is not the number" in desk.hears("99")
    desk.hears("")
    assert desk.talk.done


def test_a_file_that_contradicts_itself_is_met_when_it_is_opened():
    desk = Desk()
    desk.hears(*HEAD, *FRONT.values())
    wrong = desk.text.replace('springs = "915 mm"', 'springs = "1600 mm"')
    again = Desk(wrong)
    assert "Two answers do not fit" in again.told[0]
    assert "spring to spring?" in again.told[0]
    again.hears("915 mm")
    assert again.text == desk.text


def test_with_all_the_next_question_is_the_one_that_moves_most():
    desk = Desk(everything=True, draws=True)
    desk.hears(*HEAD, *FRONT.values())
    moved = assess_rig(rig_from_text(desk.text), draws=256).influences
    known = {field.quantity: field for field in FIELDS if field.quantity and not field.required}
    settled = {
        "tube_yield": "tube.steel",
        "shaft_shear_yield": "shaft.steel",
        "forging_modulus": "forging.gussets",
        "bearing_static": "hub.static_rating",
    }
    first = next(
        known[item.doubt.quantity].path
        if item.doubt.quantity in known
        else settled[item.doubt.quantity]
        for item in moved
        if item.doubt.quantity in known or item.doubt.quantity in settled
    )
    asked = {field.path: field.asks for field in FIELDS}
    assert asked[first] in desk.told[-1]
    before = desk.text
    desk.hears("")
    assert desk.text == before
    assert asked[first] not in desk.told[-1]
    desk.hears("don't know")
    assert rig_from_text(desk.text).answers == len(FRONT)


def test_comments_written_by_hand_stay_where_they_were():
    desk = Desk()
    desk.hears(*upto("track.springs"))
    by_hand = desk.text.replace(
        'tyres = "1675 mm"', '# taped twice\ntyres = "1675 mm"   # at the ground'
    )
    again = Desk(by_hand + "# a last word\n")
    again.hears("915 mm")
    assert '# taped twice\ntyres = "1675 mm"  # at the ground\n' in again.text
    assert again.text.endswith("# a last word\n")


@pytest.mark.parametrize(
    "name", ['say "cheese"', "back\\slash", "naïve Ø", "tab\there", "'quoted' # no comment"]
)
def test_any_name_survives_the_file(name):
    desk = Desk()
    desk.hears("front", name)
    assert read_draft(desk.text).name == " ".join(name.split())


WORDS = st.sampled_from(
    [
        *FRONT.values(),
        *REAR.values(),
        *HEAD,
        "back",
        "?",
        "",
        "1",
        "2",
        "3",
        "as listed",
        "knuckle",
        "cracked",
        "1600 mm",
        "keep",
        "set",
        "don't know",
        "5000 mm",
        "200 mm",
        "never",
        "rear",
        "9",
    ]
)
LINES = st.lists(st.one_of(WORDS, st.text(max_size=30)), max_size=60)


def never_fails(desk, lines):
    for line in lines:
        desk.hears(line)
    desk.talk.leave()
    assert desk.talk.done
    for text in desk.kept:
        read_draft(text)
    if desk.kept and not desk.talk.draft.missing():
        assert rig_from_text(desk.text).answers


@settings(max_examples=60)
@given(LINES)
def test_no_sequence_of_lines_ends_in_a_failure(lines):
    never_fails(Desk(), lines)


@settings(max_examples=60)
@given(st.integers(0, len(FRONT)), LINES)
def test_no_sequence_from_any_point_on_ends_in_a_failure(done, lines):
    never_fails(Desk(), [*HEAD, *list(FRONT.values())[:done], *lines])


def test_what_changed_since_places_were_taped_is_asked_only_where_they_were():
    taped = '\n[points]\narm_frame.left = "735 mm behind, 405 mm left, 488 mm up"\n'
    desk = Desk()
    desk.hears(*upto("use.from_help"), "60 km")
    bare, known = read_draft(desk.text), read_draft(desk.text + taped)
    asked = FirstAnswer(quick)
    assert "travel.lift" not in asked.moving(bare)
    assert "travel.lift" in asked.moving(known)
