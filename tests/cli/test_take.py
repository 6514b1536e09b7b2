"""The take command, as typed. Outside reference: common practice, no source."""

import re
from pathlib import Path

import pytest

from axlewright.cli import run

RIGS = Path(__file__).parents[2] / "examples" / "rigs"


@pytest.fixture(autouse=True)
def _in_a_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)


def test_one_file_and_its_paper(capsys, tmp_path):
    words = ["take", str(RIGS / "heron.toml"), "-o", "a/heron.html", "--pdf", "heron.pdf"]
    assert run([*words, "--draws", "20"]) == 0
    assert (tmp_path / "a" / "heron.html").read_bytes().startswith(b"<!doctype html>")
    assert (tmp_path / "heron.pdf").read_bytes().startswith(b"%PDF-")
    assert "a/heron.html" in capsys.readouterr().out.replace("\\", "/")


def test_a_name_is_found_and_the_units_followed(tmp_path):
    assert run(["take", str(RIGS / "stork-rear.toml"), "--units", "us", "--draws", "0"]) == 0
    page = (tmp_path / "stork-rear.take.html").read_text("utf-8")
    assert "33.1 in" in page
    body = page.partition("<body>")[2].partition("<script>")[0]
    assert set(re.findall(r"\S+ km\b", body)) == {"1,000 km"}  # the name of a reference


def test_a_stop_is_said_and_is_the_exit_code(capsys, tmp_path):
    crack = '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'
    rig = tmp_path / "stopped.toml"
    rig.write_text((RIGS / "heron.toml").read_text("utf-8") + crack, "utf-8")
    assert run(["take", str(rig), "--draws", "0"]) == 3
    assert "STOP: knuckle, cracked. Do not drive." in capsys.readouterr().out
    assert "STOP. Do not drive." in (tmp_path / "stopped.take.html").read_text("utf-8")


@pytest.mark.parametrize(
    ("words", "told"),
    [(["nowhere.toml"], "nowhere.toml"), ([str(RIGS / "heron.toml"), "--draws", "-3"], "--draws")],
)
def test_what_cannot_be_done_is_said_and_nothing_written(capsys, tmp_path, words, told):
    assert run(["take", *words]) == 2
    assert told in capsys.readouterr().err
    assert not list(tmp_path.iterdir())
