"""The answer is what its schema says, by a general JSON Schema checker."""

import copy
import json
from pathlib import Path

import jsonschema
import pytest

from axlewright.actions import assess_file
from axlewright.cli import run
from axlewright.views import answer_schema, as_json

EXAMPLES = Path(__file__).parents[2] / "examples"
RIGS = sorted((EXAMPLES / "rigs").glob("*.toml"))
CHANGES = sorted((EXAMPLES / "changes").glob("*.toml"))
CHECKER = jsonschema.Draft202012Validator
STOP = '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'


def closed(schema):
    """The same schema, refusing every key that it does not tell."""
    tight = copy.deepcopy(schema)
    left = [tight]
    while left:
        one = left.pop()
        if isinstance(one, dict):
            left += one.values()
            if "properties" in one and "$defs" not in one:
                one["additionalProperties"] = False
        elif isinstance(one, list):
            left += one
    return open_tops(tight)


def open_tops(tight):
    """The heading's keys may stand beside either form of the answer."""
    heading = dict.fromkeys(tight["properties"], True)
    for form in (tight["$defs"]["assessment"], tight["oneOf"][1]):
        form["properties"] = {**heading, **form["properties"]}
    return tight


LOOSE, TIGHT = CHECKER(answer_schema()), CHECKER(closed(answer_schema()))


def test_the_schema_is_one():
    CHECKER.check_schema(answer_schema())


@pytest.mark.parametrize("draws", [0, 60])
@pytest.mark.parametrize("rig", RIGS, ids=lambda path: path.stem)
def test_a_demo_answer_is_as_the_schema_says(rig, draws):
    told = json.loads(json.dumps(as_json(assess_file(str(rig), draws=draws)), allow_nan=False))
    LOOSE.validate(told)
    TIGHT.validate(told)


@pytest.mark.parametrize("change", CHANGES, ids=lambda path: path.stem)
def test_a_comparison_is_as_the_schema_says(change):
    told = as_json(assess_file(str(RIGS[0]), [str(change)], draws=20))
    TIGHT.validate(json.loads(json.dumps(told, allow_nan=False)))


def test_an_answer_with_a_stop_is_as_the_schema_says(tmp_path):
    path = tmp_path / "stopped.toml"
    path.write_text(RIGS[0].read_text("utf-8") + STOP, "utf-8")
    told = as_json(assess_file(str(path), draws=0))
    assert told["may_i_drive"]["stop"]
    TIGHT.validate(told)


@pytest.mark.parametrize("lost", ["checks", "sentence", "seed", "axlewright_answer"])
def test_an_answer_that_lost_a_key_is_refused(lost):
    told = as_json(assess_file(str(RIGS[0]), draws=0))
    del told[lost]
    assert not LOOSE.is_valid(told)


def test_an_answer_of_another_number_is_refused():
    told = as_json(assess_file(str(RIGS[0]), draws=0))
    assert not LOOSE.is_valid({**told, "axlewright_answer": 2})


def test_the_command_writes_it(capsys):
    assert run(["schema", "answer"]) == 0
    assert json.loads(capsys.readouterr().out) == answer_schema()
