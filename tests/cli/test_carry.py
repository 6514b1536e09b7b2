"""`axlewright log carry` and `log pack`, as typed. Outside reference: common practice."""

import json

import jsonschema
import pytest
from pypdf import PdfReader

from axlewright.cli import run
from axlewright.views import carry_schema

RIG = "examples/rigs/heron.toml"


@pytest.fixture
def ask(tmp_path, capsys):
    def go(*words):
        code = run(["log", *words, "--store", str(tmp_path / "store")])
        told = capsys.readouterr()
        return code, told.out + told.err

    return go


def test_the_answer_comes_first_and_the_list_is_ticked(ask):
    code, told = ask("carry", RIG, "--draws", "20", "--mass", "180 kg", "--days", "5")
    assert code == 0
    assert "things go along whatever follows" in told.splitlines()[0]
    assert "[ ] a tie rod, complete" in told
    assert ask("pack", "heron-front", "tie_rod", "packed", "--lies", "behind the seat")[0] == 0
    _, told = ask("carry", "heron-front", "--draws", "0", "--cards")
    assert "[x] a tie rod, complete" in told
    assert "lies: behind the seat" in told
    assert "TIE ROD BOWED OR BROKEN." in told


def test_json_and_paper(ask, tmp_path):
    paper = tmp_path / "carry.pdf"
    _, told = ask("carry", RIG, "--draws", "0", "--json")
    jsonschema.Draft202012Validator(carry_schema()).validate(json.loads(told))
    assert ask("carry", RIG, "--draws", "0", "--report", str(paper))[0] == 0
    reader = PdfReader(paper)
    text = "".join(page.extract_text() for page in reader.pages)
    assert reader.metadata.title == "Heron, front axle: what to carry"
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
    for word in ("The least set", "Repair cards", "Write down", "Decision support"):
        assert word in text
    assert 4 <= len(reader.pages) <= 11


def test_a_stop_leaves_with_three(ask):
    ask("look", RIG, "before_hubs", "stop", "--part", "hub", "--side", "left")
    code, told = ask("carry", "heron-front", "--draws", "0")
    assert code == 3
    assert told.startswith("STOP")


@pytest.mark.parametrize(
    "words", [("--days", "x"), ("--mass", "40"), ("--ground", "moon"), ("--draws", "-3")]
)
def test_what_cannot_be_is_to_put_right(ask, words):
    code, told = ask("carry", RIG, *words)
    assert code == 2
    assert told.strip()
    assert "Traceback" not in told


def test_an_unknown_spare_is_to_put_right(ask):
    assert ask("pack", RIG, "gold")[0] == 2
