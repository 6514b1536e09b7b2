"""What to carry in words and as JSON. Outside reference: a general JSON Schema checker."""

import re
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.actions import carrying_of
from axlewright.rig import load_rig
from axlewright.strength import assess_rig
from axlewright.upkeep import least_set
from axlewright.views import card_lines, carry_data, carry_json, carry_lines, carry_schema
from axlewright.views.carry import chance_words

RIGS = Path(__file__).parents[2] / "examples" / "rigs"


@pytest.fixture(scope="module", params=["heron", "wagtail", "stork-rear"])
def rig(request):
    return assess_rig(load_rig(str(RIGS / f"{request.param}.toml")), draws=64)


@pytest.fixture(scope="module")
def told(rig):
    return carrying_of(rig, {"mass": "150 kg", "days": "4"})


def test_json_is_what_its_schema_says_and_si(told):
    jsonschema.Draft202012Validator.check_schema(carry_schema())
    answer = carry_json(told)
    jsonschema.Draft202012Validator(carry_schema()).validate(answer)
    assert set(answer) == set(carry_schema()["properties"])
    assert answer["trip"]["mass"]["value"] == 150.0
    for item in answer["least"] + answer["rest"]:
        band = item["mass"]["band"]
        assert band["low"] <= item["mass"]["value"] <= band["high"]
    assert all(0.0 <= part["chance"]["value"] <= 1.0 for part in answer["risks"])


def test_every_line_of_the_answer_is_there_once(told):
    data, text = carry_data(told), "\n".join(carry_lines(carry_data(told)))
    for line in (*data.least, *data.rest, *data.unjudged, *data.left):
        assert text.count(f"[{line.key}]") == 1
    assert data.sentence in text
    assert "The least set stands whatever the order says" in text
    assert "The chances are rough" in text
    assert "only a look does" in text


def test_no_face_leaves_anything_of_the_least_set_out(rig):
    bare = carrying_of(rig, {"mass": "1 kg", "people": "1"})
    data = carry_data(bare)
    text = "\n".join(carry_lines(data))
    assert len(data.least) == len(least_set(rig.rig.axle, rig.rig.words, bare.load.outing.ground))
    assert [item["key"] for item in carry_json(bare)["least"]] == [each.key for each in data.least]
    for line in data.least:
        assert line.label in text
    assert "it stands" in data.sentence
    assert any("not made smaller" in line for line in data.warnings)


def test_no_line_says_that_it_may_be_driven(told):
    text = "\n".join(carry_lines(carry_data(told)))
    assert not re.search(r"\b(go|safe|sound|ok) to drive\b|\bmay go\b", text, re.IGNORECASE)


def test_masses_follow_the_reader(told):
    # 1 lb is 0.45359237 kg exactly: NIST SP 811.
    wheel = {line.key: line.mass for line in carry_data(told, "us").least}["spare_wheel"]
    assert wheel == "about 99 lb (66 to 150)"
    assert "kg" not in "\n".join(carry_lines(carry_data(told, "us")))


def test_every_card_tells_all_that_a_card_must(told):
    data = carry_data(told)
    assert len({card.key for card in data.cards}) == len(data.cards)
    for card in data.cards:
        if card.key == "shake":
            continue
        assert re.match(r"[12] (person|people)", card.effort)
        assert card.tools
        assert card.materials
        assert card.limits
        assert card.next_look
        assert card.record
        assert "to get out of danger, not home" in card.after or "Not driven" in card.after
        assert card.steps
    text = "\n".join(card_lines(data.cards))
    assert text.count("NEVER:") == len(data.cards)


def test_cards_of_this_axle_and_no_other(rig, told):
    keys = {card.key for card in carry_data(told).cards}
    assert ("tie_rod" in keys) == (rig.rig.axle == "front")
    assert ("rear_shafts" in keys) == (rig.rig.axle == "rear")
    assert ("leaf" in keys) == (rig.rig.words["held_by.arms"] == "leaves")
    assert {"brake", "breather", "oil", "studs", "hub"} <= keys


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_a_greater_chance_never_sounds_smaller(one, other):
    low, high = sorted((one, other))
    assert rank(chance_words(low)) <= rank(chance_words(high))


def rank(words):
    named = {"about even": 0.5, "likely": 0.7, "nearly sure": 1.0, "less than 1 in 1,000": 0.0}
    return named[words] if words in named else 1.0 / float(words.split()[-1].replace(",", ""))
