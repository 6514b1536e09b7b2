"""The readings file: what is understood, and that whatever is wrong is told, never a traceback."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from axlewright.errors import BadFile, BadQuantity
from axlewright.geometry import align
from axlewright.rig import (
    ALIGNMENT_FIELDS,
    REPEATED,
    load_rig,
    readings_from_text,
    readings_said,
    screw_pitch,
)

ROOT = Path(__file__).parents[2]
EXAMPLE = (ROOT / "examples" / "readings" / "heron-after-the-lift.toml").read_text("utf-8")
HERON = load_rig(str(ROOT / "examples" / "rigs" / "heron.toml"))
STORK = load_rig(str(ROOT / "examples" / "rigs" / "stork-rear.toml"))
HEAD = "axlewright_alignment = 1\n"


def test_the_example_is_understood():
    read = readings_from_text(EXAMPLE)
    assert read.values("toe.front") == (1.571, 1.571, 1.570)
    assert read.value("caster.left.out") == pytest.approx(0.0366519, abs=1e-6)
    assert read.word("tie_rod.thread") == "M22x1.5"
    assert read.date is not None
    assert read.value("square.diagonal.left") is None
    assert read.digest


@pytest.mark.parametrize("field", ALIGNMENT_FIELDS, ids=lambda field: field.path)
def test_every_example_of_the_catalogue_is_understood(field):
    text = f'{HEAD}{field.path} = "{field.example}"\n'
    read = readings_from_text(text, axle="front")
    assert read.answers[field.path]
    if field.path in REPEATED:
        [twice] = [readings_from_text(text.replace(f'"{field.example}"', f'["{field.example}"] '))]
        assert twice.values(field.path) == read.values(field.path)


@pytest.mark.parametrize(
    ("body", "told"),
    [
        ("[toe]\nfrnt = '1571 mm'\n", "did you mean: front"),
        ("[toe]\nfront = 1571\n", "has no unit"),
        ("[toe]\nfront = ['1571 mm', '12 kg']\n", "mass"),
        ("[toe]\nfront = []\n", "from 1 to 30"),
        ("[toe]\ndiameter = ['890 mm', '891 mm']\n", "not a list"),
        ("[toe]\ndiameter = '9 m'\n", "too large"),
        ("[toe]\nwith = 'lasr'\n", "not one of the words"),
        ("[caster]\ndriver.out = '2 deg'\n", "is no side"),
        ("[tie_rod]\nthread = '7/8'\n", "is no thread"),
        ("[tie_rod]\nthread = 'M22x9'\n", "no thread of a rod"),
        ("[too]\nfront = '1571 mm'\n", "did you mean: toe"),
        ("toe = 3\n", "no such name"),
        ("date = 'yesterday'\n", "not a date"),
        ("date = 3\n", "not a date"),
    ],
)
def test_what_is_wrong_is_told_with_its_line(body, told):
    with pytest.raises(BadFile) as caught:
        readings_from_text(HEAD + body, "r.toml")
    assert told in str(caught.value)
    assert caught.value.faults[0].line in {2, 3}


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("[toe]\nfront = '1 m'\n", "which version"),
        ("axlewright = 1\n", "readings are wanted"),
        ("axlewright_alignment = 2\n", "another version"),
        ("axlewright_alignment = true\n", "another version"),
        ("axlewright_alignmnt = 1\n", "another kind of file"),
    ],
)
def test_another_file_is_no_readings_file(text, told):
    with pytest.raises(BadFile, match=told):
        readings_from_text(text)


def test_all_faults_are_told_at_once():
    with pytest.raises(BadFile) as caught:
        readings_from_text(HEAD + "[toe]\nfrnt = '1 m'\nrear = 'x'\n[play]\nfound = 'perhaps'\n")
    assert len(caught.value.faults) == 3


def test_what_is_typed_counts_before_the_file():
    before = readings_from_text(EXAMPLE)
    now = readings_said({"toe.front": ["1575 mm"], "caster.sweep": ["don't know"]}, "front", before)
    assert now.values("toe.front") == (1.575,)
    assert now.values("toe.rear") == before.values("toe.rear")
    assert now.value("caster.sweep") is None
    with pytest.raises(BadFile, match="no such name"):
        readings_said({"toe.middle": ["1 m"]})


def test_steering_parts_are_of_a_front_axle():
    with pytest.raises(BadFile, match="belongs to a front axle"):
        readings_from_text(HEAD + "[tie_rod]\nahead = 'no'\n", axle="rear")


@pytest.mark.parametrize(
    ("said", "pitch"),
    [  # the definition of each name: millimetres, or threads to an inch
        ("M22x1.5", 1.5),
        ("m 22 x 1,5", 1.5),
        ("7/8-18", 25.4 / 18),
        ("1 1/4-12", 25.4 / 12),
        ("7/8-14 UNF", 25.4 / 14),
        ("18 tpi", 25.4 / 18),
        ("1.5 mm", 1.5),
        ("M24x2 LH", 2.0),
    ],
)
def test_a_threads_pitch(said, pitch):
    assert screw_pitch(said) * 1e3 == pytest.approx(pitch)


@pytest.mark.parametrize("said", ["", "7/8", "M22", "1-0", "hex", "0 mm", "900 mm", "-1.5 mm"])
def test_what_is_no_thread(said):
    with pytest.raises(BadQuantity):
        screw_pitch(said)


def answered_or_told(rig, text):
    """Whether a text is answered, or every fault has its words."""
    try:
        return align(rig, readings_from_text(text, axle=rig.axle)) is not None
    except BadFile as trouble:
        return bool(trouble.faults) and all(fault.problem for fault in trouble.faults)


SCRAPS = st.one_of(
    st.text(max_size=30),
    st.sampled_from(
        ["1571 mm", "about 3 deg", "5 to 8 mm", "yes", "tape", "don't know", "1e999 mm"]
    ),
    st.integers(-(10**30), 10**30),
    st.floats(),
    st.booleans(),
    st.none(),
)
PATHS = [field.path for field in ALIGNMENT_FIELDS]


def toml(value):
    if isinstance(value, list):
        return "[" + ", ".join(toml(each) for each in value) + "]"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, float):
        return str(value).replace("+", "") if "e" not in str(value) else repr(value)
    if isinstance(value, int):
        return str(value)
    return "'" + "".join(c for c in str(value) if c.isprintable() and c != "'") + "'"


@settings(max_examples=150, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.one_of(st.sampled_from(PATHS), st.sampled_from(PATHS).map(lambda p: p + "x")),
            st.one_of(SCRAPS, st.lists(SCRAPS, max_size=4)),
        ),
        max_size=8,
        unique_by=lambda pair: pair[0],
    ),
    st.sampled_from([HERON, STORK]),
)
def test_no_file_of_scraps_gives_a_traceback(pairs, rig):
    text = HEAD + "".join(f"{path} = {toml(value)}\n" for path, value in pairs)
    assert answered_or_told(rig, text)


@settings(max_examples=150, deadline=None)
@given(st.integers(0, len(EXAMPLE)), st.integers(0, 40), st.text(max_size=6))
def test_no_broken_file_gives_a_traceback(start, length, instead):
    text = EXAMPLE[:start] + instead + EXAMPLE[start + length :]
    assert answered_or_told(HERON, text)


@settings(max_examples=60, deadline=None)
@given(st.binary(max_size=200))
def test_no_bytes_give_a_traceback(data):
    with pytest.raises(BadFile):
        readings_from_text(data)


def numbers(field):
    """Texts that the reader takes for a field, over its whole range."""
    if field.choices or field.kind == "yes":
        return st.sampled_from(field.choices or ("yes", "no"))
    if field.kind == "text":
        return st.just(field.example)
    unit = {"length": "m", "angle": "rad", "toe": "rad", "ratio": ""}[field.kind]
    return st.floats(field.low, field.high).map(lambda x: f"{x:.9f} {unit}".strip())


FRONT = st.fixed_dictionaries(
    {},
    optional={
        field.path: st.lists(
            numbers(field), min_size=1, max_size=3 if field.path in REPEATED else 1
        )
        for field in ALIGNMENT_FIELDS
    },
)


@settings(max_examples=120, deadline=None)
@given(said=FRONT)
def test_whatever_may_be_read_is_answered_or_refused(said):
    from axlewright.views import align_json, align_lines

    try:
        answer = align(HERON, readings_said(said))
    except BadFile:
        return
    lines = align_lines(answer)
    assert lines
    assert not any("nan" in line.split() or "inf" in line.split() for line in lines)
    assert align_json(answer)["steps"]


def test_the_example_is_valid_toml():
    assert tomllib.loads(EXAMPLE)["axlewright_alignment"] == 1
