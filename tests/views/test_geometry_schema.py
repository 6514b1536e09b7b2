"""Answers about travel and alignment are what their schemas say, by a general schema checker."""

import copy
import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from axlewright.actions import align_file, travel_file
from axlewright.cli import run
from axlewright.rig import readings_schema
from axlewright.views import align_json, alignment_schema, travel_json, travel_schema

EXAMPLES = Path(__file__).parents[2] / "examples"
HERON = str(EXAMPLES / "rigs" / "heron.toml")
READ = EXAMPLES / "readings" / "heron-after-the-lift.toml"
RIGS = sorted((EXAMPLES / "rigs").glob("*.toml"))
CHECKER = jsonschema.Draft202012Validator


def plain(told):
    return json.loads(json.dumps(told, allow_nan=False))


@pytest.mark.parametrize("schema", [travel_schema, alignment_schema, readings_schema])
def test_the_schema_is_one(schema):
    CHECKER.check_schema(schema())


@pytest.mark.parametrize("draws", [0, 40])
@pytest.mark.parametrize("rig", RIGS, ids=lambda path: path.stem)
def test_travel_is_as_its_schema_says(rig, draws):
    answer = travel_file(str(rig), draws=draws)
    told = plain(travel_json(answer.before, answer.after, answer.driveline))
    CHECKER(travel_schema()).validate(told)


def test_a_lift_is_as_its_schema_says_and_a_broken_answer_is_not():
    answer = travel_file(HERON, [str(EXAMPLES / "changes" / "lift.toml")], draws=40)
    told = plain(travel_json(answer.before, answer.after, answer.driveline))
    checker = CHECKER(travel_schema())
    checker.validate(told)
    for break_it in (
        lambda it: it["after"]["measures"].pop("caster"),
        lambda it: it["driveline"]["checks"][0].pop("band"),
        lambda it: it["before"]["stances"][0]["height"].update(unit="mm"),
        lambda it: it.update(axlewright_travel=2),
    ):
        wrong = copy.deepcopy(told)
        break_it(wrong)
        assert not checker.is_valid(wrong)


def quantities(told):
    """Everything with a value, wherever it stands."""
    if isinstance(told, dict):
        if "value" in told:
            yield told
        for inner in told.values():
            yield from quantities(inner)
    elif isinstance(told, list):
        for inner in told:
            yield from quantities(inner)


def test_every_quantity_has_a_unit_and_a_band():
    answer = travel_file(HERON, draws=40)
    told = travel_json(answer.before, None, answer.driveline)
    for each in [*quantities(told), *quantities(align_json(align_file(HERON, str(READ))))]:
        assert "unit" in each
        assert "band" in each or "as_printed" in each  # a published limit has none
    assert told["measures"]["caster"]["band"]


@pytest.mark.parametrize(
    "said",
    [
        {},
        {"toe.front": ["1571 mm"], "toe.rear": ["1568 mm"], "play.found": ["none"]},
        {"caster.left.finder": ["5 deg"], "floor.along": ["0.3 deg"]},
    ],
    ids=["nothing", "toe", "finder"],
)
def test_an_alignment_is_as_its_schema_says(said):
    CHECKER(alignment_schema()).validate(plain(align_json(align_file(HERON, said=said))))


def test_the_example_of_readings_is_as_both_schemas_say():
    CHECKER(alignment_schema()).validate(plain(align_json(align_file(HERON, str(READ)))))
    told = tomllib.loads(READ.read_text("utf-8"))
    told["date"] = told["date"].isoformat()
    checker = CHECKER(readings_schema())
    checker.validate(told)
    assert not checker.is_valid({**told, "toes": {}})
    assert not checker.is_valid({**told, "play": {"found": "perhaps"}})


@pytest.mark.parametrize("of", ["travel", "alignment", "readings"])
def test_the_command_writes_them(of, capsys):
    assert run(["schema", of]) == 0
    assert json.loads(capsys.readouterr().out)["$schema"]
