"""Whatever is typed or handed in: an answer, a fault in plain words, and nothing unfit is kept."""

import contextlib
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from axlewright.actions import Bay, change_text, read_draft
from axlewright.errors import AxlewrightError
from axlewright.rig import FIELDS, FOUND, rig_from_text

HERON = Path("examples/rigs/heron.toml").read_bytes()
PATHS = [each.path for each in FIELDS]
SAID = st.one_of(
    st.text(max_size=60),
    st.sampled_from([each.example for each in FIELDS]),
    st.sampled_from(["", "don't know", "about 5 mm", "nan mm", "1e999 m", "-0 mm", "\ud800", "3"]),
    st.builds(
        "{} {}".format,
        st.floats(allow_nan=True, allow_infinity=True),
        st.sampled_from(["mm", "in", "kg", "N m", "km", "deg", "", "ET"]),
    ),
)
MANY = settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


@pytest.fixture(scope="module")
def bay(tmp_path_factory):
    opened = Bay.open(tmp_path_factory.mktemp("fuzz"))
    yield opened
    opened.close()


@pytest.fixture(scope="module")
def whole(bay):
    return bay.copy_example("heron")


@pytest.fixture(scope="module")
def bare(bay):
    return bay.begin("Wren", "rear")


def fits(bay, slug):
    """Whether what is kept is read again, and makes a rig where nothing is missing."""
    draft = read_draft(bay.text(slug))
    assert draft.answers.keys() == bay.draft(slug).answers.keys()
    if not draft.missing():
        rig_from_text(bay.text(slug))
    assert bay.unread(slug) == {}
    return True


@MANY
@given(path=st.one_of(st.sampled_from(PATHS), st.text(max_size=20)), text=SAID, on=st.booleans())
def test_any_answer_to_any_question(bay, whole, bare, path, text, on):
    slug = whole if on else bare
    before, kept = bay.last_entry(slug), bay.text(slug)
    try:
        said = bay.answer(slug, path, text, text, tell=False)
    except AxlewrightError:
        assert path not in PATHS
        assert bay.last_entry(slug) == before
        return
    if said.stored:
        assert said.echo
        assert said.number == bay.last_entry(slug)
    else:
        assert said.fault or said.contradictions
        assert bay.text(slug) == kept
        assert bay.last_entry(slug) == before
    assert fits(bay, slug)


@MANY
@given(texts=st.dictionaries(st.sampled_from(PATHS), SAID, min_size=1, max_size=4))
def test_any_answers_together_are_kept_all_or_none(bay, whole, texts):
    before = bay.last_entry(whole)
    said = bay.answers(whole, texts, "phone", tell=False)
    assert said.keys() == texts.keys()
    assert len({one.stored for one in said.values()}) == 1
    stored = next(iter(said.values())).stored
    assert bay.last_entry(whole) - before == (len(texts) if stored else 0)
    assert fits(bay, whole)


@settings(MANY, max_examples=25)
@given(path=st.sampled_from(PATHS), back=st.booleans())
def test_any_answer_can_be_taken_back_and_the_rest_still_reads(bay, path, back):
    slug = bay.copy_example("heron")
    assert bay.clear(slug, path).stored
    assert fits(bay, slug)
    if back:
        assert isinstance(bay.so_far_line(slug), str)


@MANY
@given(
    said=st.dictionaries(
        st.sampled_from(["part", "what", "where", "date", "note"]),
        st.one_of(st.text(max_size=90), st.sampled_from([*FOUND, "left", "2026-05-03", "hub"])),
    )
)
def test_any_condition(bay, bare, said):
    before = len(bay.conditions(bare))
    told = bay.add_condition(bare, said)
    assert len(bay.conditions(bare)) == before + told.stored
    assert told.stored or told.fault
    assert fits(bay, bare)
    if told.stored:
        assert bay.settle_condition(bare, bay.conditions(bare)[-1].key).stored


@MANY
@given(at=st.integers(0, len(HERON)), new=st.binary(max_size=12), cut=st.integers(0, 30))
def test_any_damaged_file(bay, at, new, cut):
    before = len(bay._store.rigs())
    try:
        slug = bay.take_file(HERON[:at] + new + HERON[at + cut :], repr(new))
    except AxlewrightError:
        assert len(bay._store.rigs()) == before
        return
    assert fits(bay, slug)


@MANY
@given(values=st.dictionaries(st.sampled_from(PATHS), SAID, max_size=3), name=st.text(max_size=90))
def test_any_change(bay, values, name):
    slug = bay.copy_example("wagtail")
    with contextlib.suppress(AxlewrightError):
        bay.quick(slug, values)
    try:
        kept = bay.keep_change(slug, name, change_text(name, values))
    except AxlewrightError:
        assert bay.changes(slug) == []
        return
    assert bay.changes(slug) == [kept]
    assert bay.comparison(slug, kept.text, draws=0).changes[0].name == kept.name


@MANY
@given(name=st.text(max_size=200), axle=st.sampled_from(["front", "rear", "", "both"]))
def test_any_name(bay, name, axle):
    try:
        slug = bay.begin(name, axle, name)
    except AxlewrightError:
        return
    assert slug.isascii()
    assert slug.replace("-", "").isalnum()
    assert fits(bay, slug)
