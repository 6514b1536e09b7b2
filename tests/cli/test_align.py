"""The align command, as typed. Outside reference: common practice, no source."""

import json
from pathlib import Path

import pytest

from axlewright.cli import run

ROOT = Path(__file__).parents[2]
HERON = str(ROOT / "examples" / "rigs" / "heron.toml")
READ = str(ROOT / "examples" / "readings" / "heron-after-the-lift.toml")
TYPED = ["align", HERON, "--front", "1571 mm", "--rear", "1568 mm", "--at", "900 mm"]


def test_two_readings_give_what_to_turn(capsys):
    assert run([*TYPED, "--rod", "behind", "--thread", "M22x1.5"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert told.index("Understood: toe, front 1571 mm") < told.index("Toe is off")
    assert "at a diameter of 900 mm" in told
    assert "flats of the hexagon" in told
    assert "Toe done is not “ok to drive”" in told
    assert "Toe is set here, never on the track bar" in told


def test_ahead_and_behind_are_told_opposite_ways(capsys):
    said = []
    for rod in ("ahead", "behind"):
        run([*TYPED, "--rod", rod])
        said.append(capsys.readouterr().out)
    assert "shorter" in said[0].partition("\n1 ")[0]
    assert "longer" in said[1].partition("\n1 ")[0]


def test_json_is_in_si_with_bands(capsys):
    assert run(["align", HERON, "--readings", READ, "--json", "--units", "us"]) == 0
    told = json.loads(capsys.readouterr().out)
    toe = next(each for each in told["quantities"] if each["key"] == "toe")
    assert toe["unit"] == "rad"
    assert toe["band"][0] < toe["value"] < toe["band"][1]
    assert told["toe"]["diameter"]["value"] == pytest.approx(0.9)
    assert told["turn"]["growth"]["unit"] == "m"
    assert told["axlewright_alignment_answer"] == 1


def test_every_quantity_of_the_json_has_a_unit_and_a_band(capsys):
    run(["align", HERON, "--readings", READ, "--json"])

    def walk(node):
        if isinstance(node, dict):
            if "value" in node:
                assert {"unit", "band"} <= node.keys()
            for each in node.values():
                walk(each)
        elif isinstance(node, list):
            for each in node:
                walk(each)

    told = json.loads(capsys.readouterr().out)
    walk(told)


def test_papers(tmp_path, capsys):
    sheet, report = tmp_path / "sheet.pdf", tmp_path / "report.pdf"
    assert run(["align", HERON, "--sheet", str(sheet)]) == 0
    assert run(["align", HERON, "--readings", READ, "--report", str(report)]) == 0
    assert sheet.read_bytes().startswith(b"%PDF-")
    assert report.read_bytes().startswith(b"%PDF-")
    assert "sheet.pdf" in capsys.readouterr().out


def test_a_stop_is_said_first_and_is_the_exit_code(tmp_path, capsys):
    rig = tmp_path / "loose.toml"
    loose = '\n[[condition]]\npart = "tie rod"\nwhere = "left"\nwhat = "loose"\n'
    rig.write_text(Path(HERON).read_text("utf-8") + loose, "utf-8")
    assert run(["align", str(rig), *TYPED[2:]]) == 3
    told = capsys.readouterr().out
    assert told.index("STOP. Do not drive.") < told.index("Toe is off")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--front", "1571"], "has no unit"),
        (["--reading", "camber.left"], "has no ="),
        (["--reading", "camber.lft=1deg"], "did you mean: left"),
        (["--thread", "blunt"], "is no thread"),
        (["--readings", "nowhere.toml"], "there is no such file"),
        (["--readings", HERON], "another kind of file"),
        (["--front", "1571 mm", "--rear", "1871 mm"], "slip of the pen"),
    ],
)
def test_input_to_put_right(words, told, capsys):
    assert run(["align", HERON, *words]) == 2
    assert told in capsys.readouterr().err


def test_any_reading_can_be_typed(capsys):
    assert run(["align", HERON, "--reading", "camber.left=-0.3 deg"]) == 0
    assert "left camber -0.30" in capsys.readouterr().out


def test_nobody_is_told_to_set_what_cannot_be_set(capsys):
    """Common practice, no source: a rear beam axle's toe has no adjustment."""
    rig = str(Path(__file__).parents[2] / "examples/rigs/stork-rear.toml")
    run(["align", rig, "--front", "1571 mm", "--rear", "1568 mm", "--at", "900 mm"])
    told = " ".join(capsys.readouterr().out.split())
    assert "have a shop read it" in told
    assert "set it nearer the middle." not in told
