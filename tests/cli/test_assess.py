"""The assess command, as typed. Outside reference: common practice, no source."""

import json
from pathlib import Path

import pytest

from axlewright.cli import run

EXAMPLES = Path(__file__).parents[2] / "examples"
HERON = EXAMPLES / "rigs" / "heron.toml"
SHAFTS = EXAMPLES / "changes" / "stronger-shafts.toml"
KEYS = {"part", "mode", "load_case", "demand", "capacity", "utilisation", "band", "basis"}


def test_the_answer_leads_with_the_sentence(capsys):
    assert run(["assess", str(HERON), "--draws", "100"]) == 0
    lines = [line for line in capsys.readouterr().out.splitlines() if line]
    assert lines[0].startswith("Heron: front axle")
    assert lines[1].startswith("In one bad moment ")
    assert next(line for line in lines[2:] if line[0] != " ").startswith("Wearing out: ")


@pytest.mark.parametrize("draws", ["0", "100"])
def test_json_is_plain_and_whole(capsys, draws):
    assert run(["assess", str(HERON), "--json", "--draws", draws]) == 0

    def refuse(word):
        raise AssertionError(word)

    told = json.loads(capsys.readouterr().out, parse_constant=refuse)
    assert told["draws"] == int(draws)
    assert len(told["checks"]) > 20
    for check in told["checks"]:
        assert check.keys() >= KEYS
        assert check["band"]["low"] <= check["band"]["high"]
        assert check["demand"]["unit"] == check["capacity"]["unit"]


def test_why_opens_a_row(capsys):
    assert run(["assess", str(HERON), "--why", "1", "--draws", "100"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("1. ")
    assert "what moves it most" in out


def test_a_change_tells_worse_and_better(capsys):
    assert run(["assess", str(HERON), "--with", str(SHAFTS), "--draws", "100"]) == 0
    out = capsys.readouterr().out.lower()
    assert "worse" in out
    assert "better" in out
    assert "after the change" in out


def test_a_stop_leads_everything(capsys, tmp_path):
    path = tmp_path / "stopped.toml"
    crack = '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'
    path.write_text(HERON.read_text("utf-8") + crack, "utf-8")
    assert run(["assess", str(path), "--draws", "50"]) == 3
    out = capsys.readouterr().out
    assert 0 < out.index("STOP. Do not drive.") < out.index("In one bad moment")
    assert run(["assess", str(path), "--draws", "50", "--json"]) == 3
    assert json.loads(capsys.readouterr().out)["may_i_drive"]["stop"] is True


def test_a_bad_file_is_told_by_file_and_line(capsys, tmp_path):
    path = tmp_path / "bad.toml"
    path.write_text(HERON.read_text("utf-8").replace('"915 mm"', '"915 furlongs"'), "utf-8")
    line = path.read_text("utf-8").splitlines().index('springs = "915 furlongs"') + 1
    assert run(["assess", str(path)]) == 2
    told = capsys.readouterr()
    assert f"bad.toml, line {line}: track.springs" in told.err
    assert not told.out


@pytest.mark.parametrize(
    "words",
    [
        ["assess", "nowhere.toml"],
        ["assess", str(HERON), "--no-such-option"],
        ["assess", str(HERON), "--draws", "-1"],
        ["assess", str(HERON), "--why", "999", "--draws", "0"],
        ["assess", str(HERON), "--units", "cubits"],
    ],
)
def test_input_to_put_right_is_two(capsys, words):
    assert run(words) == 2
    told = capsys.readouterr()
    assert told.err + told.out
    assert "Traceback" not in told.err + told.out


def test_a_reader_of_inches_gets_inches(capsys):
    assert run(["assess", str(HERON), "--units", "us", "--draws", "100"]) == 0
    out = capsys.readouterr().out
    assert " in" in out
    assert "mi" in out
    assert " mm" not in out.split("Worth ten minutes")[0]
