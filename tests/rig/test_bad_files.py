"""Files that cannot be used: each says where, what was given, what is accepted, and all at once."""

import re

import pytest

from axlewright.errors import BadFile
from axlewright.rig.reading import (
    read_change_text,
    read_rig_text,
)
from rig.small import CATALOGUE, CHANGE, RIG


def faults(text, read=read_rig_text):
    with pytest.raises(BadFile) as refused:
        read(text, "bad.toml", CATALOGUE)
    assert all(fault.file == "bad.toml" for fault in refused.value.faults)
    return refused.value.faults


def swapped(old, new, text=RIG):
    assert text.count(old) == 1
    return text.replace(old, new)


def one(text, read=read_rig_text):
    [fault] = faults(text, read)
    return fault


@pytest.mark.parametrize(
    ("old", "new", "line", "told"),
    [
        ('left = "432 mm"', "left = 17 1/4 in", 9, "there is more on this line than one value"),
        ('left = "432 mm"', "left = 432 mm", 9, "there is more on this line than one value"),
        ('left = "432 mm"', 'left = "432 mm', 9, "opened with a quote and not closed"),
        ('left = "432 mm"', "left = don't know", 9, "no value; a text must stand in quotes"),
        ('left = "432 mm"', "left", 9, "a name must be followed by ="),
        ('left = "432 mm"', 'left: "432 mm"', 9, "a name must be followed by ="),
        ('left = "432 mm"', 'left = "17\\ in"', 9, "backslash"),
        ("[hub_height]", "[hub_height", 8, "a heading must end in ]"),
        ('left = "432 mm"', 'left = "17\\u12 in"', 9, "backslash"),
        ('[[condition]]\npart = "left tube"', "[[condition]\npart = 3", 35, "must end in ]"),
        ("[hub_height]", "=", 8, "here a name should begin"),
        ("date = 2026-05-03", "date = 2026-13-03", 33, "no such date|more on this line"),
    ],
)
def test_syntax(old, new, line, told):
    fault = one(swapped(old, new))
    assert fault.line == line
    assert fault.given == new.splitlines()[0]
    assert re.search(told, fault.problem)
    assert "column" in fault.problem
    assert fault.accepted
    assert fault.example


@pytest.mark.parametrize(
    ("new", "example"),
    [
        ("left = 432 mm", 'left = "432 mm"'),
        ("left = “432 mm”", 'left = "432 mm"'),
        ('left: "432 mm"', 'left = "432 mm"'),
        ('left = "432 mm', 'left = "432 mm"'),
        ('left = "17 1/4""', 'left = "17 1/4 in"'),
        ("left = don't know", 'left = "don\'t know"'),
        ("left =", 'left = "9 7/16 in"'),
    ],
)
def test_a_line_that_can_be_guessed_is_shown_as_it_would_be_read(new, example):
    fault = one(swapped('left = "432 mm"', new))
    assert fault.example == example
    assert read_rig_text(swapped('left = "432 mm"', example), "rig.toml", CATALOGUE)


@pytest.mark.parametrize(("old", "example"), [("[tyre]", "[tyre"), ("[tube]", "[tube ")])
def test_a_heading_is_closed_in_the_example(old, example):
    assert one(swapped(old, example)).example == old


def test_an_unknown_heading_is_answered_with_all_that_there_are():
    fault = one(RIG + '[winch]\npull = "9000 lb"\n')
    assert fault.accepted.startswith("one of the headings: alignment, condition, drive, engine,")


def test_an_unknown_name_is_answered_with_those_of_its_table():
    fault = one(swapped("studs = 6", "studs = 6\nbolts = 6"))
    assert fault.accepted == "under [wheel] one of: offset, width, studs"


@pytest.mark.parametrize("said", ['"none"', '"0"', "0", '"nil"', '"0 km"', '"zero"'])
def test_nought_needs_no_unit(said):
    raw = read_rig_text(RIG + f"[use]\nfrom_help = {said}\n", "rig.toml", CATALOGUE)
    assert raw.answers["use.from_help"].value == 0.0


@pytest.mark.parametrize(("old", "said"), [('"432 mm"', '"0"'), ('"432 mm"', '"none"')])
def test_nought_is_no_answer_where_it_cannot_be(old, said):
    assert one(swapped(old, said)).field == "hub_height.left"


def test_syntax_faults_are_told_together():
    text = swapped('left = "432 mm"', "left = 432 mm")
    text = swapped("[weight]", "[weight", text)
    text = swapped('part = "left tube"', 'part = "left tube', text)
    assert [fault.line for fault in faults(text)] == [9, 19, 36]


@pytest.mark.parametrize(
    ("old", "new", "path", "told"),
    [
        ('"432 mm"', '"432 Nm"', "hub_height.left", "'432 Nm' is a torque, not a length"),
        ('"432 mm"', '"432 kg"', "hub_height.left", "not a length"),
        ('"432 mm"', '"432"', "hub_height.left", "'432' has no unit"),
        ('"432 mm"', "432", "hub_height.left", "'432' has no unit"),
        ('"432 mm"', '"432 mn"', "hub_height.left", "a unit that is not known here: 'mn'"),
        ('"432 mm"', '"1,900 mm"', "hub_height.left", "can be read in two ways"),
        ('"432 mm"', '"432 mm?"', "hub_height.left", "ends in a question mark"),
        ('"1510 kg"', '"1.5 tons"', "weight.axle", "a long, a short or a metric ton"),
        ('"7 in"', '"7 furlongs"', "wheel.width", "a unit that is not known here"),
        ("ratio = 4.56", 'ratio = "4.56 mm"', "gear.ratio", "is a length, not a ratio"),
        ("studs = 6", "studs = 6.5", "wheel.studs", "is not a whole number"),
    ],
)
def test_unit(old, new, path, told):
    fault = next(each for each in faults(swapped(old, new)) if each.field == path)
    assert told in fault.problem
    assert fault.accepted
    assert fault.line == next(
        number for number, row in enumerate(RIG.splitlines(), 1) if old in row
    )


@pytest.mark.parametrize(
    ("old", "new", "told", "takes", "near"),
    [
        ('"432 mm"', '"432 cm"', "432 cm is too large", "from 20 cm to 80 cm", ("432 mm",)),
        ('"432 mm"', '"43.2 mm"', "43.2 mm is too small", "from 200 mm to 800 mm", ("43.2 cm",)),
        ('"432 mm"', '"-432 mm"', "-432 mm is too small", "from 200 mm to 800 mm", ()),
        ('"432 mm"', '"700 to 900 mm"', "900 mm is too large", "to 800 mm", ()),
        ('"16 7/8 in"', '"100 in"', "100 in is too large", "from 7.88 in to 31.4 in", ()),
        ('"1510 kg"', '"15 kg"', "15 kg is too small", "from 204 kg to 6110 kg", ("15 kN",)),
        ("ratio = 4.56", "ratio = 45.6", "45.6 is too large", "from 2 to 9", ()),
        ("studs = 6", 'studs = "60"', "60 is too large", "from 4 to 12", ()),
    ],
)
def test_range(old, new, told, takes, near):
    fault = one(swapped(old, new))
    assert fault.problem == told
    assert takes in fault.accepted
    assert set(near) <= set(fault.near)


@pytest.mark.parametrize(
    ("row", "path", "told"),
    [
        ('left = "432 mm"', "hub_height.left", "this is missing. What is hub_height.left?"),
        ('sidewall = "37x12.50R17LT 124Q"', "tyre.sidewall", "What is tyre.sidewall?"),
        ('axle = "1510 kg"', "weight.axle", "What is weight.axle?"),
        ("unlocking_hubs = true", "drive.unlocking_hubs", "What is drive.unlocking_hubs?"),
        ('name = "Heron"', "rig.name", "this is missing"),
        ('axle = "front"', "rig.axle", "this is missing"),
        ('part = "left tube"', "condition.1.part", "this is missing"),
        ('what = "mended"', "condition.0.what", "this is missing"),
    ],
)
def test_missing(row, path, told):
    fault = one(swapped(row + "\n", ""))
    assert fault.field == path
    assert told in fault.problem
    assert fault.example
    assert fault.accepted


def test_an_empty_file_misses_everything_at_once():
    required = {field.path for field in CATALOGUE if field.required}
    assert {fault.field for fault in faults("axlewright = 1")} == required | {
        "rig.name",
        "rig.axle",
    }


@pytest.mark.parametrize(
    ("old", "new", "near"),
    [
        ("[hub_height]", "[hub_hight]", "hub_height"),
        ("[weight]", "[wieght]", "weight"),
        ('sidewall = "37', 'sidwall = "37', "tyre.sidewall"),
        ('wall = "5-8 mm"', 'wal = "5-8 mm"', "tube.wall"),
        ('[[condition]]\npart = "left', '[[conditon]]\npart = "left', "condition"),
        ('note = "welded', 'nota = "welded', "note"),
        ('what = "mended"', 'what = "mendid"', "mended"),
        ('axle = "front"', 'axle = "fornt"', "front"),
        ('on_axle = "Right"', 'on_axle = "rigth"', "right"),
        ("axlewright = 1", "axelwright = 1", "axelwright"),
    ],
)
def test_misspelt(old, new, near):
    fault = one(swapped(old, new))
    assert near in fault.near
    assert f"did you mean: {near}" in str(fault)


@pytest.mark.parametrize(
    ("old", "new", "near"),
    [
        ('girth.left = "', 'girth.driver = "', ("tube.girth.left", "tube.girth.right")),
        ('girth.left = "', 'girth.passenger_side = "', ("tube.girth.left", "tube.girth.right")),
        ('girth.left = "', 'girth."near side" = "', ("tube.girth.left", "tube.girth.right")),
        ('girth.left = "', 'girth.LHS = "', ("tube.girth.left",)),
        ('right = "16 7/8 in"', 'offside = "16 7/8 in"', ("hub_height.left", "hub_height.right")),
        ('where = "right"', 'where = "driver\'s side"', ("left", "right")),
        ('where = "right"', 'where = "rhs"', ("right",)),
        ('on_axle = "Right"', 'on_axle = "kerbside"', ("left", "right")),
    ],
)
def test_wrong_side(old, new, near):
    fault = one(swapped(old, new))
    assert "left and right are the vehicle's own" in fault.problem
    assert fault.near == near


def test_one_value_where_two_sides_are_wanted():
    text = swapped('girth.left = "about 9 7/16 in"\n', "")
    fault = one(swapped('girth.right = "239 mm ± 2"', 'girth = "239 mm"', text))
    assert fault.problem == "this takes no value of its own"
    assert fault.near == ("tube.girth.left", "tube.girth.right")


@pytest.mark.parametrize("side", ["left", "driver"])
def test_two_sides_where_one_value_is_wanted(side):
    fault = one(swapped('wall = "5-8 mm"', f'wall.{side} = "5 mm"'))
    assert "tube.wall takes one value" in fault.problem
    assert fault.near == ("tube.wall",)


@pytest.mark.parametrize(
    ("row", "path"),
    [
        ('tie_rod = "32 mm"', "steering.tie_rod"),
        ('drag_link = "32 mm"', "steering.drag_link"),
        ('arm = "170 mm"', "steering.arm"),
        ('tie_rod = "don\'t know"', "steering.tie_rod"),
        ('tie_rod = {left = "32 mm"}', "steering.tie_rod"),
    ],
)
def test_steering_on_a_rear_axle(row, path):
    text = swapped('axle = "front"', 'axle = "rear"')
    text = swapped("unlocking_hubs = true\n", "", text)
    fault = one(swapped('tie_rod = "don\'t know"', row, text))
    assert fault.field == path
    assert fault.problem == "this belongs to a front axle, and this one is a rear axle"
    assert 'axle = "front"' in fault.accepted


@pytest.mark.parametrize(
    ("new", "told"),
    [
        ("axlewright = 2", "version 2, newer than this program can read"),
        (f"axlewright = {10**30}", "version a very large number, newer"),
        ("axlewright = 0", "version 0, and there never was such a version"),
        ("axlewright = -1", "version -1, and there never was such a version"),
        ('axlewright = "1"', "the version is not a whole number"),
        ("axlewright = 1.0", "the version is not a whole number"),
        ("axlewright = true", "the version is not a whole number"),
        ("", "the file does not say which version it is"),
        ("axlewright_change = 1", "this is a change file, and a rig file is wanted"),
    ],
)
def test_wrong_version(new, told):
    fault = one(swapped("axlewright = 1", new))
    assert told in fault.problem
    assert fault.example == "axlewright = 1"


def test_a_newer_file_is_not_picked_at():
    text = swapped("axlewright = 1", "axlewright = 9") + "\n[new_in_nine]\nx = 1\n"
    assert one(text).line == 1


@pytest.mark.parametrize(
    ("data", "line", "told"),
    [
        (RIG.encode("utf-16"), None, "UTF-16 or is no text"),
        (RIG.encode("utf-16-le"), None, "UTF-16 or is no text"),
        (RIG.encode("utf-16-be"), None, "UTF-16 or is no text"),
        (b"\x00\x01\x02", None, "UTF-16 or is no text"),
        (RIG.replace("Heron", "H\xe9ron").encode("latin-1"), 3, "not UTF-8"),
        (RIG.replace("±", "+/-").replace("camp", "caf\xe9").encode("cp1252"), 34, "not UTF-8"),
        (RIG + "\udcff", 38, "not UTF-8"),
        (RIG + "# " + "x" * 1_000_000, None, "larger than 1 MB"),
        (RIG.encode() + b"\n" * 1_000_000, None, "larger than 1 MB"),
        ("x = " + "[" * 10_000, None, "nested too deeply"),
    ],
)
def test_encoding_or_size(data, line, told):
    fault = one(data)
    assert told in fault.problem
    assert fault.line == line
    assert fault.accepted


@pytest.mark.parametrize(
    ("old", "new", "line", "path", "before"),
    [
        ('left = "432 mm"', 'left = "432 mm"\nleft = "431 mm"', 10, "hub_height.left", 9),
        ("axlewright = 1", "axlewright = 1\naxlewright = 1", 2, "axlewright", 1),
        ("[weight]", '[tyre]\nx = "y"\n[weight]', 19, "tyre", 6),
        ('name = "Heron"', 'name = "Heron"\n"name" = "Stork"', 4, "rig.name", 3),
        ('wall = "5-8 mm"', 'girth.left = "1 m"', 14, "tube.girth.left", 12),
        ("ratio = 4.56", "ratio = 4.56\nratio = 4.1", 23, "gear.ratio", 22),
        ('where = "right"', 'where = "right"\nwhere = "left"', 33, "condition.0.where", 32),
    ],
)
def test_duplicates(old, new, line, path, before):
    fault = one(swapped(old, new))
    assert fault.problem == f"this name is written twice; the first stands on line {before}"
    assert (fault.line, fault.field) == (line, path)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("ratio = 4.56", "ratio = inf", "'inf' is not a number that can be measured"),
        ("ratio = 4.56", "ratio = -inf", "'-inf' is not a number that can be measured"),
        ("ratio = 4.56", "ratio = nan", "'nan' is not a number that can be measured"),
        ("studs = 6", "studs = inf", "'inf' is not a number that can be measured"),
        ('"432 mm"', '"inf mm"', "'inf mm' is not a number that can be measured"),
        ('"432 mm"', '"nan"', "'nan' is not a number that can be measured"),
        ('"432 mm"', '"1e999 mm"', "too large to be a number"),
        ('"432 mm"', '"432 mm ± 1e999"', "too large to be a number"),
        ("ratio = 4.56", "ratio = 1e999", "'inf' is not a number that can be measured"),
        ('"432 mm"', "inf", "'inf' is not a number that can be measured"),
    ],
)
def test_non_finite(old, new, told):
    assert told in one(swapped(old, new)).problem


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('"432 mm"', '["432 mm"]', "this is a list; one text in quotes is wanted"),
        ('"432 mm"', "2026-05-03", "this is a date or time; one text in quotes is wanted"),
        ('"432 mm"', "true", "this is a yes or no, not what is asked for"),
        ('"432 mm"', '""', "'' is empty"),
        ("unlocking_hubs = true", "unlocking_hubs = 1", "this is a number; a text in quotes"),
        ("unlocking_hubs = true", 'unlocking_hubs = "maybe"', "'maybe' is no yes or no"),
        ('"37x12.50R17LT 124Q"', '"37 in"', "'37 in' is only part of a tyre's size"),
        ('"37x12.50R17LT 124Q"', "37", "this is a number; a text in quotes is wanted"),
        ('name = "Heron"', "name = 7", "this is not a text"),
        ('name = "Heron"', 'name = " "', "this is empty"),
        ('name = "Heron"', f'name = "{"x" * 81}"', "this is longer than 80 signs"),
        ('name = "Heron"', r'name = "a\u0007b"', "a sign here that cannot be printed"),
        ('"the one with the rack"', f'"{"x" * 401}"', "this text is longer than 400 signs"),
        ("date = 2026-05-03", 'date = "last May"', "this is not a date"),
        ("[gear]", "tyre = 3\n[gear]", "there is no such name"),
        ('width = "7 in"\n', "", "does not say how wide the rim is"),
        ('on_axle = "Right"', 'on_axle = "middle"', "is not one of the words for this"),
        ("ratio = 4.56", f"ratio = 0x{'f' * 4000}", "this number is too large"),
    ],
)
def test_wrong_kind_of_answer(old, new, told):
    assert told in one(swapped(old, new)).problem


@pytest.mark.parametrize("table", ["rig", "condition", "tyre", "tube"])
def test_a_table_that_is_no_table(table):
    text = f"{table} = 3\naxlewright = 1\n"
    assert any(fault.field.startswith(table) and fault.line == 1 for fault in faults(text))


def test_all_faults_of_a_file_come_at_once_in_the_order_of_lines():
    text = swapped('"432 mm"', '"432 Nm"')
    text = swapped("[weight]", "[wieght]", text)
    text = swapped('where = "right"', 'where = "offside"', text)
    text = swapped('axle = "front"', 'axle = "fornt"', text)
    assert [fault.line for fault in faults(text)] == [4, 9, 19, 32]


def test_what_a_person_sees():
    with pytest.raises(BadFile) as refused:
        read_rig_text(swapped('"432 mm"', '"432 cm"'), "heron.toml", CATALOGUE)
    assert str(refused.value) == (
        "heron.toml cannot be used yet: one thing to put right.\n"
        "  heron.toml, line 9: hub_height.left: 432 cm is too large\n"
        "      given: 432 cm\n"
        "      accepted: a length in one of m, cm, mm, in, ft, thou, from 20 cm to 80 cm\n"
        '      for example: hub_height.left = "395 mm"\n'
        "      did you mean: 432 mm?"
    )


def test_a_flood_of_faults_is_cut_short():
    rows = "\n".join(f"strange_{number} = 1" for number in range(20_000))
    assert len(faults(f"axlewright = 1\n{rows}")) == 100


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('set = "tyre.sidewall"', 'set = "tyre.sidwall"', "there is no such name"),
        ('set = "tyre.sidewall"', 'set = "tube.girth.driver"', "is no side here"),
        ('set = "tyre.sidewall"', "set = 3", "this is not the name of a field"),
        ('set = "tyre.sidewall"', 'sett = "tyre.sidewall"', "there is no such name here"),
        ('set = "tyre.sidewall"\n', "", "this step does nothing"),
        ('set = "tyre.sidewall"', 'set = "a"\nadd = "b"', "a step does one thing"),
        ('to = "255/85R16"\n', "", "tyre.sidewall needs a value"),
        ('to = "255/85R16"', 'to = "big"', "is not a tyre's sidewall code"),
        ('to = "255/85R16"', 'to = "don\'t know"', "a change needs a known value"),
        ('to = "250 ft-lb"', 'to = "250 lb"', "is a mass, not a torque"),
        ('to = "250 ft-lb"', 'to = "25000 ft-lb"', "is too large"),
        ('remove = "wheel.offset"', 'remove = "wheel.offset"\nto = "3"', "takes no value"),
        ('remove = "wheel.offset"', 'remove = "tyre.sidewall"', "changed twice"),
        ('name = "more tyre"\n', "", "this is missing"),
        ("axlewright_change = 1", "axlewright_change = 2", "newer than this program"),
        ("axlewright_change = 1", "axlewright = 1", "a rig file, and a change file is wanted"),
        ("axlewright_change = 1", "", "does not say which version"),
        ("[[step]]\nset", "[stap]\nset", "there is no such name here"),
    ],
)
def test_bad_changes(old, new, told):
    text = CHANGE.replace(old, new, 1)
    assert text != CHANGE
    assert any(told in fault.problem for fault in faults(text, read_change_text))


def test_a_change_without_steps():
    fault = one('axlewright_change = 1\nname = "nothing"', read_change_text)
    assert fault.problem == "a change needs at least one step"
