"""The travel command, as typed. Outside reference: common practice, no source."""

import json
import re
from pathlib import Path

import pytest

from axlewright.cli import run

HOME = Path(__file__).parents[2]
RIGS = HOME / "examples" / "rigs"
HERON = str(RIGS / "heron.toml")
LIFT = str(HOME / "examples/changes/lift.toml")


def test_an_answer(capsys):
    assert run(["travel", HERON, "--draws", "32"]) == 0
    told = capsys.readouterr().out
    assert told.startswith("Heron: travel of its front axle")
    assert "caster" in told


def test_a_change_as_json(capsys):
    assert run(["travel", HERON, "--with", LIFT, "--json", "--draws", "0"]) == 0
    told = json.loads(capsys.readouterr().out)
    before, after = (told[name]["measures"]["caster"]["value"] for name in ("before", "after"))
    assert after < before
    assert told["driveline"]


def test_a_row_opened(capsys):
    assert run(["travel", HERON, "--why", "3", "--draws", "0"]) == 0
    assert "apart in slope" in capsys.readouterr().out


def test_the_pinions_row_opens_down_to_the_driveline(capsys):
    assert run(["travel", HERON, "--why", "2", "--draws", "0"]) == 0
    told = capsys.readouterr().out
    assert "degree for degree" in " ".join(told.split())
    assert "propeller shaft" in told


def test_the_room_under_the_axle_opened(capsys):
    assert run(["travel", HERON, "--why", "6", "--draws", "64"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "the tie rod: 350 mm over the ground, 42 mm under the tube" in told
    assert re.search(r"Of a hundred rocks .* about [\d.]+ \([\d.]+ to [\d.]+\) touch it", told)


def test_a_report(capsys, tmp_path):
    paper = tmp_path / "travel.pdf"
    assert run(["travel", HERON, "--with", LIFT, "--draws", "0", "--report", str(paper)]) == 0
    assert paper.read_bytes().startswith(b"%PDF-")
    assert "report:" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--why", "9"], "There is no row 9"),
        (["--draws", "-1"], "--draws -1 cannot be used"),
    ],
)
def test_what_cannot_be_done_is_said(capsys, words, told):
    assert run(["travel", HERON, *words]) == 2
    assert told in capsys.readouterr().err


def test_an_arm_that_cannot_reach_is_input_to_put_right(capsys, tmp_path):
    text = Path(HERON).read_text("utf-8")
    text = text.replace(
        'third_arm_frame = "592 mm behind, 150 mm left, 618 mm up"',
        'third_arm_frame = "110 mm behind, 150 mm left, 618 mm up"',
    )
    rig = tmp_path / "short.toml"
    rig.write_text(text.replace("[travel]\n", '[travel]\nlift = "200 mm"\n'), "utf-8")
    assert run(["travel", str(rig), "--draws", "0"]) == 2
    assert "upper arm" in capsys.readouterr().err


def test_a_cure_is_written_as_a_change_that_does_what_was_told(capsys, tmp_path):
    kept = tmp_path / "cure.toml"
    words = ["travel", HERON, "--with", LIFT, "--draws", "0", "--json"]
    assert run([*words, "--keep-cure", "1", str(kept)]) == 0
    tried = json.loads(capsys.readouterr().out)["after"]["cures"]
    text = kept.read_text("utf-8")
    assert text.startswith("axlewright_change = 1")
    cure = next(each for each in tried if all(path in text for path in each["change"] or ["-"]))
    assert run([*words, "--with", str(kept)]) == 0
    made = json.loads(capsys.readouterr().out)["after"]["measures"]
    assert cure["moves"]
    for move in cure["moves"]:
        name = move["measure"]
        assert made[name]["value"] == pytest.approx(move["after"]["value"], abs=2e-3), name
    assert run([*words, "--keep-cure", "99", str(kept)]) == 2
    assert "There is no cure 99" in capsys.readouterr().err


def test_a_stop_stands_before_an_opened_row_too(tmp_path, capsys):
    rig = tmp_path / "heron.toml"
    found = '[[condition]]\npart = "brake hose"\nwhat = "cracked"\ndate = 2026-05-03\n'
    rig.write_text(f"{Path(HERON).read_text('utf-8')}\n{found}", "utf-8")
    for words in (("travel", "--why", "1"), ("travel", "--why", "2"), ("assess", "--why", "1")):
        assert run([words[0], str(rig), *words[1:], "--draws", "0"]) == 3
        assert capsys.readouterr().out.startswith("STOP: brake hose, cracked")


def test_a_rear_pinion_is_told_without_caster(capsys):
    assert run(["travel", str(RIGS / "stork-rear.toml"), "--why", "1", "--draws", "0"]) == 0
    assert "caster" not in capsys.readouterr().out
