"""Whole visits with `axlewright assess`, as a mechanic makes them. Common practice, no source."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from typed import typed

ROOT = Path(__file__).parents[2]
RIGS = ROOT / "examples" / "rigs"
CHANGES = ROOT / "examples" / "changes"
FEW = ("--draws", "60")
ROW = re.compile(r"^  (\d) \S", re.MULTILINE)


def process(*words, columns=80):
    """One call of the command in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "axlewright", *map(str, words)],
        cwd=ROOT,
        env={**os.environ, "COLUMNS": str(columns), "PYTHONIOENCODING": "utf-8"},
        capture_output=True,
        encoding="utf-8",
        check=False,
    )


def visit(*words, code=0, columns=80, by=typed):
    """One call of the command; gives what it wrote and what it warned."""
    done = by("assess", *words, columns=columns)
    assert done.returncode == code, done.stderr
    assert "Traceback" not in done.stdout + done.stderr
    return done.stdout, done.stderr


@pytest.mark.parametrize("rig", ["heron", "wagtail", "stork-rear"])
def test_a_rig_gets_its_answer(rig):
    out, _ = visit(RIGS / f"{rig}.toml", *FEW, by=process)
    assert (
        out.index("In one bad moment") < out.index("Wearing out:") < out.index("  one bad moment")
    )
    assert ROW.findall(out.partition("wearing out (coarse)")[0]) == ["1", "2", "3", "4", "5"]
    assert "Not judged, because nobody has looked:" in out
    assert "Rests on" in out
    assert max(len(line) for line in out.splitlines()) <= 80


def test_a_wide_terminal_gets_a_table():
    out, _ = visit(RIGS / "heron.toml", *FEW, columns=200)
    head = next(line for line in out.splitlines() if line.startswith("     one bad moment"))
    assert head.split("  ")[-1].strip() == "first in"
    assert sum("beside the track  " in line for line in out.splitlines()) == 2


def test_a_change_and_then_a_why():
    change = CHANGES / "heavier-housing.toml"
    out, _ = visit(RIGS / "heron.toml", "--with", change, *FEW)
    assert "With heavier housing: In one bad moment" in out.replace("\n  ", " ")
    for line in ("Worse: ", "Better: ", "Mass and clearance: ", "Gone with what was replaced: "):
        assert re.search(f"^{line}", out, re.MULTILINE)
    why, _ = visit(RIGS / "heron.toml", "--with", change, "--why", "2", *FEW)
    assert why.startswith("2. ")
    # The row opened is that of the order after the change.
    after = out.partition("one bad moment, after the change")[2]
    name = re.search(r"^  2 (.+?) \(", after, re.MULTILINE).group(1)
    assert name.split()[-1] in why.splitlines()[0]


def test_two_changes_follow_one_another():
    both = [
        word
        for name in ("heavier-tube", "stronger-shafts")
        for word in ("--with", CHANGES / f"{name}.toml")
    ]
    out, _ = visit(RIGS / "heron.toml", *both, *FEW)
    assert "With heavier tube and stronger shafts:" in out


@pytest.mark.parametrize("row", [1, 4])
def test_each_row_opens_and_fits(row):
    out, _ = visit(RIGS / "wagtail.toml", "--why", row, *FEW)
    assert out.startswith(f"{row}. ")
    assert "utilisation" in out
    assert max(len(line) for line in out.splitlines()) <= 80


def test_the_same_seed_says_the_same_and_another_does_not():
    first, again, other = (
        visit(RIGS / "heron.toml", *FEW, "--seed", seed, by=process)[0] for seed in (7, 7, 8)
    )
    assert first == again
    assert "seed 7;" in first
    assert first.replace("seed 7;", "") != other.replace("seed 8;", "")


def test_json_is_json_and_in_si_whatever_the_reader_reads():
    metric, us = (
        json.loads(visit(RIGS / "heron.toml", "--json", "--units", units, *FEW)[0])
        for units in ("metric", "us")
    )
    assert metric == us
    assert metric["checks"]
    assert metric["one_bad_moment"][0]["part"]
    assert {"before", "after", "compared", "dropped_readings"} <= json.loads(
        visit(RIGS / "heron.toml", "--with", CHANGES / "heavier-tube.toml", "--json", *FEW)[0]
    ).keys()


def test_us_and_mixed_units():
    us, _ = visit(RIGS / "wagtail.toml", "--units", "us", *FEW)
    assert "mph" in us
    assert not re.search(r"\d (mm|cm|km/h|km|kg|N m)\b", us)
    mixed, _ = visit(RIGS / "wagtail.toml", "--units", "mixed", *FEW)
    assert "km/h" in mixed


def test_a_stop_is_told_first_and_by_the_exit_code(tmp_path):
    rig = tmp_path / "stopped.toml"
    crack = '\n[[condition]]\npart = "tie rod"\nwhere = "left"\nwhat = "cracked"\n'
    rig.write_text((RIGS / "heron.toml").read_text("utf-8") + crack, "utf-8")
    out, _ = visit(rig, *FEW, code=3, by=process)
    lines = [line for line in out.splitlines() if line]
    assert lines[1].startswith("###")
    assert lines[2].startswith("STOP. Do not drive.")
    assert "tie rod (left), cracked" in lines[3]
    json.loads(visit(rig, "--json", *FEW, code=3)[0])
    # Another housing does not mend a tie rod.
    visit(rig, "--with", CHANGES / "heavier-housing.toml", *FEW, code=3)


@pytest.mark.parametrize("row", ["0", "999"])
def test_an_unknown_row_says_which_there_are(row):
    out, told = visit(RIGS / "heron.toml", "--why", row, *FEW, code=2)
    assert not out
    assert re.search(r"from 1 to \d+", told)


@pytest.mark.parametrize(
    "words",
    [
        ["nowhere.toml"],
        [str(RIGS / "heron.toml"), "--with", str(RIGS / "wagtail.toml")],
        [str(CHANGES / "heavier-tube.toml")],
        [str(RIGS / "heron.toml"), "--units", "furlongs"],
    ],
)
def test_input_to_put_right_is_told_and_ends_with_two(words):
    out, told = visit(*words, code=2, by=process)
    assert out + told


def test_a_change_that_names_no_part_is_told_by_line(tmp_path):
    change = tmp_path / "odd.toml"
    change.write_text(
        'axlewright_change = 1\nname = "odd"\n\n[[step]]\nset = "tube.outre"\nto = "88.9 mm"\n',
        "utf-8",
    )
    _, told = visit(RIGS / "heron.toml", "--with", change, code=2)
    assert "odd.toml, line 5" in told
    assert "tube.outer" in told
