"""What is generated and checked in is what the catalogue says today."""

import json

import pytest
from tools.schema import PROMISED, broken, generated, promises, schemas

from axlewright.rig import FIELDS
from house.places import DOCS, ROOT, brief

GENERATED = generated()


@pytest.mark.parametrize("path", sorted(GENERATED), ids=brief)
def test_a_generated_file_is_up_to_date(path):
    assert path.read_text("utf-8") == GENERATED[path], (
        "`make schema` writes it again; if an old file would now be read differently or refused, "
        "its version number grows first (docs/formats.md)"
    )


@pytest.mark.parametrize("name", sorted(schemas()))
def test_a_numbered_schema_keeps_its_promises(name):
    promised = json.loads(PROMISED.read_text("utf-8"))
    assert name in promised, "a new number: `python -m tools.schema --promise`"
    told = ("answer-", "decide-", "travel-", "alignment-", "log-")
    asked = not name.startswith(told)
    assert not broken(promised[name], promises(schemas()[name]), asked=asked), (
        "old files or readers would be misled: its number grows first (docs/formats.md)"
    )


BEFORE = {
    "type": "object",
    "properties": {"a": {"type": "number"}, "b": {"enum": ["x", "y"]}},
    "required": ["a"],
}
NOW = [
    {**BEFORE, "required": ["a", "b"]},
    {**BEFORE, "required": []},
    {**BEFORE, "properties": {"a": {"type": "number"}}},
    {**BEFORE, "properties": {"a": {"type": "string"}, "b": {"enum": ["x", "y"]}}},
    {**BEFORE, "properties": {"a": {"type": "number"}, "b": {"enum": ["x"]}}},
    {
        **BEFORE,
        "properties": {**BEFORE["properties"], "c": {"type": "number"}},
        "required": ["a", "c"],
    },
]


@pytest.mark.parametrize("now", NOW)
def test_a_broken_promise_is_seen(now):
    assert len(broken(promises(BEFORE), promises(now))) == 1


def test_a_new_key_of_an_answer_breaks_nothing():
    assert not broken(promises(BEFORE), promises(NOW[-1]), asked=False)


def test_a_new_key_that_may_be_left_out_breaks_nothing():
    wider = {
        **BEFORE,
        "properties": {
            "a": {"type": "number"},
            "b": {"enum": ["x", "y", "z"]},
            "c": {"type": "number"},
        },
    }
    assert not broken(promises(BEFORE), promises(wider))


def test_no_schema_is_left_without_its_number():
    kept = {path.stem.rpartition("-")[0] for path in (DOCS / "schemas").glob("*-*.json")}
    assert kept == {name.rpartition("-")[0] for name in schemas()}


def test_every_field_is_told():
    page = (DOCS / "rig-file.md").read_text("utf-8")
    assert FIELDS
    assert not [field.path for field in FIELDS if f"`{field.path}`" not in page]


def test_the_formats_page_names_todays_numbers():
    formats = (ROOT / "docs" / "formats.md").read_text("utf-8")
    for path in GENERATED:
        if path.suffix == ".json":
            number = int(path.stem.rpartition("-")[2])
            told = json.loads(path.read_text("utf-8"))["properties"].items()
            keys = [key for key, each in told if each.get("const") == number]
            assert keys, f"{path.name} holds its number nowhere"
            written = {f"`{keys[0]} = {number}`", f'`"{keys[0]}": {number}`'}
            assert any(each in formats for each in written), keys[0]
