"""`axlewright plan` as a person types it."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

from typed import typed

ROOT = Path(__file__).parents[2]
RIG = "examples/rigs/heron.toml"
HOUSING = "examples/changes/heavier-housing.toml"
SHAFTS = "examples/changes/stronger-shafts.toml"


def run(*words):
    return typed("plan", *words)


def process(*words):
    """The same as a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "axlewright", "plan", *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


def test_the_answer_comes_first_and_what_is_missing_after_it():
    answer = process(RIG, "--with", HOUSING, "--kind", "geared axle")
    assert answer.returncode == 0, answer.stderr
    lines = answer.stdout.splitlines()
    assert lines[0] == "Heron, front axle: geared axle"
    assert "Two people, practised" in lines[1]
    assert "NOT READY" in answer.stdout


def test_one_person_is_refused_and_told_why():
    answer = process(RIG, "--with", HOUSING, "--people", "1")
    assert answer.returncode == 2
    assert "need two people" in answer.stderr
    assert "Track bar off" in answer.stderr
    assert "Traceback" not in answer.stderr


def test_one_person_may_change_a_shaft():
    answer = run(RIG, "--with", SHAFTS, "--people", "1", "--json")
    assert answer.returncode == 0, answer.stderr
    made = json.loads(answer.stdout)
    assert made["people"] == 1
    assert all(len(step["hands"]) <= 1 for step in made["steps"])


def test_values_make_it_ready_and_a_wrong_unit_is_caught():
    made = json.loads(run(RIG, "--with", SHAFTS, "--json").stdout)
    given = []
    for line in made["torques"]:
        if line["by"] == "maker":
            told = line["plausible"]
            value = 150.0 if told is None else told["value"]
            given += ["--value", f"{line['key']}={value:.0f} N m, manual 4-12"]
    assert json.loads(run(RIG, "--with", SHAFTS, "--json", *given).stdout)["ready"] is True
    far = run(RIG, "--with", SHAFTS, "--value", "wheel_nuts=1500 N m, manual 4-12")
    assert far.returncode == 2
    assert "far from anything" in far.stderr
    bare = run(RIG, "--with", SHAFTS, "--value", "wheel_nuts=150 N m")
    assert bare.returncode == 2
    assert "where did the maker print" in bare.stderr


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--kind", "half"], "geared axle"),
        (["--say", "sensors=maybe"], "yes, no"),
        (["--say", "sensors"], "sensors=no"),
        (["--people", "7"], "1 to 3"),
        (["--value", "nothing=1 N m"], "wheel_nuts"),
        (["--value", "wheel_nuts=abc, p. 1"], "torque"),
        (["--why", "999"], "from 1 to"),
    ],
)
def test_bad_input_is_met_with_what_is_taken(words, told):
    answer = run(RIG, "--with", HOUSING, *words)
    assert answer.returncode == 2, answer.stdout
    assert told in answer.stderr
    assert "Traceback" not in answer.stderr


def test_a_stop_on_the_rig_stands_first_and_ends_in_three(tmp_path):
    text = (ROOT / RIG).read_text("utf-8")
    cracked = re.sub(r'what = "mended"', 'what = "cracked"', text)
    (tmp_path / "rig.toml").write_text(cracked, "utf-8")
    answer = process(str(tmp_path / "rig.toml"), "--with", HOUSING)
    assert answer.returncode == 3
    assert answer.stdout.startswith("STOP")
    assert "LOOK AT THE SUPPORT" in answer.stdout


def test_the_job_sheets_are_written(tmp_path):
    from pypdf import PdfReader

    paper = tmp_path / "swap.pdf"
    answer = run(RIG, "--with", HOUSING, "--report", str(paper))
    assert answer.returncode == 0, answer.stderr
    text = "\n".join(page.extract_text() for page in PdfReader(paper).pages)
    for words in ("NOBODY UNDER", "NEEDS TWO", "PHOTO FIRST", "RIDE HEIGHT", "Before driving"):
        assert words in text
    assert text.count("Caution:") > 60
