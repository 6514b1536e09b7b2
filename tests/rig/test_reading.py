"""What a good file says arrives, with its doubt and its line; and no file ends in a traceback."""

import random
from dataclasses import FrozenInstanceError
from datetime import date
from hashlib import sha256

import pytest
from hypothesis import given
from hypothesis import strategies as st

from axlewright.errors import BadFile, Fault
from axlewright.rig.answer import Answer, read_answer
from axlewright.rig.fields import FIELDS
from axlewright.rig.reading import (
    RawChange,
    RawRig,
    read_change_file,
    read_change_text,
    read_rig_file,
    read_rig_text,
)
from axlewright.rig.toml_lines import line_index
from rig.small import CATALOGUE, CHANGE, RIG

INCH, GRAVITY = 0.0254, 9.80665  # exact: NIST SP 811, app. B


@pytest.fixture(scope="module")
def rig():
    return read_rig_text(RIG, "heron.toml", CATALOGUE)


def test_the_head_of_a_rig(rig):
    assert (rig.version, rig.name, rig.axle, rig.file) == (1, "Heron", "front", "heron.toml")
    assert rig.sha256 == sha256(RIG.encode()).hexdigest()


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("hub_height.left", 0.432),
        ("hub_height.right", 16.875 * INCH),
        ("tube.girth.left", 9.4375 * INCH),
        ("weight.axle", 1510 * GRAVITY),
        ("wheel.offset", (4.5 - (7 + 1) / 2) * INCH),  # flanges 1 in: common practice, no source
        ("wheel.studs", 6),
        ("gear.ratio", 4.56),
    ],
)
def test_numbers_arrive_in_si(rig, path, value):
    assert rig.answers[path].value == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("path", "word"),
    [
        ("rig.remark", "the one with the rack"),
        ("tyre.sidewall", "37x12.50R17LT 124Q"),
        ("drive.unlocking_hubs", "yes"),
        ("track_bar.on_axle", "right"),
    ],
)
def test_words_arrive_as_the_catalogue_has_them(rig, path, word):
    assert rig.answers[path].value == word


def test_doubt_arrives_as_it_was_written(rig):
    assert rig.answers["tube.girth.left"].about
    assert rig.answers["tube.girth.right"].uncertainty == pytest.approx(0.002)
    assert rig.answers["tube.wall"].band == pytest.approx((0.005, 0.008))
    assert rig.answers["steering.tie_rod"].dont_know
    assert not rig.answers["gear.ratio"].dont_know


def test_every_answer_knows_its_line(rig):
    rows = RIG.splitlines()
    for path, answer in rig.answers.items():
        assert path.rpartition(".")[2] in rows[answer.line - 1]


def test_conditions_arrive_in_order(rig):
    first, second = rig.conditions
    assert (first.part, first.what, first.where) == ("track-bar bracket", "mended", "right")
    assert (first.date, first.note, first.line) == (date(2026, 5, 3), "welded in camp", 29)
    assert (second.what, second.where, second.date) == ("never looked at", "", None)


def test_what_was_read_is_frozen(rig):
    with pytest.raises(FrozenInstanceError):
        rig.name = "Stork"


def test_order_of_answers_is_the_catalogues(rig):
    order = [field.path for field in CATALOGUE]
    assert list(rig.answers) == sorted(rig.answers, key=order.index)


def test_a_rear_axle_needs_no_front_answers():
    rear = RIG.replace('"front"', '"rear"').replace("unlocking_hubs = true", "")
    rear = rear.replace('tie_rod = "don\'t know"', "")
    assert read_rig_text(rear, catalogue=CATALOGUE).axle == "rear"


def test_half_a_rig_will_do_where_it_is_asked_for():
    text = 'axlewright = 1\nrig.name = "Heron"\nrig.axle = "front"\nweight.axle = "1 t"'
    half = read_rig_text(text, catalogue=CATALOGUE, complete=False)
    assert list(half.answers) == ["weight.axle"]


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_a_mark_at_the_beginning_do_not_matter(end, mark, rig):
    data = (mark + RIG.replace("\n", end)).encode()
    again = read_rig_text(data, catalogue=CATALOGUE)
    lines = {path: (answer.value, answer.line) for path, answer in again.answers.items()}
    before = {path: (answer.value, answer.line) for path, answer in rig.answers.items()}
    del lines["steering.tie_rod"], before["steering.tie_rod"]  # nan equals nothing
    assert lines == before


def test_inline_tables_and_quoted_names_are_the_same_rig(rig):
    text = RIG.replace('[hub_height]\nleft = "432 mm"\nright = "16 7/8 in"\n', "").replace(
        "[rig]", 'hub_height = {"left" = "432 mm", right = "16 7/8 in"}\n[rig]'
    )
    answers = read_rig_text(text, catalogue=CATALOGUE).answers
    assert answers["hub_height.right"].value == rig.answers["hub_height.right"].value
    assert answers["hub_height.right"].line == 2


def test_a_change_arrives_in_order():
    change = read_change_text(CHANGE, catalogue=CATALOGUE)
    assert change.name == "more tyre"
    assert change.sha256 == sha256(CHANGE.encode()).hexdigest()
    assert [(step.action, step.path, step.line) for step in change.steps] == [
        ("set", "tyre.sidewall", 3),
        ("add", "engine.torque", 6),
        ("remove", "wheel.offset", 9),
    ]
    # 1 ft lbf = 0.3048 m * 0.45359237 kg * 9.80665 m/s2: NIST SP 811, app. B
    torque = 250 * 0.3048 * 0.45359237 * GRAVITY
    assert change.steps[1].answer.value == pytest.approx(torque)
    assert change.steps[2].answer is None


def test_a_change_may_give_the_rim_width_for_its_backspacing():
    text = CHANGE.replace('remove = "wheel.offset"', 'set = "wheel.width"\nto = "8 in"\n') + (
        '[[step]]\nset = "wheel.offset"\nto = "backspacing 3 1/2 in"\n'
    )
    last = read_change_text(text, catalogue=CATALOGUE).steps[-1]
    assert last.answer.value == pytest.approx(-INCH)  # 3.5 - (8 + 1) / 2


def test_files_are_read_from_disk(tmp_path):
    rig_file, change_file = tmp_path / "rig.toml", tmp_path / "change.toml"
    rig_file.write_text(RIG, "utf-8")
    change_file.write_text(CHANGE, "utf-8")
    assert read_rig_file(rig_file, CATALOGUE).name == "Heron"
    assert read_change_file(str(change_file), CATALOGUE).name == "more tyre"


@pytest.mark.parametrize("field", FIELDS, ids=lambda field: field.path)
def test_every_example_of_the_catalogue_is_accepted(field):
    answer = read_answer(field, field.example)
    assert isinstance(answer, Answer), str(answer)


@pytest.mark.parametrize("field", FIELDS, ids=lambda field: field.path)
def test_not_knowing_is_accepted_everywhere(field):
    answer = read_answer(field, "don't know")
    assert isinstance(answer, Answer)
    assert answer.dont_know == (field.kind != "text")


LINES = '''
a = 1
"b c".d = """
two
"""
[t] # [not.this]
x.y = [ 1,
  {z = 2}, "]" ]
in = {k = 'v', deep.er = "#"}
[[many]]
p = 1
[[many]]
p = 2
[many.sub]
q = 3
'''


def test_lines_of_every_form_of_name():
    first = line_index(LINES).first
    expected = {"a": 2, "b c.d": 3, "t": 6, "t.x.y": 7, "t.x.y.1.z": 8, "t.in.k": 9}
    expected |= {"t.in.deep.er": 9, "many": 10, "many.0.p": 11, "many.1": 12, "many.1.p": 13}
    expected |= {"many.1.sub": 14, "many.1.sub.q": 15}
    assert {path: first[path] for path in expected} == expected


def test_lines_of_what_stands_twice():
    assert line_index("a = 1\na = 2\n[t]\n[t]\n").twice == [("a", 1, 2), ("t", 3, 4)]


@given(st.text(alphabet="[]{}\"'=.,#\n\\ ab1", max_size=60))
def test_the_line_index_never_fails(text):
    lines = line_index(text)
    assert all(1 <= line <= text.count("\n") + 1 for line in lines.first.values())


def mutated(data, rng):
    """The same bytes with one to four things gone wrong."""
    for _ in range(rng.randint(1, 4)):
        kind = rng.randrange(6)
        rows = data.split(b"\n")
        at = rng.randrange(len(rows))
        if kind == 0:
            del rows[at]
        elif kind == 1:
            rows.insert(rng.randrange(len(rows)), rows[at])
        elif kind == 2:
            other = rng.randrange(len(rows))
            rows[at], rows[other] = rows[other], rows[at]
        data = b"\n".join(rows) or b"\n"
        place = rng.randrange(len(data))
        if kind == 3:
            data = data[:place] + bytes([data[place] ^ (1 << rng.randrange(8))]) + data[place + 1 :]
        elif kind == 4:
            data = data[:place] + data[place + rng.randint(1, 9) :]
        elif kind == 5:
            data = data[:place] + rng.choice(JUNK) + data[place:]
        data = data or b"\n"
    return data


JUNK = [
    b"\x00",
    b"\xff",
    b'"',
    b"[",
    b"]]",
    b"{",
    b"=",
    b".",
    b"\\",
    b"'''",
    b"inf",
    b"1e999",
    b"-",
]
JUNK += [
    b"\n",
    b"\r",
    b"#",
    b"\xe2\x88\x92",
    b"9" * 5000,
    b"[" * 3000,
    b"true",
    b"2026-13-45",
    b"0x",
]


def outcome(read, data, catalogue):
    try:
        return read(data, catalogue=catalogue)
    except BadFile as refused:
        return refused


def test_two_thousand_damaged_files_end_in_a_rig_or_in_faults():
    rng = random.Random(20260503)  # noqa: S311  (not for secrets)
    kinds = {RawRig: 0, BadFile: 0}
    for _ in range(2000):
        found = outcome(read_rig_text, mutated(RIG.encode(), rng), CATALOGUE)
        kinds[type(found)] += 1
        if isinstance(found, BadFile):
            assert found.faults
            assert all(isinstance(fault, Fault) and fault.problem for fault in found.faults)
    assert min(kinds.values()) > 50  # both ends are met


def test_damaged_changes_end_in_a_change_or_in_faults():
    rng = random.Random(7)  # noqa: S311
    found = [
        outcome(read_change_text, mutated(CHANGE.encode(), rng), CATALOGUE) for _ in range(1000)
    ]
    assert {type(each) for each in found} == {RawChange, BadFile}


@given(st.binary(max_size=300))
def test_any_bytes_end_in_faults(data):
    assert isinstance(outcome(read_rig_text, data, CATALOGUE), BadFile)


@given(st.text(max_size=200))
def test_any_text_after_the_version_ends_in_faults(text):
    assert isinstance(outcome(read_rig_text, f"axlewright = 1\n{text}", CATALOGUE), BadFile)
