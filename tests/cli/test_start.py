"""`axlewright start` as it is called: lines in, text out, a file that is never half written."""

import io
import os
import sys

import pytest
from pypdf import PdfReader

from axlewright.actions.listening import fault_line
from axlewright.cli.app import run
from axlewright.cli.start import write_whole
from axlewright.errors import AxlewrightError
from axlewright.rig import FIELDS, load_rig, read_answer

FRONT = (
    "front\nHeron\nradius\n1\n235/85R16 120/116Q\n385 mm\n385 mm\n1500 mm\n930 mm\n243 mm\n243 mm\n"
    "280 mm\n560 mm\nET 25 mm\n0 mm\n1020 kg\n29 mm\nabout 90 mm\nopen\nno\n2\nforest\n15 km\n"
)


@pytest.fixture
def piped(monkeypatch, capsys):
    """Run `start` with text piped in; gives the exit code and what was printed."""

    def started(*words, said="", raw=None):
        data = said.encode() if raw is None else raw
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(data), "utf-8"))
        code = run(["start", *map(str, words)])
        told = capsys.readouterr()
        return code, told.out, told.err

    return started


def test_piped_answers_make_a_file_that_can_be_assessed(piped, tmp_path):
    file = tmp_path / "new" / "heron.toml"
    code, told, _ = piped(file, said=FRONT)
    assert code == 0
    assert load_rig(str(file)).name == "Heron"
    assert "In one bad moment" in told
    assert f"axlewright assess {file}" in told
    assert [each.name for each in file.parent.iterdir()] == ["heron.toml"]


def test_the_end_of_input_says_how_to_go_on_and_going_on_works(piped, tmp_path):
    file = tmp_path / "heron.toml"
    half = FRONT.index("280 mm")
    code, told, _ = piped(file, said=FRONT[:half])
    assert code == 0
    assert "Kept: 9 of 21 answers. Next: bare left tube." in told
    assert f"Go on at any time with: axlewright start {file}" in told
    code, told, _ = piped(file, said=FRONT[half:])
    assert code == 0
    assert "Which axle" not in told
    assert load_rig(str(file)).answers == 21


def test_no_answer_writes_no_file(piped, tmp_path):
    file = tmp_path / "heron.toml"
    code, told, _ = piped(file)
    assert code == 0
    assert "Nothing has been answered yet" in told
    assert not file.exists()


def test_a_stop_on_record_is_the_exit_code(piped, tmp_path):
    said = FRONT.replace("no\n2\n", "no\n1\ntie rod\nloose\nleft\n\n\n\n")
    code, told, _ = piped(tmp_path / "heron.toml", said=said)
    assert code == 3
    assert "STOP: tie rod (left), loose" in told


def test_a_file_that_cannot_be_read_is_left_alone(piped, tmp_path):
    file = tmp_path / "heron.toml"
    file.write_text("axlewright = 1\n[rig\n", "utf-8")
    code, _, err = piped(file, said=FRONT)
    assert code == 2
    assert "line 2" in err
    assert file.read_text("utf-8") == "axlewright = 1\n[rig\n"


def test_bytes_that_are_no_text_are_an_unreadable_answer(piped, tmp_path):
    code, told, _ = piped(tmp_path / "heron.toml", raw=b"\xff\xfe\x00\nfront\n")
    assert code == 0
    assert "is not one of the words" in told
    assert "the front axle" in told


def test_an_interrupted_write_keeps_the_old_file(monkeypatch, tmp_path):
    file = tmp_path / "heron.toml"
    file.write_bytes(b"old")

    def torn(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", torn)
    with pytest.raises(AxlewrightError, match="No space left"):
        write_whole(file, b"new")
    assert file.read_bytes() == b"old"
    assert [each.name for each in tmp_path.iterdir()] == ["heron.toml"]


def test_a_full_disk_in_the_middle_of_a_talk_is_told_and_keeps_the_last_file(
    monkeypatch, piped, tmp_path
):
    file = tmp_path / "heron.toml"
    piped(file, said="front\nHeron\nradius\n")
    before = file.read_bytes()

    def torn(_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", torn)
    code, _, err = piped(file, said="1\n")
    assert code == 2
    assert "What it held is untouched" in err
    assert file.read_bytes() == before


@pytest.mark.parametrize("trouble", [EOFError, KeyboardInterrupt])
def test_at_a_terminal_the_end_of_input_leaves_cleanly(monkeypatch, capsys, tmp_path, trouble):
    file = tmp_path / "heron.toml"
    lines = iter(["front", "Heron"])

    class Terminal(io.StringIO):
        def isatty(self):
            return True

    def typed(_):
        try:
            return next(lines)
        except StopIteration:
            raise trouble from None

    monkeypatch.setattr(sys, "stdin", Terminal())
    monkeypatch.setattr("builtins.input", typed)
    assert run(["start", str(file)]) == 0
    assert "Kept: 0 of 21 answers" in capsys.readouterr().out
    assert 'name = "Heron"' in file.read_text("utf-8")


def test_the_sheet_is_written_and_nothing_is_asked(piped, tmp_path):
    sheet = tmp_path / "questions.pdf"
    code, told, _ = piped(tmp_path / "heron.toml", "--sheet", sheet)
    assert code == 0
    assert sheet.read_bytes().startswith(b"%PDF-")
    assert "Which axle" not in told
    assert not (tmp_path / "heron.toml").exists()


@pytest.mark.parametrize(
    ("begun", "words", "meant"),
    [("", [], "front"), ("", ["--rear"], "rear"), ("rear\n", [], "rear"), ("front\n", [], "front")],
)
def test_the_sheet_draws_the_axle_of_the_file(piped, tmp_path, begun, words, meant):
    file, sheet = tmp_path / "rig.toml", tmp_path / "questions.pdf"
    if begun:
        piped(file, said=begun)
    _, told, _ = piped(file, "--sheet", sheet, *words)
    assert f"Questions about a {meant} axle" in told
    title = PdfReader(sheet).metadata.title
    assert title == f"Thirteen questions about one {meant} axle"


def test_what_is_said_fits_into_eighty_columns_and_no_command_is_broken(piped, tmp_path):
    file = tmp_path / "heron.toml"
    _, told, _ = piped(file, said=FRONT)
    commands = [line for line in told.splitlines() if str(file) in line]
    assert commands == [f"Written: {file}. For the whole answer: axlewright assess {file}"]
    assert max(len(line) for line in told.splitlines() if line not in commands) <= 80


@pytest.mark.parametrize(
    ("path", "said", "meant"),
    [
        ("tube.girth.left", "9 7/16", "Did you mean 9 7/16 in?"),
        ("hub_height.left", "15.5", "Did you mean 15.5 in?"),
        ("hub_height.left", "39,5", "Did you mean 39,5 cm?"),
        ("weight.axle", "2600", "Did you mean 2600 kg or 2600 lb?"),
        ("wheel.offset", "-25", "Did you mean ET -25 mm?"),
        ("tube.girth.left", "7000", "For example: 239 mm"),
    ],
)
def test_a_bare_number_is_met_with_units_that_people_would_use(path, said, meant):
    [asked] = [field for field in FIELDS if field.path == path]
    line = fault_line(read_answer(asked, said), asked)
    assert meant in line
    assert "such as" not in line


def test_all_goes_on_to_the_optional_questions(piped, tmp_path):
    file = tmp_path / "heron.toml"
    code, told, _ = piped(file, "--all", said=FRONT + "\n\n")
    assert code == 0
    assert told.count("An empty line passes it over") == 3
    assert load_rig(str(file)).answers == 21
