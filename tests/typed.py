"""A command line typed in this process: quick, where nothing about a process itself is asked."""

import io
import os
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from typing import NamedTuple

import pytest

from axlewright.cli import run

ROOT = Path(__file__).parents[1]


class Said(NamedTuple):
    """How a command ended and what it wrote."""

    returncode: int
    stdout: str
    stderr: str


def typed(*words, folder=ROOT, columns=80):
    """Run one command in a folder, with nothing to read from and no terminal to write to."""
    out, err = io.StringIO(), io.StringIO()
    with (
        Path(os.devnull).open(encoding="utf-8") as nothing,
        pytest.MonkeyPatch.context() as patch,
        redirect_stdout(out),
        redirect_stderr(err),
    ):
        patch.chdir(folder)
        patch.setenv("COLUMNS", str(columns))
        patch.setenv("NO_COLOR", "1")
        patch.setattr("sys.stdin", nothing)
        code = run([str(word) for word in words])
    return Said(code, out.getvalue(), err.getvalue())
