"""What stands on memory is told. Outside reference: the assessment's own shares."""

import json

import pytest

from axlewright.rig import load_rig
from axlewright.strength import assess_rig
from axlewright.views import as_json, rests_line


@pytest.fixture(scope="module")
def heron():
    return assess_rig(load_rig("examples/rigs/heron.toml"), draws=256)


def test_the_answer_says_how_much_of_its_doubt_stands_on_memory(heron):
    share = f"{100.0 * heron.remembered[0].share:.0f} %"
    assert f"Of the doubt about the first row {share} stands on memory" in rests_line(heron)


def test_the_json_says_it_of_each_leading_part_and_each_assumption(heron):
    told = json.loads(json.dumps(as_json(heron)))
    assert [item["kind"] for item in told["from_memory"]] == [
        place.kind for place in heron.order[:5]
    ]
    for item in told["from_memory"]:
        assert 0.0 <= item["share_of_doubt"] <= 1.0
        assert sum(part["share_of_doubt"] for part in item["most"]) <= item["share_of_doubt"] + 1e-9
    recalled = {item["id"] for item in told["assumptions"] if item["from_memory"]}
    assert {part["id"] for item in told["from_memory"] for part in item["most"]} <= recalled
    assert not any(item["given"] and item["from_memory"] for item in told["assumptions"])
