"""The docs cannot fall behind: what exists is named, and what is shown works."""

import os
import re
import shlex
import shutil
import subprocess
import sys
from functools import cache

import pytest

from axlewright.tables import catalogue
from house.places import DOCS, ROOMS, ROOT, brief, pages
from typed import typed

FENCE = re.compile(r"^```(\w+)[^\n]*\n(.*?)^```", re.MULTILINE | re.DOTALL)
COMMAND_ROW = re.compile(r"^│\s+([a-z][a-z-]*)\s{2,}", re.MULTILINE)


def blocks(page, kind):
    return [text for found, text in FENCE.findall(page.read_text("utf-8")) if found == kind]


def command_lines():
    """Every `axlewright …` line of every console block, with its page."""
    shown = {}
    for page in pages():
        for block in blocks(page, "console"):
            for line in block.replace("\\\n", " ").splitlines():
                bare = re.sub(r"^\s*\$?\s*(uv run (--frozen )?)?", "", line)
                if bare.startswith("axlewright"):
                    shown.setdefault(bare, page)
    return sorted(shown.items())


SHOWN = command_lines()
NAMED = [line for line, _ in SHOWN]


def process(words, folder=ROOT):
    """A command as a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "axlewright", *words],
        cwd=folder,
        capture_output=True,
        encoding="utf-8",
        stdin=subprocess.DEVNULL,
        check=False,
        env={
            **os.environ,
            "COLUMNS": "160",
            "NO_COLOR": "1",
            "PYTHONIOENCODING": "utf-8",
        },
    )


@cache
def told_by(*words):
    """What a command says of itself."""
    line = [*words, "--help"]
    answer = typed(*line, columns=160) if words else process(line)
    assert answer.returncode == 0, answer.stderr
    return answer.stdout


@cache
def commands():
    """The commands that exist."""
    return frozenset(COMMAND_ROW.findall(told_by()))


@cache
def written():
    return "\n".join(page.read_text("utf-8") for page in pages())


def test_there_is_a_command_for_the_main_job():
    assert "assess" in commands()


@pytest.mark.parametrize("line", NAMED)
def test_a_command_shown_exists_with_its_options(line):
    words = shlex.split(line, comments=True)[1:]
    if not words or words[0].startswith("-"):
        known = told_by()
    else:
        assert words[0] in commands()
        deeper = words[0] == "log"  # a command of commands
        known = told_by(*words[: 2 if deeper else 1])
    options = {word.split("=")[0] for word in words if re.match(r"--?[a-z]", word)}
    missing = {option for option in options if not re.search(rf"{option}\b", known)}
    assert not missing


def inputs(line):
    """The files that a shown command reads, and whether they are all among the examples."""
    words = shlex.split(line, comments=True)[1:]
    files = [word for word in words if word.endswith(".toml")]
    return bool(files) and all((ROOT / file).is_file() for file in files)


@pytest.mark.parametrize(
    "line", [line for line in NAMED if line.split()[1:2] == ["assess"] and inputs(line)]
)
def test_a_command_shown_on_an_example_answers(line, tmp_path):
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    (tmp_path / "out").mkdir()
    words = shlex.split(line.split("|")[0].split(">")[0], comments=True)[1:]
    answer = typed(*words, folder=tmp_path, columns=160)
    assert answer.returncode == 0, answer.stderr
    assert answer.stdout


@pytest.mark.parametrize("page", [page for page in pages() if blocks(page, "python")], ids=brief)
def test_the_python_of_a_page_runs(page, monkeypatch, tmp_path):
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    monkeypatch.chdir(tmp_path)
    names = {"__name__": "page"}
    for number, block in enumerate(blocks(page, "python"), 1):
        exec(compile(block, f"{brief(page)}, block {number}", "exec"), names)  # noqa: S102


def test_every_command_is_named():
    missing = {name for name in commands() if f"axlewright {name}" not in written()}
    assert not missing


def test_every_room_is_named():
    house = (DOCS / "house.md").read_text("utf-8")
    assert not {room for room in ROOMS if f"`{room}`" not in house}


def test_every_table_is_named():
    assert catalogue()
    page = (DOCS / "tables.md").read_text("utf-8")
    assert not {key for key in catalogue() if f"`{key}`" not in page}


def test_the_changelog_tells_which_numbers_changed():
    assert "Numbers that changed, and why" in (ROOT / "CHANGELOG.md").read_text("utf-8")


@pytest.mark.parametrize(
    "recipe",
    [
        *("demo", "check", "test", "bench", "docs", "soak"),
        *("schema", "pictures", "pictures-bay", "pinned"),
    ],
)
def test_every_recipe_is_told_to_newcomers(recipe):
    assert re.search(rf"^{recipe}:", (ROOT / "Makefile").read_text("utf-8"), re.MULTILINE)
    assert f"`make {recipe}`" in (ROOT / "CONTRIBUTING.md").read_text("utf-8")
