"""`axlewright decide`, as it is typed."""

import json

import jsonschema
import pytest

from axlewright.cli.app import run
from axlewright.views import decision_schema
from house.places import ROOT

HERON = str(ROOT / "examples" / "rigs" / "heron.toml")
GROUND = "rocks_and_ledges"
VALLEY = str(ROOT / "examples" / "prices" / "valley.toml")


def test_the_json_holds_to_its_schema_and_uses_own_prices(capsys):
    assert run(["decide", HERON, "--draws", "200", "--json", "--prices", VALLEY]) == 0
    told = json.loads(capsys.readouterr().out)
    jsonschema.validate(told, decision_schema())
    assert told["currency"] == "EUR"
    own = {each["key"]: each["price"] for each in told["choices"] if each["price"]["own"]}
    assert set(own) == {"heavier_bare", "truss"}
    assert own["truss"]["band"] == {"low": 380.0, "high": 520.0, "confidence": 0.9}
    assert told["advised"] in {each["key"] for each in told["choices"]}


def test_the_lines_say_the_choice_first_and_the_memo_is_written(capsys, tmp_path):
    memo = tmp_path / "memo.pdf"
    assert run(["decide", HERON, "--draws", "200", "--report", str(memo)]) == 0
    said = capsys.readouterr().out
    assert said.splitlines()[2].startswith(("Choose", "Leave"))
    for words in ("Strongest against it", "sorry", "Which tyre can it carry", "from memory"):
        assert words in said
    assert memo.read_bytes().startswith(b"%PDF")


def test_a_stop_stands_first_and_ends_with_its_code(capsys, tmp_path):
    text = (ROOT / "examples" / "rigs" / "heron.toml").read_text("utf-8")
    cracked = text + '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'
    file = tmp_path / "cracked.toml"
    file.write_text(cracked, "utf-8")
    assert run(["decide", str(file), "--draws", "200"]) == 3
    said = capsys.readouterr().out
    assert said.index("STOP. Do not drive") < said.index("Behind the stop")
    assert "Choose “" not in said.split("Behind the stop")[0]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--draws", "5"], "too few"),
        (["--prices", "no-such.toml"], "no such file"),
    ],
)
def test_what_cannot_be_used_is_told_in_one_message(words, told, capsys):
    assert run(["decide", HERON, *words]) == 2
    assert told in capsys.readouterr().err


def test_a_rig_in_the_store_brings_its_record(capsys, tmp_path):
    store = ["--store", str(tmp_path)]
    for day in ("2024-01-05", "2025-02-01", "2025-08-01", "2025-10-15"):
        entry = ["log", "work", HERON, "weld the bracket", "--part", "track-bar bracket"]
        assert run([*entry, "--on", day, *store]) == 0
    capsys.readouterr()
    assert run(["decide", "heron-front", "--draws", "200", *store]) == 0
    said = capsys.readouterr()
    assert "Stop mending" in said.out, said.err
    assert "a usual figure from memory" in " ".join(said.out.split())
    for month in range(1, 9):
        trip = ["log", "trip", HERON, "to the gauges", "60 km", "--ground", f"{GROUND}=60km"]
        assert run([*trip, "--on", f"2025-{month:02d}-10", *store]) == 0
    assert run(["decide", "heron-front", "--draws", "200", *store]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert f"Distance a year on {GROUND.replace('_', ' ')}" in told
    assert "from its record: 7 trips after the first, 420 km of it" in told
