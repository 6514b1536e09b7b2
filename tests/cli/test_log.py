"""`axlewright log`: what is said in the terminal, exit codes, JSON, the same store as the bay."""

import json
from pathlib import Path

import jsonschema
import pytest

from axlewright.cli import run

RIG = "examples/rigs/wagtail.toml"
SCHEMA = json.loads(Path("docs/schemas/log-1.json").read_text("utf-8"))


def checked(answer):
    """JSON Schema 2020-12, by a reader of its own; and no number of a quantity without its unit."""
    jsonschema.Draft202012Validator(SCHEMA).validate(answer)
    bare = {"distance", "odometer", "pressure", "water", "speed", "standard", "mean", "share"}
    open_ = [answer]
    while open_:
        thing = open_.pop()
        if isinstance(thing, dict):
            for key, value in thing.items():
                assert key not in bare or isinstance(value, dict), key
            open_ += thing.values()
        elif isinstance(thing, list):
            open_ += thing


@pytest.fixture
def ask(tmp_path, capsys):
    def go(*words):
        code = run(["log", *words, "--store", str(tmp_path)])
        told = capsys.readouterr()
        return code, told.out + told.err

    return go


def test_a_stop_leaves_with_three_until_work_and_a_look_close_it(ask):
    code, told = ask(
        *("look", RIG, "before_joints", "stop", "--part", "tie rod", "--side", "left"),
        *("--found", "loose"),
    )
    assert code == 3
    assert told.startswith("STOP: left tie rod, loose")
    assert ask("drive", "wagtail-front")[0] == 3
    assert ask("look", "wagtail-front", "before_joints", "go")[0] == 3
    ask("work", "wagtail-front", "renewed", "--part", "tie rod", "--side", "left")
    assert ask("look", "wagtail-front", "before_joints", "go")[0] == 0
    code, told = ask("drive", "wagtail-front")
    assert (code, "NOT LOOKED AT" in told) == (0, True)


def test_a_reading_that_looks_mixed_up_leaves_with_two_and_is_not_kept(ask):
    code, told = ask("reading", RIG, "unit_hub_play", "4 mm", "--side", "left")
    assert code == 2
    assert "Not kept" in told
    assert ask("history", "wagtail-front")[1].strip() == ""
    code, told = ask("reading", RIG, "unit_hub_play", "0.05 mm", "0.06 mm", "--side", "left")
    assert code == 0
    assert "light truck" in told
    assert "no go" in told


def test_a_stop_stands_before_every_other_answer_about_the_rig(ask):
    ask("look", RIG, "before_joints", "stop", "--part", "tie rod", "--found", "loose")
    for words in (
        ("reading", RIG, "camber", "-0.5 deg", "--side", "left"),
        *(("due", RIG), ("past", RIG), ("bent", RIG), ("history", RIG)),
    ):
        code, told = ask(*words)
        assert code == 3, words
        assert told.startswith("STOP: tie rod, loose"), words
    code, told = ask("shimmy", RIG)
    assert code == 3
    assert told.splitlines()[1].startswith("STOP: tie rod, loose")


def test_hub_play_over_its_limit_is_a_stop_in_the_answer_to_the_reading_too(ask):
    code, told = ask("reading", RIG, "unit_hub_play", *["0.3 mm"] * 3, "--side", "left")
    assert code == 3
    assert told.startswith("STOP: play of a sealed hub, dial at the wheel's face, left: out")
    assert "Do not drive. Mend or renew it" in told.splitlines()[0]
    assert "STOP: do not drive" in told
    assert "FIX BEFORE TRIP" not in told


def test_a_pull_on_a_string_is_told_as_a_torque_and_new_and_used_bearings_apart(ask):
    pulled = ("--radius", "50 mm", "--with", "string_pull")
    _, told = ask("reading", RIG, "pinion_torque", "4 kg", *pulled)
    assert "new bearings" in told
    assert "used bearings" in told
    code, told = ask("history", RIG)
    assert code == 0
    assert "pinion_torque 1.96 N m" in told


def test_json_is_si_and_says_everything(ask):
    _, told = ask("reading", RIG, "camber", "-0.5 deg", "--side", "left", "--json")
    answer = json.loads(told)["reading"]
    value = answer["reading"]["value"]
    assert value["value"] == pytest.approx(-0.00872665)
    assert value["unit"] == "rad"
    assert value["band"]["low"] < value["value"] < value["band"]["high"]
    for each in answer["judged"]:
        assert each["limit"]["scope"]
        assert each["limit"]["source"]
    for words in (
        ("drive", RIG),
        ("due", RIG),
        ("history", RIG),
        ("parts",),
        ("past", RIG),
        ("shimmy", RIG),
        ("look", RIG, "--list", "apart"),
        ("reading", RIG, "toe"),
        ("reading", RIG),
        ("bent", RIG, "tie_rod_bow=25 mm", "knock=yes"),
        ("trip", RIG, "North loop", "180 km", "--ground", "forest_roads=180km", "--water", "70 cm"),
        ("chapter", RIG, "before", "--distance", "2e4 to 9e4 km", "--broke", "tie rod"),
        ("limit", RIG, "unit_hub_play", "--high", "0.05 mm", "--printed", "p. 7"),
        ("part", "hub", "left hub"),
        ("fit", RIG, "hub-1", "left hub"),
        ("parts",),
        ("off", RIG, "hub-1"),
        ("history", RIG),
        ("withdraw", RIG, "1", "slip"),
    ):
        checked(json.loads(ask(*words, "--json")[1]))


def test_no_command_says_go_but_drive_and_only_after_every_look(ask):
    """Every command that reckons is asked; none answers go."""
    for words in (
        ("reading", RIG, "camber", "0 deg", "0 deg", "0 deg", "--side", "left", "--json"),
        ("due", RIG, "--json"),
        ("past", RIG, "--json"),
        ("trip", RIG, "x", "10 km", "--json"),
    ):
        assert '"go"' not in ask(*words)[1]
    looks = json.loads(ask("look", RIG, "--list", "before_trip", "--json")[1])["looks"]
    for each in looks[1:]:
        ask("look", RIG, each["key"], "go")
    assert json.loads(ask("drive", RIG, "--json")[1])["drive"]["state"] == "not looked at"
    ask("look", RIG, looks[0]["key"], "go")
    assert json.loads(ask("drive", RIG, "--json")[1])["drive"]["state"] == "go"


def test_a_hit_weighs_the_bow_and_enters_both(ask):
    words = ("hit", RIG, "a rock", "--rod", "tie rod", "--bow", "30 mm", "--off", "60 deg")
    code, told = ask(*words)
    assert code == 0
    assert told.index("Entered:") < told.index("does not explain what is felt")
    assert told.index("does not explain") < told.index("1. a steering arm or knuckle")
    assert told.index("1. a steering arm") < told.index("1. What steers")
    assert "FIX BEFORE TRIP: tie rod" in ask("drive", "wagtail-front", "--beside-the-track")[1]
    answer = json.loads(ask(*words, "--json")[1])["entered"]
    assert answer["off_centre"]["bow"] == {"value": 0.03, "unit": "m", "band": None}
    assert answer["off_centre"]["left_over"]["band"][0] > 0.5
    code, told = ask("hit", RIG, "a rock", "--bow", "400 mm")
    assert (code, told.startswith("STOP: tie rod")) == (3, True)


def test_a_photo_goes_with_a_look_a_hit_and_a_note_and_must_be_one(ask, tmp_path):
    good, bad = tmp_path / "a.jpg", tmp_path / "b.jpg"
    good.write_bytes(b"\xff\xd8\xff\xe0 invented")
    bad.write_bytes(b"<script>")
    for words in (
        ("look", RIG, "before_hubs", "go"),
        ("hit", RIG, "a rock"),
        ("note", RIG, "paint renewed"),
    ):
        assert ask(*words, "--photo", str(good))[0] == 0
        code, told = ask(*words, "--photo", str(bad))
        assert (code, "no photo" in told) == (2, True)
    assert ask("history", "wagtail-front")[1].count("[1 photos]") == 3


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("look", RIG, "before_joints", "maybe"), "does not end in"),
        (("look", RIG, "nothing", "go"), "no look"),
        (("trip", RIG, "x", "ten"), "cannot be read"),
        (("trip", RIG, "x", "10 km", "--on", "yesterday"), "no day"),
        (("trip", RIG, "x", "10 km", "--ground", "moon=3km"), "no ground"),
        (("work", RIG, "x", "--interval", "moon"), "no standing job"),
        (("part", "moon", "x"), "no kind of part"),
        (("drive", "nobody"), "no rig"),
        (("archive", "in", "nothing.zip"), "cannot be read"),
        (("withdraw", RIG, "99", "x"), "no entry 99"),
    ],
)
def test_what_cannot_be_is_refused_in_words(ask, words, told):
    code, said = ask(*words)
    assert code == 2
    assert told in said


def test_the_whole_round(ask, tmp_path):
    """From a part with an identity to an archive, in the terminal alone."""
    assert "hub-1" in ask("part", "hub", "left hub", "--mark", "three dots")[1]
    assert ask("fit", RIG, "hub-1", "left hub")[0] == 0
    assert ask("trip", RIG, "North loop", "180 km", "--ground", "forest_roads=180km")[0] == 0
    code, told = ask("hit", RIG, "a rock", "--side", "left")
    assert "1. What steers" in told
    assert ask("off", RIG, "hub-1", "--reason", "worn")[0] == 0
    assert "180 km, 1 trip, 1 hit" in ask("parts")[1]
    assert ask("limit", RIG, "unit_hub_play", "--high", "0.05 mm", "--printed", "p. 7")[0] == 0
    assert (
        ask("chapter", RIG, "before", "--distance", "2e4 to 9e4 km", "--broke", "tie rod")[0] == 0
    )
    assert "tie rod broke" in ask("past", RIG)[1]
    assert ask("note", RIG, "paint renewed")[0] == 0
    assert ask("shimmy", RIG, "still=yes")[0] == 3
    assert ask("look", RIG, "shimmy.mud", "go")[0] == 3
    assert ask("shimmy", RIG, "still=no")[0] == 0
    file = str(tmp_path / "out.zip")
    assert ask("archive", "out", file)[0] == 0
    assert run(["log", "archive", "in", file, "--store", str(tmp_path / "other")]) == 0
    assert code == 0
